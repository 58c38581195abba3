"""Pictures that explain one stop: its energy by speed, its way into the battery, and who slows the car."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import pandas as pd

from model.describe.figures import Quantity, Share
from model.one_stop.panels import FASTEST_KMH
from model.one_stop.stop_energy import StopEnergy, WayOut
from model.words.quantities import Display
from pages.parts.charts.layers import (
    Name,
    along,
    beside_names,
    by_meaning,
    by_px,
    key_line,
    layer,
    line,
    names_layers,
    still,
    thinly,
    upright,
    words,
)
from pages.parts.theme import LINE_PX, Spec, dressed, palette

HEIGHT_PX = 320


def wh(value: float) -> Quantity:
    """An energy of a stop, to the watt-hour; small ones to a tenth."""
    return Quantity(value, "Wh", places=int(value < 9.95))


def speeds_along(fastest: float, unit: str) -> Spec:
    """The axis of speeds beside names. Its first number stands under its mark, not pushed towards the second."""
    x = beside_names(along("speed", fastest, unit, 80))
    return x | {"axis": x["axis"] | {"labelFlush": False}}


def within(drawn: Spec) -> Spec:
    """A layer that ends where the picture does."""
    return drawn | {"mark": drawn["mark"] | {"clip": True}}


# twice the speed, four times the energy

ENERGY_PARTS = {"battery": "back", "aboard": "aboard", "losses": "losses", "brakes": "friction", "road": "road"}
"""What a stop's motion becomes, from the bottom of a column up, with its colour's meaning."""
LEAST_WH = 0.05
"""Less than this prints as nothing."""


def parts_of(stop: StopEnergy) -> dict[str, float]:
    """The motion of a stop in the five parts of ENERGY_PARTS [Wh]."""
    brakes = stop.friction + stop.engine
    return {"battery": stop.battery, "aboard": stop.aboard, "losses": stop.losses, "brakes": brakes, "road": stop.road}


def speed_squared(
    curve: pd.DataFrame, stops: Sequence[tuple[float, StopEnergy]], display: Display, dark: bool = False
) -> Spec:
    """Energy of motion over speed, what of it comes back, and two stops as columns under the curve.

    `curve` is from `model.one_stop.stop_energy.back_by_speed`; `stops` are two speeds [km/h], the slower first, with
    their energy.
    """
    colours, top = palette(dark), LINE_PX + 4
    fastest = float(display.value(FASTEST_KMH, "km/h"))
    # the curve itself fills the picture; its scale moves in few steps
    most = still(float(curve["motion_wh"].max()))
    power = 10.0 ** np.floor(np.log10(most))
    tick = max(step * power for step in (1.0, 2.0, 5.0) if step * power <= most)

    def px(energy: float) -> float:
        return HEIGHT_PX - (HEIGHT_PX - top) * energy / most

    def up(field: str, ticks: Sequence[float] = ()) -> Spec:
        words_at = {value: display.figure(Quantity(value, "Wh", places=0)) for value in ticks}
        return upright(field, [0, most], [HEIGHT_PX, top], words_at)

    columns, heads = [], []
    names: list[Name] = []
    for speed_kmh, stop in stops:
        speed, low, names = float(display.value(speed_kmh, "km/h")), 0.0, []
        for key, meaning in ENERGY_PARTS.items():
            part = parts_of(stop)[key]
            columns.append({"speed": speed, "y": px(low + part) + 0.5, "y2": px(low) - 0.5, "meaning": meaning})
            if part >= LEAST_WH:
                name = display.say("panel-speed-part", part=key, energy=wh(part))
                names.append(Name(fastest, px(low + part / 2), name, meaning, key == "battery"))
            low += part
        heads.append({"speed": speed, "y": px(low) - 2, "text": display.figure(wh(low))})
    x, y = speeds_along(fastest, display.unit("km/h")), by_px("y", HEIGHT_PX)
    named, name_rows = names_layers(names, x, HEIGHT_PX, colours)
    column = {"x": x, "x2": {"field": "speed"}, "y": y, "y2": {"field": "y2"}, "color": by_meaning(colours)}
    layers = [
        line("curve", x, up("battery_wh"), colours.back, [5, 3]),
        line("curve", x, up("motion_wh", (0.0, tick)), colours.ink, [1, 0]),
        layer("columns", "rect", column, xOffset=-13, x2Offset=13),
        words("heads", x, y, align="right", xOffset=-17, fontWeight=600),
        # what the lines are stands where neither of them comes
        *key_line(display.say("panel-speed-line", of="motion"), top + LINE_PX / 2, colours.ink, [1, 0]),
        *key_line(display.say("panel-speed-line", of="back"), top + LINE_PX * 1.7, colours.back, [5, 3]),
        *named,
    ]
    lines = curve.assign(speed=display.value(curve["speed_kmh"], "km/h"))[["speed", "motion_wh", "battery_wh"]]
    datasets = {"curve": thinly(lines), "columns": pd.DataFrame(columns), "heads": pd.DataFrame(heads)}
    return dressed(layers, datasets | {"names": name_rows}, HEIGHT_PX, dark)


# from the wheels to the battery and out again

STAGE_PX, BEND_PX, HEAD_PX = 28, 19, 24
WAY_IN = {
    "road": "road",
    "friction": "friction",
    "engine": "friction",
    "gear": "losses",
    "motor": "losses",
    "aboard": "aboard",
    "cells": "losses",
}
"""What each part of the way in takes, with its colour's meaning."""
WAY_OUT = {"cells": "losses", "motor": "losses", "gear": "losses"}
ASIDE_SHARE = 0.05
"""How far a loss bends away from the flow: share of the whole motion [1]."""


