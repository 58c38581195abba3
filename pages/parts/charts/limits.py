"""Why the friction brakes had to help: the limit that left most to them, and how much of it."""

from __future__ import annotations

from collections.abc import Mapping

from model.words.quantities import Display

LIMITS = ("lift_off_only", "drivability", "motor_torque", "motor_power", "grip", "low_speed_fade", "nothing_to_gain",
          "battery", "no_regeneration")  # fmt: skip
"""Those of `model.physics.slowing_limits.LIMITS`, in the order in which they are drawn."""
NEARLY = 0.8
"""A second reason of at least this share of the first is named beside it [1]."""


def limit_text(limit: str, display: Display) -> str:
    """A limit in words that read on after “because”."""
    return display.say("limit-why", limit=limit)


def because(friction: Mapping[str, float], display: Display) -> str:
    """Why the friction brakes help, to read on after “friction helps”; empty where they do not.

    `friction` is energy by the limit that left it, in any one unit.
    """
    ranked = sorted(((energy, limit) for limit, energy in friction.items() if energy > 0), reverse=True)
    if not ranked:
        return ""
    (most, first), *others = ranked
    second_most, second = others[0] if others else (0.0, first)
    if not others:
        weight = "alone"
    elif second_most >= NEARLY * most:
        weight = "nearly"
    else:
        weight = "mostly" if most > sum(friction.values()) / 2 else "most"
    reasons = {"first": limit_text(first, display), "second": limit_text(second, display)}
    return display.say("limit-because", weight=weight, **reasons)
