"""A sentence read by plain rules: which number it claims of what, where and when; what was not found is said.

The rules are patterns of a language's words, in ``assets/words/<language>/claim_reading.csv``. They offer a reading to
be corrected, and guess nothing: what no pattern finds is left to whoever asks.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache, lru_cache

from model.claims.inputs import INPUTS, Open, narrowed
from model.claims.specification import (
    AGAINST,
    COMPARED_AS,
    FLAT,
    PLACES,
    Counted,
    counted,
    numbers_of,
    places,
    plain_words,
    sayable_places,
)
from model.describe.fields import InputError
from model.describe.tables import rows
from model.describe.typed_numbers import readings

NUMBER = r"[-−–]?\d[\d.,]*\d|[-−–]?\d"
SPAN = re.compile(
    rf"(?P<low>{NUMBER})(?: ?(?:to|and|–|-|\.\.) ?(?P<high>{NUMBER}))? ?"
    rf"(?P<unit>%|per ?cent|percent|°C|km/h|kWh/100 km|kg|km|m/s²|times|times as much)(?!\w)",
    re.IGNORECASE,
)
"""A number, or two, with a unit."""
UNITS = {"percent": "%", "per cent": "%", "times as much": "times"}
CONDITIONS = {"°C": "ambient_c", "km/h": "speed_kmh", "kg": "trailer_kg"}
"""Units in which conditions are given rather than what is claimed, and the condition."""
ONE_OF = ("quantity", "relation", "season", "road", "surface", "cabin", "soc_start")
"""What the first pattern that is found decides."""


@dataclass(frozen=True)
class Found:
    """One thing that was found: a part of the claim, what it was taken for, and the words that it rests on."""

    part: str
    value: str
    words: str


@dataclass(frozen=True)
class Reading:
    """A sentence as it can be read: the claim in its flat form, what it rests on, and what was not found.

    `unused` are numbers that were found beside the one that was taken.
    """

    given: dict[str, str]
    found: tuple[Found, ...]
    missing: tuple[str, ...]
    unused: tuple[str, ...]


@dataclass(frozen=True)
class _Rule:
    finds: str
    value: str
    pattern: re.Pattern[str]


@cache
def _rules(language: str) -> tuple[_Rule, ...]:
    table = rows(f"words/{language}/claim_reading.csv")
    return tuple(_Rule(row["finds"], row["value"], re.compile(row["pattern"], re.IGNORECASE)) for row in table)


def _first(finds: str, sentence: str, language: str) -> Found | None:
    for rule in _rules(language):
        if rule.finds == finds and (met := rule.pattern.search(sentence)):
            return Found(finds, rule.value, met[0])
    return None


def _number(text: str) -> str:
    found = readings(text)
    return repr(found[-1]).removesuffix(".0") if found else ""


@dataclass(frozen=True)
class _Amount:
    low: str
    high: str
    unit: str
    words: str


def _amounts(sentence: str, language: str) -> list[_Amount]:
    """Every number with a unit, in figures or in words, as they stand in the sentence."""
    found = []
    for met in SPAN.finditer(sentence):
        unit = UNITS.get(met["unit"].lower(), met["unit"])
        found.append((met.start(), _Amount(_number(met["low"]), _number(met["high"] or ""), unit, met[0])))
    for rule in _rules(language):
        if rule.finds == "number" and (spoken := rule.pattern.search(sentence)):
            number, _, unit = rule.value.partition(" ")
            found.append((spoken.start(), _Amount(number, "", unit, spoken[0])))
    return [amount for _, amount in sorted(found, key=lambda one: one[0])]


@lru_cache(maxsize=256)
def read(sentence: str, language: str = "en") -> Reading:
    """Read a sentence by the rules of its language.

    Raises
    ------
    InputError
        Where it is too long to be a claim.
    """
    sentence = plain_words(sentence)
    met = {part: one for part in ONE_OF if (one := _first(part, sentence, language))}
    count = counted()[met["quantity"].value] if "quantity" in met else None
    amounts = _amounts(sentence, language)
    # a charge is no claim of its own
    charges = met["soc_start"].words if "soc_start" in met else ""
    claimed = [one for one in amounts if one.unit not in CONDITIONS and one.words not in charges]
    found = [met[part] for part in ("quantity", "relation") if part in met]
    given = {"words": sentence} | {one.part: one.value for one in found}
    conditions = [met[part] for part in ONE_OF[2:] if part in met]
    conditions += [
        Found(CONDITIONS[one.unit], f"{one.low}..{one.high}" if one.high else one.low, one.words)
        for one in amounts if one.unit in CONDITIONS
    ]  # fmt: skip
    case = _first("case", sentence, language)
    told = _told(count, conditions)
    found += told
    given |= {one.part: one.value for one in told}
    if count and case and not count.beyond:
        key, _, cases = case.value.partition("=")
        this, _, other = cases.partition(":")
        if key in count.sayable:
            given |= {key: given.get(key, this), f"{AGAINST}{key}": other}
            found.append(Found("case", key, case.words))
    if claimed:
        given, more = _with_number(given, claimed[0], count, sentence, language)
        found += more
    elif "relation" in given and given["relation"] == "between":
        del given["relation"]
    needed = ("quantity", "relation", "number", "unit") if not (count and count.beyond) else ("quantity",)
    asked = ("season", "road") if count is None else sayable_places(count)
    missing = [part for part in needed if part not in given]
    missing += [part for part in asked if part not in given and PLACES[part] not in given]
    return Reading(given, tuple(found), tuple(missing), tuple(one.words for one in claimed[1:]))


def keep_to(given: Mapping[str, str], scope: Mapping[str, Open]) -> bool:
    """Whether a claim's words, read anew, say what is tested: whatever is read in them must be so still.

    Parameters
    ----------
    given : mapping
        The claim in its flat form, with its words.
    scope : mapping
        What its conditions fix, as `model.claims.specification.claim_of` gives it.
    """
    told = read(given.get("words", "")).given
    count = counted()[given["quantity"]]
    if told.get("quantity", count.id) != count.id:
        return False
    claimed = [] if count.beyond else [key for key in ("relation", "unit") if key in told]
    if any(told[key] != given.get(key) for key in claimed):
        return False
    if "number" in told and not count.beyond and numbers_of(told["number"]) != numbers_of(given["number"]):
        return False
    return all(_still_so(key, text, given, scope, count) for key, text in told.items() if key not in FLAT)


def _still_so(
    key: str, text: str, given: Mapping[str, str], scope: Mapping[str, Open], count: Counted
) -> bool:
    """Whether a condition that was read is tested: as it was said or narrower."""
    if key.startswith(AGAINST):
        return key in given and (INPUTS[key.removeprefix(AGAINST)].kind == "number" or given[key] == text)
    tested = scope.get(PLACES.get(key, key))
    if tested is None:
        return False
    if key in PLACES:
        return tested.within(places().of(key)[text])
    if f"{AGAINST}{key}" in given and INPUTS[key].kind == "number":
        return True  # words that set two cases apart name no figure of them
    return tested.within(narrowed(INPUTS[key], count.open.get(key, Open(())), text))


def _told(count: Counted | None, conditions: list[Found]) -> list[Found]:
    """The conditions that the quantity knows and takes; a temperature or a cycle that was said counts before a name."""
    keys = {one.part for one in conditions}
    told = []
    for one in conditions:
        if one.part in PLACES:
            known = count is None or one.part in sayable_places(count)
            fits = PLACES[one.part] not in keys
        else:
            known = count is not None and one.part in count.sayable
            fits = all(_takes(one.part, end) for end in one.value.split(".."))
        if known and fits:
            told.append(one)
    return told


def _takes(key: str, text: str) -> bool:
    try:
        INPUTS[key].parse(text)
    except InputError:
        return False
    return True


def _with_number(
    given: dict[str, str], one: _Amount, count: Counted | None, sentence: str, language: str
) -> tuple[dict[str, str], list[Found]]:
    """The claim with its number, and its unit where that is one of the quantity's."""
    found = [Found("number", f"{one.low}..{one.high}" if one.high else one.low, one.words)]
    given = given | {"number": found[0].value}
    if one.high:
        given["relation"] = "between"
        found.append(Found("relation", "between", one.words))
    differs = any(key.startswith(AGAINST) for key in given)
    if not differs and (count is None or one.unit in count.units(differs)):
        found.append(Found("unit", one.unit, one.words))
    elif differs and one.unit == "%":
        how = _first("difference", sentence, language)
        if how and how.value in COMPARED_AS:
            found.append(Found("unit", how.value, how.words))
    elif differs and count and one.unit in count.units(differs):
        found.append(Found("unit", one.unit, one.words))
    return given | {one.part: one.value for one in found if one.part == "unit"}, found
