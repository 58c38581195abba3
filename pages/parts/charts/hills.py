"""Full battery and long hills in pictures: what it takes near full, discs on the way down, what slopes give back."""

from __future__ import annotations

import textwrap

import numpy as np
import pandas as pd

from model.describe.figures import Quantity, Share
from model.limits.descent import Descent
from model.limits.friction_brakes import FADE_BAND_C
from model.limits.full_battery import Hills
from model.words.quantities import MINUS, Display
from pages.parts.charts.layers import (
    Name,
    along,
    beside_names,
    by_px,
    layer,
    line,
    names_layers,
    next_step,
    thinly,
    upright,
    words,
)
from pages.parts.theme import LINE_PX, Rows, Spec, dressed, palette

# near full

ROOM_PX, ROOM_TOP_PX = 290, 28
FROM_PCT = 50.0
POWER_TIMES = 3.0
"""The axis of power ends at so many times what the hill gives: the crossing is what is to be seen."""


def near_full(hills: Hills, display: Display, dark: bool = False) -> Spec:
    """What the battery takes as it fills, what the hill gives, and from which charges it fits in."""
    colours, room = palette(dark), hills.room["mid"]
    most = next_step(POWER_TIMES * max(room.power_kw, 1.0), 5)
    shown = hills.takes.assign(soc=100 * hills.takes["soc"])
    shown[["low", "mid", "high"]] = shown[["low", "mid", "high"]].clip(upper=most)
    x = {"field": "soc", "type": "quantitative", "sort": None,
         "scale": {"domain": [FROM_PCT, 100], "nice": False, "zero": False},
         "axis": {"tickCount": 5, "labelFlush": True, "labelExpr": "datum.label + ' %'"}}  # fmt: skip

    def up(field: str, ticked: bool = False) -> Spec:
        ticks = {0: "0"} | {kw: display.text(kw, "kW") for kw in (most / 2, most)} if ticked else {}
        return upright(field, [0, most], [ROOM_PX, ROOM_TOP_PX], ticks)

    near_end = {"transform": [{"filter": f"datum.soc >= {FROM_PCT}"}]}
    fits_to = 100 * room.start_at_most
    marks = pd.DataFrame(
        [
            {
                "soc": fits_to, "start": FROM_PCT, "end": 100.0, "kw": min(room.power_kw, most), "top": most,
                "gives": display.say("near-full-hill-gives", power=Quantity(room.power_kw, "kW")),
                "takes": display.say("near-full-takes"),
                "fits": display.say("near-full-fits", charge=charge(room.start_at_most)),
            }
        ]
    )  # fmt: skip
    at_left, above = x | {"field": "start"}, float(shown["mid"].iloc[0]) < room.power_kw
    layers = [
        layer("takes", "area", {"x": x, "y": up("high", True), "y2": {"field": "low"}}, color=colours.back,
              opacity=0.2),
        line("takes", x, up("mid"), colours.back, [6, 4], 2.5),
        layer("marks", "rule", {"x": at_left, "x2": {"field": "end"}, "y": up("kw")}, color=colours.ink, strokeWidth=2),
        near_end
        | layer("marks", "rule", {"x": x, "y": {"value": ROOM_TOP_PX - 8}, "y2": {"value": ROOM_PX}}, color=colours.ink,
                strokeDash=[2, 3], strokeWidth=2),
        layer("marks", "text", {"x": at_left, "y": up("kw"), "text": {"field": "gives"}}, xOffset=8,
              yOffset=-11 if above else 11, fontWeight=600),
        near_end
        | layer("marks", "text", {"x": x, "y": {"value": 9}, "text": {"field": "fits"}}, align="right", xOffset=2,
                fontWeight=600),
        layer("marks", "text", {"x": at_left, "y": up("top"), "text": {"field": "takes"}}, xOffset=8, yOffset=14),
    ]  # fmt: skip
    return dressed(layers, {"takes": shown.round(3), "marks": marks.round(3)}, ROOM_PX, dark)


def charge(soc: float) -> Share:
    """A charge in whole percent; with a decimal where little is missing."""
    return Share(soc, places=int(0.99 < soc < 0.9995))


# the discs on the way down

DISCS_PX, DISCS_TOP_PX = 240, 12
BRAKED = (("motor", "back", [1, 0]), ("full", "back", [6, 4]), ("alone", "friction", [2, 3]))
"""Each run, with its colour's meaning and its dash."""
BAND_CHARACTERS = 16
"""What stands in the band is broken into lines of so many."""


