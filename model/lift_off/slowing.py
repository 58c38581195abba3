"""What the car does when the foot comes up: how strongly it slows, on a hill too, and what those behind see of it."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from model.describe.car import Car
from model.describe.scenario import Conditions, Driver
from model.describe.trace import Array, Numbers
from model.describe.units import GRAVITY_MPS2
from model.kernel.moments import feet_up
from model.physics.records import car_record
from model.physics.wheels import car_effective_kg, effective_kg, moving_kg

LAMP_OFF_UP_TO_MPS2, LAMP_LIT_ABOVE_MPS2 = 0.7, 1.3
"""UN R13-H, 5.2.22.4: slowing on release of the accelerator up to which stop lamps must not light, and above which they
must [m/s²]; between the two they may. For cars under that regulation; other markets differ."""
COMFORT_CONVENTIONS = (
    (3.0, "comfortable", "ITE, as cited by Maurya and Bokare 2012"),
    (3.4, "sight-distance", "AASHTO Green Book 2018"),
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


@dataclass(frozen=True, eq=False)
class Rolling:
    """A rolling car at some speeds [m/s], each on its own grade.

    `flat_n` is air and rolling on a flat road without wind [N]; `here_n` has the wind and the pull of the slope in it;
    `drag_n` is what it takes at the wheels to turn the idle motor. `moving_kg` is the mass of all that moves,
    `effective_kg` that with what has to be spun [kg].
    """

    flat_n: Array
    here_n: Array
    drag_n: Array
    moving_kg: float
    effective_kg: float

    @property
    def slowing_mps2(self) -> Array:
        """Slowing with the foot up and no lift-off strength [m/s²]; negative where a hill makes the car faster."""
        return (self.here_n + self.drag_n) / self.effective_kg


def rolling(speed: Numbers, car: Car, conditions: Conditions, grade: Numbers = 0.0) -> Rolling:
    """What holds a rolling car back at speeds above 0 [m/s], on grades of rise over run [1], downhill negative."""
    up, record = feet_up(speed, car, conditions, Driver(), grade), car_record(car, conditions, Driver())
    return Rolling(up["flat_n"], up["here_n"], up["drag_n"], moving_kg(record), effective_kg(record))


def foot_up_mps2(
    speed: Numbers, car: Car, conditions: Conditions, driver: Driver, grade: Numbers = 0.0,
    strength_mps2: Numbers | None = None,
) -> Array:  # fmt: skip
    """Total slowing when the foot comes up [m/s²], road load included.

    The driver's lift-off strength on a flat road, as far as the car's own limits let the motor follow and no less than
    the car slows by rolling; a hill adds to it or takes from it. Speeds [m/s], above 0; grade is rise over run [1];
    strengths [m/s²], one a speed, may take the place of the driver's one. What a cold or full battery refuses is left
    out.
    """
    slowing: Array = feet_up(speed, car, conditions, driver, grade, strength_mps2)["slowing_mps2"]
    return slowing


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


def holding(speed_mps: float, grade: Numbers, car: Car, conditions: Conditions, driver: Driver) -> Holding:
    """What keeps `speed_mps` [m/s] on downhills of `grade` [1, positive].

    The motor's force is that of a flat road, so a strength above `strength_mps2` slows the car on that hill and one
    below lets it gain speed. The battery is as full and as warm as at the start of the drive.
    """
    grade = np.atleast_1d(grade).astype(float)
    up = feet_up(np.full(len(grade), speed_mps), car, conditions, driver, -grade)
    asked = np.maximum(-up["here_n"], 0.0)
    strength = (asked + up["flat_n"]) / car_effective_kg(car_record(car, conditions, driver))
    can = np.minimum(up["most_n"], up["battery_n"])
    can = np.where(up["fade"] < 1, np.minimum(can, up["fade"] * asked), can)
    return Holding(
        grade=grade,
        strength_mps2=np.where(asked > up["drag_n"], strength, np.nan),
        asked_kw=asked * speed_mps / 1000,
        can_kw=can * speed_mps / 1000,
    )


def equilibrium_grade(speed: Numbers, car: Car, conditions: Conditions) -> Array:
    """The downhill grade [1] on which a rolling car keeps each speed [m/s]: shallower asks for power, steeper slows."""
    grade = np.zeros_like(np.atleast_1d(speed), dtype=float)
    for _ in range(4):
        road = rolling(speed, car, conditions, -grade)
        sine = grade / np.sqrt(1 + grade * grade) + (road.here_n + road.drag_n) / (road.moving_kg * GRAVITY_MPS2)
        grade = sine / np.sqrt(1 - sine * sine)
    return grade
