"""What a recorded drive asked of the car that the modelled one could not have given."""

from __future__ import annotations

import numpy as np

from model.describe.units import J_PER_KWH
from model.kernel.run import Run
from model.physics.cells import greatest_w, open_circuit_v, resistance_ohm
from model.physics.engine import has_engine
from model.physics.jit import door
from model.physics.motor_and_gear import greatest_pull_n, motor_of
from model.physics.records import CarRecord, Records


@door
def _short_j(car: CarRecord, road: Records, moments: Records) -> float:
    motor, short_j = motor_of(car), 0.0
    for step in range(len(road)):
        at, now = road[step], moments[step]
        if now.wheel_n <= 0:
            continue
        soc = min(max(now.soc_before, 0.0), 1.0)
        # a hybrid's engine makes up for what its battery cannot give
        battery_w = 10.0 * motor.peak_w
        if not has_engine(car):
            most_w = greatest_w(open_circuit_v(car, soc), resistance_ohm(car, soc, now.pack_before_c))
            battery_w = max(most_w - car.accessory_w - now.cabin_w - now.pack_heater_w, 0.0)
        able_n = greatest_pull_n(motor, at.speed_mps, battery_w)
        short_j += max(now.wheel_n - able_n, 0.0) * at.speed_mps * at.step_s
    return short_j


def shortfall_j(run: Run) -> float:
    """Energy [J] that a recorded run of one car asked for beyond what motor, battery and charge could have given.

    At the wheels, beyond the greatest pull at the charge and the temperature of that moment; and from the battery what
    was taken of it when it was empty.
    """
    empty_j = max(-float(np.min(run.soc)), 0.0) * float(run.cars[0].usable_kwh) * J_PER_KWH
    return _short_j(run.cars[0], run.road, run.moments[0]) + empty_j
