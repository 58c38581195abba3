"""Lift-off against grip: axle loads, the ellipse, slopes, trailers, margins and their names."""

from dataclasses import replace

import numpy as np
import pytest

from model.describe.parameters import car_from
from model.describe.scenario import SURFACES, TYRES, Conditions
from model.limits.grip_margin import (
    available_friction,
    balance,
    demand_friction,
    failing_axle,
    grip_asked,
    grip_check,
    largest_lift_off_mps2,
    margin_word,
    slip_after_delay,
)
from model.physics.grip import LATERAL_SHARE

PLAIN = Conditions()
G = 9.80665


def car(axle="front", **stated):
    return car_from("family-hatch", {"driven_axle": axle} | stated)


def test_rolling_on_asks_nothing_and_weight_stands_as_it_stands():
    asked = grip_asked(car(), PLAIN, 0.0)
    assert asked.front == asked.rear == 0
    assert asked.front_load_share == pytest.approx(0.52)


def test_a_bend_asks_both_axles_alike_and_shares_the_ellipse_with_slowing():
    asked = grip_asked(car("rear"), PLAIN, 0.0, speed=15.0, radius_m=60.0)
    across_g = 15.0**2 / 60 / G
    assert [asked.front_across, asked.rear_across] == pytest.approx([across_g, across_g])
    assert asked.rear == pytest.approx(across_g / LATERAL_SHARE)
    both = grip_asked(car("rear"), PLAIN, 1.0, speed=15.0, radius_m=60.0)
    assert both.rear == pytest.approx(np.hypot(both.rear_along, both.rear_across / LATERAL_SHARE))
    assert both.front < both.rear


def test_a_downgrade_takes_weight_off_but_the_pedal_asks_the_same_force():
    flat, down = (grip_asked(car(), PLAIN, 1.0, grade=grade) for grade in (0.0, -0.12))
    weight = flat.front_load_n + flat.rear_load_n
    assert down.front_load_n + down.rear_load_n == pytest.approx(weight / np.sqrt(1 + 0.12**2))
    assert down.front_along > flat.front_along


def test_a_trailer_adds_force_and_no_weight_on_the_axles():
    alone, towing = (grip_asked(car(), replace(PLAIN, trailer_kg=kg), 1.0) for kg in (0.0, 900.0))
    assert towing.front_along * towing.front_load_n == pytest.approx(1.5 * alone.front_along * alone.front_load_n)
    assert towing.front_load_n + towing.rear_load_n == pytest.approx(alone.front_load_n + alone.rear_load_n)


def test_all_wheel_slowing_by_weight_asks_both_axles_alike_and_a_set_share_does_not():
    alike = grip_asked(car("all"), PLAIN, 1.5)
    assert alike.front_along == pytest.approx(alike.rear_along) == pytest.approx(1.5 / G)
    to_the_rear = grip_asked(car("all", front_regen_share=0.3), PLAIN, 1.5)
    assert to_the_rear.rear_along > alike.rear_along > to_the_rear.front_along
    assert demand_friction(to_the_rear, "all") == to_the_rear.rear


def test_a_lighter_driven_axle_has_less():
    largest = [float(largest_lift_off_mps2(car(front_load_share=share), PLAIN, 0.2)) for share in (0.4, 0.5, 0.6)]
    assert largest == sorted(largest) and largest[0] < largest[-1]


@pytest.mark.parametrize("axle", ["front", "rear", "all"])
@pytest.mark.parametrize("where", [(0.0, np.inf, 0.0), (12.0, 100.0, 0.0), (10.0, 90.0, -0.08)])
def test_the_largest_lift_off_uses_just_what_there_is(axle, where):
    for friction in (0.25, 0.5):
        strength = largest_lift_off_mps2(car(axle), PLAIN, friction, *where)
        assert demand_friction(grip_asked(car(axle), PLAIN, strength, *where), axle) == pytest.approx(friction)
        kept = largest_lift_off_mps2(car(axle), PLAIN, friction, *where, reserve_share=0.2)
        assert demand_friction(grip_asked(car(axle), PLAIN, kept, *where), axle) == pytest.approx(0.8 * friction)


def test_speed_in_a_bend_eats_the_lift_off():
    speeds = np.linspace(2, 20, 10)
    largest = largest_lift_off_mps2(car(), PLAIN, 0.3, speeds, 60.0)
    assert np.all(np.diff(largest) <= 0) and largest[0] > 1 and largest[-1] == 0


