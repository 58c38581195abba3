"""A test-cycle range figure turned into a range on the user's own drive, one step after the other.

The figure stays as printed; only the ratio of consumptions, and what the cold holds back of the battery, come from the
model. So what a car's maker did well or badly on the test stays in it, and a step costs what the model says that step
adds to consumption. Where nothing is printed, each drawn car starts from what the model gives it on the test, and ends
with its range on the drive as every other answer has it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Any

import numpy as np

from model.describe.fields import Field, InputError
from model.describe.figures import Several
from model.describe.parameters import assumed_figures, car_of
from model.describe.scenario import CONDITION_FIELDS, Conditions, Driver, Scenario, Year
from model.describe.trace import Array
from model.describe.units import J_PER_KWH
from model.kernel.run import Run
from model.kernel.savings import evaluate, has_range
from model.physics.battery import usable_in_the_cold_kwh
from model.sampling.drives import draws_of, reach, trace_of
from model.sampling.printed_tests import RANGE_TEST, TESTS
from model.sampling.uncertainty import RUNS, Band, run_each
from model.traces.cycles import cycle_trace

RANGE_KM = Field(
    "test_range_km", "number", "km", "range-test_range_km", minimum=10, maximum=2000, usual=(100, 800),
)  # fmt: skip
@dataclass(frozen=True)
class Step:
    """One step from the test to the road: the range after it, and what it cost; a gain is negative [km].

    The two single numbers are those of the car with every figure at its middle, so that costs add up; the middle of
    many cars' differences is not the difference of their middles.
    """

    id: str
    middle_range_km: float
    middle_cost_km: float
    range_km: Band
    cost_km: Band


@dataclass(frozen=True)
class RangeOnRoad:
    """The waterfall from a printed range to the range on the drive.

    Where nothing is `printed`, `test_range_km` is that of the car with every figure at its middle.
    """

    test: str
    test_range_km: float
    steps: tuple[Step, ...]
    runs: int
    printed: bool = True

    @property
    def range_km(self) -> Band:
        """Range on the drive [km]."""
        return self.steps[-1].range_km

    @property
    def middle_range_km(self) -> float:
        """Range on the drive with every figure at its middle [km]."""
        return self.steps[-1].middle_range_km


def range_on_road(
    scenario: Scenario, test_range_km: float | None, test: str = "wltc3b", runs: int = RUNS
) -> RangeOnRoad:
    """Turn a range figure into one for the scenario's drive.

    Parameters
    ----------
    scenario : Scenario
        Car, drive, conditions and habits.
    test_range_km : float or None
        The printed figure [km]; None where none is known, so that each car has its own.
    test : str
        One of TESTS.
    runs : int
        Drawn cars.

    Returns
    -------
    RangeOnRoad
        Steps in the order in which they are taken, which matters for what each costs: speeds and stops on flat road as
        in the laboratory, hills, load, weather, cabin.

    Raises
    ------
    InputError
        Where the test is unknown, the figure out of bounds, the drive takes nothing from the battery, or the car
        cannot climb one of its hills.
    """
    if test not in TESTS:
        raise InputError("not-one-of", what="test", given=str(test), known=Several(tuple(TESTS)))
    printed_km = None if test_range_km is None else RANGE_KM.number(test_range_km)
    known = what_is_known(scenario)

    def consumed(described: Scenario, conditions: Conditions) -> Array:
        # the day's weather is in the conditions alone: a drive in the laboratory's stays the same from day to day
        there = replace(described, conditions=replace(conditions, charging_stops=0), year=Year())
        if reach(there).end_m is not None:
            # what a drive takes over and over, from the charge of the test and until the battery is empty
            there = there.with_setting("soc_start", max(RANGE_TEST.soc_start, conditions.soc_start))
        return _consumed(there, "", known, runs)

    in_laboratory = replace(scenario, conditions=RANGE_TEST, driver=Driver(), legs=Scenario.legs, year=Year())
    on_test = sum(share * _consumed(in_laboratory, name, known, runs) for name, share in TESTS[test].cycles)
    flat = replace(
        scenario, legs=tuple(replace(leg, climb_m=0.0, descent_m=0.0, surface="dry") for leg in scenario.legs)
    )
    here = scenario.conditions
    hilly = replace(scenario, legs=tuple(replace(leg, surface="dry") for leg in scenario.legs))
    start = replace(RANGE_TEST, soc_start=here.soc_start, altitude_m=here.altitude_m)
    loaded = replace(
        start,
        payload_kg=here.payload_kg,
        trailer_kg=here.trailer_kg,
        trailer_drag_area_m2=here.trailer_drag_area_m2,
    )
    taken = [
        ("speeds", flat, start),
        ("hills", hilly, start),
        ("load", hilly, loaded),
        ("weather", scenario, replace(here, cabin=False)),
        ("cabin", scenario, here),
    ]
    if printed_km is None:
        figure = TESTS[test].factor * _usable_j(scenario, known, runs) / on_test / 1000
    else:
        figure = np.full(1 + runs, printed_km)
    before, steps = figure, []
    for name, described, conditions in taken:
        net = consumed(described, conditions)
        if np.isnan(net).any():
            raise InputError("range-without-end", what=name)
        after = figure / TESTS[test].factor * on_test / net
        cost = before - after
        steps.append(Step(name, float(after[0]), float(cost[0]), Band.of(after[1:]), Band.of(cost[1:])))
        before = after
    return RangeOnRoad(test, float(figure[0]), tuple(steps), runs, printed_km is not None)


def what_is_known(scenario: Scenario) -> Scenario:
    """The scenario reduced to what says which cars it could be, so that its cars serve other drives too."""
    if scenario.conditions.shown_wh_per_km is not None:
        return scenario
    left = {key for key in assumed_figures(scenario.car_class) if key in CONDITION_FIELDS}
    conditions = Conditions(**{key: getattr(scenario.conditions, key) for key in left})
    return Scenario(car_class=scenario.car_class, stated=scenario.stated, conditions=conditions)


_draws = lru_cache(maxsize=20)(draws_of)


@lru_cache(maxsize=200)
def _consumed(described: Scenario, cycle: str, known: Scenario, runs: int) -> Array:
    """Net energy over distance [J/m], more where the cold holds part of the battery back; NaN with no range.

    On the drive described, or on a standard cycle: the car with every figure at its middle, then `runs` cars that fit
    what is `known`.
    """

    def measure(run: Run) -> Sequence[Array]:
        cars: Any = run.cars.view(np.recarray)
        return run.net_j, usable_in_the_cold_kwh(cars, run.energies["pack_c_end"]) / cars.usable_kwh

    setting = (car_of(described), described.conditions, described.driver)
    cars = _cars(known, runs)
    # as fast as the car can follow
    trace = evaluate(cycle_trace(cycle) if cycle else trace_of(described), *setting).trace
    net, left = run_each(trace, *setting, cars, measure, (True,))
    has_end = has_range(net.min() / J_PER_KWH, trace.distance_m / 1000)
    return np.broadcast_to(net / left / trace.distance_m if has_end else np.nan, (1 + runs,))


def _cars(known: Scenario, runs: int) -> dict[str, Array]:
    """The open figures of the car with every one at its middle, then of `runs` cars that fit; shape (1 + runs, 1)."""
    figures = assumed_figures(known.car_class)
    return {key: np.concatenate([[[figures[key].mid]], values]) for key, values in _draws(known, runs).items()}


def _usable_j(scenario: Scenario, known: Scenario, runs: int) -> Array:
    """The usable battery of each of these cars [J], shape (1 + runs,)."""
    usable_kwh = _cars(known, runs).get("usable_kwh", np.full((1 + runs, 1), car_of(scenario).usable_kwh))
    return usable_kwh[:, 0] * J_PER_KWH
