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
    """A stop without the friction brakes: distance [m] and time [s] to rest, and down to where it fades.

    Below `hand_over_kmh` the motor fades; the car, `hand_over_m` on, then rolls.
    """

    distance_m: float
    time_s: float
    hand_over_kmh: float
    hand_over_m: float


def motor_only_stop(car: Car, conditions: Conditions, from_kmh: float) -> MotorOnlyStop:
    """Stop from `from_kmh` [km/h] on a flat road as strongly as motor and road load can, without coming to rest."""
    start = from_kmh / KMH_PER_MPS
    at = speeds_to_rest(start)
    up = feet_up(at, car, conditions, Driver(), strength_mps2=car.regen_cap_mps2)
    most = up["fade"] * np.minimum(up["most_n"], up["battery_n"])
    slowing = (up["here_n"] + most) / effective_kg(car_record(car, conditions, Driver()))
    distance, time_s = to_rest(start, slowing, at)
    fast = at >= car.fade_start_kmh / KMH_PER_MPS
    held = bool((slowing[fast] > 0).all())
    hand_over_m = float((at * start / len(at) / slowing)[fast].sum()) if held else np.inf
    return MotorOnlyStop(distance, time_s, car.fade_start_kmh, hand_over_m)
