"""Describe a drive, see what regeneration saves on it, and where the energy goes."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import streamlit as st

from model.describe.parameters import car_of
from model.describe.scenario import CONDITION_FIELDS, SEASONS, YEAR_FIELDS
from model.kernel.savings import Result
from model.sampling.beside_now import price_key
from model.sampling.hybrid import has_engine, has_plug
from model.words.bands import band_promise
from model.words.entries import help_of
from pages.parts import departures, link, redrawn, state, wording
from pages.parts.answer_line import choose_drive
from pages.parts.car_part import adjust_car
from pages.parts.charts.beside import beside_bars
from pages.parts.controls import control, say_refusals, side_by_side, widget_key
from pages.parts.describe_part import describe
from pages.parts.drive_part import before, strip_behind
from pages.parts.energy_part import draw_energy
from pages.parts.facts import drive_facts, fact_rows
from pages.parts.figure import draw_chart, offer_print
from pages.parts.folding import in_sight, is_narrow
from pages.parts.owner_questions import ask_on_first_page
from pages.parts.plain_text import inert
from pages.parts.quick_part import draw_quick
from pages.parts.reach_words import band_text, reach_text, stops_text, year_text
from pages.parts.sheet_part import draw_sheet
from pages.parts.trust import draw_trust
from pages.parts.typography import together


@dataclass(frozen=True)
class Door:
    """A short way in beside the starting drives: its message, its icon, and what it opens.

    What it opens stands over the page, or `beside` the answer, which is then seen while it is entered.
    """

    label: str
    icon: str
    draw: Callable[[], None]
    beside: bool = False


DOORS = {
    "quick": Door("door-quick", ":material/bolt:", draw_quick),
    "sheet": Door("door-sheet", ":material/directions_car:", draw_sheet, beside=True),
}


def draw_doors() -> None:
    """A drive in five answers, a car from its data sheet; and the cards of Show for whoever wants to be led."""
    say, opened = state.display().say, st.session_state.get("open-door")
    with st.container(key="doors", horizontal=True, width="content", vertical_alignment="center", gap="xsmall"):
        for name, door in DOORS.items():
            is_open = name == opened
            st.button(
                say("door-close", door=name) if is_open else say(door.label), type="tertiary", key=f"door-{name}",
                icon=":material/close:" if is_open else door.icon, on_click=open_door,
                args=(None if is_open else name,),
            )  # fmt: skip
        if link.new_here():
            # the cards of Show are the guided first run; who needs none goes on here
            with st.container(key="guide", width="content"):
                redrawn.part("guide", draw_guide, of=link.own_link)


def draw_guide() -> None:
    """The way to the cards."""
    say = state.display().say
    st.page_link("show.py", label=say("guide"), query_params=link.own_link() | {link.GUIDE: "yes"},
                 help=say("guide-help"))  # fmt: skip


def draw_own_road() -> None:
    """The way to a recording of one's own."""
    st.page_link("own_road.py", label=state.display().say("own-road-door"), query_params=link.own_link())


def opened_otherwise() -> bool:
    """Whether a short way in is open, or all figures of the car."""
    return bool(st.session_state.get("open-door") or st.session_state.get("car-drawer"))


def answer_in_sight() -> str:
    """The answer in one line."""
    bands = state.answer(state.shown())
    assert bands is not None
    return wording.in_sight(bands, state.display())


def open_door(name: str | None) -> None:
    """Open one of the short ways in, and close the other."""
    st.session_state["open-door"] = name


# answering


