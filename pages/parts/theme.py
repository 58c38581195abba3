"""How charts look: one colour a meaning, light and dark, and the type that all charts share.

A chart is a Vega-Lite specification whose named `datasets` are plain data: put together in a few milliseconds, where
objects of a charting library took fifty. The tests hold each against the published schema.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, fields
from typing import Any

import pandas as pd

Spec = dict[str, Any]
Rows = pd.DataFrame | Spec | list[Spec]
"""What a chart draws: a table, columns by name, or rows of the same keys; a data frame takes ten times as long to make
from three rows."""

FONT = '"Source Sans", "Source Sans 3", sans-serif'
"""The text face that Streamlit bundles."""
PRINT_FONT = "Liberation Sans, Arial, Helvetica, sans-serif"
"""Of pictures to print: the first comes with the library that draws them, so that words take the same room everywhere;
Arial is as wide."""
LABEL_PX, LINE_PX = 14, 17
TEXT_PX, WIDTH_PX = 640, 760
"""The column of text, and the most that a figure takes, so that its title and its picture read as one column."""


@dataclass(frozen=True)
class Palette:
    """Colours by what they mean. Marks have a contrast of at least 3:1 on the ground, words at least 4.5:1."""

    ground: str
    ink: str
    """Words, outlines, and what the driver chose."""
    quiet: str
    """Axis words and fine lines."""
    wash: str
    """The fill under a line; carries no meaning of its own."""
    back: str
    """Energy back in the battery."""
    friction: str
    """Heat in the friction brakes."""
    road: str
    """Air, rolling, climb."""
    losses: str
    """Lost on the way between wheel and battery."""
    aboard: str
    """Used in the car: cabin, lights, computers."""


LIGHT = Palette(
    ground="#fdfbf7",
    ink="#14191d",
    quiet="#5b5f63",
    wash="#e6e1d8",
    back="#0072B2",
    friction="#D55E00",
    road="#8a847b",
    losses="#7a3a72",
    aboard="#00815e",
)
DARK = Palette(
    ground="#1d1a17",
    ink="#ece6dc",
    quiet="#b9b1a5",
    wash="#3a352f",
    back="#56a9dc",
    friction="#f08a4b",
    road="#8f887e",
    losses="#a86c9e",
    aboard="#3fb892",
)


def palette(dark: bool = False) -> Palette:
    """The colours for a light or a dark ground; print is light."""
    return DARK if dark else LIGHT


def on_paper() -> str:
    """Style that prints a page drawn on the dark ground as one drawn on the light: paper is white."""
    pairs = [(getattr(DARK, field.name), getattr(LIGHT, field.name)) for field in fields(Palette)]
    marks = "".join(
        f'svg [fill="{dark}" i] {{ fill: {light}; }} svg [stroke="{dark}" i] {{ stroke: {light}; }}'
        for dark, light in pairs
    )
    whole = f"color: {LIGHT.ink} !important; background-color: transparent !important;"
    return f"@media print {{ body, body * {{ {whole} }} html {{ background: white; }} {marks} }}"


def dressed(layers: list[Spec], datasets: Mapping[str, Rows], height: int, dark: bool) -> Spec:
    """A finished chart: as wide as its place, of fixed height [px], in the type and colours that all share."""
    colours = palette(dark)
    return {
        "$schema": "https://vega.github.io/schema/vega-lite/v6.json",
        "layer": layers,
        "datasets": datasets,
        "width": "container",
        "height": height,
        "background": "transparent",
        "padding": {"left": 0, "right": 4, "top": 2, "bottom": 0},
        # the width gives way to the axes' words, the height does not: pictures place their marks by pixel
        "autosize": {"type": "fit-x", "contains": "padding"},
        "resolve": {"scale": {"y": "independent", "color": "independent"}},
        "config": {
            # a screen reader gets the picture's own sentence instead of every mark's pixels
            "aria": False,
            "mark": {"aria": False},
            "font": FONT,
            "view": {"stroke": None},
            "text": {"fontSize": LABEL_PX, "color": colours.ink, "baseline": "middle", "align": "left"},
            # a long mitre would count as part of the picture and take its width
            "line": {"strokeJoin": "round", "strokeMiterLimit": 1},
            "axis": {
                "labelFontSize": LABEL_PX,
                "labelColor": colours.quiet,
                "labelPadding": 4,
                "domainColor": colours.quiet,
                "tickColor": colours.quiet,
                "grid": False,
                "title": None,
            },
        },
    }


def area(fill: str, edge: str) -> Spec:
    """The look of a filled line."""
    line = {"color": edge, "strokeWidth": 1, "strokeJoin": "round", "strokeMiterLimit": 1}
    return {"color": fill, "opacity": 1, "line": line}
