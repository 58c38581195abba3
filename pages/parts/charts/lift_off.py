"""Lift-off in pictures: the whole axis of strengths, what a hill makes of them, and one slow-down in three ways."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import pandas as pd

from model.describe.figures import Quantity
from model.describe.units import KMH_PER_MPS
from model.lift_off.slowing import LAMP_LIT_ABOVE_MPS2, LAMP_OFF_UP_TO_MPS2
from model.one_stop.slow_down import SlowDown
from model.traces.habits import LEAST
from model.words.lift_off import bare_strength
from model.words.quantities import Display
from pages.parts.charts.layers import (
    Name,
    along,
    along_held,
    between,
    by_meaning,
    by_name,
    by_px,
    labelled,
    layer,
    line,
    names_layers,
    next_step,
    upright,
    where,
    words,
)
from pages.parts.theme import LINE_PX, Palette, Spec, dressed, palette

STRONGEST = 2.5
"""Where the axis of strengths ends [m/s²]."""
KINDS = {"as_driven": [1, 0], "same_speeds": [4, 3]}
"""The two curves, and their dash."""
ZONES = (
    (0.0, LAMP_OFF_UP_TO_MPS2, "gentle", "not-lit"),
    (LAMP_OFF_UP_TO_MPS2, LAMP_LIT_ABOVE_MPS2, "firm", "may-be-lit"),
    (LAMP_LIT_ABOVE_MPS2, STRONGEST, "strong", "lit"),
)
"""From, to [m/s²], the word for the strength, and what UN R13-H says of the stop lamps there."""


PX_X: Spec = {"field": "x", "type": "quantitative", "scale": None}
PX_Y: Spec = {"field": "y", "type": "quantitative", "scale": None, "axis": None}
"""Places of the picture given in pixels."""
ASIDE: Spec = {"align": {"expr": "datum.late ? 'right' : 'left'"}, "dx": {"expr": "datum.late ? -5 : 5"}}
"""Words beside a place along the axis: to its left in rows that are `late`, else to its right."""


# the whole axis

RULER_PX, ADVISED_PX = 44, 60
PANELS = {
    "net_kwh": (84, 48),
    "friction_kwh": (150, 32),
    "presses": (200, 32),
}
"""Top and height of each panel [px]."""
ENERGY_TOP_PX, FOOT_PX = 84, 236
AXIS_PX = FOOT_PX + 14
KEY_PX = {"as_driven": 0, "same_speeds": 170}
"""Where the samples of the two curves begin [px]; both fit a telephone."""
LATE_MPS2 = 1.5
"""From here on words stand to the left of what they name [m/s²]."""
LEAST_SPAN = 0.1
"""The axis of energy spans at least this share of it, so that a trifle looks like one [1]."""


def energy_span(table: pd.DataFrame) -> list[float]:
    """The ends of the energy axis [kWh]."""
    both = table[[f"{kind}_net_kwh" for kind in KINDS]]
    low, high = float(both.min().min()), float(both.max().max())
    return [low, max(high, low + LEAST_SPAN * abs(low), low + 0.01)]


def whole_axis(
    table: pd.DataFrame,
    tie_kwh: tuple[float, float],
    grip_limit: float,
    advised: float,
    yours: float,
    display: Display,
    dark: bool = False,
) -> Spec:
    """Energy, friction heat and presses of the brake pedal over lift-off strength, as driven and at the same speeds.

    Parameters
    ----------
    table : DataFrame
        From `model.lift_off.curves.curve_table`.
    tie_kwh : tuple
        The best energy and the most that counts as equal [kWh].
    grip_limit : float
        The most that the rule of grip leaves [m/s²].
    advised, yours : float
        Strengths to mark [m/s²]; one beyond the axis is marked at its end.
    display : Display
        Whose language.
    dark : bool
        Whether the ground is dark.
    """
    colours = palette(dark)
    x = along_held("lift_off_mps2", STRONGEST, "m/s²", 90, display)
    domains = {
        "net_kwh": energy_span(table),
        "friction_kwh": [0.0, next_step(_most(table, "friction_kwh"), 0.05)],
        "presses": [0.0, next_step(_most(table, "presses"), 10)],
    }
    ups: dict[str, Spec] = {}
    for key, (top, height) in PANELS.items():
        energy = key == "net_kwh"
        ticks = {
            end: display.figure(Quantity(end, "", places=2) if energy else Quantity(end, "", 6, trimmed=True))
            for end in domains[key]
        }
        ups[key] = upright("y", domains[key], [top + height, top], ticks)

    layers = _marked_strengths(colours, x, grip_limit, display)
    tie = {"y": ups["net_kwh"] | {"axis": None}, "y2": {"field": "y2"}}
    layers.append(layer("tie", "rect", tie, color=colours.wash))
    for key in PANELS:
        for kind, dash in KINDS.items():
            driven = kind == "as_driven"
            colour = colours.friction if key == "friction_kwh" else colours.ink if driven else colours.quiet
            y = ups[key] | {"field": f"{kind}_{key}"} | ({} if driven else {"axis": None})
            layers.append(line("curves", x, y, colour, dash, 2.5 if driven else 2))
    layers += _chosen(colours, x) + _words(colours)
    told: list[Spec] = [
        {"x": 4, "y": top - 8, "text": display.say("lift-off-panel", panel=key)} for key, (top, _) in PANELS.items()
    ]
    told += [
        {"x": start + 25, "y": 5, "text": display.say("lift-off-curve", kind=kind)} for kind, start in KEY_PX.items()
    ]
    chosen = pd.DataFrame(
        [
            {
                "at": min(strength, STRONGEST),
                "what": what,
                "text": display.say("lift-off-name", kind=what, strength=bare_strength(strength)),
            }
            for what, strength in (("advised", advised), ("yours", yours))
        ]
    )
    zones = [
        (
            start, end, word, display.say("lift-off-word", word=word), display.say("lift-off-ruler", zone=lamps)
        )
        for start, end, word, lamps in ZONES
    ]  # fmt: skip
    datasets = {
        "curves": table[["lift_off_mps2", *(f"{kind}_{key}" for kind in KINDS for key in PANELS)]].round(4),
        "tie": pd.DataFrame([{"y": tie_kwh[0], "y2": min(tie_kwh[1], domains["net_kwh"][1])}]),
        "chosen": chosen.assign(late=chosen["at"] > LATE_MPS2),
        "words": pd.DataFrame(told),
        "key": pd.DataFrame([{"x": start, "x2": start + 20, "y": 5, "kind": kind} for kind, start in KEY_PX.items()]),
        "zones": pd.DataFrame(zones, columns=["lift_off_mps2", "end", "kind", "word", "lamps"]),
        "grip": pd.DataFrame([{"lift_off_mps2": grip_limit, "end": STRONGEST, "late": grip_limit > LATE_MPS2}]),
    }
    datasets["grip"]["at"] = STRONGEST if grip_limit > LATE_MPS2 else grip_limit
    return dressed(layers, datasets, AXIS_PX, dark)


def _most(table: pd.DataFrame, key: str) -> float:
    return float(table[[f"{kind}_{key}" for kind in KINDS]].max().max())


def _marked_strengths(colours: Palette, x: Spec, grip_limit: float, display: Display) -> list[Spec]:
    """The zones of the stop lamps as a ruler with the words for strengths, and where grip forbids more."""
    colour = dict(zip((word for _, _, word, _ in ZONES), (colours.ground, colours.wash, colours.quiet), strict=True))
    zone = {"x": x, "x2": {"field": "end"}}
    ruler = zone | between(RULER_PX, RULER_PX + 7) | {"fill": by_name("kind", colour)}
    layers = [
        layer("zones", "rect", ruler, stroke=colours.quiet, strokeWidth=1),
        words("zones", x, {"value": 20}, "word", xOffset=4, fontWeight=600),
        words("zones", x, {"value": 36}, "lamps", xOffset=4, fontWeight=400),
        {"transform": [{"filter": "datum.lift_off_mps2 > 0"}]}
        | layer("zones", "rule", {"x": x} | between(RULER_PX + 7, FOOT_PX), color=colours.quiet, strokeDash=[1, 3]),
    ]
    if grip_limit < STRONGEST:
        text = {"value": display.say("lift-off-over-grip")}
        over = {"x": x | {"field": "at"}, "y": {"value": ENERGY_TOP_PX + 9}, "text": text}
        layers += [
            layer("grip", "rect", zone | between(ENERGY_TOP_PX, FOOT_PX), color=colours.wash, opacity=0.6),
            layer("grip", "text", over, **ASIDE),
        ]
    return layers


def _chosen(colours: Palette, x: Spec) -> list[Spec]:
    """The advised strength as a full line with its name above, the visitor's as a dotted one with its name below."""
    layers: list[Spec] = []
    looks: dict[str, tuple[float, float, Spec, float, int]] = {
        "advised": (ADVISED_PX - 9, FOOT_PX, {"strokeWidth": 2.5}, ADVISED_PX, 600),
        "yours": (ENERGY_TOP_PX, AXIS_PX, {"strokeWidth": 2, "strokeDash": [2, 3]}, FOOT_PX + 7, 400),
    }
    at = x | {"field": "at"}
    for what, (start, end, look, y, weight) in looks.items():
        layers += [
            where("what", what) | layer("chosen", "rule", {"x": at} | between(start, end), color=colours.ink, **look),
            where("what", what) | words("chosen", at, {"value": y}, **ASIDE, fontWeight=weight),
        ]
    return layers


