"""The cards to hold towards somebody, in sentences from numbers: one idea each, and why."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import pandas as pd

from model.describe.figures import Quantity, Several, Share
from model.describe.scenario import Scenario, Year
from model.lift_off.advice import DriveAdvice, OnRoad
from model.limits.cold_day import FADES
from model.limits.foot_and_pedal import FootAndPedal
from model.limits.winter import Situation
from model.sampling.drives import Bands, YearOfDrives
from model.sampling.uncertainty import Band
from model.words.lift_off import word_id
from model.words.quantities import Display, Value, inside, span_of
from pages.parts import card_words, departures, description, lift_off_words, wording
from pages.parts.charts.energy import grouped, places_for
from pages.parts.charts.energy_words import before_after_words
from pages.parts.charts.pedal import RowWords
from pages.parts.charts.squares import SAVED


@dataclass(frozen=True)
class ShowCard(card_words.Card):
    """One idea, with what is answered when somebody asks why, the day it is about, if any, and its figures in small."""

    why: str
    day: str = ""
    small: str = ""


def tell(display: Display) -> ShowCard:
    """Drive, car and season, one tap each."""
    return ShowCard(display.say("card-tell"), (), display.say("card-tell-why"))


def number(
    answer: Bands, scenario: Scenario, display: Display, beside: Sequence[str], fuel: str = "", *, drawn: bool = False
) -> ShowCard:
    """What regeneration saves on this drive; `beside` is what has to stand with the number.

    A hybrid is told in `fuel`, in words, since its battery's range says nothing. What is `drawn`, the range on a full
    battery, is not said again.
    """
    day, apart = description.day_words(scenario, display), departures.text(scenario, display)
    drive = description.on_drive(scenario, display)
    saved = span_of(answer.saved_kwh, "kWh")
    about: dict[str, Value] = {"drive": drive, "apart": apart, "also": bool(apart), "saved": saved}
    if fuel:
        sums = [display.say("card-number-saved-fuel", fuel=fuel, **about)]
    else:
        sums = [display.say("card-number-saved", **about), *range_words(answer, scenario, display, drawn=drawn)]
    sentences, why = (*sums, *beside), display.say("card-number-why")
    if not wording.has_share(answer):
        return ShowCard(wording.headline(answer, display), sentences, why, day)
    title = display.say("card-number", share=f":blue[{wording.share_text(answer, display)}]")
    return ShowCard(title, sentences, why, day)


def year_cost(year: YearOfDrives, prices: Year, display: Display) -> str:
    """What a year costs for electricity, and how much more it would be; a hybrid's is told in fuel."""
    return display.say(
        "card-year-cost", days=wording.year_days(year), currency=prices.currency, cost=span_of(year.cost, ""),
        money=span_of(year.saved_money, ""),
    )  # fmt: skip


def range_words(answer: Bands, scenario: Scenario, display: Display, *, drawn: bool = False) -> list[str]:
    """How far a full battery reaches, unless that is `drawn`, and how far from the daily charge limit.

    Nothing where there is no range.
    """
    if answer.range_km is None or answer.range_gain_km is None or answer.daily_range_km is None:
        return []
    gain, limit = span_of(answer.range_gain_km, "km"), scenario.year.daily_charge_limit
    said = [] if drawn else [display.say("card-number-range", range=span_of(answer.range_km, "km"), gain=gain)]
    if limit < 1:
        said.append(display.say("card-number-daily", daily=span_of(answer.daily_range_km, "km"), limit=Share(limit, 0)))
    return [" ".join(said)] if said else []


def fuel_words(
    litres_per_100km: Band | None, in_year: str, days: int, display: Display
) -> str:
    """What a hybrid spares, on 100 km and in the year; empty for other cars."""
    if litres_per_100km is None:
        return display.say("fuel-spared-in-year", in_year=in_year, days=days) if in_year else ""
    fuel = span_of(litres_per_100km, "l/100 km")
    if not in_year:
        return display.say("fuel-spared", fuel=fuel)
    return display.say("fuel-spared-and-in-year", fuel=fuel, in_year=in_year, days=days)


def bars(books: pd.DataFrame, scenario: Scenario, display: Display) -> ShowCard:
    """What the bars before and after show. `books` is from `model.kernel.timeline.books`."""
    title, words = before_after_words(books, display)
    net = grouped(books).sum()
    places = places_for(net.abs().max())
    saved, without = net["friction_only"] - net["regenerated"], net["friction_only"]
    if net["regenerated"] > 0 and round(saved, places) > 0:
        title = display.say(
            "card-bars", saved=Quantity(saved, "", places=places), without=Quantity(without, "kWh", places=places)
        )
    return ShowCard(title, (), words, description.day_words(scenario, display))


