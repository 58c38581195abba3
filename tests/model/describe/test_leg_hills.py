"""The hill of a leg: up, down or flat, and of metres, steepness and length each from the others."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from model.describe.fields import InputError
from model.describe.leg_hills import WAYS, hill_km, value_of, way_of, with_entry
from model.describe.scenario import Driver, Leg, check_legs
from model.traces.drive_builder import build_drive
from tests.refused import refuses

FLAT = Leg(distance_km=5.0)
BOTH = Leg(distance_km=12.5, climb_m=180.0, descent_m=120.0, grade_pct=6.0)


@pytest.mark.parametrize("way", WAYS)
@pytest.mark.parametrize("leg", [FLAT, BOTH, Leg(climb_m=50.0), Leg(descent_m=50.0), Leg(distance_km=0.05)])
def test_a_leg_can_be_turned_any_way_and_then_be_driven(leg, way):
    turned = with_entry(leg, "way", way)
    assert way_of(turned) == value_of(turned, "way") == way
    check_legs((turned,))


def test_a_first_hill_is_there_at_once_and_turns_round():
    up = with_entry(FLAT, "way", "up")
    assert (up.climb_m, up.descent_m, up.grade_pct) == (100, 0, 2)
    down = with_entry(up, "way", "down")
    assert (down.climb_m, down.descent_m, down.grade_pct) == (0, 100, 2)
    rise = build_drive((up,), Driver()).elevation_m
    assert rise[-1] - rise[0] == pytest.approx(100, rel=1e-3)


def test_steepness_gives_the_metres_and_metres_give_the_steepness():
    up = with_entry(FLAT, "way", "up")
    steep = with_entry(up, "grade_pct", 7.0)
    assert (steep.climb_m, steep.grade_pct) == (350, 7)
    high = with_entry(steep, "climb_m", 120.0)
    assert (high.climb_m, high.grade_pct) == (120, 2.4)


def test_a_hill_on_part_of_a_leg_keeps_its_length():
    assert hill_km(BOTH) == pytest.approx(5.0)
    steeper = with_entry(BOTH, "grade_pct", 9.0)
    assert (steeper.climb_m, steeper.descent_m, hill_km(steeper)) == (270, 180, pytest.approx(5.0))
    higher = with_entry(BOTH, "climb_m", 280.0)
    assert (higher.grade_pct, hill_km(higher)) == (8, pytest.approx(5.0))
    shorter = with_entry(BOTH, "hill_km", 2.5)
    assert (shorter.climb_m, shorter.descent_m, shorter.grade_pct) == (180, 120, 12)


def test_a_hill_all_the_way_grows_and_shrinks_with_its_leg():
    up = with_entry(FLAT, "way", "up")
    assert with_entry(up, "distance_km", 10.0).grade_pct == 1
    assert with_entry(up, "distance_km", 2.0).climb_m == 100
    assert with_entry(BOTH, "distance_km", 20.0).grade_pct == 6
    assert with_entry(BOTH, "distance_km", 4.0).grade_pct == 7.5


@pytest.mark.parametrize(
    ("leg", "key", "value", "said"),
    [
        (FLAT, "descent_m", 2000.0, "2000 m over 5 km would be 40 % steep; at most 25 % can be entered"),
        (BOTH, "hill_km", 13.0, "A hill of 13 km does not fit on a leg of 12.5 km"),
        (BOTH, "distance_km", 1.0, "300 m over 1 km would be 30 % steep"),
    ],
)
def test_what_cannot_be_is_refused_in_a_sentence(leg, key, value, said):
    with refuses(said):
        with_entry(leg, key, value)


@given(
    distance_km=st.floats(0.05, 1000),
    entries=st.lists(
        st.one_of(
            st.tuples(st.just("way"), st.sampled_from(WAYS)),
            st.tuples(st.sampled_from(("climb_m", "descent_m")), st.floats(0, 4000)),
            st.tuples(st.just("grade_pct"), st.floats(0.1, 25)),
            st.tuples(st.sampled_from(("hill_km", "distance_km")), st.floats(0.05, 1000)),
        ),
        max_size=8,
    ),
)
def test_whatever_is_entered_the_hill_fits_on_its_leg(distance_km, entries):
    leg = Leg(distance_km=distance_km)
    for key, value in entries:
        try:
            leg = with_entry(leg, key, value)
        except InputError:
            continue
        check_legs((leg,))
