"""Fields as they are entered: in the visitor's units, shares in percent."""

from __future__ import annotations

import re
from typing import Any

from model.describe.fields import Field
from model.describe.units import KG_PER_LB, KM_PER_MILE
from model.words.quantities import MINUS, Display

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
IN_WORDS = re.compile(rf"(−?\d[\d.,]*) ({'|'.join(sorted(US, key=len, reverse=True))})(?![\w/²])")
"""A figure with a unit that US readers have another for, in a sentence."""


def in_units(text: str, display: Display) -> str:
    """A sentence of the model, its figures in the units shown."""
    if not display.us:
        return text

    def shown(found: re.Match[str]) -> str:
        value = float(found[1].replace(MINUS, "-").replace(",", ""))
        return display.text(value, found[2], 3 if found[2] == "km" else 2)

    return IN_WORDS.sub(shown, text)




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
