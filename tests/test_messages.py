"""How much a page sends: every message costs server and browser time with every changed value."""

import pytest

from tests.benchmarks.wire import DAY_FOLDED, visit

ASKED = 60
"""Messages after one changed value, at most."""
BEYOND = {"lift_off": 105, "winter_and_limits": 96, "check_a_claim": 63}
"""Pages that send more, and how many: the answer of a page is one part."""
WITHOUT_A_DAY = {"show": 62, "own_road": 40}
"""Pages that do not ask for the temperature, and how many messages they send when it is another in the address."""
PAGES = ("", "lift_off", "winter_and_limits", "how_it_works", "check_a_claim", "compare", "take_away")


@pytest.mark.parametrize("page", PAGES)
def test_a_changed_value_sends_few_messages(page, server):
    with visit(server.url, page) as visitor:
        visitor.ask({"ambient_c": 7})
        if page in DAY_FOLDED:
            visitor.change(DAY_FOLDED[page], True)
        visitor.change("set-ambient_c", "8")
        print(f"/{page}: {visitor.messages} messages of {len(visitor.parts)} parts")
        assert visitor.messages <= BEYOND.get(page, ASKED)


@pytest.mark.parametrize("page", WITHOUT_A_DAY)
def test_so_does_a_page_that_is_asked_for_again(page, server):
    with visit(server.url, page) as visitor:
        visitor.ask({"ambient_c": 7})
        visitor.ask({"ambient_c": 8})
        print(f"/{page}: {visitor.messages} messages")
        assert visitor.messages <= WITHOUT_A_DAY[page]


def test_what_is_asked_for_apart_sends_as_few(server):
    with visit(server.url) as visitor:
        visitor.ask({"ambient_c": 7})
        visitor.change("row-leg-1", True)
        visitor.change("set-leg1-speed_kmh", "63")
        assert visitor.messages <= ASKED
