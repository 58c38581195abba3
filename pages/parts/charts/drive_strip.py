"""The recurring picture: the drive's speed above, the height of the road below, and what slowed the car where."""

from __future__ import annotations

from collections.abc import Sequence

import altair as alt
import numpy as np
import pandas as pd

from model.timeline import braked_kwh
from pages.parts.charts.limits import LIMIT_WORDS
from pages.parts.display import Display, number_text, percent_text
from pages.parts.theme import LABEL_PX, dressed, palette

MARKED_FROM_KW = 1.0
"""Braking weaker than this at the wheels is left unmarked: it would only speckle the line."""
FRICTION_FROM_SHARE = 0.3
"""Friction brakes are marked where they do at least this share of a step's braking [1]."""
FLAT_M = 20.0
"""A road whose height varies less than this is drawn as flat."""
ROW_PX, SPEED_PX, GAP_PX, HEIGHT_PX = 20, 68, 12, 20
MOTOR, FRICTION = "motor slows the car", "friction brakes"
KEY_PX = {MOTOR: 0, FRICTION: 158}
"""Where each entry of the key begins; both fit a telephone."""


def thinned(steps: pd.DataFrame, along: str, keep: Sequence[str], bins: int = 250) -> pd.DataFrame:
    """The rows that a line as fine as a screen shows needs: each bin's first and last, and its extremes of `keep`."""
    if len(steps) <= 2 * bins:
        return steps
    place = steps[along].to_numpy()
    bin_of = np.minimum((place - place[0]) / (place[-1] - place[0]) * bins, bins - 1).astype(int)
    grouped = steps.reset_index(drop=True).groupby(bin_of)
    rows = [grouped.head(1).index, grouped.tail(1).index]
    rows += [found for column in keep for found in (grouped[column].idxmin(), grouped[column].idxmax())]
    return steps.iloc[np.unique(np.concatenate(rows))]


def stretches(shown: pd.DataFrame, marked: pd.Series) -> pd.DataFrame:
    """The rows of each unbroken run of marked steps, from where it starts, numbered by `stretch`."""
    steps = marked.to_numpy()
    # a step is drawn from the end of the one before it
    points = steps | np.append(steps[1:], False)
    number = np.cumsum(np.diff(points.astype(int), prepend=0) == 1)
    rows = shown.assign(stretch=number)[points]
    # along a straight stretch two points say as much as twenty
    return pd.concat([thinned(piece, "place", ["speed"], bins=3) for _, piece in rows.groupby("stretch")] or [rows])


def drive_strip(
    timeline: pd.DataFrame,
    slow_downs: pd.DataFrame,
    display: Display,
    dark: bool = False,
    annotate: Sequence[tuple[float, float, str]] = (),
) -> alt.LayerChart:
    """Speed over distance, the road's height below, the speed line marked where motor or friction slow the car.

    Parameters
    ----------
    timeline, slow_downs : DataFrame
        From `model.timeline`.
    display : Display
        Metric or US units.
    dark : bool
        Whether the ground is dark.
    annotate : sequence of (start_km, end_km, words)
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
    top_px = 2 * ROW_PX if annotate else ROW_PX
    foot_px = top_px + SPEED_PX
    total_px = foot_px + GAP_PX + HEIGHT_PX

    x_scale = alt.Scale(domain=[0, float(shown["place"].iloc[-1])], nice=False)
    x_axis = alt.Axis(
        title=None,
        tickCount=alt.ExprRef("width / 120"),
        labelFlush=True,
        labelExpr=f"format(datum.value, '~g') + ' {display.unit('km')}'"
    )
    x = alt.X("place:Q", scale=x_scale, axis=x_axis, sort=None)
    # steps of 20, so that the axis stands still while a slider moves
    fastest = 20 * max(1, int(np.ceil(shown["speed"].max() / 20)))
    speed = _y("speed", [0, fastest], [foot_px, top_px], {fastest: f"{fastest} {display.unit('km/h')}"})
    lowest, highest = float(shown["height"].min()), float(shown["height"].max())
    if highest - lowest < display.value(FLAT_M, "m"):
        highest, height_words = lowest + 10 * display.value(FLAT_M, "m"), {lowest: "flat"}
    else:
        height_words = {h: f"{number_text(h)} {display.unit('m')}" for h in (lowest, highest)}
    height = _y("height", [lowest, highest], [total_px, foot_px + GAP_PX], height_words)

    line = alt.Chart(thinned(shown, "place", ["speed", "height"])).encode(x=x)
    edge = {"strokeWidth": 1, "strokeJoin": "round", "strokeMiterLimit": 1}
    motor, friction = timeline["motor_slowing_kw"], timeline["friction_kw"]
    marked = {
        MOTOR: motor >= MARKED_FROM_KW,
        FRICTION: (friction >= MARKED_FROM_KW) & (friction >= FRICTION_FROM_SHARE * (motor + friction)),
    }
    pieces = pd.concat(stretches(shown, steps).assign(what=what) for what, steps in marked.items())
    look = {
        "color": _by_what([colours.back, colours.friction]),
        "strokeDash": _by_what([[1, 0], [3, 2]]),
        "strokeWidth": _by_what([3, 4]),
    }
    marks = alt.Chart(pieces[["place", "speed", "stretch", "what"]]).mark_line(strokeJoin="round", strokeMiterLimit=1)
    layers = [
        line.mark_area(color=colours.wash, line=edge | {"color": colours.quiet}).encode(y=speed),
        marks.encode(x=x, y=speed, detail="stretch:N", **look),
        line.mark_area(color=colours.road, line=edge | {"color": colours.road}).encode(
            y=height.stack(None), y2=alt.value(total_px)
        ),
        _slow_down_notes(slow_downs, display, x_scale),
        *_key(look, colours.ink),
        *(_bracket(*note, display, x_scale, colours.ink) for note in annotate),
    ]
    return dressed(alt.layer(*layers).resolve_scale(y="independent"), dark, total_px)


def _y(field: str, domain: list[float], pixels: list[float], words: dict[float, str]) -> alt.Y:
    """One of the two vertical axes: each has its own part of the picture's height."""
    label = " : ".join(f"abs(datum.value - {value}) < 1e-6 ? '{text}'" for value, text in words.items()) + " : ''"
    axis = alt.Axis(title=None, orient="left", values=list(words), labelExpr=label, domain=False, ticks=False)
    return alt.Y(f"{field}:Q", scale=alt.Scale(domain=domain, range=pixels, nice=False), axis=axis)


