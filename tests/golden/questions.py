"""Golden answers to what pages and command line ask of one moment or one slow-down: lift-off, stops, hills, grip.

``python -m tests.golden.questions`` writes ``questions.csv`` anew; look at what changed before you keep it.
"""

from __future__ import annotations

import csv
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import asdict, is_dataclass
from pathlib import Path
from typing import Any

import numpy as np
import pandas as pd

from model.claims import quantities as claim_quantities
from model.claims.draws import Draws, draw
from model.claims.questions import question
from model.describe.car import Car
from model.describe.parameters import car_of
from model.describe.scenario import Conditions, Driver, Scenario
from model.describe.scenario_io import starting_drives
from model.kernel.savings import evaluate
from model.lift_off import slowing as lift_off
from model.lift_off.curves import as_set, curve_table, curves_of
from model.limits import descent
from model.limits.emergency_stop import emergency_stop
from model.limits.full_start import full_start
from model.limits.grip_margin import balance, grip_check
from model.limits.motor_only_stop import motor_only_stop
from model.limits.winter import warm_up
from model.one_stop.bigger_motor import CHANGES, by_power
from model.one_stop.machine_map import cloud_of, efficient_n, use_of
from model.one_stop.motor_delay import late_motor_cost, recovered_in_first_moments
from model.one_stop.repeated_stops import repeated_stops
from model.one_stop.slow_down import compare, cruise_kmh_at
from model.one_stop.stop_energy import back_by_speed, energy_of, stop, way_out
from model.one_stop.who_slows import grip_by_speed, late_motor, split_of
from model.traces.cycles import LABORATORY, cycle_trace

FILE = Path(__file__).with_name("questions.csv")
SPEEDS_MPS = np.array([2.0, 5.0, 10.0, 15.0, 25.0, 36.0])
CASES: dict[str, Scenario] = {
    "plain": Scenario(),
    "friction-pedal": Scenario(
        car_class="performance-saloon",
        stated=(("brake_pedal", "friction"), ("driven_axle", "rear")),
        driver=Driver(lift_off_mps2=1.6),
    ),
    "snow": Scenario(
        car_class="large-suv",
        stated=(("driven_axle", "all"),),
        conditions=Conditions(ambient_c=-8.0, surface="snow", wind_kmh=15.0, payload_kg=150.0, altitude_m=900.0),
    ),
    "trailer": Scenario(conditions=Conditions(trailer_kg=800.0), driver=Driver(comes_to_rest=True)),
    "measured": Scenario(
        car_class="van", stated=(("f0_n", 180.0), ("f1_n_per_mps", 1.0), ("f2_n_per_mps2", 0.8)),
        conditions=Conditions(soc_start=0.93),
    ),
}  # fmt: skip


def lifting_off(car: Car, around: Conditions, driver: Driver) -> Any:
    road = lift_off.rolling(SPEEDS_MPS, car, around, -0.03)
    held = lift_off.holding(15.0, np.array([0.02, 0.05, 0.09, 0.14]), car, around, driver)
    return {
        "flat": lift_off.foot_up_mps2(SPEEDS_MPS, car, around, driver),
        "down": lift_off.foot_up_mps2(SPEEDS_MPS, car, around, driver, -0.08),
        "up": lift_off.foot_up_mps2(SPEEDS_MPS, car, around, driver, 0.05),
        "rolling": road.slowing_mps2,
        "strength": held.strength_mps2,
        "asked": held.asked_kw,
        "can": held.can_kw,
        "keeps_speed": lift_off.equilibrium_grade(SPEEDS_MPS, car, around),
    }


def one_slow_down(car: Car, around: Conditions, driver: Driver) -> Any:
    ways = {}
    for to_mps in (0.0, 13.0):
        found = compare(27.0, to_mps, car, around, driver)
        answers = {name: getattr(found, name).answers() for name in ("coast", "regen", "friction")}
        ways[f"to_{to_mps:g}"] = {"break_even": found.break_even_kmh, **answers}
    return ways | {"cruise": cruise_kmh_at(30_000.0, car, around)}


def one_stop(car: Car, around: Conditions, driver: Driver) -> Any:
    result = stop(90.0, 1.5, car, around, driver)
    split = split_of(result)
    return {
        "energy": energy_of(result),
        "back": back_by_speed(90.0, 1.5, car, around, driver).iloc[::80],
        "way_out": way_out(100.0, 90.0, car, around, driver),
        "split": split.drop(columns="limit").iloc[::80],
        "late": late_motor(result, 1.5),
        "late_cost": late_motor_cost(25.0, 5.0, car, around, driver, 0.3),
        "first_moments": recovered_in_first_moments(result.trace, car, around, driver, 0.2),
        "grip": grip_by_speed(120.0, around).iloc[::6],
    }


