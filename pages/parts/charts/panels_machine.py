"""Pictures that explain the machine and the brakes: four quadrants, a bigger motor, discs that get hot."""

from __future__ import annotations

import itertools
from collections.abc import Sequence

import numpy as np
import pandas as pd

from model.describe.car import Car
from model.describe.figures import Quantity, Share
from model.describe.units import KMH_PER_MPS
from model.limits.friction_brakes import FADE_BAND_C
from model.one_stop import machine_map
from model.one_stop.machine_map import QUADRANTS
from model.one_stop.repeated_stops import RepeatedStops
from model.physics.slowing_limits import LIMITS
from model.words.quantities import Display
from pages.parts.charts.layers import (
    NAMES_PX,
    Name,
    along,
    beside_names,
    by_meaning,
    by_px,
    layer,
    line,
    names_layers,
    next_step,
    thinly,
    upright,
    words,
)
from pages.parts.charts.panels import HEIGHT_PX
from pages.parts.theme import LINE_PX, Rows, Spec, dressed, palette

# four quadrants

BACKWARDS_SHARE = 0.45
"""How much of the speeds backwards is shown: the machine is the same there, mirrored [1]."""
LEVELS = (0.8, 0.9)
"""Efficiencies that shade the map [1]."""
NAME_SHARE = 0.1
"""Half the length of a shade's name, over the machine's speeds forwards [1]: on a wide picture it is less."""
LARGEST_DOT_PX2 = 260
HEADROOM = 1.28
"""The picture's half height over the machine's greatest force [1]."""


def four_quadrants(car: Car, cloud: pd.DataFrame, chosen: str, display: Display, dark: bool = False) -> Spec:
    """Force over speed of one machine: its borders, where it is efficient, and the drive's own use of it.

    `cloud` is from `model.one_stop.machine_map.cloud_of`; `chosen` is the quadrant that is framed.
    """
    colours = palette(dark)
    top = float(display.value(car.motor_top_speed_kmh, "km/h"))
    most = float(machine_map.greatest_n(car, 0.1, slowing=False)) / 1000
    reach, back = most * HEADROOM, -BACKWARDS_SHARE * top
    bands, borders = _map(car, top)
    dots = pd.DataFrame({"speed": display.value(cloud["speed_kmh"], "km/h"), "y": cloud["force_n"] / 1000})
    corners = pd.DataFrame(
        {
            "text": [display.say("panel-quadrant-corner", quadrant=name).replace(" ", "\n") for name in QUADRANTS],
            "chosen": [name == chosen for name in QUADRANTS],
            "right": [name.endswith("forwards") for name in QUADRANTS],
            "up": [name in ("pulling_forwards", "slowing_backwards") for name in QUADRANTS],
        }
    )
    corners["speed"] = np.where(corners["right"], top, back)
    corners["y"] = np.where(corners["up"], 3, HEIGHT_PX - 2 * LINE_PX - 3)
    framed = corners[corners["chosen"]].iloc[0]
    frame = pd.DataFrame([{"speed": 0.0, "end": framed["speed"], "y": 0.0, "y2": reach if framed["up"] else -reach}])
    x = along("speed", top, display.unit("km/h"), 90)
    x["scale"] = x["scale"] | {"domain": [back, top]}
    y = upright("y", [-reach, reach], [HEIGHT_PX, 0], {v: display.text(v, "kN") for v in (-most, 0.0, most)})
    size: Spec = {"field": "energy_wh", "type": "quantitative", "legend": None}
    size["scale"] = {"range": [0, LARGEST_DOT_PX2], "domain": [0, float(cloud["energy_wh"].max())]}
    part, area = {"detail": {"field": "part"}}, {"x": x, "y": y, "y2": {"field": "y2"}}
    layers = [
        layer("bands", "area", area | part | {"color": by_meaning(colours)}, opacity=0.2),
        layer("borders", "line", {"x": x, "y": y} | part, color=colours.ink, strokeWidth=1.5),
        layer("zero", "rule", {"x": x}, color=colours.quiet),
        layer("zero", "rule", {"y": y}, color=colours.quiet),
        layer("dots", "circle", {"x": x, "y": y, "size": size}, opacity=0.85, color=colours.ink, stroke=colours.ground,
              strokeWidth=0.7),
        words("levels", x, y, align="center"),
        layer("frame", "rect", area | {"x2": {"field": "end"}}, filled=False, stroke=colours.ink, strokeWidth=2),
    ]  # fmt: skip
    for right, bold in itertools.product((False, True), repeat=2):
        kept = {"and": [{"field": "right", "equal": right}, {"field": "chosen", "equal": bold}]}
        look: Spec = {"align": "right", "xOffset": -6} if right else {"xOffset": 6}
        look |= {"baseline": "top", "fontWeight": 600 if bold else 400, "lineBreak": "\n"}
        layers.append({"transform": [{"filter": kept}]} | words("corners", x, by_px("y", HEIGHT_PX), **look))
    datasets = {
        "bands": bands,
        "borders": borders,
        "dots": dots.assign(energy_wh=cloud["energy_wh"]).round(4),
        "corners": corners,
        "frame": frame,
        "zero": pd.DataFrame([{"speed": 0.0, "y": 0.0}]),
        "levels": pd.DataFrame([_level_name(car, slowing, top, reach, dots, display) for slowing in (False, True)]),
    }
    return dressed(layers, datasets, HEIGHT_PX, dark)


