"""The battery: open-circuit voltage, cell resistance, charge acceptance, pack temperature."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from typing import Any

import numpy as np

from model.car import Car
from model.parameters import rows
from model.scenario import Conditions
from model.trace import Array
from model.units import J_PER_KWH, ZERO_C_IN_K

GAS_CONSTANT = 8.314462618  # J/(mol K)
RESISTANCE_REFERENCE_C = 25.0
FULL_CAPACITY_C = 20.0
"""At and above this temperature the whole usable battery can be drawn."""
DISCHARGE_SHARE = 0.6
"""Share of the battery's greatest possible power that the car uses: keeps the voltage up. Assumed."""
PRECONDITIONED_C = 20.0
"""Battery temperature that warming up before the drive aims at: assumed."""
VOLTAGE_AT_CHARGE = np.array(
    [[0.0, 0.05, 0.1, 0.3, 0.5, 0.7, 0.9, 1.0], [3.3, 3.45, 3.52, 3.63, 3.71, 3.86, 4.04, 4.17]]
)
"""State of charge over open-circuit voltage [V] of a nickel-rich lithium cell: shape from memory."""
RESISTANCE_AT_CHARGE = np.array([[0.0, 0.1, 0.2, 0.9, 1.0], [1.6, 1.25, 1.0, 1.0, 1.1]])
"""State of charge over resistance relative to half full: shape from memory."""


def open_circuit_v(car: Car, soc: Array) -> Array:
    """Open-circuit voltage [V] at the state of charge `soc` [1]."""
    curve = VOLTAGE_AT_CHARGE
    mean = np.trapezoid(curve[1], curve[0])
    return np.interp(soc, curve[0], curve[1] / mean) * car.pack_voltage_v


def resistance_ohm(car: Car, soc: Array, temperature_c: Array) -> Array:
    """Cell resistance at the terminals [ohm]: Arrhenius in temperature, a table in charge."""
    kelvin = temperature_c + ZERO_C_IN_K
    colder = 1 / kelvin - 1 / (RESISTANCE_REFERENCE_C + ZERO_C_IN_K)
    warm = car.cell_resistance_share * car.pack_voltage_v**2 / (car.usable_kwh * 1000)
    charge = np.interp(soc, RESISTANCE_AT_CHARGE[0], RESISTANCE_AT_CHARGE[1])
    return warm * charge * np.exp(car.resistance_activation_j_per_mol / GAS_CONSTANT * colder)


@cache
def acceptance_tables() -> tuple[Array, Array, Array]:
    """Temperatures [°C], charges [1] and charge rates [1/h] of shape (3 levels, temperatures, charges)."""
    table = rows("charge_acceptance.csv")
    charges = [name for name in table[0] if name not in ("level", "battery_c")]
    levels = [[row for row in table if row["level"] == level] for level in ("low", "mid", "high")]
    rates = np.array([[[float(row[name]) for name in charges] for row in level] for level in levels])
    return np.array([float(row["battery_c"]) for row in levels[0]]), np.array(charges, dtype=float), rates


def _place(grid: Array, value: Array) -> tuple[Any, Any]:
    """Cell of `value` in `grid` and how far into it, held at the grid's ends."""
    held = np.clip(value, grid[0], grid[-1])
    cell = np.clip(np.searchsorted(grid, held, side="right") - 1, 0, len(grid) - 2)
    return cell, (held - grid[cell]) / (grid[cell + 1] - grid[cell])


def acceptance_w(car: Car, soc: Array, temperature_c: Array) -> Array:
    """Power the battery takes at its terminals [W].

    Bilinear in state of charge [1] and pack temperature [°C] between the low, mid and high tables of
    ``assets/charge_acceptance.csv``, chosen by the car's acceptance level, times its charge rate factor. Held at the
    table's ends; nothing at 1.
    """
    temperatures, charges, rates = acceptance_tables()
    row, down = _place(temperatures, temperature_c)
    column, across = _place(charges, soc)
    level = np.asarray(car.acceptance_level, dtype=float)
    # one table for every run: mid, moved towards low or high
    table = rates[1] + np.maximum(level, 0)[..., None, None] * (rates[2] - rates[1])
    table = table + np.maximum(-level, 0)[..., None, None] * (rates[0] - rates[1])
    table = table.reshape(-1, len(temperatures), len(charges))
    run = np.arange(len(table))[:, None]
    upper = table[run, row, column] * (1 - across) + table[run, row, column + 1] * across
    lower = table[run, row + 1, column] * (1 - across) + table[run, row + 1, column + 1] * across
    return (upper * (1 - down) + lower * down) * car.charge_rate_factor * car.usable_kwh * (J_PER_KWH / 3600)


def greatest_w(volts: Any, ohms: Any) -> Any:
    """The most power that the car draws from its battery [W], from open-circuit voltage [V] and resistance [ohm]."""
    return DISCHARGE_SHARE * volts * volts / (4 * np.maximum(ohms, 1e-9))


def usable_in_the_cold_kwh(car: Car, battery_c: Any) -> Any:
    """What can be drawn from the full battery [kWh] when it is at `battery_c` [°C] as it runs low."""
    colder = np.maximum(FULL_CAPACITY_C - np.asarray(battery_c, dtype=float), 0.0)
    return car.usable_kwh * np.maximum(1 - car.cold_capacity_loss_per_k * colder, 0.0)


def heat_capacity_j_per_k(car: Car) -> Any:
    """Heat that warms the whole battery by a kelvin [J/K]."""
    return car.pack_heat_capacity_kj_per_k_kwh * 1000 * car.usable_kwh


def pack_warm_up_j(car: Car, conditions: Conditions, ambient_c: Any = None) -> Any:
    """Heat that warming up beforehand puts into the battery [J]; `ambient_c` as in `start_temperature_c`."""
    as_it_stood = start_temperature_c(replace(conditions, preconditioned=False), ambient_c)
    warmer = start_temperature_c(conditions, ambient_c) - as_it_stood
    return heat_capacity_j_per_k(car) * warmer


def start_temperature_c(conditions: Conditions, ambient_c: Any = None) -> Any:
    """Pack temperature at the start [°C]: as stated; else where the car stood, and warmed up to 20 °C if it was.

    `ambient_c` [°C] is a measured outside temperature in place of the conditions' own.
    """
    if conditions.battery_temp_c is not None:
        return conditions.battery_temp_c
    outside_c = conditions.ambient_c if ambient_c is None else ambient_c
    soaked = outside_c if conditions.parked_c is None else conditions.parked_c
    return np.where(conditions.preconditioned, np.maximum(PRECONDITIONED_C, soaked), soaked)
