"""The battery's cells: voltage, resistance, what they give and lose for a power at the terminals."""

from __future__ import annotations

import math
from typing import NamedTuple

import numpy as np

from model.describe.trace import Array
from model.describe.units import J_PER_KWH, ZERO_C_IN_K
from model.physics.jit import compiled
from model.physics.records import CarRecord

GAS_CONSTANT = 8.314462618
"""[J/(mol K)]"""
RESISTANCE_REFERENCE_C = 25.0
"""Temperature at which the cells' resistance is stated [°C]."""
USUAL_POWER_PER_H = 2.3
"""How many times an hour the motor of a usual car could empty its battery [1/h]: the family hatch of the classes."""
DISCHARGE_SHARE = 0.6
"""Share of the battery's greatest possible power that the car uses: keeps the voltage up. Assumed."""
VOLTAGE_CHARGES = np.array([0.0, 0.05, 0.1, 0.3, 0.5, 0.7, 0.9, 1.0])
VOLTAGES = np.array([3.3, 3.45, 3.52, 3.63, 3.71, 3.86, 4.04, 4.17])
"""Open-circuit voltage [V] of a nickel-rich lithium cell over its charge [1]: shape from memory."""
MEAN_VOLTAGE = float(np.trapezoid(VOLTAGES, VOLTAGE_CHARGES))
RESISTANCE_CHARGES = np.array([0.0, 0.1, 0.2, 0.9, 1.0])
RESISTANCES = np.array([1.6, 1.25, 1.0, 1.0, 1.1])
"""Resistance over that of a half-full cell [1] over its charge [1]: shape from memory."""


class Cells(NamedTuple):
    """What the cells give [W] (charging negative) and what is lost in them [W]."""

    given_w: float
    loss_w: float


@compiled
def between(x: float, xs: Array, ys: Array) -> float:
    """Straight lines between points, held at the ends [unit of `ys`]."""
    last = len(xs) - 1
    if x >= xs[last]:
        return ys[last]
    cell = 0
    while x >= xs[cell + 1]:
        cell += 1
    return ys[cell] + (ys[cell + 1] - ys[cell]) * (max(x, xs[0]) - xs[cell]) / (xs[cell + 1] - xs[cell])


@compiled
def open_circuit_v(car: CarRecord, soc: float) -> float:
    """Open-circuit voltage [V] at the state of charge `soc` [1]."""
    return between(soc, VOLTAGE_CHARGES, VOLTAGES) / MEAN_VOLTAGE * car.pack_voltage_v


@compiled
def power_for_size(car: CarRecord) -> float:
    """How fast the motor could empty the battery, over what is usual [1]."""
    return car.motor_peak_kw / car.usable_kwh / USUAL_POWER_PER_H


@compiled
def resistance_share(car: CarRecord) -> float:
    """Voltage drop over mean voltage when the battery would be emptied in one hour, at 25 °C [1].

    As stated; else less by the square root where the battery must give more for its size: half-way between the same
    cells in every battery and cells chosen by the motor alone. Assumed.
    """
    if not math.isnan(car.cell_resistance_share):
        return car.cell_resistance_share
    return car.cell_resistance_usual / math.sqrt(power_for_size(car))


@compiled
def resistance_ohm(car: CarRecord, soc: float, pack_c: float) -> float:
    """Cell resistance at the terminals [ohm]: Arrhenius in temperature [°C], a table in charge [1]."""
    colder = 1.0 / (pack_c + ZERO_C_IN_K) - 1.0 / (RESISTANCE_REFERENCE_C + ZERO_C_IN_K)
    warm = resistance_share(car) * car.pack_voltage_v * car.pack_voltage_v / (car.usable_kwh * 1000.0)
    by_charge = between(soc, RESISTANCE_CHARGES, RESISTANCES)
    return warm * by_charge * math.exp(car.resistance_activation_j_per_mol / GAS_CONSTANT * colder)


@compiled
def cells_for(terminal_w: float, volts: float, ohms: float) -> Cells:
    """What the cells give and lose for `terminal_w` [W] at the terminals, from voltage [V] and resistance [ohm].

    The lower current of ``V·I − R·I² = terminal_w``. Past the greatest power there is none: a recording that asks for
    more shows that its battery was stronger, so the loss stays at the half that it has reached there.
    """
    loss_per_w2 = ohms / (volts * volts)
    inside = 1.0 - 4.0 * loss_per_w2 * terminal_w
    if inside <= 0.0:
        return Cells(2.0 * terminal_w, terminal_w)
    given = 2.0 * terminal_w / (1.0 + math.sqrt(inside))
    return Cells(given, loss_per_w2 * given * given)


@compiled
def terminal_w_for(given_w: float, volts: float, ohms: float) -> float:
    """What reaches the terminals [W] where the cells give `given_w` [W]; at most what they ever can."""
    given = min(given_w, volts * volts / (2.0 * max(ohms, 1e-9)))
    return given - ohms / (volts * volts) * given * given


@compiled
def too_weak(cells: Cells) -> bool:
    """Whether the battery could not give that power: from its greatest on, half of it stays in it as heat."""
    return cells.given_w > 0 and 2.0 * cells.loss_w >= cells.given_w


@compiled
def greatest_w(volts: float, ohms: float) -> float:
    """The most power that the car draws from its battery [W], from open-circuit voltage [V] and resistance [ohm]."""
    return DISCHARGE_SHARE * volts * volts / (4.0 * max(ohms, 1e-9))


@compiled
def capacity_j(car: CarRecord) -> float:
    """Energy between empty and full [J]."""
    return car.usable_kwh * J_PER_KWH
