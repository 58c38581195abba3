"""Low, mid and high of every assumed figure, with provenance, read from ``assets/``."""

from __future__ import annotations

import dataclasses
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import cast

from model.describe.car import CAR_FIELDS, Car, check_car
from model.describe.fields import Entry, InputError, filled
from model.describe.figures import Several
from model.describe.scenario import CONDITION_FIELDS, Scenario
from model.describe.sources import named_sources
from model.describe.tables import Row, TableError, rows

DEFAULT_CLASS = "family-hatch"
REFERENCE_CLASSES = (
    "city-car", "small-hatch", "family-hatch", "compact-crossover", "large-suv", "performance-saloon", "pickup", "van"
)  # fmt: skip
"""The battery classes that claims and published checks run over; the nearest stands in for a car known by its mass. A
class that is added moves none of their answers; putting it in here changes them, and so the version."""
SOURCE_KINDS = ("published", "assumed", "common practice")
ROAD_LOAD_KEYS = ("f0_n", "f1_n_per_mps", "f2_n_per_mps2")


@dataclass(frozen=True)
class Assumed:
    """One assumed figure: its band, what kind of knowledge it is, where it is from, and the ids of its sources."""

    low: Entry
    mid: Entry
    high: Entry
    kind: str
    source: str
    sources: tuple[str, ...] = ()

    @property
    def numbers(self) -> tuple[float, float, float]:
        """Low, mid and high of a figure that is a number."""
        return cast(tuple[float, float, float], (self.low, self.mid, self.high))


def _assumed(row: Row) -> Assumed:
    field = (CAR_FIELDS | CONDITION_FIELDS)[row.one_of("key", CAR_FIELDS | CONDITION_FIELDS)]
    try:
        low, mid, high = (field.parse(row[column] or row["mid"]) for column in ("low", "mid", "high"))
    except InputError as refused:
        raise row.wrong(str(refused).removesuffix(".")) from None
    if field.kind in ("number", "count"):
        for lower, upper, names in ((low, mid, "low above mid"), (mid, high, "mid above high")):
            if cast(float, lower) > cast(float, upper):
                raise row.wrong(f"{field.key} has {names}: {lower:g} and {upper:g}")
    if not row["source"].strip():
        raise row.wrong(f"{field.key} has no source")
    return Assumed(low, mid, high, row.one_of("kind", SOURCE_KINDS), row["source"], named_sources(row))


@cache
def _shared() -> dict[str, Assumed]:
    """What all cars share: ``assets/parameters.csv``."""
    return {row["key"]: _assumed(row) for row in rows("parameters.csv", once=("key",))}


@dataclass(frozen=True)
class CarClass:
    """An invented kind of car: its name, and the assumed figures that are its own beside what all cars share."""

    label: str
    figures: Mapping[str, Assumed]


@cache
def _classes() -> dict[str, CarClass]:
    """The classes of ``assets/car_classes.csv``, each complete and of figures that fit together."""
    found: dict[str, CarClass] = {}
    needed = [field.name for field in dataclasses.fields(Car) if field.default is dataclasses.MISSING]
    for row in (table := rows("car_classes.csv", once=("class", "key"))):
        entry = found.setdefault(row["class"], CarClass(row["label"], dict(_shared())))
        if row["label"] != entry.label:
            raise row.wrong(f"{row['class']} is called {row['label']!r} here and {entry.label!r} above")
        found[row["class"]] = CarClass(entry.label, {**entry.figures, row["key"]: _assumed(row)})
    for car_class, entry in found.items():
        last = [row for row in table if row["class"] == car_class][-1]
        if missing := [key for key in needed if key not in entry.figures and key != "name"]:
            raise last.wrong(f"{car_class} ends here without {', '.join(missing)}, which parameters.csv has not either")
        try:
            check_car(_middle_car(entry))
        except InputError as refused:
            raise last.wrong(f"{car_class} does not fit together: {str(refused).removesuffix('.')}") from None
    for missing_class in set(REFERENCE_CLASSES) - set(found):
        raise TableError(f"assets/car_classes.csv: there are no rows of the class {missing_class}.")
    return found


def _class(car_class: str) -> CarClass:
    if car_class not in _classes():
        raise InputError("not-one-of", what="car", given=str(car_class), known=Several(tuple(class_labels())))
    return _classes()[car_class]


def _middle_car(entry: CarClass, stated: Mapping[str, Entry] | None = None) -> Car:
    figures = {key: item.mid for key, item in entry.figures.items() if key in CAR_FIELDS}
    return filled(Car, {"name": entry.label} | figures | dict(stated or {}))


@cache
def class_labels() -> dict[str, str]:
    """Name of each car class, by id."""
    return {car_class: entry.label for car_class, entry in _classes().items()}


@cache
def hybrid_classes() -> tuple[str, ...]:
    """The classes with an engine."""
    return tuple(car_class for car_class in class_labels() if "sustain_soc" in assumed_figures(car_class))


@cache
def battery_classes() -> tuple[str, ...]:
    """The classes that drive on their battery alone."""
    return tuple(car_class for car_class in class_labels() if car_class not in hybrid_classes())


@cache
def assumed_figures(car_class: str) -> dict[str, Assumed]:
    """Every assumed figure of a car class: what all cars share, then what the class says."""
    return dict(_class(car_class).figures)


def class_of_mass(mass_kg: float) -> str:
    """The battery class of nearest mass [kg]."""
    return min(REFERENCE_CLASSES, key=lambda car_class: abs(assumed_figures(car_class)["mass_kg"].numbers[1] - mass_kg))


def car_from(car_class: str, stated: Mapping[str, Entry] | None = None) -> Car:
    """The car of a class with the stated figures put in.

    Raises
    ------
    InputError
        Where the class is unknown or stated figures do not fit together.
    """
    car = _middle_car(_class(car_class), stated)
    check_car(car)
    return car


def car_of(scenario: Scenario) -> Car:
    """The scenario's car, its assumed figures in the middle; raises `InputError` as `car_from` does."""
    return car_from(scenario.car_class, dict(scenario.stated))


def open_figures(car_class: str, stated: Mapping[str, Entry]) -> dict[str, Assumed]:
    """The assumed figures that carry a band: those not stated, not fixed, and in use for this car."""
    unused = {"drag_area_m2", "rolling_coefficient"} if "f0_n" in stated else set()
    return {
        key: item
        for key, item in assumed_figures(car_class).items()
        if key not in stated and key not in unused and item.low != item.high
    }


def open_figures_of(scenario: Scenario) -> dict[str, Assumed]:
    """The assumed figures that carry a band in a scenario; a condition set other than its default counts as stated."""
    around = {key: getattr(scenario.conditions, key) for key in CONDITION_FIELDS}
    stated = {key: value for key, value in around.items() if value != CONDITION_FIELDS[key].default}
    return open_figures(scenario.car_class, stated | dict(scenario.stated))