def flow(stop: StopEnergy, out: WayOut, display: Display, dark: bool = False) -> Spec:
    """The energy of a stop as a flow down the page whose width is energy: every loss bends away from it."""
    colours, whole = palette(dark), stop.motion
    aside, left, y = whole * ASIDE_SHARE, whole, float(HEAD_PX)
    motion = display.say("panel-flow-motion", energy=wh(whole))
    edges, heads, names = [], [{"x": 0.0, "y": 10.0, "text": motion}], []
    losses: list[pd.DataFrame] = []
    for direction, way, parts, meaning in (("in", WAY_IN, stop, "back"), ("out", WAY_OUT, out, "quiet")):
        edges += [(left, y, meaning), (left, y := y + 6, meaning)]
        for key, loss in way.items():
            part = getattr(parts, key)
            if key == "engine" and part < LEAST_WH:
                continue
            losses.append(_bent(left - part, left, aside, y).assign(meaning=loss, part=len(losses)))
            name = display.say("panel-flow-line", part=key, way=direction, energy=wh(part))
            names.append({"x": left + aside, "y": y + BEND_PX - 5, "text": name})
            left -= part
            edges += [(left, y, meaning), (left, y := y + STAGE_PX, meaning)]
        if direction == "in":
            reached = display.say("panel-flow-in-cells", energy=wh(left))
        else:
            reached = display.say("panel-flow-at-wheels", energy=wh(left))
        heads.append({"x": 0.0, "y": y + 12, "text": reached})
        y += HEAD_PX
    height = int(y)
    reach = {"expr": "min(width * 0.6, width - 190)"}
    scale = {"domain": [0, whole], "range": [0, reach], "nice": False, "zero": False}
    x = {"field": "x", "type": "quantitative", "stack": None, "scale": scale, "axis": None}
    area = {"x": x, "x2": {"field": "x2"}, "y": by_px("y", height), "color": by_meaning(colours)}
    down = {"orient": "horizontal", "opacity": 1}
    layers = [
        layer("flow", "area", area, **down),
        layer("losses", "area", area | {"detail": {"field": "part"}}, line={"strokeWidth": 1}, **down),
        words("heads", x, by_px("y", height), fontWeight=600),
        words("names", x, by_px("y", height), xOffset=7),
    ]
    flowing = pd.DataFrame(edges, columns=["x", "y", "meaning"]).assign(x2=0.0)
    datasets = {"flow": flowing, "losses": pd.concat(losses), "heads": pd.DataFrame(heads)}
    return dressed(layers, datasets | {"names": pd.DataFrame(names)}, height, dark)


