"""On a telephone parts of a page fold behind their heading or finding: they are worked out and sent when opened."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from contextvars import ContextVar

import streamlit as st

from pages.parts.typography import together

NARROW = "narrow"
"""The cookie in which the browser says that its window is a telephone's: assets/own.js."""


INSIDE: ContextVar[bool] = ContextVar("INSIDE", default=False)


def is_narrow() -> bool:
    """Whether the window is as narrow as a telephone's."""
    return st.context.cookies.get(NARROW) == "yes"


def folds() -> bool:
    """Whether a part that stands here folds: on a telephone, unless it stands in one that was unfolded."""
    return is_narrow() and not INSIDE.get()


@contextmanager
def folded(label: str, key: str, *, within: bool = False) -> Iterator[bool]:
    """A part that is there at once on a wide screen, and folded on a telephone; whether it is to be drawn.

    One `within` a part folds in one that was unfolded, too.
    """
    if not (is_narrow() if within else folds()):
        yield True
        return
    with st.expander(label, type="compact", key=fold_key(key), on_change="rerun") as fold:
        before = INSIDE.set(True)
        try:
            yield bool(fold.open)
        finally:
            INSIDE.reset(before)


def fold_key(anchor: str) -> str:
    """What a folded part is known by; an address that ends in `#` and its anchor opens it (`assets/own.js`)."""
    return f"fold-{anchor}"


@contextmanager
def always_folded(title: str, anchor: str) -> Iterator[bool]:
    """A part of a long page that is folded on every screen; whether it is to be drawn."""
    with st.expander(title, type="compact", key=fold_key(anchor), on_change="rerun") as fold:
        before = INSIDE.set(True)
        try:
            yield bool(fold.open)
        finally:
            INSIDE.reset(before)


@contextmanager
def section(title: str, anchor: str) -> Iterator[bool]:
    """A part under a heading, which on a telephone is what unfolds it; whether it is to be drawn."""
    if not is_narrow():
        st.header(title, anchor=anchor)
    with folded(title, anchor) as is_open:
        yield is_open


def in_sight(answer: str) -> None:
    """The answer of a page in one line, which on a telephone stays in sight while something is entered."""
    if is_narrow():
        with st.container(key="in-sight"):
            st.markdown(together(answer))
