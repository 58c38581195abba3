"""One slow-down under the microscope: roll, or keep the speed and let the motor slow the car, or the friction brakes.

Every way is a trace of its own, driven through the same kernel as whole drives. Cabin heat is left out: it goes by the
clock, not by how the car slows.
"""

from __future__ import annotations

from dataclasses import dataclass, fields, replace

import numpy as np

from model.describe.car import Car
from model.describe.fields import Field, InputError
from model.describe.figures import Quantity
from model.describe.scenario import Conditions, Driver
from model.describe.trace import Array, Trace
from model.describe.units import J_PER_WH, KMH_PER_MPS
from model.kernel.moments import steady_w
from model.kernel.run import drive
from model.lift_off.slowing import rolling
from model.traces.habits import pull_away

CHANGE_STEPS = 400
"""Equal parts into which a change of speed is cut."""
FROM_KMH = Field("from_kmh", "number", "km/h", "stop-from_kmh", 1, 250, (20, 140))
TO_KMH = Field("to_kmh", "number", "km/h", "stop-to_kmh", 0, 249, (0, 110))
WAY_ROUNDING = 1e-6
"""Less than this of a way's largest energy is rounding [1]: answers have six digits."""
DIP_SLOWING_MPS2 = 1.0
"""How strongly a car slows in a dip that nobody needed [m/s²]. Common practice, no source."""


@dataclass(frozen=True, eq=False)
class Passage:
    """A part of the way: speeds at its points [m/s], lengths of its steps [s], rise over run [1]."""

    speed: Array
    step_s: Array
    grade: float = 0.0

    @property
    def distance_m(self) -> float:
        """Road it takes [m]."""
        return float(((self.speed[1:] + self.speed[:-1]) / 2 * self.step_s).sum())


def keep(speed_mps: float, distance_m: float, grade: float = 0.0) -> Passage:
    """Keep a speed [m/s] over a distance [m], cut so that the battery is looked at now and then."""
    steps = 20
    return Passage(np.full(steps + 1, speed_mps), np.full(steps, distance_m / speed_mps / steps), grade)


def change(from_mps: float, to_mps: float, slowing_mps2: float, car: Car, conditions: Conditions, grade: float = 0.0,
           steps: int = CHANGE_STEPS) -> Passage:  # fmt: skip
    """Slow down as strongly as asked, and no less than the car does by rolling (which may make it faster downhill).

    Raises
    ------
    InputError
        Where rolling does not bring the car from one speed to the other.
    """
    speed = np.linspace(from_mps, to_mps, steps + 1)
    mean = (speed[1:] + speed[:-1]) / 2
    road = rolling(mean, car, conditions, grade)
    slowing = np.maximum(slowing_mps2, road.slowing_mps2) if slowing_mps2 > 0 else road.slowing_mps2
    step_s = -np.diff(speed) / slowing
    if not (step_s > 0).all():
        raise InputError(
            "does-not-slow-by-rolling", start=FROM_KMH, end=TO_KMH,
            fast=Quantity(round(from_mps * KMH_PER_MPS), "km/h", 3, trimmed=True),
            slow=Quantity(round(to_mps * KMH_PER_MPS), "km/h", 3, trimmed=True),
        )  # fmt: skip
    return Passage(speed, step_s, grade)


def gain(from_mps: float, to_mps: float, driver: Driver, steps: int = CHANGE_STEPS) -> Passage:
    """Gain speed [m/s] as hard as this driver does."""
    up = pull_away(from_mps, to_mps, driver)
    time_s = np.linspace(0.0, float(up.duration_s), steps + 1)
    return Passage(from_mps + up.gained_mps(time_s), np.diff(time_s))


def trace_along(parts: list[Passage]) -> Trace:
    """Parts one after the other, on warm tyres."""
    step_s = np.concatenate([part.step_s for part in parts])
    speed = np.concatenate([parts[0].speed[:1], *(part.speed[1:] for part in parts)])
    sine = np.concatenate([np.full(len(part.step_s), part.grade / np.sqrt(1 + part.grade**2)) for part in parts])
    height = np.append(0.0, np.cumsum(sine * (speed[1:] + speed[:-1]) / 2 * step_s))
    time_s = np.append(0.0, np.cumsum(step_s))
    return Trace(time_s=time_s, speed_mps=speed, elevation_m=height, warmed_up=True)


@dataclass(frozen=True, eq=False)
class Way:
    """One way to cover the road of a slow-down.

    `battery_wh` is what the battery gives less what it gets [Wh], `recovered_wh` what it gets, `friction_wh` what the
    friction brakes turn to heat; `lift_m` says how far before the end the foot comes up [m].
    """

    trace: Trace
    distance_m: float
    time_s: float
    battery_wh: float
    recovered_wh: float
    friction_wh: float
    lift_m: float

    def answers(self) -> dict[str, float]:
        """The way as the command line gives it, every key ending in its unit; rounding left in an energy is nothing."""
        found = {item.name: float(getattr(self, item.name)) for item in fields(self) if item.name != "trace"}
        least_wh = WAY_ROUNDING * max(abs(value) for key, value in found.items() if key.endswith("_wh"))
        return {k: 0.0 if k.endswith("_wh") and abs(value) < least_wh else value for k, value in found.items()}


