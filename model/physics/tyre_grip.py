"""Grip and axle loads for many values at once: the door to the pointwise `model.physics.grip`."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
from numpy.typing import NDArray

from model.describe.car import Car
from model.describe.scenario import SURFACES, Conditions, Driver
from model.describe.trace import Array, Numbers
from model.physics import grip
from model.physics.jit import door
from model.physics.records import CarRecord, Records, car_record, code


@door
def grip_in_each(surface: NDArray[np.int64], level: Array, tyres: int, speed: Array, friction: Array) -> None:
    """`model.physics.grip.friction_coefficient` of every point; all of shape (points,)."""
    for index in range(len(speed)):
        friction[index] = grip.friction_coefficient(surface[index], level[index], tyres, speed[index])


@door
def loads_in_each(
    car: CarRecord, mass_kg: float, slowing: Array, cosine: Array, front: Array, rear: Array, driven: Array
) -> None:
    """Weight on both axles, and what counts for the motor's grip [N], of every point; all of shape (points,)."""
    for index in range(len(slowing)):
        front[index] = grip.front_axle_n(car, mass_kg, slowing[index], cosine[index])
        rear[index] = grip.rear_axle_n(car, mass_kg, slowing[index], cosine[index])
        driven[index] = grip.driven_axle_load_n(car, mass_kg, slowing[index], cosine[index])


@door
def asked_in_each(
    cars: Records, slowing: Array, speed: Array, radius_m: Array, cosine: Array, asked: Array
) -> None:
    """`model.physics.grip.asked_of_axles` of every point; `asked` of shape (points, 6), `cars` (points,) or (1,)."""
    for index in range(len(slowing)):
        car = cars[index % len(cars)]
        found = grip.asked_of_axles(car, slowing[index], speed[index], radius_m[index], cosine[index])
        for place in range(len(found)):
            asked[index, place] = found[place]


@door
def strongest_in_each(
    car: CarRecord, friction: Array, speed: Array, radius_m: Array, cosine: Array, strongest: Array
) -> None:
    """`model.physics.grip.strongest_within` of every point; all of shape (points,)."""
    for index in range(len(friction)):
        strongest[index] = grip.strongest_within(car, friction[index], speed[index], radius_m[index], cosine[index])


def asked_of_axles(cars: Records, slowing: Numbers, speed: Numbers, radius_m: Numbers, cosine: Numbers) -> list[Array]:
    """`model.physics.grip.OfAxles`, of one car or of one a point."""
    shape, (slowings, speeds, radii, cosines) = _points(slowing, speed, radius_m, cosine)
    asked = np.empty((len(slowings), len(grip.OfAxles._fields)))
    asked_in_each(cars, slowings, speeds, radii, cosines, asked)
    return [each.reshape(shape)[()] for each in asked.T]


def strongest_within(
    car: CarRecord, friction: Numbers, speed: Numbers, radius_m: Numbers, cosine: Numbers
) -> Array:
    """`model.physics.grip.strongest_within` of many points [m/s²]."""
    shape, (frictions, speeds, radii, cosines) = _points(friction, speed, radius_m, cosine)
    strongest = np.empty(len(frictions))
    strongest_in_each(car, frictions, speeds, radii, cosines, strongest)
    return strongest.reshape(shape)[()]


def _points(*values: Numbers) -> tuple[tuple[int, ...], list[Array]]:
    """The shape that values have together, and each of them as one row of that many points."""
    points = np.broadcast_arrays(*(np.asarray(each, dtype=float) for each in values))
    return points[0].shape, [np.ravel(each) for each in points]


def friction_coefficient(
    surface: int | NDArray[np.int64], level: Numbers, tyres: str = "any", speed: Numbers = 0.0
) -> Array:
    """Friction between tyre and road [1].

    Parameters
    ----------
    surface : int or array of int
        Index into SURFACES.
    level : numeric
        Place within the surface's band: −1 low, 0 mid, 1 high.
    tyres : str
        Kind of tyre, one of `model.describe.scenario.TYRES`.
    speed : numeric
        Speed [m/s].
    """
    points = np.broadcast_arrays(np.asarray(surface), np.asarray(level, dtype=float), np.asarray(speed, dtype=float))
    surfaces, levels, speeds = (np.ravel(values) for values in points)
    friction = np.empty(len(speeds))
    grip_in_each(surfaces.astype(np.int64), levels, code("tyres", tyres), speeds, friction)
    return friction.reshape(points[0].shape)[()]


def road_friction(conditions: Conditions, speed: Numbers = 0.0, level: Numbers | None = None) -> Array:
    """Friction between tyre and road [1] under these conditions at `speed` [m/s].

    `level` is the place within the road's band (−1 low to 1 high), the conditions' own if left out.
    """
    level = conditions.grip_level if level is None else level
    return friction_coefficient(SURFACES.index(conditions.surface), level, conditions.tyres, speed)


def _loads_n(car: Car, mass_kg: float, slowing: Numbers, cosine: Numbers) -> Array:
    shape, (slowings, cosines) = _points(slowing, cosine)
    loads = np.empty((3, len(slowings)))
    record = car_record(car, Conditions(), Driver())
    loads_in_each(record, float(mass_kg), slowings, cosines, loads[0], loads[1], loads[2])
    return loads.reshape(3, *shape)


def axle_loads_n(car: Car, mass_kg: float, slowing: Numbers, cosine: Numbers = 1.0) -> tuple[Array, Array]:
    """Weight on the front and the rear axle [N] while the tyres slow the car.

    Parameters
    ----------
    car, mass_kg
        Where the weight sits; the car's mass with its load [kg].
    slowing : numeric
        Slowing force of the tyres over mass [m/s²].
    cosine : numeric
        Cosine of the slope [1].
    """
    front, rear, _ = _loads_n(replace(car, front_regen_share=None), mass_kg, slowing, cosine)
    return front, rear


def driven_axle_load_n(car: Car, mass_kg: float, slowing: Numbers, cosine: Numbers = 1.0) -> Array:
    """Weight that counts for the motor's grip [N] while the tyres slow the car; parameters as in `axle_loads_n`."""
    return _loads_n(car, mass_kg, slowing, cosine)[2]
