"""Slowing: how much of it the motor may do, and which limit says so."""

from __future__ import annotations

from typing import Any

import numpy as np

from model import battery, motor
from model.car import Car
from model.physics.slowing_limits import LIMITS as LIMITS
from model.scenario import Conditions, Driver
from model.trace import Array
from model.tyre_grip import driven_axle_load_n
from model.units import KMH_PER_MPS

MORE_THAN_ANY_MOTOR_N = 1e9
"""Asked of the motor to learn the most it can do."""


def lift_off_motor_n(effective_mass_kg: Any, strength_mps2: Any, road_load_n: Any) -> Any:
    """Motor force on lift-off [N]: the strength is a total, so the road load does its part first."""
    return np.maximum(0.0, strength_mps2 * effective_mass_kg - road_load_n)


def battery_limit_n(car: Car, conditions: Conditions, speed: Array) -> Array:
    """The most slowing force of the motor at the wheels [N] that the battery takes at the start of the drive.

    Its charge and temperature are those of the start; accessories are fed meanwhile. Speeds [m/s].
    """
    soc, pack_c = np.array([[conditions.soc_start]]), np.array([[battery.start_temperature_c(conditions)]])
    electric_w = battery.acceptance_w(car, soc, pack_c)[0, 0] + car.accessory_w
    most: Array = motor.slowing_force_n(car, speed, electric_w) / car.gear_efficiency
    return most


def fade_share(car: Car, driver: Driver, speed: Array) -> Any:
    """Share of the slowing left to the motor near standstill [1]; a car that comes to rest by itself keeps all."""
    if driver.comes_to_rest:
        return np.ones_like(speed)
    start, end = car.fade_start_kmh / KMH_PER_MPS, car.fade_end_kmh / KMH_PER_MPS
    return np.clip((speed - end) / np.maximum(start - end, 1e-6), 0.0, 1.0)


def motor_limits_n(
    car: Car,
    driver: Driver,
    speed: Array,
    braking_n: Array,
    deceleration: Array,
    friction: Any,
    mass_kg: Any,
    effective_mass_kg: Any,
    road_load_n: Array | None,
) -> dict[str, Any]:
    """The most slowing force at the wheels [N] that each limit but the battery lets the motor have.

    Parameters
    ----------
    car, driver
        The car's limits; the driver's lift-off strength, which counts where the pedal works friction only.
    speed, braking_n, deceleration : array
        Speed [m/s], force asked at the wheels [N] and slowing [m/s²] in each step.
    friction : array
        Friction coefficient between tyre and road [1].
    mass_kg, effective_mass_kg : numeric
        Mass, and mass with what has to be spun [kg].
    road_load_n : array or None
        Flat road load [N]; needed for a friction-only pedal.
    """
    shaft_to_wheel = 1 / car.gear_efficiency
    limits: dict[str, Any] = {}
    if car.brake_pedal == "friction":
        limits["lift_off_only"] = lift_off_motor_n(effective_mass_kg, driver.lift_off_mps2, road_load_n)
    limits["drivability"] = car.regen_cap_mps2 * mass_kg
    limits["motor_torque"] = motor.greatest_force_n(car) * shaft_to_wheel
    limits["motor_power"] = motor.regen_peak_w(car) * shaft_to_wheel / np.maximum(speed, 1e-3)
    limits["grip"] = friction * (1 - car.grip_reserve_share) * driven_axle_load_n(car, mass_kg, deceleration)
    limits["low_speed_fade"] = fade_share(car, driver, speed) * braking_n
    return limits
