"""The one dialect of all pictures: layers, axes and words as plain Vega-Lite, from small functions.

A picture is a list of layers handed to `pages.parts.theme.dressed` with its tables. A layer says which rows it draws,
with which mark, where and how; an axis is what a field means along the picture or up it.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import asdict, dataclass

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from model.describe.trace import Array
from model.words.quantities import Display
from pages.parts.theme import LINE_PX, Palette, Spec


def along(field: str, end: float, unit: str, label_px: int = 110) -> Spec:
    """The horizontal axis from 0 to `end`, its unit with every number, about one number each `label_px`."""
    return {
        "field": field,
        "type": "quantitative",
        # rows stay in driving order, also where the car stands still
        "sort": None,
        "scale": {"domain": [0, end], "nice": False},
        "axis": {
            "tickCount": {"expr": f"width / {label_px}"},
            "labelFlush": True,
            "labelOverlap": "greedy",
            "labelSeparation": 4,
            "labelExpr": f"format(datum.value, datum.value < 1000 ? '~g' : ',.0f') + ' {unit}'",
        },
    }


def along_held(field: str, end: float, unit: str, label_px: int, display: Display) -> Spec:
    """The same for rows that hold `unit`: the axis alone is in the reader's units."""
    axis = along(field, end, display.unit(unit), label_px)
    if (factor := display.value(1.0, unit)) != 1:
        axis["axis"]["labelExpr"] = f"format(datum.value * {factor:.6g}, '.2~f') + ' {display.unit(unit)}'"
    return axis


def upright(field: str, domain: Sequence[float], pixels: Sequence[float], words: Mapping[float, str]) -> Spec:
    """A vertical axis with its own part of the picture's height, and words at chosen values.

    Pictures of several panels are one picture whose axes share the height: so they share the width too, whatever it is.
    """
    axis = {"orient": "left", "values": list(words), "labelExpr": labelled(words), "domain": False, "ticks": False}
    return {
        "field": field,
        "type": "quantitative",
        "stack": None,
        "scale": {"domain": list(domain), "range": list(pixels), "nice": False},
        "axis": axis if words else None,
    }


def labelled(words: Mapping[float, str]) -> str:
    """What an axis says at chosen values; nothing elsewhere."""
    label = " : ".join(f"abs(datum.value - {value}) < 1e-6 ? '{text}'" for value, text in words.items())
    return f"{label} : ''"


def next_step(value: float, step: float) -> float:
    """The least positive multiple of `step` that reaches `value`: an axis that ends there stands still a while."""
    return float(step * max(1, np.ceil(value / step)))


def still(value: float) -> float:
    """The least power of 1.05 that reaches a positive `value`, for a picture that fills its place.

    The picture of a scale that moves is built anew, so it moves in steps and not with every entry.
    """
    return float(1.05 ** np.ceil(np.log(value) / np.log(1.05) - 1e-9))


SEEN_PX = 0.5
"""What lies nearer to a straight line than this looks straight [px]."""


def thinned(
    steps: pd.DataFrame | Mapping[str, Array], by: str, keep: Mapping[str, float], bins: int = 250
) -> NDArray[np.intp]:  # fmt: skip
    """Positions of the rows that a line as fine as a screen shows needs.

    Of each of `bins` equal parts of column `by` at most the first and last row and the extremes of the columns `keep`
    stay, and of those none that lies on a straight line between others. `keep` says what a pixel of each column is.
    """
    place = np.asarray(steps[by])
    if place[-1] <= place[0]:
        return np.arange(len(place))
    rows = _extremes(place, [np.asarray(steps[name]) for name in keep], bins)
    return rows[_bends(place[rows], [np.asarray(steps[name])[rows] / px for name, px in keep.items()])]


def _extremes(place: Array, columns: Sequence[Array], bins: int) -> NDArray[np.intp]:
    """Of each part of the way the first row, the last, and those where a column is least or most."""
    if len(place) <= 2 * bins:
        return np.arange(len(place))
    part = np.minimum((place - place[0]) / (place[-1] - place[0]) * bins, bins - 1).astype(int)
    starts = np.flatnonzero(np.diff(part, prepend=-1))
    found = [starts, np.append(starts[1:], len(place)) - 1]
    for column in columns:
        # sorted by part, then by value: each part's extremes stand at its ends
        order = np.lexsort((column, part))
        found += [order[ends] for ends in found[:2]]
    return np.unique(np.concatenate(found))


def _bends(place: Array, columns: Sequence[Array]) -> NDArray[np.intp]:
    """Rows between which all others lie on straight lines as far as is seen; columns in pixels.

    The worst row between each two that are kept is kept as well, until none is left that would be missed.
    """
    kept, rows = np.array([0, len(place) - 1]), np.arange(len(place))
    while True:
        between = np.searchsorted(kept, rows, side="right").clip(max=len(kept) - 1)
        before, after = kept[between - 1], kept[between]
        width = place[after] - place[before]
        share = np.divide(place - place[before], width, out=np.zeros(len(place)), where=width > 0)
        off = np.max([abs(of - of[before] - share * (of[after] - of[before])) for of in columns], axis=0)
        off[kept] = 0
        order = np.lexsort((off, between))
        worst = order[np.diff(between[order], append=len(kept)) > 0]
        missed = worst[off[worst] > SEEN_PX]
        if not len(missed):
            return kept
        kept = np.union1d(kept, missed)


NAMES_PX = 136
"""Room at the right for the names of what is drawn."""
MEANINGS = ("back", "aboard", "losses", "friction", "road", "ink", "quiet")


