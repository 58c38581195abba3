"""Sentences from numbers. Nothing here draws, and nothing here computes an energy."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace

from model import MODEL_VERSION
from model.describe import leg_hills
from model.describe.fields import Field
from model.describe.figures import Quantity, Several, Share, Shares, Span
from model.describe.parameters import Assumed, assumed_figures, class_labels
from model.describe.scenario import SEASONS, Conditions, Leg, Scenario, Year, own_prices
from model.describe.scenario_io import starting_drives
from model.kernel.follow import LATE_SHARE
from model.kernel.savings import Result
from model.sampling.beside_now import BesideNow, price_key
from model.sampling.drives import Bands, YearOfDrives
from model.sampling.hybrid import YearOfFuel
from model.traces.habits import HABITS as STYLES
from model.words.entries import HABITS, choice_word, entered, habit_text
from model.words.quantities import Display, Value, capital, inside, span_of

NO_BREAK = "\N{NO-BREAK SPACE}"
UNITS = re.compile(
    r"(?<=\d) (?=(?:%|°[CF]|m/s²|[kM]?Wh?|k[mgN]|km/h|mph|lbf?|[glms]|mi|ft|min|times|points)(?!\w))"
)
NEGLIGIBLE_SHARE = 0.01
NEGLIGIBLE_KWH = 0.005
NEGLIGIBLE_L = 0.05
HABIT_NUMBERS = {
    "looks_ahead": "peak_slowing_mps2",
    "pull_away": "peak_pull_away_mps2",
    "steady_foot": "swing_share",
}
"""Which of the builder's numbers stands behind a habit's words."""


def together(sentence: str) -> str:
    """A sentence whose numbers stay on one line with their units."""
    return UNITS.sub(NO_BREAK, sentence)


def other_version(version: str, display: Display) -> str:
    """What is said of a link that another version of the model made."""
    return display.say("link-of-other-version", link=version, here=MODEL_VERSION)


# the answer


def answer_before(scenario: Scenario, display: Display) -> str:
    """What a grey answer is to, where the drive as described now has none."""
    return display.say("answer-before", drive=drive_words(scenario, display))


def headline(answer: Bands, display: Display, marked: bool = False) -> str:
    """What regeneration saves on the drive: the band and its denominator, in one sentence.

    As Markdown it may have its band `marked` in the colour of what is back in the battery.
    """
    saved, share = answer.saved_kwh, answer.saved_share
    if saved.high < NEGLIGIBLE_KWH:
        return display.say("saved-nothing")
    if share is None:
        return display.say("saved-hill-drives", more=span_of(saved, "kWh"))
    if share.low > 1:
        return display.say("saved-ends-fuller", without=span_of(answer.friction_only_net_kwh, "kWh"))
    if share.high < NEGLIGIBLE_SHARE:
        return display.say("saved-hardly")
    text = share_text(answer, display)
    return display.say("saved-share", share=f":blue[{text}]" if marked else text)


def in_sight(answer: Bands, display: Display) -> str:
    """The answer in one short line: what is saved, and how far a full battery reaches."""
    if not has_share(answer):
        return headline(answer, display)
    share = share_text(answer, display)
    if answer.range_km is None:
        return display.say("in-sight", share=share)
    return display.say("in-sight-range", share=share, range=span_of(answer.range_km, "km"))


def has_share(answer: Bands) -> bool:
    """Whether what is saved can be told as a share: neither more than all of it nor next to nothing."""
    share = answer.saved_share
    saved = answer.saved_kwh.high >= NEGLIGIBLE_KWH
    return saved and share is not None and share.low <= 1 and share.high >= NEGLIGIBLE_SHARE


def share_text(answer: Bands, display: Display) -> str:
    """The band of energy saved, such as “14 to 19 %”."""
    assert answer.saved_share is not None
    return display.figure(Shares(answer.saved_share.low, answer.saved_share.high))


def saved_text(answer: Bands, display: Display) -> str:
    """Energy saved on the drive, beside what the drive takes."""
    return display.range_text(answer.saved_kwh, "kWh")


def taken_text(net_kwh: float, display: Display) -> str:
    """What the drive takes from the battery with regeneration, or gives it."""
    return display.say("drive-takes", taken=Quantity(abs(net_kwh), "kWh"), fuller=net_kwh < 0)


def range_fact(answer: Bands, daily_charge_limit: float, display: Display) -> tuple[str, str, str]:
    """Range on a full battery, what of it is regeneration's, and range at the daily limit [1].

    A drive that takes next to nothing has no range to tell.
    """
    battery = display.say("on-a-full-battery")
    if answer.range_gain_km is None or answer.range_km is None or answer.daily_range_km is None:
        return battery, display.say("range-none"), display.say("range-none-why")
    beside = display.say(
        "range-made-of",
        gain=span_of(answer.range_gain_km, "km"),
        daily=span_of(answer.daily_range_km, "km"),
        limit=Share(daily_charge_limit, 0),
        full=daily_charge_limit == 1,
    )
    return battery, display.range_text(answer.range_km, "km"), beside


def drive_fact(result: Result, answer: Bands, display: Display) -> tuple[str, str, str]:
    """What the drive takes, over its distance and in all, and how much less that is than on friction brakes only."""
    taken, saved = Quantity(abs(result.net_kwh), "kWh"), span_of(answer.saved_kwh, "kWh")
    beside = display.say("drive-takes-less", taken=taken, saved=saved, fuller=result.net_kwh < 0)
    each_100km = answer.net_kwh_per_100km(result.distance_km)
    return display.say("on-this-drive"), display.range_text(each_100km, "kWh/100 km"), beside


def mixed_up_facts(result: Result, display: Display) -> list[tuple[str, str, str]]:
    """Three energies of the drive that are easily taken for one another, from middle figures, in one line each."""

    def kwh(energy: float) -> Quantity:
        return Quantity(energy, "kWh", places=2)

    aboard = result.made_kwh - result.battery_in_kwh
    to_battery = display.say("back-beside", aboard=kwh(aboard)) if aboard >= 0.005 else display.say("back-beside-all")
    return [
        (display.say("made-name"), display.figure(kwh(result.made_kwh)),
         display.say("made-beside", wheels=kwh(result.wheel_regen_kwh))),
        (display.say("back-name"), display.figure(kwh(result.battery_in_kwh)), to_battery),
        (display.say("saved-name"), display.figure(kwh(result.saved_kwh)), display.say("saved-beside")),
    ]  # fmt: skip


def mixed_up_words(result: Result, display: Display) -> str:
    """The same three energies in one phrase."""
    found = {"made": result.made_kwh, "back": result.battery_in_kwh, "saved": result.saved_kwh}
    return display.say("paper-mixed-up", **{name: Quantity(kwh, "kWh", places=2) for name, kwh in found.items()})


def year_days(year: YearOfDrives) -> int:
    """Days with this drive in the year."""
    return sum(row.days for row in year.rows)


def year_fact(
    year: YearOfDrives, prices: Year, display: Display, fuel: YearOfFuel | None = None
) -> tuple[str, str, str]:
    """What a year costs in electricity, and how much more it would be without regeneration; of an engine, fuel spared.

    `fuel` is None for a car without an engine; one that has a plug too is told in both, whatever the day shown.
    """
    days = display.say("year-of-days", days=year_days(year))
    energy = span_of(year.saved_wall_kwh, "kWh")
    worth: dict[str, Value] = {
        "currency": prices.currency,
        "money": span_of(year.saved_money, ""),
        "co2": span_of(year.saved_co2_kg, "kg"),
    }
    wall = display.say("year-wall", energy=energy)
    if fuel is None:
        cost = display.say("year-cost", currency=prices.currency, cost=span_of(year.cost, ""))
        return days, cost, display.say("year-cost-beside", energy=energy, **worth)
    if fuel.plugged and fuel.saved_l.high < NEGLIGIBLE_L:
        return days, wall, display.say("year-worth-no-fuel", **worth)
    litres = span_of(fuel.saved_l, "l")
    if not fuel.plugged:
        return days, display.say("year-fuel", fuel=litres), display.say("year-fuel-beside")
    both = display.say("year-fuel-and-wall", fuel=litres, energy=energy)
    return days, both, display.say("year-fuel-and-wall-beside", **worth)


def beside_fact(found: BesideNow, year: Year, display: Display) -> tuple[str, str, str]:
    """What the car driven now burns over the same distance, and what that is made of."""
    currency = year.currency
    yours = price_key(year) in own_prices(year, us=display.us)
    made_of = display.say(
        "beside-made-of",
        distance=Quantity(found.distance_km, "km", 3),
        used=Quantity(found.l_per_100km, "litres/100 km", 3, trimmed=True),
        currency=currency,
        price=Quantity(found.price_per_l, "per l", 3),
        yours=yours,
    )
    cost = display.say("beside-cost", fuel=found.fuel, currency=currency, cost=Quantity(found.fuel_cost, "", 3))
    return display.say("beside-name", fuel=found.fuel), cost, made_of


def beside_words(found: BesideNow, scenario: Scenario, display: Display) -> str:
    """Both cars by name, each with the sum of its own energy."""
    return display.say(
        "beside-both",
        car=car_words(scenario, display),
        fuel=found.fuel,
        distance=Quantity(found.distance_km, "km", 3),
        currency=scenario.year.currency,
        cost=span_of(found.cost, ""),
        fuel_cost=Quantity(found.fuel_cost, "", 3),
    )


def moved_prices(year: Year, display: Display) -> str:
    """That price and CO₂ of electricity came with the units."""
    price, co2 = Quantity(year.price_per_kwh, "", places=2), Quantity(year.co2_g_per_kwh, "g", places=0)
    return display.say("moved-prices", us=display.us, currency=year.currency, price=price, co2=co2)


def not_followed(described_s: float, driven_s: float, display: Display) -> str:
    """What the car did where it could not keep the described speeds; empty where nobody would see it."""
    if driven_s <= (1 + LATE_SHARE) * described_s:
        return ""
    places = 0 if round(described_s / 60) < round(driven_s / 60) else 1
    if round(described_s / 60, places) == round(driven_s / 60, places):
        return ""
    return display.say(
        "not-followed",
        driven=Quantity(driven_s / 60, "minutes", places=places),
        described=Quantity(described_s / 60, "", places=places),
    )


# the description


def car_words(scenario: Scenario, display: Display) -> str:
    """The car, such as “family hatch”; says when its figures were changed."""
    changed = any(key != "brake_pedal" for key, _ in scenario.stated)
    return display.say("car-adjusted", car=class_name(scenario)) if changed else class_name(scenario)


def class_name(scenario: Scenario) -> str:
    """The car's class, such as “family hatch”."""
    return inside(class_labels()[scenario.car_class])


