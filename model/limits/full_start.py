"""A drive that starts with a full or cold battery: when the motor slows as usual."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from model.describe.car import Car
from model.describe.scenario import Conditions, Driver
from model.describe.trace import Array, Trace
from model.kernel.run import Run
from model.kernel.savings import Result, evaluate
from model.limits.descent import on_endless_battery
from model.physics import battery

PART_CHARGED = 0.6
"""Charge [1] at which a drive is as usual, and a full battery's is compared with."""
PEAK_SHARE = 0.8
"""Share of what comes back that the battery must take before the feel counts as normal [1]: a convention."""


@dataclass(frozen=True)
class Normal:
    """When motor slowing is back to what it is on an ordinary day: after so many minutes and kilometres."""

    minutes: float
    km: float
    battery_c: float
    soc: float


def ordinary_w(run: Run) -> Array:
    """Power at or below which four fifths of what each car puts back come [W], shape (cars,); 0 where nothing does."""
    charging = np.maximum(-run.terminal_w, 0.0)
    energies = charging * run.step_s
    order = np.argsort(charging, axis=-1)
    reached = np.cumsum(np.take_along_axis(energies, order, -1), -1) >= PEAK_SHARE * energies.sum(-1, keepdims=True)
    at: Array = np.take_along_axis(charging, np.take_along_axis(order, reached.argmax(-1)[:, None], -1), -1)[:, 0]
    return at


def ordinary_charging_w(result: Result) -> float:
    """The power [W] that this drive's ordinary slow-downs charge with; 0 where nothing is braked.

    That of `ordinary_w`, with a battery that takes all. Grip is taken as it is; only the battery is looked at.
    """
    free, _ = on_endless_battery(result.trace, result.car, result.conditions, result.driver)
    return float(ordinary_w(free)[0])


def until_normal(result: Result) -> Normal | None:
    """When the battery takes what this drive's ordinary slow-downs give; None where that is not on this drive."""
    run, trace = result.run, result.trace
    usual_w = ordinary_charging_w(result)
    if usual_w == 0:
        return Normal(0.0, 0.0, float(run.pack_c[0, 0]), float(run.soc[0, 0]))
    takes = battery.acceptance_w(result.car, np.clip(run.soc, 0.0, 1.0), run.pack_c)[0] >= usual_w
    if not takes.any():
        return None
    step = int(np.argmax(takes))
    return Normal(
        minutes=float(trace.time_s[step] - trace.time_s[0]) / 60,
        km=float(trace.step_m[:step].sum()) / 1000,
        battery_c=float(run.pack_c[0, step]),
        soc=float(run.soc[0, step]),
    )


@dataclass(frozen=True, eq=False)
class FullStart:
    """The same drive from a full battery and part-charged: what the difference costs, and when it is over."""

    full: Result
    part_charged: Result
    normal: Normal | None

    @property
    def lost_kwh(self) -> float:
        """What leaving full costs at the battery [kWh]."""
        return self.full.net_kwh - self.part_charged.net_kwh


def full_start(trace: Trace, car: Car, conditions: Conditions, driver: Driver) -> FullStart:
    """Leave home with a full battery, beside the same drive from `PART_CHARGED`."""
    full, part = (evaluate(trace, car, replace(conditions, soc_start=soc), driver) for soc in (1.0, PART_CHARGED))
    return FullStart(full, part, until_normal(full))
