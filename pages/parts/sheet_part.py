"""My car, from its data sheet: the few figures that everybody has, in the order in which a data sheet gives them."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import streamlit as st

from model.describe.car import CAR_FIELDS, CONSUMPTION
from model.describe.fields import Field
from model.describe.parameters import class_labels
from model.describe.scenario import Scenario
from pages.parts import state
from pages.parts.answer_line import say_left_out, take_car
from pages.parts.controls import control, enter, say_refusals, value_in, write
from pages.parts.road_part import draw_steps

WHERE = "sheet"
"""Apart from the same entries among all figures of the car."""
BEFORE = ("mass_kg", "usable_kwh", "motor_peak_kw", "driven_axle", "heat_source", "printed_range_km")
"""In the order of a data sheet; the consumption and the test of what is printed follow."""


def draw_sheet() -> None:
    """The class it is nearest to, what the sheet says, and what the printed range becomes on this drive."""
    scenario, display = state.scenario(), state.display()
    stated: dict[str, Any] = dict(scenario.stated)
    with st.container(key="sheet", gap="xsmall"):
        st.subheader(display.say("sheet-title"), anchor=False)
        with st.container(key="sheet-entries", gap=None):
            choose_class(scenario.car_class)
            for key in BEFORE:
                control(offered(key, scenario), help="", say_refusal=False, by_steps=False, where=WHERE)
            printed = stated.get("printed_wh_per_km")
            enter(CONSUMPTION, f"set-{CONSUMPTION.key}", None if printed is None else printed / 10, put_consumption,
                  help="", say_refusal=False, by_steps=False)  # fmt: skip
            control(CAR_FIELDS["printed_test"], look="list", help="", where=WHERE)
        say_refusals(*(f"set-{key}-{WHERE}" for key in BEFORE), f"set-{CONSUMPTION.key}")
        say_left_out()
        st.caption(display.say("sheet-help"))
        if (printed_km := stated.get("printed_range_km")) and state.shown() == scenario:
            label = display.say("road-heading")
            with st.expander(label, type="compact", key="road-drawer", on_change="rerun") as drawer:
                if drawer.open:
                    draw_steps(printed_km, str(value_in(scenario, CAR_FIELDS["printed_test"])))


def offered(key: str, scenario: Scenario) -> Field:
    """A figure of the car; a car without an engine is not offered its heat."""
    field, hybrid = CAR_FIELDS[key], value_in(scenario, CAR_FIELDS["sustain_soc"]) is not None
    if key != "heat_source" or hybrid or value_in(scenario, field) == "engine":
        return field
    return replace(field, choices=tuple(choice for choice in field.choices if choice != "engine"))


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
