"""The first page and the shell around it, without a browser."""

import json
import re
from dataclasses import replace

import pytest
from streamlit.testing.v1 import AppTest

from model.describe.quick_drive import QuickDrive, legs_of
from model.describe.scenario import MAX_LEGS
from model.describe.scenario_io import starting_drives, to_link
from model.sampling.drives import answer_of, drive, samples_of
from model.sampling.uncertainty import RUNS
from model.words.quantities import Display
from pages.parts import state, wording
from pages.parts.typography import NO_BREAK
from tests.pages.in_app import address, in_picture, opened_at, ran, scenario_of

TOWN = starting_drives()["town"][2]


def opened(link: dict[str, str] | None = None) -> AppTest:
    """The first page as somebody sees it who follows a link, or none."""
    return opened_at("your_drive.py", link or {})


def headline(scenario) -> str:
    """The headline that belongs to a scenario."""
    result = drive(scenario)
    return wording.headline(answer_of(result, samples_of(scenario, result, state.BAND_RUNS)), Display(), marked=True)


def label(app: AppTest, key: str) -> str:
    return app.button(key=key).label.replace(NO_BREAK, " ")


def change(app: AppTest, key: str, value) -> AppTest:
    return ran(app.text_input(key=key).set_value(str(value)).run())


def test_a_first_visit_sees_the_first_starting_drive_and_a_true_answer():
    app = opened()
    assert scenario_of(app) == TOWN
    assert [one.value for one in app.title] == ["What does slowing down give back?"]
    assert headline(TOWN) in [one.value for one in app.header]
    assert any(one.value == Display().say("caution") for one in app.markdown)


def test_who_comes_without_a_drive_may_be_guided_and_nobody_else():
    for link, guided in ({}, 1), ({"car": "van"}, 0):
        links = [one.label for one in opened_at("your_drive.py", link).get("page_link")]
        assert links.count(Display().say("guide")) == guided


@pytest.mark.parametrize("name", starting_drives())
def test_every_starting_drive_is_one_tap(name):
    app = opened()
    ran(app.button_group(key="choose-drive-page").set_value(name).run())
    assert scenario_of(app) == starting_drives()[name][2]
    assert headline(starting_drives()[name][2]) in [one.value for one in app.header]


def test_a_car_of_ones_own_stays_when_another_road_is_taken():
    app = opened()
    ran(app.radio(key="choose-car").set_value("van").run())
    ran(app.button_group(key="choose-drive-page").set_value("suburb-hill").run())
    hill = starting_drives()["suburb-hill"][2]
    assert (scenario_of(app).car_class, scenario_of(app).legs) == ("van", hill.legs)
    assert scenario_of(app).conditions == TOWN.conditions


def test_a_figure_of_a_leg_reaches_scenario_address_and_headline():
    app = opened()
    ran(app.button(key="row-leg-1").click().run())
    before = [one.value for one in app.header]
    change(app, "set-leg1-stops", 22)
    assert scenario_of(app) == TOWN.with_leg(1, "stops", 22)
    assert headline(scenario_of(app)) in [one.value for one in app.header]
    assert [one.value for one in app.header] != before
    assert "22 stops" in label(app, "row-leg-1")


def test_one_row_is_open_at_a_time():
    app = opened()
    ran(app.button(key="row-leg-0").click().run())
    ran(app.button(key="row-habits").click().run())
    keys = [one.key for one in app.text_input]
    assert not any(key.startswith("set-leg") for key in keys)
    assert "set-payload_kg" in keys


def test_legs_are_added_moved_and_removed():
    app = opened()
    ran(next(one for one in app.button if one.label == "Add a leg").click().run())
    assert len(scenario_of(app).legs) == len(TOWN.legs) + 1
    change(app, "set-leg3-distance_km", 9.0)
    ran(app.button(key="leg-up").click().run())
    assert scenario_of(app).legs[2].distance_km == 9
    assert app.text_input(key="set-leg2-distance_km").value == "9"
    ran(app.button(key="leg-remove").click().run())
    assert scenario_of(app) == TOWN


