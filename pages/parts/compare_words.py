"""Comparisons in sentences from numbers: what differs, by how much, and whether that exceeds the uncertainty."""

from __future__ import annotations

from collections.abc import Sequence

import pandas as pd

from model.describe.figures import Quantity, Several, Share, Span
from model.describe.scenario import Scenario
from model.lift_off.slowing import word_of
from model.out.comparison import Difference, Side, told_apart
from model.sampling.uncertainty import HIGH_SHARE, Band
from model.words.entries import habit_text
from model.words.quantities import Display, capital, number_text, span_of
from pages.parts.charts.compare import difference_of
from pages.parts.description import car_words, degrees, pedal_words, season_of
from pages.parts.lift_off_words import advice_text
from pages.parts.wording import NEGLIGIBLE_KWH

NEGLIGIBLE_POINTS = 0.0005
"""A difference of shares below this is none to speak of [1]."""


COUNTED = ("car", "brake_pedal", "surface")
"""Subjects whose names are such as “city car”."""


def subject_text(subject: str, display: Display) -> str:
    """What differs."""
    return display.say("compare-subject", subject=subject)


def name_of(subject: str, scenario: Scenario, display: Display) -> str:
    """What a drive is called where it differs from others in the subject."""
    conditions, driver = scenario.conditions, scenario.driver
    match subject:
        case "car":
            return car_words(scenario, display)
        case "season":
            season, air = season_of(conditions, scenario.year), degrees(conditions.ambient_c)
            return display.say("compare-season", season=season, air=air) if season else display.figure(air)
        case "lift_off_mps2":
            return _strength_text(scenario, display)
        case "brake_pedal":
            return pedal_words(scenario, display)
        case "surface":
            return display.say("compare-surface", surface=conditions.surface)
        case "cabin":
            return display.say("compare-cabin", on=conditions.cabin)
        case "soc_start":
            return display.say("habits-charge", charge=Share(conditions.soc_start, 0))
        case "payload_kg":
            load = conditions.payload_kg
            return display.say("compare-load", mass=Quantity(load, "kg"), any=load > 0)
        case "trailer_kg":
            trailer = conditions.trailer_kg
            return display.say("compare-trailer", mass=Quantity(trailer, "kg"), any=trailer > 0)
        case "preconditioned":
            return display.say("compare-warmed", warmed=conditions.preconditioned)
    return habit_text(subject, getattr(driver, subject), display)


def spoken(subject: str, name: str, display: Display) -> str:
    """The same within a sentence: what can be counted has its article."""
    return display.say("compare-one", name=name) if subject in COUNTED else name


def _strength_text(scenario: Scenario, display: Display) -> str:
    if any(leg.lift_off_mps2 is not None for leg in scenario.legs):
        return display.say("compare-strengths-of-legs")
    strength = scenario.driver.lift_off_mps2
    return advice_text(word_of(strength), strength, display)


def negligible(band: Band, most: float) -> bool:
    """Whether a difference is too small to speak of, whatever its sign."""
    return max(abs(band.low), abs(band.high)) < most


def size_of(band: Band, unit: str, scale: float = 1.0, places: int | None = None) -> Span:
    """How large a difference is whose ends have the same sign."""
    low, high = sorted((abs(scale * band.low), abs(scale * band.high)))
    return Span(low, high, unit, places=places)


def title(differences: Sequence[Difference], names: Sequence[str], display: Display) -> str:
    """The finding over all drives in one line."""
    found = [
        taken_words(difference, name, names[0], display)
        for difference, name in zip(differences, names[1:], strict=True)
    ]
    return capital(display.figure(Several(tuple(found), ";")))


def taken_words(found: Difference, name: str, first: str, display: Display) -> str:
    """What a drive takes more or less than the first."""
    band = found.net_kwh
    both = {"name": name, "first": first}
    if negligible(band, NEGLIGIBLE_KWH):
        return display.say("compare-as-much", **both)
    if told_apart(band):
        return display.say("compare-takes", difference=size_of(band, "kWh"), more=bool(band.low > 0), **both)
    # both ends with as many decimals as the larger needs
    places = len(number_text(max(abs(band.low), abs(band.high))).partition(".")[2])
    less, more = (Quantity(abs(end), "kWh", places=places) for end in (band.low, band.high))
    return display.say("compare-either-way", less=less, more=more, **both)


def verdict(found: Difference, display: Display) -> str:
    """Whether the difference in what is taken exceeds the uncertainty."""
    band = found.net_kwh
    if negligible(band, NEGLIGIBLE_KWH):
        return display.say("compare-alike")
    if told_apart(band):
        return display.say("compare-exceeds", cars=round(100 * HIGH_SHARE))
    return display.say("compare-open")


