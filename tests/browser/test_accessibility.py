"""Every page for everybody: by an automatic check, by keyboard alone, in large text, without motion, and offline.

Opening a page here also fails where it asks anything of another machine: see `open_page`.
"""

import re
from itertools import pairwise
from pathlib import Path

import pytest

from tests.browser.test_main_job import TOWN, address, scenario_at
from tests.browser.test_targets import LEAST_PX, SIZES, TARGETS

PAGES = Path(__file__).parents[2] / "pages"
PATHS = (
    "/", "/lift_off", "/winter_and_limits", "/how_it_works", "/check_a_claim", "/show", "/show?card=3", "/compare",
    "/take_away", "/sources",
)  # fmt: skip
RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]
DARK_GROUND = "rgb(29, 26, 23)"
STREAMLITS_OWN = {
    ("presentation-role-conflict", "stFileUploaderDropzone"): (
        "The place for a file is named although its role says that it means nothing. Since it can no longer be "
        "focused (streamlit/streamlit pull request 15928) nobody meets it: the button inside has its own name."
    ),
}
"""What the automatic check finds in what Streamlit draws and we do not: rule, element, and why it does no harm."""
CLIPPED = """
    () => {
        const cut = [], walker = document.createTreeWalker(document.querySelector('[data-testid="stApp"]'), 4);
        while (walker.nextNode()) {
            const text = walker.currentNode, holder = text.parentElement;
            if (!text.data.trim() || !holder.checkVisibility() || holder.closest("svg, style, script")) continue;
            const range = document.createRange();
            range.selectNodeContents(text);
            const box = range.getBoundingClientRect();
            // what is there for screen readers only is a pixel wide
            if (box.width < 2 || box.height < 2) continue;
            for (let outer = holder; outer; outer = outer.parentElement) {
                const style = getComputedStyle(outer), edge = outer.getBoundingClientRect();
                if (edge.width < 3 || edge.height < 3) break;
                const spare = parseFloat(getComputedStyle(holder).fontSize) / 4;
                const beside = ["hidden", "clip"].includes(style.overflowX)
                    && (box.right > edge.right + 1 || box.left < edge.left - 1);
                const below = ["hidden", "clip"].includes(style.overflowY)
                    && (box.bottom > edge.bottom + spare || box.top < edge.top - spare);
                if (beside || below) { cut.push(text.data.trim().slice(0, 60)); break; }
                if (["auto", "scroll"].includes(style.overflowX) || ["auto", "scroll"].includes(style.overflowY)) break;
            }
        }
        return cut;
    }
"""
LOOK = """
    const look = element => {
        const style = getComputedStyle(element);
        return ["outlineStyle", "outlineColor", "boxShadow", "borderColor", "backgroundColor", "opacity"]
            .map(name => style[name]).join();
    };
"""
FOCUSED = f"""
    () => {{
        {LOOK}
        const focused = document.activeElement;
        const around = [focused, focused.parentElement, ...focused.querySelectorAll("*")];
        around.push(focused.parentElement.parentElement, focused.parentElement.parentElement.parentElement);
        window.around = around.filter(Boolean);
        window.focusedLook = window.around.map(look);
        const style = getComputedStyle(focused);
        return [
            [focused.tagName, focused.getAttribute("role"), focused.ariaLabel ?? focused.innerText].join(" "),
            [style.outlineStyle, style.outlineWidth].join(" "),
        ];
    }}
"""
LOOKS_AS_BEFORE = f"() => {{ {LOOK} return window.around.map(look).join() === window.focusedLook.join(); }}"
SIDEWAYS = "element => element.scrollWidth - element.clientWidth"


@pytest.fixture
def expect(chromium):
    from playwright.sync_api import expect

    return expect


def faults(page, **options) -> list[str]:
    """What the automatic check finds that is not in the table of Streamlit's own."""
    from axe_playwright_python.sync_playwright import Axe

    found = Axe().run(page, options={"resultTypes": ["violations"], **options}).response["violations"]
    return [
        f"{fault['id']}: {node['html'][:200]} {node['failureSummary']}"
        for fault in found
        for node in fault["nodes"]
        if not any(fault["id"] == rule and f'data-testid="{testid}"' in node["html"] for rule, testid in STREAMLITS_OWN)
    ]


def tab_to(page, what: str, most: int = 60) -> None:
    """Press Tab until `what` has the focus."""
    for _ in range(most):
        page.keyboard.press("Tab")
        if page.evaluate(f"document.activeElement.matches({what!r})"):
            return
    raise AssertionError(f"{what} is not reached with the Tab key")


def test_every_page_is_among_those_opened_here():
    files = {path.stem for path in PAGES.glob("[a-z]*.py")} - {"entrypoint"}
    assert {re.split(r"[?]", path)[0].strip("/") or "your_drive" for path in PATHS} == files


