"""Every page for everybody: for screen readers, fingers and telephones, in large text, light and dark, and offline.

Opening a page also fails where it asks anything of another machine, and every page is opened here: see `open_page`.
"""

from pathlib import Path

import pytest

from model.limits.limit_settings import LIMIT_PARTS
from pages.parts.theme import LIGHT
from tests.browser.looks import (
    RULES,
    assert_headings_in_order,
    assert_large_enough,
    assert_on_first_screen,
    faults,
    resize,
)
from tests.conftest import now_and_nightly

PAGES = Path(__file__).parents[2] / "pages"
PANELS = ("speed", "flow", "quadrants", "who", "motor", "discs")
STRIP = ".st-key-strip"
ANSWER = (STRIP, ".st-key-panel h2")
PICTURE = '[class*="st-key-figure-panel-"] [data-testid="stVegaLiteChart"]'
FIRST_SCREEN = {
    "/": (STRIP, ".st-key-drives-page", ".st-key-answer h2", ".st-key-facts", ".st-key-rows"),
    "/lift_off": (STRIP, ".st-key-lift-answer h2", ".st-key-lift-answer p strong", ".st-key-set-lift_off_mps2",
                  ".st-key-set-prefers"),
    **{
        f"/winter_and_limits?part={part}&ambient_c=-7&surface=snow": (*ANSWER, ".st-key-choose-part", ".st-key-glance")
        for part in LIMIT_PARTS
    },
    **{
        f"/how_it_works?panel={panel}": (PICTURE, '.st-key-panel h2, .st-key-panel [data-testid="stSlider"]')
        for panel in PANELS
    },
    "/check_a_claim": (".st-key-claim-answer h2",),
    **{f"/show?card={card}": (".st-key-card", ".st-key-show-foot") for card in range(1, 7)},
    "/compare?differs=car&b=large-suv&c=van": (STRIP, "h2"),
    "/own_road": (".st-key-answer-line", ".st-key-recording-file"),
    "/take_away": (".st-key-take-print", ".st-key-sheets .numbers", ".st-key-sheets .strip"),
    "/sources": (".st-key-answer-line", ".st-key-overview", ".st-key-fold-method"),
}  # fmt: skip
"""Every page, and what beside its first heading is seen of it on a tablet without scrolling."""
NOW_OF_MANY = ("panel=flow", "part=grip", "card=2", "card=5")
"""Of the panels, parts and cards, which are much alike, those opened in every run; all others nightly."""
LATER = [
    path for path in FIRST_SCREEN
    if any(many in path for many in ("panel=", "part=", "card=")) and not any(now in path for now in NOW_OF_MANY)
]  # fmt: skip
DARK_GROUND = "rgb(29, 26, 23)"


def test_every_page_is_among_those_opened_here():
    files = {path.stem for path in PAGES.glob("[a-z]*.py")} - {"entrypoint"}
    assert {path.split("?")[0].strip("/") or "your_drive" for path in FIRST_SCREEN} == files


@pytest.mark.parametrize("path", now_and_nightly([path for path in FIRST_SCREEN if path not in LATER], LATER))
def test_a_page_is_for_everybody(open_page, settled, expect, path):
    page = open_page(path, width=1280, height=800)
    page.locator("h1").wait_for()
    expect(page.locator('[data-testid="stVegaLiteChart"]:not(:has(svg.marks))')).to_have_count(0)

    assert page.evaluate("document.documentElement.lang") == "en"
    assert_headings_in_order(page)
    pictures = page.get_by_test_id("stVegaLiteChart").evaluate_all("all => all.map(one => one.ariaLabel ?? '')")
    assert all(len(text) > 30 for text in pictures)
    assert faults(page, runOnly=RULES) == []
    page.emulate_media(color_scheme="dark")
    expect(page.get_by_test_id("stApp")).to_have_css("background-color", DARK_GROUND)
    # pictures follow the system by themselves
    expect(page.locator(f'svg.marks [fill="{LIGHT.ink}" i], svg.marks [fill="{LIGHT.quiet}" i]')).to_have_count(0)
    assert faults(settled(page), runOnly=["color-contrast"]) == []

    resize(page, 1024, 768)
    assert_on_first_screen(page, ("h1", *FIRST_SCREEN[path]))
    assert_large_enough(page)
    resize(page, 390, 844)
    assert_large_enough(page)
    # 200 % as browsers zoom, then the text alone
    resize(page, 640, 400)
    page.evaluate("document.documentElement.style.fontSize = '36px'")
    resize(page, 1280, 800)
