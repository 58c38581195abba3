"""The recurring picture: the drive's speed above, the height of the road below, and what slowed the car where."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import pandas as pd

from model.kernel.timeline import braked_kwh
from model.words.quantities import Display, number_text, percent_text
from pages.parts.charts.axes import along, next_step, thinned, upright
from pages.parts.charts.limits import LIMIT_WORDS, because
from pages.parts.theme import Spec, area, dressed, palette

MARKED_FROM_KW = 1.0
"""Braking weaker than this at the wheels is left unmarked: it would only speckle the line."""
FRICTION_FROM_SHARE = 0.3
"""Friction brakes are marked where they do at least this share of a step's braking [1]."""
FLAT_M = 20.0
"""A road whose height varies less than this is drawn as flat."""
ROW_PX, SPEED_PX, GAP_PX, HEIGHT_PX = 20, 68, 12, 20
LETTER_PX = 7
"""About the width of a letter [px]."""
Note = tuple[float, float, str] | tuple[float, float, str, str]
"""From, to [km], words, and words to stand in their place where they have no room between from and to."""
MOTOR, FRICTION = "motor slows the car", "friction brakes"
CHARGES, MOST_NAMED, LATE_SHARE = "charges", 4, 0.8
"""What stands where the car charges on the way, the number of stops up to which each is named, and the share of the way
from which a name stands before its stop, since a telephone has no room behind it [1]."""
KEY = pd.DataFrame({"what": [MOTOR, FRICTION], "start": [0, 158]})
"""The key's words and where they begin [px]; both fit a telephone."""


def drive_strip(
    timeline: pd.DataFrame,
    slow_downs: pd.DataFrame,
    display: Display,
    dark: bool = False,
    annotate: Sequence[Note] = (),
) -> Spec:
    """Speed over distance, the road's height below, the speed line marked where motor or friction slow the car.

    Parameters
    ----------
    timeline, slow_downs : DataFrame
        From `model.kernel.timeline`.
    display : Display
        Metric or US units.
    dark : bool
        Whether the ground is dark.
    annotate : sequence of Note
        Stretches that the page is about, bracketed above the speed.
    """
    colours = palette(dark)
    shown = pd.DataFrame(
        {
            "place": display.value(timeline["distance_km"], "km"),
            "speed": display.value(timeline["speed_kmh"], "km/h"),
            "height": display.value(timeline["elevation_m"], "m"),
        }
    ).round(4)
    motor, friction = timeline["motor_slowing_kw"].to_numpy(), timeline["friction_kw"].to_numpy()
    by_friction = (friction >= MARKED_FROM_KW) & (friction >= FRICTION_FROM_SHARE * (motor + friction))
    stretches = {MOTOR: stretches_of(motor >= MARKED_FROM_KW), FRICTION: stretches_of(by_friction)}
    kept = np.union1d(
        thinned(shown, "place", ["speed", "height"]), np.concatenate([ends_of(number) for number in stretches.values()])
    )
    pieces = pd.concat(
        shown.assign(stretch=number, what=what).iloc[kept[number[kept] > 0]] for what, number in stretches.items()
    )

    top_px = 2 * ROW_PX if annotate else ROW_PX
    foot_px = top_px + SPEED_PX
    total_px = foot_px + GAP_PX + HEIGHT_PX
    distance = float(shown["place"].iloc[-1])
    x = along("place", distance, display.unit("km"))
    fastest = next_step(shown["speed"].max(), 20)
    speed = upright("speed", [0, fastest], [foot_px, top_px], {fastest: f"{fastest:.0f} {display.unit('km/h')}"})
    lowest, highest = float(shown["height"].min()), float(shown["height"].max())
    if highest - lowest < display.value(FLAT_M, "m"):
        highest, words = lowest + 10 * display.value(FLAT_M, "m"), {lowest: "flat"}
    else:
        words = {end: f"{number_text(end)} {display.unit('m')}" for end in (lowest, highest)}
    height = upright("height", [lowest, highest], [total_px, foot_px + GAP_PX], words)

    def by_what(looks: Sequence[object]) -> Spec:
        scale = {"domain": [MOTOR, FRICTION], "range": looks}
        return {"field": "what", "type": "nominal", "legend": None, "scale": scale}

    look = {
        "color": by_what([colours.back, colours.friction]),
        "strokeDash": by_what([[1, 0], [3, 2]]),
        "strokeWidth": by_what([3, 4]),
    }
    layers: list[Spec] = [
        {
            "data": {"name": "drive"},
            "mark": area(colours.wash, colours.quiet),
            "encoding": {"x": x, "y": speed},
        },
        {
            "data": {"name": "slowing"},
            "mark": "line",
            "encoding": {"x": x, "y": speed, "detail": {"field": "stretch"}} | look,
        },
        {
            "data": {"name": "drive"},
            "mark": area(colours.road, colours.road),
            "encoding": {"x": x, "y": height, "y2": {"value": total_px}},
        },
        {
            "data": {"name": "slow_downs"},
            "mark": {"type": "rect", "opacity": 0},
            "encoding": {
                "x": x | {"field": "start"},
                "x2": {"field": "end"},
                "tooltip": [{"field": name} for name in ("slow-down", "to the motor", "to friction")],
            },
        },
        *_key(look),
    ]
    datasets = {"drive": shown.iloc[kept], "slowing": pieces.drop(columns="height"), "key": KEY}
    datasets["slow_downs"] = pointed_at(slow_downs, display)
    charging = charged_at(timeline, display)
    if len(charging):
        layers += _charging(x, foot_px, top_px, colours.ink)
        datasets["charging"] = charging
    if annotate:
        notes = pd.DataFrame([(*note, note[2])[:4] for note in annotate], columns=["start", "end", "words", "short"])
        notes[["start", "end"]] = display.value(notes[["start", "end"]], "km")
        # a note's words run towards the middle of the picture, where there is room
        notes["late"] = notes["start"] > distance / 2
        layers += _brackets(x, distance, colours.ink)
        datasets["notes"] = notes
    return dressed(layers, datasets, total_px, dark)


