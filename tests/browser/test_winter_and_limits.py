"""Winter and limits in a real browser: one part on screen, four a tap away, linked to, and fit for a finger."""

import re
from itertools import pairwise
from urllib.parse import parse_qs, urlsplit

import pytest

from model.limit_settings import PARTS
from pages.parts.winter_words import NAMES
from tests.browser.test_targets import LEAST_PX, SIZES, TARGETS

PAGE = "/winter_and_limits"
NUMBER = ".st-key-panel h2"
HEADINGS = ("cold", "slippery", "long hills", "stop at once")
TAPS = '.st-key-choose-part [role="radio"]'
PICTURES = '[data-testid="stVegaLiteChart"] svg.marks'


@pytest.fixture
def expect(chromium):
    from playwright.sync_api import expect

    return expect


def link(page):
    return {key: values[0] for key, values in parse_qs(urlsplit(page.url).query).items()}


def test_a_deep_link_on_a_fresh_server_shows_its_part_and_what_is_set(start_server, open_page, expect):
    page = open_page(f"{PAGE}?part=hills&hill_m=800&car=van&ambient_c=-5", on=start_server())
    expect(page.locator("h1", has_text="long hills")).to_be_visible()
    expect(page.locator(NUMBER)).to_contain_text("800 m down")
    expect(page.locator(".st-key-word-car")).to_contain_text("van")
    assert link(page)["hill_m"] == "800" and link(page)["part"] == "hills"


def test_every_part_is_a_tap_away_and_back_undoes(open_page, expect):
    page = open_page(f"{PAGE}?ambient_c=-7")
    for place, word in enumerate(HEADINGS):
        page.locator(TAPS).nth(place).click()
        expect(page.locator("h1", has_text=word)).to_be_visible()
        expect(page.locator(TAPS).nth(place)).to_have_attribute("aria-checked", "true")
        expect(page.locator(PICTURES).nth(2)).to_be_visible()
        assert link(page).get("part", "cold") == PARTS[place]
    page.go_back()
    expect(page.locator("h1", has_text=HEADINGS[2])).to_be_visible()


def test_a_slider_changes_number_and_picture_and_survives_a_reload(open_page, expect):
    page = open_page(f"{PAGE}?part=stop")
    expect(page.locator(NUMBER)).to_contain_text("From 100 km/h")
    before = page.locator(PICTURES).nth(1).text_content()
    page.locator('.st-key-set-stop_kmh input[type="range"]').press("ArrowLeft")
    expect(page.locator(NUMBER)).to_contain_text("From 95 km/h")
    expect(page.locator(PICTURES).nth(1)).not_to_have_text(before)
    page.wait_for_url(re.compile("stop_kmh=95"))
    page.reload()
    expect(page.locator(NUMBER)).to_contain_text("From 95 km/h")


def test_the_season_on_the_answer_line_redraws_the_page(open_page, expect):
    page = open_page(f"{PAGE}?part=grip&bend=bend")
    expect(page.locator(NUMBER)).to_contain_text("On a dry road in a bend")
    page.locator(".st-key-word-season button").click()
    page.locator(".st-key-set-surface").get_by_role("combobox").click()
    page.get_by_role("option", name="Snow", exact=True).click()
    expect(page.locator(NUMBER)).to_contain_text("On packed snow in a bend")
    assert link(page)["bend"] == "bend" and link(page)["surface"] == "snow"


def test_units_change_the_view_and_not_the_link(open_page, expect):
    page = open_page(f"{PAGE}?part=hills")
    page.locator(".st-key-units").get_by_text("US", exact=True).click()
    expect(page.locator(NUMBER)).to_contain_text("984 ft")
    page.wait_for_url(re.compile("units=us"))
    assert "hill_m" not in link(page)


def assert_large_enough(page):
    """Nothing that a finger must hit is too small."""
    assert [size for size in page.locator(TARGETS).evaluate_all(SIZES) if min(size[2:]) < LEAST_PX] == []


@pytest.mark.parametrize("part", PARTS)
def test_on_a_tablet_the_four_in_short_number_and_picture_are_on_the_first_screen(open_page, part):
    page = open_page(f"{PAGE}?part={part}&ambient_c=-7&surface=snow", width=1024, height=768)
    for place in (".st-key-strip", ".st-key-choose-part", ".st-key-glance", "h1", NUMBER):
        box = page.locator(place).first.bounding_box()
        assert box["y"] >= 0 and box["y"] + box["height"] <= 768, place
    picture = page.locator(PICTURES).nth(1).bounding_box()
    assert picture["y"] + picture["height"] / 2 <= 768
    levels = page.locator("h1, h2, h3, h4, h5, h6").evaluate_all("all => all.map(one => Number(one.tagName[1]))")
    assert levels.count(1) == 1 and levels[0] == 1
    assert all(after - before <= 1 for before, after in pairwise(levels))
    assert_large_enough(page)


@pytest.mark.parametrize("part", PARTS)
def test_a_phone_needs_no_sideways_scrolling_and_cuts_no_name(open_page, part):
    page = open_page(f"{PAGE}?part={part}&ambient_c=-7", width=390, height=844)
    assert page.get_by_test_id("stMain").evaluate("element => element.scrollWidth - element.clientWidth") <= 0
    names = page.locator(f"{TAPS} p")
    assert names.all_inner_texts() == list(NAMES.values())
    assert names.evaluate_all("all => all.every(one => one.scrollWidth <= one.clientWidth + 1)")
    drawn = page.locator(PICTURES).evaluate_all("all => all.map(one => one.getBoundingClientRect().right)")
    assert len(drawn) >= 3 and max(drawn) <= 390
    assert_large_enough(page)
