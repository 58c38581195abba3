"""A page's own settings, which stand in the address beside the scenario: read, written, and the widgets that do so.

They are declared as fields like everything else that can be entered. What is as usual does not stand in the address.
"""

from __future__ import annotations

import math
from collections.abc import Mapping

import streamlit as st

from model.describe.fields import Field
from model.words.entries import held_value, labelled, shown_value
from pages.parts import controls, state
from pages.parts.controls import widget_key


def put(field: Field, value: object) -> None:
    """Write a setting to the address."""
    parsed = field.parse(value)
    st.query_params[field.key] = field.text(parsed)
    if parsed == field.default:
        del st.query_params[field.key]


def choose(field: Field, value: str, label: str, words: Mapping[str, str]) -> None:
    """A choice between a few words."""
    key = widget_key(field)
    st.session_state[key] = value
    st.pills(label, list(words), format_func=words.__getitem__, key=key, required=True, wrap=True,
             on_change=lambda: put(field, st.session_state[key]))  # fmt: skip


def slider_ends(field: Field, step: float) -> tuple[float, float]:
    """The ends of a field's slider in the visitor's units: whole steps within the field's bounds."""
    low, high = (shown_value(field, bound, state.display()) for bound in (field.minimum, field.maximum))
    return float(math.ceil(low / step) * step), float(math.floor(high / step) * step)


def on_slider(field: Field, value: float, step: float) -> float:
    """A value as its slider shows it, in the visitor's units."""
    low, high = slider_ends(field, step)
    return min(max(round(shown_value(field, value, state.display()) / step) * step, low), high)


def as_slid(field: Field, value: float, step: float) -> float:
    """The value that a slider stands for: what a link carries may lie between its steps, and must not be told apart."""
    return held_value(field, on_slider(field, value, step), state.display())


def slide(field: Field, value: float, step: float, label: str = "") -> None:
    """A slider in the visitor's units."""
    key, display = widget_key(field), state.display()
    st.session_state[key] = on_slider(field, value, step)
    st.slider(label or labelled(field, display), *slider_ends(field, step), step=step, format="%g", key=key,
              on_change=lambda: put(field, held_value(field, st.session_state[key], display)))  # fmt: skip


def enter(field: Field, value: float) -> None:
    """A number in the visitor's units, as it is typed; what cannot be used is refused in one sentence."""
    controls.enter(field, widget_key(field), value, lambda entered: put(field, entered), help="")
