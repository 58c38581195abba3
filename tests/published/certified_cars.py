"""The certified cars of the US lists beside the model, one maker's group left out at a time.

``python -m tests.published.certified_cars`` writes ``assets/published/certified_found.csv``, which the tests check and
the pages draw. The bands of a group's cars come from what the other groups' cars leave open, never from its own.
"""

from __future__ import annotations

import csv
import math
import os
from concurrent.futures import ThreadPoolExecutor
from functools import cache
from pathlib import Path

import numpy as np

from model.describe.parameters import car_of, class_of_mass
from model.describe.scenario import Scenario
from model.describe.scenario_io import with_car, with_settings
from model.describe.units import KG_PER_LB, MPS_PER_MPH, N_PER_LBF
from model.kernel.run import drive_records
from model.out.many_cars import draw, on_cycles, own_parts, places
from model.physics.records import car_records
from model.sampling.narrowing import TEST_SHARE, effective_number
from model.sampling.own_part import OWN_SHARE
from model.sampling.printed_tests import RANGE_TEST
from model.sampling.uncertainty import triangular
from model.traces.cycles import cycle_trace
from tests.published import class_road_loads
from tests.published.certified_list import CLASS_OF_WORDS, CYCLES, FEW, certified_rows, motor_kw

KNOWN = ("road load", "data sheet")
QUANTILES = (0.05, 0.1, 0.25, 0.5, 0.75, 0.9, 0.95)
RUNS = 400
LEAST = (0.1, 0.12)
"""How far the two open shares reach below their middles: to a drive and a return with next to no loss."""
OPEN_KEYS = ("open_pulling_share", "open_slowing_share")
FOUND = Path(__file__).resolve().parents[2] / "assets" / "published" / "certified_found.csv"
COLUMNS = (
    "id", "group", "kind", "like", "cycle", "known", "measured_wh_per_km", "modelled_wh_per_km",
    *(f"q{100 * share:02.0f}" for share in QUANTILES), "given_low", "given_mid", "given_high", "given_cars",
)  # fmt: skip


def scenario_of(row: dict[str, str], known: str) -> Scenario:
    """A certified car: test weight and rated power, and its road load or its class; a suspect power is not used."""
    mass_kg = float(row["etw_lb"]) * KG_PER_LB
    figures = {"mass_kg": mass_kg}
    if (power_kw := motor_kw(row)) is not None:
        figures["motor_peak_kw"] = power_kw
    if known == "data sheet":
        figures["like"] = CLASS_OF_WORDS[row["class_words"]]
    else:
        figures |= {
            "like": class_of_mass(mass_kg),
            "driven_axle": row["drive"],
            "f0_n": float(row["a_lbf"]) * N_PER_LBF,
            "f1_n_per_mps": float(row["b_lbf_per_mph"]) * N_PER_LBF / MPS_PER_MPH,
            "f2_n_per_mps2": float(row["c_lbf_per_mph2"]) * N_PER_LBF / MPS_PER_MPH**2,
        }
    return with_car(Scenario(conditions=RANGE_TEST), figures)


def each(work, items):
    """Work through items on all processors, in order."""
    with ThreadPoolExecutor(os.cpu_count()) as threads:
        return list(threads.map(work, items))


def walls(scenario, cycle, drawn):
    """Wall energy of drawn cars [Wh/km]."""
    cars = car_records(car_of(scenario), scenario.conditions, scenario.driver, drawn)
    energies = drive_records(cycle_trace(cycle), cars).energies
    given = (energies["soc_start"] - energies["soc_end"]) * cars["usable_kwh"] / cars["charging_efficiency"]
    return given * 1e6 / cycle_trace(cycle).distance_m