def discs(down: Descent, down_full: Descent, display: Display, dark: bool = False) -> Spec:
    """Front discs over the height lost, from the drive's charge and from a full battery, against the band of fade."""
    colours, elevation = palette(dark), down.result.trace.elevation_m
    lost = display.value(elevation[0] - elevation, "m")
    runs = (down.disc_c, down_full.disc_c, down.friction_only_disc_c)
    reached = [display.value(run, "°C") for run in runs]
    fade = [float(display.value(end, "°C")) for end in FADE_BAND_C]
    coldest, hottest = (float(pick(pick(run) for run in reached)) for pick in (min, max))
    ends = [min(0.0, coldest), next_step(max(fade[1], hottest), 100)]
    x = beside_names(along("lost", float(lost[-1]), display.unit("m"), 90))
    # zero of the scale, and the ends of the band
    ticks = {0.0: f"0 {display.unit('°C')}"}
    ticks |= {end: display.figure(Quantity(c, "°C", places=0)) for end, c in zip(fade, FADE_BAND_C, strict=True)}

    def px(warmth: float) -> float:
        return DISCS_PX - (DISCS_PX - DISCS_TOP_PX) * (warmth - ends[0]) / (ends[1] - ends[0])

    band = {"start": 0.0, "end": float(lost[-1]), "y": px(fade[1]), "y2": px(fade[0])}
    at_left = x | {"field": "start"}
    layers: list[Spec] = [
        layer("fade", "rect", {"x": at_left, "x2": {"field": "end"}, "y": by_px("y", DISCS_PX), "y2": {"field": "y2"}},
              color=colours.wash),
        words("fade", at_left, by_px("y", DISCS_PX), xOffset=6, lineBreak="\n", lineHeight=LINE_PX, baseline="top",
              yOffset=6),
    ]  # fmt: skip
    text = "\n".join(textwrap.wrap(display.say("discs-band"), BAND_CHARACTERS))
    datasets: dict[str, Rows] = {"fade": [band | {"text": text}]}
    names: list[Name] = []
    for (key, meaning, dash), celsius, run in zip(BRAKED, runs, reached, strict=True):
        datasets[key] = thinly(pd.DataFrame({"lost": lost, "warmth": run}))
        y = upright("warmth", ends, [DISCS_PX, DISCS_TOP_PX], {} if names else ticks)
        layers.append(line(key, x, y, getattr(colours, meaning), dash, 2.5))
        name = display.say("discs-line", run=key, reached=Quantity(float(celsius[-1]), "°C", places=0))
        names.append(Name(float(lost[-1]), px(float(run[-1])), name, meaning, not names))
    named, datasets["names"] = names_layers(names, x, DISCS_PX, colours)
    return dressed([*layers, *named], datasets, DISCS_PX, dark)


# what slopes give back

SLOPES_PX, SLOPES_TOP_PX = 250, 12


def given_back(table: pd.DataFrame, yours_pct: float, display: Display, dark: bool = False) -> Spec:
    """The downhill share of the uphill energy over steepness, a line a speed; `yours_pct` is the hill's grade [%].

    `table` is of `model.limits.full_battery.given_back`.
    """
    colours = palette(dark)
    shown = table.dropna().assign(share=lambda rows: 100 * rows["share"])
    lowest = min(0.0, 20 * np.floor(float(shown["share"].min()) / 20)) if len(shown) else 0.0
    steepest = float(table["grade_pct"].max())
    x = beside_names(along("grade_pct", steepest, "%", 110))
    ticks = {value: f"{value:.0f} %".replace("-", MINUS) for value in {lowest, 0.0, 50.0, 100.0}}

    def px(share: float) -> float:
        return SLOPES_PX - (SLOPES_PX - SLOPES_TOP_PX) * (share - lowest) / (100 - lowest)

    layers: list[Spec] = [
        layer("nothing", "rule", {"x": x | {"field": "start"}, "x2": {"field": "end"}, "y": by_px("y", SLOPES_PX)},
              color=colours.quiet, strokeWidth=1),
        layer("yours", "rule", {"x": x | {"field": "grade_pct"}, "y": {"value": SLOPES_TOP_PX},
                                "y2": {"value": SLOPES_PX}}, color=colours.quiet, strokeDash=[2, 3]),
        words("yours", x, {"value": 18}, xOffset=5),
    ]  # fmt: skip
    yours = display.say("slopes-yours", slope=Quantity(yours_pct, "%", 6, trimmed=True))
    datasets: dict[str, Rows] = {
        "nothing": [{"start": 0.0, "end": steepest, "y": px(0.0)}],
        "yours": [{"grade_pct": min(yours_pct, steepest), "text": yours}],
    }
    names = []
    for place, speed in enumerate(sorted(shown["speed_kmh"].unique())):
        rows = shown[shown["speed_kmh"] == speed]
        data, last = f"speed{place}", rows.iloc[-1]
        datasets[data] = rows.round(2)
        y = upright("share", [lowest, 100], [SLOPES_PX, SLOPES_TOP_PX], ticks if place == 0 else {})
        layers.append(line(data, x, y, colours.back, [[1, 0], [6, 4], [2, 3]][place % 3], 2.5))
        share = Share(float(last["share"]) / 100, places=0)
        text = display.say("slopes-line", speed=Quantity(float(speed), "km/h"), share=share)
        names.append(Name(float(last["grade_pct"]), px(float(last["share"])), text, "back"))
    named, datasets["names"] = names_layers(names, x, SLOPES_PX, colours) if names else ([], [])
    return dressed([*layers, *named], datasets, SLOPES_PX, dark)
