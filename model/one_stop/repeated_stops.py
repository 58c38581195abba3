"""One stop after another: how warm the discs get, how much heat the air takes, and what the motor returns instead."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np
import pandas as pd

from model.describe.car import Car
from model.describe.scenario import Conditions, Driver
from model.describe.units import KMH_PER_MPS
from model.kernel.savings import evaluate
from model.limits.friction_brakes import disc_temperature_of
from model.one_stop.slow_down import change, gain, trace_along
from model.one_stop.stop_energy import hardest_mps2

STOP_STEPS, PULL_AWAY_STEPS = 60, 30
"""Equal parts into which each stop and each pulling away is cut."""


@dataclass(frozen=True, eq=False)
class RepeatedStops:
    """Equal stops, the car pulling away at once after each, with regeneration and on friction brakes only.

    `temperature` has columns `time_s`, `regenerated_c`, `friction_only_c` (front discs) and `stops`, those finished.
    Energies of all stops [kWh]: heat in the friction brakes in each run, and what regeneration put into the battery.
    """

    temperature: pd.DataFrame
    heat_kwh: float
    friction_only_heat_kwh: float
    back_kwh: float


def repeated_stops(
    stops: int, from_kmh: float, slowing_mps2: float, car: Car, conditions: Conditions, driver: Driver
) -> RepeatedStops:
    """Stop so often from a speed [km/h] at one slowing [m/s²], pulling away in between as this driver does.

    The discs start as cold as the air. What pulling away takes from the battery is left out.
    """
    quiet = replace(conditions, cabin=False)
    fast = from_kmh / KMH_PER_MPS
    slow = change(fast, 0.0, min(slowing_mps2, hardest_mps2(from_kmh, conditions)), car, quiet, steps=STOP_STEPS)
    away = gain(0.0, fast, driver, steps=PULL_AWAY_STEPS)
    result = evaluate(trace_along([slow, *[away, slow] * (stops - 1)]), car, quiet, driver)
    speed = result.trace.speed_mps
    return RepeatedStops(
        temperature=pd.DataFrame(
            {
                "time_s": result.trace.time_s,
                "regenerated_c": disc_temperature_of(result.run, car),
                "friction_only_c": disc_temperature_of(result.friction_only, car),
                "stops": np.cumsum(np.append(False, (speed[1:] == 0) & (speed[:-1] > 0))),
            }
        ),
        heat_kwh=result.wheel_friction_kwh,
        friction_only_heat_kwh=result.friction_only_wheel_friction_kwh,
        back_kwh=result.battery_in_kwh,
    )
