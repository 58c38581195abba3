"""What a claim's number measures: a quantity of one case, or of one case held against another."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from model.claims.draws import Draws
from model.claims.quantities import QUANTITIES, over
from model.describe.fields import Entry
from model.describe.trace import Array

COMPARED: dict[str, Callable[[Array, Array], Array]] = {
    "more": lambda case, other: 100 * (over(case, other, other) - 1),
    "less": lambda case, other: 100 * (1 - over(case, other, other)),
    "of": lambda case, other: 100 * over(case, other, other),
    "times": lambda case, other: over(case, other, other),
    "difference": lambda case, other: case - other,
}
"""How one case is held against another [%, %, %, 1, the quantity's unit]."""


@dataclass(frozen=True)
class Measure:
    """What a claim's number measures: a quantity, or that of one case `compared` with another.

    The other case differs in what `against` sets; `hybrid` set to “none” is a car that drives on its battery alone.
    """

    quantity: str
    compared: str = ""
    against: tuple[tuple[str, Entry], ...] = ()

    def __call__(self, draws: Draws) -> Array:
        """The number of every run [its unit]."""
        count, case = QUANTITIES[self.quantity], draws
        if self.against and "hybrid" in draws.columns:
            hybrids = draws.in_cars(draws["hybrid"])
            case = hybrids.replaced(soc_start=hybrids["sustain_soc"])
        if not self.compared:
            return count(case)
        other = dict(self.against)
        base = draws if other.pop("hybrid", "") else case
        if car := other.pop("car", ""):
            base = base.in_cars(np.full(len(base), car))
        return COMPARED[self.compared](count(case), count(base.replaced(**other)))
