"""The emergency stop in sentences from numbers, and the brakes that rest meanwhile."""

from __future__ import annotations

from collections.abc import Iterable

from model.describe.figures import Quantity, Share, Span
from model.describe.units import GRAVITY_MPS2, J_PER_WH
from model.limits.grip_margin import LEVELS
from model.limits.hard_stop import HardStop
from model.limits.limit_settings import LimitSettings
from model.words.quantities import Display
from pages.parts.charts.stops import motor_alone_text
from pages.parts.winter_words import LimitWords, distances, ends


def stop(found: HardStop, surface: str, settings: LimitSettings, display: Display) -> LimitWords:
    """The part in words."""
    stops, mid, alone = found.stops, found.stops["mid"], found.motor_only
    speed = Quantity(settings.stop_kmh, "km/h", places=0)
    thinking = distances([mid.thinking_m], display)
    facts = (
        (display.say("hard-stop-slowing"),
         slowing_text((stops[name].mean_slowing_mps2 for name in LEVELS), display),
         display.say("hard-stop-slowing-beside", force=kilo(mid.force_n, "kN"), power=kilo(mid.power_w, "kW"))),
        (display.say("hard-stop-motor"),
         slowing_text((GRAVITY_MPS2 * part for part in found.motor_g.values()), display),
         display.say("hard-stop-motor-beside", share=Share(mid.motor_share))),
        (display.say("hard-stop-alone"), motor_alone_text(mid.thinking_m, alone, display),
         display.say("hard-stop-alone-beside")),
        (display.say("hard-stop-slope"), display.figure(kilo(found.standing["force_n"], "kN")),
         display.say("hard-stop-slope-beside", slope=Quantity(settings.hill_pct, "%", 6, trimmed=True))),
        (display.say("hard-stop-comparison"), distance_text(found.highway_code_m, display),
         display.say("hard-stop-comparison-beside", sight=distances([found.sight_m], display))),
    )  # fmt: skip
    span = distances((stopping.distance_m for stopping in stops.values()), display)
    more = [display.say("hard-stop-friction")]
    if found.floats and surface == "standing-water":
        more.append(display.say("hard-stop-floats", speed=speed))
    return LimitWords(
        display.say("hard-stop-heading"),
        display.say("hard-stop-distances", speed=speed, surface=surface, distances=span, thinking=thinking),
        " ".join(more),
        facts,
        (
            display.say("hard-stop-do-press"),
            display.say("hard-stop-do-distance"),
            display.say("hard-stop-do-parking"),
            display.say("hard-stop-do-exercise"),
        ),
        (
            display.say("hard-stop-mind-rust"),
            display.say("hard-stop-mind-signs"),
            display.say("hard-stop-mind-assumed"),
        ),
    )


def kilo(value: float, unit: str) -> Quantity:
    """A force or power in thousands."""
    return Quantity(value / 1000, unit)


def slowing_text(figures: Iterable[float], display: Display) -> str:
    """A span of slowings [m/s²]."""
    low, high = ends(figures)
    return display.figure(Span(low, high, "m/s²", places=1))


def distance_text(metres: float, display: Display) -> str:
    """A distance that stands alone."""
    return display.figure(distances([metres], display))


def distances_words(found: HardStop, settings: LimitSettings, display: Display) -> tuple[str, str]:
    """Stopping distances on every road."""
    middle = found.by_surface.set_index("surface")["mid_m"]
    times = Quantity(float(middle["ice"] / middle["dry"]), "")
    reaction = Quantity(settings.reaction_s, "s", 6, trimmed=True)
    words = [display.say("hard-stop-words", reaction=reaction)]
    if found.floats:
        words.append(display.say("hard-stop-floats", speed=Quantity(settings.stop_kmh, "km/h", places=0)))
    return display.say("hard-stop-title", times=times), " ".join(words)


def motors_part_words(found: HardStop, settings: LimitSettings, display: Display) -> tuple[str, str]:
    """How little of a hard stop a motor could do."""
    share, speed = Share(found.stops["mid"].motor_share), Quantity(settings.stop_kmh, "km/h", places=0)
    return display.say("hard-stop-motor-title", share=share), display.say("hard-stop-motor-words", speed=speed)


def motor_parts(found: HardStop) -> list[tuple[str, float, Quantity]]:
    """Force, power and energy of the stop with the motor's share, for the picture."""
    mid = found.stops["mid"]
    share = mid.motor_force_n / mid.force_n if mid.force_n else 0.0
    return [
        ("force", share, kilo(mid.force_n, "kN")),
        ("power", share, kilo(mid.power_w, "kW")),
        ("energy", mid.motor_share, Quantity(mid.braked_j / J_PER_WH, "Wh")),
    ]


def brakes_words(found: HardStop, display: Display) -> tuple[str, str]:
    """The brakes that rest."""
    brakes, days = found.brakes, found.days_between_firm_uses
    with_regen, without = brakes.kwh_per_100km, brakes.friction_only_kwh_per_100km
    if without > 0:
        title = display.say("brakes-title", share=Share(with_regen / without))
    else:
        title = display.say("brakes-title-nothing")
    pressed = "never" if days is None else "daily" if days < 1.5 else "seldom"
    return title, display.say("brakes-words", pressed=pressed, days=Quantity(days or 0.0, "days"))
