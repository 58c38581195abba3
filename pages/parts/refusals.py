"""What cannot be used, in a reader's words: labels in place of keys, figures in the units of the page."""

from __future__ import annotations

import math
from typing import Any

from model.describe.fields import Field, FieldError, InputError, Quantity, number_in
from model.describe.typed_numbers import TwoReadings, number_typed
from model.words.quantities import Display, entry_text
from pages.parts.display import held_value, shown_unit, shown_value, tidy
from pages.parts.wording import choice_word

FALLING = "grade_pct", "climb_m", "hill_km"
"""What somebody may enter below zero for a road that falls."""
LONGEST = 40
"""Characters of what was typed that are repeated, at most."""


def refusal_words(refused: InputError, display: Display) -> str:
    """A refusal of the model in one sentence, or two."""
    if isinstance(refused, FieldError):
        return _field_words(refused, display)

    def say(part: Any) -> str:
        if isinstance(part, Field):
            return part.label.lower()
        if isinstance(part, Quantity):
            return f"{entry_text(tidy(display.value(part.value, part.unit), part.digits))} {display.unit(part.unit)}"
        return str(part)

    sentence = refused.told(say)
    return sentence[:1].upper() + sentence[1:]


def refused_entry(field: Field, shown: Any, display: Display) -> str:
    """What is said where an entry, in the unit shown, cannot be used."""
    refused = FieldError(field, held_value(field, shown, display) if isinstance(shown, int | float) else shown)
    if isinstance(shown, str):
        refused = _typed(field, shown, display)
    number = number_in(refused.given)
    falls = field.key in FALLING and number is not None and number < 0
    down = " For a road that falls, choose Down." if falls else ""
    return f"{_field_words(refused, display)}{down} The answer keeps the last entry."


def _typed(field: Field, text: str, display: Display) -> FieldError:
    """What was typed in the unit shown, held as a number where it is one."""
    try:
        number = number_typed(text, lambda shown: field.allows(held_value(field, shown, display)))
    except TwoReadings as both:
        return FieldError(field, text, readings=str(both))
    except ValueError:
        return FieldError(field, text)
    return FieldError(field, held_value(field, number, display))


def _field_words(refused: FieldError, display: Display) -> str:
    field = refused.field
    where = field.label if refused.leg is None else f"{field.label}, leg {refused.leg}"
    if refused.readings:
        read = f"can be read as {refused.readings}; leave out the comma, or type a point"
        sentence = f"{where}: “{refused.given}” {read}."
    else:
        given = _given_text(field, refused.given, display)
        sentence = f"{where}: {given} cannot be used, {_allowed(field, display)} can."
    if refused.put is not None:
        sentence += f" It was set to {_given_text(field, refused.put, display)}."
    return f"{sentence} It was left as usual." if refused.left else sentence


def _given_text(field: Field, given: Any, display: Display) -> str:
    """What was given, in the unit shown where it is a figure."""
    if given is None or given == "":
        return "an empty entry"
    number = number_in(given) if field.kind in ("number", "count") else None
    if number is None:
        return f"“{str(given)[:LONGEST]}”"
    if math.isinf(number) or (field.kind == "count" and number != round(number)):
        return entry_text(number).replace("inf", "∞")
    return f"{entry_text(shown_value(field, number, display))} {shown_unit(field, display)}".rstrip()


def _allowed(field: Field, display: Display) -> str:
    """What its field takes, in the unit shown."""
    if field.kind == "choice":
        *most, last = (choice_word(field.key, option) for option in field.choices)
        return f"{', '.join(most)} or {last}"
    if field.kind == "yes_no":
        return "yes or no"
    if field.kind == "text":
        return "a short text"
    low, high = (entry_text(shown_value(field, end, display)) for end in (field.minimum, field.maximum))
    whole = "whole numbers from " if field.kind == "count" else ""
    return f"{whole}{low} to {high} {shown_unit(field, display)}".rstrip()