@pytest.mark.parametrize("path", PATHS)
def test_a_page_is_for_everybody(open_page, settled, expect, path):
    page = open_page(path, width=1280, height=800)
    page.locator("h1").wait_for()
    expect(page.locator('[data-testid="stVegaLiteChart"]:empty')).to_have_count(0)

    assert page.evaluate("document.documentElement.lang") == "en"
    levels = page.locator("h1, h2, h3, h4, h5, h6").evaluate_all("all => all.map(one => Number(one.tagName[1]))")
    assert levels.count(1) == 1 and levels[0] == 1
    assert all(after - before <= 1 for before, after in pairwise(levels))
    pictures = page.get_by_test_id("stVegaLiteChart").evaluate_all("all => all.map(one => one.ariaLabel ?? '')")
    assert all(len(text) > 30 for text in pictures)
    sizes = page.locator(TARGETS).evaluate_all(SIZES)
    assert [size for size in sizes if min(size[2:]) < LEAST_PX] == []
    assert faults(page, runOnly=RULES) == []

    # 200 % as browsers zoom, then the text alone
    main = page.get_by_test_id("stMain")
    page.set_viewport_size({"width": 640, "height": 400})
    assert main.evaluate(SIDEWAYS) <= 0
    assert page.evaluate(CLIPPED) == []
    page.set_viewport_size({"width": 1280, "height": 800})
    page.evaluate("document.documentElement.style.fontSize = '36px'")
    assert main.evaluate(SIDEWAYS) <= 0
    assert page.evaluate(CLIPPED) == []

    page.evaluate("document.documentElement.style.fontSize = ''")
    page.emulate_media(color_scheme="dark")
    expect(page.get_by_test_id("stApp")).to_have_css("background-color", DARK_GROUND)
    assert faults(settled(page), runOnly=["color-contrast"]) == []


def test_what_opens_is_for_everybody_too(open_page, settled):
    page = open_page("/")
    page.locator(".st-key-row-leg-0 button").click()
    for drawer in ("How far can I trust this?", "What the year is made of", "Adjust the car"):
        page.get_by_text(drawer).click()
        settled(page)
    page.locator(".st-key-figure-ledger").get_by_text("As a table").click()
    page.locator(".st-key-figure-ledger").get_by_test_id("stTable").wait_for()
    assert faults(settled(page), runOnly=RULES) == []
    for word, inside in (("car", "choose-car"), ("season", "choose-season"), ("pedal", "set-brake_pedal")):
        page.locator(f".st-key-word-{word} button").click()
        page.locator(f".st-key-{inside}").wait_for()
        assert faults(page, runOnly=RULES) == []
        assert [size for size in page.locator(TARGETS).evaluate_all(SIZES) if min(size[2:]) < LEAST_PX] == []
        page.keyboard.press("Escape")


def test_the_main_job_with_the_keyboard_alone(open_page, settled, expect):
    page = open_page()
    headline = page.locator(".st-key-answer h2")
    before = headline.inner_text()
    tab_to(page, ".st-key-choose-drive-page button")
    page.keyboard.press("ArrowRight")
    page.keyboard.press("Space")
    expect(page.locator(".st-key-word-drive")).to_contain_text("suburb to city")
    expect(headline).not_to_have_text(before)
    before = headline.inner_text()

    tab_to(page, ".st-key-row-leg-2 button")
    page.keyboard.press("Enter")
    page.locator(".st-key-set-leg2-stops").wait_for()
    settled(page)
    tab_to(page, ".st-key-set-leg2-stops input")
    page.keyboard.press("ControlOrMeta+A")
    page.keyboard.type("30")
    page.keyboard.press("Enter")
    expect(headline).not_to_have_text(before)
    expect(page.locator(".st-key-row-leg-2")).to_contain_text("30 stops")
    page.wait_for_url(re.compile("_30_"))
    assert scenario_at(page).legs[2].stops == 30

    page.reload()
    tab_to(settled(page), ".st-key-word-season button")
    page.keyboard.press("Enter")
    tab_to(page, ".st-key-choose-season [role=radio]")
    page.keyboard.press("Space")
    expect(page.locator(".st-key-word-season")).to_contain_text("winter")


def test_where_the_keyboard_is_can_be_seen(open_page):
    page = open_page(address("/lift_off", TOWN), color_scheme="dark", reduced_motion="reduce")
    page.locator(".st-key-set-lift_off_mps2").wait_for()
    unseen, without_ring, names = [], [], [""]
    for _ in range(45):
        page.keyboard.press("Tab")
        page.wait_for_timeout(20)
        if names[-1] and page.evaluate(LOOKS_AS_BEFORE):
            unseen.append(names[-1])
        name, ring = page.evaluate(FOCUSED)
        if name.startswith("BODY"):
            break
        if name.startswith(("A ", "BUTTON", "SUMMARY")) and ring != "solid 3px":
            without_ring.append(name)
        names.append(name)
    assert unseen == []
    assert without_ring == []
    assert len(names) > 30


def test_who_asks_for_less_motion_gets_none(open_page):
    page = open_page("/")
    page.locator(".st-key-word-car button").click()
    page.locator(".st-key-choose-car").wait_for()
    longest = """
        () => Math.max(...[...document.querySelectorAll("*")].flatMap(element => {
            const style = getComputedStyle(element);
            return [style.transitionDuration, style.animationDuration].flatMap(all => all.split(",").map(parseFloat));
        }))
    """
    assert page.evaluate(longest) > 0.05
    page.emulate_media(reduced_motion="reduce")
    assert page.evaluate(longest) <= 0.001
