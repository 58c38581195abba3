"""The hill of a leg as people enter it: up, down or flat, and of metres, steepness and length each from the others.

A leg holds metres up, metres down and the steepness of its hills. What is entered last is kept as entered; of the rest,
the length of the hill stays and metres or steepness follow.
"""

from __future__ import annotations

import math
from dataclasses import replace

from model.describe import fields
from model.describe.fields import Entry, Field, InputError
from model.describe.figures import Quantity, Share
from model.describe.scenario import LEG_FIELDS, Leg

WAYS = ("flat", "up", "down", "up_and_down")
WAY = Field("way", "choice", "", "leg-way", choices=WAYS, default="flat")
HILL_KM = Field(
    "hill_km", "number", "km", "leg-hill_km", 0.01, LEG_FIELDS["distance_km"].maximum, LEG_FIELDS["distance_km"].usual,
)  # fmt: skip
"""What is entered beside a leg's own figures."""
FIRST_M, FIRST_SHARE = 100.0, 0.05
"""A first hill is this high [m], or as high as this steepness [1] makes it over the whole leg, if that is lower."""
WHOLE_SHARE = 0.98
"""A hill over this share of its leg [1] goes all the way: it grows and shrinks with the leg."""
STEEPNESS = LEG_FIELDS["grade_pct"]


def way_of(leg: Leg) -> str:
    """Whether a leg is flat, goes up, down, or both."""
    return WAYS[bool(leg.climb_m) + 2 * bool(leg.descent_m)]


def hill_km(leg: Leg) -> float:
    """Length of road that goes up or down [km]."""
    return (leg.climb_m + leg.descent_m) / (10 * leg.grade_pct)


def value_of(leg: Leg, key: str) -> Entry:
    """What a leg holds for one of its figures, or for what is entered beside them."""
    if key == WAY.key:
        return way_of(leg)
    return hill_km(leg) if key == HILL_KM.key else getattr(leg, key)


def with_entry(leg: Leg, key: str, value: Entry) -> Leg:
    """A leg with one entry changed, and what follows from it.

    Raises
    ------
    InputError
        Where the hill would be steeper than is allowed or not fit on the leg.
    """
    if key == WAY.key:
        return _turned(leg, str(value))
    changed = leg if key == HILL_KM.key else fields.changed(leg, {key: value})
    if not isinstance(value, int | float):
        return changed
    if key == HILL_KM.key:
        return _as_steep_as_needed(leg, value)
    height, length = leg.climb_m + leg.descent_m, hill_km(leg)
    all_the_way = length > WHOLE_SHARE * leg.distance_km
    length = leg.distance_km if all_the_way else length
    if not height:
        return _as_steep_as_needed(changed, changed.distance_km) if key in ("climb_m", "descent_m") else changed
    if key == STEEPNESS.key:
        share = 10 * value * length / height
        return replace(changed, climb_m=_tidy(leg.climb_m * share), descent_m=_tidy(leg.descent_m * share))
    if key == "distance_km":
        return _as_steep_as_needed(changed, value if all_the_way else min(length, value))
    if key in ("climb_m", "descent_m"):
        return _as_steep_as_needed(changed, length)
    return changed


def _turned(leg: Leg, way: str) -> Leg:
    height = leg.climb_m + leg.descent_m
    if way == "flat":
        return replace(leg, climb_m=0.0, descent_m=0.0)
    if not height:
        height = min(FIRST_M, _tidy(FIRST_SHARE * 1000 * leg.distance_km))
        leg = _as_steep_as_needed(replace(leg, climb_m=height), leg.distance_km)
    up = {"up": height, "down": 0.0, "up_and_down": height / 2}[way]
    if way == "up_and_down" and leg.climb_m and leg.descent_m:
        return leg
    return replace(leg, climb_m=up, descent_m=height - up)


def _as_steep_as_needed(leg: Leg, length_km: float) -> Leg:
    """The leg with its metres on a hill of that length, which may not be longer than the leg."""
    height = leg.climb_m + leg.descent_m
    if not height:
        return leg
    if length_km > leg.distance_km:
        raise InputError(
            "hill-does-not-fit", hill=Quantity(length_km, "km", 3, trimmed=True),
            length=Quantity(leg.distance_km, "km", 3, trimmed=True),
        )  # fmt: skip
    # rounded up, so that the hill never comes out longer than its leg
    steepness = max(math.ceil(height / (10 * length_km) * 1e4) / 1e4, STEEPNESS.minimum)
    if steepness > STEEPNESS.maximum:
        raise InputError(
            "hill-too-steep", height=Quantity(height, "m", 3, trimmed=True),
            length=Quantity(length_km, "km", 3, trimmed=True), steep=Share(steepness / 100, places=0),
            most=Share(STEEPNESS.maximum / 100, places=0),
            there=Quantity(math.floor(10 * STEEPNESS.maximum * length_km), "m", 3, trimmed=True),
        )  # fmt: skip
    return replace(leg, grade_pct=steepness)


def _tidy(metres: float) -> float:
    # decimetres, rounded down: rounded up, a hill would be longer than the leg it just fits on
    return math.floor(10 * metres + 1e-6) / 10
