"""What only a finger shows: what it scrolls over stays, a question mark explains, a refusal is in view."""

from urllib.parse import urlsplit

from tests.browser.looks import LEAST_PX

HELPS = '[data-testid="stTooltipHoverTarget"] > button[aria-label^="Help"]'
ENTRIES = '[data-testid="stButtonGroup"] [role="radiogroup"], [data-testid="stTextInputRootElement"], [role="group"]'
BOXES = "all => all.map(one => one.getBoundingClientRect().toJSON())"


def dragged(page, x: float, y: float, by_x: float, by_y: float) -> None:
    """Put a finger down, draw it over the screen, and lift it."""
    send = page.context.new_cdp_session(page).send
    for step in range(9):
        point = {"x": x + by_x * step / 8, "y": y + by_y * step / 8}
        send("Input.dispatchTouchEvent", {"type": "touchMove" if step else "touchStart", "touchPoints": [point]})
        page.wait_for_timeout(20)
    send("Input.dispatchTouchEvent", {"type": "touchEnd", "touchPoints": []})


def middle(box: dict[str, float], share: float = 0.5) -> tuple[float, float]:
    return box["x"] + share * box["width"], box["y"] + box["height"] / 2


def overlap(one: dict[str, float], other: dict[str, float]) -> bool:
    return all(
        one[start] < other[end] - 1 and other[start] < one[end] - 1
        for start, end in (("left", "right"), ("top", "bottom"))
    )


def test_a_finger_that_scrolls_over_a_slider_does_not_move_it(open_page, settled, expect):
    page = open_page("/lift_off", width=390, height=844, has_touch=True)
    slider = page.locator(".st-key-set-lift_off_mps2")
    slider.scroll_into_view_if_needed()
    shown = slider.get_by_test_id("stSliderThumbValue")
    before = shown.inner_text()
    page.touchscreen.tap(*middle(slider.get_by_role("group").bounding_box(), 0.8))
    dragged(page, *middle(slider.get_by_role("group").bounding_box(), 0.8), -20, -150)
    page.wait_for_timeout(500)
    expect(settled(page).locator(".st-key-set-lift_off_mps2").get_by_test_id("stSliderThumbValue")).to_have_text(before)
    assert "lift_off_mps2" not in urlsplit(page.url).query
    handle = shown.evaluate("label => label.parentElement.getBoundingClientRect().toJSON()")
    dragged(page, *middle(handle), 60, 0)
    page.wait_for_url("**lift_off_mps2=**")


def test_a_question_mark_flips_no_toggle_and_a_refusal_is_in_view_without_a_jump(open_page, settled, expect):
    page = open_page("/", width=390, height=844, has_touch=True)
    page.locator(".st-key-word-season button").tap()
    cabin = page.get_by_role("switch", name="Cabin heating and cooling")
    expect(cabin).to_be_checked()
    # as large as a finger, and clear of what it explains
    helps = page.get_by_test_id("stPopoverBody").locator(HELPS)
    expect(helps).to_have_count(5)
    boxes = helps.evaluate_all(BOXES)
    assert all(min(box["width"], box["height"]) >= LEAST_PX for box in boxes)
    others = page.get_by_test_id("stPopoverBody").locator(ENTRIES).evaluate_all(BOXES)
    assert others and not any(overlap(box, other) for box in boxes for other in others)
    help_of_cabin = page.locator('[data-testid="stHorizontalBlock"], [data-testid="stLayoutWrapper"]').filter(has=cabin)
    help_of_cabin.last.get_by_test_id("stTooltipIcon").tap()
    expect(page.get_by_text("Whether heater and air conditioning may run.")).to_be_visible()
    expect(cabin).to_be_checked()
    page.keyboard.press("Escape")
    page.keyboard.press("Escape")

    page.locator(".st-key-row-leg-0 button").tap()
    entry = page.locator(".st-key-set-leg0-stops input")
    settled(page)
    entry.tap()
    assert entry.get_attribute("inputmode") == "decimal"
    place = entry.bounding_box()["y"]
    entry.fill("400")
    entry.press("Enter")
    refusal = page.get_by_text("do not fit in 1.2 km")
    expect(refusal).to_be_in_viewport()
    # the entry itself is marked, and no other
    framed = page.locator('[class*="st-key-entry-"] [data-testid="stTextInputRootElement"]')
    widths = framed.evaluate_all("all => all.map(one => parseFloat(getComputedStyle(one).borderTopWidth))")
    assert sorted(widths)[-1] == 2 and max(sorted(widths)[:-1]) < 2
    expect(page.get_by_text("In grey, the last answer:")).to_have_count(1)
    assert abs(settled(page).locator(".st-key-set-leg0-stops input").bounding_box()["y"] - place) < 60
