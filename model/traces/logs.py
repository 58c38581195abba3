"""Recorded drives: a file with speed or positions over time to a trace, and what was measured beside it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import asdict, dataclass, field, replace
from pathlib import Path

import numpy as np

from model.describe.fields import InputError
from model.describe.figures import Quantity, Several
from model.describe.scenario import Driver
from model.describe.trace import Array, Trace
from model.describe.units import J_PER_KWH, KMH_PER_MPS
from model.traces.cleaning import (
    LARGEST_CHANGE_MPS2,
    NOISE_LEFT_MPS,
    NOISY_MPS,
    Effect,
    climb_of,
    in_time,
    road_from,
    without_jumps,
    without_noise,
)
from model.traces.findings import Finding
from model.traces.positions import speed_of_positions, way_m
from model.traces.recorded_csv import FEWEST_ROWS, FIELDS, SamplesByKey, csv_table
from model.traces.recorded_gpx import gpx_route, gpx_table, has_times
from model.traces.recorded_names import POSITION, Column
from model.traces.resampling import (
    LONGEST_GAP_S,
    LONGEST_S,
    SHORTEST_S,
    STANDING_MPS,
    SteeperThanRoadsError,
    is_fast,
    mean_between,
    speed_at_steps,
    steps_of,
)
from model.traces.route_only import Route, RouteSettings

MOST_BYTES = 30_000_000
ENDINGS = (".csv", ".tsv", ".txt", ".gpx")
LONGEST_POSITION_GAP_S = 30.0
"""Positions may be missing for so long, as in a tunnel: the way between is then driven at an even speed."""
TOWN_KMH = 15.0
"""A drive that never gets faster is asked about: it may be written in m/s."""
HILLIEST_M_PER_KM = 100.0
"""Metres up and down a kilometre beyond what roads have: a pass of 7 % has 70, in feet 230."""


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
class DrivenPart:
    """A stretch of a recording without gaps: from when to when [s after its first row], and how far [m]."""

    start_s: float
    end_s: float
    distance_m: float


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
    climb_recorded_m : float, optional
        Climb of the heights as they stand in the file [m].
    route : Route, optional
        What was driven, where there were no times: its speeds are then made up.
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
    climb_recorded_m: float | None = None
    route: Route | None = None

    def told(self) -> dict[str, object]:
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


@dataclass
class _Notes:
    """What is gathered on the way."""

    findings: list[Finding] = field(default_factory=list)
    effects: list[Effect] = field(default_factory=list)

    def add(self, what: str, column: str = "", count: int = 0, value: float | None = None) -> None:
        self.findings.append(Finding(what, column, count, value))


def read_recording(
    source: str | Path | bytes,
    name: str = "",
    *,
    columns: Mapping[str, tuple[str, str]] | None = None,
    off: frozenset[str] = frozenset(),
    part: int | None = None,
    route: tuple[Driver, RouteSettings] | None = None,
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
        Who drives positions without times, and how; without it they are refused.

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
        return as_driven(*gpx_route(data, name, *route))
    table = gpx_table(data, name) if ending == ".gpx" else csv_table(data, name, columns)
    return recording_of(table.samples, table.columns, table.findings, name, off=off, part=part)


def as_driven(route: Route, trace: Trace) -> Recording:
    """A route as somebody would drive it, in the place of a recording."""
    whole = DrivenPart(0.0, trace.duration_s, trace.distance_m)
    found = (Finding("speeds_assumed"), *(() if route.elevation_m.any() else (Finding("flat"),)))
    return Recording(trace, None, None, (), (), found, (whole,), 0, route=route)


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
    notes = _Notes(list(findings))
    # counted from the first, since times of other centuries that differ by little may come to the same then
    samples = samples | {"time_s": samples["time_s"] - samples["time_s"][0]}
    samples, notes.effects = in_time(samples, off, name)
    has_speed = bool(np.isfinite(samples.get("speed_kmh", np.empty(0))).sum() >= FEWEST_ROWS)
    if has_speed and "jumps" not in off:
        samples, jumps = without_jumps(samples)
        notes.effects += jumps
    samples, parts, taken = _part_taken(samples, has_speed, part, off, name, notes)
    time_s, speed = _speeds(samples, has_speed, off, name, notes)
    distance = np.concatenate([[0.0], np.cumsum(np.diff(time_s) * (speed[1:] + speed[:-1]) / 2)])
    _ask_about_speed(samples, speed, distance, has_speed, notes)
    elevation, climb = _elevation(_known(samples, "elevation_m", notes), time_s, distance, off, notes)
    ambient, battery_temp = _known(samples, "ambient_c", notes), _known(samples, "battery_temp_c", notes)
    charge, cabin = _known(samples, "soc_pct", notes), _known(samples, "cabin_kw", notes, LONGEST_GAP_S)
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
    power = _known(samples, "battery_power_kw", notes, LONGEST_GAP_S)
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
        climb_recorded_m=climb,
    )


def _known(samples: SamplesByKey, key: str, notes: _Notes, longest_gap_s: float = np.inf) -> tuple[Array, Array] | None:
    """Time and value of the filled cells of a column; None where there are none or too many are missing."""
    if key not in samples:
        return None
    known = np.isfinite(samples[key])
    time_s = samples["time_s"]
    if not known.any():
        notes.add("column_empty", key)
        return None
    gap = float(np.diff(np.concatenate([time_s[:1], time_s[known], time_s[-1:]])).max())
    if gap > longest_gap_s:
        notes.add("column_gap", key, value=gap)
        return None
    if not known.all():
        notes.add("filled", key, int(np.count_nonzero(~known)))
    return time_s[known], samples[key][known]


def _part_taken(
    samples: SamplesByKey, has_speed: bool, part: int | None, off: frozenset[str], name: str, notes: _Notes
) -> tuple[SamplesByKey, tuple[DrivenPart, ...], int]:
    """Rows of the stretch to be taken; gaps in which the car drove set stretches apart, and nothing is invented."""
    if has_speed:
        at = np.flatnonzero(np.isfinite(samples["speed_kmh"]))
        time_s, speed = samples["time_s"][at], samples["speed_kmh"][at] / KMH_PER_MPS
        way = np.append(0.0, np.cumsum(np.diff(time_s) * (speed[1:] + speed[:-1]).clip(min=0) / 2))
        moving = np.maximum(speed[1:], speed[:-1]) >= STANDING_MPS
        longest = LONGEST_GAP_S
    else:
        if not samples.keys() >= POSITION:
            raise InputError("recording-too-few-speeds", name=name, least=FEWEST_ROWS)
        at = np.flatnonzero(np.isfinite(samples["latitude"]) & np.isfinite(samples["longitude"]))
        if len(at) < FEWEST_ROWS:
            raise InputError("recording-too-few-positions", name=name, least=FEWEST_ROWS)
        time_s = samples["time_s"][at]
        steps = np.hypot(*(np.diff(each) for each in way_m(samples["latitude"][at], samples["longitude"][at])))
        way = np.append(0.0, np.cumsum(steps))
        moving = steps > STANDING_MPS * np.diff(time_s)
        longest = LONGEST_POSITION_GAP_S
    gap = np.diff(time_s)
    cuts = np.flatnonzero((gap > longest) & moving) if "gaps" not in off else np.empty(0, dtype=int)
    starts, ends = np.append(0, cuts + 1), np.append(cuts, len(at) - 1)
    parts = tuple(
        DrivenPart(float(time_s[start]), float(time_s[end]), float(way[end] - way[start]))
        for start, end in zip(starts, ends, strict=True)
        if end - start + 1 >= FEWEST_ROWS and time_s[end] - time_s[start] >= SHORTEST_S
    )
    whole = time_s[-1] - time_s[0]
    if not parts or whole > LONGEST_S:
        raise InputError(
            "recording-duration", name=name, lasts=Quantity(round(whole), "s", 6, trimmed=True),
            least=Quantity(SHORTEST_S, "s", places=0), most=Quantity(LONGEST_S / 3600, "hours", places=0),
        )  # fmt: skip
    taken = max(range(len(parts)), key=lambda place: parts[place].distance_m) if part is None else part
    if not 0 <= taken < len(parts):
        raise InputError("recording-no-such-part", name=name, part=taken + 1, parts=len(parts))
    chosen = parts[taken]
    inside = (samples["time_s"] >= chosen.start_s) & (samples["time_s"] <= chosen.end_s)
    if len(cuts):
        after = sum(each.distance_m for each in parts)
        notes.effects.append(Effect("gaps", len(cuts), after, chosen.distance_m))
    here = (time_s[:-1] >= chosen.start_s) & (time_s[1:] <= chosen.end_s)
    if not has_speed:
        if bridged := int(np.count_nonzero(here & moving & (gap > LONGEST_GAP_S))):
            notes.add("bridged", count=bridged)
    elif stood := round(float(gap[here & ~moving & (gap > longest)].sum())):
        notes.add("standing_unrecorded", count=stood)
    samples = {key: values[inside] for key, values in samples.items()}
    return samples | {"time_s": samples["time_s"] - samples["time_s"][0]}, parts, taken


def _speeds(
    samples: SamplesByKey, has_speed: bool, off: frozenset[str], name: str, notes: _Notes
) -> tuple[Array, Array]:
    """Every whole second [s], and the cleaned speed there [m/s]."""
    if has_speed:
        known = np.isfinite(samples["speed_kmh"])
        if not known.all():
            notes.add("filled", "speed_kmh", int(np.count_nonzero(~known)))
        sample_s = samples["time_s"][known]
        speed = speed_at_steps(sample_s, samples["speed_kmh"][known] / KMH_PER_MPS)
        speed, noise, effects = without_noise(speed, off)
        notes.effects += effects
        if noise > NOISE_LEFT_MPS and not effects and noise < NOISY_MPS:
            notes.add("speed_noise_left", "speed_kmh", value=noise * KMH_PER_MPS)
    else:
        known = np.isfinite(samples["latitude"]) & np.isfinite(samples["longitude"])
        sample_s = samples["time_s"][known]
        speed, scatter_m = speed_of_positions(sample_s, samples["latitude"][known], samples["longitude"][known])
        notes.add("from_positions", "speed_kmh", value=scatter_m)
    time_s = steps_of(sample_s)
    most = FIELDS["speed_kmh"].maximum
    change = np.abs(np.diff(speed) / np.diff(time_s))
    if not speed.any():
        raise InputError("recording-never-moves", name=name)
    if speed.max() * KMH_PER_MPS > most:
        raise InputError(
            "recording-too-fast", name=name, speed=Quantity(float(speed.max()) * KMH_PER_MPS, "km/h", places=0),
            after_s=int(time_s[speed.argmax()]), most=Quantity(most, "km/h", places=0),
        )  # fmt: skip
    if change.max() > LARGEST_CHANGE_MPS2:
        at = int(change.argmax())
        before, after = speed[at : at + 2] * KMH_PER_MPS
        raise InputError(
            "recording-jumps", name=name, before=Quantity(float(before), "km/h", places=0),
            after=Quantity(float(after), "km/h", places=0), after_s=int(time_s[at]),
            most=Quantity(LARGEST_CHANGE_MPS2 * KMH_PER_MPS, "km/h", places=0),
        )  # fmt: skip
    return time_s, speed


def _ask_about_speed(samples: SamplesByKey, speed: Array, distance: Array, has_speed: bool, notes: _Notes) -> None:
    """Whether the speeds may be in another unit than they were taken for."""
    top_kmh = float(speed.max()) * KMH_PER_MPS
    if top_kmh < TOWN_KMH:
        notes.add("speed_unit", "speed_kmh", value=top_kmh)
    if has_speed and samples.keys() >= POSITION:
        known = np.isfinite(samples["latitude"]) & np.isfinite(samples["longitude"])
        if np.count_nonzero(known) >= FEWEST_ROWS:
            north, east = way_m(samples["latitude"][known][::5], samples["longitude"][known][::5])
            by_places = float(np.hypot(np.diff(north), np.diff(east)).sum())
            if by_places > 500 and not 0.8 < distance[-1] / by_places < 1.25:
                notes.add("speed_places", "speed_kmh", value=float(distance[-1]) / by_places)


def _elevation(
    known: tuple[Array, Array] | None, time_s: Array, distance: Array, off: frozenset[str], notes: _Notes
) -> tuple[Array, float | None]:
    """Height at each point of the trace [m], and the climb as recorded [m]."""
    if known is None:
        notes.add("flat")
        return np.zeros_like(time_s), None
    try:
        height, effects = road_from(*known, time_s, distance, off)
    except SteeperThanRoadsError:
        notes.add("steep", "elevation_m")
        return np.zeros_like(time_s), climb_of(known[1])
    notes.effects += effects
    up_and_down = float(np.abs(np.diff(height)).sum()) / (distance[-1] / 1000)
    if up_and_down > HILLIEST_M_PER_KM:
        notes.add("height_unit", "elevation_m", value=up_and_down)
    return height, climb_of(known[1])


def _measured(
    power: tuple[Array, Array], power_w: Array, trace: Trace, soc: tuple[float | None, float | None], notes: _Notes
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
