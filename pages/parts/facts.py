"""Rows under fine lines: what a figure is, how much it is, and beside what it stands."""

from __future__ import annotations

from collections.abc import Iterable
from html import escape


def fact_rows(facts: Iterable[tuple[str, str, str]]) -> str:
    """Facts as HTML: what, how much, and beside what; to be drawn in a container known as `facts`."""
    rows = "".join(
        f"<dt>{escape(what)}</dt><dd><b>{escape(value)}</b> <span>{escape(beside)}</span></dd>"
        for what, value, beside in facts
    )
    return f"<dl>{rows}</dl>"
