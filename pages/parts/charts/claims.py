"""Pictures of a tested claim: where the runs lie, and what decides."""

from __future__ import annotations

import math
import textwrap
from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from model.describe.figures import Several
from model.describe.trace import Array
from model.words.claim_numbers import number_words, shown, with_unit
from model.words.quantities import Display, inside
from pages.parts.charts.layers import by_px, layer, where, words
from pages.parts.charts.marks import Box, Words, drawn
from pages.parts.theme import LINE_PX, Spec, dressed, palette

MARK_PX, GAP_PX, TICKS_PX = 12, 8, 22
TEXT_CHARS = 54
"""Characters of a line that fit a telephone."""
MOST_TICKS = 6


def claimed_numbers(claimed: Sequence[float], unit: str, display: Display) -> str:
    """What was claimed: one number, or the two between which it lies."""
    low, high = (shown(end, unit, display) for end in (claimed[0], claimed[-1]))
    return with_unit(display.say("span", low=low, high=high) if len(claimed) > 1 else low, unit, display)


@dataclass(frozen=True)
class Axis:
    """A horizontal axis from `low` to `high` in some unit; `drawn` pictures begin at nothing, so places are shifted."""

    low: float
    high: float
    unit: str

    @classmethod
    def over(cls, values: Sequence[float], unit: str, zero: bool = False) -> Axis:
        """An axis with room for all these values; from zero where lengths are compared."""
        low, high = min(values), max(values)
        room = (high - low) * 0.03 or abs(high) * 0.25 or 1.0
        return cls(min(low, 0.0) if zero else low - room, high + room, unit)

    @property
    def length(self) -> float:
        """What lies between its ends."""
        return self.high - self.low

    def at(self, value: float) -> float:
        """The place of a value, held between the ends."""
        return min(max(value, self.low), self.high) - self.low

    def line(self, y: float) -> tuple[list[Box], list[Words]]:
        """The axis itself at `y` [px], with a few round numbers below it."""
        power = 10.0 ** math.floor(math.log10(self.length / MOST_TICKS))
        step = next(size * power for size in (1, 2, 5, 10) if self.length <= size * power * MOST_TICKS)
        first, last = (math.ceil(self.low / step), math.floor(self.high / step))
        # a number at the very edge would be cut
        ticks = [tick * step for tick in range(first, last + 1)
                 if 0.04 * self.length <= tick * step - self.low <= 0.94 * self.length]  # fmt: skip
        boxes = [Box(0, self.length, y, y + 1, "quiet")]
        boxes += [Box(self.at(tick), self.at(tick) + self.length * 0.002, y, y + 5, "quiet") for tick in ticks]
        return boxes, [
            Words(f"{shown(tick)} {self.unit}".rstrip(), self.at(tick), y + 15, "center", meaning="quiet")
            for tick in ticks
        ]

    def rule(self, value: float, y0: float, y1: float, meaning: str = "ink", width: float = 0.004) -> Box:
        """An upright line."""
        place = self.at(value)
        return Box(place - width / 2 * self.length, place + width / 2 * self.length, y0, y1, meaning)


@dataclass(frozen=True)
class BandRow:
    """One line of a picture: what it says, and a point, a span, or a span with a middle on the axis."""

    text: str
    low: float
    high: float
    mid: float | None = None
    meaning: str = "ink"
    bold: bool = False

    def in_units(self, unit: str, display: Display) -> BandRow:
        """The same in the reader's unit."""
        mid = None if self.mid is None else display.value(self.mid, unit)
        return replace(self, low=display.value(self.low, unit), high=display.value(self.high, unit), mid=mid)


def wrapped(text: str) -> list[str]:
    """The lines of a text, each no longer than fits a telephone."""
    return [line for part in text.split("\n") for line in textwrap.wrap(part, TEXT_CHARS)]


