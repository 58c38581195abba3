"""What is cold at the start and warms up on the way, and cools while the car stands: tyres, gear oil, bearings.

Each is one temperature that nears its warm state exponentially. `coldness` is 1 after a long stand and 0 warmed up.
"""

from __future__ import annotations

import math

from model.describe.units import ZERO_C_IN_K
from model.physics.jit import compiled
from model.physics.records import CarRecord, MomentOnRoad, code

STARTS_BY_DRIVE, STARTS_WARM = code("tyres_warm", "by_drive"), code("tyres_warm", "yes")
TYRES_COOL_H = 1.0
"""Time [h] after which a standing car's tyres keep about a third of their warmth: assumed. ISO 28580 lets tyres stand
for at least three hours before a test (from memory), some three time constants."""
DRIVELINE_COOLS_H = 1.5
"""The same [h] for gear oil and housing, some 25 kg that lose 4 W/K to still air: assumed."""
REFERENCE_C, WARMED_UP_C = 20.0, 60.0
"""Where the cold driveline's drag is stated, and about where gear oil ends up: assumed."""
OIL_A, OIL_B = 8.542, 3.354
"""Walther's constants (ASTM D341) of a thin gear oil of 30 mm²/s at 40 °C and 6 at 100 °C: usual, from memory."""
DRAG_OVER_VISCOSITY = 1 / 3
"""Exponent of drag over viscosity [1]: 2/3 in flooded rolling bearings (Palmgren, from memory), next to nothing in
seals; between them: assumed."""
GONE = 1e-12
"""A coldness below which nothing is left of it [1]."""


@compiled
def coldness(car: CarRecord, at: MomentOnRoad, warms_within_s: float, cools_within_s: float) -> float:
    """How much of its coldness something has left [1], warming up and cooling with these time constants [s].

    Time spent standing on the way counts as driven: a stop is short beside the cooling.
    """
    starts_warm = at.warmed_up if car.tyres_warm == STARTS_BY_DRIVE else car.tyres_warm == STARTS_WARM
    start = 0.0 if starts_warm else 1.0
    if at.before_s > 0:
        arrived = start * math.exp(-at.before_s / warms_within_s)
        start = 1.0 - (1.0 - arrived) * math.exp(-car.stands_h * 3600.0 / cools_within_s)
    return start * math.exp(-at.passed_s / warms_within_s) if start > 0 else 0.0


@compiled
def cold_tyre_factor(car: CarRecord, at: MomentOnRoad) -> float:
    """Rolling resistance over that of tyres warmed up in the same air [1]."""
    return 1.0 + car.tyre_cold_share * coldness(car, at, car.tyre_warm_up_min * 60.0, TYRES_COOL_H * 3600.0)


@compiled
def oil_viscosity_mm2_s(temperature_c: float) -> float:
    """Viscosity of gear oil [mm²/s] at a temperature [°C] (Walther); valid from −40 to 120 °C."""
    return 10.0 ** (10.0 ** (OIL_A - OIL_B * math.log10(temperature_c + ZERO_C_IN_K))) - 0.7


WARM_MM2_S, REFERENCE_MM2_S = oil_viscosity_mm2_s(WARMED_UP_C), oil_viscosity_mm2_s(REFERENCE_C)
AT_REFERENCE = (REFERENCE_MM2_S / WARM_MM2_S) ** DRAG_OVER_VISCOSITY - 1.0
"""How much more a driveline drags at the reference than warmed up, over what it does warmed up [1]."""


@compiled
def over_reference(temperature_c: float) -> float:
    """What a driveline of this temperature [°C] drags more than warmed up, over the same at the reference [1]."""
    ratio = oil_viscosity_mm2_s(temperature_c) / WARM_MM2_S
    return max(ratio**DRAG_OVER_VISCOSITY - 1.0, 0.0) / AT_REFERENCE


@compiled
def cold_driveline_n(car: CarRecord, at: MomentOnRoad, over_reference_outside: float) -> float:
    """What gear oil, bearings and grease drag more than warmed up [N]; nothing on a warmed-up standard cycle.

    The last argument is `over_reference` at the outside temperature [1]. Measured road load and gear losses are those
    of a car warmed up, so this is all that the cold adds.
    """
    cold = coldness(car, at, car.driveline_warm_up_min * 60.0, DRIVELINE_COOLS_H * 3600.0)
    if cold < GONE:
        return 0.0
    return car.driveline_cold_n_per_t * car.mass_kg / 1000.0 * cold * over_reference_outside
