"""How figures are shown: metric or US units, few digits, always with the unit."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Any

import numpy as np

from model.describe.fields import Field
from model.describe.units import KG_PER_LB, KM_PER_MILE
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
}
IN_WORDS = re.compile(rf"(−?\d[\d.,]*) ({'|'.join(sorted(US, key=len, reverse=True))})(?![\w/²])")
"""A figure with a unit that US readers have another for, in a sentence."""
ENTRY_DIGITS = 5
"""Digits kept of an entry in US units, so that a link carries 49.89 rather than fifteen digits of it."""
MINUS = "\N{MINUS SIGN}"


@dataclass(frozen=True)
class Display:
    """The unit system in which a visitor reads; links and files stay in SI-based units whatever it is."""

    us: bool = False

    def unit(self, unit: str) -> str:
        """The unit shown for a figure held in `unit`."""
        return US[unit][0] if self.us and unit in US else unit

    def value(self, value: Any, unit: str) -> Any:
        """A figure (or an array of them) held in `unit`, in the unit shown."""
        if not self.us or unit not in US:
            return value
        _, factor, offset = US[unit]
        return value * factor + offset

    def held(self, shown: float, unit: str) -> float:
        """The figure held in `unit` for one that was entered in the unit shown."""
        if not self.us or unit not in US:
            return shown
        _, factor, offset = US[unit]
        return (shown - offset) / factor

    def text(self, value: float, unit: str, digits: int = 2) -> str:
        """A figure with `digits` significant digits and its unit."""
        shown_unit = self.unit(unit)
        number = number_text(self.value(value, unit), digits)
        return f"{number} {shown_unit}".rstrip()

    def sentence(self, text: str) -> str:
        """A sentence of the model, its figures in the units shown."""
        if not self.us:
            return text

        def shown(found: re.Match[str]) -> str:
            value = float(found[1].replace(MINUS, "-").replace(",", ""))
            return self.text(value, found[2], 3 if found[2] == "km" else 2)

        return IN_WORDS.sub(shown, text)

    def range_text(self, band: Band, unit: str, digits: int = 2) -> str:
        """A band in words, such as “1.2 to 1.6 kWh”; one figure where both ends read the same."""
        low, high = sorted((self.value(band.low, unit), self.value(band.high, unit)))
        return f"{_pair(low, high, digits)} {self.unit(unit)}".rstrip()


def number_text(value: float, digits: int = 2) -> str:
    """A figure with `digits` significant digits, without exponent; from 100 on with three, or as many as asked for."""
    if value == 0 or not np.isfinite(value):
        return "0" if value == 0 else "–"
    return _rounded(value, _places(value, digits))


def percent_text(share: float | None) -> str:
    """A share in whole percent; one decimal under 10 %."""
    if share is None:
        return "–"
    percent = share * 100
    return f"{percent:.1f} %".replace("-", MINUS) if abs(percent) < 9.95 else f"{percent:.0f} %".replace("-", MINUS)


def percent_range_text(low: float, high: float) -> str:
    """A band of shares, such as “14 to 19 %”."""
    digits = 1 if max(abs(low), abs(high)) < 0.0995 else 0
    ends = [f"{100 * end:.{digits}f}".replace("-", MINUS) for end in (low, high)]
    return f"{ends[0]} %" if ends[0] == ends[1] else f"{ends[0]} to {ends[1]} %"


def _pair(low: float, high: float, digits: int) -> str:
    # both ends with as many decimals as the larger needs, so that a pair reads evenly
    places = _places(max(abs(low), abs(high), 1e-12), digits)
    ends = [_rounded(end, places) for end in (low, high)]
    return ends[0] if ends[0] == ends[1] else f"{ends[0]} to {ends[1]}"


def _places(value: float, digits: int) -> int:
    # decimals; below zero where tens or hundreds are rounded away
    power = int(np.floor(np.log10(abs(value))))
    return max(digits - 1 - power, min(0, 2 - power))


def _rounded(value: float, places: int) -> str:
    return f"{round(value, places):,.{max(places, 0)}f}".replace("-", MINUS)


# fields as they are entered


def in_percent(field: Field) -> bool:
    """Whether a share is entered in percent."""
    return field.key.endswith(("_share", "_efficiency")) or field.key in ("soc_start", "charge_stop_to")


def shown_unit(field: Field, display: Display) -> str:
    """The unit in which a field is entered; empty for a plain figure."""
    unit = "%" if in_percent(field) else display.unit(field.unit)
    return "" if unit == "1" else unit


def shown_value(field: Field, value: Any, display: Display) -> Any:
    """A held value as its widget shows it."""
    if value is None or field.kind not in ("number", "count"):
        return value
    if field.kind == "count":
        return int(value)
    return tidy(100 * value if in_percent(field) else display.value(value, field.unit), 4 if display.us else 6)


def held_value(field: Field, shown: Any, display: Display) -> Any:
    """What to hold for an entry, not yet checked."""
    if shown is None or field.kind != "number":
        return shown
    return tidy(shown / 100 if in_percent(field) else display.held(shown, field.unit), ENTRY_DIGITS)


def tidy(value: float, digits: int) -> float:
    """A figure without more digits than it deserves."""
    return float(f"{value:.{digits}g}")


def entry_text(shown: float) -> str:
    """A figure as it is entered, without zeros that say nothing."""
    return f"{tidy(shown, 6):g}".replace("-", MINUS)
