"""Who slows the car at each speed of a stop: the road, the motor as far as its limits let it, the friction brakes."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pandas as pd

from model.describe.fields import InputError
from model.describe.scenario import Conditions
from model.describe.units import KMH_PER_MPS
from model.kernel.savings import Result
from model.one_stop.motor_delay import late_motor_cost, recovered_in_first_moments
from model.one_stop.stop_energy import hardest_mps2, stop
from model.physics.slowing_limits import LIMITS

LATE_S = 0.3
"""How late a slow motor turns from pulling to slowing [s]; most do within tens of milliseconds. Common practice, no
source."""
LEAST_RECOVERED_KWH = 1e-6
"""A stop that recovers less has nothing to lose to a late motor."""


def split_of(result: Result) -> pd.DataFrame:
    """Slowing by who does it, at each speed of a stop.

    Columns: `speed_kmh`, falling; `road_mps2` (air and tyres), `motor_mps2`, `friction_mps2` (with a hybrid's engine),
    which add up to the car's slowing; `limit` names what kept the motor from doing more, empty where nothing did.
    """
    run, mass = result.run, result.run.effective_mass_kg[0]
    motor = run.motor_n[0]
    return pd.DataFrame(
        {
            "speed_kmh": run.speed[0] * KMH_PER_MPS,
            "road_mps2": (run.air_n + run.rolling_n)[0] / mass,
            "motor_mps2": motor / mass,
            "friction_mps2": (run.braking_n[0] - motor) / mass,
            "limit": np.array([*LIMITS, ""])[run.bound[0]],
        }
    )


def hardest_of(result: Result, from_kmh: float) -> pd.DataFrame:
    """The split of the hardest stop that the road allows the same car from a speed [km/h]."""
    hardest = hardest_mps2(from_kmh, result.conditions)
    return split_of(stop(from_kmh, hardest, result.car, result.conditions, result.driver))


def late_motor(result: Result, slowing_mps2: float) -> tuple[float, float] | None:
    """What a motor that is LATE_S late costs of the energy that a stop recovers [1].

    First: the car rolls meanwhile and the motor then slows it a little harder, to the same place. Second: the friction
    brakes do the first moments. None where the stop recovers nothing, or the wind pushes a rolling car along.
    """
    if result.battery_in_kwh < LEAST_RECOVERED_KWH:
        return None
    by_lift_off = slowing_mps2 if result.car.brake_pedal == "blended" else result.driver.lift_off_mps2
    foot = replace(result.driver, lift_off_mps2=min(by_lift_off, slowing_mps2))
    start = float(result.trace.speed_mps[0])
    try:
        made_up = late_motor_cost(start, 0.0, result.car, result.conditions, foot, LATE_S)
    except InputError:
        return None
    return made_up, recovered_in_first_moments(result.trace, result.car, result.conditions, foot, LATE_S)


def grip_by_speed(fastest_kmh: float, conditions: Conditions) -> pd.DataFrame:
    """Slowing for which all four tyres have grip, `grip_mps2`, over `speed_kmh`."""
    speeds = np.linspace(0.0, fastest_kmh, 27)
    return pd.DataFrame({"speed_kmh": speeds, "grip_mps2": [hardest_mps2(speed, conditions) for speed in speeds]})
