"""A trace the car can drive: where motor or battery cannot give what the trace asks, the car is slower."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from model import battery, motor
from model.car import CAR_FIELDS, Car
from model.fields import InputError, Quantity
from model.road_load import air_density, air_n
from model.scenario import Conditions
from model.trace import Array, Trace
from model.units import J_PER_KWH, KMH_PER_MPS
from model.wheel_demand import air_height_m, wheel_demand

CRAWL_MPS = 0.5
"""A car slower than this on an open road is taken to be stuck."""


def pulling_force_n(car: Car, speed: Array, battery_w: float) -> Array:
    """The most force at the wheels [N] at `speed` [m/s] with `battery_w` [W] for the drive."""
    faster = np.maximum(speed, 0.1)
    by_motor = np.minimum(motor.greatest_force_n(car), car.motor_peak_kw * 1000 / faster)
    # electric power: force·speed + loss(force) = battery_w, the positive root
    curve, spare = motor.force_loss_w_per_n2(car), battery_w - motor.loss_w(car, speed, 0.0)
    by_battery = 2 * spare / (faster + np.sqrt(np.maximum(faster**2 + 4 * curve * spare, 0.0)))
    return np.maximum(np.minimum(by_motor, by_battery), 0.0) * car.gear_efficiency


def follow(trace: Trace, car: Car, conditions: Conditions) -> tuple[Trace, bool]:
    """The trace as this car drives it, and whether that is the trace as given.

    Where the car cannot keep up it drives the same road at the speed it can reach, so distance, hills and stops stay
    and time grows.

    Raises
    ------
    InputError
        Where the car cannot climb a hill at all.
    """
    demand = wheel_demand(trace, car, conditions)
    start_c = battery.start_temperature_c(conditions, float(demand.ambient_c[0, 0]))
    left = conditions.soc_start - (demand.warm_cabin_j + demand.warm_pack_j) / (car.usable_kwh * J_PER_KWH)
    soc, pack_c = np.reshape(left, (1, 1)), np.array([[start_c]])
    volts = battery.open_circuit_v(car, soc)[0, 0]
    ohms = battery.resistance_ohm(car, soc, pack_c)[0, 0]
    # a hybrid's engine makes up for what its battery cannot give
    greatest_w = battery.greatest_w(volts, ohms) if car.sustain_soc is None else car.motor_peak_kw * 1e4
    battery_w = max(greatest_w - car.accessory_w - float(demand.cabin_w.max()), 0.0)
    able = pulling_force_n(car, demand.speed, battery_w)
    if np.all(demand.wheel_n <= able * (1 + 1e-9)):
        return trace, True

    # pull less air drag on an even grid of speeds, so that the walk along the road only interpolates
    grid = np.linspace(0.0, 100.0, 401)
    density = air_density(float(demand.ambient_c.mean()), air_height_m(trace, conditions.altitude_m).mean())
    wind, heading = conditions.wind_kmh / KMH_PER_MPS, 1 if trace.heading is None else trace.heading
    pull = pulling_force_n(car, grid, battery_w)
    spare = {way: pull - air_n(car, grid, way * wind, density) for way in (1, -1)}
    steps = demand.steps
    inertia_n = demand.effective_mass_kg * trace.acceleration_mps2
    resisting = demand.wheel_n[0, :steps] - inertia_n - demand.air_n[0, :steps]
    spares = [spare[int(way)] for way in np.broadcast_to(heading, steps)]
    speed = _walk(trace, spares, grid, resisting / demand.effective_mass_kg, demand.effective_mass_kg)
    mean = (speed[:-1] + speed[1:]) / 2
    step_s = np.divide(trace.step_m, mean, out=trace.step_s.copy(), where=mean > 0)
    time_s = np.concatenate([[trace.time_s[0]], trace.time_s[0] + np.cumsum(step_s)])
    return replace(trace, speed_mps=speed, time_s=time_s), False


def _walk(
    trace: Trace, spare_n: Sequence[Array], grid: Array, resisting_mps2: Array, effective_mass_kg: float
) -> Array:
    """Speeds [m/s] at the points of the trace, never above the trace's own, found step by step along the road."""
    speed = trace.speed_mps.copy()
    for step, length in enumerate(trace.step_m):
        if length == 0:
            continue
        before, reached = speed[step], trace.speed_mps[step + 1]
        # the pull changes with speed within the step: once with the speed before, once with the mean
        at = before
        for _ in range(2):
            gain = np.interp(at, grid, spare_n[step]) / effective_mass_kg - resisting_mps2[step]
            possible = np.sqrt(max(before**2 + 2 * gain * length, 0.0))
            at = (before + min(possible, reached)) / 2
        speed[step + 1] = min(possible, reached)
        if speed[step + 1] < CRAWL_MPS < reached and before < CRAWL_MPS:
            slope, place_km = 100 * trace.sine_of_slope[step], trace.step_m[:step].sum() / 1000
            task = f"climb the {slope:.0f} % hill" if slope > 0.5 else "get under way"
            raise InputError(
                f"{{field}}: this car cannot {task} {{place}} into the drive; give it more power or less load.",
                field=CAR_FIELDS["motor_peak_kw"], place=Quantity(round(float(place_km), 1), "km", 2),
            )
    return speed
