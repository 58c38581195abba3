"""A telephone: pages are short, the answer stays in sight, and the way in is there."""

import pytest

from model.limits.limit_settings import LIMIT_PARTS
from tests.browser.looks import LEAST_PX, come_to_nothing, faults
from tests.conftest import now_and_nightly

SCREENS = {
    "/": 4,
    "/lift_off": 4,
    **{f"/winter_and_limits?part={part}": 4 for part in LIMIT_PARTS},
    "/check_a_claim": 5,
    "/sources": 4,
}
"""How many screens of 390×844 a page may be long."""
LATER = [path for path in SCREENS if "part=" in path and "part=cold" not in path]
"""Parts that are much alike, seen nightly."""
HEIGHT = "document.querySelector('[data-testid=stMain]').scrollHeight"
BOXES = "all => all.map(one => one.getBoundingClientRect().toJSON())"
HEIGHTS = "all => all.map(one => one.getBoundingClientRect().height)"
TO_THE_END = "document.querySelector('[data-testid=stMain]').scrollTo(0, 1100)"
ANSWERS = {"/": ".st-key-answer h2", "/lift_off": ".st-key-lift-answer h2", "/how_it_works": ".st-key-panel h1"}
LOWEST_ANSWER_PX = 480
OUTER_LINES = """
    cells => cells.map((cell, place) => {
        const style = getComputedStyle(cell), side = place % 2 ? "Right" : "Left";
        return `${style[`border${side}Width`]} ${style[`border${side}Color`]}`;
    })
"""
SEEN = """
    () => {
        const line = document.querySelector(".st-key-in-sight").getBoundingClientRect();
        const head = document.querySelector("[data-testid=stHeader]").getBoundingClientRect();
        const middle = document.elementFromPoint(line.left + 30, line.top + line.height / 2);
        return line.top >= head.bottom - 8 && line.bottom < 200 && middle.closest(".st-key-in-sight") !== null;
    }
"""


@pytest.mark.parametrize("path", now_and_nightly([path for path in SCREENS if path not in LATER], LATER))
def test_a_page_is_short_and_its_answer_stays_in_sight(open_page, expect, path):
    page = open_page(path, width=390, height=844, has_touch=True)
    page.locator("h1").wait_for()
    come_to_nothing(page, lambda: [height] if (height := page.evaluate(HEIGHT)) > SCREENS[path] * 844 else [])
    if path != "/sources":
        # not told twice while the answer itself is there
        expect(page.locator(".st-key-in-sight")).to_be_hidden()
        page.evaluate(TO_THE_END)
        come_to_nothing(page, lambda: [] if page.evaluate(SEEN) else ["the answer is out of sight"])
    assert faults(page, runOnly=["wcag2a", "wcag2aa"]) == []


@pytest.mark.parametrize("path", ANSWERS)
def test_an_answer_begins_well_within_the_first_screen_and_the_strip_follows_it(open_page, expect, path):
    page = open_page(path, width=390, height=844, has_touch=True)
    answer = page.locator(ANSWERS[path]).first
    answer.wait_for()
    come_to_nothing(page, lambda: [top] if (top := answer.bounding_box()["y"]) > LOWEST_ANSWER_PX else [])
    assert page.locator(".st-key-strip").bounding_box()["y"] > answer.bounding_box()["y"]


@pytest.mark.parametrize("part", ["grip", "hills"])
def test_cells_in_two_rows_keep_their_outer_lines(open_page, part):
    """Beside the chosen one the toolkit draws no line, also where that stands in another row."""
    page = open_page(f"/winter_and_limits?part={part}", width=390, height=844, has_touch=True)
    cells = page.locator(".st-key-choose-part button")
    cells.nth(3).wait_for()
    assert [line for line in cells.evaluate_all(OUTER_LINES) if line.startswith("0px") or line.endswith(", 0)")] == []


def test_a_telephone_itself_is_known_as_narrow(chromium, server):
    """It lays a page out 980 wide until it has read how wide it is to be; a narrow window does not."""
    context = chromium.new_context(viewport={"width": 390, "height": 844}, is_mobile=True, has_touch=True)
    page = context.new_page()
    page.goto(server.url)
    page.locator(".st-key-in-sight").wait_for(state="attached")
    assert [one["value"] for one in context.cookies() if one["name"] == "narrow"] == ["yes"]
    context.close()


def test_guide_me_is_there_and_a_picture_unfolds(open_page, expect):
    page = open_page("/", width=390, height=844, has_touch=True)
    expect(page.get_by_role("link", name="Guide me")).to_be_visible()
    picture = page.locator('[class*="st-key-figure-before-after"] svg.marks')
    expect(picture).to_have_count(0)
    page.locator('.st-key-fold-before-after summary').tap()
    expect(picture).to_be_visible()


