"""What can be said about a claim: its inputs in words, and as entries."""

from __future__ import annotations

import math
import re
from collections.abc import Mapping, Sequence
from typing import Any

from model.claim_draws import DRIVES, INPUTS, Open
from model.claim_draws import words as spoken
from model.claim_regions import Bins
from model.claims import Question
from model.fields import Field, InputError
from model.parameters import class_labels
from pages.parts.controls import refusal_of
from pages.parts.display import MINUS, Display, held_value, shown_unit, shown_value, tidy
from pages.parts.wording import choice_word

HOLD = "\N{NO-BREAK SPACE}"
UNITS = re.compile(r"(?<=\d) (?=(?:%|°C|°F|km|mi|mph|m/s²|m|W|Wh|MW|kg|lb|times|points)(?:\W|$))")
QUOTE = "“{}”"
LABELS = {
    "speed_kmh": "Speed", "denominator": "A share of what", "grade_pct": "Slope", "slower_by_kmh": "Speed lost",
    "motor_factor": "Power of the bigger motor", "counted": "What is counted",
}  # fmt: skip
"""In place of a field's label, where that speaks of a leg."""
SHORT_CYCLES = {
    "udds": "UDDS city", "hwfet": "HWFET highway", "us06": "US06", "nycc": "NYCC", "nedc": "NEDC",
    "nedc-urban": "NEDC urban", "town": "flat town", "suburb-hill": "suburb over a hill",
    "hill": "hill up and down",
}  # fmt: skip
CHOICES = {"counted": {"energy": "energy", "slow_downs": "slow-downs"}}
"""Choices in other words than elsewhere."""
YES_NO = {
    "cabin": ("heating and cooling on", "heating and cooling off"),
    "preconditioned": ("warmed up before leaving", "not warmed up before leaving"),
    "time_made_up": ("lost time made up", "lost time not made up"),
}
SPAN = re.compile(r"\s*(?:\.\.|–|to)\s*")
WHOLE_UNITS = ("°C", "°F", "km/h", "mph", "W", "kg", "lb", "ms")
SHORT_PHRASES = {
    "recovered": "recovered: of what the battery gave",
    "of_braking": "of the braking energy at the wheels, into the battery",
    "of_climb": "of what the climb took, back on the descent",
    "range_gain": "more range than on friction brakes only",
    "electric_braking": "of the braking energy, taken by the motor",
    "range_lost": "of the range, lost without regeneration (energy saved)",
    "display_km": "more on the range display",
}


def capital(text: str) -> str:
    """The text with a capital at its start."""
    return text[:1].upper() + text[1:]


def lowered(text: str) -> str:
    """The text without a capital at its start."""
    return text[:1].lower() + text[1:]


def held_together(text: str) -> str:
    """The text with minus signs, and with every unit on one line with its number."""
    return UNITS.sub(HOLD, re.sub(r"(?<!\w)-(?=\d)", MINUS, text))


def label(key: str) -> str:
    """What an input is called."""
    return LABELS.get(key, INPUTS[key].label)


def listed(words: Sequence[str], last: str = "and") -> str:
    """Words in a row."""
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} {last} {words[-1]}"


def short_cycle(name: str) -> str:
    """A cycle or drive in few words."""
    return SHORT_CYCLES.get(name) or DRIVES[name].replace(" class 3b", "").replace(",", "")


def value_text(key: str, value: Any, display: Display, unit: bool = True, digits: int = 3) -> str:
    """One value of an input as it is read."""
    field = INPUTS[key]
    if key in ("car", "hybrid"):
        return class_labels()[value][0].lower() + class_labels()[value][1:]
    if key == "cycle":
        return short_cycle(value)
    if key == "denominator":
        return SHORT_PHRASES[value]
    if field.kind == "yes_no":
        return "yes" if value else "no"
    if field.kind == "choice":
        return CHOICES.get(key, {}).get(value) or choice_word(key, value)
    shown, name = float(shown_value(field, value, display)), shown_unit(field, display)
    name = "times" if key == "motor_factor" else name
    number = round(shown) if name in WHOLE_UNITS or (name == "%" and abs(shown) >= 2) else tidy(shown, digits)
    return f"{number:,g}{f' {name}' if unit and name else ''}".replace("-", MINUS)


def span_text(key: str, low: float, high: float, display: Display) -> str:
    """A stretch of an input's range."""
    least, most = (value_text(key, end, display, digits=2) for end in (low, high))
    return most if least == most else f"{value_text(key, low, display, unit=False, digits=2)} to {most}"


def open_text(key: str, this: Open, display: Display) -> str:
    """What an input runs over, in few words."""
    if this.band:
        return span_text(key, this.values[0], this.values[2], display)
    if len(this.values) == 1:
        return value_text(key, this.values[0], display)
    if INPUTS[key].kind == "number":
        return span_text(key, min(this.values), max(this.values), display)
    if len(this.values) == 2:
        return " or ".join(value_text(key, value, display) for value in this.values)
    return f"any of {len(this.values)}"


def condition_text(key: str, words: str) -> str:
    """One condition on its own, such as “a blended brake pedal”."""
    if key in YES_NO and words in ("yes", "no"):
        return YES_NO[key][words == "no"]
    if key == "brake_pedal" and " " not in words:
        return f"a {words} brake pedal"
    return words if key == "denominator" else f"{lowered(label(key))}: {words}"


