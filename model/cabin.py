"""Cabin heating and cooling: what it takes from the battery."""

from __future__ import annotations

from typing import Any

import numpy as np

from model.car import Car
from model.scenario import Conditions
from model.trace import Array

COMFORT_BAND_C = (18.0, 24.0)
"""Outside temperatures at which neither heater nor air conditioning runs: common practice, no source."""
SUN_W = 600.0
"""Heat of the sun and of people that air conditioning has to carry off: assumed."""
PERSON_W = 100.0
"""Heat of a seated person, here the driver, that the heater need not give: general knowledge."""
COOLING_COP = 2.5
"""Heat carried off over electricity taken by the air conditioning: assumed."""
HEAT_PUMP_PER_K = 0.04
"""Gain of a heat pump's figure for each kelvin warmer: assumed."""


def heat_pump_cop(car: Car, ambient_c: Any) -> Any:
    """Heat given over electricity taken [1]; never below 1, since the pump's own heat stays inside."""
    return np.maximum(1.0, car.heat_pump_cop_at_0c + HEAT_PUMP_PER_K * np.asarray(ambient_c, dtype=float))


def cabin_warm_up_j(car: Car, conditions: Conditions) -> Any:
    """Electricity that brings the cabin to its temperature before the drive [J], where it would be heated on it."""
    parked_c = conditions.ambient_c if conditions.parked_c is None else conditions.parked_c
    rise = np.maximum(conditions.cabin_set_c - np.asarray(parked_c, dtype=float), 0.0)
    source, cold = np.asarray(car.heat_source), np.asarray(conditions.ambient_c) < COMFORT_BAND_C[0]
    heated = np.logical_and(conditions.cabin, conditions.preconditioned) & cold & (source != "engine")
    cop = np.where(source == "heat_pump", heat_pump_cop(car, parked_c), 1.0)
    return heated * car.cabin_heat_capacity_kj_per_k * 1000 * rise / cop


def cabin_power_w(car: Car, conditions: Conditions, time_s: Array) -> Array:
    """Electric power of heating and cooling [W] at `time_s` [s] after the start, shape (runs or 1, times).

    The heater runs at its most until the cabin is at its temperature, then holds it: one lumped heat balance
    ``C dT/dt = Q + driver − UA (T − ambient)`` in closed form. A cabin starts as warm as where the car stood, a
    preconditioned one at its temperature. Air conditioning carries off what comes in through the walls and from the
    sun. The waste heat of a hybrid's engine takes no electricity.
    """
    ambient = np.asarray(conditions.ambient_c, dtype=float)
    loss = np.asarray(car.cabin_loss_w_per_k, dtype=float)
    cooling = (loss * np.maximum(ambient - conditions.cabin_set_c, 0) + SUN_W) / COOLING_COP
    source = np.asarray(car.heat_source)
    cop = np.where(source == "heat_pump", heat_pump_cop(car, ambient), 1.0)
    strongest = np.asarray(car.heater_max_kw, dtype=float) * 1000 * cop
    difference = np.maximum(conditions.cabin_set_c - ambient, 0)
    hold = np.clip(loss * difference - PERSON_W, 0.0, strongest)
    # time until the cabin is warm; never, where the heater cannot hold it
    start = 0.0 if conditions.parked_c is None else np.clip(conditions.parked_c - ambient, 0.0, difference)
    reach = loss * difference / (strongest + PERSON_W)
    short = np.minimum(loss * start / (strongest + PERSON_W), 1 - 1e-12)
    time_constant = car.cabin_heat_capacity_kj_per_k * 1000 / loss
    warm_after = np.where(
        reach < 1, time_constant * (np.log1p(-short) - np.log1p(-np.minimum(reach, 1 - 1e-12))), np.inf
    )
    warming = (time_s < warm_after) & np.logical_not(conditions.preconditioned)
    heating = np.where(source == "engine", 0.0, np.where(warming, strongest, hold) / cop)
    cold, hot = ambient < COMFORT_BAND_C[0], ambient > COMFORT_BAND_C[1]
    power = np.where(hot, cooling, np.where(cold, heating, 0.0)) * np.asarray(conditions.cabin)
    return np.broadcast_to(power, np.broadcast_shapes((1, 1), power.shape, np.shape(time_s)))
