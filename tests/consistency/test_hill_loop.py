"""ADAC, 2024 (press): a car of 1180 kg on a hill loop, 26.4 kWh/100 km up and 7.1 back; the road is not published.

It is solved from these figures, so that they come out again proves nothing; that it is a likely road says a little.
"""

import pytest

from model.checks.cold import HILL_DOWN, HILL_UP, ON_A_HILL, grade_and_speed_of, hill_loop
from model.describe.parameters import car_from
from model.describe.scenario import Driver
from model.limits.descent import refund
from tests.tolerances import assert_within


def test_the_road_that_gives_both_figures():
    check = hill_loop()
    assert not check.is_evidence
    assert_within(check, {"found-grade": (4, 6), "found-speed": (50, 75)})


def test_the_road_found_does_give_both_figures():
    car = car_from("city-car", {"mass_kg": 1180.0})
    found = refund(car, ON_A_HILL, Driver(), *grade_and_speed_of(HILL_UP, HILL_DOWN, car))
    assert found.up_wh_per_km == pytest.approx(HILL_UP, rel=1e-4)
    assert found.down_wh_per_km == pytest.approx(HILL_DOWN, rel=1e-4)
