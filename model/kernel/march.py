"""The march: one loop over the steps of a road with charge and pack temperature carried along, one over the cars."""

from __future__ import annotations

import math
from typing import Any, NamedTuple

import numpy as np

from model.kernel.step import Battery, Moment, moment_of
from model.physics.air_and_tyres import outside_c
from model.physics.cabin import Cabin, cabin_of, cabin_warm_up_j
from model.physics.cells import Cells, capacity_j, open_circuit_v, resistance_ohm, too_weak
from model.physics.charge_acceptance import acceptance_w
from model.physics.engine import has_engine, kept_soc
from model.physics.jit import compiled
from model.physics.motor_and_gear import LEAST_SPEED_MPS, Motor, motor_of
from model.physics.pack_heat import pack_after_c, start_c, warm_up_j
from model.physics.wheels import density_at

BLOCK = 10
"""Steps over which charge, temperature, cell resistance and charge acceptance are held."""
ROOM_PER_BLOCK = 0.25
"""The most of a nearly full battery's room that one block may fill [1]; only a hybrid's battery takes so fast."""
MOST_TRIES = 60
TOLERANCE = 1e-12
ROUNDING = 1.0 + 1e-9
"""What is more than rounding [1]."""
NOWHERE = -1

class Energies(NamedTuple):
    """What a drive comes to, as far as it is driven.

    Energies [J]: out of and into the battery at its terminals; what an engine gave in the battery's place. At the
    wheels: braking asked, what motor, friction brakes and engine took of it. Out while the road rises, in while it
    falls. `able` says whether motor and battery could give all that was asked, `weak_at` at which step the battery
    first could not, −1 where it always could.
    """

    out_j: float
    in_j: float
    engine_j: float
    braking_j: float
    motor_j: float
    friction_j: float
    engine_drag_j: float
    climb_out_j: float
    descent_back_j: float
    able: bool
    weak_at: int


RESULTS: Any = np.dtype(
    (
        np.record,
        [(name, np.float64) for name in (
            *(name for name in Energies._fields if name.endswith("_j")),
            "warm_cabin_j", "warm_pack_j", "soc_start", "soc_end", "pack_c_end",
        )]
        + [("able", np.bool_), ("weak_at", np.int64), ("empty_at", np.int64)],
    )
)  # fmt: skip
"""What a whole drive of one car comes to: as in `Energies`, warming up before the drive included in what goes out.

Besides: what warming up cabin and battery took [J]; charge after warming up and at the end [1], temperature of the
battery at the end [°C]; `empty_at`, the step by which the battery was empty, −1 where it never was.
"""
MOMENTS: Any = np.dtype(
    (
        np.record,
        [(name, np.float64) for name in Moment._fields if name not in ("bound", "asked_w")]
        + [(name, np.float64) for name in ("pack_heater_w", "soc_before", "pack_before_c")]
        + [("bound", np.int64)],
    )
)
"""What is kept of a moment where that is asked for: as in `Moment`, with power of the battery's heater [W], and charge
[1] and temperature [°C] of the battery before the step."""


@compiled
def battery_at(car: Any, soc: float, pack_c: float, block_s: float) -> Battery:
    """The battery as a block of `block_s` [s] finds it, its heater off."""
    held = min(max(soc, 0.0), 1.0)
    # acceptance is held over a block, so none may fill more than its part of the room
    fills = (1.0 - held) * capacity_j(car) / max(block_s, 1e-9)
    accepted = min(acceptance_w(car, held, pack_c), ROOM_PER_BLOCK * fills)
    return Battery(held, pack_c, open_circuit_v(car, held), resistance_ohm(car, held, pack_c), accepted, 0.0, 1.0)


@compiled
def with_powers(battery: Battery, heater_w: float, share: float) -> Battery:
    """The same battery with its heater at a power [W], giving a share of what is asked of it [1]."""
    return Battery(battery.soc, battery.pack_c, battery.volts, battery.ohms, battery.accepted_w, heater_w, share)


@compiled
def heater_share(car: Any, before_c: float, after_c: float) -> float:
    """Share of a block in which the heater runs [1], from the temperatures [°C] if it ran all the time."""
    missing, rise = car.pack_heater_until_c - before_c, after_c - before_c
    if rise <= 0:
        return 1.0 if missing > 0 else 0.0
    return min(max(missing / rise, 0.0), 1.0)


@compiled
def settled(
    car: Any, motor: Motor, cabin: Cabin, road: Any, first: int, last: int, battery: Battery, regen: bool,
    soc: float, kept: float, most_w: float, always_on_c: float, block_s: float,
) -> Battery:  # fmt: skip
    """A battery with heater or engine over a block: what heater and battery give hangs on what the cells do in it.

    The heater runs at `most_w` [W] until the battery would be as warm as it aims at had it always run (`always_on_c` so
    far [°C]). The battery gives the part of what is asked of it that leaves the charge `kept` [1].
    """
    heater, share = most_w, 1.0
    for _ in range(MOST_TRIES):
        now_battery = with_powers(battery, heater, share)
        drawn = gained = heat_j = 0.0
        for step in range(first, last):
            at = road[step]
            now = moment_of(car, motor, cabin, at, density_at(car, at), now_battery, regen)
            drawn += max(now.cell_w, 0.0) * at.step_s
            gained += max(-now.cell_w, 0.0) * at.step_s
            heat_j += now.cell_loss_w * at.step_s
        outside = outside_c(car, road[first])
        on_after_c = pack_after_c(car, always_on_c, heat_j + most_w * block_s, block_s, outside)
        heater_before, share_before = heater, share
        heater = most_w * heater_share(car, always_on_c, on_after_c)
        if has_engine(car) and drawn > 0:
            share = min(share * max((soc - kept) * capacity_j(car) + gained, 0.0) / drawn, 1.0)
        if abs(share - share_before) < TOLERANCE and abs(heater - heater_before) <= TOLERANCE * most_w:
            break
    return with_powers(battery, heater, share)


