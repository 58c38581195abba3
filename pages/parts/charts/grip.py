"""Grip in pictures: both axles and what is asked of them, the largest lift-off by road, the weight between axles."""

from __future__ import annotations

from typing import Any

import numpy as np
import pandas as pd

from model.describe.figures import Quantity, Share, Span
from model.limits.grip_margin import AxleGrip
from model.physics.grip import LATERAL_SHARE
from model.words.lift_off import at_most, bare_strength, no_more_than
from model.words.quantities import Display
from pages.parts.charts.layers import (
    Name,
    along,
    along_held,
    beside_names,
    by_px,
    layer,
    line,
    names_layers,
    thinly,
    upright,
    where,
    words,
)
from pages.parts.theme import LINE_PX, Palette, Spec, dressed, palette


def road_name(surface: str, display: Display) -> str:
    """What a road is called."""
    return display.say("road-name", surface=surface)


def gives(friction: dict[str, float]) -> Span:
    """What a road may give [1], from its least to its most."""
    return Span(friction["low"], friction["high"], "", places=2)


# both axles from above

AXLE_PX, RADIUS_PX, MIDDLE_PX, WHEEL_PX = 176, 66, 100, 92
"""Height of one axle's place, the largest ellipse, its middle from the left, and from there to a wheel [px]."""
TOP_PX, BESIDE_PX = 4, 222
FARTHEST_PX = 84
"""An arrow that would be longer than this is cut: there is far less grip than that [px]."""
AXLES = ("front", "rear")


def axles(
    asked: AxleGrip, friction: dict[str, float], most_friction: float, display: Display, dark: bool = False
) -> Spec:
    """The car's two axles from above: what each is asked for, as an arrow in the ellipse of what the road may give.

    `friction` is what the road may give [1], low, mid and high; `most_friction` what it gives at most at any speed [1]:
    the largest ellipse, so that a faster car shows a smaller one.
    """
    colours, height = palette(dark), TOP_PX + 2 * AXLE_PX
    loads = {axle: float(getattr(asked, f"{axle}_load_n")) for axle in AXLES}
    px_per_n = RADIUS_PX / (most_friction * max(max(loads.values()), 1e-9))
    rings, arrows, heads, notes, frame = [], [], [], [], []
    turn = np.linspace(0, 2 * np.pi, 49)
    for place, axle in enumerate(AXLES):
        middle = TOP_PX + AXLE_PX * (place + 0.5)
        for level in ("high", "low", "mid"):
            radius = max(friction[level] * loads[axle] * px_per_n, 0.0)
            rings.append(
                pd.DataFrame(
                    {"x": MIDDLE_PX + LATERAL_SHARE * radius * np.sin(turn), "y": middle - radius * np.cos(turn),
                     "step": range(len(turn)), "ring": f"{axle} {level}", "level": level}
                )
            )  # fmt: skip
        along_n, across_n = (float(getattr(asked, f"{axle}_{way}")) * loads[axle] for way in ("along", "across"))
        long = np.hypot(along_n, across_n) * px_per_n
        shorter = min(1.0, FARTHEST_PX / long) if long else 1.0
        tip = {"x": MIDDLE_PX + across_n * px_per_n * shorter, "y": middle + along_n * px_per_n * shorter}
        arrows.append({"x": MIDDLE_PX, "y": middle, "x2": tip["x"], "y2": tip["y"]})
        heads.append(tip | {"turned": np.degrees(np.arctan2(across_n, -along_n)), "asked": long > 4})
        frame += [{"x": MIDDLE_PX + side * WHEEL_PX, "y": middle - 25, "y2": middle + 25} for side in (-1, 1)]
        notes += axle_notes(axle, asked, friction, middle, display)
    spine = TOP_PX + AXLE_PX * 0.5
    bars = [{"x": MIDDLE_PX - WHEEL_PX, "x2": MIDDLE_PX + WHEEL_PX, "y": spine + place * AXLE_PX,
             "y2": spine + place * AXLE_PX} for place in (0, 1)]  # fmt: skip
    bars.append({"x": MIDDLE_PX, "x2": MIDDLE_PX, "y": spine, "y2": spine + AXLE_PX})
    x = {"field": "x", "type": "quantitative", "scale": {"domain": [0, 1000], "range": [0, 1000], "nice": False},
         "axis": None}  # fmt: skip
    y = by_px("y", height)
    ends = {"x": x, "y": y, "x2": {"field": "x2"}, "y2": {"field": "y2"}}
    ring = {"x": x, "y": y, "detail": {"field": "ring"}, "order": {"field": "step"}}
    layers = [
        layer("bars", "rule", ends, color=colours.quiet, strokeWidth=1.5),
        layer("wheels", "rule", {"x": x, "y": y, "y2": {"field": "y2"}}, color=colours.quiet, strokeWidth=13),
        *_rings(ring, colours),
        layer("arrows", "rule", ends, color=colours.ink, strokeWidth=3.5),
        where("asked", True)
        | layer("heads", "point", {"x": x, "y": y, "angle": {"field": "turned", "type": "quantitative", "scale": None}},
                shape="triangle-up", size=150, filled=True, color=colours.ink, opacity=1),
        where("bold", True) | words("notes", x, y, fontWeight=600),
        where("bold", False) | words("notes", x, y),
    ]  # fmt: skip
    datasets = {
        "bars": pd.DataFrame(bars),
        "wheels": pd.DataFrame(frame),
        "rings": pd.concat(rings).round(2),
        "arrows": pd.DataFrame(arrows).round(2),
        "heads": pd.DataFrame(heads).round(2),
        "notes": pd.DataFrame(notes),
    }
    return dressed(layers, datasets, height, dark)


