"""What departs from the ordinary is told in the answer line, on cards and on paper, and taken off again."""

import pytest

from model.describe.scenario_io import starting_drives, to_link
from model.words.quantities import Display
from pages.parts import departures
from pages.parts.report import about
from tests.pages.in_app import opened_at, ran, scenario_of

METRIC = Display()
TOWN = starting_drives()["town"][2]
APART = {
    "lift_off_mps2": (TOWN.with_setting("lift_off_mps2", 0.5), "lift-off 0.5 m/s²"),
    "slowing_on_request": (TOWN.with_setting("slowing_on_request", True), "slows only on request"),
    "comes_to_rest": (TOWN.with_setting("comes_to_rest", True), "comes to rest without the brake pedal"),
    "looks_ahead": (TOWN.with_setting("looks_ahead", "late"), "slows down late"),
    "trailer_kg": (TOWN.with_setting("trailer_kg", 900.0), "towing 900 kg"),
    "leg_lift_off_mps2": (
        TOWN.with_leg(1, "lift_off_mps2", 0.0).with_leg(2, "lift_off_mps2", 1.5),
        "lift-off 0 m/s² on leg 2, 1.5 m/s² on leg 3",
    ),
    "leg_surface": (
        TOWN.with_leg(0, "surface", "snow").with_leg(2, "surface", "snow").with_leg(1, "surface", "ice"),
        "snow on legs 1 and 3, ice on leg 2",
    ),
}


def test_what_a_starting_drive_brings_is_ordinary_on_it():
    for _, _, start in starting_drives().values():
        assert departures.text(start, METRIC) == ""
    valley = starting_drives()["mountain-valley"][2]
    own = valley.with_leg(0, "stops", 9).with_setting("looks_ahead", "late")
    assert departures.text(own, METRIC) == "75 kg load, 620 m above sea level, slows down late"


@pytest.mark.parametrize("key", APART)
def test_what_departs_is_named_and_made_ordinary_again(key):
    scenario, told = APART[key]
    assert departures.by_key(scenario, METRIC) == {key: told}
    assert departures.as_usual(scenario, key) == TOWN


def test_a_strength_of_one_leg_leaves_the_drive_its_name_and_load():
    valley = starting_drives()["mountain-valley"][2]
    assert departures.text(valley.with_leg(0, "lift_off_mps2", 0.5), METRIC) == "lift-off 0.5 m/s² on leg 1"


def test_all_that_departs_stands_in_the_line_on_the_number_s_card_and_on_paper():
    scenario = TOWN.with_setting("trailer_kg", 900.0).with_setting("lift_off_mps2", 0.5)
    scenario = scenario.with_leg(1, "lift_off_mps2", 2.0).with_leg(0, "surface", "wet")
    told = departures.text(scenario, METRIC)
    assert told.count(",") == 3
    assert told in about(scenario, METRIC)
    for card in ("1", "2"):
        app = opened_at("show.py", to_link(scenario) | {"card": card})
        words = [one.value for one in app.caption] + [one.proto.body for one in app.get("html")]
        assert any(told in one.replace("\N{NO-BREAK SPACE}", " ") for one in words), card
    app = opened_at("lift_off.py", to_link(scenario))
    assert told in [one.proto.popover.label for one in app.get("popover")]
    ran(app.button(key="take-off-leg_lift_off_mps2").click().run())
    assert {leg.lift_off_mps2 for leg in scenario_of(app).legs} == {None}
