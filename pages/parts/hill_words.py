"""Full battery and long hills in sentences from numbers."""

from __future__ import annotations

import pandas as pd

from model.describe.figures import Quantity, Share
from model.describe.scenario import Scenario
from model.limits.descent import Descent
from model.limits.full_battery import Hills
from model.limits.limit_settings import LimitSettings
from model.sampling.hybrid import has_engine
from model.words.quantities import Display
from pages.parts.charts.hills import charge
from pages.parts.winter_words import (
    LEAST_KWH,
    LimitWords,
    energy,
    energy_text,
    free_text,
    full_feel_from,
    lasts,
    minutes,
    normal_km,
    share_or_trifle,
)

WARM_K = 5.0
"""Discs that warm by less than this are said to stay cold."""
SLOPE_PCT, SLOPE_KMH = 6, 50
"""The slope and speed that the finding on slopes is about."""


def hills(found: Hills, scenario: Scenario, settings: LimitSettings, display: Display) -> LimitWords:
    """The part in words."""
    hybrid = has_engine(found.down.result.car)
    room = found.room["mid"]
    do = []
    if not hybrid and room.gained_kwh >= LEAST_KWH:
        do.append(display.say("hill-do-charge", charge=full_feel_from(room) or charge(room.start_at_most)))
    do.append(display.say("hill-do-speed"))
    do.append(display.say("hill-do-position") if hybrid else display.say("hill-do-strongest"))
    do.append(display.say("hill-do-cool"))
    return LimitWords(
        display.say("hills-heading"),
        *(_hybrid_number(found, settings, display) if hybrid else _number(found, settings, display)),
        tuple(_facts(found, scenario, settings, display)),
        tuple(do),
        (display.say("hill-mind-full"), display.say("hill-mind-neutral"), display.say("hill-mind-assumed")),
    )


def drop(settings: LimitSettings) -> Quantity:
    """How far down the hill goes."""
    return Quantity(settings.hill_m, "m", places=0)


def slope(settings: LimitSettings) -> Quantity:
    """How steep it is."""
    return Quantity(settings.hill_pct, "%", 6, trimmed=True)


def _number(found: Hills, settings: LimitSettings, display: Display) -> tuple[str, str]:
    """How much to leave free, and from where motor slowing keeps its strength."""
    room = found.room["mid"]
    if room.gained_kwh < LEAST_KWH:
        speed = Quantity(settings.hill_kmh, "km/h", places=0)
        why = "used-up" if found.down.motor_kw > 0 else "no-motor"
        return display.say("hill-gives-nothing", drop=drop(settings), speed=speed, why=why), ""
    if start := full_feel_from(room):
        return display.say("hill-start", drop=drop(settings), charge=start), batteries_differ(found, display)
    share = share_or_trifle(room.gained_share, display)
    return display.say("hill-leave-free", drop=drop(settings), share=share), ""


def batteries_differ(found: Hills, display: Display) -> str:
    """How far the charge to start at hangs on the battery; empty where it does not."""
    least, most = (full_feel_from(found.room[name]) for name in ("low", "high"))
    if least is None or most is None:
        return display.say("hill-little-never")
    if display.figure(least) == display.figure(most):
        return ""
    return display.say("hill-start-differs", least=Quantity(100 * least.value, "", places=0), most=most)


def _hybrid_number(found: Hills, settings: LimitSettings, display: Display) -> tuple[str, str]:
    """After how much of a descent a hybrid's battery is full, and what holds it then."""
    if not found.to_fill_m:
        return display.say("hybrid-hill-gives-nothing", slope=slope(settings)), ""
    return (
        display.say("hybrid-full-after", drop=Quantity(found.to_fill_m, "m"), slope=slope(settings)),
        display.say("hybrid-then", drag=Quantity(found.engine_drag_kw, "kW"), drop=drop(settings)),
    )


def _facts(
    found: Hills, scenario: Scenario, settings: LimitSettings, display: Display
) -> list[tuple[str, str, str]]:  # fmt: skip
    room, down, trailer = found.room["mid"], found.down, scenario.conditions.trailer_kg
    power, speed = Quantity(room.power_kw, "kW"), Quantity(settings.hill_kmh, "km/h", places=0)
    motor, discs = Quantity(down.motor_kw, "kW"), Quantity(down.friction_kw, "kW")
    helped = down.friction_kw >= 0.05
    facts = [
        (display.say("hill-gives-back"), energy_text(room.gained_kwh, display),
         display.say("hill-gives-back-beside", power=power, speed=speed, slope=slope(settings))),
        (display.say("hill-holding"), display.text(down.need_kw, "kW"),
         display.say("hill-holding-beside", motor=motor, discs=discs, discs_help=helped)),
    ]  # fmt: skip
    if found.fuel is None:
        full = found.full_start
        lost = display.say("energy-more", energy=energy(max(full.lost_kwh, 0.0), display))
        later = display.say("hill-leaving-full-beside", lasts=lasts(full.normal), minutes=minutes(full.normal),
                            km=normal_km(full.normal, scenario, display))  # fmt: skip
        facts += [
            (display.say("hill-leaving-full"), lost, later),
            (display.say("hill-your-drive"), free_text(found.drive_room["mid"].gained_share, display),
             display.say("hill-your-drive-beside")),
        ]  # fmt: skip
    else:
        litres = display.range_text(found.fuel.litres_per_100km, "l/100 km")
        facts.append((display.say("hill-fuel"), litres, display.say("hill-fuel-beside")))
    if trailer:
        mass = display.figure(Quantity(trailer, "kg", places=0))
        facts.append((display.say("limits-trailer"), mass, display.say("hill-trailer-beside")))
    return facts


def near_full_words(found: Hills, display: Display) -> tuple[str, str]:
    """What the battery takes as it fills."""
    crossing = found.room["mid"].full_power_below
    if crossing is None:
        title = display.say("near-full-never")
    elif crossing >= 0.995:
        title = display.say("near-full-enough")
    else:
        title = display.say("near-full-above", charge=Share(crossing, places=0))
    room, words = found.room["mid"], [display.say("near-full-words")]
    if full_feel_from(room) and crossing is not None and crossing < room.start_at_most:
        fits = Share(room.start_at_most, places=0)
        words.insert(0, display.say("hill-order", power=Share(crossing, places=0), fits=fits))
    return title, " ".join(words)


def disc_words(down: Descent, down_full: Descent, display: Display) -> tuple[str, str]:
    """How warm the discs get on the way down."""
    with_motor, full, alone = (
        Quantity(float(run.max()), "°C", places=0) for run in (down.disc_c, down_full.disc_c, down.friction_only_disc_c)
    )
    warm = with_motor.value > float(down.disc_c[0]) + WARM_K
    if display.figure(full) == display.figure(with_motor):
        title = display.say("discs-title", warm=warm, reached=with_motor)
    else:
        title = display.say("discs-title-full", warm=warm, reached=with_motor, full=full)
    return title, display.say("discs-words", reached=alone, caution=down.friction_only_fade_caution)


def given_back_words(table: pd.DataFrame, display: Display) -> tuple[str, str]:
    """What slopes give back of what they took."""
    there = (table["grade_pct"] == SLOPE_PCT) & (table["speed_kmh"] == SLOPE_KMH)
    share, speed = float(table[there]["share"].iloc[0]), Quantity(SLOPE_KMH, "km/h", places=0)
    if share > 0:
        return display.say("slopes-title", share=Share(share), speed=speed), display.say("slopes-words")
    return display.say("slopes-title-nothing", speed=speed), display.say("slopes-words")
