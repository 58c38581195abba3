"""Pictures that explain one stop: its energy by speed, its way into the battery, and who slows the car."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
import pandas as pd

from model.panels import FASTEST_KMH
from model.stop_energy import StopEnergy, WayOut
from pages.parts.charts.axes import along, next_step, upright
from pages.parts.charts.marks import apart
from pages.parts.display import Display, number_text
from pages.parts.theme import LINE_PX, Palette, Spec, dressed, palette

HEIGHT_PX = 320
NAMES_PX = 136
"""Room at the right for the names of what is drawn."""


def beside_names(axis: Spec, names_px: int = NAMES_PX) -> Spec:
    """A horizontal axis that leaves room for names at the right."""
    return axis | {"scale": axis["scale"] | {"range": [0, {"expr": f"max(width - {names_px}, 40)"}]}}


def by_px(field: str, height: int) -> Spec:
    """A vertical place given in pixels from the top."""
    scale = {"domain": [0, height], "range": [0, height], "nice": False, "zero": False}
    return {"field": field, "type": "quantitative", "stack": None, "scale": scale, "axis": None}


def by_meaning(colours: Palette, *meanings: str) -> Spec:
    """Colour by what a mark means."""
    scale = {"domain": list(meanings), "range": [getattr(colours, meaning) for meaning in meanings]}
    return {"field": "meaning", "type": "nominal", "legend": None, "scale": scale}


MEANINGS = ("back", "aboard", "losses", "friction", "road", "ink", "quiet")


@dataclass(frozen=True)
class Name:
    """The name of a mark: where the mark ends [along the axis, px from the top], and what it says."""

    x: float
    y: float
    text: str
    meaning: str
    bold: bool = False


def names_layers(names: Sequence[Name], x: Spec, height: int, colours: Palette) -> tuple[list[Spec], pd.DataFrame]:
    """Names at the right of their marks, moved apart, each tied to its mark by a line of its colour."""
    places = apart([name.y for name in names], [LINE_PX + 1] * len(names), 0, height)
    rows = pd.DataFrame([vars(name) | {"place": place} for name, place in zip(names, places, strict=True)])
    here = {"x": x | {"field": "x", "axis": None}, "y": by_px("place", height)}
    tie = {"type": "rule", "xOffset": 3, "x2Offset": 15, "strokeWidth": 2}
    layers: list[Spec] = [
        {"data": {"name": "names"}, "mark": tie,
         "encoding": here | {"x2": {"field": "x"}, "y": by_px("y", height), "y2": {"field": "place"},
                             "color": by_meaning(colours, *MEANINGS)}},
    ]  # fmt: skip
    for bold in sorted({name.bold for name in names}):
        layers.append(
            {"data": {"name": "names"}, "transform": [{"filter": f"datum.bold == {str(bold).lower()}"}],
             "mark": {"type": "text", "xOffset": 19, "fontWeight": 600 if bold else 400},
             "encoding": here | {"text": {"field": "text"}}}
        )  # fmt: skip
    return layers, rows


def wh(value: float) -> str:
    """An energy of a stop, to the watt-hour; small ones to a tenth."""
    return f"{value:.0f} Wh" if value >= 9.95 else f"{value:.1f} Wh"


# twice the speed, four times the energy

PARTS = (
    ("battery", "back in battery", "back"),
    ("aboard", "used aboard", "aboard"),
    ("losses", "motor, gear", "losses"),
    ("brakes", "friction", "friction"),
    ("road", "air, tyres", "road"),
)
"""What a stop's motion becomes, from the bottom of a column up."""


def parts_of(stop: StopEnergy) -> dict[str, float]:
    """The motion of a stop in the five parts of PARTS [Wh]."""
    brakes = stop.friction + stop.engine
    return {"battery": stop.battery, "aboard": stop.aboard, "losses": stop.losses, "brakes": brakes, "road": stop.road}


