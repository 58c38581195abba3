"""Check a claim: run the model over what was said and over what was not, and judge by a printed rule.

The claims themselves and what was asked stand in `model.claims.questions`, the numbers they are about in
`model.claims.quantities`, the draws in `model.claims.draws`.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cached_property, lru_cache

import numpy as np

from model.claims.collection import ALWAYS, BROADLY
from model.claims.draws import Draws, draw, fitting, one_at_a_time
from model.claims.errors import ModelError, model_error
from model.claims.inputs import CAR_AND_DRIVE, INPUTS, Open
from model.claims.measures import Measure
from model.claims.questions import OF_ALL_RUNS, Question
from model.claims.regions import LEAST_CONFIRMED, Bins, Steps, WhichRuns, conditions_of, inside_of, region_of
from model.describe.fields import Entry, InputError
from model.describe.trace import Array
from model.sampling.uncertainty import SEED

SEARCH_SEED = 20261129
"""Of the runs on which conditions are sought, the same for every claim whatever its own runs' seed."""
WHOLE_RANGE_RUNS = 607
"""Drawn runs of the whole range where conditions were said: enough for the share in which the claim is true."""
HARDLY = 0.05
"""A claim does not hold below this share of the range [1]."""
ROUNDED_AWAY = 1e-6
"""What moves a number by a smaller share of it does not move it [1]."""
BY_CHANCE = 0.01
"""In how many claims a thing may be named that matters by chance alone [1]."""
TOP = 0.95
"""Share of the runs below the top of which “up to” speaks [1]."""
QUANTILES = (0.05, 0.25, 0.5, 0.75, 0.95)

HOLDS, CONDITIONS, FALSE, NOT_AS_SAID, UNJUDGED, BEYOND, CLOSE = VERDICTS = (
    "holds", "conditions", "false", "not-as-said", "unjudged", "beyond", "close",
)  # fmt: skip
"""The verdicts, as messages choose by them."""
SAMPLING_ERRORS = 2.0
"""Standard errors within which a share of the runs cannot be told from a threshold."""


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


def verdict_of_all(holds: bool, holds_over_all: bool, more: bool) -> str:
    """The printed rule for a claim that one number of all runs decides: their mean, or their top.

    That number is as claimed (`holds`) with what was said, and over the whole range; `more` where the top lies beyond.
    """
    if holds:
        return HOLDS if holds_over_all else CONDITIONS
    return NOT_AS_SAID if more else FALSE


def is_near(share: float, edge: float, runs: int) -> bool:
    """Whether a share of so many runs is too near to a threshold [1] to be told from it.

    The error is that of runs drawn each on its own; runs that are drawn evenly scatter less.
    """
    return abs(share - edge) < SAMPLING_ERRORS * math.sqrt(edge * (1 - edge) / runs)


@dataclass(frozen=True)
class Lever:
    """How far one input alone moves a claim's number [its unit] from `base`, and what is set at either end."""

    key: str
    base: float
    low: float
    high: float
    at_low: Entry
    at_high: Entry


@dataclass(frozen=True, eq=False)
class ByTwo:
    """A claim by steps of two inputs, as `[row of down][column of across]`; None where no run lies.

    `shares` is in how many of the runs it is true [1], `medians` their median number [the claim's unit].
    """

    down: Bins
    across: Bins
    shares: list[list[float | None]]
    medians: list[list[float | None]]


