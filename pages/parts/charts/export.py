"""Pictures outside the browser: the same specification, drawn by the same library, as SVG text or pixels; for print."""

from __future__ import annotations

import re
import textwrap
from collections.abc import Sequence
from dataclasses import fields
from typing import Any, cast

import pandas as pd
import vl_convert

from pages.parts.keeping import ask
from pages.parts.theme import DARK, LIGHT, LINE_PX, PRINT_FONT, Palette, Rows, Spec
from pages.parts.typography import NO_BREAK, together

PRINT_PX = 720
PAPER = "#ffffff"
TITLE_CHARS, BELOW_CHARS = 76, 104
"""Characters of a printed title, and of a line below it, that fit the width."""
ON_PAPER = {
    getattr(palette, role.name).lower(): getattr(LIGHT, role.name)
    for palette in (LIGHT, DARK)
    for role in fields(Palette)
} | {LIGHT.ground: PAPER, DARK.ground: PAPER}
"""Every colour of either ground as it is printed."""

RANGE = re.compile(r"(?<=\d) (?=to [−\d])|(?<=\d to) (?=[−\d])")
"""The blanks of a range of numbers, which no line of a title parts."""
WIDEST = re.compile(r"min\(width, \d+\)")
PLACES = re.compile(r' (?:d|transform|x|x1|x2|y|y1|y2|width|height)="[^"]*"')
LONG_NUMBER = re.compile(r"(\d+\.\d\d)\d+")
"""A hundredth of a pixel is finer than print; the rest would double the file. Numbers in words are left as they are."""


def svg(spec: Spec, width_px: int) -> str:
    """The picture at a width; what is only there for a pointer is left out."""
    layers = [
        layer for layer in spec["layer"] if not (isinstance(layer["mark"], dict) and layer["mark"].get("opacity") == 0)
    ]
    needed = {layer["data"].get("name") for layer in layers}
    datasets = {name: records_of(rows) for name, rows in spec["datasets"].items() if name in needed}
    return ask(_drawn, spec | {"layer": layers, "datasets": datasets, "width": width_px}).given


def records_of(rows: Rows) -> list[Spec]:
    """The rows of what a chart draws."""
    return rows if isinstance(rows, list) else cast(list[Spec], pd.DataFrame(rows).to_dict("records"))


def _drawn(spec: Spec) -> str:
    # drawing takes longer than a whole page, and few changed values move a picture: it is kept by all that stands in it
    return PLACES.sub(lambda place: LONG_NUMBER.sub(r"\1", place[0]), vl_convert.vegalite_to_svg(spec))


def png(spec: Spec, width_px: int) -> bytes:
    """The picture at a width as pixels, three to each of the page's."""
    return vl_convert.svg_to_png(svg(spec, width_px), scale=3)


def for_print(spec: Spec, title: str, below: Sequence[str], transparent: bool = False) -> Spec:
    """A chart to print, whatever ground it was drawn on.

    `below` are paragraphs under the title: what it is about, and where it is from. A transparent one has no ground of
    its own, else it is white.
    """
    lines = [line for text in below for line in textwrap.wrap(text, BELOW_CHARS)]
    heading = {"text": textwrap.wrap(together(RANGE.sub(NO_BREAK, title)), TITLE_CHARS),
               "subtitle": lines, "anchor": "start", "fontSize": 18,
               "color": LIGHT.ink, "subtitleFontSize": 13, "subtitleLineHeight": LINE_PX, "subtitlePadding": 8,
               "subtitleColor": LIGHT.quiet, "offset": 14}  # fmt: skip
    drawn: Spec = {key: value if key == "datasets" else _on_paper(value) for key, value in spec.items()}
    drawn["config"] = drawn["config"] | {"font": PRINT_FONT}
    return drawn | {"title": heading, "background": "transparent" if transparent else PAPER, "padding": 16}


def _on_paper(part: Any) -> Any:
    if isinstance(part, dict):
        return {key: _on_paper(value) for key, value in part.items()}
    if isinstance(part, list):
        return [_on_paper(value) for value in part]
    # paper has one width, and a picture that keeps to part of a page fills it
    return ON_PAPER.get(part.lower(), WIDEST.sub("width", part)) if isinstance(part, str) else part


def warm_up() -> None:
    """Draw a point, so that the next picture need not wait for the library."""
    svg(
        {
            "layer": [{"data": {"name": "point"}, "mark": "point", "encoding": {}}],
            "datasets": {"point": [{"x": 0}]},
        },
        10,
    )
