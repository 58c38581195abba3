"""Sessions: a tablet that sleeps, a server that was started anew, tabs side by side."""

from urllib.parse import urlsplit

from model.describe.scenario_io import starting_drives
from tests.browser.test_main_job import HEADLINE, TOWN, address, pick_drive, scenario_at

KEEP_SOCKETS = """
    window.sockets = [];
    window.WebSocket = new Proxy(window.WebSocket, {
        construct(target, given) {
            const socket = new target(...given);
            window.sockets.push(socket);
            return socket;
        },
    });
"""
OWN = TOWN.with_leg(1, "stops", 17).with_setting("mass_kg", 1500.0)
MOTORWAY = starting_drives()["motorway"][2]


def with_known_sockets(page):
    """The page loaded again with its sockets within reach."""
    page.add_init_script(KEEP_SOCKETS)
    page.reload()
    return page


def test_a_tablet_that_slept_for_a_moment_goes_on_where_it_was(open_page, settled, expect):
    page = settled(with_known_sockets(open_page(address("/", OWN))))
    page.locator(".st-key-row-leg-1 button").click()
    stops = page.locator(".st-key-set-leg1-stops input")
    expect(stops).to_have_value("17")
    page.evaluate("window.sockets.forEach(socket => socket.close())")
    page.wait_for_timeout(100)
    expect(stops).to_have_value("17")
    stops.fill("18")
    stops.press("Enter")
    expect(page.locator(".st-key-row-leg-1")).to_contain_text("18 stops")
    assert page.evaluate("window.sockets.length") > 1
    page.wait_for_url(lambda url: "_18_" in url)
    assert scenario_at(page) == OWN.with_leg(1, "stops", 18)


def test_a_server_started_anew_has_the_drive_from_the_address_and_none_that_was_cleared(
    start_server, open_page, settled, expect
):
    """As after a night: the sessions are gone; the address survives, and the browser knows what was cleared."""
    first = start_server()
    cards = open_page(address("/show", OWN, card="2"), on=first)
    expect(cards.locator(".st-key-card")).to_contain_text("city car, adjusted")
    cards.get_by_role("button", name="Next customer").click()
    cards.get_by_role("button", name="Clear everything").click()
    cards.wait_for_url(lambda url: scenario_at(cards) == TOWN)
    page = settled(with_known_sockets(open_page(address("/", OWN), on=first)))
    headline = page.locator(HEADLINE).inner_text()
    pick_drive(page, "suburb-hill")
    expect(page.locator(HEADLINE)).not_to_have_text(headline)
    page.locator(".st-key-row-leg-1 button").click()
    page.locator(".st-key-set-leg1-speed_kmh").wait_for()
    driven = scenario_at(settled(page))
    assert driven.legs == starting_drives()["suburb-hill"][2].legs
    headline = page.locator(HEADLINE).inner_text()

    first.process.terminate()
    first.process.wait(timeout=20)
    gone = page.get_by_role("alert").filter(has_text="The server cannot be reached")
    expect(gone).to_be_visible()
    page.wait_for_timeout(5000)
    expect(page.get_by_role("dialog")).to_have_count(0)
    start_server(port=urlsplit(first.url).port)
    # a new session has no row open: that is how it is told from the one before
    expect(page.locator(".st-key-set-leg1-speed_kmh")).to_have_count(0, timeout=30_000)
    expect(page.locator(HEADLINE)).to_have_text(headline)
    expect(page.locator(".st-key-word-car")).to_contain_text("adjusted")
    expect(gone).to_have_count(0)
    assert scenario_at(page) == driven
    pick_drive(page, "town")
    expect(page.locator(".st-key-word-drive")).to_contain_text("flat town commute")
    cards.go_back()
    cards.wait_for_url(lambda url: scenario_at(cards) == TOWN)
    expect(settled(cards).get_by_role("radio", name="Flat town commute")).to_be_checked()
    assert scenario_at(cards) == TOWN


def test_two_tabs_do_not_touch_each_other(open_page, settled, expect):
    one = open_page(address("/", OWN))
    other = one.context.new_page()
    other.goto(one.url.split("?")[0])
    other.locator(HEADLINE).wait_for()
    expect(other.locator(".st-key-row-leg-1")).to_contain_text("10 stops")
    pick_drive(other, "motorway")
    expect(other.locator(".st-key-word-drive")).to_contain_text("motorway run")
    assert scenario_at(settled(other)) == MOTORWAY

    one.locator(".st-key-row-leg-1 button").click()
    expect(one.locator(".st-key-set-leg1-stops input")).to_have_value("17")
    assert scenario_at(one) == OWN
    one.reload()
    expect(one.locator(".st-key-row-leg-1")).to_contain_text("17 stops")
    expect(other.locator(".st-key-word-drive")).to_contain_text("motorway run")
