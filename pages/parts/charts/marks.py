"""Boxes and words set by hand: pictures whose words stand beside what they name need no axis and no key."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import asdict, dataclass, fields

from pages.parts.charts.layers import by_name, by_px, layer, where
from pages.parts.theme import LABEL_PX, LINE_PX, Spec, dressed, palette

CARD_PX, CARD_LINE_PX = 19, 24
"""Type of a picture that is held towards somebody, and its lines."""


@dataclass(frozen=True)
class Box:
    """A box from `x0` to `x1` along the picture's scale and from `y0` down to `y1` [px], in a colour by its meaning."""

    x0: float
    x1: float
    y0: float
    y1: float
    meaning: str
    hollow: bool = False


@dataclass(frozen=True)
class Words:
    """Lines of words whose first one is centred on `y` [px], at `x` along the picture's scale."""

    text: str
    x: float
    y: float
    align: str = "left"
    bold: bool = False
    meaning: str = "ink"


ASIDE_PX = {"left": 6, "right": -6, "center": 0, "start": 0}
"""How far aside of their place words stand; `start` are words that begin at the very edge."""


def drawn(
    boxes: Sequence[Box], words: Sequence[Words], height: int, most: float, dark: bool, widest_px: int = 10_000,
    large: bool = False,
) -> Spec:
    """A picture of boxes and words; its scale runs from 0 to `most` over its width, or over `widest_px`.

    Where it is `large`, its words are of a card's type.
    """
    text_px, line_px = (CARD_PX, CARD_LINE_PX) if large else (LABEL_PX, LINE_PX)
    across = {"domain": [0, most], "range": [0, {"expr": f"min(width, {widest_px})"}], "nice": False, "zero": False}
    x: Spec = {"field": "x0", "type": "quantitative", "scale": across, "axis": None}
    y, colour = by_px("y0", height), by_name("meaning", asdict(palette(dark)))
    box = {"x": x, "x2": {"field": "x1"}, "y": y, "y2": {"field": "y1"}}
    dashed = {"filled": False, "strokeDash": [4, 3], "strokeWidth": 2}
    layers = [
        where("hollow", False) | layer("boxes", "rect", box | {"color": colour}),
        where("hollow", True) | layer("boxes", "rect", box | {"stroke": colour}, **dashed),
    ]
    lines = [
        {"text": line, "x0": item.x, "y0": item.y + row * line_px, "meaning": item.meaning, "align": item.align,
         "bold": item.bold}
        for item in words
        for row, line in enumerate(item.text.split("\n"))
    ]  # fmt: skip
    for align, bold in sorted({(item.align, item.bold) for item in words}):
        kept = {"and": [{"field": "align", "equal": align}, {"field": "bold", "equal": bold}]}
        place = {"x": x, "y": y, "color": colour, "text": {"field": "text"}}
        side, weight = "left" if align == "start" else align, 600 if bold else 400
        words_there = layer("words", "text", place, align=side, dx=ASIDE_PX[align], fontWeight=weight, fontSize=text_px)
        layers.append({"transform": [{"filter": kept}]} | words_there)
    columns = {item.name: [getattr(box, item.name) for box in boxes] for item in fields(Box)}
    return dressed(layers, {"boxes": columns, "words": lines}, height, dark)
