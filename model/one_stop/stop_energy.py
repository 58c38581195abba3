"""One stop, followed from the motion of the car into the cells of the battery, and out again to the wheels."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np
import pandas as pd

from model.describe.car import Car
from model.describe.scenario import Conditions, Driver
from model.describe.trace import Array, N
from model.describe.units import J_PER_WH, KMH_PER_MPS
from model.kernel.ledger import total
from model.kernel.savings import Result, evaluate
from model.limits.emergency_stop import brakes_hold_mps2
from model.one_stop.slow_down import change, gain, trace_along


def hardest_mps2(from_kmh: float, conditions: Conditions) -> float:
    """Slowing [m/s²] that all four tyres have grip for at this speed and below, so over a whole stop."""
    return float(brakes_hold_mps2(conditions, conditions.grip_level, from_kmh / KMH_PER_MPS))


def stop(from_kmh: float, slowing_mps2: float, car: Car, conditions: Conditions, driver: Driver) -> Result:
    """Drive a stop at one slowing [m/s²], as far as the road has the grip and no less than the car slows by rolling.

    Cabin heat is left out: it goes by the clock, not by how the car slows.
    """
    slowing = min(slowing_mps2, hardest_mps2(from_kmh, conditions))
    quiet = replace(conditions, cabin=False)
    return evaluate(trace_along([change(from_kmh / KMH_PER_MPS, 0.0, slowing, car, quiet)]), car, quiet, driver)


@dataclass(frozen=True)
class StopEnergy:
    """Where the motion of a stop goes [Wh].

    `motion` is the energy of motion at its start; `air`, `rolling` (with snow), `friction` and a hybrid's `engine` take
    their parts at the wheels; `gear` and `motor` (with its inverter) on the way to the electric side. There the car's
    electronics take what they need at once, `aboard`; `battery` is what passes the battery's terminals, of which
    `cells` is lost as heat inside it.
    """

    motion: float
    air: float
    rolling: float
    friction: float
    engine: float
    gear: float
    motor: float
    aboard: float
    battery: float
    cells: float

    @property
    def road(self) -> float:
        """What air and tyres take [Wh]."""
        return self.air + self.rolling

    @property
    def losses(self) -> float:
        """What gear, motor and inverter take [Wh]."""
        return self.gear + self.motor

    @property
    def stored(self) -> float:
        """What the cells hold afterwards [Wh]."""
        return self.battery - self.cells


def _at_terminals_j(result: Result) -> tuple[Array, Array, Array]:
    """What the motor generates, what of it is used aboard, and what passes the terminals, in each step [J]."""
    run = result.run
    step_s, load_w = run.step_s[0], run.cars["accessory_w"][0]
    made = np.maximum(-(run.shaft_n * run.speed)[0] - run.motor_loss_w[0], 0.0)
    aboard = np.minimum(made, load_w)
    return made * step_s, aboard * step_s, (made - aboard) * step_s


def energy_of(result: Result) -> StopEnergy:
    """Where the motion of a stop went; every entry from its own law, so that they add up is a test."""
    run = result.run
    speed, step_s = run.speed[0], run.step_s[0]

    def wh(power_w: Array) -> float:
        return total(power_w, step_s) / J_PER_WH

    made, aboard, battery = (float(part.sum()) / J_PER_WH for part in _at_terminals_j(result))
    charging = run.terminal_w[0] < 0
    return StopEnergy(
        motion=float(motion_wh(result.trace.speed_mps[0] * KMH_PER_MPS, result.run.effective_mass_kg[0])),
        air=wh(run.air_n[0] * speed),
        rolling=wh(run.rolling_n[0] * speed),
        friction=wh(run.friction_n[0] * speed),
        engine=wh(run.engine_drag_n[0] * speed),
        gear=wh(run.gear_loss_w[0]),
        motor=wh(-run.shaft_n[0] * speed) - made,
        aboard=aboard,
        battery=battery,
        cells=wh(run.cell_loss_w[0] * charging),
    )


def motion_wh(speed_kmh: N, mass_kg: float) -> N:
    """Energy of motion [Wh] of a mass [kg] at a speed [km/h]."""
    return mass_kg * (speed_kmh / KMH_PER_MPS) ** 2 / 2 / J_PER_WH


def back_by_speed(
    from_kmh: float, slowing_mps2: float, car: Car, conditions: Conditions, driver: Driver
) -> pd.DataFrame:
    """Energy of motion and what of it a stop brings to the battery, `motion_wh` and `battery_wh`, over `speed_kmh`.

    A stop from a lower speed is the end of the stop from `from_kmh` [km/h], so one stop gives all.
    """
    result = stop(from_kmh, slowing_mps2, car, conditions, driver)
    speed_kmh = result.trace.speed_mps * KMH_PER_MPS
    back = _at_terminals_j(result)[2][: len(speed_kmh) - 1] / J_PER_WH
    return pd.DataFrame(
        {
            "speed_kmh": speed_kmh,
            "motion_wh": motion_wh(speed_kmh, result.run.effective_mass_kg[0]),
            "battery_wh": np.append(np.cumsum(back[::-1])[::-1], 0.0),
        }
    )


@dataclass(frozen=True)
class WayOut:
    """What becomes of energy from the cells on its way to the wheels [Wh]."""

    cells: float
    motor: float
    gear: float
    wheels: float


def way_out(stored_wh: float, to_kmh: float, car: Car, conditions: Conditions, driver: Driver) -> WayOut:
    """Take energy [Wh] out of the cells with the losses of pulling away from rest to a speed, as this driver does."""
    up = trace_along([gain(0.0, to_kmh / KMH_PER_MPS, driver)])
    run = evaluate(up, car, replace(conditions, cabin=False), driver).run
    step_s, speed = run.step_s[0], run.speed[0]
    pulling = (run.shaft_n[0] > 0) * step_s
    shaft = float(np.dot(run.shaft_n[0] * speed, pulling))
    electric = shaft + float(np.dot(run.motor_loss_w[0], pulling))
    given = float(np.dot(run.cell_w[0], pulling))
    terminals = stored_wh * (1 - float(np.dot(run.cell_loss_w[0], pulling)) / given)
    at_shaft = terminals * shaft / electric
    wheels = at_shaft * (1 - float(np.dot(run.gear_loss_w[0], pulling)) / shaft)
    return WayOut(stored_wh - terminals, terminals - at_shaft, at_shaft - wheels, wheels)
