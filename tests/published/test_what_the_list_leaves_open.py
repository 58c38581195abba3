"""How well anything could do on the 216 certified cars, known by weight, road load, power and what else is listed.

Bounds of `test_certified_cars` that are missed are held against three yardsticks: what is left once each makers' group
is known by its own level, what plain regressions reach with a group left out, and versions of one car, where what the
list does not say stays the same. All of it is printed.
"""

from itertools import product

import numpy as np
import pytest

from model.checks.certified import certified_found, versions_apart
from model.describe.units import N_PER_LBF
from tests.published.certified_list import certified_rows, motor_kw

CYCLES = ("udds", "hwfet")
ASKED = {"udds": 16, "hwfet": 9.5}
"""The 90th percentile that was asked for [%]."""
GROUPS = np.array([row["group"] for row in certified_rows()])


def logs(cycle):
    """Logarithms of what was measured and modelled, times 100 [%]."""
    found = certified_found("road load", cycle)
    assert found.ids == tuple(row["id"] for row in certified_rows())
    return 100 * np.log(found.measured), 100 * np.log(found.modelled)


def off_pct(said, measured):
    """Size of the errors [%]."""
    return abs(100 * np.expm1((said - measured) / 100))


def listed(everything):
    """What the list says of the cars: logarithms of weight, power and road load; all else beside it where asked."""
    names = ("a_lbf", "b_lbf_per_mph", "c_lbf_per_mph2")

    def force(row, mph, prefix=""):
        keys = names if not prefix else ("set_a", "set_b", "set_c")
        return N_PER_LBF * sum(float(row[key]) * mph**power for power, key in enumerate(keys))

    usual_kw = np.median([motor_kw(row) for row in certified_rows() if motor_kw(row) is not None])
    columns = [
        [
            np.log(float(row["etw_lb"])), np.log(motor_kw(row) or usual_kw), np.log(force(row, 20)),
            np.log(force(row, 50)), row["drive"] == "all", row["drive"] == "rear", float(row["model_year"]),
            row["quality"] == "B", force(row, 30) - force(row, 30, "set") > 0.06 * float(row["etw_lb"]) * 0.4536,
        ]
        for row in certified_rows()
    ]  # fmt: skip
    return np.array(columns, dtype=float)[:, : None if everything else 4]


def straight(known, left, ridge):
    """Weights of the known cars in what a straight line with a ridge says of those left out."""
    ones = [np.column_stack([np.ones(len(part)), part]) for part in (known, left)]
    penalty = len(known) * ridge * np.diag([0.0] + [1.0] * known.shape[1])
    return ones[1] @ np.linalg.solve(ones[0].T @ ones[0] + penalty, ones[0].T)


def smooth(known, left, reach, noise):
    """The same of a smooth curve (a Gaussian process about the mean of the known)."""

    def near(one, other):
        return np.exp(-0.5 * ((one[:, None] - other[None]) ** 2).sum(-1) / reach**2)

    weights = near(left, known) @ np.linalg.inv(near(known, known) + noise * np.eye(len(known)))
    return weights + (1 - weights.sum(1))[:, None] / len(known)


WAYS = [(straight, (ridge,)) for ridge in (0.001, 0.03, 0.3, 3)] + [
    (smooth, settings) for settings in product((2, 4, 8), (0.1, 1))
]


def left_out(columns, way, settings, values):
    """What the other groups say of each group's cars."""
    said = np.empty_like(values)
    for group in set(GROUPS):
        out = group == GROUPS
        middle, spread = columns[~out].mean(0), columns[~out].std(0) + 1e-9
        scaled = (columns - middle) / spread
        said[out] = way(scaled[~out], scaled[out], *settings) @ values[~out]
    return said


@pytest.mark.parametrize("cycle", CYCLES)
def test_more_than_was_asked_is_left_once_each_group_is_known_by_its_own_level(cycle):
    """What is left is scatter within groups, above all within the largest."""
    measured, modelled = logs(cycle)
    own = modelled.copy()
    for group in set(GROUPS):
        own[group == GROUPS] += np.median((measured - modelled)[group == GROUPS])
    left, as_it_is = (np.quantile(off_pct(said, measured), 0.9) for said in (own, modelled))
    print(f"{as_it_is:.1f} %, with each group's own level {left:.1f} %, asked {ASKED[cycle]} %")
    assert ASKED[cycle] < left < as_it_is


@pytest.mark.parametrize("cycle", CYCLES)
def test_no_plain_regression_on_the_list_keeps_that_bound_either(cycle):
    """The best in hindsight of straight lines and smooth curves, alone and as a correction of the model."""
    measured, modelled = logs(cycle)
    tails = {}
    for everything, (way, settings), start in product((False, True), WAYS, (0 * modelled, modelled)):
        said = start + left_out(listed(everything), way, settings, measured - start)
        named = way.__name__, settings, "all" if everything else "four", "model" if start.any() else "alone"
        tails[named] = np.quantile(off_pct(said, measured), 0.9), np.median(off_pct(said, measured))
    best = min(tails, key=lambda named: tails[named][0])
    print(f"of {len(tails)} the best is {best}: {tails[best][0]:.1f} %, its median {tails[best][1]:.1f} %")
    assert tails[best][0] > ASKED[cycle]


@pytest.mark.parametrize("cycle, most", [("udds", 2), ("hwfet", 1.5)])
def test_versions_of_one_car_are_told_apart_nearly_as_well_as_tests_are_repeated(cycle, most):
    """Limits set after a first look, above the 1.7 and 1.1 % by which tests of one road load and weight differ."""
    apart = versions_apart(cycle)
    slope = apart.measured_pct @ apart.modelled_pct / (apart.modelled_pct @ apart.modelled_pct)
    missed, tests = np.median(abs(apart.missed_pct)), np.median(abs(apart.tests_pct))
    print(f"{len(apart.measured_pct)} pairs, {np.median(abs(apart.measured_pct)):.1f} % apart, off by {missed:.1f} %, "
          f"measured over modelled {slope:.2f}; {len(apart.tests_pct)} tests repeated, {tests:.1f} %")  # fmt: skip
    assert len(apart.measured_pct) > 50 and len(apart.tests_pct) > 20
    assert 0.9 < slope < 1.1 and missed < most < np.median(abs(apart.measured_pct)) / 2
