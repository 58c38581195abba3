"""The page on lift-off, without a browser."""

import json
from dataclasses import replace

import pytest
from streamlit.testing.v1 import AppTest

from model.describe.scenario import with_prices_of
from model.describe.scenario_io import starting_drives, to_link
from model.lift_off.advice import advise
from model.lift_off.curves import curves_of
from model.sampling.drives import drive
from model.words.lift_off import rules
from model.words.quantities import Display
from pages.parts import keeping, state
from pages.parts import lift_off_words as words
from tests.pages.in_app import headers, opened_at, plain, ran, scenario_of

STARTS = {name: scenario for name, (_, _, scenario) in starting_drives().items()}
TOWN = STARTS["town"]


def opened(scenario=TOWN, **more: str) -> AppTest:
    """The page as somebody sees it who follows a link."""
    return opened_at("lift_off.py", to_link(scenario) | more)


def advised(scenario):
    return advise(curves_of(scenario)).overall


def all_words(app: AppTest) -> str:
    return " ".join(one.value for one in app.markdown)


@pytest.mark.parametrize("pedal", ["blended", "friction"])
@pytest.mark.parametrize("name", STARTS)
def test_the_answer_comes_first_with_its_because_and_the_rules(name, pedal):
    scenario = STARTS[name].with_setting("brake_pedal", pedal)
    app, advice = opened(scenario), advised(scenario)
    assert headers(app)[0] == plain(words.heading(advice, Display()))
    assert not any(words.together(rule) in all_words(app) for rule in rules(Display()))
    app.session_state["rules-drawer"] = True
    text = all_words(ran(app.run()))
    assert words.because(advice, Display()) in text
    assert all(words.together(rule) in text for rule in rules(Display()))
    assert any(one.value == Display().say("caution") for one in app.markdown)


def test_the_slider_sets_the_scenario_and_the_picture():
    app = opened()
    ran(app.slider(key="set-lift_off_mps2").set_value(0.4).run())
    assert scenario_of(app) == TOWN.with_setting("lift_off_mps2", 0.4)
    assert "gentle" in app.slider(key="set-lift_off_mps2").label
    assert any("Yours, 0.4" in column for column in app.table[0].value.columns)
    axis = next(one for one in app.get("vega_lite_chart") if "Over lift-off strength" in one.proto.alt)
    assert json.loads(axis.proto.spec)["layer"]


def test_moving_the_slider_drives_the_axis_only_once(monkeypatch):
    driven = []
    monkeypatch.setattr(state, "curves_of", lambda scenario: driven.append(scenario) or curves_of(scenario))
    monkeypatch.setattr(keeping, "STORE", keeping.Store(keeping.MOST_BYTES))
    app = opened()
    assert len(driven) == 1
    for strength in (0.2, 1.9):
        ran(app.slider(key="set-lift_off_mps2").set_value(strength).run())
    ran(app.button_group(key="set-prefers").set_value("gentlest_ride").run())
    assert len(driven) == 1
    ran(app.text_input(key="set-ambient_c").set_value("-5").run())
    assert len(driven) == 2


def test_one_tap_sets_what_is_advised_on_every_leg():
    own = TOWN.with_leg(1, "lift_off_mps2", 0.2)
    app, strength = opened(own), advised(own).lift_off_mps2
    button = next(one for one in app.button if one.label == "Set as advised")
    assert "a strength for each leg" in app.table[0].value.columns[1]
    ran(button.click().run())
    assert scenario_of(app) == TOWN.with_setting("lift_off_mps2", strength)
    assert next(one for one in app.button if one.label == "Set as advised").disabled
    assert any("Yours is what is advised" in one.value for one in app.markdown)


def test_the_preference_changes_the_advice():
    app = opened(STARTS["motorway"])
    before = headers(app)[0]
    ran(app.button_group(key="set-prefers").set_value("gentlest_ride").run())
    gentle = STARTS["motorway"].with_setting("prefers", "gentlest_ride")
    assert headers(app)[0] == plain(words.heading(advised(gentle), Display())) != before


