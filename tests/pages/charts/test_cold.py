"""The cold in pictures: borders and lengths are the model's, and odd batteries still make a picture."""

from dataclasses import replace

import numpy as np
import pytest

from model.describe.scenario_io import starting_drives
from model.limits.all_limits import season_costs_of
from model.limits.cold_day import cold_day, normal_by_battery
from model.words.quantities import Display
from pages.parts.charts.cold import (
    FADE_ROW_PX,
    ZONES,
    acceptance_map,
    between_lines,
    fading,
    part_name,
    season_costs,
    season_rows,
)
from tests.pages.charts.specs import assert_valid, tables, texts

METRIC, US = Display(), Display(us=True)
MOTORWAY = starting_drives()["motorway"][2]
FROSTY = MOTORWAY.with_setting("ambient_c", -7.0)


def day(scenario):
    return cold_day(scenario, season_costs_of(scenario), normal_by_battery(scenario))


COLD = day(FROSTY)
NAMES = ["as usual", "slow", "full", "cold", "slippery"]


def map_of(found=COLD, display=METRIC, dark=False):
    return acceptance_map(found.takes_all, found.accepted, found.way, display, dark)


@pytest.mark.parametrize("dark", [False, True])
@pytest.mark.parametrize("display", [METRIC, US])
def test_they_are_valid_charts(dark, display):
    assert_valid(map_of(display=display, dark=dark))
    assert_valid(fading(COLD.fades, NAMES, METRIC, dark))
    assert_valid(season_costs(COLD.costs.parts_kwh, METRIC, dark))


@pytest.mark.parametrize(
    "setting", [("ambient_c", -40.0), ("battery_temp_c", 55.0), ("charge_rate_factor", 0.1), ("regen_cap_mps2", 0.0)]
)
def test_odd_batteries_make_a_picture_too(setting):
    found = day(MOTORWAY.with_setting(*setting))
    assert_valid(map_of(found))
    assert_valid(season_costs(found.costs.parts_kwh, METRIC))


def test_the_zones_are_those_of_the_batteries():
    zones = tables(map_of())["zones"]
    for level in ("low", "mid", "high"):
        np.testing.assert_allclose(zones[level], 100 * COLD.takes_all[level].fillna(0), atol=0.006)
    assert (zones["low"] <= zones["mid"]).all() and (zones["mid"] <= zones["high"]).all()
    words = tables(map_of())["zone_words"]
    assert set(words["text"]) <= {METRIC.say(zone) for zone in ZONES} and words["warmth"].is_monotonic_increasing


def test_the_lines_of_the_zones_are_cut_where_words_stand_on_them():
    layers = map_of()["layer"]
    for name in ("zone_words", "numbers"):
        cuts, words = [layer for layer in layers if layer["data"]["name"] == name]
        assert cuts["mark"]["strokeWidth"] > 3 and "stroke" not in words["mark"]
        lines = [place for place, layer in enumerate(layers) if layer["data"]["name"] == "zones"]
        assert max(lines) < layers.index(cuts) < layers.index(words)


@pytest.mark.parametrize("display", [METRIC, US])
def test_no_figure_stands_under_the_dot_or_its_word(display):
    for start_c, charge in ((-9.0, 0.5), (0.0, 0.88), (9.0, 0.55), (20.0, 0.5)):
        found = day(FROSTY.with_setting("battery_temp_c", start_c).with_setting("soc_start", charge))
        drawn = tables(map_of(found, display))
        start, width = (display.value(c, "°C") for c in (start_c, 50))
        # on the narrowest picture, 250 px by 260: half a figure and half a dot, a line of type above and one below
        beside_px = 250 * (drawn["numbers"]["warmth"] - start).abs() / (width - display.value(0, "°C"))
        below_px = 260 * (charge - drawn["numbers"]["soc"] / 100)
        under = (beside_px < 40) & (below_px < 18) & (below_px > -38)
        assert not under.any()
        assert len(drawn["numbers"]) >= len(between_lines(found.accepted, found.takes_all)) - 2


@pytest.mark.parametrize("scenario", [MOTORWAY, FROSTY, starting_drives()["town"][2]])
def test_no_line_of_the_map_goes_through_a_figure(scenario):
    found = day(scenario)
    numbers, zones = (tables(map_of(found))[name] for name in ("numbers", "zones"))
    assert len(numbers) >= 8
    fine = np.linspace(-20, 30, 2001)
    for level in ("low", "mid", "high"):
        border = np.interp(fine, zones["warmth"], zones[level])
        for figure in numbers.itertuples():
            # half of “53 kW” on the narrowest picture, and half a line
            near = np.abs(fine - figure.warmth) < 3
            assert not (near & (np.abs(border - figure.soc) < 4)).any()


def test_the_way_of_the_drive_is_drawn_in_the_units_shown():
    way, in_us = (tables(map_of(display=display))["way"] for display in (METRIC, US))
    assert way["warmth"].iloc[0] == -7 and way["soc"].iloc[0] == pytest.approx(60)
    assert in_us["warmth"].iloc[0] == pytest.approx(19.4)
    assert tables(map_of())["ends"]["text"].iloc[0] == "start"


def test_every_lift_off_is_as_long_as_it_slows():
    spec = fading(COLD.fades, NAMES, METRIC)
    boxes = tables(spec)["boxes"]
    for place, lift in enumerate(COLD.fades):
        road, motor, asked = boxes.iloc[3 * place : 3 * place + 3].to_dict("records")
        assert (road["x0"], road["x1"], motor["x0"]) == (0, lift.rolling_mps2, lift.rolling_mps2)
        assert motor["x1"] == lift.slowing_mps2 and (asked["x1"], asked["hollow"]) == (lift.asked_mps2, True)
    assert spec["height"] == FADE_ROW_PX * 5
    assert all(name in texts(spec) for name in NAMES) and "1.00 m/s²" in texts(spec)


def test_what_the_season_takes_is_drawn_to_scale_and_largest_first():
    parts = tables(season_costs(COLD.costs.parts_kwh, METRIC))["parts"]
    assert parts["kwh"].is_monotonic_decreasing
    for row in parts.itertuples():
        assert row.zero == 0 and row.name in [part_name(part, METRIC) for part, _ in season_rows(COLD.costs.parts_kwh)]
    assert parts["kwh"].sum() == pytest.approx(COLD.costs.more_kwh, abs=0.02)


def test_a_mild_day_leaves_nothing_to_draw():
    assert season_rows(day(replace(MOTORWAY).with_setting("ambient_c", 20.0)).costs.parts_kwh) == []
    assert_valid(season_costs({"cabin": 0.0}, METRIC))


def test_what_is_taken_less_runs_the_other_way():
    parts = season_costs({"cabin": -1.0, "air": 0.5}, METRIC)
    scale = parts["layer"][0]["encoding"]["x"]["scale"]
    assert -1.05 < scale["domain"][0] <= -1.0 and 0.5 <= scale["domain"][1] < 0.525
    assert list(tables(parts)["parts"]["most"]) == [0.5, 0.0]
