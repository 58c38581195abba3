"""The first page and the shell around it, without a browser."""

import json
import re
from dataclasses import replace

import pytest

from model.describe.scenario import MAX_LEGS
from model.describe.scenario_io import starting_drives, to_link
from model.words.quantities import Display
from pages.parts.typography import NO_BREAK
from tests.pages.in_app import change, first_page, headline_of, label, opened_at, ran, scenario_of

TOWN = starting_drives()["town"][2]


def test_a_first_visit_sees_the_first_starting_drive_and_a_true_answer():
    app = first_page()
    assert scenario_of(app) == TOWN
    assert [one.value for one in app.title] == ["What does slowing down give back?"]
    assert headline_of(TOWN) in [one.value for one in app.header]
    assert any(one.value == Display().say("caution") for one in app.markdown)


def test_who_comes_without_a_drive_may_be_guided_and_nobody_else():
    for link, guided in ({}, 1), ({"car": "van"}, 0):
        links = [one.label for one in opened_at("your_drive.py", link).get("page_link")]
        assert links.count(Display().say("guide")) == guided


@pytest.mark.parametrize("name", starting_drives())
def test_every_starting_drive_is_one_tap(name):
    app = first_page()
    ran(app.button_group(key="choose-drive-page").set_value(name).run())
    assert scenario_of(app) == starting_drives()[name][2]
    assert headline_of(starting_drives()[name][2]) in [one.value for one in app.header]


def test_a_car_of_ones_own_stays_when_another_road_is_taken():
    app = first_page()
    ran(app.radio(key="choose-car").set_value("van").run())
    ran(app.button_group(key="choose-drive-page").set_value("suburb-hill").run())
    hill = starting_drives()["suburb-hill"][2]
    assert (scenario_of(app).car_class, scenario_of(app).legs) == ("van", hill.legs)
    assert scenario_of(app).conditions == TOWN.conditions


def test_a_figure_of_a_leg_reaches_scenario_address_and_headline():
    app = first_page()
    ran(app.button(key="row-leg-1").click().run())
    before = [one.value for one in app.header]
    change(app, "set-leg1-stops", 22)
    assert scenario_of(app) == TOWN.with_leg(1, "stops", 22)
    assert headline_of(scenario_of(app)) in [one.value for one in app.header]
    assert [one.value for one in app.header] != before
    assert "22 stops" in label(app, "row-leg-1")


def test_one_row_is_open_at_a_time():
    app = first_page()
    ran(app.button(key="row-leg-0").click().run())
    ran(app.button(key="row-habits").click().run())
    keys = [one.key for one in app.text_input]
    assert not any(key.startswith("set-leg") for key in keys)
    assert "set-payload_kg" in keys


def test_legs_are_added_moved_and_removed():
    app = first_page()
    ran(next(one for one in app.button if one.label == "Add a leg").click().run())
    assert len(scenario_of(app).legs) == len(TOWN.legs) + 1
    change(app, "set-leg3-distance_km", 9.0)
    ran(app.button(key="leg-up").click().run())
    assert scenario_of(app).legs[2].distance_km == 9
    assert app.text_input(key="set-leg2-distance_km").value == "9"
    ran(app.button(key="leg-remove").click().run())
    assert scenario_of(app) == TOWN


def test_there_are_one_to_eight_legs():
    app = first_page()
    for _ in range(MAX_LEGS - len(TOWN.legs)):
        ran(next(one for one in app.button if one.label == "Add a leg").click().run())
    assert next(one for one in app.button if one.label == "Add a leg").disabled
    for _ in range(MAX_LEGS - 1):
        ran(app.button(key="row-leg-0").click().run())
        ran(app.button(key="leg-remove").click().run())
    ran(app.button(key="row-leg-0").click().run())
    assert app.button(key="leg-remove").disabled


@pytest.mark.parametrize(
    "change_link",
    [
        {"soc_start": "0.01"},
        {"motor_peak_kw": "5", "payload_kg": "1500"},
        {"f0_n": "100"},
        {"legs": ""},
        {"legs": "1_2_3"},
        {"ambient_c": "nan"},
        {"car": "submarine"},
        {"mass_kg": "5000"},
        {"return_trip": "perhaps"},
    ],
)
def test_no_link_ends_in_a_traceback(change_link):
    app = first_page(to_link(TOWN) | change_link)
    assert app.title


def test_unusual_inputs_are_named_beside_the_headline():
    app = first_page(to_link(TOWN.with_setting("payload_kg", 900.0)))
    assert any("Unusual inputs: load 900 kg" in one.value for one in app.markdown)
    assert not any("Unusual" in one.value for one in first_page().markdown)


def test_a_car_too_weak_for_the_drive_says_what_it_did_instead():
    app = first_page(to_link(TOWN.with_setting("motor_peak_kw", 15.0)))
    assert "cannot keep up" in app.warning[0].value


def test_season_sets_the_temperature_of_that_season():
    app = first_page()
    ran(app.button_group(key="choose-season").set_value("winter").run())
    assert scenario_of(app) == TOWN.with_setting("ambient_c", TOWN.year.winter_c)
    (shown,) = [one.value for one in app.text_input if one.key.strip() == "set-ambient_c"]
    assert shown == f"{TOWN.year.winter_c:g}"


def test_the_pedal_is_set_on_the_answer_line_and_stays_with_another_car():
    app = first_page()
    ran(app.button_group(key="set-brake_pedal").set_value("friction").run())
    assert dict(scenario_of(app).stated) == {"brake_pedal": "friction"}
    ran(app.radio(key="choose-car").set_value("van").run())
    assert dict(scenario_of(app).stated) == {"brake_pedal": "friction"}


