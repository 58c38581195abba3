"""Slow-downs as the car's lift-off makes them: the same road, the same place, another course of the slowing."""

import numpy as np
import pytest

from model.describe.scenario import Driver
from model.describe.units import KMH_PER_MPS
from model.traces.habits import HABITS, MOST_JERK_MPS3, lifted, slow_down
from tests.made_traces import finely

CHANGES_KMH = [(50, 0), (5, 0), (30, 25), (120, 80), (200, 0)]
STRENGTHS = [0.05, 0.3, 0.7, 1.0, 1.5, 2.5]


@pytest.mark.parametrize("looks_ahead", HABITS["peak_slowing_mps2"])
@pytest.mark.parametrize("from_kmh, to_kmh", CHANGES_KMH)
@pytest.mark.parametrize("strength", STRENGTHS)
def test_it_ends_at_the_same_place_and_speed_no_harder_than_the_habit(from_kmh, to_kmh, strength, looks_ahead):
    habit = slow_down(from_kmh / KMH_PER_MPS, to_kmh / KMH_PER_MPS, Driver(looks_ahead=looks_ahead))
    change = lifted(habit, lambda speed: np.full_like(speed, strength))
    time_s, speed = finely(change)
    slowing = -np.gradient(speed, time_s)
    assert speed[-1] == pytest.approx(to_kmh / KMH_PER_MPS, abs=1e-9)
    assert np.trapezoid(speed, time_s) == pytest.approx(habit.distance_m, rel=1e-6)
    hardest = np.diff(-habit.gained_mps(np.linspace(0, habit.duration_s, 20_001))).max() / (habit.duration_s / 20_000)
    assert slowing.max() <= hardest * (1 + 1e-6)
    assert np.abs(np.gradient(slowing, time_s)).max() <= MOST_JERK_MPS3 * (1 + 1e-3)


def test_weak_lift_off_leaves_the_rest_to_the_pedal_and_strong_lift_off_is_trimmed():
    habit = slow_down(50 / 3.6, 0.0, Driver())
    weak, strong, stronger = (lifted(habit, lambda speed, a=a: np.full_like(speed, a)) for a in (0.5, 1.6, 2.5))
    assert weak.lift_mps2 == pytest.approx(0.5)
    assert weak.brake_s > 4
    assert weak.brake_mps2 == pytest.approx(HABITS["peak_slowing_mps2"]["usual"])
    assert strong.brake_s == pytest.approx(0, abs=1e-6)
    assert strong.lift_mps2 < 1.6
    assert stronger.lift_mps2 == pytest.approx(strong.lift_mps2)


def test_time_grows_with_strength_without_jumps():
    habit = slow_down(80 / 3.6, 0.0, Driver())
    strengths = np.linspace(0.05, 2.5, 400)
    duration = lifted(slow_down(np.full(400, 80 / 3.6), np.zeros(400), Driver()), lambda speed: strengths).duration_s
    assert (np.diff(duration) > -1e-9).all()
    assert np.diff(duration).max() < 0.05 * habit.duration_s


def test_where_no_speed_is_lost_nothing_happens():
    same = np.array([0.0, 10.0])
    change = lifted(slow_down(same, same, Driver()), lambda speed: np.ones(2))
    assert change.duration_s == pytest.approx([0, 0], abs=1e-5)
    assert change.gained_mps(np.zeros(2)) == pytest.approx([0, 0], abs=1e-8)


def test_a_rolling_car_slows_less_the_slower_it_goes():
    """The lift-off's slowing follows the speed: a first part from 120 km/h is rolled through faster than its start."""
    habit = slow_down(120 / 3.6, 0.0, Driver())
    falling = lifted(habit, lambda speed: 0.3 * (speed / (120 / 3.6)) ** 2)
    assert 0.25 < falling.lift_mps2 < 0.3
