"""Widgets made from fields.

A widget shows what the scenario holds, in the units of the visitor, and writes the scenario when it is changed. What
cannot be used is refused in one sentence: the scenario stays as it was, and the entry as typed until it is mended.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from contextlib import nullcontext
from dataclasses import replace
from typing import Any, cast

import numpy as np
import streamlit as st
from streamlit.delta_generator import DeltaGenerator
from streamlit.logger import get_logger

from model.describe import leg_hills
from model.describe.car import CAR_FIELDS
from model.describe.fields import Entry, Field, FieldError, InputError
from model.describe.parameters import assumed_figures
from model.describe.scenario import CONDITION_FIELDS, DRIVER_FIELDS, YEAR_FIELDS, Scenario
from model.describe.typed_numbers import number_typed
from model.sampling.narrowing import PRINTED
from model.words.entries import choice_word, entry_value, held_value, help_of, labelled, shown_unit, shown_value, tidy
from model.words.quantities import MINUS, Display, capital
from model.words.refusals import refusal_words, refused_entry
from pages.parts import redrawn, state
from pages.parts.plain_text import inert

LOG = get_logger(__name__)
BUTTONS_PX = 92
"""Plus and minus, each wide enough for a finger."""
STEPS = {
    "distance_km": 0.5, "speed_kmh": 5.0, "slow_to_kmh": 5.0, "climb_m": 10.0, "descent_m": 10.0, "grade_pct": 1.0,
    "ambient_c": 1.0, "soc_start": 5.0, "mass_kg": 50.0, "payload_kg": 25.0, "usable_kwh": 1.0, "price_per_kwh": 0.01,
    "petrol_price_per_l": 0.01, "diesel_price_per_l": 0.01, "now_l_per_100km": 0.5, "daily_charge_limit": 5.0,
    "co2_g_per_kwh": 10.0, "hill_km": 0.5, "charge_stop_to": 5.0,
}  # fmt: skip
"""Steps of the plus and minus buttons where a twentieth of the usual range would be odd."""
SHOWN_DIGITS = {"grade_pct": 3, "hill_km": 3}
"""Digits shown of what follows from other entries and comes out with more."""


US_TEST = "us-label"
"""What a figure printed of a car is taken to be of where US units are shown, until another test is chosen."""


def typed_number(field: Field, typed: str, display: Display) -> float | None:
    """The number typed for a field in the unit shown, which may stand behind it; None for an empty entry.

    Raises
    ------
    ValueError
        Where it is no number; `TwoReadings` where it can be read as either of two.
    """
    text = typed.strip().removesuffix(shown_unit(field, display)).strip()
    if not text:
        return None
    return number_typed(text, lambda shown: field.allows(held_value(field, shown, display)))


def value_in(scenario: Scenario, field: Field, leg: int | None = None) -> Entry:
    """The value that a scenario holds for a field; for the car, the class's where nothing was stated."""
    if leg is not None:
        return leg_hills.value_of(scenario.legs[leg], field.key)
    for part, table in (("conditions", CONDITION_FIELDS), ("driver", DRIVER_FIELDS), ("year", YEAR_FIELDS)):
        if field.key in table:
            return getattr(getattr(scenario, part), field.key)
    stated, assumed = dict(scenario.stated), assumed_figures(scenario.car_class)
    if field.key == "printed_test" and state.display().us and stated.keys().isdisjoint(PRINTED):
        # what a sticker in the United States has; a link without a test means the field's own
        return stated.get(field.key, US_TEST)
    if field.key in stated or field.key not in assumed:
        return stated.get(field.key, field.default)
    return assumed[field.key].mid


def widget_key(field: Field, leg: int | None = None, where: str = "") -> str:
    """The key of a field's widget: one a field, one a leg and field, and one for each further place on a page."""
    place = f"-{where}" if where else ""
    return f"set-{field.key}{place}" if leg is None else f"set-leg{leg}-{field.key}{place}"


def take(field: Field, leg: int | None = None, where: str = "") -> None:
    """Write a changed widget to the scenario, or note why it cannot be."""
    name = widget_key(field, leg, where)
    if state.is_late(key := state.key_of(name)):
        return
    shown, display = st.session_state[key], state.display()
    state.note_entered(name)
    state.refusals().pop(name, None)
    try:
        write(field, held_value(field, shown, display), leg)
    except FieldError:
        state.refusals()[name] = (shown, refused_entry(field, shown, display))
    except InputError as refused:
        state.refusals()[name] = (shown, refusal_words(refused, display))
    except Exception:
        not_taken(name, shown)
    redrawn.changed()


