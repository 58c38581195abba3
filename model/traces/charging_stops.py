"""How far the battery goes: where the car stands and charges on the way, and where it is empty."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Any

import numpy as np

from model.describe.car import Car
from model.describe.scenario import CONDITION_FIELDS, Conditions, Driver
from model.describe.trace import Array, Trace
from model.kernel.follow import follow
from model.kernel.run import Run, drive
from model.physics.cells import capacity_j
from model.physics.charge_acceptance import acceptance_w

STOP_AT_SOC = 0.1
"""Charge at which a driver stops to charge [1]: assumed."""
SLOWING_MPS2 = 1.0
"""How strongly the car slows for a charging stop, and pulls away again [m/s²]: assumed."""
CHARGE_STEPS = 100
"""Equal parts into which a charge is cut."""
LEAST_RATE_PER_H = 0.05
"""Charge rate below which no charger goes, since it warms a battery that takes next to nothing [1/h]: assumed."""
MOST_STOPS = int(CONDITION_FIELDS["charging_stops"].maximum)
LEAST_M = 1000.0
"""An answer to less road than this would tell nothing of the drive [m]: it is refused."""


@dataclass(frozen=True)
class ChargingStop:
    """One stop: its place along the road [m], how long the car stands [s], the charge it leaves with [1]."""

    place_m: float
    stands_s: float
    charge_to: float


@dataclass(frozen=True)
class Reach:
    """Where the car charges, and where it ends: `end_m` along the road [m] and `ends` as in `Trace`; None, whole."""

    stops: tuple[ChargingStop, ...] = ()
    end_m: float | None = None
    ends: str = ""


def charging_s(run: Run, from_soc: float, to_soc: float, pack_c: float) -> float:
    """Time [s] that a run's car charges from one charge to a higher one [1], its battery at `pack_c` [°C].

    The charger gives whatever the battery takes by the same table as on the road: assumed.
    """
    charges = from_soc + (to_soc - from_soc) * (np.arange(CHARGE_STEPS) + 0.5) / CHARGE_STEPS
    capacity, least_w = capacity_j(run.cars[0]), LEAST_RATE_PER_H * capacity_j(run.cars[0]) / 3600
    taken = np.array([max(acceptance_w(run.cars[0], charge, pack_c), least_w) for charge in charges])
    return float(capacity * (to_soc - from_soc) / CHARGE_STEPS * (1 / taken).sum())


def with_stop(trace: Trace, stop: ChargingStop) -> Trace:
    """The trace with a charging stop: slowing down, standing, pulling away."""
    place_m = stop.place_m
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
    step_s[step + 1] = stop.stands_s
    charges = at_steps(np.full(len(trace.step_s), np.nan) if trace.charge_to is None else trace.charge_to)
    charges[step + 1] = stop.charge_to
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


def reach_of(trace: Trace, car: Car, conditions: Conditions, driver: Driver) -> Reach:
    """Where a car charges on its way, and where its battery is empty.

    It charges as often as is needed and allowed, where the charge would fall to a tenth. A hybrid's engine keeps its
    charge, so it neither stops nor runs empty.

    Raises
    ------
    InputError
        Where the car cannot climb a hill at all.
    """
    trace, _ = follow(trace, car, conditions)
    stops: list[ChargingStop] = []
    charge_to, after = conditions.charge_stop_to, 0
    while True:
        run = drive(trace, car, conditions, driver)
        low = np.flatnonzero(run.soc[0, after:] <= STOP_AT_SOC)
        if len(stops) == conditions.charging_stops or not len(low) or car.sustain_soc is not None:
            break
        at = after + int(low[0])
        # a drive may begin below a tenth
        left = max(float(run.soc[0, at]), 0.0)
        stands_s = charging_s(run, left, charge_to, float(run.pack_c[0, at]))
        stops.append(ChargingStop(float(trace.step_m[:at].sum()), stands_s, charge_to))
        trace = with_stop(trace, stops[-1])
        assert trace.charge_to is not None
        after = int(np.flatnonzero(~np.isnan(trace.charge_to))[-1]) + 1
    empty_at, weak_at = (int(run.energies[name][0]) for name in ("empty_at", "weak_at"))
    # the last point at which there was charge, and the last before more power was asked than the battery had
    ends = [(at, why) for at, why in ((empty_at - 1, "empty"), (weak_at, "weak")) if at >= 0]
    if not ends:
        return Reach(tuple(stops))
    last, why = min(ends)
    end_m = float(trace.step_m[:last].sum())
    return Reach(tuple(stops), end_m, why) if end_m >= LEAST_M else Reach(tuple(stops))


def as_far_as(trace: Trace, reach: Reach) -> Trace:
    """The trace with its charging stops, up to where the battery is empty."""
    for stop in reach.stops:
        trace = with_stop(trace, stop)
    return trace if reach.end_m is None else trace.until(reach.end_m, reach.ends)
