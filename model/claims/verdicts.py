"""Check a claim: run the model over what was said and over what was not, and judge by a printed rule.

The claims themselves and what was asked stand in `model.claims.questions`, the numbers they are about in
`model.claims.quantities`, the draws in `model.claims.draws`.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property, lru_cache
from typing import Any

import numpy as np

from model import MODEL_DATE, MODEL_VERSION
from model.claims.collection import ALWAYS, BROADLY, RUNS, Claim, claims
from model.claims.draws import DRAWN_TOGETHER, INPUTS, SETTINGS, Draws, Open, draw, one_at_a_time
from model.claims.prose import (
    Units,
    condition,
    listed,
    metric,
    number_words,
    shown,
    span_and_median,
    span_words,
    true_in,
)
from model.claims.quantities import QUANTITIES
from model.claims.questions import OF_ALL_RUNS, QUESTION_FIELDS, Question, question, question_from_json, sayable
from model.claims.regions import LEAST_REGION, MOST_CONDITIONS, Bins, Part, region_of
from model.describe.fields import InputError
from model.describe.trace import Array
from model.sampling.uncertainty import SEED

__all__ = [
    "BEYOND",
    "BROADLY",
    "CONDITIONS",
    "FALSE",
    "HOLDS",
    "NOT_AS_SAID",
    "QUESTION_FIELDS",
    "RUNS",
    "UNJUDGED",
    "Answer",
    "Claim",
    "Question",
    "check",
    "claims",
    "question",
    "question_from_json",
    "sayable",
    "verdict_of",
]

WHOLE_RANGE_RUNS = 607
"""Drawn runs of the whole range where conditions were said: enough for the share in which the claim is true."""
HARDLY = 0.05
"""A claim does not hold below this share of the range [1]."""
ROUNDING = 1e-6
"""What moves a number by a smaller share of it does not move it [1]."""
QUANTILES = (0.05, 0.25, 0.5, 0.75, 0.95)

HOLDS = "holds broadly"
CONDITIONS = "holds only under the named conditions"
FALSE = "does not hold in the modelled range"
NOT_AS_SAID = "does not hold as said"
UNJUDGED = "cannot be judged from what was said"
BEYOND = "cannot be judged by a model of energy"


def verdict_of(share: float, whole_share: float, region_share: float, always: bool = False) -> str:
    """The printed rule.

    Parameters
    ----------
    share, whole_share : float
        Share of the runs in which the claim is true [1]: with what was said, and over the whole range.
    region_share : float
        The same within the conditions that can be named [1].
    always : bool
        Whether the claim says "always", which a few runs refute.
    """
    broadly = ALWAYS if always else BROADLY
    if share < HARDLY:
        return FALSE
    if share >= broadly:
        return HOLDS if whole_share >= broadly else CONDITIONS
    if always:
        return NOT_AS_SAID
    return CONDITIONS if region_share >= broadly else UNJUDGED


def verdict_of_all(holds: bool, holds_over_all: bool, more: bool = False) -> str:
    """The printed rule for a claim that one number of all runs decides: their mean, or their top.

    Parameters
    ----------
    holds, holds_over_all : bool
        Whether that number is as claimed with what was said, and over the whole range.
    more : bool
        Whether the top of the runs lies beyond what was claimed.
    """
    if holds:
        return HOLDS if holds_over_all else CONDITIONS
    return NOT_AS_SAID if more else FALSE


@dataclass(frozen=True, eq=False)
class Answer:
    """A tested claim; `values` has one entry a run, shape (runs,), `left_out` counts cars that could not drive."""

    question: Question
    draws: Draws
    values: Array
    left_out: int = 0
    seed: int = SEED

    @cached_property
    def true(self) -> Any:
        """Whether the claim is true in each run, shape (runs,)."""
        low, high = self.question.bounds
        return (self.values >= low) & (self.values <= high)

    @cached_property
    def whole(self) -> Array:
        """The number over all that the claim's own words leave open, whatever was said [its unit]; shape (runs,)."""
        asked = self.question
        if not asked.said:
            return self.values
        return _values(asked.claim.quantity, tuple(asked.whole.items()), WHOLE_RANGE_RUNS, self.seed)[1]

    @cached_property
    def whole_share(self) -> float:
        """Share of the whole range in which the claim is true [1]."""
        low, high = self.question.bounds
        return float(((self.whole >= low) & (self.whole <= high)).mean())

    @cached_property
    def tornado(self) -> tuple[Mapping[str, Any], ...]:
        """The quantity when one input after the other goes to the ends of its range, the widest swing first."""
        return _tornado(self.question.claim.quantity, tuple(self.question.declared.items()))

    @cached_property
    def share(self) -> float:
        """Share of the range of what was said in which the claim is true [1]."""
        return float(self.true.mean())

    @cached_property
    def quantiles(self) -> dict[str, float]:
        """Quantiles of the quantity, in the claim's unit."""
        found = np.quantile(self.values, QUANTILES).tolist()
        return {f"{share:g}": value for share, value in zip(QUANTILES, found, strict=True)}

    @cached_property
    def bins(self) -> list[Bins]:
        """Every input that matters, in steps; the most telling first."""
        claim_inputs = {key for key, this in self.question.declared.items() if this.varies}
        figures = {key for key in self.draws.columns if key in SETTINGS and INPUTS[key].kind == "number"}
        keys = [key for key in sorted(claim_inputs | figures) if len(np.unique(self.draws[key])) > 1]
        steps = [Bins.of(key, self.draws[key], self.question.declared.get(key)) for key in keys]
        told = self.true.astype(float) if 0.02 <= self.share <= 0.98 else self.values
        cars = Bins.of("car", self.draws["car"]).place
        # a figure of the car tells only what its class does not tell already
        within = told - (np.bincount(cars, told) / np.bincount(cars))[cars]
        left = within.var() / told.var() if told.var() > 0 else 0.0
        told_by = {
            this.key: this.explained(told) if this.key in claim_inputs else left * this.explained(within)
            for this in steps
        }
        return sorted((this for this in steps if told_by[this.key] > 0), key=lambda this: -told_by[this.key])

    @cached_property
    def region(self) -> tuple[list[tuple[Bins, Part]], Array, float]:
        """Conditions that can be named, of inputs left open, the runs within, and in which share of them it is true.

        Where two conditions serve alike, the one is named that the claim's data name first, and the kind of car last.
        """
        open_inputs = [] if self.question.relation in OF_ALL_RUNS else list(self.question.not_said)
        bins = [this for this in self.bins if this.key in open_inputs]
        bins.sort(key=lambda this: (this.key == "car", open_inputs.index(this.key)))
        return region_of(self.true, bins, self.question.claim.broadly, self.seed)

    @property
    def region_share(self) -> float:
        """Share of the runs in that region in which the claim is true, on cars that were not used to find it [1]."""
        return self.region[2]

    @cached_property
    def verdict(self) -> str:
        """The verdict, by the printed rule."""
        asked = self.question
        if asked.claim.beyond and asked.as_listed:
            return BEYOND
        if asked.relation in OF_ALL_RUNS:
            low, high = asked.top_bounds
            here, over_all = (deciding(values, asked.relation) for values in (self.values, self.whole))
            more = asked.relation == "up_to" and here > high
            return verdict_of_all(low <= here <= high, low <= over_all <= high, more)
        return verdict_of(self.share, self.whole_share, self.region_share, self.question.claim.always)

    def conditions(self, units: Units = metric) -> list[str]:
        """The conditions of the region in words, lists at the end."""
        return sorted((condition(INPUTS[this.key], this.named(part, units)) for this, part in self.region[0]), key=len)

    @property
    def needs(self) -> dict[str, Any]:
        """What would have to be true: the region, and the two inputs that matter most with the picture they make."""
        conditions, inside, _ = self.region
        two = self.bins[:2]
        needs: dict[str, Any] = {
            "where": {this.key: this.named(part) for this, part in conditions},
            "share_there": self.region_share,
            "share_of_range_there": float(inside.mean()),
            "matter_most": [
                {
                    "input": this.key,
                    "label": INPUTS[this.key].label,
                    "steps": [this.named([step]) for step in range(len(this.names))],
                }
                for this in two
            ],
        }
        if len(two) == 2:
            down, across = two
            fields = [
                [np.flatnonzero((down.place == row) & (across.place == column)) for column in range(len(across.names))]
                for row in range(len(down.names))
            ]
            for name, column in (("share_true", self.true), ("median", self.values)):
                middle = np.mean if name == "share_true" else np.median
                needs[name] = [[float(middle(column[runs])) if len(runs) else None for runs in row] for row in fields]
        return needs

    def reason(self, subject: str, units: Units = metric) -> str:
        """Why the verdict is what it is, in numbers of the claim's unit; after a subject with its verb."""
        asked, unit = self.question, self.question.claim.unit
        start = f"{asked.where(units)}{subject}"
        if self.verdict == BEYOND:
            said = f"{asked.where(units)}{asked.what} is {asked.claimed} {self._how_often}"
            return f"{asked.claim.beyond}; what can be said is that {said}"
        if asked.relation in OF_ALL_RUNS:
            found = number_words(deciding(self.values, asked.relation), unit)
            if asked.relation == "on_average":
                over_all = f"; over the whole range {number_words(deciding(self.whole, asked.relation), unit)}"
                return f"{asked.where(units)}{asked.what} is {found} on average{over_all if self._narrower else ''}"
            reached = {NOT_AS_SAID: ", so there is more than was said", FALSE: ", so less than was said"}
            return (
                f"{asked.where(units)}{asked.what} reaches {found}, the level that one run in twenty passes"
                f"{reached.get(self.verdict, '')}"
            )
        if self.verdict == CONDITIONS and self._narrower:
            return f"{start} {self._how_often}; over the whole range the model gives {self._band(self.whole)}"
        given = self._band(self.values[self.region[1]])
        there = f"with {listed(self.conditions(units) or [''])}, where the model gives {given}"
        if self.verdict == CONDITIONS:
            return f"{start} {there}; elsewhere it often is not"
        if self.verdict == NOT_AS_SAID:
            where = f"; it is {asked.claimed.removeprefix('always ')} {there}" if self.region[0] else ""
            found = f"{asked.where(units)}{asked.what} {self.nearest_miss}"
            return f"{found}, and “always” allows hardly any such run{where}"
        if self.verdict == UNJUDGED:
            most = " and on ".join(INPUTS[this.key].label.lower() for this in self.bins[:2])
            return f"{asked.where(units)}it depends most on {most} whether {subject}, and no few conditions settle it"
        return f"{start} {self._how_often}"

    @property
    def _narrower(self) -> bool:
        """Whether the claim holds with what was said but not over the whole range."""
        if self.question.relation in OF_ALL_RUNS:
            return self.verdict == CONDITIONS
        return self.share >= self.question.claim.broadly > self.whole_share

    @property
    def _how_often(self) -> str:
        """In how much of what was varied a claim is true, where runs are tested; no share, which would read as odds."""
        if self.share == 0:
            return f"in no run: {self.nearest}"
        if self.share < HARDLY:
            return f"only at the edge of what was varied: {self.nearest}"
        if self.share == 1:
            return "in every run"
        return "in nearly all of what was varied" if self.share >= ALWAYS else "in most of what was varied"

    @property
    def nearest_miss(self) -> str:
        """The run that is farthest from what is claimed always to be so."""
        low, high = self.question.bounds
        values, unit = self.values, self.question.claim.unit
        farthest = values[np.argmax(np.maximum(low - values, values - high))]
        return f"is {f'{shown(float(farthest))} {unit}'.rstrip()} in one run"

    def _band(self, values: Array) -> str:
        """5 to 95 % of some runs."""
        low, high = np.quantile(values, (0.05, 0.95))
        return span_words(float(low), float(high), self.question.claim.unit)

    @property
    def varied(self) -> str:
        """What was varied, and how it was weighted, in a sentence."""
        keys = list(self.question.not_said)
        if not keys:
            return "Nothing was varied but the car’s assumed figures, each most often near the middle of its band."
        bands = [INPUTS[key].label.lower() for key in keys if self.question.declared[key].band]
        lists = [INPUTS[key].label.lower() for key in keys if not self.question.declared[key].band]
        parts = [f"{listed(lists)}, each value as often as the next"] if lists else []
        parts += [f"{listed(bands)}, most often near the middle of the range"] if bands else []
        return f"Varied: {'; '.join(parts)}."

    @property
    def nearest(self) -> str:
        """The runs that come nearest to a claim that is true in none."""
        unit, least, most = self.question.claim.unit, float(self.values.min()), float(self.values.max())
        if self.question.relation == "at_least":
            return f"the highest gives {shown(most)} {unit}".rstrip()
        if self.question.relation == "at_most":
            return f"the lowest gives {shown(least)} {unit}".rstrip()
        return f"they give {span_words(least, most, unit)}"

    def band_words(self) -> str:
        """The band of the runs and their median."""
        low, mid, high = (self.quantiles[key] for key in ("0.05", "0.5", "0.95"))
        return span_and_median(low, mid, high, self.question.claim.unit)

    @property
    def sentence(self) -> str:
        """The verdict, its reason, the band and what was varied: sentences to quote, with their hedge."""
        reason = self.reason(f"{self.question.what} is {self.question.claimed}")
        return (
            f"This claim {self.verdict}: {reason}. The model gives {self.band_words()}. {self.varied} An estimate, not "
            "a measurement."
        )

    @property
    def rule(self) -> str:
        """The rule of the verdict, as printed."""
        asked, broadly = self.question, self.question.claim.broadly
        if asked.relation in OF_ALL_RUNS:
            low, high = asked.top_bounds
            span = f"{shown(low)} to {shown(high)} {asked.claim.unit}".rstrip()
            number = "mean of the runs" if asked.relation == "on_average" else "95 % point of the runs, their top,"
            top = f" {NOT_AS_SAID.capitalize()}: it lies above." if asked.relation == "up_to" else ""
            return (
                f"The {number} is to lie within {span}. {HOLDS.capitalize()}: it does, with what was said and over the "
                f"whole range. {CONDITIONS.capitalize()}: with what was said only. {FALSE.capitalize()}: it lies "
                f"{'below' if asked.relation == 'up_to' else 'outside'}.{top}"
            )
        side = {
            "at_least": f" (the {100 * (1 - broadly):.0f} % quantile is not below it)",
            "at_most": f" (the {100 * broadly:.0f} % quantile is not above it)",
        }.get(asked.relation, "")
        always = asked.claim.always
        named = (
            f"; or as often within at most {MOST_CONDITIONS} conditions that cover at least {100 * LEAST_REGION:.1f} % "
            "of the runs, were found on one half of them and hold on the other"
        )
        between = f"{NOT_AS_SAID}: anything between, since counter-examples refute “always”" if always else UNJUDGED
        beyond = f" The claim itself is beyond the model: {asked.claim.beyond}." if self.verdict == BEYOND else ""
        return (
            f"A run is true where {asked.what} is {asked.claimed}. {HOLDS.capitalize()}: true in at least "
            f"{100 * broadly:.0f} % of the runs{side}, with what was said and over the whole range. "
            f"{CONDITIONS.capitalize()}: as often with what was said but not over the whole range"
            f"{'' if always else named}. {FALSE.capitalize()}: true in fewer than {100 * HARDLY:.0f} %. "
            f"{between.capitalize()}{'' if always else ': anything else'}.{beyond} {self.share_of_design}"
        )

    @property
    def share_of_design(self) -> str:
        """In how many of the runs the claim is true, and what that share is not."""
        return (
            f"Here {true_in(self.share)} are true: a share of what was varied, as it was weighted; not odds, and not a "
            "share of the cars on the road."
        )

    def as_json(self) -> dict[str, Any]:
        """Everything to print with."""
        asked, claim = self.question, self.question.claim
        return {
            "id": claim.id,
            "text": asked.text,
            "reading": claim.reading if asked.as_listed else "",
            "what": asked.what,
            "unit": claim.unit,
            "number": list(asked.number),
            "relation": asked.relation,
            "settings": dict(asked.given),
            "said": {key: this.described(key) for key, this in asked.declared.items() if not this.varies}
            | {key: this.described(key) for key, this in asked.said.items()},
            "not_said": asked.not_said,
            "verdict": self.verdict,
            "rule": self.rule,
            "quantiles": self.quantiles,
            "share_of_range": self.share,
            "share_of_whole_range": self.whole_share,
            "needs": self.needs,
            "tornado": list(self.tornado),
            "denominators": list(claim.denominators),
            "left_out": claim.left_out,
            "sources": list(claim.published),
            "sentence": self.sentence,
            "method": {
                "runs": len(self.values),
                "left_out_runs": self.left_out,
                "seed": SEED,
                "draw": "Latin hypercube; bands triangular, lists in equal parts; car figures after their class",
                "drawn_together": DRAWN_TOGETHER,
                "varied": self.varied,
            },
            "model_version": MODEL_VERSION,
            "model_date": MODEL_DATE,
        }


