"""Under which conditions a claim is true: parts of its inputs' ranges, found on some cars and confirmed on others.

A list of conditions that is searched for among hundreds fits the cars it was found on better than any other cars. So it
is sought on runs of its own, where it is found on one half and must hold on the other, and it or a near relative must
come out of many such splits; then it must hold on the claim's runs, which had no part in it. The runs of the search are
the same whatever the seed, so that a condition at the edge does not come and go with it.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import combinations

import numpy as np
from numpy.typing import NDArray

from model.claims.inputs import INPUTS, Extent, Open
from model.describe.trace import Array

LEAST_REGION = 0.045
"""Named conditions cover at least this share of the runs [1]: one value of twenty, but for chance."""
LEAST_CONFIRMED = LEAST_REGION / 2
"""The same on runs that had no part in finding them [1]: chance may have taken some of them away."""
CLEARLY = 0.6
"""No more conditions are added once the claim is true in this much of what is left beyond “broadly” [1]."""
STANDARD_ERRORS = 1.0
"""Standard errors of its own by which a share must pass “broadly” for its step to be named [1]."""
SPLITS = 15
"""How often the runs are split at random."""
RELATED = 0.75
"""Two lists are near relatives where the runs that both hold are at least this share of those that either holds [1]."""
OFTEN = 1 / 2
"""A list stands if it or a near relative is found and confirmed in more than this share of the splits [1]."""
TIE = 0.9
"""Of inputs that serve this share of the best or more [1], the one is named that the claim's data name first."""
MOST_CONDITIONS = 4
"""How many conditions are named at most."""
BINS = 5
"""Steps into which a band is cut."""


Steps = tuple[int, ...]
"""Some steps of an input, by their places."""
WhichRuns = NDArray[np.bool_]
"""What is so in each run, shape (runs,)."""


