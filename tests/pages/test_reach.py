"""A drive too long for its battery: how far the answer goes is said wherever it is, and charging stops are offered."""

import json
from dataclasses import replace

import pytest

from model.describe.figures import Part
from model.describe.scenario import Leg, Scenario
from model.describe.scenario_io import to_link
from model.kernel.timeline import slow_downs, timeline
from model.sampling.drives import answer_of, drive, samples_of, with_stops_needed, year_of
from model.words.quantities import Display
from pages.parts import departures
from pages.parts.charts.drive_strip import drive_strip, strip_finding
from pages.parts.reach_words import band_text, reach_text, stops_text, year_text
from tests.pages.in_app import CLAIM_PARTS, html_of, opened_at, plain, ran, scenario_of

METRIC, US = Display(), Display(us=True)
FAR = Scenario(legs=(Leg(distance_km=600, speed_kmh=120, stops=0, slow_downs=0),))
NEAR = FAR.with_leg(0, "distance_km", 60)
THERE = with_stops_needed(FAR)
SHORT, WHOLE = drive(FAR), drive(THERE)
REACHED = f"The battery is empty after {int(SHORT.distance_km)} of 600 km; this answer is for the road up to there."


def words(app):
    found = [one.value for one in (*app.error, *app.markdown, *app.caption, *app.header)]
    return plain(" ".join(found + html_of(app)))


def test_how_far_the_answer_goes_is_told_in_the_units_of_the_page():
    assert reach_text(SHORT, METRIC).startswith(REACHED)
    miles = int(SHORT.distance_km / 1.609344)
    in_us = f"The battery is empty after {miles} of 373 mi; this answer is for the road up to there."
    assert reach_text(SHORT, US) == in_us
    assert reach_text(WHOLE, METRIC) == ""
    assert reach_text(drive(FAR.with_setting("charging_stops", 1)), METRIC).startswith("With 1 charging stop the bat")
    assert METRIC.figure(Part(599.99, 600, "km")) == "599 of 600 km", "what is not reached is not told as reached"


def test_charging_is_told_with_its_places_its_time_and_its_energy_apart():
    told = stops_text(WHOLE, METRIC)
    stops = len(WHOLE.trace.charging)
    assert told.startswith(f"{stops} charging stops, after ") and f"{WHOLE.charging_s / 60:.0f} minutes in all" in told
    assert "counted apart from what slowing down gives back" in told and stops_text(SHORT, METRIC) == ""
    assert departures.by_key(THERE, METRIC) == {"charging_stops": f"{stops} charging stops up to 80 %"}


def test_cars_of_the_band_that_get_less_far_are_told_as_such():
    bands = answer_of(SHORT, samples_of(FAR, SHORT, 20))
    assert 0 < bands.late < 20 and bands.slowest_share == float("inf")
    assert f"{bands.late} of 20 sampled cars do not get even that far" in band_text(SHORT, bands, METRIC)


def test_cars_of_the_band_that_are_slower_are_told_only_where_it_shows():
    """Cars that lose a moment at full power had been told as unable to do the drive."""
    whole = drive(NEAR)
    bands = replace(answer_of(whole, samples_of(NEAR, whole, 20)), unable=9, runs=20)
    assert band_text(whole, replace(bands, late=0, slowest_share=0.004), METRIC) == ""
    told = band_text(whole, replace(bands, late=3, slowest_share=0.043), METRIC)
    assert told == (
        "In the band, 3 of 20 sampled cars would take over 1 % longer, for want of power, the slowest 4.3 %; they are "
        "counted as if they kept up."
    )
    told = band_text(whole, replace(bands, late=1, slowest_share=float("inf")), METRIC)
    assert told.startswith("In the band, 1 of 20 sampled cars could not do this drive")


def test_what_the_year_does_with_a_day_that_needs_more_stops_is_told():
    told = year_text(year_of(FAR, 5), FAR, SHORT, METRIC)
    assert told.startswith("Over the year each day counts as far as its battery goes: in winter 1")
    cold = THERE.with_setting("winter_c", -15.0)
    told = year_text(year_of(cold, 5), cold, WHOLE, METRIC)
    assert "each day has the charging stops that it needs: 4 in winter" in told
    near = FAR.with_leg(0, "distance_km", 50)
    assert year_text(year_of(near, 5), near, drive(near), METRIC) == ""


def test_the_strip_marks_where_the_car_charges():
    steps, events = timeline(WHOLE), slow_downs(WHOLE)
    spec = drive_strip(steps, events, METRIC)


    assert '"charging"' in json.dumps(spec, default=str)
    assert " Charges after " in strip_finding(steps, events, METRIC)
    without = drive_strip(timeline(SHORT), slow_downs(SHORT), METRIC)
    assert '"charging"' not in json.dumps(without, default=str)


@pytest.mark.parametrize(
    ("page", "more"),
    [("your_drive.py", {}), ("lift_off.py", {}), ("winter_and_limits.py", {}), ("how_it_works.py", {}),
     ("check_a_claim.py", {}), ("compare.py", {}), ("take_away.py", {}), ("show.py", {"card": "2"}),
     ("show.py", {"card": "3"})],
)  # fmt: skip
def test_every_page_answers_up_to_where_the_battery_is_empty(page, more):
    app = opened_at(page, to_link(FAR) | more, CLAIM_PARTS)
    assert not app.error and REACHED in words(app)


def test_one_tap_adds_the_charging_stops_that_are_needed():
    app = opened_at("your_drive.py", to_link(FAR))
    assert app.number_input(key="step-charging_stops").value == 0
    ran(app.button(key="add-charging").click().run())
    assert scenario_of(app) == replace(THERE, year=scenario_of(app).year)
    assert "charging stops, after" in words(app) and REACHED not in words(app)
    assert "add-charging" not in {one.key for one in app.button}
    ran(app.number_input(key="step-charge_stop_to").set_value(60.0).run())
    assert scenario_of(app).conditions.charge_stop_to == pytest.approx(0.6)


def test_drives_are_compared_as_far_as_the_first_battery_lasts():
    app = opened_at("compare.py", to_link(FAR) | {"differs": "season", "b": "winter"})
    assert "all are compared over the first" in words(app)
