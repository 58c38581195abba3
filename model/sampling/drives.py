"""One door for the app and the command line: a scenario to its result, its band and its year."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import lru_cache

import numpy as np

from model.describe.parameters import car_of, open_figures_of
from model.describe.scenario import FROZEN, SEASONS, Driver, Leg, Scenario, Year
from model.describe.trace import Array, Trace
from model.describe.units import J_PER_KWH
from model.kernel import run as kernel
from model.kernel.follow import follow
from model.kernel.run import Run
from model.kernel.savings import Result, evaluate, has_range
from model.sampling.narrowing import effective_number, narrowed, weights_of
from model.sampling.uncertainty import RUNS, Band, Samples, at_terminals, run_each, run_samples, sample
from model.traces.charging_stops import MOST_STOPS, Reach, as_far_as, reach_of
from model.traces.drive_builder import SlowingOnLiftOff, build_drive

CLEAR_SOC = 0.15
"""Charge [1] that is left on friction brakes only where nobody asks how far the battery goes with regeneration."""


def described_trace(scenario: Scenario, foot_up: SlowingOnLiftOff | None = None) -> Trace:
    """The speed trace of a drive as described, however far its battery goes; `foot_up` as for `build_drive`."""
    legs, driver, there_and_back = scenario.legs, scenario.driver, scenario.return_trip
    if foot_up is not None or any(leg.lift_off_mps2 is not None for leg in legs):
        return build_drive(legs, driver, return_trip=there_and_back, foot_up=foot_up)
    return _at_habits_speeds(legs, replace(driver, lift_off_mps2=Driver.lift_off_mps2), there_and_back)


@lru_cache(maxsize=4)
def _at_habits_speeds(legs: tuple[Leg, ...], driver: Driver, return_trip: bool) -> Trace:
    # few are kept, since a drive may be two days long
    return build_drive(legs, driver, return_trip=return_trip)


@lru_cache(maxsize=64)
def reach(scenario: Scenario) -> Reach:
    """Where a described drive is charged on its way, and where its battery is empty."""
    legs = tuple(replace(leg, lift_off_mps2=None) for leg in scenario.legs)
    if _gets_far(replace(scenario, legs=legs).with_setting("lift_off_mps2", Driver.lift_off_mps2)):
        return Reach()
    return reach_of(described_trace(scenario), car_of(scenario), scenario.conditions, scenario.driver)


@lru_cache(maxsize=64)
def _gets_far(scenario: Scenario) -> bool:
    """Whether the battery lasts by far even on friction brakes only, and so whatever the lift-off strength."""
    car, around, driver = car_of(scenario), scenario.conditions, scenario.driver
    trace, _ = follow(described_trace(scenario), car, around)
    run = kernel.drive(trace, car, around, driver, regen=False)
    return bool(run.energies["able"].all()) and float(run.soc.min()) > CLEAR_SOC


def trace_of(scenario: Scenario, foot_up: SlowingOnLiftOff | None = None) -> Trace:
    """The speed trace of a described drive with its charging stops, up to where its battery is empty.

    With a `foot_up`, as in `model.traces.drive_builder.build_drive`, stops and end lie where they do without.
    """
    return as_far_as(described_trace(scenario, foot_up), reach(scenario))


def with_stops_needed(scenario: Scenario) -> Scenario:
    """The scenario with as many charging stops as it takes to get there, or to get as far as stops help."""
    if reach(scenario).end_m is None:
        return scenario
    most = reach(scenario.with_setting("charging_stops", MOST_STOPS))
    fewer = scenario.with_setting("charging_stops", max(len(most.stops) - 1, 0))
    # the last may stand so near the end that the car would have got there
    return fewer if reach(fewer).end_m is None else scenario.with_setting("charging_stops", len(most.stops))


def drive(scenario: Scenario) -> Result:
    """The result of a described drive."""
    return evaluate(trace_of(scenario), car_of(scenario), scenario.conditions, scenario.driver)


def draws_of(scenario: Scenario, runs: int, driven: Trace | None = None) -> dict[str, Array]:
    """Every figure that the user did not state, drawn `runs` times; narrowed by what is printed or shown.

    `driven` is the drive that the car's display speaks of; left out, the described one.
    """
    return narrowed(scenario, sample(open_figures_of(scenario), runs), _shown_for(scenario, driven))


def _shown_for(scenario: Scenario, driven: Trace | None) -> Trace | None:
    is_asked = driven is None and scenario.conditions.shown_wh_per_km is not None
    return drive(scenario).trace if is_asked else driven


def effective_cars(scenario: Scenario, runs: int = RUNS, driven: Trace | None = None) -> float | None:
    """How many equally weighted cars the drawn ones are worth [1] where something is printed or shown; else None.

    `driven` is as in `draws_of`.
    """
    drawn = sample(open_figures_of(scenario), runs)
    weights = weights_of(scenario, drawn, _shown_for(scenario, driven))
    return None if weights is None else effective_number(weights)


def samples_of(scenario: Scenario, result: Result, runs: int = RUNS) -> Samples:
    """The result's trace with every drawn set of the figures that the user did not state."""
    drawn = draws_of(scenario, runs, result.trace)
    return run_samples(result.trace, result.car, result.conditions, result.driver, drawn)