def not_taken(name: str, entered: object) -> None:
    """Where our own code failed to take an entry over: the page goes on, and what was entered stays where it was."""
    LOG.exception(name)
    state.refusals()[name] = (entered, state.display().say("field-not-taken"))


def write(field: Field, value: object, leg: int | None = None) -> None:
    """Put a value into the scenario; raises `InputError` where it is not allowed."""
    scenario, value = state.scenario(), field.parse(value)
    if leg is None:
        if field.key in PRINTED and value is not None:
            # the test that was shown beside the entry goes with it
            test = CAR_FIELDS["printed_test"]
            if (shown := value_in(scenario, test)) != test.default:
                scenario = scenario.with_setting(test.key, shown)
        state.put(scenario.with_setting(field.key, value))
        return
    changed = leg_hills.with_entry(scenario.legs[leg], field.key, value)
    state.put(replace(scenario, legs=(*scenario.legs[:leg], changed, *scenario.legs[leg + 1 :])))


def enter(
    field: Field,
    name: str,
    value: float | None,
    put: Callable[[float], None],
    *,
    label: str = "",
    help: str | None = None,
    hide_label: bool = False,
    say_refusal: bool = True,
    behind: bool = False,
    by_steps: bool = True,
) -> None:
    """A number as it is typed, with plus and minus beside it.

    Parameters
    ----------
    field : Field
        What is entered.
    name : str
        What its widget is known by, which begins with "set-".
    value : float or None
        What is held.
    put : callable
        Takes the value to hold; raises `InputError` where it is not allowed.
    label, help : str, optional
        In place of the field's label and unit; beside the label.
    hide_label, say_refusal, behind, by_steps : bool
        As for `control`.
    """
    display = state.display()
    shown = entry_value(field, value, display)
    if field.key in SHOWN_DIGITS and shown is not None:
        shown = tidy(shown, SHOWN_DIGITS[field.key])
    typed, sentence = state.refusals().get(name, ("", ""))
    # a browser's own number field drops a comma or a true minus as it is typed, and so changes the number
    key = state.set_widget(name, typed if sentence else typed_text(shown), behind=behind)
    kind = int if field.kind == "count" else float
    # the lower bound may be the greater number shown: miles per gallon
    low, high = sorted(kind(shown_value(field, bound, display)) for bound in (field.minimum, field.maximum))
    within = None if shown is None else min(max(kind(shown), low), high)

    def take_one(changed: str) -> None:
        if state.is_late(changed):
            return
        take_typed(field, name, st.session_state[changed], put)
        redrawn.changed()

    label = label or labelled(field, display)
    # a telephone's keyboard of figures may have no minus
    signed = "signed-" if field.minimum < 0 else ""
    mark = "-refused" if sentence or state.refused_at(name) else ""
    with st.container(key=f"entry-{signed}{name}{mark}", horizontal=True, wrap=False, vertical_alignment="bottom",
                      gap=None):  # fmt: skip
        st.text_input(label, key=key, help=help or None, on_change=take_one, args=(key,), autocomplete="off",
                      label_visibility="collapsed" if hide_label else "visible")  # fmt: skip
        if by_steps:
            steps = state.set_widget(f"step-{name.removeprefix('set-')}", within, behind=behind)
            st.number_input(display.say("entry-by-steps", label=label), low, high, key=steps, on_change=take_one,
                            step=kind(step_of(field, display)), args=(steps,), label_visibility="collapsed",
                            width=BUTTONS_PX, value=None if field.optional else "min")  # fmt: skip
    if say_refusal:
        say_refusals(name)


def take_typed(field: Field, name: str, given: str | float | None, put: Callable[[float], None]) -> None:
    """Have a number put that was typed or stepped to, or note why it cannot be."""
    display = state.display()
    state.note_entered(name)
    state.refusals().pop(name, None)
    try:
        number = typed_number(field, given, display) if isinstance(given, str) else given
        entered = field.number(held_value(field, number, display))
    except ValueError:
        state.refusals()[name] = (typed_text(given), refused_entry(field, given, display))
        return
    try:
        put(entered)
    except InputError as refused:
        state.refusals()[name] = (typed_text(given), refusal_words(refused, display))
    except Exception:
        not_taken(name, typed_text(given))


def say_refusals(*names: str) -> None:
    """The sentences with which entries were refused, or the drive that they led to, by the names of their widgets."""
    for name in names:
        if name in state.refusals():
            st.error(inert(state.refusals()[name][1]))
        elif refusal := state.refused_at(name):
            st.session_state["refusal-said"] = True
            st.error(refusal)


