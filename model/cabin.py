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
COOLING_COP = 2.5
"""Heat carried off over electricity taken by the air conditioning: assumed."""
HEAT_PUMP_PER_K = 0.04
"""Gain of a heat pump's figure for each kelvin warmer: assumed."""


def heat_pump_cop(car: Car, ambient_c: Any) -> Any:
    """Heat given over electricity taken [1]; never below 1, since the pump's own heat stays inside."""
    return np.maximum(1.0, car.heat_pump_cop_at_0c + HEAT_PUMP_PER_K * np.asarray(ambient_c, dtype=float))


def cabin_power_w(car: Car, conditions: Conditions, time_s: Array) -> Array:
    """Electric power of heating and cooling [W] at `time_s` [s] after the start, shape (runs or 1, times).

    The heater runs at its most until the cabin is at its temperature, then holds it: one lumped heat balance
    ``C dT/dt = Q − UA (T − ambient)`` in closed form. A preconditioned cabin starts at its temperature.
    Air conditioning carries off what comes in through the walls and from the sun.
    """
    ambient = conditions.ambient_c
    shape = np.broadcast_shapes(np.shape(car.mass_kg), np.shape(car.cabin_loss_w_per_k), np.shape(time_s))
    shape = (1, *shape) if len(shape) == 1 else shape
    if not conditions.cabin or COMFORT_BAND_C[0] <= ambient <= COMFORT_BAND_C[1]:
        return np.zeros(shape)
    loss = np.asarray(car.cabin_loss_w_per_k, dtype=float)
    if ambient > COMFORT_BAND_C[1]:
        power = (loss * max(ambient - conditions.cabin_set_c, 0) + SUN_W) / COOLING_COP
        return np.broadcast_to(power, shape)
    cop = heat_pump_cop(car, ambient) if car.heat_source == "heat_pump" else 1.0
    strongest = np.asarray(car.heater_max_kw, dtype=float) * 1000 * cop
    difference = max(conditions.cabin_set_c - ambient, 0)
    hold = np.minimum(loss * difference, strongest)
    if conditions.preconditioned:
        return np.broadcast_to(hold / cop, shape)
    # time until the cabin is warm; never, where the heater cannot hold it
    reach = loss * difference / np.maximum(strongest, 1e-9)
    warm_after = np.where(
        reach < 1, -(car.cabin_heat_capacity_kj_per_k * 1000 / loss) * np.log1p(-np.minimum(reach, 1 - 1e-12)), np.inf
    )
    return np.broadcast_to(np.where(time_s < warm_after, strongest, hold) / cop, shape)
