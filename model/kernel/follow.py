"""A trace the car can drive: where motor or battery cannot give what the trace asks, the car is slower."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np

from model.describe.car import CAR_FIELDS, Car
from model.describe.fields import InputError
from model.describe.figures import Quantity, Share
from model.describe.scenario import Conditions, Driver
from model.describe.trace import Array, Trace
from model.kernel.march import (
    NOWHERE,
    ROUNDING,
    cabin_on_way_back,
    first_step_back,
    start_pack_c,
    warm_cabin_before_j,
    warm_pack_before_j,
)
from model.kernel.road import road_of
from model.kernel.run import Run
from model.physics.cabin import cabin_of, cabin_w, rise_at_start_k
from model.physics.cells import capacity_j, greatest_w, open_circuit_v, resistance_ohm
from model.physics.engine import has_engine
from model.physics.jit import door
from model.physics.motor_and_gear import LEAST_SPEED_MPS, greatest_pull_n, motor_of
from model.physics.records import CarRecord, Records, car_record
from model.physics.wheels import demand_at_wheels, effective_kg, outside_at, outside_next, resisting_n

CRAWL_MPS = 0.5
"""A car slower than this on an open road is taken to be stuck."""


LATE_SHARE = 0.01
"""A drive that takes at most so much longer than described [1] is told as the drive described: nobody sees it."""


@door
def left_for_drive_w(car: CarRecord, road: Records) -> float:
    """The most power that battery, or a hybrid's engine, has left for the drive [W], with the charge of its start."""
    if has_engine(car):
        # the engine makes up for what the battery cannot give
        most = car.motor_peak_kw * 10000.0
    else:
        before_j = warm_cabin_before_j(car, road[0]) + warm_pack_before_j(car, road[0])
        soc = car.soc_start - before_j / capacity_j(car)
        ohms = resistance_ohm(car, soc, start_pack_c(car, road[0]))
        most = greatest_w(open_circuit_v(car, soc), ohms)
    cabin, heating, back = cabin_of(car, rise_at_start_k(car)), 0.0, first_step_back(road)
    for step in range(len(road)):
        if step == back:
            cabin = cabin_on_way_back(car, road[step])
        own = road[step].cabin_w
        heating = max(heating, cabin_w(cabin, road[step].passed_s) if math.isnan(own) else own)
    return max(most - car.accessory_w - heating, 0.0)


@door
def keeps_up(car: CarRecord, road: Records, power_w: float) -> bool:
    """Whether the car can do what the road asks with `power_w` [W] for the drive."""
    motor, outside = motor_of(car), outside_at(car, road[0])
    for step in range(len(road)):
        at = road[step]
        outside = outside_next(car, at, road[max(step - 1, 0)], outside)
        asked = demand_at_wheels(car, at, outside).wheel_n
        if asked > greatest_pull_n(motor, at.speed_mps, power_w) * ROUNDING:
            return False
    return True


@door
def walk(car: CarRecord, road: Records, power_w: float, length_m: Array, speed: Array) -> int:
    """Lower the speeds at the points of a road [m/s] to what the car can reach, step by step along its length [m].

    Returns the step in which the car is stuck, or −1.
    """
    motor, mass = motor_of(car), effective_kg(car)
    for step in range(len(road)):
        at, length = road[step], length_m[step]
        if length == 0:
            continue
        before, wanted = speed[step], speed[step + 1]
        outside = outside_at(car, at)
        # pull and air change with speed within the step: once with the speed before, once with the mean
        mean = before
        for _ in range(2):
            rolls = max(mean, LEAST_SPEED_MPS)
            gain = (greatest_pull_n(motor, rolls, power_w) - resisting_n(car, at, rolls, outside)) / mass
            reached = min(math.sqrt(max(before * before + 2.0 * gain * length, 0.0)), wanted)
            mean = (before + reached) / 2.0
        speed[step + 1] = reached
        if reached < CRAWL_MPS < wanted and before < CRAWL_MPS:
            return step
    return NOWHERE


def longer_share(run: Run) -> Array:
    """How much longer each car of a run would take than the trace has [1]; 0 where it keeps up, of shape (cars,).

    Infinite where it cannot get through at all: where the battery is empty on the way, or a hill stops the car.
    """
    energies, road = run.energies, run.road
    longer = np.where(energies["empty_at"] == NOWHERE, 0.0, np.inf)
    length_m, half_mps = road["speed_mps"] * road["step_s"], road["acceleration_mps2"] * road["step_s"] / 2
    described = np.concatenate([road["speed_mps"][:1] - half_mps[:1], road["speed_mps"] + half_mps])
    for place in np.flatnonzero(~energies["able"] & (longer == 0)):
        car, speed = run.cars[place], np.maximum(described, 0.0)
        if walk(car, road, left_for_drive_w(car, road), length_m, speed) != NOWHERE:
            longer[place] = np.inf
            continue
        mean = (speed[:-1] + speed[1:]) / 2
        step_s = np.divide(length_m, mean, out=road["step_s"].copy(), where=mean > 0)
        longer[place] = max(float(step_s.sum() / road["step_s"].sum()) - 1, 0.0)
    return longer


def follow(trace: Trace, car: Car, conditions: Conditions) -> tuple[Trace, bool]:
    """The trace as this car drives it, and whether that is the trace as given.

    Where the car cannot keep up it drives the same road at the speed it can reach, so distance, hills and stops stay
    and time grows.

    Raises
    ------
    InputError
        Where the car cannot climb a hill at all.
    """
    record, road = car_record(car, conditions, Driver()), road_of(trace)
    power_w = left_for_drive_w(record, road)
    if keeps_up(record, road, power_w):
        return trace, True
    speed = trace.speed_mps.astype(float)
    stuck = walk(record, road, power_w, trace.step_m, speed)
    if stuck != NOWHERE:
        slope, place_km = 100 * trace.sine_of_slope[stuck], trace.step_m[:stuck].sum() / 1000
        power, place = CAR_FIELDS["motor_peak_kw"], Quantity(round(float(place_km), 1), "km", 2, trimmed=True)
        if slope <= 0.5:
            raise InputError("cannot-get-under-way", field=power, place=place)
        raise InputError("cannot-climb", field=power, place=place, slope=Share(slope / 100, places=0))
    mean = (speed[:-1] + speed[1:]) / 2
    step_s = np.divide(trace.step_m, mean, out=trace.step_s.copy(), where=mean > 0)
    time_s = np.concatenate([[trace.time_s[0]], trace.time_s[0] + np.cumsum(step_s)])
    return replace(trace, speed_mps=speed, time_s=time_s), False
