"""The page on lift-off in a real browser: the first screen, fingers, links, and what is set."""

import re
from itertools import pairwise
from urllib.parse import parse_qs, urlencode, urlsplit

import pytest

from model.lift_off_advice import advise
from model.lift_off_curves import curves_of
from model.scenario import Scenario
from model.scenario_io import from_link, starting_drives, to_link
from pages.parts import lift_off_words as words
from tests.browser.test_targets import LEAST_PX, SIZES, TARGETS

STARTS = {name: scenario for name, (_, _, scenario) in starting_drives().items()}
TOWN = STARTS["town"]
HEADING = ".st-key-lift-answer h2"
STRENGTH = ".st-key-set-lift_off_mps2"
PICTURE = ".st-key-figure-whole-axis svg.marks"


@pytest.fixture
def expect(chromium):
    from playwright.sync_api import expect

    return expect


def address(scenario: Scenario, **more: str) -> str:
    return f"/lift_off?{urlencode(to_link(scenario) | more)}"


def scenario_at(page) -> Scenario:
    return from_link({key: values[0] for key, values in parse_qs(urlsplit(page.url).query).items()}, Scenario())[0]


@pytest.mark.parametrize(("width", "height"), [(1024, 768), (1280, 800)])
@pytest.mark.parametrize("name", STARTS)
def test_answer_settings_and_picture_fit_on_one_screen(open_page, name, width, height):
    page = open_page(address(STARTS[name]), width=width, height=height)
    page.locator(PICTURE).wait_for()
    for part in ("h1", ".st-key-strip", HEADING, STRENGTH, ".st-key-set-prefers", PICTURE):
        box = page.locator(part).first.bounding_box()
        assert box["y"] >= 0 and box["y"] + box["height"] <= height, part
        assert box["x"] >= 0 and box["x"] + box["width"] <= width, part


@pytest.mark.parametrize("width", [390, 820])
def test_what_a_finger_must_hit_is_large_enough(open_page, settled, width):
    page = open_page("/lift_off", width=width, height=844, has_touch=True)
    page.get_by_text("More on how this car slows").tap()
    page.locator(".st-key-set-comes_to_rest").wait_for()
    sizes = settled(page).locator(TARGETS).evaluate_all(SIZES)
    assert sizes
    assert [size for size in sizes if min(size[2:]) < LEAST_PX] == []


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_a_phone_needs_no_sideways_scrolling_and_draws_all_pictures(open_page, scheme):
    page = open_page("/lift_off", width=390, height=844, color_scheme=scheme)
    page.locator(PICTURE).wait_for()
    assert page.get_by_test_id("stMain").evaluate("element => element.scrollWidth - element.clientWidth") <= 0
    assert page.locator("svg.marks").count() == 4


def test_a_deep_link_on_a_fresh_server_has_the_answer_of_the_model(start_server, open_page, expect):
    icy = TOWN.with_setting("surface", "ice").with_setting("prefers", "gentlest_ride")
    page = open_page(address(icy, from_kmh="120", to_kmh="80"), on=start_server())
    expect(page.locator(HEADING)).to_have_text(words.heading(advise(curves_of(icy)).overall).replace(words.NARROW, " "))
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
    expect(page.locator(STRENGTH)).to_contain_text(words.strength_text(strength).replace(words.NARROW, " "))
    page.wait_for_url(re.compile(f"lift_off_mps2={strength:g}"))
    page.reload()
    expect(page.get_by_role("button", name="Set as advised")).to_be_disabled()


def test_what_is_set_here_reaches_the_first_page_and_comes_back(open_page, expect):
    page = open_page(address(TOWN.with_setting("brake_pedal", "friction").with_setting("lift_off_mps2", 0.3)))
    saved = page.locator(".st-key-answer-line strong").inner_text()
    page.get_by_role("button", name="Set as advised").click()
    expect(page.locator(".st-key-answer-line strong")).not_to_have_text(saved)
    page.get_by_test_id("stTopNavLink").filter(has_text="Your drive").click()
    expect(page.locator(".st-key-answer h2")).to_contain_text("less battery energy")
    assert scenario_at(page).driver.lift_off_mps2 > 0.3


def test_the_speed_on_the_hill_redraws_only_its_part(open_page, expect):
    page = open_page("/lift_off")
    page.locator(".st-key-set-hill-speed").get_by_text("120", exact=True).click()
    expect(page.get_by_text("What just keeps 120 km/h")).to_be_visible()
    page.wait_for_url(re.compile("hill_kmh=120"))
    assert scenario_at(page) == TOWN


def test_there_is_one_first_heading_and_none_is_skipped(open_page):
    page = open_page("/lift_off")
    levels = page.locator("h1, h2, h3, h4, h5, h6").evaluate_all("all => all.map(one => Number(one.tagName[1]))")
    assert levels.count(1) == 1 and levels[0] == 1
    assert all(after - before <= 1 for before, after in pairwise(levels))
