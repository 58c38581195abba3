"""The cards to show in a real browser: a tablet held towards somebody, fingers, keys, and the next customer."""

import re

from model.describe.scenario_io import starting_drives
from tests.browser.looks import assert_large_enough, come_to_nothing, resize
from tests.browser.test_main_job import TOWN, address, scenario_at
from tests.conftest import AT_REST

CARDS = range(1, 7)
LEAST_HEADLINE_PX = 50
"""On a tablet whose 1024 px are about 20 cm, capitals are then over 6 mm high: twice what a normal eye makes out at two
metres."""
DOUBLE_TAP_S = 0.5
"""A little more than the moment for which a second tap does not count."""
MAIN = '[data-testid="stMain"]'
MORE = """
    element => ["Height", "Width"].filter(way => element[`scroll${way}`] > element[`client${way}`])
"""
NEXT = ".st-key-show-next button"
HILLY = starting_drives()["suburb-hill"][2].with_setting("brake_pedal", "friction")
"""The wordiest: hills, and a pedal that has to be explained."""


def turned_to(page, card: int) -> None:
    """Wait until a card is there, and until the next tap is no second tap on the one before."""
    page.get_by_text(f"{card} of {len(CARDS)}", exact=True).wait_for()
    page.wait_for_selector(AT_REST)
    page.wait_for_timeout(1000 * DOUBLE_TAP_S)


def test_nothing_of_a_card_has_to_be_scrolled_to(open_page, settled, expect):
    page = open_page(address("/show", HILLY), has_touch=True)
    caution = page.get_by_text("Estimates for explanation")
    # names of keys are for whoever has them
    expect(page.locator("kbd").first).to_be_hidden()
    for card in CARDS:
        turned_to(page, card)
        for width, height in ((1024, 768), (820, 1180)):
            resize(settled(page), width, height)
            come_to_nothing(page, lambda: page.locator(MAIN).evaluate(MORE))
            headline = page.locator("h1").evaluate("element => parseFloat(getComputedStyle(element).fontSize)")
            assert headline >= LEAST_HEADLINE_PX
            assert_large_enough(page)
            box = caution.bounding_box()
            assert box["y"] + box["height"] <= height
        # on a telephone the cards may be scrolled, under buttons and a caution that stay
        resize(page, 390, 844)
        for part in (page.locator(".st-key-show-foot"), caution):
            box = part.bounding_box()
            assert box["y"] >= 0 and box["y"] + box["height"] <= 844
        if card < len(CARDS):
            page.locator(NEXT).tap()


def test_upright_a_picture_grows_and_why_leaves_the_sentence_in_sight(open_page, settled, expect):
    page = open_page(address("/show", TOWN) + "&card=3", width=1024, height=768, has_touch=True)
    squares = page.locator(".st-key-show-squares svg.marks").first
    low = squares.bounding_box()["height"]
    page.locator(".st-key-show-foot").get_by_role("button", name="Why?").tap()
    body = page.get_by_test_id("stPopoverBody")
    expect(body).to_be_visible()
    headline = page.locator("h1").bounding_box()
    least = headline["y"] + headline["height"]
    come_to_nothing(page, lambda: [top] if (top := body.bounding_box()["y"]) < least else [])
    page.keyboard.press("Escape")
    resize(settled(page), 820, 1180)
    come_to_nothing(page, lambda: [high] if (high := squares.bounding_box()["height"]) < 1.3 * low else [])


def test_two_quick_taps_turn_one_card_and_slower_ones_all_count(open_page, expect):
    page = open_page(address("/show", TOWN), has_touch=True)
    turned_to(page, 1)
    page.locator(NEXT).dblclick()
    turned_to(page, 2)
    for card in CARDS[2:4]:
        page.locator(NEXT).tap()
        turned_to(page, card)
    assert "card=4" in page.url


def test_a_deep_link_to_a_card(open_page, expect):
    page = open_page(address("/show", TOWN, card="4"))
    expect(page.locator("h1", has_text="Lift-off: ")).to_be_visible()
    assert scenario_at(page) == TOWN
    assert "card=4" in page.url


def test_arrow_keys_turn_the_cards_and_why_opens_and_closes(open_page, expect):
    page = open_page(address("/show", TOWN))
    turned_to(page, 1)
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
    # as after a night: the server knows nothing of what was cleared, and the browser still does
    page.reload()
    turned_to(page, 1)
    page.go_back()
    turned_to(page, 1)
    expect(page.get_by_role("radio", name="Flat town commute")).to_be_checked()
    assert scenario_at(page) == TOWN
    page.get_by_text("Close").tap()
    expect(page.locator(".st-key-word-car")).to_have_text(re.compile("city car(?!, adjusted)"))


def test_the_foot_covers_what_passes_under_it(open_page, expect):
    page = open_page(address("/show", TOWN), width=390, height=700)
    for scheme, ground in (("light", "rgb(253, 251, 247)"), ("dark", "rgb(29, 26, 23)")):
        page.emulate_media(color_scheme=scheme)
        for part in (page.locator(":has(> .st-key-show-foot)"), page.get_by_test_id("stApp")):
            expect(part).to_have_css("background-color", ground)


def test_a_showrooms_settings_live_in_the_browser_and_not_in_the_address(open_page, settled, expect):
    page = open_page(address("/show", TOWN))
    page.get_by_role("button", name="Showroom").click()
    line = page.locator(".st-key-showroom-line input")
    line.fill("Hall 4")
    line.press("Enter")
    expect(page.get_by_text("A link to keep")).to_be_visible()
    assert "showroom" not in settled(page).url
    other = open_page("/take_away")
    expect(other.locator(".st-key-sheets .paper")).to_contain_text("Hall 4")
    other.context.clear_cookies(name="showroom")
    # the link that is kept brings it to another browser
    again = open_page("/take_away?showroom=%7B%22line%22%3A%22Hall%205%22%7D")
    expect(again.locator(".st-key-sheets .paper")).to_contain_text("Hall 5")
    assert "showroom" not in settled(again).url
    again.context.clear_cookies(name="showroom")
