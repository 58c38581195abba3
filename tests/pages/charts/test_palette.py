"""The look that all charts share; contrast and the page's own colours are tested in `tests/test_theme.py`."""

from dataclasses import asdict

import pytest

from pages.parts.theme import DARK, LIGHT, area, dressed


@pytest.mark.parametrize("colours", [LIGHT, DARK], ids=["light", "dark"])
def test_one_meaning_has_one_colour(colours):
    assert len(set(asdict(colours).values())) == len(asdict(colours))


def test_back_and_friction_are_the_agreed_colours():
    assert (LIGHT.back, LIGHT.friction) == ("#0072B2", "#D55E00")


def test_a_chart_takes_its_places_width_and_keeps_its_height():
    spec = dressed([], {}, 140, False)
    assert spec["width"] == "container" and spec["height"] == 140
    assert spec["autosize"]["type"] == "fit-x"
    assert spec["config"]["axis"]["labelFontSize"] >= 13 and spec["config"]["text"]["fontSize"] >= 13


def test_a_filled_line_is_not_thinned_by_transparency():
    assert area("#111111", "#222222")["opacity"] == 1
