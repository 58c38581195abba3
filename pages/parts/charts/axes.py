"""Axes and lines that several pictures share."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import numpy as np
import pandas as pd

from pages.parts.theme import Spec


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


def upright(field: str, domain: Sequence[float], pixels: Sequence[float], words: Mapping[float, str]) -> Spec:
    """A vertical axis with its own part of the picture's height, and words at chosen values.

    Pictures of several panels are one picture whose axes share the height: so they share the width too, whatever it is.
    """
    label = " : ".join(f"abs(datum.value - {value}) < 1e-6 ? '{text}'" for value, text in words.items())
    axis = {"orient": "left", "values": list(words), "labelExpr": f"{label} : ''", "domain": False, "ticks": False}
    return {
        "field": field,
        "type": "quantitative",
        "stack": None,
        "scale": {"domain": list(domain), "range": list(pixels), "nice": False},
        "axis": axis if words else None,
    }


def next_step(value: float, step: float) -> float:
    """The least positive multiple of `step` that reaches `value`: an axis that ends there stands still a while."""
    return float(step * max(1, np.ceil(value / step)))


def thinned(steps: pd.DataFrame, by: str, keep: Sequence[str], bins: int = 250) -> np.ndarray:
    """Positions of the rows that a line as fine as a screen shows needs.

    Of each of `bins` equal parts of column `by`: the first and last row, and the extremes of the columns `keep`.
    """
    place = steps[by].to_numpy()
    if len(steps) <= 2 * bins or place[-1] <= place[0]:
        return np.arange(len(steps))
    part = np.minimum((place - place[0]) / (place[-1] - place[0]) * bins, bins - 1).astype(int)
    starts = np.flatnonzero(np.diff(part, prepend=-1))
    found = [starts, np.append(starts[1:], len(steps)) - 1]
    for column in keep:
        # sorted by part, then by value: each part's extremes stand at its ends
        order = np.lexsort((steps[column].to_numpy(), part))
        found += [order[ends] for ends in found[:2]]
    return np.unique(np.concatenate(found))