def test_a_trailer_stands_in_the_answer_line_and_can_be_taken_off_on_the_first_page():
    towing = TOWN.with_setting("trailer_kg", 1300.0).with_setting("trailer_drag_area_m2", 2.1)
    app = first_page(to_link(towing.with_setting("wind_kmh", -20.0)))
    words = [one.proto.popover.label for one in app.get("popover")]
    assert "towing 1,300 kg with 2.1 m² of drag area, 20 km/h tailwind" in words
    ran(app.button(key="row-habits").click().run())
    assert app.text_input(key="set-trailer_drag_area_m2").value == "2.1"
    assert "1,300 kg trailer" in label(app, "row-habits")
    ran(app.button(key="take-off-trailer_kg").click().run())
    assert scenario_of(app).conditions.trailer_kg == 0 and scenario_of(app).conditions.wind_kmh == -20
    assert "20 km/h tailwind" in [one.proto.popover.label for one in app.get("popover")]


def test_the_year_can_be_edited():
    app = first_page()
    app.session_state["year-drawer"] = True
    ran(app.run())
    change(app, "set-winter_days", 0)
    assert scenario_of(app).year.winter_days == 0
    assert any("In a year of 165 days" in one.proto.body for one in app.get("html"))


def test_the_strip_says_in_words_what_it_shows():
    charts = first_page().get("vega_lite_chart")
    assert charts, "the drive strip is missing"
    assert "16.4 km" in charts[0].proto.alt
    assert json.loads(charts[0].proto.spec)


@pytest.mark.parametrize("day_c", [-15.0, 22.0])
def test_a_plug_in_hybrids_year_has_both_energies_whatever_the_day(day_c):
    hill = replace(starting_drives()["suburb-hill"][2], car_class="plug-in-hybrid").with_setting("ambient_c", day_c)
    (row,) = [one.proto.body for one in first_page(to_link(hill)).get("html") if "In a year of" in one.proto.body]
    assert re.search(r"\d l of fuel and .*\d kWh from the wall", row.replace("\N{NO-BREAK SPACE}", " "))


def test_inputs_stay_on_another_page_and_back():
    app = first_page()
    ran(app.radio(key="choose-car").set_value("van").run())
    app.switch_page("sources.py").run()
    assert any("van" in one.proto.popover.label for one in ran(app.run()).get("popover"))
    app.switch_page("your_drive.py").run()
    assert scenario_of(ran(app.run())).car_class == "van"


def test_a_hybrid_is_told_in_fuel():
    app = first_page({"car": "full-hybrid"})
    shown = " ".join(one.proto.body for one in app.get("html"))
    assert "In fuel" in shown and "l of fuel" in shown
    assert "from the wall" not in shown and "On a full battery" not in shown
    assert any(one.value == Display().say("hybrid-energy") for one in app.caption)


def test_the_hours_before_the_way_back_are_asked_where_there_is_one():
    app = first_page()
    assert scenario_of(app).return_trip and app.text_input(key="set-stands_h").value == "8"
    before = [one.value for one in app.header]
    change(app, "set-stands_h", 0.0)
    assert scenario_of(app).conditions.stands_h == 0
    assert [one.value for one in app.header] != before
    ran(app.toggle(key="there-and-back").set_value(False).run())
    assert not any(one.key == "set-stands_h" for one in app.text_input)


def test_no_sum_stands_beside_a_hybrid_and_it_is_said_why():
    """How much a hybrid's engine burns in all is not modelled, so its year has no cost to set beside another's."""
    hybrid = replace(TOWN, car_class="full-hybrid").with_setting("now_l_per_100km", 6.0)
    app = opened_at("your_drive.py", to_link(hybrid))
    app.session_state["beside-drawer"] = True
    text = " ".join(one.value for one in (*ran(app.run()).markdown, *app.get("html"), *app.caption))
    assert "No sum stands here for a hybrid" in text and "which this model leaves out" in text
    assert "Over the same" not in text and "Your petrol car now" not in text


def test_a_drive_of_ones_own_is_one_link_away():
    links = {one.label: one.proto.page for one in first_page().get("page_link")}
    assert links[Display().say("own-road-door")] == "own_road"


def test_the_car_driven_now_stands_beside_the_one_described_as_its_owner_says_it():
    app = first_page({"car": "city-car", "units": "us"})
    app.session_state["beside-drawer"] = True
    ran(app.run())
    assert not any("drive now takes" in one.value for one in app.markdown)
    for entry, value in (("set-now_l_per_100km", "30 mpg"), ("set-petrol_price_per_l", "3.50")):
        change(app, entry, value)
    year = scenario_of(app).year
    assert year.now_l_per_100km == pytest.approx(235.2146 / 30, rel=1e-4)
    assert year.petrol_price_per_l == pytest.approx(3.5 / 3.785412, rel=1e-4)
    assert app.text_input(key="set-now_l_per_100km").value == "30"
    [both] = [one.value for one in app.markdown if "drive now takes" in one.value]
    told = re.search(r"same ([\d,]+) mi .* takes petrol for \\\$ ([\d,]+)\.", both.replace(NO_BREAK, " "))
    miles, dollars = (float(figure.replace(",", "")) for figure in told.groups())
    assert dollars == pytest.approx(miles / 30 * 3.5, rel=0.01)
    change(app, "set-now_l_per_100km", 2)
    assert [one.value for one in app.error] == [
        "Its consumption: 2 mpg cannot be used, 5.88 to 235.2 mpg can. The answer keeps the last entry."
    ]


