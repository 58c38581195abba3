"""What may be asked of a claim: numbers, relations and inputs, and what is refused."""

import numpy as np
import pytest

from model.claims.inputs import INPUTS, Open, narrowed
from model.claims.questions import question, question_from_json
from model.describe.fields import InputError
from tests.refused import refuses, told

QUICK = "two-megawatts"


def test_bounds_of_each_relation():
    assert question(QUICK).bounds == (2.0, np.inf)
    assert question(QUICK, {"relation": "at_most"}).bounds == (-np.inf, 2.0)
    assert question(QUICK, {"number": "10", "relation": "about"}).bounds == (9.0, 11.0)
    assert question(QUICK, {"number": "10", "relation": "on_average"}).bounds == (9.0, 11.0)
    assert question(QUICK, {"number": "10", "relation": "up_to"}).bounds == (-np.inf, 10.0)
    assert question(QUICK, {"number": "10", "relation": "up_to"}).top_bounds == (9.0, 11.0)
    assert question(QUICK, {"number": "11..22"}).bounds == (11.0, 22.0)
    assert question("range-gain-on-dynamometer", {"number": "20"}).bounds == (18.0, 22.0)


def test_how_inputs_may_be_said():
    speed, whole = INPUTS["speed_kmh"], Open((100.0, 110.0, 120.0, 130.0))
    assert narrowed(speed, whole, "105..125").values == (110.0, 120.0)
    assert narrowed(speed, whole, "101..102").values == (101.0, 102.0)
    assert narrowed(speed, whole, "90").values == (90.0,) and narrowed(speed, whole, "open") is whole
    band = Open((-10.0, 15.0, 30.0), band=True)
    assert narrowed(INPUTS["ambient_c"], band, "-20..0") == Open((-20.0, 0.0, 0.0), band=True)
    assert narrowed(INPUTS["brake_pedal"], Open(("blended", "friction")), "friction").values == ("friction",)


@pytest.mark.parametrize(
    "claim_id, settings, sentence",
    [
        ("40-percent", {}, "claim: “40-percent” is not one of range-gain-in-town"),
        (QUICK, {"soc_start": "0.5"}, "“soc_start” is not a known setting"),
        ("range-gain-in-town", {"brake_pedel": "blended"}, "the nearest is brake_pedal"),
        (QUICK, {"number": "two"}, "number (as published): “two” is neither a number nor a range such as 11..22."),
        (QUICK, {"number": "3..2"}, "“3..2” is neither a number nor a range"),
        (QUICK, {"number": "nan"}, "“nan” is neither a number nor a range"),
        (QUICK, {"relation": "over"}, "relation (claimed as): “over” cannot be used, at_least, about, at_most, up_to"),
        ("range-lost-without", {"denominator": "recovered,range_lost"}, "a share of one thing at a time"),
        ("range-lost-without", {"denominator": "open"}, "a share of one thing at a time"),
        ("one-pedal-saves", {"strong_mps2": "0.6"}, "gentle lift-off strength): 0.7 m/s² is not below the strong one"),
        (QUICK, {"payload_kg": "30..20"}, "payload_kg (load): “30..20” runs downwards"),
        (QUICK, {"car": "coupe"}, "car (car class): “coupe” cannot be used"),
        (QUICK, {"car": "van..pickup"}, "car (car class): “van..pickup” cannot be used"),
        (QUICK, {"payload_kg": "9000"}, "payload_kg (load): 9000 kg cannot be used, 0 to 1500 kg can."),
    ],
)
def test_refusals(claim_id, settings, sentence):
    with pytest.raises(InputError) as refused:
        question(claim_id, settings)
    assert sentence in told(refused.value)


def test_a_file_that_is_no_answer_is_refused():
    for data in ([], {"id": QUICK, "settings": 3}):
        with refuses("holds no object with an id and settings"):
            question_from_json(data)
