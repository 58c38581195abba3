"""Of a recording the stretch that is taken, between gaps in which the car drove, and its speed at every second."""

from __future__ import annotations

from dataclasses import dataclass, field

import numpy as np

from model.describe.fields import InputError
from model.describe.figures import Quantity
from model.describe.trace import Array
from model.describe.units import KMH_PER_MPS
from model.traces.cleaning import LARGEST_CHANGE_MPS2, Effect, without_noise
from model.traces.findings import Finding
from model.traces.positions import speed_of_positions, way_m
from model.traces.recorded_csv import FEWEST_ROWS, FIELDS, SamplesByKey
from model.traces.recorded_names import POSITION
from model.traces.resampling import LONGEST_GAP_S, LONGEST_S, SHORTEST_S, STANDING_MPS, speed_at_steps, steps_of

LONGEST_POSITION_GAP_S = 30.0
"""Positions may be missing for so long, as in a tunnel: the way between is then driven at an even speed."""
HILLIEST_M_PER_KM = 100.0
"""Metres up and down a kilometre beyond what roads have: a pass of 7 % has 70, in feet 230."""
TOWN_KMH = 15.0
"""A drive that never gets faster is asked about: it may be written in m/s."""


@dataclass(frozen=True)
class DrivenPart:
    """A stretch of a recording without gaps: from when to when [s after its first row], and how far [m]."""

    start_s: float
    end_s: float
    distance_m: float


@dataclass
class Gathered:
    """What is gathered on the way."""

    findings: list[Finding] = field(default_factory=list)
    effects: list[Effect] = field(default_factory=list)

    def add(self, what: str, column: str = "", count: int = 0, value: float | None = None) -> None:
        """Note a finding."""
        self.findings.append(Finding(what, column, count, value))


def known_of(
    samples: SamplesByKey, key: str, notes: Gathered, longest_gap_s: float = np.inf
) -> tuple[Array, Array] | None:
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


def part_taken(
    samples: SamplesByKey, has_speed: bool, part: int | None, off: frozenset[str], name: str, notes: Gathered
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


def speeds_of(
    samples: SamplesByKey, has_speed: bool, off: frozenset[str], name: str, notes: Gathered
) -> tuple[Array, Array, Array | None]:
    """Every whole second [s], the cleaned speed there, and what it may be in doubt (`without_noise`) [m/s]."""
    if has_speed:
        known = np.isfinite(samples["speed_kmh"])
        if not known.all():
            notes.add("filled", "speed_kmh", int(np.count_nonzero(~known)))
        sample_s = samples["time_s"][known]
        speed = speed_at_steps(sample_s, samples["speed_kmh"][known] / KMH_PER_MPS)
        speed, in_doubt, noise, effects = without_noise(speed, off)
        notes.effects += effects
        if in_doubt is not None:
            notes.add("speed_noise_left", "speed_kmh", value=noise * KMH_PER_MPS)
    else:
        known = np.isfinite(samples["latitude"]) & np.isfinite(samples["longitude"])
        sample_s = samples["time_s"][known]
        speed, scatter_m = speed_of_positions(sample_s, samples["latitude"][known], samples["longitude"][known])
        in_doubt = None
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
    return time_s, speed, in_doubt


def ask_about_speed(samples: SamplesByKey, speed: Array, distance: Array, has_speed: bool, notes: Gathered) -> None:
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


def ask_about_height(elevation_m: Array, length_m: float, notes: Gathered) -> None:
    """Whether the heights of a road may be in another unit than they were taken for."""
    up_and_down = float(np.abs(np.diff(elevation_m)).sum()) / (length_m / 1000)
    if up_and_down > HILLIEST_M_PER_KM:
        notes.add("height_unit", "elevation_m", value=up_and_down)
