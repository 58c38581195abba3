"""Describing a drive: its legs, the way back and the habits, as rows of which one is open."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import partial

import streamlit as st

from model.describe.leg_hills import HILL_KM, WAY, way_of
from model.describe.scenario import CONDITION_FIELDS, DRIVER_FIELDS, LEG_FIELDS, MAX_LEGS, YEAR_FIELDS, Leg
from model.words.entries import HABITS
from pages.parts import description, redrawn, state
from pages.parts.controls import control, say_refusals, side_by_side, widget_key
from pages.parts.trailer import draw_trailer
from pages.parts.typography import together

LEG_ENTRIES = (("distance_km", "speed_kmh"), ("stops", "slow_downs"))
HILL_ENTRIES = {"flat": (), "up": ("climb_m",), "down": ("descent_m",), "up_and_down": ("climb_m", "descent_m")}
"""The metres asked for, by where the leg leads."""


def describe() -> None:
    """Legs, the way back, and habits: rows of which one is open at a time."""
    scenario, display = state.scenario(), state.display()
    st.session_state["refusal-said"] = False
    with st.container(key="legs-head", horizontal=True, vertical_alignment="center", horizontal_alignment="distribute",
                      gap="xsmall"):  # fmt: skip
        st.subheader(display.say("legs"), anchor=False, width="content")
        state.set_widget("there-and-back", scenario.return_trip)
        st.toggle(display.say("there-and-back"), key="there-and-back", on_change=take_return)
        if scenario.return_trip:
            redrawn.stands(way_back)
            with st.popover(description.way_back_words(scenario.conditions, display), type="tertiary", key="way-back"):
                edit_way_back()
        st.button(
            display.say("add-a-leg"),
            type="tertiary",
            icon=":material/add:",
            on_click=move_legs,
            args=((*scenario.legs, Leg()), len(scenario.legs)),
            disabled=len(scenario.legs) >= MAX_LEGS,
        )
    refusal = state.refusal()
    above = st.container() if refusal else None
    with st.container(key="rows", gap=None):
        for place in range(len(scenario.legs)):
            if row(f"leg-{place}", partial(leg_row, place)):
                edit_leg(place)
        if row("habits", habits_row):
            edit_habits()
    # at the entry that led to it, where that is open
    if above and not st.session_state["refusal-said"]:
        above.error(together(refusal))


def way_back() -> object:
    """What is said and asked of the way back."""
    conditions = state.scenario().conditions
    return conditions.stands_h, conditions.stands_plugged_in


def leg_row(place: int) -> str:
    """What a leg's row says."""
    display = state.display()
    described = description.leg_words(state.scenario().legs[place], display)
    return display.say("leg-row", leg=place + 1, described=described)


def habits_row() -> str:
    """What the row of habits says."""
    return description.habits_words(state.scenario(), state.display())


def row(name: str, text: Callable[[], str]) -> bool:
    """A line that says what is entered; whether its entries are open below it."""
    redrawn.part(f"row-{name}", partial(draw_row, name, text), of=text)
    return bool(st.session_state.get("open-row") == name)


def draw_row(name: str, text: Callable[[], str]) -> None:
    """The line itself."""
    # an expander would close when its label changes, and the label is what is being entered
    is_open = st.session_state.get("open-row") == name
    # the icon says nothing to who cannot see it, so the words tell too
    st.button(
        state.display().say("row-close", row=text()) if is_open else text(),
        type="tertiary",
        width="stretch",
        icon=":material/expand_less:" if is_open else ":material/expand_more:",
        icon_position="right",
        key=f"row-{name}",
        on_click=open_row,
        args=(None if is_open else name,),
    )


def open_row(name: str | None) -> None:
    """Open one row and close the others."""
    st.session_state["open-row"] = name
    redrawn.changed()


def take_return() -> None:
    """Write whether the drive is driven back."""
    if not state.is_late("there-and-back"):
        state.put(replace(state.scenario(), return_trip=st.session_state["there-and-back"]))


