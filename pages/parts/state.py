"""The one truth of a session, and the model's answers to it.

A session keeps one frozen `Scenario` and one `Display`. Widgets are set from them before they are drawn and write them
when they change, so nothing else has to be kept in step.
"""

from __future__ import annotations

import math
import time
from dataclasses import dataclass, replace
from typing import Any

import pandas as pd
import streamlit as st

from model.claims.questions import question
from model.claims.verdicts import Answer, check
from model.describe.parameters import car_of
from model.describe.scenario import Driver, Scenario, Year, with_prices_of
from model.describe.scenario_io import starting_drives
from model.kernel.books import Books, books_of
from model.kernel.savings import Result
from model.lift_off.advice import Case, DriveAdvice, advise, case_of
from model.lift_off.curves import as_set, curve_table, curves_of
from model.limits import owner_questions
from model.limits.all_limits import AtAGlance, at_a_glance, season_costs_of
from model.limits.cold_day import ColdDay, cold_day, normal_by_battery
from model.limits.foot_and_pedal import FootAndPedal
from model.limits.foot_and_pedal import foot_and_pedal as foot_beside_pedal
from model.limits.full_battery import Hills, given_back, hills
from model.limits.full_start import Normal
from model.limits.hard_stop import HardStop, hard_stop
from model.limits.limit_settings import LimitSettings
from model.limits.owner_questions import TwoStarts
from model.limits.slippery_road import SlipperyRoad, slippery_road
from model.limits.winter import SeasonCosts
from model.out.comparison import Side, side_of
from model.sampling import beside_now as model_beside
from model.sampling import range_figure
from model.sampling.beside_now import BesideNow
from model.sampling.drives import (
    Bands,
    YearOfDrives,
    answer_of,
    drive,
    samples_of,
    trace_of,
    winter_day,
    with_stops_needed,
    year_of,
)
from model.sampling.hybrid import YearOfFuel, year_of_fuel
from model.sampling.narrowing import known_of_result
from model.sampling.range_figure import RangeOnRoad
from model.sampling.uncertainty import RUNS
from model.words.quantities import Display
from model.words.refusals import refusal_words
from pages.parts.description import pedal_of
from pages.parts.keeping import Found, Reply, ask, ask_ahead

BAND_RUNS = RUNS
"""Sampled cars behind every band of a page; tests take fewer."""

LATE_S = 1.0
"""A browser sends every widget as it has last drawn it. For this long after a widget was set [s], its value from before
is taken for one that the browser had yet to replace, and not for what somebody chose."""


def scenario() -> Scenario:
    """The scenario of this session; the first starting drive until something is described."""
    if "scenario" not in st.session_state:
        first = first_scenario()
        usual = with_prices_of(first.year, us=display().us)
        # prices of a showroom, where there are any, stand in place of the usual ones
        st.session_state["scenario"] = replace(first, year=replace(usual, **st.session_state.get("own_prices", {})))
    return st.session_state["scenario"]


def first_scenario() -> Scenario:
    """What a visitor without a link sees."""
    return next(iter(starting_drives().values()))[2]


def put(changed: Scenario) -> None:
    """Make `changed` the scenario of this session."""
    st.session_state["scenario"] = changed


def put_whole(changed: Scenario) -> None:
    """Like `put`, where more than one entry changes: entries that were refused are dropped with the old ones."""
    put(changed)
    refusals().clear()


def set_widget(name: str, value: object, *, behind: bool = False) -> str:
    """Have a widget show a value, before it is drawn; the key to draw it with.

    The browser does not take a value for a widget `behind` a word that is closed, and would send the old one along with
    whatever is pressed next: such a widget becomes another one instead.
    """
    before = st.session_state.get(key := key_of(name))
    if before is not None and before != value:
        if behind:
            st.session_state.setdefault("renewed", {})[name] = key == name
            key = key_of(name)
        else:
            st.session_state.setdefault("widgets_set", {})[key] = (before, time.monotonic())
    drawn = st.session_state.get("drawn")
    if not (drawn and drawn.redrawn and key in st.session_state and st.session_state[key] == value):
        # where only parts are redrawn, what it shows already is not set again: it would undo what was pressed meanwhile
        st.session_state[key] = value
    return key


def key_of(name: str) -> str:
    """The key under which a widget stands now: a blank at its end makes it another, and does not show in its style."""
    return f"{name} " if st.session_state.get("renewed", {}).get(name) else name


def is_late(key: str) -> bool:
    """Whether a widget brings what it showed before it was set: something else was pressed before that was drawn."""
    before, moment = st.session_state.get("widgets_set", {}).get(key, (None, -math.inf))
    return st.session_state[key] == before and time.monotonic() - moment < LATE_S


def refusals() -> dict[str, tuple[object, str]]:
    """What was typed and could not be used, with the sentence that says so, by widget key."""
    return st.session_state.setdefault("refusals", {})


def note_entered(name: str) -> None:
    """Note which entry was changed last: a drive that cannot be driven since then is refused there."""
    st.session_state["entered"] = name


