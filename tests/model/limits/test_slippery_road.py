"""A slippery road: every surface by mechanics, weight and balance."""

from dataclasses import replace

import pytest

from model.describe.parameters import car_of
from model.describe.scenario import Scenario
from model.describe.scenario_io import starting_drives
from model.limits.grip_margin import LEVELS
from model.limits.limit_settings import LimitSettings
from model.limits.slippery_road import slippery_road
from model.physics.grip import STRONGEST_MPS2

VALLEY = starting_drives()["mountain-valley"][2]
USUAL = LimitSettings()
G = 9.80665


FRICTION = {"dry": (0.65, 0.85, 1.21), "snow": (0.15, 0.2, 0.35), "ice": (0.05, 0.1, 0.2)}
"""Of the sources behind the table of grip, below 50 km/h [1]."""


@pytest.mark.parametrize(("axle", "share", "moves"), [("front", 0.52, 1), ("rear", 0.48, -1)])
def test_straight_on_the_axle_that_slows_gives_the_closed_form(axle, share, moves):
    """Weight on the axle while slowing by a: m·(g·share ± a·h/l), which times the friction is the force m·a."""
    scenario = Scenario(stated=(("driven_axle", axle),)).with_setting("lift_off_mps2", 1.0)
    found = slippery_road(scenario, replace(USUAL, grip_kmh=40.0))
    lever = moves * 0.55 / 2.73
    asked = 1.0 / (G * share + 1.0 * lever)
    for surface, frictions in FRICTION.items():
        row = found.by_surface.set_index("surface").loc[surface]
        assert row["demand"] == pytest.approx(asked) and row["least"] == frictions[0]
        largest = [friction * G * share / (1 - friction * lever) for friction in frictions]
        assert list(row[list(LEVELS)]) == pytest.approx([min(most, STRONGEST_MPS2) for most in largest])
        on_ice = "small" if asked <= 0.2 else "none"
        assert row["margin"] == {"dry": "larger", "snow": "small", "ice": on_ice}[surface]
    assert found.balance is None and slippery_road(scenario, replace(USUAL, bend="bend")).balance is not None


def test_going_slower_in_a_bend_leaves_more_for_lift_off():
    found = slippery_road(VALLEY, replace(USUAL, bend="bend", grip_kmh=60.0))
    again = slippery_road(VALLEY, replace(USUAL, bend="bend", grip_kmh=50.0))
    assert found.slower == pytest.approx(again.check["largest_lift_off_mps2"])
    assert all(found.slower[name] > found.check["largest_lift_off_mps2"][name] for name in LEVELS)


def test_weight_moves_to_the_front_and_balance_follows_the_share():
    found = slippery_road(VALLEY, replace(USUAL, bend="bend"))
    assert found.loads["front"].is_monotonic_increasing
    assert found.loads["front"].iloc[0] == pytest.approx(car_of(VALLEY).front_load_share)
    assert list(found.loads["front"] + found.loads["rear"]) == pytest.approx([1.0] * len(found.loads))
    assert found.balance["front"].is_monotonic_increasing and found.balance["rear"].is_monotonic_decreasing
    # the rear-driven car is where the front axle's share is nothing
    assert found.balance["rear"].iloc[0] == pytest.approx(found.check["demand_friction"])


def test_the_slipperiest_leg_counts():
    icy = VALLEY.with_leg(2, "surface", "ice").with_setting("surface", "wet")
    found = slippery_road(icy, USUAL)
    assert found.check["surface"] == "ice"
    assert found.most_friction == 0.2 and found.winter_times == pytest.approx(1.2 / 0.8)