def test_a_window_that_becomes_narrow_has_what_a_telephone_has_and_loses_nothing(open_page, settled, expect):
    page = open_page("/own_road", width=1024, height=768)
    page.locator(".st-key-recording-sample button").click()
    expect(page.get_by_role("heading", name="kWh were measured")).to_be_visible()
    page.set_viewport_size({"width": 390, "height": 844})
    ways = page.locator(".st-key-foot-pages")
    expect(ways.get_by_role("link")).to_have_count(8)
    expect(settled(page).get_by_role("heading", name="kWh were measured")).to_be_visible()
    ways.get_by_role("link", name="Lift-off").click()
    expect(page.locator(".st-key-in-sight")).to_be_attached()
    page.set_viewport_size({"width": 1024, "height": 768})
    expect(ways).to_have_count(0)
    expect(page.locator(".st-key-in-sight")).to_have_count(0)
    expect(page.get_by_role("alert").filter(has_text="cannot be reached")).to_have_count(0)


def test_a_telephone_turned_on_its_side_keeps_its_page(open_page, settled, expect):
    page = open_page("/", width=390, height=844, has_touch=True)
    expect(settled(page).locator(".st-key-in-sight")).to_be_attached()
    connections = []
    page.on("websocket", lambda socket: connections.append(socket.url))
    page.set_viewport_size({"width": 844, "height": 390})
    page.wait_for_function("innerWidth === 844")
    page.locator('.st-key-fold-before-after summary').tap()
    expect(page.locator('[class*="st-key-figure-before-after"] svg.marks')).to_be_visible()
    assert connections == []


def test_the_menu_folds_up_once_a_page_is_chosen(open_page, settled, expect):
    page = open_page("/", width=390, height=844, has_touch=True)
    page.get_by_test_id("stExpandSidebarButton").tap()
    links = page.get_by_test_id("stSidebarNavLink")
    expect(links.filter(has_text="Lift-off")).to_be_in_viewport()
    page.wait_for_timeout(500)  # it slides in
    assert [high for high in links.evaluate_all(HEIGHTS) if high < LEAST_PX] == []
    links.filter(has_text="Lift-off").tap()
    expect(page.locator(".st-key-lift-answer h2")).to_be_visible()
    expect(links.first).not_to_be_in_viewport()
    expect(page.get_by_role("button", name="Menu")).to_be_in_viewport()


def test_what_a_tap_opens_the_next_of_a_double_tap_leaves_open(open_page, settled, expect):
    page = open_page("/", width=390, height=844, has_touch=True)
    door = page.locator(".st-key-door-quick button")
    door.scroll_into_view_if_needed()
    place = door.bounding_box()
    for wait_ms in (100, 0):
        page.touchscreen.tap(place["x"] + 30, place["y"] + 20)
        page.wait_for_timeout(wait_ms)
    expect(page.locator(".st-key-quick")).to_be_in_viewport()
    expect(settled(page).locator(".st-key-door-quick")).to_contain_text("Close")
    # a tap that is meant still closes it
    page.wait_for_timeout(500)
    door.tap()
    expect(page.locator(".st-key-quick")).to_have_count(0)


def test_a_recording_is_answered_in_sight_and_back_leads_to_where_one_came_from(open_page, settled, expect):
    page = open_page("/", width=390, height=844, has_touch=True)
    page.locator(".st-key-description").get_by_test_id("stPageLink-NavLink").tap()
    sample = page.locator(".st-key-recording-sample button")
    sample.tap()
    expect(page.get_by_role("heading", name="kWh were measured")).to_be_in_viewport()
    page.wait_for_url("**recorded=yes")
    settled(page)
    page.go_back()
    expect(page.locator(".st-key-answer h2")).to_be_visible()


def test_an_address_that_is_only_completed_is_no_step_of_its_own(open_page):
    page = open_page("/lift_off", width=390, height=844, has_touch=True)
    page.wait_for_url("**v=*")
    assert page.evaluate("history.length") == 2  # the empty tab, and this page


def test_the_line_is_set_alike_on_pages_drawn_in_parts_and_others(open_page):
    lines = []
    for path in ("/", "/winter_and_limits"):
        page = open_page(path, width=390, height=844, has_touch=True)
        words = page.locator('.st-key-answer-words [data-testid="stPopoverButton"]')
        words.nth(3).wait_for()
        lines.append([round(one["x"]) for one in words.evaluate_all(BOXES)])
    assert lines[0] == lines[1]
