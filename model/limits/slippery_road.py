"""A slippery road: the driver's lift-off against grip where it is driven, and on every other road."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import pandas as pd

from model.describe.parameters import car_of
from model.describe.scenario import SURFACES, Conditions, Scenario
from model.describe.trace import Array
from model.describe.units import KMH_PER_MPS
from model.limits.grip_margin import (
    BENDS_M,
    LEVELS,
    AxleGrip,
    GripCheck,
    balance,
    demand_friction,
    grip_asked,
    grip_check,
    grip_levels,
    largest_lift_off_mps2,
    margin_word,
)
from model.limits.limit_settings import LimitSettings, slipperiest
from model.physics.surfaces import surface_table
from model.physics.tyre_grip import friction_coefficient

SLOWER_KMH = 10.0
"""How much slower one could go [km/h], to see what that brings."""


@dataclass(frozen=True, eq=False)
class SlipperyRoad:
    """The driver's lift-off on the slipperiest road of the drive, and on every other.

    `check` is that of `model.limits.grip_margin`, `asked` the grip behind it, `most_friction` what this road gives at
    most at walking pace [1], `winter_times` how many times as well winter tyres grip there as summer tyres, `slower`
    the largest lift-off [m/s²] at `SLOWER_KMH` less, at the low, mid and high end of the road's band. `by_surface`
    has a row a `surface`: friction `demand`, `least`, the largest lift-off `low`, `mid`, `high` [m/s²] and the
    `margin`. `loads` has the `front` and `rear` axle's share of the weight by `slowing_mps2`, `balance` the friction
    asked of `front` and `rear` by `front_share` of the motor slowing; None straight on.
    """

    check: GripCheck
    asked: AxleGrip
    most_friction: float
    winter_times: float
    slower: dict[str, float]
    by_surface: pd.DataFrame
    loads: pd.DataFrame
    balance: pd.DataFrame | None


def friction_of_roads(conditions: Conditions, speed: float) -> Array:
    """Friction of every surface [1] at a speed [m/s]: rows as SURFACES, columns as LEVELS."""
    surfaces, levels = np.arange(len(SURFACES))[:, None], np.array(list(grip_levels(conditions).values()))
    friction: Array = friction_coefficient(surfaces, levels, conditions.tyres, speed)
    return friction


def grip_there(scenario: Scenario, settings: LimitSettings) -> GripCheck:
    """The check of `model.limits.grip_margin` on the drive's slipperiest road, where the settings say."""
    where = (settings.grip_kmh, BENDS_M.get(settings.bend), settings.slope_pct)
    return grip_check(car_of(scenario), slipperiest(scenario), scenario.driver.lift_off_mps2, *where)


def slippery_road(scenario: Scenario, settings: LimitSettings) -> SlipperyRoad:
    """The scenario's lift-off strength against grip, at the speed, in the bend and on the slope of the settings."""
    car, conditions, strength = car_of(scenario), slipperiest(scenario), scenario.driver.lift_off_mps2
    radius = BENDS_M.get(settings.bend, np.inf)
    where = (settings.grip_kmh / KMH_PER_MPS, radius, settings.slope_pct / 100)
    asked = grip_asked(car, conditions, strength, *where)
    demand = float(demand_friction(asked, car.driven_axle))
    needed = float(max(asked.front, asked.rear))
    there, table = SURFACES.index(conditions.surface), surface_table()
    friction = friction_of_roads(conditions, where[0])
    largest = largest_lift_off_mps2(car, conditions, friction, *where)
    slow = max(where[0] - SLOWER_KMH / KMH_PER_MPS, 0.0)
    slower = largest_lift_off_mps2(car, conditions, friction_of_roads(conditions, slow), slow, *where[1:])
    by_surface = pd.DataFrame({"surface": SURFACES, "demand": demand, "least": friction[:, 0]})
    by_surface[list(LEVELS)] = largest
    by_surface["margin"] = [margin_word(needed, least, most) for least, most in friction[:, [0, -1]]]
    slowing = np.linspace(0.0, 9.0, 19)
    front = grip_asked(car, conditions, slowing).front_load_share
    shares = np.linspace(0.0, 1.0, 21)
    in_a_bend = None
    if np.isfinite(radius):
        at_front, at_rear = balance(car, conditions, strength, where[0], radius, shares)
        in_a_bend = pd.DataFrame({"front_share": shares, "front": at_front, "rear": at_rear})
    return SlipperyRoad(
        check=grip_there(scenario, settings),
        asked=asked,
        most_friction=float(friction_of_roads(conditions, 0.0)[there, -1]),
        winter_times=float(table["winter_factor"][there] / table["summer_factor"][there]),
        slower={name: float(most) for name, most in zip(LEVELS, slower[there], strict=True)},
        by_surface=by_surface,
        loads=pd.DataFrame({"slowing_mps2": slowing, "front": front, "rear": 1 - front}),
        balance=in_a_bend,
    )
