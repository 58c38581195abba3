"""The page Compare, without a browser."""

from dataclasses import replace

import pytest
from streamlit.testing.v1 import AppTest

from model.describe.scenario_io import starting_drives, to_link
from model.out.comparison import difference, in_car_of, in_season, others, side_of
from model.words.bands import band_promise
from model.words.quantities import Display
from pages.parts import compare_words as words
from pages.parts import state
from tests.pages.in_app import address, headers, opened_at, plain, ran

TOWN = starting_drives()["town"][2]


def opened(scenario=TOWN, **own) -> AppTest:
    return opened_at("compare.py", to_link(scenario) | own)


def own_parameters(app) -> dict[str, str]:
    given = address(app)
    return {key: given[key] for key in ("differs", "b", "c", "as_driven") if key in given}


def finding(subject, *values, scenario=TOWN, as_driven=False) -> str:
    drives = [scenario, *(others(scenario, subject)[value] for value in values)]
    sides = [side_of(one, scenario.car_class, runs=state.BAND_RUNS, as_driven=as_driven) for one in drives]
    names = [words.spoken(subject, words.name_of(subject, one, Display()), Display()) for one in drives]
    return plain(words.title([difference(side, sides[0]) for side in sides[1:]], names, Display()))


def test_a_first_visit_sees_the_drive_in_winter():
    app = opened()
    assert headers(app) == [finding("season", "winter")]
    assert [one.value for one in app.title] == ["Your drive beside another"]
    assert any(band_promise(Display()) in one.value for one in app.caption)


def test_who_is_in_winter_sees_summer():
    winter = TOWN.with_setting("ambient_c", TOWN.year.winter_c)
    assert headers(opened(winter)) == [finding("season", "summer", scenario=winter)]


def test_a_link_brings_back_two_cars_beside_ones_own():
    app = opened(differs="car", b="large-suv", c="van")
    assert headers(app) == [finding("car", "large-suv", "van")]
    assert app.button_group(key="compare-values").value == ["large-suv", "van"]
    assert len(app.table[0].value.columns) == 4
    alt = app.get("vega_lite_chart")[-1].proto.alt
    assert headers(app)[0] in alt and "exceeds the uncertainty" in alt


def test_the_picture_can_be_printed():
    app = opened()
    app.toggle(key="compare-for-print").set_value(True).run()
    labels = [button.proto.label for button in app.get("download_button")]
    assert not app.exception and labels[-2:] == ["SVG", "PNG"]


def test_a_third_pick_takes_the_place_of_the_first():
    app = opened(differs="car", b="large-suv", c="van")
    ran(app.button_group(key="compare-values").set_value(["large-suv", "van", "pickup"]).run())
    assert own_parameters(app) == {"differs": "car", "b": "van", "c": "pickup"}
    assert headers(app) == [finding("car", "van", "pickup")]


def test_another_subject_starts_with_its_first_value_and_without_one_says_what_to_do():
    app = opened(differs="car", b="large-suv")
    ran(app.selectbox(key="compare-subject").set_value("looks_ahead").run())
    first = next(iter(others(TOWN, "looks_ahead")))
    assert own_parameters(app) == {"differs": "looks_ahead", "b": first}
    assert headers(app) == [finding("looks_ahead", first)]
    ran(app.button_group(key="compare-values").set_value([]).run())
    assert headers(app) == [] and any("Pick one or two" in one.value for one in app.markdown)
    ran(app.button_group(key="compare-values").set_value(["late"]).run())
    assert headers(app) == [finding("looks_ahead", "late")]


def test_where_there_is_one_other_value_it_is_taken():
    app = opened()
    ran(app.selectbox(key="compare-subject").set_value("brake_pedal").run())
    assert own_parameters(app) == {"differs": "brake_pedal", "b": "friction"}


