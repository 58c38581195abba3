"""Lift-off on hills, as tables: how strongly the car slows there, which hill it just holds, and with what power."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import pandas as pd

from model.describe.parameters import car_of
from model.describe.scenario import Scenario
from model.describe.units import KMH_PER_MPS
from model.lift_off.slowing import equilibrium_grade, foot_up_mps2, holding

GRADES_PCT = np.arange(-12.0, 12.5, 0.5)
"""Downhill negative, uphill positive [%]."""
HELD_PCT = (2.0, 4.0, 6.0, 8.0, 10.0, 14.0)
"""Downhills for which it is told what holds the speed on them [%]."""


def slowing_on_hills(scenario: Scenario, speed_kmh: float, strengths: Sequence[float]) -> pd.DataFrame:
    """Slowing with the foot up on every grade, with the motor's force of a flat road.

    At a speed above 0 [km/h], for lift-off strengths [m/s²] in place of the driver's own. A row a strength and grade:
    `lift_off_mps2`, `grade_pct`, `slowing_mps2` (negative: the car gains speed).
    """
    strength, percent = np.repeat(strengths, len(GRADES_PCT)), np.tile(GRADES_PCT, len(strengths))
    slowing = foot_up_mps2(
        speed_kmh / KMH_PER_MPS, car_of(scenario), scenario.conditions, scenario.driver, percent / 100, strength
    )
    return pd.DataFrame({"lift_off_mps2": strength, "grade_pct": percent, "slowing_mps2": slowing})


def held_downhills(scenario: Scenario, speed_kmh: float) -> pd.DataFrame:
    """What keeps a speed [km/h] on downhills without the brake pedal.

    Columns `grade_pct`, `lift_off_mps2` (NaN where rolling keeps the speed or loses some), `asked_kw` and `can_kw` at
    the wheels with the battery as at the start of the drive, and `held`: whether the motor alone can do it.
    """
    found = holding(
        speed_kmh / KMH_PER_MPS, np.array(HELD_PCT) / 100, car_of(scenario),
        scenario.conditions, scenario.driver,
    )  # fmt: skip
    return pd.DataFrame(
        {
            "grade_pct": HELD_PCT,
            "lift_off_mps2": found.strength_mps2,
            "asked_kw": found.asked_kw,
            "can_kw": found.can_kw,
            "held": found.held,
        }
    )


def rolling_downhill_pct(scenario: Scenario, speeds_kmh: Sequence[float]) -> list[float]:
    """The downhill [%] on which the rolling car keeps each speed [km/h]."""
    car = car_of(scenario)
    grades = 100 * equilibrium_grade(np.array(speeds_kmh) / KMH_PER_MPS, car, scenario.conditions)
    return [float(grade) for grade in grades]