def _rows(
    rows: Sequence[BandRow], axis: Axis, y: float, claimed: Sequence[float]
) -> tuple[list[Box], list[Words], float]:
    """Rows under one another from `y` [px] on, each crossed by what was claimed; where they end."""
    boxes: list[Box] = []
    words: list[Words] = []
    for row in rows:
        lines = wrapped(row.text)
        words.append(Words("\n".join(lines), 0, y + LINE_PX / 2, "start", bold=row.bold))
        y += len(lines) * LINE_PX + 2
        middle = y + MARK_PX / 2
        if row.low == row.high:
            boxes.append(axis.rule(row.low, y, y + MARK_PX, row.meaning, 0.014))
        else:
            boxes.append(Box(axis.at(row.low), axis.at(row.high), middle - 3, middle + 3, row.meaning))
        if row.mid is not None:
            boxes.append(axis.rule(row.mid, y, y + MARK_PX, row.meaning, 0.01))
        boxes += [axis.rule(number, y - 2, y + MARK_PX + 2, "ink", 0.003) for number in claimed]
        y += MARK_PX + GAP_PX
    return boxes, words, y


# where the runs lie

PILE_PX = 110
STEPS = 44


def steps_of(values: Array, bounds: tuple[float, float]) -> tuple[Array, NDArray[np.intp], NDArray[np.bool_]]:
    """Runs counted in steps of equal width: the steps' edges, the runs in each, and whether the claim is true there.

    The ends of what was claimed are edges, so that no step is true in part.
    """
    ends = [bound for bound in bounds if math.isfinite(bound)]
    least, most = float(values.min()), float(values.max())
    if most - least < 1e-6 * max(abs(most), 1.0):
        edges = most + max(abs(most), 1.0) * 0.002 * np.array([-1, 1])
        return edges, np.array([len(values)]), np.array([bounds[0] <= most <= bounds[1]])
    step = (most - least) / STEPS
    between = ends[-1] - ends[0] if ends else 0.0
    # what is narrower than a tenth of a step would need too many of them
    if between > step / 10:
        step = between / max(1, round(between / step))
    # a number far beyond all runs needs no steps between
    anchor = next((end for end in ends if least - step <= end <= most + step), least)
    first, last = math.floor((least - anchor) / step) - 1, math.ceil((most - anchor) / step) + 1
    edges = np.asarray(anchor + step * np.arange(first, last + 1), dtype=float)
    # a run that meets the upper end exactly makes the claim true, so it belongs below it
    place = np.searchsorted(edges, values, side="right") - 1 - (values == bounds[1])
    counts = np.bincount(place, minlength=len(edges) - 1)
    middles = (edges[:-1] + edges[1:]) / 2
    return edges, counts, (middles >= bounds[0]) & (middles <= bounds[1])


def distribution(
    values: Array,
    bounds: tuple[float, float],
    rows: Sequence[BandRow],
    unit: str,
    keys: Sequence[str],
    display: Display,
    dark: bool = False,
) -> Spec:
    """All runs piled up over their number, those dark in which the claim is true, over rows on the same axis.

    `values` is the number in each run [unit], shape (runs,); `bounds` is between which it makes the claim true, where
    one may be infinite. `rows` are the model's band and what is published, below the pile; `keys` say what the dark and
    the pale part of the pile are, where it has two.
    """
    rows = [row.in_units(unit, display) for row in rows]
    values, bounds = display.value(values, unit), (display.value(bounds[0], unit), display.value(bounds[1], unit))
    unit = display.unit(unit)
    edges, counts, true = steps_of(values, bounds)
    claimed = [bound for bound in bounds if math.isfinite(bound)]
    reach = [float(values.min()), float(values.max())]
    widest = reach[1] - reach[0] or abs(reach[1]) or 1.0
    near = [number for number in claimed if reach[0] - 2 * widest <= number <= reach[1] + 2 * widest]
    axis = Axis.over([*reach, *near, *(end for row in rows for end in (row.low, row.high))], unit)
    tall = max(int(counts.max()), 1)
    top = len(keys) * LINE_PX + 28
    foot = top + PILE_PX
    boxes, words = [], []
    for place, (key, meaning) in enumerate(zip(keys, ("quiet", "wash"), strict=False)):
        y = place * LINE_PX + LINE_PX / 2
        boxes.append(Box(0, axis.length * 0.02, y - 5, y + 5, meaning))
        words.append(Words(key, axis.length * 0.02, y))
    for low, high, count, holds in zip(edges[:-1], edges[1:], counts, true, strict=True):
        if count:
            inset = (high - low) * 0.06
            y = foot - PILE_PX * count / tall
            ends = axis.at(low + inset), axis.at(high - inset)
            boxes.append(Box(*ends, y, foot, "quiet" if holds else "wash"))
            # the pale ones have an edge, which print and a dark ground keep
            boxes.append(Box(*ends, y, y + 1.5, "quiet"))
    for place, number in enumerate(claimed):
        boxes.append(axis.rule(number, top - 6, foot))
        if place == 0:
            late = axis.at(number) > axis.length * 0.6
            far = "" if number in near else (" \N{LEFTWARDS ARROW}" if number < axis.low else " \N{RIGHTWARDS ARROW}")
            text = f"{display.say('claim-runs-claimed', number=claimed_numbers(claimed, unit, display))}{far}"
            words.append(Words(text, axis.at(number), top - 14, "right" if late else "left", bold=True))
    boxes.append(Box(0, axis.length, foot, foot + 1, "quiet"))
    more, lines, y = _rows(rows, axis, foot + GAP_PX, claimed)
    foot_line, numbers = axis.line(y)
    return drawn([*boxes, *more, *foot_line], [*words, *lines, *numbers], int(y + TICKS_PX), axis.length, dark)


