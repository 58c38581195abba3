"""Drives side by side on one axis, and their differences from the first around zero. Bands lie under the bars."""

from __future__ import annotations

from collections.abc import Sequence

from model.describe.figures import Span
from model.out.comparison import Difference, Side
from model.sampling.uncertainty import Band
from model.words.quantities import Display, capital, span_of
from pages.parts.charts.layers import still
from pages.parts.charts.marks import Box, Words, drawn
from pages.parts.theme import LINE_PX, Spec

BAND_PX, BAR_PX, MARK_PX, BETWEEN_PX, HEAD_PX = 26, 30, 9, 14, 30
"""Heights of a band of differences, a bar, the band below it, the room between rows, and of the key."""
ROW_PX = 2 * LINE_PX + BAR_PX + MARK_PX + BETWEEN_PX
LINE_SHARE, CAP_SHARE = 0.005, 0.0025
"""Width of a middle's line and of a band's end, as shares of the picture's [1]."""


def side_by_side(
    sides: Sequence[Side], differences: Sequence[Difference], names: Sequence[str], display: Display, dark: bool = False
) -> Spec:
    """What each drive takes, and beside it what regeneration saves; below, what each takes more than the first.

    A line under a bar says from where to where its end may lie.

    `differences` are those of the second drive and the third.
    """
    most = max(max(side.answer.friction_only_net_kwh.mid, side.answer.net_kwh.high) for side in sides)
    least = min(0.0, min(side.answer.net_kwh.low for side in sides))
    span = still(most - least)
    boxes: list[Box] = []
    words: list[Words] = []

    for place, (side, name) in enumerate(zip(sides, names, strict=True)):
        y = place * ROW_PX
        net, without, saved = side.answer.net_kwh, side.answer.friction_only_net_kwh, side.answer.saved_kwh
        words.append(Words(capital(name), 0, y + 9, "start", bold=True))
        text = display.say("compare-line", taken=span_of(net, "kWh"), saved=span_of(saved, "kWh"))
        words.append(Words(text, 0, y + 9 + LINE_PX, "start"))
        y += 2 * LINE_PX + 2
        foot = y + BAR_PX
        start = min(net.mid, 0.0) - least, max(net.mid, 0.0) - least
        boxes.append(Box(*start, y, foot, "road"))
        boxes.append(Box(net.mid - least, without.mid - least, y + 1, foot - 1, "back", hollow=True))
        low, high = net.low - least, net.high - least
        boxes.append(Box(low, high, foot + 5, foot + 7, "ink"))
        boxes.extend(Box(end, end + CAP_SHARE * span, foot + 2, foot + 10, "ink") for end in (low, high))
    y = len(sides) * ROW_PX
    words.append(Words(display.say("compare-key"), 0, y + 2, "start", meaning="quiet"))
    y += HEAD_PX
    height = y + _differences(boxes, words, differences, names, y, span, display)
    return drawn(boxes, words, int(height), span, dark)


def _differences(
    boxes: list[Box],
    words: list[Words],
    differences: Sequence[Difference],
    names: Sequence[str],
    top: float,
    span: float,
    display: Display,
) -> float:
    """Rows around a zero in the middle, on a scale of their own; how high they are [px]."""
    bands = [difference.net_kwh for difference in differences]
    reach = 1.1 * max(max(abs(band.low), abs(band.high)) for band in bands) or 1.0

    def across(kwh: float) -> float:
        return span * (0.5 + 0.5 * kwh / reach)

    heading = display.say("compare-more-or-less", first=names[0])
    words.append(Words(heading, 0, top + 9, "start", bold=True))
    y = top + LINE_PX + 8
    zero = y
    for band, name in zip(bands, names[1:], strict=True):
        text = display.say("compare-difference", name=capital(name), difference=difference_of(band, "kWh"))
        words.append(Words(text, 0, y + 9, "start"))
        y += LINE_PX + 2
        low, high, middle = (across(end) for end in (band.low, band.high, band.mid))
        boxes.append(Box(low, high, y, y + BAND_PX, "wash"))
        boxes.extend(Box(end, end + CAP_SHARE * span, y, y + BAND_PX, "quiet") for end in (low, high))
        half = LINE_SHARE * span / 2
        boxes.append(Box(middle - half, middle + half, y, y + BAND_PX, "ink"))
        y += BAND_PX + BETWEEN_PX - 2
    middle, half = span / 2, CAP_SHARE * span / 2
    boxes.append(Box(middle - half, middle + half, zero + LINE_PX, y - 8, "ink"))
    words.append(Words("0", middle, y + 2, "center", meaning="quiet"))
    words.append(Words(display.say("compare-less"), 0, y + 2, "start", meaning="quiet"))
    words.append(Words(display.say("compare-more"), span, y + 2, "right", meaning="quiet"))
    return y + LINE_PX - top


def difference_of(band: Band, unit: str) -> Span:
    """Both ends of a difference with their signs, such as “+0.8 to +1.4 kWh”."""
    return Span(band.low, band.high, unit, signed=True)
