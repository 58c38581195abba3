"""A year of the car described beside the fuel of the car driven now, as two bars on one scale of money."""

from __future__ import annotations

from model.describe.figures import Quantity
from model.sampling.beside_now import BesideNow
from model.words.quantities import Display, span_of
from pages.parts.charts.marks import Box, Words, drawn
from pages.parts.theme import LINE_PX, Spec

BAR_PX, MARK_PX, BETWEEN_PX = 34, 10, 14
"""Heights of a bar, of the band below it, and of the room between the bars."""


def beside_bars(found: BesideNow, currency: str, display: Display, dark: bool = False) -> Spec:
    """Electricity up to the middle of its band, its end open, and fuel as it is said; a line tells the band."""
    cost, most = found.cost, max(found.cost.high, found.fuel_cost)
    top = LINE_PX + 4
    foot = top + BAR_PX
    below = foot + MARK_PX + BETWEEN_PX
    boxes = [
        Box(0, cost.mid, top, foot, "ink"),
        Box(cost.mid, cost.high, top + 1, foot - 1, "ink", hollow=True),
        Box(cost.low, cost.high, foot + 4, foot + 7, "ink"),
        Box(0, found.fuel_cost, below + top, below + foot, "road"),
    ]
    yours = display.say("beside-bar-yours", currency=currency, cost=span_of(cost, ""))
    now = display.say(
        "beside-bar-now", fuel=found.fuel, currency=currency, cost=Quantity(found.fuel_cost, "", 3)
    )
    words = [Words(yours, 0, 9, "start", bold=True), Words(now, 0, below + 9, "start", bold=True)]
    return drawn(boxes, words, below + foot, most, dark)
