"""What a check against the outside is made of, and the certified cars that several checks drive."""

from __future__ import annotations

from dataclasses import dataclass

from model.car import Car
from model.cycles import LABORATORY, cycle_trace
from model.parameters import assumed_figures, battery_classes, car_from
from model.savings import Result, evaluate
from model.scenario import Driver
from model.units import KG_PER_LB, MPS_PER_MPH, N_PER_LBF

CITY_SHARE = 0.55
"""Share of city driving in the combined figure of the US certification, by distance (40 CFR 600)."""
CHARGING_EFFICIENCY = 0.88
TEST_LOAD_KG = 300 * KG_PER_LB
"""The test weight is the empty car and 300 lb (40 CFR 86.1803)."""
DRIVER_KG = 75.0
"""The driver that the mass of a class includes."""


@dataclass(frozen=True)
class Found:
    """One number that the model gives, and the range allowed for it; without a range it is reported only."""

    what: str
    value: float
    allowed: tuple[float, float] | None = None
    unit: str = "%"

    @property
    def holds(self) -> bool:
        """Whether the number lies in the allowed range; true where it is only reported."""
        return self.allowed is None or self.allowed[0] <= self.value <= self.allowed[1]

    def __str__(self) -> str:
        allowed = "reported" if self.allowed is None else f"allowed {self.allowed[0]:g} to {self.allowed[1]:g}"
        return f"{self.what}: {self.value:.1f} {self.unit} ({allowed})"


@dataclass(frozen=True)
class Check:
    """The model beside one source: what it publishes, how it was compared, and what was found."""

    id: str
    title: str
    source: str
    published: str
    note: str
    found: tuple[Found, ...]

    @property
    def holds(self) -> bool:
        """Whether every number lies in its allowed range."""
        return all(found.holds for found in self.found)

    def __str__(self) -> str:
        return "\n  ".join([f"{self.title}. Published: {self.published}.", *map(str, self.found)])


def on_cycle(cycle: str, car: Car, driver: Driver | None = None) -> Result:
    """A standard cycle as in a laboratory: warm, cabin off, part-charged."""
    return evaluate(cycle_trace(cycle), car, LABORATORY, driver or Driver())


def class_of_weight(test_weight_kg: float) -> str:
    """The battery class that stands in for a certified car: the one of nearest mass, the driver included."""
    mass_kg = test_weight_kg - TEST_LOAD_KG + DRIVER_KG
    return min(battery_classes(), key=lambda car_class: abs(assumed_figures(car_class)["mass_kg"].mid - mass_kg))


def certified(row: dict[str, str]) -> tuple[str, Car]:
    """The class and the car of a row of ``assets/published/epa_certification.csv``.

    Measured road load and test weight, everything else as the class of nearest mass has it.
    """
    test_weight_kg = float(row["etw_lb"]) * KG_PER_LB
    car_class = class_of_weight(test_weight_kg)
    return car_class, car_from(
        car_class,
        {
            "mass_kg": test_weight_kg,
            "f0_n": float(row["a_lbf"]) * N_PER_LBF,
            "f1_n_per_mps": float(row["b_lbf_per_mph"]) * N_PER_LBF / MPS_PER_MPH,
            "f2_n_per_mps2": float(row["c_lbf_per_mph2"]) * N_PER_LBF / MPS_PER_MPH**2,
            "charging_efficiency": CHARGING_EFFICIENCY,
        },
    )
