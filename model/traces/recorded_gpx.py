"""Recorded positions (GPX) to speed and height over time."""

from __future__ import annotations

from datetime import UTC

import gpxpy
import numpy as np
import pandas as pd
from gpxpy.geo import haversine_distance
from gpxpy.gpx import GPXException, GPXTrackPoint

from model.describe.fields import InputError
from model.describe.figures import Quantity
from model.describe.trace import Array
from model.describe.units import KMH_PER_MPS
from model.traces.resampling import at_whole_seconds, check_duration, weigh_neighbours, whole_seconds

MOST_BYTES = 5_000_000
POINTS = (10, 100_000)
LONGEST_GAP_S = 30.0
"""Positions may be missing for so long, as in a tunnel: the way between is then driven at an even speed."""
STANDING_MPS = 1.5 / KMH_PER_MPS
"""Positions wander while the car stands: below this it counts as standing."""
HEIGHT_M = (-450, 9000)


def positions_table(data: bytes, name: str) -> tuple[pd.DataFrame, tuple[str, ...]]:
    """Speed and height for each whole second, in the columns of our own CSV, and notes on what was done to get them.

    Parameters
    ----------
    data : bytes
        The file.
    name : str
        What errors call it.

    Raises
    ------
    InputError
        Where there are no usable positions with times.

    Notes
    -----
    Stray single positions fall to a median of three; then each position is joined with a quarter of both neighbours,
    and speed is the straight way between the seconds before and after. Standard cycles were turned into positions
    1 s apart that wander by 3 m and scatter by 0.1 to 0.2 m or are rounded to five decimals: distance came back
    within 1 %; on UDDS and WLTC traction energy within 4 % and braking energy within 7 %. Stop-and-go traffic (NYCC)
    lost a tenth of traction and a sixth of braking; scatter of 0.5 m added 5 and 13 % on UDDS and WLTC. A recording
    of the car's own speed is better.
    """
    points = _points(data, name)
    times = [point.time for point in points if point.time is not None]
    stamp = np.array([time.replace(tzinfo=time.tzinfo or UTC).timestamp() for time in times])
    if len(stamp) < len(points):
        raise InputError("gpx-without-times", name=name)
    place = np.array([(point.latitude, point.longitude) for point in points], dtype=float).T
    if not (np.abs(place) <= [[90], [180]]).all():
        raise InputError("gpx-off-the-earth", name=name)
    height = np.array([np.nan if point.elevation is None else point.elevation for point in points], dtype=float)
    if (height < HEIGHT_M[0]).any() or (height > HEIGHT_M[1]).any():
        low, high = Quantity(HEIGHT_M[0], "", places=0), Quantity(HEIGHT_M[1], "m", places=0)
        raise InputError("gpx-height-refused", name=name, low=low, high=high)

    notes = ["Speed was worked out from positions: braking energy may be a tenth off, more in stop-and-go traffic."]
    later = np.diff(np.maximum.accumulate(stamp), prepend=-np.inf) > 0
    if not later.all():
        notes.append(f"Points left out because their time is not after the one before: {np.count_nonzero(~later)}.")
    time_s, place, height = stamp[later] - stamp[0], place[:, later], height[later]
    check_duration(time_s[-1], name)
    place[1] = np.unwrap(place[1], period=360)
    middle = pd.DataFrame(place.T).rolling(3, center=True).median().to_numpy().T
    place = np.where(np.isnan(middle), place, middle)
    notes += _bridged(time_s, place, name)

    place = np.array([weigh_neighbours(at_whole_seconds(time_s, way), 0.25) for way in place])
    speed = _speed_mps(place, 1)
    # over 6 s a wandering position goes back and forth where a starting car gets away
    speed[(speed < STANDING_MPS) | (_speed_mps(place, 3) < STANDING_MPS)] = 0.0
    table = pd.DataFrame({"time_s": whole_seconds(time_s), "speed_kmh": speed * KMH_PER_MPS})
    known = np.isfinite(height)
    if known.any():
        table["elevation_m"] = np.interp(table["time_s"], time_s[known], height[known])
    return table, tuple(notes)


def _points(data: bytes, name: str) -> list[GPXTrackPoint]:
    if len(data) > MOST_BYTES:
        given, most = Quantity(len(data) / 1e6, "", places=1), Quantity(MOST_BYTES / 1e6, "", 3, trimmed=True)
        raise InputError("gpx-too-large", name=name, given_mb=given, most_mb=most)
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError:
        raise InputError("gpx-not-in-utf-8", name=name) from None
    # entities can be made to grow without bound, and no recorder writes them
    if "<!doctype" in text.lower() or "<!entity" in text.lower():
        raise InputError("gpx-with-entities", name=name)
    try:
        tracks = gpxpy.parse(text).tracks
    except (GPXException, ValueError, LookupError, TypeError, AttributeError):
        raise InputError("gpx-unreadable", name=name) from None
    points = [point for track in tracks for segment in track.segments for point in segment.points]
    if not POINTS[0] <= len(points) <= POINTS[1]:
        raise InputError("gpx-points", name=name, points=len(points), least=POINTS[0], most=POINTS[1])
    return points


def _way_m(start: Array, end: Array) -> Array:
    """Straight way [m] between places given as latitude and longitude [degrees], shapes (2, n)."""
    return np.array([haversine_distance(*each) for each in np.concatenate([start, end]).T])


def _speed_mps(place: Array, reach_s: int) -> Array:
    """Straight way from `reach_s` before each second to as long after it, over the time between [m/s]."""
    index = np.arange(place.shape[1])
    before, after = np.maximum(index - reach_s, 0), np.minimum(index + reach_s, index[-1])
    speed: Array = _way_m(place[:, before], place[:, after]) / (after - before)
    return speed


def _bridged(time_s: Array, place: Array, name: str) -> list[str]:
    """Refuse long gaps driven through; tell of the shorter ones."""
    gap = np.diff(time_s)
    speed = _way_m(place[:, :-1], place[:, 1:]) / gap
    driven = (gap > 5) & (speed > STANDING_MPS)
    for at in np.flatnonzero(driven & (gap > LONGEST_GAP_S)):
        raise InputError(
            "gpx-gap", name=name, gap=Quantity(float(gap[at]), "s", places=0),
            after=Quantity(float(time_s[at]), "s", places=0), went=Quantity(float(gap[at] * speed[at]), "m", places=0),
            most=Quantity(LONGEST_GAP_S, "s", places=0),
        )  # fmt: skip
    if driven.any():
        return [f"Gaps of up to {LONGEST_GAP_S:g} s bridged at an even speed: {np.count_nonzero(driven)}."]
    return []
