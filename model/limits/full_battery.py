"""A full battery and a long hill: what to leave free for it, what holds the car on it, what slopes give back."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np
import pandas as pd

from model.describe.parameters import car_of
from model.describe.scenario import Scenario
from model.kernel.savings import Result
from model.limits.cold_day import accepted_kw
from model.limits.descent import Descent, Headroom, descent, descent_to_fill_m, headroom, hill, shares_of_slopes
from model.limits.full_start import FullStart, full_start
from model.limits.limit_settings import LimitSettings, by_battery
from model.physics.battery import start_temperature_c
from model.sampling.drives import trace_of
from model.sampling.hybrid import FuelSaved, fuel_saved, has_engine, with_kept_charge

CHARGES = np.linspace(0.5, 1.0, 51)
SLOPES_PCT, SLOPE_SPEEDS_KMH = (2.0, 4.0, 6.0, 8.0, 10.0, 12.0), (50.0, 80.0, 110.0)


@dataclass(frozen=True, eq=False)
class Hills:
    """One hill with the drive's car and weather: what to leave free for it, and what holds the car on it.

    `room` is for the hill, `drive_room` for the drive itself, each by battery. `takes` has for each charge `soc` [1]
    what a `low`, `mid` and `high` battery takes [kW] at its temperature at the start. `down` begins at the drive's
    charge, `down_full` with a full battery. `to_fill_m` are metres of this slope that fill the battery: from the
    charge at the start, in a hybrid from that which its engine keeps; None where the slope gives nothing. `fuel` is
    what regeneration saves a hybrid on the drive.
    """

    room: dict[str, Headroom]
    drive_room: dict[str, Headroom]
    takes: pd.DataFrame
    down: Descent
    down_full: Descent
    full_start: FullStart
    to_fill_m: float | None
    engine_drag_kw: float
    fuel: FuelSaved | None


def hills(scenario: Scenario, settings: LimitSettings, result: Result) -> Hills:
    """The hill of the settings; `result` is the scenario's drive.

    Raises
    ------
    InputError
        Where the drive cannot be driven.
    """
    trace, car, conditions, driver = trace_of(scenario), car_of(scenario), scenario.conditions, scenario.driver
    hybrid = has_engine(car)
    kept = with_kept_charge(car, conditions)
    way_down = hill(-settings.hill_m, settings.hill_pct, settings.hill_kmh)
    start_c = start_temperature_c(car, conditions)
    slope = {"drop_m": settings.hill_m, "grade_pct": settings.hill_pct, "speed_kmh": settings.hill_kmh}
    full = replace(conditions, soc_start=1.0)
    down = descent(car, kept, driver, **slope)
    return Hills(
        room=by_battery(scenario, lambda varied: headroom(way_down, varied, conditions, driver)),
        drive_room=by_battery(scenario, lambda varied: headroom(trace, varied, conditions, driver)),
        takes=pd.DataFrame(
            {"soc": CHARGES}
            | by_battery(scenario, lambda varied: accepted_kw(varied, np.full_like(CHARGES, start_c), CHARGES))
        ),
        down=down,
        down_full=descent(car, full, driver, **slope),
        full_start=full_start(trace, car, conditions, driver),
        to_fill_m=descent_to_fill_m(car, kept, driver, settings.hill_pct, settings.hill_kmh),
        engine_drag_kw=car.engine_drag_kw if hybrid else 0.0,
        fuel=fuel_saved(scenario, result) if hybrid else None,
    )


def given_back(scenario: Scenario) -> pd.DataFrame:
    """The downhill share of the uphill energy [1] by `grade_pct` and `speed_kmh`; NaN where the car cannot climb."""
    shares = shares_of_slopes(car_of(scenario), scenario.conditions, scenario.driver, SLOPES_PCT, SLOPE_SPEEDS_KMH)
    grades, speeds = np.meshgrid(SLOPES_PCT, SLOPE_SPEEDS_KMH, indexing="ij")
    return pd.DataFrame({"grade_pct": grades.ravel(), "speed_kmh": speeds.ravel(), "share": shares.ravel()})
