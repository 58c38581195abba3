"""The car and the drive as they are entered in short: class, drawer, data sheet, five answers."""

import re
from dataclasses import replace

from streamlit.testing.v1 import AppTest

from model.describe.quick_drive import QuickDrive, legs_of
from model.describe.scenario_io import starting_drives, to_link
from model.sampling.uncertainty import RUNS
from pages.parts import state
from pages.parts.typography import NO_BREAK
from tests.pages.in_app import change, first_page, headline_of, in_picture, label, ran, scenario_of

TOWN = starting_drives()["town"][2]


def test_another_class_keeps_what_was_stated_and_says_so_and_gives_it_up_with_one_tap():
    stated = {"mass_kg": 1300.0, "heat_source": "heat_pump", "brake_pedal": "friction"}
    link = {key: str(value) for key, value in stated.items()} | {"shown_wh_per_km": "150"} | to_link(TOWN)
    app = first_page(link)
    assert not any(one.key in ("put-in", "class-figures") for one in app.button)
    ran(app.radio(key="choose-car").set_value("family-hatch").run())
    assert dict(scenario_of(app).stated) == stated and scenario_of(app).car_class == "family-hatch"
    assert scenario_of(app).conditions.shown_wh_per_km == 150
    said = "Kept as you entered them: cabin heater heat pump, mass with driver 1300 kg, "
    assert any(one.value.startswith(said) for one in app.markdown)
    ran(app.button(key="class-figures").click().run())
    assert dict(scenario_of(app).stated) == {"brake_pedal": "friction"}
    assert scenario_of(app).conditions.shown_wh_per_km is None
    assert any(one.value.startswith("Left out, as entered before: cabin heater") for one in app.markdown)
    ran(app.button(key="put-in").click().run())
    assert dict(scenario_of(app).stated) == stated and scenario_of(app).conditions.shown_wh_per_km == 150
    assert not any(one.value.startswith("Left out") for one in app.markdown)


def test_on_a_data_sheet_another_class_keeps_what_was_typed_and_only_the_rest_follows_it():
    sheet = {"mass_kg": 1500.0, "usable_kwh": 41.0, "motor_peak_kw": 95.0, "driven_axle": "rear"}
    app = first_page({key: str(value) for key, value in sheet.items()} | to_link(TOWN))
    ran(app.button(key="door-sheet").click().run())
    ran(app.selectbox(key="choose-car-sheet").set_value("family-hatch").run())
    assert dict(scenario_of(app).stated) == sheet and scenario_of(app).car_class == "family-hatch"
    assert app.text_input(key="set-mass_kg-sheet").value == "1500"
    assert app.button_group(key="set-driven_axle-sheet").value == "rear"
    assert sum(one.value.startswith("Kept as you entered them: ") for one in app.markdown) == 1


def test_the_drawer_states_a_figure_and_gives_it_back():
    app = first_page()
    app.session_state["car-drawer"] = True
    ran(app.run())
    assert app.text_input(key="set-mass_kg").value == "1200"
    change(app, "set-mass_kg", 1300.0)
    assert dict(scenario_of(app).stated) == {"mass_kg": 1300}
    ran(app.button(key="reset-mass_kg").click().run())
    assert scenario_of(app) == TOWN


def test_every_part_of_the_car_has_its_widgets():
    app = first_page()
    app.session_state["car-drawer"] = True
    ran(app.run())
    for part in ("Motor", "Battery", "Slowing", "Cabin"):
        ran(app.button_group(key="car-group").set_value(part).run())


def open_door(app: AppTest, name: str) -> AppTest:
    return ran(app.button(key=f"door-{name}").click().run())