def answer() -> None:
    """The headline and what it comes to; for a drive that cannot be driven, that of the last one that could."""
    shown = state.answered()
    if shown is None:
        st.markdown(state.display().say("no-answer"))
        return
    with before(shown, "headline"):
        redrawn.part("headline", draw_headline, when=redrawn.When.FIRST)
    redrawn.part("beside-headline", draw_beside_headline, when=redrawn.When.FIRST)
    with before(shown, "facts"), st.container(key="facts", gap=None):
        redrawn.part("facts", draw_facts, when=redrawn.When.FIRST)
        redrawn.part("year", draw_year, when=redrawn.When.LAST, beside=True)
    redrawn.stands(engine)
    with_engine, priced = engine()
    display = state.display()
    if with_engine:
        st.caption(display.say("hybrid-energy"))
    if shown == state.scenario():
        draw_trust()
    with st.expander(display.say("beside-drawer"), type="compact", key="beside-drawer", on_change="rerun") as drawer:
        if drawer.open:
            redrawn.part("beside", beside_entries)
    made_of = display.say("year-made-of", priced=priced)
    with st.expander(made_of, type="compact", key="year-drawer", on_change="rerun") as drawer:
        if drawer.open:
            if priced and not with_engine:
                redrawn.part("year-rest", draw_year_rest)
            year_entries(priced=priced)
    ask_on_first_page()


def engine() -> tuple[bool, bool]:
    """Whether the car has an engine, and whether a plug."""
    car = state.outcome(state.shown()).given.car
    return has_engine(car), has_plug(car)


def draw_headline() -> None:
    """What regeneration saves."""
    bands = state.answer(state.shown())
    assert bands is not None
    st.header(wording.headline(bands, state.display(), marked=True), anchor=False)


def draw_beside_headline() -> None:
    """What has to be said beside it."""
    shown, display = state.shown(), state.display()
    result, bands = state.outcome(shown).given, state.answer(shown)
    assert bands is not None
    if shown == state.scenario():
        draw_charging(result)
    else:
        st.markdown(wording.answer_before(shown, display))
    if not result.followed:
        slower = wording.not_followed(state.described_duration_s(shown), result.trace.duration_s, display)
        if slower:
            st.warning(slower)
    frost, unusual = departures.frost_text(shown, display), departures.unusual_text(shown, display)
    for sentence in (frost, unusual, band_text(result, bands, display)):
        if sentence:
            st.markdown(sentence)


def draw_facts() -> None:
    """How far a battery reaches, and what the drive takes."""
    shown = state.shown()
    bands = state.answer(shown)
    assert bands is not None
    st.html(fact_rows(drive_facts(shown, state.outcome(shown).given, bands, state.display())))


def draw_charging(result: Result) -> None:
    """How far the battery goes; where that is not to the end, or the car charges on the way, the charging stops."""
    scenario, display = state.scenario(), state.display()
    if not (result.trace.ends or scenario.conditions.charging_stops):
        return
    for sentence in (reach_text(result, display), stops_text(result, display)):
        if sentence:
            st.markdown(sentence)
    with st.container(key="charging", gap="xsmall"):
        needed = state.stops_needed() if result.trace.ends else 0
        if needed > scenario.conditions.charging_stops:
            st.button(
                display.say("charge-on-the-way", stops=needed), key="add-charging", type="primary",
                icon=":material/ev_station:", on_click=charge_on_the_way, args=(needed,),
            )  # fmt: skip
        side_by_side(*(CONDITION_FIELDS[key] for key in ("charging_stops", "charge_stop_to")))


def charge_on_the_way(stops: int) -> None:
    """Take as many charging stops as are needed."""
    state.put_whole(state.scenario().with_setting("charging_stops", stops))
    redrawn.changed()


def draw_year() -> None:
    """The year's row, for which four seasons have to be driven."""
    scenario = state.shown()
    year = state.year(scenario)
    if year is not None:
        display = state.display()
        rows = [wording.year_fact(year, scenario.year, display, state.year_fuel(scenario))]
        if beside := state.beside_now(scenario):
            rows.append(wording.beside_fact(beside, scenario.year, display))
        st.html(fact_rows(rows))
        if moved := state.moved_prices():
            st.caption(inert(wording.moved_prices(moved, display)))
        result = state.outcome(scenario).result
        if result and (text := year_text(year, scenario, result, state.display())):
            st.caption(text)


