"""Recorded positions as GPX 1.0 or 1.1: from bytes to columns of numbers."""

from __future__ import annotations

import io
import re
from xml.etree import ElementTree

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from model.describe.fields import InputError
from model.describe.trace import Array
from model.traces.findings import Finding
from model.traces.recorded_csv import FEWEST_ROWS, FIELDS, MOST_ROWS, HowFar, SamplesByKey, Table, as_utf8, untold
from model.traces.recorded_names import Column

COLUMNS = (
    Column("time", "time_s", "date", True),
    Column("lat", "latitude", "°", True),
    Column("lon", "longitude", "°", True),
    Column("ele", "elevation_m", "m", True),
)
POINTS = ("trkpt", "rtept")
TOLD_AT = 10_000
"""After so many points it is told how far the reading is."""
EPOCH = pd.Timestamp(0, tz="UTC").as_unit("s")
"""Counted in seconds: in nanoseconds a year such as 4 cannot be told."""


def gpx_table(data: bytes, name: str, how_far: HowFar = untold) -> Table:
    """Time, position and height of each point of the tracks of a file, or of its routes where it has no tracks.

    Parameters are those of `model.traces.recorded_csv.csv_table`.

    Raises
    ------
    InputError
        Where there are no usable positions.
    """
    rows, cut_off = _rows(data, name, how_far)
    samples = _places(rows)
    stamps = pd.to_datetime(pd.Series([row[3] for row in rows]), errors="coerce", utc=True, format="ISO8601")
    time_s = np.asarray((stamps - EPOCH).dt.total_seconds(), dtype=float)
    findings = [Finding("cut_off")] if cut_off else []
    timed = np.isfinite(time_s)
    if not timed.any():
        raise InputError("route-without-times", name=name)
    if not timed.all():
        findings.append(Finding("rows_without_time", "time_s", int((~timed).sum())))
    samples = {key: values[timed] for key, values in ({"time_s": time_s} | samples).items()}
    for key in ("latitude", "longitude", "elevation_m"):
        beyond = _beyond(samples[key], key)
        if beyond.any():
            findings.append(Finding("out_of_range", key, int(beyond.sum())))
            samples[key] = np.where(beyond, np.nan, samples[key])
    if not np.isfinite(samples["elevation_m"]).any():
        del samples["elevation_m"]
    return Table(samples, gpx_columns(samples), tuple(findings))


def gpx_columns(samples: SamplesByKey) -> tuple[Column, ...]:
    """What there is of a GPX file, as columns: all of it named and in one unit, as the format has it."""
    return tuple(
        each for each in COLUMNS if each.meaning in samples and np.isfinite(samples[each.meaning]).any()
    )


def has_times(data: bytes) -> bool:
    """Whether a GPX file has a time at any of its points; one beside them says when it was written."""
    points = re.search(rb"<(?:\w+:)?(?:trkpt|rtept)\b.*", data.replace(b"\0", b""), re.DOTALL)
    return points is not None and re.search(rb"<(?:\w+:)?time\b", points[0]) is not None


def gpx_places(data: bytes, name: str, how_far: HowFar = untold) -> SamplesByKey:
    """Positions [degrees] and heights [m] of a route without times; raises `InputError` as `gpx_table`."""
    places = _places(_rows(data, name, how_far, fewest=2)[0])
    return {key: np.where(_beyond(values, key), np.nan, values) for key, values in places.items()}


def _rows(
    data: bytes, name: str, how_far: HowFar, fewest: int = FEWEST_ROWS
) -> tuple[list[tuple[str | None, ...]], bool]:
    """The points of the tracks, or else of the routes, as they are written, and whether the file breaks off."""
    data = as_utf8(data, name)
    # entities can be made to grow without bound, and no recorder writes them
    if re.search(rb"<!(doctype|entity)", data, re.IGNORECASE):
        raise InputError("gpx-with-entities", name=name)
    found, cut_off = _points(re.sub(rb"^\s*<\?xml[^>]*\?>", b"", data), name, how_far)
    rows = found["trkpt"] or found["rtept"]
    if len(rows) < fewest:
        raise InputError("gpx-points", name=name, points=len(rows), least=fewest, breaks_off=cut_off)
    return rows, cut_off


def _places(rows: list[tuple[str | None, ...]]) -> SamplesByKey:
    keys = ("latitude", "longitude", "elevation_m")
    return {
        key: pd.to_numeric(pd.Series([row[place] for row in rows], dtype=object), errors="coerce").to_numpy(float)
        for place, key in enumerate(keys)
    }


def _beyond(values: Array, key: str) -> NDArray[np.bool_]:
    return (values < FIELDS[key].minimum) | (values > FIELDS[key].maximum)


def _points(data: bytes, name: str, how_far: HowFar) -> tuple[dict[str, list[tuple[str | None, ...]]], bool]:
    """Latitude, longitude, height and time of each point as they are written, by kind; whether the file breaks off."""
    found: dict[str, list[tuple[str | None, ...]]] = {kind: [] for kind in POINTS}
    source = io.BytesIO(data)
    try:
        for _, element in ElementTree.iterparse(source):
            kind = element.tag.rpartition("}")[2]
            if kind in found:
                inside = {child.tag.rpartition("}")[2]: child.text for child in element}
                place = element.get("lat"), element.get("lon")
                found[kind].append((*place, inside.get("ele"), inside.get("time")))
                if len(found[kind]) > MOST_ROWS:
                    raise InputError("recording-too-many-rows", name=name, most=MOST_ROWS)
                if len(found[kind]) % TOLD_AT == 0:
                    how_far(source.tell() / len(data))
                element.clear()
    except ElementTree.ParseError:
        if not any(found.values()):
            raise InputError("gpx-unreadable", name=name) from None
        return found, True
    return found, False
