"""Where the energy goes: before and after, the books as a picture, what slowed the car, and the drive over time."""

from __future__ import annotations

import textwrap
from collections.abc import Iterable
from functools import partial

import numpy as np
import pandas as pd

from model.describe.figures import Quantity, Several, Share
from model.words.quantities import Display
from pages.parts.charts.layers import along, apart, caption, layer, next_step, still, thinned, upright
from pages.parts.charts.limits import limit_text
from pages.parts.charts.marks import Box, Words, drawn
from pages.parts.theme import LINE_PX, Spec, area, dressed, palette

USES = ("cabin", "pack_heater", "accessories", "losses_driving", "air", "rolling", "climb", "kinetic",
        "friction_brakes", "engine_drag", "losses_slowing")  # fmt: skip
"""In the order of the picture, from the battery to the wheels and back."""
GROUPS = {
    "road": ("air", "rolling", "climb", "kinetic"),
    "aboard": ("cabin", "pack_heater", "accessories"),
    "losses": ("losses_driving", "engine_drag", "losses_slowing"),
    "friction": ("friction_brakes",),
}
"""What the before-and-after bars put together, from the bottom up; the keys are colours of the palette."""
DOWNHILL = "downhill"
"""The name of the first group where the hill gives more than air and tyres take."""
MEANING = {entry: meaning for meaning, entries in GROUPS.items() for entry in entries} | {
    "from_hill": "road", "from_motion": "road", "engine_given": "quiet", "battery_out": "ink", "battery_in": "back",
}  # fmt: skip
NEGLIGIBLE_SHARE = 5e-4
"""An entry smaller than this share of the whole is left out of the picture; the table has it."""


# numbers that add up as printed


def places_for(total: float) -> int:
    """Decimals that give a total three significant digits, and at least two."""
    return max(2, 2 - int(np.floor(np.log10(max(abs(total), 1e-3)))))


def rounded_to_add_up(values: Iterable[float], places: int, total: float | None = None) -> list[float]:
    """Values rounded so that they add up to their rounded sum, or to `total`.

    All are rounded down, then those nearest to the next step are rounded up.
    """
    steps = np.array([*values], dtype=float) * 10**places
    whole = np.floor(steps)
    missing = round((steps.sum() if total is None else total * 10**places) - whole.sum())
    whole[np.argsort(whole - steps, kind="stable")[: max(missing, 0)]] += 1
    return [float(value) for value in whole / 10**places]


def kwh_figure(value: float, places: int, display: Display) -> str:
    """A rounded amount of energy; one that was rounded to nothing is said to be small."""
    if value:
        return display.figure(Quantity(value, "kWh", places=places))
    return display.say("energy-under", least=Quantity(10**-places, "kWh", 6, trimmed=True))


# before and after

COLUMN_PX, FOOT_PX = 250, 62
FRICTION_ONLY, REGENERATED, NAMES = (0.13, 0.34), (0.41, 0.62), 0.645
"""Where the two columns and the names stand, as shares of the picture's width."""


def before_after(books: pd.DataFrame, display: Display, dark: bool = False) -> Spec:
    """Net battery energy on friction brakes only and with regeneration, by where it went; one scale from zero.

    `books` is from `model.kernel.timeline.books`.
    """
    runs = {"friction_only": FRICTION_ONLY, "regenerated": REGENERATED}
    groups = grouped(books)
    uses = {run: [*map(float, groups[run])] for run in runs}
    places = places_for(max(abs(sum(kwh)) for kwh in uses.values()))
    stacks = {run: stacked(values) for run, values in uses.items()}
    saved = sum(uses["friction_only"]) - sum(uses["regenerated"])
    top = {run: max(high for _, high in stack) for run, stack in stacks.items()}
    highest = max(top["friction_only"], top["regenerated"] + max(saved, 0.0))
    lowest = min(low for stack in stacks.values() for low, _ in stack)

    def px(kwh: float) -> float:
        return COLUMN_PX * (highest - kwh) / (highest - lowest)

    def figure(kwh: float, unit: str = "kWh") -> str:
        return display.figure(Quantity(kwh, unit, places=places))

    boxes, words = [], []
    for run, (start, end) in runs.items():
        for meaning, (low, high) in zip(GROUPS, stacks[run], strict=True):
            # a hairline of ground parts neighbours, also in print without colour
            boxes.append(Box(start, end, px(high) + 0.5, max(px(low) - 0.5, px(high) + 0.5), meaning))
    boxes.append(Box(0, REGENERATED[1], px(0) - 0.5, px(0) + 0.5, "ink"))

    figures = [px(sum(ends) / 2) for ends in stacks["friction_only"]]
    for y, value in zip(apart(figures, [LINE_PX] * len(figures), 0, COLUMN_PX), uses["friction_only"], strict=True):
        words.append(Words(figure(value, ""), FRICTION_ONLY[0], y, "right"))
    names = []
    for meaning, ends, value in zip(GROUPS, stacks["regenerated"], uses["regenerated"], strict=True):
        name = display.say("energy-group", group=meaning if value >= 0 else DOWNHILL)
        names.append((px(sum(ends) / 2), f"{name}\n{figure(value)}", meaning))
    if saved > 0:
        low = px(top["regenerated"] + saved)
        boxes.append(Box(*REGENERATED, low + 1, max(px(top["regenerated"]) - 1, low + 1), "back", hollow=True))
        names.append((low + 8, f"{display.say('energy-saved-bar')}\n{figure(saved)}", "back"))
    wanted = apart([y for y, _, _ in names], [2 * LINE_PX + 4] * len(names), 0, COLUMN_PX)
    for y, (_, text, meaning) in zip(wanted, names, strict=True):
        words.append(Words(text, NAMES, y - LINE_PX / 2, meaning="back" if meaning == "back" else "ink"))
    headings = {"friction_only": display.say("bar-friction-only"), "regenerated": display.say("bar-regenerated")}
    for run, heading in headings.items():
        middle = sum(runs[run]) / 2
        words.append(Words(heading, middle, COLUMN_PX + 14, "center"))
        words.append(Words(figure(sum(uses[run])), middle, COLUMN_PX + 14 + 2 * LINE_PX, "center", bold=True))
    return drawn(boxes, words, COLUMN_PX + FOOT_PX, 1.0, dark, 520)


