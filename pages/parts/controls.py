"""Widgets made from fields.

A widget shows what the scenario holds, in the units of the visitor, and writes the scenario when it is changed. What
cannot be used is refused in one sentence: the scenario stays as it was, and the entry as typed until it is mended.
"""

from __future__ import annotations

import math
from typing import Any

import streamlit as st

from model.fields import Field, InputError
from model.parameters import assumed_figures
from model.scenario import CONDITION_FIELDS, DRIVER_FIELDS, YEAR_FIELDS, Scenario
from pages.parts import state
from pages.parts.display import Display, held_value, shown_unit, shown_value, tidy
from pages.parts.refusals import refused_entry
from pages.parts.wording import choice_word

STEPS = {
    "distance_km": 0.5, "speed_kmh": 5.0, "slow_to_kmh": 5.0, "climb_m": 10.0, "descent_m": 10.0, "grade_pct": 1.0,
    "ambient_c": 1.0, "soc_start": 5.0, "mass_kg": 50.0, "payload_kg": 25.0, "usable_kwh": 1.0, "price_per_kwh": 0.01,
    "co2_g_per_kwh": 10.0,
}  # fmt: skip
"""Steps of the plus and minus buttons where a twentieth of the usual range would be odd."""


def label_of(field: Field, display: Display) -> str:
    """Label and unit."""
    unit = shown_unit(field, display)
    return f"{field.label}, {unit}" if unit else field.label


def value_in(scenario: Scenario, field: Field, leg: int | None = None) -> Any:
    """The value that a scenario holds for a field; for the car, the class's where nothing was stated."""
    if leg is not None:
        return getattr(scenario.legs[leg], field.key)
    for part, table in (("conditions", CONDITION_FIELDS), ("driver", DRIVER_FIELDS), ("year", YEAR_FIELDS)):
        if field.key in table:
            return getattr(getattr(scenario, part), field.key)
    stated, assumed = dict(scenario.stated), assumed_figures(scenario.car_class)
    if field.key in stated or field.key not in assumed:
        return stated.get(field.key, field.default)
    return assumed[field.key].mid


def widget_key(field: Field, leg: int | None = None) -> str:
    """The key of a field's widget: one a field, and one a leg and field."""
    return f"set-{field.key}" if leg is None else f"set-leg{leg}-{field.key}"


def take(field: Field, leg: int | None = None) -> None:
    """Write a changed widget to the scenario, or note why it cannot be."""
    name = widget_key(field, leg)
    if state.is_late(key := state.key_of(name)):
        return
    shown, display, scenario = st.session_state[key], state.display(), state.scenario()
    state.refusals().pop(name, None)
    try:
        value = field.parse(held_value(field, shown, display))
    except InputError:
        state.refusals()[name] = (shown, refused_entry(field, shown, display))
        return
    state.put(scenario.with_setting(field.key, value) if leg is None else scenario.with_leg(leg, field.key, value))


def control(
    field: Field,
    *,
    leg: int | None = None,
    label: str = "",
    look: str = "",
    hide_label: bool = False,
    help: str | None = None,
    behind: bool = False,
) -> None:
    """Draw the widget of a field.

    Parameters
    ----------
    field : Field
        What is entered.
    leg : int, optional
        Place of the leg it belongs to, from 0.
    label : str, optional
        In place of the field's label and unit.
    look : str, optional
        "slider" for a number between its bounds, "list" for a choice as a list; buttons side by side otherwise.
    hide_label : bool
        Keep the label for screen readers only.
    help : str, optional
        In place of the field's help.
    behind : bool
        Whether it stands behind a word that may be closed.
    """
    display, name = state.display(), widget_key(field, leg)
    refused, sentence = state.refusals().get(name, (None, ""))
    value = shown_value(field, value_in(state.scenario(), field, leg), display)
    key = state.set_widget(name, refused if sentence else value, behind=behind)
    words: dict[str, Any] = {
        "label": label or label_of(field, display),
        "key": key,
        "help": field.help if help is None else help or None,
        "on_change": take,
        "args": (field, leg),
        "label_visibility": "collapsed" if hide_label else "visible",
    }
    if field.kind == "choice":
        words |= {
            "options": list(field.choices),
            "format_func": lambda option: choice_word(field.key, option).capitalize(),
        }
        if look == "list":
            st.selectbox(**words)
        else:
            st.segmented_control(required=True, width="stretch", **words)
    elif field.kind == "yes_no":
        st.toggle(**words)
    elif field.kind == "text":
        st.text_input(max_chars=80, **words)
    elif field.kind == "count":
        st.number_input(step=1, format="%d", **words)
    elif look == "slider":
        low, high = (float(shown_value(field, bound, display)) for bound in (field.minimum, field.maximum))
        st.slider(min_value=low, max_value=high, step=step_of(field, display), format="%g", **words)
    else:
        st.number_input(
            value=None if field.optional else "min",
            step=step_of(field, display),
            format=f"%.{decimals(value, step_of(field, display))}f",
            **words,
        )
    if sentence:
        st.error(sentence)


def step_of(field: Field, display: Display) -> float:
    """The step of a field's plus and minus buttons, in the unit shown."""
    if field.key in STEPS:
        return STEPS[field.key]
    low, high = (shown_value(field, bound, display) for bound in field.usual)
    wanted = (high - low) / 20
    power = 10 ** math.floor(math.log10(wanted))
    return tidy(max(step for step in (1, 2, 5) if step * power <= wanted * 1.0001) * power, 1)


def decimals(value: float | None, step: float) -> int:
    """Decimals that neither hide a digit of the value nor of the step."""
    texts = (f"{number:.6g}" for number in (value or 0.0, step) if math.isfinite(number))
    # very small figures would be written with an exponent
    return max(len(f"{float(text):.8f}".rstrip("0").split(".")[1]) for text in texts)
