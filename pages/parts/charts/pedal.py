"""The foot up beside the brake pedal: where the motor's slowing is missing, and the pedal that is there."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from model.limits.foot_and_pedal import FootAndPedal
from pages.parts.charts.marks import CARD_LINE_PX, CARD_PX, Box, Words, drawn
from pages.parts.theme import LABEL_PX, LINE_PX, Spec

WIDE_PX, NARROW_PX = 740, 346
"""The least width of a card on a tablet, and on a telephone: words beside a bar must fit it."""
LETTER = 0.5
"""Width of a letter, as a share of its height."""
ASIDE_PX, APART_PX, BETWEEN_PX = 8, 3, 14
"""From a bar to its words, between the two bars of a row, and between rows."""


@dataclass(frozen=True)
class RowWords:
    """A row's name, and what is said beside its two bars."""

    name: str
    foot: str
    pedal: str


def foot_and_pedal(
    rows: Sequence[FootAndPedal], said: Sequence[RowWords], *, narrow: bool, dark: bool = False
) -> Spec:
    """Two bars a row, on one scale of slowing: the motor as the foot comes up, and below it the brake pedal.

    What the motor lacks of the first row's slowing is an outline.
    """
    text_px, line_px, width = (LABEL_PX, LINE_PX, NARROW_PX) if narrow else (CARD_PX, CARD_LINE_PX, WIDE_PX)
    bar_px = line_px - 2
    # words stand at the end of every bar, so the longest bar leaves them room
    scale = min(
        (width - ASIDE_PX - LETTER * text_px * len(beside.pedal)) / row.pedal_mps2
        for row, beside in zip(rows, said, strict=True)
    )
    whole = rows[0].motor_mps2
    boxes: list[Box] = []
    words: list[Words] = []
    top = 0.0
    for row, beside in zip(rows, said, strict=True):
        words.append(Words(beside.name, 0, top + line_px / 2, "start", bold=True))
        foot = top + line_px + 2
        pedal = foot + bar_px + APART_PX
        boxes += [Box(0, row.motor_mps2, foot, foot + bar_px, "back"),
                  Box(0, row.pedal_mps2, pedal, pedal + bar_px, "friction")]  # fmt: skip
        if row.motor_mps2 < whole:
            boxes.append(Box(row.motor_mps2, whole, foot + 1, foot + bar_px - 1, "back", hollow=True))
        words += [Words(beside.foot, max(whole, row.motor_mps2), foot + bar_px / 2),
                  Words(beside.pedal, row.pedal_mps2, pedal + bar_px / 2)]  # fmt: skip
        top = pedal + bar_px + BETWEEN_PX
    return drawn(boxes, words, round(top - BETWEEN_PX) + 2, width / scale, dark, large=not narrow)