def bands(rows: Sequence[BandRow], claimed: Sequence[float], unit: str, dark: bool = False) -> Spec:
    """Bands under one another on one axis from zero, crossed by what was claimed."""
    claimed = [number for number in claimed if math.isfinite(number)]
    axis = Axis.over([*claimed, *(end for row in rows for end in (row.low, row.high))], unit, zero=True)
    boxes, words, y = _rows(rows, axis, 0, claimed)
    ends, numbers = axis.line(y)
    return drawn([*boxes, *ends], [*words, *numbers], int(y + TICKS_PX), axis.length, dark)


# what decides

CELL_PX, HEAD_PX, SIDE_PX, HEAD_FONT_PX = 42, 3 * LINE_PX, 150, 12


@dataclass(frozen=True)
class Grid:
    """By steps of two inputs the share of true runs [1], which shades, and the text of each field.

    Both as `[row][column]`; None and no text where there is no run.

    `down` and `across` name the inputs, with their units.
    """

    down: str
    across: str
    rows: Sequence[str]
    columns: Sequence[str]
    shares: Sequence[Sequence[float | None]]
    texts: Sequence[Sequence[str]]


def _headed(column: str, display: Display) -> list[str]:
    """The name of a narrow column in up to three lines; the two ends of a span stand under one another."""
    between = display.say("span", low="", high="")
    low, to, high = column.partition(between)
    if to:
        return [low, f"{between.strip()} {high}"]
    return textwrap.wrap(column, 8, break_long_words=False, break_on_hyphens=False)[:3]