PX_X: Spec = {"field": "x", "type": "quantitative", "scale": None}
PX_Y: Spec = {"field": "y", "type": "quantitative", "scale": None, "axis": None}
"""Places of the picture given in pixels."""
ASIDE: Spec = {"align": {"expr": "datum.late ? 'right' : 'left'"}, "dx": {"expr": "datum.late ? -5 : 5"}}
"""Words beside a place along the axis: to its left in rows that are `late`, else to its right."""


def layer(data: str, mark: str, encoding: Spec, **look: object) -> Spec:
    """One layer of a picture: which rows, which mark, where and how."""
    return {"data": {"name": data}, "mark": {"type": mark} | look, "encoding": encoding}


def line(data: str, x: Spec, y: Spec, colour: str, dash: Sequence[int], width: float = 2) -> Spec:
    """A line."""
    return layer(data, "line", {"x": x, "y": y}, color=colour, strokeWidth=width, strokeDash=list(dash))


def words(data: str, x: Spec, y: Spec, field: str = "text", **look: object) -> Spec:
    """Words, from the rows' `text` unless another field is named."""
    return layer(data, "text", {"x": x, "y": y, "text": {"field": field}}, **look)


def caption(text: str, x: object, y: float, **look: object) -> Spec:
    """Words of the picture itself, at a place in pixels; `x` may be an expression."""
    place = {"x": {"value": x}, "y": {"value": y}, "text": {"value": text}}
    return {"data": {"values": [{}]}, "mark": {"type": "text"} | look, "encoding": place}


def key_line(text: str, y: float, colour: str, dash: Sequence[int]) -> list[Spec]:
    """A piece of a line and what it is, at the left of the picture."""
    ends = {"x": {"value": 8}, "x2": {"value": 36}, "y": {"value": y}}
    mark = {"type": "rule", "color": colour, "strokeDash": list(dash), "strokeWidth": 2}
    return [{"data": {"values": [{}]}, "mark": mark, "encoding": ends}, caption(text, 42, y)]


def where(column: str, value: object) -> Spec:
    """Only the rows of a layer that have this value."""
    return {"transform": [{"filter": {"field": column, "equal": value}}]}


def beside_names(axis: Spec) -> Spec:
    """A horizontal axis that leaves room for names at the right."""
    return axis | {"scale": axis["scale"] | {"range": [0, {"expr": f"max(width - {NAMES_PX}, 40)"}]}}


def by_px(field: str, height: int) -> Spec:
    """A vertical place given in pixels from the top."""
    scale = {"domain": [0, height], "range": [0, height], "nice": False, "zero": False}
    return {"field": field, "type": "quantitative", "stack": None, "scale": scale, "axis": None}


def between(top: float, foot: float) -> Spec:
    """From one height of the picture to another [px]."""
    return {"y": {"value": top}, "y2": {"value": foot}}


def by_name(field: str, looks: Mapping[str, object]) -> Spec:
    """A colour, dash or width for each name."""
    return {"field": field, "type": "nominal", "legend": None,
            "scale": {"domain": list(looks), "range": list(looks.values())}}  # fmt: skip


def by_meaning(colours: Palette) -> Spec:
    """Colour by what a mark means."""
    return by_name("meaning", {meaning: getattr(colours, meaning) for meaning in MEANINGS})


@dataclass(frozen=True)
class Name:
    """The name of a mark: where the mark ends [along the axis, px from the top], and what it says."""

    x: float
    y: float
    text: str
    meaning: str
    bold: bool = False


def names_layers(
    names: Sequence[Name], x: Spec, height: int, colours: Palette, foot: int | None = None
) -> tuple[list[Spec], list[Spec]]:
    """Names at the right of their marks, moved apart, each tied to its mark by a line of its colour.

    They stand above `foot` [px], the picture's height unless said otherwise.
    """
    places = apart([name.y for name in names], [LINE_PX + 1] * len(names), 0, height if foot is None else foot)
    rows = [asdict(name) | {"place": place} for name, place in zip(names, places, strict=True)]
    x, place = x | {"field": "x"}, by_px("place", height)
    ends = {"x": x, "x2": {"field": "x"}, "y": by_px("y", height), "y2": {"field": "place"}}
    return [
        layer("names", "rule", ends | {"color": by_meaning(colours)}, xOffset=3, x2Offset=15, strokeWidth=2),
        where("bold", False) | words("names", x, place, xOffset=19),
        where("bold", True) | words("names", x, place, xOffset=19, fontWeight=600),
    ], rows


def thinly(rows: pd.DataFrame, parts: int = 100) -> pd.DataFrame:
    """Evenly spread rows, first and last included."""
    return rows.iloc[np.unique(np.linspace(0, len(rows) - 1, parts).astype(int))].round(4)


def apart(wanted: Sequence[float], heights: Sequence[float], lowest: float, highest: float) -> list[float]:
    """Places near the wanted ones, in the same order, at which labels of these heights do not overlap.

    Places are middles, between `lowest` and `highest` as far as the labels fit there.
    """
    order = np.argsort(wanted, kind="stable")
    half = np.asarray(heights, dtype=float)[order] / 2
    places = np.asarray(wanted, dtype=float)[order]
    edge = lowest
    for i in range(len(places)):
        places[i] = max(places[i], edge + half[i])
        edge = places[i] + half[i]
    edge = max(highest, lowest + 2 * half.sum())
    for i in reversed(range(len(places))):
        places[i] = min(places[i], edge - half[i])
        edge = places[i] - half[i]
    back = np.empty_like(places)
    back[order] = places
    return [float(place) for place in back]