def deciding(values: Array, relation: str) -> float:
    """The number of all runs that decides a claim of an average or of a top [unit of the claim]."""
    return float(values.mean() if relation == "on_average" else np.quantile(values, 0.95))


@lru_cache(maxsize=64)
def _values(quantity: str, inputs: tuple[tuple[str, Open], ...], runs: int, seed: int) -> tuple[Draws, Array, int]:
    """Draws, the quantity in each, and how many drawn cars were left out since they could not drive."""
    draws = draw(dict(inputs), runs, seed)
    values = QUANTITIES[quantity](draws)
    if nothing := int(np.isinf(values).sum()):
        raise InputError("claim-ratio-to-nothing", nothing=nothing, runs=runs)
    driven = np.isfinite(values)
    if not driven.any():
        raise InputError("claim-no-car-can-drive")
    return draws.at(driven), values[driven], int((~driven).sum())


@lru_cache(maxsize=64)
def _tornado(quantity: str, inputs: tuple[tuple[str, Open], ...]) -> tuple[Mapping[str, Any], ...]:
    """The quantity when one input after the other goes to the ends of its range, the widest swing first."""
    draws, changed = one_at_a_time(dict(inputs))
    base, *found = QUANTITIES[quantity](draws).tolist()
    swings: dict[str, list[tuple[float, Any]]] = {}
    for (key, value), result in zip(changed, found, strict=True):
        if not math.isfinite(result):
            continue
        swings.setdefault(key, [(base, draws[key].tolist()[0])]).append((result, value))
    rows = []
    for key, results in swings.items():
        (low, at_low), (high, at_high) = min(results, key=lambda r: r[0]), max(results, key=lambda r: r[0])
        if high - low > ROUNDING * abs(base):
            row = {"input": key, "label": INPUTS[key].label, "unit": INPUTS[key].unit, "at_low": at_low, "low": low}
            rows.append(row | {"base": base, "high": high, "at_high": at_high})
    return tuple(sorted(rows, key=lambda row: row["low"] - row["high"]))


def check(asked: Question, seed: int = SEED) -> Answer:
    """Test a claim; what has been run before is not run again.

    Raises
    ------
    InputError
        Where no drawn car can drive what was said.
    """
    return Answer(asked, *_values(asked.claim.quantity, tuple(asked.declared.items()), asked.claim.runs, seed), seed)
