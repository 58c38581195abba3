"""How bands are judged by measured cars."""

import numpy as np
import pytest

from model.checks.certified import CarsFound

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
