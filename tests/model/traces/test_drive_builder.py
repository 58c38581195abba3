"""Described legs and habits to a speed trace."""

import json
import re
from itertools import product
from pathlib import Path

import numpy as np
import pytest
from numpy.lib.stride_tricks import sliding_window_view

from model.describe.fields import InputError
from model.describe.scenario import LEG_FIELDS, SURFACES, Driver, Leg
from model.describe.units import GRAVITY_MPS2, KMH_PER_MPS
from model.traces.drive_builder import build_drive
from model.traces.habits import HABITS, MOST_JERK_MPS3
from tests.refused import refuses, told

FILES = sorted((Path(__file__).parents[3] / "assets" / "starting_drives").glob("*.json"))
STEADY = Driver(steady_foot="steady")
EVERY_HABIT = [
    Driver(looks_ahead=looks_ahead, pull_away=pull_away, steady_foot=steady_foot)
    for looks_ahead, pull_away, steady_foot in product(
        HABITS["peak_slowing_mps2"], HABITS["peak_pull_away_mps2"], HABITS["swing_share"]
    )
]


def starting_drive(file, driver=None):
    """Legs, whether the drive returns, and the trace."""
    data = json.loads(file.read_text(encoding="utf-8"))
    legs = tuple(Leg(**leg) for leg in data["legs"])
    driver = driver or Driver(**data.get("driver", {}))
    return legs, data["return_trip"], build_drive(legs, driver, return_trip=data["return_trip"])


def by_leg(trace, values, legs):
    return np.bincount(trace.leg, values, minlength=len(legs))


def assert_as_described(trace, legs, return_trip=False):
    """Distance, climb, descent and stops, leg by leg."""
    ways = 2 if return_trip else 1
    rise = np.diff(trace.elevation_m)
    climb, descent = np.array([leg.climb_m for leg in legs]), np.array([leg.descent_m for leg in legs])
    if return_trip:
        climb = descent = climb + descent
    kilometres = np.array([leg.distance_km for leg in legs])
    np.testing.assert_allclose(by_leg(trace, trace.step_m, legs), ways * 1000 * kilometres, rtol=1e-9)
    np.testing.assert_allclose(by_leg(trace, rise.clip(min=0), legs), climb, rtol=1e-6, atol=1e-6)
    np.testing.assert_allclose(by_leg(trace, -rise.clip(max=0), legs), descent, rtol=1e-6, atol=1e-6)

    rests = by_leg(trace, (trace.speed_mps[1:] == 0) & (trace.speed_mps[:-1] > 0), legs)
    stops = np.array([ways * leg.stops for leg in legs])
    stops[-1] += legs[-1].stops == 0
    stops[0] += return_trip and legs[0].stops == 0
    np.testing.assert_array_equal(rests, stops)
    assert trace.stops == stops.sum()
    assert trace.speed_mps[0] == trace.speed_mps[-1] == 0


def jerk_mps3(trace):
    return np.diff(trace.acceleration_mps2) / ((trace.step_s[1:] + trace.step_s[:-1]) / 2)


def assert_smooth(trace, driver):
    """No harder and no more abrupt than the habit; half a percent is what the points of the trace may shift speeds."""
    a_little = 1.005
    assert -trace.acceleration_mps2.min() <= HABITS["peak_slowing_mps2"][driver.looks_ahead] * a_little
    assert trace.acceleration_mps2.max() <= HABITS["peak_pull_away_mps2"][driver.pull_away] * a_little
    assert np.abs(jerk_mps3(trace)).max() <= MOST_JERK_MPS3 * 1.02


def bottoms_mps(trace):
    """Speeds at which the car turns from slowing to gaining speed, at least 1 km/h in 4 s, without coming to rest."""
    before, here, after = trace.speed_mps[:-5], trace.speed_mps[1:-4], trace.speed_mps[2:-3]
    gains = sliding_window_view(trace.speed_mps[2:], 4).max(axis=1) > here + 1 / KMH_PER_MPS
    return here[(before > here) & (here <= after) & (here > 0) & gains]


