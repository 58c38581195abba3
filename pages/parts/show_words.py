"""The cards to hold towards somebody, in sentences from numbers: one idea each, and why."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import pandas as pd

from model.describe.scenario import Scenario
from model.lift_off.advice import DriveAdvice
from model.sampling.drives import Answer, YearOfDrives
from model.words.quantities import Display
from pages.parts import departures, lift_off_words, wording
from pages.parts.charts.energy import fixed, grouped, places_for
from pages.parts.charts.energy_words import before_after_words
from pages.parts.wording import NEGLIGIBLE_SHARE, THAN


@dataclass(frozen=True)
class Card(wording.Card):
    """One idea, with what is answered when somebody asks why, and the day it is about, where it is about one."""

    why: str
    day: str = ""


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
    "Summer and winter are the temperatures set for the year on the first page. It is a range, because nobody knows a "
    "car's every figure."
)
LIMITS_WHY = (
    "A full battery has no room, and a cold one takes charge slowly. Where a wheel would slip, the car's control "
    "takes the motor's slowing away. What is left of it can change from one slow-down to the next.\n\n"
    "A hard stop asks for far more than a motor gives. The friction brakes, on all wheels, do that work."
)


def number(
    answer: Answer, scenario: Scenario, display: Display, beside: Sequence[str], fuel: str = ""
) -> Card:
    """What regeneration saves on this drive; `beside` is what has to stand with the number.

    A hybrid is told in `fuel`, in words, since its battery's range says nothing.
    """
    day, apart = wording.day_words(scenario, display), departures.text(scenario, display)
    about = f"A {wording.on_drive(scenario, display)}{f', {apart}' if apart else ''}."
    sums = f"That is {wording.saved_text(answer, display)} on this drive"
    if fuel:
        sums += f", or {fuel}"
    elif answer.range_gain_km is not None:
        sums += f", or {wording.further_text(answer.range_gain_km, display)} on a full battery"
    sentences = (f"{sums}.", about, *beside)
    if answer.saved_share is None or answer.saved_share.low > 1 or answer.saved_share.high < NEGLIGIBLE_SHARE:
        return Card(wording.headline(answer, display), sentences, NUMBER_WHY, day)
    title = f":blue[{wording.share_text(answer)}] less battery energy"
    return Card(title, (f"{THAN}.", *sentences), NUMBER_WHY, day)


def bars(books: pd.DataFrame, scenario: Scenario, display: Display) -> Card:
    """What the bars before and after show. `books` is from `model.kernel.timeline.books`."""
    title, words = before_after_words(books)
    net = grouped(books).sum()
    places = places_for(net.abs().max())
    saved = net["friction_only"] - net["regenerated"]
    if net["regenerated"] > 0 and round(saved, places) > 0:
        title = f"{fixed(saved, places)} of {fixed(net['friction_only'], places)} kWh saved"
    return Card(title, (), words, wording.day_words(scenario, display))


def lift_off(found: DriveAdvice, scenario: Scenario, display: Display) -> Card:
    """The strength advised, the deciding fact, and what the kind of brake pedal has to do with it."""
    advice, pedal = found.overall, wording.setting_card(scenario)
    yours = lift_off_words.yours_name(scenario.driver.lift_off_mps2, scenario.legs)
    told = lift_off_words.advised(advice, display)
    because, _ = told.reasons
    return Card(
        f"Lift-off: {told.title[:1].lower()}{told.title[1:]}",
        (
            because,
            *told.caveats,
            f"{pedal.title}. {pedal.sentences[-1]}",
            f"Lift-off: how strongly the car slows as the foot comes up. This one is set to {yours}.",
        ),
        f"{lift_off_words.rules_text(advice, display)}\n\n**What would change it**\n\n"
        f"{lift_off_words.what_if_text(found, display)}",
        wording.day_words(scenario, display),
    )


def winter(year: YearOfDrives | None, expected: str, display: Display) -> Card:
    """What is saved on a winter day, beside a summer day; `expected` says what becomes of motor slowing in winter."""
    if year is None:
        return Card("Winter takes some of it away", (f"{expected} {wording.PRESS_THE_PEDAL}",), WINTER_WHY)
    card = wording.winter_card(year, expected, display)
    return Card(card.title, card.sentences, WINTER_WHY, wording.winter_day_words(year, display))


def limits() -> Card:
    """When it is not there, and what it is no substitute for."""
    return Card(wording.LIMITS_CARD.title, wording.LIMITS_CARD.sentences, LIMITS_WHY)
