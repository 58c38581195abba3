"""Cars and roads as rows of numbers that compiled code reads: `car.mass_kg`, `at.speed_mps`.

The columns of a car are the table of fields itself: every number, count, choice and yes-or-no of car, conditions and
driver. A choice is its place among the field's choices, what was left empty is NaN.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache, lru_cache
from typing import Any, cast, get_type_hints

import numpy as np
from numpy.typing import NDArray

from model.describe.car import CAR_FIELDS, Car
from model.describe.fields import Field
from model.describe.scenario import CONDITION_FIELDS, DRIVER_FIELDS, SURFACES, Conditions, Driver
from model.describe.trace import Array

RECORD_COLUMNS: dict[str, Field] = {
    key: field
    for key, field in (CAR_FIELDS | CONDITION_FIELDS | DRIVER_FIELDS).items()
    if field.kind != "text"
}
"""What a record holds, by key."""
OF_NUMPY = {float: np.float64, int: np.int64, bool: np.bool_}
KINDS = {"number": np.float64, "count": np.float64, "choice": np.int64, "yes_no": np.bool_}
CAR_RECORD: np.dtype[np.void] = np.dtype(
    (np.record, [(key, KINDS[field.kind]) for key, field in RECORD_COLUMNS.items()])
)
"""One car with its conditions and its driver."""
Records = NDArray[np.void]


class Record:
    """A row of numbers as compiled functions see it, each under its column's name; they may be written."""

    def __getattr__(self, key: str) -> float:
        raise AttributeError(key)

    def __setattr__(self, key: str, value: float) -> None:
        raise AttributeError(key)


class CarRecord(Record):
    """One car: a number under each of RECORD_COLUMNS."""


def code(key: str, value: str) -> int:
    """The number that stands for a choice in a record."""
    return RECORD_COLUMNS[key].choices.index(value)


def _coded(field: Field, value: Any) -> Any:
    if field.kind != "choice":
        return np.nan if value is None else value
    if isinstance(value, str):
        return field.choices.index(value)
    kinds, places = np.unique(np.asarray(value, dtype=str), return_inverse=True)
    return np.array([field.choices.index(kind) for kind in kinds])[places]


def car_records(car: Car, conditions: Conditions, driver: Driver, drawn: Mapping[str, Array] | None = None) -> Records:
    """Cars as records, shape (cars,).

    Parameters
    ----------
    car, conditions, driver
        What all of them share.
    drawn : mapping, optional
        Figures of car, conditions or driver by key that differ from car to car, each of as many values as there are
        cars; what is none of the columns is left out.
    """
    own = {key: np.ravel(values) for key, values in (drawn or {}).items() if key in RECORD_COLUMNS}
    records = np.empty(len(next(iter(own.values()))) if own else 1, dtype=CAR_RECORD)
    records[:] = _one(car, conditions, driver)
    for key, values in own.items():
        records[key] = _coded(RECORD_COLUMNS[key], values)
    return records


@lru_cache(maxsize=500)
def _one(car: Car, conditions: Conditions, driver: Driver) -> Records:
    """One car, shape (1,); a page asks for the same few cars hundreds of times."""
    shared = {**vars(car), **vars(conditions), **vars(driver)}
    return np.array([tuple(_coded(field, shared[key]) for key, field in RECORD_COLUMNS.items())], dtype=CAR_RECORD)


def car_record(car: Car, conditions: Conditions, driver: Driver) -> CarRecord:
    """One car as a record, the same for all who ask, to be read only."""
    return cast(CarRecord, _one(car, conditions, driver)[0])


class MomentOnRoad:
    """One step of a road, in its middle; NaN is what the road does not bring of its own."""

    step_s: float
    """Length of the step."""
    passed_s: float
    """Time since the car set off, from home or for the way back."""
    before_s: float
    """Time driven before it stood; 0 on the way out."""
    warmed_up: bool
    """Whether the drive starts warmed up."""
    speed_mps: float
    acceleration_mps2: float
    sine: float
    """Of the slope [1]."""
    rise_m: float
    """Height over the start of the drive."""
    heading: float
    """1 on the way out, −1 on the way back."""
    surface: int
    """Index into `SURFACES`."""
    ambient_c: float
    """The road's own: outside temperature, lift-off strength, power of the cabin."""
    lift_off_mps2: float
    cabin_w: float
    pack_c: float
    """The road's own: temperature of the battery before and after the step."""
    pack_after_c: float
    charge_to: float
    """Charge to which it is charged from outside at the step's end [1]."""


MOMENT_ON_ROAD: np.dtype[np.void] = np.dtype(
    (np.record, [(name, OF_NUMPY[kind]) for name, kind in get_type_hints(MomentOnRoad).items()])
)


def moments_on_road(count: int) -> Records:
    """`count` moments on a flat dry road with nothing of its own, standing, warmed up."""
    return np.repeat(_one_moment(), count)


@cache
def _one_moment() -> Records:
    """One of them, shape (1,); a whole row is copied sooner than column after column is filled."""
    moment = np.zeros(1, dtype=MOMENT_ON_ROAD)
    moment["step_s"], moment["warmed_up"], moment["heading"] = 1.0, True, 1.0
    moment["surface"] = SURFACES.index("dry")
    for own in ("ambient_c", "lift_off_mps2", "cabin_w", "pack_c", "pack_after_c", "charge_to"):
        moment[own] = np.nan
    return moment
