"""What a recorded drive comes to leg by leg, and how often the brake pedal is pressed on it."""

from __future__ import annotations

from typing import Any

import numpy as np
from numpy.typing import NDArray

from model.describe.trace import Array
from model.kernel.run import Run
from model.physics.jit import door
from model.physics.wheels import effective_kg


@door
def add_up_by_leg(cars: Any, road: Any, moments: Any, leg: Any, pressed_mps2: float, sums: Any) -> None:
    """Add up every car's drive; `moments` of shape (cars, steps), `leg` (steps,), `sums` (3, legs, cars)."""
    for index in range(len(cars)):
        least_n, was_pressed = pressed_mps2 * effective_kg(cars[index]), False
        for step in range(len(road)):
            at, now, here = road[step], moments[index, step], leg[step]
            friction_n = max(-now.wheel_n, 0.0) - now.motor_n - now.engine_drag_n
            pressed = friction_n > least_n and at.speed_mps > 0
            sums[0, here, index] += now.terminal_w * at.step_s
            sums[1, here, index] += friction_n * at.speed_mps * at.step_s
            sums[2, here, index] += 1.0 if pressed and not was_pressed else 0.0
            was_pressed = pressed


def by_leg(run: Run, leg: NDArray[np.int64], legs: int, pressed_mps2: float) -> Array:
    """Sums over the legs of a recorded drive, shape (3, legs, cars).

    Energy out less in at the terminals [J]; friction braking at the wheels [J]; how often the brake pedal is pressed: a
    pedal is, where friction slows the car by more than `pressed_mps2` [m/s²]. `leg` counts the leg of every step.
    """
    sums = np.zeros((3, legs, len(run.cars)))
    add_up_by_leg(run.cars, run.road, run.moments, leg, pressed_mps2, sums)
    return sums
