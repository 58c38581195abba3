"""What is asked about the limits of regeneration beside the drive itself, and what each of them looks at."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from typing import TypeVar

from model.describe.car import Car
from model.describe.fields import InputError, choice, fields_of, filled, from_link, number
from model.describe.parameters import car_of
from model.describe.scenario import SURFACES, Conditions, Scenario
from model.limits.emergency_stop import REACTION_S
from model.limits.grip_margin import BENDS_M, LEVELS

LIMIT_PARTS = ("cold", "grip", "hills", "stop")
STRAIGHT = "straight on"
Found = TypeVar("Found")


@dataclass(frozen=True, kw_only=True)
class LimitSettings:
    """What is asked about the limits beside the drive itself; a slope downhill is negative."""

    part: str = choice(LIMIT_PARTS, default="cold")
    grip_kmh: float = number("km/h", 10, 160, (20, 130), default=50.0)
    bend: str = choice((STRAIGHT, *BENDS_M), default=STRAIGHT)
    slope_pct: float = number("%", -20, 20, (-12, 12), default=0.0)
    hill_m: float = number("m", 10, 3000, (20, 2000), default=300.0)
    hill_pct: float = number("%", 1, 20, (2, 12), default=6.0)
    hill_kmh: float = number("km/h", 10, 130, (20, 100), default=50.0)
    stop_kmh: float = number("km/h", 10, 250, (30, 130), default=100.0)
    reaction_s: float = number("s", 0, 4, (0.5, 2.5), default=REACTION_S)


LIMIT_FIELDS = fields_of(LimitSettings, "limits")


def settings_of(link: Mapping[str, str]) -> tuple[LimitSettings, list[InputError]]:
    """The settings of a link, and what was refused and changed."""
    values, notices = from_link(LIMIT_FIELDS, link)
    return filled(LimitSettings, values), notices


def by_battery(scenario: Scenario, of: Callable[[Car], Found]) -> dict[str, Found]:
    """Something of the scenario's car with a battery that takes little, the middle and much; as stated, if it is."""
    car = car_of(scenario)
    if "acceptance_level" in dict(scenario.stated):
        return dict.fromkeys(LEVELS, of(car))
    return {name: of(replace(car, acceptance_level=level)) for name, level in LEVELS.items()}


def slipperiest(scenario: Scenario) -> Conditions:
    """The conditions with the surface of the drive's slipperiest leg."""
    surfaces = (scenario.conditions.surface, *(leg.surface for leg in scenario.legs))
    return replace(scenario.conditions, surface=max(surfaces, key=SURFACES.index))
