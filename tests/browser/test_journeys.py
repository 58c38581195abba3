"""The main job end to end with a finger, on a tablet and on a telephone: as a customer, a driver and a journalist."""

import json
import re

import pytest

from model.claims.collection import claims
from model.describe.scenario_io import starting_drives
from model.words.claims import words_of
from tests.browser.test_main_job import HEADLINE, TOWN, scenario_at
from tests.browser.test_show import DOUBLE_TAP_S
from tests.conftest import AT_REST

TABLET = pytest.param(820, 1180, marks=pytest.mark.nightly)
SIZES = pytest.mark.parametrize(("width", "height"), [(390, 844), TABLET])
CLAIM = "two-megawatts"
VERDICT = ".st-key-claim-answer h2"


def taken_away(page, button: str) -> str:
    """What a download holds."""
    # a button that is still being drawn anew may lose a tap
    page.get_by_role("button", name=button).wait_for()
    page.wait_for_selector(AT_REST)
    with page.expect_download() as download:
        page.get_by_role("button", name=button).tap()
    return download.value.path().read_text(encoding="utf-8")


@SIZES
def test_a_customer_is_shown_what_slowing_down_gives_back(open_page, settled, expect, width, height):
    page = open_page("/", width=width, height=height, has_touch=True)
    # four taps to the number
    page.locator(".st-key-answer-line").get_by_text("Show").tap()
    card, forth = page.locator(".st-key-card"), page.locator(".st-key-show-next button")
    card.get_by_text("Mountain valley").tap()
    if width > 640:
        expect(page.get_by_role("radio", name="Compact crossover")).to_be_checked()
    else:
        expect(page.locator(".st-key-card").get_by_role("combobox", name="Car")).to_have_value("Compact crossover")
    card.get_by_text("Winter", exact=True).tap()
    page.wait_for_url(re.compile("ambient_c=1&"))
    forth.tap()
    expect(page.locator("h1", has_text="less battery energy")).to_be_visible()
    expect(card).to_contain_text("compact crossover on the mountain valley")
    for place, words in ((3, "saved"), (4, "Lift-off: "), (5, "winter"), (6, "press the pedal")):
        page.wait_for_timeout(1000 * DOUBLE_TAP_S)
        forth.tap()
        expect(page.get_by_text(f"{place} of 6", exact=True)).to_be_visible()
        expect(card.locator("h1", has_text=re.compile(words, re.IGNORECASE))).to_be_visible()
    asked = starting_drives()["mountain-valley"][2].with_setting("ambient_c", 1.0)
    assert scenario_at(page) == asked

    page.locator(".st-key-show-foot").get_by_text("Take away").tap()
    expect(page.locator("h1", has_text="Take it with you")).to_be_visible()
    sheet = taken_away(page, "The page (HTML)")
    assert "compact crossover" in sheet and "mountain valley" in sheet
    page.locator(".st-key-answer-line").get_by_text("Show").tap()
    page.get_by_role("button", name="Next customer").tap()
    page.get_by_role("button", name="Clear everything").tap()
    expect(page.get_by_role("radio", name="Flat town commute")).to_be_checked()
    page.wait_for_url(re.compile("car=city-car"))
    assert scenario_at(settled(page)) == TOWN


@SIZES
def test_a_driver_describes_a_drive_and_asks_how_to_lift_off(open_page, settled, expect, width, height):
    page = open_page("/", width=width, height=height, has_touch=True)

    def turn_to(name: str) -> None:
        places = ".st-key-foot-pages" if width < 641 else '[data-testid="stTopNav"]'
        page.locator(places).get_by_text(name, exact=True).tap()

    before = page.locator(HEADLINE).inner_text()
    page.locator(".st-key-row-leg-2 button").tap()
    page.get_by_role("button", name="Remove").tap()
    expect(page.locator(".st-key-row-leg-2")).to_have_count(0)
    page.locator(".st-key-row-leg-1 button").tap()
    for key, text in (("speed_kmh", "60"), ("stops", "6")):
        entry = page.locator(f".st-key-set-leg1-{key} input")
        entry.fill(text)
        entry.press("Enter")
    expect(page.locator(".st-key-row-leg-1")).to_contain_text(re.compile(r"60\skm/h, 6\sstops"))
    expect(page.locator(HEADLINE)).not_to_have_text(before)
    page.wait_for_url(re.compile("_60_6_"))
    mine = TOWN.with_leg(1, "speed_kmh", 60.0).with_leg(1, "stops", 6)
    assert scenario_at(settled(page)).legs == mine.legs[:2]

    turn_to("Lift-off")
    expect(page.locator(".st-key-lift-answer h2")).to_be_visible()
    advised = page.get_by_role("button", name="Set as advised")
    advised.tap()
    expect(advised).to_be_disabled()
    turn_to("Winter and limits")
    expect(page.locator("h1", has_text="cold")).to_be_visible()
    page.locator('.st-key-choose-part [role="radio"]').nth(3).tap()
    expect(page.locator("h1", has_text="stop at once")).to_be_visible()
    turn_to("Your drive")
    expect(page.locator(HEADLINE)).to_contain_text("less battery energy")
    expect(page.locator(".st-key-row-leg-1")).to_contain_text(re.compile(r"60\skm/h, 6\sstops"))
    assert scenario_at(settled(page)).legs == mine.legs[:2]


@SIZES
def test_a_journalist_checks_a_claim_and_keeps_the_evidence(open_page, settled, expect, width, height):
    page = open_page("/check_a_claim", width=width, height=height, has_touch=True)
    page.locator(".st-key-row-claims button").tap()
    page.locator(f".st-key-row-{CLAIM} button").tap()
    expect(page.locator(VERDICT)).to_contain_text("does not hold in the modelled range")
    entry = page.locator(".st-key-set-number input")
    entry.fill("0.3")
    entry.press("Enter")
    expect(page.locator(VERDICT)).to_contain_text("holds broadly")
    page.locator(".st-key-row-said-car button").tap()
    page.locator(".st-key-set-said-car").get_by_text("van", exact=True).tap()
    page.wait_for_url(re.compile("said_car=van"))
    told = settled(page).locator(VERDICT).inner_text()
    page.locator(".st-key-fold-print summary").tap()
    page.locator(".st-key-files-drawer summary").tap()
    evidence = json.loads(taken_away(page, "Everything, JSON"))
    assert CLAIM in json.dumps(evidence)
    # the sentence is made from what was tested, no longer the list's own
    assert "With a van" in evidence["text"] and words_of(claims()[CLAIM]) not in evidence["text"]

    address = page.url
    page.goto("about:blank")
    page.goto(address)
    expect(page.locator(VERDICT)).to_have_text(told)
    expect(page.locator(".st-key-row-said-car")).to_contain_text("van")
