"""How bands are judged by measured cars, and versions of one car are held against each other."""

import numpy as np
import pytest

from model.checks.certified import OF_ONE_CAR, CarsFound, certified_found, versions_apart
from model.describe.tables import rows

LOW, MIDDLE, HIGH = np.array([100.0] * 4), np.array([110.0] * 4), np.array([120.0] * 4)
MEASURED = np.array([110.0, 120.0, 123.0, 96.0])
FOUND = CarsFound(
    "road load", "udds", tuple("abcd"), ("x",) * 4, ("car", "car", "van", "van"), ("small",) * 4, MEASURED,
    1.1 * MEASURED, {"q05": LOW, "q50": MIDDLE, "q95": HIGH},
)  # fmt: skip
BAND = ("q05", "q95")


def test_a_band_is_judged_by_what_lies_in_it_its_width_and_a_fine_for_the_rest():
    assert FOUND.inside(BAND).tolist() == [True, True, False, False]
    assert FOUND.above(BAND).tolist() == [False, False, True, False]
    assert FOUND.below(BAND).tolist() == [False, False, False, True]
    assert FOUND.held_pct(BAND) == 50
    assert FOUND.half_width_pct(BAND) == pytest.approx(100 * 10 / 110)
    # of a 90 % band each unit outside is fined twentyfold (Gneiting and Raftery 2007)
    assert FOUND.score(BAND, 90) == pytest.approx(20 + 20 * (3 + 4) / 4)
    assert FOUND.score(BAND, 50) == pytest.approx(20 + 4 * (3 + 4) / 4)


def test_errors_and_kinds_of_some_of_the_cars():
    assert FOUND.errors_pct == pytest.approx([10] * 4)
    assert FOUND.by_kind(MEASURED > 100) == [("car", 2, 2), ("van", 1, 2)]
    assert FOUND.of(MEASURED > 120).ids == ("c",)


def test_versions_of_one_car_are_paired_as_the_list_has_them():
    """A crossover in two versions, each tested twice: one pair of their geometric means, and two of tests."""
    listed = {row["id"]: row for row in rows("published/epa_certified_2019_2025.csv")}
    found = certified_found("road load", "udds")
    of_car = [tuple(listed[name][key] for key in OF_ONE_CAR) for name in found.ids]
    several = [place for place, car in enumerate(of_car) if car == ("G00", "compact crossover", "2021", "201", "rear")]
    assert len(several) == 4
    (first, second), (third, fourth) = (np.log(found.measured[several[at : at + 2]]) for at in (0, 2))
    apart = 100 * ((third + fourth) - (first + second)) / 2
    versions = versions_apart("udds")
    assert min(abs(versions.measured_pct - apart)) < 1e-9
    assert min(abs(versions.tests_pct - 100 * (second - first))) < 1e-9
    assert versions.missed_pct == pytest.approx(versions.modelled_pct - versions.measured_pct)
