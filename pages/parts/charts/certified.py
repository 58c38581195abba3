"""How far to trust it in pictures: certified cars measured against modelled, and what the bands said against held."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from model.checks.certified import SAID, CarsFound
from model.words.quantities import Display
from pages.parts.charts.layers import layer, line, next_step, where, words
from pages.parts.theme import LABEL_PX, LINE_PX, Palette, Spec, dressed, palette

HEIGHT_PX = 360
BAND = SAID[90]
SHAPES = {"inside": "circle", "above": "triangle-up", "below": "triangle-down"}
"""Where a measured car lies, and how it is drawn."""
LEAST_PCT = 30


def places(found: CarsFound) -> NDArray[np.str_]:
    """Where each car lies: inside its band, above or below."""
    return np.select([found.above(BAND), found.below(BAND)], ["above", "below"], "inside")


def _axes(
    x: str, y: str, ends: list[float], ticks: list[float], unit: str, colours: Palette, display: Display
) -> tuple[Spec, Spec]:
    """A pair of axes from end to end alike, over the whole picture; their names stand along them."""
    look = {"values": ticks, "titleFontSize": LABEL_PX, "titleFontWeight": 400, "titleColor": colours.quiet}
    scale = {"domain": ends, "nice": False, "zero": False}
    return (
        {"field": x, "type": "quantitative", "scale": scale,
         "axis": look | {"title": display.say("certified-axis", what=x, unit=unit)}},
        {"field": y, "type": "quantitative", "scale": scale,
         "axis": look | {"title": display.say("certified-axis", what=y, unit=unit)}},
    )  # fmt: skip


def _key(names: Sequence[str], marks: Sequence[Spec]) -> tuple[list[Spec], pd.DataFrame]:
    """Marks and their names under one another in the upper left corner, where no car lies."""
    layers = []
    for row, mark in enumerate(marks):
        y = {"value": (row + 0.5) * (LINE_PX + 3)}
        layers += [
            where("row", row) | layer("key", "point", {"x": {"value": 14}, "y": y}, **mark),
            where("row", row) | words("key", {"value": 26}, y),
        ]
    return layers, pd.DataFrame({"row": range(len(names)), "text": names})


def _diagonal(x: Spec, y: Spec, ends: list[float], colours: Palette) -> tuple[Spec, pd.DataFrame]:
    """Where both axes say the same; it carries the axes' words for all layers."""
    return line("same", x, y, colours.quiet, [4, 4], 1.5), pd.DataFrame({x["field"]: ends, y["field"]: ends})


def measured_against_modelled(found: CarsFound, display: Display, dark: bool = False) -> Spec:
    """Every certified car of a cycle: what was measured over what the model says; misses of the band stand out.

    Both cycles have the same axes, so that the two pictures can be compared.
    """
    colours, unit = palette(dark), display.unit("Wh/km")
    step = 100.0 if display.us else 50.0
    ends = [step, next_step(float(display.value(300.0, "Wh/km")), step)]
    x, y = _axes("modelled", "measured", ends, [*np.arange(ends[0], ends[1] + 1, step)], unit, colours, display)
    table = pd.DataFrame(
        {"modelled": display.value(found.modelled, "Wh/km"), "measured": display.value(found.measured, "Wh/km"),
         "place": places(found)}
    ).round(2)  # fmt: skip
    looks: dict[str, Spec] = {
        place: {"shape": SHAPES[place], "filled": place != "inside", "opacity": 1, "strokeWidth": 1.2,
                "size": 30 if place == "inside" else 70, "color": colours.quiet if place == "inside" else colours.ink}
        for place in SHAPES
    }  # fmt: skip
    same, on_it = _diagonal(x, y, ends, colours)
    y = y | {"axis": None}
    counts = table["place"].value_counts()
    counted = [display.say("certified-place-counted", place=place, cars=int(counts.get(place, 0))) for place in SHAPES]
    key, names = _key(counted, [*looks.values()])
    cars = [where("place", place) | layer("cars", "point", {"x": x, "y": y}, **looks[place]) for place in SHAPES]
    return dressed([same, *cars, *key], {"cars": table, "same": on_it, "key": names}, HEIGHT_PX, dark)


def reliability(both: Sequence[CarsFound], display: Display, dark: bool = False) -> Spec:
    """How many measured cars the bands held [%], over how many they should: city and highway."""
    colours, ends = palette(dark), [float(LEAST_PCT), 100.0]
    x, y = _axes("said", "held", ends, [*map(float, SAID), 100.0], "%", colours, display)
    table = pd.DataFrame(
        [
            {"said": float(said), "held": found.held_pct(band), "cycle": found.cycle,
             "text": f"{found.held_pct(band):.0f}"}
            for found in both for said, band in SAID.items()
        ]
    )  # fmt: skip
    # numbers stand off the lines: the larger above on the left, the smaller below on the right
    table["upper"] = table["held"] == table.groupby("said")["held"].transform("max")
    same, on_it = _diagonal(x, y, ends, colours)
    y = y | {"axis": None}
    looks: dict[str, Spec] = {
        found.cycle: {"shape": shape, "filled": filled, "fill": colours.ink if filled else colours.ground,
                      "stroke": colours.ink, "strokeWidth": 1.5, "size": 70, "opacity": 1}
        for found, shape, filled in zip(both, ("circle", "square"), (True, False), strict=True)
    }  # fmt: skip
    key, names = _key([display.say("certified-cycle", cycle=cycle) for cycle in looks], [*looks.values()])
    layers = [same]
    for cycle, dash in zip(looks, ([1, 0], [6, 3]), strict=True):
        layers += [
            where("cycle", cycle) | line("held", x, y, colours.ink, dash, 1.5),
            where("cycle", cycle) | layer("held", "point", {"x": x, "y": y}, **looks[cycle]),
        ]
    layers += [
        where("upper", True) | words("held", x, y, align="right", xOffset=-7, yOffset=-9, fontWeight=600),
        where("upper", False) | words("held", x, y, xOffset=7, yOffset=10, fontWeight=600),
        *key,
    ]
    return dressed(layers, {"held": table.round(2), "same": on_it, "key": names}, HEIGHT_PX, dark)