@dataclass(frozen=True, eq=False)
class Bins:
    """One input cut into steps: five of equal count for a band, one a value otherwise."""

    key: str
    steps: tuple[Extent, ...]
    place: NDArray[np.intp]
    ordered: bool

    @classmethod
    def of(cls, key: str, column: Array, over: Open | None = None) -> Bins:
        """The steps of one drawn input; of a band that is known, `over`, they are the same whatever was drawn."""
        values = np.unique(column)
        if INPUTS[key].kind != "number" or len(values) <= BINS:
            ordered = INPUTS[key].kind == "number"
            steps = tuple(Extent((value,)) for value in values.tolist())
            return cls(key, steps, np.searchsorted(values, column), ordered)
        shares = np.linspace(0, 1, BINS + 1)
        cuts = over.at(shares) if over is not None and over.band else np.quantile(column, shares)
        edges = np.unique([float(f"{edge:.3g}") for edge in cuts])
        place = np.clip(np.searchsorted(edges, column, side="right") - 1, 0, len(edges) - 2)
        steps = tuple(Extent(ends, stretch=True) for ends in zip(edges[:-1].tolist(), edges[1:].tolist(), strict=True))
        return cls(key, steps, place, True)

    def explained(self, values: Array) -> float:
        """Share of the variance of `values` that lies between the steps [1]."""
        counts = np.bincount(self.place, minlength=len(self.steps))
        means = np.bincount(self.place, values, len(self.steps)) / np.maximum(counts, 1)
        spread = values.var()
        return float((counts * (means - values.mean()) ** 2).sum() / len(values) / spread) if spread > 0 else 0.0

    def by_chance(self, values: Array) -> float:
        """How likely as much would lie between the steps if they were all alike [1].

        The share of the variance between equal groups, times the runs, scatters as chi-squared with a degree of freedom
        less than there are groups (Pearson's test of independence where `values` are true or false).
        """
        filled = int((np.bincount(self.place, minlength=len(self.steps)) > 0).sum())
        return _chi_squared_beyond(self.explained(values) * len(values), filled - 1)

    def counts(self, runs: WhichRuns) -> Array:
        """How many of these runs lie in each step [1]."""
        return np.bincount(self.place, runs, len(self.steps)).astype(float)

    def rates(self, true: WhichRuns, inside: WhichRuns) -> Array:
        """In which share of the runs inside the claim is true, for each step [1]."""
        return self.counts(inside & true) / np.maximum(self.counts(inside), 1)

    def parts(self, true: WhichRuns, inside: WhichRuns) -> list[Steps]:
        """Parts that can be named: neighbouring steps, or the values under which the claim is true most."""
        steps = range(len(self.steps))
        if self.ordered:
            return [tuple(range(first, last)) for first, last in combinations(range(len(self.steps) + 1), 2)][:-1]
        rates = self.rates(true, inside)
        order = sorted(steps, key=lambda step: (-rates[step], step))
        return [tuple(sorted(order[: size + 1])) for size in steps[:-1]]

    def true_part(self, true: WhichRuns, inside: WhichRuns, broadly: float) -> Steps:
        """The steps inside in which the claim is clearly true in this share of runs [1]; the longest row of an order.

        A step that is too close to call would be named on some runs and not on others, so it is not named.
        """
        counts, rates = self.counts(inside), self.rates(true, inside)
        least = broadly + STANDARD_ERRORS * np.sqrt(broadly * (1 - broadly) / np.maximum(counts, 1))
        good = [step for step in range(len(self.steps)) if counts[step] and rates[step] >= min(least[step], 1.0)]
        if not self.ordered:
            return tuple(good)
        rows = [tuple(row) for first, last in combinations(range(len(self.steps) + 1), 2)
                if set(row := range(first, last)) <= set(good)]  # fmt: skip
        return max(rows, key=lambda row: counts[list(row)].sum(), default=())

    def part(self, places: Sequence[int]) -> Extent:
        """Some neighbouring steps of a band, or some values: those that are left where these are fewer."""
        steps = [self.steps[place] for place in sorted(places)]
        if steps[0].stretch:
            return Extent((steps[0].values[0], steps[-1].values[1]), stretch=True)
        left = [step for step in self.steps if step not in steps]
        all_but = len(self.steps) > 3 and 0 < len(left) < len(steps)
        return Extent(tuple(step.values[0] for step in (left if all_but else steps)), all_but=all_but)


def _chi_squared_beyond(value: float, degrees: int) -> float:
    """The chance that chi-squared of some degrees of freedom lies beyond a value [1]."""
    if degrees < 1:
        return 1.0
    half = value / 2
    beyond = math.erfc(math.sqrt(half)) if degrees % 2 else math.exp(-half)
    for order in range(2 - degrees % 2, degrees, 2):
        beyond += math.exp(order / 2 * math.log(half) - half - math.lgamma(order / 2 + 1)) if half > 0 else 0.0
    return beyond


def inside_of(conditions: Mapping[int, Steps], bins: Sequence[Bins]) -> WhichRuns:
    """Which runs lie within the conditions, by the places of their inputs; shape (runs,)."""
    inside = np.ones(len(bins[0].place), dtype=bool)
    for at, part in conditions.items():
        named = np.zeros(len(bins[at].steps), dtype=bool)
        named[list(part)] = True
        inside &= named[bins[at].place]
    return inside


