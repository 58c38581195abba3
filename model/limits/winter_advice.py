"""What helps on a cold day, ranked by what it brings on the user's own drive."""

from __future__ import annotations

from dataclasses import dataclass, replace

from model.describe.parameters import car_of
from model.describe.scenario import Scenario
from model.kernel.savings import evaluate
from model.limits.winter import MILD_C, WarmUp
from model.physics.battery import start_temperature_c

SHELTER_C = 10.0
"""A garage on a cold day [°C]: assumed."""
HEATER_LOWER_K = 3.0
"""How much cooler one may sit [K]: assumed."""
CHARGED_WARMER_K = 10.0
"""By how much charging just before leaving may have warmed the battery [K]: assumed."""


@dataclass(frozen=True)
class WinterMeasure:
    """Something to do on a cold day, and what it changes on the drive.

    `id` is "plug" (warmed up before leaving), "shelter", "heater" or "charge_late". `saved_kwh` is what the drive takes
    less of the battery, `costs_kwh` what is paid for it beforehand, from the wall or from the battery [kWh].
    """

    id: str
    saved_kwh: float
    costs_kwh: float = 0.0

    @property
    def brings_kwh(self) -> float:
        """What is left of it when it is paid for [kWh]."""
        return self.saved_kwh - self.costs_kwh


def measures(scenario: Scenario, found: WarmUp) -> tuple[WinterMeasure, ...]:
    """What may be done in this car on this day, the best first, each compared with the drive without any.

    `found` is the same drive with and without warming up, from `model.limits.winter.warm_up`.
    """
    car, around = car_of(scenario), scenario.conditions
    now = found.warm if around.preconditioned else found.cold
    trace, starts_c = now.trace, start_temperature_c(car, around)
    supposed = {}
    if around.cabin and around.ambient_c < around.cabin_set_c - HEATER_LOWER_K:
        supposed["heater"] = replace(now.conditions, cabin_set_c=around.cabin_set_c - HEATER_LOWER_K)
    if not around.preconditioned and around.battery_temp_c is None and starts_c < SHELTER_C:
        supposed["shelter"] = replace(now.conditions, parked_c=SHELTER_C)
    if not around.preconditioned and starts_c + CHARGED_WARMER_K < MILD_C:
        supposed["charge_late"] = replace(now.conditions, battery_temp_c=starts_c + CHARGED_WARMER_K)
    found_measures = [
        WinterMeasure(name, now.net_kwh - evaluate(trace, car, conditions, scenario.driver).net_kwh)
        for name, conditions in supposed.items()
    ]
    if not around.preconditioned:
        found_measures.append(WinterMeasure("plug", found.saved_on_the_drive_kwh, found.battery_kwh + found.cabin_kwh))
    return tuple(sorted(found_measures, key=lambda measure: -measure.brings_kwh))
