"""Fields as they are entered: in the reader's units, shares in percent, choices in plain words."""

from __future__ import annotations

from typing import overload

from model.describe.fields import Entry, Field
from model.describe.figures import Quantity
from model.words.quantities import Display, capital

ENTRY_DIGITS = 5
"""Digits kept of an entry in US units, so that a link carries 49.89 rather than fifteen digits of it."""
CHOICES = {
    "looks_ahead": "choice-looks-ahead", "pull_away": "choice-pull-away", "steady_foot": "choice-steady-foot",
    "prefers": "choice-prefers", "brake_pedal": "choice-brake-pedal", "way": "choice-way",
    "heat_source": "choice-heat-source", "driven_axle": "choice-driven-axle", "surface": "choice-surface",
    "tyres": "choice-tyres", "tyres_warm": "choice-tyres-warm", "printed_test": "choice-printed-test",
    "now_fuel": "choice-now-fuel",
}  # fmt: skip
"""The message with a field's choices; others are names already."""
CHARGES = ("soc_start", "charge_stop_to", "daily_charge_limit")
HABITS = {
    "looks_ahead": "habit-looks-ahead",
    "pull_away": "habit-pull-away",
    "steady_foot": "habit-steady-foot",
}
"""The message that tells what a driver does, such as “slows down late”, by its field's key."""


def name_of(field: Field, display: Display) -> str:
    """What a field is called, as it stands within a sentence."""
    return display.say(field.message)


def label_of(field: Field, display: Display) -> str:
    """What a field is called, as a label."""
    return capital(name_of(field, display))


def labelled(field: Field, display: Display) -> str:
    """A field's label and the unit in which it is entered."""
    label, unit = label_of(field, display), shown_unit(field, display)
    return display.say("label-with-unit", label=label, unit=unit) if unit else label


def help_of(field: Field, display: Display) -> str:
    """What a field means, in a sentence or a few."""
    message = f"{field.message}.help"
    return display.say(message)


def choice_word(key: str, value: str, display: Display) -> str:
    """A choice in plain words."""
    return display.say(CHOICES[key], choice=value) if key in CHOICES else value


def habit_text(key: str, option: str, display: Display) -> str:
    """What a driver does, and how."""
    return display.say(HABITS[key], option=option)


def in_percent(field: Field) -> bool:
    """Whether a share is entered in percent."""
    return field.key.endswith(("_share", "_efficiency")) or field.key in CHARGES


def shown_unit(field: Field, display: Display) -> str:
    """The unit in which a field is entered; empty for a plain figure."""
    unit = "%" if in_percent(field) and not display.by_key else display.unit(field.unit)
    return "" if unit == "1" else unit


@overload
def shown_value(field: Field, value: float, display: Display) -> float: ...


@overload
def shown_value(field: Field, value: float | None, display: Display) -> float | None: ...


@overload
def shown_value(field: Field, value: Entry, display: Display) -> Entry: ...


def shown_value(field: Field, value: Entry, display: Display) -> Entry:
    """A held value as its widget shows it."""
    if value is None or isinstance(value, str) or field.kind not in ("number", "count"):
        return value
    if field.kind == "count":
        return int(value)
    percent = in_percent(field) and not display.by_key
    return tidy(100 * value if percent else display.value(value, field.unit), 4 if display.us else 6)


def entry_value(field: Field, value: float | None, display: Display) -> float | None:
    """A held number as its entry shows it [in the unit shown], round where it was not entered in that unit."""
    if value is None or field.kind != "number" or in_percent(field):
        return shown_value(field, value, display)
    return display.entry(value, field.unit)


def entered(field: Field, value: float, display: Display) -> Quantity:
    """A figure as it is entered: in percent where it is a share, with the digits that its widget shows."""
    if in_percent(field):
        return Quantity(100 * value, "%", 4 if display.us else 6, trimmed=True)
    return Quantity(value, "" if field.unit == "1" else field.unit, 6, trimmed=True)


@overload
def held_value(field: Field, shown: float, display: Display) -> float: ...


@overload
def held_value(field: Field, shown: Entry, display: Display) -> Entry: ...


def held_value(field: Field, shown: Entry, display: Display) -> Entry:
    """What to hold for an entry, not yet checked."""
    if shown is None or isinstance(shown, str) or field.kind != "number":
        return shown
    return tidy(shown / 100 if in_percent(field) else display.held(shown, field.unit), ENTRY_DIGITS)


def tidy(value: float, digits: int) -> float:
    """A figure in the unit given, without more digits than it deserves [as `value`]."""
    return float(f"{value:.{digits}g}")
