"""Grip between tyres and road, and the weight that rests on the driven axle while slowing."""

from __future__ import annotations

from functools import cache
from typing import Any

import numpy as np

from model.car import Car
from model.parameters import rows
from model.scenario import SURFACES
from model.trace import Array
from model.units import GRAVITY_MPS2


@cache
def surface_table() -> dict[str, Array]:
    """Columns ``low, mid, high`` (friction) and ``extra_rolling``, each of shape (surfaces,) in order of SURFACES."""
    by_name = {row["surface"]: row for row in rows("grip.csv")}
    columns = {"low": "grip_low", "mid": "grip_mid", "high": "grip_high", "extra_rolling": "extra_rolling"}
    return {
        short: np.array([float(by_name[surface][column]) for surface in SURFACES]) for short, column in columns.items()
    }


def friction_coefficient(surface: Any, level: Any) -> Any:
    """Friction between tyre and road [1] for surface indices, `level` −1 (low) to 1 (high) within the band."""
    table = surface_table()
    mid = table["mid"][surface]
    up, down = table["high"][surface] - mid, mid - table["low"][surface]
    return mid + np.maximum(level, 0) * up + np.minimum(level, 0) * down


def extra_rolling(surface: Any) -> Any:
    """Rolling coefficient that snow or water adds [1]."""
    return surface_table()["extra_rolling"][surface]


def driven_axle_load_n(car: Car, mass_kg: Any, deceleration: Any) -> Any:
    """Weight on the driven wheels [N] while slowing by `deceleration` [m/s²] on a flat road.

    Slowing moves weight to the front: ``mass · deceleration · height / wheelbase``.
    """
    weight = mass_kg * GRAVITY_MPS2
    moved = mass_kg * deceleration * (car.cg_height_m / car.wheelbase_m)
    if car.driven_axle == "front":
        return weight * car.front_load_share + moved
    if car.driven_axle == "rear":
        return weight * (1 - car.front_load_share) - moved
    return weight + 0 * moved
