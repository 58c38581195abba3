"""Widgets made from fields: units in and out, steps, refusals."""

import pytest

from model.describe.scenario import CONDITION_FIELDS, LEG_FIELDS, SETTINGS, Scenario
from model.words.entries import held_value, labelled, shown_value
from model.words.quantities import Display
from model.words.refusals import refused_entry
from pages.parts.controls import step_of, typed_number, typed_text, value_in, widget_key

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


@pytest.mark.parametrize(
    ("value", "text"),
    [(48.0, "48"), (0.009, "0.009"), (29.83, "29.83"), (-2.5, "−2.5"), (None, ""), (5e-05, "0.00005")],
)
def test_an_entry_shows_every_digit_and_is_read_back(value, text):
    assert typed_text(value) == text
    assert typed_number(SETTINGS["wind_kmh"], text, METRIC) == value


def test_a_unit_may_stand_behind_a_number_and_both_marks_are_read():
    distance, temperature = LEG_FIELDS["distance_km"], CONDITION_FIELDS["ambient_c"]
    assert typed_number(distance, "2,3 km", METRIC) == 2.3
    assert typed_number(temperature, "−2,5°C", METRIC) == -2.5
    assert typed_number(CONDITION_FIELDS["soc_start"], "80 %", METRIC) == 80
    assert typed_number(SETTINGS["mass_kg"], "1,850", METRIC) == 1850
    with pytest.raises(ValueError):
        typed_number(distance, "2 mi", METRIC)


@pytest.mark.parametrize(
    ("field", "typed", "said"),
    [
        (LEG_FIELDS["distance_km"], "abc", "Distance: “abc” cannot be used, 0.05 to 1000 km can."),
        (CONDITION_FIELDS["altitude_m"], "1,250", "“1,250” can be read as 1.25 or as 1250;"),
        (LEG_FIELDS["stops"], "2.5", "Stops: 2.5 cannot be used, whole numbers from 0 to 500 can."),
        (LEG_FIELDS["stops"], "501", "Stops: 501 cannot be used, whole numbers from 0 to 500 can."),
        (CONDITION_FIELDS["ambient_c"], "−99,5", "Outside temperature: −99.5 °C cannot be used, −40 to 50 °C can."),
    ],
)
def test_what_is_typed_and_cannot_be_used_is_refused_in_a_sentence(field, typed, said):
    assert said in refused_entry(field, typed, METRIC)


def test_labels_carry_the_unit_shown():
    speed = LEG_FIELDS["speed_kmh"]
    assert labelled(speed, METRIC) == "Typical speed, km/h"
    assert labelled(speed, US) == "Typical speed, mph"
    assert labelled(CONDITION_FIELDS["soc_start"], METRIC) == "Charge at the start, %"
    assert labelled(SETTINGS["rolling_coefficient"], METRIC) == "Rolling resistance coefficient"




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


def test_a_steepness_below_zero_is_shown_the_way_down():
    assert "choose Down" in refused_entry(LEG_FIELDS["grade_pct"], "−5", METRIC)
    assert "choose Down" not in refused_entry(LEG_FIELDS["grade_pct"], "99", METRIC)
    assert "choose Down" not in refused_entry(LEG_FIELDS["distance_km"], "−5", METRIC)
