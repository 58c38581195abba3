"""The words that the limits share: distances, trifles, the first minutes, and what the strip is marked with."""

from dataclasses import replace

import pytest

from model.describe.figures import Share
from model.describe.scenario_io import starting_drives
from model.kernel.timeline import timeline
from model.limits.all_limits import season_costs_of
from model.limits.cold_day import cold_day, normal_by_battery
from model.limits.full_battery import hills
from model.limits.full_start import Normal
from model.limits.limit_settings import LimitSettings
from model.sampling.drives import drive
from model.words.quantities import Display
from pages.parts import cold_words, hill_words
from pages.parts.description import length_of
from pages.parts.winter_words import (
    distances,
    energy_text,
    free_text,
    normal_km,
    share_or_trifle,
    slowing_in_short,
    strip_notes,
)

METRIC, US = Display(), Display(us=True)
FROSTY = starting_drives()["motorway"][2].with_setting("ambient_c", -7.0)
VALLEY = starting_drives()["mountain-valley"][2]


def test_trifles():
    assert (energy_text(0.004, METRIC), energy_text(-0.31, METRIC)) == ("next to nothing", "−0.31 kWh")


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
    assert display.figure(distances(metres, display)) == text


def test_how_much_to_leave_free():
    told = [free_text(share, METRIC) for share in (0.0, 0.014)]
    assert told == ["nothing to leave free", "leave 1.4 % of the battery free"]
    assert (share_or_trifle(0.0002, METRIC), share_or_trifle(0.17, METRIC)) == ("less than 0.1 %", Share(0.17))


@pytest.mark.parametrize(
    ("normal", "text"),
    [(None, "weaker all the way"), (Normal(0.0, 0.0, 20.0, 0.6), "as usual from the start"),
     (Normal(0.2, 0.1, 0.0, 0.5), "weaker for 1 minute"), (Normal(13.6, 16.2, 0.0, 0.5), "weaker for 14 minutes")],
)  # fmt: skip
def test_when_motor_slowing_is_as_usual(normal, text):
    assert slowing_in_short({"mid": normal, "low": normal}, METRIC) == text


def test_a_way_back_is_told_where_both_ways_are_counted():
    there = replace(FROSTY, return_trip=False)
    km = length_of(there).value
    told = [
        normal_km(Normal(30.0, share * km, 0.0, 0.5), scenario, METRIC)
        for scenario in (replace(FROSTY, return_trip=True), there) for share in (0.5, 1.5)
    ]  # fmt: skip
    assert ["way back" in text for text in told] == [False, True, False, False]


def test_the_strip_is_marked_as_long_as_the_battery_holds_back():
    steps, normal = timeline(drive(FROSTY)), season_costs_of(FROSTY).normal
    ((start, end, *_),) = strip_notes(steps, normal, METRIC)
    assert (start, end) == (0.0, normal.km)
    ((_, end, *_),) = strip_notes(steps, None, METRIC)
    assert end == pytest.approx(drive(FROSTY).distance_km)
    assert strip_notes(steps, Normal(0.0, 0.0, 20.0, 0.6), METRIC) == []
    assert strip_notes(steps.assign(motor_slowing_kw=0.0, friction_kw=0.0), None, METRIC) == []


@pytest.mark.parametrize(
    ("starts", "text"),
    [
        ((0.81, 0.91, 0.98), "Batteries differ: the charge to start at lies from 81 to 98 %."),
        ((0.91, 0.91, 0.91), "start at 91 % or less: then motor slowing keeps its strength all the way. "),
        ((None, 0.91, 0.98), "A battery that takes little never gives that strength."),
        ((None, None, 0.98), "of the battery free. Motor slowing is weaker at any charge."),
    ],
)  # fmt: skip
def test_the_limit_of_power_in_words(starts, text):
    found = hills(VALLEY, LimitSettings(), drive(VALLEY))
    room = {
        name: replace(one, full_power_below=None if start is None else start + one.gained_share)
        for (name, one), start in zip(found.room.items(), starts, strict=True)
    }
    said = hill_words.hills(replace(found, room=room), VALLEY, LimitSettings(), METRIC)
    assert text in f"{said.sentence} {said.more}"


def test_a_lift_off_that_fades_names_only_what_held_it():
    gentle = FROSTY.with_setting("lift_off_mps2", 0.0)
    found = cold_day(gentle, season_costs_of(gentle), normal_by_battery(gentle))
    title, words = cold_words.fade_words(found.fades, METRIC)
    assert "does not fade" in title and "no room" not in words
    strong = FROSTY.with_setting("lift_off_mps2", 2.0)
    found = cold_day(strong, season_costs_of(strong), normal_by_battery(strong))
    title, words = cold_words.fade_words(found.fades, METRIC)
    assert "may shrink to" in title and all(METRIC.say(reason) in words for reason in cold_words.BECAUSE.values())
