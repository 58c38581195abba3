"""Air and rolling resistance of the classes: the middle and the spread of the certified cars of that kind.

A measured road load is split in two by the two certified cycles, the idle motor's drag taken off: air and rolling do
the same work over each as the measured coefficients do. The middle of a kind is the mean of its groups, each counted
once. How far cars of a kind lie from it is what a group's cars lie from the middle of the other groups', over all kinds
together, since one kind has few groups. A next group lies further from a middle of few groups, which is itself off,
than from one of many: by the root of 1 + 1/n, taken off where the spread is found and put on for the kind's own groups.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from functools import cache
from statistics import NormalDist

import numpy as np

from model.describe.parameters import assumed_figures
from model.describe.units import KG_PER_LB, MPS_PER_MPH, N_PER_LBF
from model.physics.air_and_tyres import AIR_REFERENCE_KG_M3
from model.physics.motor_and_gear import STATED_AT_KMH
from model.traces.cycles import cycle_trace
from tests.published.certified_list import CLASS_OF_WORDS, CYCLES, FEW, certified_rows, motor_kw

KEYS = ("drag_area_m2", "rolling_coefficient")
LEAST_GROUPS = 2
"""A middle of fewer other groups says little of how far another lies from it."""
REACH = 6**0.5
"""Ends of a figure that thins out evenly to both sides, over its standard deviation."""
GRAVITY = 9.80665


@cache
def work_means() -> dict[str, tuple[float, float]]:
    """Speed and speed squared, averaged over the metres of each cycle [m/s, m²/s²]."""
    means = {}
    for name in CYCLES:
        trace = cycle_trace(name)
        speed, step_s = trace.mean_speed_mps, trace.step_s
        metres = (speed * step_s).sum()
        means[name] = float((speed**2 * step_s).sum() / metres), float((speed**3 * step_s).sum() / metres)
    return means


def split(row: dict[str, str]) -> tuple[float, float]:
    """Drag area [m²] and rolling coefficient [1] of a certified car; NaN where its power is suspect."""
    power_w = 1000 * (motor_kw(row) or np.nan)
    mid = {key: figure.mid for key, figure in assumed_figures("family-hatch").items()}
    stated_at = STATED_AT_KMH / 3.6
    f0, f1, f2 = (
        float(row[key]) * N_PER_LBF / MPS_PER_MPH**power
        for power, key in enumerate(("a_lbf", "b_lbf_per_mph", "c_lbf_per_mph2"))
    )
    held = {}
    for name, (speed, squared) in work_means().items():
        idle = power_w / stated_at * (mid["motor_loss_speed"] + mid["motor_loss_speed2"] * speed / stated_at)
        held[name] = f0 + f1 * speed + f2 * squared - idle / mid["gear_efficiency"]
    squared = {name: squared for name, (_, squared) in work_means().items()}
    air = (held["hwfet"] - held["udds"]) / (squared["hwfet"] - squared["udds"])
    rolling = (held["udds"] - air * squared["udds"]) / (float(row["etw_lb"]) * KG_PER_LB * GRAVITY)
    return air / (AIR_REFERENCE_KG_M3 / 2), rolling


@cache
def cells() -> dict[tuple[str, str], np.ndarray]:
    """Air and rolling of the cars of each kind and group, shape (cars, 2)."""
    found: dict[tuple[str, str], list[tuple[float, float]]] = {}
    for row in certified_rows():
        if motor_kw(row) is not None:
            found.setdefault((CLASS_OF_WORDS[row["class_words"]], row["group"]), []).append(split(row))
    return {cell: np.array(cars) for cell, cars in found.items()}


def middle(kind: str, of_groups: Sequence[str]) -> np.ndarray | None:
    """Air and rolling in the middle of a kind, groups counted alike; None where none of them has such a car."""
    means = [cars.mean(axis=0) for (one, group), cars in cells().items() if one == kind and group in of_groups]
    return np.mean(means, axis=0) if means else None


def of_kind(kind: str, of_groups: Sequence[str]) -> list[str]:
    """Those of the groups that have cars of a kind."""
    return [group for one, group in cells() if one == kind and group in of_groups]


def covariance(of_groups: Sequence[str]) -> np.ndarray:
    """Covariance of air and rolling about a kind's middle, over that middle [1], shape (2, 2); kinds, groups alike."""
    squares = []
    for (kind, group), cars in cells().items():
        others = [other for other in of_kind(kind, of_groups) if other != group]
        if group in of_groups and len(others) >= LEAST_GROUPS:
            off = cars / middle(kind, others) - 1
            squares.append(off.T @ off / len(off) / (1 + 1 / len(others)))
    return np.mean(squares, axis=0)


def correlation(of_groups: Sequence[str]) -> float:
    """How far a car with more air than its kind has more rolling, too [1]."""
    (air, both), (_, rolling) = covariance(of_groups)
    return float(both / math.sqrt(air * rolling))


def beside(share: np.ndarray, of: np.ndarray, correlation: float) -> np.ndarray:
    """Places in a range [1] that go along with those `of` another figure as far as the two are correlated."""
    normal = NormalDist()
    own, other = (np.array([normal.inv_cdf(place) for place in places]) for places in (share, of))
    return np.array([normal.cdf(at) for at in correlation * other + math.sqrt(1 - correlation**2) * own])


def figures(kind: str, of_groups: Sequence[str]) -> dict[str, tuple[float, float, float]]:
    """Low, middle and high of a class's air and rolling from the cars of some groups; empty where they have none."""
    mid = middle(kind, of_groups)
    if mid is None:
        return {}
    next_group = math.sqrt(1 + 1 / len(of_kind(kind, of_groups)))
    reach = REACH * FEW[len(of_groups) - 1] * next_group * np.sqrt(np.diag(covariance(of_groups))) * mid
    return dict(zip(KEYS, zip(mid - reach, mid, mid + reach, strict=True), strict=True))
