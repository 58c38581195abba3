"""How charts look: one colour a meaning, light and dark, and the type that all charts share."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import altair as alt

FONT = '"Source Sans", "Source Sans 3", sans-serif'
"""The text face that Streamlit bundles."""
LABEL_PX = 14
LINE_PX = 17
WIDTH_PX = 760
"""A figure is no wider than this, so that its title and its picture read as one column."""


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


def dressed(chart: Any, dark: bool, height: int) -> Any:
    """A finished chart: as wide as its place, of fixed height, in the type and colours that all share."""
    colours = palette(dark)
    return (
        chart.properties(
            width="container",
            height=height,
            background="transparent",
            padding={"left": 0, "right": 4, "top": 2, "bottom": 0},
            # the width gives way to the axes' words, the height does not: pictures place their marks by pixel
            autosize=alt.AutoSizeParams(type="fit-x", contains="padding"),
        )
        .configure(font=FONT)
        .configure_view(stroke=None)
        .configure_axis(
            labelFontSize=LABEL_PX,
            labelColor=colours.quiet,
            titleFontSize=LABEL_PX,
            titleFontWeight="normal",
            titleColor=colours.quiet,
            domainColor=colours.quiet,
            tickColor=colours.quiet,
            gridColor=colours.wash,
            grid=False,
            labelPadding=4,
        )
        .configure_legend(
            orient="top",
            direction="horizontal",
            title=None,
            labelFontSize=LABEL_PX,
            labelColor=colours.ink,
            labelLimit=300,
            symbolSize=160,
            columnPadding=14,
            offset=4,
        )
        .configure_text(fontSize=LABEL_PX, color=colours.ink)
    )
