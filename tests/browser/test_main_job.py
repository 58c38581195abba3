"""The main job in a real browser: a drive is described, the answer follows, and the address brings both back."""

import re
from dataclasses import replace
from urllib.parse import urlsplit

from model.describe.scenario_io import starting_drives
from pages.parts.link import STALE_S
from tests.browser.addresses import address, scenario_at
from tests.browser.looks import assert_on_first_screen, resize

TOWN = starting_drives()["town"][2]
HEADLINE = ".st-key-answer h2"
STOPS_UP = '.st-key-step-leg1-stops [data-testid="stNumberInputStepUp"]'


WHOLE = """
    element => {
        const box = element.getBoundingClientRect(), cut = [];
        for (let outer = element.parentElement; outer; outer = outer.parentElement) {
            const edge = outer.getBoundingClientRect();
            if (edge.width && box.right > edge.right + 1) cut.push(outer.className);
        }
        return cut;
    }
"""
"""What a widget reaches out of."""


def pick_drive(page, name: str) -> None:
    page.locator(".st-key-choose-drive-page").get_by_text(starting_drives()[name][0]).click()


def stops_of_leg_2(count: int) -> re.Pattern:
    return re.compile(rf"~5\.5_48_{count}_")


def test_a_deep_link_shows_its_drive(open_page, expect):
    van = TOWN.with_setting("ambient_c", -5.0)
    page = open_page(address("/", van))
    expect(page.locator(".st-key-word-season")).to_contain_text("−5 °C")
    expect(page.locator(HEADLINE)).to_contain_text("friction brakes only")
    assert scenario_at(page) == van


def test_a_change_reaches_answer_and_address_and_survives_a_reload(open_page, settled, expect):
    page = open_page()
    before = page.locator(HEADLINE).inner_text()
    page.locator(".st-key-row-leg-1 button").click()
    entry = page.locator(".st-key-set-leg1-stops input")
    entry.fill("25")
    entry.press("Enter")
    page.wait_for_url(stops_of_leg_2(25))
    assert scenario_at(page) == TOWN.with_leg(1, "stops", 25)
    expect(page.locator(".st-key-row-leg-1")).to_contain_text("25 stops")
    expect(page.locator(HEADLINE)).not_to_have_text(before)
    changed = settled(page).locator(HEADLINE).inner_text()
    page.reload()
    expect(page.locator(HEADLINE)).to_have_text(changed)
    expect(page.locator(".st-key-row-leg-1")).to_contain_text("25 stops")


def test_back_takes_a_change_back_and_forward_makes_it_again(open_page, settled, expect):
    page = open_page()
    word = page.locator(".st-key-word-drive")

    def shows(name: str) -> None:
        expect(word).to_contain_text(name)
        settled(page)
        # a step back that comes at once is taken for a straggler of what was pressed
        page.wait_for_timeout(1000 * STALE_S)

    pick_drive(page, "motorway")
    shows("motorway run")
    pick_drive(page, "mountain-valley")
    shows("mountain valley")
    page.go_back()
    shows("motorway run")
    page.go_back()
    shows("flat town commute")
    page.go_forward()
    shows("motorway run")
    assert scenario_at(page) == starting_drives()["motorway"][2]

    # what was chosen behind a word, which is closed by then, is taken back too, and stays so
    def picks(car: str) -> None:
        page.locator(".st-key-word-car button").click()
        page.locator(".st-key-choose-car").get_by_text(car, exact=True).click()
        expect(page.locator(".st-key-word-car button")).to_contain_text(car, ignore_case=True)
        page.keyboard.press("Escape")
        shows("motorway run")

    picks("Van")
    page.get_by_test_id("stTopNavLink").filter(has_text="Lift-off").click()
    expect(page.locator(".st-key-set-lift_off_mps2")).to_be_visible()
    picks("Pickup")
    for path in ("/lift_off", "/"):
        page.go_back()
        expect(page.locator(".st-key-word-car button")).to_contain_text("van")
        shows("motorway run")
        assert (urlsplit(page.url).path, scenario_at(page).car_class) == (path, "van")


def test_quick_presses_are_all_counted(open_page, expect):
    """The browser sends along an address that the page has already replaced; it must not undo what was pressed."""
    page = open_page()
    page.locator(".st-key-row-leg-1 button").click()
    for _ in range(8):
        page.locator(STOPS_UP).click()
        page.wait_for_timeout(120)
    page.wait_for_url(stops_of_leg_2(18))
    expect(page.locator(".st-key-row-leg-1")).to_contain_text("18 stops")


def test_a_value_out_of_bounds_is_clamped_and_said(open_page, expect):
    page = open_page(address("/", TOWN, ambient_c="99"))
    notice = page.get_by_text("Outside temperature: 99 °C")
    expect(notice).to_contain_text("It was set to 50 °C.")
    assert scenario_at(page).conditions.ambient_c == 50
    pick_drive(page, "suburb-hill")
    expect(notice).to_have_count(0)


def test_an_entry_that_cannot_be_used_is_kept_and_can_be_mended(open_page, expect):
    page = open_page()
    page.locator(".st-key-row-leg-0 button").click()
    entry = page.locator(".st-key-set-leg0-distance_km input")
    entry.fill("5000")
    entry.press("Enter")
    expect(page.get_by_text("Distance: 5000 km cannot be used")).to_be_visible()
    expect(entry).to_have_value(re.compile("5000"))
    assert scenario_at(page) == TOWN
    # key by key: a browser's own number field would drop the comma
    entry.fill("")
    entry.press_sequentially("2,3")
    entry.press("Enter")
    page.wait_for_url(re.compile(r"legs=2\.3_30_3_"))
    expect(page.get_by_text("cannot be used")).to_have_count(0)


def test_us_units_change_the_view_and_not_the_link(open_page, expect):
    page = open_page()
    metric = page.url
    # what is drawn beside the page moves its foot when it comes
    expect(page.locator(".st-key-facts")).to_contain_text("In a year")
    page.locator(".st-key-units").get_by_text("US", exact=True).click()
    expect(page.locator(".st-key-row-leg-0")).to_contain_text("0.75 mi at 19 mph")
    page.wait_for_url(re.compile("units=us"))
    # usual prices follow the units, and a link says them
    assert replace(scenario_at(page), year=TOWN.year) == TOWN and scenario_at(page).year.currency == "$"
    page.locator(".st-key-units").get_by_text("Metric").click()
    expect(page.locator(".st-key-row-leg-0")).to_contain_text("1.2 km at 30 km/h")
    page.wait_for_url(metric)


def test_describing_and_answering_fit_on_one_screen(open_page, expect, settled):
    page = open_page()
    for name, (label, _, _) in starting_drives().items():
        pick_drive(page, name)
        expect(page.locator(".st-key-word-drive")).to_contain_text(label, ignore_case=True)
        for width, height in ((1024, 768), (1280, 800)):
            resize(settled(page), width, height)
            parts = ("h1", ".st-key-strip", ".st-key-drives-page", HEADLINE, ".st-key-facts", ".st-key-rows")
            assert_on_first_screen(page, parts)
    # what is asked of the year is not cut off, however narrow its column
    page.locator(".st-key-year-drawer summary").click()
    page.locator(".st-key-set-co2_g_per_kwh input").wait_for()
    for width, height in ((1024, 768), (820, 1180), (390, 844)):
        resize(settled(page), width, height)
        edges = page.locator(".st-key-set-co2_g_per_kwh").evaluate(WHOLE)
        assert edges == []
