"""Under which conditions a claim is true: the parts of its inputs' ranges in which nearly all runs are."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import combinations
from typing import Any

import numpy as np

from model.claim_draws import INPUTS
from model.claim_prose import Units, metric, stretch_words, values_words
from model.trace import Array

LEAST_REGION, CLEAR_REGION = 0.05, 0.9
"""Named conditions cover at least the first share of the range; no more are added when the second is true there [1]."""
MOST_CONDITIONS = 4
"""How many conditions are named at most."""
BINS = 5
"""Steps into which a band is cut."""


@dataclass(frozen=True, eq=False)
class Bins:
    """One input cut into steps: five of equal count for a band, one a value otherwise."""

    key: str
    names: tuple[Any, ...]
    place: Any
    ordered: bool

    @classmethod
    def of(cls, key: str, column: Array) -> Bins:
        """The steps of one drawn input."""
        values = np.unique(column)
        if INPUTS[key].kind != "number" or len(values) <= BINS:
            ordered = INPUTS[key].kind == "number"
            names = tuple(values.tolist())
            return cls(key, names, np.searchsorted(values, column), ordered)
        edges = np.unique([float(f"{edge:.3g}") for edge in np.quantile(column, np.linspace(0, 1, BINS + 1))])
        place = np.clip(np.searchsorted(edges, column, side="right") - 1, 0, len(edges) - 2)
        return cls(key, tuple(zip(edges[:-1].tolist(), edges[1:].tolist(), strict=True)), place, True)

    def explained(self, values: Array) -> float:
        """Share of the variance of `values` that lies between the steps [1]."""
        counts = np.bincount(self.place, minlength=len(self.names))
        means = np.bincount(self.place, values, len(self.names)) / np.maximum(counts, 1)
        spread = values.var()
        return float((counts * (means - values.mean()) ** 2).sum() / len(values) / spread) if spread > 0 else 0.0

    def parts(self, true: Array) -> list[list[int]]:
        """Parts that can be named: runs of neighbouring steps, or the values under which the claim is true most."""
        steps = range(len(self.names))
        if self.ordered:
            return [list(range(first, last)) for first, last in combinations(range(len(self.names) + 1), 2)]
        counts = np.bincount(self.place, minlength=len(self.names))
        truths = np.bincount(self.place, true, len(self.names)) / np.maximum(counts, 1)
        order = sorted(steps, key=lambda step: (-truths[step], step))
        return [order[: size + 1] for size in steps]

    def named(self, steps: Sequence[int], units: Units = metric) -> str:
        """Some steps in words."""
        field, names = INPUTS[self.key], [self.names[step] for step in sorted(steps)]
        if isinstance(names[0], tuple):
            return stretch_words(field, names[0][0], names[-1][1], units)
        left = [name for name in self.names if name not in names]
        if len(self.names) > 3 and 0 < len(left) < len(names):
            return f"any but {values_words(field, left, units)}"
        return values_words(field, names, units)


def region_of(true: Array, bins: Sequence[Bins]) -> tuple[list[tuple[Bins, list[int]]], Array]:
    """Conditions under which the claim is true: the named parts of inputs, and which runs they hold.

    Greedy: each time the part of an input that raises the share of true runs most, weighed by the share of the runs
    that it keeps (the usual measure of subgroup discovery), until the claim is true in nearly all runs inside.
    """
    inside = np.ones(len(true), dtype=bool)
    conditions: list[tuple[Bins, list[int]]] = []
    while true[inside].mean() < CLEAR_REGION and len(conditions) < MOST_CONDITIONS:
        best, found = 0.0, None
        here = true[inside].mean()
        for this in bins:
            for part in this.parts(np.where(inside, true, False)):
                kept = inside & np.isin(this.place, part)
                if kept.mean() < LEAST_REGION:
                    continue
                gain = kept.mean() * (true[kept].mean() - here)
                if gain > best + 1e-12:
                    best, found = gain, (this, part, kept)
        if found is None:
            break
        conditions = [one for one in conditions if one[0] is not found[0]] + [found[:2]]
        inside = found[2]
    return conditions, inside