def speed_squared(
    curve: pd.DataFrame, stops: Sequence[tuple[float, StopEnergy]], display: Display, dark: bool = False
) -> Spec:
    """Energy of motion over speed, what of it comes back, and two stops as columns under the curve.

    `curve` is from `model.stop_energy.back_by_speed`; `stops` are two speeds [km/h], the slower first, and their energy.
    """
    colours, top = palette(dark), LINE_PX + 4
    fastest = float(display.value(FASTEST_KMH, "km/h"))
    most = next_step(float(curve["motion_wh"].max()), 50)

    def px(energy: Any) -> Any:
        return HEIGHT_PX - (HEIGHT_PX - top) * energy / most

    x = beside_names(along("speed", fastest, display.unit("km/h"), 80))
    lines = curve.assign(speed=display.value(curve["speed_kmh"], "km/h"))[["speed", "motion_wh", "battery_wh"]].round(3)
    boxes, heads, names = [], [], []
    for place, (speed_kmh, stop) in enumerate(stops):
        speed, low = float(display.value(speed_kmh, "km/h")), 0.0
        for key, name, meaning in PARTS:
            part = parts_of(stop)[key]
            boxes.append({"speed": speed, "y": px(low + part) + 0.5, "y2": px(low) - 0.5, "meaning": meaning})
            if place and part >= 0.05:
                names.append(Name(fastest, px(low + part / 2), f"{name} {wh(part)}", meaning, key == "battery"))
            low += part
        heads.append({"speed": speed, "y": px(low) - 10, "text": wh(low)})
    y = {end: upright(f"{end}_wh", [0, most], [HEIGHT_PX, top], words) for end, words in (
        ("motion", {value: f"{value:.0f} Wh" for value in (0, most / 2, most)}), ("battery", {}))}  # fmt: skip
    column = {"type": "rect", "xOffset": -13, "x2Offset": 13}
    place = {"x": x, "x2": {"field": "speed"}, "y": by_px("y", HEIGHT_PX), "y2": {"field": "y2"}}
    named, rows = names_layers(names, x, HEIGHT_PX, colours)
    layers = [
        _line("curve", x, y["battery"], colours.back, [5, 3]),
        _line("curve", x, y["motion"], colours.ink, [1, 0]),
        {"data": {"name": "columns"}, "mark": column, "encoding": place | {"color": by_meaning(colours, *MEANINGS)}},
        {"data": {"name": "heads"}, "mark": {"type": "text", "align": "right", "xOffset": 11, "fontWeight": 600},
         "encoding": {"x": x, "y": by_px("y", HEIGHT_PX), "text": {"field": "text"}}},
        *named,
    ]  # fmt: skip
    datasets = {"curve": lines.iloc[::4], "columns": pd.DataFrame(boxes), "heads": pd.DataFrame(heads), "names": rows}
    return dressed(layers, datasets, HEIGHT_PX, dark)


def _line(data: str, x: Spec, y: Spec, colour: str, dash: list[int]) -> Spec:
    mark = {"type": "line", "color": colour, "strokeWidth": 2, "strokeDash": dash}
    return {"data": {"name": data}, "mark": mark, "encoding": {"x": x, "y": y}}


# from the wheels to the battery and out again

STAGE_PX, BEND_PX, HEAD_PX = 34, 22, 26
WAY_IN = (
    ("road", "air and tyres", "road"),
    ("friction", "friction brakes", "friction"),
    ("engine", "turning the engine", "friction"),
    ("gear", "gear", "losses"),
    ("motor", "motor and inverter", "losses"),
    ("aboard", "lights, computers", "aboard"),
    ("cells", "heat in the cells", "losses"),
)
WAY_OUT = (
    ("cells", "heat in the cells", "losses"),
    ("motor", "inverter and motor", "losses"),
    ("gear", "gear", "losses"),
)
STUB_SHARE = 0.05
"""How far a loss bends away from the flow: share of the whole motion [1]."""


def flow(stop: StopEnergy, out: WayOut, dark: bool = False) -> Spec:
    """The energy of a stop as a flow down the page whose width is energy: every loss bends away from it."""
    colours, whole = palette(dark), stop.motion
    left, y = whole, float(HEAD_PX)
    flows, stubs = [], []
    words = [_word(0.0, 10, f"Motion: {wh(whole)}", bold=True)]
    for way, parts, meaning in ((WAY_IN, stop, "back"), (WAY_OUT, out, "quiet")):
        flows.append(_straight(left, y, y + 6, meaning))
        y += 6
        for key, name, loss in way:
            part = getattr(parts, key)
            if part < 0.05 and key == "engine":
                continue
            flows.append(_straight(left - part, y, y + STAGE_PX, meaning))
            stubs.append(_bent(left - part, left, whole * STUB_SHARE, y, loss, len(stubs)))
            words.append(_word(left + whole * STUB_SHARE, y + BEND_PX - 6, f"{name} {wh(part)}"))
            left, y = left - part, y + STAGE_PX
        if meaning == "back":
            words.append(_word(0.0, y + 12, f"In the cells: {wh(left)}", bold=True))
            y += HEAD_PX
    words.append(_word(0.0, y + 12, f"Back at the wheels: {wh(left)}", bold=True))
    height = int(y + HEAD_PX)
    scale = {"domain": [0, whole], "range": [0, {"expr": "width * 0.52"}], "nice": False, "zero": False}
    x = {"field": "x", "type": "quantitative", "stack": None, "scale": scale, "axis": None}
    color = by_meaning(colours, *MEANINGS)
    area = {"type": "area", "orient": "horizontal", "opacity": 1}
    layers: list[Spec] = [
        {"data": {"name": name}, "mark": area | look,
         "encoding": {"x": x, "x2": {"field": "x2"}, "y": by_px("y", height), "detail": {"field": "part"}} | {"color": color}}
        for name, look in (("flow", {}), ("stubs", {"line": {"strokeWidth": 1}}))
    ]  # fmt: skip
    for bold in (False, True):
        layers.append(
            {"data": {"name": "words"}, "transform": [{"filter": f"datum.bold == {str(bold).lower()}"}],
             "mark": {"type": "text", "xOffset": 0 if bold else 7, "fontWeight": 600 if bold else 400},
             "encoding": {"x": x, "y": by_px("y", height), "text": {"field": "text"}}}
        )  # fmt: skip
    flowing = pd.concat(flows, keys=range(len(flows)), names=["part"]).reset_index(level=0)
    datasets = {"flow": flowing, "stubs": pd.concat(stubs), "words": pd.DataFrame(words)}
    return dressed(layers, datasets, height, dark)


