"""My car, from its data sheet: the few figures that everybody has, in the order in which a data sheet gives them."""

from __future__ import annotations

from typing import Any

import streamlit as st

from model.describe.car import CAR_FIELDS, CONSUMPTION
from model.describe.parameters import class_labels
from pages.parts import state
from pages.parts.answer_line import say_left_out, take_car
from pages.parts.controls import control, enter, say_refusals, value_in, write
from pages.parts.road_part import draw_steps

WHERE = "sheet"
"""Apart from the same entries among all figures of the car."""
ENTRY_PX, LIST_PX = 160, 336
ENTRIES = ("mass_kg", "usable_kwh", "motor_peak_kw", "printed_range_km")
CHOICES = ("heat_source", "driven_axle")


def draw_sheet() -> None:
    """The class it is nearest to, what the sheet says, and what the printed range becomes on this drive."""
    scenario, display = state.scenario(), state.display()
    stated: dict[str, Any] = dict(scenario.stated)
    with st.container(key="sheet", gap="xsmall"):
        with st.container(key="sheet-entries", horizontal=True, vertical_alignment="bottom", gap="small"):
            with st.container(width=LIST_PX):
                choose_class(scenario.car_class)
            for key in ENTRIES:
                with st.container(width=ENTRY_PX):
                    control(CAR_FIELDS[key], help="", say_refusal=False, where=WHERE)
            with st.container(width=ENTRY_PX):
                printed = stated.get("printed_wh_per_km")
                enter(CONSUMPTION, f"set-{CONSUMPTION.key}", None if printed is None else printed / 10, put_consumption,
                      help="", say_refusal=False)  # fmt: skip
            with st.container(width=LIST_PX):
                control(CAR_FIELDS["printed_test"], look="list", help="", where=WHERE)
            for key in CHOICES:
                with st.container(width=LIST_PX):
                    control(CAR_FIELDS[key], help="", where=WHERE)
        say_refusals(*(f"set-{key}-{WHERE}" for key in ENTRIES), f"set-{CONSUMPTION.key}")
        say_left_out()
        st.caption(display.say("sheet-help"))
        if (printed_km := stated.get("printed_range_km")) and state.shown() == scenario:
            label = display.say("road-heading")
            with st.expander(label, type="compact", key="road-drawer", on_change="rerun") as drawer:
                if drawer.open:
                    draw_steps(printed_km, str(value_in(scenario, CAR_FIELDS["printed_test"])))


def choose_class(car_class: str) -> None:
    """The class whose figures stand in for all that the sheet does not say."""
    key = state.set_widget("choose-car-sheet", car_class)
    st.selectbox(
        state.display().say("sheet-class"), [*class_labels()], format_func=lambda name: class_labels()[name], key=key,
        on_change=take_car, args=("choose-car-sheet",),
    )  # fmt: skip


def put_consumption(kwh_per_100km: float | None) -> None:
    """Hold a consumption as it is printed; raises `InputError` where it cannot be."""
    write(CAR_FIELDS["printed_wh_per_km"], None if kwh_per_100km is None else 10 * kwh_per_100km)
