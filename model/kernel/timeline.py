"""A result laid out over time and by slow-down, for pictures and tables."""

from __future__ import annotations

import numpy as np
import pandas as pd

from model.describe.trace import Array
from model.describe.units import J_PER_KWH, J_PER_WH, KMH_PER_MPS
from model.kernel.ledger import Ledger
from model.kernel.run import Run, ledger_of, lost_slowing_j
from model.kernel.savings import Result
from model.physics.slowing_limits import LIMITS


def timeline(result: Result) -> pd.DataFrame:
    """One row a step: when, where, how fast, how high, and the power at wheels and battery.

    Columns `time_s`, `distance_km`, `speed_kmh`, `elevation_m` hold at the end of the step, `step_s` is its length;
    `pull_kw`, `motor_slowing_kw`, `friction_kw` are at the wheels in its middle, `battery_kw` at the terminals
    (charging negative); `soc` [1] and `battery_c` hold at its start; `limit` names what kept the motor from doing
    more, empty where nothing did; `charged_to` is the charge [1] to which the car was charged, standing in the step.
    """
    run, trace = result.run, result.trace
    names = np.array([*LIMITS, ""])

    def kw(force_n: Array) -> Array:
        return force_n[0] * run.speed[0] / 1000

    return pd.DataFrame(
        {
            "time_s": trace.time_s[1:],
            "step_s": trace.step_s,
            "distance_km": np.cumsum(trace.step_m) / 1000,
            "speed_kmh": trace.speed_mps[1:] * KMH_PER_MPS,
            "elevation_m": result.conditions.altitude_m + trace.elevation_m[1:],
            "pull_kw": kw(np.maximum(run.wheel_n, 0)),
            "motor_slowing_kw": kw(run.motor_n),
            "friction_kw": kw(run.friction_n),
            "battery_kw": run.terminal_w[0] / 1000,
            "soc": run.soc_before[0],
            "battery_c": run.pack_before_c[0],
            "limit": names[run.bound[0]],
            "leg": 0 if trace.leg is None else trace.leg,
            "charged_to": np.nan if trace.charge_to is None else trace.charge_to,
        }
    )


def braked_kwh(steps: pd.DataFrame) -> tuple[float, float]:
    """Braking energy at the wheels [kWh] that the motor and that the friction brakes took over a timeline's steps."""
    hours = steps["step_s"] / 3600
    return float((steps["motor_slowing_kw"] * hours).sum()), float((steps["friction_kw"] * hours).sum())


def books(result: Result) -> pd.DataFrame:
    """The ledger seen from the battery's terminals [kWh], for both runs.

    Columns `regenerated` and `friction_only`. Rows: `battery_out` and `battery_in` at the terminals; what their
    difference went into, with the losses of motor, inverter and gear parted into `losses_driving` and, while the motor
    slows the car, `losses_slowing`; and what lies behind the terminals: `cells_given`, `cells_taken`, and the heat in
    the `cells`.
    """
    without = result.friction_only
    return pd.DataFrame(
        {
            "regenerated": _books_of(result.run, result.ledger),
            "friction_only": _books_of(without, ledger_of(without, result.trace)),
        }
    )


def _books_of(run: Run, ledger: Ledger) -> pd.Series:
    losses_slowing = lost_slowing_j(run)
    entries = {
        "battery_out": float(run.out_j[0]),
        "battery_in": float(run.in_j[0]),
        "engine_given": ledger.engine_given,
        "cabin": ledger.cabin,
        "pack_heater": ledger.pack_heater,
        "accessories": ledger.accessories,
        "losses_driving": ledger.motor_inverter + ledger.gear - losses_slowing,
        "air": ledger.air,
        "rolling": ledger.rolling,
        "climb": ledger.climb,
        "kinetic": ledger.kinetic,
        "friction_brakes": ledger.friction_brakes,
        "engine_drag": ledger.engine_drag,
        "losses_slowing": losses_slowing,
        "cells_given": ledger.cells_given,
        "cells_taken": ledger.cells_taken,
        "cells": ledger.cell,
    }
    return pd.Series(entries) / J_PER_KWH


def slow_downs(result: Result) -> pd.DataFrame:
    """One row a slow-down: each unbroken run of steps in which the speed falls and the wheels are braked.

    Columns: `start_km`, `end_km`, `from_kmh`, `to_kmh`, `duration_s`, `peak_mps2`, energy at the wheels `braking_wh`,
    `motor_wh`, `friction_wh`, and `limit`, the one that left the most to friction (empty where none did).
    """
    run, trace = result.run, result.trace
    braking_n, friction_n, bound = run.braking_n[0], run.friction_n[0], run.bound[0]
    braked = braking_n > 0
    slowing = braked & (trace.acceleration_mps2 < -1e-6)
    edges = np.diff(np.concatenate([[0], slowing.astype(int), [0]]))
    first, last = np.flatnonzero(edges == 1), np.flatnonzero(edges == -1)
    length = trace.step_m
    work = run.speed[0] * trace.step_s / J_PER_WH
    braking, motor, friction = (force_n * work for force_n in (braking_n, run.motor_n[0], friction_n))
    place = np.concatenate([[0.0], np.cumsum(length)]) / 1000
    slowing_mps2, within = -trace.acceleration_mps2, [slice(*ends) for ends in zip(first, last, strict=True)]

    def main_limit(here: slice) -> str:
        by_limit = np.bincount(bound[here] + 1, weights=friction[here], minlength=len(LIMITS) + 1)[1:]
        return LIMITS[int(by_limit.argmax())] if by_limit.max() > 0 else ""

    friction_wh = [float(friction[here].sum()) for here in within]
    return pd.DataFrame(
        {
            "start_km": place[first],
            "end_km": place[last],
            "from_kmh": trace.speed_mps[first] * KMH_PER_MPS,
            "to_kmh": trace.speed_mps[last] * KMH_PER_MPS,
            "duration_s": trace.time_s[last] - trace.time_s[first],
            "peak_mps2": [float(slowing_mps2[here].max()) for here in within],
            "braking_wh": [float(braking[here].sum()) for here in within],
            "motor_wh": [float(motor[here].sum()) for here in within],
            "friction_wh": friction_wh,
            "limit": [main_limit(here) if wh > 0 else "" for here, wh in zip(within, friction_wh, strict=True)],
        }
    )
