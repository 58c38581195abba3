"""The battery for many values at once: the door to its pointwise physics, and what the cold holds back of it."""

from __future__ import annotations

import numpy as np

from model.describe.car import Car
from model.describe.scenario import Conditions, Driver
from model.describe.trace import Array, Numbers
from model.physics import charge_acceptance
from model.physics.jit import door
from model.physics.pack_heat import start_c
from model.physics.records import CarRecord, car_record

FULL_CAPACITY_C = 20.0
"""At and above this temperature the whole usable battery can be drawn [°C]."""


@door
def take_in_each(car: CarRecord, soc: Array, pack_c: Array, taken_w: Array) -> None:
    """`model.physics.charge_acceptance.acceptance_w` of every point; all of shape (points,)."""
    for index in range(len(soc)):
        taken_w[index] = charge_acceptance.acceptance_w(car, soc[index], pack_c[index])


def acceptance_w(car: Car, soc: Numbers, pack_c: Numbers) -> Array:
    """Power the battery takes at its terminals [W] at a charge [1] and a temperature [°C], of both their shapes."""
    soc, pack_c = np.broadcast_arrays(np.asarray(soc, dtype=float), np.asarray(pack_c, dtype=float))
    taken_w = np.empty(soc.size)
    take_in_each(car_record(car, Conditions(), Driver()), soc.ravel(), pack_c.ravel(), taken_w)
    return taken_w.reshape(soc.shape)


def start_temperature_c(car: Car, conditions: Conditions) -> float:
    """Pack temperature at the start [°C]: as stated; else where the car stood, and warmed up to 20 °C if it was."""
    return start_c(car_record(car, conditions, Driver()), conditions.ambient_c)


def usable_in_the_cold_kwh(car: Car, battery_c: Numbers) -> Array:
    """What can be drawn from the full battery [kWh] when it is at `battery_c` [°C] as it runs low."""
    return car.usable_kwh * usable_share(car.cold_capacity_loss_per_k, battery_c)


def usable_share(loss_per_k: Numbers, battery_c: Numbers) -> Array:
    """Share of the usable battery [1] that can be drawn when it is at `battery_c` [°C] as it runs low."""
    colder = np.maximum(FULL_CAPACITY_C - np.asarray(battery_c, dtype=float), 0.0)
    return np.maximum(1 - np.asarray(loss_per_k, dtype=float) * colder, 0.0)
