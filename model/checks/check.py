"""What a check against the outside is made of, and the certified cars that several checks drive."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from model.describe.car import Car
from model.describe.figures import Quantity, Share
from model.describe.parameters import car_from, class_of_mass
from model.describe.scenario import Driver
from model.describe.tables import rows
from model.describe.units import KG_PER_LB, MPS_PER_MPH, N_PER_LBF
from model.kernel.savings import Result, evaluate
from model.traces.cycles import LABORATORY, cycle_trace

CITY_SHARE = 0.55
"""Share of city driving in the combined figure of the US certification, by distance (40 CFR 600)."""
TEST_LOAD_KG = 300 * KG_PER_LB
"""The test weight is the empty car and 300 lb (40 CFR 86.1803)."""
DRIVER_KG = 75.0
"""The driver that the mass of a class includes."""


@dataclass(frozen=True)
class Outcome:
    """One number that the model gives, and what is published for it: a number, a range, or nothing (None).

    `what` names the message that tells what the number is, `given` are the parts that the message takes.
    """

    what: str
    value: float
    published: float | tuple[float, float] | None = None
    unit: str = "%"
    given: tuple[tuple[str, Quantity | str], ...] = ()

    @property
    def name(self) -> str:
        """What distinguishes it from the check's other numbers."""
        parts = (f"{part.value:g}" if isinstance(part, Quantity) else part for _, part in self.given)
        return " ".join((self.what, *parts))

    @property
    def off(self) -> float | None:
        """How far it lies above what is published (below: negative) [its unit]; None where nothing is published."""
        if self.published is None:
            return None
        low, high = self.published if isinstance(self.published, tuple) else (self.published, self.published)
        return self.value - min(max(self.value, low), high)


@dataclass(frozen=True)
class Check:
    """The model beside its sources, by their ids, and what was found.

    The message ``check-`` and its id tells what is compared, what the sources publish and how it was done; `given` are
    the parts that it takes. It is no evidence where an agreement would prove nothing.
    """

    id: str
    sources: tuple[str, ...]
    found: tuple[Outcome, ...]
    is_evidence: bool = True
    given: tuple[tuple[str, Share], ...] = ()


@cache
def ranges_set() -> dict[str, tuple[str, str]]:
    """By a check's id, the commit since which its range has stood in the tests, and that commit's day.

    ``tests/published`` derives both from the history and compares them where there is one.
    """
    return {row["check"]: (row["set_in"], row["set_on"]) for row in rows("published/ranges_set.csv", once=("check",))}


def on_cycle(cycle: str, car: Car, driver: Driver | None = None) -> Result:
    """A standard cycle as in a laboratory: warm, cabin off, part-charged."""
    return evaluate(cycle_trace(cycle), car, LABORATORY, driver or Driver())


def certified(row: Mapping[str, str]) -> tuple[str, Car]:
    """The class and the car of a row of ``assets/published/epa_certification.csv``.

    Measured road load and test weight, everything else as the class of nearest mass, the driver included, has it.
    """
    test_weight_kg = float(row["etw_lb"]) * KG_PER_LB
    car_class = class_of_mass(test_weight_kg - TEST_LOAD_KG + DRIVER_KG)
    return car_class, car_from(
        car_class,
        {
            "mass_kg": test_weight_kg,
            "f0_n": float(row["a_lbf"]) * N_PER_LBF,
            "f1_n_per_mps": float(row["b_lbf_per_mph"]) * N_PER_LBF / MPS_PER_MPH,
            "f2_n_per_mps2": float(row["c_lbf_per_mph2"]) * N_PER_LBF / MPS_PER_MPH**2,
        },
    )
