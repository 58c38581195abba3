"""A motor that begins to slow the car a moment after the foot came up: what the moment costs."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from model.describe.car import Car
from model.describe.scenario import Conditions, Driver
from model.describe.trace import Trace
from model.kernel.run import drive
from model.one_stop.slow_down import Passage, change, drive_way

FINE_STEP_S = 0.01
"""No step is longer [s]: most motors turn from pulling to slowing within tens to hundreds of milliseconds."""


def recovered_in_first_moments(trace: Trace, car: Car, conditions: Conditions, driver: Driver, delay_s: float) -> float:
    """Share of the recovered energy [1] that comes in the first `delay_s` [s] of each slow-down.

    It is lost where friction does that part on the same trace. Steps are cut to `FINE_STEP_S` or less. 0 where nothing
    is recovered.
    """
    cuts = np.maximum(1, np.ceil(trace.step_s / FINE_STEP_S - 1e-9)).astype(int)
    inside = np.concatenate([np.arange(count) / count for count in cuts])
    at = np.arange(len(trace.time_s))
    place = np.append(np.repeat(at[:-1], cuts) + inside, at[-1])
    time_s, speed = np.interp(place, at, trace.time_s), np.interp(place, at, trace.speed_mps)
    # on an even slope height follows distance, not time
    along = np.append(0.0, np.cumsum((speed[1:] + speed[:-1]) / 2 * np.diff(time_s)))
    height = np.interp(along, np.append(0.0, np.cumsum(trace.step_m)), trace.elevation_m)
    fine = Trace(time_s=time_s, speed_mps=speed, elevation_m=height, warmed_up=trace.warmed_up)
    run = drive(fine, car, replace(conditions, cabin=False), driver)
    slowing = run.motor_n[0] > 0
    begins = np.append(True, ~slowing[:-1]) & slowing
    begun = np.maximum.accumulate(np.where(begins, time_s[:-1], -np.inf))
    step_s = np.diff(time_s)
    taken = np.maximum(-run.terminal_w[0], 0) * step_s
    early = np.clip((begun + delay_s - time_s[:-1]) / np.maximum(step_s, 1e-12), 0.0, 1.0)
    return float((taken * slowing * early).sum() / max(taken.sum(), 1e-9))


def late_motor_cost(
    from_mps: float, to_mps: float, car: Car, conditions: Conditions, driver: Driver, delay_s: float
) -> float:
    """Share of the recovered energy [1] that is lost to a motor which slows only `delay_s` [s] after the foot came up.

    The car rolls until then and slows a little harder after it, so that it ends at the same place.
    """
    strength = driver.lift_off_mps2

    def slow_to_the_end(start_mps: float, slowing_mps2: float) -> Passage:
        steps = int(np.ceil((start_mps - to_mps) / max(slowing_mps2, 0.1) / FINE_STEP_S))
        return change(start_mps, to_mps, slowing_mps2, car, conditions, steps=steps)

    even = slow_to_the_end(from_mps, strength)
    roll = change(from_mps, from_mps / 2, 0.0, car, conditions)
    until = np.append(0.0, np.cumsum(roll.step_s))
    time_s = np.linspace(0.0, delay_s, max(1, round(delay_s / FINE_STEP_S)) + 1)
    late = Passage(np.interp(time_s, until, roll.speed), np.diff(time_s))
    left_m = even.distance_m - late.distance_m
    harder = (late.speed[-1] ** 2 - to_mps**2) / (2 * left_m)
    ways = [[even], [late, slow_to_the_end(float(late.speed[-1]), harder)]]
    foot = replace(driver, lift_off_mps2=max(strength, harder))
    prompt, delayed = (drive_way(parts, car, conditions, foot).recovered_wh for parts in ways)
    return 1 - delayed / prompt
