"""Pictures that explain the machine and the brakes: four quadrants, a bigger motor, discs that get hot."""

from __future__ import annotations

from typing import Any

import numpy as np
import pandas as pd

from model import machine_map
from model.car import Car
from model.friction_brakes import FADE_BAND_C
from model.repeated_stops import RepeatedStops
from model.units import KMH_PER_MPS
from pages.parts.charts.axes import along, next_step, upright
from pages.parts.charts.limits import LIMIT_WORDS
from pages.parts.charts.panels import HEIGHT_PX, MEANINGS, Name, beside_names, by_meaning, by_px, names_layers
from pages.parts.display import Display, number_text
from pages.parts.theme import LINE_PX, Spec, dressed, palette

# four quadrants

BACKWARDS_SHARE = 0.45
"""How much of the speeds backwards is shown: the machine is the same there, mirrored [1]."""
LEVELS = (0.8, 0.9)
"""Efficiencies that shade the map [1]."""
QUADRANT_WORDS = {
    "pulling_forwards": "pulling forwards",
    "slowing_forwards": "slowing forwards",
    "slowing_backwards": "slowing backwards",
    "pulling_backwards": "pulling backwards",
}
DOT_PX2 = 260
"""Area of the largest dot of the drive's cloud."""


def four_quadrants(car: Car, cloud: pd.DataFrame, chosen: str, display: Display, dark: bool = False) -> Spec:
    """Force over speed of one machine: its borders, where it is efficient, and the drive's own use of it.

    `cloud` is from `model.machine_map.cloud_of`; `chosen` is the quadrant that is framed.
    """
    colours = palette(dark)
    top = float(display.value(car.motor_top_speed_kmh, "km/h"))
    most = float(machine_map.greatest_n(car, 0.1, slowing=False)) / 1000
    speed = np.linspace(0.004, 1.0, 120) * car.motor_top_speed_kmh / KMH_PER_MPS
    shown = display.value(speed * KMH_PER_MPS, "km/h")
    bands, borders = [], []
    for slowing, meaning in ((False, "quiet"), (True, "back")):
        border = machine_map.greatest_n(car, speed, slowing=slowing)
        edges = {0.0: (np.zeros_like(speed), border)}
        edges |= {level: machine_map.efficient_n(car, speed, level, slowing=slowing) for level in LEVELS}
        for direction in (1, -1):
            up = direction * (-1 if slowing else 1) / 1000
            kept = slice(None) if direction > 0 else shown <= BACKWARDS_SHARE * top
            part = f"{slowing} {direction}"
            for level, (low, high) in edges.items():
                rows = {"speed": direction * shown, "y": up * low, "y2": up * high, "meaning": meaning}
                bands.append(pd.DataFrame(rows).assign(part=f"{part} {level}")[kept])
            borders.append(pd.DataFrame({"speed": direction * shown, "y": up * border, "part": part})[kept])
    x = along("speed", top, display.unit("km/h"), 90)
    x["scale"] = x["scale"] | {"domain": [-BACKWARDS_SHARE * top, top]}
    reach = most * 1.1
    y = upright("y", [-reach, reach], [HEIGHT_PX, 0], {v: f"{number_text(v)} kN" for v in (-most, 0.0, most)})
    dots = pd.DataFrame({"speed": display.value(cloud["speed_kmh"], "km/h"), "y": cloud["force_n"] / 1000,
                         "energy_wh": cloud["energy_wh"],
                         "meaning": np.where(cloud["force_n"] < 0, "back", "ink")})  # fmt: skip
    corners = pd.DataFrame(
        [
            {"speed": top if name.endswith("forwards") else -BACKWARDS_SHARE * top, "text": words,
             "y": reach * 0.95 * (1 if name in ("pulling_forwards", "slowing_backwards") else -1),
             "right": name.endswith("forwards"), "chosen": name == chosen}
            for name, words in QUADRANT_WORDS.items()
        ]
    )  # fmt: skip
    at = corners[corners["chosen"]].iloc[0]
    frame = pd.DataFrame([{"speed": 0.0, "end": at["speed"], "y": 0.0, "y2": np.sign(at["y"]) * reach}])
    color = by_meaning(colours, *MEANINGS)
    size = {"field": "energy_wh", "type": "quantitative", "legend": None,
            "scale": {"range": [0, DOT_PX2], "domain": [0, float(cloud["energy_wh"].max())]}}  # fmt: skip
    layers: list[Spec] = [
        {"data": {"name": "bands"}, "mark": {"type": "area", "opacity": 0.2},
         "encoding": {"x": x, "y": y, "y2": {"field": "y2"}, "detail": {"field": "part"}, "color": color}},
        {"data": {"name": "borders"}, "mark": {"type": "line", "color": colours.ink, "strokeWidth": 1.5},
         "encoding": {"x": x, "y": y, "detail": {"field": "part"}}},
        *({"mark": {"type": "rule", "color": colours.quiet}, "data": {"values": [{}]}, "encoding": {axis: {"datum": 0}}}
          for axis in ("x", "y")),
        {"data": {"name": "dots"},
         "mark": {"type": "circle", "opacity": 0.75, "stroke": colours.ground, "strokeWidth": 0.5},
         "encoding": {"x": x, "y": y, "size": size, "color": color}},
        {"data": {"name": "frame"}, "mark": {"type": "rect", "filled": False, "stroke": colours.ink, "strokeWidth": 2},
         "encoding": {"x": x, "x2": {"field": "end"}, "y": y, "y2": {"field": "y2"}}},
    ]  # fmt: skip
    layers[2]["encoding"] = {"x": x | {"datum": 0, "axis": None}}
    del layers[2]["encoding"]["x"]["field"]
    layers[3]["encoding"] = {"y": {key: value for key, value in y.items() if key != "field"} | {"datum": 0}}
    for right in (False, True):
        for bold in (False, True):
            layers.append(
                {"data": {"name": "corners"},
                 "transform": [{"filter": f"datum.right == {str(right).lower()} && datum.chosen == {str(bold).lower()}"}],
                 "mark": {"type": "text", "align": "right" if right else "left", "xOffset": -6 if right else 6,
                          "fontWeight": 600 if bold else 400},
                 "encoding": {"x": x, "y": y, "text": {"field": "text"}}}
            )  # fmt: skip
    datasets = {"bands": pd.concat(bands).round(4), "borders": pd.concat(borders).round(4), "dots": dots.round(4),
                "corners": corners, "frame": frame}  # fmt: skip
    return dressed(layers, datasets, HEIGHT_PX, dark)


