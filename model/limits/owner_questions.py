"""What owners ask: charge to the limit or full, queues, what is left to the discs, a start after standing cold."""

from __future__ import annotations

from dataclasses import dataclass, replace

from model.describe.scenario import Leg, Scenario
from model.kernel.savings import Result
from model.sampling.drives import drive, thawed, winter_day

DRIVEN_WARM_C = 20.0
QUEUE = Leg(distance_km=1.0, speed_kmh=15.0, stops=12, slow_downs=0, slow_to_kmh=5.0)
"""A queue, invented: a kilometre at walking to running pace, at rest twelve times."""


@dataclass(frozen=True, eq=False)
class TwoStarts:
    """The same drive from two starts; both with every figure at its middle."""

    first: Result
    second: Result


def charged(scenario: Scenario) -> TwoStarts:
    """The drive from the daily charge limit, and from a full battery; raises `InputError` where it cannot be driven."""
    limit = scenario.year.daily_charge_limit
    return TwoStarts(drive(scenario.with_setting("soc_start", limit)), drive(scenario.with_setting("soc_start", 1.0)))


def after_standing(scenario: Scenario) -> TwoStarts:
    """The drive after standing in the cold, and with all still warm from a drive before.

    On the scenario's own day where that is no warmer than the year's winter day; else on the latter.
    """
    winter = winter_day(scenario)
    its_own = scenario.conditions.ambient_c <= winter.conditions.ambient_c
    cold = replace(scenario if its_own else winter, return_trip=False)
    for key, as_it_stands in (("preconditioned", False), ("parked_c", None), ("battery_temp_c", None)):
        cold = cold.with_setting(key, as_it_stands)
    return TwoStarts(drive(cold), drive(cold.with_setting("parked_c", DRIVEN_WARM_C).with_setting("tyres_warm", "yes")))


def in_a_queue(scenario: Scenario) -> Result:
    """A queue with the scenario's car and day, on a dry and level road."""
    return drive(replace(thawed(scenario), legs=(QUEUE,), return_trip=False))


def disc_work_left(result: Result) -> float | None:
    """Of the work that friction brakes alone would have to do, what is left to them [1]; None where there is none."""
    alone = result.friction_only_wheel_friction_kwh
    return result.wheel_friction_kwh / alone if alone > 0 else None