def test_there_are_one_to_eight_legs():
    app = opened()
    for _ in range(MAX_LEGS - len(TOWN.legs)):
        ran(next(one for one in app.button if one.label == "Add a leg").click().run())
    assert next(one for one in app.button if one.label == "Add a leg").disabled
    for _ in range(MAX_LEGS - 1):
        ran(app.button(key="row-leg-0").click().run())
        ran(app.button(key="leg-remove").click().run())
    ran(app.button(key="row-leg-0").click().run())
    assert app.button(key="leg-remove").disabled


def test_miles_and_kilometres_give_the_same_link():
    app = opened()
    ran(app.button_group(key="units").set_value("US").run())
    assert replace(scenario_of(app), year=TOWN.year) == TOWN
    ran(app.button(key="row-leg-1").click().run())
    assert app.text_input(key="set-leg1-speed_kmh").value == "30"
    change(app, "set-leg1-speed_kmh", 31.07)
    assert scenario_of(app).legs[1].speed_kmh == pytest.approx(50, abs=0.01)
    ran(app.button_group(key="units").set_value("Metric").run())
    assert float(app.text_input(key="set-leg1-speed_kmh").value) == pytest.approx(50, abs=0.01)


def test_an_entry_out_of_bounds_is_refused_and_kept_as_typed():
    app = opened()
    ran(app.button(key="row-leg-1").click().run())
    change(app, "set-leg1-distance_km", 5000)
    assert scenario_of(app) == TOWN
    assert app.text_input(key="set-leg1-distance_km").value == "5000"
    assert [one.value for one in app.error] == [
        "Distance: 5000 km cannot be used, 0.05 to 1000 km can. The answer keeps the last entry."
    ]
    change(app, "set-leg1-distance_km", 6.0)
    assert not app.error
    assert scenario_of(app).legs[1].distance_km == 6


@pytest.mark.parametrize(
    ("key", "typed", "held"),
    [("distance_km", "2,3", 2.3), ("distance_km", "2.3 km", 2.3), ("stops", "11", 11), ("speed_kmh", "52,5", 52.5)],
)
def test_a_decimal_comma_is_read_as_one(key, typed, held):
    app = opened()
    ran(app.button(key="row-leg-1").click().run())
    change(app, f"set-leg1-{key}", typed)
    assert getattr(scenario_of(app).legs[1], key) == held
    assert not app.error


@pytest.mark.parametrize(("key", "typed"), [("stops", "2.5"), ("stops", "2,5"), ("distance_km", "abc"), ("stops", "")])
def test_what_cannot_be_read_is_refused_and_nothing_typed_is_lost(key, typed):
    app = opened()
    ran(app.button(key="row-leg-1").click().run())
    change(app, f"set-leg1-{key}", typed)
    assert scenario_of(app) == TOWN
    assert app.text_input(key=f"set-leg1-{key}").value == typed
    assert len(app.error) == 1 and "The answer keeps the last entry" in app.error[0].value
    # another entry is taken meanwhile, and what was typed still stands
    change(app, "set-leg1-slow_downs", "9")
    assert scenario_of(app).legs[1].slow_downs == 9
    assert app.text_input(key=f"set-leg1-{key}").value == typed


def test_plus_and_minus_step_from_what_is_held():
    app = opened()
    ran(app.button(key="row-leg-1").click().run())
    change(app, "set-leg1-stops", "abc")
    ran(app.number_input(key="step-leg1-stops").set_value(11).run())
    assert scenario_of(app).legs[1].stops == 11
    assert app.text_input(key="set-leg1-stops").value == "11" and not app.error


def test_a_drive_that_cannot_be_is_refused_at_its_entry_and_the_last_answer_stays():
    app = opened()
    ran(app.button(key="row-leg-0").click().run())
    change(app, "set-leg0-stops", 400)
    assert [one.value.split(":")[0] for one in app.error] == ["Stops and slow-downs, leg 1"]
    assert app.text_input(key="set-leg0-stops").value == "400"
    assert headline(TOWN) in [one.value for one in app.header]
    assert any("In grey, the last answer:** flat town commute" in one.value for one in app.markdown)
    # with its row closed it stands above the rows
    ran(app.button(key="row-leg-0").click().run())
    assert len(app.error) == 1
    ran(app.button(key="row-leg-0").click().run())
    change(app, "set-leg0-stops", 3)
    assert not app.error
    assert headline(TOWN) in [one.value for one in app.header]
    assert not any("In grey" in one.value for one in app.markdown)


