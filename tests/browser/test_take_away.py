"""Taking away and opening again in a real browser, and the card as it is printed."""

import re
from dataclasses import replace
from itertools import product

import pytest
from pypdf import PdfReader

from model.describe.scenario_io import starting_drives
from model.out.cli import main
from model.words.quantities import Display
from pages.parts.public_link import PUBLIC_URL
from pages.parts.report import contents, report_html
from tests.browser.addresses import address, scenario_at
from tests.conftest import now_and_nightly
from tests.pages.made_reports import taken, with_most_to_say

TOWN = starting_drives()["town"][2]
HILL = starting_drives()["suburb-hill"][2]
MOTORWAY = starting_drives()["motorway"][2]
ADDRESSES = {"code": "https://drive.net/showroom", "text": ""}
MARGINS_MM = 2 * 11
WIDTH_MM = {"A4": 210, "Letter": 215.9}
PX_PER_MM = 96 / 25.4
PRINTED = [
    ("usual", "code", "A4"), ("us", "text", "Letter"), ("most", "code", "Letter"), ("most", "text", "A4"),
    ("all assumed", "text", "Letter"),
]  # fmt: skip
"""Printed in every run: each card, each way to its address and each paper, more than once what has most to say."""
PRINTED_LATER = [
    one for one in product(("usual", "us", "most", "all assumed"), ADDRESSES, WIDTH_MM) if one not in PRINTED
]
OUTSIDE = """
    width => [...document.body.querySelectorAll("*")].filter(element => {
        const box = element.getBoundingClientRect();
        return box.width && (box.right > width + 1 || box.left < -1);
    }).map(element => element.tagName + " " + element.textContent.slice(0, 40))
"""
CUT = """
    () => [...document.body.querySelectorAll("*")].filter(element =>
        getComputedStyle(element).overflowX != "visible" && element.scrollWidth > element.clientWidth + 1
    ).map(element => element.tagName)
"""


COLOURS = """() => ["body", "h1", "[data-testid=stApp]"].map(place => {
    const style = getComputedStyle(document.querySelector(place));
    return [style.color, style.backgroundColor];
}).concat([...document.querySelectorAll("svg.marks text")].map(text => getComputedStyle(text).fill))"""
NOTE_PRINTS = """
    window.print = () => (window.printed ??= []).push(document.querySelector("#paper")?.textContent ?? "the page");
    navigator.share = async (what) => { window.shared = what; };
"""


@pytest.fixture(scope="module")
def made():
    """The gathered contents of four cards: a usual one, a long drive in US units, and two with most to say."""
    long = with_most_to_say()
    return {"usual": taken(HILL), "us": taken(MOTORWAY, Display(us=True)), "most": taken(long, Display(us=True)),
            "all assumed": taken(replace(long, stated=(), car_class="large-suv"))}  # fmt: skip


def plain(text):
    """Text without any white space: print breaks lines where it likes."""
    return re.sub(r"[\s\u00ad\u2010-]+", "", text)


@pytest.mark.parametrize("name, address, paper", now_and_nightly(PRINTED, PRINTED_LATER))
def test_a_side_prints_on_one_page_without_a_word_cut_off(chromium, made, monkeypatch, tmp_path, name, address, paper):
    monkeypatch.setenv(PUBLIC_URL, ADDRESSES[address])
    gathered = made[name]
    page = chromium.new_page()
    page.set_content(report_html(gathered))
    page.pdf(path=tmp_path / "page.pdf", format=paper)

    sheets = [plain(sheet.extract_text()) for sheet in PdfReader(tmp_path / "page.pdf").pages]
    assert len(sheets) == 2
    filled = contents(gathered)
    needed = [
        filled["about"], *filled["warnings"], *filled["legs"], filled["habits"], filled["caution"], filled["shares"],
        *(text for _, *texts in filled["numbers"] for text in texts),
        *(text for title, sentences in (*filled["cards"], *filled["more"]) for text in (title, *sentences)),
        filled["band"], *filled["left_out"],
        *(text for row in filled["figures"] for text in row), filled["also_yours"], filled["year_rest"],
        "scan the code" if address == "code" else filled["short_text"],
    ]  # fmt: skip
    both = "".join(sheets)
    assert [text for text in needed if plain(text) not in both] == []
    for words in ("motor slows the car", filled["caution"], *filled["warnings"]):
        assert plain(words) in sheets[0]
    assert plain(filled["band"]) in sheets[1]

    # the same, measured: at the width of the paper nothing reaches beyond it
    width = int((WIDTH_MM[paper] - MARGINS_MM) * PX_PER_MM)
    page.emulate_media(media="print")
    page.set_viewport_size({"width": width, "height": 1000})
    assert page.evaluate(OUTSIDE, width) == []
    assert page.evaluate(CUT) == []
    page.close()


@pytest.mark.parametrize("width", [390, 820])
def test_on_a_screen_it_needs_no_sideways_scrolling_and_asks_nobody_anything(chromium, made, width):
    page = chromium.new_page(viewport={"width": width, "height": 844})
    asked = []
    page.on("request", lambda request: asked.append(request.url))
    page.set_content(report_html(made["usual"]))
    assert page.evaluate("document.documentElement.scrollWidth") <= width
    assert asked == []
    page.close()


