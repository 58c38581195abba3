"""For everybody, beside what is looked at on every page: what opens, the keyboard alone, and less motion."""

import re

from tests.browser.looks import RULES, assert_large_enough, faults
from tests.browser.test_main_job import HEADLINE, scenario_at
from tests.browser.test_show import DOUBLE_TAP_S

LOOK = """
    const look = element => {
        const style = getComputedStyle(element);
        return ["outlineStyle", "outlineColor", "boxShadow", "borderColor", "backgroundColor", "opacity"]
            .map(name => style[name]).join();
    };
"""
STEPPED = f"""
    async wanted => {{
        {LOOK}
        const unseen = (window.around ?? []).length
            && window.around.every(element => element.isConnected)
            && window.around.map(look).join() === window.focusedLook ? window.focusedName : "";
        const focused = document.activeElement, style = getComputedStyle(focused);
        window.focusedName = [focused.tagName, focused.ariaLabel ?? focused.innerText].join(" ").slice(0, 60);
        window.around = [focused, ...focused.querySelectorAll("*")];
        for (let outer = focused.parentElement, count = 0; outer && count < 3; outer = outer.parentElement, count++) {{
            window.around.push(outer);
        }}
        await new Promise(drawn => setTimeout(drawn, 25));
        window.focusedLook = window.around.map(look).join();
        const placed = ["A", "BUTTON", "SUMMARY"].includes(focused.tagName);
        const ring = style.outlineStyle === "solid" && style.outlineWidth === "3px";
        if (focused === document.body) window.around = [];
        return {{
            reached: focused.matches(wanted),
            name: window.focusedName,
            unseen: [unseen, placed && !ring ? window.focusedName : ""].filter(Boolean),
        }};
    }}
"""
"""One step of the keyboard: whether it came to what is wanted, and what had the focus without looking like it."""
LONGEST_MOTION = """
    () => Math.max(...[...document.querySelectorAll("*")].flatMap(element => {
        const style = getComputedStyle(element);
        return [style.transitionDuration, style.animationDuration].flatMap(all => all.split(",").map(parseFloat));
    }))
"""


def tab_to(page, wanted: str, forth: str = "Tab", back: str = "Shift+Tab", most: int = 90) -> None:
    """Press Tab until `wanted` has the focus; wherever the focus comes by, it is seen."""
    names = []
    for _ in range(most):
        page.keyboard.press(forth)
        step = page.evaluate(STEPPED, wanted)
        if step["unseen"]:
            # looked at too early, perhaps, on a machine that is busy: look again in peace
            for key in (back, forth):
                page.keyboard.press(key)
                page.wait_for_timeout(300)
                step = page.evaluate(STEPPED, wanted)
            assert step["unseen"] == []
        if step["reached"]:
            return
        names.append(step["name"])
    raise AssertionError(f"{wanted} is not reached with the Tab key, only {names}")


def tab_back_to(page, wanted: str) -> None:
    """The same against the order of the page."""
    tab_to(page, wanted, forth="Shift+Tab", back="Tab")


def test_what_opens_is_for_everybody_too(open_page, settled):
    page = open_page("/")
    page.locator(".st-key-row-leg-0 button").click()
    for drawer in ("How far can I trust this?", "What goes into the year", "Adjust the car"):
        page.get_by_text(drawer).click()
        settled(page)
    page.locator(".st-key-figure-ledger").get_by_text("As a table").click()
    page.locator(".st-key-figure-ledger").get_by_test_id("stTable").wait_for()
    assert faults(settled(page), runOnly=RULES) == []
    for word, inside in (("car", "choose-car"), ("season", "choose-season"), ("pedal", "set-brake_pedal")):
        page.locator(f".st-key-word-{word} button").click()
        page.locator(f".st-key-{inside}").wait_for()
        assert faults(page, runOnly=RULES, context='[data-testid="stPopoverBody"]') == []
        assert_large_enough(page)
        page.keyboard.press("Escape")


def test_the_main_job_with_the_keyboard_alone(open_page, settled, expect):
    page = open_page(color_scheme="dark", reduced_motion="reduce")
    headline = page.locator(HEADLINE)
    before = headline.inner_text()
    tab_to(page, ".st-key-choose-drive-page button")
    page.keyboard.press("ArrowRight")
    page.keyboard.press("Space")
    expect(page.locator(".st-key-word-drive")).to_contain_text("suburb to city")
    expect(headline).not_to_have_text(before)

    tab_to(page, ".st-key-row-leg-2 button")
    before = settled(page).locator(HEADLINE).inner_text()
    page.keyboard.press("Enter")
    expect(page.locator(".st-key-set-leg2-stops")).to_be_visible()
    expect(page.locator(".st-key-row-leg-2 button")).to_have_accessible_name(re.compile("close"))
    tab_to(page, ".st-key-set-leg2-stops input")
    page.keyboard.press("ControlOrMeta+A")
    page.keyboard.type("30")
    page.keyboard.press("Enter")
    expect(headline).not_to_have_text(before)
    expect(page.locator(".st-key-row-leg-2")).to_contain_text("30 stops")
    page.wait_for_url(re.compile("_30_"))
    assert scenario_at(page).legs[2].stops == 30

    tab_back_to(settled(page), ".st-key-word-season button")
    page.keyboard.press("Enter")
    expect(page.locator(".st-key-choose-season")).to_be_visible()
    tab_to(page, ".st-key-choose-season [role=radio]")
    page.keyboard.press("Space")
    expect(page.locator(".st-key-word-season")).to_contain_text("winter")
    page.keyboard.press("Escape")
    expect(page.locator(".st-key-choose-season")).to_have_count(0)

    tab_back_to(settled(page), '[data-testid="stTopNavLink"][href*="lift_off"]')
    page.keyboard.press("Enter")
    strength = page.locator(".st-key-set-lift_off_mps2")
    expect(strength).to_contain_text("Yours: firm, 1 m/s²")
    tab_to(settled(page), ".st-key-set-lift_off_mps2 input, .st-key-set-lift_off_mps2 [role=slider]")
    page.keyboard.press("ArrowRight")
    expect(strength).to_contain_text("Yours: firm, 1.1 m/s²")

    tab_back_to(settled(page), '.st-key-actions a[href*="show"]')
    page.keyboard.press("Enter")
    expect(page.get_by_text("1 of 6", exact=True)).to_be_visible()
    for card in range(2, 7):
        page.wait_for_timeout(1000 * DOUBLE_TAP_S)
        page.keyboard.press("ArrowRight")
        expect(page.get_by_text(f"{card} of 6", exact=True)).to_be_visible()
    tab_to(settled(page), ".st-key-show-take button")
    page.keyboard.press("Enter")
    expect(page.locator("h1", has_text="Take it with you")).to_be_visible()
    tab_to(settled(page), '[data-testid="stDownloadButton"] button')
    with page.expect_download() as download:
        page.keyboard.press("Enter")
    assert download.value.suggested_filename.endswith(".html")
    # nothing holds the focus back: it goes on through the page and out at its end
    tab_to(settled(page), "body")


def test_who_asks_for_less_motion_gets_none(open_page):
    page = open_page("/")
    page.locator(".st-key-word-car button").click()
    page.locator(".st-key-choose-car").wait_for()
    assert page.evaluate(LONGEST_MOTION) > 0.05
    page.emulate_media(reduced_motion="reduce")
    assert page.evaluate(LONGEST_MOTION) <= 0.001
