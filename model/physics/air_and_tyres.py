"""What air and tyres do to a moving car."""

from __future__ import annotations

import math

from model.describe.units import GRAVITY_MPS2, KMH_PER_MPS, ZERO_C_IN_K
from model.physics.jit import compiled
from model.physics.motor_and_gear import idle_drag_n, motor_of
from model.physics.records import CarRecord, MomentOnRoad
from model.physics.surfaces import surface_table
from model.physics.warming_up import cold_tyre_factor

TYRE_REFERENCE_C = 20.0
"""Rolling figures hold at this temperature [°C] (as coast-down results are stated)."""
TYRE_PER_K = 0.008
"""Rolling resistance rises by 0.8 % for each kelvin colder (UN R117, Annex 6, class C1)."""
AIR_REFERENCE_KG_M3 = 1.2041
"""Density [kg/m³] of dry air at 20 °C and 101.325 kPa: the state at which measured f2 holds."""
EXTRA_ROLLING = surface_table()["extra_rolling"]


@compiled
def air_density(temperature_c: float, altitude_m: float) -> float:
    """Density of dry air [kg/m³] at a temperature [°C], in the standard atmosphere's pressure at a height [m].

    Notes
    -----
    Ideal gas, R = 287.05 J/(kg K); pressure after ISO 2533, valid to 11,000 m. 1.225 kg/m³ at 15 °C and sea level.
    """
    share = 1.0 - 2.25577e-5 * altitude_m
    return 101325.0 * share**5.25588 / (287.05 * (temperature_c + ZERO_C_IN_K))


@compiled
def height_m(car: CarRecord, rise_m: float) -> float:
    """Height above sea level [m] of a place `rise_m` [m] above the start of the drive.

    A drive that starts at sea level and goes down starts higher than was said: its air is no denser than at sea level.
    """
    return max(car.altitude_m + rise_m, min(car.altitude_m, 0.0))


@compiled
def outside_c(car: CarRecord, at: MomentOnRoad) -> float:
    """Outside temperature [°C]: the road's own where it was measured, else the conditions'."""
    return car.ambient_c if math.isnan(at.ambient_c) else at.ambient_c


@compiled
def surface_under(car: CarRecord, at: MomentOnRoad) -> int:
    """Index of the surface: the slipperier of the season's and the road's."""
    return max(int(car.surface), at.surface)


@compiled
def tyre_factor(temperature_c: float) -> float:
    """Rolling resistance over that at 20 °C [1], linear after UN R117; valid from −40 to 50 °C."""
    return 1.0 - TYRE_PER_K * (temperature_c - TYRE_REFERENCE_C)


@compiled
def warmth_of_tyres(car: CarRecord, at: MomentOnRoad) -> float:
    """Rolling resistance here and now over that of warm tyres at 20 °C [1]."""
    return tyre_factor(outside_c(car, at)) * cold_tyre_factor(car, at)


@compiled
def has_measured_road_load(car: CarRecord) -> bool:
    """Whether the road load is given as measured coefficients rather than as drag area and rolling."""
    return not math.isnan(car.f0_n)


@compiled
def rolling_n(car: CarRecord, speed: float, warmth: float, extra: float, cosine: float) -> float:
    """Rolling resistance of the car [N] at `speed` [m/s]; nothing while it stands.

    Measured coefficients come from a car that coasted in neutral: they hold what turning the idle motor takes, which is
    booked with the motor and left out here.

    `warmth` [1] is `warmth_of_tyres`, `extra` [1] the rolling coefficient that snow or water adds, `cosine` [1] that of
    the slope.
    """
    if speed <= 0:
        return 0.0
    weight = (car.mass_kg + car.payload_kg) * GRAVITY_MPS2
    if has_measured_road_load(car):
        # f0 was measured at the car's own mass; load adds to it in proportion. Temperature changes f0 and f1 alike, as
        # the world harmonised procedure corrects them (UN GTR 15, Annex 4; from memory)
        base = (car.f0_n * (1.0 + car.payload_kg / car.mass_kg) * cosine + car.f1_n_per_mps * speed) * warmth
        base -= idle_drag_n(motor_of(car), speed)
    else:
        base = car.rolling_coefficient * weight * warmth * cosine
    return base + extra * weight * cosine


@compiled
def air_n(car: CarRecord, speed: float, wind_mps: float, density: float) -> float:
    """Air resistance of the car [N] at `speed` [m/s] against a headwind [m/s] in air of `density` [kg/m³]."""
    through_air = speed + wind_mps
    if has_measured_road_load(car):
        factor = car.f2_n_per_mps2 * (density / AIR_REFERENCE_KG_M3)
    else:
        factor = 0.5 * density * car.drag_area_m2
    return factor * through_air * abs(through_air)


@compiled
def flat_road_load_n(car: CarRecord, speed: float, warmth: float, extra: float, density: float) -> float:
    """Air and rolling resistance on a flat road without wind [N]: what lift-off strength is counted from."""
    return rolling_n(car, speed, warmth, extra, 1.0) + air_n(car, speed, 0.0, density)


@compiled
def headwind_mps(car: CarRecord, at: MomentOnRoad) -> float:
    """Wind against the car [m/s]: on the way back it comes from the other side."""
    return car.wind_kmh / KMH_PER_MPS * at.heading


@compiled
def trailer_rolling_n(car: CarRecord, speed: float, warmth: float, extra: float, cosine: float) -> float:
    """Rolling resistance of the trailer [N], on tyres like the car's."""
    if speed <= 0:
        return 0.0
    return (car.rolling_coefficient * warmth + extra) * car.trailer_kg * GRAVITY_MPS2 * cosine


@compiled
def trailer_air_n(car: CarRecord, speed: float, wind_mps: float, density: float) -> float:
    """What a trailer adds to the air resistance [N]; nothing without one."""
    through_air = speed + wind_mps
    return 0.5 * density * car.trailer_drag_area_m2 * through_air * abs(through_air) if car.trailer_kg > 0 else 0.0