# a bigger motor


def bigger_motor(powers: pd.DataFrame, chosen_times: float, dark: bool = False) -> Spec:
    """The drive's braking over motor power: what the motor does, and which limit leaves the rest to friction.

    `powers` is from `model.bigger_motor.by_power`.
    """
    colours, top = palette(dark), LINE_PX + 6
    limits = [name for name in LIMIT_WORDS if name in powers and powers[name].max() > 0]
    whole = float(powers[["motor_kwh", *limits]].sum(axis=1).max())
    most, end = next_step(whole, 10 ** np.floor(np.log10(whole)) / 2), float(powers["motor_kw"].max())
    x = beside_names(along("kw", end, "kW", 80))
    y = [0, most], [HEIGHT_PX, top]

    def px(kwh: float) -> float:
        return HEIGHT_PX - (HEIGHT_PX - top) * kwh / most

    low, piles, names = np.zeros(len(powers)), [], []
    for key in ("motor_kwh", *limits):
        high, meaning = low + powers[key].to_numpy(), "back" if key == "motor_kwh" else "friction"
        piles.append(pd.DataFrame({"kw": powers["motor_kw"], "y": high, "y2": low, "meaning": meaning, "part": key}))
        low = high
    last = powers.iloc[-1]
    names.append(Name(end, px(last["recovered_kwh"]), "in the battery", "ground", bold=True))
    names.append(Name(end, px((last["motor_kwh"] + last["recovered_kwh"]) / 2), "by the motor", "back"))
    names.append(Name(end, px(whole), "friction", "friction"))
    words = []
    for pile in piles[1:]:
        thick = (pile["y"] - pile["y2"]).to_numpy() * (HEIGHT_PX - top) / most
        widest = int(thick.argmax())
        if thick[widest] >= LINE_PX + 4:
            row = pile.iloc[widest]
            words.append({"kw": row["kw"], "y": px((row["y"] + row["y2"]) / 2), "text": SHORT_LIMITS[row["part"]]})
    chosen = powers["motor_kw"].iloc[int(np.abs(powers["power_times"] - chosen_times).argmin())]
    marks = pd.DataFrame([{"kw": chosen, "y": 0.0, "text": f"{number_text(chosen, 3)} kW"}])
    named, rows = names_layers(names, x, HEIGHT_PX, colours)
    axis = upright("y", *y, {value: f"{number_text(value)} kWh" for value in (0.0, most / 2, most)})
    layers = [
        {"data": {"name": "piles"}, "mark": {"type": "area", "opacity": 1, "line": {"color": colours.ground, "strokeWidth": 1}},
         "encoding": {"x": x, "y": axis, "y2": {"field": "y2"}, "detail": {"field": "part"},
                      "color": by_meaning(colours, *MEANINGS)}},
        {"data": {"name": "battery"}, "mark": {"type": "line", "color": colours.ground, "strokeWidth": 2.5, "strokeDash": [6, 3]},
         "encoding": {"x": x, "y": upright("recovered_kwh", *y, {})}},
        {"data": {"name": "words"}, "mark": {"type": "text", "xOffset": 5, "color": palette().ink, "fontWeight": 600},
         "encoding": {"x": x, "y": by_px("y", HEIGHT_PX), "text": {"field": "text"}}},
        {"data": {"name": "chosen"}, "mark": {"type": "rule", "color": colours.ink, "strokeWidth": 2.5},
         "encoding": {"x": x, "y": {"value": top - 4}, "y2": {"value": HEIGHT_PX}}},
        {"data": {"name": "chosen"}, "mark": {"type": "text", "align": "center", "fontWeight": 600},
         "encoding": {"x": x, "y": {"value": 8}, "text": {"field": "text"}}},
        *named,
    ]  # fmt: skip
    battery = pd.DataFrame({"kw": powers["motor_kw"], "recovered_kwh": powers["recovered_kwh"]})
    datasets: dict[str, Any] = {"piles": pd.concat(piles), "battery": battery, "chosen": marks, "names": rows}
    return dressed(layers, datasets | {"words": pd.DataFrame(words, columns=["kw", "y", "text"])}, HEIGHT_PX, dark)


