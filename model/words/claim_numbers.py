"""Numbers of claims as a newspaper says them: as they were published, and as the model gives them.

They are held in the unit of the claim and told in the reader's.
"""

from __future__ import annotations

import math

from model.words.quantities import Display, written

ENGLISH = Display()
NEXT_TO_NOTHING = 5e-3
"""A smaller number of a claim is rounding."""


def shown(value: float, unit: str = "", display: Display = ENGLISH) -> str:
    """A number as it was published, at up to three digits."""
    value = display.value(value, unit)
    return written(f"{float(f'{value:.3g}') + 0.0:,g}", display.language)


def with_unit(number: str, unit: str, display: Display) -> str:
    """A number that comes ready, with its unit where it has one."""
    return display.say("with-unit", number=number, unit=display.unit(unit)) if unit else number


def number_words(value: float, unit: str, display: Display = ENGLISH) -> str:
    """A number that the model gives, at two digits."""
    return span_words(value, value, unit, display)


def span_words(low: float, high: float, unit: str, display: Display = ENGLISH) -> str:
    """A span that the model gives, at two digits of its larger end; at more where an end would read as none or all."""
    ends = [0.0 if abs(end) < NEXT_TO_NOTHING else end for end in (display.value(low, unit), display.value(high, unit))]
    largest = max(map(abs, ends))
    places = max(0, 1 - math.floor(math.log10(largest))) if largest else 0
    if any(round(end, places) in (0, 100) and end not in (0, 100) for end in ends):
        places += 1
    least, most = (written(f"{round(end, places) + 0.0:,.{places}f}", display.language) for end in ends)
    return with_unit(most if least == most else display.say("span", low=least, high=most), unit, display)


def span_and_median(low: float, mid: float, high: float, unit: str, display: Display = ENGLISH) -> str:
    """A band and its median."""
    span = span_words(low, high, unit, display)
    return span if low == high else display.say("claim-band", span=span, median=number_words(mid, unit, display))