def _rings(place: Spec, colours: Palette) -> list[Spec]:
    """What the road gives at most, what it gives at least, and its middle as a dashed line between them."""
    looks: dict[str, Any] = {
        "high": {"fill": colours.wash, "stroke": colours.quiet, "strokeWidth": 1, "strokeDash": [2, 2]},
        "mid": {"stroke": colours.quiet, "strokeWidth": 1, "strokeDash": [5, 3]},
        "low": {"fill": colours.ground, "stroke": colours.ink, "strokeWidth": 2},
    }
    return [where("level", level) | layer("rings", "line", place, **look) for level, look in looks.items()]


def axle_notes(
    axle: str, asked: AxleGrip, friction: dict[str, float], middle: float, display: Display
) -> list[Spec]:
    """What stands beside an axle: its name, its weight, what it is asked for and what there is."""
    share = Share(float(asked.front_load_share if axle == "front" else 1 - asked.front_load_share), places=0)
    lines = (
        display.say("axle-name", axle=axle),
        display.say("axle-weight", share=share),
        display.say("axle-asked", asked=Quantity(float(getattr(asked, axle)), "", places=2)),
        display.say("axle-there-is", gives=gives(friction)),
    )
    first = middle - 1.5 * (LINE_PX + 3)
    return [
        {"x": BESIDE_PX, "y": first + place * (LINE_PX + 3), "text": text, "bold": place in (0, 2)}
        for place, text in enumerate(lines)
    ]


# the largest lift-off by road

ROW_PX, ROAD_PX, EDGE_PX = 50, 20, 9
"""Height of a road with its words above it, of the road alone, and room for a dot at either end of the axis [px]."""
STRONGEST = 3.5
"""Where the axis of strengths ends [m/s²]: no car's lift-off is stronger."""


def margin_text(margin: str, least: float, yours: float, display: Display) -> str:
    """A road's margin, and the most that its least grip holds [m/s²] where the driver's own lift-off is more."""
    most = no_more_than(least, display)
    if yours <= least:
        return display.say("roads-margin", margin=margin)
    if not most:
        return display.say("roads-no-lift-off", margin=margin)
    return display.say("roads-may-hold", margin=margin, most=at_most(least, display))