def _words(colours: Palette) -> list[Spec]:
    """The titles of the panels, and the names of the two curves beside a sample of each."""
    colour = by_name("kind", dict(zip(KINDS, (colours.ink, colours.quiet), strict=True)))
    look = {"color": colour, "strokeDash": by_name("kind", KINDS)}
    return [
        layer("key", "rule", {"x": PX_X, "x2": {"field": "x2"}, "y": PX_Y} | look, strokeWidth=2.5),
        # a rim of ground keeps the lines behind the letters apart from them
        words("words", PX_X, PX_Y, stroke=colours.ground, strokeWidth=5),
        words("words", PX_X, PX_Y),
    ]


# hills

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

    Parameters
    ----------
    slowing : DataFrame
        From `model.lift_off.hills.slowing_on_hills`.
    names : sequence of (strength [m/s²], name)
        Which strengths are drawn, the most important first, and what they are called.
    display : Display
        Whose language.
    dark : bool
        Whether the ground is dark.
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

    zones = pd.DataFrame(
        [
            {"y": low, "y2": high, "zone": zone, "lamps": display.say("lift-off-hill-zone", zone=zone), "deep": deep,
             "late": late, "word_px": px(at)}
            for low, high, zone, deep, late, at in (
                (LAMP_LIT_ABOVE_MPS2, SLOWING[1], "lit", 1.0, False, 3.2),
                (LAMP_OFF_UP_TO_MPS2, LAMP_LIT_ABOVE_MPS2, "may-be-lit", 0.5, False, 1.0),
                (0.0, LAMP_OFF_UP_TO_MPS2, "not-lit", 0.0, True, 0.35),
                (SLOWING[0], 0.0, "gains", 0.0, True, -1.25),
            )
        ]
    ).assign(grade_pct=-STEEPEST_PCT, end=STEEPEST_PCT)
    zones["at"] = [-STEEPEST_PCT, _free_grade(slowing), STEEPEST_PCT, STEEPEST_PCT]
    # told apart by place, not by strength: a picture whose description stays is redrawn faster
    places = {strength: place for place, (strength, _) in enumerate(names)}
    steepest = slowing[slowing["grade_pct"] == STEEPEST_PCT].set_index("lift_off_mps2")["slowing_mps2"]
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
    zero = pd.DataFrame([{"grade_pct": -STEEPEST_PCT, "end": STEEPEST_PCT, "y": 0.0}])
    slowing = slowing.assign(place=slowing["lift_off_mps2"].map(places))
    datasets = {"zones": zones, "slowing": slowing.round(4), "names": rows, "zero": zero}
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
    crossed = set(slowing.loc[(slowing["slowing_mps2"] - middle).abs() < WORD_HIGH_MPS2 / 2, "grade_pct"])
    grades = sorted(set(slowing["grade_pct"]))
    free = (grade for grade in grades[:-1] if not any(grade <= other <= grade + WORD_PCT for other in crossed))
    return min((grade for grade in free if grade + WORD_PCT <= STEEPEST_PCT), default=-STEEPEST_PCT)