@dataclass(frozen=True, eq=False)
class Answer:
    """A tested claim; `values` has one entry a run, shape (runs,), `left_out` counts cars that could not drive."""

    question: Question
    draws: Draws
    values: Array
    left_out: int = 0
    seed: int = SEED

    @cached_property
    def true(self) -> WhichRuns:
        """Whether the claim is true in each run, shape (runs,)."""
        return self._true_in(self.values)

    @cached_property
    def error(self) -> ModelError:
        """How far off the model was found to be in this number."""
        return model_error(self.question.claim.measure)

    def _true_in(self, values: Array) -> WhichRuns:
        low, high = self.question.bounds
        return (values >= low) & (values <= high)

    @cached_property
    def surely(self) -> WhichRuns:
        """Whether the claim is true in each run even if the model is off by its error either way, shape (runs,)."""
        lower, higher = self.error.either_way(self.values)
        return self.true & self._true_in(lower) & self._true_in(higher)

    def _shares(self, values: Array) -> tuple[float, float]:
        """The least and the largest share of some runs in which it is true, the model being off either way [1]."""
        shares = [float(self._true_in(shifted).mean()) for shifted in (values, *self.error.either_way(values))]
        return min(shares), max(shares)

    @cached_property
    def whole(self) -> Array:
        """The number over all that the claim's own words leave open, whatever was said [its unit]; shape (runs,)."""
        asked = self.question
        if not asked.said:
            return self.values
        return _values(asked.claim.measure, tuple(asked.whole.items()), WHOLE_RANGE_RUNS, self.seed)[1]

    @cached_property
    def whole_share(self) -> float:
        """Share of the whole range in which the claim is true [1]."""
        return float(self._true_in(self.whole).mean())

    @cached_property
    def tornado(self) -> tuple[Lever, ...]:
        """The quantity when one input after the other goes to the ends of its range, the widest swing first."""
        return _tornado(self.question.claim.measure, tuple(self.question.declared.items()))

    @cached_property
    def share(self) -> float:
        """Share of the range of what was said in which the claim is true [1]."""
        return float(self.true.mean())

    @cached_property
    def quantiles(self) -> dict[str, float]:
        """Quantiles of the quantity, in the claim's unit."""
        found = np.quantile(self.values, QUANTILES).tolist()
        return {f"{share:g}": value for share, value in zip(QUANTILES, found, strict=True)}

    @property
    def _outcome(self) -> Array:
        """What inputs are to tell of each run: whether the claim is true, or where that hardly differs, the number."""
        return self.true.astype(float) if 0.02 <= self.share <= 0.98 else self.values

    @cached_property
    def bins(self) -> list[Bins]:
        """Every input that matters, in steps; the most telling first.

        One that would tell as much by chance is left out: of so many as are looked at, one in a hundred claims has one.
        """
        claim_inputs = {key for key, extent in self.question.declared.items() if extent.varies}
        figures = {key for key in self.draws.columns if key in CAR_AND_DRIVE and INPUTS[key].kind == "number"}
        cut = (Bins.of(key, self.draws[key], self.question.declared.get(key)) for key in sorted(claim_inputs | figures))
        steps = [bins for bins in cut if len(bins.steps) > 1]
        outcome = self._outcome
        cars = Bins.of("car", self.draws["car"]).place
        # a figure of the car tells only what its class does not tell already
        within = outcome - (np.bincount(cars, outcome) / np.bincount(cars))[cars]
        left = within.var() / outcome.var() if outcome.var() > 0 else 0.0
        told_by = {}
        for step in steps:
            of, part = (outcome, 1.0) if step.key in claim_inputs else (within, left)
            if step.by_chance(of) * len(steps) < BY_CHANCE:
                told_by[step.key] = part * step.explained(of)
        named = (step for step in steps if told_by.get(step.key, 0.0) > 0)
        return sorted(named, key=lambda step: -told_by[step.key])

    @cached_property
    def region(self) -> tuple[list[tuple[Bins, Steps]], WhichRuns, float]:
        """Conditions that can be named, of inputs left open, the runs within, and in which share of them it is true.

        Where two conditions serve alike, the one is named that the claim's data name first, and the kind of car last.
        """
        broadly = self.question.claim.broadly
        return region_of(*self._found_elsewhere, broadly)

    @cached_property
    def _found_elsewhere(self) -> tuple[dict[int, Steps], WhichRuns, list[Bins]]:
        """Conditions found on the runs of the search, and what they must hold of here."""
        if not self.open_bins or (self._hopeless and not self._hangs_on_conditions):
            return {}, self.surely, []
        sought = self.sought
        conditions = conditions_of(sought.surely, sought.open_bins, self.question.claim.broadly, SEARCH_SEED)
        here = [Bins.of(bins.key, self.draws[bins.key], self.question.declared[bins.key]) for bins in sought.open_bins]
        same = all(bins.steps == other.steps for bins, other in zip(here, sought.open_bins, strict=True))
        return conditions if same else {}, self.surely, here

    @property
    def _hopeless(self) -> bool:
        """Whether it is true in too few runs for any conditions to be named, whatever would be found elsewhere."""
        return float(self.surely.mean()) < LEAST_CONFIRMED * self.question.claim.broadly

    @property
    def sought(self) -> Answer:
        """The same claim on the runs on which conditions are sought."""
        return self if self.seed == SEARCH_SEED else check(self.question, SEARCH_SEED)

    @cached_property
    def open_bins(self) -> list[Bins]:
        """The inputs left open that may be named, in steps."""
        if self.question.relation in OF_ALL_RUNS:
            return []
        bins = [Bins.of(key, self.draws[key], over) for key, over in self.question.not_said.items()]
        return sorted((step for step in bins if step.explained(self._outcome) > 0), key=lambda step: step.key == "car")

    @property
    def region_share(self) -> float:
        """Share of the runs in that region in which the claim is true, on cars that were not used to find it [1]."""
        return self.region[2]

    @cached_property
    def verdict(self) -> str:
        """The verdict, by the printed rule."""
        if self.question.beyond:
            return BEYOND
        return CLOSE if self.close_by else self.plain_verdict

    @cached_property
    def plain_verdict(self) -> str:
        """The verdict of the shares and numbers as they are, whatever could turn it."""
        asked = self.question
        if asked.relation in OF_ALL_RUNS:
            return self._verdict_of_all(self.values, self.whole)
        # conditions are sought on as many runs again, so only where the verdict hangs on them
        region_share = self.region_share if self._hangs_on_conditions else 0.0
        return verdict_of(self.share, self.whole_share, region_share, asked.claim.always)

    @property
    def _hangs_on_conditions(self) -> bool:
        """Whether the verdict is another where conditions can be named."""
        claim = self.question.claim
        return not claim.always and HARDLY <= self.share < claim.broadly

    def _verdict_of_all(self, values: Array, whole: Array, shift: float = 0.0) -> str:
        """The verdict of a top or a mean that lies `shift` standard errors of these runs higher."""
        asked = self.question
        low, high = asked.top_bounds
        here, over_all = (deciding(runs, asked.relation, shift) for runs in (values, whole))
        more = asked.relation == "up_to" and here > high
        return verdict_of_all(low <= here <= high, low <= over_all <= high, more)

    @cached_property
    def close_by(self) -> tuple[str, ...]:
        """What could turn the verdict: the model's ``error``, or ``sampling``, the few runs; nothing where it stands.

        Of the two only the first that turns it is named.
        """
        asked = self.question
        if asked.relation in OF_ALL_RUNS:
            plain = self.plain_verdict
            shifted = zip(self.error.either_way(self.values), self.error.either_way(self.whole), strict=True)
            if any(self._verdict_of_all(values, whole) != plain for values, whole in shifted):
                return ("error",)
            shifts = (-SAMPLING_ERRORS, SAMPLING_ERRORS)
            near = any(self._verdict_of_all(self.values, self.whole, shift) != plain for shift in shifts)
            return ("sampling",) if near else ()
        broadly = asked.claim.broadly
        edges = [(edge, self.values) for edge in (HARDLY, broadly)]
        if self.share >= broadly and asked.said:
            edges.append((broadly, self.whole))
        for edge, values in edges:
            least, most = self._shares(values)
            if least < edge <= most:
                return ("error",)
        near = any(is_near(float(self._true_in(values).mean()), edge, len(values)) for edge, values in edges)
        return ("sampling",) if near or (self._hangs_on_conditions and self._conditions_are_near) else ()

    @property
    def _conditions_are_near(self) -> bool:
        """Whether it hangs on the few runs within whether the conditions that were found hold here."""
        conditions, true, bins = self._found_elsewhere
        if not conditions or not (inside := inside_of(conditions, bins)).any():
            return False
        return is_near(float(true[inside].mean()), self.question.claim.broadly, int(inside.sum()))

    @cached_property
    def by_two(self) -> ByTwo | None:
        """The claim by steps of the two inputs that matter most; None where fewer do."""
        if len(self.bins) < 2:
            return None
        down, across = self.bins[:2]
        fields = [
            [np.flatnonzero((down.place == row) & (across.place == column)) for column in range(len(across.steps))]
            for row in range(len(down.steps))
        ]
        shares = [[float(self.true[runs].mean()) if len(runs) else None for runs in row] for row in fields]
        medians = [[float(np.median(self.values[runs])) if len(runs) else None for runs in row] for row in fields]
        return ByTwo(down, across, shares, medians)

    @property
    def narrower(self) -> bool:
        """Whether the claim holds with what was said but not over the whole range."""
        if self.question.relation in OF_ALL_RUNS:
            return self.verdict == CONDITIONS
        return self.share >= self.question.claim.broadly > self.whole_share

    @property
    def how_often(self) -> str:
        """In how much of what was varied a claim is true, where runs are tested; no share, which would read as odds."""
        if self.share in (0, 1):
            return "always" if self.share else "never"
        if self.share < HARDLY:
            return "at-the-edge"
        if self.share < BROADLY:
            return "partly"
        return "nearly-always" if self.share >= ALWAYS else "mostly"

    @property
    def too_low(self) -> bool:
        """Whether it does not hold since nearly all runs, or what decides, lie above what was claimed."""
        if self.verdict not in (FALSE, NOT_AS_SAID) or self.question.claim.always:
            return False
        if self.question.relation in OF_ALL_RUNS:
            return deciding(self.values, self.question.relation) > self.question.top_bounds[1]
        return float((self.values > self.question.bounds[1]).mean()) > 1 - HARDLY

    @property
    def too_high(self) -> bool:
        """Whether it does not hold since nearly all runs, or what decides, lie below what was claimed."""
        if self.verdict not in (FALSE, NOT_AS_SAID) or self.question.claim.always:
            return False
        if self.question.relation in OF_ALL_RUNS:
            return deciding(self.values, self.question.relation) < self.question.top_bounds[0]
        return float((self.values < self.question.bounds[0]).mean()) > 1 - HARDLY

    @property
    def farthest_miss(self) -> float:
        """The number of the run that is farthest from what is claimed always to be so [the claim's unit]."""
        low, high = self.question.bounds
        return float(self.values[np.argmax(np.maximum(low - self.values, self.values - high))])

    def again(self, run: int) -> float:
        """The number of one run, by its place from 0, driven again by itself [the claim's unit]."""
        return float(self.question.claim.measure(self.draws.at(np.array([run])))[0])

    @staticmethod
    def band(values: Array) -> tuple[float, float]:
        """5 and 95 % points of some runs [the claim's unit]."""
        low, high = np.quantile(values, (0.05, 0.95))
        return float(low), float(high)


