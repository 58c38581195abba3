"""A full battery and a long hill: room by battery, who holds the car, what slopes give back."""

from dataclasses import replace

from model.describe.scenario_io import starting_drives
from model.limits.full_battery import given_back, hills
from model.limits.grip_margin import LEVELS
from model.limits.limit_settings import LimitSettings
from model.sampling.drives import drive

VALLEY = starting_drives()["mountain-valley"][2]
USUAL = LimitSettings()


def test_a_battery_that_takes_more_may_be_fuller_at_the_top():
    found = hills(VALLEY, replace(USUAL, hill_m=500.0), drive(VALLEY))
    low, mid, high = (found.room[name] for name in LEVELS)
    assert low.gained_kwh == mid.gained_kwh == high.gained_kwh > 1
    assert low.start_for_full_feel < mid.start_for_full_feel < high.start_for_full_feel < mid.start_at_most
    assert found.takes["mid"].is_monotonic_decreasing and found.takes["high"].iloc[-1] == 0


def test_a_full_battery_leaves_the_hill_to_the_friction_brakes():
    quiet = VALLEY.with_setting("cabin", False).with_setting("accessory_w", 0.0)
    found, fed = (hills(scenario, USUAL, drive(scenario)) for scenario in (quiet, VALLEY))
    assert found.down_full.result.battery_in_kwh < 1e-6 < 0.5 < found.down.result.battery_in_kwh
    assert found.down_full.result.captured_share < 0.1 < 0.9 < found.down.result.captured_share
    # what the car uses aboard the motor may still give
    assert 0.1 < fed.down_full.result.captured_share < 0.5
    assert found.down_full.disc_c.max() > found.down.disc_c.max()
    assert found.fuel is None and found.engine_drag_kw == 0


def test_a_hybrids_window_is_soon_full_from_the_charge_it_keeps():
    hybrid = replace(VALLEY, car_class="full-hybrid")
    found = hills(hybrid, USUAL, drive(hybrid))
    again = hills(hybrid.with_setting("soc_start", 0.9), USUAL, drive(hybrid))
    assert 20 < found.to_fill_m < 300 < hills(VALLEY, USUAL, drive(VALLEY)).to_fill_m
    assert again.to_fill_m == found.to_fill_m
    assert found.engine_drag_kw > 0 and found.fuel.litres.low < found.fuel.litres.high


def test_more_of_a_steep_hill_is_given_back():
    found = given_back(VALLEY)
    at_50 = found[found["speed_kmh"] == 50].set_index("grade_pct")["share"]
    assert at_50.is_monotonic_increasing and at_50.loc[2.0] < 0.3 < at_50.loc[12.0] < 1
    assert len(found) == 18
