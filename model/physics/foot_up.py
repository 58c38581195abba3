"""The foot up at a steady speed: what holds the car back, what lifting off asks of the motor, what the motor can do."""

from __future__ import annotations

import math
from typing import NamedTuple

from model.physics.charge_acceptance import acceptance_w
from model.physics.jit import compiled
from model.physics.motor_and_gear import Motor, idle_drag_n, slowing_force_n
from model.physics.pack_heat import start_c
from model.physics.records import CarRecord, MomentOnRoad
from model.physics.slowing_limits import (
    BATTERY,
    fade_share,
    friction_under,
    lift_off_motor_n,
    lift_off_strength_mps2,
    motor_may,
)
from model.physics.wheels import demand_at_wheels, effective_kg, outside_at

MORE_THAN_ANY_MOTOR_N = 1e9
"""A force [N] to ask of the motor to learn the most that it can do."""


class FootUp(NamedTuple):
    """Forces at the wheels [N] while a car keeps its speed for a moment, the foot up.

    Air and rolling on a flat road without wind; what holds the car back here, wind and slope included; turning the idle
    motor. What lifting off asks of the motor, and what the limits but the battery's leave of it. The most that they
    leave whatever is asked, and the most that the battery takes as it is at the start of the drive. `fade` is the share
    of what is asked that the motor keeps near standstill [1], `bound` the limit that bound, the battery's included: an
    index into LIMITS, or −1. `slowing_mps2` is what the car slows by in all [m/s²], the battery's limit left aside.
    """

    flat_n: float
    here_n: float
    drag_n: float
    asked_n: float
    motor_n: float
    most_n: float
    battery_n: float
    fade: float
    slowing_mps2: float
    bound: int


@compiled
def room_at_start_w(car: CarRecord) -> float:
    """Power that battery and accessories take at the start of the drive [W]."""
    return acceptance_w(car, car.soc_start, start_c(car, car.ambient_c)) + car.accessory_w


@compiled
def foot_up_at(car: CarRecord, motor: Motor, at: MomentOnRoad, room_w: float) -> FootUp:
    """What a car with the foot up does in a moment; battery and accessories together take `room_w` [W]."""
    speed, strength = at.speed_mps, lift_off_strength_mps2(car, at)
    demand = demand_at_wheels(car, at, outside_at(car, at))
    friction = friction_under(car, at)
    asked = lift_off_motor_n(car, strength, demand.flat_road_load_n)
    # whatever the pedal, lifting off asks the motor
    may = motor_may(car, motor, speed, asked, strength, friction, math.inf)
    most = motor_may(car, motor, speed, MORE_THAN_ANY_MOTOR_N, strength, friction, math.inf)
    battery, drag = slowing_force_n(motor, speed, room_w) / motor.gear, idle_drag_n(motor, speed)
    return FootUp(
        demand.flat_road_load_n,
        demand.wheel_n,
        drag,
        asked,
        may.slowing_n,
        most.slowing_n,
        battery,
        fade_share(car, speed),
        (demand.wheel_n + max(may.slowing_n, drag)) / effective_kg(car),
        BATTERY if battery < may.slowing_n else may.bound,
    )
