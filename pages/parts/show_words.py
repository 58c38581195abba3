"""The cards to hold towards somebody, in sentences from numbers: one idea each, and why."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import pandas as pd

from model.drives import Answer, SeasonRow, YearOfDrives
from model.lift_off_advice import DriveAdvice
from model.scenario import Scenario
from pages.parts import lift_off_words, wording
from pages.parts.charts.energy import fixed, grouped, places_for
from pages.parts.charts.energy_words import before_after_words
from pages.parts.display import Display, percent_text
from pages.parts.wording import NEGLIGIBLE_SHARE, THAN, temperature_text


@dataclass(frozen=True)
class Card(wording.Card):
    """One idea, with what is answered when somebody asks why."""

    why: str


TELL = Card(
    "Tell me your drive",
    (),
    "What regeneration saves depends on how often and how deeply the car slows, and on the hills. Four invented drives "
    "stand for most. Your own, leg by leg, is described on the first page.\n\n"
    "The car is the invented middle of its class. Winter costs warmth, and a cold battery takes less.",
)
NUMBER_WHY = (
    "The same car drives the same speeds twice: once with the motor slowing it, once on friction brakes only. The "
    "difference is what is saved.\n\n"
    "It is a range, because nobody knows a car's every figure: of 100 cars drawn from what is assumed, 90 lie within. "
    "“On a full battery” is this drive over and over until the battery is empty."
)
WINTER_WHY = (
    "In the cold more energy goes into warming the cabin, and air and tyres resist more. What regeneration saves is "
    "then mostly a smaller part of the whole. A cold battery also takes less at first, so the discs do more.\n\n"
    "Summer and winter are the temperatures set for the year on the first page, computed with the middle of every "
    "assumed figure."
)
COLD_START = (
    "In the first minutes a cold battery may let the motor slow the car less. Leave room, and press the brake pedal."
)
LIMITS_WHY = (
    "A full battery has no room, and a cold one takes charge slowly. Where a wheel would slip, the car's control "
    "takes the motor's slowing away. What is left of it can change from one slow-down to the next.\n\n"
    "A hard stop asks for far more than a motor gives. The friction brakes, on all wheels, do that work."
)


def number(answer: Answer, scenario: Scenario, display: Display, beside: Sequence[str]) -> Card:
    """What regeneration saves on this drive; `beside` is what has to stand with the number."""
    about = (
        f"A {wording.car_words(scenario)}, {wording.drive_words(scenario, display)}, "
        f"{wording.season_words(scenario.conditions, scenario.year, display)}."
    )
    sums = f"That is {wording.saved_text(answer, display)} on this drive"
    if answer.range_gain_km is not None:
        sums += f", or {wording.range_text(answer, display)} on a full battery"
    sentences = (f"{sums}.", about, *beside)
    if answer.saved_share is None or answer.saved_share.low > 1 or answer.saved_share.high < NEGLIGIBLE_SHARE:
        return Card(wording.headline(answer, display), sentences, NUMBER_WHY)
    title = f":blue[{wording.share_text(answer)}] less battery energy"
    return Card(title, (f"{THAN}.", *sentences), NUMBER_WHY)


def bars(books: pd.DataFrame) -> Card:
    """What the bars before and after show. `books` is from `model.timeline.books`."""
    title, words = before_after_words(books)
    net = grouped(books).sum()
    places = places_for(net.abs().max())
    saved = net["friction_only"] - net["regenerated"]
    if net["regenerated"] > 0 and round(saved, places) > 0:
        title = f"{fixed(saved, places)} of {fixed(net['friction_only'], places)} kWh saved"
    return Card(title, (), words)


def lift_off(found: DriveAdvice, scenario: Scenario, display: Display) -> Card:
    """The strength advised, the deciding fact, and what the kind of brake pedal has to do with it."""
    advice, pedal = found.overall, wording.setting_card(scenario)
    yours = lift_off_words.yours_name(scenario.driver.lift_off_mps2, scenario.legs)
    return Card(
        f"Lift-off: {advice.word}, {lift_off_words.strength_text(advice.lift_off_mps2)}",
        (
            lift_off_words.in_units(advice.because, display),
            " ".join((f"{pedal.title}.", *pedal.sentences)),
            f"The car is set to {yours}.",
        ),
        f"{lift_off_words.rules_text(advice)}\n\n**What would change it**\n\n"
        f"{lift_off_words.what_if_text(found, display)}",
    )


def winter(year: YearOfDrives | None, display: Display) -> Card:
    """What is saved on a winter day, beside a summer day."""
    day = {row.season: row for row in year.rows} if year else {}
    if not day:
        return Card("Winter takes some of it away", (COLD_START,), WINTER_WHY)
    cold, warm = day["winter"], day["summer"]
    taken = (
        f"A winter day, at {temperature_text(cold.ambient_c, display)}, takes {display.text(cold.net_kwh, 'kWh')} for "
        f"this drive; a summer day takes {display.text(warm.net_kwh, 'kWh')}."
    )
    saved = display.text(cold.saved_kwh, "kWh")
    shares = saved_share(cold), saved_share(warm)
    if None in shares:
        return Card(f"In winter about {saved} less battery energy", (f"{THAN}.", taken, COLD_START), WINTER_WHY)
    in_winter, in_summer = map(percent_text, shares)
    return Card(
        f"In winter about {in_winter} less battery energy",
        (f"{THAN}. In summer it is about {in_summer}.", f"{taken} In winter {saved} are saved.", COLD_START),
        WINTER_WHY,
    )


def saved_share(row: SeasonRow) -> float | None:
    """Energy saved of the same day's drive on friction brakes only [1]; None where that takes nothing."""
    without = row.net_kwh + row.saved_kwh
    return row.saved_kwh / without if row.net_kwh > 0 and without > 0 else None


def limits(display: Display) -> Card:
    """When it is not there, and what it is no substitute for."""
    caveat = wording.caveat_card(None, display)
    return Card(caveat.title, (*caveat.sentences, wording.NO_SUBSTITUTE), LIMITS_WHY)
