"""The tables of Sources and method, each read from where the fact stands."""

from __future__ import annotations

import ast
import re
from collections.abc import Mapping, Sequence
from functools import cache
from pathlib import Path
from typing import Any

import pandas as pd

import model
from model.checks.check import Check, Found
from model.checks.published import CertifiedCar
from model.describe.car import CAR_FIELDS
from model.describe.fields import Field
from model.describe.parameters import assumed_figures
from model.describe.scenario import CONDITION_FIELDS, DRIVER_FIELDS, LEG_FIELDS
from model.describe.tables import rows
from model.traces.cycles import CYCLES, cycle_trace
from model.words.entries import choice_word, shown_unit, shown_value, tidy
from model.words.quantities import MINUS, Display, number_text
from pages.parts.trust import NARROW, number


def figure_text(field: Field, value: Any, display: Display) -> str:
    """A held value as it is read."""
    if value is None:
        return "–"
    if field.kind == "choice":
        return choice_word(field.key, value, display)
    if field.kind in ("text", "yes_no"):
        return field.text(value)
    return f"{tidy(shown_value(field, value, display), 4):g}".replace("-", MINUS)


def label_text(field: Field, display: Display) -> str:
    """Label and unit."""
    unit = shown_unit(field, display)
    return f"{field.label}, {unit}" if unit else field.label


def figures_table(car_class: str, stated: Mapping[str, Any], display: Display) -> pd.DataFrame:
    """Every assumed figure of a car class with its band and provenance; what the visitor stated in its place."""
    table = []
    assumed = assumed_figures(car_class)
    for key, field in (CAR_FIELDS | CONDITION_FIELDS).items():
        if key in stated:
            table.append([label_text(field, display), figure_text(field, stated[key], display), "Yours: no band."])
        elif key in assumed:
            item = assumed[key]
            low, mid, high = (figure_text(field, end, display) for end in (item.low, item.mid, item.high))
            band = f"{low} to {high}, mid {mid}" if item.low != item.high else mid
            table.append([label_text(field, display), band, f"{item.kind.capitalize()}: {item.source}."])
    return pd.DataFrame(table, columns=["Figure", "Low to high", "Kind and source"])


USERS = (
    "physics/wheels", "physics/air_and_tyres", "physics/warming_up", "physics/motor_and_gear",
    "physics/slowing_limits", "physics/grip", "physics/cells", "physics/charge_acceptance", "physics/pack_heat",
    "physics/cabin", "physics/engine", "kernel/step", "kernel/march", "kernel/follow", "limits/friction_brakes",
    "sampling/hybrid", "kernel/savings", "physics/battery", "sampling/drives", "lift_off/advice", "limits/grip_margin",
    "limits/stopping", "limits/descent", "limits/winter",
)  # fmt: skip
"""The parts of the model that read figures of the car, from the wheels inwards."""


@cache
def uses_table() -> pd.DataFrame:
    """Which part of the model uses which assumed figures, read from the model's own code."""
    table = []
    for name in USERS:
        code = (Path(model.__file__).parent / f"{name}.py").read_text(encoding="utf-8")
        about = (ast.get_docstring(ast.parse(code)) or "").partition("\n")[0]
        used = [field.label for key, field in CAR_FIELDS.items() if re.search(rf"\.{key}\b|\"{key}\"", code)]
        if used:
            table.append([about, "; ".join(used)])
    return pd.DataFrame(table, columns=["Part of the model", "Figures of the car that it uses"])


def changes_table() -> pd.DataFrame:
    """The model's versions, with what each changed or corrected."""
    names = {"version": "Version", "date": "Date", "kind": "Kind", "what": "What"}
    return pd.DataFrame(rows("changes.csv"))[list(names)].rename(columns=names)[::-1]


def published_text(found: Found) -> str:
    """What is published for a found number."""
    if found.published is None:
        return "reported only"
    ends = found.published if isinstance(found.published, tuple) else (found.published,)
    return " to ".join(f"{end:g}" for end in ends).replace("-", MINUS) + f"{NARROW}{found.unit}"


def check_table(check: Check) -> pd.DataFrame:
    """Every number that a check found, beside what is published and by how much it is off."""
    table = []
    for found in check.found:
        off = "" if found.off is None else "within" if found.off == 0 else f"{found.off:+.1f}".replace("-", MINUS)
        label = found.what[:1].upper() + found.what[1:]
        table.append([label, published_text(found), number(found.value, found.unit), off])
    return pd.DataFrame(table, columns=["Number", "Published", "Found", "Off by"])


def cars_table(cars: Sequence[CertifiedCar], display: Display) -> pd.DataFrame:
    """Wall energy of the certified cars, published and found."""
    unit = display.unit("Wh/km")

    def both(published: float, modelled: float, error_pct: float) -> list[str]:
        shown = [number_text(display.value(energy, "Wh/km")) for energy in (published, modelled)]
        return [*shown, f"{error_pct:+.0f} %".replace("-", MINUS)]

    table = [
        [
            f"{car.id}, {car.description}",
            *both(car.city_published, car.city_modelled, car.city_error_pct),
            *both(car.highway_published, car.highway_modelled, car.highway_error_pct),
        ]
        for car in cars
    ]
    kinds = (f"published, {unit}", "found", "error")
    columns = [f"{where}: {kind}" for where in ("City", "Highway") for kind in kinds]
    return pd.DataFrame(table, columns=["Car", *columns])


def ranges_table(display: Display) -> pd.DataFrame:
    """What may be entered for a drive, and within which range it is ordinary."""
    table = []
    for field in (LEG_FIELDS | CONDITION_FIELDS | DRIVER_FIELDS).values():
        if field.kind not in ("number", "count"):
            continue
        spans = [
            " to ".join(figure_text(field, end, display) for end in ends)
            for ends in (field.usual, (field.minimum, field.maximum))
        ]
        table.append([label_text(field, display), *spans])
    return pd.DataFrame(table, columns=["Entry", "Ordinary", "Allowed"])


def cycles_table(display: Display) -> pd.DataFrame:
    """The standard cycles with their regulation and totals."""
    table = []
    for name, cycle in CYCLES.items():
        trace = cycle_trace(name)
        distance = display.text(trace.distance_m / 1000, "km", 3)
        table.append([cycle.label, cycle.regulation, distance, f"{trace.duration_s:.0f} s", trace.stops])
    return pd.DataFrame(table, columns=["Cycle", "Regulation", "Length", "Time", "Stops"])


def grip_table() -> pd.DataFrame:
    """Grip of the road surfaces with provenance."""
    names = {"surface": "Surface", "grip_low": "Low", "grip_mid": "Mid", "grip_high": "High"}
    names |= {"kind": "Kind", "source": "Source"}
    table = pd.DataFrame(rows("grip.csv"))[list(names)].rename(columns=names)
    return table.assign(Surface=table["Surface"].str.replace("-", " "))


def acceptance_table(display: Display) -> pd.DataFrame:
    """The charge rate [1/h] that the middle table accepts, by battery temperature and charge."""
    table = pd.DataFrame([row for row in rows("charge_acceptance.csv") if row["level"] == "mid"]).drop(columns="level")
    temperatures = display.value(table.pop("battery_c").astype(float), "°C")
    table.insert(0, f"Battery, {display.unit('°C')}", [f"{t:.0f}".replace("-", MINUS) for t in temperatures])
    return table.rename(columns={name: f"{100 * float(name):.0f} % full" for name in table.columns[1:]})
