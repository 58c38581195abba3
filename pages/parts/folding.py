"""On a telephone parts of a page fold behind their heading or finding: they are worked out and sent when opened."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from contextvars import ContextVar

import streamlit as st

from pages.parts import redrawn
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
def folded(label: str, key: str, *, when: bool | None = None) -> Iterator[bool]:
    """A part that may be folded behind its label; whether it is to be drawn.

    Without `when` it is folded on a telephone, unless it stands in one that was unfolded.
    """
    if not (folds() if when is None else when):
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
def section(title: str, anchor: str) -> Iterator[bool]:
    """A part under a heading, which on a telephone is what unfolds it; whether it is to be drawn."""
    if not is_narrow():
        st.header(title, anchor=anchor)
    with folded(title, anchor) as is_open:
        yield is_open


def in_sight(answer: Callable[[], str]) -> None:
    """The answer of a page in one line, which on a telephone stays in sight while something is entered."""
    if is_narrow():
        with st.container(key="in-sight"):
            redrawn.part("in-sight", lambda: st.markdown(together(answer())), when=redrawn.When.FIRST)