# one slow-down

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
    x = along("metre", distance, display.unit("m"), 90)
    x["axis"] = x["axis"] | {"offset": foot - height}
    fastest_words = display.figure(Quantity(fastest, display.unit("km/h"), places=0))
    y = upright("speed", [0, fastest], [foot, LINE_PX], {fastest: fastest_words, 0: "0"})
    speeds = pd.concat(
        pd.DataFrame(
            {
                "way": key,
                "metre": display.value(np.append(0.0, np.cumsum(way.trace.step_m)), "m"),
                "speed": display.value(way.trace.speed_mps * KMH_PER_MPS, "km/h"),
            }
        ).iloc[:: max(1, len(way.trace.speed_mps) // 120)]
        for key, way in ways.items()
        if key != "friction"
    )
    most = max(max(way.battery_wh, 0.0) for way in ways.values())
    least = min(min(way.battery_wh, 0.0) for way in ways.values())
    longest = max(way.time_s for way in ways.values())

    def along_bar(energy_wh: float) -> float:
        return (energy_wh - least) / max(most - least, LEAST)

    bars: list[Spec] = []
    told: list[Spec] = []
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
        told += [
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
    rolled = speeds[speeds["way"] == "coast"]
    datasets = {
        "speeds": speeds.round(3),
        "rolling": rolled.iloc[len(rolled) // 4 : len(rolled) // 4 + 1],
        "bars": pd.DataFrame(bars),
        "words": pd.DataFrame(told),
        "top": pd.DataFrame([{"x": 4, "y": 7, "text": display.say("lift-off-keeping")}]),
    }
    spec = dressed(layers, datasets, height, dark)
    spec["resolve"] = {"scale": spec["resolve"]["scale"] | {"x": "independent"}}
    return spec


def wh_text(energy_wh: float, display: Display) -> str:
    """An energy to the watt-hour, small ones to a tenth."""
    return display.figure(Quantity(energy_wh, "Wh", places=0 if abs(energy_wh) >= 9.95 else 1))
