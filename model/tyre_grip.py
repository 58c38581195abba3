"""Grip between tyres and road, and the weight that rests on the driven axle while slowing."""

from __future__ import annotations

from functools import cache
from typing import Any

import numpy as np

from model.car import Car
from model.parameters import rows
from model.scenario import SURFACES, Conditions
from model.trace import Array
from model.units import GRAVITY_MPS2, KMH_PER_MPS

GRIP_SPEEDS_KMH = (50.0, 90.0, 130.0)
"""Speeds at which the grip table stands."""


@cache
def surface_table() -> dict[str, Array]:
    """The figures of ``assets/grip.csv`` [1], each of shape (surfaces,) in order of SURFACES.

    ``low, mid, high`` (friction in town), ``share_at_90_kmh, share_at_130_kmh`` of it, a factor for each kind of tyre,
    and ``extra_rolling``.
    """
    by_name = {row["surface"]: row for row in rows("grip.csv")}
    columns = [name for name in by_name[SURFACES[0]] if name not in ("surface", "kind", "source")]
    return {
        name.removeprefix("grip_"): np.array([float(by_name[surface][name]) for surface in SURFACES])
        for name in columns
    }


def friction_coefficient(surface: Any, level: Any, tyres: str = "any", speed: Any = 0.0) -> Any:
    """Friction between tyre and road [1].

    Parameters
    ----------
    surface : int or array of int
        Index into SURFACES.
    level : numeric
        Place within the surface's band: −1 low, 0 mid, 1 high.
    tyres : str
        Kind of tyre, one of `model.scenario.TYRES`.
    speed : numeric
        Speed [m/s]: grip falls with it, on water steeply. Straight lines between 50, 90 and 130 km/h, held beyond.
    """
    table = surface_table()
    mid = table["mid"][surface]
    up, down = table["high"][surface] - mid, mid - table["low"][surface]
    friction = mid + np.maximum(level, 0) * up + np.minimum(level, 0) * down
    if tyres != "any":
        friction = friction * table[f"{tyres}_factor"][surface]
    slow, fast, faster = (kmh / KMH_PER_MPS for kmh in GRIP_SPEEDS_KMH)
    at_fast, at_faster = table["share_at_90_kmh"][surface], table["share_at_130_kmh"][surface]
    between = np.clip((speed - slow) / (fast - slow), 0, 1) * (1 - at_fast)
    return friction * (1 - between - np.clip((speed - fast) / (faster - fast), 0, 1) * (at_fast - at_faster))


def road_friction(conditions: Conditions, speed: Any = 0.0, level: Any = None) -> Any:
    """Friction between tyre and road [1] under these conditions at `speed` [m/s].

    `level` is the place within the road's band (−1 low to 1 high), the conditions' own if left out.
    """
    level = conditions.grip_level if level is None else level
    return friction_coefficient(SURFACES.index(conditions.surface), level, conditions.tyres, speed)


def extra_rolling(surface: Any) -> Any:
    """Rolling coefficient that snow or water adds [1]."""
    return surface_table()["extra_rolling"][surface]


def axle_loads_n(car: Car, mass_kg: Any, slowing: Any, cosine: Any = 1.0) -> tuple[Any, Any]:
    """Weight on the front and the rear axle [N] while the tyres slow the car.

    Parameters
    ----------
    car, mass_kg
        Where the weight sits; the car's mass with its load [kg].
    slowing : numeric
        Slowing force of the tyres over mass [m/s²]: on a flat road the deceleration. It acts at the road, below the
        centre of gravity, and so moves ``mass · slowing · height / wheelbase`` to the front, on any slope.
    cosine : numeric
        Cosine of the slope [1].
    """
    weight = mass_kg * GRAVITY_MPS2 * cosine
    moved = mass_kg * slowing * (car.cg_height_m / car.wheelbase_m)
    return weight * car.front_load_share + moved, weight * (1 - car.front_load_share) - moved


def driven_axle_load_n(car: Car, mass_kg: Any, slowing: Any, cosine: Any = 1.0) -> Any:
    """Weight that counts for the motor's grip [N] while the tyres slow the car; parameters as in `axle_loads_n`.

    The driven axle's; with all wheels driven that of both, or, where the front axle's share of the motor slowing is
    given, what the sooner slipping axle allows: its weight over its share.
    """
    front, rear = axle_loads_n(car, mass_kg, slowing, cosine)
    if car.driven_axle == "front":
        return front
    if car.driven_axle == "rear":
        return rear
    if car.front_regen_share is None:
        return front + rear
    share = np.asarray(car.front_regen_share, dtype=float)
    return np.minimum(front / np.maximum(share, 1e-9), rear / np.maximum(1 - share, 1e-9))
