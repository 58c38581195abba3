"""A claim in somebody's own words: what is counted, how much of it, under which conditions, against what.

It is written as seven keys in a file (`KEYS`), and flat, one text a key, in a link or behind ``--set``. What may be
counted, and what it runs over where nothing is said of it, stands in ``assets/claim_quantities.json``.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any

from model.claims.collection import ABOUT, ANY_CAR, CLAIM_RUNS, OWN_FILE, RELATIONS, Claim
from model.claims.inputs import CAR_AND_DRIVE, INPUTS, Open, narrowed, open_from
from model.describe.brought import one_line
from model.describe.car import CAR_FIELDS
from model.describe.fields import Entry, Field, InputError, find
from model.describe.figures import Several
from model.describe.parameters import ROAD_LOAD_KEYS
from model.describe.tables import ASSETS

PHRASED = "claims_phrased.json"
OWN = "own"
"""The id of a claim in one's own words."""
KEYS = ("quantity", "relation", "number", "unit", "conditions", "against", "words")
"""What a file may hold."""
FLAT = ("quantity", "relation", "number", "unit", "words")
AGAINST = "against_"
"""What begins the key of something that sets the other case apart, where keys are flat."""
MOST_WORDS = 400
"""Characters of one's own words, at most."""
GREATEST_NUMBER = 1e9
"""No larger number may be claimed; a picture of it would have room for nothing else."""
COMPARED_AS = {"% more": ("more", "%"), "% less": ("less", "%"), "% of it": ("of", "%"), "times": ("times", "times")}
"""Units of a difference between two cases: how they are held against each other, and the unit that is shown."""
DRIVEN = ("cycle", "grade_pct")
"""Inputs that a claim has which is tested on a drive."""
PLACES = {"road": "cycle", "season": "ambient_c"}
"""Conditions that name a choice of drives or a span of temperatures, and the input that they stand for."""
OWN_RELATIONS = (*RELATIONS, "always")
SPEC_FIELDS = {
    "relation": Field("relation", "choice", "", "question-relation", choices=OWN_RELATIONS),
    "number": Field("number", "text", "", "question-number"),
}


@dataclass(frozen=True)
class Counted:
    """What may be counted: the function that computes it, its unit, and what it runs over unless something is said.

    Of what the model cannot give, `beyond`, the nearest that it can give is tested, by a relation and a number of its
    own.
    """

    id: str
    quantity: str
    unit: str
    open: Mapping[str, Open]
    denominator: str
    runs: int
    beyond: bool
    relation: str
    number: float

    def units(self, compared: bool) -> tuple[str, ...]:
        """In which units its number may be given, of one case or as a difference between two."""
        return (*COMPARED_AS, self.difference) if compared else (self.unit,)

    @property
    def difference(self) -> str:
        """The unit of one case less another."""
        return "points" if self.unit == "%" else self.unit

    @property
    def sayable(self) -> dict[str, Field]:
        """What conditions may be of, without `PLACES`."""
        driven = not set(DRIVEN).isdisjoint(self.open)
        keys = set(self.open) | set(CAR_AND_DRIVE if driven else CAR_FIELDS) | ({"hybrid"} if driven else set())
        # what a display shows is of a drive of one's own, which no claim is about
        return {key: field for key, field in INPUTS.items() if key in keys - {*ROAD_LOAD_KEYS, "shown_wh_per_km"}}


@dataclass(frozen=True)
class Places:
    """Kinds of road and seasons by name."""

    roads: Mapping[str, Open]
    seasons: Mapping[str, Open]

    def of(self, key: str) -> Mapping[str, Open]:
        """Those of one of PLACES."""
        return self.roads if key == "road" else self.seasons


def _open(key: str, given: object) -> Open:
    return open_from(INPUTS[key], ANY_CAR if (key, given) == ("car", "any") else given)


@cache
def _table() -> dict[str, Any]:
    found: dict[str, Any] = json.loads((ASSETS / OWN_FILE).read_text("utf-8"))
    return found


@cache
def places() -> Places:
    """The kinds of road and the seasons."""
    return Places({name: _open("cycle", drives) for name, drives in _table()["roads"].items()},
                  {name: _open("ambient_c", band) for name, band in _table()["seasons"].items()})  # fmt: skip


