"""What is read from a trace."""

import numpy as np
import pytest

from model.describe.trace import Trace
from tests.made_traces import ride


def test_speed_changes_evenly_within_a_step():
    trace = Trace(
        time_s=np.array([0.0, 2.0, 3.0]), speed_mps=np.array([0.0, 4.0, 4.0]), elevation_m=np.array([0.0, 0.4, 0.0])
    )
    assert trace.step_s.tolist() == [2, 1]
    assert trace.mean_speed_mps.tolist() == [2, 4]
    assert trace.acceleration_mps2.tolist() == [2, 0]
    assert trace.step_m.tolist() == [4, 4]
    assert trace.sine_of_slope.tolist() == [0.1, -0.1]
    assert trace.distance_m == 8 and trace.duration_s == 3


def test_there_is_no_slope_where_the_car_stands():
    assert ride([0, 0, 36], slope=0.05).sine_of_slope.tolist() == pytest.approx([0, 0.05])


def test_stops_are_arrivals_at_rest():
    assert ride([0, 10, 0, 0, 10, 5]).stops == 1
    assert ride([10, 0, 10, 0]).stops == 2
    assert ride([0, 0, 10]).stops == 0


def test_climb_and_descent_are_counted_apart():
    trace = ride([36, 36, 36, 36], slope=[0.05, -0.02, 0.01])
    assert trace.climb_m == pytest.approx(0.6) and trace.descent_m == pytest.approx(0.2)
