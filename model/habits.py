"""Habits in numbers: how a driver slows down and pulls away.

A change of speed is a trapezoid in acceleration: it comes on, holds and goes off, with bounded jerk.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np

from model.scenario import Driver
from model.trace import Array
from model.units import KMH_PER_MPS

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

MOST_JERK_MPS3 = 1.5
"""No change of speed begins or ends more abruptly [m/s³]. Common practice, no source."""
HALF_AS_HARD_KMH = 60.0
"""A change whose lower speed is this peaks half as hard as one from or to rest: between high speeds feet are gentler
[km/h]. Common practice, no source."""


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

    def done(self, share: Any) -> Array:
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


@dataclass(frozen=True, eq=False)
class SpeedChange:
    """From one speed to another [m/s], in a time [s], following a pulse of acceleration; one or many at once."""

    from_mps: Any
    to_mps: Any
    duration_s: Any
    pulse: Pulse

    @property
    def distance_m(self) -> Any:
        """Road it takes [m]."""
        return self.duration_s * (self.from_mps + (self.to_mps - self.from_mps) * (1 - self.pulse.centre))

    def gained_mps(self, after_s: Any, which: Any = ...) -> Any:
        """Speed gained (lost: negative) [m/s] at a time after the start [s]; `which` picks from many changes."""
        change, duration = np.asarray(self.to_mps - self.from_mps)[which], np.asarray(self.duration_s)[which]
        return change * self.pulse.done(after_s / np.maximum(duration, 1e-9))


def _speed_change(from_mps: Any, to_mps: Any, peak_from_rest_mps2: float, pulse: Pulse) -> SpeedChange:
    change = np.abs(to_mps - from_mps)
    lower_kmh = np.minimum(from_mps, to_mps) * KMH_PER_MPS
    peak = peak_from_rest_mps2 * HALF_AS_HARD_KMH / (HALF_AS_HARD_KMH + lower_kmh)
    by_peak = change / (pulse.mean * peak)
    by_jerk = np.sqrt(change / (pulse.mean * min(pulse.on, pulse.off) * MOST_JERK_MPS3))
    return SpeedChange(from_mps, to_mps, np.maximum(by_peak, by_jerk), pulse)


def slow_down(from_mps: Any, to_mps: Any, driver: Driver) -> SpeedChange:
    """How this driver slows down: the farther ahead they look, the longer and the gentler.

    Parameters
    ----------
    from_mps, to_mps : numeric
        Speeds [m/s], the second not above the first.
    driver : Driver
        Whose `looks_ahead` fixes the peak.

    Returns
    -------
    SpeedChange
        Its `distance_m` says how far ahead [m] the foot lifts.
    """
    return _speed_change(from_mps, to_mps, HABITS["peak_slowing_mps2"][driver.looks_ahead], SLOWING)


def pull_away(from_mps: Any, to_mps: Any, driver: Driver) -> SpeedChange:
    """How this driver gains speed, as hard as `pull_away` says.

    Parameters
    ----------
    from_mps, to_mps : numeric
        Speeds [m/s], the second not below the first.
    driver : Driver
        Whose `pull_away` fixes the peak.
    """
    return _speed_change(from_mps, to_mps, HABITS["peak_pull_away_mps2"][driver.pull_away], PULLING_AWAY)