def test_strengths_are_compared_at_the_same_speeds_or_as_driven():
    app = opened(differs="lift_off_mps2", b="2")
    assert headers(app) == [finding("lift_off_mps2", "2")]
    ran(app.button_group(key="compare-speeds").set_value(True).run())
    assert own_parameters(app)["as_driven"] == "yes"
    assert headers(app) == [finding("lift_off_mps2", "2", as_driven=True)]


@pytest.mark.parametrize(
    ("own", "sentence"),
    [
        ({"differs": "colour"}, "“colour” is not one of"),
        ({"differs": "car", "b": "submarine"}, "“submarine” is not one of"),
        ({"differs": "season", "b": "summer", "c": "monsoon"}, "“monsoon” is not one of"),
    ],
)
def test_what_a_link_cannot_mean_is_said(own, sentence):
    app = opened(**own)
    assert any(sentence in one.value for one in app.info)


def test_the_value_that_the_drive_has_itself_is_left_out_without_a_word():
    app = opened(differs="car", b=TOWN.car_class, c="van")
    assert not app.info
    assert headers(app) == [finding("car", "van")]


def test_a_drive_that_cannot_be_is_refused_and_the_other_is_shown():
    steep = TOWN.with_leg(0, "grade_pct", 20.0).with_leg(0, "climb_m", 100.0).with_setting("trailer_kg", 2000.0)
    steep = replace(steep, car_class="large-suv")
    app = opened(steep, differs="car", b="city-car", c="performance-saloon")
    assert [one.value.split(":")[0] for one in app.error] == ["City car"]
    assert headers(app) == [finding("car", "performance-saloon", scenario=steep)]


def test_without_a_drive_of_ones_own_there_is_nothing_to_compare_with():
    app = opened(TOWN.with_setting("soc_start", 0.0), differs="season", b="winter")
    assert len(app.error) == 1 and headers(app) == []


def test_units_change_the_names_and_not_the_link():
    app = opened(differs="season", b="winter")
    ran(app.button_group(key="units").set_value("US").run())
    assert "34 °F" in headers(app)[0]
    assert own_parameters(app) == {"differs": "season", "b": "winter"}


def test_a_second_car_of_ones_own_is_kept_and_held_against_the_next():
    """Its figures stay as they were stated, on the first page another car is described, and the link holds both."""
    mine = TOWN.with_setting("mass_kg", 1350.0).with_setting("usable_kwh", 36.0)
    app = opened(mine, differs="car")
    ran(app.button(key="keep-car").click().run())
    kept = {key: values[0] if isinstance(values, list) else values for key, values in app.query_params.items()}
    assert kept["kept_car"] == "city-car;mass_kg=1350;usable_kwh=36"
    other = replace(TOWN, car_class="family-hatch").with_setting("mass_kg", 1800.0)
    app = opened(other, differs="car", b="kept", kept_car=kept["kept_car"])
    assert not app.info and not app.error
    assert in_car_of(other, kept["kept_car"]) == replace(mine, stated=mine.stated)
    assert "the car you kept (city car, adjusted)" in headers(app)[0].lower()
    # what is no car is not offered
    assert "kept" not in opened(other, differs="car", kept_car="city-car;mass_kg=9e9").button_group[0].options
    assert in_car_of(other, "no-car") is None and in_car_of(other, "city-car;wings=2") is None


def test_the_others_may_be_in_another_season_too():
    app = opened(differs="car", b="van", and_season="winter")
    assert "van, winter" in headers(app)[0].lower()
    beside = in_season(others(TOWN, "car")["van"], "winter")
    assert beside.conditions.ambient_c == TOWN.year.winter_c
    assert headers(opened(differs="car", b="van")) != headers(app)


@pytest.mark.parametrize(("subject", "value"), [("soc_start", "1"), ("payload_kg", "300"), ("trailer_kg", "750")])
def test_charge_load_and_trailer_can_be_compared(subject, value):
    assert headers(opened(differs=subject, b=value)) == [finding(subject, value)]
