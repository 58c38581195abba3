"""Texts that a visitor, a file or a link brings: one line of what can be seen, and no formula in a table's cell."""

from __future__ import annotations

JOINERS = "\N{ZERO WIDTH JOINER}\N{ZERO WIDTH NON-JOINER}"
"""Not to be seen, but needed within the words of some scripts."""
WIDE = "\N{FULLWIDTH EQUALS SIGN}\N{FULLWIDTH PLUS SIGN}\N{FULLWIDTH HYPHEN-MINUS}\N{FULLWIDTH COMMERCIAL AT}"
FORMULA = tuple("=+-@" + WIDE)
"""What a spreadsheet takes for the beginning of one."""


def one_line(text: str) -> str:
    """A text in one line, a blank in place of each mark that turns, breaks or ends what stands around it."""
    return " ".join("".join(mark if mark.isprintable() or mark in JOINERS else " " for mark in text).split())


def inert_cell(cell: object) -> object:
    """A cell in which a spreadsheet finds no formula and no end of a row: what somebody calls a car stays a word."""
    if not isinstance(cell, str):
        return cell
    text = cell.replace("\n", " ").replace("\r", " ")
    return f"'{text}" if text.lstrip()[:1] in FORMULA else text
