"""Everything compiled, or taken from where it is kept, before the first visitor waits for it."""

from __future__ import annotations

import time

import numpy as np

from model.battery import acceptance_w, start_temperature_c
from model.cycles import cycle_trace
from model.kernel.moments import feet_up, motor_loss_w, steady_w
from model.kernel.run import drive
from model.kernel.speed_changes import motor_over_brakes_each, rolling_saves_each_j
from model.parameters import DEFAULT_CLASS, car_from
from model.physics import jit
from model.physics.cabin import cabin_warm_up_j
from model.physics.pack_heat import warm_up_j
from model.physics.records import car_records, moments_on_road
from model.scenario import Conditions, Driver
from model.tyre_grip import axle_loads_n, road_friction


def prepare() -> str:
    """Ask every door of the kernel once; says in one line what that took."""
    begin = time.perf_counter()
    car, around, driver = car_from(DEFAULT_CLASS), Conditions(), Driver()
    for record in (True, False):
        drive(cycle_trace("nedc-urban"), car, around, driver, record=record)
    one, here, found = car_records(car, around, driver), moments_on_road(1), np.zeros(1)
    speed, made_up = np.full(1, 20.0), np.zeros(1, dtype=bool)
    rolling_saves_each_j(one, here, speed, speed / 2, speed / 20, made_up, found)
    motor_over_brakes_each(one, here, speed, found)
    feet_up(10.0, car, around, driver)
    steady_w(10.0, car, around, driver)
    motor_loss_w(car, 10.0, 0.0)
    road_friction(around, 10.0)
    axle_loads_n(car, car.mass_kg, 1.0)
    acceptance_w(car, 0.5, start_temperature_c(car, around))
    warm_up_j(one[0], around.ambient_c), cabin_warm_up_j(one[0])
    where = f"kept in {jit.FOLDER}" if jit.FOLDER else "kept nowhere: the next start takes as long"
    if jit.CONFIG.DISABLE_JIT:
        where = "nothing is compiled, everything runs as plain Python"
    return f"The physics is ready after {time.perf_counter() - begin:.1f} s; {where}."
