"""The cold in pictures: where the battery takes what slow-downs give, how lift-off fades, what the season takes."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import numpy as np
import pandas as pd

from model.describe.figures import Quantity
from model.limits.winter import LiftOffLeft, SeasonPart
from model.words.quantities import MINUS, Display
from pages.parts.charts.layers import by_px, layer, line, still, thinly, upright, where, words
from pages.parts.charts.marks import Box, Words, drawn
from pages.parts.theme import LINE_PX, Spec, dressed, palette

# the map of charge acceptance

MAP_PX, MAP_TOP_PX = 270, 8
COLDEST_C, WARMEST_C = -20.0, 30.0
CHARGE_TICKS = (0.0, 50.0, 100.0)
DIFFERS = "cold-zone-differs"
ZONES = ("cold-zone-weaker", DIFFERS, "cold-zone-usual")
"""Their messages, from the cold side to the warm one: no battery of the band takes ordinary slow-downs whole, some do,
all do."""
ZONE_WORDS_AT, NARROWEST_K = 27.0, 9.0
"""Charge at which they stand [%], and the least of room for them [K]."""
CLEAR_K, CLEAR_PCT = 9.0, (7.0, 16.0)
"""No figure stands so near to where the drive starts [K], below it and, with a word there, above it [%]."""
FIGURES_C, MOST_ASIDE_K = (-15.0, -5.0, 5.0, 15.0, 25.0), 4.0
"""Where figures stand, and how far aside one moves so that no line goes through it."""
HALF_K, HALF_PCT = 3.4, 4.5
"""Half the room that a figure takes [K] and [%]."""


def acceptance_map(
    takes_all: pd.DataFrame, accepted: pd.DataFrame, way: pd.DataFrame, display: Display, dark: bool = False
) -> Spec:
    """Battery temperature along, charge upwards: where the battery takes ordinary slow-downs, and the drive's own way.

    The tables are those of `model.limits.cold_day.ColdDay`.
    """
    colours, foot = palette(dark), MAP_PX
    ends = [round(float(display.value(end, "°C"))) for end in (COLDEST_C, WARMEST_C)]
    ticks = [round(float(display.value(c, "°C"))) for c in (-20, -10, 0, 10, 20, 30)]
    x = {
        "field": "warmth", "type": "quantitative", "sort": None,
        "scale": {"domain": ends, "nice": False, "zero": False},
        "axis": {"values": ticks, "labelFlush": True,
                 "labelExpr": f"replace(datum.label, '-', '{MINUS}') + ' {display.unit('°C')}'", "format": "d"},
    }  # fmt: skip

    def up(field: str, ticked: bool = False) -> Spec:
        words_at = {tick: f"{tick:.0f} %" for tick in CHARGE_TICKS} if ticked else {}
        return upright(field, [0, 100], [foot, MAP_TOP_PX], words_at)

    levels = ["low", "mid", "high"]
    # a battery that takes it at no charge has its border at the foot
    zones = takes_all[levels].fillna(0.0) * 100
    zones = zones.assign(warmth=display.value(takes_all["battery_c"], "°C"))
    held = way[way["battery_c"].between(COLDEST_C, WARMEST_C)]
    path = pd.DataFrame({"warmth": display.value(held["battery_c"], "°C"), "soc": 100 * held["soc"]})
    placed = between_lines(accepted, takes_all)
    numbers = pd.DataFrame(
        {"warmth": display.value(placed["battery_c"], "°C"), "soc": 100 * placed["soc"],
         "text": [display.text(kw, "kW") for kw in placed["kw"]]}
    )  # fmt: skip
    if len(path):
        # the drive's dot and its word stand there
        warmer, above = numbers["warmth"] - path["warmth"].iloc[0], numbers["soc"] - path["soc"].iloc[0]
        kelvin = float(display.value(1, "°C") - display.value(0, "°C"))
        numbers = numbers[(warmer.abs() > CLEAR_K * kelvin) | (above < -CLEAR_PCT[0]) | (above > CLEAR_PCT[1])]
    named = [(at, display.say(zone)) for zone, at in zone_places(takes_all).items()]
    zone_words = pd.DataFrame(
        [{"warmth": float(display.value(middle, "°C")), "soc": ZONE_WORDS_AT, "text": text} for middle, text in named],
        columns=["warmth", "soc", "text"],
    )
    ends_of_way = path
    if len(path):
        said = [display.say("cold-start"), display.say("cold-end")]
        ends_of_way = path.iloc[[0, -1]].assign(text=said, first=[True, False])
    # the lines of the zones are cut where words stand on them
    halo: Spec = {"stroke": colours.ground, "strokeWidth": 5, "strokeJoin": "round", "opacity": 0.9}
    layers = [
        layer("zones", "area", {"x": x, "y": up("low", True), "y2": {"value": foot}}, color=colours.back, opacity=0.32),
        layer("zones", "area", {"x": x, "y": up("high"), "y2": {"field": "low"}}, color=colours.back, opacity=0.13),
        line("zones", x, up("high"), colours.back, [2, 3], 1.5),
        line("zones", x, up("mid"), colours.back, [6, 4], 2),
        line("zones", x, up("low"), colours.back, [1, 0], 2),
        *(words(name, x, up("soc"), align="center", **halo) for name in ("numbers", "zone_words")),
        words("numbers", x, up("soc"), align="center", color=colours.quiet),
        words("zone_words", x, up("soc"), align="center"),
        line("way", x, up("soc"), colours.ink, [1, 0], 4),
    ]
    if len(path):
        layers += [
            where("first", True) | layer("ends", "point", {"x": x, "y": up("soc")}, filled=True, size=110, opacity=1,
                                         color=colours.ink),
            where("first", True) | words("ends", x, up("soc"), fontWeight=600, yOffset=-16, xOffset=-6),
        ]  # fmt: skip
    datasets = {
        "zones": zones.round(2),
        "numbers": numbers.round(2),
        "way": thinly(path) if len(path) else path,
        "ends": ends_of_way,
        "zone_words": zone_words,
    }
    return dressed(layers, datasets, foot, dark)


def zone_places(takes_all: pd.DataFrame) -> dict[str, float]:
    """Where each zone's words stand [°C], in the middle of its room; none where it has too little."""
    cold, warm = (_border(takes_all, level) for level in ("high", "low"))
    rooms = zip(ZONES, ((COLDEST_C, cold), (cold, warm), (warm, WARMEST_C)), strict=True)
    places = {zone: (start + end) / 2 for zone, (start, end) in rooms if end - start >= NARROWEST_K}
    # the line of the middle battery goes through the zone between: beside it where there is room
    middle = _border(takes_all, "mid")
    if DIFFERS in places and middle - cold >= NARROWEST_K:
        places[DIFFERS] = (cold + middle) / 2
    return places


