"""A hard stop on every road, and how seldom the brakes are used otherwise."""

from dataclasses import replace

import pytest

from model.describe.scenario import SURFACES, Scenario
from model.describe.scenario_io import starting_drives
from model.limits.hard_stop import hard_stop
from model.limits.limit_settings import LimitSettings
from model.sampling.drives import drive

VALLEY = starting_drives()["mountain-valley"][2]
HILL = starting_drives()["suburb-hill"][2]
USUAL = LimitSettings()


FRICTION = {"dry": (0.65, 0.85, 1.21), "snow": (0.15, 0.2, 0.35), "ice": (0.05, 0.1, 0.2)}
"""Of the sources behind the table of grip, below 50 km/h [1]."""


def test_every_road_has_the_stopping_distance_of_mechanics():
    """Thinking at the old speed, then v²/(2·friction·g), with brakes that act at once."""
    scenario = Scenario().with_setting("brake_build_up_s", 0.0)
    found = hard_stop(scenario, replace(USUAL, stop_kmh=45.0, reaction_s=1.5), drive(scenario)).by_surface
    assert list(found["surface"]) == list(SURFACES) and list(found["thinking_m"]) == pytest.approx([18.75] * len(found))
    for surface, frictions in FRICTION.items():
        row = found.set_index("surface").loc[surface, ["low_m", "mid_m", "high_m"]]
        assert list(row) == pytest.approx([18.75 + 12.5**2 / (2 * each * 9.80665) for each in frictions], rel=1e-4)


def test_a_hard_stop_beside_the_motor_alone_the_slope_and_published_distances():
    found = hard_stop(VALLEY, replace(USUAL, stop_kmh=80.0, reaction_s=1.5), drive(VALLEY))
    assert found.stops["mid"].distance_m == found.by_surface["mid_m"].iloc[0]
    # within its limit of 2 m/s² the motor alone cannot stop in less than v²/(2·2)
    assert found.motor_only.distance_m > (80 / 3.6) ** 2 / 4
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


def test_tyres_float_on_standing_water_only_where_it_is_fast():
    """The handbook's grip on 2 mm of water is 0.25 to 0.5 at 50 km/h and 0.05 at 90 km/h."""
    slow, fast = (hard_stop(HILL, replace(USUAL, stop_kmh=kmh), drive(HILL)) for kmh in (50.0, 100.0))
    assert fast.floats and not slow.floats
