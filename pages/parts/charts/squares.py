"""A hundred squares for what a drive takes on friction brakes only: what becomes of each, and which are saved."""

from __future__ import annotations

from collections.abc import Mapping

import pandas as pd

from pages.parts.charts.energy import grouped, rounded_to_add_up
from pages.parts.charts.marks import Box, drawn
from pages.parts.theme import Spec

COLUMNS, ROWS = 25, 4
SQUARE_PX, NARROW_PX = 25, 20
"""How high a square is, and on a telephone."""
GAP, FRAME = 0.09, 0.2
"""The ground between two squares, and the frame of one that is saved, as shares of a square."""
SAVED = "back"


def counted(books: pd.DataFrame) -> dict[str, dict[str, int]] | None:
    """How many squares go where, by run and meaning, in the order of the picture; both runs have a hundred.

    `books` is from `model.kernel.timeline.books`. None where squares cannot show it: on a drive on which a hill gives
    more than the road takes, or on which nothing is saved.
    """
    uses = grouped(books)
    without = float(uses["friction_only"].sum())
    saved = without - float(uses["regenerated"].sum())
    if without <= 0 or saved <= 0 or saved > without or (uses < 0).any(axis=None):
        return None
    found = {}
    for run, kwh in (("friction_only", 0.0), ("regenerated", saved)):
        shares = [100 * value / without for value in (*map(float, uses[run]), kwh)]
        squares = rounded_to_add_up(shares, 0, COLUMNS * ROWS)
        found[run] = dict(zip((*uses.index, SAVED), map(int, squares), strict=True))
    return found


def squares(counts: Mapping[str, int], square_px: int, dark: bool = False) -> Spec:
    """One run's hundred squares, column by column; those that are saved are frames."""
    boxes = []
    meanings = [meaning for meaning, count in counts.items() for _ in range(count)]
    for place, meaning in enumerate(meanings):
        column, row = divmod(place, ROWS)
        x0, x1, y0, y1 = column, column + 1 - GAP, row * square_px, (row + 1 - GAP) * square_px
        boxes.append(Box(x0, x1, y0, y1, meaning))
        if meaning == SAVED:
            boxes.append(Box(x0 + FRAME, x1 - FRAME, y0 + FRAME * square_px, y1 - FRAME * square_px, "ground"))
    return drawn(boxes, (), ROWS * square_px, COLUMNS - GAP, dark)
