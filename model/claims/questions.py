"""A claim as someone published it: its number, and what was said of its conditions; the rest is part of the range."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property

from model.claims.collection import ABOUT_NOTHING, RELATIONS, Claim, claims
from model.claims.inputs import CAR_AND_DRIVE, INPUTS, Open, narrowed
from model.claims.specification import DRIVEN, OWN, claim_of, counted, flat, numbers_of, phrased
from model.describe.car import CAR_FIELDS
from model.describe.fields import Field, InputError, find
from model.describe.figures import Quantity, Several
from model.describe.parameters import ROAD_LOAD_KEYS

OF_ALL_RUNS = ("up_to", "on_average")
"""Relations that one number of all runs decides: their top, or their mean."""
QUESTION_FIELDS = {
    "number": Field("number", "text", "", "question-number"),
    "relation": Field("relation", "choice", "", "question-relation", choices=RELATIONS[:5]),
}


@dataclass(frozen=True)
class Question:
    """A claim with its number and its conditions as someone published them; `given` is what was put in, as text."""

    claim: Claim
    number: tuple[float, ...]
    relation: str
    settings: Mapping[str, str]
    given: Mapping[str, str]

    @property
    def bounds(self) -> tuple[float, float]:
        """The numbers between which the claim is true."""
        if self.relation == "between":
            return self.number[0], self.number[1]
        (number,) = self.number
        if self.relation in ("about", "on_average"):
            return number - self.within, number + self.within
        return (number, math.inf) if self.relation == "at_least" else (-math.inf, number)

    @property
    def top_bounds(self) -> tuple[float, float]:
        """Between which the top of the runs makes a claim of “up to” true [unit of the claim]."""
        return self.number[0] - self.within, self.number[0] + self.within

    @property
    def within(self) -> float:
        """How far from its number a claim of about so much is true [unit of the claim]."""
        number, claim = abs(self.number[0]), self.claim
        return number * claim.within_share if number else ABOUT_NOTHING.get(claim.unit, 0.0)

    @property
    def own(self) -> bool:
        """Whether it is a claim in somebody's own words."""
        return bool(self.claim.counted)

    @cached_property
    def as_listed(self) -> bool:
        """Whether the words of a claim of the list say what is tested: number, relation, and all they fix or imply."""
        if self.own:
            return False
        spoken_of = dict(self.claim.scope) | {key: self.claim.open[key] for key in self.claim.words}
        spoken_of |= {key: narrowed(INPUTS[key], self.claim.open[key], text) for key, text in self.claim.said.items()}
        return (self.number, self.relation) == (self.claim.number, self.claim.relation) and all(
            self.declared[key].within(extent) for key, extent in spoken_of.items()
        )

    @property
    def beyond(self) -> bool:
        """Whether the model cannot judge it: what the list says of that goes for the claim as it is listed."""
        return self.claim.beyond and (self.own or self.as_listed)

    @cached_property
    def whole(self) -> dict[str, Open]:
        """Everything that the claim's own words leave open."""
        scope = {
            key: narrowed(INPUTS[key], self._choices(key), self.settings[key]) if key in self.settings else fixed
            for key, fixed in self.claim.scope.items()
        }
        return scope | dict(self.claim.open)

    def _choices(self, key: str) -> Open:
        return Open(self.claim.denominators) if key == "denominator" else self.claim.scope[key]

    @cached_property
    def said(self) -> dict[str, Open]:
        """The inputs that were said beyond the claim's own words."""
        said = {}
        for key, text in {**self.claim.said, **self.settings}.items():
            if key not in self.claim.scope and text != "open":
                said[key] = narrowed(INPUTS[key], self.claim.open.get(key, Open(())), text)
        return said

    @cached_property
    def declared(self) -> dict[str, Open]:
        """What the model runs over: what was said, and the range of what was not."""
        return self.whole | self.said

    @property
    def not_said(self) -> dict[str, Open]:
        """What the program asks for: inputs left open, and what they run over."""
        return {key: extent for key, extent in self.declared.items() if extent.varies}


def sayable(claim: Claim) -> dict[str, Field]:
    """Every input that can be said of a claim."""
    if claim.counted:
        return counted()[claim.counted].sayable
    asked = set(claim.open) | set(claim.scope)
    # figures of the car count everywhere, weather and habits where something is driven
    asked |= set(CAR_FIELDS) if asked.isdisjoint(DRIVEN) else set(CAR_AND_DRIVE)
    # what a display shows is of a drive of one's own, which no claim is about
    return {key: field for key, field in INPUTS.items() if key in asked - {*ROAD_LOAD_KEYS, "shown_wh_per_km"}}


def question(claim_id: str, settings: Mapping[str, str] | None = None) -> Question:
    """A claim with its number and conditions put in.

    Parameters
    ----------
    claim_id : str
        One of `claims`.
    settings : mapping
        ``number`` (or ``low..high``), ``relation``, and inputs: a value, ``low..high``, ``one,or,another`` or ``open``.

    Raises
    ------
    InputError
        Where the claim or a key is unknown, or a value is not allowed.
    """
    given = {key: str(value) for key, value in (settings or {}).items()}
    if claim_id in phrased():
        return own_question(phrased()[claim_id] | given)
    if claim_id == OWN:
        return own_question(given)
    if claim_id not in claims():
        raise InputError("not-one-of", what="claim", given=claim_id, known=Several((*claims(), *phrased(), OWN)))
    claim = claims()[claim_id]
    inputs = dict(given)
    number, relation = inputs.pop("number", None), inputs.pop("relation", claim.relation)
    numbers = claim.number
    if number is not None:
        numbers = numbers_of(number)
    if len(numbers) == 2:
        relation = "between"
    elif relation == "between":
        relation = "about"
    if relation != "between":
        QUESTION_FIELDS["relation"].parse(relation)
    for key in inputs:
        find(sayable(claim), key)
    result = Question(claim, numbers, relation, inputs, given)
    declared = result.declared
    if "denominator" in declared and declared["denominator"].varies:
        raise InputError("one-share-at-a-time", field=INPUTS["denominator"])
    if {"gentle_mps2", "strong_mps2"} <= set(declared):
        gentle, strong = (declared[key].numbers for key in ("gentle_mps2", "strong_mps2"))
        if max(gentle) >= min(strong):
            raise InputError(
                "gentle-not-below-strong", field=INPUTS["gentle_mps2"],
                gentle=Quantity(max(gentle), "m/s²", 6, trimmed=True),
                strong=Quantity(min(strong), "m/s²", 6, trimmed=True),
            )  # fmt: skip
    return result


def own_question(given: Mapping[str, str]) -> Question:
    """The question of a claim in one's own words, from flat texts (see `model.claims.specification`)."""
    claim, settings = claim_of(given)
    return Question(claim, claim.number, claim.relation, settings, dict(given))


def question_from_json(data: object) -> Question:
    """The question behind a file: a claim in one's own words, or an answer given earlier."""
    if not isinstance(data, Mapping):
        raise InputError("claim-file-without-claim")
    if isinstance(data.get("specification"), Mapping):
        return own_question(flat(data["specification"]))
    if "id" not in data:
        return own_question(flat(data))
    settings = data.get("settings", {})
    if not isinstance(settings, Mapping):
        raise InputError("claim-file-without-claim")
    return question(str(data["id"]), {str(key): str(value) for key, value in settings.items()})
