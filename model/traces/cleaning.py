"""Cleaning a recording in named steps, each of which tells what it did and can be left out."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from model.describe.fields import InputError
from model.describe.trace import Array
from model.describe.units import KMH_PER_MPS
from model.traces.recorded_csv import SamplesByKey
from model.traces.resampling import (
    ELEVATION_GRID_M,
    ELEVATION_REACH_M,
    STANDING_MPS,
    height_reach_m,
    noise_of,
    road_height,
    stray_heights,
)
from model.traces.smoothing import noise_in, smoothed

STEPS = (
    "duplicates", "backward", "gaps", "jumps", "noise", "standing", "stray_heights", "height",
)  # fmt: skip
"""The steps in their order; `own_road.ftl` says what each does."""
LARGE = {"distance": 0.01, "climb": 0.1}
"""A change of the whole distance or climb beyond these shares is pointed out [1]."""
LARGEST_CHANGE_MPS2 = 12.0
"""More than tyres can do: a greater change of speed is an error of the recording."""
JUMP_S = 3.0
"""A jump there and back within so long is one."""
NOISY_MPS = 0.6 / KMH_PER_MPS
"""Scatter from which speeds are smoothed: standard cycles at 1 Hz have up to 0.5 km/h, feet included."""
NOISE_LEFT_MPS = 0.25 / KMH_PER_MPS
"""Scatter below that which is told of: drives built of even ramps have none."""
CARS_OWN = 0.8
"""Of what wanders in a speed so much is taken for the car's: it starts and stops, where positions only go on."""


@dataclass(frozen=True)
class Effect:
    """What a step did: how many rows, seconds or parts it touched, and the whole before and after it [m].

    `before_m` and `after_m` are the distance; for the steps about height they are the climb.
    """

    step: str
    count: int
    before_m: float
    after_m: float

    @property
    def is_about_height(self) -> bool:
        """Whether its metres are climbed rather than driven."""
        return self.step in ("stray_heights", "height")

    @property
    def is_large(self) -> bool:
        """Whether it changed the whole by more than a cleaning should without a word."""
        most = LARGE["climb" if self.is_about_height else "distance"]
        return abs(self.after_m - self.before_m) > most * max(self.before_m, 1.0)


def in_time(samples: SamplesByKey, off: frozenset[str], name: str) -> tuple[SamplesByKey, list[Effect]]:
    """Rows whose times rise; of two with one time the first.

    Raises
    ------
    InputError
        Where rows would have to be left out and that step is `off`.
    """
    effects = []
    for step, wrong in (("duplicates", _same_time), ("backward", _earlier)):
        out = wrong(samples["time_s"])
        if not out.any():
            continue
        if step in off:
            raise InputError("recording-times-not-rising", name=name, rows=int(out.sum()))
        kept = {key: values[~out] for key, values in samples.items()}
        effects.append(Effect(step, int(out.sum()), _driven(samples), _driven(kept)))
        samples = kept
    return samples, effects


def _same_time(time_s: Array) -> NDArray[np.bool_]:
    return np.diff(time_s, prepend=-np.inf) == 0


def _earlier(time_s: Array) -> NDArray[np.bool_]:
    return time_s < np.maximum.accumulate(time_s)


def _driven(samples: SamplesByKey) -> float:
    """Distance by the speeds, counted over the rows that have one [m]; 0 where there are none."""
    if "speed_kmh" not in samples:
        return 0.0
    known = np.isfinite(samples["speed_kmh"])
    time_s = np.maximum.accumulate(samples["time_s"][known])
    return float(np.trapezoid(samples["speed_kmh"][known].clip(min=0), time_s)) / KMH_PER_MPS


