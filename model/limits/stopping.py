"""Distances of a stop: thinking and braking, as rules and road designers count them, and of slowing that varies."""

from __future__ import annotations

import numpy as np

from model.describe.trace import Array, N

HIGHWAY_CODE = (0.67, 6.55)
"""Thinking time [s] and slowing [m/s²] behind the UK Highway Code's typical stopping distances, rule 126 (derived)."""
SIGHT_REACTION_S = 2.5
SIGHT_SLOWING_MPS2 = 3.4
"""Reaction and slowing behind stopping sight distances, in metric units (AASHTO Green Book 2018)."""
SPEED_STEPS = 400


def thinking_distance_m(speed: N, reaction_s: float) -> N:
    """Road covered before the brakes act [m] at `speed` [m/s]."""
    return speed * reaction_s


def braking_distance_m(speed: N, deceleration: float) -> N:
    """Road covered while slowing evenly from `speed` [m/s] to rest [m]."""
    return speed * speed / (2 * deceleration)


def stopping_distance_m(speed: N, reaction_s: float, deceleration: float) -> N:
    """Thinking and braking distance together [m]."""
    return thinking_distance_m(speed, reaction_s) + braking_distance_m(speed, deceleration)


def sight_distance_m(speed_kmh: N) -> N:
    """Stopping sight distance [m] at `speed_kmh` [km/h] before rounding; the coefficients are from memory.

    The second is rounded up by 1 %, without which two rows of the printed table would come out lower.
    """
    return 0.278 * speed_kmh * SIGHT_REACTION_S + 0.039 * speed_kmh * speed_kmh / SIGHT_SLOWING_MPS2


def braking_power_w(mass_kg: N, deceleration: N, speed: N) -> N:
    """Power at the wheels [W] while `mass_kg` slows by `deceleration` [m/s²] at `speed` [m/s]: force times speed."""
    return mass_kg * deceleration * speed


def to_rest(from_mps: float, slowing_at: Array, at: Array) -> tuple[float, float]:
    """Distance [m] and time [s] to rest for the slowing [m/s²] at each speed [m/s]; inf where some speed is kept."""
    if (slowing_at <= 0).any():
        return np.inf, np.inf
    step = from_mps / len(at)
    return float((at * step / slowing_at).sum()), float((step / slowing_at).sum())


def speeds_to_rest(from_mps: float) -> Array:
    """Speeds [m/s] in the middle of even steps from a speed [m/s] to rest, shape (steps,)."""
    return (np.arange(SPEED_STEPS) + 0.5) * from_mps / SPEED_STEPS
