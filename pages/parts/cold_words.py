"""The cold battery in sentences from numbers."""

from __future__ import annotations

from collections.abc import Sequence

from model.describe.scenario import Scenario
from model.limits.cold_day import FADES, ColdDay
from model.limits.limit_settings import slipperiest
from model.limits.winter import MILD_C, LiftOffLeft, WarmUp
from model.limits.winter_advice import CHARGED_WARMER_K, HEATER_LOWER_K, SHELTER_C
from model.sampling.hybrid import has_engine
from model.words.quantities import MINUS, Display, capital, number_text, percent_text
from pages.parts.charts.cold import season_rows
from pages.parts.winter_words import (
    LEAST_KWH,
    ON,
    Said,
    band_text,
    kwh,
    minutes_text,
    normal_text,
    slowing_expected,
    whole,
)
from pages.parts.wording import PRESS_THE_PEDAL, season_of, temperature_text

HARDLY_MPS2 = 0.005
SLIPPERY = ("snow", "ice", "glazed-ice")


def cold(found: ColdDay, scenario: Scenario, display: Display) -> Said:
    """The part in words."""
    band = band_text(found.takes_kw.values(), "kW")
    facts = [
        (
            "Taken at the start",
            f"{number_text(found.takes_kw['mid'])} kW",
            (f"{band} as batteries differ; " if " to " in band else "")
            + f"ordinary slow-downs of this drive give {number_text(found.ordinary_kw)} kW",
        ),
        *_season_facts(found, scenario, display),
        warm_up_fact(found.warm_up),
    ]
    return Said(
        "When the battery is cold",
        *_number(found, slipperiest(scenario).surface, display),
        tuple(facts),
        (f"**{slowing_expected(found.normal)}** {PRESS_THE_PEDAL}", *measure_words(found, display)),
        (
            "**The change of feel is the hazard**, more than the energy: motor slowing may come back from one "
            "slow-down to the next. Weak lift-off on a frosty morning is no fault; the owner’s manual says what your "
            "car shows and does then.",
            "**No published map of what a car’s battery takes by temperature and charge was found.** The three behind "
            "this are assumed, with the shape of small cells’ data sheets. “Adjust the car” on the first page, under "
            "Battery, moves between them.",
        ),
    )


def measure_words(found: ColdDay, display: Display) -> list[str]:
    """What helps, in the order of what it brings on this drive; what brings nothing to speak of is left out."""
    plug = "from the wall" if found.warm_up.plugged_in else "from the battery"
    told = []
    for one in found.measures:
        less = f"{kwh(one.saved_kwh)} less on this drive"
        if one.id == "plug" and one.brings_kwh > 0:
            told.append(f"**Warm the car up before leaving**: {less}, for {kwh(one.costs_kwh)} {plug}.")
        elif one.id == "plug" and one.costs_kwh >= LEAST_KWH:
            spared = "spares next to nothing" if one.saved_kwh < LEAST_KWH else f"spares {kwh(one.saved_kwh)}"
            told.append(
                f"**Warming up before leaving does not pay in energy**: it costs {kwh(one.costs_kwh)} {plug} and "
                f"{spared} on this drive. It is for warmth, and for motor slowing as usual from the start."
            )
        elif one.saved_kwh >= LEAST_KWH:
            told.append(f"{_MEASURES[one.id](display)}: {less}.")
    return told


def _degrees(kelvin: float, display: Display) -> str:
    return f"{kelvin * (1.8 if display.us else 1):.0f} {display.unit('°C')}"


_MEASURES = {
    "heater": lambda display: f"**Set the heater {_degrees(HEATER_LOWER_K, display)} lower**",
    "shelter": lambda display: f"**Park where it is warmer**, at {temperature_text(SHELTER_C, display)}, say",
    "charge_late": lambda display: (
        "**Charge just before leaving** rather than the evening before. If that leaves the battery "
        f"{_degrees(CHARGED_WARMER_K, display)} warmer (assumed)"
    ),
}


