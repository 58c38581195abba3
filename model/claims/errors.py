"""How far off the model was found to be, for each kind of number that claims are about.

The runs of a claim carry what cars of one kind differ in. What they do not carry is that the model as a whole may be
off: that is measured beside published figures, and a verdict stands only if an error of that size cannot turn it.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import cache

import numpy as np

from model.checks.certified import certified_found
from model.checks.check import Check
from model.checks.cold import alpine_pass, distance_in_the_cold, range_in_the_cold
from model.checks.published import energy_flow, recovered_on_wltc
from model.claims.measures import Measure
from model.describe.trace import Array

KINDS = {
    "energy": ("range_km", "energy", "range_below_test_cycle"),
    "put_back": (
        "share_of_drive", "km_on_display", "range_by_lift_off", "saved_by_one_pedal", "share_by_mass",
        "recovered_by_motor", "range_by_motor", "hybrid_over_battery", "range_gain_over_recovered", "back_from_stop",
    ),
    "cold": ("range_lost_to_cold",),
    "hill": ("back_from_climb", "charge_to_leave_free"),
    "mechanics": ("kinetic_ratio", "full_stop_power_mw"),
}  # fmt: skip
"""Quantities by what is measured of them, or of what they are made of. Of the others nothing was found."""


@dataclass(frozen=True)
class ModelError:
    """The middle size of the model's misses: of its number [1], or in `points` of the number's unit.

    `kind` is one of KINDS or “unknown”, `comparisons` how many misses it is the middle of.
    """

    kind: str
    share: float = 0.0
    points: float = 0.0
    comparisons: int = 0

    def either_way(self, values: Array) -> tuple[Array, Array]:
        """The numbers of all runs if the model gave that much too much, or too little [their unit]."""
        off = np.abs(values) * self.share + self.points
        return values - off, values + off


def _misses(checks: Sequence[Check]) -> list[tuple[float, float]]:
    """What was published and how far the model was off, where a single number was published."""
    return [(number.published, number.off) for check in checks for number in check.found
            if isinstance(number.published, float) and number.off is not None]  # fmt: skip


def _of_energy() -> ModelError:
    """Makers' groups, each by its middle car, on both cycles, where only the data sheet is known."""
    sizes = []
    for cycle in ("udds", "hwfet"):
        found = certified_found("data sheet", cycle)
        sizes += [abs(np.median(found.errors_pct[np.array(found.groups) == group])) for group in set(found.groups)]
    return ModelError("energy", share=float(np.median(sizes)) / 100, comparisons=len(sizes))


def _of_put_back() -> ModelError:
    sizes = [abs(off / published) for published, off in _misses((energy_flow(), recovered_on_wltc()))]
    return ModelError("put_back", share=float(np.median(sizes)), comparisons=len(sizes))


def _of_cold() -> ModelError:
    sizes = [abs(off) for _, off in _misses((distance_in_the_cold(), range_in_the_cold()))]
    return ModelError("cold", points=float(np.median(sizes)), comparisons=len(sizes))


def _of_hill() -> ModelError:
    """Put back over what went out on the way up, of two cars on a pass."""
    found = alpine_pass().found
    sizes = []
    for up, down in zip(found[::2], found[1::2], strict=True):
        assert isinstance(up.published, float) and isinstance(down.published, float)
        sizes.append(abs(down.value / up.value / (down.published / up.published) - 1))
    return ModelError("hill", share=float(np.median(sizes)), comparisons=len(sizes))


MEASURED: dict[str, Callable[[], ModelError]] = {
    "energy": _of_energy, "put_back": _of_put_back, "cold": _of_cold, "hill": _of_hill,
    "mechanics": lambda: ModelError("mechanics"),
}  # fmt: skip


@cache
def model_error(measure: Measure) -> ModelError:
    """How far off the model was found to be in what a claim measures; nothing is known of differences of two cases."""
    for kind, quantities in KINDS.items():
        if measure.quantity in quantities and not measure.compared:
            return MEASURED[kind]()
    return ModelError("unknown")
