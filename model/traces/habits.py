"""Habits in numbers: how a driver slows down and pulls away.

A change of speed is a trapezoid in acceleration: it comes on, holds and goes off, with bounded jerk.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import lru_cache
from types import EllipsisType

import numpy as np
from numpy.typing import NDArray

from model.describe.scenario import Driver
from model.describe.trace import Array, Numbers
from model.kernel.room import MOST_JERK_MPS3, Changing, change_s

HABITS: dict[str, dict[str, float]] = {
    "peak_slowing_mps2": {"far": 1.2, "usual": 2.4, "late": 3.2},
    "peak_pull_away_mps2": {"gentle": 1.2, "usual": 1.8, "brisk": 2.7},
    "swing_share": {"steady": 0.0, "usual": 0.02, "restless": 0.06},
    "over_slowing_share": {"steady": 0.0, "usual": 0.0, "restless": 0.25},
}
"""The number behind each word.

`peak_slowing_mps2` (by `looks_ahead`): hardest moment of a stop [m/s²]. Usual: about 0.25 g at 20 to 30 km/h, as at
stop signs (SAE 1999-01-0098). Far and late: common practice, no source.
`peak_pull_away_mps2` (by `pull_away`): hardest moment of pulling away from rest [m/s²]. Common practice, no source.
`swing_share` (by `steady_foot`): how far speed swings up and down while it is kept [1]. Common practice, no source.
`over_slowing_share` (by `steady_foot`): how far the bottom of a slow-down lies below the speed that was needed, to be
made up for by pulling away again [1]. Common practice, no source.
"""

LEAST = 1e-9
"""Keeps quotients finite where nothing changes."""


@dataclass(frozen=True)
class Pulse:
    """A trapezoid that comes on, holds and goes off, in shares of its length that add up to 1."""

    on: float
    hold: float
    off: float

    @property
    def mean(self) -> float:
        """Mean over peak [1]."""
        return self.on / 2 + self.hold + self.off / 2

    @property
    def centre(self) -> float:
        """Where its centre of area lies [1]."""
        moment = self.on**2 / 3 + self.hold * (self.on + self.hold / 2) + self.off / 2 * (1 - self.off * 2 / 3)
        return moment / self.mean

    def done(self, share: Numbers) -> Array:
        """Part of the area passed [1] at `share` of the length [1]: 0 before it, 1 after it."""
        share = np.clip(share, 0.0, 1.0)
        coming_on = share**2 / (2 * max(self.on, 1e-12))
        held = share - self.on / 2
        going_off = self.mean - (1 - share) ** 2 / (2 * max(self.off, 1e-12))
        return np.where(share < self.on, coming_on, np.where(share < 1 - self.off, held, going_off)) / self.mean


SLOWING = Pulse(on=0.5, hold=0.1, off=0.4)
"""Slowing builds up late: it is hardest with 55 to 36 % of the speed left to lose. Common practice, no source."""
PULLING_AWAY = Pulse(on=0.2, hold=0.1, off=0.7)
"""Pulling away is hardest early and weakens as speed rises. Common practice, no source."""


Which = EllipsisType | NDArray[np.bool_] | NDArray[np.intp]
"""Which of many; all of them where it is ..."""


@dataclass(frozen=True, eq=False)
class SpeedChange:
    """From one speed to another [m/s], in a time [s], following a pulse of acceleration; one or many at once."""

    from_mps: Array
    to_mps: Array
    duration_s: Array
    pulse: Pulse

    @property
    def distance_m(self) -> Array:
        """Road it takes [m]."""
        return self.duration_s * (self.from_mps + (self.to_mps - self.from_mps) * (1 - self.pulse.centre))

    def gained_mps(self, after_s: Numbers, which: Which = ...) -> Array:
        """Speed gained (lost: negative) [m/s] at a time after the start [s]; `which` picks from many changes."""
        change, duration = np.asarray(self.to_mps - self.from_mps)[which], np.asarray(self.duration_s)[which]
        return change * self.pulse.done(after_s / np.maximum(duration, LEAST))


@dataclass(frozen=True, eq=False)
class LiftedSlowDown:
    """A slow-down as the car's lift-off makes it, from the place where the habit lifts to the place it has to reach.

    The car slows at `lift_mps2` for `lift_s`; the brake pedal then makes it `brake_mps2` for `brake_s`. Both come on
    and go off within `ramp_s`: slowing at any time is the mean of the unramped one over the last `ramp_s`.
    """

    from_mps: Array
    to_mps: Array
    distance_m: Array
    lift_mps2: Array
    lift_s: Array
    brake_mps2: Array
    brake_s: Array
    ramp_s: Array

    @property
    def duration_s(self) -> Array:
        """Time it takes [s]."""
        return self.lift_s + self.brake_s + self.ramp_s

    def gained_mps(self, after_s: Numbers, which: Which = ...) -> Array:
        """Speed lost, as a negative number [m/s], at a time after the start [s]; `which` picks from many slow-downs."""
        lift, lift_s = np.asarray(self.lift_mps2)[which], np.asarray(self.lift_s)[which]
        brake, brake_s = np.asarray(self.brake_mps2)[which], np.asarray(self.brake_s)[which]
        ramp_s = np.maximum(np.asarray(self.ramp_s)[which], LEAST)

        def unramped_m(until_s: Numbers) -> Array:
            # speed lost without ramps, summed up over time
            braked_s = until_s - lift_s
            return _piled_up(lift, until_s, lift_s) + _piled_up(brake, braked_s, brake_s)

        return (unramped_m(after_s - ramp_s) - unramped_m(after_s)) / ramp_s


def _piled_up(level_mps2: Array, since_s: Numbers, lasts_s: Array) -> Array:
    since = np.maximum(since_s, 0.0)
    return level_mps2 * (np.minimum(since, lasts_s) ** 2 / 2 + lasts_s * np.maximum(since - lasts_s, 0.0))


def lifted(habit: SpeedChange, foot_up_mps2: Callable[[Array], Array]) -> LiftedSlowDown:
    """The same slow-down as the car's lift-off makes it: what the foot changes.

    The foot comes up where the habit lifts. Where the car then slows less than needed, the brake pedal adds what is
    missing, as late as the hardest moment of the habit allows. Where it would slow more than needed, the foot comes up
    only so far that the place is reached.

    Parameters
    ----------
    habit : SpeedChange
        From `slow_down`; one or many.
    foot_up_mps2 : callable
        Total slowing with the foot up [m/s²] at given speeds [m/s] of the slow-downs.
    """
    first, last = habit.from_mps, habit.to_mps
    lost = np.maximum(first - last, LEAST)
    # where nothing changes, nothing is hard
    hardest = lost / (habit.pulse.mean * np.maximum(habit.duration_s, 1e-3))
    ramp_s = hardest / MOST_JERK_MPS3
    # ramps shift the unramped slow-down by half their length at either speed
    room_m = np.maximum(habit.distance_m - ramp_s * (first + last) / 2, LEAST)
    spent = lost * (first + last)
    needed = np.minimum(spent / (2 * room_m), hardest)
    slowest = first
    for _ in range(2):
        # a rolling car slows less the slower it goes: the mean over the first part stands for it
        lift = np.maximum(np.minimum(foot_up_mps2((first + slowest) / 2), needed), LEAST)
        lift_m = np.clip((2 * hardest * room_m - spent) / np.maximum(2 * (hardest - lift), LEAST), 0.0, room_m)
        slowest = np.sqrt(np.maximum(first**2 - 2 * lift * lift_m, last**2))
    return LiftedSlowDown(
        from_mps=first,
        to_mps=last,
        distance_m=habit.distance_m,
        lift_mps2=lift,
        lift_s=(first - slowest) / lift,
        brake_mps2=hardest,
        brake_s=(slowest - last) / hardest,
        ramp_s=ramp_s,
    )


def slows_down(driver: Driver) -> Changing:
    """How this driver slows down, as `looks_ahead` says."""
    return _changing(HABITS["peak_slowing_mps2"][driver.looks_ahead], SLOWING)


def pulls_away(driver: Driver) -> Changing:
    """How this driver gains speed, as `pull_away` says."""
    return _changing(HABITS["peak_pull_away_mps2"][driver.pull_away], PULLING_AWAY)


@lru_cache(maxsize=20)
def _changing(peak_from_rest_mps2: float, pulse: Pulse) -> Changing:
    return Changing(peak_from_rest_mps2, pulse.mean, pulse.centre, min(pulse.on, pulse.off))


def slow_down(from_mps: Numbers, to_mps: Numbers, driver: Driver) -> SpeedChange:
    """How this driver slows down: the farther ahead they look, the longer and the gentler.

    The second speed [m/s] is not above the first. `distance_m` of what comes out is how far ahead [m] the foot lifts.
    """
    return _changed(from_mps, to_mps, slows_down(driver), SLOWING)


def pull_away(from_mps: Numbers, to_mps: Numbers, driver: Driver) -> SpeedChange:
    """How this driver gains speed [m/s], as hard as `pull_away` says; the second is not below the first."""
    return _changed(from_mps, to_mps, pulls_away(driver), PULLING_AWAY)


def _changed(from_mps: Numbers, to_mps: Numbers, habit: Changing, pulse: Pulse) -> SpeedChange:
    first, last = np.asarray(from_mps, dtype=float), np.asarray(to_mps, dtype=float)
    return SpeedChange(first, last, change_s(first, last, habit), pulse)
