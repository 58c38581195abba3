"""Pictures outside the browser: the same specification, drawn by the same library, as SVG text."""

from __future__ import annotations

import re

import pandas as pd
import vl_convert

from pages.parts.theme import Spec

PLACES = re.compile(r' (?:d|transform|x|x1|x2|y|y1|y2|width|height)="[^"]*"')
LONG_NUMBER = re.compile(r"(\d+\.\d\d)\d+")
"""A hundredth of a pixel is finer than print; the rest would double the file. Numbers in words are left as they are."""


def svg(spec: Spec, width_px: int) -> str:
    """The picture at a width; what is only there for a pointer is left out."""
    layers = [
        layer for layer in spec["layer"] if not (isinstance(layer["mark"], dict) and layer["mark"].get("opacity") == 0)
    ]
    datasets = {name: table.to_dict("records") for name, table in spec["datasets"].items()}
    drawn = vl_convert.vegalite_to_svg(spec | {"layer": layers, "datasets": datasets, "width": width_px})
    return PLACES.sub(lambda place: LONG_NUMBER.sub(r"\1", place[0]), drawn)


def png(spec: Spec, width_px: int) -> bytes:
    """The picture at a width as pixels, three to each of the page's."""
    return vl_convert.svg_to_png(svg(spec, width_px), scale=3)


def warm_up() -> None:
    """Draw a point, so that the next picture need not wait for the library."""
    svg(
        {
            "layer": [{"data": {"name": "point"}, "mark": "point", "encoding": {}}],
            "datasets": {"point": pd.DataFrame([{"x": 0}])},
        },
        10,
    )