def by_road(rows: pd.DataFrame, yours: float, here: str, display: Display, dark: bool = False) -> Spec:
    """Every road as long as the lift-off that it holds, and the driver's own as a dot on it, or beyond its end.

    `rows` are `by_surface` of `model.limits.slippery_road.slippery_road`; `here` is the surface that is driven on.
    """
    colours, top = palette(dark), LINE_PX + 12
    foot = top + ROW_PX * len(rows)
    tops = top + ROW_PX * np.arange(len(rows))
    held = rows[["low", "mid", "high"]].clip(upper=STRONGEST)
    mark = min(yours, STRONGEST)
    table = pd.DataFrame(
        {
            "low": held["low"], "mid": held["mid"], "high": held["high"], "word": tops + 11.0,
            "y": tops + 22.0, "y2": tops + 22.0 + ROAD_PX, "middle": tops + 22.0 + ROAD_PX / 2,
            "text": [road_name(surface, display) for surface in rows["surface"]],
            "margin": [margin_text(margin, low, yours, display)
                       for margin, low in zip(rows["margin"], rows["low"], strict=True)],
            "here": rows["surface"] == here, "none": 0.0, "yours": mark,
            "dot": ["off" if yours > high or not high else "firm" if yours <= low else "fading"
                    for low, high in zip(rows["low"], rows["high"], strict=True)],
        }
    ).round(3)  # fmt: skip
    x = along_held("low", STRONGEST, "m/s²", 110, display)
    x["axis"] = {"values": [0, 1, 2, 3], "labelExpr": x["axis"]["labelExpr"]}
    x["scale"] |= {"range": [EDGE_PX, {"expr": f"width - {EDGE_PX}"}]}
    word, middle = by_px("word", foot), by_px("middle", foot)
    across = {"y": by_px("y", foot), "y2": {"field": "y2"}}
    said = display.say("roads-yours", yours=bare_strength(yours))
    line_at = pd.DataFrame([{"low": mark, "text": said, "late": mark > STRONGEST / 2}])
    fading = {"gradient": "linear", "x1": 0, "x2": 1, "y1": 0, "y2": 0, "stops": [
        {"offset": 0, "color": colours.road}, {"offset": 1, "color": colours.ground}]}  # fmt: skip
    dot = {"x": x | {"field": "yours"}, "y": middle}
    layers = [
        layer("roads", "rect", {"x": x | {"field": "none"}, "x2": {"field": "low"}, **across}, color=colours.road),
        layer("roads", "rect", {"x": x, "x2": {"field": "high"}, **across}, color=fading),
        layer("roads", "rule", {"x": x | {"field": "none"}, "x2": {"field": "low"}, "y": middle},
              color=colours.ground, strokeWidth=2, strokeDash=[9, 7], strokeDashOffset=-6),
        layer("yours", "rule", {"x": x, "y": {"value": top - 4}, "y2": {"value": foot}}, color=colours.ink,
              strokeWidth=1, strokeDash=[2, 3]),
        *(where("late", late) | words("yours", x, {"value": 9}, align=align, fontWeight=600, xOffset=offset)
          for late, align, offset in ((False, "left", -6), (True, "right", 6))),
        where("dot", "firm") | layer("roads", "point", dot, shape="circle", size=170, filled=True, opacity=1,
                                     fill=colours.ink, stroke=colours.ground, strokeWidth=2),
        where("dot", "fading") | layer("roads", "point", dot, shape="circle", size=150, filled=True, opacity=1,
                                       fill=colours.ground, stroke=colours.ink, strokeWidth=3),
        where("dot", "off") | layer("roads", "point", dot, shape="cross", angle=45, size=190, filled=True, opacity=1,
                                    fill=colours.ink, stroke=colours.ground, strokeWidth=1),
    ]  # fmt: skip
    for bold in (True, False):
        weight = 600 if bold else 400
        layers += [
            where("here", bold) | words("roads", {"value": 0}, word, fontWeight=weight),
            where("here", bold)
            | words("roads", {"value": {"expr": "width"}}, word, "margin", align="right", fontWeight=weight),
        ]
    return dressed(layers, {"roads": table, "yours": line_at}, foot, dark)


# weight and balance

LOADS_PX = 210


