"""Cabin heating and cooling: what it takes from the battery.

The heater runs at its most until the cabin is at its temperature, then holds it: one lumped heat balance
``C dT/dt = Q + driver − UA (T − ambient)`` in closed form. A cabin starts as warm as where the car stood, a
preconditioned one at its temperature. Air conditioning carries off what comes in through the walls and from the
sun. The waste heat of a hybrid's engine takes no electricity.
"""

from __future__ import annotations

import math
from typing import Any, NamedTuple

import numpy as np

from model.physics.jit import compiled
from model.physics.pack_heat import soaked_c
from model.physics.records import code

COMFORT_FROM_C, COMFORT_TO_C = 18.0, 24.0
"""Outside temperatures at which neither heater nor air conditioning runs: common practice, no source."""
SUN_W = 600.0
"""Heat of the sun and of people that air conditioning has to carry off: assumed."""
PERSON_W = 100.0
"""Heat of a seated person, here the driver, that the heater need not give: general knowledge."""
COOLING_COP = 2.5
"""Heat carried off over electricity taken by the air conditioning: assumed."""
HEAT_PUMP_PER_K = 0.04
"""Gain of a heat pump's figure for each kelvin warmer: assumed."""
HEAT_PUMP, ENGINE = code("heat_source", "heat_pump"), code("heat_source", "engine")


class Cabin(NamedTuple):
    """The cabin over a drive: electric power until it is at its temperature, how long that takes [s], and after [W]."""

    first_w: float
    first_s: float
    then_w: float


@compiled
def heat_pump_cop(car: Any, outside_c: float) -> float:
    """Heat given over electricity taken [1]; never below 1, since the pump's own heat stays inside."""
    return max(1.0, car.heat_pump_cop_at_0c + HEAT_PUMP_PER_K * outside_c)


@compiled
def cop(car: Any, outside_c: float) -> float:
    """Heat given over electricity taken [1] by this car's heater."""
    return heat_pump_cop(car, outside_c) if car.heat_source == HEAT_PUMP else 1.0


@compiled
def cabin_of(car: Any) -> Cabin:
    """What heating or cooling takes over a drive; the same all the time but for a first warming up."""
    outside, loss = car.ambient_c, car.cabin_loss_w_per_k
    if not car.cabin or COMFORT_FROM_C <= outside <= COMFORT_TO_C:
        return Cabin(0.0, 0.0, 0.0)
    if outside > COMFORT_TO_C:
        cooling = (loss * max(outside - car.cabin_set_c, 0.0) + SUN_W) / COOLING_COP
        return Cabin(cooling, 0.0, cooling)
    if car.heat_source == ENGINE:
        return Cabin(0.0, 0.0, 0.0)
    strongest = car.heater_max_kw * 1000.0 * cop(car, outside)
    difference = max(car.cabin_set_c - outside, 0.0)
    hold = min(max(loss * difference - PERSON_W, 0.0), strongest)
    # time until the cabin is warm; never, where the heater cannot hold it
    start = 0.0 if math.isnan(car.parked_c) else min(max(car.parked_c - outside, 0.0), difference)
    reach = loss * difference / (strongest + PERSON_W)
    short = min(loss * start / (strongest + PERSON_W), 1.0 - 1e-12)
    time_constant = car.cabin_heat_capacity_kj_per_k * 1000.0 / loss
    warm_after = np.inf
    if reach < 1:
        warm_after = time_constant * (math.log1p(-short) - math.log1p(-min(reach, 1.0 - 1e-12)))
    if car.preconditioned:
        warm_after = 0.0
    return Cabin(strongest / cop(car, outside), warm_after, hold / cop(car, outside))


@compiled
def cabin_w(cabin: Cabin, time_s: float) -> float:
    """Electric power of heating and cooling [W] at `time_s` [s] after the start."""
    return cabin.first_w if time_s < cabin.first_s else cabin.then_w


@compiled
def cabin_warm_up_j(car: Any) -> float:
    """Electricity that brings the cabin to its temperature before the drive [J], where it would be heated on it."""
    if not car.cabin or not car.preconditioned or car.ambient_c >= COMFORT_FROM_C or car.heat_source == ENGINE:
        return 0.0
    parked_c = soaked_c(car, car.ambient_c)
    rise = max(car.cabin_set_c - parked_c, 0.0)
    return car.cabin_heat_capacity_kj_per_k * 1000.0 * rise / cop(car, parked_c)
