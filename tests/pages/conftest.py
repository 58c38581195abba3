"""What tests of pages share: bands of few cars, and answers that are kept from test to test."""

import gc
import sys
from collections.abc import Iterator

import pytest
from streamlit.components.v2 import manifest_scanner

from pages.parts import state
from pages.parts.public_link import PUBLIC_URL


@pytest.fixture(autouse=True)
def no_public_address(monkeypatch: pytest.MonkeyPatch) -> None:
    """Whatever this machine's server is called: a page names no address of its own unless a test gives it one."""
    monkeypatch.delenv(PUBLIC_URL, raising=False)


@pytest.fixture(autouse=True)
def no_trace_of_a_script(monkeypatch: pytest.MonkeyPatch) -> None:
    """A page that runs takes the place of the program itself, which processes that are spawned later would look for."""
    monkeypatch.setitem(sys.modules, "__main__", sys.modules["__main__"])


@pytest.fixture(scope="session", autouse=True)
def as_on_a_server() -> None:
    """What a server does once is not done again for every page."""
    # else looking through all modules after every script run takes most of the time
    gc.collect()
    gc.freeze()
    # else all packages that are installed are asked for parts of pages; ours has none
    manifest_scanner.scan_component_manifests = list


@pytest.fixture(scope="module", autouse=True)
def few_sampled_cars() -> Iterator[None]:
    """Bands of few cars: these tests ask where a number stands, not how good it is."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(state, "BAND_RUNS", 20)
        yield
