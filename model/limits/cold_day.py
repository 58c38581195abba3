"""A cold day: what the season does to one drive, and where on the map of charge acceptance its battery goes."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TypedDict

import numpy as np
import pandas as pd

from model.describe.car import Car
from model.describe.parameters import car_of
from model.describe.scenario import Scenario
from model.describe.trace import Array, Numbers
from model.kernel.savings import evaluate
from model.limits.full_start import Normal, ordinary_charging_w, until_normal
from model.limits.limit_settings import by_battery
from model.limits.winter import LiftOffLeft, SeasonCosts, WarmUp, warm_up, why_it_fades
from model.limits.winter_advice import WinterMeasure, measures
from model.physics import battery
from model.sampling.drives import trace_of

MAP_C = np.arange(-20.0, 31.0)
"""Battery temperatures of the map [°C]."""
LATTICE_C, LATTICE_SOC = tuple(range(-18, 29)), (0.1, 0.45, 0.8)
"""Where the map may carry numbers: it takes those that no line of it goes through."""


class LiftOffs(TypedDict):
    """Lift-offs as `model.limits.winter.why_it_fades` takes them."""

    speed_kmh: float
    surface: str
    cold_battery_c: float
    slow_kmh: float


FADES: LiftOffs = {"speed_kmh": 50.0, "surface": "ice", "cold_battery_c": -10.0, "slow_kmh": 8.0}
"""The lift-offs that are compared."""


@dataclass(frozen=True, eq=False)
class ColdDay:
    """The drive as described beside a mild day, and where on the map of its battery's charge acceptance it goes.

    `ordinary_kw` is what ordinary slow-downs charge with, `takes_kw` what the battery takes at the start, `normal`
    when it takes the former. `takes_all` has for each `battery_c` the highest charge [1] at which a `low`, `mid` and
    `high` battery takes ordinary slow-downs (NaN: at none), `accepted` has `kw` that the mid battery takes by
    `battery_c` and `soc`, `way` has the drive's own `battery_c` and `soc`. `measures`
    are what helps, the best first.
    """

    costs: SeasonCosts
    ordinary_kw: float
    takes_kw: dict[str, float]
    normal: dict[str, Normal | None]
    takes_all: pd.DataFrame
    accepted: pd.DataFrame
    way: pd.DataFrame
    fades: tuple[LiftOffLeft, ...]
    warm_up: WarmUp
    measures: tuple[WinterMeasure, ...]


def accepted_kw(car: Car, battery_c: Numbers, soc: Numbers) -> Array:
    """Power that the battery takes [kW] at temperatures [°C] and charges [1] of one shape (points,)."""
    return battery.acceptance_w(car, np.atleast_2d(soc), np.atleast_2d(battery_c))[0] / 1000


def highest_charges(car: Car, power_w: float) -> Array:
    """The highest charge [1] at which the battery takes a power [W], by temperature of the map; NaN where none does."""
    charges = np.linspace(0.0, 1.0, 201)
    battery_c, soc = (axis.ravel() for axis in np.meshgrid(MAP_C, charges, indexing="ij"))
    takes = (accepted_kw(car, battery_c, soc) * 1000 >= power_w).reshape(len(MAP_C), -1)
    return np.where(takes.any(axis=1), np.where(takes, charges, 0.0).max(axis=1), np.nan)


def normal_by_battery(scenario: Scenario) -> dict[str, Normal | None]:
    """When the motor slows as on a mild day, with a battery that takes little, the middle and much; None: not at all.

    Raises
    ------
    InputError
        Where the drive cannot be driven.
    """
    trace, around, driver = trace_of(scenario), scenario.conditions, scenario.driver
    return by_battery(scenario, lambda varied: until_normal(evaluate(trace, varied, around, driver)))


def cold_day(scenario: Scenario, costs: SeasonCosts, normal: dict[str, Normal | None]) -> ColdDay:
    """What the season does to the scenario's drive; `costs` and `normal` are those of the same drive."""
    trace, car, conditions, driver = costs.season.trace, car_of(scenario), scenario.conditions, scenario.driver
    run = costs.season.run
    ordinary_w = ordinary_charging_w(costs.season)
    start_c, start = float(run.pack_c[0, 0]), float(run.soc[0, 0])

    warmed = warm_up(trace, car, conditions, driver)
    lattice = pd.DataFrame([(pack_c, soc) for pack_c in LATTICE_C for soc in LATTICE_SOC], columns=["battery_c", "soc"])
    return ColdDay(
        costs=costs,
        ordinary_kw=ordinary_w / 1000,
        takes_kw=by_battery(scenario, lambda varied: float(accepted_kw(varied, start_c, start)[0])),
        normal=normal,
        takes_all=pd.DataFrame(
            {"battery_c": MAP_C} | by_battery(scenario, lambda varied: highest_charges(varied, ordinary_w))
        ),
        accepted=lattice.assign(kw=accepted_kw(car, lattice["battery_c"].to_numpy(), lattice["soc"].to_numpy())),
        way=pd.DataFrame({"battery_c": run.pack_c[0], "soc": run.soc[0]}),
        fades=why_it_fades(car, conditions, driver, **FADES),
        warm_up=warmed,
        measures=measures(scenario, warmed),
    )
