"""A stop on the motor and the road load alone."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from model.describe.car import Car
from model.describe.scenario import Conditions, Driver
from model.describe.units import KMH_PER_MPS
from model.kernel.moments import feet_up
from model.limits.stopping import speeds_to_rest, to_rest
from model.physics.records import car_record
from model.physics.wheels import effective_kg


@dataclass(frozen=True)
class MotorOnlyStop:
    """A stop without the friction brakes: distance [m] and time [s] to rest, and the speed [km/h] from which it fades.

    Both are infinite where the road falls too steeply. Below `hand_over_kmh` the motor fades; the car then rolls.
    """

    distance_m: float
    time_s: float
    hand_over_kmh: float


def motor_only_stop(
    car: Car, conditions: Conditions, from_kmh: float, *, strength_mps2: float | None = None, grade: float = 0.0
) -> MotorOnlyStop:
    """Stop from `from_kmh` [km/h] on the motor and the road load alone: a car that does not come to rest by itself.

    As strongly as the car's motor can, or at a lift-off strength [m/s²] as far as the motor can follow. Slope [1],
    downhill negative.
    """
    start = from_kmh / KMH_PER_MPS
    at = speeds_to_rest(start)
    slowing = np.full_like(at, car.regen_cap_mps2 if strength_mps2 is None else strength_mps2)
    up = feet_up(at, car, conditions, Driver(), grade, slowing)
    most = up["fade"] * np.minimum(up["most_n"], up["battery_n"])
    if strength_mps2 is not None:
        most = np.minimum(most, up["fade"] * up["asked_n"])
    slowing = (up["here_n"] + most) / effective_kg(car_record(car, conditions, Driver()))
    distance, time_s = to_rest(start, slowing, at)
    return MotorOnlyStop(distance, time_s, car.fade_start_kmh)