def test_five_answers_make_the_legs_and_are_read_back_from_them():
    app = open_door(first_page(), "quick")
    assert app.text_input(key="set-quick-distance_km").value == "8.2"
    for key, value in (("distance_km", 24), ("town_share", 30), ("motorway_share", 40), ("stops", 7)):
        change(app, f"set-quick-{key}", value)
    ran(app.button_group(key="set-quick-way").set_value("up").run())
    change(app, "set-quick-height_m", 180)
    quick = QuickDrive(distance_km=24.0, town_share=0.3, motorway_share=0.4, way="up", height_m=180.0, stops=7)
    assert scenario_of(app) == replace(TOWN, legs=legs_of(quick))
    assert headline_of(scenario_of(app)) in [one.value for one in app.header]
    assert "24 km at" not in label(app, "row-leg-0") and len(scenario_of(app).legs) == 4
    # one way is entered, and whether it is driven back stands beside it
    assert app.toggle(key="quick-there-and-back").value is True
    ran(app.toggle(key="quick-there-and-back").set_value(False).run())
    assert not scenario_of(app).return_trip
    # what cannot be is refused where it is entered, and the legs stay
    before = scenario_of(app)
    change(app, "set-quick-height_m", 3900)
    assert any("steep" in one.value for one in app.error) and scenario_of(app) == before


def test_a_car_is_entered_as_its_data_sheet_has_it():
    app = open_door(first_page(), "sheet")
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
    # the heat of an engine is offered to a car that has one
    assert [one.content for one in app.button_group(key="set-heat_source-sheet").proto.options] == [
        "Plain electric", "Heat pump",
    ]  # fmt: skip
    change(app, "set-printed_kwh_per_100km", "")
    assert "printed_wh_per_km" not in dict(scenario_of(app).stated)


def test_a_printed_range_that_fits_no_such_car_is_refused_where_it_is_entered():
    """It had ended the page: the drive itself can be driven, but no car is left for its band."""
    app = open_door(first_page({"car": "family-hatch"}), "sheet")
    told = [one.value for one in app.header]
    change(app, "set-printed_range_km-sheet", 1500)
    assert any("1500 km does not fit this car" in one.value for one in app.error)
    assert "In grey, the last answer" in " ".join(one.value for one in app.markdown) or told
    first_page({"car": "family-hatch", "printed_range_km": "1500"})


def test_a_printed_range_is_brought_to_the_road_beside_the_data_sheet(monkeypatch):
    # of few cars hardly any fits what is printed
    monkeypatch.setattr(state, "BAND_RUNS", RUNS)
    link = to_link(TOWN) | {"car": "family-hatch", "printed_range_km": "420"}
    app = open_door(first_page(link), "sheet")
    app.session_state["road-drawer"] = True
    ran(app.run())
    found = [one.value.replace(NO_BREAK, " ") for one in app.markdown if "km on the test" in one.value]
    assert found and "420 km on the test" in found[0]
    # one range a page: what the answer says of a full battery is where the steps end
    facts = " ".join(re.sub("<[^>]*>", " ", one.proto.body) for one in app.get("html")).replace(NO_BREAK, " ")
    reached = re.search(r"On a full battery\s+([\d,.]+(?: to [\d,.]+)? km)", facts).group(1)
    assert f"420 km on the test, {reached} on your drive" in found[0]
    assert any(f"On your drive: {reached}" in in_picture(one) for one in app.get("vega_lite_chart"))


def test_a_figure_printed_in_the_united_states_is_of_the_test_there():
    app = open_door(first_page({"car": "family-hatch", "units": "us"}), "sheet")
    assert app.selectbox(key="set-printed_test-sheet").value == "us-label"
    assert "printed_test" not in dict(scenario_of(app).stated)
    change(app, "set-printed_range_km-sheet", 250)
    assert dict(scenario_of(app).stated)["printed_test"] == "us-label"
    ran(app.selectbox(key="set-printed_test-sheet").set_value("wltc3b").run())
    assert app.selectbox(key="set-printed_test-sheet").value == "wltc3b"
    metric = open_door(first_page({"car": "family-hatch"}), "sheet")
    assert metric.selectbox(key="set-printed_test-sheet").value == "wltc3b"
    # a link without a test means the field's own, whatever the units
    link = open_door(first_page({"car": "family-hatch", "units": "us", "printed_range_km": "420"}), "sheet")
    assert link.selectbox(key="set-printed_test-sheet").value == "wltc3b"