def _word(x: float, y: float, text: str, bold: bool = False) -> dict[str, Any]:
    return {"x": x, "y": y, "text": text, "bold": bold}


def _straight(width: float, start: float, end: float, meaning: str) -> pd.DataFrame:
    return pd.DataFrame({"x": width, "x2": 0.0, "y": [start, end], "meaning": meaning})


def _bent(low: float, high: float, aside: float, y: float, meaning: str, part: int) -> pd.DataFrame:
    # a smooth step aside while it goes down
    down = np.linspace(0, 1, 9)
    shift = aside * down * down * (3 - 2 * down)
    return pd.DataFrame(
        {"part": part, "x": high + shift, "x2": low + shift, "y": y + BEND_PX * down, "meaning": meaning}
    )


# who slows the car

SLOWING_MOST = 10.0
"""The end of the slowing axis [m/s²]: no car's tyres give more."""
SHARES = (("road", "air, tyres"), ("motor", "motor"), ("friction", "friction"))


def who_slows(
    split: pd.DataFrame, hardest: pd.DataFrame, grip: pd.DataFrame, display: Display, dark: bool = False
) -> Spec:
    """Slowing over speed, piled up by who does it, under what the road would allow.

    `split` and `hardest` are from `model.who_slows`; `grip` has `speed_kmh` and `grip_mps2`.
    """
    colours, top = palette(dark), 8
    fastest, unit = float(display.value(FASTEST_KMH, "km/h")), display.unit("km/h")
    x = beside_names(along("speed", fastest, unit, 80))
    words = {value: f"{value:.0f} m/s²" for value in (0.0, 5.0, SLOWING_MOST)}

    def up(field: str, words: dict[float, str] | None = None) -> Spec:
        return upright(field, [0, SLOWING_MOST], [HEIGHT_PX, top], words or {})

    def px(slowing: float) -> float:
        return HEIGHT_PX - (HEIGHT_PX - top) * slowing / SLOWING_MOST

    speed = display.value(split["speed_kmh"], "km/h")
    start, low, piles, names = float(speed.max()), 0.0, [], []
    for meaning, name in SHARES:
        part = split[f"{meaning}_mps2"]
        piles.append(pd.DataFrame({"speed": speed, "y": low + part, "y2": low, "meaning": {"motor": "back"}.get(meaning, meaning)}))
        if part.max() >= 0.05:
            here = piles[-1].iloc[0]
            text = f"{name} {number_text(part.iloc[0])}"
            names.append(Name(start, px((here["y"] + here["y2"]) / 2), text, here["meaning"], meaning == "motor"))
        low = low + part
    able = pd.DataFrame({"speed": display.value(hardest["speed_kmh"], "km/h"),
                         "able": hardest["road_mps2"] + hardest["motor_mps2"]})  # fmt: skip
    limit = grip.assign(speed=display.value(grip["speed_kmh"], "km/h"))[["speed", "grip_mps2"]]
    edge = float(limit["grip_mps2"].iloc[0])
    heads = pd.DataFrame({"speed": [0.0], "y": [max(px(edge) - 10, 8)], "text": ["all that the road's grip allows"]})
    named, rows = names_layers(names, x, HEIGHT_PX, colours)
    layers = [
        {"data": {"name": "piles"}, "mark": {"type": "area", "opacity": 1},
         "encoding": {"x": x, "y": up("y", words), "y2": {"field": "y2"}, "color": by_meaning(colours, *MEANINGS)}},
        _line("able", x, up("able"), colours.ink, [2, 3]),
        _line("grip", x, up("grip_mps2"), colours.ink, [8, 4]),
        {"data": {"name": "heads"}, "mark": {"type": "text", "xOffset": 5},
         "encoding": {"x": x, "y": by_px("y", HEIGHT_PX), "text": {"field": "text"}}},
        *named,
    ]  # fmt: skip
    thin = pd.concat(pile.iloc[_every(pile)] for pile in piles).round(4)
    datasets = {"piles": thin, "able": able.iloc[_every(able)].round(4), "grip": limit, "heads": heads, "names": rows}
    return dressed(layers, datasets, HEIGHT_PX, dark)


def _every(rows: pd.DataFrame, parts: int = 100) -> np.ndarray:
    """Evenly spread positions, the last one included."""
    return np.unique(np.linspace(0, len(rows) - 1, parts).astype(int))
