"""Everything compiled, or taken from where it is kept, before the first visitor waits for it."""

from __future__ import annotations

import time
from dataclasses import replace

import numpy as np

from model.describe.parameters import DEFAULT_CLASS, car_from
from model.describe.scenario import Conditions, Driver
from model.describe.trace import Trace
from model.kernel.by_leg import by_leg
from model.kernel.by_stretch import braked_by_stretch
from model.kernel.moments import feet_up, lift_each, motor_loss_w, steady_w
from model.kernel.room import Changing, largest_that_fit
from model.kernel.run import drive
from model.kernel.savings import evaluate
from model.kernel.shortfall import shortfall_j
from model.kernel.speed_changes import motor_over_brakes_each, rolling_saves_each_j
from model.physics import jit
from model.physics.battery import acceptance_w, start_temperature_c
from model.physics.records import car_record, car_records, moments_on_road
from model.physics.tyre_grip import asked_of_axles, axle_loads_n, road_friction, strongest_within


def prepare() -> str:
    """Ask every door of the kernel once; says in one line what that took."""
    begin = time.perf_counter()
    car, around, driver = car_from(DEFAULT_CLASS), Conditions(), Driver()
    speed_mps = np.array([0.0, 10.0, 20.0, 10.0, 0.0])
    trace = Trace(time_s=np.arange(5.0), speed_mps=speed_mps, elevation_m=np.zeros(5))
    # too weak a car to keep up
    evaluate(trace, replace(car, motor_peak_kw=5.0), around, driver)
    recorded = drive(trace, car, around, driver)
    shortfall_j(recorded)
    braked_by_stretch(recorded, np.zeros(4, dtype=np.int64))
    by_leg(replace(trace, leg=np.zeros(4, dtype=np.int64)), car_records(car, around, driver), 1, 0.1)
    habit, ends, room_m = Changing(2.0, 0.5, 0.5, 0.3), np.zeros(2), np.full(1, 500.0)
    largest_that_fit(ends[:1], ends[1:], ends, speed_mps[:1], room_m, ends[:1], False, habit, habit, np.zeros(1))
    cars, here, found = car_records(car, around, driver), moments_on_road(1), np.zeros(1)
    speed, made_up = np.full(1, 20.0), np.zeros(1, dtype=bool)
    rolling_saves_each_j(cars, here, speed, speed / 2, speed / 20, made_up, found)
    motor_over_brakes_each(cars, here, speed, found)
    feet_up(10.0, car, around, driver)
    lift_each(cars, here, found, found.copy())
    steady_w(10.0, car, around, driver)
    motor_loss_w(car, 10.0, 0.0)
    road_friction(around, 10.0)
    axle_loads_n(car, car.mass_kg, 1.0)
    asked_of_axles(cars, 1.0, 10.0, 100.0, 1.0)
    strongest_within(car_record(car, around, driver), 0.5, 10.0, 100.0, 1.0)
    acceptance_w(car, 0.5, start_temperature_c(car, around))
    where = f"kept in {jit.COMPILED}" if jit.COMPILED else "kept nowhere: the next start takes as long"
    if jit.CONFIG.DISABLE_JIT:
        where = "nothing is compiled, everything runs as plain Python"
    return f"The physics is ready after {time.perf_counter() - begin:.1f} s; {where}."
