"""For pytest: a test that takes too long is left out, and after some time all that are still to come."""

from __future__ import annotations

import signal
import time

import pytest
from hypothesis import settings

EXAMPLES = 25
"""Of a law: without compiling, five hundred take minutes."""
begun = time.process_time()


def pytest_addoption(parser):
    parser.addoption("--each", type=float, default=0.0, help="the most that one test may take [s of the processor]")
    parser.addoption("--in-all", type=float, default=0.0, help="when no further test is begun [s of the processor]")


def pytest_collection(session):
    global begun
    begun = time.process_time()
    settings.register_profile("few", settings.default, max_examples=EXAMPLES, derandomize=True)
    settings.load_profile("few")


def within(item):
    """Leave a part of a test out when it takes longer."""

    def stop(_number, _frame):
        pytest.skip("it takes too long")

    signal.signal(signal.SIGVTALRM, stop)
    signal.setitimer(signal.ITIMER_VIRTUAL, item.config.option.each)
    try:
        return (yield)
    finally:
        signal.setitimer(signal.ITIMER_VIRTUAL, 0)


@pytest.hookimpl(wrapper=True)
def pytest_runtest_setup(item):
    most = item.config.option.in_all
    if most and time.process_time() - begun > most:
        pytest.skip("no time is left")
    return (yield from within(item))


@pytest.hookimpl(wrapper=True)
def pytest_runtest_call(item):
    return (yield from within(item))