def side_by_side(*fields: Field, leg: int | None = None, where: str = "") -> None:
    """Widgets beside each other without their helps, what was refused below them over the whole width."""
    names = [widget_key(field, leg, where) for field in fields]
    with abreast("-".join(names)) if len(fields) > 1 else nullcontext():
        for field in fields:
            look = "list" if field.kind == "choice" else ""
            control(field, leg=leg, look=look, help="", say_refusal=False, where=where)
    say_refusals(*names)


def abreast(name: str) -> DeltaGenerator:
    """A row whose parts share the width alike; columns would be one more message each."""
    return st.container(key=f"abreast-{name}", horizontal=True, wrap=False, vertical_alignment="bottom")


def control(
    field: Field,
    *,
    leg: int | None = None,
    label: str = "",
    look: str = "",
    hide_label: bool = False,
    help: str | None = None,
    say_refusal: bool = True,
    behind: bool = False,
    by_steps: bool = True,
    where: str = "",
) -> None:
    """Draw the widget of a field, a part of the page that is redrawn where its value moves.

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
    say_refusal : bool
        Whether a refusal stands right below; else whoever draws the widget calls `say_refusals`.
    behind : bool
        Whether it stands behind a word that may be closed.
    by_steps : bool
        Whether a number has plus and minus beside it.
    where : str, optional
        The place on the page, where the same field has another widget behind a word of the answer line.
    """
    name = widget_key(field, leg, where)

    def held() -> Entry:
        return value_in(state.scenario(), field, leg)

    def draw() -> None:
        said = help_of(field, state.display()) if help is None else help
        if field.kind in ("number", "count") and look != "slider":
            enter(field, name, cast(float | None, held()), lambda value: write(field, value, leg), label=label,
                  hide_label=hide_label, help=said, say_refusal=False, behind=behind, by_steps=by_steps)  # fmt: skip
            return
        refused, sentence = state.refusals().get(name, (None, ""))
        value = on_slider if look == "slider" else shown_value
        shown = refused if sentence else value(field, cast(float, held()), state.display())
        words = {
            "label": label or labelled(field, state.display()),
            "key": state.set_widget(name, shown, behind=behind),
            "help": said or None,
            "on_change": take,
            "args": (field, leg, where),
            "label_visibility": "collapsed" if hide_label else "visible",
        }
        _draw_widget(field, look, words)

    redrawn.part(name, draw, of=held)
    if say_refusal:
        say_refusals(name)


def _draw_widget(field: Field, look: str, words: dict[str, Any]) -> None:
    """The widget of what is chosen, switched, named or slid."""
    display = state.display()
    if field.kind == "choice":
        words |= {
            "options": list(field.choices),
            "format_func": lambda option: capital(choice_word(field.key, option, display)),
        }
        if look == "list":
            st.selectbox(**words)
        else:
            st.segmented_control(required=True, width="stretch", **words)
    elif field.kind == "yes_no":
        # the question mark of a toggle is a part of it, and a tap on it would flip it
        said = words.pop("help")
        with st.container(horizontal=True, vertical_alignment="center", gap="small"):
            st.toggle(width="content", **words)
            if said:
                st.markdown(":small[ ]", help=said, width="content")
    elif field.kind == "text":
        st.text_input(max_chars=80, **words)
    else:
        low, high = slider_ends(field, display)
        st.slider(min_value=low, max_value=high, step=step_of(field, display), format="%g", **words)


def slider_ends(field: Field, display: Display) -> tuple[float, float]:
    """The ends of a field's slider in the unit shown: whole steps within its bounds."""
    step = step_of(field, display)
    low, high = (shown_value(field, bound, display) for bound in (field.minimum, field.maximum))
    return tidy(math.ceil(low / step - 1e-9) * step, 6), tidy(math.floor(high / step + 1e-9) * step, 6)


def on_slider(field: Field, value: float, display: Display) -> float:
    """A value as its slider shows it, in the unit shown."""
    low, high = slider_ends(field, display)
    return min(max(cast(float, entry_value(field, value, display)), low), high)


def step_of(field: Field, display: Display) -> float:
    """The step of a field's plus and minus buttons, in the unit shown."""
    if field.key in STEPS or field.kind == "count":
        return STEPS.get(field.key, 1.0)
    low, high = sorted(shown_value(field, bound, display) for bound in field.usual)
    wanted = (high - low) / 20
    power = 10 ** math.floor(math.log10(wanted))
    return tidy(max(step for step in (1, 2, 5) if step * power <= wanted * 1.0001) * power, 1)


def typed_text(shown: float | str | None) -> str:
    """A number as it would be typed, with a true minus; a text stays as it is."""
    if shown is None or isinstance(shown, str):
        return shown or ""
    return np.format_float_positional(tidy(shown, 6), trim="-").replace("-", MINUS)
