"""What can be said about a claim: its inputs in words, and as entries."""

from __future__ import annotations

import math
import re
from collections.abc import Mapping, Sequence

from model.claims.inputs import INPUTS, Extent, Open, narrowed
from model.claims.questions import Question
from model.claims.regions import Bins
from model.describe.fields import Entry, Field, InputError
from model.describe.figures import Several
from model.describe.typed_numbers import number_typed
from model.words.amounts import held
from model.words.claim_inputs import condition, part_words, value_words
from model.words.entries import held_value, label_of, shown_unit, shown_value, tidy
from model.words.quantities import Display, written
from model.words.quantities import entry_text as written_entry
from model.words.refusals import refused_entry

QUOTE = "“{}”"
SPAN = re.compile(r"\s*(?:\.\.|–|to)\s*")


def label(key: str, display: Display) -> str:
    """What an input is called."""
    return label_of(INPUTS[key], display)


def value_text(key: str, value: Entry, display: Display) -> str:
    """One value of an input as it is read."""
    if key == "denominator":
        return display.say("phrase", phrase=str(value))
    return value_words(INPUTS[key], value, display)


def open_text(key: str, over: Open, display: Display) -> str:
    """What an input runs over, in few words."""
    if key == "denominator":
        return display.figure(Several(tuple(value_text(key, value, display) for value in over.values), "or"))
    part = over.part
    if len(over.values) > 2 and not over.band:
        if INPUTS[key].kind != "number":
            return display.say("claim-any-of", values=len(over.values))
        part = Extent((min(over.numbers), max(over.numbers)), stretch=True)
    return part_words(INPUTS[key], part, display)


def step_text(bins: Bins, step: int, display: Display) -> str:
    """One step of an input, for a picture that has the unit elsewhere."""
    field, part = INPUTS[bins.key], bins.steps[step]
    if field.kind == "yes_no":
        return condition(field, part, display)
    # what has no unit but in words keeps it
    return part_words(field, part, display, unit=not shown_unit(field, display))


def ends_text(key: str, value: Entry, display: Display) -> str:
    """What is set at one end of a swing."""
    if INPUTS[key].kind == "number":
        return display.say("claim-swing-at", value=value_text(key, value, display))
    return display.say("claim-swing-with", condition=condition(INPUTS[key], Extent((value,)), display))


def row_text(key: str, asked: Question, display: Display) -> str:
    """The line of an input: what was said, or that nothing was and what it runs over."""
    said = key in asked.said or key in asked.claim.scope
    value = open_text(key, asked.declared[key], display)
    return display.say("claim-row", name=label(key, display), value=value, said=said)


def entry_label(key: str, display: Display) -> str:
    """The label of an entry: what it is, and its unit."""
    return with_unit(label(key, display), key, display)


def with_unit(name: str, key: str, display: Display) -> str:
    """A label with the unit of an input."""
    unit = shown_unit(INPUTS[key], display)
    return display.say("label-with-unit", label=name, unit=unit) if unit else name


def entry_help(key: str, asked: Question, display: Display) -> str:
    """What may be entered, and what an empty entry means."""
    is_number = INPUTS[key].kind == "number"
    return display.say("claim-entry-help", number=is_number, fixed=key in asked.claim.scope)


def entry_text(key: str, setting: str, display: Display) -> str:
    """A number or a span as it was said, for its entry."""
    parts = [shown_value(INPUTS[key], float(part), display) for part in setting.split("..")]
    if INPUTS[key].unit == "°C":
        parts = [round(part, 1) + 0.0 for part in parts]
    return said_numbers([written_entry(tidy(part, 5), display.language) for part in parts], display)


def said_numbers(numbers: Sequence[str], display: Display) -> str:
    """One number, or the two of a span."""
    return numbers[0] if len(numbers) == 1 else display.say("span", low=numbers[0], high=numbers[-1])


def said_text(key: str, setting: str, display: Display) -> str:
    """A condition as it was said, as a noun."""
    said = narrowed(INPUTS[key], Open(()), setting)
    return condition(INPUTS[key], said.part, display)


def span_text(setting: str, unit: str, display: Display) -> str:
    """A claim's number or two as they are read in the reader's unit; as they are where a link brings something else."""
    parts = setting.split("..")
    try:
        shown = [display.value(float(part), unit) for part in parts]
    except ValueError:
        return setting
    if display.unit(unit) == unit:
        return said_numbers([written(part, display.language) for part in parts], display)
    return said_numbers([written_entry(tidy(number, 4), display.language) for number in shown], display)


def field_of_number(asked: Question, display: Display) -> str:
    """The number as published, for its entry."""
    return said_numbers([written_entry(number, display.language) for number in asked.number], display)


def numbers_in(typed: str) -> list[float]:
    """One number, or the two of a span such as “10 to 20”; `ValueError` where it is neither."""
    numbers = [number_typed(part) for part in SPAN.split(typed.strip())]
    if len(numbers) > 2 or not all(map(math.isfinite, numbers)):
        raise ValueError(typed)
    return numbers


def number_setting(typed: str, unit: str, display: Display) -> str:
    """What was typed for the claim's number, as a setting; `ValueError` where it is neither a number nor a span."""
    if display.unit(unit) == unit:
        return "..".join(repr(number).removesuffix(".0") for number in numbers_in(typed))
    return "..".join(held(display.held(number, unit)) for number in numbers_in(typed))


def setting_of(key: str, typed: str, display: Display) -> str:
    """What was typed for a number, as a setting; `InputError` in the visitor's words and units."""
    field = INPUTS[key]
    try:
        shown = numbers_in(typed)
    except ValueError:
        raise InputError("entry-number-unreadable", field=label(key, display), given=typed) from None
    if shown != sorted(shown):
        raise InputError("range-runs-downwards", field=label(key, display), given=typed)
    parts = []
    for number in shown:
        try:
            parts.append(field.text(field.parse(held_value(field, number, display))))
        except InputError:
            raise InputError("as-told", sentence=refused_entry(field, number, display)) from None
    return "..".join(parts)


def usual_of(field: Field) -> str:
    """A first setting for an input that is named beyond those shown: an ordinary one."""
    if field.kind == "choice":
        return field.choices[0]
    if field.default is not None:
        return field.text(field.default)
    if field.kind == "yes_no":
        return "no"
    low, high = field.usual
    return f"{low:g}..{high:g}"


def listed_keys(asked: Question, addable: Mapping[str, Field], display: Display) -> list[str]:
    """Inputs that can be named beyond those shown, by label."""
    left = [key for key, field in addable.items() if key not in asked.declared and field.kind != "text"]
    return sorted(left, key=lambda key: label(key, display))