def drive_id(scenario: Scenario) -> str | None:
    """The starting drive whose road the scenario has; None for one of the visitor's own."""
    # a strength set for one leg changes the car there, not the road
    road = tuple(replace(leg, lift_off_mps2=None) for leg in scenario.legs)
    for name, (_, _, start) in starting_drives().items():
        if (start.legs, start.return_trip) == (road, scenario.return_trip):
            return name
    return None


def drive_words(scenario: Scenario, display: Display) -> str:
    """The drive: a starting drive's name, or its length."""
    name = drive_id(scenario)
    if name is not None:
        return inside(starting_drives()[name][0])
    return display.say("drive-of-length", length=length_of(scenario))


def on_drive(scenario: Scenario, display: Display) -> str:
    """The car on its drive, such as “city car on the flat town commute”."""
    car, drive = car_words(scenario, display), drive_words(scenario, display)
    return display.say("car-on-drive", car=car, drive=drive, named=drive_id(scenario) is not None)


def length_of(scenario: Scenario) -> Quantity:
    """How far the drive goes, the way back included."""
    length = sum(leg.distance_km for leg in scenario.legs) * (2 if scenario.return_trip else 1)
    return Quantity(length, "km", 3, trimmed=True)


def season_of(conditions: Conditions, year: Year) -> str | None:
    """The season whose temperature it is; None for a temperature of its own."""
    return next((name for name in SEASONS if getattr(year, f"{name}_c") == conditions.ambient_c), None)


