"""How fast a battery may be charged, over its charge and its temperature."""

from __future__ import annotations

import math
from dataclasses import replace
from functools import cache
from typing import Any

import numpy as np

from model.describe.car import Car
from model.describe.scenario import Conditions, Driver
from model.describe.tables import TableError, rows
from model.describe.trace import Array
from model.physics.cells import capacity_j, power_for_size, resistance_share
from model.physics.jit import compiled
from model.physics.records import CarRecord, car_record

STRENGTHS = ("low", "mid", "high")


@cache
def acceptance_tables() -> tuple[Array, Array, Array]:
    """Temperatures [°C], charges [1] and charge rates [1/h] of shape (3 levels, temperatures, charges)."""
    table = rows("charge_acceptance.csv", once=("level", "battery_c"))
    by_level = {level: [row for row in table if row.one_of("level", STRENGTHS) == level] for level in STRENGTHS}
    temperatures = [[row.number("battery_c", -60, 100) for row in by_level[level]] for level in STRENGTHS]
    for level, found in zip(STRENGTHS, temperatures, strict=True):
        if found != sorted(temperatures[0]) or len(found) < 2:
            raise TableError(f"assets/charge_acceptance.csv: the temperatures of {level} are not those of low, rising.")
    charges = [name for name in table[0] if name not in ("level", "battery_c")]
    try:
        places = np.array(charges, dtype=float)
    except ValueError:
        raise TableError("assets/charge_acceptance.csv, row 1: a charge is not a number from 0 to 1.") from None
    if places[0] != 0 or places[-1] != 1 or (np.diff(places) <= 0).any():
        raise TableError("assets/charge_acceptance.csv, row 1: the charges do not rise from 0 to 1.")
    rates = np.array([[[row.number(name, 0) for name in charges] for row in by_level[level]] for level in STRENGTHS])
    for at, upper in enumerate(STRENGTHS[1:], 1):
        for row, below, above in zip(by_level[upper], rates[at - 1], rates[at], strict=True):
            if (below > above).any():
                charge = charges[int(np.argmax(below > above))]
                raise row.wrong(f"at charge {charge} {STRENGTHS[at - 1]} is above {upper}")
    return np.array(temperatures[0]), places, rates


TEMPERATURES_C, TABLE_CHARGES, RATES_PER_H = acceptance_tables()


@compiled
def _cell(x: float, xs: Any) -> int:
    cell = 0
    while cell < len(xs) - 2 and x >= xs[cell + 1]:
        cell += 1
    return cell


@compiled
def _rate(level: int, row: int, column: int, down: float, across: float) -> float:
    table = RATES_PER_H[level]
    upper = table[row, column] * (1.0 - across) + table[row, column + 1] * across
    lower = table[row + 1, column] * (1.0 - across) + table[row + 1, column + 1] * across
    return upper * (1.0 - down) + lower * down


@compiled
def charge_rate_factor(car: CarRecord) -> float:
    """Charge rate of the cells over that of the acceptance tables [1]."""
    return math.sqrt(power_for_size(car)) if math.isnan(car.charge_rate_factor) else car.charge_rate_factor


def with_cells_stated(car: Car) -> Car:
    """The car with what its cells come to stated, so that another motor or another size leaves them as they are."""
    record = car_record(car, Conditions(), Driver())
    return replace(
        car, cell_resistance_share=resistance_share(record), charge_rate_factor=charge_rate_factor(record)
    )


@compiled
def acceptance_w(car: CarRecord, soc: float, pack_c: float) -> float:
    """Power the battery takes at its terminals [W].

    Bilinear in state of charge [1] and pack temperature [°C] between the low, mid and high tables of
    ``assets/charge_acceptance.csv``, chosen by the car's acceptance level, times its charge rate factor. Where that is
    not stated, the battery takes more by the square root where it must give more for its size, as its resistance is
    less (`model.physics.cells`). Held at the table's ends; nothing at 1.
    """
    held_c = min(max(pack_c, TEMPERATURES_C[0]), TEMPERATURES_C[-1])
    held = min(max(soc, TABLE_CHARGES[0]), TABLE_CHARGES[-1])
    row, column = _cell(held_c, TEMPERATURES_C), _cell(held, TABLE_CHARGES)
    down = (held_c - TEMPERATURES_C[row]) / (TEMPERATURES_C[row + 1] - TEMPERATURES_C[row])
    across = (held - TABLE_CHARGES[column]) / (TABLE_CHARGES[column + 1] - TABLE_CHARGES[column])
    rate = _rate(1, row, column, down, across)
    other = _rate(2 if car.acceptance_level > 0 else 0, row, column, down, across)
    rate += abs(car.acceptance_level) * (other - rate)
    return rate * charge_rate_factor(car) * capacity_j(car) / 3600.0
