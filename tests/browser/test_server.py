"""The server as a visitor meets it: its headers, its charts, its errors, its links."""

import socket
import urllib.error
import urllib.request
from urllib.parse import urlsplit

import pytest

from app import ERROR_SENTENCE
from pages.parts.public_link import PUBLIC_URL
from tests.browser.test_main_job import HEADLINE, address, scenario_at
from tests.browser.test_sessions import OWN

TOP_LINK = '[data-testid="stTopNavLink"]'
CHART = '[data-testid="stVegaLiteChart"]'
LOADED_FONTS = """
    async () => {
        await document.fonts.ready;
        return [...document.fonts].filter(font => font.status === "loaded").map(font => font.family);
    }
"""
LINK = "/compare"
"""A page that the navigation does not show: reached by its link alone."""
PATHS = (
    "/lift_off", "/winter_and_limits", "/how_it_works", "/check_a_claim", "/show", "/compare", "/own_road",
    "/take_away", "/sources",
)  # fmt: skip
BROKEN_APP = "tests/browser/broken_app.py"


def status_of(url, **headers):
    """The status of an answer, and its headers."""
    try:
        with urllib.request.urlopen(urllib.request.Request(url, headers=headers), timeout=5) as answer:
            return answer.status, answer.headers
    except urllib.error.HTTPError as refused:
        return refused.code, refused.headers


@pytest.mark.parametrize("path", ["/", "/_stcore/health", "/no-such-page"])
def test_every_answer_carries_the_security_headers(server, path):
    headers = status_of(server.url + path)[1]
    assert headers["X-Content-Type-Options"] == "nosniff"
    assert headers["Referrer-Policy"] == "no-referrer"
    policy = headers["Content-Security-Policy"]
    assert "default-src 'self'" in policy
    assert "frame-ancestors 'self'" in policy
    assert "'unsafe-eval'" not in policy
    assert "//" not in policy and "*" not in policy, "no remote host may be named"


def test_what_is_not_there_is_not_answered_with_a_blank_page(server):
    for path in ("/a/b", "/no-such-page", "/lift_off/winter_and_limits", "/_stcore/metrics"):
        assert status_of(server.url + path)[0] == 404
    for path in ("/", "/lift_off", "/lift_off/", "/own.js", "/favicon.png", "/_stcore/health"):
        assert status_of(server.url + path)[0] == 200


def test_the_physics_is_compiled_before_the_first_visitor_and_the_log_says_so(server):
    assert server.log.count("The physics is ready after ") == 1


def test_a_chart_is_drawn_under_the_policy(open_page):
    page = open_page()
    marks = page.locator(f"{CHART} svg .mark-group, {CHART} canvas").first
    marks.wait_for()
    size = page.locator(CHART).first.bounding_box()
    assert size["width"] > 100
    assert size["height"] > 40


def test_the_fonts_are_the_bundled_ones(open_page):
    page = open_page()
    assert "Source Serif" in page.locator("h1").first.evaluate("element => getComputedStyle(element).fontFamily")
    assert "Source Sans" in page.locator("body").evaluate("element => getComputedStyle(element).fontFamily")
    loaded = page.evaluate(LOADED_FONTS)
    assert any("Source Serif" in family for family in loaded)
    assert any("Source Sans" in family for family in loaded)


@pytest.fixture(scope="module")
def public(start_server):
    """A server as it is run for everybody, and a door at which whatever asks the way through a proxy would knock."""
    with socket.create_server(("127.0.0.1", 0)) as door:
        proxy = f"http://127.0.0.1:{door.getsockname()[1]}"
        names = ("HTTP_PROXY", "HTTPS_PROXY", "http_proxy", "https_proxy")
        nobody_excepted = {"NO_PROXY": "", "no_proxy": ""}
        environment = dict.fromkeys(names, proxy) | nobody_excepted | {PUBLIC_URL: "https://drive.net"}
        yield start_server(environment=environment), door


def test_a_first_visit_to_a_pages_link_shows_the_full_shell(server, public, open_page):
    """On a server that has drawn nothing yet, Streamlit's own discovery of pages must not come first."""
    known = open_page(LINK)
    known.locator("h1").wait_for()

    first = open_page(LINK, on=public[0])
    first.locator("h1").wait_for()
    assert urlsplit(first.url).path == LINK
    assert first.title() == known.title()
    assert first.locator("h1").all_inner_texts() == known.locator("h1").all_inner_texts()
    assert first.locator(TOP_LINK).all_inner_texts() == known.locator(TOP_LINK).all_inner_texts()
    assert first.get_by_test_id("stSidebarNav").count() == 0
    assert first.get_by_role("dialog").count() == 0
    assert first.get_by_test_id("stMainMenu").count() == 0


