"""Road load: what air, tyres and slope do to a moving car."""

from __future__ import annotations

from typing import Any

import numpy as np

from model.car import Car
from model.units import GRAVITY_MPS2, ZERO_C_IN_K

TYRE_REFERENCE_C = 20.0
"""Rolling figures hold at this temperature (as coast-down results are stated)."""
TYRE_PER_K = 0.008
"""Rolling resistance rises by 0.8 % for each kelvin colder (UN R117, Annex 6, class C1)."""
AIR_REFERENCE_KG_M3 = 1.2041
"""Dry air at 20 °C and 101.325 kPa: the state at which measured f2 holds."""


def air_density(temperature_c: Any, altitude_m: Any = 0.0) -> Any:
    """Density of dry air [kg/m³] in the standard atmosphere's pressure at `altitude_m`.

    Parameters
    ----------
    temperature_c : numeric
        Air temperature [°C].
    altitude_m : numeric
        Height above sea level [m]; valid to 11,000 m.

    Notes
    -----
    Ideal gas, R = 287.05 J/(kg K); pressure after ISO 2533. 1.225 kg/m³ at 15 °C and sea level.
    """
    pressure = 101325.0 * (1 - 2.25577e-5 * np.asarray(altitude_m, dtype=float)) ** 5.25588
    return pressure / (287.05 * (np.asarray(temperature_c, dtype=float) + ZERO_C_IN_K))


def tyre_factor(temperature_c: Any) -> Any:
    """Rolling resistance over that at 20 °C [1], linear after UN R117; valid from −40 to 50 °C."""
    return 1 - TYRE_PER_K * (np.asarray(temperature_c, dtype=float) - TYRE_REFERENCE_C)


def cold_tyre_factor(car: Car, time_s: Any) -> Any:
    """Rolling resistance over that of tyres warmed up in the same air [1], `time_s` [s] after a start on cold tyres.

    Decays exponentially towards 1. Time spent standing counts as driven: a stop is short beside the tyres' cooling.
    """
    return 1 + car.tyre_cold_share * np.exp(-np.asarray(time_s, dtype=float) / (car.tyre_warm_up_min * 60))


def rolling_n(
    car: Car,
    speed: Any,
    load_kg: Any,
    temperature_c: Any,
    extra: Any = 0.0,
    cosine: Any = 1.0,
    cold_tyres: Any = 1.0,
) -> Any:
    """Rolling resistance [N]; nothing while the car stands.

    Parameters
    ----------
    car : Car
        Measured f0 and f1 where given, else the rolling coefficient.
    speed : array
        Speed [m/s].
    load_kg : numeric
        Load beside the driver [kg].
    temperature_c : numeric
        Outside temperature [°C].
    extra : array
        Rolling coefficient added by snow or water [1].
    cosine : array
        Cosine of the slope [1].
    cold_tyres : array
        Factor of tyres that are not yet warmed up [1].
    """
    weight = (car.mass_kg + load_kg) * GRAVITY_MPS2
    warmth = tyre_factor(temperature_c) * cold_tyres
    if car.has_measured_road_load:
        # f0 was measured at the car's own mass; load adds to it in proportion
        base = car.f0_n * (1 + load_kg / car.mass_kg) * warmth * cosine + car.f1_n_per_mps * speed
    else:
        base = car.rolling_coefficient * weight * warmth * cosine
    return np.where(speed > 0, base + extra * weight * cosine, 0.0)


def air_n(car: Car, speed: Any, wind_mps: Any, density: Any) -> Any:
    """Air resistance [N] at `speed` [m/s] against a headwind [m/s] in air of `density` [kg/m³]."""
    through_air = speed + wind_mps
    if car.has_measured_road_load:
        factor = car.f2_n_per_mps2 * (density / AIR_REFERENCE_KG_M3)
    else:
        factor = 0.5 * density * car.drag_area_m2
    return factor * through_air * np.abs(through_air)


def flat_road_load_n(
    car: Car, speed: Any, load_kg: Any, temperature_c: Any, density: Any, extra: Any = 0.0, cold_tyres: Any = 1.0
) -> Any:
    """Air and rolling resistance on a flat road without wind [N]: what lift-off strength is counted from."""
    return rolling_n(car, speed, load_kg, temperature_c, extra, 1.0, cold_tyres) + air_n(car, speed, 0.0, density)


def trailer_rolling_n(car: Car, trailer_kg: Any, speed: Any, warmth: Any, extra: Any, cosine: Any) -> Any:
    """Rolling resistance of a trailer [N] on tyres like the car's; `warmth` [1] is the tyres' factor."""
    weight = trailer_kg * GRAVITY_MPS2 * cosine
    return np.where(speed > 0, (car.rolling_coefficient * warmth + extra) * weight, 0.0)
