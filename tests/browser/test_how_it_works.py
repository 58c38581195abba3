"""How it works in a real browser: one panel on screen, played with, linked to and turned over."""

from urllib.parse import parse_qs, urlsplit

import pytest

PANELS = ("speed", "flow", "quadrants", "who", "motor", "discs")
SENTENCE = ".st-key-panel h2"
PICTURE = '[class*="st-key-figure-panel-"] [data-testid="stVegaLiteChart"]'
SLIDER = '.st-key-set-from_kmh input[type="range"]'
DRAWN = f"{PICTURE} svg.marks"


@pytest.fixture
def expect(chromium):
    from playwright.sync_api import expect

    return expect


def link(page):
    return {key: values[0] for key, values in parse_qs(urlsplit(page.url).query).items()}


def test_a_deep_link_on_a_fresh_server_shows_its_panel_and_what_is_set(start_server, open_page, expect):
    page = open_page("/how_it_works?panel=who&from_kmh=70&car=van", on=start_server())
    expect(page.locator("h1", has_text="Who slows the car?")).to_be_visible()
    expect(page.locator(SENTENCE)).to_contain_text("In a stop from 70 km/h")
    expect(page.locator(".st-key-word-car")).to_contain_text("van")
    assert page.locator(SLIDER).input_value() == "70"


def test_a_slider_redraws_words_and_picture_and_stands_in_the_address(open_page, expect):
    page = open_page("/how_it_works?panel=flow")
    before = page.locator(DRAWN).text_content()
    page.locator(SLIDER).press("ArrowRight")
    expect(page.locator(SENTENCE)).to_contain_text("105 km/h")
    expect(page.locator(DRAWN)).not_to_have_text(before)
    assert link(page)["from_kmh"] == "105"
    page.reload()
    expect(page.locator(SENTENCE)).to_contain_text("105 km/h")


def test_a_presenters_keys_turn_the_panels_and_back_undoes(open_page, expect):
    page = open_page("/how_it_works")
    expect(page.locator(SENTENCE)).to_be_visible()
    first = page.locator("h1").inner_text()
    page.locator("body").press("PageDown")
    expect(page.locator("h1", has_text=first)).to_have_count(0)
    assert link(page)["panel"] == PANELS[1]
    page.go_back()
    expect(page.locator("h1", has_text=first)).to_be_visible()


def test_what_is_set_and_the_drive_stay_when_the_season_changes(open_page, expect):
    page = open_page("/how_it_works?panel=discs&stops=1&car=van")
    expect(page.locator(SENTENCE)).to_contain_text("one stop")
    page.locator(".st-key-word-season button").click()
    page.get_by_text("Winter", exact=True).click()
    expect(page.locator(".st-key-word-season")).to_contain_text("winter")
    expect(page.locator(SENTENCE)).to_contain_text("one stop")
    assert (link(page)["panel"], link(page)["stops"], link(page)["car"]) == ("discs", "1", "van")


@pytest.mark.parametrize("panel", PANELS)
def test_nothing_runs_over_the_edge_of_a_telephone(open_page, expect, panel):
    width = 390
    page = open_page(f"/how_it_works?panel={panel}", width=width, height=844)
    expect(page.locator(DRAWN)).to_be_visible()
    box = page.locator(PICTURE).bounding_box()
    assert box["x"] >= 0 and box["x"] + box["width"] <= width
    assert page.evaluate("document.documentElement.scrollWidth") <= width


@pytest.mark.parametrize("panel", PANELS)
def test_idea_number_controls_and_picture_stand_on_one_tablet_screen(open_page, expect, panel):
    page = open_page(f"/how_it_works?panel={panel}", width=1024, height=768)
    expect(page.locator(DRAWN)).to_be_visible()
    shown = page.locator(f"h1, {SENTENCE}, {PICTURE}, .st-key-panel [data-testid='stSlider']")
    boxes = [box.bounding_box() for box in shown.all()]
    assert len(boxes) >= 3
    assert max(box["y"] + box["height"] for box in boxes) <= 768
