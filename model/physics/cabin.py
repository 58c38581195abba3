"""Cabin heating and cooling: what it takes from the battery.

The heater runs at its most until the cabin is at its temperature, then holds it: one lumped heat balance ``C dT/dt = Q
+ driver − UA (T − ambient)`` in closed form. A cabin starts as warm as where the car stood, a preconditioned one at
its temperature; before the way back it cools while the car stands. Air conditioning carries off what comes in through
the walls and from the sun. The waste heat of a hybrid's engine takes no electricity.
"""

from __future__ import annotations

import math
from typing import NamedTuple

import numpy as np

from model.physics.jit import compiled
from model.physics.pack_heat import soaked_c
from model.physics.records import CarRecord, code

COMFORT_FROM_C, COMFORT_TO_C = 18.0, 24.0
"""Outside temperatures [°C] between which neither heater nor air conditioning runs: common practice, no source."""
SUN_W = 600.0
"""Heat of the sun and of people that air conditioning has to carry off [W]: assumed."""
PERSON_W = 100.0
"""Heat of a seated person, here the driver, that the heater need not give [W]: general knowledge."""
STANDING_SHARE = 0.6
"""Heat loss of a standing car over that of a driven one [1]: its air is not changed. Published split of a compact
battery car's loss, 54 W/K through walls and windows beside 34 W/K with half of its air changed (see parameters.csv)."""
COOLING_COP = 2.5
"""Heat carried off over electricity taken by the air conditioning [1]: assumed."""
HEAT_PUMP_PER_K = 0.04
"""How much a heat pump's coefficient of performance rises for each kelvin that it is warmer outside [1/K]: assumed."""
HEAT_PUMP, ENGINE = code("heat_source", "heat_pump"), code("heat_source", "engine")


class Cabin(NamedTuple):
    """The cabin over a drive: electric power until it is at its temperature, how long that takes [s], and after [W]."""

    first_w: float
    first_s: float
    then_w: float


@compiled
def heat_pump_cop(car: CarRecord, outside_c: float) -> float:
    """Heat given over electricity taken [1]; never below 1, since the pump's own heat stays inside."""
    return max(1.0, car.heat_pump_cop_at_0c + HEAT_PUMP_PER_K * outside_c)


@compiled
def cop(car: CarRecord, outside_c: float) -> float:
    """Heat given over electricity taken [1] by this car's heater."""
    return heat_pump_cop(car, outside_c) if car.heat_source == HEAT_PUMP else 1.0


@compiled
def is_heated(car: CarRecord) -> bool:
    """Whether heat for the cabin takes electricity on this drive."""
    return bool(car.cabin) and car.ambient_c < COMFORT_FROM_C and car.heat_source != ENGINE


@compiled
def wanted_rise_k(car: CarRecord) -> float:
    """How much warmer than outside the cabin is wanted [K]."""
    return max(car.cabin_set_c - car.ambient_c, 0.0)


@compiled
def strongest_heat_w(car: CarRecord) -> float:
    """The most heat that the heater gives [W]."""
    return car.heater_max_kw * 1000.0 * cop(car, car.ambient_c)


@compiled
def time_constant_s(car: CarRecord) -> float:
    """Time in which the cabin of a driving car would lose some two thirds of its warmth [s]."""
    return car.cabin_heat_capacity_kj_per_k * 1000.0 / car.cabin_loss_w_per_k


@compiled
def rise_at_start_k(car: CarRecord) -> float:
    """How much warmer than outside the cabin is when the drive begins [K]: wanted, or as where the car stood."""
    if car.preconditioned:
        return wanted_rise_k(car)
    return 0.0 if math.isnan(car.parked_c) else min(max(car.parked_c - car.ambient_c, 0.0), wanted_rise_k(car))


@compiled
def rise_after_k(car: CarRecord, rise_k: float, time_s: float) -> float:
    """How much warmer than outside a cabin is [K] that was `rise_k` [K] warmer and was then heated for `time_s` [s]."""
    if not is_heated(car):
        return rise_k if car.heat_source != ENGINE else wanted_rise_k(car)
    in_the_end = (strongest_heat_w(car) + PERSON_W) / car.cabin_loss_w_per_k
    reached = in_the_end + (rise_k - in_the_end) * math.exp(-time_s / time_constant_s(car))
    return min(reached, wanted_rise_k(car))


@compiled
def rise_on_way_back_k(car: CarRecord, arrived_k: float) -> float:
    """How much warmer than outside the cabin is as the way back begins [K]: heated on the plug there, or cooled."""
    if car.preconditioned and car.stands_plugged_in:
        return wanted_rise_k(car)
    return arrived_k * math.exp(-car.stands_h * 3600.0 * STANDING_SHARE / time_constant_s(car))


@compiled
def cabin_of(car: CarRecord, rise_k: float) -> Cabin:
    """What heating or cooling takes from a start on which the cabin is `rise_k` [K] warmer than outside."""
    outside, loss = car.ambient_c, car.cabin_loss_w_per_k
    if car.cabin and outside > COMFORT_TO_C:
        cooling = (loss * max(outside - car.cabin_set_c, 0.0) + SUN_W) / COOLING_COP
        return Cabin(cooling, 0.0, cooling)
    if not is_heated(car):
        return Cabin(0.0, 0.0, 0.0)
    strongest, wanted = strongest_heat_w(car), wanted_rise_k(car)
    hold = min(max(loss * wanted - PERSON_W, 0.0), strongest)
    # time until the cabin is warm; never, where the heater cannot hold it
    reach = loss * wanted / (strongest + PERSON_W)
    short = min(loss * rise_k / (strongest + PERSON_W), 1.0 - 1e-12)
    warm_after = np.inf
    if rise_k >= wanted:
        warm_after = 0.0
    elif reach < 1:
        warm_after = time_constant_s(car) * (math.log1p(-short) - math.log1p(-min(reach, 1.0 - 1e-12)))
    return Cabin(strongest / cop(car, outside), warm_after, hold / cop(car, outside))


@compiled
def cabin_w(cabin: Cabin, time_s: float) -> float:
    """Electric power of heating and cooling [W] at `time_s` [s] after the car set off."""
    return cabin.first_w if time_s < cabin.first_s else cabin.then_w


@compiled
def cabin_warm_up_j(car: CarRecord, outside_c: float) -> float:
    """Electricity that brings the cabin to its temperature before the drive [J], where it would be heated on it.

    From the temperature [°C] outside as the drive begins, or from that of where the car stood.
    """
    if not car.preconditioned or not is_heated(car):
        return 0.0
    parked_c = soaked_c(car, outside_c)
    rise = max(car.cabin_set_c - parked_c, 0.0)
    return car.cabin_heat_capacity_kj_per_k * 1000.0 * rise / cop(car, parked_c)
