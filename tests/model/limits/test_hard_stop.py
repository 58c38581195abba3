"""A hard stop on every road, and how seldom the brakes are used otherwise."""

from dataclasses import replace

import pytest

from model.describe.parameters import car_of
from model.describe.scenario import SURFACES, Scenario
from model.describe.scenario_io import starting_drives
from model.limits.hard_stop import hard_stop
from model.limits.limit_settings import LimitSettings
from model.limits.stopping import emergency_stop
from model.sampling.drives import drive

VALLEY = starting_drives()["mountain-valley"][2]
HILL = starting_drives()["suburb-hill"][2]
USUAL = LimitSettings()


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
    assert found.highway_code_m == pytest.approx(80 / 3.6 * 0.67 + (80 / 3.6) ** 2 / 13.1)
    assert found.sight_m == pytest.approx(129, abs=1)


def test_days_between_firm_uses_count_the_year():
    late = replace(HILL, driver=replace(HILL.driver, looks_ahead="late"))
    late = late.with_setting("brake_pedal", "friction")
    found = hard_stop(late, USUAL, drive(late))
    driven_a_day = 220 / 365.25
    assert found.brakes.firm_uses > 0
    assert found.days_between_firm_uses == pytest.approx(1 / found.brakes.firm_uses / driven_a_day)
    assert hard_stop(Scenario(), USUAL, drive(Scenario())).days_between_firm_uses is None
