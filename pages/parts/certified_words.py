"""What the certified cars tell of how far to trust the model: findings, misses by kind of car, tables."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from model.checks.certified import GIVEN, SAID, CarsFound, VersionsApart
from model.describe.figures import Quantity, Several
from model.describe.parameters import class_labels
from model.words.quantities import Display
from pages.parts.charts.certified import BAND, SHAPES, places
from pages.parts.trust import bulleted, number, too


def first_words(city: CarsFound, highway: CarsFound, display: Display) -> str:
    """What the pictures show."""
    held = {"city": held_pct(city), "highway": held_pct(highway)}
    return display.say("certified-first", cars=len(city.ids), **held)


def held_pct(found: CarsFound, band: tuple[str, str] = BAND) -> Quantity:
    """How many of a cycle's cars their bands held."""
    return _whole(found.held_pct(band))


def cars_title(found: CarsFound, display: Display) -> str:
    """The finding of a cycle."""
    inside = int(found.inside(BAND).sum())
    return display.say("certified-in-band", cycle=found.cycle, inside=inside, cars=len(found.ids))


def cars_alt(found: CarsFound, display: Display) -> str:
    """The picture of a cycle in words."""
    error = float(np.median(found.errors_pct))
    picture = display.say(
        "certified-alt",
        finding=cars_title(found, display),
        more=int(found.above(BAND).sum()),
        less=int(found.below(BAND).sum()),
        error=number(abs(error)),
        way=too(error),
    )
    return f"{picture} {_missed(found, display)}".rstrip()


def cars_table(found: CarsFound, display: Display) -> pd.DataFrame:
    """Every car of a cycle, the misses first."""
    unit, say = display.unit("Wh/km"), display.say
    columns = {"measured": found.measured, "modelled": found.modelled}
    columns |= {end: found.bands[key] for end, key in zip(("band-low", "band-high"), BAND, strict=True)}
    energies = {
        say("certified-energy", what=what, unit=unit): np.round(display.value(values, "Wh/km"), 1)
        for what, values in columns.items()
    }
    # said once each, for hundreds of cars
    named = {place: say("certified-place", place=place) for place in SHAPES}
    where = [named[place] for place in places(found)]
    cars = {say("certified-car"): found.ids, say("certified-car-kind"): found.kinds}
    table = pd.DataFrame({**cars, **energies, say("certified-where"): where})
    return table.iloc[np.argsort(found.inside(BAND), kind="stable")]


def short_table(table: pd.DataFrame, display: Display) -> pd.DataFrame:
    """What a narrow place has room for: the band's ends in one column, no ids."""
    kind, measured, modelled, low, high = table.columns[1:6]
    span = display.say("span", low="{:.0f}", high="{:.0f}")
    ends = [span.format(least, most) for least, most in zip(table[low], table[high], strict=True)]
    short = table[[kind, measured, modelled]].round().astype({measured: int, modelled: int})
    return short.assign(**{display.say("certified-band"): ends})


def _kinds(found: CarsFound, which: NDArray[np.bool_], display: Display) -> Several:
    kinds = (
        display.say("certified-kind", kind=kind, missed=missed, cars=cars)
        for kind, missed, cars in found.by_kind(which)
    )
    return Several(tuple(kinds), ";")


def _missed(found: CarsFound, display: Display) -> str:
    """The kinds of car outside the band on a cycle; empty where there is none."""
    above, below = found.above(BAND), found.below(BAND)
    more, less = _kinds(found, above, display), _kinds(found, below, display)
    if above.any() and below.any():
        return display.say("certified-missed-both", cycle=found.cycle, more=more, less=less)
    if above.any():
        return display.say("certified-missed-above", cycle=found.cycle, more=more)
    return display.say("certified-missed-below", cycle=found.cycle, less=less) if below.any() else ""


def misses_words(*cycles: CarsFound, display: Display) -> str:
    """The misses, named by kind of car."""
    missed = [_missed(found, display) for found in cycles]
    return f"{display.say('certified-misses')}\n\n{bulleted([*filter(None, missed)])}"


MISSED_CLASSES = ("performance-saloon", "family-hatch")
"""Classes whose middle is far off in the city."""


def short_words(road_load: Sequence[CarsFound], data_sheet: Sequence[CarsFound], display: Display) -> str:
    """Where the model falls short, with reasons as far as they are known; city and highway of each."""
    say = display.say
    (city, highway), (sheet_city, sheet_highway) = road_load, data_sheet
    tenth = {found.cycle: _whole(float(np.quantile(abs(found.errors_pct), 0.9))) for found in road_load}
    said = [say("certified-short-tenth", city=tenth["udds"], highway=tenth["hwfet"]), say("certified-short-heavy")]
    for name in MISSED_CLASSES:
        of_class = np.array(sheet_city.classes) == name
        sheet, road = (float(np.median(found.of(of_class).errors_pct)) for found in (sheet_city, city))
        kind = class_labels()[name]
        said.append(
            say("certified-short-class", kind=kind, sheet=_whole(abs(sheet)), road=_whole(abs(road)), way=too(sheet))
        )
    half = [_whole(found.half_width_pct(GIVEN)) for found in (city, highway, sheet_city, sheet_highway)]
    named = dict(zip(("city", "highway", "sheet_city", "sheet_highway"), half, strict=True))
    said.append(say("certified-short-given", **named))
    return f"{say('certified-short')}\n\n{bulleted(said)}"


def versions_words(city: VersionsApart, highway: VersionsApart, display: Display) -> str:
    """How well the model tells two versions of one car apart."""

    def medians(name: str, of: str) -> dict[str, Quantity]:
        return {
            f"{name}{cycle}": Quantity(float(np.median(abs(getattr(apart, of)))), "%", places=1)
            for cycle, apart in (("city", city), ("highway", highway))
        }

    said = medians("", "measured_pct") | medians("missed_", "missed_pct") | medians("tests_", "tests_pct")
    return display.say("certified-versions", pairs=len(city.measured_pct), **said)


def _whole(value: float) -> Quantity:
    return Quantity(value, "%", places=0)


def held_title(both: Sequence[CarsFound], display: Display) -> str:
    """The finding of a reliability picture."""
    city, highway = map(held_pct, both)
    return display.say("certified-held", known=_known(both[0]), city=city, highway=highway)


def _known(found: CarsFound) -> str:
    return found.known.replace(" ", "-")


def held_alt(both: Sequence[CarsFound], display: Display) -> str:
    """A reliability picture in words."""
    city, highway = both
    shares = [
        display.say(
            "certified-held-share",
            said=Quantity(share, "%", places=0),
            city=held_pct(city, band),
            highway=held_pct(highway, band),
        )
        for share, band in SAID.items()
    ]
    known = display.say("certified-known", known=_known(city))
    return display.say("certified-held-alt", known=known, shares=Several(tuple(shares), ";"))


def held_table(both: Sequence[CarsFound], display: Display) -> pd.DataFrame:
    """What the bands said and held."""
    held = {
        display.say("certified-held-column", cycle=found.cycle): [
            round(found.held_pct(band), 1) for band in SAID.values()
        ]
        for found in both
    }
    return pd.DataFrame({display.say("certified-said"): list(SAID), **held})
