"""The recurring picture: the drive's speed above, the height of the road below, and what slowed the car where."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from model.describe.figures import Quantity, Several, Share
from model.kernel.timeline import braked_kwh
from model.words.quantities import Display, Value
from pages.parts.charts.layers import along, between, by_name, layer, next_step, thinned, upright, where, words
from pages.parts.charts.limits import because
from pages.parts.theme import Rows, Spec, area, dressed, palette

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
MOTOR, FRICTION = "motor", "friction"
KEY_STARTS_PX = {MOTOR: 0, FRICTION: 176}
"""Where the words of the key begin; both fit a telephone."""
MOST_NAMED, LATE_SHARE = 4, 0.8
"""Where the car charges on the way is named at each stop, up to so many of them; from this share of the way on the name
stands before its stop, since a telephone has no room behind it [1]."""


def drive_strip(
    timeline: pd.DataFrame,
    slow_downs: pd.DataFrame,
    display: Display,
    dark: bool = False,
    annotate: Sequence[Note] = (),
) -> Spec:
    """Speed over distance, the road's height below, the speed line marked where motor or friction slow the car.

    The tables are from `model.kernel.timeline`; `annotate` has stretches to bracket above the speed.
    """
    colours = palette(dark)
    # columns, not a data frame: every page draws the strip anew with every change
    columns = ("place", "distance_km", "km"), ("speed", "speed_kmh", "km/h"), ("height", "elevation_m", "m")
    shown = {name: np.round(display.value(timeline[held].to_numpy(), unit), 4) for name, held, unit in columns}
    motor, friction = timeline["motor_slowing_kw"].to_numpy(), timeline["friction_kw"].to_numpy()
    by_friction = (friction >= MARKED_FROM_KW) & (friction >= FRICTION_FROM_SHARE * (motor + friction))
    stretches = {MOTOR: stretches_of(motor >= MARKED_FROM_KW), FRICTION: stretches_of(by_friction)}
    top_px = 2 * ROW_PX if annotate else ROW_PX
    foot_px = top_px + SPEED_PX
    total_px = foot_px + GAP_PX + HEIGHT_PX
    distance = float(shown["place"][-1])
    x = along("place", distance, display.unit("km"))
    fastest = next_step(shown["speed"].max(), 20)
    fastest_words = display.figure(Quantity(fastest, display.unit("km/h"), places=0))
    speed = upright("speed", [0, fastest], [foot_px, top_px], {fastest: fastest_words})
    lowest, highest = float(shown["height"].min()), float(shown["height"].max())
    if highest - lowest < display.value(FLAT_M, "m"):
        highest, ends = lowest + 10 * display.value(FLAT_M, "m"), {lowest: display.say("strip-flat")}
    else:
        ends = {end: display.figure(Quantity(end, display.unit("m"))) for end in (lowest, highest)}
    px = {"speed": fastest / SPEED_PX, "height": (highest - lowest) / HEIGHT_PX}
    kept = np.union1d(
        thinned(shown, "place", px), np.concatenate([ends_of(number) for number in stretches.values()])
    )
    marked = {what: kept[number[kept] > 0] for what, number in stretches.items()}
    rows = np.concatenate([*marked.values()])
    height = upright("height", [lowest, highest], [total_px, foot_px + GAP_PX], ends)

    look = {
        "color": by_name("what", {MOTOR: colours.back, FRICTION: colours.friction}),
        "strokeDash": by_name("what", {MOTOR: [1, 0], FRICTION: [3, 2]}),
        "strokeWidth": by_name("what", {MOTOR: 3, FRICTION: 4}),
    }
    found = pointed_at(slow_downs, display)
    pointed = {"tooltip": [{"field": name} for name in [*found][2:]]}
    start, end, road = x | {"field": "start"}, {"field": "end"}, {"y2": {"value": total_px}}
    layers = [
        layer("drive", "area", {"x": x, "y": speed}, **area(colours.wash, colours.quiet)),
        layer("slowing", "line", {"x": x, "y": speed, "detail": {"field": "stretch"}} | look),
        layer("drive", "area", {"x": x, "y": height} | road, **area(colours.road, colours.road)),
        layer("slow_downs", "rect", {"x": start, "x2": end} | pointed, opacity=0),
        *_key(look),
    ]
    slowing = {
        "place": shown["place"][rows],
        "speed": shown["speed"][rows],
        "stretch": np.concatenate([stretches[what][places] for what, places in marked.items()]),
        "what": np.repeat([*marked], [len(places) for places in marked.values()]).astype(object),
    }
    key = {
        "what": [*KEY_STARTS_PX],
        "start": [*KEY_STARTS_PX.values()],
        "words": [display.say("strip-motor"), display.say("strip-friction")],
    }
    datasets: dict[str, Rows] = {
        "drive": {name: values[kept] for name, values in shown.items()},
        "slowing": slowing,
        "slow_downs": found,
        "key": key,
    }
    charging = charged_at(timeline, display)
    if len(charging["start"]):
        layers += _charging(x, foot_px, top_px, colours.ink)
        datasets["charging"] = charging
    if annotate:
        notes = [dict(zip(("start", "end", "words", "short"), (*note, note[2]), strict=False)) for note in annotate]
        for note in notes:
            note |= {end: display.value(note[end], "km") for end in ("start", "end")}
            # a note's words run towards the middle of the picture, where there is room
            note["late"] = note["start"] > distance / 2
        layers += _brackets(x, distance, colours.ink)
        datasets["notes"] = notes
    return dressed(layers, datasets, total_px, dark)


def stretches_of(marked: NDArray[np.bool_]) -> NDArray[np.int64]:
    """The number, from 1, of the unbroken run of marked steps that each row belongs to; 0 where it belongs to none.

    A row is the end of a step, so a run also has the row before its first step.
    """
    rows = marked | np.append(marked[1:], False)
    return np.cumsum(np.diff(rows.astype(int), prepend=0) == 1) * rows


def ends_of(stretches: NDArray[np.int64]) -> NDArray[np.intp]:
    """First and last rows of the stretches, and the rows beside them."""
    edges = np.diff(stretches, prepend=0, append=0)
    return np.flatnonzero((edges[:-1] != 0) | (edges[1:] != 0)).clip(0, len(stretches) - 1)


def _key(look: Spec) -> list[Spec]:
    """What the two marks mean, in words beside a sample of each."""
    start, y = {"field": "start", "type": "quantitative", "scale": None}, {"value": 7}
    return [
        layer("key", "rule", {"x": start, "x2": {"field": "start"}, "y": y} | look, xOffset=0, x2Offset=18),
        words("key", start, y, "words", xOffset=23),
    ]


def charged_at(timeline: pd.DataFrame, display: Display) -> Spec:
    """Where the car charges on the way, and the words there; many stand so close that only the first has words."""
    distance_km = timeline["distance_km"].to_numpy()
    stops = distance_km[timeline["charged_to"].notna().to_numpy()]
    named = display.say("strip-charges")
    words = [named if place == 0 or len(stops) <= MOST_NAMED else "" for place in range(len(stops))]
    late = stops > LATE_SHARE * distance_km[-1]
    return {"start": display.value(stops, "km"), "words": words, "late": late}


def _charging(x: Spec, foot_px: float, top_px: float, ink: str) -> list[Spec]:
    place, at = x | {"field": "start"}, {"value": foot_px - 8}
    return [
        layer("charging", "rule", {"x": place} | between(top_px, foot_px), color=ink, strokeWidth=2, strokeDash=[2, 2]),
        where("late", False) | words("charging", place, at, "words", align="left", xOffset=4),
        where("late", True) | words("charging", place, at, "words", align="right", xOffset=-4),
    ]


def _brackets(x: Spec, distance: float, ink: str) -> list[Spec]:
    start, end, y = x | {"field": "start"}, {"field": "end"}, {"value": 2 * ROW_PX - 13}
    # where not even the short words have room, the bracket stands alone: it has its words in the finding
    room = f"(datum.end - datum.start) / {distance} * width > {LETTER_PX} * length"
    said = [{"test": f"{room}(datum.{field})", "value": {"expr": f"datum.{field}"}} for field in ("words", "short")]
    text = {"condition": said, "value": ""}
    bracket = {"x": start, "x2": end, "y": {"value": 2 * ROW_PX - 3}}
    return [
        layer("notes", "rule", bracket, strokeWidth=2, color=ink, xOffset=1, x2Offset=-2),
        where("late", False) | layer("notes", "text", {"x": start, "y": y, "text": text}, align="left"),
        where("late", True) | layer("notes", "text", {"x": x | end, "y": y, "text": text}, align="right"),
    ]


def pointed_at(slow_downs: pd.DataFrame, display: Display) -> Spec:
    """What a pointer finds over a slow-down; everything that has to be seen is drawn."""
    unit = display.unit("km/h")
    first, last = (
        np.round(display.value(slow_downs[end].to_numpy(), "km/h")).astype(int).tolist()
        for end in ("from_kmh", "to_kmh")
    )

    def wh(energies: pd.Series) -> list[str]:
        return [display.figure(Quantity(energy, "Wh")) for energy in energies.tolist()]

    return {
        "start": display.value(slow_downs["start_km"].to_numpy(), "km"),
        "end": display.value(slow_downs["end_km"].to_numpy(), "km"),
        display.say("strip-slow-down"): [
            display.say("with-unit", number=display.say("span", low=str(a), high=str(b)), unit=unit)
            for a, b in zip(first, last, strict=True)
        ],
        display.say("strip-to-motor"): wh(slow_downs["motor_wh"]),
        display.say("strip-to-friction"): wh(slow_downs["friction_wh"]),
    }


def strip_finding(
    timeline: pd.DataFrame,
    slow_downs: pd.DataFrame,
    display: Display,
    annotate: Sequence[Note] = (),
) -> str:
    """What the strip shows, in words with its numbers; `annotate` as for `drive_strip`."""
    sentences = _finding(timeline, slow_downs, display)
    charged = timeline["distance_km"].to_numpy()[timeline["charged_to"].notna().to_numpy()]
    if len(charged):
        places = Several(tuple(Quantity(float(place), "km", places=0) for place in charged))
        sentences.append(display.say("strip-charged", places=places))
    if annotate:
        notes = [
            display.say("strip-note", start=Quantity(start, "km"), end=Quantity(end, "km"), note=words)
            for start, end, words, *_ in annotate
        ]
        sentences.append(display.say("strip-marked", notes=Several(tuple(notes), ";")))
    return " ".join(sentences)


def _finding(timeline: pd.DataFrame, slow_downs: pd.DataFrame, display: Display) -> list[str]:
    motor_kwh, friction_kwh = braked_kwh(timeline)
    braked = motor_kwh + friction_kwh
    rise = timeline["elevation_m"].max() - timeline["elevation_m"].min()
    road = display.say(
        "strip-road",
        distance=Quantity(timeline["distance_km"].iloc[-1], "km", 3),
        fastest=Quantity(timeline["speed_kmh"].max(), "km/h"),
        slow_downs=len(slow_downs),
        rise=Quantity(rise, "m"),
        flat=bool(rise < FLAT_M),
    )
    if braked <= 0:
        return [road, display.say("strip-nothing-braked")]
    found: dict[str, Value] = {
        "braked": Quantity(braked, "kWh"),
        "motor": Share(motor_kwh / braked),
        "friction": Share(friction_kwh / braked),
    }
    places, names = pd.factorize(timeline["limit"])
    by_limit = np.bincount(places, weights=(timeline["friction_kw"] * timeline["step_s"]).to_numpy())
    why = because({str(name): float(kws) for name, kws in zip(names, by_limit, strict=True) if name}, display)
    braking = display.say("strip-braked-because", why=why, **found) if why else display.say("strip-braked", **found)
    return [road, braking]
