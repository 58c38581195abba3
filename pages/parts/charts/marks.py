"""Boxes and words set by hand: pictures whose words stand beside what they name need no axis and no key."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import asdict, dataclass

import numpy as np
import pandas as pd

from pages.parts.theme import LINE_PX, Spec, dressed, palette


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
    boxes: Sequence[Box], words: Sequence[Words], height: int, most: float, dark: bool, widest_px: int = 10_000
) -> Spec:
    """A picture of boxes and words; its scale runs from 0 to `most` over its width, or over `widest_px`."""
    across = {"domain": [0, most], "range": [0, {"expr": f"min(width, {widest_px})"}], "nice": False, "zero": False}
    down = {"domain": [0, height], "range": [0, height], "nice": False, "zero": False}
    colours = asdict(palette(dark))
    colour: Spec = {"field": "meaning", "type": "nominal", "legend": None}
    colour["scale"] = {"domain": list(colours), "range": list(colours.values())}
    place = {
        "x": {"field": "x0", "type": "quantitative", "scale": across, "axis": None},
        "y": {"field": "y0", "type": "quantitative", "scale": down, "axis": None},
    }
    box = place | {"x2": {"field": "x1"}, "y2": {"field": "y1"}}
    layers: list[Spec] = [
        {"transform": [{"filter": "!datum.hollow"}], "mark": "rect", "encoding": box | {"color": colour}},
        {"transform": [{"filter": "datum.hollow"}],
         "mark": {"type": "rect", "filled": False, "strokeDash": [4, 3], "strokeWidth": 2},
         "encoding": box | {"stroke": colour}},
    ]  # fmt: skip
    layers = [{"data": {"name": "boxes"}} | layer for layer in layers]
    lines = [
        {"text": line, "x0": item.x, "y0": item.y + row * LINE_PX, "meaning": item.meaning, "align": item.align,
         "bold": item.bold}
        for item in words
        for row, line in enumerate(item.text.split("\n"))
    ]  # fmt: skip
    for align, bold in sorted({(item.align, item.bold) for item in words}):
        mark = {
            "type": "text",
            "align": "left" if align == "start" else align,
            "dx": ASIDE_PX[align],
            "fontWeight": 600 if bold else 400,
        }
        layers.append(
            {
                "data": {"name": "words"},
                "transform": [{"filter": f"datum.align == '{align}' && datum.bold == {str(bold).lower()}"}],
                "mark": mark,
                "encoding": place | {"color": colour, "text": {"field": "text"}},
            }
        )
    return dressed(layers, {"boxes": pd.DataFrame(boxes), "words": pd.DataFrame(lines)}, height, dark)


def apart(wanted: Sequence[float], heights: Sequence[float], lowest: float, highest: float) -> list[float]:
    """Places near the wanted ones, in the same order, at which labels of these heights do not overlap.

    Places are middles, between `lowest` and `highest` as far as the labels fit there.
    """
    order = np.argsort(wanted, kind="stable")
    half = np.asarray(heights, dtype=float)[order] / 2
    places = np.asarray(wanted, dtype=float)[order]
    edge = lowest
    for i in range(len(places)):
        places[i] = max(places[i], edge + half[i])
        edge = places[i] + half[i]
    edge = max(highest, lowest + 2 * half.sum())
    for i in reversed(range(len(places))):
        places[i] = min(places[i], edge - half[i])
        edge = places[i] - half[i]
    back = np.empty_like(places)
    back[order] = places
    return [float(place) for place in back]
