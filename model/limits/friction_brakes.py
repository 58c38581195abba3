"""The friction brakes: how warm they get on descents and in repeated stops, and how little they are used.

One lump stands for the two front discs. The rear brakes take the rest of the heat and are left out: they stay cooler.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from model.describe.car import Car
from model.describe.trace import Array
from model.describe.units import KMH_PER_MPS, ZERO_C_IN_K
from model.kernel.run import Run
from model.kernel.savings import Result

FRONT_SHARE = 0.7
"""Share of the braking heat in the front discs [1]. Common practice, no source."""
COOLING_DOUBLES_AT_MPS = 21.5
"""Moving air at this speed cools twice as well as still air [m/s]: the form of the truck downgrade method,
``1.23 + 0.0256 V`` (FHWA-RD-81-185, equation from memory)."""
RADIATION_W_PER_K4_T = 0.55 * 5.67e-8 * 0.4
"""Heat radiated by both front discs over the fourth power of temperature, a tonne of car [W/K⁴]: half-bright iron,
0.4 m² a tonne. Assumed."""
FADE_BAND_C = (300.0, 500.0)
"""Disc temperature at which ordinary pads begin to lose bite, and that by which they have [°C]. Common practice, no
source; brake fluid that holds water boils lower, at the caliper."""
FIRM_USE_MPS2 = 1.5
"""Slowing by the friction brakes alone from which a use counts as firm [m/s²]. Common practice, no source."""
FIRM_USE_FROM_KMH = 20.0
"""Below this speed an application is too short to clean a disc [km/h]. Common practice, no source."""


def disc_temperature_c(
    car: Car, friction_w: Array, step_s: Array, speed: Array, ambient_c: Array, start_c: float
) -> Array:
    """Temperature of the front discs at the points of a drive [°C].

    Parameters
    ----------
    car : Car
        Heat capacity and cooling for each tonne of it.
    friction_w, step_s, speed, ambient_c : array (steps,)
        Power of all friction brakes [W], length of the step [s], speed [m/s] and outside temperature [°C].
    start_c : float
        Temperature at the start [°C].
    """
    tonnes = car.mass_kg / 1000
    capacity = car.disc_heat_capacity_kj_per_k_t * 1000 * tonnes
    cooling = car.disc_cooling_w_per_k_t * tonnes * (1 + speed / COOLING_DOUBLES_AT_MPS)
    radiation = RADIATION_W_PER_K4_T * tonnes
    around_k = ambient_c + ZERO_C_IN_K
    kelvin = start_c + ZERO_C_IN_K
    reached = [kelvin]
    steps = zip(friction_w * FRONT_SHARE, step_s, cooling, around_k, strict=True)
    for heat, length, loss, around in steps:
        loss += radiation * (kelvin + around) * (kelvin**2 + around**2)
        # exact for constant heat and cooling within the step, so that long steps stay stable
        settled = around + heat / loss
        kelvin = settled + (kelvin - settled) * np.exp(-loss * length / capacity)
        reached.append(kelvin)
    return np.array(reached) - ZERO_C_IN_K


def disc_temperature_of(run: Run, car: Car) -> Array:
    """Front discs' temperature at the points of a run's trace [°C]; they start as warm as the air."""
    speed, ambient = run.speed[0], run.ambient_c[0]
    return disc_temperature_c(car, run.friction_n[0] * speed, run.step_s[0], speed, ambient, float(ambient[0]))


def fade_caution(hottest_c: float) -> str:
    """Where the hottest moment [°C] lies against the band in which pads lose bite: below, within or above."""
    low, high = FADE_BAND_C
    return "below" if hottest_c < low else "within" if hottest_c <= high else "above"


@dataclass(frozen=True)
class BrakeUse:
    """How much the friction brakes do on a drive, with regeneration and on friction brakes only.

    Energies [kWh] for 100 km, at the wheels; `firm_uses` is how often they were used firmly with regeneration.
    """

    kwh_per_100km: float
    friction_only_kwh_per_100km: float
    firm_uses: int

    def days_between_firm_uses(self, drives_per_day: float) -> float | None:
        """Time from one firm use to the next [days], with so many drives a day; None where there is none."""
        uses = self.firm_uses * drives_per_day
        return 1 / uses if uses else None


def brake_use(result: Result) -> BrakeUse:
    """Work of the friction brakes on a drive: the plain proxy of wear, as far as use and not rust decides."""
    per_100km, run = 100 / result.distance_km, result.run
    firm = (run.friction_n > FIRM_USE_MPS2 * run.mass_kg[0]) & (run.speed * KMH_PER_MPS > FIRM_USE_FROM_KMH)
    return BrakeUse(
        kwh_per_100km=result.wheel_friction_kwh * per_100km,
        friction_only_kwh_per_100km=result.friction_only_wheel_friction_kwh * per_100km,
        firm_uses=int(np.count_nonzero(np.diff(firm[0].astype(int), prepend=0) == 1)),
    )
