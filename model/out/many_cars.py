"""Many cars at once: a table with a car in each row to one row for each car and cycle.

A row that cannot be used says why and the others go on. Cars are certified cars as a laboratory drives them: 23 °C,
heating and cooling off, warm; what is not in the table comes from the class, or from settings for all of them.
"""

from __future__ import annotations

import csv
import io
import os
from collections.abc import Mapping, Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from functools import cache
from pathlib import Path

import numpy as np

from model.describe.brought import inert_cell
from model.describe.fields import InputError, find
from model.describe.parameters import car_of, class_of_mass, open_figures_of
from model.describe.scenario import SETTINGS, Scenario
from model.describe.scenario_io import with_car, with_settings
from model.describe.trace import Array
from model.kernel.run import drive_records
from model.physics.records import car_records
from model.sampling.narrowing import narrowed
from model.sampling.own_part import OPEN_KEY, own_part
from model.sampling.printed_tests import RANGE_TEST
from model.sampling.uncertainty import Band, hypercube, triangular
from model.traces.cycles import cycle_trace
from model.words.refusals import COMMAND_LINE, refusal_words

DRAWN_CARS = 400
"""Drawn cars of a row's band."""
CAR_COLUMNS = ("id", "cycle", "wall_wh_per_km", "low", "mid", "high", "recovered_share_of_output", "refused")
MOST_CARS = 5000


@dataclass(frozen=True, eq=False)
class CarOnCycle:
    """One car on one cycle: energy from the wall [Wh/km], recovered share r [1]; the drawn cars' energy [Wh/km]."""

    wall_wh_per_km: float
    recovered_share: float
    drawn_wall_wh_per_km: Array


@cache
def places(key: str, runs: int) -> Array:
    """Where a figure lies in its range, from 0 to 1 [1], for each of `runs` drawn cars; shape (runs,)."""
    return hypercube([key], runs)[key]


@cache
def own_parts(cycle: str, runs: int) -> Array:
    """What each drawn car's drive of a cycle has for itself [1], shape (runs,); the same for every car of a table."""
    return own_part(places(f"own_part of {cycle}", runs))


def draw(scenario: Scenario, runs: int) -> dict[str, Array]:
    """The open figures of a scenario drawn `runs` times, shape (runs, 1); the same places for every car."""
    return {
        key: triangular(places(key, runs), *figure.numbers)[:, None]
        for key, figure in open_figures_of(scenario).items()
    }


def _walls(scenario: Scenario, cycle: str, drawn: Mapping[str, Array] | None) -> tuple[Array, Array]:
    """Energy from the wall [Wh/km] and recovered share [1] of each drawn car."""
    trace = cycle_trace(cycle)
    cars = car_records(car_of(scenario), scenario.conditions, scenario.driver, drawn)
    energies = drive_records(trace, cars).energies
    if drawn is None and (energies["empty_at"][0] >= 0 or energies["weak_at"][0] >= 0):
        raise InputError("battery-too-small-for-cycle", cycle=cycle)
    given = (energies["soc_start"] - energies["soc_end"]) * cars["usable_kwh"] / cars["charging_efficiency"]
    return given * 1e6 / trace.distance_m, energies["in_j"] / energies["out_j"]


def on_cycles(scenario: Scenario, cycles: Sequence[str], runs: int = 0) -> dict[str, CarOnCycle]:
    """One car on some cycles, with `runs` drawn cars, none where 0.

    Raises
    ------
    InputError
        Where the car cannot drive a cycle, or what is printed of it fits none of the drawn cars.
    """
    drawn = narrowed(scenario, draw(scenario, runs)) if runs else None
    found = {}
    for cycle in cycles:
        wall, recovered = _walls(scenario, cycle, None)
        many = _walls(scenario, cycle, drawn)[0] if drawn else wall[:0]
        own = own_parts(cycle, runs) if drawn and OPEN_KEY in drawn else 1.0
        found[cycle] = CarOnCycle(float(wall[0]), float(recovered[0]), many * own)
    return found


