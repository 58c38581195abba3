"""Full battery and long hills in sentences from numbers."""

from __future__ import annotations

import pandas as pd

from model.describe.scenario import Scenario
from model.limits.descent import Descent
from model.limits.full_battery import Hills
from model.limits.grip_margin import LEVELS
from model.limits.limit_settings import LimitSettings
from model.sampling.hybrid import has_engine
from model.words.quantities import Display, number_text, percent_text
from pages.parts.charts.hills import charge_text
from pages.parts.winter_words import LEAST_KWH, Said, free_text, kwh, normal_text, share_text, whole
from pages.parts.wording import temperature_text

WARM_K = 5.0
"""Discs that warm by less than this are said to stay cold."""
TAKES_ALL = "air, tyres and what is used aboard take it all"


def hills(found: Hills, scenario: Scenario, settings: LimitSettings, display: Display) -> Said:
    """The part in words."""
    hybrid = has_engine(found.down.result.car)
    room = found.room["mid"]
    do = [
        "**Choose the speed before the hill**: a low one leaves the motor enough for all of it.",
        "**Use the strongest motor slowing that grip allows**, so that the discs stay cool for when they are needed.",
        "**Stop to cool** if the brakes smell, the pedal goes soft or they bite less.",
    ]
    if hybrid:
        do[1] = "**Use the position for slopes that the manual names**: the engine holds the car, and the discs rest."
    elif room.gained_kwh >= LEAST_KWH:
        do.insert(0, f"**If the hill begins at your door, charge to {charge_text(room.start_at_most)} at most**, or "
                  "less to keep the feel.")  # fmt: skip
    return Said(
        "When the battery is full, and on long hills",
        *(_hybrid_number(found, settings, display) if hybrid else _number(found, settings, display)),
        tuple(_facts(found, scenario, settings, display)),
        tuple(do),
        (
            "**With a full battery the car slows less when the foot comes up.** Some cars keep the feel with the "
            "discs; the manual says which.",
            "**Never coast downhill in neutral**: nothing but the discs holds the car then, and in many places the law "
            "forbids it. Do not ride the brake pedal.",
            "**What a battery takes near full is assumed**: no published map was found.",
        ),
    )


def _number(found: Hills, settings: LimitSettings, display: Display) -> tuple[str, str]:
    """How much to leave free, and from where motor slowing keeps its strength."""
    room, drop = found.room["mid"], whole(settings.hill_m, "m", display)
    if room.gained_kwh < LEAST_KWH:
        speed = whole(settings.hill_kmh, "km/h", display)
        why = TAKES_ALL if found.down.motor_kw > 0 else "the motor does not slow the car"
        return f"Your hill of {drop} gives nothing back at {speed}: {why}.", ""
    sentence = f"For your hill of {drop} down, leave {share_text(room.gained_share)} of the battery free."
    return sentence, f"That is the limit of energy. The limit of power changes the feel sooner: {full_feel(found)}"


def full_feel(found: Hills) -> str:
    """From which charge motor slowing keeps its strength all the way down."""
    starts = [found.room[name].start_for_full_feel for name in LEVELS]
    some = [100 * start for start in starts if start is not None]
    if starts[1] is None or not some:
        return "at its temperature the battery does not take all that the hill gives, at any charge."
    if starts[0] is None:
        return f"start at {some[-1]:.0f} % or less for full strength; a battery that takes little never gives it."
    low, high = (f"{end:.0f}" for end in (some[0], some[-1]))
    if low == high:
        return f"for full strength all the way start at {low} % or less."
    return f"for full strength all the way start at {low} to {high} % or less, as batteries differ."


def _hybrid_number(found: Hills, settings: LimitSettings, display: Display) -> tuple[str, str]:
    """After how much of a descent a hybrid's battery is full, and what holds it then."""
    slope = f"a {settings.hill_pct:g} % descent"
    if not found.to_fill_m:
        return f"{slope.capitalize()} gives nothing back: {TAKES_ALL}.", ""
    return (
        f"From the charge its engine keeps, this hybrid’s battery is full after {display.text(found.to_fill_m, 'm')} "
        f"of {slope}.",
        f"Then the engine turns along and drags with up to {number_text(found.engine_drag_kw)} kW, and the discs take "
        f"the rest. That is why it revs on the way down. Your hill goes down {whole(settings.hill_m, 'm', display)}.",
    )


