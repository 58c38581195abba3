"""What the car does when the foot comes up: how strongly it slows, on a hill too, and what those behind see of it."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Any

import numpy as np
from numpy.typing import NDArray

from model import motor
from model.braking import MORE_THAN_ANY_MOTOR_N, battery_limit_n, fade_share, lift_off_motor_n, motor_limits_n
from model.car import Car
from model.scenario import Conditions, Driver
from model.trace import Array, Trace
from model.units import GRAVITY_MPS2
from model.wheel_demand import Demand, wheel_demand

LAMP_OFF_UP_TO_MPS2, LAMP_LIT_ABOVE_MPS2 = 0.7, 1.3
"""UN R13-H, 5.2.22.4: slowing on release of the accelerator up to which stop lamps must not light, and above which they
must [m/s²]; between the two they may. For cars under that regulation; other markets differ."""
COMFORT_CONVENTIONS = (
    (3.0, "comfortable slowing for drivers and passengers", "ITE, as cited by Maurya and Bokare 2012"),
    (3.4, "slowing for which stopping sight distances are laid out, 11.2 ft/s²", "AASHTO Green Book 2018"),
)
"""Slowing [m/s²], what it is, and who uses it. Conventions of road design, not limits of what passengers bear."""


def word_of(strength_mps2: float) -> str:
    """The word for a lift-off strength [m/s²]; its bounds are those of the stop lamps."""
    if strength_mps2 == 0:
        return "rolling on"
    if strength_mps2 <= LAMP_OFF_UP_TO_MPS2:
        return "gentle"
    return "firm" if strength_mps2 <= LAMP_LIT_ABOVE_MPS2 else "strong"


def lamp_zone_of(slowing_mps2: float) -> str:
    """What UN R13-H says of the stop lamps at this slowing [m/s²] with the foot up."""
    if slowing_mps2 <= LAMP_OFF_UP_TO_MPS2:
        return "not lit"
    return "may be lit" if slowing_mps2 <= LAMP_LIT_ABOVE_MPS2 else "lit"


def steady_steps(speed: Any, grade: Any = 0.0) -> tuple[Trace, slice]:
    """A trace that keeps each speed [m/s] on its grade [1] for a second, and which of its steps do so."""
    speed, grade = np.broadcast_arrays(np.atleast_1d(speed).astype(float), grade)
    points = np.repeat(speed, 2)
    rise = np.repeat(speed * grade / np.sqrt(1 + grade * grade), 2)
    # between two speeds the road goes back to where it was, or thin air would count
    rise[1::2] = -rise[0::2]
    trace = Trace(
        time_s=np.arange(len(points), dtype=float),
        speed_mps=points,
        elevation_m=np.append(0.0, np.cumsum(rise[:-1])),
        warmed_up=True,
    )
    return trace, slice(0, len(points), 2)


@dataclass(frozen=True, eq=False)
class Rolling:
    """A rolling car at some speeds [m/s], each on its own grade.

    `flat_n` is air and rolling on a flat road without wind [N]; `here_n` has the wind and the pull of the slope in it;
    `drag_n` is what it takes at the wheels to turn the idle motor.
    """

    speed: Array
    flat_n: Array
    here_n: Array
    drag_n: Array
    friction: Array
    demand: Demand

    @property
    def slowing_mps2(self) -> Array:
        """Slowing with the foot up and no lift-off strength [m/s²]; negative where a hill makes the car faster."""
        return (self.here_n + self.drag_n) / self.demand.effective_mass_kg


def rolling(speed: Any, car: Car, conditions: Conditions, grade: Any = 0.0) -> Rolling:
    """What holds a rolling car back.

    Parameters
    ----------
    speed : array
        Speeds, above 0 [m/s].
    car, conditions
        As described; the road is as slippery as the conditions say.
    grade : array
        Rise over run [1]; downhill is negative.
    """
    trace, kept = steady_steps(speed, grade)
    demand = wheel_demand(trace, replace(car, brake_pedal="friction"), replace(conditions, cabin=False))
    assert demand.road_load_n is not None
    at = demand.speed[0, kept]
    return Rolling(
        speed=at,
        flat_n=demand.road_load_n[0, kept],
        here_n=demand.wheel_n[0, kept],
        drag_n=motor.spin_n(car, at) * car.zero_torque_drag_share / car.gear_efficiency,
        friction=np.broadcast_to(demand.friction, demand.speed.shape)[0, kept],
        demand=demand,
    )


def foot_up_mps2(speed: Any, car: Car, conditions: Conditions, driver: Driver, grade: Any = 0.0) -> Array:
    """Total slowing when the foot comes up [m/s²], road load included.

    The driver's lift-off strength on a flat road, as far as the car's own limits let the motor follow and no less than
    the car slows by rolling; a hill adds to it or takes from it. Speeds [m/s], above 0; grade is rise over run [1].
    What a cold or full battery refuses is left out.
    """
    road = rolling(speed, car, conditions, grade)
    asked = lift_off_motor_n(road.demand.car_effective_kg, driver.lift_off_mps2, road.flat_n)
    motor_n = np.maximum(_motor_can_n(road, car, driver, asked), road.drag_n)
    slowing: Array = (road.here_n + motor_n) / road.demand.effective_mass_kg
    return slowing


def _motor_can_n(road: Rolling, car: Car, driver: Driver, asked_n: Any) -> Array:
    """Slowing force at the wheels [N] of `asked_n` that the limits of motor, comfort, grip and fade leave."""
    demand, strength = road.demand, np.asarray(driver.lift_off_mps2)
    limits = motor_limits_n(
        replace(car, brake_pedal="blended"), driver, road.speed, asked_n, strength, road.friction,
        demand.car_kg, demand.car_effective_kg, None,
    )  # fmt: skip
    can: Array = np.minimum.reduce(np.broadcast_arrays(asked_n, *limits.values()))
    return can


@dataclass(frozen=True, eq=False)
class Holding:
    """Keeping a speed downhill without the brake pedal; arrays, one entry a grade.

    `strength_mps2` is the lift-off strength that just keeps the speed [m/s²], NaN where the hill is too shallow to need
    any; `asked_kw` is the slowing power that takes at the wheels, `can_kw` what motor and battery can take there.
    """

    grade: Array
    strength_mps2: Array
    asked_kw: Array
    can_kw: Array

    @property
    def held(self) -> NDArray[np.bool_]:
        """Whether the motor alone keeps the speed."""
        return self.asked_kw <= self.can_kw


def holding(speed_mps: float, grade: Any, car: Car, conditions: Conditions, driver: Driver) -> Holding:
    """What keeps `speed_mps` [m/s] on downhills of `grade` [1, positive].

    The motor's force is that of a flat road, so a strength above `strength_mps2` slows the car on that hill and one
    below lets it gain speed. The battery is as full and as warm as at the start of the drive.
    """
    grade = np.atleast_1d(grade).astype(float)
    road = rolling(np.full(len(grade), speed_mps), car, conditions, -grade)
    asked = np.maximum(-road.here_n, 0.0)
    strength = (asked + road.flat_n) / road.demand.car_effective_kg
    can = _motor_can_n(road, car, driver, np.full(len(grade), MORE_THAN_ANY_MOTOR_N))
    fade = fade_share(car, driver, road.speed)
    can = np.where(fade < 1, np.minimum(can, fade * asked), can)
    can = np.minimum(can, battery_limit_n(car, conditions, road.speed))
    return Holding(
        grade=grade,
        strength_mps2=np.where(asked > road.drag_n, strength, np.nan),
        asked_kw=asked * speed_mps / 1000,
        can_kw=can * speed_mps / 1000,
    )


def equilibrium_grade(speed: Any, car: Car, conditions: Conditions) -> Array:
    """The downhill grade [1] on which a rolling car keeps each speed [m/s]: shallower asks for power, steeper slows."""
    grade = np.zeros_like(np.atleast_1d(speed), dtype=float)
    for _ in range(4):
        road = rolling(speed, car, conditions, -grade)
        weight = road.demand.mass_kg * GRAVITY_MPS2
        sine = grade / np.sqrt(1 + grade * grade) + (road.here_n + road.drag_n) / weight
        grade = sine / np.sqrt(1 - sine * sine)
    return grade