def deciding(values: Array, relation: str, shift: float = 0.0) -> float:
    """The number of all runs that decides a claim of an average or of a top [unit of the claim].

    `shift` standard errors of what so many runs can tell higher.
    """
    if relation == "on_average":
        return float(values.mean() + shift * values.std() / math.sqrt(len(values)))
    point = TOP + shift * math.sqrt(TOP * (1 - TOP) / len(values))
    return float(np.quantile(values, min(point, 1.0)))


@lru_cache(maxsize=64)
def _values(measure: Measure, inputs: tuple[tuple[str, Open], ...], runs: int, seed: int) -> tuple[Draws, Array, int]:
    """Draws, the quantity in each, and how many drawn cars were left out since they could not drive."""
    draws = fitting(draw(dict(inputs), runs, seed))
    values = measure(draws)
    if nothing := int(np.isinf(values).sum()):
        raise InputError("claim-ratio-to-nothing", nothing=nothing, runs=runs)
    driven = np.isfinite(values)
    if not driven.any():
        raise InputError("claim-no-car-can-drive")
    return draws.at(driven), values[driven], int((~driven).sum())


@lru_cache(maxsize=64)
def _tornado(measure: Measure, inputs: tuple[tuple[str, Open], ...]) -> tuple[Lever, ...]:
    """The quantity when one input after the other goes to the ends of its range, the widest swing first."""
    draws, changed = one_at_a_time(dict(inputs))
    base, *found = measure(draws).tolist()
    swings: dict[str, list[tuple[float, Entry]]] = {}
    for (key, value), result in zip(changed, found, strict=True):
        if not math.isfinite(result):
            continue
        swings.setdefault(key, [(base, draws[key].tolist()[0])]).append((result, value))
    rows = []
    for key, results in swings.items():
        (low, at_low), (high, at_high) = min(results, key=lambda r: r[0]), max(results, key=lambda r: r[0])
        if high - low > ROUNDED_AWAY * abs(base):
            rows.append(Lever(key, base, low, high, at_low, at_high))
    return tuple(sorted(rows, key=lambda row: row.low - row.high))


def check(asked: Question, seed: int = SEED) -> Answer:
    """Test a claim; what has been run before is not run again.

    Raises
    ------
    InputError
        Where no drawn car can drive what was said.
    """
    return Answer(asked, *_values(asked.claim.measure, tuple(asked.declared.items()), asked.claim.runs, seed), seed)
