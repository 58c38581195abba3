"""Lift-off as steps: what is advised is in ink, and over each step stands what asks for it."""

from dataclasses import replace

import pytest

from model.lift_off.advice import OnRoad
from model.words.quantities import Display
from pages.parts.charts.lift_off_steps import STEPS, lift_off_steps
from tests.pages.charts.specs import assert_valid, tables
from tests.pages.made_reports import TOWN, taken


@pytest.fixture(scope="module")
def advice():
    return taken(TOWN).advice


def over(spec, word):
    """What stands over a step."""
    words = tables(spec)["words"]
    middle = words[words["text"] == word]["x0"].iloc[0]
    return " ".join(words[(words["x0"] == middle) & (words["text"] != word)]["text"])


def test_the_advised_step_alone_is_in_ink_and_steps_rise(advice):
    spec = lift_off_steps(advice, 0.5, Display())
    boxes = tables(spec)["boxes"]
    assert boxes["meaning"].tolist() == ["ink" if word == advice.word else "road" for word in STEPS]
    assert (boxes["y1"] - boxes["y0"]).is_monotonic_increasing
    assert_valid(spec)


def test_advice_snow_and_what_is_set_stand_over_their_steps(advice):
    there = (OnRoad("snow", 0.4, "gentle", 0.7), OnRoad("ice", 0.0, "rolling on", 0.2))
    spec = lift_off_steps(replace(advice, word="strong", slippery=there), 1.0, Display())
    told = [over(spec, word) for word in STEPS]
    assert told == ["ice", "packed snow", "set now", "advised here"]
