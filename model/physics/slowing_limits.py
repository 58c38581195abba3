"""Slowing: how much of it the motor may do, and which limit says so."""

from __future__ import annotations

import math
from typing import NamedTuple

from model.describe.units import KMH_PER_MPS
from model.physics.air_and_tyres import surface_under
from model.physics.grip import driven_axle_load_n, friction_coefficient
from model.physics.jit import compiled
from model.physics.motor_and_gear import Motor
from model.physics.records import CarRecord, MomentOnRoad, code
from model.physics.wheels import car_effective_kg, car_kg

LIMITS = (
    "lift_off_only",
    "drivability",
    "motor_torque",
    "motor_power",
    "grip",
    "low_speed_fade",
    "nothing_to_gain",
    "battery",
    "no_regeneration",
)
"""What can hold the motor's part of a slow-down, in the order in which it is asked; the last is the comparison run."""
(
    LIFT_OFF_ONLY,
    DRIVABILITY,
    MOTOR_TORQUE,
    MOTOR_POWER,
    GRIP,
    LOW_SPEED_FADE,
    NOTHING_TO_GAIN,
    BATTERY,
    NO_REGENERATION,
) = range(len(LIMITS))
NOTHING_BOUND = -1
FRICTION_PEDAL = code("brake_pedal", "friction")


class Allowed(NamedTuple):
    """What the limits leave to the motor at the wheels [N], and which limit bound: an index into LIMITS, or −1."""

    slowing_n: float
    bound: int


@compiled
def lift_off_strength_mps2(car: CarRecord, at: MomentOnRoad) -> float:
    """The lift-off strength [m/s²] chosen here."""
    return car.lift_off_mps2 if math.isnan(at.lift_off_mps2) else at.lift_off_mps2


@compiled
def lift_off_motor_n(car: CarRecord, strength_mps2: float, flat_road_load_n: float) -> float:
    """Motor force on lift-off [N]: the strength is a total, so the road load does its part first."""
    return max(0.0, strength_mps2 * car_effective_kg(car) - flat_road_load_n)


@compiled
def drivability_n(car: CarRecord) -> float:
    """The most the maker lets the motor slow the car by [N], for comfort and stability."""
    return car.regen_cap_mps2 * car_kg(car)


@compiled
def motor_torque_n(motor: Motor) -> float:
    """The most slowing at the wheels by the motor's torque [N]."""
    return motor.greatest_n / motor.gear


@compiled
def motor_power_n(motor: Motor, speed: float) -> float:
    """The most slowing at the wheels by the motor's power [N] at `speed` [m/s]."""
    return motor.regen_peak_w / motor.gear / max(speed, 1e-3)


@compiled
def grip_n(car: CarRecord, friction: float, tyre_slowing: float) -> float:
    """The most slowing at the wheels that grip leaves to the motor [N], a reserve kept.

    `friction` is the coefficient between tyre and road [1], `tyre_slowing` what the tyres slow the car by [m/s²].
    """
    return friction * (1.0 - car.grip_reserve_share) * driven_axle_load_n(car, car_kg(car), tyre_slowing, 1.0)


@compiled
def fade_share(car: CarRecord, speed: float) -> float:
    """Share of the slowing left to the motor near standstill [1]; a car that comes to rest by itself keeps all."""
    if car.comes_to_rest:
        return 1.0
    start, end = car.fade_start_kmh / KMH_PER_MPS, car.fade_end_kmh / KMH_PER_MPS
    return min(max((speed - end) / max(start - end, 1e-6), 0.0), 1.0)


@compiled
def _narrower(allowed: Allowed, limit_n: float, name: int) -> Allowed:
    return Allowed(limit_n, name) if limit_n < allowed.slowing_n else allowed


@compiled
def motor_may(
    car: CarRecord, motor: Motor, speed: float, asked_n: float, tyre_slowing: float, friction: float, lift_off_n: float
) -> Allowed:
    """What every limit but the battery's lets the motor take of `asked_n` at the wheels [N].

    Parameters
    ----------
    car, motor
        The car's limits; a pedal that works friction only leaves the motor what lifting off asks.
    speed, asked_n, tyre_slowing : float
        Speed [m/s], slowing force asked at the wheels [N], slowing by the tyres [m/s²].
    friction : float
        Friction coefficient between tyre and road [1].
    lift_off_n : float
        Motor force on lift-off [N].
    """
    may = Allowed(asked_n, NOTHING_BOUND)
    if car.brake_pedal == FRICTION_PEDAL:
        may = _narrower(may, lift_off_n, LIFT_OFF_ONLY)
    may = _narrower(may, drivability_n(car), DRIVABILITY)
    may = _narrower(may, motor_torque_n(motor), MOTOR_TORQUE)
    may = _narrower(may, motor_power_n(motor, speed), MOTOR_POWER)
    may = _narrower(may, grip_n(car, friction, tyre_slowing), GRIP)
    return _narrower(may, fade_share(car, speed) * asked_n, LOW_SPEED_FADE)


@compiled
def friction_under(car: CarRecord, at: MomentOnRoad) -> float:
    """Friction between tyre and road here and now [1]."""
    return friction_coefficient(surface_under(car, at), car.grip_level, int(car.tyres), at.speed_mps)