def season_words(conditions: Conditions, year: Year, display: Display) -> str:
    """Season and temperature, such as “spring, 11 °C”, and what else is out of the ordinary."""
    season = season_of(conditions, year)
    words: list[str | Quantity] = [display.say("season-name", season=season)] if season else []
    words.append(degrees(conditions.ambient_c))
    if conditions.surface != "dry":
        words.append(choice_word("surface", conditions.surface, display))
    if conditions.preconditioned:
        words.append(display.say("start-warmed", plugged=conditions.plugged_in))
    if not conditions.cabin:
        words.append(display.say("cabin-off"))
    return display.figure(Several(tuple(words), ""))


def day_words(scenario: Scenario, display: Display) -> str:
    """The day that is shown, such as “a day of −5 °C, snow” or “a day in winter, 1 °C”."""
    season = season_of(scenario.conditions, scenario.year) is not None
    return display.say("day-shown", day=season_words(scenario.conditions, scenario.year, display), season=season)


def degrees(celsius: float) -> Quantity:
    """A temperature in whole degrees."""
    return Quantity(celsius, "°C", places=0)


def pedal_of(scenario: Scenario) -> str:
    """The kind of brake pedal: as stated, else the class's."""
    assumed = assumed_figures(scenario.car_class)["brake_pedal"].mid
    return str(dict(scenario.stated).get("brake_pedal", assumed))


def pedal_words(scenario: Scenario, display: Display) -> str:
    """The brake pedal, such as “blended brake pedal”."""
    return display.say("brake-pedal", pedal=pedal_of(scenario))


