"""A hard stop on every road, and how little of it a motor could do; the brakes that rest meanwhile."""

from __future__ import annotations

from dataclasses import dataclass, replace

import pandas as pd

from model.describe.car import Car
from model.describe.parameters import car_of
from model.describe.scenario import SEASONS, SURFACES, Conditions, Scenario
from model.describe.units import KMH_PER_MPS
from model.kernel.savings import Result
from model.limits.emergency_stop import Standing, Stop, emergency_stop, motor_part_g, standing_on_slope
from model.limits.friction_brakes import BrakeUse, brake_use
from model.limits.grip_margin import grip_levels
from model.limits.limit_settings import LimitSettings, slipperiest
from model.limits.motor_only_stop import MotorOnlyStop, motor_only_stop
from model.limits.stopping import HIGHWAY_CODE, sight_distance_m, stopping_distance_m

DAYS_A_YEAR = 365.25


@dataclass(frozen=True, eq=False)
class HardStop:
    """An emergency stop on the slipperiest road of the drive, and on every other.

    `stops` are at the low, mid and high end of the road's band. `by_surface` has a row a `surface`: `thinking_m` and,
    with it, stopping distances `low_m`, `mid_m`, `high_m`, named by the road's grip: low grip is the longest. `motor_g`
    is the motor's part [g], `motor_only` a stop on the motor alone on a dry road, `standing` what holds the car on the
    slope of the settings' hill. `highway_code_m` is the typical distance behind the UK Highway Code, `sight_m` that
    which road designers allow for (AASHTO). `brakes` is what friction brakes do on the drive; `days_between_firm_uses`
    counts all days of a year, None where they are never used firmly.
    """

    stops: dict[str, Stop]
    by_surface: pd.DataFrame
    motor_g: dict[str, float]
    motor_only: MotorOnlyStop
    standing: Standing
    highway_code_m: float
    sight_m: float
    brakes: BrakeUse
    days_between_firm_uses: float | None

    @property
    def floats(self) -> bool:
        """Whether tyres float on standing water at this speed: a stop there then takes longer than on snow."""
        middle = self.by_surface.set_index("surface")["mid_m"]
        return bool(middle["standing-water"] > middle["snow"])


def stops_on(car: Car, conditions: Conditions, settings: LimitSettings) -> dict[str, Stop]:
    """The stop of the settings at the low, mid and high end of the road's band."""
    return {
        name: emergency_stop(car, conditions, settings.stop_kmh, level=level, reaction_s=settings.reaction_s)
        for name, level in grip_levels(conditions).items()
    }


def stops_there(scenario: Scenario, settings: LimitSettings) -> dict[str, Stop]:
    """The stop of the settings on the drive's slipperiest road."""
    return stops_on(car_of(scenario), slipperiest(scenario), settings)


def hard_stop(scenario: Scenario, settings: LimitSettings, result: Result) -> HardStop:
    """An emergency stop from the speed of the settings; `result` is the scenario's drive."""
    car, conditions = car_of(scenario), slipperiest(scenario)

    rows = []
    for surface in SURFACES:
        each = stops_on(car, replace(conditions, surface=surface), settings)
        distances = {f"{name}_m": stop.distance_m for name, stop in each.items()}
        rows.append({"surface": surface, "thinking_m": each["mid"].thinking_m, **distances})
    brakes = brake_use(result)
    driven_days = sum(getattr(scenario.year, f"{season}_days") for season in SEASONS)
    return HardStop(
        stops=stops_there(scenario, settings),
        by_surface=pd.DataFrame(rows),
        motor_g=motor_part_g(replace(scenario, conditions=conditions), settings.stop_kmh),
        motor_only=motor_only_stop(car, replace(conditions, surface="dry"), settings.stop_kmh),
        standing=standing_on_slope(car, conditions, -settings.hill_pct / 100),
        highway_code_m=float(stopping_distance_m(settings.stop_kmh / KMH_PER_MPS, *HIGHWAY_CODE)),
        sight_m=float(sight_distance_m(settings.stop_kmh)),
        brakes=brakes,
        days_between_firm_uses=brakes.days_between_firm_uses(driven_days / DAYS_A_YEAR),
    )
