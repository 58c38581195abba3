"""A strength counted in seconds, where a car's menu has no m/s²."""

import numpy as np
import pytest

from model.describe.parameters import car_of
from model.describe.scenario import Scenario
from model.describe.units import KMH_PER_MPS
from model.lift_off.counted import COUNTED_S, FROM_KMH, TO_KMH, seconds_of, strength_of
from model.lift_off.slowing import foot_up_mps2


def test_seconds_and_strength_are_worked_by_hand():
    """30 km/h are 8.33 m/s: in 8.33 s that is 1 m/s², in 12 s 0.69."""
    assert strength_of(30 / 3.6) == pytest.approx(1.0)
    assert strength_of(12.0) == pytest.approx(0.694, abs=1e-3)
    assert seconds_of(strength_of(7.0)) == pytest.approx(7.0)
    assert seconds_of(0.0) is None


def test_the_shortest_count_is_the_strongest_that_can_be_set():
    assert strength_of(COUNTED_S.minimum) == pytest.approx(3.47, abs=0.01)


@pytest.mark.parametrize("strength", [0.7, 1.3])
def test_the_models_own_car_is_counted_at_the_strength_that_it_was_set_to(strength):
    """Foot up from 50 to 20 km/h on a level road: the time is the sum of speed lost over slowing."""
    scenario = Scenario().with_setting("lift_off_mps2", strength)
    speeds = np.linspace(FROM_KMH, TO_KMH, 301) / KMH_PER_MPS
    slowing = foot_up_mps2(speeds, car_of(scenario), scenario.conditions, scenario.driver)
    seconds = np.trapezoid(1 / slowing, speeds[0] - speeds)
    assert strength_of(float(seconds)) == pytest.approx(strength, rel=0.02)
