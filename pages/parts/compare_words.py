"""Comparisons in sentences from numbers: what differs, by how much, and whether that exceeds the uncertainty."""

from __future__ import annotations

from collections.abc import Sequence

import pandas as pd

from model.describe.scenario import Scenario
from model.lift_off.slowing import word_of
from model.out.comparison import Difference, Side, told_apart
from model.sampling.uncertainty import HIGH_SHARE, Band
from model.words.entries import choice_word
from model.words.quantities import Display, capital, percent_range_text
from pages.parts.charts.compare import even, signed_range
from pages.parts.wording import (
    HABIT_NUMBERS,
    NEGLIGIBLE_KWH,
    car_words,
    pedal_words,
    season_of,
    temperature_text,
)

SUBJECT_WORDS = {
    "car": "Car",
    "season": "Season",
    "lift_off_mps2": "Lift-off strength",
    "brake_pedal": "Brake pedal",
    "looks_ahead": "Slowing down",
    "pull_away": "Pulling away",
    "steady_foot": "Holding speed",
    "surface": "Road surface",
    "cabin": "Cabin heating and cooling",
    "preconditioned": "Start",
}
NARROW = "\N{NO-BREAK SPACE}"
ENGINE_NOTE = (
    "What a hybrid's engine gives in place of its battery is counted as taken from the battery; the fuel burned for it "
    "is several times as much, and is not."
)
NEGLIGIBLE_POINTS = 0.0005
"""A difference of shares below this is none to speak of [1]."""


def name_of(subject: str, scenario: Scenario, display: Display) -> str:
    """What a drive is called where it differs from others in the subject."""
    conditions, driver = scenario.conditions, scenario.driver
    if subject == "car":
        return car_words(scenario)
    if subject == "season":
        season, degrees = season_of(conditions, scenario.year), temperature_text(conditions.ambient_c, display)
        return f"{season}, {degrees}" if season else degrees
    if subject == "lift_off_mps2":
        own = any(leg.lift_off_mps2 is not None for leg in scenario.legs)
        strength = driver.lift_off_mps2
        return "a strength for each leg" if own else f"{word_of(strength)}, {strength:g}{NARROW}m/s²"
    if subject in HABIT_NUMBERS:
        return f"{HABIT_NUMBERS[subject][0]} {choice_word(subject, getattr(driver, subject), display)}"
    return {
        "brake_pedal": pedal_words(scenario, display),
        "surface": f"{choice_word('surface', conditions.surface, display)} road",
        "cabin": f"cabin {'on' if conditions.cabin else 'off'}",
        "preconditioned": f"{'' if conditions.preconditioned else 'not '}warmed up before leaving",
    }[subject]


def negligible(band: Band, most: float) -> bool:
    """Whether a difference is too small to speak of, whatever its sign."""
    return max(abs(band.low), abs(band.high)) < most


def size_text(band: Band, display: Display) -> str:
    """How large a difference is whose ends have the same sign."""
    ends = sorted((abs(band.low), abs(band.high)))
    return display.range_text(Band(ends[0], abs(band.mid), ends[1]), "kWh")


def title(differences: Sequence[Difference], names: Sequence[str], display: Display) -> str:
    """The finding over all drives in one line."""
    parts = [f"{name} {taken_words(one, names[0], display)}" for one, name in zip(differences, names[1:], strict=True)]
    return capital("; ".join(parts))


def taken_words(found: Difference, first: str, display: Display) -> str:
    """What a drive takes more or less than the first, to read on after its name."""
    band = found.net_kwh
    if negligible(band, NEGLIGIBLE_KWH):
        return f"takes as much as {first}"
    if told_apart(band):
        return f"takes {size_text(band, display)} {'more' if band.low > 0 else 'less'} than {first}"
    less, more = even(band)
    return f"takes {less} kWh less to {more} kWh more than {first}"