def refused_at(name: str) -> str:
    """Why the drive cannot be driven, where that is to be said at an entry; empty elsewhere."""
    return refusal() if st.session_state.get("entered") == name else ""


def display() -> Display:
    """The unit system of this session."""
    return st.session_state.setdefault("display", Display())


def dark() -> bool:
    """Whether the page is shown on a dark ground."""
    return st.context.theme.type == "dark"


def outcome(of: Scenario | None = None) -> Reply[Result]:
    """The model's result for the session's scenario, or for another, or why there is none.

    What is printed of a car or shown by it may fit none that it could be: then there is no band, and so no answer.
    """
    now = of or scenario()
    reply = ask(drive, now)
    if reply.refused is None and known_of_result(now):
        refused = _bands(now).refused
        return Reply(None, refused) if refused else reply
    return reply


def refusal() -> str:
    """Why the session's scenario cannot be driven, in its units; empty where it can."""
    return refusal_of(outcome())


def refusal_of(reply: Reply[Found]) -> str:
    """Why there is no result, in the units of the session; empty where there is one."""
    return "" if reply.refused is None else refusal_words(reply.refused, display())


def answered() -> Scenario | None:
    """The session's scenario, or where it cannot be driven the last one that could; None where none could so far."""
    if outcome().result is not None:
        st.session_state["answered"] = scenario()
    return st.session_state.get("answered")


def shown() -> Scenario:
    """The scenario that the answers of a page are to: the last one that could be driven, as far as any could."""
    return answered() or scenario()


def answer_ahead() -> None:
    """Begin to work out the bands for the session's scenario."""
    ask_ahead(_answer, same_speeds(scenario()), BAND_RUNS)


def answer(of: Scenario | None = None) -> Bands | None:
    """The bands for the session's scenario, or for another; None where there is no result."""
    return _bands(of or scenario()).result


def _bands(now: Scenario) -> Reply[Bands]:
    return ask(_answer, same_speeds(now), BAND_RUNS)


def _answer(now: Scenario, runs: int) -> Bands:
    result = ask(drive, now).given
    return answer_of(result, samples_of(now, result, runs), now.year.daily_charge_limit)


def stops_needed() -> int:
    """Charging stops that the session's drive needs to get there, or to get as far as stops help."""
    return with_stops_needed(scenario()).conditions.charging_stops


def year(of: Scenario | None = None) -> YearOfDrives | None:
    """The year of the session's scenario, or of another; None where a season cannot be driven."""
    return ask(year_of, _any_day(of or scenario()), BAND_RUNS).result


def beside_now(of: Scenario | None = None) -> BesideNow | None:
    """A year of the session's scenario, or of another, beside the car driven now; None where nothing is said of it."""
    now = of or scenario()
    driven = year(now)
    return None if driven is None else model_beside.beside_now(driven, now.year, car_of(now))


def year_fuel(of: Scenario | None = None) -> YearOfFuel | None:
    """What an engine is spared in the year; None without one, or where a season cannot be driven."""
    return ask(year_of_fuel, _any_day(of or scenario())).result


def _any_day(now: Scenario) -> Scenario:
    # every season brings its own temperature, so today's must not make the year be driven again
    return same_speeds(replace(now, conditions=replace(now.conditions, ambient_c=20.0)))


@dataclass(frozen=True, eq=False)
class LiftOff:
    """The whole axis of lift-off strengths: its curves, the whole drive as the rules see it, and the advice."""

    table: pd.DataFrame
    case: Case
    advice: DriveAdvice


def lift_off() -> LiftOff | None:
    """The advice on lift-off for the scenario shown; None where it cannot be driven."""
    return ask(_lift_off, replace(shown(), year=Year())).result


def lift_off_ahead() -> None:
    """Begin to work out the advice."""
    ask_ahead(_lift_off, replace(shown(), year=Year()))


def _lift_off(now: Scenario) -> LiftOff:
    curves = replace(ask(curves_of, curves_key(now)).given, scenario=now)
    return LiftOff(curve_table(curves), case_of(curves), advise(curves))


def as_driven() -> dict[str, float]:
    """The drive shown as the driver would drive it with the strengths as they are set."""
    now = shown()
    return ask(as_set, replace(now, driver=replace(now.driver, prefers=Driver.prefers), year=Year())).given


def same_speeds(now: Scenario) -> Scenario:
    """The scenario without what changes nothing at its described speeds, so that a drive is not driven twice.

    The driver's preference never does, and with a blended brake pedal the lift-off strength neither.
    """
    driver, legs = replace(now.driver, prefers=Driver.prefers), now.legs
    if pedal_of(now) == "blended":
        driver = replace(driver, lift_off_mps2=Driver.lift_off_mps2, slowing_on_request=False)
        legs = tuple(replace(leg, lift_off_mps2=None) for leg in legs)
    return replace(now, driver=driver, legs=legs)


