"""The page of claims in a real browser: one screen that answers, thumbs, links, progress, and files."""

import re
import subprocess
import sys
from pathlib import Path

import pytest

from model.claims.collection import claims
from model.claims.questions import question
from model.claims.verdicts import check
from model.words.claims import words_of
from pages.parts import claim_words
from pages.parts.claim_files import article_html
from tests.browser.looks import assert_large_enough, assert_on_first_screen, faults, resize
from tests.conftest import now_and_nightly

ROOT = Path(__file__).resolve().parents[2]
PAGE = "/check_a_claim"
QUICK = "two-megawatts"
VERDICT = ".st-key-claim-answer h2"
LAYOUT_SHIFT = """
    window.shifted = 0;
    new PerformanceObserver(list => {
        for (const entry of list.getEntries()) { window.shifted += entry.value; }
    }).observe({type: "layout-shift", buffered: false});
"""
NOTE_PROGRESS = """
    window.progress = [];
    new MutationObserver(() => {
        const text = document.querySelector(".st-key-claim-answer")?.innerText ?? "";
        if (text.includes("Running the model")) { window.progress.push(performance.now()); }
    }).observe(document.body, {subtree: true, childList: true, characterData: true});
"""


def reason_of(claim_id, **settings):
    from model.words.quantities import Display

    return claim_words.reason(check(question(claim_id, settings)), Display())


def type_number(page, text):
    entry = page.locator(".st-key-set-number input")
    entry.fill(text)
    entry.press("Enter")


def test_a_deep_link_shows_its_claim(open_page, expect):
    page = open_page(f"{PAGE}?claim={QUICK}&said_number=1")
    expect(page.locator("h1", has_text="braking power at the first moment is at least 1")).to_be_visible()
    expect(page.locator(VERDICT)).to_have_text(claim_words.heading(check(question(QUICK, {"number": "1"}))))
    assert "said_number=1" in page.url and "v=" in page.url


def test_a_claim_is_chosen_a_number_put_in_and_the_address_brings_both_back(open_page, settled, expect):
    page = open_page(PAGE)
    page.locator(".st-key-row-claims button").click()
    page.get_by_text(words_of(claims()[QUICK]).replace(" MW", "\N{NO-BREAK SPACE}MW")).click()
    expect(page.locator(VERDICT)).to_contain_text("does not hold in the modelled range")
    type_number(page, "0.3")
    page.wait_for_url(re.compile("said_number=0.3"))
    expect(page.locator(VERDICT)).to_contain_text("holds broadly")
    page.reload()
    expect(page.locator(VERDICT)).to_contain_text("holds broadly")
    settled(page)
    page.go_back()
    expect(page.locator(VERDICT)).to_contain_text("does not hold in the modelled range")


def test_a_condition_is_said_and_the_reason_follows(open_page, expect):
    page = open_page(f"{PAGE}?claim={QUICK}")
    page.locator(".st-key-row-said-car button").click()
    page.locator(".st-key-set-said-car").get_by_text("van", exact=True).click()
    page.wait_for_url(re.compile("said_car=van"))
    expect(page.get_by_text(reason_of(QUICK, car="van"))).to_be_visible()


@pytest.mark.parametrize("claim_id", now_and_nightly(["range-gain-in-town"], [QUICK, "heavier-recovers-more"]))
def test_claim_number_verdict_and_picture_fit_on_one_screen(open_page, claim_id):
    page = open_page(f"{PAGE}?claim={claim_id}")
    for width, height in ((1024, 768), (1280, 800)):
        resize(page, width, height)
        parts = ("h1", ".st-key-row-claims", ".st-key-claim-number", VERDICT, ".st-key-claim-runs")
        assert_on_first_screen(page, parts)


def test_what_opens_fits_a_finger_and_a_telephone_and_every_page_stands_in_the_navigation(open_page, settled, expect):
    page = open_page(f"{PAGE}?claim={QUICK}", width=390, height=844, color_scheme="dark")
    page.locator(".st-key-row-said-car button").click()
    expect(page.locator(".st-key-set-said-car")).to_be_visible()
    page.locator(".st-key-row-claims button").click()
    expect(page.locator(".st-key-row-cold-halves-range")).to_be_visible()
    settled(page)
    for width in (390, 820, 1024, 1280):
        resize(page, width, 844)
        assert_large_enough(page)
        if width > 640:
            expect(page.get_by_test_id("stTopNav").get_by_text("Check a claim")).to_be_visible()
            expect(page.get_by_text(re.compile(r"^\d+ more$"))).not_to_be_visible()


def test_nothing_jumps_while_the_model_runs_and_its_running_is_said(open_page, settled, expect):
    page = open_page(f"{PAGE}?claim=switching-delay")
    page.locator(".st-key-row-said-delay_ms button").click()
    entry = page.locator(".st-key-set-said-delay_ms input")
    expect(entry).to_be_visible()
    settled(page)
    page.evaluate(LAYOUT_SHIFT)
    page.evaluate(NOTE_PROGRESS)
    entry.fill("40 to 90")
    entry.press("Enter")
    page.wait_for_url(re.compile("said_delay_ms"))
    expect(page.get_by_text(reason_of("switching-delay", delay_ms="40..90"))).to_be_visible()
    settled(page)
    assert page.evaluate("window.progress.length") > 0
    assert page.evaluate("window.shifted") < 0.1


def test_the_file_is_what_the_command_line_prints_and_the_picture_is_made_for_print(open_page, tmp_path):
    page = open_page(f"{PAGE}?claim={QUICK}&said_number=0.9&said_car=van")
    page.locator(".st-key-fold-print summary").click()
    page.locator(".st-key-files-drawer summary").click()
    with page.expect_download() as download:
        page.get_by_role("button", name="Everything, JSON").click()
    download.value.save_as(tmp_path / "claim.json")
    command = [sys.executable, "-m", "model", "claim", QUICK, "--set", "number=0.9", "--set", "car=van"]
    printed = subprocess.run(command, cwd=ROOT, capture_output=True, check=True).stdout
    assert (tmp_path / "claim.json").read_bytes() == printed
    for name, start in (("Chart, SVG", b"<svg"), ("Chart, PNG", b"\x89PNG")):
        with page.expect_download() as download:
            page.get_by_role("button", name=name).click()
        download.value.save_as(tmp_path / "picture")
        assert (tmp_path / "picture").read_bytes().startswith(start)


def test_the_page_for_an_article_is_readable_by_everybody_and_fits_a_telephone(chromium):
    page = chromium.new_page(viewport={"width": 390, "height": 844}, offline=True)
    asked = []
    page.on("request", lambda request: asked.append(request.url))
    page.set_content(article_html(check(question("cold-halves-range"))))
    assert faults(page) == [] and not [address for address in asked if address.startswith("http")]
    assert page.evaluate("document.documentElement.scrollWidth") <= 390
    assert page.evaluate("document.querySelectorAll('a[href]').length") > 0
    page.close()
