"""Inputs of claims in words: their values, what they run over, and conditions as a newspaper says them."""

from __future__ import annotations

from collections.abc import Sequence

from model.claims.inputs import Extent
from model.describe.fields import Entry, Field
from model.describe.figures import Several
from model.describe.parameters import class_labels
from model.words.claim_numbers import with_unit
from model.words.entries import choice_word, name_of, shown_unit, shown_value
from model.words.quantities import Display, inside, written

VALUES = {
    "cycle": "claim-value-cycle", "heat_source": "claim-value-heat-source", "surface": "claim-value-surface",
    "counted": "claim-value-counted", "tyres_warm": "claim-value-tyres-warm",
    "looks_ahead": "claim-value-looks-ahead", "steady_foot": "claim-value-steady-foot",
}  # fmt: skip
"""The message with a choice as it stands in a condition; others are said as at their entries."""
WHETHER = ("cabin", "preconditioned", "time_made_up", "comes_to_rest")
"""What is so or not and has a noun for either."""
NOUNS = (
    "car", "hybrid", "cycle", "brake_pedal", "heat_source", "tyres_warm", "surface", "counted", "mass_kg",
    "motor_peak_kw", "usable_kwh", "motor_top_speed_kmh", "ambient_c", "soc_start", "payload_kg", "accessory_w",
    "wind_kmh", "lift_off_mps2", "gentle_mps2", "strong_mps2", "slowing_mps2", "regen_cap_mps2", "speed_kmh",
    "grade_pct", "height_m", "slower_by_kmh", "extra_mass_pct", "motor_factor", "delay_ms", "trailer_kg",
    "denominator",
)  # fmt: skip
"""What else has a noun as a condition, in ``claim-condition``."""
WHOLE_UNITS = ("°C", "°F", "km/h", "mph", "W", "kg", "lb", "ms")


def value_words(field: Field, value: Entry, display: Display, unit: bool = True, digits: int = 3) -> str:
    """One value of an input."""
    if field.key in ("car", "hybrid"):
        return inside(class_labels()[str(value)])
    if field.key == "denominator":
        return display.say("phrase-said", phrase=str(value))
    if field.kind == "yes_no":
        return display.say("claim-value-whether", yes=bool(value))
    if field.kind == "choice":
        name = VALUES.get(field.key)
        return display.say(name, choice=str(value)) if name else choice_word(field.key, str(value), display)
    assert isinstance(value, int | float)
    number, name = shown_value(field, value, display), shown_unit(field, display)
    name = display.say("unit-times") if field.key == "motor_factor" else name
    whole = name in WHOLE_UNITS or (name == "%" and abs(number) >= 2)
    number = round(number) if whole else float(f"{number:.{digits}g}")
    return with_unit(written(f"{number + 0.0:,g}", display.language), name if unit else "", display)


def _row(field: Field, values: Sequence[Entry], display: Display, unit: bool = True) -> str:
    # the unit stands with the last
    end = len(values) - 1
    words = (value_words(field, value, display, unit and place == end) for place, value in enumerate(values))
    return display.figure(Several(tuple(words), "or"))


def part_words(field: Field, part: Extent, display: Display, unit: bool = True) -> str:
    """What an input runs over: a stretch, some values, or all but some."""
    if part.stretch:
        least, most = (value_words(field, end, display, unit, digits=2) for end in part.values)
        low = value_words(field, part.values[0], display, False, digits=2)
        return most if least == most else display.say("span", low=low, high=most)
    row = _row(field, part.values, display, unit)
    return display.say("claim-any-but", left=row) if part.all_but else row


def noun(key: str, display: Display) -> str:
    """What an input is, as it stands in a sentence: “the outside temperature”, “losses that no maker publishes”."""
    return display.say("claim-input", input=key)


def condition(field: Field, part: Extent, display: Display) -> str:
    """A condition as a noun: “a blended pedal”, “20 °C outside”, “any drive but US06”."""
    if part.all_but:
        of = field.key if field.key in ("car", "cycle", "surface") else "other"
        left = _row(field, part.values, display)
        return display.say("claim-condition-any-but", of=of, name=name_of(field, display), left=left)
    if field.key in WHETHER and len(part.values) == 1:
        return display.say("claim-condition-whether", input=field.key, yes=bool(part.values[0]))
    return with_value(field, part_words(field, part, display), display)


def with_value(field: Field, value: str, display: Display) -> str:
    """The condition with a value that comes ready."""
    if field.key in NOUNS:
        return display.say("claim-condition", input=field.key, value=value)
    if field.kind in ("number", "count"):
        return display.say("claim-condition-at", name=name_of(field, display), value=value)
    return display.say("claim-condition-is", name=name_of(field, display), value=value)
