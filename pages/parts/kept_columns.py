"""What columns of recordings mean, kept in the browser for the next file: names and units, never what stands below.

It lives in a cookie. The browser takes it from the address into the cookie and off the address again (assets/own.js).
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from urllib.parse import quote, unquote

import streamlit as st

from model.traces.recorded_names import NOT_READ, UNITS

COLUMNS = "columns"
"""The parameter of the address, and the cookie."""
MOST_BYTES = 2000
"""A cookie holds so much as it is written; what was said first goes first."""
Meanings = dict[str, tuple[str, str]]
"""Meaning and unit by the name of a column."""


def kept() -> Meanings:
    """What was said of columns before, in this browser."""
    text = st.query_params.get(COLUMNS) or unquote(dict(st.context.cookies).get(COLUMNS, ""))
    try:
        held = json.loads(text) if text else {}
    except ValueError:
        return {}
    if not isinstance(held, Mapping):
        return {}
    return {str(name): (said[0], said[1]) for name, said in held.items()
            if isinstance(said, list) and len(said) == 2 and _is_known(*said)}  # fmt: skip


def _is_known(meaning: object, unit: object) -> bool:
    return (meaning, unit) == (NOT_READ, "") or (isinstance(unit, str) and unit in UNITS.get(str(meaning), {}))


def keep(said: Mapping[str, tuple[str, str]]) -> None:
    """Keep it in the browser."""
    left = dict(said)
    while len(quote(text := json.dumps(left, ensure_ascii=False, separators=(",", ":")))) > MOST_BYTES:
        left.pop(next(iter(left)))
    st.query_params[COLUMNS] = text