def test_a_hill_is_there_at_once_and_metres_and_steepness_give_each_other():
    app = opened()
    ran(app.button(key="row-leg-1").click().run())
    assert not any("climb_m" in one.key for one in app.text_input)
    ran(app.button_group(key="set-leg1-way").set_value("up").run())
    assert scenario_of(app).legs[1].climb_m == 100
    assert "up" in app.get("vega_lite_chart")[0].proto.alt
    change(app, "set-leg1-grade_pct", "7")
    assert scenario_of(app).legs[1].climb_m == pytest.approx(385)
    assert app.text_input(key="set-leg1-climb_m").value == "385"
    change(app, "set-leg1-climb_m", "110")
    assert app.text_input(key="set-leg1-grade_pct").value == "2"
    change(app, "set-leg1-climb_m", "3000")
    assert scenario_of(app).legs[1].climb_m == 110
    assert ["would be 55 % steep" in one.value for one in app.error] == [True]


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
    app = opened(to_link(TOWN) | change_link)
    assert app.title


def test_a_value_out_of_bounds_in_a_link_is_clamped_and_said_until_something_changes():
    app = opened(to_link(TOWN) | {"ambient_c": "99"})
    assert scenario_of(app).conditions.ambient_c == 50
    assert "set to 50" in app.info[0].value
    change(app, "set-ambient_c", 20.0)
    assert not app.info


def test_unusual_inputs_are_named_beside_the_headline():
    app = opened(to_link(TOWN.with_setting("payload_kg", 900.0)))
    assert any("Unusual inputs: load 900 kg" in one.value for one in app.markdown)
    assert not any("Unusual" in one.value for one in opened().markdown)


def test_a_car_too_weak_for_the_drive_says_what_it_did_instead():
    app = opened(to_link(TOWN.with_setting("motor_peak_kw", 15.0)))
    assert "cannot keep up" in app.warning[0].value


def test_season_sets_the_temperature_of_that_season():
    app = opened()
    ran(app.button_group(key="choose-season").set_value("winter").run())
    assert scenario_of(app) == TOWN.with_setting("ambient_c", TOWN.year.winter_c)
    (shown,) = [one.value for one in app.text_input if one.key.strip() == "set-ambient_c"]
    assert shown == f"{TOWN.year.winter_c:g}"


def test_the_pedal_is_set_on_the_answer_line_and_stays_with_another_car():
    app = opened()
    ran(app.button_group(key="set-brake_pedal").set_value("friction").run())
    assert dict(scenario_of(app).stated) == {"brake_pedal": "friction"}
    ran(app.radio(key="choose-car").set_value("van").run())
    assert dict(scenario_of(app).stated) == {"brake_pedal": "friction"}


def test_another_class_is_that_class_and_what_was_left_out_is_said_and_put_in_with_one_tap():
    stated = {"mass_kg": 1300.0, "heat_source": "heat_pump", "brake_pedal": "friction"}
    link = {key: str(value) for key, value in stated.items()} | {"shown_wh_per_km": "150"} | to_link(TOWN)
    app = opened(link)
    assert not any(one.key == "put-in" for one in app.button)
    ran(app.radio(key="choose-car").set_value("van").run())
    assert dict(scenario_of(app).stated) == {"brake_pedal": "friction"}
    assert scenario_of(app).conditions.shown_wh_per_km is None
    said = "Left out with the car before: cabin heater heat pump, mass with driver 1300 kg, "
    assert any(one.value.startswith(said) for one in app.markdown)
    # one more class further on, the sheet is still the former car’s
    ran(app.radio(key="choose-car").set_value("family-hatch").run())
    ran(app.button(key="put-in").click().run())
    assert dict(scenario_of(app).stated) == stated and scenario_of(app).car_class == "family-hatch"
    assert scenario_of(app).conditions.shown_wh_per_km == 150
    assert not any(one.value.startswith("Left out") for one in app.markdown)


