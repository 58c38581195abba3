"""The march: one loop over the steps of a road with charge and pack temperature carried along, one over the cars."""

from __future__ import annotations

import math
from typing import NamedTuple

import numpy as np

from model.kernel.step import Battery, Moment, moment_of
from model.physics.air_and_tyres import outside_c
from model.physics.cabin import Cabin, cabin_of, cabin_warm_up_j, rise_after_k, rise_at_start_k, rise_on_way_back_k
from model.physics.cells import Cells, capacity_j, open_circuit_v, resistance_ohm, too_weak
from model.physics.engine import kept_soc
from model.physics.jit import compiled, door
from model.physics.motor_and_gear import LEAST_SPEED_MPS, Motor, motor_of
from model.physics.pack_heat import heater_w, kept_share, on_way_back_c, pack_after_c, start_c, warm_up_j
from model.physics.records import CarRecord, MomentOnRoad, Record, Records
from model.physics.wheels import outside_at, outside_next

ROUNDING = 1.0 + 1e-9
"""What is more than rounding [1]."""
NOWHERE = -1


class Energies(NamedTuple):
    """What a drive comes to, as far as it is driven.

    Energies [J]: out of and into the battery at its terminals, and out less in had the motor spun idle while slowing,
    with the battery's heater as it was; what an engine gave in the battery's place. At the wheels: braking asked, what
    motor, friction brakes and engine took of it. Out while the road rises, in while it falls. `able` says whether
    motor and battery could give all that was asked, `weak_at` at which step the battery first could not, −1 where it
    always could.
    """

    out_j: float
    in_j: float
    idle_net_j: float
    engine_j: float
    braking_j: float
    motor_j: float
    friction_j: float
    engine_drag_j: float
    climb_out_j: float
    descent_back_j: float
    able: bool
    weak_at: int


RESULTS: np.dtype[np.void] = np.dtype(
    (
        np.record,
        [(name, np.float64) for name in (
            *(name for name in Energies._fields if name.endswith("_j")),
            "warm_cabin_j", "warm_pack_j", "charged_j", "soc_start", "soc_end", "pack_c_end",
        )]
        + [("able", np.bool_), ("weak_at", np.int64), ("empty_at", np.int64)],
    )
)  # fmt: skip
"""What a whole drive of one car comes to: as in `Energies`, warming up before the drive included in what goes out.

Besides: what warming up cabin and battery took, and what was charged into the cells on the way [J]; charge after
warming up and at the end [1], temperature of the battery at the end [°C]; `empty_at`, the step by which the battery was
empty, −1 where it never was.
"""
MOMENTS: np.dtype[np.void] = np.dtype(
    (
        np.record,
        [(name, np.float64) for name in Moment._fields if name not in ("idle_terminal_w", "bound")]
        + [(name, np.float64) for name in ("pack_heater_w", "soc_before", "pack_before_c")]
        + [("bound", np.int64)],
    )
)
"""What is kept of a moment where that is asked for: as in `Moment`, with power of the battery's heater [W], and charge
[1] and temperature [°C] of the battery before the step."""


@compiled
def battery_at(car: CarRecord, soc: float, pack_c: float, step_s: float, kept: float, measured: bool) -> Battery:
    """The battery as a step of `step_s` [s] finds it, with the charge `kept` [1] that an engine sees to.

    Where its temperature was measured its heater is not known, and taken as none.
    """
    held = min(max(soc, 0.0), 1.0)
    heater = 0.0 if measured or car.pack_heater_kw <= 0 else heater_w(car, pack_c, step_s)
    per_step = capacity_j(car) / max(step_s, 1e-9)
    room, spare = (1.0 - held) * per_step, max(soc - kept, 0.0) * per_step
    return Battery(held, pack_c, open_circuit_v(car, held), resistance_ohm(car, held, pack_c), heater, room, spare)


@compiled
def able_to(motor: Motor, at: MomentOnRoad, now: Moment) -> bool:
    """Whether motor and battery could give what the moment asked."""
    force, speed = now.shaft_n, max(at.speed_mps, LEAST_SPEED_MPS)
    by_motor = force <= motor.greatest_n * ROUNDING and force * speed <= motor.peak_w * ROUNDING
    return by_motor and not too_weak(Cells(now.cell_w, now.cell_loss_w))


@compiled
def booked(so_far: Energies, motor: Motor, at: MomentOnRoad, step: int, now: Moment) -> Energies:
    """What the drive comes to with one moment more."""
    step_s, step_m = at.step_s, at.step_s * at.speed_mps
    out_j, in_j = max(now.terminal_w, 0.0) * step_s, max(-now.terminal_w, 0.0) * step_s
    braking_j = max(-now.wheel_n, 0.0) * step_m
    motor_j, drag_j = now.motor_n * step_m, now.engine_drag_n * step_m
    weak = now.cell_w > 0 and too_weak(Cells(now.cell_w, now.cell_loss_w))
    return Energies(
        so_far.out_j + out_j,
        so_far.in_j + in_j,
        so_far.idle_net_j + now.idle_terminal_w * step_s,
        so_far.engine_j + now.engine_w * step_s,
        so_far.braking_j + braking_j,
        so_far.motor_j + motor_j,
        so_far.friction_j + braking_j - motor_j - drag_j,
        so_far.engine_drag_j + drag_j,
        so_far.climb_out_j + (out_j if at.sine > 0 else 0.0),
        so_far.descent_back_j + (in_j if at.sine < 0 else 0.0),
        so_far.able and able_to(motor, at, now),
        step if weak and so_far.weak_at == NOWHERE else so_far.weak_at,
    )