def saved_words(found: Difference, first: str, display: Display) -> str:
    """What it does to the share that regeneration saves; empty where there is no share."""
    band = found.saved_share
    if band is None:
        return ""
    if negligible(band, NEGLIGIBLE_POINTS):
        return display.say("compare-same-share", first=first)
    if not told_apart(band):
        return display.say("compare-share-open", points=difference_of(band.scaled(100), "points"))
    # as many decimals as a share in percent has
    span = size_of(band, "points", 100, places=1 if negligible(band, 0.0995) else 0)
    points = display.figure(span)
    if round(span.low, span.places) == 0:
        points = display.say("compare-points-up-to", most=Quantity(span.high, "points", places=span.places))
    higher = bool(band.low > 0)
    if higher and found.net_kwh.low > NEGLIGIBLE_KWH:
        return display.say("compare-share-and-more", points=points)
    return display.say("compare-share", points=points, higher=higher)


def time_words(found: Difference, display: Display) -> str:
    """What it costs or spares in time; empty where there is no second between them."""
    seconds = abs(found.duration_s)
    if seconds < 1:
        return ""
    time = Quantity(seconds, "s", places=0) if seconds < 90 else Quantity(seconds / 60, "min", places=1)
    return display.say("compare-time", time=time, longer=bool(found.duration_s > 0))


def sentences(found: Difference, name: str, first: str, display: Display) -> str:
    """What follows the finding: whether it exceeds the uncertainty, what becomes of the share saved, and the time."""
    parts = verdict(found, display), saved_words(found, first, display), time_words(found, display)
    return display.say("compare-told", name=capital(name), sentences=" ".join(filter(None, parts)))


# the table

FIGURES = ("net_kwh", "saved_kwh", "saved_share", "friction_kwh", "duration_s")
"""The rows of the table."""


def figure_name(figure: str, display: Display) -> str:
    """What a row of the table is."""
    return display.say("compare-figure", figure=figure)


def bands_of(side: Side) -> dict[str, Band | None]:
    """The bands of one drive by the table's rows."""
    answer = side.answer
    minutes = side.duration_s / 60
    return {
        "net_kwh": answer.net_kwh,
        "saved_kwh": answer.saved_kwh,
        # more than all of it is no share: the hill gave it
        "saved_share": answer.saved_share.scaled(100) if answer.saved_share and answer.saved_share.high <= 1 else None,
        "friction_kwh": Band.of(side.friction_kwh),
        "duration_s": Band(minutes, minutes, minutes),
    }


def differences_of(found: Difference) -> dict[str, Band | None]:
    """The differences by the table's rows; of shares, in points."""
    minutes = found.duration_s / 60
    return {
        "net_kwh": found.net_kwh,
        "saved_kwh": found.saved_kwh,
        "saved_share": found.saved_share and found.saved_share.scaled(100),
        "friction_kwh": found.friction_kwh,
        "duration_s": Band(minutes, minutes, minutes),
    }


def table(
    sides: Sequence[Side], differences: Sequence[Difference], names: Sequence[str], display: Display
) -> pd.DataFrame:
    """Every drive with its bands and, in brackets behind those of the second and third, the difference's.

    The time stands there where it differs by a second.
    """
    alike = all(abs(found.duration_s) < 1 for found in differences)
    shown = [figure for figure in FIGURES if not (alike and figure == "duration_s")]

    def cells(side: Side) -> list[str]:
        bands = bands_of(side)
        return [display.figure(span_of(band, "")) if (band := bands[figure]) else "–" for figure in shown]

    def with_difference(side: Side, found: Difference) -> list[str]:
        return [
            display.say("compare-cell", value=cell, difference=difference_of(band, "")) if band else cell
            for cell, band in zip(cells(side), map(differences_of(found).__getitem__, shown), strict=True)
        ]

    columns = {display.say("column-figure"): [figure_name(figure, display) for figure in shown]}
    columns[capital(names[0])] = cells(sides[0])
    for side, found, name in zip(sides[1:], differences, names[1:], strict=True):
        columns[capital(name)] = with_difference(side, found)
    return pd.DataFrame(columns)


def figures(
    sides: Sequence[Side], differences: Sequence[Difference], names: Sequence[str], display: Display
) -> pd.DataFrame:
    """The same in numbers, for the file: one row a drive or difference and figure; shares in percent or points."""
    less = [display.say("compare-less-first", name=name, first=names[0]) for name in names[1:]]
    lines = [
        *((name, bands_of(side)) for side, name in zip(sides, names, strict=True)),
        *((name, differences_of(found)) for found, name in zip(differences, less, strict=True)),
    ]
    rows = [
        (what, figure_name(figure, display), band.low, band.mid, band.high)
        for what, bands in lines
        for figure in FIGURES
        if (band := bands[figure]) is not None
    ]
    return pd.DataFrame(rows, columns=["drive", "figure", "low_5pct", "mid_50pct", "high_95pct"])
