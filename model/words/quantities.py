"""Figures in a reader's units and language: few digits, always with the unit; and messages with figures in them."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from enum import Enum
from functools import cache, lru_cache
from typing import Any, TypeVar, cast

from babel import Locale

from model.describe.figures import Figure, Part, Quantity, Several, Share, Shares, Span
from model.describe.messages import FixedQuantity, MessageError, rendered
from model.describe.units import GRAVITY_MPS2, KG_PER_LB, KM_PER_MILE, N_PER_LBF
from model.sampling.uncertainty import Band

M_PER_FOOT = 0.3048
LITRES_PER_GALLON = 3.785411784
# unit inside -> (unit shown in US units, factor, offset)
US = {
    "km": ("mi", 1 / KM_PER_MILE, 0.0),
    "km/h": ("mph", 1 / KM_PER_MILE, 0.0),
    "m": ("ft", 1 / M_PER_FOOT, 0.0),
    "kg": ("lb", 1 / KG_PER_LB, 0.0),
    "°C": ("°F", 1.8, 32.0),
    "Wh/km": ("Wh/mi", KM_PER_MILE, 0.0),
    "kWh/100 km": ("kWh/100 mi", KM_PER_MILE, 0.0),
    "l": ("gal", 1 / LITRES_PER_GALLON, 0.0),
    "l/100 km": ("gal/100 mi", KM_PER_MILE / LITRES_PER_GALLON, 0.0),
    "per l": ("per gal", LITRES_PER_GALLON, 0.0),
    "m/s²": ("g", 1 / GRAVITY_MPS2, 0.0),
    "kN": ("lbf", 1000 / N_PER_LBF, 0.0),
}
ENTRY_PLACES = {"mi": 1, "mph": 0, "ft": 0, "lb": 0, "°F": 0, "g": 2}
"""Decimals of what was not entered in the US unit but turned into it, at least two digits; others have three digits."""
TO_THE_DIGIT = ("°F", "g")
"""Units in which even a small figure has no more decimals: 0.07 g is not 0.071."""
MPG = "litres/100 km", "mpg", 100 * LITRES_PER_GALLON / KM_PER_MILE
"""A car's consumption, which US units tell the other way round: what is held, what is shown, and their product."""
MINUS = "\N{MINUS SIGN}"
BETWEEN = {
    "and": ("in-a-row", "last-with-and"),
    "or": ("in-a-row", "last-with-or"),
    "": ("in-a-row", "in-a-row"),
    ";": ("set-apart", "set-apart"),
}
"""By what stands before the last thing in a row: the messages that put two together, and the last to the others."""
Held = TypeVar("Held")
"""A figure, an array, a column or a table of figures."""
SAID_BEFORE = 4096
"""Messages kept as they were last said: a page that is drawn again says mostly the same."""

Value = Figure | str | int | Enum
"""What may be put into a message: a figure, words, a count or a yes or no, one of an enumeration."""


