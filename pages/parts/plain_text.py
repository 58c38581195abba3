"""Text that a visitor or a link brings, shown as nothing but text."""

import re

MOST = 300
"""No notice of ours is longer; what is brought may be."""
MARKS = re.compile(r"[\\`*_\[\]<>$~#|]|:(?=\S)")
ADDRESSES = re.compile(r"(?i)(https?|ftp|mailto|www)(?=[:.])|(?<=\S)(?=@)")
JOINER = "\N{WORD JOINER}"


def inert(text: str) -> str:
    """A text of bounded length in which Markdown finds nothing: no form, no formula, no picture, no link."""
    shown = " ".join(str(text)[: MOST + 1].split())
    shown = f"{shown[:MOST]}…" if len(shown) > MOST else shown
    # an address is made a link even where its marks are escaped, but not where it is broken
    return MARKS.sub(r"\\\g<0>", ADDRESSES.sub(rf"\g<0>{JOINER}", shown))