def _number(found: ColdDay, surface: str, display: Display) -> tuple[str, str]:
    """How long motor slowing is weaker, and how far batteries differ."""
    if found.ordinary_kw == 0:
        return "There is nothing to recover on this drive, so the battery has nothing to hold back.", ""
    start, normal = found.way.iloc[0], found.normal["mid"]
    warmth = temperature_text(start["battery_c"], display)
    battery = f"With the battery at {warmth} and {100 * start['soc']:.0f} % charge"
    if normal is None:
        sentence = f"{battery}, motor slowing stays weaker than usual all the way."
    elif normal.minutes == 0:
        sentence = f"{battery}, the motor slows the car as usual from the start."
    else:
        lasts = f"{minutes_text(normal.minutes).removeprefix('1 ')}, {display.text(normal.km, 'km')}"
        sentence = f"{battery}, motor slowing is weaker than usual for the first {lasts}."
    least, most = (normal_text(found.normal[name], display) for name in ("low", "high"))
    more = (
        f"Batteries differ: with one that takes much in the cold, motor slowing {most}; with one that "
        f"takes little, {least}."
    )
    if least == most:
        more = f"Whether the battery takes much or little in the cold, motor slowing {most}."
    if start["battery_c"] >= MILD_C and normal is not None and normal.minutes > 0:
        more += " It is its charge that leaves little room, not the cold."
    if surface in SLIPPERY:
        more += f" Normal is what there is grip for {ON[surface]}, where the motor slows the car less anyway."
    return sentence, more


def _season_facts(found: ColdDay, scenario: Scenario, display: Display) -> list[tuple[str, str, str]]:
    """What the season takes, and what becomes of the range."""
    costs, rows, facts = found.costs, season_rows(found.costs.parts_kwh), []
    if abs(costs.more_kwh) >= LEAST_KWH and rows:
        name, _, most = max(rows, key=lambda row: abs(row[2]))
        season = season_of(scenario.conditions, scenario.year) or "this weather"
        facts.append(
            (
                f"{capital(season)} takes",
                f"{kwh(abs(costs.more_kwh))} {'more' if costs.more_kwh > 0 else 'less'}",
                f"than a dry day of {temperature_text(MILD_C, display)} on this drive; {name} {kwh(most)}",
            )
        )
    if has_engine(costs.season.car) or costs.range_km is None or costs.mild_range_km is None:
        return facts
    percent = percent_text(abs(costs.range_lost_share or 0.0))
    if percent_text(0.0) != percent:
        facts.append(
            (
                "Range",
                f"{MINUS if costs.range_km < costs.mild_range_km else '+'}{percent}",
                f"{display.text(costs.range_km, 'km')} instead of {display.text(costs.mild_range_km, 'km')}, in "
                "many such drives, each starting as this one does",
            )
        )
    return facts


def warm_up_fact(found: WarmUp) -> tuple[str, str, str]:
    """What warming up before the drive brings, parted into heat and regeneration, and what it takes."""
    if found.battery_kwh + found.cabin_kwh < LEAST_KWH:
        return "Warmed up first", "nothing to gain", "battery and cabin are warm as it is"
    discs = f"{kwh(found.less_friction_kwh)} of braking that the discs no longer take"
    if found.less_friction_kwh <= -LEAST_KWH:
        discs = f"{kwh(-found.less_friction_kwh)} of braking more for the discs, since an engine keeps the charge"
    where = "from the wall" if found.plugged_in else f"from the battery, {percent_text(found.charge_share)} of it"
    return (
        "Warmed up first",
        f"{kwh(abs(found.saved_on_the_drive_kwh))} {'less' if found.saved_on_the_drive_kwh >= 0 else 'more'}",
        f"on the drive: {kwh(found.less_heating_kwh)} of heating, and {discs}. It costs {kwh(found.battery_kwh)} for "
        f"the battery and {kwh(found.cabin_kwh)} for the cabin, {where}",
    )


def map_words(found: ColdDay) -> tuple[str, str]:
    """The map of charge acceptance."""
    normal = found.normal["mid"]
    if normal is None:
        title = "All along this drive the battery holds back"
    elif normal.minutes == 0:
        title = "From the start the battery takes what slow-downs give"
    else:
        title = f"After {minutes_text(normal.minutes)} the battery takes what slow-downs give"
    return title, (
        "Across: battery temperature. Upwards: charge. Figures are what a middle battery takes. Strong blue: every "
        f"battery of the band takes the {number_text(found.ordinary_kw)} kW of ordinary slow-downs. Faint: some do, "
        "the middle one from the dashed line on. From the dot on: your drive."
    )