def verdict(found: Difference) -> str:
    """Whether the difference in what is taken exceeds the uncertainty."""
    band = found.net_kwh
    if negligible(band, NEGLIGIBLE_KWH):
        return "That is no difference to speak of."
    if told_apart(band):
        return (
            "The difference **exceeds the uncertainty**: it points the same way in at least "
            f"{HIGH_SHARE * 100:.0f} of 100 sampled cars."
        )
    return "The difference **does not exceed the uncertainty**: the assumptions leave open which of the two takes less."


def saved_words(found: Difference, first: str) -> str:
    """What it does to the share that regeneration saves; empty where there is no share."""
    band = found.saved_share
    if band is None:
        return ""
    if negligible(band, NEGLIGIBLE_POINTS):
        return f"Regeneration saves the same share of energy as with {first}."
    if not told_apart(band):
        return f"The share that regeneration saves differs by {points_text(band)}: too little to tell."
    ends = sorted((abs(band.low), abs(band.high)))
    points = points_range(Band(ends[0], abs(band.mid), ends[1]))
    more = band.low > 0
    sentence = f"The share that regeneration saves is {points} points {'higher' if more else 'lower'}"
    if more and found.net_kwh.low > NEGLIGIBLE_KWH:
        return f"{sentence}: a larger share saved, and still more taken."
    return f"{sentence}."


def points_range(band: Band) -> str:
    """A band of shares in points, without a unit."""
    return percent_range_text(band.low, band.high).removesuffix(" %")


def points_text(band: Band) -> str:
    """A signed difference of shares in points."""
    return f"{signed_range(Band(100 * band.low, 100 * band.mid, 100 * band.high))} points"


def time_words(found: Difference) -> str:
    """What it costs or spares in time; empty where there is no second between them."""
    seconds = found.duration_s
    if abs(seconds) < 1:
        return ""
    size = f"{abs(seconds):.0f} s" if abs(seconds) < 90 else f"{abs(seconds) / 60:.1f} min"
    return f"It takes {size} {'longer' if seconds > 0 else 'less'}."


def sentences(found: Difference, name: str, first: str) -> str:
    """What follows the finding: whether it exceeds the uncertainty, what becomes of the share saved, and the time."""
    parts = (verdict(found), saved_words(found, first), time_words(found))
    return f"**{capital(name)}.** " + " ".join(part for part in parts if part)


# the table

ROWS = (
    ("net_kwh", "Taken from the battery, kWh"),
    ("saved_kwh", "Saved by regeneration, kWh"),
    ("saved_share", "Energy saved, % of the drive on friction brakes only"),
    ("friction_kwh", "Heat in the friction brakes, kWh"),
    ("duration_s", "Time, min"),
)


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
    """Every drive with its bands and, in brackets behind those of the second and third, the difference's."""

    def cells(side: Side) -> list[str]:
        bands = bands_of(side)
        return [display.range_text(band, "") if (band := bands[key]) else "–" for key, _ in ROWS]

    def with_difference(side: Side, found: Difference) -> list[str]:
        bands = differences_of(found)
        return [
            f"{cell} ({signed_range(band)})" if (band := bands[key]) else cell
            for cell, (key, _) in zip(cells(side), ROWS, strict=True)
        ]

    columns = {"Figure": [words for _, words in ROWS], capital(names[0]): cells(sides[0])}
    for side, found, name in zip(sides[1:], differences, names[1:], strict=True):
        columns[capital(name)] = with_difference(side, found)
    return pd.DataFrame(columns)


def figures(sides: Sequence[Side], differences: Sequence[Difference], names: Sequence[str]) -> pd.DataFrame:
    """The same in numbers, for the file: one row a drive or difference and figure; shares in percent or points."""
    rows = [
        (what, words, band.low, band.mid, band.high)
        for what, bands in (
            *((name, bands_of(side)) for side, name in zip(sides, names, strict=True)),
            *(
                (f"{name} less {names[0]}", differences_of(one))
                for one, name in zip(differences, names[1:], strict=True)
            ),
        )
        for key, words in ROWS
        if (band := bands[key]) is not None
    ]
    return pd.DataFrame(rows, columns=["drive", "figure", "low_5pct", "mid_50pct", "high_95pct"])