def test_on_a_data_sheet_another_class_leaves_its_figures_out_and_says_so_once():
    app = opened({"mass_kg": "1300"} | to_link(TOWN))
    ran(app.button(key="door-sheet").click().run())
    ran(app.selectbox(key="choose-car-sheet").set_value("van").run())
    assert scenario_of(app).stated == ()
    assert sum(one.value.startswith("Left out with the car before: mass") for one in app.markdown) == 1


def test_a_trailer_stands_in_the_answer_line_and_can_be_taken_off_on_the_first_page():
    towing = TOWN.with_setting("trailer_kg", 1300.0).with_setting("trailer_drag_area_m2", 2.1)
    app = opened(to_link(towing.with_setting("wind_kmh", -20.0)))
    words = [one.proto.popover.label for one in app.get("popover")]
    assert "towing 1,300 kg with 2.1 m² of drag area, 20 km/h tailwind" in words
    ran(app.button(key="row-habits").click().run())
    assert app.text_input(key="set-trailer_drag_area_m2").value == "2.1"
    assert "1,300 kg trailer" in label(app, "row-habits")
    ran(app.button(key="take-off-trailer_kg").click().run())
    assert scenario_of(app).conditions.trailer_kg == 0 and scenario_of(app).conditions.wind_kmh == -20
    assert "20 km/h tailwind" in [one.proto.popover.label for one in app.get("popover")]


def test_a_toggles_question_mark_is_not_a_part_of_it():
    app = opened()
    assert {one.help for one in app.toggle} == {""}


def test_the_drawer_states_a_figure_and_gives_it_back():
    app = opened()
    app.session_state["car-drawer"] = True
    ran(app.run())
    assert app.text_input(key="set-mass_kg").value == "1200"
    change(app, "set-mass_kg", 1300.0)
    assert dict(scenario_of(app).stated) == {"mass_kg": 1300}
    ran(app.button(key="reset-mass_kg").click().run())
    assert scenario_of(app) == TOWN


def test_every_part_of_the_car_has_its_widgets():
    app = opened()
    app.session_state["car-drawer"] = True
    ran(app.run())
    for part in ("Motor", "Battery", "Slowing", "Cabin"):
        ran(app.button_group(key="car-group").set_value(part).run())


def test_the_year_can_be_edited():
    app = opened()
    app.session_state["year-drawer"] = True
    ran(app.run())
    change(app, "set-winter_days", 0)
    assert scenario_of(app).year.winter_days == 0
    assert any("In a year of 165 days" in one.proto.body for one in app.get("html"))


def test_the_strip_says_in_words_what_it_shows():
    charts = opened().get("vega_lite_chart")
    assert charts, "the drive strip is missing"
    assert "16.4 km" in charts[0].proto.alt
    assert json.loads(charts[0].proto.spec)


def test_units_change_what_is_shown():
    app = opened(to_link(TOWN) | {"units": "us"})
    assert any("mi of it from regeneration" in one.proto.body for one in app.get("html"))
    assert app.button_group(key="units").value == "US"
    assert "0.75 mi at 19 mph" in label(app, "row-leg-0")


def test_prices_go_with_the_units_until_somebody_chooses_them():
    def year_row(app) -> str:
        return next(one.proto.body for one in app.get("html") if "In a year of" in one.proto.body)

    app = opened()
    assert "€ " in year_row(app)
    ran(app.button_group(key="units").set_value("US").run())
    assert "$ " in year_row(app) and scenario_of(app).year.price_per_kwh == 0.16
    assert "$ " in year_row(opened(address(app)))
    ran(app.button_group(key="units").set_value("Metric").run())
    assert "€ " in year_row(app) and scenario_of(app).year == TOWN.year
    mine = opened(to_link(TOWN.with_setting("price_per_kwh", 0.4)))
    ran(mine.button_group(key="units").set_value("US").run())
    assert "€ " in year_row(mine) and scenario_of(mine).year.price_per_kwh == 0.4
    # chosen with US units, the sign that is usual elsewhere stays
    euros = opened(address(app) | {"units": "us", "currency": "€", "price_per_kwh": "0.29", "co2_g_per_kwh": "210"})
    assert "€ " in year_row(opened(address(euros)))


