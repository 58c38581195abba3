"""The slippery road in words: what is said of the margin follows from the figures that stand beside it."""

import re
from dataclasses import replace
from functools import cache
from itertools import product

import pytest

from model.describe.scenario import SURFACES
from model.describe.scenario_io import starting_drives
from model.lift_off.advice import advise
from model.lift_off.curves import curves_of
from model.limits.limit_settings import LimitSettings
from model.limits.slippery_road import slippery_road
from model.words.quantities import Display
from pages.parts import grip_words
from pages.parts.lift_off_words import slippery_text

METRIC = Display()
TOWN = starting_drives()["town"][2]
STRENGTHS = (0.0, 0.3, 0.7, 1.0, 1.5, 2.5, 3.5)
FIGURES = re.compile(
    r"for a grip of (\d\.\d\d) of the weight they carry; the road gives (\d\.\d\d)(?: to (\d\.\d\d))?"
)
ROADS = {"dry": "a dry road", "wet": "a wet road", "standing-water": "standing water", "snow": "packed snow",
         "ice": "ice", "glazed-ice": "glazed ice"}  # fmt: skip
"""How a title names each road."""


def told(surface, strength, axle="front", bend="straight on", **conditions):
    scenario = TOWN.with_setting("surface", surface).with_setting("lift_off_mps2", strength)
    scenario = scenario.with_setting("driven_axle", axle)
    scenario = replace(scenario, conditions=replace(scenario.conditions, **conditions))
    settings = LimitSettings(bend=bend)
    found = slippery_road(scenario, settings)
    return found, grip_words.grip(found, advised_on(surface, axle), scenario, settings, METRIC)


@cache
def advised_on(surface, axle):
    """The advice, which does not ask what is set now."""
    return advise(curves_of(TOWN.with_setting("surface", surface).with_setting("driven_axle", axle))).overall


@pytest.mark.parametrize("surface", SURFACES)
def test_the_words_on_the_margin_follow_from_the_figures_beside_them(surface):
    for strength, axle, bend in product(STRENGTHS, ("front", "rear", "all"), ("straight on", "bend", "tight bend")):
        _, said = told(surface, strength, axle, bend)
        asked, least, most = (float(figure) for figure in FIGURES.search(said.more).groups())
        if asked > most:
            assert "no margin" in said.sentence, said.sentence
            assert said.do[0].startswith(("**Do not let the foot come up all at once", "**Go slower into this bend"))
        elif most > asked > least:
            assert "may ask for more grip than there is: the margin is small" in said.sentence
        elif least > asked > 0.5 * least + 0.01:
            assert "the margin is moderate" in said.sentence
        if "at most half" in said.sentence:
            assert 2 * asked <= least + 0.015, said.sentence
        if "no margin" in said.sentence:
            assert asked >= most, said.sentence


def test_on_glazed_ice_the_wheels_slide_before_slip_control_steps_in():
    found, said = told("glazed-ice", 1.0)
    assert "there is no margin, and the front wheels would slide before slip control steps in" in said.sentence
    assert found.check["slip_when_control_acts"]["high"] > 0
    assert grip_words.axles_words(found.check, METRIC)[0] == "What is asked reaches beyond all there is"


def test_a_grip_that_was_stated_is_there_or_is_not():
    _, said = told("snow", 2.0, grip_level=-0.5)
    assert "there is no margin" in said.sentence


@pytest.mark.parametrize("strength", STRENGTHS)
def test_the_title_over_all_roads_names_each_by_its_margin(strength):
    found, _ = told("dry", strength)
    title = grip_words.roads_words(found, METRIC)[0]
    none, _, small = title.partition("may be")
    for surface, margin in zip(found.by_surface["surface"], found.by_surface["margin"], strict=True):
        where = {"none": none, "small": small}.get(margin, "")
        assert not where or re.search(rf"\b{ROADS[surface]}\b|these roads", where), title


@pytest.mark.parametrize("strength", STRENGTHS)
def test_the_sentence_says_what_the_road_holds_and_the_picture_the_same(strength):
    for surface in SURFACES:
        found, said = told(surface, strength)
        least = found.check["largest_lift_off_mps2"]["low"]
        most = re.search(r"may hold only ([\d.]+) m/s²", said.sentence)
        assert (most is not None) == (strength > least >= 0.1), said.sentence
        if most:
            assert float(most[1]) <= least < float(most[1]) + 0.1
            assert f"{ROADS[surface].removeprefix('a ')}, " in grip_words.roads_numbers(found, METRIC)
            assert f"may hold only {most[1]} m/s²" in grip_words.roads_numbers(found, METRIC)
        assert "stability control is not modelled" in said.caution


@pytest.mark.parametrize("bend", ["straight on", "tight bend"])
def test_what_is_advised_goes_with_what_the_road_holds_and_is_never_more(bend):
    for surface in SURFACES[2:]:
        found, said = told(surface, 3.0, bend=bend)
        advice, least = advised_on(surface, "front"), found.check["largest_lift_off_mps2"]["low"]
        advised = re.search(r"advised on this drive: .*?([\d.]+)\sm/s²", said.sentence)
        assert (advised is not None) == (0.1 <= least >= advice.lift_off_mps2), said.sentence
        assert advised is None or float(advised[1]) == advice.lift_off_mps2
        told_to_set = [line for line in said.do if slippery_text(advice, METRIC) in line]
        assert len(told_to_set) == 1 and "Experts disagree" in told_to_set[0]


def test_snow_and_ice_hold_the_same_wherever_it_is_told():
    """The advice and the picture of all roads had been two numbers for what to set on snow."""
    found, _ = told("dry", 1.0)
    least = dict(zip(found.by_surface["surface"], found.by_surface["low"], strict=True))
    for road in advised_on("dry", "front").slippery:
        assert road.holds_mps2 == pytest.approx(least[road.road], rel=1e-9)


def test_the_largest_lift_off_is_one_figure_and_never_rounded_up():
    """It had been 0.2 as a fact and 0.1 in the advice, of 0.17."""
    for surface in SURFACES[2:]:
        found, said = told(surface, 3.0, "rear")
        largest = found.check["largest_lift_off_mps2"]["low"]
        fact = next(value for name, value, _ in said.facts if name == "Largest lift-off")
        least = float(re.match(r"none|[\d.]+", fact).group().replace("none", "0"))
        assert least <= largest < least + 0.1 + 1e-9
        held = [float(held) for held in re.findall(r"may hold only ([\d.]+)", said.sentence)]
        assert held == [least] * (least > 0)
