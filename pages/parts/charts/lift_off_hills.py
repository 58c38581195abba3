"""What a hill makes of lift-off strengths, in a picture."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import pandas as pd

from model.describe.figures import Quantity
from model.lift_off.slowing import LAMP_LIT_ABOVE_MPS2, LAMP_OFF_UP_TO_MPS2
from model.words.quantities import Display
from pages.parts.charts.layers import (
    ASIDE,
    Name,
    by_px,
    labelled,
    layer,
    line,
    names_layers,
    upright,
    where,
)
from pages.parts.theme import Rows, Spec, dressed, palette

HILLS_PX = 260
STEEPEST_PCT = 12.0
SLOWING = (-1.5, 3.5)
"""The axis of slowing on hills [m/s²]."""
HILL_NAMES_PX, ROOM_PX = 104, 300
"""Room at the right for names; narrower pictures have none for words between the lines [px]."""
HILL_LINES = ((3, [1, 0]), (2, [2, 3]), (2, [6, 3]))
"""Width [px] and dash of up to three lines, the most important first."""
WORD_PCT, WORD_HIGH_MPS2 = 4.0, 0.4
"""About how far two short words reach along the grades [%], and how high they and the room around them are [m/s²]."""


def on_hills(
    slowing: pd.DataFrame, names: Sequence[tuple[float, str]], display: Display, dark: bool = False
) -> Spec:
    """Slowing with the foot up over the grade, against the zones of the stop lamps.

    `slowing` is of `model.lift_off.hills.slowing_on_hills`; `names` has the strengths [m/s²] to draw, the most
    important first, each with what it is called.
    """
    colours = palette(dark)
    percents = {"domain": [-STEEPEST_PCT, STEEPEST_PCT], "range": [0, {"expr": f"max(width - {HILL_NAMES_PX}, 40)"}]}
    ends = -STEEPEST_PCT, -STEEPEST_PCT / 2, 0.0, STEEPEST_PCT / 2, STEEPEST_PCT
    grades = {end: _grade_text(end, display) for end in ends}
    x: Spec = {
        "field": "grade_pct", "type": "quantitative", "sort": None,
        "scale": percents | {"nice": False},
        "axis": {"values": [*ends], "labelFlush": True, "labelExpr": labelled(grades)},
    }  # fmt: skip
    pixels = [float(HILLS_PX), 0.0]
    ticks = {
        value: display.figure(Quantity(value, "m/s²", 6, trimmed=True)) for value in (-1.0, 0.0, 0.7, 1.3, 2.0, 3.0)
    }
    y, plain = upright("slowing_mps2", [*SLOWING], pixels, ticks), upright("y", [*SLOWING], pixels, {})

    def px(value: float) -> float:
        return HILLS_PX * (SLOWING[1] - value) / (SLOWING[1] - SLOWING[0])

    zones = [
        {"y": low, "y2": high, "zone": zone, "lamps": display.say("lift-off-hill-zone", zone=zone), "deep": deep,
         "late": late, "word_px": px(word), "at": at, "grade_pct": -STEEPEST_PCT, "end": STEEPEST_PCT}
        for low, high, zone, deep, late, word, at in (
            (LAMP_LIT_ABOVE_MPS2, SLOWING[1], "lit", 1.0, False, 3.2, -STEEPEST_PCT),
            (LAMP_OFF_UP_TO_MPS2, LAMP_LIT_ABOVE_MPS2, "may-be-lit", 0.5, False, 1.0, _free_grade(slowing)),
            (0.0, LAMP_OFF_UP_TO_MPS2, "not-lit", 0.0, True, 0.35, STEEPEST_PCT),
            (SLOWING[0], 0.0, "gains", 0.0, True, -1.25, STEEPEST_PCT),
        )
    ]  # fmt: skip
    # told apart by place, not by strength: a picture whose description stays is redrawn faster
    places = {strength: place for place, (strength, _) in enumerate(names)}
    strengths, grades_pct, slowing_mps2 = (
        slowing[name].to_numpy() for name in ("lift_off_mps2", "grade_pct", "slowing_mps2")
    )
    ends_here = grades_pct == STEEPEST_PCT
    steepest = dict(zip(strengths[ends_here], slowing_mps2[ends_here], strict=True))
    named, rows = names_layers(
        [Name(STEEPEST_PCT, px(float(steepest[strength])), name, "ink", strength == names[0][0])
         for strength, name in names],
        x, HILLS_PX, colours,
    )  # fmt: skip
    no_room = f"datum.zone == 'may-be-lit' && width < {ROOM_PX}"
    depth = {"field": "deep", "type": "quantitative", "legend": None, "scale": {"domain": [0, 1], "range": [0, 1]}}
    lamps = {"condition": {"test": no_room, "value": ""}, "field": "lamps"}
    zone = {"x": x, "x2": {"field": "end"}, "y": plain}
    layers = [
        layer("zones", "rect", zone | {"y2": {"field": "y2"}, "opacity": depth}, color=colours.wash),
        layer("zones", "text", {"x": x | {"field": "at"}, "y": by_px("word_px", HILLS_PX), "text": lamps},
              **ASIDE, color=colours.quiet),
        layer("zero", "rule", zone, color=colours.quiet),
        *(where("place", place) | line("slowing", x, y | ({"axis": None} if place else {}), colours.ink, dash, width)
          for place, (width, dash) in enumerate(HILL_LINES)),
        *named,
    ]  # fmt: skip
    lines = {
        "lift_off_mps2": strengths,
        "grade_pct": grades_pct,
        "slowing_mps2": np.round(slowing_mps2, 4),
        "place": [places[strength] for strength in strengths],
    }
    zero = [{"grade_pct": -STEEPEST_PCT, "end": STEEPEST_PCT, "y": 0.0}]
    datasets: dict[str, Rows] = {"zones": zones, "slowing": lines, "names": rows, "zero": zero}
    return dressed(layers, datasets, HILLS_PX, dark)


def _grade_text(grade_pct: float, display: Display) -> str:
    slope = display.figure(Quantity(abs(grade_pct), "", 6, trimmed=True))
    if grade_pct == 0:
        return display.say("lift-off-flat")
    if grade_pct < 0:
        return display.say("lift-off-slope-down", slope=slope)
    return display.say("lift-off-slope-up", slope=slope)


def _free_grade(slowing: pd.DataFrame) -> float:
    """The first grade at which words in the middle of the zone of lamps that may be lit cross no line [%]."""
    middle = (LAMP_OFF_UP_TO_MPS2 + LAMP_LIT_ABOVE_MPS2) / 2
    grades_pct, slowing_mps2 = slowing["grade_pct"].to_numpy(), slowing["slowing_mps2"].to_numpy()
    crossed = set(grades_pct[np.abs(slowing_mps2 - middle) < WORD_HIGH_MPS2 / 2].tolist())
    grades = sorted(set(grades_pct.tolist()))
    free = (grade for grade in grades[:-1] if not any(grade <= other <= grade + WORD_PCT for other in crossed))
    return min((grade for grade in free if grade + WORD_PCT <= STEEPEST_PCT), default=-STEEPEST_PCT)
