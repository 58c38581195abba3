"""A speed trace: the one door through which built drives, standard cycles and recorded drives enter."""

from __future__ import annotations

from dataclasses import dataclass, fields, replace
from functools import cached_property
from typing import Any, TypeVar

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]
Numbers = float | Array
"""One number or many at once: what is computed of it has its shape."""
N = TypeVar("N", float, Array)
"""The same, of which it is known which."""


@dataclass(frozen=True, kw_only=True, eq=False)
class Trace:
    """Speed and height over time.

    Points have shape (n + 1,), steps between them shape (n,).

    Parameters
    ----------
    time_s : points
        Time, rising [s].
    speed_mps : points
        Speed [m/s], not negative; it changes evenly within a step.
    elevation_m : points
        Height of the road [m], counted from the conditions' height above sea level.
    name : str
        What to call it.
    surface : steps, optional
        Index into `model.describe.scenario.SURFACES`.
    leg : steps, optional
        Which described leg a step belongs to, counted from 0 in driving order.
    lift_off_mps2 : steps, optional
        Lift-off strength chosen for each step [m/s²] in place of the driver's one.
    heading : steps, optional
        1 on the way out, −1 on the way back, where the wind blows from the other side.
    ambient_c, battery_temp_c : points, optional
        Measured temperatures [°C] that replace what the conditions say and what the model computes.
    cabin_w : steps, optional
        Measured power of cabin heating and cooling [W] that replaces the modelled one.
    charge_to : steps, optional
        Charge to which the battery is charged at the end of a step [1], NaN where it is not.
    warmed_up : bool
        Whether the car is warmed up at its start, as on a standard cycle. It then starts on warm tyres unless the
        conditions say otherwise.
    recorded : bool
        Whether a car has driven it. It is then followed as it is: where the modelled car could not, that is reported
        and nothing is slowed.
    described_m : float, optional
        Length of the road that was to be driven [m], where the battery does not last to its end.
    ends : str
        Why the trace ends before that: "empty"; "weak", where the battery could not give the power that was asked;
        "compared", where another's battery does not last.
    """

    time_s: Array
    speed_mps: Array
    elevation_m: Array
    name: str = "drive"
    surface: NDArray[np.int64] | None = None
    leg: NDArray[np.int64] | None = None
    lift_off_mps2: Array | None = None
    heading: NDArray[np.int64] | None = None
    ambient_c: Array | None = None
    battery_temp_c: Array | None = None
    cabin_w: Array | None = None
    charge_to: Array | None = None
    warmed_up: bool = False
    recorded: bool = False
    described_m: float | None = None
    ends: str = ""

    @cached_property
    def step_s(self) -> Array:
        """Length of each step in time [s]."""
        return np.diff(self.time_s)

    @cached_property
    def mean_speed_mps(self) -> Array:
        """Speed in the middle of each step [m/s]."""
        return (self.speed_mps[:-1] + self.speed_mps[1:]) / 2

    @cached_property
    def step_m(self) -> Array:
        """Length of each step along the road [m]."""
        return self.mean_speed_mps * self.step_s

    @property
    def acceleration_mps2(self) -> Array:
        """Change of speed in each step [m/s²]."""
        return np.diff(self.speed_mps) / self.step_s

    @property
    def sine_of_slope(self) -> Array:
        """Rise over road length in each step [1]; 0 where the car stands."""
        length = self.step_m
        return np.divide(np.diff(self.elevation_m), length, out=np.zeros_like(length), where=length > 0)

    @property
    def distance_m(self) -> float:
        """Whole distance [m]."""
        return float(self.step_m.sum())

    @property
    def duration_s(self) -> float:
        """Whole time [s]."""
        return float(self.time_s[-1] - self.time_s[0])

    @property
    def stops(self) -> int:
        """How often the car comes to rest."""
        return int(np.count_nonzero((self.speed_mps[1:] == 0) & (self.speed_mps[:-1] > 0)))

    @property
    def charging(self) -> NDArray[np.int64]:
        """The steps in which the car stands and charges, by their index."""
        return np.flatnonzero([] if self.charge_to is None else ~np.isnan(self.charge_to))

    def until(self, end_m: float, ends: str) -> Trace:
        """The trace up to the point that is `end_m` [m] along it, and why it ends there."""
        along = np.append(0.0, np.cumsum(self.step_m))
        # of several points at one place the first: the car does not stand there with an empty battery
        last = min(max(int(np.searchsorted(along, end_m - 1e-6)), 1), len(along) - 1)
        held = {item.name: getattr(self, item.name) for item in fields(self)}
        points, steps = len(self.time_s), len(self.time_s) - 1
        cut: dict[str, Any] = {
            name: value[: last + len(value) - steps]
            for name, value in held.items()
            if isinstance(value, np.ndarray) and len(value) in (points, steps)
        }
        return replace(self, **cut, described_m=self.described_m or self.distance_m, ends=ends)

    @property
    def climb_m(self) -> float:
        """Height gained, without what is lost again [m]."""
        return float(np.diff(self.elevation_m).clip(min=0).sum())

    @property
    def descent_m(self) -> float:
        """Height lost [m]."""
        return float((-np.diff(self.elevation_m)).clip(min=0).sum())
