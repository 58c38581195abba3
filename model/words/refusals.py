"""What cannot be used, in a reader's words: labels in place of keys, figures in the reader's units."""

from __future__ import annotations

import math
import sys
from typing import Any

from model.describe.fields import Entry, Field, FieldError, InputError, RefusalPart, number_in
from model.describe.figures import Quantity, Several
from model.describe.typed_numbers import TwoReadings, number_typed
from model.words.entries import choice_word, held_value, label_of, name_of, shown_unit, shown_value
from model.words.quantities import Display, Value, capital, entry_text

FALLING = "grade_pct", "climb_m", "hill_km"
"""What somebody may enter below zero for a road that falls."""
LONGEST = 40
"""Characters of what was given that are repeated, at most."""
COMMAND_LINE = Display(by_key=True)
"""Whoever asks from the command line reads keys and the units of files."""


def refusal_words(refused: InputError, display: Display) -> str:
    """A refusal in one sentence, or two."""
    if isinstance(refused, FieldError):
        return _of_field(refused, display)
    said = {name: _part(part, display) for name, part in refused.parts.items()}
    sentence = display.say(refused.reason, **said)
    # a key stays as it is written
    sentence = sentence if display.by_key else capital(sentence)
    return f"{sentence} {display.say(refused.then)}" if refused.then else sentence


def refused_entry(field: Field, shown: Entry, display: Display) -> str:
    """What is said where an entry, in the unit shown, cannot be used."""
    refused = FieldError(field, held_value(field, shown, display) if isinstance(shown, int | float) else shown)
    if isinstance(shown, str):
        refused = _typed(field, shown, display)
    number = number_in(refused.given)
    falls = field.key in FALLING and number is not None and number < 0
    sentences = [_of_field(refused, display), *([display.say("field-falls")] if falls else [])]
    return " ".join([*sentences, display.say("field-keeps-last")])


def _part(part: RefusalPart, display: Display) -> Value:
    if isinstance(part, Field):
        return _with_key(part, display) if display.by_key else name_of(part, display)
    if isinstance(part, InputError):
        return refusal_words(part, display)
    return f"{part[:LONGEST]}…" if isinstance(part, str) and len(part) > 3 * LONGEST else part


def _with_key(field: Field, display: Display) -> str:
    return f"{field.key} ({name_of(field, display)})"


def _typed(field: Field, text: str, display: Display) -> FieldError:
    """What was typed in the unit shown, held as a number where it is one."""
    try:
        number = number_typed(text, lambda shown: field.allows(held_value(field, shown, display)))
    except TwoReadings as both:
        return FieldError(field, text, readings=both.readings)
    except ValueError:
        return FieldError(field, text)
    return FieldError(field, held_value(field, number, display))


def _of_field(refused: FieldError, display: Display) -> str:
    field = refused.field
    where = _with_key(field, display) if display.by_key else label_of(field, display)
    if refused.leg is not None:
        where = display.say("field-of-leg", field=where, leg=refused.leg)
    if refused.readings:
        first, second = (Quantity(number, "", 15, trimmed=True) for number in refused.readings[:2])
        given = str(refused.given)[:LONGEST]
        sentences = [display.say("field-two-readings", where=where, given=given, first=first, second=second)]
    else:
        given, allowed = _given(field, refused.given, display), _allowed(field, display)
        sentences = [display.say("field-refused", where=where, given=given, allowed=allowed)]
    if refused.put is not None:
        sentences.append(display.say("field-was-set", put=_given(field, refused.put, display)))
    if refused.left:
        sentences.append(display.say("field-was-left"))
    return " ".join(sentences)


def _given(field: Field, given: Any, display: Display) -> str:
    """What was given, in the unit shown where it is a figure."""
    if given is None or given == "":
        return display.say("field-given-nothing")
    number = number_in(given) if field.kind in ("number", "count") else None
    # a whole number may be longer than any that can be written in few digits
    if number is None or (isinstance(number, int) and abs(number) > sys.float_info.max):
        return display.say("field-given-words", given=str(given)[:LONGEST])
    if math.isinf(display.value(number, field.unit)) or (field.kind == "count" and number != round(number)):
        return entry_text(number, display.language).replace("inf", "∞")
    return display.figure(_shown(field, number, display))


def _shown(field: Field, number: float, display: Display, unit: bool = True) -> Quantity:
    # ready in the unit shown, which is left as it is
    return Quantity(shown_value(field, number, display), shown_unit(field, display) if unit else "", 6, trimmed=True)


def _allowed(field: Field, display: Display) -> str:
    """What a field takes, in the unit shown."""
    if field.kind == "choice":
        words = tuple(choice_word(field.key, option, display) for option in field.choices)
        return display.figure(Several(field.choices if display.by_key else words, "or"))
    if field.kind == "yes_no":
        return display.say("field-takes-yes-or-no")
    if field.kind == "text":
        return display.say("field-takes-text")
    # of miles per gallon the lower bound is the greater number
    low, high = sorted((field.minimum, field.maximum), key=lambda end: float(shown_value(field, end, display)))
    shown = _shown(field, low, display, unit=False), _shown(field, high, display)
    ends = {name: display.figure(end) for name, end in zip(("low", "high"), shown, strict=True)}
    return display.say("field-takes-numbers", whole=field.kind == "count", **ends)
