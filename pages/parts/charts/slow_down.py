"""One slow-down in a picture: its three ways along the road, and what each takes."""

from __future__ import annotations

import numpy as np

from model.describe.figures import Quantity
from model.describe.trace import Array, Trace
from model.describe.units import KMH_PER_MPS
from model.one_stop.slow_down import SlowDown
from model.traces.habits import LEAST
from model.words.quantities import Display
from pages.parts.charts.layers import (
    PX_X,
    PX_Y,
    along,
    by_meaning,
    by_px,
    layer,
    line,
    next_step,
    upright,
    where,
    words,
)
from pages.parts.theme import LINE_PX, Rows, Spec, dressed, palette

WAYS = {
    "coast": ("road", [6, 3]),
    "regen": ("back", [1, 0]),
    "friction": ("friction", [1, 0]),
}
"""The three ways: the colour of their bars, and their dash over the road."""
ROAD_PX, WAY_PX, BAR_PX, GAP_PX, TIME_PX = 110, 64, 16, 6, 6
BARS_FROM_PX = LINE_PX + ROAD_PX + 44
FOR_WORDS_SHARE = 0.35
"""Room for words beside the longest bar, as a share of it [1]."""


def one_slow_down(found: SlowDown, display: Display, dark: bool = False) -> Spec:
    """Speed along the road of the three ways, then what each takes in energy and time; bars from zero."""
    colours = palette(dark)
    distance = float(display.value(found.coast.distance_m, "m"))
    ways = {key: getattr(found, key) for key in WAYS}
    fastest = next_step(float(display.value(found.coast.trace.speed_mps.max() * KMH_PER_MPS, "km/h")), 20)
    height = BARS_FROM_PX + len(ways) * WAY_PX
    foot = LINE_PX + ROAD_PX
    x = along("metre", next_step(distance, 50), display.unit("m"), 90)
    x["axis"] = x["axis"] | {"offset": foot - height}
    fastest_words = display.figure(Quantity(fastest, display.unit("km/h"), places=0))
    y = upright("speed", [0, fastest], [foot, LINE_PX], {fastest: fastest_words, 0: "0"})
    drawn = {key: line_of(ways[key].trace, display) for key in ("coast", "regen")}
    most = max(max(way.battery_wh, 0.0) for way in ways.values())
    least = min(min(way.battery_wh, 0.0) for way in ways.values())
    longest = max(way.time_s for way in ways.values())

    def along_bar(energy_wh: float) -> float:
        return (energy_wh - least) / max(most - least, LEAST)

    bars: list[Spec] = []
    texts: list[Spec] = []
    for row, (key, way) in enumerate(ways.items()):
        name, meaning = display.say("lift-off-way", way=key), WAYS[key][0]
        top = BARS_FROM_PX + row * WAY_PX
        middle, below = top + LINE_PX + BAR_PX / 2, top + LINE_PX + BAR_PX + GAP_PX + TIME_PX / 2
        seconds = way.time_s / longest
        bars += [
            {"from": along_bar(0.0), "to": along_bar(way.battery_wh), "y": middle - BAR_PX / 2,
             "y2": middle + BAR_PX / 2, "meaning": meaning},
            {"from": 0.0, "to": seconds, "y": below - TIME_PX / 2, "y2": below + TIME_PX / 2, "meaning": "quiet"},
        ]  # fmt: skip
        texts += [
            {"at": 0.0, "y": top + 7.0, "text": name, "bold": True},
            {"at": along_bar(max(way.battery_wh, 0.0)), "y": middle, "text": wh_text(way.battery_wh, display),
             "bold": False},
            {"at": seconds, "y": below, "text": display.figure(Quantity(way.time_s, "s", places=0)), "bold": False},
        ]  # fmt: skip
    scale = {"domain": [0, 1 + FOR_WORDS_SHARE], "nice": False, "zero": False}
    along_bars = {"field": "from", "type": "quantitative", "axis": None, "scale": scale}
    at, down, bare = along_bars | {"field": "at"}, by_px("y", height), {"axis": None}
    box = {"x": along_bars, "x2": {"field": "to"}, "y": down, "y2": {"field": "y2"}, "color": by_meaning(colours)}
    rolling = {"value": display.say("lift-off-rolling-line")}
    layers = [
        where("way", "coast") | line("speeds", x, y, colours.ink, WAYS["coast"][1], 2.5),
        where("way", "regen") | line("speeds", x | bare, y | bare, colours.ink, WAYS["regen"][1], 2.5),
        words("top", PX_X, PX_Y),
        layer("rolling", "text", {"x": x | bare, "y": y | bare, "text": rolling}, dy=13),
        layer("bars", "rect", box),
        where("bold", True) | words("words", at, down, xOffset=0, fontWeight=600),
        where("bold", False) | words("words", at, down, xOffset=6, fontWeight=400),
    ]
    rolled = drawn["coast"]
    datasets: dict[str, Rows] = {
        "speeds": {"way": np.repeat([*drawn], [len(points) for points in drawn.values()]).astype(object)}
        | dict(zip(("metre", "speed"), np.concatenate([*drawn.values()]).T, strict=True)),
        "rolling": [dict(zip(("metre", "speed"), rolled[len(rolled) // 4].tolist(), strict=True))],
        "bars": bars,
        "words": texts,
        "top": [{"x": 4, "y": 7, "text": display.say("lift-off-keeping")}],
    }
    spec = dressed(layers, datasets, height, dark)
    spec["resolve"] = {"scale": spec["resolve"]["scale"] | {"x": "independent"}}
    return spec


def line_of(trace: Trace, display: Display) -> Array:
    """Places and speeds along a trace in the units shown, shape (points, 2); as fine as it is drawn."""
    metre = display.value(np.append(0.0, np.cumsum(trace.step_m)), "m")
    points = np.stack([metre, display.value(trace.speed_mps * KMH_PER_MPS, "km/h")], axis=1)
    return np.round(points[:: max(1, len(points) // 120)], 3)


def wh_text(energy_wh: float, display: Display) -> str:
    """An energy to the watt-hour, small ones to a tenth."""
    return display.figure(Quantity(energy_wh, "Wh", places=0 if abs(energy_wh) >= 9.95 else 1))
