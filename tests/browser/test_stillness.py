"""Nothing jumps while something is set: the figures change where they stand."""

import re

import pytest

from tests.browser.test_main_job import STOPS_UP, stops_of_leg_2

MOST_SHIFT = 0.1
"""Below this a shift of the layout counts as good; here over all steps together, where it is meant for each."""
NOTE_SHIFTS = """
    window.shifted = 0;
    new PerformanceObserver(list => {
        // steps are taken with the keyboard and the mouse alike, so shifts right after an input count too
        for (const entry of list.getEntries()) { window.shifted += entry.value; }
    }).observe({type: "layout-shift", buffered: false});
"""
RESTED = """
    () => {
        const height = document.querySelector('[data-testid="stMain"]').scrollHeight;
        if (height !== window.restHeight) { window.restHeight = height; window.restedSince = performance.now(); }
        return performance.now() - window.restedSince > 1000;
    }
"""
"""The page has been as long as it is for a second: on a busy machine pictures take their room late."""
SLIDERS = {
    "charge": ("/", "soc_start", '.st-key-set-soc_start input[type="range"]'),
    "strength": ("/lift_off", "lift_off_mps2", '.st-key-set-lift_off_mps2 input[type="range"]'),
    "stop": ("/how_it_works?panel=who", "from_kmh", '.st-key-set-from_kmh input[type="range"]'),
    "emergency": ("/winter_and_limits?part=stop", "stop_kmh", '.st-key-set-stop_kmh input[type="range"]'),
}
"""Page, what stands in the address for it, and the slider."""


def test_nothing_jumps_while_a_number_is_stepped(open_page, settled):
    page = open_page()
    page.locator(".st-key-row-leg-1 button").click()
    page.locator(STOPS_UP).wait_for()
    settled(page)
    page.wait_for_function(RESTED)
    page.evaluate(NOTE_SHIFTS)
    for count in range(11, 16):
        page.locator(STOPS_UP).click()
        page.wait_for_url(stops_of_leg_2(count))
        settled(page)
    assert page.evaluate("window.shifted") < MOST_SHIFT


@pytest.mark.parametrize("name", SLIDERS)
def test_nothing_jumps_while_a_slider_moves(open_page, settled, name):
    path, key, place = SLIDERS[name]
    page = open_page(path)
    if name == "charge":
        page.locator(".st-key-row-habits button").click()
    slider = page.locator(place)
    slider.scroll_into_view_if_needed()
    settled(page)
    page.wait_for_function(RESTED)
    page.evaluate(NOTE_SHIFTS)
    for _ in range(3):
        before = page.url
        slider.press("ArrowRight")
        page.wait_for_url(lambda url, before=before: url != before and re.search(f"{key}=", url))
        settled(page)
    page.wait_for_timeout(200)
    assert page.evaluate("window.shifted") < MOST_SHIFT