@cache
def counted() -> dict[str, Counted]:
    """All that may be counted, by id."""
    usual = {"denominator": "", "runs": CLAIM_RUNS, "beyond": False, "relation": "at_least", "number": 0.0}
    found = {}
    for data in _table()["quantities"]:
        runs_over = {key: _open(key, value) for key, value in data.get("open", _table()["drive"]).items()}
        found[data["id"]] = Counted(**usual | data | {"open": runs_over})
    return found


@cache
def phrased() -> dict[str, dict[str, str]]:
    """Claims as articles have them, in the flat form, by id."""
    claims = json.loads((ASSETS / PHRASED).read_text("utf-8"))["claims"]
    return {name: flat(data) for name, data in claims.items()}


# two forms


def flat(data: Mapping[str, object]) -> dict[str, str]:
    """A file's object as flat texts; raises `InputError` where a key is not known or a value has not its form."""
    for key in data:
        if key not in KEYS:
            raise InputError("claim-key-unknown", key=str(key), known=Several(KEYS))
    texts = {key: _text(key, data[key]) for key in FLAT if key in data}
    for part, before in (("conditions", ""), ("against", AGAINST)):
        inner = data.get(part, {})
        if not isinstance(inner, Mapping):
            raise InputError("claim-part-no-object", part=part)
        for key in inner:
            if not before and key in FLAT:
                raise InputError("setting-unknown", key=str(key))
        texts |= {f"{before}{key}": _text(key, value) for key, value in inner.items()}
    return texts


def _text(key: str, value: object) -> str:
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, int | float):
        return repr(float(value)).removesuffix(".0")
    if isinstance(value, list) and all(isinstance(item, str | int | float | bool) for item in value):
        return (".." if key == "number" else ",").join(_text(key, item) for item in value)
    if isinstance(value, str):
        return value
    raise InputError("claim-value-unreadable", key=str(key))


def nested(given: Mapping[str, str]) -> dict[str, object]:
    """Flat texts as a file's object: numbers as numbers."""
    parts: dict[str, object] = {key: given[key] for key in KEYS if key in given}
    if "number" in parts:
        numbers = numbers_of(given["number"])
        parts["number"] = numbers[0] if len(numbers) == 1 else list(numbers)
    against = {key.removeprefix(AGAINST): text for key, text in given.items() if key.startswith(AGAINST)}
    said = {key: text for key, text in given.items() if key not in FLAT and not key.startswith(AGAINST)}
    whole: dict[str, object] = parts | {"conditions": _numbered(said), "against": _numbered(against)}
    return {key: whole[key] for key in KEYS if key in whole}


def _numbered(texts: Mapping[str, str]) -> dict[str, str | float]:
    def value(text: str) -> str | float:
        try:
            number = float(text)
        except ValueError:
            return text
        return int(number) if number == int(number) else number

    return {key: value(text) for key, text in texts.items()}


def numbers_of(text: str) -> tuple[float, ...]:
    """The number of a claim, or the two between which it is to lie; raises `InputError` where it is neither."""
    try:
        numbers = tuple(float(part) for part in text.split(".."))
    except ValueError:
        numbers = ()
    fits = all(abs(number) <= GREATEST_NUMBER for number in numbers)
    if len(numbers) not in (1, 2) or list(numbers) != sorted(numbers) or not fits:
        raise InputError("claim-number-unreadable", field=SPEC_FIELDS["number"], given=text)
    return numbers


def plain_words(text: str) -> str:
    """One's own words as one line of text; raises `InputError` where there are too many."""
    words = one_line(text)
    if len(words) > MOST_WORDS:
        raise InputError("claim-words-too-long", given=len(words), most=MOST_WORDS)
    return words


# from what was said to what is tested