def stretches_of(marked: np.ndarray) -> np.ndarray:
    """The number, from 1, of the unbroken run of marked steps that each row belongs to; 0 where it belongs to none.

    A row is the end of a step, so a run also has the row before its first step.
    """
    rows = marked | np.append(marked[1:], False)
    return np.cumsum(np.diff(rows.astype(int), prepend=0) == 1) * rows


def ends_of(stretches: np.ndarray) -> np.ndarray:
    """First and last rows of the stretches, and the rows beside them."""
    edges = np.diff(stretches, prepend=0, append=0)
    return np.flatnonzero((edges[:-1] != 0) | (edges[1:] != 0)).clip(0, len(stretches) - 1)


def _key(look: Spec) -> list[Spec]:
    """What the two marks mean, in words beside a sample of each."""
    start = {"field": "start", "type": "quantitative", "scale": None}
    y = {"value": 7}
    return [
        {"data": {"name": "key"}, "mark": {"type": "rule", "xOffset": 0, "x2Offset": 18},
         "encoding": {"x": start, "x2": {"field": "start"}, "y": y} | look},
        {"data": {"name": "key"}, "mark": {"type": "text", "xOffset": 23},
         "encoding": {"x": start, "y": y, "text": {"field": "what"}}},
    ]  # fmt: skip


def charged_at(timeline: pd.DataFrame, display: Display) -> pd.DataFrame:
    """Where the car charges on the way, and the words there; many stand so close that only the first has words."""
    stops = timeline[timeline["charged_to"].notna()]
    words = [CHARGES if place == 0 or len(stops) <= MOST_NAMED else "" for place in range(len(stops))]
    late = stops["distance_km"] > LATE_SHARE * timeline["distance_km"].iloc[-1]
    return pd.DataFrame({"start": display.value(stops["distance_km"], "km"), "words": words, "late": late})


def _charging(x: Spec, foot_px: float, top_px: float, ink: str) -> list[Spec]:
    place = x | {"field": "start"}
    rule: Spec = {"mark": {"type": "rule", "color": ink, "strokeWidth": 2, "strokeDash": [2, 2]},
            "encoding": {"x": place, "y": {"value": top_px}, "y2": {"value": foot_px}}}  # fmt: skip
    words: list[Spec] = [
        {"transform": [{"filter": f"datum.late == {str(late).lower()}"}],
         "mark": {"type": "text", "align": align, "xOffset": offset},
         "encoding": {"x": place, "y": {"value": foot_px - 8}, "text": {"field": "words"}}}
        for late, align, offset in ((False, "left", 4), (True, "right", -4))
    ]  # fmt: skip
    return [{"data": {"name": "charging"}} | layer for layer in (rule, *words)]