def heat(books: pd.DataFrame, display: Display) -> list[tuple[str, str]]:
    """The three figures of the bars: a meaning, which has its colour, and words that begin with the figure."""
    uses = grouped(books)
    net = uses.sum()
    places = places_for(net.abs().max())
    heat = {run: Quantity(float(uses[run]["friction"]), "kWh", places=places) for run in uses}
    saved = Quantity(float(net["friction_only"] - net["regenerated"]), "kWh", places=places)
    return [
        ("friction", display.say("card-heat-without", heat=heat["friction_only"])),
        ("friction", display.say("card-heat-with", heat=heat["regenerated"])),
        ("back", display.say("card-heat-saved", saved=saved)),
    ]


def square_name(meaning: str, display: Display) -> str:
    """What a kind of square stands for."""
    return display.say("square-saved") if meaning == SAVED else display.say("energy-group", group=meaning)


def squares_text(counts: Mapping[str, int], display: Display) -> str:
    """A hundred squares as a row of counts, for who cannot see them."""
    kinds = [(of, count) for of, count in counts.items() if count]
    squares = (display.say("square-count", squares=count, name=square_name(of, display)) for of, count in kinds)
    return display.figure(Several(tuple(squares), ""))


def lift_off(found: DriveAdvice, scenario: Scenario, display: Display) -> ShowCard:
    """The strength advised, the deciding fact, and what the kind of brake pedal has to do with it."""
    advice, pedal = found.overall, card_words.setting_card(scenario, display)
    yours = lift_off_words.yours_name(scenario.driver.lift_off_mps2, scenario.legs, display)
    advice_words = lift_off_words.advised_in_words(advice, display)
    return ShowCard(
        display.say("card-lift-off", advice=inside(advice_words.title)),
        (
            advice_words.reasons[0],
            *advice_words.caveats,
            display.say("card-lift-off-pedal", title=pedal.title, sentence=pedal.sentences[-1]),
        ),
        display.say(
            "card-lift-off-why",
            rules=lift_off_words.rules_text(advice, display),
            changes=lift_off_words.what_if_text(found, display),
        ),
        description.day_words(scenario, display),
        f"{display.say('card-lift-off-advised', strength=inside(lift_off_words.heading(advice, display)))}  \n"
        f"{display.say('card-lift-off-set', yours=yours)}",
    )


def winter(year: YearOfDrives | None, expected: str, display: Display) -> ShowCard:
    """What is saved on a winter day, beside a summer day; `expected` says what becomes of motor slowing in winter."""
    why = display.say("card-winter-why")
    if year is None:
        slowing = f"{expected} {display.say('press-the-pedal')}"
        return ShowCard(display.say("card-winter-in-words"), (slowing,), why)
    card = card_words.winter_card(year, expected, display)
    taken, slowing = card.sentences[-2:]
    return ShowCard(
        card.title, (*card.sentences[:-2], slowing), f"{taken}\n\n{why}", card_words.winter_day_words(year, display)
    )


def limits(display: Display, *, drawn: bool = False, slippery: str = "") -> ShowCard:
    """When it is not there, and what it is no substitute for.

    Where it is `drawn` the picture says when; what is advised there on a `slippery` road goes with it.
    """
    card, why = card_words.limits_card(display), display.say("card-limits-why")
    if not drawn:
        return ShowCard(card.title, card.sentences, why)
    cautions = display.say("no-substitute"), display.say("press-the-pedal")
    return ShowCard(display.say("card-pedal"), cautions, f"{why}\n\n{slippery}")


LEAST_MPS2 = 0.1
"""A motor that slows the car by less as the foot comes up shows nothing that could fade."""


def beside_the_pedal(found: Sequence[FootAndPedal], there: OnRoad, display: Display) -> list[RowWords]:
    """The words of a card's picture, a row each; none where the foot that comes up hardly asks the motor.

    `there` is what is advised on the slippery road of the last row.
    """
    usual = found[0]
    if usual.motor_mps2 < LEAST_MPS2:
        return []
    say = display.say
    names = {
        Situation.USUAL: say("pedal-row-usual", speed=Quantity(FADES["speed_kmh"], "km/h", places=0)),
        Situation.COLD: say("fade-cold", warmth=description.degrees(FADES["cold_battery_c"])),
        Situation.FULL: say("fade-full"),
        Situation.SLIPPERY: say("fade-slippery", surface=there.road),
    }
    rows = []
    for row in found:
        share = row.motor_mps2 / usual.motor_mps2
        left = "none" if round(share, 2) <= 0 else "all" if round(share, 2) >= 1 else "some"
        match row.situation:
            case Situation.USUAL:
                foot, pedal = say("pedal-foot-usual"), say("pedal-usual")
            case Situation.SLIPPERY:
                foot, pedal = say("pedal-foot-set", there=word_id(there.word)), say("pedal-slippery")
            case _:
                foot, pedal = say("pedal-foot-left", left=left, share=Share(share, 0)), say("pedal-as-ever")
        rows.append(RowWords(names[row.situation], foot, pedal))
    return rows
