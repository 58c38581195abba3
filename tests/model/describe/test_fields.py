"""The table of fields: every field, what it takes, what it refuses and in which words."""

import math

import pytest

from model.describe.fields import Field, InputError, find
from model.describe.scenario import LEG_FIELDS, SETTINGS
from model.words.entries import help_of, name_of
from model.words.quantities import Display
from tests.refused import refuses, told

ALL_FIELDS = SETTINGS | LEG_FIELDS
NUMBERS = [field for field in ALL_FIELDS.values() if field.kind in ("number", "count")]


@pytest.mark.parametrize("field", ALL_FIELDS.values(), ids=lambda field: field.key)
def test_every_field_is_explained_and_its_default_is_usual(field):
    assert name_of(field, Display()) and help_of(field, Display()).endswith(".")
    assert field.kind in ("number", "count", "choice", "yes_no", "text")
    if field.default is not None:
        assert field.parse(field.default) == field.default
        assert field.is_usual(field.default)


@pytest.mark.parametrize("field", NUMBERS, ids=lambda field: field.key)
def test_every_number_is_bounded_and_refuses_what_is_none(field):
    assert -math.inf < field.minimum <= field.usual[0] < field.usual[1] <= field.maximum < math.inf
    assert field.parse(field.minimum) == field.minimum and field.parse(field.maximum) == field.maximum
    for given in (field.minimum - 1, field.maximum + 1, math.nan, math.inf, "five", [], {}, True, 10**400):
        with pytest.raises(InputError) as refused:
            field.parse(given)
        assert told(refused.value).startswith(f"{field.key} (") and " cannot be used, " in told(refused.value)


MASS = Field("mass_kg", "number", "kg", "car-mass_kg", 500, 4500, (900, 3000))
STOPS = Field("stops", "count", "", "leg-stops", 0, 500, (0, 60), default=4)
PEDAL = Field("brake_pedal", "choice", "", "car-brake_pedal", choices=("blended", "friction"))
CABIN = Field("cabin", "yes_no", "", "conditions-cabin")
NAME = Field("name", "text", "", "car-name")
BATTERY_C = Field("battery_temp_c", "number", "°C", "conditions-battery_temp_c", -40, 60, (-15, 40), optional=True)


def test_refusal_names_the_field_what_was_given_and_what_is_allowed():
    with pytest.raises(InputError) as refused:
        MASS.parse(5000)
    assert told(refused.value) == "mass_kg (mass with driver): 5000 kg cannot be used, 500 to 4500 kg can."


@pytest.mark.parametrize(
    "field, given, value",
    [
        (MASS, "1800", 1800.0),
        (MASS, "1,800", 1800.0),
        (MASS, "1800,5", 1800.5),
        (BATTERY_C, "−2,5", -2.5),
        (STOPS, "7", 7),
        (STOPS, 7.0, 7),
        (PEDAL, "friction", "friction"),
        (CABIN, "on", True),
        (CABIN, "No", False),
        (CABIN, True, True),
        (NAME, "my car", "my car"),
        (BATTERY_C, "", None),
        (BATTERY_C, None, None),
        (BATTERY_C, "-5", -5.0),
    ],
)
def test_values_are_read_in_their_own_type(field, given, value):
    assert field.parse(given) == value
    assert type(field.parse(given)) is type(value)


@pytest.mark.parametrize(
    "field, given", [(STOPS, 2.5), (PEDAL, "none"), (CABIN, "maybe"), (NAME, "x" * 81), (MASS, "")]
)
def test_what_is_no_value_is_refused(field, given):
    with pytest.raises(InputError):
        field.parse(given)


@pytest.mark.parametrize(
    "field, given, value, said",
    [
        (MASS, "1800", 1800.0, ""),
        (MASS, "9999", 4500.0, "It was set to 4500 kg."),
        (MASS, "-1e999", 500.0, "It was set to 500 kg."),
        (MASS, "1,5", 500.0, "It was set to 500 kg."),
        (MASS, "-inf", None, "It was left as usual."),
        (STOPS, "2.6", 3, "It was set to 3."),
        (STOPS, "900", 500, "It was set to 500."),
        (MASS, "nan", None, "It was left as usual."),
        (MASS, "heavy", None, "It was left as usual."),
        (PEDAL, "none", None, "It was left as usual."),
    ],
)
def test_out_of_bounds_is_clamped_and_said(field, given, value, said):
    clamped, notice = field.clamp(given)
    assert clamped == value
    sentence = told(notice) if notice else ""
    assert sentence.endswith(said) and bool(sentence) == bool(said)
    assert notice is None or sentence.startswith(field.key)


@pytest.mark.parametrize("value", [0.1, 1e-5, 123456.789, 1 / 3, 4500.0, 12.0])
def test_numbers_are_read_back_from_their_text(value):
    field = Field("x", "number", "", "car-name", 0, 1e6)
    assert field.parse(field.text(value)) == value


def test_whole_numbers_stand_without_a_point():
    assert MASS.text(1800.0) == "1800"


def test_an_unusual_value_is_allowed_and_told_apart():
    assert MASS.is_usual(1800) and not MASS.is_usual(3500) and MASS.parse(3500) == 3500
    assert BATTERY_C.is_usual(None)


def test_a_number_that_can_be_read_in_two_ways_is_refused_with_both():
    distance = Field("distance_km", "number", "km", "leg-distance_km", 0.05, 2000, (0.5, 300))
    with refuses(r"“1,250” can be read as 1\.25 or as 1250; leave out the comma"):
        distance.parse("1,250")


def test_a_number_out_of_bounds_is_not_said_to_be_none():
    with pytest.raises(InputError) as refused:
        STOPS.parse("501")
    assert told(refused.value) == "stops (stops): 501 cannot be used, whole numbers from 0 to 500 can."


def test_an_unknown_key_suggests_the_near_one():
    with refuses("“lift_of_mps2” is not a known setting; the nearest is lift_off_mps2"):
        find(SETTINGS, "lift_of_mps2")
    with refuses(r"^“qqqq” is not a known setting\.$"):
        find(SETTINGS, "qqqq")