def _map(car: Car, top: float) -> tuple[pd.DataFrame, pd.DataFrame]:
    """Shaded areas and borders of the map: pulling, slowing, and both mirrored for going backwards."""
    share = np.linspace(0.004, 1.0, 60)
    speed = share * car.motor_top_speed_kmh / KMH_PER_MPS
    bands, borders = [], []
    for slowing, meaning in ((False, "quiet"), (True, "back")):
        most = machine_map.greatest_n(car, speed, slowing=slowing)
        edges = [(np.zeros_like(speed), most)]
        edges += [machine_map.efficient_n(car, speed, level, slowing=slowing) for level in LEVELS]
        for way in (1, -1):
            kept, kn = share <= (1 if way > 0 else BACKWARDS_SHARE), way * (-1 if slowing else 1) / 1000
            for level, (low, high) in enumerate(edges):
                rows = pd.DataFrame({"speed": way * share * top, "y": kn * low, "y2": kn * high, "meaning": meaning})
                bands.append(rows[kept].assign(part=f"{slowing} {way} {level}"))
            border = pd.DataFrame({"speed": way * share * top, "y": kn * most, "part": f"{slowing} {way}"})
            borders.append(border[kept])
    return pd.concat(bands).round(4), pd.concat(borders).round(4)


def _level_name(
    car: Car, slowing: bool, top: float, reach: float, dots: pd.DataFrame, display: Display
) -> dict[str, object]:
    """Where the darkest shade is named: where it has the most room clear of dots; nowhere, where it has too little.

    `reach` is the force at the picture's upper edge [kN].
    """
    # its beginning stands clear of a machine at rest
    share = np.linspace(1.1 * NAME_SHARE, 1 - NAME_SHARE, 60)
    ends = [
        machine_map.efficient_n(car, at * car.motor_top_speed_kmh / KMH_PER_MPS, LEVELS[-1], slowing=slowing)
        for at in (share - NAME_SHARE, share, share + NAME_SHARE)
    ]
    low, high = np.max([end[0] for end in ends], axis=0) / 1000, np.min([end[1] for end in ends], axis=0) / 1000
    middle, line_kn = (-1 if slowing else 1) * (low + high) / 2, LINE_PX * 2 * reach / HEIGHT_PX
    speeds, forces = dots["speed"].to_numpy() / top, dots["y"].to_numpy()
    near = np.abs(speeds - share[:, None]) < 1.3 * NAME_SHARE
    covered = (near & (np.abs(forces - middle[:, None]) < line_kn)).any(axis=1)
    room = np.where(covered, 0.0, high - low)
    best = int(np.argmax(room))
    text = display.say("panel-quadrants-level", level=Share(LEVELS[-1], places=0)) if room[best] > line_kn else ""
    return {"speed": float(share[best]) * top, "y": float(middle[best]), "text": text}


# a bigger motor