def _by_what(looks: list) -> dict:
    return {"field": "what", "type": "nominal", "legend": None, "scale": {"domain": [MOTOR, FRICTION], "range": looks}}


def _key(look: dict, ink: str) -> list[alt.Chart]:
    """What the two marks mean, in words beside a sample of each."""
    marks = []
    for what, start_px in KEY_PX.items():
        sample = alt.Chart(pd.DataFrame({"what": [what]}))
        marks += [
            sample.mark_rule().encode(x=alt.value(start_px), x2=alt.value(start_px + 18), y=alt.value(7), **look),
            sample.mark_text(align="left", baseline="middle", color=ink, fontSize=LABEL_PX).encode(
                x=alt.value(start_px + 23), y=alt.value(7), text="what:N"
            ),
        ]
    return marks


def _slow_down_notes(slow_downs: pd.DataFrame, display: Display, x_scale: alt.Scale) -> alt.Chart:
    """What a pointer finds over a slow-down; everything that has to be seen is drawn."""
    unit = display.unit("km/h")
    from_to = display.value(slow_downs[["from_kmh", "to_kmh"]], "km/h").round().astype(int)
    notes = display.value(slow_downs[["start_km", "end_km"]], "km").assign(
        speed=[f"{start} to {end} {unit}" for start, end in from_to.itertuples(index=False)],
        motor=[f"{number_text(wh)} Wh" for wh in slow_downs["motor_wh"]],
        friction=[f"{number_text(wh)} Wh" for wh in slow_downs["friction_wh"]],
    )
    return (
        alt.Chart(notes)
        .mark_rect(opacity=0)
        .encode(
            x=alt.X("start_km:Q", scale=x_scale),
            x2="end_km:Q",
            tooltip=[
                alt.Tooltip("speed:N", title="slow-down"),
                alt.Tooltip("motor:N", title="to the motor"),
                alt.Tooltip("friction:N", title="to friction"),
            ],
        )
    )


def _bracket(
    start_km: float, end_km: float, words: str, display: Display, x_scale: alt.Scale, ink: str
) -> alt.LayerChart:
    ends = display.value(np.array([start_km, end_km]), "km")
    note = alt.Chart(pd.DataFrame({"place": [ends[0]], "end": [ends[1]], "words": [words]}))
    x = alt.X("place:Q", scale=x_scale)
    late = ends[0] > sum(x_scale.domain) / 2
    return alt.layer(
        note.mark_rule(color=ink, strokeWidth=2).encode(x=x, x2="end:Q", y=alt.value(2 * ROW_PX - 3)),
        note.mark_text(align="right" if late else "left", baseline="middle", color=ink).encode(
            x=alt.X("end:Q", scale=x_scale) if late else x, y=alt.value(2 * ROW_PX - 13), text="words:N"
        ),
    )


def strip_finding(timeline: pd.DataFrame, slow_downs: pd.DataFrame, display: Display) -> str:
    """What the strip shows, in words with its numbers."""
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
    if friction_kwh <= 0 or not by_limit.idxmax():
        return f"{finding}."
    return f"{finding}, mostly because {LIMIT_WORDS[by_limit.idxmax()]}."