def test_the_drawer_has_what_else_is_set_here_and_nowhere_else():
    app = opened()
    app.session_state["lift-drawer"] = True
    ran(app.run())
    ran(app.toggle(key="set-comes_to_rest").set_value(True).run())
    ran(app.toggle(key="set-slowing_on_request").set_value(True).run())
    ran(app.text_input(key="set-leg2-lift_off_mps2").set_value("0.6").run())
    expected = TOWN.with_setting("comes_to_rest", True).with_setting("slowing_on_request", True)
    assert scenario_of(app) == expected.with_leg(2, "lift_off_mps2", 0.6)
    assert any("You set 0.6" in one.value for one in app.markdown)


def test_too_much_for_the_road_is_a_warning():
    icy = opened(TOWN.with_setting("surface", "ice").with_setting("lift_off_mps2", 1.5))
    assert "over half of the grip" in icy.warning[0].value
    assert not opened().warning


def test_the_strip_is_annotated_with_the_advice():
    alt = opened().get("vega_lite_chart")[0].proto.alt
    for leg in advise(curves_of(TOWN)).legs:
        assert words.strength_text(leg.lift_off_mps2, Display()) in alt


def test_every_picture_says_what_it_shows():
    charts = opened().get("vega_lite_chart")
    assert len(charts) == 4
    assert all(len(one.proto.alt) > 60 and any(letter.isdigit() for letter in one.proto.alt) for one in charts)


def test_hills_follow_their_speed_and_the_address():
    app = opened(hill_kmh="80")
    assert app.button_group(key="set-hill-speed").value == 80.0
    assert any("What just keeps 80 km/h" in one.value for one in app.markdown)
    assert opened(hill_kmh="77").button_group(key="set-hill-speed").value == 50.0


def test_the_microscope_follows_its_slider_and_the_address():
    app = opened(from_kmh="120", to_kmh="80")
    assert app.slider(key="set-slow-down").value == (80.0, 120.0)
    assert any("From 120 to 80 km/h" in plain(one.value) for one in app.markdown)
    ran(app.slider(key="set-slow-down").set_value((0.0, 50.0)).run())
    assert any("From 50 to 0 km/h" in plain(one.value) for one in app.markdown)


@pytest.mark.parametrize("link", [{"from_kmh": "x"}, {"from_kmh": "10", "to_kmh": "90"}, {"to_kmh": "-4"},
                                  {"from_kmh": "999"}, {"hill_kmh": "fast"}, {"lift_off_mps2": "99"}])  # fmt: skip
def test_no_address_ends_in_a_traceback(link):
    assert headers(opened(TOWN, **link))


def test_us_units_are_read_and_the_link_stays():
    app = opened(TOWN, units="us")
    assert any("mph less each second" in one.value for one in app.markdown)
    assert app.slider(key="set-slow-down").label.endswith("mph")
    # a link in US units that says no currency means dollars
    assert scenario_of(app) == replace(TOWN, year=with_prices_of(TOWN.year, us=True))


def test_a_drive_that_cannot_be_is_refused_in_place_of_the_answer():
    app = opened(TOWN.with_leg(0, "stops", 400))
    assert [one.value.split(":")[0] for one in app.error] == ["Stops and slow-downs, leg 1"]
    assert not headers(app)


@pytest.mark.parametrize("pedal", ["blended", "friction"])
@pytest.mark.parametrize("name", STARTS)
def test_what_is_left_out_for_speed_changes_no_drive(name, pedal):
    """An answer is kept for all scenarios that differ only in what moves nothing at the described speeds."""
    scenario = STARTS[name].with_setting("brake_pedal", pedal).with_setting("lift_off_mps2", 0.3)
    scenario = scenario.with_setting("prefers", "gentlest_ride").with_leg(0, "lift_off_mps2", 2.0)
    full, short = drive(scenario), drive(state.same_speeds(scenario))
    assert full.net_kwh == short.net_kwh and full.saved_kwh == short.saved_kwh
