"""What is entered on the first page: in whose units, what is refused, and where that is said."""

from dataclasses import replace

import pytest

from model.describe.scenario_io import starting_drives, to_link
from pages.parts.typography import NO_BREAK
from tests.pages.in_app import address, change, first_page, headline_of, label, ran, scenario_of

TOWN = starting_drives()["town"][2]


def test_miles_and_kilometres_give_the_same_link():
    app = first_page()
    ran(app.button_group(key="units").set_value("US").run())
    assert replace(scenario_of(app), year=TOWN.year) == TOWN
    ran(app.button(key="row-leg-1").click().run())
    assert app.text_input(key="set-leg1-speed_kmh").value == "30"
    change(app, "set-leg1-speed_kmh", 31.07)
    assert scenario_of(app).legs[1].speed_kmh == pytest.approx(50, abs=0.01)
    ran(app.button_group(key="units").set_value("Metric").run())
    assert float(app.text_input(key="set-leg1-speed_kmh").value) == pytest.approx(50, abs=0.01)


def test_an_entry_out_of_bounds_is_refused_and_kept_as_typed():
    app = first_page()
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
    app = first_page()
    ran(app.button(key="row-leg-1").click().run())
    change(app, f"set-leg1-{key}", typed)
    assert getattr(scenario_of(app).legs[1], key) == held
    assert not app.error


@pytest.mark.parametrize(("key", "typed"), [("stops", "2.5"), ("stops", "2,5"), ("distance_km", "abc"), ("stops", "")])
def test_what_cannot_be_read_is_refused_and_nothing_typed_is_lost(key, typed):
    app = first_page()
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
    app = first_page()
    ran(app.button(key="row-leg-1").click().run())
    change(app, "set-leg1-stops", "abc")
    ran(app.number_input(key="step-leg1-stops").set_value(11).run())
    assert scenario_of(app).legs[1].stops == 11
    assert app.text_input(key="set-leg1-stops").value == "11" and not app.error


def test_a_drive_that_cannot_be_is_refused_at_its_entry_and_the_last_answer_stays():
    app = first_page()
    ran(app.button(key="row-leg-0").click().run())
    change(app, "set-leg0-stops", 400)
    assert [one.value.split(":")[0] for one in app.error] == ["Stops and slow-downs, leg 1"]
    assert app.text_input(key="set-leg0-stops").value == "400"
    assert headline_of(TOWN) in [one.value for one in app.header]
    assert any("In grey, the last answer:** flat town commute" in one.value for one in app.markdown)
    # with its row closed it stands above the rows
    ran(app.button(key="row-leg-0").click().run())
    assert len(app.error) == 1
    ran(app.button(key="row-leg-0").click().run())
    change(app, "set-leg0-stops", 3)
    assert not app.error
    assert headline_of(TOWN) in [one.value for one in app.header]
    assert not any("In grey" in one.value for one in app.markdown)


def test_a_hill_is_there_at_once_and_metres_and_steepness_give_each_other():
    app = first_page()
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


def test_a_value_out_of_bounds_in_a_link_is_clamped_and_said_until_something_changes():
    app = first_page(to_link(TOWN) | {"ambient_c": "99"})
    assert scenario_of(app).conditions.ambient_c == 50
    assert "set to 50" in app.info[0].value
    change(app, "set-ambient_c", 20.0)
    assert not app.info


def test_a_toggles_question_mark_is_not_a_part_of_it():
    app = first_page()
    assert {one.help for one in app.toggle} == {""}


def test_units_change_what_is_shown():
    app = first_page(to_link(TOWN) | {"units": "us"})
    assert any("mi of it from regeneration" in one.proto.body for one in app.get("html"))
    assert app.button_group(key="units").value == "US"
    assert "0.75 mi at 19 mph" in label(app, "row-leg-0")


def test_prices_go_with_the_units_until_somebody_chooses_them():
    def year_row(app) -> str:
        return next(one.proto.body for one in app.get("html") if "In a year of" in one.proto.body)

    app = first_page()
    assert "€\N{NO-BREAK SPACE}" in year_row(app)
    ran(app.button_group(key="units").set_value("US").run())
    assert "$\N{NO-BREAK SPACE}" in year_row(app) and scenario_of(app).year.price_per_kwh == 0.16
    assert "$\N{NO-BREAK SPACE}" in year_row(first_page(address(app)))
    ran(app.button_group(key="units").set_value("Metric").run())
    assert "€\N{NO-BREAK SPACE}" in year_row(app) and scenario_of(app).year == TOWN.year
    mine = first_page(to_link(TOWN.with_setting("price_per_kwh", 0.4)))
    ran(mine.button_group(key="units").set_value("US").run())
    assert "€\N{NO-BREAK SPACE}" in year_row(mine) and scenario_of(mine).year.price_per_kwh == 0.4
    # chosen with US units, the sign that is usual elsewhere stays
    euros = first_page(address(app) | {"units": "us", "currency": "€", "price_per_kwh": "0.29", "co2_g_per_kwh": "210"})
    assert "€\N{NO-BREAK SPACE}" in year_row(first_page(address(euros)))


def test_refusals_go_when_another_drive_is_taken():
    app = first_page()
    ran(app.button(key="row-leg-1").click().run())
    change(app, "set-leg1-distance_km", 5000)
    ran(app.button_group(key="choose-drive-page").set_value("suburb-hill").run())
    assert not app.error
    assert app.text_input(key="set-leg1-distance_km").value == "8"


def test_what_came_with_the_units_is_said_until_it_is_changed():
    """CO₂ and price went from 210 to 390 g and from 0.29 to 0.16 a kWh without a word."""
    said = "With the units, prices and CO₂ changed to those usual in"

    def told(app):
        every = [one.value.replace("\\", "") for kind in (app.caption, app.markdown) for one in kind]
        return [text.replace(NO_BREAK, " ") for text in every if said in text.replace("\\", "")]

    app = first_page()
    assert told(app) == []
    ran(app.button_group(key="units").set_value("US").run())
    assert told(app) == [f"{said} the United States: $ 0.16 and 390 g a kWh."] * 2
    ran(app.button_group(key="units").set_value("Metric").run())
    assert told(app) == [f"{said} the EU: € 0.29 and 210 g a kWh."] * 2
    assert told(first_page({"units": "us"})) == [] == told(first_page({"price_per_kwh": "0.4"}))
    own = first_page({"price_per_kwh": "0.4"})
    ran(own.button_group(key="units").set_value("US").run())
    assert told(own) == [], "a price of one's own stays"