def between_lines(accepted: pd.DataFrame, takes_all: pd.DataFrame) -> pd.DataFrame:
    """Of the map's figures, near each place the nearest that no line goes through; none where all are struck."""
    warmth, held = takes_all["battery_c"].to_numpy(), takes_all[["low", "mid", "high"]].fillna(0.0).to_numpy() * 100
    least, most = np.minimum(held[:-1], held[1:]), np.maximum(held[:-1], held[1:])

    def is_struck(battery_c: float, soc: float) -> bool:
        near = (warmth[1:] > battery_c - HALF_K) & (warmth[:-1] < battery_c + HALF_K)
        return bool((near[:, None] & (least < 100 * soc + HALF_PCT) & (most > 100 * soc - HALF_PCT)).any())

    at_c, at_soc = accepted["battery_c"].to_numpy(float), accepted["soc"].to_numpy(float)
    clear = ~np.array([is_struck(*at) for at in zip(at_c, at_soc, strict=True)])
    kept = []
    for place in FIGURES_C:
        for soc in np.unique(at_soc):
            there = np.flatnonzero(clear & (at_soc == soc) & (np.abs(at_c - place) <= MOST_ASIDE_K))
            kept += [int(there[np.argmin(np.abs(at_c[there] - place))])] if len(there) else []
    return accepted.iloc[kept]


def _border(takes_all: pd.DataFrame, level: str) -> float:
    """Temperature from which a battery of this level takes it all at the charge where the zones' words stand [°C]."""
    warm = takes_all.loc[takes_all[level] >= ZONE_WORDS_AT / 100, "battery_c"]
    return min(max(float(warm.min()), COLDEST_C), WARMEST_C) if len(warm) else WARMEST_C


# the same lift-off, fading

FADE_ROW_PX, BAR_PX = 50, 18


