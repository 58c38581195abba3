"""What a moment asks of the wheels: inertia, rolling, air and slope."""

from __future__ import annotations

import math
from typing import NamedTuple

from model.describe.units import GRAVITY_MPS2
from model.physics.air_and_tyres import (
    EXTRA_ROLLING,
    air_density,
    air_n,
    flat_road_load_n,
    headwind_mps,
    height_m,
    outside_c,
    rolling_n,
    surface_under,
    trailer_air_n,
    trailer_rolling_n,
    warmth_of_tyres,
)
from model.physics.jit import compiled
from model.physics.records import CarRecord, MomentOnRoad
from model.physics.warming_up import cold_driveline_n, over_reference


class WheelDemand(NamedTuple):
    """Forces at the wheels [N]: pulling is positive, as is what holds the car back.

    `rolling_n` is that of tyres and, while it is cold, of the driveline.
    """

    wheel_n: float
    air_n: float
    rolling_n: float
    flat_road_load_n: float


class Outside(NamedTuple):
    """What the air outside makes of a moment: its own density [kg/m³], and `over_reference` of a driveline as cold."""

    density: float
    driveline: float


@compiled
def car_kg(car: CarRecord) -> float:
    """Mass of the car with its load, a trailer left out [kg]."""
    return car.mass_kg + car.payload_kg


@compiled
def car_effective_kg(car: CarRecord) -> float:
    """Mass of the loaded car with what has to be spun up, a trailer left out [kg]."""
    return car_kg(car) + car.rotating_mass_share * car.mass_kg


@compiled
def moving_kg(car: CarRecord) -> float:
    """Mass of all that moves [kg]."""
    return car_kg(car) + car.trailer_kg


@compiled
def effective_kg(car: CarRecord) -> float:
    """Mass of all that moves with what has to be spun up [kg]."""
    return car_effective_kg(car) + car.trailer_kg


@compiled
def tyre_slowing_mps2(at: MomentOnRoad) -> float:
    """What the tyres slow the car by [m/s²], slope included: it moves weight between the axles."""
    return max(-at.acceleration_mps2 - GRAVITY_MPS2 * at.sine, 0.0)


@compiled
def density_at(car: CarRecord, at: MomentOnRoad) -> float:
    """Density of the air here [kg/m³]."""
    return air_density(outside_c(car, at), height_m(car, at.rise_m))


@compiled
def outside_at(car: CarRecord, at: MomentOnRoad) -> Outside:
    """The air here: powers and logarithms, which are slow; along a road see `outside_next`."""
    return Outside(density_at(car, at), over_reference(outside_c(car, at)))


@compiled
def outside_next(car: CarRecord, at: MomentOnRoad, before: MomentOnRoad, outside: Outside) -> Outside:
    """The air at the next moment of a road, worked out anew as far as it is another than at the moment before."""
    if not math.isnan(at.ambient_c):
        return outside_at(car, at)
    return outside if at.rise_m == before.rise_m else Outside(density_at(car, at), outside.driveline)


@compiled
def extra_rolling(car: CarRecord, at: MomentOnRoad) -> float:
    """Rolling coefficient that snow or water adds here [1]."""
    return EXTRA_ROLLING[surface_under(car, at)]


@compiled
def driveline_n(car: CarRecord, at: MomentOnRoad, speed: float, outside: Outside) -> float:
    """What a cold driveline drags here more than a warm one [N] at `speed` [m/s]; nothing while the car stands."""
    return cold_driveline_n(car, at, outside.driveline) if speed > 0 else 0.0


@compiled
def all_rolling_n(car: CarRecord, at: MomentOnRoad, speed: float, warmth: float, driveline: float) -> float:
    """Rolling resistance here of all that moves [N] at `speed` [m/s].

    `warmth` [1] is `warmth_of_tyres`, `driveline` [N] `driveline_n`: exponentials, which are slow.
    """
    extra, cosine = extra_rolling(car, at), math.sqrt(1.0 - at.sine * at.sine)
    tyres = rolling_n(car, speed, warmth, extra, cosine) + trailer_rolling_n(car, speed, warmth, extra, cosine)
    return tyres + driveline


@compiled
def all_air_n(car: CarRecord, at: MomentOnRoad, speed: float, outside: Outside) -> float:
    """Air resistance here of all that moves [N] at `speed` [m/s]; none while the car stands."""
    wind, density = headwind_mps(car, at), outside.density
    return air_n(car, speed, wind, density) + trailer_air_n(car, speed, wind, density) if speed > 0 else 0.0


@compiled
def resisting_n(car: CarRecord, at: MomentOnRoad, speed: float, outside: Outside) -> float:
    """What holds the car back here [N] at `speed` [m/s]: rolling, air and slope."""
    rolling = all_rolling_n(car, at, speed, warmth_of_tyres(car, at), driveline_n(car, at, speed, outside))
    climbing = moving_kg(car) * GRAVITY_MPS2 * at.sine
    return rolling + all_air_n(car, at, speed, outside) + climbing


@compiled
def demand_at_wheels(car: CarRecord, at: MomentOnRoad, outside: Outside) -> WheelDemand:
    """What the wheels must do in a moment, in the air outside, and what air and tyres take of it."""
    speed = at.speed_mps
    warmth, driveline = warmth_of_tyres(car, at), driveline_n(car, at, speed, outside)
    rolling, air = all_rolling_n(car, at, speed, warmth, driveline), all_air_n(car, at, speed, outside)
    inertia, climbing = effective_kg(car) * at.acceleration_mps2, moving_kg(car) * GRAVITY_MPS2 * at.sine
    flat = flat_road_load_n(car, speed, warmth, extra_rolling(car, at), outside.density) + driveline
    return WheelDemand(inertia + climbing + rolling + air, air, rolling, flat)
