"""Changing a scenario, and what of it cannot be driven."""

from dataclasses import replace

import pytest

from model.describe.fields import InputError
from model.describe.parameters import car_from
from model.describe.scenario import MAX_LEGS, SETTINGS, Leg, Scenario, check_legs
from tests.refused import refuses, told


def test_every_setting_can_be_changed_and_only_that_one():
    for key, field in SETTINGS.items():
        value = {"choice": field.choices[-1:] and field.choices[-1], "yes_no": not field.default, "text": "x"}.get(
            field.kind, field.maximum
        )
        changed = Scenario().with_setting(key, value)
        holders = [dict(changed.stated), vars(changed.conditions), vars(changed.driver), vars(changed.year)]
        assert [holder[key] for holder in holders if key in holder] == [value], key
        assert changed.legs == Scenario().legs


def test_none_takes_the_class_figure_again():
    stated = Scenario().with_setting("mass_kg", 1900.0)
    assert stated.stated == (("mass_kg", 1900.0),)
    assert stated.with_setting("mass_kg", None) == Scenario()


def test_an_unknown_setting_is_refused():
    with refuses("“wings” is not a known setting"):
        Scenario().with_setting("wings", 2)


def test_one_figure_of_one_leg():
    scenario = Scenario(legs=(Leg(), Leg()))
    changed = scenario.with_leg(1, "stops", 9)
    assert changed.legs == (Leg(), Leg(stops=9))


def test_a_scenario_can_be_a_key():
    assert len({Scenario(), Scenario(), Scenario().with_setting("ambient_c", 5.0)}) == 2


@pytest.mark.parametrize("given", [{"f0_n": 100.0}, {"f0_n": 100.0, "f2_n_per_mps2": 0.4}, {"f1_n_per_mps": 0.0}])
def test_half_a_road_load_is_refused(given):
    with refuses("give all three, or none of them"):
        car_from("family-hatch", given)


def test_a_fade_that_ends_before_it_starts_is_refused():
    with refuses(r"fade_end_kmh .* 20 km/h is above fade_start_kmh .*, 10 km/h"):
        car_from("family-hatch", {"fade_start_kmh": 10.0, "fade_end_kmh": 20.0})


@pytest.mark.parametrize(
    "legs, said",
    [
        ((), "legs: none were given"),
        ((Leg(),) * (MAX_LEGS + 1), f"at most {MAX_LEGS} are allowed"),
        ((Leg(), Leg(speed_kmh=30.0, slow_to_kmh=30.0)), "slow_to_kmh (slows down to), leg 2"),
        ((Leg(distance_km=1.0, climb_m=60.0, grade_pct=5.0),), "need 1.2 km, but the leg is 1 km long"),
        ((Leg(distance_km=1.0, climb_m=30.0, descent_m=30.0, grade_pct=5.0),), "30 m up and 30 m down at 5 %"),
        # a slip of one digit, which would be millions of steps
        ((Leg(distance_km=200.0, speed_kmh=5.0, slow_downs=0),) * 2, "the drive would take 80 h; at most 48 h"),
    ],
)
def test_legs_that_cannot_be_driven_are_refused(legs, said):
    with pytest.raises(InputError) as refused:
        check_legs(legs)
    assert said in told(refused.value)


def test_legs_at_their_limits_are_taken():
    check_legs((Leg(),) * MAX_LEGS)
    check_legs((Leg(distance_km=1.0, climb_m=50.0, grade_pct=5.0),))
    check_legs((Leg(speed_kmh=30.0, slow_to_kmh=30.0, slow_downs=0),))
    check_legs((replace(Leg(), stops=0),))