LEFT_TO_FRICTION = LIMITS[:-1]
"""What may leave braking to friction, in the order of its piles; the last is the comparison run."""
NEGLIGIBLE_SHARE = 0.002
"""A limit that leaves less than this share of the braking to friction is not named [1]."""


def bigger_motor(powers: pd.DataFrame, chosen_times: float, display: Display, dark: bool = False) -> Spec:
    """The drive's braking over motor power: what reaches the battery, what is lost on the way, what friction does.

    Friction is piled by the limit that left it. `powers` is from `model.one_stop.bigger_motor.by_power`.
    """
    colours, top = palette(dark), LINE_PX + 6
    limits = [name for name in LEFT_TO_FRICTION if name in powers and powers[name].max() > 0]
    braked = float(powers[["motor_kwh", *limits]].sum(axis=1).max())
    most = next_step(braked, 10 ** np.floor(np.log10(max(braked, 0.01))) / 2)
    last, now = powers.iloc[-1], powers.iloc[int((powers["power_times"] - chosen_times).abs().argmin())]
    end = float(last["motor_kw"])

    def px(kwh: float) -> float:
        return HEIGHT_PX - (HEIGHT_PX - top) * kwh / most

    def up(field: str, ticks: Sequence[float] = ()) -> Spec:
        return upright(field, [0, most], [HEIGHT_PX, top], {value: display.text(value, "kWh") for value in ticks})

    back = powers["recovered_kwh"].clip(lower=0)
    parts = {"back": back, "losses": powers["motor_kwh"] - back} | {key: powers[key] for key in limits}
    in_battery = display.say("panel-motor-in-battery", back=Quantity(now["recovered_kwh"], "", places=2))
    lost = display.say("panel-motor-lost", lost=Quantity(now["motor_kwh"] - now["recovered_kwh"], "", places=2))
    names = [
        Name(end, px(parts["back"].iloc[-1] / 2), in_battery, "back", True),
        Name(end, px(parts["back"].iloc[-1] + parts["losses"].iloc[-1] / 2), lost, "losses"),
    ]
    low, piles = np.zeros(len(powers)), []
    for key, part in parts.items():
        high, meaning = low + part.to_numpy(), "friction" if key in limits else key
        rows = {"kw": powers["motor_kw"], "y": high, "y2": low, "meaning": meaning, "part": key}
        piles.append(pd.DataFrame(rows))
        if key in limits and now[key] >= NEGLIGIBLE_SHARE * braked:
            middle = px((high[-1] + low[-1]) / 2)
            name = display.say("panel-motor-limit-line", limit=key, braked=Quantity(now[key], "", places=2))
            names.append(Name(end, middle, name, "friction"))
        low = high
    x, power = beside_names(along("kw", end, "kW", 80)), display.text(now["motor_kw"], "kW")
    named, name_rows = names_layers(names, x, HEIGHT_PX, colours)
    pile = {"x": x, "y": up("y", (0.0, most)), "y2": {"field": "y2"}, "detail": {"field": "part"}}
    layers = [
        layer("piles", "area", pile | {"color": by_meaning(colours)}, opacity=1,
              line={"color": colours.ground, "strokeWidth": 1}),
        layer("chosen", "rule", {"x": x, "y": {"value": top - 4}, "y2": {"value": HEIGHT_PX}}, color=colours.ink,
              strokeWidth=2.5),
        words("chosen", x, {"value": 8}, align="center", fontWeight=600),
        words("chosen", {"value": {"expr": f"max(width - {NAMES_PX}, 40) + 19"}}, {"value": 8}, "unit",
              color=colours.quiet),
        *named,
    ]  # fmt: skip
    datasets: dict[str, Rows] = {
        "piles": pd.concat(piles),
        "chosen": [{"kw": now["motor_kw"], "text": power, "unit": display.say("panel-motor-unit", power=power)}],
        "names": name_rows,
    }
    return dressed(layers, datasets, HEIGHT_PX, dark)


# hot discs

DISC_PX, BARS_PX, BAR_PX = 210, 120, 18
LINES = (("friction_only_c", "alone", True, (1, 0)), ("regenerated_c", "motor", False, (4, 3)))
"""Each run's column, its name in messages, whether it is bold, and its dash."""


