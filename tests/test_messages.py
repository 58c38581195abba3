"""How much a page sends: every message costs server and browser time with every changed value."""

import pytest

from tests.benchmarks.wire import visit

MOST = {
    "": 140, "lift_off": 150, "winter_and_limits": 140, "how_it_works": 100, "check_a_claim": 190, "compare": 80,
    "take_away": 100, "show": 70, "own_road": 45,
}  # fmt: skip
"""Messages after one changed value, by page: as many as there were, rounded up. Fewer than 60 are wished for."""


@pytest.mark.parametrize("page", MOST)
def test_a_page_sends_no_more_messages_than_it_did(page, server):
    with visit(server.url, page) as visitor:
        visitor.ask({"ambient_c": 7})
        visitor.ask({"ambient_c": 8})
        print(f"/{page}: {visitor.messages} messages")
        assert visitor.messages <= MOST[page]