FOR = {"cabin": "the cabin", "battery heater": "the battery’s heater", "braking not recovered": "lost braking",
       "motor, gear and rest": "motor and gear"}  # fmt: skip
"""What the season takes more for, where the name of a bar does not read on."""
BECAUSE = {
    "low speed": "near walking pace the motor hands over to the discs",
    "full battery": "a full battery has no room",
    "cold battery": "a cold one takes little",
    "slippery road": "on a slippery road the car keeps some of the little grip in reserve",
}


def fade_names(display: Display) -> list[str]:
    """The lift-offs that are held side by side, in the order of `model.limits.winter.why_it_fades`."""
    return [
        f"As usual, at {whole(FADES['speed_kmh'], 'km/h', display)}",
        f"Near walking pace, at {whole(FADES['slow_kmh'], 'km/h', display)}",
        "Full battery",
        f"Cold battery, {temperature_text(FADES['cold_battery_c'], display)}",
        f"Slippery road, {FADES['surface']}",
    ]


def fade_words(lifts: Sequence[LiftOffLeft]) -> tuple[str, str]:
    """Why lift-off fades: the finding, and a reason for each."""
    usual, *others = lifts
    least = min(lift.slowing_mps2 for lift in others)
    title = f"The same lift-off of {usual.asked_mps2:g} m/s² may shrink to {number_text(least)} m/s²"
    if usual.motor_mps2 < HARDLY_MPS2 or least > usual.slowing_mps2 - HARDLY_MPS2:
        title = f"So gentle a lift-off, {usual.asked_mps2:g} m/s², does not fade"
    because = "; ".join(BECAUSE[lift.situation] for lift in others if lift.limit)
    drawn = "Grey is slowing by air and tyres, blue by the motor; the outline is what was asked for."
    return title, f"{drawn} {capital(because)}.".removesuffix(" .")


def season_words(found: ColdDay, scenario: Scenario, display: Display) -> tuple[str, str]:
    """What the season takes: the finding, and how it was parted."""
    rows, more = season_rows(found.costs.parts_kwh), found.costs.more_kwh
    against = f"a dry day of {temperature_text(MILD_C, display)}"
    title = f"This drive takes as much as on {against}"
    if rows:
        name, _, _ = max(rows, key=lambda row: abs(row[2]))
        warmth = temperature_text(scenario.conditions.ambient_c, display)
        change = "more" if more >= 0 else "less"
        title = f"At {warmth} this drive takes {kwh(abs(more))} {change}, most of it for {FOR.get(name, name)}"
    back = "less comes back" if found.costs.parts_kwh["braking not recovered"] >= LEAST_KWH else "as much comes back"
    note = (
        f"Heating also makes the share that regeneration saves look smaller: more is taken, while {back}."
        if found.costs.parts_kwh["cabin"] > LEAST_KWH
        else ""
    )
    return title, f"Against {against}, by the books of both drives. {note}".strip()


EVIDENCE = (
    ("AAA, February 2019", "12 % less range at 20 °F (−6.7 °C) with the heater off, 41 % less with heating on",
     "mean of five cars on a test stand, a long run"),
    ("Steinstraeter et al., World Electric Vehicle Journal 2021, 12(3), 115",
     "up to 31.9 % of range lost by heating, up to 21.7 % by limited recuperation", "more than 125 trips of two cars"),
)  # fmt: skip
"""Who found what about the cold, and how."""
EVIDENCE_READ = (
    "Both can hold: a long run on a test stand warms the battery and spreads the first heating over a long way, a "
    "short cold drive does neither."
)


def evidence(found: ColdDay, display: Display) -> list[tuple[str, str, str]]:
    """Published figures that seem to disagree, with this drive's own."""
    rows, lost = list(EVIDENCE), found.costs.range_lost_share
    if lost is not None and not has_engine(found.costs.season.car):
        change = f"{percent_text(abs(lost))} {'less' if lost >= 0 else 'more'} range"
        rows.append(("This model, your drive", change, f"against a dry day of {temperature_text(MILD_C, display)}"))
    return rows
