"""The cold battery in sentences from numbers."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from model.describe.figures import Quantity, Share
from model.describe.scenario import Scenario
from model.limits.cold_day import FADES, ColdDay
from model.limits.full_start import Normal
from model.limits.limit_settings import slipperiest
from model.limits.winter import MILD_C, LiftOffLeft, SeasonCosts, SeasonPart, Situation, WarmUp
from model.limits.winter_advice import CHARGED_WARMER_K, HEATER_LOWER_K, SHELTER_C, WinterMeasure
from model.sampling.hybrid import has_engine
from model.words.quantities import Display, Value
from pages.parts.charts.cold import season_rows
from pages.parts.description import degrees, season_of
from pages.parts.winter_words import (
    LEAST_KWH,
    LimitWords,
    ends,
    energy,
    energy_more,
    lasts,
    minutes,
    normal_km,
    slowing_expected,
    told_alike,
)

HARDLY_MPS2 = 0.005
SLIPPERY = ("snow", "ice", "glazed-ice")
MILD = degrees(MILD_C)
STAND_C = -20 / 3
"""At which the published cars were on the test stand [°C]: 20 °F."""


def cold(found: ColdDay, scenario: Scenario, display: Display) -> LimitWords:
    """The part in words."""
    expected = f"**{slowing_expected(found.normal, display)}** {display.say('press-the-pedal')}"
    return LimitWords(
        display.say("cold-heading"),
        *_number(found, scenario, slipperiest(scenario).surface, display),
        (
            _taken_fact(found, display),
            *_season_facts(found, scenario, display),
            warm_up_fact(found.warm_up, display),
        ),
        (expected, *measure_words(found, display)),
        (display.say("cold-mind-feel"), display.say("cold-mind-assumed")),
    )


def measure_words(found: ColdDay, display: Display) -> list[str]:
    """What helps, in the order of what it brings on this drive; what brings nothing to speak of is left out."""
    sentences = (_measure(measure, plugged=found.warm_up.plugged_in, display=display) for measure in found.measures)
    return [words for words in sentences if words]


def _measure(measure: WinterMeasure, *, plugged: bool, display: Display) -> str:
    saved, costs = energy(measure.saved_kwh, display), energy(measure.costs_kwh, display)
    if measure.id == "plug":
        if measure.brings_kwh > 0:
            return display.say("cold-warm-up-pays", saved=saved, costs=costs, plugged=plugged)
        spared = energy(max(measure.saved_kwh, 0.0), display)
        worth_telling = measure.costs_kwh >= LEAST_KWH
        words = display.say("cold-warm-up-does-not-pay", spared=spared, costs=costs, plugged=plugged)
        return words if worth_telling else ""
    if measure.saved_kwh < LEAST_KWH:
        return ""
    if measure.id == "heater":
        return display.say("cold-heater-lower", degrees=_apart(HEATER_LOWER_K, display), saved=saved)
    if measure.id == "shelter":
        return display.say("cold-park-warmer", warmth=degrees(SHELTER_C), saved=saved)
    return display.say("cold-charge-late", degrees=_apart(CHARGED_WARMER_K, display), saved=saved)


def _apart(kelvin: float, display: Display) -> Quantity:
    # degrees between two temperatures, not a temperature
    return Quantity(1.8 * kelvin, "°F", places=0) if display.us else Quantity(kelvin, "°C", places=0)


def _number(found: ColdDay, scenario: Scenario, surface: str, display: Display) -> tuple[str, str]:
    """How long motor slowing is weaker, and how far batteries differ."""
    if found.ordinary_kw == 0:
        return display.say("cold-nothing-to-recover"), ""
    start, normal = found.way.iloc[0], found.normal["mid"]
    battery_c = round(float(start["battery_c"]), 1)
    sentence = display.say(
        "cold-slowing", battery=degrees(battery_c), charge=Share(float(start["soc"]), places=0), lasts=lasts(normal),
        minutes=minutes(normal), km=normal_km(normal, scenario, display),
    )  # fmt: skip
    more = [_batteries(found.normal["low"], found.normal["high"], scenario, display)]
    if battery_c >= MILD_C and normal is not None and normal.minutes > 0:
        more.append(display.say("cold-charge-leaves-little-room"))
    if surface in SLIPPERY:
        more.append(display.say("cold-usual-on-this-road", surface=surface))
    return sentence, " ".join(more)


def _batteries(least: Normal | None, most: Normal | None, scenario: Scenario, display: Display) -> str:
    km = normal_km(least, scenario, display), normal_km(most, scenario, display)
    if told_alike(least, most) and km[0] == km[1]:
        return display.say("cold-batteries-alike", lasts=lasts(least), minutes=minutes(least), km=km[0])
    return display.say(
        "cold-batteries-differ", most=lasts(most), most_minutes=minutes(most), most_km=km[1], least=lasts(least),
        least_minutes=minutes(least), least_km=km[0],
    )  # fmt: skip


def _taken_fact(found: ColdDay, display: Display) -> tuple[str, str, str]:
    """What the battery takes at the start, beside what slow-downs give."""
    least, most = (Quantity(end, "kW") for end in ends(found.takes_kw.values()))
    start = found.way.iloc[0]
    about: dict[str, Value] = {
        "ordinary": Quantity(found.ordinary_kw, "kW"),
        "battery": degrees(round(float(start["battery_c"]), 1)),
        "charge": Share(float(start["soc"]), places=0),
    }
    if display.figure(least) == display.figure(most):
        beside = display.say("cold-taken-beside", **about)
    else:
        # each end with its own digits: they may lie far apart
        beside = display.say("cold-taken-differs", least=replace(least, unit=""), most=most, **about)
    return display.say("cold-taken"), display.text(found.takes_kw["mid"], "kW"), beside


def _season_facts(found: ColdDay, scenario: Scenario, display: Display) -> list[tuple[str, str, str]]:
    """What the season takes, and what becomes of the range."""
    costs, rows, facts = found.costs, season_rows(found.costs.parts_kwh), []
    if abs(costs.more_kwh) >= LEAST_KWH and rows:
        part, most = max(rows, key=lambda row: abs(row[1]))
        season = season_of(scenario.conditions, scenario.year) or "other"
        facts.append(
            (
                display.say("cold-season-takes", season=season),
                energy_more(costs.more_kwh, display),
                display.say("cold-season-than", mild=MILD, part=part, energy=energy(most, display)),
            )
        )
    if has_engine(costs.season.car) or costs.range_km is None or costs.mild_range_km is None:
        return facts
    lost = Share(abs(costs.range_lost_share or 0.0))
    if display.figure(lost) != display.figure(Share(0.0)):
        reach, mild = Quantity(costs.range_km, "km"), Quantity(costs.mild_range_km, "km")
        facts.append(
            (
                display.say("cold-range"),
                display.say("cold-range-change", shorter=costs.range_km < costs.mild_range_km, share=lost),
                display.say("cold-range-beside", range=reach, mild=mild),
            )
        )
    return facts


def warm_up_fact(found: WarmUp, display: Display) -> tuple[str, str, str]:
    """What warming up before the drive brings, parted into heat and regeneration, and what it takes."""
    what = display.say("cold-warmed-up")
    if found.battery_kwh + found.cabin_kwh < LEAST_KWH:
        return what, display.say("cold-nothing-to-gain"), display.say("cold-warm-as-it-is")
    more_for_discs = found.less_friction_kwh <= -LEAST_KWH
    brings = display.say(
        "cold-warm-up-brings",
        heating=energy(found.less_heating_kwh, display),
        braking=energy(-found.less_friction_kwh if more_for_discs else found.less_friction_kwh, display),
        discs="more" if more_for_discs else "less",
        battery=energy(found.battery_kwh, display),
        cabin=energy(found.cabin_kwh, display),
        plugged=found.plugged_in,
        share=Share(found.charge_share),
    )
    saved = energy(abs(found.saved_on_the_drive_kwh), display)
    if found.saved_on_the_drive_kwh >= 0:
        return what, display.say("energy-less", energy=saved), brings
    return what, display.say("energy-more", energy=saved), brings


def map_words(found: ColdDay, display: Display) -> tuple[str, str]:
    """The map of charge acceptance."""
    normal = found.normal["mid"]
    return (
        display.say("cold-map-title", lasts=lasts(normal), minutes=minutes(normal)),
        display.say("cold-map-words", ordinary=Quantity(found.ordinary_kw, "kW")),
    )


BECAUSE = {
    Situation.SLOW: "fade-because-slow",
    Situation.FULL: "fade-because-full",
    Situation.COLD: "fade-because-cold",
    Situation.SLIPPERY: "fade-because-slippery",
}
"""The messages that say why a lift-off fades."""


def fade_names(display: Display) -> list[str]:
    """The lift-offs that are held side by side, in the order of `model.limits.winter.why_it_fades`."""
    return [
        display.say("fade-usual", speed=Quantity(FADES["speed_kmh"], "km/h", places=0)),
        display.say("fade-slow", speed=Quantity(FADES["slow_kmh"], "km/h", places=0)),
        display.say("fade-full"),
        display.say("fade-cold", warmth=degrees(FADES["cold_battery_c"])),
        display.say("fade-slippery", surface=FADES["surface"]),
    ]


def fade_words(lifts: Sequence[LiftOffLeft], display: Display) -> tuple[str, str]:
    """Why lift-off fades: the finding, and a reason for each."""
    usual, *others = lifts
    least = min(lift.slowing_mps2 for lift in others)
    asked = Quantity(usual.asked_mps2, "m/s²", 6, trimmed=True)
    if usual.motor_mps2 < HARDLY_MPS2 or least > usual.slowing_mps2 - HARDLY_MPS2:
        title = display.say("fade-title-gentle", asked=asked)
    else:
        title = display.say("fade-title", asked=asked, least=Quantity(least, "m/s²"))
    because = [display.say(BECAUSE[lift.situation]) for lift in others if lift.limit]
    return title, " ".join((display.say("fade-drawn"), *because))


def season_words(found: ColdDay, scenario: Scenario, display: Display) -> tuple[str, str]:
    """What the season takes: the finding, and how it was parted."""
    rows, more, parts = season_rows(found.costs.parts_kwh), found.costs.more_kwh, found.costs.parts_kwh
    title = display.say("season-title-alike", mild=MILD)
    if rows:
        part, _ = max(rows, key=lambda row: abs(row[1]))
        warmth, changed = degrees(scenario.conditions.ambient_c), energy(abs(more), display)
        if more >= 0:
            title = display.say("season-title-more", warmth=warmth, energy=changed, part=part)
        else:
            title = display.say("season-title-less", warmth=warmth, energy=changed, part=part)
    sentences = [display.say("season-against", mild=MILD)]
    if parts[SeasonPart.CABIN] > LEAST_KWH:
        sentences.append(display.say("season-heating-hides", less=parts[SeasonPart.BRAKING] >= LEAST_KWH))
    return title, " ".join(sentences)


def evidence(frosty: SeasonCosts | None, display: Display) -> list[tuple[str, str, str]]:
    """Published figures that seem to disagree, with this drive's own: who, what, and how it was found.

    `frosty` is the drive on a day as cold as those figures are for, whatever day is shown; None where it cannot be.
    """
    stand_c = Quantity(STAND_C, "°C")
    rows = [
        ("AAA, February 2019", display.say("cold-published-stand", at=stand_c),
         display.say("cold-published-stand-ground")),
        ("Steinstraeter et al., World Electric Vehicle Journal 2021, 12(3), 115",
         display.say("cold-published-trips"), display.say("cold-published-trips-ground")),
    ]  # fmt: skip
    lost = None if frosty is None else frosty.range_lost_share
    if frosty is not None and lost is not None and not has_engine(frosty.season.car):
        change = display.say("cold-own-range", share=Share(abs(lost)), less=lost >= 0)
        rows.append((display.say("cold-own-drive"), change, display.say("cold-own-ground", at=stand_c, mild=MILD)))
    return rows