def claim_of(given: Mapping[str, str]) -> tuple[Claim, dict[str, str]]:
    """The claim that flat texts describe, and what they say of its conditions.

    Raises
    ------
    InputError
        Where a key is not known, something is missing, or a value is not allowed.
    """
    if "quantity" not in given:
        raise InputError("claim-part-missing", part="quantity")
    if given["quantity"] not in counted():
        raise InputError("claim-quantity-unknown", given=given["quantity"], known=Several(tuple(counted())))
    count = counted()[given["quantity"]]
    against = _against(count, given)
    compared, unit, numbers, relation = _number(count, given, bool(against))
    said = {key: text for key, text in given.items() if key not in FLAT and not key.startswith(AGAINST)}
    scope, words = _conditions(count, said)
    for key in against:
        if key not in scope:
            raise InputError("claim-case-missing", key=key)
    if "hybrid" in scope and "hybrid" not in against:
        raise InputError("claim-hybrid-alone")
    if count.denominator:
        scope["denominator"] = Open((count.denominator,))
    claim = Claim(
        id=OWN, text=plain_words(given.get("words", "")), quantity=count.quantity, number=numbers,
        unit=unit, relation="at_least" if relation == "always" else relation, within_share=ABOUT,
        always=relation == "always", runs=count.runs, denominators=_shares(count, bool(against)),
        scope=scope, open={key: extent for key, extent in count.open.items() if key not in scope}, said={},
        words=words, names=(), beyond=count.beyond, compared=compared, against=against, counted=count.id,
    )  # fmt: skip
    return claim, {key: text for key, text in said.items() if key not in PLACES}


def _shares(count: Counted, differs: bool) -> tuple[str, ...]:
    """The shares that the number can be meant as, its own first."""
    if not count.denominator or differs:
        return ()
    others = (counts.denominator for counts in counted().values() if counts.denominator)
    return tuple(dict.fromkeys((count.denominator, *others)))


def _number(count: Counted, given: Mapping[str, str], differs: bool) -> tuple[str, str, tuple[float, ...], str]:
    """How cases are compared, the unit shown, the number and the relation."""
    if count.beyond:
        # what was claimed is not what is tested
        return "", count.unit, (count.number,), count.relation
    for part in ("relation", "number", "unit"):
        if part not in given:
            raise InputError("claim-part-missing", part=part)
    numbers, relation = numbers_of(given["number"]), str(SPEC_FIELDS["relation"].parse(given["relation"]))
    if (len(numbers) == 2) != (relation == "between"):
        raise InputError("claim-number-not-of-relation", two=len(numbers) == 2)
    unit = given["unit"]
    if unit not in count.units(differs):
        raise InputError("claim-unit-unknown", given=unit, known=Several(count.units(differs), "or"), differs=differs)
    if not differs:
        return "", unit, numbers, relation
    compared, shown = COMPARED_AS.get(unit, ("difference", unit))
    return compared, shown, numbers, relation


def _against(count: Counted, given: Mapping[str, str]) -> dict[str, Entry]:
    """What sets the other case apart."""
    found: dict[str, Entry] = {}
    for key, text in given.items():
        if not key.startswith(AGAINST):
            continue
        key = key.removeprefix(AGAINST)
        if key == "hybrid" and text == "none":
            found[key] = text
        else:
            found[key] = find(count.sayable, key).parse(text)
    if found and count.beyond:
        raise InputError("claim-beyond-compared")
    return found


def _conditions(count: Counted, said: Mapping[str, str]) -> tuple[dict[str, Open], dict[str, str]]:
    """What the conditions fix, and the places and seasons by the inputs that they stand for."""
    scope: dict[str, Open] = {}
    words = {}
    for key, text in said.items():
        if key in PLACES:
            if key not in sayable_places(count) or PLACES[key] in said:
                raise InputError("claim-place-twice", place=key, key=PLACES[key])
            known = places().of(key)
            if text not in known:
                raise InputError("claim-place-unknown", place=key, given=text, known=Several(tuple(known)))
            scope[PLACES[key]], words[PLACES[key]] = known[text], text
        else:
            field = find(count.sayable, key)
            if text != "open":
                scope[key] = narrowed(field, count.open.get(key, Open(())), text)
    return scope, words


def sayable_places(count: Counted) -> tuple[str, ...]:
    """Which of PLACES can be said of a quantity."""
    return tuple(key for key, stands_for in PLACES.items() if stands_for in count.open)


