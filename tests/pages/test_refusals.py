"""Refusals in a reader's words: labels, no keys, and figures in the units of the page."""

import re
from dataclasses import replace

import pytest

from model.describe.fields import InputError
from model.describe.scenario import CONDITION_FIELDS, LEG_FIELDS, SETTINGS
from model.describe.scenario_io import from_link, starting_drives
from model.sampling.drives import drive
from model.words.quantities import Display
from model.words.refusals import refusal_words, refused_entry

METRIC, US = Display(), Display(us=True)
TOWN = starting_drives()["town"][2]
SURFACES = "dry, wet, standing water, snow, ice or glazed ice"
ROAD_LOAD = "Road load f0, road load f1 and road load f2"


@pytest.mark.parametrize(
    ("change", "starts", "us_starts"),
    [
        (lambda s: s.with_leg(0, "stops", 400), "Stops and slow-downs, leg 1: 400 stops",
         "Stops and slow-downs, leg 1: 400 stops"),
        (lambda s: s.with_leg(0, "climb_m", 400.0), "Climb and descent, leg 1: 400 m up",
         "Climb and descent, leg 1: 1312 ft up"),
        (lambda s: s.with_leg(0, "slow_to_kmh", 60.0), "Slows down to, leg 1: 60 km/h is not below",
         "Slows down to, leg 1: 37 mph is not below"),
        (lambda s: s.with_setting("soc_start", 0.0), "Charge at the start: 0 % is not enough",
         "Charge at the start: 0 % is not enough"),
        (lambda s: replace(s, legs=()), "Legs: none were given", "Legs: none were given"),
        (lambda s: s.with_setting("f0_n", 100.0), ROAD_LOAD, ROAD_LOAD),
    ],
)  # fmt: skip
def test_a_refused_drive_is_told_plainly_and_in_the_units_of_the_page(change, starts, us_starts):
    with pytest.raises(InputError) as refused:
        drive(change(TOWN))
    sentence, in_us = (refusal_words(refused.value, display) for display in (METRIC, US))
    assert sentence.startswith(starts) and in_us.startswith(us_starts)
    assert not [key for key in SETTINGS | LEG_FIELDS if "_" in key and key in sentence]
    assert not re.search(r"\d (?:km|m|km/h)\b", in_us)


@pytest.mark.parametrize(
    ("link", "metric", "us"),
    [
        ({"ambient_c": "99"}, "Outside temperature: 99 °C cannot be used, −40 to 50 °C can. It was set to 50 °C.",
         "Outside temperature: 210.2 °F cannot be used, −40 to 122 °F can. It was set to 122 °F."),
        ({"soc_start": "1.5"}, "Charge at the start: 150 % cannot be used, 0 to 100 % can. It was set to 100 %.",
         "Charge at the start: 150 % cannot be used, 0 to 100 % can. It was set to 100 %."),
        ({"ambient_c": "warm"}, "Outside temperature: “warm” cannot be used, −40 to 50 °C can. It was left as usual.",
         "Outside temperature: “warm” cannot be used, −40 to 122 °F can. It was left as usual."),
        ({"surface": "mud"}, f"Road surface: “mud” cannot be used, {SURFACES} can. It was left as usual.",
         f"Road surface: “mud” cannot be used, {SURFACES} can. It was left as usual."),
        ({"legs": "5000_50_4_4_30_0_0_5_dry_"},
         "Distance, leg 1: 5000 km cannot be used, 0.05 to 1000 km can. It was set to 1000 km.",
         "Distance, leg 1: 3107 mi cannot be used, 0.03107 to 621.4 mi can. It was set to 621.4 mi."),
    ],
)  # fmt: skip
def test_a_links_notice_has_labels_and_the_units_of_the_page(link, metric, us):
    _, notices = from_link(link, TOWN)
    assert [refusal_words(notice, METRIC) for notice in notices] == [metric]
    assert [refusal_words(notice, US) for notice in notices] == [us]


def test_a_refused_entry_says_what_where_and_what_is_allowed_in_the_unit_shown():
    sentence = refused_entry(CONDITION_FIELDS["ambient_c"], 200.0, US)
    assert sentence.startswith("Outside temperature: 200 °F cannot be used, −40 to 122 °F can.")
    assert "an empty entry" in refused_entry(LEG_FIELDS["distance_km"], None, METRIC)