def hot_discs(shown: RepeatedStops, ten: RepeatedStops, display: Display, dark: bool = False) -> Spec:
    """Disc temperature over the stops, and below it what became of the energy; scales are those of ten stops."""
    colours, height = palette(dark), DISC_PX + BARS_PX
    warm = ten.temperature["friction_only_c"]
    cold, hot = min(0.0, float(warm.min())), next_step(max(float(warm.max()), FADE_BAND_C[1]), 100)
    ticks = {float(display.value(value, "°C")): display.text(value, "°C") for value in (0.0, *FADE_BAND_C)}

    def up(field: str, ticks: dict[float, str]) -> Spec:
        return upright(field, [float(display.value(end, "°C")) for end in (cold, hot)], [DISC_PX, 8], ticks)

    def px(celsius: float) -> float:
        return DISC_PX - (DISC_PX - 8) * (celsius - cold) / (hot - cold)

    x = beside_names(along("minute", float(ten.temperature["time_s"].max()) / 60, "min", 80))
    bare, axis = x | {"axis": None}, x | {"axis": x["axis"] | {"offset": DISC_PX - height}}
    rows, names, lines = {"minute": shown.temperature["time_s"] / 60}, [], []
    for column, run, bold, dash in LINES:
        celsius = shown.temperature[column]
        rows[column] = display.value(celsius, "°C")
        text = display.say("panel-discs-line", run=run, reached=Quantity(float(celsius.max()), "°C"))
        names.append(Name(float(rows["minute"].iloc[-1]), px(float(celsius.iloc[-1])), text, "friction", bold))
        place = (axis, up(column, ticks)) if bold else (bare, up(column, {}))
        lines.append(line("temperature", *place, colours.friction, dash))
    named, name_rows = names_layers(names, bare, height, colours, DISC_PX)
    bars, heads, most = _bars(shown, DISC_PX + 30), _heads(shown, DISC_PX + 30, display), _bars(ten, 0)["end"].max()
    kwh = {"field": "kwh", "type": "quantitative", "axis": None, "scale": {"domain": [0, float(most)], "nice": False}}
    y, y2 = by_px("y", height), {"field": "y2"}
    layers = [
        layer("band", "rect", {"y": y, "y2": y2}, color=colours.wash),
        layer("band", "text", {"y": y, "text": {"field": "text"}}, x=6, dy=11, color=colours.quiet),
        *lines,
        *named,
        layer("bars", "rect", {"x": kwh, "x2": {"field": "end"}, "y": y, "y2": y2, "color": by_meaning(colours)},
              stroke=colours.ground),
        words("heads", kwh, y),
    ]  # fmt: skip
    band = {"y": px(FADE_BAND_C[1]), "y2": px(FADE_BAND_C[0]), "text": display.say("panel-discs-band")}
    datasets: dict[str, Rows] = {"band": [band], "temperature": thinly(pd.DataFrame(rows), 300), "names": name_rows}
    spec = dressed(layers, datasets | {"bars": bars, "heads": heads}, height, dark)
    # time above, energy below
    spec["resolve"] = {"scale": spec["resolve"]["scale"] | {"x": "independent"}}
    return spec


def _bars(stops: RepeatedStops, y: float) -> pd.DataFrame:
    heat, back, left = stops.friction_only_heat_kwh, stops.back_kwh, stops.heat_kwh
    low, high = y + LINE_PX + 2, y + 2 * LINE_PX + BAR_PX + 10
    rows = [(0.0, heat, low, "friction"), (0.0, back, high, "back"), (back, back + left, high, "friction")]
    bars = pd.DataFrame(rows, columns=["kwh", "end", "y", "meaning"])
    return bars.assign(y2=bars["y"] + BAR_PX)


def _heads(stops: RepeatedStops, y: float, display: Display) -> pd.DataFrame:
    alone, heat, back = (
        Quantity(kwh, "kWh", places=2) for kwh in (stops.friction_only_heat_kwh, stops.heat_kwh, stops.back_kwh)
    )
    texts = (
        display.say("panel-discs-alone", heat=alone),
        display.say("panel-discs-motor", back=back, heat=heat),
    )
    return pd.DataFrame({"kwh": 0.0, "y": [y + 8, y + LINE_PX + BAR_PX + 16], "text": texts})
