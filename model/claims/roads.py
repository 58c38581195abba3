"""What claims are driven on: drives by name, an even stop, a hill, one speed, and a drive over and over."""

from __future__ import annotations

import math
from dataclasses import replace
from functools import cache

import numpy as np

from model.describe.scenario_io import starting_drives
from model.describe.trace import Array, Trace
from model.describe.units import KMH_PER_MPS
from model.sampling.drives import trace_of
from model.traces.cycles import CYCLES, cycle_trace

LONG_DRIVE_KM = 30.0
"""How far a full battery is followed until the motor slows as usual."""


def stop_from(speed_kmh: float, slowing_mps2: float) -> Trace:
    """An even stop."""
    speed = speed_kmh / KMH_PER_MPS
    points = np.linspace(0, 1, max(2, round(2 * speed / slowing_mps2)) + 1)
    return Trace(
        time_s=points * speed / slowing_mps2, speed_mps=speed * (1 - points), elevation_m=0 * points, warmed_up=True
    )


def steady(speed_kmh: float) -> Trace:
    """Half an hour at one speed, in steps of 10 s."""
    return Trace(
        time_s=np.linspace(0, 1800, 181), speed_mps=np.full(181, speed_kmh / KMH_PER_MPS), elevation_m=np.zeros(181)
    )


@cache
def again_and_again(name: str) -> Trace:
    """A drive over and over until it is LONG_DRIVE_KM long."""
    once = named_trace(name)
    times = math.ceil(1000 * LONG_DRIVE_KM / once.distance_m)
    rounds, points = np.repeat(np.arange(times), len(once.step_s)), (times, len(once.step_s))
    steps = np.tile(once.step_s, times)

    def over_again(values: Array) -> Array:
        return np.append(values[0], np.broadcast_to(values[1:], points).ravel())

    climbed = once.elevation_m[-1] - once.elevation_m[0]
    return Trace(
        time_s=np.append(0.0, np.cumsum(steps)),
        speed_mps=over_again(once.speed_mps),
        elevation_m=over_again(once.elevation_m) + np.append(0.0, rounds * climbed),
        warmed_up=once.warmed_up,
    )


def over_the_hill(grade_pct: float, speed_kmh: float, height_m: float) -> Trace:
    """Up a hill and down its other side at one speed, in steps of about 10 s."""
    speed = speed_kmh / KMH_PER_MPS
    seconds = height_m / np.sin(np.arctan(grade_pct / 100)) / speed
    steps = max(2, round(seconds / 10))
    up = np.linspace(0, 1, steps + 1)
    return Trace(
        time_s=np.linspace(0, 2 * seconds, 2 * steps + 1),
        speed_mps=np.full(2 * steps + 1, speed),
        elevation_m=height_m * np.append(up, up[-2::-1]),
        warmed_up=True,
    )


@cache
def named_trace(name: str) -> Trace:
    """The trace of one of DRIVES; the flat drive is driven one way, since both ways are alike."""
    if name in CYCLES:
        return cycle_trace(name)
    if name == "hill":
        return over_the_hill(6.0, 60.0, 300.0)
    scenario = starting_drives()[name][2]
    return trace_of(replace(scenario, return_trip=scenario.return_trip and name != "town"))
