"""The four limits laid out for one drive: each number is its own module's, for the right car, road and battery."""

from dataclasses import replace

import numpy as np
import pytest

from model.descent import ordinary_charging_w, until_normal
from model.drives import drive
from model.fields import from_link
from model.grip_margin import BENDS_M, LEVELS, grip_check
from model.limits_of_regen import (
    LIMIT_FIELDS,
    MAP_C,
    LimitSettings,
    accepted_kw,
    at_a_glance,
    by_battery,
    car_of,
    cold_day,
    given_back,
    hard_stop,
    highest_charges,
    hills,
    settings_of,
    slipperiest,
    slippery_road,
)
from model.parameters import car_from
from model.scenario import SURFACES, Scenario
from model.scenario_io import starting_drives
from model.stopping import emergency_stop

STARTS = {name: scenario for name, (_, _, scenario) in starting_drives().items()}
FROSTY = STARTS["motorway"].with_setting("ambient_c", -7.0)
VALLEY = STARTS["mountain-valley"]
USUAL = LimitSettings()


def test_settings_are_read_from_a_link_within_their_bounds():
    settings, notices = settings_of({"part": "hills", "hill_m": "9000", "bend": "hairpin", "mass_kg": "1"})
    assert settings == LimitSettings(part="hills", hill_m=3000.0)
    assert len(notices) == 2 and "hill_m" in notices[1] and "hairpin" in notices[0]
    assert from_link(LIMIT_FIELDS, {}) == ({}, [])


def test_a_stated_acceptance_leaves_no_band():
    stated = FROSTY.with_setting("acceptance_level", 0.5)
    assert set(by_battery(stated, lambda car: car.acceptance_level).values()) == {0.5}
    assert list(by_battery(FROSTY, lambda car: car.acceptance_level).values()) == list(LEVELS.values())


def test_the_glance_agrees_with_the_parts():
    settings = replace(USUAL, hill_m=500.0, bend="bend")
    glance, result = at_a_glance(FROSTY, settings), drive(FROSTY)
    assert cold_day(FROSTY, glance.costs).normal["mid"] == glance.costs.normal
    assert slippery_road(FROSTY, settings).check == glance.grip
    assert hills(FROSTY, settings, result).room["mid"] == glance.room
    assert hard_stop(FROSTY, settings, result).stops == glance.stops


# cold


def test_a_battery_that_takes_more_is_normal_sooner():
    found = cold_day(FROSTY, at_a_glance(FROSTY, USUAL).costs)
    assert found.takes_kw["low"] < found.takes_kw["mid"] < found.ordinary_kw < found.takes_kw["high"]
    assert found.normal["high"].minutes == 0 < found.normal["mid"].minutes
    assert found.normal["low"] is None
    assert found.normal["mid"] == until_normal(drive(FROSTY))
    assert found.ordinary_kw * 1000 == ordinary_charging_w(drive(FROSTY))


def test_the_map_is_the_batterys_own():
    found = cold_day(FROSTY, at_a_glance(FROSTY, USUAL).costs)
    car = car_of(FROSTY)
    for row in found.takes_all.dropna().iloc[::7].itertuples():
        assert accepted_kw(replace(car, acceptance_level=-1.0), row.battery_c, row.low)[0] >= found.ordinary_kw
        assert accepted_kw(replace(car, acceptance_level=-1.0), row.battery_c, row.low + 0.01)[0] < found.ordinary_kw
    assert (found.takes_all["mid"].dropna() <= found.takes_all["high"].loc[found.takes_all["mid"].notna()]).all()
    assert found.takes_all["low"].isna().sum() > found.takes_all["high"].isna().sum()
    for row in found.accepted.itertuples():
        assert row.kw == pytest.approx(accepted_kw(car, row.battery_c, row.soc)[0])
    assert (found.way["battery_c"].iloc[0], found.way["soc"].iloc[0]) == (-7.0, FROSTY.conditions.soc_start)


def test_no_battery_takes_endless_power_and_every_one_takes_none():
    car = car_from("family-hatch")
    assert np.isnan(highest_charges(car, 1e9)).all()
    assert (highest_charges(car, 0.0) == 1.0).all() and len(MAP_C) == len(highest_charges(car, 0.0))


# slippery road


def test_the_slipperiest_leg_counts():
    icy = VALLEY.with_leg(2, "surface", "ice").with_setting("surface", "wet")
    assert slipperiest(icy).surface == "ice"
    assert slippery_road(icy, USUAL).check["surface"] == "ice"


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


def test_weight_moves_to_the_front_and_balance_follows_the_share():
    found = slippery_road(VALLEY, replace(USUAL, bend="bend"))
    assert found.loads["front"].is_monotonic_increasing
    assert found.loads["front"].iloc[0] == pytest.approx(car_of(VALLEY).front_load_share)
    assert found.balance["front"].is_monotonic_increasing and found.balance["rear"].is_monotonic_decreasing
    # the rear-driven car is where the front axle's share is nothing
    assert found.balance["rear"].iloc[0] == pytest.approx(found.check["demand_friction"])


# full battery and hills


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
    assert found.down_full.friction_share > 0.9 > 0.1 > found.down.friction_share
    # what the car uses aboard the motor may still give
    assert 0.5 < fed.down_full.friction_share < 0.9
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


# emergency stop


def test_every_road_has_its_stopping_distance():
    settings = replace(USUAL, stop_kmh=80.0, reaction_s=1.5)
    found = hard_stop(VALLEY, settings, drive(VALLEY))
    for row in found.by_surface.itertuples():
        there = replace(VALLEY.conditions, surface=row.surface)
        stop = emergency_stop(car_of(VALLEY), there, 80.0, level=-1.0, reaction_s=1.5)
        assert row.low_m == stop.distance_m and row.thinking_m == stop.thinking_m
        assert row.low_m > row.mid_m > row.high_m > row.thinking_m
    assert list(found.by_surface["surface"]) == list(SURFACES)
    assert found.stops["mid"].distance_m == found.by_surface["mid_m"].iloc[0]
    assert found.motor_only.distance_m > found.by_surface["low_m"].iloc[0]
    assert found.standing["demand_friction"] == 0.06


def test_days_between_firm_uses_count_the_year():
    late = replace(STARTS["suburb-hill"], driver=replace(STARTS["suburb-hill"].driver, looks_ahead="late"))
    late = late.with_setting("brake_pedal", "friction")
    found = hard_stop(late, USUAL, drive(late))
    driven_a_day = 220 / 365.25
    assert found.brakes.firm_uses > 0
    assert found.days_between_firm_uses == pytest.approx(1 / found.brakes.firm_uses / driven_a_day)
    assert hard_stop(Scenario(), USUAL, drive(Scenario())).days_between_firm_uses is None