def _brackets(x: Spec, distance: float, ink: str) -> list[Spec]:
    y_words, y_line = {"value": 2 * ROW_PX - 13}, {"value": 2 * ROW_PX - 3}
    line: Spec = {"mark": {"type": "rule", "strokeWidth": 2, "color": ink, "xOffset": 1, "x2Offset": -2},
            "encoding": {"x": x | {"field": "start"}, "x2": {"field": "end"}, "y": y_line}}  # fmt: skip
    fits = f"(datum.end - datum.start) / {distance} * width > {LETTER_PX} * length(datum.words)"
    text = {"condition": {"test": fits, "value": {"expr": "datum.words"}}, "field": "short"}
    words: list[Spec] = [
        {"transform": [{"filter": f"datum.late == {str(late).lower()}"}], "mark": {"type": "text", "align": align},
         "encoding": {"x": x | {"field": field}, "y": y_words, "text": text}}
        for late, align, field in ((False, "left", "start"), (True, "right", "end"))
    ]  # fmt: skip
    return [{"data": {"name": "notes"}} | layer for layer in (line, *words)]


def pointed_at(slow_downs: pd.DataFrame, display: Display) -> pd.DataFrame:
    """What a pointer finds over a slow-down; everything that has to be seen is drawn."""
    speeds = display.value(slow_downs[["from_kmh", "to_kmh"]], "km/h").round().astype(int)
    return pd.DataFrame(
        {
            "start": display.value(slow_downs["start_km"], "km"),
            "end": display.value(slow_downs["end_km"], "km"),
            "slow-down": [f"{a} to {b} {display.unit('km/h')}" for a, b in speeds.itertuples(index=False)],
            "to the motor": [f"{number_text(wh)} Wh" for wh in slow_downs["motor_wh"]],
            "to friction": [f"{number_text(wh)} Wh" for wh in slow_downs["friction_wh"]],
        }
    )


def strip_finding(
    timeline: pd.DataFrame,
    slow_downs: pd.DataFrame,
    display: Display,
    annotate: Sequence[Note] = (),
) -> str:
    """What the strip shows, in words with its numbers; `annotate` as for `drive_strip`."""
    notes = [f"{display.text(start, 'km')} to {display.text(end, 'km')}: {words}" for start, end, words, *_ in annotate]
    charged = charged_at(timeline, display)["start"]
    charges = f" Charges after {', '.join(f'{place:.0f}' for place in charged)} {display.unit('km')}."
    found = _finding(timeline, slow_downs, display) + (charges if len(charged) else "")
    return found + (f" Marked along the road: {'; '.join(notes)}." if notes else "")


def _finding(timeline: pd.DataFrame, slow_downs: pd.DataFrame, display: Display) -> str:
    motor_kwh, friction_kwh = braked_kwh(timeline)
    braked = motor_kwh + friction_kwh
    distance = display.text(timeline["distance_km"].iloc[-1], "km", 3)
    fastest = display.text(timeline["speed_kmh"].max(), "km/h", 2)
    rise = timeline["elevation_m"].max() - timeline["elevation_m"].min()
    road = f"over {display.text(rise, 'm')} of height" if rise >= FLAT_M else "on a flat road"
    start = f"Speed along {distance} {road}, up to {fastest}, with {len(slow_downs)} slow-downs."
    if braked <= 0:
        return f"{start} Nothing had to be braked."
    finding = (
        f"{start} Of {number_text(braked)} kWh of braking at the wheels, the motor did "
        f"{percent_text(motor_kwh / braked)} and the friction brakes {percent_text(friction_kwh / braked)}"
    )
    by_limit = timeline.assign(kwh=timeline["friction_kw"] * timeline["step_s"]).groupby("limit")["kwh"].sum()
    why = because({LIMIT_WORDS[str(name)]: kwh for name, kwh in by_limit.items() if name})
    return f"{finding}, {why}." if why else f"{finding}."
