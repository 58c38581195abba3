"""The colours of `.streamlit/config.toml`: readable on their ground, and the same in pages and charts."""

import ast
import re
import tomllib
from pathlib import Path

import pytest

from pages.parts.theme import DARK, LIGHT, on_paper, palette

ROOT = Path(__file__).parent.parent
CONFIG = ROOT / ".streamlit" / "config.toml"
THEME = tomllib.loads(CONFIG.read_text(encoding="utf-8"))["theme"]
WORDS = ("textColor", "linkColor", "codeTextColor")
HUES = ("blue", "orange", "violet", "gray", "green", "red")
CAPTION_OPACITY = 0.6
"""How Streamlit fades the text colour for captions."""


def channels(colour: str) -> list[float]:
    return [int(colour[place : place + 2], 16) / 255 for place in (1, 3, 5)]


def luminance(rgb: list[float]) -> float:
    """Relative luminance, WCAG 2.2."""
    red, green, blue = (c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in rgb)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: list[float], other: list[float]) -> float:
    """Contrast ratio, WCAG 2.2."""
    darker, lighter = sorted((luminance(one), luminance(other)))
    return (lighter + 0.05) / (darker + 0.05)


@pytest.fixture(params=["light", "dark"])
def theme(request):
    return THEME[request.param]


@pytest.mark.parametrize("ground", ["backgroundColor", "secondaryBackgroundColor"])
def test_words_and_marks_stand_out_from_both_grounds(theme, ground):
    under = channels(theme[ground])
    for name in (*WORDS, *(f"{hue}TextColor" for hue in HUES)):
        assert contrast(channels(theme[name]), under) >= 4.5, name
    for name in ("primaryColor", "borderColor", *(f"{hue}Color" for hue in HUES)):
        assert contrast(channels(theme[name]), under) >= 3, name
    for colour in theme["chartCategoricalColors"]:
        assert contrast(channels(colour), under) >= 3, colour


def test_captions_and_buttons_can_be_read(theme):
    ground = channels(theme["backgroundColor"])
    faded = [
        CAPTION_OPACITY * ink + (1 - CAPTION_OPACITY) * paper
        for ink, paper in zip(channels(theme["textColor"]), ground, strict=True)
    ]
    assert contrast(faded, ground) >= 4.5
    assert contrast(channels("#ffffff"), channels(theme["primaryColor"])) >= 4.5, "buttons carry white text"


@pytest.mark.parametrize("name", ["light", "dark"])
def test_charts_use_the_colours_of_the_pages(name):
    theme, chart = THEME[name], palette(dark=name == "dark")
    assert theme["backgroundColor"] == chart.ground
    assert theme["textColor"] == chart.ink
    meanings = [chart.back, chart.friction, chart.road, chart.losses, chart.aboard, chart.ink]
    assert theme["chartCategoricalColors"] == meanings
    assert [theme[f"{hue}Color"] for hue in ("blue", "orange", "gray", "violet", "green")] == meanings[:5]


def test_no_font_comes_from_elsewhere():
    assert THEME["font"] == "sans-serif"
    assert THEME["headingFont"] == "serif"
    assert "fontFaces" not in THEME


def test_no_colour_is_named_that_only_one_ground_has():
    """What is black or pale on paper is white or nearly black on the dark ground."""
    named = re.compile(r"\b(black|white|pale|(darker|lighter) the|the (dark|light)er|dark (blue|grey))\b", re.I)
    found = []
    for file in (ROOT / "pages" / "parts").glob("*_words.py"):
        tree = ast.parse(file.read_text(encoding="utf-8"))
        told = {id(node.value) for node in ast.walk(tree) if isinstance(node, ast.Expr)}
        texts = [node for node in ast.walk(tree) if isinstance(node, ast.Constant) and isinstance(node.value, str)]
        found += [f"{file.name}: {node.value}" for node in texts if id(node) not in told and named.search(node.value)]
    for file in (ROOT / "assets" / "words" / "en").glob("*.ftl"):
        found += re.findall(r"\bthe (?:darker|lighter)\b.*", file.read_text(encoding="utf-8"))
    assert found == []


def test_every_colour_of_a_dark_picture_prints_as_on_the_light_ground():
    style = on_paper()
    for name, dark in vars(DARK).items():
        assert f'svg [fill="{dark}" i] {{ fill: {getattr(LIGHT, name)}; }}' in style, name
        assert f'svg [stroke="{dark}" i] {{ stroke: {getattr(LIGHT, name)}; }}' in style, name