@compiled
def able_to(motor: Motor, at: Any, now: Moment) -> bool:
    """Whether motor and battery could give what the moment asked."""
    force, speed = now.shaft_n, max(at.speed_mps, LEAST_SPEED_MPS)
    by_motor = force <= motor.greatest_n * ROUNDING and force * speed <= motor.peak_w * ROUNDING
    return by_motor and not too_weak(Cells(now.cell_w, now.cell_loss_w))


@compiled
def booked(so_far: Energies, motor: Motor, at: Any, step: int, now: Moment) -> Energies:
    """What the drive comes to with one moment more."""
    step_s, step_m = at.step_s, at.step_s * at.speed_mps
    out_j, in_j = max(now.terminal_w, 0.0) * step_s, max(-now.terminal_w, 0.0) * step_s
    braking_j = max(-now.wheel_n, 0.0) * step_m
    motor_j, drag_j = now.motor_n * step_m, now.engine_drag_n * step_m
    weak = now.cell_w > 0 and too_weak(Cells(now.cell_w, now.cell_loss_w))
    return Energies(
        so_far.out_j + out_j,
        so_far.in_j + in_j,
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
def keep(kept: Any, now: Moment, battery: Battery, soc: float) -> None:
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
def write(energies: Energies, result: Any) -> None:
    """Put what a drive came to into its row."""
    result.out_j = energies.out_j
    result.in_j = energies.in_j
    result.engine_j = energies.engine_j
    result.braking_j = energies.braking_j
    result.motor_j = energies.motor_j
    result.friction_j = energies.friction_j
    result.engine_drag_j = energies.engine_drag_j
    result.climb_out_j = energies.climb_out_j
    result.descent_back_j = energies.descent_back_j
    result.weak_at = energies.weak_at


@compiled
def drive_one(car: Any, road: Any, regen: bool, result: Any, moments: Any) -> None:
    """Drive a road with one car: what it comes to goes to `result`, each moment to `moments` where there is room."""
    steps, record = len(road), len(moments) > 0
    measured = not math.isnan(road[0].pack_c)
    outside = outside_c(car, road[0])
    result.warm_cabin_j = 0.0 if car.plugged_in else cabin_warm_up_j(car)
    result.warm_pack_j = 0.0 if car.plugged_in or measured else warm_up_j(car, outside)
    before_j = result.warm_cabin_j + result.warm_pack_j
    soc = car.soc_start - before_j / capacity_j(car)
    pack_c = road[0].pack_c if measured else start_c(car, outside)
    result.soc_start = soc
    # where its temperature was measured the heater's power is not known and taken as none
    heater_w, always_on_c = 0.0 if measured else car.pack_heater_kw * 1000.0, pack_c
    motor, cabin, kept_charge = motor_of(car), cabin_of(car), kept_soc(car, soc)
    energies = Energies(before_j, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, True, NOWHERE)
    empty_at = NOWHERE if soc >= 0 else 0
    density = density_at(car, road[0])
    for first in range(0, steps, BLOCK):
        last = min(first + BLOCK, steps)
        block_s = 0.0
        for step in range(first, last):
            block_s += road[step].step_s
        if measured:
            pack_c = road[first].pack_c
        battery = battery_at(car, soc, pack_c, block_s)
        if has_engine(car) or heater_w > 0:
            battery = settled(
                car, motor, cabin, road, first, last, battery, regen, soc, kept_charge, heater_w, always_on_c, block_s
            )
        given_j = heat_j = 0.0
        for step in range(first, last):
            at = road[step]
            if at.rise_m != road[max(step - 1, 0)].rise_m or not math.isnan(at.ambient_c):
                density = density_at(car, at)
            now = moment_of(car, motor, cabin, at, density, battery, regen)
            given_j += now.cell_w * at.step_s
            heat_j += now.cell_loss_w * at.step_s
            energies = booked(energies, motor, at, step, now)
            if record:
                keep(moments[step], now, battery, soc)
        soc -= given_j / capacity_j(car)
        outside = outside_c(car, road[first])
        pack_c = pack_after_c(car, pack_c, heat_j + battery.heater_w * block_s, block_s, outside)
        always_on_c = pack_after_c(car, always_on_c, heat_j + heater_w * block_s, block_s, outside)
        if soc < 0 and empty_at == NOWHERE:
            empty_at = last
    if measured:
        pack_c = road[steps - 1].pack_after_c
    write(energies, result)
    result.able, result.empty_at = energies.able and empty_at == NOWHERE, empty_at
    result.soc_end = soc
    result.pack_c_end = pack_c


@compiled
def drive_all(cars: Any, road: Any, regen: bool, results: Any, moments: Any) -> None:
    """Drive a road with every car; `results` of shape (cars,), `moments` (cars, steps) or (cars, 0)."""
    for index in range(len(cars)):
        drive_one(cars[index], road, regen, results[index], moments[index])
