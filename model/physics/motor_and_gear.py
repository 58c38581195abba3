"""Motor, inverter and gear: limits and losses of one machine scaled to its rated power.

Losses are ``P_peak (fixed + speed x + speed2 x² + working x + torque2 y²)`` with x the road speed over `STATED_AT_KMH`
and y the force over the greatest. So part load is worse than peak, and a spinning machine without torque drags: the
parts ``speed`` and ``speed2``. A coast-down in neutral has measured that drag with the rest of the road load, see
`model.physics.air_and_tyres.rolling_n`; the part ``working`` only a machine under load has.
Forces at the shaft are those of the motor carried to the wheels without gear loss.
"""

from __future__ import annotations

import math
from typing import NamedTuple

import numpy as np

from model.describe.units import KMH_PER_MPS
from model.physics.jit import compiled
from model.physics.records import CarRecord

STATED_AT_KMH = 165.0
"""Road speed at which the losses that grow with speed are stated [km/h], the same for all cars.

A motor turns some 8 to 11 times for each turn of the wheels in nearly all battery cars (from memory); a faster car's
turns faster, it is not geared longer. On a dynamometer, too, drag for a motor's power depends on road speed alone
(`tests/published/test_certified_cars.py`).
"""
NO_FORCE_N = 1e-6
"""Less than this is rounding: a car that rolls asks nothing of its motor."""
LEAST_SPEED_MPS = 0.1
"""A car that starts asks for force, not for power, below this speed [m/s]."""


class Motor(NamedTuple):
    """One car's motor, inverter and gear.

    Force at peak torque [N]; peak power when pulling and when slowing, at the shaft [W]; drag of the spinning machine
    without torque, as a force [N] and what it grows by with speed [N/(m/s)]; power electronics while moving [W]; what a
    working machine loses more, for its speed [W/(m/s)]; loss that grows with force squared [W/N²]; shares of the
    shaft's power that the loss map leaves open, pulling and slowing, share of the drag that stays when the machine does
    nothing, efficiency of the gear [1].
    """

    greatest_n: float
    peak_w: float
    regen_peak_w: float
    drag_n: float
    drag_n_per_mps: float
    fixed_w: float
    working_n: float
    loss_w_per_n2: float
    open_pulling: float
    open_slowing: float
    idle_share: float
    gear: float


class Machine(NamedTuple):
    """What motor and gear do: force at the shaft [N], slowing negative; loss of motor and inverter [W]."""

    shaft_n: float
    loss_w: float


@compiled
def motor_of(car: CarRecord) -> Motor:
    """A car's motor in SI units."""
    peak = car.motor_peak_kw * 1000.0
    greatest = peak / (car.motor_base_speed_kmh / KMH_PER_MPS)
    stated_at = STATED_AT_KMH / KMH_PER_MPS
    return Motor(
        greatest,
        peak,
        peak if math.isnan(car.regen_peak_kw) else car.regen_peak_kw * 1000.0,
        peak * car.motor_loss_speed / stated_at,
        peak * car.motor_loss_speed2 / (stated_at * stated_at),
        peak * car.motor_loss_fixed,
        peak * car.motor_loss_working / stated_at,
        peak * car.motor_loss_torque2 / (greatest * greatest),
        car.open_pulling_share,
        car.open_slowing_share,
        car.zero_torque_drag_share,
        car.gear_efficiency,
    )


@compiled
def spin_n(motor: Motor, speed: float) -> float:
    """Drag of the spinning machine without torque, as a force [N], at `speed` [m/s]."""
    return motor.drag_n + motor.drag_n_per_mps * speed


@compiled
def turning_loss_w(motor: Motor, speed: float) -> float:
    """What a working machine loses whatever its force [W]; nothing while the car stands."""
    return (spin_n(motor, speed) + motor.working_n) * speed + motor.fixed_w if speed > 0 else 0.0


@compiled
def idle_loss_w(motor: Motor, speed: float) -> float:
    """What a machine that does nothing loses [W]: the wheels turn it, as far as it does not roll free."""
    return spin_n(motor, speed) * speed * motor.idle_share + motor.fixed_w if speed > 0 else 0.0


@compiled
def loss_w(motor: Motor, speed: float, force: float) -> float:
    """Loss of motor and inverter together [W] at `speed` [m/s] and `force` at the shaft [N], slowing negative."""
    left_open = motor.open_pulling if force > 0 else -motor.open_slowing
    return turning_loss_w(motor, speed) + motor.loss_w_per_n2 * force * force + left_open * force * speed


@compiled
def idle_drag_n(motor: Motor, speed: float) -> float:
    """What turning the idle motor takes at the wheels [N] at `speed` [m/s]."""
    return spin_n(motor, speed) * motor.idle_share / motor.gear


@compiled
def machine_at(motor: Motor, speed: float, pulling_n: float, slowing_n: float, unloaded_n: float) -> Machine:
    """What motor and gear do for a pulling or a slowing force at the wheels [N].

    Up to `unloaded_n` [N] the wheels only turn the idle machine.
    """
    shaft = pulling_n / motor.gear - slowing_n * motor.gear
    works = pulling_n > NO_FORCE_N or slowing_n > unloaded_n + NO_FORCE_N
    return Machine(shaft, loss_w(motor, speed, shaft) if works else idle_loss_w(motor, speed))


@compiled
def worth_working(motor: Motor, speed: float, slowing_n: float, unloaded_n: float) -> bool:
    """Whether slowing with `slowing_n` at the wheels [N] costs no more electricity than letting the machine spin idle.

    A machine at work loses more than an idle one, which for a little slowing outweighs what that gives back.
    """
    working = machine_at(motor, speed, 0.0, slowing_n, unloaded_n)
    idle = machine_at(motor, speed, 0.0, unloaded_n, unloaded_n)
    return working.shaft_n * speed + working.loss_w <= idle.shaft_n * speed + idle.loss_w


@compiled
def slowing_force_n(motor: Motor, speed: float, electric_w: float) -> float:
    """Slowing force [N] at which the machine gives `electric_w` [W] of electricity; inf where it never gives as much.

    The smaller root of ``force·speed − loss(force) = electric_w``, in the form that stays exact for small losses.
    """
    speed_left = speed * (1.0 - motor.open_slowing)
    needed = (spin_n(motor, speed) + motor.working_n) * speed + motor.fixed_w + electric_w
    inside = speed_left * speed_left - 4.0 * motor.loss_w_per_n2 * needed
    if inside < 0:
        return np.inf
    return 2.0 * needed / (speed_left + math.sqrt(inside) + 1e-300)


@compiled
def greatest_pull_n(motor: Motor, speed: float, battery_w: float) -> float:
    """The most force at the wheels [N] at `speed` [m/s] with `battery_w` [W] for the drive."""
    faster = max(speed, LEAST_SPEED_MPS)
    by_motor = min(motor.greatest_n, motor.peak_w / faster)
    # electric power: force·speed + loss(force) = battery_w, the positive root
    spare = battery_w - turning_loss_w(motor, speed)
    speed_paid = faster * (1.0 + motor.open_pulling)
    inside = max(speed_paid * speed_paid + 4.0 * motor.loss_w_per_n2 * spare, 0.0)
    by_battery = 2.0 * spare / (speed_paid + math.sqrt(inside))
    return max(min(by_motor, by_battery), 0.0) * motor.gear
