"""What tests of pages share: bands of few cars, and answers that are kept from test to test."""

import gc
from collections.abc import Iterator

import pytest
import streamlit as st

from pages.parts import state
from pages.parts.public_link import PUBLIC_URL


@pytest.fixture(autouse=True)
def no_public_address(monkeypatch: pytest.MonkeyPatch) -> None:
    """Whatever this machine's server is called: a page names no address of its own unless a test gives it one."""
    monkeypatch.delenv(PUBLIC_URL, raising=False)


@pytest.fixture(scope="session", autouse=True)
def few_sampled_cars() -> Iterator[None]:
    """Bands of few cars: these tests ask where a number stands, not how good it is."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(state, "BAND_RUNS", 20)
        st.cache_resource.clear()
        # as the server does: else looking through all modules after every script run takes most of the time
        gc.collect()
        gc.freeze()
        yield
        gc.unfreeze()
    st.cache_resource.clear()
