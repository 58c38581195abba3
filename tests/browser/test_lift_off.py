"""The page on lift-off in a real browser: the first screen, fingers, links, and what is set."""

import re

import pytest

from model.describe.scenario_io import starting_drives
from model.lift_off.advice import advise
from model.lift_off.curves import curves_of
from model.words.quantities import Display
from pages.parts import lift_off_words as words
from pages.parts.typography import NO_BREAK
from tests.browser.addresses import address, scenario_at
from tests.browser.looks import assert_large_enough, assert_on_first_screen, come_to_nothing, resize
from tests.browser.test_main_job import WHOLE
from tests.conftest import now_and_nightly

STARTS = {name: scenario for name, (_, _, scenario) in starting_drives().items()}
TOWN = STARTS["town"]
NOW = ["town", "mountain-valley"]
"""Drives seen in every run, a flat and a hilly one; the others nightly."""
HEADING = ".st-key-lift-answer h2"
STRENGTH = ".st-key-set-lift_off_mps2"
CAVEAT = ".st-key-lift-answer p strong"
ROAD = (".st-key-set-surface-part", ".st-key-entry-set-trailer_kg")
PICTURE = ".st-key-figure-whole-axis svg.marks"


@pytest.mark.parametrize("name", now_and_nightly(NOW, [name for name in STARTS if name not in NOW]))
def test_answer_settings_and_picture_fit_on_one_screen(open_page, name):
    page = open_page(address("/lift_off", STARTS[name]))
    page.locator(PICTURE).wait_for()
    assert page.locator("svg.marks").count() == 4
    for width, height in ((1024, 768), (1280, 800)):
        resize(page, width, height)
        parts = ("h1", ".st-key-strip", HEADING, CAVEAT, STRENGTH, ".st-key-set-prefers", PICTURE)
        assert_on_first_screen(page, (*parts, *(ROAD if width == 1280 else ())))


def test_what_opens_is_large_enough_for_a_finger(open_page, settled):
    page = open_page("/lift_off", width=820, height=1180, has_touch=True)
    page.get_by_text("More on how this car slows").tap()
    page.locator(".st-key-set-comes_to_rest").wait_for()
    for width in (820, 390):
        resize(settled(page), width, 844)
        assert_large_enough(page)
    # on a tablet held upright the hills' table stands beside their picture, whole
    resize(page, 820, 1180)
    tables = page.locator('[data-testid="stTable"] table')
    come_to_nothing(page, lambda: [cut for table in tables.all() for cut in table.evaluate(WHOLE)])


def test_a_deep_link_has_the_answer_of_the_model(open_page, expect):
    icy = TOWN.with_setting("surface", "ice").with_setting("prefers", "gentlest_ride")
    page = open_page(address("/lift_off", icy, from_kmh="120", to_kmh="80"))
    heading = words.heading(advise(curves_of(icy)).overall, Display())
    expect(page.locator(HEADING)).to_have_text(heading.replace(NO_BREAK, " "))
    expect(page.get_by_text("From 120 to 80 km/h, rolling takes")).to_be_visible()
    assert scenario_at(page) == icy
    assert "from_kmh=120" in page.url


def test_keys_move_the_slider_and_it_keeps_the_focus(open_page, expect):
    page = open_page("/lift_off")
    thumb = page.locator(f"{STRENGTH} [role='slider'], {STRENGTH} input").first
    thumb.focus()
    for strength in ("1.1", "1.2", "1.3"):
        page.keyboard.press("ArrowRight")
        expect(page.locator(STRENGTH)).to_contain_text(f"Yours: firm, {strength}")
    page.wait_for_url(re.compile(r"lift_off_mps2=1\.3"))
    assert scenario_at(page) == TOWN.with_setting("lift_off_mps2", 1.3)


def test_one_tap_sets_what_is_advised_and_a_reload_keeps_it(open_page, expect):
    page = open_page("/lift_off", has_touch=True)
    strength = advise(curves_of(TOWN)).overall.lift_off_mps2
    page.get_by_role("button", name="Set as advised").tap()
    expect(page.locator(STRENGTH)).to_contain_text(words.strength_text(strength, Display()).replace(NO_BREAK, " "))
    page.wait_for_url(re.compile(f"lift_off_mps2={strength:g}"))
    page.reload()
    expect(page.get_by_role("button", name="Set as advised")).to_be_disabled()


def test_the_speed_on_the_hill_redraws_only_its_part(open_page, expect):
    page = open_page("/lift_off")
    page.locator(".st-key-set-hill-speed").get_by_text("120", exact=True).click()
    expect(page.get_by_text("What just keeps 120 km/h")).to_be_visible()
    page.wait_for_url(re.compile("hill_kmh=120"))
    assert scenario_at(page) == TOWN