def grouped(books: pd.DataFrame) -> pd.DataFrame:
    """Net energy of both runs by the groups of the before-and-after bars [kWh], from the bottom up."""
    kwh, place = books.to_numpy(), {entry: row for row, entry in enumerate(books.index)}
    sums = [kwh[[place[entry] for entry in entries]].sum(axis=0) for entries in GROUPS.values()]
    return pd.DataFrame(sums, index=list(GROUPS), columns=books.columns)


def stacked(values: Iterable[float]) -> list[tuple[float, float]]:
    """Low and high end of each value: those above zero pile up from it, those below hang from it."""
    up = down = 0.0
    ends = []
    for value in values:
        ends.append((up, up + value) if value >= 0 else (down + value, down))
        up, down = max(up, ends[-1][1]), min(down, ends[-1][0])
    return ends


# the books as a picture

ROW_PX, BAR_PX = 40, 13


def ledger_rows(book: pd.Series) -> pd.DataFrame:
    """What came in and where it went, in the order of the picture; its parts add up to what came in.

    `book` is one column of `model.kernel.timeline.books`. Columns: `entry`, `kwh`, `start`, `end` along the bar [kWh],
    `share` of all that came in [1], and `comes_in`. Height or speed that the drive ends without counts as in; without
    it the shares are of what left the battery.
    """
    given = {"from_hill": -min(book["climb"], 0.0), "from_motion": -min(book["kinetic"], 0.0)}
    came_in = {"battery_out": book["battery_out"], "engine_given": book["engine_given"]} | given
    went = {entry: max(book[entry], 0.0) for entry in USES} | {"battery_in": book["battery_in"]}
    rows = []
    for comes_in, entries in ((True, came_in), (False, went)):
        end = 0.0
        for entry, kwh in entries.items():
            rows.append((entry, kwh, end, end := end + kwh, comes_in))
    frame = pd.DataFrame(rows, columns=["entry", "kwh", "start", "end", "comes_in"])
    frame["share"] = frame["kwh"] / frame["end"].max()
    always = frame["entry"].isin(["battery_out", "battery_in"])
    return frame[always | (frame["share"] > NEGLIGIBLE_SHARE)].reset_index(drop=True)


def ledger(book: pd.Series, display: Display, dark: bool = False) -> Spec:
    """The books as bars that join end to end: what the battery gave, each use of it, and what came back."""
    rows = ledger_rows(book)
    whole = float(rows["end"].max())
    comes_in = rows["comes_in"]
    places = places_for(whole)
    given = rounded_to_add_up(rows.loc[comes_in, "kwh"], places)
    printed = given + rounded_to_add_up(rows.loc[~comes_in, "kwh"], places, sum(given))
    boxes, words = [], []
    for index, row in enumerate(rows.to_dict("records")):
        y = index * ROW_PX
        entry = row["entry"]
        heading = entry in ("battery_out", "battery_in")
        text = display.say(
            "book-line",
            name=display.say("book-entry", entry=entry),
            energy=kwh_figure(printed[index], places, display),
            share=Share(row["share"]),
        )
        words.append(Words(text, 0, y + 10, "start", heading, "back" if entry == "battery_in" else "ink"))
        boxes.append(Box(0, whole, y + 20, y + 20 + BAR_PX, "wash"))
        boxes.append(Box(row["start"], row["end"], y + 20, y + 20 + BAR_PX, MEANING[row["entry"]]))
    return drawn(boxes, words, len(rows) * ROW_PX, still(whole), dark)


# what slowed the car

TOO_SHORT_A_BAR = 1e-3
"""What took no more than this share of the braking is not drawn [1]."""