def event_peaks_mps2(trace):
    """Hardest second of each slow-down that is more than the swing of the speed."""
    slowing = np.maximum(-trace.acceleration_mps2, 0)
    starts = np.flatnonzero(np.diff(np.append(0, slowing) > 0.3, prepend=0) > 0)
    peaks = np.maximum.reduceat(slowing, starts)
    return peaks[peaks > 0.3]


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.stem)
class TestStartingDrives:
    def test_is_as_described(self, file):
        legs, return_trip, trace = starting_drive(file)
        assert_as_described(trace, legs, return_trip)

    def test_event_peaks(self, file):
        """Common practice, no source: hardly anybody slows by more than 0.3 g in everyday driving."""
        legs, return_trip, trace = starting_drive(file)
        peaks = event_peaks_mps2(trace)
        described = (1 + return_trip) * sum(leg.stops + leg.slow_downs for leg in legs)
        assert len(peaks) >= described
        share = np.mean(peaks <= 0.3 * GRAVITY_MPS2)
        print(f"{file.stem}: {share:.0%} of {len(peaks)} slow-downs at or below 0.3 g, median "
              f"{np.median(peaks) / GRAVITY_MPS2:.2f} g")  # fmt: skip
        assert share > 0.95

    @pytest.mark.parametrize("driver", EVERY_HABIT, ids=lambda d: f"{d.looks_ahead}-{d.pull_away}-{d.steady_foot}")
    def test_every_habit_is_smooth_and_keeps_the_totals(self, file, driver):
        legs, return_trip, trace = starting_drive(file, driver)
        assert_as_described(trace, legs, return_trip)
        assert_smooth(trace, driver)

    def test_slow_downs_are_as_many_and_as_deep_as_described(self, file):
        legs, return_trip, trace = starting_drive(file, STEADY)
        described = np.concatenate([np.full((1 + return_trip) * leg.slow_downs, leg.slow_to_kmh) for leg in legs])
        bottoms = bottoms_mps(trace) * KMH_PER_MPS
        assert len(bottoms) == len(described)
        # the lowest point may lie between two points in time
        assert bottoms.mean() == pytest.approx(described.mean(), rel=0.03)

    def test_steps_last_one_second(self, file):
        legs, return_trip, trace = starting_drive(file)
        odd = np.flatnonzero(np.abs(trace.step_s - 1) > 1e-9)
        assert len(odd) <= (1 + return_trip) * len(legs)
        assert trace.step_s.min() >= 0.5 - 1e-9
        assert trace.step_s.max() <= 1.5 + 1e-9

    def test_slope_stays_within_the_grade(self, file):
        legs, _, trace = starting_drive(file)
        grade = np.array([leg.grade_pct / 100 for leg in legs])[trace.leg]
        assert (np.abs(trace.sine_of_slope) <= grade * (1 + 1e-9)).all()

    def test_height_does_not_change_at_rest(self, file):
        _, _, trace = starting_drive(file)
        assert (np.diff(trace.elevation_m)[trace.step_m == 0] == 0).all()

    def test_says_that_it_is_invented(self, file):
        data = json.loads(file.read_text(encoding="utf-8"))
        assert data["schema"] == 1
        assert data["name"]
        assert data["about"].startswith("Invented:")


def test_starting_drives_differ():
    means = []
    for file in FILES:
        _, _, trace = starting_drive(file)
        means.append(trace.distance_m / trace.duration_s * KMH_PER_MPS)
    assert len(means) == 4
    assert min(np.diff(sorted(means))) > 5
    assert len({json.loads(file.read_text(encoding="utf-8"))["car"] for file in FILES}) == 4


