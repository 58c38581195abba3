"""Inputs of claims in words: every choice, and every condition as a noun."""

import pytest

from model.claims.inputs import INPUTS, Extent
from model.words.claim_inputs import NOUNS, WHETHER, condition, part_words, value_words
from model.words.quantities import Display
from tests.model.words.declared import declared, options_of

METRIC, US = Display(), Display(us=True)


@pytest.mark.parametrize("key", [key for key, field in INPUTS.items() if field.kind == "choice"])
def test_every_choice_has_words_of_its_own(key):
    field = INPUTS[key]
    words = {value_words(field, choice, METRIC) for choice in field.choices}
    # what a message does not name would be told as its last option
    assert len(words) == len(field.choices) and not any("_" in text for text in words)


def test_the_nouns_are_those_of_the_message():
    kinds = {name: declared()[name].kinds["input"] for name in ("claim-condition", "claim-condition-whether")}
    assert options_of(kinds["claim-condition"]) == NOUNS and options_of(kinds["claim-condition-whether"]) == WHETHER
    assert set(NOUNS) | set(WHETHER) <= set(INPUTS)


def test_conditions_read_as_nouns_in_the_readers_units():
    said = {
        ("cycle", Extent(("us06",), all_but=True)): "any drive but US06",
        ("surface", Extent(("ice", "snow"), all_but=True)): "any road that is not icy or snow-covered",
        ("cabin", Extent((False,))): "no heating or cooling",
        ("cabin", Extent((True, False))): "cabin heating and cooling: yes or no",
        ("ambient_c", Extent((-7.0, 0.0), stretch=True)): "−7 to 0 °C outside",
        ("altitude_m", Extent((500.0,))): "the height above sea level at 500 m",
        ("driven_axle", Extent(("rear", "all"))): "driven wheels: rear or all",
        ("motor_factor", Extent((1.5, 2.0), stretch=True)): "1.5 to 2 times the power",
    }
    assert {given: condition(INPUTS[given[0]], given[1], METRIC) for given in said} == said
    assert condition(INPUTS["ambient_c"], Extent((0.0,)), US) == "32 °F outside"


def test_ends_that_read_alike_are_one_number_and_a_unit_may_stand_elsewhere():
    field = INPUTS["speed_kmh"]
    assert part_words(field, Extent((50.1, 50.2), stretch=True), METRIC) == "50 km/h"
    assert part_words(field, Extent((50.0, 80.0), stretch=True), METRIC, unit=False) == "50 to 80"