def braking_rows(motor_kwh: float, limits_kwh: dict[str, float]) -> pd.DataFrame:
    """Braking energy at the wheels [kWh] by what took it: the motor, then friction by its reason, the largest first.

    Columns: `limit` (empty for the motor), `kwh`, `share` [1], `meaning`.
    """
    friction = sorted(((kwh, limit) for limit, kwh in limits_kwh.items() if kwh > 0), reverse=True)
    rows = [("", motor_kwh, "back"), *((limit, kwh, "friction") for kwh, limit in friction)]
    frame = pd.DataFrame(rows, columns=["limit", "kwh", "meaning"])
    frame["share"] = frame["kwh"] / frame["kwh"].sum()
    return frame[frame["share"] > TOO_SHORT_A_BAR].reset_index(drop=True)


WRAPPED_AT = 46
"""Characters that fit across a telephone."""


def slowed_by(rows: pd.DataFrame, display: Display, dark: bool = False) -> Spec:
    """Bars of braking energy by what took it and why; one scale from zero. `rows` is from `braking_rows`."""
    most = float(rows["kwh"].max())
    places = places_for(rows["kwh"].sum())
    printed = rounded_to_add_up(rows["kwh"], places)
    boxes, words = [], []
    y = 0
    for index, row in enumerate(rows.to_dict("records")):
        reason = textwrap.wrap(_slowed_by(row["limit"], display), WRAPPED_AT)
        words.append(Words("\n".join(reason), 0, y + 10, "start"))
        y += len(reason) * LINE_PX + 3
        boxes.append(Box(0, row["kwh"], y, y + 18, row["meaning"]))
        both = kwh_figure(printed[index], places, display), display.figure(Share(row["share"]))
        figures = display.figure(Several(both, ""))
        inside = row["kwh"] > most / 2
        align, meaning = ("right", "ground") if inside else ("left", "ink")
        words.append(Words(figures, row["kwh"], y + 9.5, align, meaning=meaning))
        y += 18 + 12
    return drawn(boxes, words, y, still(most), dark)


def _slowed_by(limit: str, display: Display) -> str:
    if not limit:
        return display.say("slowed-by-motor")
    return display.say("slowed-by-friction", why=limit_text(limit, display))


# the drive over time

SPEED_PX, POWER_PX, CHARGE_PX, BETWEEN_PX = 70, 120, 56, 40


def over_time(timeline: pd.DataFrame, display: Display, dark: bool = False) -> Spec:
    """Speed, power at the battery and charge over the minutes of the drive, one under the other."""
    colours = palette(dark)
    frame = pd.DataFrame(
        {
            "minute": (timeline["time_s"] / 60).round(4),
            "speed": display.value(timeline["speed_kmh"], "km/h").round(1),
            "out": timeline["battery_kw"].clip(lower=0).round(2),
            "back": timeline["battery_kw"].clip(upper=0).round(2),
            "charge": (100 * timeline["soc"]).round(2),
        }
    )
    power_px = LINE_PX + SPEED_PX + BETWEEN_PX
    charge_px = power_px + POWER_PX + BETWEEN_PX
    height = charge_px + CHARGE_PX
    fastest = next_step(frame["speed"].max(), 20)
    gives, takes = next_step(frame["out"].max(), 20), -next_step(-frame["back"].min(), 20)
    fullest = min(100.0, next_step(frame["charge"].max(), 10))
    emptiest = 10 * float(np.floor((frame["charge"].min() - 0.1) / 10))
    a_kw = (gives - takes) / POWER_PX
    px = {"speed": fastest / SPEED_PX, "out": a_kw, "back": a_kw, "charge": (fullest - emptiest) / CHARGE_PX}
    frame = frame.iloc[thinned(frame, "minute", px)]

    def whole(value: float, unit: str) -> str:
        return display.figure(Quantity(value, unit, places=0))

    speed_words = {fastest: whole(fastest, display.unit("km/h"))}
    power = [takes, gives], [power_px + POWER_PX, power_px]
    power_words = {gives: whole(gives, "kW"), 0: "0", takes: whole(takes, "kW")}
    charge_words = {fullest: whole(fullest, "%"), emptiest: whole(emptiest, "%")}
    ups = {
        "speed": upright("speed", [0, fastest], [LINE_PX + SPEED_PX, LINE_PX], speed_words),
        "out": upright("out", *power, power_words),
        "back": upright("back", *power, {}),
        "charge": upright("charge", [emptiest, fullest], [height, charge_px], charge_words),
    }
    x = along("minute", float(frame["minute"].iloc[-1]), "min")
    drive = partial(layer, "drive")
    layers = [
        drive("area", {"x": x, "y": ups["speed"]}, **area(colours.wash, colours.quiet)),
        drive("area", {"x": x, "y": ups["out"]}, **area(colours.road, colours.road)),
        drive("area", {"x": x, "y": ups["back"]}, **area(colours.back, colours.back)),
        drive("line", {"x": x, "y": ups["charge"]}, color=colours.ink, strokeWidth=2),
        caption(display.say("over-time-speed"), 4, 7, color=colours.ink),
        caption(display.say("over-time-out"), 4, power_px - 12, color=colours.ink),
        caption(display.say("over-time-back"), 4, power_px + POWER_PX + 10, color=colours.back),
        caption(display.say("over-time-charge"), 4, charge_px - 11, color=colours.ink),
    ]
    return dressed(layers, {"drive": frame}, height, dark)
