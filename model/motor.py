"""Motor, inverter and gear: limits and losses of one machine scaled to its rated power.

Losses are ``P_peak (fixed + speed x + speed2 x² + torque2 y²)`` with x the road speed over the motor's highest
and y the force over the greatest. So part load is worse than peak, and a spinning machine without torque drags.
Forces here are those of the motor shaft carried to the wheels without gear loss.
"""

from __future__ import annotations

from typing import Any

import numpy as np

from model.car import Car
from model.units import KMH_PER_MPS


def greatest_force_n(car: Car) -> Any:
    """Force at peak torque [N]."""
    return car.motor_peak_kw * 1000 / (car.motor_base_speed_kmh / KMH_PER_MPS)


def regen_peak_w(car: Car) -> Any:
    """The most shaft power the motor takes when slowing [W]."""
    return (car.motor_peak_kw if car.regen_peak_kw is None else car.regen_peak_kw) * 1000


def spin_n(car: Car, speed: Any) -> Any:
    """Drag of the spinning machine without torque, as a force [N], at `speed` [m/s]."""
    top = car.motor_top_speed_kmh / KMH_PER_MPS
    peak = car.motor_peak_kw * 1000
    return peak * car.motor_loss_speed / top + (peak * car.motor_loss_speed2 / top**2) * speed


def fixed_w(car: Car) -> Any:
    """Power electronics while moving [W]."""
    return car.motor_peak_kw * 1000 * car.motor_loss_fixed


def force_loss_w_per_n2(car: Car) -> Any:
    """Loss that grows with force squared [W/N²]."""
    return car.motor_peak_kw * 1000 * car.motor_loss_torque2 / greatest_force_n(car) ** 2


def turning_loss_w(car: Car, speed: Any) -> Any:
    """Loss that needs no force [W]: the spinning machine and its electronics; nothing while the car stands."""
    return np.where(speed > 0, spin_n(car, speed) * speed + fixed_w(car), 0.0)


def loss_w(car: Car, speed: Any, force: Any) -> Any:
    """Loss of motor and inverter together [W] at `speed` [m/s] and `force` [N]."""
    return turning_loss_w(car, speed) + force_loss_w_per_n2(car) * force * force


def slowing_force_n(car: Car, speed: Any, electric_w: Any) -> Any:
    """Slowing force [N] at which the machine gives `electric_w` [W] of electricity; inf where it never gives as much.

    The smaller root of ``force·speed − loss(force) = electric_w``, in the form that stays exact for small losses.
    """
    curve = force_loss_w_per_n2(car)
    needed = spin_n(car, speed) * speed + fixed_w(car) + electric_w
    inside = speed * speed - 4 * curve * needed
    root = 2 * needed / (speed + np.sqrt(np.maximum(inside, 0)) + 1e-300)
    return np.where(inside < 0, np.inf, root)
