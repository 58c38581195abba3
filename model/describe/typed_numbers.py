"""A number as people type it: with a decimal comma or point, a true minus, spaces or marks between thousands.

Where a text can be read in two ways, whoever asks says which readings fit; if both do, it is refused, never guessed.
"""

from __future__ import annotations

import re
from collections.abc import Callable

MINUS_SIGNS = "\N{MINUS SIGN}\N{EN DASH}\N{HYPHEN}\N{NON-BREAKING HYPHEN}"
APOSTROPHES = "'\N{RIGHT SINGLE QUOTATION MARK}"
PLAIN = re.compile(r"[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?", re.ASCII | re.IGNORECASE)
"""As a link or a file has it."""
IN_THREES = re.compile(r"\d{1,3}([,. ])\d{3}(\1\d{3})*", re.ASCII)
"""Thousands set apart, all by the same mark."""


class TwoReadings(ValueError):
    """A text that can be read as either of two numbers, both of which fit."""

    def __init__(self, readings: tuple[float, ...]) -> None:
        super().__init__(readings)
        self.readings = readings


def _before_the_point(text: str) -> str | None:
    # digits of a whole part, which may be set apart in threes
    if text.isdecimal():
        return text
    return re.sub(r"\D", "", text) if IN_THREES.fullmatch(text) else None


def readings(text: str) -> tuple[float, ...]:
    """Each number that a text can mean, the one with a decimal mark first; none where it is no number."""
    text = re.sub(f"[{MINUS_SIGNS}]", "-", re.sub(f"[{APOSTROPHES}]", " ", " ".join(text.split())))
    text = re.sub(r"^([+-]) ", r"\1", text)
    if PLAIN.fullmatch(text):
        return (float(text),)
    sign, digits = (text[0], text[1:]) if text[:1] in ("+", "-") else ("", text)
    found = []
    whole, mark, part = re.fullmatch(r"(.*?)(?:([,.])(\d*))?", digits).groups()  # type: ignore[union-attr]
    if mark and (part or whole) and (before := _before_the_point(whole or "0")) is not None and mark not in whole:
        found.append(f"{before}.{part}")
    # a point alone is the decimal mark, as it is on every page
    if (before := _before_the_point(digits)) is not None and (digits.count(".") != 1 or mark != "."):
        leading_zero = digits.startswith("0") and not digits.isdecimal()
        found += [] if leading_zero else [before]
    return tuple(dict.fromkeys(float(sign + number) for number in found))


def number_typed(text: str, fits: Callable[[float], bool] = lambda _: True) -> float:
    """The number that a text means [in whatever unit was asked].

    Parameters
    ----------
    text : str
        As typed, without a unit.
    fits : callable
        Which numbers can be meant; it decides between two readings of “1,250”.

    Returns
    -------
    float
        The reading that fits; where none does, the one with a decimal mark.

    Raises
    ------
    TwoReadings
        Where two readings fit; the message names both.
    ValueError
        Where the text is no number.
    """
    found = readings(text)
    if not found:
        raise ValueError(text)
    fitting = [number for number in found if fits(number)]
    if len(fitting) > 1:
        raise TwoReadings(tuple(fitting))
    return (fitting or found)[0]
