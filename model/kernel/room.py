"""How fast a stretch of road may be driven in the room there is, where speed changes as hard as a habit says."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from model.describe.trace import Array, N
from model.describe.units import KMH_PER_MPS
from model.physics.jit import compiled, door

MOST_JERK_MPS3 = 1.5
"""No change of speed begins or ends more abruptly [m/s³]. Common practice, no source."""
HALF_AS_HARD_KMH = 60.0
"""A change whose lower speed is this peaks half as hard as one from or to rest: between high speeds feet are gentler
[km/h]. Common practice, no source."""


class Changing(NamedTuple):
    """How somebody changes speed: peak from or to rest [m/s²], and mean, centre and shorter ramp of the pulse [1]."""

    peak_mps2: float
    mean: float
    centre: float
    ramp: float


def change_s(from_mps: N, to_mps: N, habit: Changing) -> N:
    """Time a change of speed takes [s], as hard as the habit and the most jerk allow."""
    change = np.abs(to_mps - from_mps)
    lower_kmh = np.minimum(from_mps, to_mps) * KMH_PER_MPS
    peak = habit.peak_mps2 * HALF_AS_HARD_KMH / (HALF_AS_HARD_KMH + lower_kmh)
    return np.maximum(change / (habit.mean * peak), np.sqrt(change / (habit.mean * habit.ramp * MOST_JERK_MPS3)))


compiled_change_s = compiled(change_s)


@compiled
def change_m(from_mps: float, to_mps: float, habit: Changing) -> float:
    """Road a change of speed takes [m]: as `model.traces.habits.SpeedChange.distance_m`, for loops."""
    return compiled_change_s(from_mps, to_mps, habit) * (from_mps + (to_mps - from_mps) * (1.0 - habit.centre))


@door
def largest_that_fit(
    first: Array, last: Array, rise: Array, top: Array, room: Array, low: Array, at_peak: bool, up: Changing,
    down: Changing, found: Array,
) -> None:  # fmt: skip
    """The largest speeds up to `top` that the room of each stretch [m] allows; `low` fits. All of shape (stretches,).

    The speed found is the peak between the speeds `first` and `last`; or else the most that those two may be, the peak
    then lying above either by its `rise`, of shape (stretches + 1,), but no higher than `top` [m/s].
    """
    for index in range(len(room)):
        least, most, middle = low[index], top[index], top[index]
        for attempt in range(41):
            if attempt:
                middle = (least + most) / 2
            if at_peak:
                begin, end, peak = first[index], last[index], middle
            else:
                begin, end = min(first[index], middle), min(last[index], middle)
                peak = min(max(begin + rise[index], end + rise[index + 1]), top[index])
            if change_m(begin, peak, up) + change_m(peak, end, down) <= room[index]:
                least = middle
                if not attempt:
                    break
            elif attempt:
                most = middle
        found[index] = least
