"""The drive in five answers. They are read from the legs and make the legs anew, wherever they stand."""

from __future__ import annotations

from dataclasses import replace
from functools import partial

import streamlit as st

from model.describe.fields import Entry
from model.describe.figures import Quantity, Share
from model.describe.quick_drive import QUICK_FIELDS, ROADS, QuickDrive, quick_of, with_answer
from model.words.entries import choice_word, label_of
from model.words.quantities import capital
from pages.parts import state
from pages.parts.controls import enter, say_refusals

ENTRY_PX, WAY_PX = 160, 200
WAYS = ("flat", "up", "down")
SHARES = {"town_share": "town", "motorway_share": "motorway"}
LEAST_REST = 0.005
"""Less than this is left over by rounding [1]."""
GAVE_WAY = "quick_gave_way"
"""In the session: legs, and the share that was made less for them."""


def draw_quick(*, plain: bool = False) -> None:
    """Five entries in a row, as far as there is room; what they make below them.

    Those that are `plain` stand without plus and minus and without what they make.
    """
    scenario, display = state.scenario(), state.display()
    quick = quick_of(scenario.legs)
    keys = ["distance_km", "town_share", "motorway_share", "stops"] + (["height_m"] if quick.way != "flat" else [])
    with st.container(key="quick", gap="xsmall"):
        with st.container(key="quick-entries", horizontal=True, vertical_alignment="bottom", gap="small"):
            for key in keys[:4]:
                draw_entry(key, getattr(quick, key), by_steps=not plain)
            with st.container(width=WAY_PX):
                draw_way(quick.way)
            for key in keys[4:]:
                draw_entry(key, getattr(quick, key), by_steps=not plain)
            draw_return()
            if plain and (adds_up := shares_text(quick)):
                st.caption(adds_up)
        say_refusals(*map(name_of, keys))
        if plain:
            return
        town, country, motorway = (Quantity(road.speed_kmh, "km/h", places=0) for road in ROADS.values())
        if gave_way():
            st.caption(shares_text(quick))
        rest = Share(quick.country_share, 0)
        st.caption(display.say("quick-makes", rest=rest, town=town, country=country, motorway=motorway))


def name_of(key: str) -> str:
    """What the widget of an answer is known by."""
    return f"set-quick-{key}"


def draw_entry(key: str, value: float, *, by_steps: bool) -> None:
    """One number; a refusal is said below all of them."""
    field, display = QUICK_FIELDS[key], state.display()
    label = display.say("quick-one-way", unit=display.unit("km")) if key == "distance_km" else ""
    with st.container(width=ENTRY_PX):
        enter(field, name_of(key), value, partial(put, key), label=label, help="", say_refusal=False,
              by_steps=by_steps)  # fmt: skip


def draw_way(way: str) -> None:
    """Whether there is a hill, and where it leads."""
    field, display = QUICK_FIELDS["way"], state.display()
    key = state.set_widget("set-quick-way", way)

    def take() -> None:
        if not state.is_late(key):
            put("way", st.session_state[key])

    st.segmented_control(
        label_of(field, display), WAYS, format_func=lambda way: capital(choice_word("way", way, display)), key=key,
        on_change=take, required=True, width="stretch",
    )  # fmt: skip


def draw_return() -> None:
    """Whether the way is driven back too."""
    key = state.set_widget("quick-there-and-back", state.scenario().return_trip)

    def take() -> None:
        if not state.is_late(key):
            state.put(replace(state.scenario(), return_trip=st.session_state[key]))

    st.toggle(state.display().say("there-and-back"), key=key, on_change=take)


def put(key: str, value: Entry) -> None:
    """Make the legs anew with one answer changed; raises `InputError` where they cannot be."""
    scenario = state.scenario()
    legs = with_answer(scenario.legs, key, value)
    before, after = quick_of(scenario.legs), quick_of(legs)
    less = [share for share in SHARES if share != key and getattr(after, share) < getattr(before, share)]
    # known by the legs it is about, so that it is not told of others
    st.session_state[GAVE_WAY] = (legs, less[0]) if less else None
    state.put(replace(scenario, legs=legs))


def gave_way() -> str:
    """The share that was made less so that both fit; empty where none was, or the legs are others by now."""
    legs, share = st.session_state.get(GAVE_WAY) or ((), "")
    return share if legs == state.scenario().legs else ""


def shares_text(quick: QuickDrive) -> str:
    """Which of both shares gave way to the other, or what they leave over; empty where there is nothing to say."""
    display, less = state.display(), gave_way()
    if less:
        return display.say("quick-gave-way", less=SHARES[less], share=Share(getattr(quick, less), 0))
    # beside a hill's height there is no room for it on a telephone
    says_rest = quick.way == "flat" and quick.country_share >= LEAST_REST
    return display.say("quick-rest", rest=Share(quick.country_share, 0)) if says_rest else ""