EDGES = {
    "no stops": (Leg(stops=0, slow_downs=0),),
    "many stops": (Leg(distance_km=6, speed_kmh=50, stops=60, slow_downs=80),),
    "all downhill": (Leg(distance_km=10, descent_m=500, grade_pct=5, stops=2),),
    "up and down with no flat road": (Leg(distance_km=2, climb_m=50, descent_m=50, grade_pct=5, stops=1),),
    "steepest": (Leg(distance_km=4, climb_m=400, descent_m=599, grade_pct=25),),
    "10 km/h": (Leg(distance_km=1, speed_kmh=10, stops=5, slow_downs=3, slow_to_kmh=5),),
    "200 km/h": (Leg(distance_km=50, speed_kmh=200, stops=0, slow_downs=6, slow_to_kmh=120),),
    "slows to a crawl": (Leg(distance_km=2, slow_downs=6, slow_to_kmh=0),),
    "hardly slows": (Leg(distance_km=5, speed_kmh=50, slow_downs=6, slow_to_kmh=49.5),),
    "shortest": (Leg(distance_km=0.05, stops=1, slow_downs=0),),
    "shortest, very fast": (Leg(distance_km=0.05, speed_kmh=200, stops=0, slow_downs=0),),
    "short between fast ones": (
        Leg(distance_km=10, speed_kmh=120, stops=0, slow_downs=0),
        Leg(distance_km=0.05, speed_kmh=10, stops=0, slow_downs=0, climb_m=1, descent_m=1),
        Leg(distance_km=10, speed_kmh=120, stops=0, slow_downs=0),
    ),
    "no room to stop on the last": (
        Leg(distance_km=10, speed_kmh=200, stops=0, slow_downs=0),
        *4 * (Leg(distance_km=0.05, speed_kmh=200, stops=0, slow_downs=0),),
    ),
    "eight legs": tuple(
        Leg(distance_km=1 + at, speed_kmh=20 + 15 * at, stops=at % 3, slow_downs=2, slow_to_kmh=15, climb_m=5 * at)
        for at in range(8)
    ),
}


@pytest.mark.parametrize("return_trip", [False, True], ids=["out", "return"])
@pytest.mark.parametrize("case", EDGES)
def test_edges(case, return_trip):
    for driver in (Driver(), Driver(looks_ahead="late", pull_away="brisk", steady_foot="restless")):
        trace = build_drive(EDGES[case], driver, return_trip=return_trip)
        assert_as_described(trace, EDGES[case], return_trip)
        assert_smooth(trace, driver)
        slope = np.abs(trace.sine_of_slope)
        assert (slope <= np.array([leg.grade_pct / 100 for leg in EDGES[case]])[trace.leg] * 1.02).all()


def test_the_same_description_gives_the_same_drive():
    first, second = (build_drive((Leg(), Leg()), Driver(), return_trip=True) for _ in range(2))
    np.testing.assert_array_equal(first.speed_mps, second.speed_mps)


def test_a_leg_with_stops_ends_with_one_and_one_without_is_driven_through():
    legs = (Leg(speed_kmh=50, stops=1), Leg(speed_kmh=80, stops=0), Leg(speed_kmh=60, stops=0))
    trace = build_drive(legs, Driver())
    ends = [np.flatnonzero(trace.leg == leg)[-1] + 1 for leg in range(3)]
    speed_at_end = trace.speed_mps[ends] * KMH_PER_MPS
    np.testing.assert_allclose(speed_at_end, [0, 60, 0])
    # the arrival is one stop more than the description says
    assert trace.stops == 2


def test_speeds_of_neighbouring_legs_are_joined_without_a_stop():
    legs = tuple(Leg(speed_kmh=speed, stops=0, slow_downs=0) for speed in (50, 100, 30))
    trace = build_drive(legs, STEADY)
    inside = trace.speed_mps[30:-30] * KMH_PER_MPS
    assert trace.stops == 1
    assert inside.min() >= 30 - 0.1
    assert inside.max() == pytest.approx(100, rel=0.002)
    assert_smooth(trace, STEADY)


def test_the_way_back_runs_backwards_with_climb_and_descent_swapped():
    legs = (Leg(distance_km=3, climb_m=80, descent_m=20), Leg(distance_km=6, descent_m=200))
    trace = build_drive(legs, Driver(), return_trip=True)
    changes = np.flatnonzero(np.diff(trace.leg))
    np.testing.assert_array_equal(trace.leg[[0, *(changes + 1)]], [0, 1, 0])
    assert trace.climb_m == pytest.approx(300)
    assert trace.elevation_m[[0, -1]] == pytest.approx([0, 0])
    there = np.cumsum(trace.step_m) <= trace.distance_m / 2 + 1e-6
    np.testing.assert_array_equal(trace.heading, np.where(there, 1, -1))
    along = np.append(0, np.cumsum(trace.step_m))
    there = np.linspace(100, 8900, 50)
    np.testing.assert_allclose(
        np.interp(there, along, trace.elevation_m), np.interp(18_000 - there, along, trace.elevation_m), atol=0.5
    )


def test_surface_goes_with_the_leg():
    legs = (Leg(distance_km=1, surface="snow"), Leg(distance_km=1, surface="wet"))
    trace = build_drive(legs, Driver(), return_trip=True)
    named = np.array(SURFACES)[trace.surface]
    np.testing.assert_array_equal(named, np.array(["snow", "wet"])[trace.leg])