@dataclass(frozen=True)
class Display:
    """How somebody reads: in which units and language. Links and files stay in SI-based units whatever it is.

    `by_key` is for the command line: fields and choices by the keys of files, values as files hold them.
    """

    us: bool = False
    language: str = "en"
    by_key: bool = False

    def say(self, name: str, /, **values: Value) -> str:
        """A message in the reader's language, its figures in the reader's units (`MessageError` if it cannot be)."""
        return _said(self, name, tuple(values.items()))

    def figure(self, figure: Figure) -> str:
        """A figure in words."""
        match figure:
            case Quantity(value, unit, digits, places, trimmed, signed, bare):
                if trimmed:
                    number = entry_text(self.entry(value, unit, digits), self.language)
                elif (places := self._places(unit, places)) is not None:
                    number = _rounded(self.value(value, unit), places, self.language)
                else:
                    number = number_text(self.value(value, unit), digits, self.language)
                number = _signed(number) if signed else number
                return number if bare else _with_unit(number, self.unit(unit), self.language)
            case Span(low, high, unit, digits, places, trimmed, signed):
                if trimmed:
                    words = [entry_text(end, self.language)
                             for end in sorted(self.entry(end, unit, digits) for end in (low, high))]  # fmt: skip
                    return _with_unit(self._pair(*words), self.unit(unit), self.language)
                ends = sorted((self.value(low, unit), self.value(high, unit)))
                places = self._places(unit, places)
                # both ends with as many decimals as the larger needs, so that a pair reads evenly
                if places is None:
                    places = _places(max(abs(ends[0]), abs(ends[1]), 1e-12), digits)
                words = [_rounded(end, places, self.language) for end in ends]
                words = [*map(_signed, words)] if signed else words
                return _with_unit(self._pair(*words), self.unit(unit), self.language)
            case Part(value, whole, unit):
                part, whole = self.value(value, unit), self.value(whole, unit)
                scale = 1 if figure.whole >= 20 else 10
                down = _rounded(math.floor(part * scale) / scale, 0 if scale == 1 else 1, self.language)
                end = entry_text(float(f"{whole:.{3 if whole < 1000 else 4}g}"), self.language)
                return _with_unit(_pattern("part-of", ("part", "whole"), self.language).format(part=down, whole=end),
                                  self.unit(unit), self.language)  # fmt: skip
            case Share(value, places):
                if places is None:
                    places = 1 if abs(100 * value) < 9.95 else 0
                return _with_unit(_percent(value, places, self.language), "%", self.language)
            case Shares(low, high):
                places = 1 if max(abs(low), abs(high)) < 0.0995 else 0
                return _with_unit(self._pair(*(_percent(end, places, self.language) for end in (low, high))), "%",
                                  self.language)  # fmt: skip
            case Several(items, last):
                words = [item if isinstance(item, str) else self.figure(item) for item in self._unit_once(items)]
                if len(words) < 2:
                    return "".join(words)
                *most, end = words
                first = most[0]
                between, before_last = BETWEEN[last]
                for word in most[1:]:
                    first = _pattern(between, ("first", "next"), self.language).format(first=first, next=word)
                return _pattern(before_last, ("first", "next"), self.language).format(first=first, next=end)

    def _unit_once(self, items: tuple[Figure | str, ...]) -> tuple[Figure | str, ...]:
        # “3, 5 and 8 km”: a unit that all have stands with the last
        figures = [item for item in items if isinstance(item, Quantity)]
        if len(figures) < len(items) or len({item.unit for item in figures}) > 1:
            return items
        return (*(replace(item, bare=True) for item in figures[:-1]), *figures[-1:])

    def _places(self, unit: str, places: int | None) -> int | None:
        # a slowing in g has always two decimals, lest one strength be told as two
        return ENTRY_PLACES["g"] if self.us and unit == "m/s²" else places

    def _pair(self, low: str, high: str) -> str:
        return low if low == high else _pattern("span", ("low", "high"), self.language).format(low=low, high=high)

    def unit(self, unit: str) -> str:
        """The unit shown for a figure held in `unit`."""
        if self.us and unit == MPG[0]:
            return MPG[1]
        return US[unit][0] if self.us and unit in US else unit

    def value(self, value: Held, unit: str) -> Held:
        """A figure (or an array of them) held in `unit`, in the unit shown."""
        many = cast(Any, value)
        if self.us and unit == MPG[0]:
            return cast(Held, MPG[2] / many)
        if not self.us or unit not in US:
            return value
        _, factor, offset = US[unit]
        return cast(Held, many * factor + offset)

    def held(self, shown: float, unit: str) -> float:
        """The figure held [`unit`] for one that was entered in the unit shown."""
        if self.us and unit == MPG[0]:
            # nothing per gallon is no consumption: left to the field to refuse
            return MPG[2] / shown if shown else math.inf
        if not self.us or unit not in US:
            return shown
        _, factor, offset = US[unit]
        return (shown - offset) / factor

    def entry(self, value: float, unit: str, digits: int = 6) -> float:
        """A figure held in `unit` as an entry shows it [in the unit shown].

        What is round in the unit held was not entered in US units: there it is shown as round as makes sense, and stays
        what it is until it is changed. What was entered in US units comes back as it was.
        """
        shown = self.value(value, unit)
        if shown is value and not (self.us and unit in US):
            return _tidy(shown, digits)
        places = ENTRY_PLACES.get(self.unit(unit))
        if unit != "m/s²" and _tidy(value, 3) != value:
            return _tidy(shown, min(digits, 4))
        if places is None or not shown:
            return _tidy(shown, 3) if shown else 0.0
        if self.unit(unit) not in TO_THE_DIGIT:
            places = max(places, _places(shown, 2))
        return round(shown, places) + 0.0

    def text(self, value: float, unit: str, digits: int = 2) -> str:
        """A figure with `digits` significant digits and its unit."""
        return self.figure(Quantity(value, unit, digits))

    def range_text(self, band: Band, unit: str, digits: int = 2) -> str:
        """A band in words, such as “1.2 to 1.6 kWh”; one figure where both ends read the same."""
        return self.figure(Span(band.low, band.high, unit, digits))