def curves_key(now: Scenario) -> Scenario:
    """The scenario without what moves no curve over the axis: the strengths now set, the preference and the year."""
    driver = replace(now.driver, lift_off_mps2=Driver.lift_off_mps2, prefers=Driver.prefers)
    legs = tuple(replace(leg, lift_off_mps2=None) for leg in now.legs)
    return replace(now, driver=driver, legs=legs, year=Year())


def season_ahead() -> None:
    """Begin to work out what the season does to the drive shown."""
    ask_ahead(season_costs_of, shown())
    ask_ahead(normal_by_battery, shown())


def season_costs() -> SeasonCosts | None:
    """What the season takes from the drive shown; None where it cannot be driven."""
    return ask(season_costs_of, now).result if outcome(now := shown()).result else None


def season_costs_at(ambient_c: float) -> SeasonCosts | None:
    """What a day of that temperature [°C] takes from the drive shown; None where it cannot be driven then."""
    return ask(season_costs_of, shown().with_setting("ambient_c", ambient_c)).result


def limits_at_a_glance(settings: LimitSettings) -> AtAGlance:
    """The four limits of the drive shown in short, which can be driven."""
    return ask(_at_a_glance, shown(), settings).given


def foot_and_pedal() -> tuple[FootAndPedal, ...]:
    """The lift-off of the drive shown beside the brake pedal; the drive can be driven."""
    found = lift_off()
    assert found is not None
    return ask(foot_beside_pedal, replace(shown(), year=Year()), found.advice.overall.slippery[-1]).given


def _at_a_glance(now: Scenario, settings: LimitSettings) -> AtAGlance:
    return at_a_glance(now, settings, ask(season_costs_of, now).given, ask(normal_by_battery, now).given)


def slowing_in_winter() -> dict[str, Normal | None]:
    """When the motor slows as usual on the shown year's winter day, by battery; empty where it cannot be driven."""
    return ask(normal_by_battery, replace(winter_day(shown()), year=Year())).result or {}


def cold() -> ColdDay:
    """The drive shown on its cold day."""
    return ask(_cold, shown()).given


def _cold(now: Scenario) -> ColdDay:
    return cold_day(now, ask(season_costs_of, now).given, ask(normal_by_battery, now).given)


def slippery(settings: LimitSettings) -> SlipperyRoad:
    """The lift-off of the scenario shown on its road."""
    return ask(slippery_road, shown(), settings).given


def on_hills(settings: LimitSettings) -> Hills:
    """The hill of the settings with the car shown."""
    return ask(_on_hills, shown(), settings).given


def _on_hills(now: Scenario, settings: LimitSettings) -> Hills:
    return hills(now, settings, outcome(now).given)


def slopes() -> pd.DataFrame:
    """What slopes give back to the car shown."""
    return ask(given_back, shown()).given


def stopped_hard(settings: LimitSettings) -> HardStop:
    """The emergency stop of the settings with the car shown."""
    return ask(_stopped_hard, shown(), settings).given


def _stopped_hard(now: Scenario, settings: LimitSettings) -> HardStop:
    return hard_stop(now, settings, outcome(now).given)


def side(
    now: Scenario, first: Scenario, as_driven: bool, until_km: float | None = None
) -> tuple[Side | None, str]:
    """A drive to be held against the first, or the sentence with which it was refused."""
    # the year changes nothing on one drive
    now, first = (replace(asked, year=Year()) for asked in (now, first))
    how: dict[str, Any] = {"runs": BAND_RUNS, "as_driven": as_driven, "until_km": until_km, "beside": first}
    reply = ask(side_of, now, first.car_class, **how)
    return reply.result, refusal_of(reply)


def claim(claim_id: str, settings: tuple[tuple[str, str], ...]) -> Answer:
    """A tested claim, with what was said about it."""
    return ask(_claim, claim_id, settings).given


def _claim(claim_id: str, settings: tuple[tuple[str, str], ...]) -> Answer:
    return check(question(claim_id, dict(settings)))


def range_on_road(test_range_km: float | None, test: str) -> RangeOnRoad:
    """A printed range [km], or the model's, on the road of the drive shown; raises `InputError` if that has no end."""
    return ask(range_figure.range_on_road, replace(shown(), year=Year()), test_range_km, test).given


def charged() -> TwoStarts:
    """The drive shown from the daily charge limit and from a full battery."""
    return ask(owner_questions.charged, shown()).given


def in_a_queue() -> Result:
    """A queue with the car shown on its day."""
    return ask(owner_questions.in_a_queue, shown()).given


def after_standing() -> TwoStarts:
    """The drive shown on a cold day, after standing in the cold and warm from a drive before."""
    return ask(owner_questions.after_standing, shown()).given


def books() -> Books:
    """The energies of the drive shown, which must have a result."""
    return books_of(outcome(shown()).given)


def moved_prices() -> Year | None:
    """The year whose prices came with the units that were chosen last; None once it was changed, or where none did."""
    moved: Year | None = st.session_state.get("prices_moved")
    return moved if moved == scenario().year else None


def described_duration_s(of: Scenario | None = None) -> float:
    """How long the drive would take at the speeds described [s]."""
    return trace_of(of or scenario()).duration_s