def test_mean_time_at_rest():
    trace = build_drive((Leg(distance_km=10, stops=21), Leg(distance_km=3, stops=0)), Driver())
    standing = (trace.speed_mps[1:] == 0) & (trace.speed_mps[:-1] == 0)
    # a rest begins between two points in time
    assert trace.step_s[standing].sum() / 21 == pytest.approx(15, abs=1)


def test_where_events_leave_no_room_the_car_peaks_lower():
    roomy, crowded = (
        build_drive((Leg(distance_km=distance, speed_kmh=100, stops=8, slow_downs=0),), STEADY) for distance in (12, 2)
    )
    assert roomy.speed_mps.max() * KMH_PER_MPS == pytest.approx(100, rel=0.002)
    assert 50 < crowded.speed_mps.max() * KMH_PER_MPS < 90


def test_where_there_is_no_room_for_the_depth_the_slow_downs_stay_slow_downs():
    leg = Leg(distance_km=1, speed_kmh=100, stops=4, slow_downs=26, slow_to_kmh=80)
    trace = build_drive((leg,), STEADY)
    assert_as_described(trace, (leg,))
    assert len(bottoms_mps(trace)) == 26


def test_restless_foot_swings_and_slows_more_than_needed():
    leg = (Leg(distance_km=20, speed_kmh=80, stops=0, slow_downs=5, slow_to_kmh=50),)
    lowest, highest = {}, {}
    for word in HABITS["swing_share"]:
        speed = build_drive(leg, Driver(steady_foot=word)).speed_mps * KMH_PER_MPS
        inside = speed[30:-30]
        lowest[word], highest[word] = inside.min(), inside.max()
    assert highest["steady"] == pytest.approx(80, rel=0.001)
    assert 80 < highest["usual"] < 80 * 1.021
    assert 80 * 1.03 < highest["restless"] < 80 * 1.061
    assert lowest["usual"] == pytest.approx(lowest["steady"], abs=1)
    assert lowest["restless"] == pytest.approx(lowest["steady"] * 0.75, abs=1)


@pytest.mark.parametrize("stops, slow_downs", [(200, 30), (400, 0), (0, 500)])
def test_stops_that_do_not_fit_are_refused_with_the_most_that_do(stops, slow_downs):
    def legs(stops, slow_downs):
        return Leg(), Leg(distance_km=1.5, stops=stops, slow_downs=slow_downs)

    with refuses("leg 2") as refused:
        build_drive(legs(stops, slow_downs), Driver())
    message = told(refused.value)
    assert f"{stops} stops and {slow_downs} slow-downs do not fit in 1.5 km" in message
    most = int(re.search(r"at most (\d+)", message)[1])
    stops = min(stops, most)
    fitting = legs(stops, most - stops)
    assert_as_described(build_drive(fitting, Driver()), fitting)
    with pytest.raises(InputError):
        build_drive(legs(stops, most - stops + 1), Driver())


@pytest.mark.parametrize(
    "legs, said",
    [
        ((), "none were given"),
        ((Leg(speed_kmh=30, slow_downs=1, slow_to_kmh=30),), "slow_to_kmh .*, leg 1"),
        ((Leg(), Leg(distance_km=1, climb_m=100, grade_pct=5)), "climb_m .* and descent_m .*, leg 2"),
    ],
)
def test_legs_are_checked_first(legs, said):
    with refuses(said):
        build_drive(legs, Driver())


@pytest.mark.parametrize("speed_kmh", [2.0, 3.0, 8.0])
def test_a_queue_can_be_entered_and_is_driven_as_described(speed_kmh):
    leg = Leg(distance_km=1.0, speed_kmh=speed_kmh, stops=20, slow_downs=4, slow_to_kmh=speed_kmh / 2)
    assert all(LEG_FIELDS[key].parse(getattr(leg, key)) == getattr(leg, key) for key in ("speed_kmh", "stops"))
    trace = build_drive((leg,), Driver())
    assert trace.stops == 20 and trace.step_m.sum() == pytest.approx(1000, rel=1e-3)
    assert trace.speed_mps.max() * 3.6 == pytest.approx(speed_kmh, rel=0.05)