@dataclass(frozen=True)
class Bands:
    """What one drive takes and what regeneration saves on it; bands over the assumed figures.

    `saved_share` is None where the drive on friction brakes only takes nothing from the battery. `range_km` is how far
    one full battery reaches [km] when this drive is driven over and over, `daily_range_km` from the daily charge limit
    down to empty, and `range_gain_km` what of the full battery's range is regeneration's; what the cold holds back of
    the battery is taken off. All three are None where the drive takes next to nothing
    (`model.kernel.savings.has_range`). `unable` of the `runs` drawn cars could not do the drive, for want of power or
    charge; they are counted in as if they could. `late` and `slowest_share` are as in `Samples`.
    """

    saved_share: Band | None
    saved_kwh: Band
    net_kwh: Band
    friction_only_net_kwh: Band
    range_gain_km: Band | None
    range_km: Band | None = None
    daily_range_km: Band | None = None
    unable: int = 0
    runs: int = 0
    late: int = 0
    slowest_share: float = 0.0

    def net_kwh_per_100km(self, distance_km: float) -> Band:
        """What the drive takes from the battery over its distance [kWh/100 km]."""
        return self.net_kwh.scaled(100 / distance_km)


def answer_of(result: Result, samples: Samples, daily_charge_limit: float = Year.daily_charge_limit) -> Bands:
    """The bands of one drive from its sampled runs; `daily_charge_limit` is a share of the usable battery [1]."""
    net, without, held = samples.net_kwh, samples.friction_only_net_kwh, samples.held_kwh
    range_km = daily_range_km = range_gain_km = None
    if has_range(net.min(), result.distance_km):
        daily = np.maximum(held - (1 - daily_charge_limit) * samples.usable_kwh, 0)
        range_km, daily_range_km = (Band.of(kwh / net * result.distance_km) for kwh in (held, daily))
        range_gain_km = Band.of(held * result.distance_km * (1 / net - 1 / without))
    return Bands(
        saved_share=Band.of(samples.saved_share) if without.min() > 0 else None,
        saved_kwh=Band.of(samples.saved_kwh),
        net_kwh=Band.of(net),
        friction_only_net_kwh=Band.of(without),
        range_gain_km=range_gain_km,
        range_km=range_km,
        daily_range_km=daily_range_km,
        unable=samples.unable,
        runs=len(net),
        late=samples.late,
        slowest_share=samples.slowest_share,
    )


@dataclass(frozen=True)
class SeasonRow:
    """One season of the year: its days, its temperature, its road, and one day's drive in it, as in `Bands`.

    `taken_kwh` is what the drive takes of the battery with every figure at its middle, as `Result.net_kwh`. Where the
    battery is empty on the way, all is for the `distance_km` up to there. `range_km` is as in `Bands`, and None for a
    car with an engine.
    """

    season: str
    days: int
    ambient_c: float
    surface: str
    taken_kwh: float
    net_kwh: Band
    saved_kwh: Band
    saved_share: Band | None
    distance_km: float = 0.0
    charging_stops: int = 0
    range_km: Band | None = None