@cache
def errors():
    """Logarithm of measured over modelled wall energy, road load known: cycle by car, shape (2, cars)."""
    found = each(lambda row: on_cycles(scenario_of(row, "road load"), tuple(CYCLES)), certified_rows())
    return np.array([
        [
            math.log(float(row[key]) / car[cycle].wall_wh_per_km)
            for row, car in zip(certified_rows(), found, strict=True)
        ]
        for cycle, key in CYCLES.items()
    ])  # fmt: skip


def groups() -> list[str]:
    """The makers' groups."""
    return sorted({row["group"] for row in certified_rows()})


def others_of(group: str) -> list[str]:
    """All groups but one."""
    return [other for other in groups() if other != group]


def of_group(group: str):
    """Which rows are of a group."""
    return np.array([row["group"] == group for row in certified_rows()])


@cache
def known_spread():
    """What the assumed figures alone explain: mean variances of the two cycles' logarithms, and their covariance."""
    some = [scenario_of(row, "road load") for row in certified_rows()[::8]]

    def spread(scenario):
        drawn = {key: values for key, values in draw(scenario, 200).items() if key not in OPEN_KEYS}
        city, highway = (np.log(walls(scenario, cycle, drawn)) for cycle in CYCLES)
        return city.var(), highway.var(), np.cov(city, highway)[0, 1]

    return np.mean(each(spread, some), axis=0)


@cache
def sensitivity():
    """How the logarithm of wall energy moves with each open share: city and highway by share, shape (2, 2)."""
    step, moved = 0.01, []
    for scenario in [scenario_of(row, "road load") for row in certified_rows()[::8]]:
        middle = {key: np.array([[getattr(car_of(scenario), key)]]) for key in OPEN_KEYS}
        moved.append([
            [
                (np.log(walls(scenario, cycle, middle | {key: middle[key] + step})[0])
                 - np.log(walls(scenario, cycle, middle)[0])) / step
                for key in OPEN_KEYS
            ]
            for cycle in CYCLES
        ])  # fmt: skip
    return np.median(moved, axis=0)


def mean_squares(of_groups: list[str]):
    """Mean squares of the errors in city and on highway about nothing, and their product, groups counted alike."""
    city, highway = errors()
    return np.array([
        [np.mean(one[of_group(group)] * other[of_group(group)]) for one, other in
         ((city, city), (highway, highway), (city, highway))]
        for group in of_groups
    ]).mean(0)  # fmt: skip


def moves():
    """What a unit of variance of each open share adds to `mean_squares`, shape (3, 2)."""
    (pull_city, slow_city), (pull_highway, slow_highway) = sensitivity()
    return np.array([
        [pull_city**2, slow_city**2], [pull_highway**2, slow_highway**2],
        [pull_city * pull_highway, slow_city * slow_highway],
    ])  # fmt: skip


def own_share(of_groups: list[str]) -> float:
    """What city and highway of a car do not share [1], widened for so few groups: three moments, three unknowns."""
    unknown = np.column_stack([moves(), [1.0, 1.0, 0.0]])
    of_shares_and_own = np.linalg.solve(unknown, mean_squares(of_groups) - known_spread())
    return FEW[len(of_groups)] * math.sqrt(max(of_shares_and_own[2], 0.0))


def reaches(of_groups: list[str]):
    """How far the two open shares reach upwards, from the cars of some groups, groups counted alike.

    Mean squares and products of the errors about nothing, less what assumed figures and a drive's own part explain,
    are divided among the two shares by least squares, and widened because so few groups tell of them. No car can lose
    much less than the middle one, so the lower ends are fixed (`LEAST`) and the upper ends make up for it: a half that
    thins out evenly over a reach adds a twelfth of its square to the variance.

    Returns
    -------
    array
        How far each share reaches above its middle [1].
    """
    squares, of_shares = mean_squares(of_groups), moves()
    left = squares - known_spread() - own_share(of_groups) ** 2 * np.array([1.0, 1.0, 0.0])
    weight = 1 / squares
    variance = np.linalg.lstsq(of_shares * weight[:, None], left * weight, rcond=None)[0].clip(min=0)
    wide = 12 * FEW[len(of_groups)] ** 2 * variance
    return np.sqrt(np.maximum(wide - np.square(LEAST), np.square(LEAST)))