def region(grid: Grid, display: Display, dark: bool = False) -> Spec:
    """Cells shaded the more strongly the more often the claim is true there, each with the middle of its runs."""
    colours = palette(dark)
    names = wrapped(display.say("claim-grid-inputs", down=grid.down, across=inside(grid.across)))
    head = HEAD_PX + len(names) * LINE_PX
    height = head + len(grid.rows) * CELL_PX
    cells: list[Spec] = []
    labels: list[Spec] = []
    for down, (row, shares, texts) in enumerate(zip(grid.rows, grid.shares, grid.texts, strict=True)):
        top = head + down * CELL_PX
        for line, text in enumerate(lines := textwrap.wrap(row, 17)[:2]):
            at = top + CELL_PX / 2 + (line - (len(lines) - 1) / 2) * LINE_PX
            labels.append({"x": 0.0, "y": at, "text": text, "side": True})
        for across, (share, text) in enumerate(zip(shares, texts, strict=True)):
            cells.append(
                {"x": float(across), "x2": across + 1.0, "y": top + 1.0, "y2": top + CELL_PX - 1.0,
                 "share": share, "text": text, "middle": across + 0.5,
                 "at": top + CELL_PX / 2}
            )  # fmt: skip
    for across, column in enumerate(grid.columns):
        lines = _headed(column, display)
        for line, text in enumerate(lines):
            at = head - 8 - (len(lines) - 1 - line) * LINE_PX
            labels.append({"x": across + 0.5, "y": at, "text": text, "side": False})
    labels += [{"x": 0.0, "y": 8.0 + line * LINE_PX, "text": text, "side": True} for line, text in enumerate(names)]
    side = {"expr": f"min({SIDE_PX}, width * 0.33)"}
    scale = {"domain": [0, len(grid.columns)], "range": [side, {"expr": "width"}], "nice": False, "zero": False}
    x: Spec = {"field": "x", "type": "quantitative", "scale": scale, "axis": None}
    y = by_px("y", height)
    # the strongest shade still lets the ink be read
    shade = {"domain": [0, 2.2 if dark else 1.35], "range": [colours.ground, colours.quiet]}
    cell = {"x": x, "x2": {"field": "x2"}, "y": y, "y2": {"field": "y2"}}
    colour = {"field": "share", "type": "quantitative", "scale": shade, "legend": None}
    layers = [
        layer("cells", "rect", cell | {"color": colour}, stroke=colours.quiet, strokeWidth=1),
        words("cells", x | {"field": "middle"}, y | {"field": "at"}, align="center", fontWeight=600),
        where("side", False) | words("words", x, y, align="center", color=colours.quiet, fontSize=HEAD_FONT_PX),
        where("side", True) | words("words", {"value": 0}, y, align="left"),
    ]
    return dressed(layers, {"cells": cells, "words": labels}, height, dark)


@dataclass(frozen=True)
class Swing:
    """How far one input moves the number: its name, the ends of the number, and what is set there."""

    name: str
    low: float
    high: float
    at_low: str
    at_high: str


def tornado(
    swings: Sequence[Swing], base: float, claimed: Sequence[float], unit: str, display: Display, dark: bool = False
) -> Spec:
    """Bars from the lowest to the highest number that one input alone gives, the widest first.

    They part at `base`, the number of the base case.
    """
    swings = [replace(swing, low=display.value(swing.low, unit), high=display.value(swing.high, unit))
              for swing in swings]  # fmt: skip
    base, claimed = display.value(base, unit), [display.value(number, unit) for number in claimed]
    unit = display.unit(unit)
    axis = Axis.over([base, *(end for swing in swings for end in (swing.low, swing.high))], unit)
    said = [number for number in claimed if math.isfinite(number)]
    claimed = [number for number in said if axis.low < number < axis.high]
    keys = [display.say("claim-tornado-base", number=number_words(base, unit, display))]
    if claimed:
        keys.append(display.say("claim-tornado-claimed", number=claimed_numbers(said, unit, display)))
    boxes, words, y = [], [], 0.0
    for key, meaning, wide in zip(keys, ("quiet", "ink"), (0.008, 0.004), strict=False):
        boxes.append(Box(0, wide * axis.length, y + 2, y + LINE_PX - 2, meaning))
        words.append(Words(key, 0.008 * axis.length, y + LINE_PX / 2))
        y += LINE_PX
    y += GAP_PX
    for swing in swings:
        words.append(Words(swing.name, 0, y + LINE_PX / 2, "start", bold=True))
        ends = ((swing.low, swing.at_low), (swing.high, swing.at_high))
        sentences = (display.say("claim-swing-end", number=number_words(end, unit, display), at=at) for end, at in ends)
        text = display.figure(Several(tuple(sentences), ";"))
        lines = wrapped(text)
        words.append(Words("\n".join(lines), 0, y + 1.5 * LINE_PX, "start", meaning="quiet"))
        y += (1 + len(lines)) * LINE_PX + 3
        boxes.append(Box(axis.at(swing.low), axis.at(swing.high), y, y + MARK_PX, "quiet"))
        boxes.append(axis.rule(base, y, y + MARK_PX, "ground", 0.008))
        boxes += [axis.rule(number, y - 2, y + MARK_PX + 2) for number in claimed]
        y += MARK_PX + GAP_PX
    foot_line, numbers = axis.line(y)
    return drawn([*boxes, *foot_line], [*words, *numbers], int(y + TICKS_PX), axis.length, dark)
