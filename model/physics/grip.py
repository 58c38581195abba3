"""Grip between tyres and road, and the weight that rests on the axles while slowing."""

from __future__ import annotations

import math
from typing import NamedTuple

from model.describe.units import GRAVITY_MPS2, KMH_PER_MPS
from model.physics.jit import compiled
from model.physics.records import CarRecord, code
from model.physics.surfaces import surface_table
from model.physics.wheels import car_kg, moving_kg

_TABLE = surface_table()
LOW, MID, HIGH = _TABLE["low"], _TABLE["mid"], _TABLE["high"]
AT_90_KMH, AT_130_KMH = _TABLE["share_at_90_kmh"], _TABLE["share_at_130_kmh"]
SUMMER, WINTER = _TABLE["summer_factor"], _TABLE["winter_factor"]
SUMMER_TYRES, WINTER_TYRES = code("tyres", "summer"), code("tyres", "winter")
FRONT, REAR = code("driven_axle", "front"), code("driven_axle", "rear")
LATERAL_SHARE = 0.9
"""Grip across the tyre over grip along it [1]: the short axis of the friction ellipse. Common practice, no source."""
STRONGEST_MPS2 = 12.0
"""Beyond any tyre on a road [m/s²]."""
HALVINGS = 50


class OfAxles(NamedTuple):
    """Friction asked of each axle's tyres [1], along and across them, and the weight each axle carries [N]."""

    front_along: float
    front_across: float
    rear_along: float
    rear_across: float
    front_load_n: float
    rear_load_n: float


@compiled
def friction_coefficient(surface: int, level: float, tyres: int, speed: float) -> float:
    """Friction between tyre and road [1].

    Parameters
    ----------
    surface : int
        Index into SURFACES.
    level : float
        Place within the surface's band: −1 low, 0 mid, 1 high.
    tyres : int
        Code of the kind of tyre.
    speed : float
        Speed [m/s]: grip falls with it, on water steeply. Straight lines between 50, 90 and 130 km/h, held beyond.
    """
    mid = MID[surface]
    friction = mid + (level * (HIGH[surface] - mid) if level > 0 else level * (mid - LOW[surface]))
    if tyres == SUMMER_TYRES:
        friction *= SUMMER[surface]
    elif tyres == WINTER_TYRES:
        friction *= WINTER[surface]
    kmh, at_90, at_130 = speed * KMH_PER_MPS, AT_90_KMH[surface], AT_130_KMH[surface]
    if kmh <= 50.0:
        return friction
    if kmh <= 90.0:
        return friction * (1.0 - (kmh - 50.0) / 40.0 * (1.0 - at_90))
    return friction * (at_90 - min((kmh - 90.0) / 40.0, 1.0) * (at_90 - at_130))


@compiled
def front_axle_n(car: CarRecord, mass_kg: float, slowing: float, cosine: float) -> float:
    """Weight on the front axle [N] while the tyres slow the car.

    Parameters
    ----------
    car, mass_kg
        Where the weight sits; the car's mass with its load [kg].
    slowing : float
        Slowing force of the tyres over mass [m/s²]: on a flat road the deceleration. It acts at the road, below the
        centre of gravity, and so moves ``mass · slowing · height / wheelbase`` to the front, on any slope.
    cosine : float
        Cosine of the slope [1].
    """
    moved = mass_kg * slowing * (car.cg_height_m / car.wheelbase_m)
    return mass_kg * GRAVITY_MPS2 * cosine * car.front_load_share + moved


@compiled
def rear_axle_n(car: CarRecord, mass_kg: float, slowing: float, cosine: float) -> float:
    """Weight on the rear axle [N]; parameters as in `front_axle_n`."""
    moved = mass_kg * slowing * (car.cg_height_m / car.wheelbase_m)
    return mass_kg * GRAVITY_MPS2 * cosine * (1.0 - car.front_load_share) - moved


@compiled
def driven_axle_load_n(car: CarRecord, mass_kg: float, slowing: float, cosine: float) -> float:
    """Weight that counts for the motor's grip [N] while the tyres slow the car; parameters as in `front_axle_n`.

    The driven axle's; with all wheels driven that of both, or, where the front axle's share of the motor slowing is
    given, what the sooner slipping axle allows: its weight over its share.
    """
    front, rear = front_axle_n(car, mass_kg, slowing, cosine), rear_axle_n(car, mass_kg, slowing, cosine)
    if car.driven_axle == FRONT:
        return front
    if car.driven_axle == REAR:
        return rear
    share = car.front_regen_share
    if math.isnan(share):
        return front + rear
    return min(front / max(share, 1e-9), rear / max(1.0 - share, 1e-9))


@compiled
def front_share(car: CarRecord, front_n: float, rear_n: float) -> float:
    """The front axle's share of the motor slowing [1], with so much weight on either axle [N]."""
    if car.driven_axle == FRONT:
        return 1.0
    if car.driven_axle == REAR:
        return 0.0
    return front_n / (front_n + rear_n) if math.isnan(car.front_regen_share) else car.front_regen_share


@compiled
def asked_of_axles(car: CarRecord, slowing: float, speed: float, radius_m: float, cosine: float) -> OfAxles:
    """Friction asked of both axles when the motor slows the car.

    Parameters
    ----------
    car : CarRecord
        Axle loads, driven wheels and how all-wheel slowing is shared; the load and a trailer.
    slowing : float
        Lift-off strength [m/s²]: the force is that times all mass, on any slope.
    speed, radius_m : float
        Speed [m/s] in a bend of this radius [m], steadily: each axle carries across the road its share of the standing
        weight.
    cosine : float
        Cosine of the slope [1].
    """
    mass_kg, force = car_kg(car), moving_kg(car) * slowing
    front = front_axle_n(car, mass_kg, force / mass_kg, cosine)
    rear = rear_axle_n(car, mass_kg, force / mass_kg, cosine)
    share, across = front_share(car, front, rear), mass_kg * speed**2 / radius_m
    return OfAxles(
        share * force / front,
        car.front_load_share * across / front,
        (1.0 - share) * force / rear,
        (1.0 - car.front_load_share) * across / rear,
        front,
        rear,
    )


@compiled
def asked_of_driven(car: CarRecord, asked: OfAxles) -> float:
    """Friction asked of the driven axle [1]; with all wheels driven, of the axle that is asked more."""
    front = math.hypot(asked.front_along, asked.front_across / LATERAL_SHARE)
    rear = math.hypot(asked.rear_along, asked.rear_across / LATERAL_SHARE)
    if car.driven_axle == FRONT:
        return front
    return rear if car.driven_axle == REAR else max(front, rear)


@compiled
def strongest_within(car: CarRecord, friction: float, speed: float, radius_m: float, cosine: float) -> float:
    """The strongest lift-off [m/s²] that asks no more than `friction` [1] of the driven axle; 0 where the bend does.

    Halves the span until it is found; the rest as in `asked_of_axles`.
    """
    low, high = 0.0, STRONGEST_MPS2
    for _ in range(HALVINGS):
        middle = (low + high) / 2.0
        asked = asked_of_axles(car, middle, speed, radius_m, cosine)
        if asked_of_driven(car, asked) <= friction and asked.rear_load_n > 0:
            low = middle
        else:
            high = middle
    return low
