"""Recorded drives: a file with speed or positions over time to a trace, and what was measured beside it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import asdict, dataclass, replace
from pathlib import Path

import numpy as np

from model.describe.fields import InputError
from model.describe.figures import Quantity, Several
from model.describe.scenario import Driver
from model.describe.trace import Array, Trace
from model.describe.units import J_PER_KWH
from model.traces.cleaning import Effect, climb_of, in_time, road_from, without_jumps
from model.traces.findings import Finding
from model.traces.recorded_csv import FEWEST_ROWS, HowFar, SamplesByKey, csv_table, untold
from model.traces.recorded_gpx import gpx_columns, gpx_places, gpx_table, has_times
from model.traces.recorded_names import Column
from model.traces.resampling import LONGEST_GAP_S, SteeperThanRoadsError, is_fast, mean_between
from model.traces.route_only import Route, RouteSettings, drive_route, route_of
from model.traces.stretches import (
    DrivenPart,
    Gathered,
    ask_about_height,
    ask_about_speed,
    known_of,
    part_taken,
    speeds_of,
)

MOST_BYTES = 30_000_000
ENDINGS = (".csv", ".tsv", ".txt", ".gpx")


@dataclass(frozen=True)
class Measured:
    """What the recording says about the battery, at its terminals.

    Out and in are counted over the same 1 s steps as in the model, each step by its mean power.
    `own_rate_in_kwh` and `own_rate_out_kwh` are counted at the recording's own rate, None where that is no faster: what
    goes in and out within a second is hidden in the others.
    """

    battery_out_kwh: float
    battery_in_kwh: float
    battery_net_kwh: float
    recovered_share_of_output: float | None
    soc_start: float | None
    soc_end: float | None
    own_rate_out_kwh: float | None = None
    own_rate_in_kwh: float | None = None


@dataclass(frozen=True)
class Recording:
    """A recorded drive, or the part of it that was taken.

    Parameters
    ----------
    trace : Trace
        The drive in steps of 1 s. It holds no positions.
    soc_start : float, optional
        Charge at its start [1].
    measured : Measured, optional
        The battery's energy, where its power was recorded.
    columns : tuple of Column
        What the columns of the file were taken for.
    effects : tuple of Effect
        What each step of cleaning did.
    findings : tuple of Finding
        What was left out or filled, and what should be looked at.
    parts : tuple of DrivenPart
        The stretches between gaps.
    part : int
        Which of them was taken.
    power_w : steps, optional
        Measured power at the battery's terminals in each step [W].
    heights : tuple of arrays, optional
        Heights as they stand in the file [m], and when each was taken [s]; a route has its own.
    route : Route, optional
        What was driven, where there were no times: its speeds are then made up.
    in_doubt : Trace, optional
        The same drive without the scatter that may be a restless foot's: how far its answer lies off tells how far this
        one may.
    """

    trace: Trace
    soc_start: float | None
    measured: Measured | None
    columns: tuple[Column, ...]
    effects: tuple[Effect, ...]
    findings: tuple[Finding, ...]
    parts: tuple[DrivenPart, ...]
    part: int
    power_w: Array | None = None
    heights: tuple[Array, Array] | None = None
    route: Route | None = None
    in_doubt: Trace | None = None

    @property
    def climb_recorded_m(self) -> float | None:
        """Climb of the heights as they stand in the file [m]; None where there are none."""
        return None if self.heights is None else climb_of(self.heights[1])

    def answer(self) -> dict[str, object]:
        """What was recognised, cleaned and found, for an answer file."""
        return {
            "recognised": [asdict(each) for each in self.columns],
            "cleaning": [asdict(each) | {"large": each.is_large} for each in self.effects],
            "findings": [asdict(each) | {"asks": each.asks} for each in self.findings],
            "parts": [asdict(each) for each in self.parts],
            "part": self.part,
            "climb_recorded_m": self.climb_recorded_m,
            "climb_used_m": self.trace.climb_m,
        }


def read_recording(
    source: str | Path | bytes,
    name: str = "",
    *,
    columns: Mapping[str, tuple[str, str]] | None = None,
    off: frozenset[str] = frozenset(),
    part: int | None = None,
    route: tuple[Driver, RouteSettings] | None = None,
    how_far: HowFar = untold,
) -> Recording:
    """Read a recorded drive from a table (.csv, .tsv, .txt) or from positions (.gpx).

    Parameters
    ----------
    source : path or bytes
        The file, or its content.
    name : str
        What to call it; with bytes, its ending tells the format. Left empty: the file's own name.
    columns : mapping, optional
        What columns mean that would be taken for something else: by name, the meaning and its unit.
    off : frozenset
        Steps of cleaning to be left out, keys of `model.traces.cleaning.STEPS`.
    part : int, optional
        Which part between gaps to take, from 0; the longest when left out.
    route : tuple, optional
        Who drives positions without times, or distances with heights, and how; without it they are refused.
    how_far : callable
        Called now and then with how much of the file has been read [1].

    Raises
    ------
    InputError
        Where the file cannot be used.
    """
    if not isinstance(source, bytes):
        name = name or Path(source).name
    name = name or "recording.csv"
    ending = Path(name).suffix.lower()
    if ending not in ENDINGS:
        raise InputError("recording-of-other-kind", name=name, kinds=Several(ENDINGS))
    data = source if isinstance(source, bytes) else _content(source, name)
    if len(data) > MOST_BYTES:
        raise InputError("recording-too-large", name=name, most_mb=Quantity(MOST_BYTES / 1e6, "", 3, trimmed=True))
    if not data.strip():
        raise InputError("recording-empty", name=name)
    if ending == ".gpx" and route is not None and not has_times(data):
        places = gpx_places(data, name, how_far)
        return as_driven(route_of(places, name), *route, name, gpx_columns(places))
    table = gpx_table(data, name, how_far) if ending == ".gpx" else csv_table(data, name, columns, how_far)
    if "time_s" not in table.samples:
        if route is None:
            raise InputError("route-without-times", name=name)
        return as_driven(route_of(table.samples, name), *route, name, table.columns, table.findings)
    return recording_of(table.samples, table.columns, table.findings, name, off=off, part=part)


def as_driven(
    route: Route,
    driver: Driver,
    settings: RouteSettings,
    name: str,
    columns: tuple[Column, ...] = (),
    findings: tuple[Finding, ...] = (),
) -> Recording:
    """A route as somebody would drive it, in the place of a recording."""
    trace = drive_route(route, driver, settings, name)
    whole = DrivenPart(0.0, trace.duration_s, trace.distance_m)
    notes = Gathered([Finding("speeds_assumed")])
    if route.is_steep:
        notes.add("steep", "elevation_m")
    elif not route.elevation_m.any():
        notes.add("flat")
    ask_about_height(route.elevation_m, route.length_m, notes)
    return Recording(trace, None, None, columns, (), (*notes.findings, *findings), (whole,), 0, route=route)


def driven_anew(recording: Recording, driver: Driver, settings: RouteSettings) -> Recording:
    """A recording of a route, driven by somebody else or in another way; one with times as it is."""
    if recording.route is None:
        return recording
    trace = drive_route(recording.route, driver, settings, recording.trace.name)
    return replace(recording, trace=trace, parts=(DrivenPart(0.0, trace.duration_s, trace.distance_m),))


def _content(source: str | Path, name: str) -> bytes:
    try:
        with open(source, "rb") as file:
            return file.read(MOST_BYTES + 1)
    except OSError as error:
        raise InputError("recording-unreadable", name=name, why=str(error.strerror)) from None


def recording_of(
    samples: SamplesByKey,
    columns: tuple[Column, ...] = (),
    findings: tuple[Finding, ...] = (),
    name: str = "recording",
    *,
    off: frozenset[str] = frozenset(),
    part: int | None = None,
) -> Recording:
    """Clean samples at any rate, and bring them to a trace in steps of 1 s; raises `InputError` as `read_recording`."""
    notes = Gathered(list(findings))
    # counted from the first, since times of other centuries that differ by little may come to the same then
    samples = samples | {"time_s": samples["time_s"] - samples["time_s"][0]}
    samples, notes.effects = in_time(samples, off, name)
    has_speed = bool(np.isfinite(samples.get("speed_kmh", np.empty(0))).sum() >= FEWEST_ROWS)
    if has_speed and "jumps" not in off:
        samples, jumps = without_jumps(samples)
        notes.effects += jumps
    samples, parts, taken = part_taken(samples, has_speed, part, off, name, notes)
    time_s, speed, in_doubt = speeds_of(samples, has_speed, off, name, notes)
    distance = np.concatenate([[0.0], np.cumsum(np.diff(time_s) * (speed[1:] + speed[:-1]) / 2)])
    ask_about_speed(samples, speed, distance, has_speed, notes)
    heights = known_of(samples, "elevation_m", notes)
    elevation = elevation_of(heights, time_s, distance, off, notes)
    ambient, battery_temp = known_of(samples, "ambient_c", notes), known_of(samples, "battery_temp_c", notes)
    charge, cabin = known_of(samples, "soc_pct", notes), known_of(samples, "cabin_kw", notes, LONGEST_GAP_S)
    soc = (None, None) if charge is None else (float(charge[1][0] / 100), float(charge[1][-1] / 100))
    trace = Trace(
        time_s=time_s,
        speed_mps=speed,
        elevation_m=elevation,
        name=name,
        ambient_c=None if ambient is None else np.interp(time_s, *ambient),
        battery_temp_c=None if battery_temp is None else np.interp(time_s, *battery_temp),
        recorded=True,
        cabin_w=None if cabin is None else mean_between(*cabin, time_s[:-1], time_s[1:]).clip(min=0) * 1000,
    )
    if "battery_power_kw" not in samples and {"battery_a", "battery_v"} <= samples.keys():
        samples = samples | {"battery_power_kw": samples["battery_a"] * samples["battery_v"] / 1000}
        notes.add("two_sources", "battery_power_kw")
    power = known_of(samples, "battery_power_kw", notes, LONGEST_GAP_S)
    power_w = None if power is None else mean_between(*power, time_s[:-1], time_s[1:]) * 1000
    return Recording(
        trace=trace,
        soc_start=soc[0],
        measured=None if power is None or power_w is None else _measured(power, power_w, trace, soc, notes),
        columns=columns,
        effects=tuple(notes.effects),
        findings=tuple(notes.findings),
        parts=parts,
        part=taken,
        power_w=power_w,
        heights=heights,
        in_doubt=None if in_doubt is None or not in_doubt.any() else at_other_speeds(trace, in_doubt),
    )


def at_other_speeds(trace: Trace, speed_mps: Array) -> Trace:
    """The same road at other speeds, which cover nearly the same distance."""
    along, other = (np.append(0.0, np.cumsum(trace.step_s * (speed[1:] + speed[:-1]) / 2))
                    for speed in (trace.speed_mps, speed_mps))  # fmt: skip
    elevation = np.interp(other * along[-1] / other[-1], along, trace.elevation_m)
    return replace(trace, speed_mps=speed_mps, elevation_m=elevation)


def elevation_of(
    heights: tuple[Array, Array] | None, time_s: Array, distance: Array, off: frozenset[str], notes: Gathered
) -> Array:
    """Height at each point of a trace [m] from heights as recorded (`Recording.heights`)."""
    if heights is None:
        notes.add("flat")
        return np.zeros_like(time_s)
    try:
        height, scatter_m, effects = road_from(*heights, time_s, distance, off)
    except SteeperThanRoadsError:
        notes.add("steep", "elevation_m")
        return np.zeros_like(time_s)
    notes.effects += effects
    if scatter_m:
        notes.add("heights_scatter", "elevation_m", value=scatter_m)
    ask_about_height(height, float(distance[-1]), notes)
    return height


def _measured(
    power: tuple[Array, Array], power_w: Array, trace: Trace, soc: tuple[float | None, float | None], notes: Gathered
) -> Measured:
    """Totals of the measured battery power over the trace."""
    energy = power_w / J_PER_KWH
    given, taken = float(energy[energy > 0].sum()), float(-energy[energy < 0].sum())
    parked = float(-energy[(energy < 0) & (trace.step_m == 0)].sum())
    if parked > 0.05 * given:
        notes.add("charged_standing", "battery_power_kw", value=parked)
    if given < taken and trace.elevation_m[-1] >= trace.elevation_m[0]:
        notes.add("power_sign", "battery_power_kw")
    measured = Measured(
        battery_out_kwh=given,
        battery_in_kwh=taken,
        battery_net_kwh=given - taken,
        recovered_share_of_output=taken / given if given else None,
        soc_start=soc[0],
        soc_end=soc[1],
    )
    if not is_fast(power[0]):
        return measured
    finer = mean_between(*power, power[0][:-1], power[0][1:]) * np.diff(power[0]) * 1000 / J_PER_KWH
    return replace(
        measured, own_rate_out_kwh=float(finer[finer > 0].sum()), own_rate_in_kwh=float(-finer[finer < 0].sum())
    )
