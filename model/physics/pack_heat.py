"""The battery's temperature: one lumped mass that its losses and its heater warm and the air cools."""

from __future__ import annotations

import math

from model.physics.jit import compiled
from model.physics.records import CarRecord

PRECONDITIONED_C = 20.0
"""Battery temperature [°C] that warming up before the drive aims at: assumed."""


@compiled
def heat_capacity_j_per_k(car: CarRecord) -> float:
    """Heat that warms the whole battery by a kelvin [J/K]."""
    return car.pack_heat_capacity_kj_per_k_kwh * 1000.0 * car.usable_kwh


@compiled
def kept_share(car: CarRecord, time_s: float) -> float:
    """Share of its difference to the air [1] that the battery keeps over `time_s` [s]."""
    return math.exp(-car.pack_heat_loss_w_per_k * time_s / heat_capacity_j_per_k(car))


@compiled
def pack_after_c(car: CarRecord, pack_c: float, heat_j: float, kept: float, outside_c: float) -> float:
    """Temperature [°C] after `heat_j` [J], from `pack_c` [°C], in air of `outside_c` [°C]; `kept` is `kept_share`."""
    return outside_c + kept * (pack_c - outside_c) + heat_j / heat_capacity_j_per_k(car)


@compiled
def heater_w(car: CarRecord, pack_c: float, time_s: float) -> float:
    """Power of the battery's heater [W] over `time_s` [s]: its most, until the battery is as warm as it aims at.

    In the last step it gives what is still missing; the heat of the cells and what the air takes are left aside.
    """
    missing_j = (car.pack_heater_until_c - pack_c) * heat_capacity_j_per_k(car)
    return min(max(missing_j, 0.0) / max(time_s, 1e-9), car.pack_heater_kw * 1000.0)


@compiled
def soaked_c(car: CarRecord, outside_c: float) -> float:
    """Temperature of a car that has stood [°C]: of where it stood, else of the air."""
    return outside_c if math.isnan(car.parked_c) else car.parked_c


@compiled
def start_c(car: CarRecord, outside_c: float) -> float:
    """Pack temperature at the start [°C]: as stated; else where the car stood, and warmed up to 20 °C if it was."""
    if not math.isnan(car.battery_temp_c):
        return car.battery_temp_c
    soaked = soaked_c(car, outside_c)
    return max(PRECONDITIONED_C, soaked) if car.preconditioned else soaked


@compiled
def warm_up_j(car: CarRecord, outside_c: float) -> float:
    """Heat that warming up beforehand puts into the battery [J]."""
    if not car.preconditioned or not math.isnan(car.battery_temp_c):
        return 0.0
    return heat_capacity_j_per_k(car) * (start_c(car, outside_c) - soaked_c(car, outside_c))


@compiled
def on_way_back_c(car: CarRecord, arrived_c: float, outside_c: float) -> float:
    """Pack temperature [°C] as the way back begins: cooled since it arrived, or warmed up on the plug there."""
    stood_c = pack_after_c(car, arrived_c, 0.0, kept_share(car, car.stands_h * 3600.0), outside_c)
    return max(PRECONDITIONED_C, stood_c) if car.preconditioned and car.stands_plugged_in else stood_c
