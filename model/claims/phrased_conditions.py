"""Conditions as `model.claims.prose.condition` says them, found again in a sentence."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache

from model.claims.amounts import held
from model.claims.inputs import INPUTS
from model.claims.prose import CONDITION_NOUNS, condition, metric, value_words
from model.describe.fields import Field
from model.describe.typed_numbers import readings

NUMBER = r"[-−]?\d[\d,]*(?:\.\d+)?"


@dataclass(frozen=True)
class Condition:
    """An input, what it is set to, and the words that say so."""

    key: str
    setting: str
    words: str


def _choices(field: Field) -> dict[str, str]:
    """The settings of an input that is no number, by the words that it has within its condition."""
    if field.kind == "yes_no":
        return {value_words(field, said == "yes"): said for said in ("yes", "no")}
    return {value_words(field, choice): choice for choice in field.choices}


@cache
def _pattern(key: str) -> re.Pattern[str]:
    field = INPUTS[key]
    if field.kind == "yes_no":
        said = {setting: condition(field, words) for words, setting in _choices(field).items()}
        return re.compile("|".join(f"(?P<{setting}>{re.escape(words)})" for setting, words in said.items()))
    if field.kind in ("number", "count"):
        _, unit = metric(field, 1.0)
        unit = "times" if key == "motor_factor" else unit
        one = rf"{NUMBER}(?: to {NUMBER}|(?:, {NUMBER})*(?: or {NUMBER})?)"
        values = f"{one} ?{re.escape(unit)}" if unit else one
    else:
        words = "|".join(map(re.escape, sorted(_choices(field), key=len, reverse=True)))
        values = rf"(?:{words})(?:, (?:{words}))*(?: or (?:{words}))?"
    around = re.escape(condition(field, "{}") if key in CONDITION_NOUNS or field.kind != "yes_no" else "{}")
    before, _, after = around.partition(re.escape("{}"))
    return re.compile(rf"(?<!\w){before}(?P<values>{values}){after}(?![\w.])")


def _setting(key: str, met: re.Match[str]) -> str:
    field = INPUTS[key]
    if field.kind == "yes_no":
        return str(met.lastgroup)
    if field.kind not in ("number", "count"):
        return ",".join(_choices(field)[words] for words in re.split(r", | or ", met["values"]))
    scale = metric(field, 1.0)[0]
    numbers = [held(readings(one)[-1] / scale) for one in re.findall(NUMBER, met["values"])]
    return (".." if " to " in met["values"] else ",").join(numbers)


def conditions_in(sentence: str, keys: Iterable[str]) -> tuple[list[Condition], str]:
    """The conditions of some inputs that a sentence holds, and the sentence without them."""
    found = []
    for key in keys:
        if met := _pattern(key).search(sentence):
            found.append(Condition(key, _setting(key, met), met[0]))
            sentence = sentence[: met.start()] + " " * len(met[0]) + sentence[met.end() :]
    return found, sentence
