"""What came out, in sentences. Nothing here draws, and nothing here computes an energy."""

from __future__ import annotations

from dataclasses import dataclass

from model import MODEL_VERSION
from model.describe.figures import Quantity, Share, Shares, Span
from model.describe.scenario import Scenario, Year, own_prices
from model.kernel.follow import LATE_SHARE
from model.kernel.savings import Result
from model.sampling.beside_now import BesideNow, price_key
from model.sampling.drives import Bands, YearOfDrives
from model.sampling.hybrid import YearOfFuel
from model.words.quantities import Display, Value, span_of
from pages.parts.description import car_words, drive_words

NEGLIGIBLE_SHARE = 0.01
NEGLIGIBLE_KWH = 0.005
NEGLIGIBLE_L = 0.05


def other_version(version: str, display: Display) -> str:
    """What is said of a link that another version of the model made."""
    return display.say("link-of-other-version", link=version, here=MODEL_VERSION)


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
    """What the drive takes, over its distance and in all, for the cabin, and less than on friction brakes only."""
    taken, saved = Quantity(abs(result.net_kwh), "kWh"), span_of(answer.saved_kwh, "kWh")
    beside = display.say(
        "drive-takes-less", taken=taken, saved=saved, fuller=result.net_kwh < 0,
        heats=result.cabin_share >= NEGLIGIBLE_SHARE, cabin=Share(result.cabin_share, 0),
    )  # fmt: skip
    each_100km = answer.net_kwh_per_100km(result.distance_km)
    return display.say("on-this-drive"), display.range_text(each_100km, "kWh/100 km"), beside


def mixed_up_facts(result: Result, display: Display) -> list[tuple[str, str, str]]:
    """Three energies of the drive that are easily taken for one another, from middle figures, in one line each."""

    def kwh(energy: float) -> Quantity:
        return Quantity(energy, "kWh", places=2)

    # rounded as they are told, so that what is added adds up
    made, back, saved = (round(energy, 2) for energy in (result.made_kwh, result.battery_in_kwh, result.saved_kwh))
    aboard, spared = made - back, saved - made
    to_battery = display.say("back-beside", aboard=kwh(aboard)) if aboard >= 0.005 else display.say("back-beside-all")
    made_of = display.say("saved-beside", spared=kwh(spared), more=spared >= 0.005)
    return [
        (display.say("made-name"), display.figure(kwh(made)),
         display.say("made-beside", wheels=kwh(result.wheel_regen_kwh))),
        (display.say("back-name"), display.figure(kwh(back)), to_battery),
        (display.say("saved-name"), display.figure(kwh(saved)), made_of),
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
        return days, cost, display.say("year-cost-beside", currency=worth["currency"], money=worth["money"])
    if fuel.plugged and fuel.saved_l.high < NEGLIGIBLE_L:
        return days, wall, display.say("year-worth-no-fuel", **worth)
    litres = span_of(fuel.saved_l, "l")
    if not fuel.plugged:
        return days, display.say("year-fuel", fuel=litres), display.say("year-fuel-beside")
    both = display.say("year-fuel-and-wall", fuel=litres, energy=energy)
    return days, both, display.say("year-fuel-and-wall-beside", **worth)


def year_rest(year: YearOfDrives, display: Display) -> str:
    """What the year would take from the wall without regeneration, and the CO₂ of it."""
    energy, co2 = span_of(year.saved_wall_kwh, "kWh"), span_of(year.saved_co2_kg, "kg")
    return display.say("year-rest", energy=energy, co2=co2)


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


def beside_words(found: BesideNow, scenario: Scenario, display: Display) -> tuple[str, ...]:
    """Both cars by name, each with the sum of its own energy, and how far the sums are apart."""
    apart, currency, car = found.apart, scenario.year.currency, car_words(scenario, display)
    both = display.say(
        "beside-both",
        car=car,
        fuel=found.fuel,
        distance=Quantity(found.distance_km, "km", 3),
        currency=currency,
        cost=span_of(found.cost, ""),
        fuel_cost=Quantity(found.fuel_cost, "", 3),
    )
    larger = "fuel" if apart.low > 0 else "electricity" if apart.high < 0 else "neither"
    least, most = sorted((abs(apart.low), abs(apart.high)))
    between = Span(least, most, "", 2)
    far = display.say("beside-apart", larger=larger, fuel=found.fuel, car=car, currency=currency, apart=between)
    return both, far, display.say("beside-left-out")


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