def many_stops(car: Car, around: Conditions, driver: Driver) -> Any:
    found = repeated_stops(4, 100.0, 3.0, car, around, driver)
    energies = {name: getattr(found, name) for name in ("heat_kwh", "friction_only_heat_kwh", "back_kwh")}
    return energies | {"temperature": found.temperature.iloc[::60]}


def a_drive(car: Car, around: Conditions, driver: Driver) -> Any:
    result = evaluate(cycle_trace("udds"), car, LABORATORY, driver)
    low, high = efficient_n(car, SPEEDS_MPS, 0.88, slowing=True)
    return {
        "use": use_of(result)["slowing_forwards"],
        "cloud": cloud_of(result).sum(),
        "efficient": {"low": low, "high": high},
        **{change: by_power(result, change).iloc[3::8] for change in CHANGES},
    }


def hills(car: Car, around: Conditions, driver: Driver) -> Any:
    down = descent.descent(car, around, driver, drop_m=300.0, grade_pct=7.0, speed_kmh=60.0)
    trace = descent.hill(-400.0, 8.0, 50.0)
    before = warm_up(cycle_trace("udds"), car, around, driver)
    normal = full_start(cycle_trace("udds"), car, around, driver).normal
    return {
        "refund": descent.refund(car, around, driver, 6.0, 60.0),
        "headroom": descent.headroom(trace, car, around, driver),
        "to_fill": descent.descent_to_fill_m(car, around, driver, 7.0, 60.0),
        "normal": normal,
        "warm_up": [before.battery_kwh, before.cabin_kwh],
        "down": [down.need_kw, down.motor_kw, down.friction_kw, down.disc_c.max(), down.friction_only_disc_c.max()],
    }


def gripping(car: Car, around: Conditions, driver: Driver) -> Any:
    return {
        "straight": grip_check(car, around, 1.2),
        "bend_down": grip_check(car, around, 1.2, 60.0, 80.0, -6.0),
        "balance": balance(car, around, 1.2, 15.0, 80.0, np.array([0.2, 0.5, 0.8])),
    }


def stopping_short(car: Car, around: Conditions, driver: Driver) -> Any:
    return {
        "motor_only": motor_only_stop(car, around, 80.0),
        "emergency": emergency_stop(car, around, 100.0),
    }


QUESTIONS: tuple[Callable[[Car, Conditions, Driver], Any], ...] = (
    lifting_off, one_slow_down, one_stop, many_stops, a_drive, hills, gripping, stopping_short,
)  # fmt: skip


def claims() -> dict[str, Any]:
    """Quantities with a physics of their own, in a few drawn runs."""

    def few(claim: str) -> Draws:
        draws = draw(question(claim, {}).declared, 1009, 11)
        columns, shares = ({key: column[:12] for key, column in part.items()} for part in (draws.columns, draws.shares))
        return Draws(columns, shares, draws.inputs)

    asked = {"saved_by_coasting": "coasting-always-wins", "stop_by_motor_over_brakes": "stops-as-fast-as-brakes"}
    return {name: getattr(claim_quantities, name)(few(claim)) for name, claim in asked.items()}


def numbers(found: Any, name: str = "") -> Iterator[tuple[str, float]]:
    """Every number in an answer, by where it stands."""
    if is_dataclass(found) and not isinstance(found, type):
        found = asdict(found)
    if isinstance(found, pd.DataFrame):
        found = {str(column): found[column].to_numpy() for column in found}
    if isinstance(found, pd.Series):
        found = found.to_dict()
    if isinstance(found, Mapping):
        for key, value in found.items():
            yield from numbers(value, f"{name}.{key}")
    elif isinstance(found, np.ndarray | Sequence) and not isinstance(found, str):
        for place, value in enumerate(found):
            yield from numbers(value, f"{name}.{place}")
    elif found is None or isinstance(found, bool | int | float | np.generic):
        yield name, float("nan") if found is None else float(found)


def answers() -> dict[str, float]:
    """Every answer as it is now, by name."""
    found = dict(numbers(claims(), "claims"))
    for case, scenario in CASES.items():
        car = car_of(scenario)
        for asked in QUESTIONS:
            found |= numbers(asked(car, scenario.conditions, scenario.driver), f"{case}.{asked.__name__}")
    drive = starting_drives()["suburb-hill"][2]
    curves = curve_table(curves_of(drive)).drop(columns=["word", "lamp_zone"]).iloc[::5]
    return found | dict(numbers({"curves": curves, "as_set": as_set(drive)}, "lift_off"))


def read() -> dict[str, float]:
    """The answers as they were written."""
    with FILE.open(encoding="utf-8", newline="") as file:
        return {row["answer"]: float(row["value"]) for row in csv.DictReader(file)}


if __name__ == "__main__":
    with FILE.open("w", encoding="utf-8", newline="") as file:
        table = csv.writer(file, lineterminator="\n")
        table.writerow(["answer", "value"])
        table.writerows([name, f"{value:.9g}"] for name, value in sorted(answers().items()))
