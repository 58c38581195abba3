"""Braking on the stretches of a recorded drive, such as its slow-downs."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from model.describe.trace import Array
from model.kernel.run import Run
from model.physics.jit import door
from model.physics.records import Records


@door
def add_up_braking(road: Records, moments: Records, stretch: NDArray[np.intp], work_j: Array) -> None:
    """Add up every car's braking; `moments` of shape (cars, steps), `work_j` (2, cars, stretches)."""
    for index in range(len(moments)):
        for step in range(len(road)):
            now, step_m = moments[index, step], road[step].speed_mps * road[step].step_s
            braking_n = max(-now.wheel_n, 0.0)
            work_j[0, index, stretch[step]] += braking_n * step_m
            work_j[1, index, stretch[step]] += (braking_n - now.motor_n - now.engine_drag_n) * step_m


def braked_by_stretch(run: Run, stretch: NDArray[np.int64]) -> Array:
    """Braking of a recorded run at the wheels, and what of it the friction brakes did [J].

    `stretch` numbers the stretch of every step, from 0; shape (2, cars, stretches).
    """
    work_j = np.zeros((2, len(run.cars), int(stretch.max()) + 1))
    add_up_braking(run.road, run.moments, stretch, work_j)
    return work_j