@dataclass(frozen=True)
class YearOfDrives:
    """The drive in four seasons, each on its own days; bands over the assumed figures.

    `wall_kwh` is what all these drives take from the wall, with regeneration, and `cost` what is paid for it at the
    year's price. What warms the car up while it is plugged in is left out.

    `saved_kwh` is saved at the battery, in a hybrid with what its engine gives in the battery's place; what comes
    `from the wall`, with its money and CO₂, is without the engine's part, which is fuel
    (`model.sampling.hybrid.fuel_of_year`).
    """

    rows: tuple[SeasonRow, ...]
    distance_km: float
    saved_kwh: Band
    saved_wall_kwh: Band
    saved_money: Band
    saved_co2_kg: Band
    wall_kwh: Band
    cost: Band


def seasons_of(scenario: Scenario) -> list[tuple[str, int, Scenario]]:
    """Each season of the scenario's year with its days, and the scenario at its temperature, the rest as described.

    A preconditioned or measured start stays; a season's battery otherwise starts as cold as its air. Snow and ice, of
    the conditions or of a leg, lie in winter only: in the other seasons such a road is dry. Where charging stops are
    allowed, a day has as many as it needs; without, it ends where its battery is empty.
    """
    year = scenario.year

    def on_a_day(season: str) -> Scenario:
        then = scenario if season == "winter" else thawed(scenario)
        then = then.with_setting("ambient_c", getattr(year, f"{season}_c"))
        return with_stops_needed(then) if scenario.conditions.charging_stops else then

    return [(season, getattr(year, f"{season}_days"), on_a_day(season)) for season in SEASONS]


def winter_day(scenario: Scenario) -> Scenario:
    """The scenario on its year's winter day."""
    return next(then for season, _, then in seasons_of(scenario) if season == "winter")


def thawed(scenario: Scenario) -> Scenario:
    """The scenario with a dry road wherever there was snow or ice."""

    def dry(surface: str) -> str:
        return "dry" if surface in FROZEN else surface

    legs = tuple(replace(leg, surface=dry(leg.surface)) for leg in scenario.legs)
    return replace(scenario, legs=legs).with_setting("surface", dry(scenario.conditions.surface))


def engine_j(run: Run) -> Array:
    """What a hybrid's engine gave in the battery's place [J], shape (runs,); nothing in other cars."""
    given: Array = run.energies["engine_j"]
    return given


def year_of(scenario: Scenario, runs: int = RUNS) -> YearOfDrives:
    """Drive the scenario in its four seasons, each with `runs` sampled cars."""
    year = scenario.year
    drawn = draws_of(scenario, runs)
    saved, by_engine, taken = np.zeros(runs), np.zeros(runs), np.zeros(runs)
    rows, distance_km = [], 0.0

    def measure(run: Run, *without: Run) -> tuple[Array, ...]:
        return *at_terminals(run), sum(map(engine_j, without)) - engine_j(run)

    # what an engine is spared needs the drive on friction brakes only; without one nothing does
    regen = (True,) if car_of(scenario).sustain_soc is None else (True, False)
    for season, days, then in seasons_of(scenario):
        result = drive(then)
        *terminals, engine = run_each(result.trace, result.car, result.conditions, result.driver, drawn, measure, regen)
        samples = Samples.of(*terminals)
        saved += days * samples.saved_kwh
        by_engine += days * engine / J_PER_KWH
        taken += days * samples.cells_kwh
        distance_km += days * result.distance_km
        answer = answer_of(result, samples)
        around, bands = then.conditions, (answer.net_kwh, answer.saved_kwh, answer.saved_share)
        far = result.distance_km, len(result.trace.charging), answer.range_km if len(regen) == 1 else None
        rows.append(SeasonRow(season, days, around.ambient_c, around.surface, result.net_kwh, *bands, *far))
    efficiency = np.ravel(drawn.get("charging_efficiency", result.car.charging_efficiency))
    wall, from_wall = Band.of((saved - by_engine) / efficiency), Band.of(taken / efficiency)
    return YearOfDrives(
        rows=tuple(rows),
        distance_km=distance_km,
        saved_kwh=Band.of(saved),
        saved_wall_kwh=wall,
        saved_money=wall.scaled(year.price_per_kwh),
        saved_co2_kg=wall.scaled(year.co2_g_per_kwh / 1000),
        wall_kwh=from_wall,
        cost=from_wall.scaled(year.price_per_kwh),
    )