@pytest.mark.parametrize("day_c", [-15.0, 22.0])
def test_a_plug_in_hybrids_year_has_both_energies_whatever_the_day(day_c):
    hill = replace(starting_drives()["suburb-hill"][2], car_class="plug-in-hybrid").with_setting("ambient_c", day_c)
    (row,) = [one.proto.body for one in opened(to_link(hill)).get("html") if "In a year of" in one.proto.body]
    assert re.search(r"\d l of fuel and .*\d kWh from the wall", row.replace("\N{NO-BREAK SPACE}", " "))


def test_refusals_go_when_another_drive_is_taken():
    app = opened()
    ran(app.button(key="row-leg-1").click().run())
    change(app, "set-leg1-distance_km", 5000)
    ran(app.button_group(key="choose-drive-page").set_value("suburb-hill").run())
    assert not app.error
    assert app.text_input(key="set-leg1-distance_km").value == "8"


def test_inputs_stay_on_another_page_and_back():
    app = opened()
    ran(app.radio(key="choose-car").set_value("van").run())
    app.switch_page("sources.py").run()
    assert any("van" in one.proto.popover.label for one in ran(app.run()).get("popover"))
    app.switch_page("your_drive.py").run()
    assert scenario_of(ran(app.run())).car_class == "van"


def test_a_hybrid_is_told_in_fuel():
    app = opened({"car": "full-hybrid"})
    shown = " ".join(one.proto.body for one in app.get("html"))
    assert "In fuel" in shown and "l of fuel" in shown
    assert "from the wall" not in shown and "On a full battery" not in shown
    assert any(one.value == Display().say("hybrid-energy") for one in app.caption)


def test_the_hours_before_the_way_back_are_asked_where_there_is_one():
    app = opened()
    assert scenario_of(app).return_trip and app.text_input(key="set-stands_h").value == "8"
    before = [one.value for one in app.header]
    change(app, "set-stands_h", 0.0)
    assert scenario_of(app).conditions.stands_h == 0
    assert [one.value for one in app.header] != before
    ran(app.toggle(key="there-and-back").set_value(False).run())
    assert not any(one.key == "set-stands_h" for one in app.text_input)


def test_the_car_driven_now_stands_beside_the_one_described_as_its_owner_says_it():
    app = opened({"car": "city-car", "units": "us"})
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


def open_door(app: AppTest, name: str) -> AppTest:
    return ran(app.button(key=f"door-{name}").click().run())


def test_five_answers_make_the_legs_and_are_read_back_from_them():
    app = open_door(opened(), "quick")
    assert app.text_input(key="set-quick-distance_km").value == "8.2"
    for key, value in (("distance_km", 24), ("town_share", 30), ("motorway_share", 40), ("stops", 7)):
        change(app, f"set-quick-{key}", value)
    ran(app.button_group(key="set-quick-way").set_value("up").run())
    change(app, "set-quick-height_m", 180)
    quick = QuickDrive(distance_km=24.0, town_share=0.3, motorway_share=0.4, way="up", height_m=180.0, stops=7)
    assert scenario_of(app) == replace(TOWN, legs=legs_of(quick))
    assert headline(scenario_of(app)) in [one.value for one in app.header]
    assert "24 km at" not in label(app, "row-leg-0") and len(scenario_of(app).legs) == 4
    # what cannot be is refused where it is entered, and the legs stay
    before = scenario_of(app)
    change(app, "set-quick-height_m", 3900)
    assert any("steep" in one.value for one in app.error) and scenario_of(app) == before


def test_a_car_is_entered_as_its_data_sheet_has_it():
    app = open_door(opened(), "sheet")
    ran(app.selectbox(key="choose-car-sheet").set_value("family-hatch").run())
    for key, value in (("mass_kg-sheet", 1700), ("usable_kwh-sheet", 58), ("motor_peak_kw-sheet", 150)):
        change(app, f"set-{key}", value)
    change(app, "set-printed_kwh_per_100km", "16,2")
    ran(app.button_group(key="set-heat_source-sheet").set_value("heat_pump").run())
    ran(app.button_group(key="set-driven_axle-sheet").set_value("rear").run())
    now = scenario_of(app)
    assert now.car_class == "family-hatch"
    assert dict(now.stated) == {
        "mass_kg": 1700, "usable_kwh": 58, "motor_peak_kw": 150, "printed_wh_per_km": 162, "heat_source": "heat_pump",
        "driven_axle": "rear",
    }  # fmt: skip
    change(app, "set-printed_kwh_per_100km", "")
    assert "printed_wh_per_km" not in dict(scenario_of(app).stated)