def shaken(server, origin, host=""):
    """The status with which a WebSocket is opened or refused."""
    own = urlsplit(server.url).netloc
    key = "dGhlIHNhbXBsZSBub25jZQ=="
    lines = (
        "GET /_stcore/stream HTTP/1.1", f"Host: {host or own}", "Upgrade: websocket", "Connection: Upgrade",
        f"Sec-WebSocket-Key: {key}", "Sec-WebSocket-Version: 13", f"Origin: {origin}", "", "",
    )  # fmt: skip
    with socket.create_connection((urlsplit(server.url).hostname, urlsplit(server.url).port), timeout=5) as line:
        line.sendall("\r\n".join(lines).encode())
        return int(line.recv(100).split()[1])


def test_a_strangers_page_is_turned_away_and_nobody_is_asked_about_it(public):
    there, door = public
    own = urlsplit(there.url).netloc
    assert shaken(there, f"http://{own}") == 101
    # a proxy calls the server by its own name for it, the browser by the public one
    assert shaken(there, "https://drive.net") == 101
    assert shaken(there, "https://drive.net", host="drive.net") == 101
    for origin in ("https://stranger.net", "http://localhost:9", "http://192.0.2.1", "null", "http://[", ""):
        assert shaken(there, origin) == 403
    # a stranger's name that leads here
    assert shaken(there, "http://stranger.net", host="stranger.net") == 403
    assert status_of(there.url, Host="stranger.net:80")[0] == 403
    door.settimeout(0.5)
    with pytest.raises(TimeoutError):
        door.accept()


def test_a_page_without_a_host_is_turned_away_where_no_name_was_set(server):
    assert shaken(server, server.url) == 101
    for origin in ("file://", "http://[", ""):
        assert shaken(server, origin) == 403


def test_links_to_every_page_and_nothing_asked_of_the_internet(public, open_page, settled, expect):
    there, door = public
    page = open_page(address("/", OWN), on=there)
    for path in PATHS:
        page.goto(there.url + address(path, OWN))
        expect(page.locator("h1")).to_have_count(1)
        if path == "/check_a_claim":
            page.locator(".st-key-fold-road summary").click()
        if path != "/show":
            expect(page.locator(".st-key-word-car")).to_contain_text("city car, adjusted")
        assert urlsplit(settled(page).url).path == path
        assert scenario_at(page) == OWN
        if path == "/take_away":
            expect(page.get_by_alt_text("QR code of the link to this drive")).to_be_visible()
            expect(page.get_by_test_id("stCode")).to_contain_text("https://drive.net/?car=city-car")
    door.settimeout(0.5)
    with pytest.raises(TimeoutError):
        door.accept()


def test_an_uncaught_error_is_one_sentence_and_keeps_the_inputs(start_server, open_page, settled, expect):
    broken = start_server(BROKEN_APP)
    page = open_page(address("/winter_and_limits", OWN), on=broken)
    entry = page.locator(".st-key-set-soc_start-part input")
    entry.fill("88")
    entry.press("Enter")
    page.wait_for_url(lambda url: "soc_start=0.88" in url)
    cold = OWN.with_setting("soc_start", 0.88).with_setting("ambient_c", -25.0)
    entry = page.locator(".st-key-set-ambient_c-part input")
    entry.fill("-25")
    entry.press("Enter")

    alert = page.get_by_role("alert")
    alert.wait_for()
    (said,) = settled(page).get_by_role("alert").all_inner_texts()
    assert said == ERROR_SENTENCE and said.count(".") == 1, "one sentence"
    assert page.get_by_test_id("stException").count() == 0
    assert "on purpose" not in page.locator("body").inner_text()
    assert scenario_at(page) == cold

    page.locator(TOP_LINK).first.click()
    expect(page.locator(HEADLINE)).to_be_visible()
    expect(alert).to_have_count(0)
    expect(page.locator(".st-key-word-season")).to_contain_text("−25")
    assert scenario_at(settled(page)) == cold
    page.go_back()
    alert.wait_for()

    # what the sentence says helps: the entry stands in the answer line too
    page.locator(".st-key-word-season button").click()
    entry = page.locator(".st-key-set-ambient_c input")
    entry.fill("-5")
    entry.press("Enter")
    expect(alert).to_have_count(0)
    expect(page.locator(".st-key-set-soc_start-part input")).to_have_value("88")
    assert scenario_at(settled(page)) == cold.with_setting("ambient_c", -5.0)
    assert broken.log.count("RuntimeError: a failure made on purpose") >= 2
