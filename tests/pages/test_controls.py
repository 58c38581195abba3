"""Widgets made from fields: units in and out, steps, refusals."""

import pytest

from model.scenario import CONDITION_FIELDS, LEG_FIELDS, SETTINGS, Scenario
from pages.parts.controls import decimals, label_of, step_of, value_in, widget_key
from pages.parts.display import Display, held_value, shown_value

METRIC, US = Display(), Display(us=True)
NUMBERS = [field for field in (SETTINGS | LEG_FIELDS).values() if field.kind == "number"]


@pytest.mark.parametrize("display", [METRIC, US], ids=["metric", "us"])
@pytest.mark.parametrize("field", NUMBERS, ids=lambda field: field.key)
def test_an_entry_left_alone_is_held_as_it_was(field, display):
    for value in (*field.usual, field.minimum, field.maximum):
        shown = shown_value(field, value, display)
        assert held_value(field, shown, display) == pytest.approx(value, rel=1e-3, abs=0.06)


@pytest.mark.parametrize("field", NUMBERS, ids=lambda field: field.key)
def test_steps_are_round_and_small_beside_what_is_usual(field):
    step = step_of(field, METRIC)
    low, high = (shown_value(field, end, METRIC) for end in field.usual)
    assert 0 < step <= (high - low) / 5
    assert decimals(None, step) <= 6


@pytest.mark.parametrize(
    ("value", "step", "expected"), [(48.0, 5.0, 0), (0.009, 0.0005, 4), (29.83, 5.0, 2), (None, 0.5, 1)]
)
def test_decimals_hide_no_digit(value, step, expected):
    places = decimals(value, step)
    assert value is None or round(value, places) == value
    assert round(step, places) == step
    assert places == expected


def test_labels_carry_the_unit_shown():
    speed = LEG_FIELDS["speed_kmh"]
    assert label_of(speed, METRIC) == "Typical speed, km/h"
    assert label_of(speed, US) == "Typical speed, mph"
    assert label_of(CONDITION_FIELDS["soc_start"], METRIC) == "Charge at the start, %"
    assert label_of(SETTINGS["rolling_coefficient"], METRIC) == "Rolling resistance coefficient"




def test_a_value_is_found_wherever_the_scenario_holds_it():
    scenario = Scenario().with_setting("mass_kg", 1234.0).with_setting("winter_days", 12).with_leg(0, "stops", 9)
    assert value_in(scenario, SETTINGS["mass_kg"]) == 1234
    assert value_in(scenario, SETTINGS["winter_days"]) == 12
    assert value_in(scenario, SETTINGS["lift_off_mps2"]) == 1.0
    assert value_in(scenario, LEG_FIELDS["stops"], 0) == 9
    assert value_in(scenario, SETTINGS["usable_kwh"]) > 0


def test_every_widget_has_its_own_key():
    keys = [widget_key(field) for field in SETTINGS.values()]
    keys += [widget_key(field, leg) for field in LEG_FIELDS.values() for leg in range(8)]
    assert len(keys) == len(set(keys))
