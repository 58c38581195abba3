"""Whatever is described: the built drive is as long, as high and as often at rest, and no harder than the habit."""

import numpy as np
from hypothesis import given
from hypothesis import strategies as st

from model.describe.scenario import LONGEST_H, MAX_LEGS, Driver, Leg, check_legs
from model.traces.drive_builder import build_drive
from model.traces.habits import HABITS, MOST_JERK_MPS3

METRES_PER_EVENT = 20
"""Every driver's stops and slow-downs fit when each has this much road."""


@st.composite
def a_leg(draw):
    distance_km = draw(st.floats(0.05, 40))
    # as many legs as there may be take no longer than they may
    speed_kmh = draw(st.floats(max(2.0, 1.001 * distance_km * MAX_LEGS / LONGEST_H), 200))
    room = min(40, int(distance_km * 1000 / METRES_PER_EVENT) - 1)
    stops = draw(st.integers(0, room))
    slow_downs = draw(st.integers(0, room - stops))
    grade_pct = draw(st.floats(0.1, 25))
    most_height = 0.999 * distance_km * 10 * grade_pct
    climb_m = draw(st.floats(0, min(4000, most_height)))
    descent_m = draw(st.floats(0, min(4000, most_height - climb_m)))
    return Leg(
        distance_km=distance_km,
        speed_kmh=speed_kmh,
        stops=stops,
        slow_downs=slow_downs,
        slow_to_kmh=draw(st.floats(0, min(180, 0.999 * speed_kmh))),
        climb_m=climb_m,
        descent_m=descent_m,
        grade_pct=grade_pct,
    )


some_legs = st.lists(a_leg(), min_size=1, max_size=MAX_LEGS).map(tuple)
a_driver = st.builds(
    Driver,
    looks_ahead=st.sampled_from(list(HABITS["peak_slowing_mps2"])),
    pull_away=st.sampled_from(list(HABITS["peak_pull_away_mps2"])),
    steady_foot=st.sampled_from(list(HABITS["swing_share"])),
)


@given(legs=some_legs, driver=a_driver, return_trip=st.booleans())
def test_totals_are_as_described(legs, driver, return_trip):
    check_legs(legs)
    trace = build_drive(legs, driver, return_trip=return_trip)
    rise = np.diff(trace.elevation_m)
    for at, leg in enumerate(legs):
        here = trace.leg == at
        ways = 2 if return_trip else 1
        climb, descent = leg.climb_m, leg.descent_m
        if return_trip:
            climb = descent = climb + descent
        np.testing.assert_allclose(trace.step_m[here].sum(), ways * leg.distance_km * 1000, rtol=1e-3)
        np.testing.assert_allclose(rise[here].clip(min=0).sum(), climb, rtol=1e-3, atol=1e-6)
        np.testing.assert_allclose(-rise[here].clip(max=0).sum(), descent, rtol=1e-3, atol=1e-6)
    stops = sum(leg.stops for leg in legs) * (1 + return_trip)
    arrivals = (legs[-1].stops == 0) + (return_trip and legs[0].stops == 0)
    assert trace.stops == stops + arrivals


@given(legs=some_legs, driver=a_driver)
def test_speed_is_never_negative_nor_changes_harder_than_the_habit(legs, driver):
    trace = build_drive(legs, driver)
    assert (trace.speed_mps >= 0).all()
    assert (trace.step_s > 0).all()
    fastest = max(leg.speed_kmh for leg in legs) / 3.6
    assert trace.speed_mps.max() <= fastest * (1 + HABITS["swing_share"][driver.steady_foot] + 0.01)
    acceleration = trace.acceleration_mps2
    assert -acceleration.min() <= HABITS["peak_slowing_mps2"][driver.looks_ahead] * 1.01
    assert acceleration.max() <= HABITS["peak_pull_away_mps2"][driver.pull_away] * 1.01
    jerk = np.diff(acceleration) / ((trace.step_s[1:] + trace.step_s[:-1]) / 2)
    assert np.abs(jerk).max() <= MOST_JERK_MPS3 * 1.03
