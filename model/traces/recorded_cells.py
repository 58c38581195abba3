"""The cells of a recording: numbers and times as programs and people write them."""

from __future__ import annotations

import re
from collections.abc import Sequence

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from model.describe.trace import Array
from model.describe.typed_numbers import APOSTROPHES, MINUS_SIGNS
from model.traces.recorded_names import UNITS, unit_in

EMPTY = frozenset({"", "-", "--", "\N{EM DASH}", "na", "n/a", "nan", "null", "none", "?"})
"""What stands for a missing value."""
SIGNS = str.maketrans(dict.fromkeys(MINUS_SIGNS, "-") | dict.fromkeys(APOSTROPHES + " \xa0\u2009\u202f"))
NUMBER = r"([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)"
CLOCK = re.compile(r"(?:(\d{1,3}):)?(\d{1,2}):(\d{1,2}(?:[.,]\d*)?)\s*([ap])?\.?(?:m\.?)?", re.IGNORECASE | re.ASCII)
DAY_FIRST = re.compile(r"\d{1,2}\.\d{1,2}\.\d{2,4}")
DAY_S = 86400.0


def decimal_mark(cells: Sequence[str], separator: str) -> str:
    """The decimal mark of a table, "." or ",", by a sample of its cells.

    A mark before other than three digits, or the last of two, is the decimal one. Where every comma stands before
    three digits it sets thousands apart in a table separated by commas, and is the decimal mark in others.
    """
    # most cells have no mark at all, and one that decides soon comes
    marked = (cell.strip().translate(SIGNS) for cell in cells if "," in cell or "." in cell)
    commas = False
    for cell in marked:
        if not re.fullmatch(r"[+-]?[\d.,]*\d[\d.,]*", cell):
            continue
        commas = commas or "," in cell
        if "," in cell and "." in cell:
            return max(",.", key=cell.rfind)
        for mark, other in (",.", ".,"):
            if cell.count(mark) > 1:
                return other
            before, found, after = cell.partition(mark)
            if found and (len(after) != 3 or len(before.lstrip("+-")) > 3 or before.lstrip("+-0") == ""):
                return mark
    return "," if separator != "," and commas else "."


def as_numbers(
    cells: pd.Series, decimal: str, meaning: str = "", unit: str = ""
) -> tuple[Array, NDArray[np.bool_]]:
    """The numbers in cells, NaN where there is none; and which cells hold something else than a number or nothing.

    Marks between thousands are passed over, and so is a unit behind a number; where it is another one of the `meaning`
    than the column's `unit`, the number is put into that.
    """
    if cells.dtype.kind in "fiu":
        return cells.to_numpy(float), np.zeros(len(cells), dtype=bool)
    text = cells.astype(str).where(cells.notna(), "").str.strip().str.translate(SIGNS).str.lower()
    text = text.str.replace("." if decimal == "," else ",", "", regex=False).str.replace(",", ".", regex=False)
    numbers = pd.to_numeric(text, errors="coerce")
    odd = numbers.isna() & ~text.isin(EMPTY)
    if odd.any():
        found = text[odd].str.extract(rf"^{NUMBER}([a-z°%/]+[\d^-]*)$")
        values, written = pd.to_numeric(found[0], errors="coerce"), found[1]
        for each in written.dropna().unique() if meaning else ():
            other = unit_in(each, meaning)
            if other and other != unit.partition(",")[0]:
                (factor, offset), (own_factor, own_offset) = (UNITS[meaning][name] for name in (other, unit))
                here = written == each
                values[here] = (values[here] * factor + offset - own_offset) / abs(own_factor)
        numbers[odd] = values
        odd &= numbers.isna()
    return numbers.to_numpy(np.float64), odd.to_numpy(bool)


def kind_of_time(cells: pd.Series, decimal: str) -> str:
    """Whether times are written as numbers (""), as a "clock" or as a "date" with a clock, by the first of them."""
    known = cells.dropna().head(200)
    if known.dtype.kind in "fiu" or not len(known):
        return ""
    _, odd = as_numbers(known, decimal)
    if odd.sum() * 2 < len(known):
        return ""
    return "clock" if known.astype(str).str.strip().map(is_clock).mean() > 0.5 else "date"


def is_clock(cell: str) -> bool:
    """Whether a cell is a time of day, or a time since a start, with colons."""
    return CLOCK.fullmatch(cell) is not None


def as_times(cells: pd.Series, kind: str, decimal: str) -> Array:
    """Seconds from some start, NaN where a cell holds no time: numbers as they are, clocks since midnight [s].

    Times with a date are taken in their zone, without one as they stand; two parts of a clock are minutes and seconds.
    """
    if not kind:
        return as_numbers(cells, decimal)[0]
    text = cells.astype(str).where(cells.notna(), "").str.strip()
    if kind == "clock":
        return np.array([_clock_s(cell) for cell in text], dtype=float)
    day_first = bool(text.str.match(DAY_FIRST).any())
    shapes = [
        "ISO8601",
        pd.tseries.api.guess_datetime_format(next(filter(None, text), ""), dayfirst=day_first),
        "mixed",
    ]
    for shape in filter(None, shapes):
        try:
            when = pd.to_datetime(text, errors="coerce", utc=True, format=shape, dayfirst=day_first)
            seconds = (when - pd.Timestamp(0, tz="UTC")).dt.total_seconds()
        except (ValueError, OverflowError):
            # years that no calendar of theirs holds
            continue
        if seconds.notna().mean() > 0.5:
            return np.asarray(seconds, dtype=float)
    return np.full(len(text), np.nan)


def _clock_s(cell: str) -> float:
    found = CLOCK.fullmatch(cell)
    if not found:
        return np.nan
    hours = float(found[1] or 0)
    if found[4]:
        hours = hours % 12 + (12 if found[4].lower() == "p" else 0)
    return 3600 * hours + 60 * float(found[2]) + float(found[3].replace(",", "."))


def over_midnight(time_s: Array) -> Array:
    """Times of day that go on rising where they pass midnight [s]."""
    fell = np.diff(time_s, prepend=time_s[:1]) < -DAY_S / 2
    return time_s + DAY_S * np.cumsum(fell)
