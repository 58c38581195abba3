"""How it works in a real browser: one panel on screen, played with, linked to and turned over."""

from tests.browser.addresses import link

SENTENCE = ".st-key-panel h2"
PICTURE = '[class*="st-key-figure-panel-"] [data-testid="stVegaLiteChart"]'
SLIDER = '.st-key-set-from_kmh input[type="range"]'
DRAWN = f"{PICTURE} svg.marks"


def test_a_deep_link_shows_its_panel_and_what_is_set(open_page, expect):
    page = open_page("/how_it_works?panel=who&from_kmh=70&car=van")
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
    assert link(page)["panel"] == "flow"
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


def test_no_equation_is_cut_on_a_telephone(open_page, expect):
    page = open_page("/how_it_works", width=390, height=844)
    for panel in ("speed", "flow", "quadrants", "who", "motor", "discs"):
        expect(page.locator(SENTENCE)).to_be_visible()
        assert link(page).get("panel", "speed") == panel
        if panel == "speed":
            page.locator(".st-key-why-drawer summary").click()
        expect(page.locator(".katex-html")).to_be_visible()
        parts = page.locator(".katex-html .base")
        assert max(parts.evaluate_all("all => all.map(one => one.getBoundingClientRect().right)")) <= 390, panel
        if panel != "discs":
            first = page.locator("h1").inner_text()
            page.get_by_role("button", name="Next").click()
            expect(page.locator("h1", has_text=first)).to_have_count(0)
