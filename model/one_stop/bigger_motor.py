"""The same drive with more or less motor: how much of the braking it does, and which limit keeps it from the rest."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pandas as pd

from model.describe.car import Car
from model.describe.units import J_PER_KWH
from model.kernel.run import drive
from model.kernel.savings import Result
from model.physics.charge_acceptance import with_cells_stated
from model.physics.tyre_grip import axle_loads_n

CHANGES = ("nothing", "second_motor", "twice_the_battery")
"""What may change beside the motor's power: all wheels driven in place of one axle, or a battery of twice the size."""
POWER_TIMES = np.arange(1, 25) / 8
"""The motor's power over that of the car as it is [1]."""


def changed(car: Car, change: str) -> Car:
    """The car with one thing changed; its weight and its cells stay, so that one thing changes at a time."""
    car = with_cells_stated(car)
    if change == "second_motor":
        return replace(car, driven_axle="all", front_regen_share=None)
    return replace(car, usable_kwh=2 * car.usable_kwh) if change == "twice_the_battery" else car


def by_power(result: Result, change: str = "nothing") -> pd.DataFrame:
    """Drive the result's trace with the motor at each of POWER_TIMES, pulling and slowing power alike.

    One row a power: `power_times` [1], `motor_kw`, `recovered_kwh` at the battery's terminals, braking energy at the
    wheels `motor_kwh` and what each limit left to friction, in columns named as in LIMITS [kWh].
    """
    car = changed(result.car, change)
    powers = {"motor_peak_kw": car.motor_peak_kw * POWER_TIMES}
    if car.regen_peak_kw is not None:
        powers["regen_peak_kw"] = car.regen_peak_kw * POWER_TIMES
    run = drive(result.trace, car, result.conditions, result.driver, drawn=powers)
    return pd.DataFrame(
        {
            "power_times": POWER_TIMES,
            "motor_kw": car.motor_peak_kw * POWER_TIMES,
            "recovered_kwh": run.in_j / J_PER_KWH,
            "motor_kwh": run.energies["motor_j"] / J_PER_KWH,
        }
        | {name: left / J_PER_KWH for name, left in run.left_by_limit_j.items()}
    )


def front_share(car: Car, slowing_mps2: float) -> float:
    """Share of the weight on the front axle [1] while the car slows [m/s²]."""
    front, rear = axle_loads_n(car, car.mass_kg, slowing_mps2)
    return float(front / (front + rear))
