"""What stays on one line: a number with its unit, a range with its ends."""

from __future__ import annotations

import re

NO_BREAK = "\N{NO-BREAK SPACE}"
UNITS = re.compile(
    r"(?<=\d) (?=(?:%|°[CF]|m/s²|[kM]?Wh?|k[mgN]|km/h|mph|lbf?|[glms]|mi|ft|min|times|points)(?!\w))"
)


def together(sentence: str) -> str:
    """A sentence whose numbers stay on one line with their units."""
    return UNITS.sub(NO_BREAK, sentence)