def test_what_lets_go_first():
    names = {axle: failing_axle(grip_asked(car(axle), PLAIN, 1.0)) for axle in ("front", "rear", "all")}
    assert names == {"front": "front", "rear": "rear", "all": "both"}
    in_a_bend = grip_asked(car("all", front_regen_share=0.7), PLAIN, 2.0, 12.0, 80.0)
    assert failing_axle(in_a_bend) == "front"


def test_margins_follow_the_printed_rule():
    words = [margin_word(demand, 0.2, 0.4) for demand in (0.1, 0.11, 0.2, 0.21, 0.4, 0.41)]
    assert words == ["larger", "moderate", "moderate", "small", "small", "none"]


def test_slip_grows_with_the_delay_and_is_none_where_the_road_holds():
    asked = grip_asked(car(), PLAIN, 1.5)
    at = [slip_after_delay(car(slip_control_delay_s=s), asked, 0.1, 15.0) for s in (0.0, 0.1, 0.3)]
    assert at[0] == 0 < at[1] < at[2] <= 1
    excess_n = (float(asked.front_along) - 0.1) * float(asked.front_load_n)
    assert at[1] == pytest.approx(excess_n / (0.04 * 1800) * 0.1 / 15.0)
    assert slip_after_delay(car(), asked, 0.9, 15.0) == 0
    assert slip_after_delay(car(slip_control_delay_s=2.0), asked, 0.05, 1.0) == 1


@pytest.mark.parametrize("axle", ["front", "rear", "all"])
def test_every_driven_wheel_that_slips_counts_and_no_other(axle):
    asked = grip_asked(car(axle), PLAIN, 2.0)
    along = {"front": (asked.front_along, asked.front_load_n), "rear": (asked.rear_along, asked.rear_load_n)}
    driven = [axle] if axle != "all" else ["front", "rear"]
    excess_n = sum((float(along[one][0]) - 0.1) * float(along[one][1]) for one in driven)
    slip = slip_after_delay(car(axle, slip_control_delay_s=0.1), asked, 0.1, 15.0)
    assert slip == pytest.approx(excess_n / (0.04 * 1800) * 0.1 / 15.0) and 0 < slip < 1


def test_the_check_answers_with_bands():
    found = grip_check(car("rear"), Conditions(surface="snow"), 1.3, 40.0, 60.0, -5.0)
    assert found["available_friction"] == pytest.approx({"low": 0.15, "mid": 0.2, "high": 0.35})
    assert list(found["largest_lift_off_mps2"].values()) == sorted(found["largest_lift_off_mps2"].values())
    for name, most in found["largest_lift_off_mps2"].items():
        assert found["largest_lift_off_with_reserve_mps2"][name] <= most
    assert found["failing_axle"] == "rear" and found["demand_friction"] > 0.35 and found["margin"] == "none"
    assert found["axle_load_share"]["front"] > found["axle_load_share_standing"]["front"]
    assert found["slowing_here_mps2"] == pytest.approx(1.3 - G * 0.05 / np.sqrt(1 + 0.05**2))
    assert "safe" not in str(found)


def test_a_bend_too_fast_for_the_other_axle_leaves_no_margin_either():
    found = grip_check(car(), Conditions(surface="ice"), 0.0, 50.0, 60.0)
    assert found["margin"] == "none" and found["largest_lift_off_mps2"]["high"] == 0


def test_available_grip_depends_on_road_tyres_and_speed():
    mids = {surface: available_friction(Conditions(surface=surface))["mid"] for surface in SURFACES}
    assert list(mids.values()) == sorted(mids.values(), reverse=True)
    on_snow = {tyres: available_friction(Conditions(surface="snow", tyres=tyres))["mid"] for tyres in TYRES}
    assert on_snow["winter"] > on_snow["any"] == mids["snow"] > on_snow["summer"]
    wet = [available_friction(Conditions(surface="standing-water"), kmh / 3.6)["mid"] for kmh in (30, 50, 70, 90, 130)]
    assert wet[0] == wet[1] > wet[2] > wet[3] == pytest.approx(wet[4]) and wet[4] > 0


def test_shares_of_the_axles_in_a_bend_trade_the_nose_for_the_tail():
    front, rear = balance(car("all"), PLAIN, 2.0, 12.0, 80.0, np.linspace(0, 1, 11))
    assert np.all(np.diff(front) > 0) and np.all(np.diff(rear) < 0)
    assert front[0] < rear[0] and front[-1] > rear[-1]


def test_a_grip_that_was_stated_has_no_band():
    stated = available_friction(Conditions(surface="snow", grip_level=-0.5))
    banded = available_friction(Conditions(surface="snow"))
    assert len(set(stated.values())) == 1 and banded["low"] < stated["mid"] < banded["mid"]