SHORT_LIMITS = {
    "lift_off_only": "pedal works the discs only",
    "drivability": "slowing limit for comfort",
    "motor_torque": "motor's force",
    "motor_power": "motor's power",
    "grip": "grip of the driven wheels",
    "low_speed_fade": "walking pace",
    "battery": "battery takes no more",
    "engine": "the engine",
}

# hot discs

DISC_PX, BARS_PX, BAR_PX = 210, 120, 18


def hot_discs(shown: RepeatedStops, ten: RepeatedStops, display: Display, dark: bool = False) -> Spec:
    """Disc temperature over the stops, and below it what became of the energy; scales are those of ten stops."""
    colours, height, top = palette(dark), DISC_PX + BARS_PX, 8
    hottest = next_step(max(float(ten.temperature["friction_only_c"].max()), FADE_BAND_C[1]), 100)
    coldest = min(0.0, float(ten.temperature["friction_only_c"].min()))
    ends = [float(display.value(value, "°C")) for value in (coldest, hottest)]
    minutes = float(ten.temperature["time_s"].max()) / 60
    x = beside_names(along("minute", minutes, "min", 80))
    x["axis"] = x["axis"] | {"offset": DISC_PX - height}
    ticks = {float(display.value(value, "°C")): "" for value in (0.0, *FADE_BAND_C)}
    ticks = {value: f"{value:.0f} {display.unit('°C')}" for value in ticks}

    def up(field: str, words: dict[float, str] | None = None) -> Spec:
        return upright(field, ends, [DISC_PX, top], words or {})

    def px(value: float) -> float:
        return DISC_PX - (DISC_PX - top) * (value - ends[0]) / (ends[1] - ends[0])

    lines = pd.DataFrame({"minute": shown.temperature["time_s"] / 60})
    for column in ("regenerated_c", "friction_only_c"):
        lines[column] = display.value(shown.temperature[column], "°C")
    end = lines.iloc[-1]
    names = [Name(end["minute"], px(end[column]), f"{words} {end[column]:.0f} {display.unit('°C')}", "friction", bold)
             for column, words, bold in (("friction_only_c", "discs only", True), ("regenerated_c", "with motor", False))]
    named, rows = names_layers(names, x | {"axis": None}, DISC_PX, colours)
    for layer in named:
        for axis in ("y", "y2"):
            if "scale" in layer["encoding"].get(axis, {}):
                layer["encoding"][axis]["scale"] = layer["encoding"][axis]["scale"] | {"domain": [0, height], "range": [0, height]}

    most = max(ten.friction_only_heat_kwh, ten.back_kwh + ten.heat_kwh)
    bars, words, y = [], [], DISC_PX + 30.0
    for name, parts in (
        (f"Friction brakes only: {number_text(shown.friction_only_heat_kwh)} kWh of heat",
         ((shown.friction_only_heat_kwh, "friction"),)),
        (f"With the motor: {number_text(shown.back_kwh)} kWh back, {number_text(shown.heat_kwh)} kWh of heat",
         ((shown.back_kwh, "back"), (shown.heat_kwh, "friction"))),
    ):  # fmt: skip
        words.append({"kwh": 0.0, "y": y + 8, "text": name})
        low = 0.0
        for kwh, meaning in parts:
            bars.append({"kwh": low, "end": low + kwh, "y": y + LINE_PX + 2, "y2": y + LINE_PX + 2 + BAR_PX, "meaning": meaning})
            low += kwh
        y += LINE_PX + BAR_PX + 8
    along_bars = {"field": "kwh", "type": "quantitative", "axis": None,
                  "scale": {"domain": [0, most], "range": "width", "nice": False}}  # fmt: skip
    del along_bars["scale"]["range"]
    band = pd.DataFrame([{"y": px(float(display.value(FADE_BAND_C[1], "°C"))), "y2": px(float(display.value(FADE_BAND_C[0], "°C")))}])
    color = by_meaning(colours, *MEANINGS)
    layers = [
        {"data": {"name": "band"}, "mark": {"type": "rect", "color": colours.wash},
         "encoding": {"y": by_px("y", height), "y2": {"field": "y2"}}},
        {"data": {"name": "band"}, "mark": {"type": "text", "x": 6, "dy": 11, "color": colours.quiet},
         "encoding": {"y": by_px("y", height), "text": {"value": "ordinary pads lose bite"}}},
        *({"data": {"name": "lines"}, "mark": {"type": "line", "color": colours.friction, "strokeWidth": 2, "strokeDash": dash},
           "encoding": {"x": x, "y": up(column, ticks if column == "friction_only_c" else {})}}
          for column, dash in (("friction_only_c", [1, 0]), ("regenerated_c", [4, 3]))),
        *named,
        {"data": {"name": "bars"}, "mark": "rect",
         "encoding": {"x": along_bars, "x2": {"field": "end"}, "y": by_px("y", height), "y2": {"field": "y2"}, "color": color}},
        {"data": {"name": "bar words"}, "mark": "text",
         "encoding": {"x": along_bars, "y": by_px("y", height), "text": {"field": "text"}}},
    ]  # fmt: skip
    datasets = {"band": band, "lines": lines.round(3), "names": rows, "bars": pd.DataFrame(bars), "bar words": pd.DataFrame(words)}
    spec = dressed(layers, datasets, height, dark)
    spec["resolve"] = {"scale": spec["resolve"]["scale"] | {"x": "independent"}}
    return spec
