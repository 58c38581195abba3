"""How much a page sends: every message costs server and browser time with every changed value."""

import pytest

from tests.benchmarks.wire import visit

MOST = {
    "": 126, "lift_off": 130, "winter_and_limits": 118, "how_it_works": 90, "check_a_claim": 178, "compare": 75,
    "take_away": 88, "show": 66, "own_road": 40,
}  # fmt: skip
"""Messages after one changed value, by page: as many as there were, rounded up. Fewer than 60 are wished for."""


@pytest.mark.parametrize("page", MOST)
def test_a_page_sends_no_more_messages_than_it_did(page, server):
    with visit(server.url, page) as visitor:
        visitor.ask({"ambient_c": 7})
        visitor.ask({"ambient_c": 8})
        print(f"/{page}: {visitor.messages} messages")
        assert visitor.messages <= MOST[page]