def pedal_help(display: Display) -> str:
    """What the kinds of brake pedal are, and how to tell."""
    return display.say("brake-pedal-help", speed=Quantity(50, "km/h", places=0))


def hill_words(leg: Leg, display: Display) -> str:
    """Where the hill of a leg is, under its entries."""
    length = leg_hills.hill_km(leg)
    if length > leg_hills.WHOLE_SHARE * leg.distance_km:
        return display.say("hill-all-the-way", length=Quantity(leg.distance_km, "km"))
    rest = Quantity(leg.distance_km - length, "km")
    return display.say("hill-on-part", length=Quantity(length, "km"), rest=rest)


def leg_words(leg: Leg, display: Display) -> str:
    """One leg in a line: length, speed, what interrupts it, hills."""
    say = display.say
    parts = [say("leg-road", distance=Quantity(leg.distance_km, "km"), speed=Quantity(leg.speed_kmh, "km/h"))]
    if leg.stops:
        parts.append(say("leg-with-stops", stops=leg.stops))
    if leg.slow_downs:
        parts.append(say("leg-slow-downs", slow_downs=leg.slow_downs))
    if not leg.stops and not leg.slow_downs:
        parts.append(say("leg-without-stops"))
    if leg.climb_m:
        parts.append(say("leg-climb", height=Quantity(leg.climb_m, "m")))
    if leg.descent_m:
        parts.append(say("leg-descent", height=Quantity(leg.descent_m, "m")))
    if leg.surface != "dry":
        parts.append(choice_word("surface", leg.surface, display))
    # a line that is too long breaks at a comma, not between a figure and its unit
    return display.figure(Several(tuple(part.replace(" ", NO_BREAK) for part in parts), ""))


def way_back_words(conditions: Conditions, display: Display) -> str:
    """How long the car stands before the way back, such as “after 8 h”, and whether plugged in."""
    if not conditions.stands_h:
        return display.say("way-back-at-once")
    stands = Quantity(conditions.stands_h, "h", 6, trimmed=True)
    return display.say("way-back-after", stands=stands, plugged=conditions.stands_plugged_in)


def habits_words(scenario: Scenario, display: Display) -> str:
    """Habits, load and charge in a line; habits that are as usual are not named."""
    driver, conditions = scenario.driver, scenario.conditions
    unusual = [key for key in HABITS if getattr(driver, key) != "usual"]
    words = [habit_text(key, getattr(driver, key), display) for key in unusual] or [display.say("habits-as-usual")]
    if conditions.payload_kg:
        words.append(display.say("habits-load", mass=Quantity(conditions.payload_kg, "kg")))
    if conditions.trailer_kg:
        words.append(display.say("habits-trailer", mass=Quantity(conditions.trailer_kg, "kg")))
    words.append(display.say("habits-charge", charge=Share(conditions.soc_start, 0)))
    return capital(display.figure(Several(tuple(words), "")))


def habit_number(key: str, choice: str, display: Display) -> str:
    """The number of the builder that stands behind the word of a habit."""
    value = STYLES[HABIT_NUMBERS[key]][choice]
    if key == "looks_ahead":
        return display.say("habit-slowing-number", slowing=Quantity(value, "m/s²", 6, trimmed=True))
    if key == "pull_away":
        return display.say("habit-pulling-number", rate=Quantity(value, "m/s²", 6, trimmed=True))
    deeper = STYLES["over_slowing_share"][choice]
    return display.say("habit-swing-number", swing=Share(value, 0), deeper=Share(deeper, 0), also=deeper > 0)


def provenance(field: Field, assumed: Assumed, display: Display) -> str:
    """A class's band of one figure, what kind of knowledge it is, and where it is from."""
    known = known_words(assumed, display)
    if field.kind != "number" or assumed.low == assumed.high:
        return known
    low, high = (entered(field, end, display) for end in assumed.numbers[::2])
    band = display.figure(Span(low.value, high.value, low.unit, low.digits, trimmed=True))
    return display.say("provenance-with-band", band=band, known=known)


def known_words(assumed: Assumed, display: Display) -> str:
    """What kind of knowledge a figure is, and where it is from."""
    return display.say("provenance", kind=assumed.kind.replace(" ", "-"), source=assumed.source)


# what is told with what must be said along with it


@dataclass(frozen=True)
class Told:
    """A title, sentences, and caveats that go with them wherever they are told."""

    title: str
    reasons: tuple[str, ...]
    caveats: tuple[str, ...]

    @property
    def sentences(self) -> tuple[str, ...]:
        """All that stands below the title."""
        return self.reasons + self.caveats