def drive_way(parts: list[Passage], car: Car, conditions: Conditions, driver: Driver, *, regen: bool = True) -> Way:
    """Drive parts one after the other; the foot comes up where the first of them ends."""
    distance = sum(part.distance_m for part in parts)
    trace = trace_along(parts)
    run = drive(trace, car, replace(conditions, cabin=False), driver, regen=regen, record=False)
    return Way(
        trace=trace,
        distance_m=distance,
        time_s=trace.duration_s,
        battery_wh=float(run.net_j[0]) / J_PER_WH,
        recovered_wh=float(run.in_j[0]) / J_PER_WH,
        friction_wh=float(run.energies["friction_j"][0]) / J_PER_WH,
        lift_m=distance - (parts[0].distance_m if len(parts) > 1 else 0.0),
    )


@dataclass(frozen=True, eq=False)
class SlowDown:
    """Three ways from one speed to a lower one.

    `break_even_kmh` is the cruising speed up to which rolling pays: there the time it costs can be made up by cruising
    a little faster for just the energy it saves. None where rolling saves no energy or costs no time.
    """

    coast: Way
    regen: Way
    friction: Way
    break_even_kmh: float | None


def compare(
    from_mps: float,
    to_mps: float,
    car: Car,
    conditions: Conditions,
    driver: Driver,
    *,
    slowing_mps2: float | None = None,
    equal_distance: bool = True,
) -> SlowDown:
    """Roll down to the lower speed; keep the speed, then slow on the motor; the same on friction brakes only.

    Parameters
    ----------
    from_mps, to_mps : float
        Speeds [m/s]; the second below the first, 0 for a stop.
    car, conditions, driver
        As described. With a pedal that works friction only, the motor slows by lifting off.
    slowing_mps2 : float, optional
        Total slowing of the second and third way [m/s²]; the driver's lift-off strength if left out. Never less than
        the car slows by rolling.
    equal_distance : bool
        Whether all three cover the road that rolling takes, by keeping the speed at first. Else each covers only its
        own slow-down, and their energies cannot be compared.

    Raises
    ------
    InputError
        Where the speeds are not in order, or the car does not slow by rolling.
    """
    if not 0 <= to_mps < from_mps:
        raise InputError(
            "end-not-below-start", end=TO_KMH, slow=Quantity(to_mps * KMH_PER_MPS, "km/h", 3, trimmed=True),
            fast=Quantity(from_mps * KMH_PER_MPS, "km/h", 3, trimmed=True),
        )  # fmt: skip
    strength = driver.lift_off_mps2 if slowing_mps2 is None else slowing_mps2
    foot = replace(driver, lift_off_mps2=strength)
    roll = change(from_mps, to_mps, 0.0, car, conditions)
    slow = change(from_mps, to_mps, strength, car, conditions)
    braked = [slow]
    if equal_distance and roll.distance_m > slow.distance_m:
        braked = [keep(from_mps, roll.distance_m - slow.distance_m), slow]
    coast = drive_way([roll], car, conditions, foot)
    regen, friction = (drive_way(braked, car, conditions, foot, regen=regen) for regen in (True, False))
    saved_j = (regen.battery_wh - coast.battery_wh) * J_PER_WH
    lost_s = coast.time_s - regen.time_s
    break_even = None
    if equal_distance and saved_j > 0 and lost_s > 0:
        break_even = cruise_kmh_at(saved_j / lost_s, car, conditions)
    return SlowDown(coast, regen, friction, break_even)


def cruise_kmh_at(price_w: float, car: Car, conditions: Conditions) -> float | None:
    """The cruising speed [km/h] at which a second gained by going faster costs `price_w` [J/s]; None beyond 250 km/h.

    At speed v, with battery power P(v), a second gained on the same road costs ``v·dP/dv − P``.
    """
    speed = np.linspace(2.5, 70.0, 541)
    power = steady_w(speed, car, conditions, Driver())
    price = speed * np.gradient(power, speed) - power
    above = np.flatnonzero(price >= price_w)
    return float(speed[above[0]]) * KMH_PER_MPS if len(above) else None


def unneeded_dip(
    from_mps: float, to_mps: float, car: Car, conditions: Conditions, driver: Driver,
    *, slowing_mps2: float = DIP_SLOWING_MPS2,
) -> dict[str, Way]:  # fmt: skip
    """Slow down for nothing and pull up again: ways "steady" (no dip), "regen" and "friction" over the same road."""
    dip = [change(from_mps, to_mps, slowing_mps2, car, conditions), gain(to_mps, from_mps, driver)]
    foot = replace(driver, lift_off_mps2=slowing_mps2)
    return {
        "steady": drive_way([keep(from_mps, sum(part.distance_m for part in dip))], car, conditions, foot),
        "regen": drive_way(dip, car, conditions, foot),
        "friction": drive_way(dip, car, conditions, foot, regen=False),
    }