def without_jumps(samples: SamplesByKey) -> tuple[SamplesByKey, list[Effect]]:
    """Speeds left out to which a car cannot have changed: there and back within a moment, or next to an end."""
    known = np.flatnonzero(np.isfinite(samples["speed_kmh"]))
    time_s, speed = samples["time_s"][known], samples["speed_kmh"][known] / KMH_PER_MPS
    change = np.diff(speed) / np.maximum(np.diff(time_s), 0.5)
    steps = np.flatnonzero(np.abs(change) > LARGEST_CHANGE_MPS2)
    out = np.zeros(len(known), dtype=bool)
    at = 0
    while at < len(steps):
        here = steps[at]
        after = steps[at + 1] if at + 1 < len(steps) else None
        if after is not None and time_s[after] - time_s[here] <= JUMP_S and change[here] * change[after] < 0:
            out[here + 1 : after + 1] = True
            at += 1
        elif time_s[here] - time_s[0] < JUMP_S:
            out[: here + 1] = True
        elif time_s[-1] - time_s[here + 1] < JUMP_S:
            out[here + 1 :] = True
        at += 1
    if not out.any():
        return samples, []
    cleaned = samples | {"speed_kmh": samples["speed_kmh"].copy()}
    cleaned["speed_kmh"][known[out]] = np.nan
    return cleaned, [Effect("jumps", int(out.sum()), _driven(samples), _driven(cleaned))]


def without_noise(speed_mps: Array, off: frozenset[str]) -> tuple[Array, Array | None, float, list[Effect]]:
    """Speed at each second without scatter, what it may be in doubt, the scatter that was found [m/s], what was done.

    In doubt, scatter that is too little to be told from a restless foot is gone, which the speed keeps.
    """
    noise = noise_of(speed_mps, speed_mps > 1.0)
    if noise <= NOISE_LEFT_MPS or "noise" in off:
        return speed_mps, None, noise, []
    power = noise_in(speed_mps[speed_mps > 0], own=CARS_OWN).of_values()
    # a car at rest stays there
    moving = np.where(speed_mps == 0, 0.0, smoothed(speed_mps, power).clip(min=0))
    calm = moving if "standing" in off else np.where(moving < max(STANDING_MPS, noise), 0.0, moving)
    if noise <= NOISY_MPS:
        return speed_mps, calm, noise, []
    effects = [Effect("noise", len(calm), float(speed_mps.sum()), float(moving.sum()))]
    if "standing" not in off:
        count = int(((calm == 0) & (moving > 0)).sum())
        effects.append(Effect("standing", count, float(moving.sum()), float(calm.sum())))
    return calm, None, noise, effects


def climb_of(height_m: Array) -> float:
    """Whole climb [m]."""
    return float(np.diff(height_m).clip(min=0).sum())


def road_from(
    time_s: Array, height_m: Array, seconds: Array, distance_m: Array, off: frozenset[str]
) -> tuple[Array, float, list[Effect]]:
    """Height at each second [m] from heights at times of their own, their scatter [m], and what was done to them.

    The scatter is 0 where it is not a receiver's.

    Raises
    ------
    SteeperThanRoadsError
        Where the road as a whole is.
    """
    height = np.interp(seconds, time_s, height_m)
    effects = []
    if "stray_heights" not in off:
        stray = stray_heights(distance_m, height)
        if stray.any() and not stray.all():
            kept = np.interp(seconds, seconds[~stray], height[~stray])
            effects.append(Effect("stray_heights", int(stray.sum()), climb_of(height), climb_of(kept)))
            height = kept
    wide_m = height_reach_m(height)
    scatter_m = noise_of(height) if wide_m > ELEVATION_REACH_M else 0.0
    # left out, heights are still laid along a grid, and no slope is steeper than any road's
    reach_m = ELEVATION_GRID_M if "height" in off else wide_m
    smooth = np.interp(distance_m, *road_height(distance_m, height, float(distance_m[-1]), reach_m))
    if "height" not in off:
        effects.append(Effect("height", len(height), climb_of(height), climb_of(smooth)))
    return smooth, scatter_m, effects
