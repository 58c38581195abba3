"""The words that the limits share: spans, trifles, the first minutes, and what the strip is marked with."""

from dataclasses import replace

import pytest

from model.describe.scenario_io import starting_drives
from model.kernel.timeline import timeline
from model.limits.all_limits import season_costs_of
from model.limits.cold_day import cold_day
from model.limits.descent import Normal
from model.limits.full_battery import hills
from model.limits.limit_settings import LimitSettings
from model.sampling.drives import drive
from model.words.quantities import Display
from pages.parts import cold_words, hill_words
from pages.parts.winter_words import (
    band_text,
    distance_text,
    free_text,
    kwh,
    listed,
    minutes_text,
    normal_text,
    share_text,
    strip_notes,
)

METRIC, US = Display(), Display(us=True)
FROSTY = starting_drives()["motorway"][2].with_setting("ambient_c", -7.0)
VALLEY = starting_drives()["mountain-valley"][2]


def test_spans_and_trifles():
    assert band_text([26.1, 2.64, 9.0], "kW") == "2.6 to 26 kW"
    assert band_text([3.0, 3.0], "kW") == "3.0 kW"
    assert (kwh(0.004), kwh(-0.31)) == ("next to nothing", "−0.31 kWh")
    assert (minutes_text(0.2), minutes_text(13.6)) == ("1 minute", "14 minutes")
    assert (listed(["a"]), listed(["a", "b", "c"])) == ("a", "a, b and c")


@pytest.mark.parametrize(
    ("metres", "display", "text"),
    [
        ([70.6, 90.3], METRIC, "71 to 90 m"),
        ([421.0, 1339.0], METRIC, "421 to 1,339 m"),
        ([90.0], METRIC, "90 m"),
        ([0.42, 0.61], METRIC, "0.4 to 0.6 m"),
        ([30.48], US, "100 ft"),
    ],
)
def test_distances(metres, display, text):
    assert distance_text(metres, display) == text


def test_how_much_to_leave_free():
    assert (free_text(0.0), free_text(0.014)) == ("nothing to leave free", "leave 1.4 % free")
    assert (share_text(0.0002), share_text(0.17)) == ("less than 0.1 %", "17 %")


def test_when_motor_slowing_is_as_usual():
    assert normal_text(None, METRIC) == "stays weaker on this drive"
    assert normal_text(Normal(0.0, 0.0, 20.0, 0.6), METRIC) == "is as usual from the start"
    assert normal_text(Normal(13.6, 16.2, 0.0, 0.5), METRIC) == "is as usual after 14 minutes, 16 km"


def test_the_strip_is_marked_as_long_as_the_battery_holds_back():
    steps, normal = timeline(drive(FROSTY)), season_costs_of(FROSTY).normal
    ((start, end, *_),) = strip_notes(steps, normal)
    assert (start, end) == (0.0, normal.km)
    ((_, end, *_),) = strip_notes(steps, None)
    assert end == pytest.approx(drive(FROSTY).distance_km)
    assert strip_notes(steps, Normal(0.0, 0.0, 20.0, 0.6)) == []
    assert strip_notes(steps.assign(motor_slowing_kw=0.0, friction_kw=0.0), None) == []


@pytest.mark.parametrize(
    ("starts", "text"),
    [
        ((0.81, 0.91, 0.98), "start at 81 to 98 % or less"),
        ((0.91, 0.91, 0.91), "start at 91 % or less"),
        ((None, 0.91, 0.98), "a battery that takes little never gives it"),
        ((None, None, 0.98), "does not take all that the hill gives"),
    ],
)
def test_the_limit_of_power_in_words(starts, text):
    found = hills(VALLEY, LimitSettings(), drive(VALLEY))
    room = {
        name: replace(one, full_power_below=None if start is None else start + one.gained_share)
        for (name, one), start in zip(found.room.items(), starts, strict=True)
    }
    assert text in hill_words.full_feel(replace(found, room=room))


def test_a_lift_off_that_fades_names_only_what_held_it():
    gentle = FROSTY.with_setting("lift_off_mps2", 0.0)
    title, words = cold_words.fade_words(cold_day(gentle, season_costs_of(gentle)).fades)
    assert "does not fade" in title and "no room" not in words
    strong = FROSTY.with_setting("lift_off_mps2", 2.0)
    title, words = cold_words.fade_words(cold_day(strong, season_costs_of(strong)).fades)
    assert "may shrink to" in title and all(reason in words.lower() for reason in cold_words.BECAUSE.values())
