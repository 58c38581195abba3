"""What a claim may leave open or name: every input, and what it runs over."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

import numpy as np

from model.describe.car import CAR_FIELDS
from model.describe.fields import Entry, Field, FieldError, InputError, choice, fields_of, number, yes_no
from model.describe.parameters import DEFAULT_CLASS, battery_classes, hybrid_classes
from model.describe.scenario import CONDITION_FIELDS, DRIVER_FIELDS, LEG_FIELDS
from model.describe.trace import Array
from model.sampling.uncertainty import triangular

DRIVES = (
    "udds", "hwfet", "us06", "nycc", "wltc3b", "wltc3b-low", "wltc3b-medium", "wltc3b-high", "wltc3b-extra-high",
    "nedc", "nedc-urban", "nedc-extra-urban", "town", "suburb-hill", "hill", "motorway", "mountain-valley",
)  # fmt: skip
"""What may be driven: the standard cycles, the starting drives, and a hill of 300 m."""
CAR_AND_DRIVE: dict[str, Field] = CAR_FIELDS | CONDITION_FIELDS | DRIVER_FIELDS


@dataclass(frozen=True, kw_only=True)
class ClaimSettings:
    """What only claims ask, beside the settings of car, conditions and driver."""

    car: str = choice(battery_classes(), default=DEFAULT_CLASS)
    cycle: str = choice(DRIVES, default="udds")
    hybrid: str = choice(hybrid_classes(), default="full-hybrid")
    denominator: str = choice(
        ("recovered", "of_braking", "range_gain", "electric_braking", "range_lost"), default="recovered",
    )
    counted: str = choice(("energy", "slow_downs"), default="energy")
    slower_by_kmh: float = number("km/h", 1, 200, (5, 60), default=30.0)
    slowing_mps2: float = number("m/s²", 0.1, 12, (0.5, 9), default=1.3)
    height_m: float = number("m", 10, 4000, (30, 1500), default=300.0)
    gentle_mps2: float = number("m/s²", 0, 3.5, (0, 0.7), default=0.5)
    strong_mps2: float = number("m/s²", 0, 3.5, (0.7, 2.5), default=1.5)
    extra_mass_pct: float = number("%", 0, 200, (5, 100), default=30.0)
    motor_factor: float = number("1", 1, 5, (1.2, 3), default=2.0)
    delay_ms: float = number("ms", 0, 1000, (10, 500), default=150.0)
    time_made_up: bool = yes_no(default=False)


INPUTS: dict[str, Field] = {key: field for key, field in (
    {key: replace(LEG_FIELDS[key], message=f"claim-{key}") for key in ("speed_kmh", "grade_pct")}
    | CAR_AND_DRIVE | fields_of(ClaimSettings, "claim")
).items() if field.kind != "text"}  # fmt: skip
"""Everything that a claim may leave open or name; a name that somebody wrote changes no number."""


@dataclass(frozen=True)
class Extent:
    """A part of what an input runs over: some values, the `stretch` between two, or `all_but` some."""

    values: tuple[Entry, ...]
    stretch: bool = False
    all_but: bool = False


@dataclass(frozen=True)
class Open:
    """What one input runs over: a band (low, mid, high), or values in equal parts of which the first is the base."""

    values: tuple[Entry, ...]
    band: bool = False

    @property
    def base(self) -> Entry:
        """The value that is kept while another input is varied."""
        return self.values[1] if self.band else self.values[0]

    @property
    def varies(self) -> bool:
        """Whether there is more than one value."""
        return self.values[0] != self.values[-1]

    def within(self, other: Open) -> bool:
        """Whether it runs over nothing that `other` does not run over."""
        if other.band:
            return other.numbers[0] <= min(self.numbers) and max(self.numbers) <= other.numbers[-1]
        return set(self.values) <= set(other.values)

    @property
    def ends(self) -> tuple[Entry, ...]:
        """The values that a one-at-a-time change tries."""
        return (self.values[0], self.values[2]) if self.band else self.values[1:]

    def at(self, share: Array) -> Array:
        """Values at places of the range [1]."""
        if self.band:
            return triangular(share, *self.numbers)
        return np.array(self.values)[(share * len(self.values)).astype(int)]

    @property
    def numbers(self) -> tuple[float, ...]:
        """Its values, of an input that is a number."""
        return tuple(float(value) for value in self.values if isinstance(value, int | float))

    @property
    def part(self) -> Extent:
        """All of it."""
        return Extent((self.values[0], self.values[2]), stretch=True) if self.band else Extent(self.values)


def open_from(field: Field, given: object) -> Open:
    """What an input runs over, from a claim's data: ``[low, mid, high]``, ``{"one_of": [...]}``, choices or a value."""
    if isinstance(given, Mapping):
        return Open(tuple(field.parse(value) for value in given["one_of"]))
    if field.kind == "number" and isinstance(given, list):
        return Open(tuple(field.parse(value) for value in given), band=True)
    return Open(tuple(field.parse(value) for value in (given if isinstance(given, list) else [given])))


def narrowed(field: Field, whole: Open, said: str) -> Open:
    """An input as someone said it: a value, ``low..high``, ``one,or,another``, or ``open`` for the whole range.

    Raises
    ------
    InputError
        Where a value is not allowed, or the lower end is above the higher.
    """
    if said == "open":
        return whole
    low, dots, high = said.partition("..")
    if not dots:
        return Open(tuple(field.parse(value.strip()) for value in said.split(",")))
    if field.kind != "number":
        raise FieldError(field, said)
    least, most = field.number(low), field.number(high)
    if least > most:
        raise InputError("range-runs-downwards", field=field, given=said)
    if whole.band or len(whole.values) <= 1:
        # the words of the claim fix one value, or none
        mid = whole.numbers[1] if whole.band else (least + most) / 2
        return Open((least, min(max(mid, least), most), most), band=True)
    return Open(tuple(value for value in whole.numbers if least <= value <= most) or (least, most))