def draw_year_rest() -> None:
    """What of the year is not regeneration's."""
    if year := state.year(state.shown()):
        st.markdown(together(wording.year_rest(year, state.display())))


def beside_entries() -> None:
    """The car that is driven now: its fuel, what it uses, what that costs; and the year of both."""
    scenario, display, now = state.shown(), state.display(), state.scenario().year
    if has_engine(car_of(scenario)):
        st.markdown(display.say("beside-no-hybrid"))
        return
    control(YEAR_FIELDS["now_fuel"])
    price = YEAR_FIELDS[price_key(now)]
    label = display.say("beside-price", fuel=now.now_fuel, currency=inert(now.currency), unit=display.unit("per l"))
    used, paid = st.columns(2, wrap=False, vertical_alignment="bottom")
    with used:
        control(YEAR_FIELDS["now_l_per_100km"], help="", say_refusal=False)
    with paid:
        control(price, label=label, help="", say_refusal=False)
    say_refusals(*(widget_key(field) for field in (YEAR_FIELDS["now_l_per_100km"], price)))
    if beside := state.beside_now(scenario):
        words = together(" ".join(map(inert, wording.beside_words(beside, scenario, display))))
        chart = beside_bars(beside, now.currency, display, state.dark())
        draw_chart(chart, alt=words, key="beside-chart")
        st.markdown(words)
        offer_print(lambda: (chart, display.say("beside-drawer")), None, key="beside", name="beside")
    else:
        st.markdown(display.say("beside-none"))
    helps = (help_of(field, display) for field in (YEAR_FIELDS["now_l_per_100km"], price))
    st.caption(display.say("beside-help", **dict(zip(("used", "price"), helps, strict=True))))


def year_entries(*, priced: bool) -> None:
    """Price and CO₂ of electricity, where that is what is saved; days and temperature of each season."""
    redrawn.stands(lambda: state.scenario().year.currency)
    say, currency = state.display().say, inert(state.scenario().year.currency)
    if priced:
        price, co2 = say("year-price", currency=currency), say("year-co2")
        asked = (("currency", ""), ("price_per_kwh", price), ("co2_g_per_kwh", co2))
        # two in a row: a third would be cut off where the column is narrow
        places = (*st.columns(2, wrap=False), st.columns(2, wrap=False)[0])
        for column, (key, label) in zip(places, asked, strict=True):
            with column:
                control(YEAR_FIELDS[key], label=label, help="")
        price, co2 = (help_of(YEAR_FIELDS[key], state.display()) for key in ("price_per_kwh", "co2_g_per_kwh"))
        st.caption(say("year-prices-help", price=price, co2=co2))
    for season in SEASONS:
        side_by_side(YEAR_FIELDS[f"{season}_days"], YEAR_FIELDS[f"{season}_c"])
    st.caption(f"{band_promise(state.display())} {say('year-snow')}")


if state.answered():
    in_sight(answer_in_sight)
# what a short way in or the car's own figures enter is not drawn in parts
redrawn.stands(lambda: opened_otherwise() and redrawn.drive())
with st.container(key="start", horizontal=True, gap="small"):
    choose_drive("page")
    draw_doors()
opened = DOORS.get(st.session_state.get("open-door", ""))
# on a telephone the answer stays in sight by itself
beside = opened is not None and opened.beside and not is_narrow()
if opened and not beside:
    opened.draw()
answering, describing = st.columns([11, 10], gap="large")
with describing, st.container(key="description", gap="xsmall"):
    if opened and beside:
        opened.draw()
    describe()
    redrawn.part("own-road", draw_own_road, of=link.own_link)
with answering:
    with st.container(key="answer", gap="xsmall"):
        answer()
    strip_behind()
with st.expander(state.display().say("adjust-car"), type="compact", key="car-drawer", on_change="rerun") as drawer:
    if drawer.open:
        adjust_car()
if shown := state.answered():
    with before(shown, "energy"):
        draw_energy(shown.car_class)
