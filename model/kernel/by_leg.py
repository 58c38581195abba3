"""What a drive comes to leg by leg, and how often the brake pedal is pressed on it."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from model.describe.trace import Array, Trace
from model.kernel.march import MOMENTS, RESULTS, drive_all
from model.kernel.road import road_of
from model.physics.jit import door
from model.physics.records import Records
from model.physics.wheels import effective_kg


@door
def add_up_by_leg(
    cars: Records, road: Records, leg: NDArray[np.int64], pressed_mps2: float, result: Records, moments: Records,
    sums: Array,
) -> None:  # fmt: skip
    """Add up every car's drive; `leg` of shape (steps,), `sums` (cars, 3, legs); the rest is room for one drive.

    All cars use the same room, one after another, so that it stays in the processor's cache.
    """
    for index in range(len(cars)):
        drive_all(cars[index : index + 1], road, True, result, moments)
        least_n, was_pressed = pressed_mps2 * effective_kg(cars[index]), False
        for step in range(len(road)):
            at, now, here = road[step], moments[0, step], leg[step]
            friction_n = max(-now.wheel_n, 0.0) - now.motor_n - now.engine_drag_n
            pressed = friction_n > least_n and at.speed_mps > 0
            sums[index, 0, here] += now.terminal_w * at.step_s
            sums[index, 1, here] += friction_n * at.speed_mps * at.step_s
            sums[index, 2, here] += 1.0 if pressed and not was_pressed else 0.0
            was_pressed = pressed


def by_leg(trace: Trace, cars: Records, legs: int, pressed_mps2: float) -> Array:
    """Sums over the legs of a described drive with every car, shape (3, legs, cars).

    Energy out less in at the terminals [J]; friction braking at the wheels [J]; how often the brake pedal is pressed,
    which it is where friction slows the car by more than `pressed_mps2` [m/s²].
    """
    road, leg = road_of(trace), trace.leg
    assert leg is not None
    sums = np.zeros((len(cars), 3, legs))
    result, moments = np.zeros(1, dtype=RESULTS), np.zeros((1, len(road)), dtype=MOMENTS)
    add_up_by_leg(cars, road, leg, pressed_mps2, result, moments, sums)
    return np.moveaxis(sums, 0, -1)
