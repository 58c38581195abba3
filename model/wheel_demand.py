"""What each step of a trace asks of the wheels: inertia, rolling, air and slope."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from model.battery import pack_warm_up_j
from model.cabin import cabin_power_w, cabin_warm_up_j
from model.car import Car
from model.road_load import (
    air_density,
    air_n,
    cold_tyre_factor,
    flat_road_load_n,
    rolling_n,
    trailer_rolling_n,
    tyre_factor,
)
from model.scenario import SURFACES, Conditions
from model.trace import Array, Trace
from model.tyre_grip import extra_rolling, friction_coefficient
from model.units import GRAVITY_MPS2, KMH_PER_MPS

BLOCK = 10
"""Steps over which charge, temperature, cell resistance and charge acceptance are held."""


@dataclass(frozen=True, eq=False)
class Demand:
    """What each step asks, padded to whole blocks with steps of no length. Shapes (runs or 1, steps).

    `tyre_slowing` is what the tyres slow the car by [m/s²], slope included: it moves weight between the axles. Masses
    are those of all that moves; `car_kg` and `car_effective_kg` leave a trailer out. `warm_cabin_j` and `warm_pack_j`
    [J] are what warming up took from the battery before the drive.
    """

    steps: int
    step_s: Array
    speed: Array
    tyre_slowing: Array
    wheel_n: Array
    air_n: Array
    rolling_n: Array
    road_load_n: Array | None
    lift_off_mps2: Any
    friction: Array
    mass_kg: Any
    effective_mass_kg: Any
    car_kg: Any
    car_effective_kg: Any
    accessories_w: Any
    cabin_w: Array
    ambient_c: Array
    warm_cabin_j: Any
    warm_pack_j: Any


def _padded(values: NDArray[Any], length: int) -> Array:
    rows = np.atleast_2d(values)
    return np.pad(rows, ((0, 0), (0, length - rows.shape[-1])))


def air_height_m(trace: Trace, altitude_m: Any) -> Array:
    """Height above sea level in the middle of each step [m].

    A drive that starts at sea level and goes down starts higher than was said: its air is no denser than at sea level.
    """
    height = altitude_m + (trace.elevation_m[:-1] + trace.elevation_m[1:]) / 2
    return np.maximum(height, np.minimum(altitude_m, 0.0))


def wheel_demand(trace: Trace, car: Car, conditions: Conditions) -> Demand:
    """Force at the wheels in the middle of each step: inertia, rolling, air and slope."""
    steps = len(trace.step_s)
    length = -(-steps // BLOCK) * BLOCK
    speed = _padded(trace.mean_speed_mps, length)
    acceleration = _padded(trace.acceleration_mps2, length)
    sine = _padded(trace.sine_of_slope, length)
    cosine = np.sqrt(1 - sine * sine)
    season = SURFACES.index(conditions.surface)
    surface = season if trace.surface is None else np.maximum(_padded(trace.surface, length), season)
    if trace.ambient_c is None:
        ambient = np.full((np.size(conditions.ambient_c), length), conditions.ambient_c, dtype=float)
    else:
        mean = (trace.ambient_c[:-1] + trace.ambient_c[1:]) / 2
        ambient = np.concatenate([mean, np.full(length - steps, mean[-1])])[None, :]
    car_kg = car.mass_kg + conditions.payload_kg
    mass = car_kg + conditions.trailer_kg
    rotating = car.rotating_mass_share * car.mass_kg
    effective_mass = mass + rotating
    density = air_density(ambient, _padded(air_height_m(trace, conditions.altitude_m), length))
    extra = extra_rolling(surface)
    step_s = _padded(trace.step_s, length)
    passed_s = np.cumsum(step_s, axis=-1) - step_s / 2
    warm = trace.warmed_up if conditions.tyres_warm == "by_drive" else conditions.tyres_warm == "yes"
    cold_tyres = 1.0 if warm else cold_tyre_factor(car, passed_s)
    wind = conditions.wind_kmh / KMH_PER_MPS * (1.0 if trace.heading is None else _padded(trace.heading, length))
    rolling = rolling_n(car, speed, conditions.payload_kg, ambient, extra, cosine, cold_tyres)
    air = np.where(speed > 0, air_n(car, speed, wind, density), 0.0)
    if np.any(np.asarray(conditions.trailer_kg) > 0):
        warmth = tyre_factor(ambient) * cold_tyres
        rolling = rolling + trailer_rolling_n(car, conditions.trailer_kg, speed, warmth, extra, cosine)
        through_air = np.where(speed > 0, speed + wind, 0.0)
        air = air + 0.5 * density * conditions.trailer_drag_area_m2 * through_air * np.abs(through_air)
    flat = None
    if car.brake_pedal == "friction":
        flat = flat_road_load_n(car, speed, conditions.payload_kg, ambient, density, extra, cold_tyres)
    if trace.cabin_w is None:
        cabin = cabin_power_w(car, conditions, passed_s)
    else:
        cabin = _padded(trace.cabin_w, length)
    unplugged = np.logical_not(conditions.plugged_in)
    # a measured battery temperature stands for whatever warmed it
    warm_pack_j = 0.0 if trace.battery_temp_c is not None else pack_warm_up_j(car, conditions, ambient[:, :1])
    return Demand(
        steps=steps,
        step_s=step_s,
        speed=speed,
        tyre_slowing=np.maximum(-acceleration - GRAVITY_MPS2 * sine, 0.0),
        wheel_n=effective_mass * acceleration + mass * GRAVITY_MPS2 * sine + rolling + air,
        air_n=air,
        rolling_n=rolling,
        road_load_n=flat,
        lift_off_mps2=None if trace.lift_off_mps2 is None else _padded(trace.lift_off_mps2, length),
        friction=np.atleast_2d(friction_coefficient(surface, conditions.grip_level, conditions.tyres, speed)),
        mass_kg=mass,
        effective_mass_kg=effective_mass,
        car_kg=car_kg,
        car_effective_kg=car_kg + rotating,
        accessories_w=car.accessory_w,
        cabin_w=cabin,
        ambient_c=ambient,
        warm_cabin_j=unplugged * cabin_warm_up_j(car, conditions),
        warm_pack_j=unplugged * warm_pack_j,
    )