def part_text(bins: Bins, steps: Sequence[int], display: Display) -> str:
    """A named part of an input."""
    names = [bins.names[step] for step in sorted(steps)]
    if isinstance(names[0], tuple):
        return span_text(bins.key, names[0][0], names[-1][1], display)
    left = [name for name in bins.names if name not in names]
    if len(bins.names) > 3 and 0 < len(left) < len(names):
        return "any but " + listed([value_text(bins.key, name, display) for name in left])
    last = len(names) - 1
    return listed([value_text(bins.key, name, display, place == last) for place, name in enumerate(names)], "or")


def step_text(bins: Bins, step: int, display: Display) -> str:
    """One step of an input, for a picture that has the unit elsewhere."""
    unit = shown_unit(INPUTS[bins.key], display)
    text = part_text(bins, [step], display).removesuffix(f" {unit}")
    return condition_text(bins.key, text) if bins.key in YES_NO else text


def ends_text(key: str, words: str, display: Display) -> str:
    """What is set at one end of a swing, in the visitor's units."""
    field = INPUTS[key]
    unit = f" {field.unit}" if field.unit not in ("", "1") else ""
    if field.kind == "number":
        return f"at {value_text(key, float(words.removesuffix(unit)), display)}"
    if key in YES_NO:
        return f"with {condition_text(key, words)}"
    values = list(field.choices) if field.kind == "choice" else [True, False]
    value = next(value for value in values if spoken(key, [value]) == words)
    return f"with {value_text(key, value, display)}"


def said_conditions(asked: Question, display: Display) -> list[str]:
    """What was said beyond the claim's own words."""
    return [condition_text(key, open_text(key, this, display)) for key, this in asked.said.items()]


def row_text(key: str, asked: Question, display: Display) -> str:
    """The line of an input: what was said, or that nothing was and what it runs over."""
    this = asked.declared[key]
    text = open_text(key, this, display)
    if key in asked.said or key in asked.claim.scope:
        return f"{label(key)}: **{text}**"
    return f"{label(key)}: :gray[not said ({text})]"


def entry_label(key: str, display: Display) -> str:
    """The label of an entry: what it is, its unit, and that a range will do."""
    unit = shown_unit(INPUTS[key], display)
    return f"{label(key)}{f', {unit}' if unit else ''}"


def entry_help(key: str, asked: Question) -> str:
    """What an empty entry means."""
    number = "One number, or a range such as 10 to 20. " if INPUTS[key].kind == "number" else "One or more. "
    if key in asked.claim.scope:
        return f"{number}Left empty, it is as the claim's own words have it."
    return f"{number}Left empty, it counts as not said."


def entry_text(key: str, setting: str, display: Display) -> str:
    """A number or a span as it was said, for its entry."""
    parts = [shown_value(INPUTS[key], float(part), display) for part in setting.split("..")]
    if INPUTS[key].unit == "°C":
        parts = [round(part, 1) + 0.0 for part in parts]
    return " to ".join(f"{tidy(part, 5):g}" for part in parts).replace("-", MINUS)


def field_of_number(asked: Question) -> str:
    """The number as published, for its entry."""
    return " to ".join(f"{number:.6g}" for number in asked.number).replace("-", MINUS)


def numbers_in(typed: str) -> list[float]:
    """One number, or the two of a span such as “10 to 20”; `ValueError` where it is neither."""
    parts = SPAN.split(typed.strip().replace(MINUS, "-").replace(",", "."))
    numbers = [float(part) for part in parts]
    if len(numbers) > 2 or not all(map(math.isfinite, numbers)):
        raise ValueError(typed)
    return numbers


def number_setting(typed: str) -> str:
    """What was typed for the claim's number, as a setting; `ValueError` where it is neither a number nor a span."""
    return "..".join(repr(number).removesuffix(".0") for number in numbers_in(typed))


def setting_of(key: str, typed: str, display: Display) -> str:
    """What was typed for a number, as a setting; `InputError` in the visitor's words and units."""
    field = INPUTS[key]
    try:
        shown = numbers_in(typed)
    except ValueError:
        sentence = f"{label(key)}: {QUOTE.format(typed)} is neither a number nor a range such as 10 to 20."
        raise InputError(sentence) from None
    if shown != sorted(shown):
        raise InputError(f"{label(key)}: {QUOTE.format(typed)} runs downwards; give the lower number first.")
    parts = []
    for number in shown:
        try:
            parts.append(field.text(field.parse(held_value(field, number, display))))
        except InputError:
            raise InputError(refusal_of(field, number, display)) from None
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


def listed_keys(asked: Question, addable: Mapping[str, Field]) -> list[str]:
    """Inputs that can be named beyond those shown, by label."""
    left = [key for key, field in addable.items() if key not in asked.declared and field.kind != "text"]
    return sorted(left, key=label)


def plain_refusal(refusal: str) -> str:
    """A refusal of the model as a reader's sentence: labels in place of keys."""
    for key, field in INPUTS.items():
        refusal = refusal.replace(f"{key} ({field.label.lower()})", label(key))
    return capital(refusal)
