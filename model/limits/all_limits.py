"""What takes regeneration away from one drive: cold, a slippery road, a full battery or a long hill, a hard stop."""

from __future__ import annotations

from dataclasses import dataclass

from model.describe.parameters import car_of
from model.describe.scenario import Scenario
from model.limits.descent import Headroom, headroom, hill
from model.limits.emergency_stop import Stop
from model.limits.full_start import Normal
from model.limits.grip_margin import GripCheck
from model.limits.hard_stop import stops_there
from model.limits.limit_settings import LimitSettings
from model.limits.slippery_road import grip_there
from model.limits.winter import SeasonCosts, season_costs
from model.sampling.drives import trace_of


@dataclass(frozen=True, eq=False)
class AtAGlance:
    """The number of each part: of the cold, of grip as in `model.limits.grip_margin`, of the hill, and of a hard stop.

    `normal` says by battery when the motor slows as on a mild day, as in `model.limits.cold_day.normal_by_battery`.
    """

    costs: SeasonCosts
    normal: dict[str, Normal | None]
    grip: GripCheck
    room: Headroom
    stops: dict[str, Stop]


def season_costs_of(scenario: Scenario) -> SeasonCosts:
    """What the season takes from the scenario's drive.

    Raises
    ------
    InputError
        Where the drive cannot be driven.
    """
    return season_costs(trace_of(scenario), car_of(scenario), scenario.conditions, scenario.driver)


def at_a_glance(
    scenario: Scenario, settings: LimitSettings, costs: SeasonCosts, normal: dict[str, Normal | None]
) -> AtAGlance:
    """The four parts in short; `costs` and `normal` are those of the scenario's season."""
    car, conditions = car_of(scenario), scenario.conditions
    way_down = hill(-settings.hill_m, settings.hill_pct, settings.hill_kmh)
    return AtAGlance(
        costs=costs,
        normal=normal,
        grip=grip_there(scenario, settings),
        room=headroom(way_down, car, conditions, scenario.driver),
        stops=stops_there(scenario, settings),
    )