def found_on(half: WhichRuns, true: WhichRuns, bins: Sequence[Bins], broadly: float) -> dict[int, Steps]:
    """Conditions under which the claim is true on half of the runs, by the places of their inputs.

    Greedy: each time the part of an input that raises the share of true runs most, weighed by the share of the runs
    that it keeps (the usual measure of subgroup discovery). Then each part becomes all the steps in which, with the
    other conditions, the claim is true broadly.
    """
    conditions: dict[int, Steps] = {}
    tried: list[dict[int, Steps]] = []
    enough = broadly + (1 - broadly) * CLEARLY
    while conditions not in tried and len(conditions) < MOST_CONDITIONS:
        tried.append(dict(conditions))
        everywhere = inside_of(conditions, bins)
        inside = everywhere & half
        if not inside.any() or (here := true[inside].mean()) >= enough:
            break
        gains: dict[int, tuple[float, Steps]] = {}
        for at in set(range(len(bins))) - set(conditions):
            covered = bins[at].counts(everywhere) / len(true)
            kept, rates = bins[at].counts(inside), bins[at].rates(true, inside)
            for part in bins[at].parts(true, inside):
                steps = list(part)
                # how much is covered is known of all runs; whether it is true there only of this half
                if covered[steps].sum() >= LEAST_REGION and kept[steps].any():
                    gain = float((kept[steps] * (rates[steps] - here)).sum())
                    gains[at] = max(gains.get(at, (0.0, ())), (gain, part))
        most = max((gain for gain, _ in gains.values()), default=0.0)
        if most <= 0:
            break
        first = min(at for at, (gain, _) in gains.items() if gain >= TIE * most)
        conditions[first] = gains[first][1]
        for at in list(conditions):
            others = inside_of({other: part for other, part in conditions.items() if other != at}, bins) & half
            part = bins[at].true_part(true, others, broadly)
            if len(part) == len(bins[at].steps):
                del conditions[at]
            elif part:
                conditions[at] = part
    return conditions


def conditions_of(true: WhichRuns, bins: Sequence[Bins], broadly: float, seed: int) -> dict[int, Steps]:
    """Conditions under which the claim is true, by the places of their inputs; none where no list comes often enough.

    `true` says so of each run, shape (runs,); `bins` are the inputs that may be named, and from the share `broadly` [1]
    of the runs on a claim is true. `seed` is that of the splits.
    """
    random, runs = np.random.RandomState(seed), len(true)
    lists: list[dict[int, Steps]] = []
    held: list[WhichRuns] = []
    for _ in range(SPLITS if bins else 0):
        half = np.zeros(runs, dtype=bool)
        half[random.permutation(runs)[: runs // 2]] = True
        conditions = found_on(half, true, bins, broadly)
        inside = inside_of(conditions, bins)
        others = inside & ~half
        if conditions and inside.mean() >= LEAST_REGION and others.any() and true[others].mean() >= broadly:
            lists.append(conditions)
            held.append(inside)
    if not lists:
        return {}
    alike = np.array([[(mask & other).sum() / (mask | other).sum() for other in held] for mask in held])
    relatives = (alike >= RELATED).sum(axis=1)
    # of those with the most relatives the one that is most like them all
    best = int(np.lexsort((alike.mean(axis=1), relatives))[-1])
    return lists[best] if relatives[best] > OFTEN * SPLITS else {}


def region_of(
    conditions: Mapping[int, Steps], true: WhichRuns, bins: Sequence[Bins], broadly: float
) -> tuple[list[tuple[Bins, Steps]], WhichRuns, float]:
    """Conditions that also hold on runs which had no part in finding them, the runs within, and how often it is true.

    Parameters
    ----------
    conditions : mapping
        Parts by the places of their inputs, as `conditions_of` finds them on other runs.
    true, bins, broadly
        As there, of these runs.

    Returns
    -------
    conditions : list
        Inputs and their parts; empty where they do not hold here.
    inside : array (runs,)
        Which runs they hold; all of them where there is no condition.
    share : float
        In which share of the runs inside the claim is true [1].
    """
    inside = inside_of(conditions, bins) if conditions else np.ones(len(true), dtype=bool)
    share = float(true[inside].mean()) if inside.any() else 0.0
    if conditions and inside.mean() >= LEAST_CONFIRMED and share >= broadly:
        return [(bins[at], part) for at, part in conditions.items()], inside, share
    return [], np.ones(len(true), dtype=bool), float(true.mean())
