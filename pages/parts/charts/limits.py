"""Why the friction brakes had to help: the model's limits in plain words."""

from __future__ import annotations

from collections.abc import Mapping

LIMIT_WORDS = {
    "lift_off_only": "the brake pedal works the discs only",
    "drivability": "the slowing was harder than the motor is allowed to do",
    "motor_torque": "the motor was at its greatest force",
    "motor_power": "the motor was at its greatest power",
    "grip": "the driven wheels had no more grip to spare",
    "low_speed_fade": "near walking pace the motor hands over",
    "nothing_to_gain": "so little slowing costs the motor more than it gives back",
    "battery": "the battery could take no more, being cold, full or small",
    "no_regeneration": "regeneration was off",
}
"""Each reads on after “because”; keys are `model.physics.slowing_limits.LIMITS`."""

LIMIT_NAMES = {
    "lift_off_only": "pedal",
    "drivability": "slowing limit",
    "motor_torque": "motor force",
    "motor_power": "motor power",
    "grip": "grip",
    "low_speed_fade": "low speed",
    "nothing_to_gain": "nothing to gain",
    "battery": "battery",
    "no_regeneration": "off",
}
"""The same for the column of a table."""

NEARLY = 0.8
"""A second reason of at least this share of the first is named beside it [1]."""


def because(friction: Mapping[str, float]) -> str:
    """Why the friction brakes help, to read on after “friction helps”; empty where they do not.

    Parameters
    ----------
    friction : mapping
        Friction energy by its reason in words, as LIMIT_WORDS has them, in any one unit.
    """
    ranked = sorted(((energy, reason) for reason, energy in friction.items() if energy > 0), reverse=True)
    if not ranked:
        return ""
    (most, first), *others = ranked
    if not others:
        return f"because {first}"
    second, other = others[0]
    if second >= NEARLY * most:
        return f"because {first} and, nearly as much, because {other}"
    weight = "mostly" if most > sum(friction.values()) / 2 else "most of all"
    return f"{weight} because {first}"
