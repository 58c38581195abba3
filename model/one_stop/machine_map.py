"""One electric machine in its four quadrants: how strong, how efficient, and where a drive uses it.

Forces are those of the motor shaft carried to the wheels without gear loss, as in
`model.physics.motor_and_gear`. Torque is force times the wheels' radius over the gear ratio, so its picture has the
same shape.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import pandas as pd

from model.describe.car import Car
from model.describe.trace import Array, Numbers
from model.describe.units import J_PER_KWH, KMH_PER_MPS
from model.kernel.moments import motor_in, motor_loss_w
from model.kernel.savings import Result
from model.physics.motor_and_gear import NO_FORCE_N

QUADRANTS = ("pulling_forwards", "slowing_forwards", "slowing_backwards", "pulling_backwards")
SPEED_BINS, FORCE_BINS = 24, 24
"""Cells over the machine's whole speed, and over its whole force in one quadrant, in which a drive is counted."""


def greatest_n(car: Car, speed: Numbers, *, slowing: bool) -> Array:
    """The machine's greatest force [N] at `speed` [m/s, above 0]: one torque at first, then one power."""
    motor = motor_in(car)
    return np.minimum(motor.greatest_n, (motor.regen_peak_w if slowing else motor.peak_w) / speed)


def constant_torque_until_kmh(car: Car, *, slowing: bool) -> float:
    """Speed [km/h] up to which torque is the limit, and from which power is."""
    motor = motor_in(car)
    return float((motor.regen_peak_w if slowing else motor.peak_w) / motor.greatest_n) * KMH_PER_MPS


def efficient_n(car: Car, speed: Array, share: float, *, slowing: bool) -> tuple[Array, Array]:
    """Forces [N] between which the machine is at least as efficient as `share` [1]; equal where it nowhere is.

    Solved from ``k F² − b F + A = 0``, with `A` the loss without force and ``k F²`` the loss that grows with its
    square; held within the machine's greatest force.
    """
    most = greatest_n(car, speed, slowing=slowing)
    part = speed * ((1 - share - car.open_slowing_share) if slowing else (1 - share) / share - car.open_pulling_share)
    curve, without = motor_in(car).loss_w_per_n2, motor_loss_w(car, speed, 0.0)
    inside = part * part - 4 * curve * without
    # the smaller root in the form that stays exact for small losses, the larger one from their product
    both = np.maximum(part, 1e-30) + np.sqrt(np.maximum(inside, 0.0))
    inside = np.where(part > 0, inside, -1.0)
    low = np.where(inside > 0, np.minimum(2 * without / both, most), most)
    high = np.where(inside > 0, np.minimum(both / np.maximum(2 * curve, 1e-30), most), most)
    return low, high


@dataclass(frozen=True)
class Use:
    """What a drive does in one quadrant: time [s], energy at the shaft and on the electric side [kWh]."""

    time_s: float
    shaft_kwh: float
    electric_kwh: float

    @property
    def efficiency(self) -> float | None:
        """What came out over what went in [1]; None where the quadrant was not used."""
        ends = sorted((self.shaft_kwh, self.electric_kwh))
        return ends[0] / ends[1] if ends[1] > 0 else None


def use_of(result: Result) -> dict[str, Use]:
    """Time and energy of a drive in each quadrant; a drive goes forwards."""
    run = result.run
    shaft_w = (run.shaft_n * run.speed)[0]
    electric_w, step_s = shaft_w + run.motor_loss_w[0], run.step_s[0]
    uses = dict.fromkeys(QUADRANTS, Use(0.0, 0.0, 0.0))
    for name, steps in (
        ("pulling_forwards", run.shaft_n[0] > NO_FORCE_N),
        ("slowing_forwards", (run.shaft_n[0] < -NO_FORCE_N) & (electric_w < 0)),
    ):
        energies = (abs(float(np.dot(power[steps], step_s[steps]))) / J_PER_KWH for power in (shaft_w, electric_w))
        uses[name] = Use(float(step_s[steps].sum()), *energies)
    return uses


def cloud_of(result: Result) -> pd.DataFrame:
    """Where on the map the drive's energy passes the shaft, counted in cells.

    Columns `speed_kmh` and `force_n` (slowing below 0), the middle of the energy in a cell, and its `energy_wh`.
    """
    run = result.run
    force, speed = run.shaft_n[0], run.speed[0]
    energy = np.abs(force * speed) * run.step_s[0] / 3600
    top = result.car.motor_top_speed_kmh / KMH_PER_MPS
    column = np.floor(speed / top * SPEED_BINS)
    row = np.floor(force / motor_in(result.car).greatest_n * FORCE_BINS)
    steps = pd.DataFrame(
        {"column": column, "row": row, "energy_wh": energy, "speed_kmh": speed * KMH_PER_MPS * energy,
         "force_n": force * energy}
    )  # fmt: skip
    cells = steps[energy > 0].groupby(["column", "row"], as_index=False).sum()
    for middle in ("speed_kmh", "force_n"):
        cells[middle] /= cells["energy_wh"]
    return cells[["speed_kmh", "force_n", "energy_wh"]]
