"""Full battery and hills in pictures: the crossing, the discs and what slopes give back are the model's."""

from dataclasses import replace

import numpy as np
import pytest

from model.describe.scenario_io import starting_drives
from model.limits.friction_brakes import FADE_BAND_C
from model.limits.full_battery import given_back, hills
from model.limits.limit_settings import LimitSettings
from model.sampling.drives import drive
from model.words.quantities import Display
from pages.parts.charts.hills import charge, discs, near_full
from pages.parts.charts.hills import given_back as slopes
from tests.pages.charts.specs import assert_valid, tables

METRIC, US = Display(), Display(us=True)
VALLEY = starting_drives()["mountain-valley"][2]
LONG = LimitSettings(hill_m=1000.0, hill_pct=9.0)


def found_of(scenario=VALLEY, settings=LONG):
    return hills(scenario, settings, drive(scenario))


FOUND = found_of()
SLOPES = given_back(VALLEY)


@pytest.mark.parametrize("dark", [False, True])
@pytest.mark.parametrize("display", [METRIC, US])
def test_they_are_valid_charts(dark, display):
    assert_valid(near_full(FOUND, display, dark))
    assert_valid(discs(FOUND.down, FOUND.down_full, display, dark))
    assert_valid(slopes(SLOPES, 9.0, display, dark))


@pytest.mark.parametrize("car", ["full-hybrid", "plug-in-hybrid"])
@pytest.mark.parametrize("settings", [LimitSettings(hill_m=10.0, hill_pct=1.0), LimitSettings(hill_m=3000.0)])
def test_hybrids_and_odd_hills_make_pictures_too(car, settings):
    found = found_of(replace(VALLEY, car_class=car).with_setting("ambient_c", -20.0), settings)
    assert_valid(near_full(found, METRIC))
    assert_valid(discs(found.down, found.down_full, METRIC))


def test_the_hill_and_the_charge_from_which_it_fits_are_marked():
    marks = tables(near_full(FOUND, METRIC))["marks"].iloc[0]
    room = FOUND.room["mid"]
    assert marks["kw"] == pytest.approx(room.power_kw, abs=1e-3)
    assert marks["soc"] == pytest.approx(100 * room.start_at_most, abs=1e-3)
    takes = tables(near_full(FOUND, METRIC))["takes"]
    crossing = takes.loc[takes["mid"] >= room.power_kw, "soc"].max()
    assert crossing == pytest.approx(100 * room.full_power_below, abs=1)
    assert (takes["low"] <= takes["mid"]).all() and (takes["mid"] <= takes["high"]).all()


def test_the_discs_are_the_runs_own():
    sets = tables(discs(FOUND.down, FOUND.down_full, US))
    assert sets["alone"]["warmth"].max() == pytest.approx(
        FOUND.down.friction_only_disc_c.max() * 1.8 + 32, abs=0.1
    )
    assert sets["full"]["warmth"].iloc[-1] == pytest.approx(FOUND.down_full.disc_c[-1] * 1.8 + 32, abs=0.1)
    assert sets["alone"]["lost"].iloc[-1] == pytest.approx(1000 / 0.3048, rel=1e-3)
    band = sets["fade"].iloc[0]
    assert band["y"] < band["y2"] and FADE_BAND_C[0] < FADE_BAND_C[1]


def test_lines_differ_without_colour():
    dashes = [
        tuple(one["mark"]["strokeDash"])
        for one in discs(FOUND.down, FOUND.down_full, METRIC)["layer"]
        if one["mark"]["type"] == "line"
    ]
    assert len(set(dashes)) == 3


def test_slopes_that_cannot_be_climbed_are_left_out():
    weak = SLOPES.assign(share=SLOPES["share"].where(SLOPES["grade_pct"] < 8))
    assert_valid(slopes(weak, 6.0, METRIC))
    assert tables(slopes(weak, 6.0, METRIC))["speed0"]["grade_pct"].max() == 6
    shown = tables(slopes(SLOPES, 6.0, METRIC))["speed0"]
    np.testing.assert_allclose(shown["share"], 100 * SLOPES.loc[SLOPES["speed_kmh"] == 50, "share"], atol=0.01)


def test_a_charge_that_little_is_missing_from_has_a_decimal():
    assert [METRIC.figure(charge(soc)) for soc in (0.934, 0.99, 0.9958, 1.0)] == ["93 %", "99 %", "99.6 %", "100 %"]
