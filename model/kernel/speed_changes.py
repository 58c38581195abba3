"""Changes of speed without a drive around them: rolling down to a lower speed, and stopping, in even parts of speed."""

from __future__ import annotations

import math

from model.describe.trace import Array
from model.describe.units import GRAVITY_MPS2
from model.physics.foot_up import MORE_THAN_ANY_MOTOR_N
from model.physics.jit import compiled, door
from model.physics.motor_and_gear import Motor, idle_drag_n, machine_at, motor_of, worth_working
from model.physics.records import CarRecord, MomentOnRoad, Records
from model.physics.slowing_limits import friction_under, motor_may
from model.physics.wheels import car_effective_kg, demand_at_wheels, outside_at

SPEED_PARTS = 100
"""Equal parts into which a change of speed is cut."""
ROUNDS = 5
"""Slowing moves weight between the axles, which moves grip, and so slowing: so often is it worked out anew."""


@compiled
def keeping_w(car: CarRecord, motor: Motor, at: MomentOnRoad) -> float:
    """What keeping the speed on a flat road without wind takes at the battery's terminals [W]."""
    pulling = demand_at_wheels(car, at, outside_at(car, at)).flat_road_load_n
    machine = machine_at(motor, at.speed_mps, pulling, 0.0, 0.0)
    return machine.shaft_n * at.speed_mps + machine.loss_w + car.accessory_w


@compiled
def rolling_saves_j(
    car: CarRecord, at: MomentOnRoad, from_mps: float, lost_mps: float, slowing_mps2: float, time_made_up: bool
) -> float:
    """What rolling to a lower speed saves at the battery's terminals [J] against slowing on the motor, on a flat road.

    Over the same road, the other car keeping its speed [m/s] first and then slowing evenly [m/s²]. Where the lost time
    is made up, both cruise before and the rolling car cruises faster: a second gained at speed v costs
    ``v·dP/dv − P``, with P what `keeping_w` says. What the battery may refuse is left out.
    """
    motor, weight, outside = motor_of(car), car_effective_kg(car), outside_at(car, at)
    part = min(lost_mps, from_mps) / SPEED_PARTS
    roll_s = slow_s = roll_m = slow_m = rolled_j = slowed_j = 0.0
    for index in range(SPEED_PARTS):
        speed = from_mps - part * (index + 0.5)
        at.speed_mps = speed
        resisting, drag = demand_at_wheels(car, at, outside).flat_road_load_n, idle_drag_n(motor, speed)
        rolling = (resisting + drag) / weight
        slowing = max(slowing_mps2, rolling)
        asked = slowing * weight - resisting
        by_motor = max(motor_may(car, motor, speed, asked, slowing, 1.0, math.inf).slowing_n, drag)
        by_motor = by_motor if worth_working(motor, speed, by_motor, drag) else drag
        here_roll_s, here_slow_s = part / rolling, part / slowing
        idle, slowed = machine_at(motor, speed, 0.0, drag, drag), machine_at(motor, speed, 0.0, by_motor, drag)
        rolled_j += (idle.shaft_n * speed + idle.loss_w + car.accessory_w) * here_roll_s
        slowed_j += (slowed.shaft_n * speed + slowed.loss_w + car.accessory_w) * here_slow_s
        roll_s, slow_s = roll_s + here_roll_s, slow_s + here_slow_s
        roll_m, slow_m = roll_m + speed * here_roll_s, slow_m + speed * here_slow_s
    keep_s = (roll_m - slow_m) / from_mps
    at.speed_mps = from_mps
    kept_w = keeping_w(car, motor, at)
    saved_j = keep_s * kept_w + slowed_j - rolled_j
    if time_made_up:
        at.speed_mps = 1.01 * from_mps
        faster_w = keeping_w(car, motor, at)
        at.speed_mps = 0.99 * from_mps
        second_j = (faster_w - keeping_w(car, motor, at)) / 0.02 - kept_w
        saved_j -= (roll_s - slow_s - keep_s) * second_j
    return saved_j


@compiled
def motor_over_brakes(car: CarRecord, at: MomentOnRoad, from_mps: float) -> float:
    """Distance of a stop by the motor alone over that with all the grip there is [1], from a speed [m/s], flat road.

    The battery takes what it is given; reaction time is left out.
    """
    motor, weight, outside = motor_of(car), car_effective_kg(car), outside_at(car, at)
    by_motor = by_brakes = 0.0
    for index in range(SPEED_PARTS):
        speed = from_mps * (index + 0.5) / SPEED_PARTS
        at.speed_mps = speed
        road = demand_at_wheels(car, at, outside).flat_road_load_n
        friction, slowing = friction_under(car, at), 0.0
        for _ in range(ROUNDS):
            most = motor_may(car, motor, speed, MORE_THAN_ANY_MOTOR_N, slowing, friction, math.inf).slowing_n
            slowing = (most + road) / weight
        by_motor += speed / slowing
        by_brakes += speed / (friction * GRAVITY_MPS2 + road / weight)
    return by_motor / by_brakes


@door
def rolling_saves_each_j(
    cars: Records, moments: Records, from_mps: Array, lost_mps: Array, slowing_mps2: Array, time_made_up: Array,
    saved_j: Array,
) -> None:  # fmt: skip
    """`rolling_saves_j` of every car; all of shape (cars,), the moments as flat roads at any speed."""
    for index in range(len(cars)):
        saved_j[index] = rolling_saves_j(
            cars[index], moments[index], from_mps[index], lost_mps[index], slowing_mps2[index], time_made_up[index]
        )


@door
def motor_over_brakes_each(cars: Records, moments: Records, from_mps: Array, ratio: Array) -> None:
    """`motor_over_brakes` of every car; all of shape (cars,), the moments as flat roads at any speed."""
    for index in range(len(cars)):
        ratio[index] = motor_over_brakes(cars[index], moments[index], from_mps[index])
