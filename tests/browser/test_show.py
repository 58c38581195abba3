"""The cards to show in a real browser: a tablet held towards somebody, fingers, keys, and the next customer."""

import re

import pytest

from model.scenario_io import starting_drives
from tests.browser.test_main_job import TOWN, address, scenario_at
from tests.browser.test_targets import LEAST_PX, SIZES, TARGETS

CARDS = range(1, 7)
LEAST_HEADLINE_PX = 50
"""On a tablet whose 1024 px are about 20 cm, capitals are then over 6 mm high: twice what a normal eye makes out at two
metres."""
MAIN = '[data-testid="stMain"]'
NEXT = ".st-key-show-next button"
HILLY = starting_drives()["suburb-hill"][2].with_setting("brake_pedal", "friction")
"""The wordiest: hills, and a pedal that has to be explained."""


@pytest.fixture
def expect(chromium):
    from playwright.sync_api import expect

    return expect


def turned_to(page, card: int) -> None:
    page.get_by_text(f"{card} of {len(CARDS)}", exact=True).wait_for()


@pytest.mark.parametrize(("width", "height"), [(1024, 768), (820, 1180)])
def test_nothing_of_a_card_has_to_be_scrolled_to(open_page, settled, width, height):
    page = open_page(address("/show", HILLY), width=width, height=height, has_touch=True)
    for card in CARDS:
        turned_to(page, card)
        main = settled(page).locator(MAIN)
        for way in ("Height", "Width"):
            assert main.evaluate(f"element => element.scroll{way} - element.client{way}") <= 0, card
        headline = page.locator("h1").evaluate("element => parseFloat(getComputedStyle(element).fontSize)")
        assert headline >= LEAST_HEADLINE_PX
        sizes = page.locator(TARGETS).evaluate_all(SIZES)
        assert [size for size in sizes if min(size[2:]) < LEAST_PX] == [], card
        caution = page.get_by_text("Estimates for explanation").bounding_box()
        assert caution["y"] + caution["height"] <= height
        if card < len(CARDS):
            page.locator(NEXT).tap()


def test_taps_that_come_faster_than_the_cards_all_count(open_page):
    page = open_page(address("/show", TOWN), has_touch=True)
    for card in CARDS[1:4]:
        page.locator(NEXT).tap()
        turned_to(page, card)
    assert "card=4" in page.url


def test_a_phone_keeps_buttons_and_caution_in_view_and_nothing_beside_it(open_page):
    for card in (1, 3):
        page = open_page(address("/show", TOWN, card=str(card)), width=390, height=844)
        assert page.locator(MAIN).evaluate("element => element.scrollWidth - element.clientWidth") <= 0
        for part in (page.locator(".st-key-show-next"), page.get_by_text("Estimates for explanation")):
            box = part.bounding_box()
            assert box["y"] >= 0 and box["y"] + box["height"] <= 844


def test_four_taps_from_a_fresh_start_to_the_number(open_page, settled, expect):
    page = open_page("/", has_touch=True)
    page.locator(".st-key-answer-line").get_by_text("Show").tap()
    turned_to(page, 1)
    page.locator(".st-key-card").get_by_text("Mountain valley").tap()
    page.wait_for_url(re.compile("car=compact-crossover"))
    page.locator(".st-key-card").get_by_text("Winter").tap()
    page.wait_for_url(re.compile("ambient_c=1&"))
    page.locator(NEXT).tap()
    expect(page.locator("h1", has_text="less battery energy")).to_be_visible()
    expect(page.locator(".st-key-card")).to_contain_text("compact crossover, mountain valley, winter, 1 °C")
    assert scenario_at(page) == starting_drives()["mountain-valley"][2].with_setting("ambient_c", 1.0)


def test_a_deep_link_to_a_card_on_a_fresh_server(start_server, open_page, expect):
    page = open_page(address("/show", TOWN, card="4"), on=start_server())
    expect(page.locator("h1", has_text="Lift-off: ")).to_be_visible()
    assert scenario_at(page) == TOWN
    assert "card=4" in page.url


def test_arrow_keys_turn_the_cards_and_why_opens_and_closes(open_page, expect):
    page = open_page(address("/show", TOWN))
    expect(page.locator("h1", has_text="Tell me your drive")).to_be_visible()
    for card, key in ((2, "ArrowRight"), (3, "ArrowRight"), (2, "ArrowLeft")):
        page.keyboard.press(key)
        turned_to(page, card)
    page.get_by_role("button", name="Why?").press("Enter")
    why = page.get_by_text("once with the motor slowing it, once on friction brakes only")
    expect(why).to_be_visible()
    page.keyboard.press("Escape")
    expect(why).to_be_hidden()


def test_the_next_customer_sees_nothing_of_the_last_one_not_even_going_back(open_page, settled, expect):
    mine = TOWN.with_setting("mass_kg", 1500.0).with_leg(0, "distance_km", 3.0)
    page = open_page(address("/show", mine, card="2"), has_touch=True)
    expect(page.locator(".st-key-card")).to_contain_text("city car, adjusted")
    clear = page.get_by_role("button", name="Clear everything")
    expect(clear).to_have_count(0)
    page.get_by_role("button", name="Next customer").tap()
    expect(page.locator(".st-key-card")).to_contain_text("city car, adjusted")
    clear.tap()
    turned_to(page, 1)
    expect(page.get_by_role("radio", name="Flat town commute")).to_be_checked()
    page.wait_for_url(re.compile("legs=1.2_"))
    assert scenario_at(page) == TOWN
    page.go_back()
    turned_to(page, 2)
    expect(page.locator(".st-key-card")).to_contain_text("A city car, flat town commute")
    assert scenario_at(page) == TOWN
    page.get_by_text("Close").tap()
    expect(page.locator(".st-key-word-car")).to_have_text(re.compile("city car(?!, adjusted)"))


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_the_foot_covers_what_passes_under_it(open_page, scheme):
    page = open_page(address("/show", TOWN), width=390, height=500, color_scheme=scheme)
    ground = "element => getComputedStyle(element).backgroundColor"
    foot = page.locator(":has(> .st-key-show-foot)").evaluate(ground)
    assert foot == page.get_by_test_id("stApp").evaluate(ground)
    assert foot != "rgba(0, 0, 0, 0)"