def test_a_page_is_taken_away_in_two_taps_and_opened_again_elsewhere(open_page, settled, expect, tmp_path):
    page = open_page(address("/", HILL.with_setting("mass_kg", 1900.0)))
    page.emulate_media(media="print")
    expect(page.get_by_test_id("stHeader")).to_be_hidden()
    page.emulate_media(media="screen")
    page.add_init_script(NOTE_PRINTS)
    page.reload()
    page.get_by_role("button", name="Print this page").click()
    assert page.evaluate("window.printed") == ["the page"]
    page.get_by_role("link", name="Take away").click()
    page.locator(".st-key-sheets .paper").wait_for()
    page.get_by_role("button", name="Print", exact=True).click()
    assert page.evaluate("window.printed.length") == 2
    assert "A family hatch, adjusted" in page.evaluate("window.printed[1]")
    # on paper there is nothing but the two sides, however printing was asked for
    page.evaluate("document.querySelector('#paper').remove()")
    page.emulate_media(media="null")
    page.pdf(path=tmp_path / "page.pdf", format="Letter")
    assert len(PdfReader(tmp_path / "page.pdf").pages) == 2
    # without an address for others there is nothing to share
    expect(page.get_by_role("button", name="Share")).to_have_count(0)
    with page.expect_download() as download:
        page.get_by_role("button", name="The page (HTML)").click()
    file = tmp_path / "page.html"
    download.value.save_as(file)
    assert download.value.suggested_filename == "brake-to-battery-family-hatch.html"
    assert "family hatch, adjusted" in file.read_text(encoding="utf-8")

    other = open_page("/take_away")
    other.locator(".st-key-open-file input[type=file]").set_input_files(file)
    expect(other.get_by_text("Opened: family hatch, adjusted, suburb to city, over a hill.")).to_be_visible()
    assert scenario_at(settled(other)) == HILL.with_setting("mass_kg", 1900.0)
    other.get_by_role("link", name="Go to the drive").click()
    expect(other.locator(".st-key-word-car")).to_contain_text("family hatch, adjusted")


@pytest.mark.parametrize(("width", "height"), [(1280, 800), (1024, 768)])
def test_whoever_opens_the_page_sees_the_card_beside_what_prints_it(open_page, width, height):
    page = open_page(address("/take_away", TOWN), width=width, height=height)
    page.locator(".st-key-sheets .pair").wait_for()
    card = page.locator(".st-key-sheets .side").first.bounding_box()
    button = page.locator(".st-key-take-print button").bounding_box()
    assert button["x"] + button["width"] < card["x"] and card["y"] < button["y"]
    assert height - card["y"] > card["height"] / 2


def test_the_answer_that_is_downloaded_is_the_command_lines(open_page, tmp_path, capsys):
    page = open_page(address("/take_away", HILL))
    page.locator(".st-key-take-check-drawer summary").click()
    # a band is run for it after the tap, which takes a busy machine a while
    with page.expect_download(timeout=120_000) as download:
        page.get_by_role("button", name="The answer (JSON)").click()
    file = tmp_path / "answer.json"
    download.value.save_as(file)
    assert main(["drive", str(file)]) == 0
    assert capsys.readouterr().out.encode() == file.read_bytes()


def test_a_text_is_copied_from_one_screen_and_opened_on_another(open_page, settled, expect):
    page = open_page(address("/take_away", HILL))
    page.locator(".st-key-take-over-drawer summary").click()
    text = page.get_by_test_id("stCode").inner_text().replace("\n", "")
    other = open_page("/take_away")
    other.locator(".st-key-open-text input").fill(text)
    other.get_by_role("button", name="Open the text").click()
    expect(other.get_by_text("Opened: family hatch, suburb to city, over a hill.")).to_be_visible()
    assert scenario_at(settled(other)) == HILL


def test_two_cars_are_compared_in_a_few_taps_and_a_link_brings_them_back(open_page, settled, expect):
    page = open_page(address("/", TOWN))
    page.get_by_role("link", name="Compare").click()
    expect(page.locator("h2").first).to_contain_text("Winter, 1 °C takes")
    page.locator(".st-key-compare-subject").get_by_role("combobox").click()
    page.get_by_role("option", name="Car", exact=True).click()
    page.locator(".st-key-compare-values").get_by_text("Large SUV").click()
    expect(page.locator("h2").first).to_contain_text("large SUV takes")
    page.locator(".st-key-compare-values").get_by_text("Van").click()
    expect(page.locator("h2").first).to_contain_text("van takes")
    page.wait_for_url(re.compile("c=van"))
    told = settled(page).locator("h2").first.inner_text()
    again = open_page(page.url.removeprefix(page.url.split("/compare")[0]))
    expect(again.locator("h2").first).to_have_text(told)
    page.go_back()
    expect(page.locator("h2").first).not_to_contain_text("van takes")


def test_a_page_shown_dark_prints_dark_on_white(open_page):
    page = open_page("/", color_scheme="dark")
    page.locator("svg.marks text").first.wait_for()
    page.emulate_media(media="print", color_scheme="dark")
    *grounds, first, second, third = page.evaluate(COLOURS)[:6]
    assert {tuple(one) for one in grounds} == {("rgb(20, 25, 29)", "rgba(0, 0, 0, 0)")}
    assert {first, second, third} <= {"rgb(20, 25, 29)", "rgb(91, 95, 99)"}
