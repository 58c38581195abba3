"""A printed range on the visitor's road, and what came back in each of the seven phrases."""

from __future__ import annotations

from dataclasses import replace

import streamlit as st

from model.describe.car import CAR_FIELDS
from model.describe.fields import Field, InputError
from model.describe.figures import Quantity
from model.kernel.phrases import PHRASES
from model.sampling.printed_tests import TESTS
from model.sampling.range_figure import RANGE_KM, RangeOnRoad
from model.sampling.uncertainty import Band
from model.words.entries import tidy
from model.words.refusals import refusal_words
from pages.parts import phrase_words as words
from pages.parts import state
from pages.parts.charts.to_road import to_road
from pages.parts.controls import enter, value_in
from pages.parts.drive_part import last_answer
from pages.parts.figure import Picture, figure
from pages.parts.theme import TEXT_PX

RANGE, TEST, PHRASE, NUMBER = "test_range_km", "test", "phrase", "number"
"""The page's parameters in the address: the printed range [km] and its test, the phrase and its number [1 or km]."""
CONVERTED = Field(NUMBER, "number", "", "phrase-number", -10, 100_000)


def draw_own_road() -> None:
    """Both parts; where the drive as described now has no answer, in grey to the last one that had."""
    if state.answered() is None:
        st.error(state.refusal())
        return
    with last_answer("road"):
        draw_road()
        draw_converter()


# the printed range


def asked_range() -> tuple[float | None, str]:
    """The printed range [km] and the test that the address asks for, or that were stated of this car."""
    stated, usual = dict(state.shown().stated), str(value_in(state.shown(), CAR_FIELDS["printed_test"]))
    asked = st.query_params.get(TEST, usual)
    test = asked if asked in TESTS else usual
    if RANGE in st.query_params and (printed := RANGE_KM.clamped(st.query_params[RANGE])) is not None:
        return printed, test
    own = stated.get("printed_range_km") if TEST not in st.query_params else None
    return None if own is None else RANGE_KM.number(own), test


def draw_road() -> None:
    """From the test cycle to the road: the printed figure, and what each step costs."""
    display, (printed_km, test) = state.display(), asked_range()

    def take(printed: float | None) -> None:
        st.query_params.pop(RANGE, None)
        if printed is not None:
            st.query_params[RANGE] = RANGE_KM.text(tidy(printed, 5))

    def take_test() -> None:
        st.query_params[TEST] = st.session_state["set-test"]

    st.markdown(f"### {display.say('road-heading')}")
    st.session_state["set-test"] = test
    with st.container(key="road-asked", horizontal=True, vertical_alignment="bottom", gap="small"):
        with st.container(width=210):
            label = display.say("road-printed-range", unit=display.unit("km"))
            enter(replace(RANGE_KM, optional=True), "set-test-range", printed_km, take, label=label, help="")
        st.selectbox(display.say("road-on-which-test"), list(TESTS), key="set-test",
                     format_func=lambda test: display.say("test-name", test=test),
                     on_change=take_test, width=420)  # fmt: skip
    draw_steps(printed_km, test)


@st.fragment(parallel=True)
def draw_steps(printed_km: float | None, test: str) -> None:
    """The steps; drawn beside the rest of the page, since the drive is driven five times for them.

    A range is one number in every place: where nothing is printed, or the same as is known of the car, the last step is
    what the answer says is reached on a full battery; where something else is, what the answer says stands beside it.
    """
    display, now = state.display(), state.shown()
    with st.container(key="road-steps"):
        try:
            found = state.range_on_road(printed_km, test)
        except InputError as refused:
            st.error(refusal_words(refused, display))
            return
        bands = state.answer(now)
        reached, stated = bands.range_km if bands else None, dict(now.stated).get("printed_range_km")
        as_known = printed_km == stated and (stated is None or test == value_in(now, CAR_FIELDS["printed_test"]))
        if reached is not None and as_known:
            found = ending_at(found, reached)
        if not found.printed:
            st.caption(display.say("road-until-entered", range=Quantity(found.test_range_km, "km", 3)))
        title = words.road_title(found, display)
        sentences = words.road_words(found, display)
        if reached is not None and not as_known:
            sentences = f"{sentences} {words.road_beside(reached, display, other=stated is not None)}"
        chart = to_road(found, display.say("test-name", test=test), display, state.dark())
        shown = Picture(chart, f"{title}. {sentences}", words.road_table(found, display), title, sentences)
        figure(lambda: shown, "to-road", f"{test}-to-road.csv")


def ending_at(found: RangeOnRoad, reached: Band) -> RangeOnRoad:
    """The same way, with the range [km] that the answer has for its end; what each step costs stays."""
    *others, last = found.steps
    return replace(found, steps=(*others, replace(last, range_km=reached)))


# the converter


def draw_converter() -> None:
    """A number said in one of the seven phrases, in the others."""
    display, books = state.display(), state.books()
    st.header(display.say("converter-heading"), anchor="converter")
    st.markdown(display.say("converter-intro"), width=TEXT_PX)
    phrase = st.query_params.get(PHRASE, "")
    usable = {name: own for name in PHRASES if (own := words.own_number(books, name)) is not None}
    if not usable:
        st.markdown(display.say("converter-nothing"))
        return
    phrase = phrase if phrase in usable else next(iter(usable))
    exact = usable[phrase]
    own = words.shown_number(phrase, exact, display)
    asked = CONVERTED.clamped(st.query_params.get(NUMBER, ""))
    number = own if asked is None else words.shown_number(phrase, asked, display)

    def take_phrase() -> None:
        st.query_params.pop(NUMBER, None)
        st.query_params[PHRASE] = st.session_state["set-phrase"]

    unit = PHRASES[phrase].unit
    field = Field(NUMBER, "number", unit, "phrase-number", -1000, 100_000, (0, 20))

    def take_number(entered: float) -> None:
        shown = display.value(entered, unit)
        st.query_params[NUMBER] = CONVERTED.text(tidy(words.held_number(phrase, shown, display), 5))

    st.session_state["set-phrase"] = phrase
    with st.container(key="converter-asked", horizontal=True, vertical_alignment="bottom", gap="small"):
        with st.container(width=210):
            enter(field, "set-phrase-number", display.held(number, unit), take_number, help="")
        st.selectbox(display.say("converter-of-what"), list(usable),
                     format_func=lambda name: words.phrase_name(name, display), key="set-phrase",
                     on_change=take_phrase, width=520)  # fmt: skip
    try:
        # The box shows the drive's own number rounded; converted from that, it would differ from the other pages.
        held = exact if number == own else words.held_number(phrase, number, display)
        table = words.converted_table(books, phrase, held, display)
    except InputError as refused:
        st.error(words.converter_refusal(refused, phrase, display))
    else:
        if number == own:
            st.caption(display.say("converter-own"))
        st.table(table, border="horizontal", hide_index=True, alt=display.say("converter-alt"))
    st.markdown(words.hill_example(display), width=TEXT_PX)
