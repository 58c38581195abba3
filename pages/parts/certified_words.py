"""What the certified cars tell of how far to trust the model: findings, misses by kind of car, tables."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import pandas as pd

from model.checks.certified import SAID, Found
from model.words.quantities import Display
from pages.parts.charts.certified import BAND, CYCLE_WORDS, PLACES, places

WHERE = {"udds": "In the city", "hwfet": "On the highway"}
KNOWN_WORDS = {"road load": "Weight, road load and power known", "data sheet": "Only class, weight and power known"}
UNKNOWN = (
    "**What is not known.** The saving itself was measured on none of these cars: only what they took from the wall. "
    "Constants of the model were chosen with these cars in view, so that they are no blind test of it; of each car "
    "only the band is made without its own group of makers."
)


def first_words(city: Found, highway: Found) -> str:
    """What the pictures show."""
    return (
        f"{len(city.ids)} battery cars of the US certification, their energy from the wall as measured and as modelled "
        "from weight, road load and rated power. On the dashed line both agree. Of each car the band that should hold "
        f"90 % is made from the other groups of makers alone: it holds {city.held_pct(BAND):.0f} % in the city and "
        f"{highway.held_pct(BAND):.0f} % on the highway. The table is written and checked by the program's tests."
    )


def cars_title(found: Found) -> str:
    """The finding of a cycle."""
    return f"{WHERE[found.cycle]} {found.inside(BAND).sum()} of {len(found.ids)} cars lie in their band"


def cars_alt(found: Found) -> str:
    """The picture of a cycle in words."""
    error = np.median(found.errors_pct)
    return (
        f"{cars_title(found)}; {found.above(BAND).sum()} took more, {found.below(BAND).sum()} less. "
        f"Each car's measured energy from the wall over the modelled one, around the line where "
        f"both agree; the median car is modelled {abs(error):.1f} % too "
        f"{'high' if error > 0 else 'low'}. {_missed(found).replace('*', '')}"
    )


def cars_table(found: Found, display: Display) -> pd.DataFrame:
    """Every car of a cycle, the misses first."""
    unit = display.unit("Wh/km")
    columns = {"measured": found.measured, "modelled": found.modelled}
    columns |= {f"band, {end}": found.bands[key] for end, key in zip(("low", "high"), BAND, strict=True)}
    energies = {
        f"{name[:1].upper()}{name[1:]}, {unit}": np.round(display.value(values, "Wh/km"), 1)
        for name, values in columns.items()
    }
    table = pd.DataFrame(
        {"Car": found.ids, "Kind": found.kinds, **energies, "Where": [PLACES[place] for place in places(found)]}
    )
    return table.iloc[np.argsort(found.inside(BAND), kind="stable")]


def short_table(table: pd.DataFrame) -> pd.DataFrame:
    """What a narrow place has room for: the band's ends in one column, no ids."""
    kind, measured, modelled, low, high = table.columns[1:6]
    ends = [f"{least:.0f} to {most:.0f}" for least, most in zip(table[low], table[high], strict=True)]
    return table[[kind, measured, modelled]].round().astype({measured: int, modelled: int}).assign(Band=ends)


def _missed(found: Found) -> str:
    """The kinds of car outside the band on a cycle."""
    parts = [
        f"{how}: " + "; ".join(f"{kind} ({count} of {of})" for kind, count, of in found.by_kind(which)) + "."
        for how, which in (("More than the band", found.above(BAND)), ("Less", found.below(BAND)))
        if which.any()
    ]
    return f"*{WHERE[found.cycle]}.* {' '.join(parts)}" if parts else ""


def misses_words(*cycles: Found) -> str:
    """The misses, named by kind of car."""
    lines = [f"- {line}" for line in map(_missed, cycles) if line]
    return "\n".join(["**The misses,** with how many of each kind of car:\n", *lines])


def held_title(both: Sequence[Found]) -> str:
    """The finding of a reliability picture."""
    held = " and ".join(
        f"{found.held_pct(BAND):.0f} {where}"
        for found, where in zip(both, ("% in the city", "% on the highway"), strict=True)
    )
    return f"{KNOWN_WORDS[both[0].known]}: said 90 %, held {held}"


def held_alt(both: Sequence[Found]) -> str:
    """A reliability picture in words."""
    said = "; ".join(
        f"said {share} %, held " + ", ".join(f"{CYCLE_WORDS[f.cycle]} {f.held_pct(band):.0f} %" for f in both)
        for share, band in SAID.items()
    )
    return f"{KNOWN_WORDS[both[0].known]}. How many measured cars the bands held, over how many they should: {said}."


def held_table(both: Sequence[Found]) -> pd.DataFrame:
    """What the bands said and held."""
    held = {
        f"Held, {CYCLE_WORDS[found.cycle]}, %": [round(found.held_pct(band), 1) for band in SAID.values()]
        for found in both
    }
    return pd.DataFrame({"Said, %": list(SAID), **held})
