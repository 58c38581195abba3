"""A slippery road: every surface as its own check says, weight and balance."""

from dataclasses import replace

import pytest

from model.describe.parameters import car_of
from model.describe.scenario_io import starting_drives
from model.limits.grip_margin import BENDS_M, LEVELS, grip_check
from model.limits.limit_settings import LimitSettings
from model.limits.slippery_road import slippery_road

VALLEY = starting_drives()["mountain-valley"][2]
USUAL = LimitSettings()


@pytest.mark.parametrize("bend", ["straight on", *BENDS_M])
def test_every_surface_is_as_its_own_check_says(bend):
    settings = replace(USUAL, bend=bend, grip_kmh=40.0, slope_pct=-5.0)
    found = slippery_road(VALLEY, settings)
    car = car_of(VALLEY)
    for row in found.by_surface.itertuples():
        there = replace(VALLEY.conditions, surface=row.surface)
        check = grip_check(car, there, VALLEY.driver.lift_off_mps2, 40.0, BENDS_M.get(bend), -5.0)
        assert {name: getattr(row, name) for name in LEVELS} == pytest.approx(check["largest_lift_off_mps2"])
        assert (row.least, row.margin) == (check["available_friction"]["low"], check["margin"])
        assert row.demand == check["demand_friction"]
    assert (found.balance is None) == (bend == "straight on")


def test_going_slower_in_a_bend_leaves_more_for_lift_off():
    found = slippery_road(VALLEY, replace(USUAL, bend="bend", grip_kmh=60.0))
    again = slippery_road(VALLEY, replace(USUAL, bend="bend", grip_kmh=50.0))
    assert found.slower == pytest.approx(again.check["largest_lift_off_mps2"])
    assert all(found.slower[name] > found.check["largest_lift_off_mps2"][name] for name in LEVELS)


def test_weight_moves_to_the_front_and_balance_follows_the_share():
    found = slippery_road(VALLEY, replace(USUAL, bend="bend"))
    assert found.loads["front"].is_monotonic_increasing
    assert found.loads["front"].iloc[0] == pytest.approx(car_of(VALLEY).front_load_share)
    assert found.balance["front"].is_monotonic_increasing and found.balance["rear"].is_monotonic_decreasing
    # the rear-driven car is where the front axle's share is nothing
    assert found.balance["rear"].iloc[0] == pytest.approx(found.check["demand_friction"])


def test_the_slipperiest_leg_counts():
    icy = VALLEY.with_leg(2, "surface", "ice").with_setting("surface", "wet")
    found = slippery_road(icy, USUAL)
    assert found.check["surface"] == "ice"
    assert found.most_friction == 0.2 and found.winter_times == pytest.approx(1.2 / 0.8)
