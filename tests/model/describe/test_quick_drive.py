"""A drive in five answers: what was said holds of the legs that it makes, and can be read back from them."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as some

from model.describe.quick_drive import QuickDrive, legs_of, quick_of, with_answer
from model.describe.scenario import Driver, Leg, check_legs
from model.describe.scenario_io import starting_drives
from model.traces.drive_builder import build_drive
from tests.refused import refuses

SHARES = some.integers(0, 20).flatmap(lambda town: some.tuples(some.just(town), some.integers(0, 20 - town)))


@some.composite
def quick_drives(draw):
    town, motorway = draw(SHARES)
    km = draw(some.floats(2, 400))
    way = draw(some.sampled_from(["flat", "up", "down"]))
    height = 0.0 if way == "flat" else draw(some.floats(5, 20 * km))
    return QuickDrive(
        distance_km=km, town_share=town / 20, motorway_share=motorway / 20, way=way, height_m=height,
        stops=draw(some.integers(1, 60)),
    )  # fmt: skip


def km_of(legs, low_kmh, high_kmh):
    return sum(leg.distance_km for leg in legs if low_kmh <= leg.speed_kmh < high_kmh)


@given(quick_drives())
def test_the_legs_hold_what_was_said(quick):
    legs = legs_of(quick)
    check_legs(legs)
    assert 1 <= len(legs) <= 4
    assert sum(leg.distance_km for leg in legs) == pytest.approx(quick.distance_km, abs=1e-5)
    shares = (0, 60, quick.town_share), (60, 100, quick.country_share), (100, 200, quick.motorway_share)
    for low, high, share in shares:
        # a part too short for a leg is left to the longest
        assert km_of(legs, low, high) == pytest.approx(share * quick.distance_km, abs=0.11)
    assert sum(leg.stops for leg in legs) == quick.stops
    up = {"up": 1, "down": -1, "flat": 0}[quick.way] * quick.height_m
    assert sum(leg.climb_m - leg.descent_m for leg in legs) == pytest.approx(up)


@given(quick_drives())
def test_stops_are_spread_over_the_town(quick):
    legs = legs_of(quick)
    towns = [leg for leg in legs if leg.speed_kmh < 60]
    if towns:
        assert sum(leg.stops for leg in towns) == quick.stops
        assert max(leg.stops for leg in towns) - min(leg.stops for leg in towns) <= 1
    # the drive ends at rest
    assert legs[-1].stops >= 1


@given(quick_drives())
def test_the_answers_are_read_back_from_the_legs(quick):
    back = quick_of(legs_of(quick))
    assert back.distance_km == pytest.approx(quick.distance_km, abs=1e-5)
    for key in ("town_share", "motorway_share"):
        assert getattr(back, key) == pytest.approx(getattr(quick, key), abs=0.11 / quick.distance_km + 1e-4)
    assert (back.way, back.stops) == (quick.way, quick.stops)
    assert back.height_m == pytest.approx(quick.height_m)
    # and make the same legs again
    assert quick_of(legs_of(back)) == back


def test_the_trace_is_as_long_and_as_high_as_was_said():
    quick = QuickDrive(distance_km=24.0, town_share=0.3, motorway_share=0.4, way="up", height_m=180.0, stops=7)
    trace = build_drive(legs_of(quick), Driver())
    assert trace.distance_m == pytest.approx(24_000, rel=1e-3)
    assert trace.elevation_m[-1] - trace.elevation_m[0] == pytest.approx(180, rel=1e-3)
    assert trace.stops == 7


def test_what_was_answered_last_is_kept_and_the_other_roads_give_way():
    legs = legs_of(QuickDrive(town_share=0.4, motorway_share=0.2))
    mostly = quick_of(with_answer(legs, "motorway_share", 0.9))
    assert (mostly.town_share, mostly.motorway_share) == pytest.approx((0.1, 0.9))
    hill = quick_of(with_answer(legs, "height_m", 80.0))
    assert (hill.way, hill.height_m) == ("up", 80)
    assert quick_of(with_answer(legs, "way", "down")).height_m == 50
    assert quick_of(with_answer(with_answer(legs, "way", "down"), "way", "flat")).height_m == 0


@pytest.mark.parametrize("name", starting_drives())
def test_any_drive_can_be_read_in_five_answers(name):
    _, _, scenario = starting_drives()[name]
    quick = quick_of(scenario.legs)
    assert quick.distance_km == pytest.approx(sum(leg.distance_km for leg in scenario.legs))
    assert quick_of(legs_of(quick)).stops == sum(leg.stops for leg in scenario.legs)


def test_a_hill_that_cannot_be_and_shares_beyond_the_whole_are_refused():
    short = QuickDrive(distance_km=0.5, way="up", height_m=400.0)
    with refuses("would be .* steep"):
        legs_of(short)
    with refuses("more than the whole"):
        legs_of(replace(short, town_share=0.7, motorway_share=0.7))


def test_a_leg_at_a_bound_counts_as_the_faster_road():
    def read(kmh):
        found = quick_of((Leg(distance_km=10, speed_kmh=kmh),))
        return found.town_share, found.motorway_share

    assert [read(kmh) for kmh in (59, 60, 99, 100)] == [(1, 0), (0, 0), (0, 0), (0, 1)]


def test_the_first_hill_that_is_asked_for_is_no_steeper_than_is_usual():
    for km, height_m in ((0.4, 20.0), (30.0, 50.0)):
        assert quick_of(with_answer((Leg(distance_km=km, speed_kmh=48),), "way", "up")).height_m == height_m