def fading(lifts: Sequence[LiftOffLeft], names: Sequence[str], display: Display, dark: bool = False) -> Spec:
    """The same lift-off as usual and where it fades: what slows the car, in an outline of what was asked."""
    most = max(max(lift.asked_mps2, lift.slowing_mps2) for lift in lifts) or 1.0
    boxes, notes = [], []
    for place, (lift, name) in enumerate(zip(lifts, names, strict=True)):
        top = place * FADE_ROW_PX + LINE_PX + 8
        rolling = max(min(lift.rolling_mps2, lift.slowing_mps2), 0.0)
        boxes.append(Box(0, rolling, top, top + BAR_PX, "road"))
        boxes.append(Box(rolling, lift.slowing_mps2, top, top + BAR_PX, "back"))
        boxes.append(Box(0, lift.asked_mps2, top, top + BAR_PX, "ink", hollow=True))
        notes.append(Words(name, 0, top - 10, align="start", bold=place > 0))
        slows = display.figure(Quantity(lift.slowing_mps2, "m/s²", places=2))
        notes.append(Words(slows, most, top - 10, align="right", bold=True))
    return drawn(boxes, notes, FADE_ROW_PX * len(lifts), most, dark)


# what the season takes

COST_ROW_PX, COST_NAME_PX = 30, 190
MEANINGS = {
    SeasonPart.CABIN: "aboard",
    SeasonPart.HEATER: "aboard",
    SeasonPart.TYRES: "road",
    SeasonPart.AIR: "road",
    SeasonPart.BRAKING: "friction",
    SeasonPart.REST: "losses",
}
"""What each part's colour means."""
LEAST_KWH = 0.005
"""Less than this is left out."""


def season_rows(parts_kwh: Mapping[SeasonPart, float]) -> list[tuple[SeasonPart, float]]:
    """Energy [kWh] of each part that the season changes, largest first; trifles are left out."""
    rows = [(part, float(kwh)) for part, kwh in parts_kwh.items() if abs(kwh) >= LEAST_KWH]
    return sorted(rows, key=lambda row: -row[1])


def part_name(part: SeasonPart, display: Display) -> str:
    """What a part is called."""
    return display.say("season-part", part=part)


def season_costs(parts_kwh: Mapping[SeasonPart, float], display: Display, dark: bool = False) -> Spec:
    """What the season takes more than a mild day, part by part; what it takes less runs to the left."""
    colours, rows = palette(dark), season_rows(parts_kwh)
    height = COST_ROW_PX * max(len(rows), 1)
    named = [(part_name(part, display), MEANINGS[part], kwh) for part, kwh in rows]
    table = pd.DataFrame(named, columns=["name", "meaning", "kwh"])
    table["y"] = np.arange(len(rows)) * COST_ROW_PX + 6.0
    table["y2"], table["middle"] = table["y"] + BAR_PX, table["y"] + BAR_PX / 2
    table["text"] = [display.text(kwh, "kWh") for kwh in table["kwh"]]
    table["zero"], table["most"] = 0.0, np.maximum(table["kwh"], 0.0)
    least, most = (float(end([0.0, *table["kwh"]])) for end in (min, max))
    domain = [-still(-least) if least else 0.0, still(max(most, 1e-3))] if rows else [0.0, 1.0]
    scale = {"domain": domain, "nice": False,
             "range": [COST_NAME_PX, {"expr": f"max(width - 80, {COST_NAME_PX + 40})"}]}  # fmt: skip
    x = {"field": "zero", "type": "quantitative", "scale": scale, "axis": None}
    drawn_in = {meaning: getattr(colours, meaning) for meaning in ("aboard", "road", "friction", "losses")}
    colour = {"field": "meaning", "type": "nominal", "legend": None,
              "scale": {"domain": list(drawn_in), "range": list(drawn_in.values())}}  # fmt: skip
    box = {"x": x, "x2": {"field": "kwh"}, "y": by_px("y", height), "y2": {"field": "y2"}, "color": colour}
    layers = [
        layer("parts", "rect", box),
        words("parts", x | {"field": "most"}, by_px("middle", height), xOffset=6, fontWeight=600),
        layer("parts", "text", {"x": {"value": 0}, "y": by_px("middle", height), "text": {"field": "name"}}),
    ]
    return dressed(layers, {"parts": table.round(4)}, height, dark)