@compiled
def keep(kept: Record, now: Moment, battery: Battery, soc: float) -> None:
    """Record a moment."""
    kept.wheel_n = now.wheel_n
    kept.air_n = now.air_n
    kept.rolling_n = now.rolling_n
    kept.motor_n = now.motor_n
    kept.engine_drag_n = now.engine_drag_n
    kept.shaft_n = now.shaft_n
    kept.motor_loss_w = now.motor_loss_w
    kept.terminal_w = now.terminal_w
    kept.engine_w = now.engine_w
    kept.cell_w = now.cell_w
    kept.cell_loss_w = now.cell_loss_w
    kept.cabin_w = now.cabin_w
    kept.pack_heater_w = battery.heater_w
    kept.soc_before = soc
    kept.pack_before_c = battery.pack_c
    kept.bound = now.bound


@compiled
def write(energies: Energies, result: Record) -> None:
    """Put what a drive came to into its row."""
    result.out_j = energies.out_j
    result.in_j = energies.in_j
    result.idle_net_j = energies.idle_net_j
    result.engine_j = energies.engine_j
    result.braking_j = energies.braking_j
    result.motor_j = energies.motor_j
    result.friction_j = energies.friction_j
    result.engine_drag_j = energies.engine_drag_j
    result.climb_out_j = energies.climb_out_j
    result.descent_back_j = energies.descent_back_j
    result.weak_at = energies.weak_at


@compiled
def warm_cabin_before_j(car: CarRecord, at: MomentOnRoad) -> float:
    """What warming up the cabin takes from the battery [J] before a drive that starts there; nothing on the plug."""
    return 0.0 if car.plugged_in else cabin_warm_up_j(car, outside_c(car, at))


@compiled
def warm_pack_before_j(car: CarRecord, at: MomentOnRoad) -> float:
    """What warming up the battery takes from itself before a drive that starts there [J].

    Nothing while plugged in; a measured battery temperature stands for whatever warmed it.
    """
    return 0.0 if car.plugged_in or not math.isnan(at.pack_c) else warm_up_j(car, outside_c(car, at))


@compiled
def start_pack_c(car: CarRecord, at: MomentOnRoad) -> float:
    """Temperature of the battery at the start [°C] of a drive that starts there: as measured, else as described."""
    return start_c(car, outside_c(car, at)) if math.isnan(at.pack_c) else at.pack_c


@compiled
def first_step_back(road: Records) -> int:
    """The step with which the way back begins; −1 where there is none."""
    for step in range(len(road)):
        if road[step].before_s > 0:
            return step
    return NOWHERE


@compiled
def cabin_on_way_back(car: CarRecord, at: MomentOnRoad) -> Cabin:
    """The cabin after the car has stood, on a way back that begins there."""
    arrived_k = rise_after_k(car, rise_at_start_k(car), at.before_s)
    return cabin_of(car, rise_on_way_back_k(car, arrived_k))


@compiled
def drive_one(car: CarRecord, road: Records, regen: bool, result: Record, moments: Records) -> None:
    """Drive a road with one car: what it comes to goes to `result`, each moment to `moments` where there is room."""
    steps, record = len(road), len(moments) > 0
    measured = not math.isnan(road[0].pack_c)
    result.warm_cabin_j, result.warm_pack_j = warm_cabin_before_j(car, road[0]), warm_pack_before_j(car, road[0])
    before_j = result.warm_cabin_j + result.warm_pack_j
    soc = car.soc_start - before_j / capacity_j(car)
    pack_c = start_pack_c(car, road[0])
    result.soc_start = soc
    motor, cabin, kept = motor_of(car), cabin_of(car, rise_at_start_k(car)), kept_soc(car, soc)
    back = first_step_back(road)
    energies = Energies(before_j, 0.0, before_j, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, True, NOWHERE)
    empty_at, charged_j = NOWHERE if soc >= 0 else 0, 0.0
    outside, last_s, keeps = outside_at(car, road[0]), 0.0, 1.0
    for step in range(steps):
        at = road[step]
        if step == back:
            cabin = cabin_on_way_back(car, at)
            pack_c = on_way_back_c(car, pack_c, outside_c(car, at))
        if measured:
            pack_c = at.pack_c
        outside = outside_next(car, at, road[max(step - 1, 0)], outside)
        if at.step_s != last_s:
            last_s, keeps = at.step_s, kept_share(car, at.step_s)
        battery = battery_at(car, soc, pack_c, at.step_s, kept, measured)
        now = moment_of(car, motor, cabin, at, outside, battery, regen)
        energies = booked(energies, motor, at, step, now)
        if record:
            keep(moments[step], now, battery, soc)
        soc -= now.cell_w * at.step_s / capacity_j(car)
        heat_j = (now.cell_loss_w + battery.heater_w) * at.step_s
        pack_c = pack_after_c(car, pack_c, heat_j, keeps, outside_c(car, at))
        if soc < at.charge_to:
            charged_j += (at.charge_to - soc) * capacity_j(car)
            soc = at.charge_to
        if soc < 0 and empty_at == NOWHERE:
            empty_at = step + 1
    if measured:
        pack_c = road[steps - 1].pack_after_c
    write(energies, result)
    result.able, result.empty_at = energies.able and empty_at == NOWHERE, empty_at
    result.soc_end, result.charged_j = soc, charged_j
    result.pack_c_end = pack_c


@door
def drive_all(cars: Records, road: Records, regen: bool, results: Records, moments: Records) -> None:
    """Drive a road with every car; `results` of shape (cars,), `moments` (cars, steps) or (cars, 0)."""
    for index in range(len(cars)):
        drive_one(cars[index], road, regen, results[index], moments[index])
