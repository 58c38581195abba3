"""Winter and limits in a real browser: one part on screen, four a tap away, linked to, and fit for a finger."""

import re

from model.limits.limit_settings import LIMIT_PARTS
from tests.browser.addresses import link

PAGE = "/winter_and_limits"
NUMBER = ".st-key-panel h2"
HEADINGS = ("cold", "Grip, on your road", "long hills", "stop at once")
TAPS = '.st-key-choose-part [role="radio"]'
PICTURES = '[data-testid="stVegaLiteChart"] svg.marks'


def test_a_deep_link_shows_its_part_and_what_is_set(open_page, expect):
    page = open_page(f"{PAGE}?part=hills&hill_m=800&car=van&ambient_c=-5")
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
        assert link(page).get("part", "cold") == LIMIT_PARTS[place]
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