def loads(table: pd.DataFrame, yours: float, display: Display, dark: bool = False) -> Spec:
    """The axles' shares of the weight over slowing; `table` is `loads` of `slippery_road.slippery_road`."""
    colours, top, most = palette(dark), 16, 100.0
    end = float(table["slowing_mps2"].max())
    x = beside_names(along_held("slowing_mps2", end, "m/s²", 130, display))
    y = {axle: upright(axle, [0, most], [LOADS_PX, top], {0: "0", 50: "50 %", 100: "100 %"} if axle == "front" else {})
         for axle in AXLES}  # fmt: skip
    shown = table.assign(front=100 * table["front"], rear=100 * table["rear"])
    last = shown.iloc[-1]
    at_end = {axle: float(last[axle]) for axle in AXLES}
    names = [
        Name(end, _px(share, most, top, LOADS_PX),
             display.say("weight-line", axle=axle, share=Share(share / 100, places=0)), "ink")
        for axle, share in at_end.items()
    ]  # fmt: skip
    named, rows = names_layers(names, x, LOADS_PX, colours)
    marks = pd.DataFrame([{"slowing_mps2": yours, "text": display.say("weight-yours", yours=bare_strength(yours))}])
    layers = [
        line("loads", x, y["front"], colours.ink, [1, 0], 2.5),
        line("loads", x, y["rear"], colours.ink, [6, 4], 2.5),
        layer("yours", "rule", {"x": x, "y": {"value": top}, "y2": {"value": LOADS_PX}},
              color=colours.quiet, strokeDash=[2, 3]),
        words("yours", x, {"value": 7}, xOffset=-2),
        *named,
    ]  # fmt: skip
    return dressed(layers, {"loads": thinly(shown), "names": rows, "yours": marks}, LOADS_PX, dark)


def balance(table: pd.DataFrame, friction: dict[str, float], display: Display, dark: bool = False) -> Spec:
    """Friction asked of each axle in a bend, over the front axle's share of the motor slowing.

    `table` is `balance` of `model.limits.slippery_road.slippery_road`, `friction` what the road may give.
    """
    colours, top = palette(dark), 34
    most = max(0.1, np.ceil(10 * max(float(table[list(AXLES)].max().max()), friction["high"])) / 10)
    x = beside_names(along("front_share", 100.0, "%", 80))
    shown = table.assign(front_share=100 * table["front_share"])
    ticks = {0: "0", most: f"{most:.1f}"}
    y = {axle: upright(axle, [0, most], [LOADS_PX, top], ticks if axle == "front" else {}) for axle in AXLES}
    last = shown.iloc[-1]
    names = [Name(100.0, _px(float(last[axle]), most, top, LOADS_PX), display.say("balance-line", axle=axle),
                  "ink", True) for axle in AXLES]  # fmt: skip
    road = [_px(friction[end], most, top, LOADS_PX) for end in ("high", "low")]
    names.append(Name(100.0, sum(road) / 2, display.say("balance-road"), "quiet"))
    named, rows = names_layers(names, x, LOADS_PX, colours)
    cars = [(0.0, "rear"), (100.0, "front")]
    marks = pd.DataFrame(
        [{"front_share": share, "text": display.say("balance-driven", axle=axle), "late": share > 50}
         for share, axle in cars]
    )  # fmt: skip
    layers = [
        layer("road", "rect", {"x": x | {"field": "start"}, "x2": {"field": "end"}, "y": by_px("y", LOADS_PX),
                               "y2": {"field": "y2"}}, color=colours.wash),
        line("balance", x, y["front"], colours.ink, [1, 0], 2.5),
        line("balance", x, y["rear"], colours.ink, [6, 4], 2.5),
        layer("cars", "rule", {"x": x, "y": {"value": 20}, "y2": {"value": LOADS_PX}}, color=colours.quiet,
              strokeDash=[2, 3]),
        *(where("late", late) | words("cars", x, {"value": 9}, align=align)
          for late, align in ((False, "left"), (True, "right"))),
        *named,
    ]  # fmt: skip
    band = pd.DataFrame([{"start": 0.0, "end": 100.0, "y": road[0], "y2": road[1]}])
    return dressed(layers, {"balance": thinly(shown), "names": rows, "cars": marks, "road": band}, LOADS_PX, dark)


def _px(value: float, most: float, top: float, foot: float) -> float:
    return foot - (foot - top) * value / most


def strength_text(low: float, high: float, display: Display) -> str:
    """A band of strengths [m/s²], such as “0.7 to 1.8 m/s²”."""
    strongest = Quantity(STRONGEST, "m/s²", 6, trimmed=True)
    if low >= STRONGEST:
        return display.say("strength-over", strongest=strongest)
    low, high = no_more_than(low, display), no_more_than(high, display)
    if high == 0:
        return display.say("strength-none")
    if high > STRONGEST:
        return display.say("strength-band-beyond", least=bare_strength(low), strongest=strongest)
    return display.figure(Span(low, high, "m/s²", 2, trimmed=True))
