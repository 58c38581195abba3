"""The emergency stop in sentences from numbers, and the brakes that rest meanwhile."""

from __future__ import annotations

from collections.abc import Iterable

import numpy as np

from model.describe.units import GRAVITY_MPS2, J_PER_WH
from model.limits.grip_margin import LEVELS
from model.limits.hard_stop import HardStop
from model.limits.limit_settings import LimitSettings
from model.words.quantities import Display, capital, number_text, percent_text
from pages.parts.winter_words import ON, Said, distance_text, ends, whole


def stop(found: HardStop, surface: str, settings: LimitSettings, display: Display) -> Said:
    """The part in words."""
    stops, mid = found.stops, found.stops["mid"]
    span = distance_text([one.distance_m for one in stops.values()], display)
    speed = whole(settings.stop_kmh, "km/h", display)
    alone, hand_over = found.motor_only.distance_m, whole(found.motor_only.hand_over_kmh, "km/h", display)
    facts = (
        ("Slowing", g_text(stops[name].mean_slowing_mps2 / GRAVITY_MPS2 for name in LEVELS),
         f"on average; as braking begins {number_text(mid.force_n / 1000)} kN and {number_text(mid.power_w / 1000)} kW "
         "at the wheels"),
        ("The motor’s part", g_text(found.motor_g.values()),
         f"at the most, {percent_text(mid.motor_share)} of what the wheels brake, air left out, with the "
         "battery as at the start; many cars leave a hard stop to the discs"),
        ("On the motor alone", distance_text([alone], display) if np.isfinite(alone) else "no end",
         f"on a dry road; below {hand_over} it fades and the car rolls on"),
        ("Standing on a slope", f"{number_text(found.standing['force_n'] / 1000)} kN",
         f"hold the car on {settings.hill_pct:g} %: brake pedal or parking brake. A motor does not hold a parked car"),
        ("For comparison", distance_text([found.highway_code_m], display),
         "worked out from the typical distances of the UK Highway Code; road designers allow "
         f"{distance_text([found.sight_m], display)} (AASHTO)"),
    )  # fmt: skip
    return Said(
        "When you must stop at once",
        f"From {speed} {ON[surface]}: {span} to rest, {distance_text([mid.thinking_m], display)} of them before the "
        "brakes act.",
        "The friction brakes do it, on four wheels with ABS. Regeneration neither replaces them nor holds the car.",
        facts,
        (
            "**Press the brake pedal hard and keep pressing.** Do not wait for lift-off to do it.",
            "**Keep more distance**: with a cold or full battery or on a slippery road the motor’s part is missing.",
            "**Use the parking brake** as the manual says.",
            "**Exercise the brakes** now and then where traffic and the manual allow it.",
        ),
        (
            "**Brakes that rest corrode**: discs rust, pads may seize. Have them inspected as the manual says.",
            "**Grinding, pulling to a side, a long or soft pedal, a warning lamp**: have a qualified workshop look at "
            "it.",
            "All four wheels are taken to use their grip in full, air is left out, and the driver presses at once: a "
            "real stop is likely to be longer.",
        ),
    )


def g_text(figures: Iterable[float]) -> str:
    """A span of slowings in g."""
    low, high = (f"{end:.2f}" for end in ends(figures))
    return f"{low} g" if low == high else f"{low} to {high} g"


def distances_words(found: HardStop, settings: LimitSettings) -> tuple[str, str]:
    """Stopping distances on every road."""
    middle = found.by_surface.set_index("surface")["mid_m"]
    title = f"Stopping on ice takes {number_text(middle['ice'] / middle['dry'])} times the distance of a dry road"
    return title, (
        f"Faint: {settings.reaction_s:g} s of reaction. Orange: braking at the middle of the road’s grip; the line "
        "spans its band. Blue: a stop without friction brakes."
    )


def motors_part_words(found: HardStop, settings: LimitSettings, display: Display) -> tuple[str, str]:
    """How little of a hard stop a motor could do."""
    title = f"The motor could do at most {percent_text(found.stops['mid'].motor_share)} of what the wheels brake"
    return title, (
        "Blue: the most the motor could take, whether or not the car asks it to. Orange: what is left to the discs. "
        f"Force and power as braking begins from {whole(settings.stop_kmh, 'km/h', display)}, energy over it all. "
        "Air is left out here; “Who slows” under How it works counts air and tyres among what slows the car."
    )


def motor_parts(found: HardStop) -> list[tuple[str, float, str]]:
    """Force, power and energy of the stop with the motor's share, for the picture."""
    mid = found.stops["mid"]
    share = mid.motor_force_n / mid.force_n if mid.force_n else 0.0
    return [
        ("Force", share, f"{number_text(mid.force_n / 1000)} kN"),
        ("Power", share, f"{number_text(mid.power_w / 1000)} kW"),
        ("Energy", mid.motor_share, f"{number_text(mid.braked_j / J_PER_WH)} Wh"),
    ]


def brakes_words(found: HardStop) -> tuple[str, str]:
    """The brakes that rest."""
    brakes, days = found.brakes, found.days_between_firm_uses
    with_regen, without = brakes.kwh_per_100km, brakes.friction_only_kwh_per_100km
    title = "Your drive asks nothing of the discs, with or without regeneration"
    if without > 0:
        title = f"On your drive the discs do {percent_text(with_regen / without)} of the work they would do alone"
    if days is None:
        used = "they are never pressed firmly"
    elif days < 1.5:
        used = "they are pressed firmly every day, over the year"
    else:
        used = f"they are pressed firmly every {number_text(days)} days, over the year"
    return title, (
        f"{capital(used)}. Less work means less wear only as far as rust does not decide first: how far "
        "they last cannot be told from it."
    )