def test_a_printed_range_that_fits_no_such_car_is_refused_where_it_is_entered():
    """It had ended the page: the drive itself can be driven, but no car is left for its band."""
    app = open_door(opened({"car": "family-hatch"}), "sheet")
    told = [one.value for one in app.header]
    change(app, "set-printed_range_km-sheet", 1500)
    assert any("1500 km does not fit this car" in one.value for one in app.error)
    assert "In grey, the last answer" in " ".join(one.value for one in app.markdown) or told
    opened({"car": "family-hatch", "printed_range_km": "1500"})


def test_a_printed_range_is_brought_to_the_road_beside_the_data_sheet(monkeypatch):
    # of few cars hardly any fits what is printed
    monkeypatch.setattr(state, "BAND_RUNS", RUNS)
    link = to_link(TOWN) | {"car": "family-hatch", "printed_range_km": "420"}
    app = open_door(opened(link), "sheet")
    app.session_state["road-drawer"] = True
    ran(app.run())
    found = [one.value.replace(NO_BREAK, " ") for one in app.markdown if "km on the test" in one.value]
    assert found and "420 km on the test" in found[0]
    # one range a page: what the answer says of a full battery is where the steps end
    facts = " ".join(re.sub("<[^>]*>", " ", one.proto.body) for one in app.get("html")).replace(NO_BREAK, " ")
    reached = re.search(r"On a full battery\s+([\d,.]+(?: to [\d,.]+)? km)", facts).group(1)
    assert f"420 km on the test, {reached} on your drive" in found[0]
    assert any(f"On your drive: {reached}" in in_picture(one) for one in app.get("vega_lite_chart"))


def test_what_came_with_the_units_is_said_until_it_is_changed():
    """CO₂ and price went from 210 to 390 g and from 0.29 to 0.16 a kWh without a word."""
    said = "With the units, prices and CO₂ changed to those usual in"

    def told(app):
        every = [one.value.replace("\\", "") for kind in (app.caption, app.markdown) for one in kind]
        return [text.replace(NO_BREAK, " ") for text in every if said in text.replace("\\", "")]

    app = opened()
    assert told(app) == []
    ran(app.button_group(key="units").set_value("US").run())
    assert told(app) == [f"{said} the United States: $ 0.16 and 390 g a kWh."] * 2
    ran(app.button_group(key="units").set_value("Metric").run())
    assert told(app) == [f"{said} the EU: € 0.29 and 210 g a kWh."] * 2
    assert told(opened({"units": "us"})) == [] == told(opened({"price_per_kwh": "0.4"}))
    own = opened({"price_per_kwh": "0.4"})
    ran(own.button_group(key="units").set_value("US").run())
    assert told(own) == [], "a price of one's own stays"


def test_a_figure_printed_in_the_united_states_is_of_the_test_there():
    app = open_door(opened({"car": "family-hatch", "units": "us"}), "sheet")
    assert app.selectbox(key="set-printed_test-sheet").value == "us-label"
    assert "printed_test" not in dict(scenario_of(app).stated)
    change(app, "set-printed_range_km-sheet", 250)
    assert dict(scenario_of(app).stated)["printed_test"] == "us-label"
    ran(app.selectbox(key="set-printed_test-sheet").set_value("wltc3b").run())
    assert app.selectbox(key="set-printed_test-sheet").value == "wltc3b"
    metric = open_door(opened({"car": "family-hatch"}), "sheet")
    assert metric.selectbox(key="set-printed_test-sheet").value == "wltc3b"
    # a link without a test means the field's own, whatever the units
    link = open_door(opened({"car": "family-hatch", "units": "us", "printed_range_km": "420"}), "sheet")
    assert link.selectbox(key="set-printed_test-sheet").value == "wltc3b"
