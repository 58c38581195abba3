"""What a visitor waits for after changing one value, beside an empty page with one chart on the same machine."""

import os
import statistics

import pytest

from tests.benchmarks.wire import DAY_FOLDED, visit

RERUNS = 15
PAGES = ("", "lift_off", "winter_and_limits", "how_it_works", "check_a_claim", "compare", "take_away")
WITHIN_TIMES = 12
"""Of the empty page, its answer sent at once as ours are. It was 3 of one that waits 40 ms to be confirmed at any pace:
132 ms on a quick machine, which at half that pace leave time for half the work. Where the empty page takes 19 ms, our
pages took 1.75 times as long as on a quick one (median of six, 1 December 2026), so that 132 ms stand for 12 times."""
BUSY = 1.25
"""Work a processor beyond which nothing is judged."""


def is_busy():
    """Whether so much else is done on the machine that nothing is judged."""
    return os.getloadavg()[0] > BUSY * (os.cpu_count() or 1)


def waits(url, page, start_c=7.0, key="set-ambient_c", of=str, **link):
    """Seconds of each change of a widget, the value another one every time."""
    with visit(url, page) as visitor:
        visitor.ask(link)
        if page in DAY_FOLDED:
            visitor.change(DAY_FOLDED[page], True)
        for step in range(3):
            visitor.change(key, of(start_c - 1 - step))
        return [visitor.change(key, of(start_c + step / 4)) for step in range(RERUNS)]


@pytest.fixture(scope="module")
def empty_url(start_server):
    return start_server("tests/benchmarks/empty_at_once.py").url


@pytest.mark.parametrize("page", PAGES)
def test_a_changed_value_is_answered_soon(page, server, empty_url):
    found, empty, busy = [], [], is_busy()
    for start_c in (-20.0, -8.0, 7.0, 19.0):
        # beside each other, since the pace of a machine changes
        found += waits(server.url, page, start_c)
        empty += waits(empty_url, "", start_c, key="step-value", of=float, by_hand="yes")
        # the least of each: other work on the machine must not decide
        times = min(found) / min(empty)
        if busy or times <= WITHIN_TIMES:
            break
    print(
        f"/{page}: median {statistics.median(found) * 1000:.0f} ms, least {min(found) * 1000:.0f} ms; "
        f"the empty page {statistics.median(empty) * 1000:.0f} and {min(empty) * 1000:.0f} ms: {times:.1f} times"
    )
    assert busy or times <= WITHIN_TIMES
