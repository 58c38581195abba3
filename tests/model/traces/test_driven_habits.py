"""Habits read from a drive are those that it was built with."""

from dataclasses import replace

import numpy as np
import pytest

from model.describe.scenario import Driver, Leg
from model.traces.cycles import cycle_trace
from model.traces.drive_builder import build_drive
from model.traces.driven_habits import falls, habits_of
from model.traces.logs import recording_of
from tests.refused import refuses

LEGS = (Leg(distance_km=8.0, speed_kmh=50.0, stops=10, slow_downs=6), Leg(distance_km=6.0, speed_kmh=70.0, stops=4))


def recorded(driver):
    built = build_drive(LEGS, driver)
    return recording_of({"time_s": built.time_s, "speed_kmh": built.speed_mps * 3.6}).trace


@pytest.mark.parametrize("looks_ahead", ["far", "usual", "late"])
@pytest.mark.parametrize("pull_away", ["gentle", "usual", "brisk"])
def test_a_built_drive_tells_the_habits_it_was_built_with(looks_ahead, pull_away):
    found = habits_of(recorded(Driver(looks_ahead=looks_ahead, pull_away=pull_away)), 1.0)
    assert (found.looks_ahead, found.pull_away) == (looks_ahead, pull_away)
    assert found.stops_per_km == pytest.approx(15 / 14, rel=0.1)


def test_who_looks_ahead_slows_over_a_longer_road_and_more_often_by_lifting():
    far, late = (habits_of(recorded(Driver(looks_ahead=word)), 1.3) for word in ("far", "late"))
    assert far.ahead_m > 1.5 * late.ahead_m
    assert far.by_lift > late.by_lift and far.slow_downs == late.slow_downs


def test_without_stops_no_habit_is_read():
    trace = cycle_trace("hwfet")
    with refuses("too few"):
        habits_of(replace(trace, recorded=True), 1.0)


def test_a_slow_down_is_a_fall_that_counts():
    speed = np.array([0.0, 10.0, 5.0, 5.0, 4.0, 9.0, 0.0])
    assert falls(speed) == [(1, 2), (5, 6)]