def _facts(
    found: Hills, scenario: Scenario, settings: LimitSettings, display: Display
) -> list[tuple[str, str, str]]:  # fmt: skip
    room, down, trailer = found.room["mid"], found.down, scenario.conditions.trailer_kg
    facts = [
        (
            "It gives back",
            kwh(room.gained_kwh),
            f"{number_text(room.power_kw)} kW at the most, at {whole(settings.hill_kmh, 'km/h', display)} on "
            f"{settings.hill_pct:g} %, less what is used aboard",
        ),
        (
            "Holding the speed",
            f"{number_text(down.need_kw)} kW",
            f"asked at the wheels; the motor takes up to {number_text(down.motor_kw)} kW, the discs "
            + (f"up to {number_text(down.friction_kw)} kW" if down.friction_kw >= 0.05 else "nothing"),
        ),
    ]
    if found.fuel is None:
        full = found.full_start
        facts += [
            ("Leaving home full", f"{kwh(max(full.lost_kwh, 0.0))} more",
             f"on your drive than leaving at 60 %; motor slowing {normal_text(full.normal, display)}"),
            ("Your drive", free_text(found.drive_room["mid"].gained_share),
             "the most by which its charge rises above the start"),
        ]  # fmt: skip
    else:
        litres = found.fuel.litres_per_100km
        facts.append(
            ("Fuel saved", display.range_text(litres, "l/100 km"),
             "by regeneration on your drive; a wide band, since an engine’s efficiency in traffic is not published")
        )  # fmt: skip
    if trailer:
        facts.append(("Trailer", whole(trailer, "kg", display), "is counted; its own brakes are left out"))
    return facts


def near_full_words(found: Hills) -> tuple[str, str]:
    """What the battery takes as it fills."""
    crossing = found.room["mid"].full_power_below
    if crossing is None:
        title = "The battery does not take all that the hill gives"
    elif crossing >= 0.995:
        title = "Up to nearly full the battery takes what the hill gives"
    else:
        title = f"Above {100 * crossing:.0f} % charge the battery takes less than the hill gives"
    return title, (
        "Charge along, power upwards. The band runs from a battery that takes little to one that takes much, the "
        "dashed line is the middle one. Dotted: the charge at the top from which the hill just fits in."
    )


def disc_words(down: Descent, down_full: Descent, display: Display) -> tuple[str, str]:
    """How warm the discs get on the way down."""
    hottest = [float(run.max()) for run in (down.disc_c, down_full.disc_c, down.friction_only_disc_c)]
    with_motor, full, alone = (temperature_text(warmth, display) for warmth in hottest)
    warms = hottest[0] > float(down.disc_c[0]) + WARM_K
    title = f"The front discs {f'reach {with_motor}' if warms else 'stay cold'} with the motor"
    title += f", {full} if the battery is full" if full != with_motor else ""
    caution = {
        "below": "stay below where ordinary pads begin to lose bite",
        "within": "come to where ordinary pads begin to lose bite, which drivers call fade",
        "above": "pass the heat in which ordinary pads have lost their bite, which drivers call fade",
    }[down.friction_only_fade_caution]
    return title, (
        f"On friction brakes only they reach {alone} and {caution}. One lump of iron stands for both; their heat "
        "capacity, cooling and the band of fade are assumed. Brake fluid that holds water may boil sooner."
    )


def given_back_words(table: pd.DataFrame, display: Display) -> tuple[str, str]:
    """What slopes give back of what they took."""
    share = float(table[(table["grade_pct"] == 6) & (table["speed_kmh"] == 50)]["share"].iloc[0])
    speed = whole(50, "km/h", display)
    title = f"The way down a 6 % slope gives back {percent_text(share)} of what the way up took, at {speed}"
    if not share > 0:
        title = f"A 6 % slope gives nothing back at {speed}"
    return title, (
        "Downhill is not free: it was paid for on the way up. Below zero even the way down takes energy, for air, "
        "tyres and what is used aboard. In your car and this weather, at the charge you start with; heating and "
        "cooling left out."
    )