def move_legs(legs: tuple[Leg, ...], opened: int | None) -> None:
    """Take the legs in a new order or number, and open one of them."""
    state.put_whole(replace(state.scenario(), legs=legs))
    open_row(None if opened is None else f"leg-{opened}")


def edit_way_back() -> None:
    """How long the car stands before it is driven back, and whether on a plug."""
    control(CONDITION_FIELDS["stands_h"])
    control(CONDITION_FIELDS["stands_plugged_in"])


def edit_leg(place: int) -> None:
    """The entries of one leg, and its place among the others."""
    legs = state.scenario().legs
    others = (*legs[:place], *legs[place + 1 :])

    def moved(to: int) -> tuple[Leg, ...]:
        return (*others[:to], legs[place], *others[to:])

    say = state.display().say
    with st.container(key="entries", gap="xsmall"):
        for keys in LEG_ENTRIES:
            side_by_side(*(LEG_FIELDS[key] for key in keys), leg=place)
        st.caption(say("leg-help"))
        edit_hill(place)
        left, right = st.columns(2, wrap=False)
        with left:
            redrawn.stands(lambda: bool(state.scenario().legs[place].slow_downs))
            if legs[place].slow_downs:
                control(LEG_FIELDS["slow_to_kmh"], leg=place, help="", say_refusal=False)
        with right:
            control(LEG_FIELDS["surface"], leg=place, look="list", help="")
        say_refusals(widget_key(LEG_FIELDS["slow_to_kmh"], place))
        with st.container(horizontal=True, gap="xsmall"):
            st.button(say("leg-earlier"), icon=":material/arrow_upward:", key="leg-up", disabled=place == 0,
                      on_click=move_legs, args=(moved(max(place - 1, 0)), place - 1))  # fmt: skip
            st.button(say("leg-later"), icon=":material/arrow_downward:", key="leg-down",
                      disabled=place == len(legs) - 1, on_click=move_legs,
                      args=(moved(place + 1), place + 1))  # fmt: skip
            st.button(say("leg-remove"), icon=":material/delete:", key="leg-remove", disabled=len(legs) == 1,
                      on_click=move_legs, args=(others, None))  # fmt: skip


def edit_hill(place: int) -> None:
    """Up, down or flat; how many metres, how steep and over which length, each of which gives the others."""
    def leads() -> str:
        return way_of(state.scenario().legs[place])

    def hill() -> str:
        return description.hill_words(state.scenario().legs[place], state.display())

    redrawn.stands(leads)
    metres = HILL_ENTRIES[leads()]
    control(WAY, leg=place, help="", hide_label=True)
    if not metres:
        return
    if len(metres) == 1:
        side_by_side(LEG_FIELDS[metres[0]], LEG_FIELDS["grade_pct"], leg=place)
        side_by_side(HILL_KM, leg=place)
    else:
        side_by_side(*(LEG_FIELDS[key] for key in metres), leg=place)
        side_by_side(LEG_FIELDS["grade_pct"], HILL_KM, leg=place)
    redrawn.part(f"hill-{place}", lambda: st.caption(hill()), of=hill)


def edit_habits() -> None:
    """The three habits, each with the number behind its word, the load and the charge at the start."""
    def habit(key: str) -> str:
        return description.habit_number(key, getattr(state.scenario().driver, key), state.display())

    def say_habit(key: str) -> None:
        st.caption(habit(key))

    with st.container(key="entries", gap="xsmall"):
        for key in HABITS:
            control(DRIVER_FIELDS[key], label=state.display().say("habit-label", habit=key), help="")
            redrawn.part(f"habit-{key}", partial(say_habit, key), of=partial(habit, key))
        control(CONDITION_FIELDS["payload_kg"])
        draw_trailer()
        label = state.display().say("charge-at-start")
        control(CONDITION_FIELDS["soc_start"], look="slider", label=label, help="")
        control(YEAR_FIELDS["daily_charge_limit"], look="slider")