def weighted_quantiles(values, weights, shares):
    """Points below which these shares of the weight lie."""
    order = np.argsort(values)
    reached = np.cumsum(weights[order])
    return np.interp(shares, (reached - weights[order] / 2) / reached[-1], values[order])


def found_for(place: int, half, own: float, known: str) -> list[dict]:
    """The rows of one car: bands from what the other groups leave open, and the same given the other cycle."""
    row = certified_rows()[place]
    scenario = scenario_of(row, known)
    drawn = draw(scenario, RUNS)
    if known == "data sheet":
        others = others_of(row["group"])
        spans = class_road_loads.figures(scenario.car_class, others)
        scenario = with_settings(scenario, {key: mid for key, (_, mid, _) in spans.items()})
        air, rolling = (places(key, RUNS) for key in class_road_loads.KEYS)
        at = air, class_road_loads.beside(rolling, air, class_road_loads.correlation(others))
        drawn |= {key: triangular(share, *span)[:, None] for share, (key, span) in zip(at, spans.items(), strict=False)}
    for key, least, most in zip(OPEN_KEYS, LEAST, half, strict=True):
        middle = getattr(car_of(scenario), key)
        drawn[key] = triangular(places(key, RUNS), middle - least, middle, middle + most)[:, None]
    point = on_cycles(scenario, tuple(CYCLES))
    bare = {cycle: walls(scenario, cycle, drawn) for cycle in CYCLES}
    answers = []
    for cycle, other in (("udds", "hwfet"), ("hwfet", "udds")):
        many = bare[cycle] * own_parts(cycle, RUNS) ** (own / OWN_SHARE)
        off = np.log(bare[other] / float(row[CYCLES[other]])) / math.hypot(own, TEST_SHARE)
        weights = np.exp(-0.5 * (off**2 - (off**2).min()))
        given = weighted_quantiles(many, weights, (0.05, 0.5, 0.95))
        answers.append({
            "id": row["id"], "group": row["group"], "kind": row["class_words"], "like": scenario.car_class,
            "cycle": cycle, "known": known, "measured_wh_per_km": float(row[CYCLES[cycle]]),
            "modelled_wh_per_km": point[cycle].wall_wh_per_km,
            **dict(zip(COLUMNS[8:15], np.quantile(many, QUANTILES), strict=True)),
            "given_low": given[0], "given_mid": given[1], "given_high": given[2],
            "given_cars": effective_number(np.exp(-0.5 * off**2)),
        })  # fmt: skip
    return answers


def as_cells(row: dict) -> list[str]:
    """A row as it is written."""
    return [f"{row[key]:.5g}" if isinstance(row[key], float) else str(row[key]) for key in COLUMNS]


def found(cars=None) -> list[dict]:
    """All rows, or those of some cars by their place in the list."""
    left_open = {group: (reaches(others_of(group)), own_share(others_of(group))) for group in groups()}
    cars = range(len(certified_rows())) if cars is None else cars
    asked = [(place, known) for place in cars for known in KNOWN]
    found_in = each(lambda one: found_for(one[0], *left_open[certified_rows()[one[0]]["group"]], one[1]), asked)
    return [row for rows_of_car in found_in for row in rows_of_car]


def write() -> None:
    """Write the table that tests and pages read."""
    with FOUND.open("w", encoding="utf-8", newline="") as file:
        writer = csv.writer(file, lineterminator="\n")
        writer.writerow(COLUMNS)
        writer.writerows(as_cells(row) for row in found())


if __name__ == "__main__":
    print("sensitivity", sensitivity(), "known spread", known_spread() ** 0.5)
    print("reaches from all groups:", reaches(groups()), "own part", own_share(groups()))
    write()
