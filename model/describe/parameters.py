"""Low, mid and high of every assumed figure, with provenance, read from ``assets/``."""

from __future__ import annotations

import csv
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

from model.describe.car import CAR_FIELDS, Car, check_car
from model.describe.fields import InputError, find
from model.describe.scenario import CONDITION_FIELDS, Scenario

ASSETS = Path(__file__).resolve().parents[2] / "assets"
DEFAULT_CLASS = "family-hatch"
ROAD_LOAD_KEYS = ("f0_n", "f1_n_per_mps", "f2_n_per_mps2")


@dataclass(frozen=True)
class Assumed:
    """One assumed figure: its band, what kind of knowledge it is, and where it is from."""

    low: Any
    mid: Any
    high: Any
    kind: str
    source: str


def rows(name: str) -> list[dict[str, str]]:
    """The rows of a table in ``assets/``."""
    with open(ASSETS / name, encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def _assumed(row: Mapping[str, str]) -> Assumed:
    field = find(CAR_FIELDS | CONDITION_FIELDS, row["key"])
    mid = field.parse(row["mid"])
    return Assumed(
        low=field.parse(row["low"]) if row["low"] else mid,
        mid=mid,
        high=field.parse(row["high"]) if row["high"] else mid,
        kind=row["kind"],
        source=row["source"],
    )


@cache
def class_labels() -> dict[str, str]:
    """Name of each car class, by id."""
    return {row["class"]: row["label"] for row in rows("car_classes.csv")}


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
    if car_class not in class_labels():
        raise InputError(f"car: {car_class!r} is not one of the classes {', '.join(class_labels())}.")
    shared = {row["key"]: _assumed(row) for row in rows("parameters.csv")}
    return shared | {row["key"]: _assumed(row) for row in rows("car_classes.csv") if row["class"] == car_class}


def car_from(car_class: str, stated: Mapping[str, Any] | None = None) -> Car:
    """The car of a class with the stated figures put in.

    Raises
    ------
    InputError
        Where the class is unknown or stated figures do not fit together.
    """
    figures = {key: item.mid for key, item in assumed_figures(car_class).items() if key in CAR_FIELDS}
    car = Car(**{"name": class_labels()[car_class]} | figures | dict(stated or {}))
    check_car(car)
    return car


def car_of(scenario: Scenario) -> Car:
    """The scenario's car, its assumed figures in the middle; raises `InputError` as `car_from` does."""
    return car_from(scenario.car_class, dict(scenario.stated))


def open_figures(car_class: str, stated: Mapping[str, Any]) -> dict[str, Assumed]:
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
