"""Cards, to show and to print: a few large words and what stands below them."""

from __future__ import annotations

from dataclasses import dataclass

from model.describe.figures import Shares
from model.describe.scenario import Scenario
from model.sampling.drives import YearOfDrives
from model.words.quantities import Display, span_of
from pages.parts.description import degrees, pedal_of
from pages.parts.wording import taken_text


@dataclass(frozen=True)
class Card:
    """One idea: a few large words and what stands below them."""

    title: str
    sentences: tuple[str, ...]


def setting_card(scenario: Scenario, display: Display) -> Card:
    """What the kind of brake pedal means for this driver."""
    say = display.say
    if pedal_of(scenario) == "blended":
        return Card(say("card-blended"), (say("card-blended-press"), say("card-blended-comfort")))
    return Card(say("card-friction"), (say("card-friction-why"),))


def limits_card(display: Display) -> Card:
    """When regeneration is not there, and what it is no substitute for."""
    expect = f"{display.say('may-be-weaker')} {display.say('press-the-pedal')}"
    return Card(display.say("card-limits"), (expect, display.say("no-substitute")))


def winter_day_words(year: YearOfDrives, display: Display) -> str:
    """The winter day of the year, such as “the year’s winter day, 1 °C, snow”."""
    row = next(row for row in year.rows if row.season == "winter")
    return display.say("winter-day-of-year", air=degrees(row.ambient_c), surface=row.surface)


def winter_card(year: YearOfDrives, expected: str, display: Display) -> Card:
    """What winter makes of range and saving, beside summer, and of motor slowing: `expected`, the last sentence."""
    slowing = f"{expected} {display.say('press-the-pedal')}"
    day = {row.season: row for row in year.rows}
    cold, warm = day["winter"], day["summer"]
    taken = display.say(
        "card-winter-taken",
        air=degrees(cold.ambient_c),
        in_winter=taken_text(cold.taken_kwh, display),
        in_summer=taken_text(warm.taken_kwh, display),
    )
    saved = span_of(cold.saved_kwh, "kWh")
    reached = []
    if cold.range_km is not None and warm.range_km is not None:
        ranges = {"in_winter": span_of(cold.range_km, "km"), "in_summer": span_of(warm.range_km, "km")}
        reached.append(display.say("card-winter-range", air=degrees(cold.ambient_c), **ranges))
    shares = [row.saved_share for row in (cold, warm) if row.net_kwh.low > 0 and row.saved_share]
    if len(shares) < 2:
        less = display.say("card-winter-less")
        return Card(display.say("card-winter", saved=saved), (*reached, less, taken, slowing))
    in_winter, in_summer = (Shares(share.low, share.high) for share in shares)
    return Card(
        display.say("card-winter", saved=in_winter),
        (
            *reached,
            display.say("card-winter-share", in_summer=in_summer),
            f"{taken} {display.say('card-winter-saved', saved=saved)}",
            slowing,
        ),
    )
