"""Slowing side by side: what is left of a lift-off where it fades, and what the brake pedal can do."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence
from dataclasses import dataclass

from model.limits.winter import LiftOffLeft
from pages.parts.charts.marks import CARD_LINE_PX, CARD_PX, Box, Words, drawn
from pages.parts.theme import LABEL_PX, LINE_PX, Spec
from pages.parts.typography import together

WIDE_PX, NARROW_PX = 740, 346
"""The least width of a card on a tablet, and on a telephone: words beside a bar must fit it."""
LETTER = 0.45
"""Width of a letter, as a share of its height."""
BETWEEN_PX = 10


@dataclass(frozen=True)
class BarWords:
    """A bar's name, and what is said below it."""

    name: str
    beside: str

    def lines(self, letters: int) -> tuple[list[str], list[str]]:
        """Both in lines of so many letters."""
        name, beside = (textwrap.wrap(together(text), letters) for text in (self.name, self.beside))
        return name, beside


def beside_the_pedal(
    lifts: Sequence[LiftOffLeft], hard_mps2: float, rows: Sequence[BarWords], pedal: BarWords, *, narrow: bool,
    dark: bool = False,
) -> Spec:
    """A short bar for each lift-off, its words at its right, and the pedal's bar over the whole width below them.

    What a lift-off lacks is an outline; all bars are on one scale of slowing.
    """
    text_px, line_px, width = (LABEL_PX, LINE_PX, NARROW_PX) if narrow else (CARD_PX, CARD_LINE_PX, WIDE_PX)
    whole = max(lift.rolling_mps2 + lift.motor_mps2 for lift in lifts)
    most = max(hard_mps2, whole)
    letters = max(int(width * (1 - whole / most) / (LETTER * text_px)), 16)
    boxes: list[Box] = []
    words: list[Words] = []
    top = 0.0

    def said(lines: tuple[list[str], list[str]], x: float, align: str) -> float:
        """Set a row's words from the top on; where they end."""
        for text, above, bold in ((lines[0], 0, True), (lines[1], len(lines[0]), False)):
            words.append(Words("\n".join(text), x, top + line_px * (above + 0.5), align, bold))
        return top + line_px * sum(map(len, lines))

    for lift, row in zip(lifts, rows, strict=True):
        foot = said(row.lines(letters), whole, "left")
        slows = lift.rolling_mps2 + lift.motor_mps2
        boxes += [Box(0, lift.rolling_mps2, top, foot, "road"), Box(lift.rolling_mps2, slows, top, foot, "back")]
        if slows < whole:
            boxes.append(Box(slows, whole, top + 1, foot - 1, "back", hollow=True))
        top = foot + BETWEEN_PX
    top = said(pedal.lines(int(width / (LETTER * text_px))), 0, "start") + 2
    boxes.append(Box(0, hard_mps2, top, top + 2 * line_px, "friction"))
    return drawn(boxes, words, round(top + 2 * line_px), most, dark, large=not narrow)
