"""Emergency stops in pictures: how far on every road, and how little of it a motor could do."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import pandas as pd

from model.describe.figures import Quantity, Share, Span
from model.limits.motor_only_stop import MotorOnlyStop
from model.words.quantities import Display
from pages.parts.charts.grip import road_name
from pages.parts.charts.layers import along, by_px, layer, next_step, where
from pages.parts.charts.marks import Box, Words, drawn
from pages.parts.theme import LINE_PX, Spec, dressed, palette

ROW_PX, BAR_PX = 44, 16


def distances(rows: pd.DataFrame, here: str, alone: MotorOnlyStop, display: Display, dark: bool = False) -> Spec:
    """Stopping distances on every road: thinking, then braking at the road's middle grip, and the span of its band.

    `rows` are `by_surface` of `model.limits.hard_stop.HardStop`, `here` is the surface driven on, `alone` a stop on the
    motor alone on a dry road: down to where it fades, and as an outline how far the car rolls on.
    """
    colours, unit = palette(dark), display.unit("m")
    names = [road_name(surface, display) for surface in rows["surface"]]
    table = rows.assign(name=names, here=rows["surface"] == here, motor=False)
    shown = {"name": display.say("hard-stop-motor-alone"), "here": False, "motor": True}
    thinking_m = float(rows["thinking_m"].iloc[0])
    shown |= dict.fromkeys(("low_m", "high_m"), thinking_m + alone.distance_m)
    shown |= {"thinking_m": thinking_m, "mid_m": thinking_m + alone.hand_over_m}
    table = pd.concat([table, pd.DataFrame([shown])], ignore_index=True)
    lengths = ["thinking_m", "low_m", "mid_m", "high_m"]
    table["text"] = [_span(row["high_m"], row["low_m"], display) for row in table.to_dict("records")]
    table.loc[table["motor"], "text"] = motor_alone_text(thinking_m, alone, display)
    table[lengths] = display.value(table[lengths], "m")
    longest = float(table.loc[np.isfinite(table["low_m"]), "low_m"].max())
    most = next_step(longest, 10 ** np.floor(np.log10(longest)) / 2)
    table[lengths] = table[lengths].clip(upper=most)
    top, foot = 4, 4 + ROW_PX * len(table)
    table["y"] = top + ROW_PX * np.arange(len(table)) + LINE_PX + 3
    table["y2"], table["middle"], table["words"] = table["y"] + BAR_PX, table["y"] + BAR_PX / 2, table["y"] - 10
    table["zero"] = 0.0
    x = along("zero", most, unit, 90)
    y, middle, above = (by_px(field, foot) for field in ("y", "middle", "words"))
    box = {"y": y, "y2": {"field": "y2"}}
    whole = where("motor", False)
    layers = [
        layer("rows", "rect", box | {"x": x, "x2": {"field": "thinking_m"}}, color=colours.wash, stroke=colours.quiet,
              strokeWidth=1),
        whole | layer("rows", "rect", box | {"x": x | {"field": "thinking_m"}, "x2": {"field": "mid_m"}},
                      color=colours.friction),
        where("motor", True) | layer("rows", "rect", box | {"x": x | {"field": "thinking_m"}, "x2": {"field": "mid_m"}},
                                     color=colours.back),
        where("motor", True) | layer("rows", "rect", box | {"x": x | {"field": "mid_m"}, "x2": {"field": "low_m"}},
                                     filled=False, stroke=colours.back, strokeDash=[4, 3], strokeWidth=1.5),
        whole | layer("rows", "rule", {"x": x | {"field": "high_m"}, "x2": {"field": "low_m"}, "y": middle},
                      color=colours.ink, strokeWidth=2),
        *(whole | layer("rows", "tick", {"x": x | {"field": end}, "y": middle}, color=colours.ink, thickness=2,
                        size=BAR_PX - 4, orient="vertical") for end in ("high_m", "low_m")),
    ]  # fmt: skip
    for bold, weight in ((True, 600), (False, 400)):
        name = {"x": {"value": 0}, "y": above, "text": {"field": "name"}}
        span = {"x": {"value": {"expr": "width"}}, "y": above, "text": {"field": "text"}}
        layers += [
            where("here", bold) | layer("rows", "text", name, fontWeight=weight),
            where("here", bold) | layer("rows", "text", span, align="right", fontWeight=weight),
        ]
    columns = ["name", "here", "motor", *lengths, "text", "y", "y2", "middle", "words", "zero"]
    return dressed(layers, {"rows": table[columns].round(2)}, foot, dark)


def motor_alone_text(thinking_m: float, alone: MotorOnlyStop, display: Display) -> str:
    """How far the motor alone brings the car, reaction included, and that it does not come to rest."""
    if not np.isfinite(alone.hand_over_m):
        return display.say("hard-stop-no-end")
    down_to = Quantity(alone.hand_over_kmh, "km/h", places=0)
    return display.say("hard-stop-rolls-on", distance=Quantity(thinking_m + alone.hand_over_m, "m"), speed=down_to)


def _span(short_m: float, long_m: float, display: Display) -> str:
    if np.isfinite(long_m):
        return display.figure(Span(short_m, long_m, "m", places=0))
    if np.isfinite(short_m):
        return display.say("hard-stop-or-no-end", distance=Quantity(short_m, "m"))
    return display.say("hard-stop-no-end")


# who could stop the car

PART_ROW_PX = 54


def motors_part(parts: Sequence[tuple[str, float, Quantity]], display: Display, dark: bool = False) -> Spec:
    """What an emergency stop takes and the most of it that the motor could do; each part against its own whole.

    `parts` are what it is (force, power or energy), the motor's share [1], and the whole.
    """
    boxes, notes = [], []
    for place, (name, share, whole) in enumerate(parts):
        top = place * PART_ROW_PX + LINE_PX + 8
        boxes += [Box(0, share, top, top + BAR_PX, "back"), Box(share, 1, top, top + BAR_PX, "friction")]
        motor, text = display.say("hard-stop-part-by-motor", part=name, share=Share(share)), display.figure(whole)
        notes += [Words(motor, 0, top - 10, align="start", bold=True), Words(text, 1, top - 10, align="right")]
    return drawn(boxes, notes, PART_ROW_PX * len(parts), 1, dark)


# the brakes that rest


def discs_work(work: Sequence[float], display: Display, dark: bool = False) -> Spec:
    """Heat in the discs [kWh/100 km]: on friction brakes only, and with regeneration."""
    most = max(*work, 1e-6)
    boxes, notes = [], []
    for place, (name, heat) in enumerate(zip(runs(display), work, strict=True)):
        top = place * PART_ROW_PX + LINE_PX + 8
        boxes.append(Box(0, heat, top, top + BAR_PX, "friction"))
        notes.append(Words(name, 0, top - 10, align="start", bold=place > 0))
        notes.append(Words(display.text(heat, "kWh/100 km"), most, top - 10, align="right", bold=place > 0))
    return drawn(boxes, notes, PART_ROW_PX * len(work), most, dark)


def runs(display: Display) -> tuple[str, str]:
    """What the two runs are called."""
    return display.say("brakes-discs-only"), display.say("brakes-with-regeneration")