def _bent(low: float, high: float, aside: float, y: float) -> pd.DataFrame:
    # a smooth step aside while it goes down
    down = np.linspace(0, 1, 9)
    shift = aside * down * down * (3 - 2 * down)
    return pd.DataFrame({"x": high + shift, "x2": low + shift, "y": y + BEND_PX * down})


# who slows the car

SLOWING_MOSTS = (2.5, 5.0, 10.0)
"""The slowing axis ends at the first of these that has room for the stop [m/s²]; no car's tyres give over the last."""
SHARES = {"road": "road", "motor": "back", "friction": "friction"}
"""Who slows the car, with the colour's meaning."""


def who_slows(
    split: pd.DataFrame,
    hardest: pd.DataFrame,
    grip: pd.DataFrame,
    shares: dict[str, float],
    display: Display,
    dark: bool = False,
) -> Spec:
    """Slowing over speed, piled up by who does it; what the road would allow, in words where it lies beyond.

    `split`, `hardest` and `grip` are from `model.one_stop.who_slows`; `shares` are those of the whole stop's work, by
    the keys of SHARES.
    """
    colours, top = palette(dark), 8
    fastest, unit = float(display.value(FASTEST_KMH, "km/h")), display.unit("km/h")
    speed = display.value(split["speed_kmh"], "km/h")
    start, low = float(speed.iloc[0]), 0 * speed
    hardest_here = float(split[[f"{key}_mps2" for key in SHARES]].sum(axis=1).max())
    most = next((end for end in SLOWING_MOSTS if hardest_here <= end), SLOWING_MOSTS[-1])

    def up(field: str, ticks: Sequence[float] = ()) -> Spec:
        words_at = {value: display.figure(Quantity(value, "m/s²", 2, trimmed=True)) for value in ticks}
        return upright(field, [0, most], [HEIGHT_PX, top], words_at)

    def px(slowing: float) -> float:
        return HEIGHT_PX - (HEIGHT_PX - top) * slowing / most

    piles, names = [], []
    for key, meaning in SHARES.items():
        high = low + split[f"{key}_mps2"]
        piles.append(thinly(pd.DataFrame({"speed": speed, "y": high, "y2": low})).assign(meaning=meaning))
        middle = float(piles[-1].iloc[0][["y", "y2"]].mean())
        name = display.say("panel-who-line", who=key, share=Share(shares[key]))
        names.append(Name(start, px(middle), name, meaning, key == "motor"))
        low = high
    able = pd.DataFrame({"speed": display.value(hardest["speed_kmh"], "km/h")})
    able["able"] = hardest["road_mps2"] + hardest["motor_mps2"]
    names.append(Name(start, max(px(float(able["able"].iloc[0])), 0.0), display.say("panel-who-motor-limit"), "ink"))
    limit = grip.assign(speed=display.value(grip["speed_kmh"], "km/h"))[["speed", "grip_mps2"]]
    least = float(limit["grip_mps2"].min())
    said = display.say("panel-who-grip")
    if least > most:
        said = display.say("panel-who-grip-beyond", grip=Quantity(least, "m/s²", places=1))
    highest = max(px(float(limit["grip_mps2"].iloc[0])) - 10, 8)
    heads = pd.DataFrame([{"speed": 0.0, "y": highest, "text": said}])
    x = speeds_along(fastest, unit)
    named, name_rows = names_layers(names, x, HEIGHT_PX, colours)
    pile = {"x": x, "y": up("y", (0.0, 0.4 * most, 0.8 * most)), "y2": {"field": "y2"}, "color": by_meaning(colours)}
    layers = [
        layer("piles", "area", pile, opacity=1, line={"color": colours.ground, "strokeWidth": 1}),
        within(line("able", x, up("able"), colours.ink, [2, 3])),
        within(line("grip", x, up("grip_mps2"), colours.ink, [8, 4])),
        words("heads", x, by_px("y", HEIGHT_PX), xOffset=5),
        *named,
    ]
    drawn = {"piles": pd.concat(piles), "able": thinly(able), "grip": limit, "heads": heads}
    return dressed(layers, drawn | {"names": name_rows}, HEIGHT_PX, dark)