def car_in_row(row: Mapping[str, str], settings: Mapping[str, object]) -> Scenario:
    """The scenario of a table's row; what is empty comes from the class named under ``like``, or of nearest mass."""
    figures = {key: value.strip() for key, value in row.items() if value and value.strip() and key != "id"}
    like = figures.pop("like", None)
    if like is None and "mass_kg" in figures:
        like = class_of_mass(SETTINGS["mass_kg"].number(figures["mass_kg"]))
    scenario = with_car(Scenario(conditions=RANGE_TEST), figures if like is None else {"like": like, **figures})
    scenario = with_settings(scenario, settings)
    car_of(scenario)
    return scenario


def read_table(file: Path) -> list[dict[str, str]]:
    """The rows of a table of cars; raises `InputError` where it cannot be read or a column is unknown."""
    try:
        text = file.read_bytes().decode("utf-8-sig")
    except OSError as error:
        raise InputError("table-unreadable", name=file.name, why=str(error.strerror)) from None
    except UnicodeDecodeError:
        raise InputError("table-not-in-utf-8", name=file.name) from None
    table = csv.reader(io.StringIO(text, newline=""))
    try:
        lines = [line for line in table if any(cell.strip() for cell in line)]
    except csv.Error as error:
        raise InputError("table-unreadable", name=file.name, why=str(error)) from None
    if len(lines) < 2:
        raise InputError("table-without-cars", name=file.name)
    columns = [name.strip() for name in lines[0]]
    for name in columns:
        find({"id": None, "like": None, **SETTINGS}, name)
    if len(set(columns)) < len(columns):
        raise InputError("table-column-twice", name=file.name)
    if len(lines) > MOST_CARS + 1:
        raise InputError("table-too-long", name=file.name, given=len(lines) - 1, most=MOST_CARS)
    return [{**dict(zip(columns, line, strict=False)), "": str(len(line))} for line in lines[1:]]


def _answers(place: int, row: dict[str, str], columns: int, cycles: Sequence[str], settings: Mapping[str, object],
             runs: int) -> list[dict[str, object]]:  # fmt: skip
    name = (row.get("id") or "").strip() or str(place)
    try:
        if int(row.pop("")) != columns:
            raise InputError("table-line-too-short", columns=columns)
        found = on_cycles(car_in_row(row, settings), cycles, runs)
    except InputError as refused:
        return [{"id": name, "cycle": cycle, "refused": refusal_words(refused, COMMAND_LINE)} for cycle in cycles]
    rows = []
    for cycle, car in found.items():
        figures: dict[str, object] = {"id": name, "cycle": cycle, "wall_wh_per_km": car.wall_wh_per_km}
        if runs:
            band = Band.of(car.drawn_wall_wh_per_km)
            figures |= {"low": band.low, "mid": band.mid, "high": band.high}
        rows.append(figures | {"recovered_share_of_output": car.recovered_share})
    return rows


def table_answers(
    file: Path, cycles: Sequence[str], settings: Mapping[str, object], *, band: bool
) -> list[dict[str, object]]:
    """Every car of a table on every cycle: rows with the keys of CAR_COLUMNS, those left out that have no value.

    Raises
    ------
    InputError
        Where the table or one of the cycles cannot be used; a single row that cannot is answered with the reason.
    """
    for cycle in cycles:
        cycle_trace(cycle)
    rows = read_table(file)
    for key in settings:
        find(SETTINGS, key)
    columns, runs = len(rows[0]) - 1, DRAWN_CARS if band else 0
    with ThreadPoolExecutor(os.cpu_count()) as threads:
        found = threads.map(
            lambda place: _answers(place + 1, rows[place], columns, cycles, settings, runs), range(len(rows))
        )
    return [answer for answers in found for answer in answers]


def as_csv(rows: Sequence[Mapping[str, object]]) -> str:
    """Rows as CSV text, numbers at six significant digits."""
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\n")
    writer.writerow(CAR_COLUMNS)
    for row in rows:
        cells = [row.get(key, "") for key in CAR_COLUMNS]
        texts = [f"{cell:.6g}" if isinstance(cell, float) and np.isfinite(cell) else inert_cell(cell) for cell in cells]
        writer.writerow(texts)
    return text.getvalue()
