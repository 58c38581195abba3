"""Conditions as `model.words.claim_inputs.condition` says them, found again in a sentence."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache

from model.claims.inputs import INPUTS, Extent
from model.describe.fields import Field
from model.describe.typed_numbers import readings
from model.words.amounts import held
from model.words.claim_inputs import condition, value_words, with_value
from model.words.entries import shown_unit, shown_value
from model.words.quantities import Display

NUMBER = r"[-−]?\d[\d,]*(?:\.\d+)?"


@dataclass(frozen=True)
class Condition:
    """An input, what it is set to, and the words that say so."""

    key: str
    setting: str
    words: str


def _choices(field: Field, display: Display) -> dict[str, str]:
    """The choices of an input, by the words that they have within its condition."""
    return {value_words(field, choice, display): choice for choice in field.choices}


@cache
def _pattern(key: str, display: Display) -> re.Pattern[str]:
    field = INPUTS[key]
    if field.kind == "yes_no":
        said = {setting: condition(field, Extent((setting == "yes",)), display) for setting in ("yes", "no")}
        return re.compile("|".join(f"(?P<{setting}>{re.escape(words)})" for setting, words in said.items()))
    if field.kind in ("number", "count"):
        unit = display.say("unit-times") if key == "motor_factor" else shown_unit(field, display)
        numbers = rf"{NUMBER}(?: to {NUMBER}|(?:, {NUMBER})*(?: or {NUMBER})?)"
        values = f"{numbers} ?{re.escape(unit)}" if unit else numbers
    else:
        words = "|".join(map(re.escape, sorted(_choices(field, display), key=len, reverse=True)))
        values = rf"(?:{words})(?:, (?:{words}))*(?: or (?:{words}))?"
    around = re.escape(with_value(field, "{}", display))
    before, _, after = around.partition(re.escape("{}"))
    return re.compile(rf"(?<!\w){before}(?P<values>{values}){after}(?![\w.])")


def _setting(key: str, met: re.Match[str], display: Display) -> str:
    field = INPUTS[key]
    if field.kind == "yes_no":
        return str(met.lastgroup)
    if field.kind not in ("number", "count"):
        return ",".join(_choices(field, display)[words] for words in re.split(r", | or ", met["values"]))
    scale = shown_value(field, 1.0, display)
    numbers = [held(readings(number)[-1] / scale) for number in re.findall(NUMBER, met["values"])]
    return (".." if " to " in met["values"] else ",").join(numbers)


def conditions_in(sentence: str, keys: Iterable[str], language: str) -> tuple[list[Condition], str]:
    """The conditions of some inputs that a sentence holds, and the sentence without them."""
    found = []
    display = Display(language=language)
    for key in keys:
        if met := _pattern(key, display).search(sentence):
            found.append(Condition(key, _setting(key, met, display), met[0]))
            sentence = sentence[: met.start()] + " " * len(met[0]) + sentence[met.end() :]
    return found, sentence
