"""Charging on the way: where a drive is too long for the battery, the car stands and charges."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import numpy as np

from model.car import Car
from model.kernel.run import Run, drive
from model.physics.cells import capacity_j
from model.physics.charge_acceptance import acceptance_w
from model.scenario import Conditions, Driver
from model.trace import Array, Trace

STOP_AT_SOC = 0.1
"""Charge at which a driver stops to charge [1]: assumed."""
SLOWING_MPS2 = 1.0
"""How strongly the car slows for a charging stop, and pulls away again [m/s²]: assumed."""
PARTS = 100
"""Equal parts into which a charge is cut."""


def charging_s(run: Run, from_soc: float, to_soc: float, pack_c: float) -> float:
    """Time [s] that a run's car charges from one charge to a higher one [1], its battery at `pack_c` [°C].

    The charger gives whatever the battery takes by the same table as on the road: assumed.
    """
    charges = from_soc + (to_soc - from_soc) * (np.arange(PARTS) + 0.5) / PARTS
    taken = np.array([max(acceptance_w(run.cars[0], charge, pack_c), 1.0) for charge in charges])
    return float(capacity_j(run.cars[0]) * (to_soc - from_soc) / PARTS * (1 / taken).sum())


def with_stop(trace: Trace, place_m: float, stands_s: float, charge_to: float) -> Trace:
    """The trace with a charging stop `place_m` [m] along it: slowing down, standing for a time [s], pulling away."""
    along = np.append(0.0, np.cumsum(trace.step_m))
    step = int(np.clip(np.searchsorted(along, place_m, side="right") - 1, 0, len(trace.step_s) - 1))
    part = (place_m - along[step]) / max(trace.step_m[step], 1e-9)
    speed = np.minimum(trace.speed_mps, np.sqrt(2 * SLOWING_MPS2 * np.abs(along - place_m)))

    def at_points(values: Array, twice: float) -> Array:
        return np.insert(values, step + 1, [twice, twice])

    def at_steps(values: Any) -> Any:
        return None if values is None else np.insert(values, step + 1, [values[step], values[step]])

    def between(values: Array) -> float:
        return float(values[step] + part * (values[step + 1] - values[step]))

    along, speed = at_points(along, place_m), at_points(speed, 0.0)
    length, mean = np.diff(along), (speed[:-1] + speed[1:]) / 2
    step_s = np.divide(length, mean, out=at_steps(trace.step_s).astype(float), where=mean > 0)
    step_s[step + 1] = stands_s
    charges = at_steps(np.full(len(trace.step_s), np.nan) if trace.charge_to is None else trace.charge_to)
    charges[step + 1] = charge_to
    own = {name: at_steps(getattr(trace, name)) for name in ("surface", "leg", "lift_off_mps2", "heading", "cabin_w")}
    for name in ("ambient_c", "battery_temp_c"):
        measured = getattr(trace, name)
        own[name] = None if measured is None else at_points(measured, between(measured))
    return replace(
        trace,
        time_s=trace.time_s[0] + np.append(0.0, np.cumsum(step_s)),
        speed_mps=speed,
        elevation_m=at_points(trace.elevation_m, between(trace.elevation_m)),
        charge_to=charges,
        **own,
    )


def with_charging_stops(trace: Trace, car: Car, conditions: Conditions, driver: Driver) -> Trace:
    """The trace with as many charging stops as are needed and allowed, each where the charge would fall to a tenth.

    A hybrid's engine keeps its charge, so it never stops.
    """
    charge_to = conditions.charge_stop_to
    after = 0
    for _ in range(conditions.charging_stops):
        run = drive(trace, car, conditions, driver)
        low = np.flatnonzero(run.soc[0, after:] <= STOP_AT_SOC)
        if not len(low) or car.sustain_soc is not None:
            break
        at = after + int(low[0])
        place_m, pack_c = float(trace.step_m[:at].sum()), float(run.pack_c[0, at])
        # a drive may begin below a tenth
        left = min(max(float(run.soc[0, at]), 0.0), charge_to - 0.01)
        stands_s = charging_s(run, left, charge_to, pack_c)
        trace = with_stop(trace, place_m, stands_s, charge_to)
        assert trace.charge_to is not None
        after = int(np.flatnonzero(~np.isnan(trace.charge_to))[-1]) + 1
    return trace