@lru_cache(maxsize=SAID_BEFORE)
def _said(display: Display, name: str, values: tuple[tuple[str, Value], ...]) -> str:
    spoken = {key: _spoken(display, name, key, value) for key, value in values}
    return rendered(name, spoken, display.language, _fixed(display.us, display.language))


@cache
def _fixed(us: bool, language: str) -> FixedQuantity:
    """How a figure that stands in a message itself is written."""
    display = Display(us, language)
    return lambda value, unit, digits=3: display.figure(Quantity(float(value), str(unit), int(digits), trimmed=True))


def _spoken(display: Display, name: str, key: str, value: Value) -> str | int:
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, Enum):
        return str(value.value)
    if isinstance(value, str | int):
        return value
    if isinstance(value, Quantity | Span | Part | Share | Shares | Several):
        return display.figure(value)
    # a bare number would be told without its unit
    raise MessageError(f"The message {name!r} cannot take {value!r} as {key}.")


@cache
def _pattern(name: str, variables: tuple[str, ...], language: str) -> str:
    """A message of the way figures are written, to be filled by `str.format`: there are many of them on a page."""
    return rendered(name, {variable: f"{{{variable}}}" for variable in variables}, language)


def _with_unit(number: str, unit: str, language: str) -> str:
    if not unit:
        return number
    return _pattern("with-unit", ("number", "unit"), language).format(number=number, unit=unit)


def written(number: str, language: str = "en") -> str:
    """A number as Python writes it, in the marks of a language and with a true minus."""
    return number.translate(_marks(language))


@cache
def _marks(language: str) -> dict[int, str]:
    symbols = Locale.parse(language).number_symbols["latn"]
    return str.maketrans({",": symbols["group"], ".": symbols["decimal"], "-": MINUS})


def _tidy(value: float, digits: int) -> float:
    return float(f"{value:.{digits}g}")


def number_text(value: float, digits: int = 2, language: str = "en") -> str:
    """A figure with `digits` significant digits, without exponent; from 100 on with three, or as many as asked for."""
    if value == 0 or not math.isfinite(value):
        return "0" if value == 0 else "–"
    return _rounded(value, _places(value, digits), language)


def entry_text(shown: float, language: str = "en") -> str:
    """A figure as it is entered, without zeros that say nothing."""
    return written(f"{shown:.6g}", language)


def percent_text(share: float | None) -> str:
    """A share in whole percent; one decimal under 10 %."""
    return "–" if share is None else Display().figure(Share(share))


def capital(text: str) -> str:
    """Words with a capital at their start."""
    return text[:1].upper() + text[1:]


def inside(text: str) -> str:
    """A name or title as it stands within a sentence."""
    return text[:1].lower() + text[1:]


def span_of(band: Band, unit: str, digits: int = 2) -> Span:
    """A band as a figure."""
    return Span(band.low, band.high, unit, digits)


def _places(value: float, digits: int) -> int:
    # decimals; below zero where tens or hundreds are rounded away
    power = math.floor(math.log10(abs(value)))
    return max(digits - 1 - power, min(0, 2 - power))


def _rounded(value: float, places: int, language: str) -> str:
    # what rounds to nothing is not below zero
    return written(f"{round(value, places) + 0.0:,.{max(places, 0)}f}", language)


def _signed(number: str) -> str:
    if not any(digit in "123456789" for digit in number):
        return "0"
    return number if number.startswith(MINUS) else f"+{number}"


def _percent(share: float, places: int, language: str) -> str:
    return written(f"{round(float(100 * share), places) + 0.0:.{places}f}", language)
