"""What stays on one line: a number with its unit, a range with its ends."""

from __future__ import annotations

import re

NO_BREAK = "\N{NO-BREAK SPACE}"
UNITS = re.compile(
    r"(?<=\d) (?=(?:%|°[CF]|m/s²|[kM]?Wh?(?!/100)|k[mgN]|km/h|mph|lbf?|[glms]|mi|ft|min|times|points)(?!\w))"
)
RANGES = re.compile(r"(?<=\d) to (?=[−+]?\d)")
SUMS = re.compile(r"(?<=[€$£]) (?=\d)")


def together(sentence: str) -> str:
    """A sentence whose numbers stay on one line with their units and currencies, and ranges with their ends."""
    return SUMS.sub(NO_BREAK, RANGES.sub(f"{NO_BREAK}to{NO_BREAK}", UNITS.sub(NO_BREAK, sentence)))
