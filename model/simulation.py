"""The kernel: from a speed trace to what wheels, motor and battery did, many runs at once.

Arrays have shape (runs, steps). What a step asks of the wheels is known beforehand; only state of charge and pack
temperature couple the steps, and slowly. So the whole trace is swept a few times until both stand still.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Any

import numpy as np
from numpy.typing import NDArray

from model import battery, motor
from model.braking import LIMITS, motor_limits_n
from model.cabin import cabin_power_w
from model.car import Car
from model.ledger import Ledger, total
from model.road_load import (
    air_density,
    air_n,
    cold_tyre_factor,
    flat_road_load_n,
    rolling_n,
    trailer_rolling_n,
    tyre_factor,
)
from model.scenario import SURFACES, Conditions, Driver
from model.trace import Array, Trace
from model.tyre_grip import extra_rolling, friction_coefficient
from model.units import GRAVITY_MPS2, J_PER_KWH, KMH_PER_MPS

BLOCK = 10
"""Steps over which charge, temperature, cell resistance and charge acceptance are held."""
ROOM_PER_BLOCK = 0.25
"""The most of a nearly full battery's room that one block may fill [1]; only a hybrid's battery takes so fast."""
SOC_TOLERANCE = 1e-6
TEMPERATURE_TOLERANCE_K = 5e-3
FULL_TOLERANCE = 1e-12
"""No sweep ends with more charge than the battery holds, but for rounding."""
MOST_SWEEPS = 60
PRECONDITIONED_C = 20.0
"""Battery temperature that warming up before the drive aims at: assumed."""
NO_FORCE_N = 1e-6
"""Less than this is rounding: a car that rolls asks nothing of its motor."""


@dataclass(frozen=True, eq=False)
class Demand:
    """What each step asks, padded to whole blocks with steps of no length. Shapes (runs or 1, steps).

    `tyre_slowing` is what the tyres slow the car by [m/s²], slope included: it moves weight between the axles. Masses
    are those of all that moves; `car_kg` and `car_effective_kg` leave a trailer out.
    """

    steps: int
    step_s: Array
    speed: Array
    tyre_slowing: Array
    wheel_n: Array
    air_n: Array
    rolling_n: Array
    road_load_n: Array | None
    lift_off_mps2: Any
    friction: Array
    mass_kg: Any
    effective_mass_kg: Any
    car_kg: Any
    car_effective_kg: Any
    accessories_w: Any
    cabin_w: Array
    ambient_c: Array


def _padded(values: NDArray[Any], length: int) -> Array:
    return np.concatenate([values, np.zeros(length - len(values), dtype=values.dtype)])[None, :]


def wheel_demand(trace: Trace, car: Car, conditions: Conditions) -> Demand:
    """Force at the wheels in the middle of each step: inertia, rolling, air and slope."""
    steps = len(trace.step_s)
    length = -(-steps // BLOCK) * BLOCK
    speed = _padded(trace.mean_speed_mps, length)
    acceleration = _padded(trace.acceleration_mps2, length)
    sine = _padded(trace.sine_of_slope, length)
    cosine = np.sqrt(1 - sine * sine)
    season = SURFACES.index(conditions.surface)
    surface = season if trace.surface is None else np.maximum(_padded(trace.surface, length), season)
    if trace.ambient_c is None:
        ambient = np.full((np.size(conditions.ambient_c), length), conditions.ambient_c, dtype=float)
    else:
        mean = (trace.ambient_c[:-1] + trace.ambient_c[1:]) / 2
        ambient = np.concatenate([mean, np.full(length - steps, mean[-1])])[None, :]
    car_kg = car.mass_kg + conditions.payload_kg
    mass = car_kg + conditions.trailer_kg
    rotating = car.rotating_mass_share * car.mass_kg
    effective_mass = mass + rotating
    density = air_density(ambient, conditions.altitude_m)
    extra = extra_rolling(surface)
    step_s = _padded(trace.step_s, length)
    passed_s = np.cumsum(step_s, axis=-1) - step_s / 2
    warm = trace.warmed_up if conditions.tyres_warm == "by_drive" else conditions.tyres_warm == "yes"
    cold_tyres = 1.0 if warm else cold_tyre_factor(car, passed_s)
    wind = conditions.wind_kmh / KMH_PER_MPS
    rolling = rolling_n(car, speed, conditions.payload_kg, ambient, extra, cosine, cold_tyres)
    air = np.where(speed > 0, air_n(car, speed, wind, density), 0.0)
    if np.any(np.asarray(conditions.trailer_kg) > 0):
        warmth = tyre_factor(ambient) * cold_tyres
        rolling = rolling + trailer_rolling_n(car, conditions.trailer_kg, speed, warmth, extra, cosine)
        through_air = np.where(speed > 0, speed + wind, 0.0)
        air = air + 0.5 * density * conditions.trailer_drag_area_m2 * through_air * np.abs(through_air)
    flat = None
    if car.brake_pedal == "friction":
        flat = flat_road_load_n(car, speed, conditions.payload_kg, ambient, density, extra, cold_tyres)
    if trace.cabin_w is None:
        cabin = cabin_power_w(car, conditions, passed_s)
    else:
        cabin = _padded(trace.cabin_w, length)
    return Demand(
        steps=steps,
        step_s=step_s,
        speed=speed,
        tyre_slowing=np.maximum(-acceleration - GRAVITY_MPS2 * sine, 0.0),
        wheel_n=effective_mass * acceleration + mass * GRAVITY_MPS2 * sine + rolling + air,
        air_n=air,
        rolling_n=rolling,
        road_load_n=flat,
        lift_off_mps2=None if trace.lift_off_mps2 is None else _padded(trace.lift_off_mps2, length),
        friction=np.atleast_2d(friction_coefficient(surface, conditions.grip_level, conditions.tyres, speed)),
        mass_kg=mass,
        effective_mass_kg=effective_mass,
        car_kg=car_kg,
        car_effective_kg=car_kg + rotating,
        accessories_w=car.accessory_w,
        cabin_w=cabin,
        ambient_c=ambient,
    )


@dataclass(frozen=True, eq=False)
class Run:
    """What wheels, motor and battery did in each step; shapes (runs, steps) unless said otherwise.

    `wheel_motor_n` is the slowing force the motor took at the wheels, `shaft_n` the motor's force (slowing negative),
    `bound` an index into LIMITS, −1 where nothing bound. `soc` and `pack_c` stand at block starts and at the end.
    `terminal_w` is what drive, accessories and heaters take (giving: negative); `engine_w` is the part of it that a
    hybrid's engine gives in place of the battery, `engine_drag_n` what the turning engine takes of the slowing.
    """

    demand: Demand
    braking_n: Array
    wheel_motor_n: Array
    shaft_n: Array
    motor_loss_w: Array
    gear_loss_w: Array
    terminal_w: Array
    cell_w: Array
    cell_loss_w: Array
    bound: Array | None
    soc: Array
    pack_c: Array
    pack_heater_w: Any = 0.0
    engine_w: Any = 0.0
    engine_drag_n: Any = 0.0

    @property
    def friction_n(self) -> Array:
        """Friction braking [N]: what motor and engine left of the demand."""
        return self.braking_n - self.wheel_motor_n - self.engine_drag_n

    @property
    def terminal_out_j(self) -> Array:
        """Energy out of the battery at its terminals [J], shape (runs,)."""
        return np.sum(np.maximum(self.terminal_w, 0) * self.demand.step_s, axis=-1)

    @property
    def terminal_in_j(self) -> Array:
        """Energy put back at the terminals [J], shape (runs,)."""
        return np.sum(np.maximum(-self.terminal_w, 0) * self.demand.step_s, axis=-1)


def solve(
    demand: Demand,
    car: Car,
    conditions: Conditions,
    driver: Driver,
    *,
    regen: bool = True,
    battery_temp_c: Array | None = None,
    record: bool = True,
) -> Run:
    """Drive one trace with one car, or with many at once.

    Parameters
    ----------
    demand : Demand
        From `wheel_demand`, of the same car.
    car, conditions, driver
        As described; numeric fields of car and conditions may have shape (runs, 1).
    regen : bool
        False is the comparison: friction brakes only, the motor spins unloaded, its drag fed by the wheels.
    battery_temp_c : array (steps + 1,), optional
        Measured pack temperature that replaces the computed one.
    record : bool
        Whether to record which limit bound in each step.

    Notes
    -----
    Pulling is not limited here: `model.following` makes the trace one that the car can drive.
    """
    speed, step_s = demand.speed, demand.step_s
    if demand.lift_off_mps2 is not None:
        driver = replace(driver, lift_off_mps2=demand.lift_off_mps2)
    moving = speed > 0
    gear = car.gear_efficiency
    pulling = np.maximum(demand.wheel_n, 0.0)
    braking = np.maximum(-demand.wheel_n, 0.0)
    spin = motor.spin_n(car, speed)
    # whatever the limits say, the wheels turn the unloaded machine: with and without regeneration alike
    unloaded = np.minimum(braking, spin * car.zero_torque_drag_share / gear)
    bound = None
    if regen:
        limits = motor_limits_n(
            car, driver, speed, braking, demand.tyre_slowing, demand.friction,
            demand.car_kg, demand.car_effective_kg, demand.road_load_n,
        )  # fmt: skip
        most = braking
        if record:
            bound = np.full(np.broadcast_shapes(braking.shape, np.shape(car.mass_kg)), -1)
        for name, limit in limits.items():
            if bound is not None:
                bound = np.where(limit < most, LIMITS.index(name), bound)
            most = np.minimum(most, limit)
    else:
        most = unloaded
        if record:
            bound = np.where(braking > most, LIMITS.index("no_regeneration"), -1)
    wheel_motor = np.maximum(most, unloaded)
    spinning, fixed = spin * speed, motor.fixed_w(car)
    turning = np.where(moving, spinning + fixed, 0.0)
    idle = np.where(moving, spinning * car.zero_torque_drag_share + fixed, 0.0)
    curve = motor.force_loss_w_per_n2(car)

    def motor_state(wheel_motor: Array) -> tuple[Array, Array, Array]:
        """Shaft force, loss and electric power of the machine for its slowing force at the wheels."""
        shaft = pulling / gear - wheel_motor * gear
        working = (pulling > NO_FORCE_N) | (wheel_motor > unloaded + NO_FORCE_N)
        loss = np.where(working, turning + curve * shaft * shaft, idle)
        return shaft, loss, shaft * speed + loss

    shaft, loss, electric = motor_state(wheel_motor)
    load = demand.accessories_w + demand.cabin_w

    # the sweeps: charge and temperature at block starts, everything else follows from them
    runs = np.broadcast_shapes(electric.shape, load.shape)[0]
    blocks = electric.shape[-1] // BLOCK
    by_block = (runs, blocks, BLOCK)
    steady_load = np.broadcast_to(load, (runs, blocks * BLOCK))
    block_step_s = step_s.reshape(1, blocks, BLOCK)
    block_s = block_step_s.sum(-1)
    ambient = demand.ambient_c.reshape(-1, blocks, BLOCK).mean(-1)
    capacity_j = car.usable_kwh * J_PER_KWH
    soc = np.broadcast_to(np.asarray(conditions.soc_start, dtype=float), (runs, blocks + 1))
    measured = None
    if battery_temp_c is not None:
        at = np.minimum(np.arange(blocks + 1) * BLOCK, len(battery_temp_c) - 1)
        measured = np.broadcast_to(battery_temp_c[at], (runs, blocks + 1))
    start_c = start_temperature_c(conditions, demand.ambient_c[:, :1])
    pack_c = measured if measured is not None else np.full((runs, blocks + 1), start_c)
    electric = np.broadcast_to(electric, steady_load.shape)
    free_electric, free_motor = electric, np.broadcast_to(wheel_motor, steady_load.shape)
    held = False
    # a heater's power is not known where the temperature was measured: it is then taken as none
    heater_most_w = np.asarray(car.pack_heater_kw) * 1000
    heated = measured is None and bool(np.any(heater_most_w > 0))
    next_heater_w = np.zeros((runs, blocks))
    # a hybrid's engine gives what the battery would have to give below the charge that it keeps
    floor = None if car.sustain_soc is None else np.minimum(car.sustain_soc, conditions.soc_start)
    next_share, unsettled = np.ones((runs, blocks)), 0.0

    def accepted_w(charge: Array) -> Array:
        """What the battery takes; acceptance is held over a block, so none may fill more than its part of the room."""
        fills = (1 - charge) * capacity_j / np.maximum(block_s, 1e-9)
        return np.minimum(battery.acceptance_w(car, charge, now_c), ROOM_PER_BLOCK * fills)

    # a first guess that saves a sweep: everything at the voltage and resistance of the start
    power_w = (electric + steady_load).reshape(by_block)
    loss_per_w2 = battery.resistance_ohm(car, soc[:, :1], pack_c[:, :1]) / battery.open_circuit_v(car, soc[:, :1]) ** 2
    heat = loss_per_w2 * np.einsum("rbs,rbs,bs->rb", power_w, power_w, block_step_s[0])
    used = np.einsum("rbs,bs->rb", power_w, block_step_s[0]) + heat
    soc = np.concatenate([soc[:, :1], conditions.soc_start - np.cumsum(used / capacity_j, axis=1)], axis=1)
    if measured is None:
        pack_c = battery.pack_temperature_c(car, heat, block_s, ambient, start_c)

    for _ in range(MOST_SWEEPS):
        heater_w, battery_share = next_heater_w, next_share
        load = steady_load + np.repeat(heater_w, BLOCK, axis=1) if heated else steady_load
        now_soc, now_c = np.clip(soc[:, :-1], 0.0, 1.0), pack_c[:, :-1]
        slope = np.zeros((runs, blocks))
        if regen:
            accepted = accepted_w(now_soc)
            room = (load.reshape(by_block) + accepted[..., None]).reshape(load.shape)
            over = free_electric < -room
            if over.any():
                held = True
                at_battery = motor.slowing_force_n(car, speed, room) / gear
                wheel_motor = np.where(over, np.minimum(free_motor, at_battery), free_motor)
                shaft, loss, electric = motor_state(wheel_motor)
                # how acceptance falls with charge, so that the next sweep can foresee it (Newton's step)
                step = 1e-4
                fall = (accepted_w(np.minimum(now_soc + step, 1.0)) - accepted) / step
                slope = fall * (over * step_s).reshape(by_block).sum(-1) / capacity_j
            elif held:
                held = False
                wheel_motor = free_motor
                shaft, loss, electric = motor_state(wheel_motor)
        volts = battery.open_circuit_v(car, now_soc)[..., None]
        ohms = battery.resistance_ohm(car, now_soc, now_c)[..., None]
        terminal = (electric + load).reshape(by_block)
        if floor is not None:
            pulled = np.maximum(terminal, 0.0)
            asked = np.minimum(pulled, battery.greatest_w(volts, ohms))
            engine = pulled - asked * battery_share[..., None]
            terminal = terminal - engine
        # for a power P at the terminals the cells give 2 P / (1 + sqrt(1 − 4 P R / V²)); worked out in place, and added
        # up by einsum, because arrays in between would take most of the time
        loss_per_w2 = ohms / volts**2
        cell_w = terminal * (-4 * loss_per_w2)
        cell_w += 1
        np.sqrt(np.maximum(cell_w, 0.0, out=cell_w), out=cell_w)
        cell_w += 1
        np.divide(2 * terminal, cell_w, out=cell_w)
        taken = -np.einsum("rbs,bs->rb", cell_w, block_step_s[0]) / capacity_j
        slope = np.clip(slope, -ROOM_PER_BLOCK, 0.0)
        if floor is None:
            new_soc = battery.recurrence(1 + slope, taken - slope * now_soc, conditions.soc_start)
        else:
            drawn = np.einsum("rbs,bs->rb", np.maximum(cell_w, 0.0), block_step_s[0]) / capacity_j
            at_terminals = np.einsum("rbs,bs->rb", asked, block_step_s[0]) / capacity_j
            partly = at_terminals * battery_share
            # what the battery alone would draw from its charge, the loss in its cells as it is with its present share
            alone = at_terminals * np.divide(drawn, partly, out=np.ones_like(drawn), where=partly > 0)
            gained = taken + drawn
            change = gained - alone - slope * now_soc
            new_soc = battery.recurrence(1 + slope, change, conditions.soc_start, floor)
            given = new_soc[:, :-1] + gained - new_soc[:, 1:]
            next_share = np.clip(given / np.maximum(alone, 1e-300), 0.0, 1.0)
            unsettled = np.abs((next_share - battery_share) * alone).sum(-1).max()
        if measured is None:
            heat = loss_per_w2[..., 0] * np.einsum("rbs,rbs,bs->rb", cell_w, cell_w, block_step_s[0])
            if heated:
                always_on = battery.pack_temperature_c(car, heat + heater_most_w * block_s, block_s, ambient, start_c)
                next_heater_w = heater_most_w * battery.heater_share(car, always_on)
                heat = heat + next_heater_w * block_s
            new_c = battery.pack_temperature_c(car, heat, block_s, ambient, start_c)
        else:
            new_c = measured
        moved = max(np.abs(new_soc - soc).max(), unsettled), np.abs(new_c - pack_c).max()
        soc, pack_c = new_soc, new_c
        if moved[0] < SOC_TOLERANCE and moved[1] < TEMPERATURE_TOLERANCE_K and soc.max() <= 1 + FULL_TOLERANCE:
            break
    else:
        raise RuntimeError(f"charge and temperature did not settle within {MOST_SWEEPS} sweeps")
    if held and bound is not None:
        bound = np.where(wheel_motor < free_motor, LIMITS.index("battery"), bound)
    engine_drag: Any = 0.0
    if held and np.any(np.asarray(car.engine_drag_kw) > 0):
        left = np.minimum(braking - wheel_motor, car.engine_drag_kw * 1000 / np.maximum(speed, 1e-3))
        engine_drag = np.where(wheel_motor < free_motor, left, 0.0)
    flat = (runs, blocks * BLOCK)
    cell_w, cell_loss_w = cell_w.reshape(flat), (loss_per_w2 * cell_w * cell_w).reshape(flat)
    engine_w = 0.0 if floor is None else engine.reshape(flat)
    return Run(
        demand=demand,
        braking_n=braking,
        wheel_motor_n=wheel_motor,
        shaft_n=shaft,
        motor_loss_w=loss,
        gear_loss_w=np.abs((pulling - wheel_motor - shaft) * speed),
        terminal_w=cell_w - cell_loss_w + engine_w,
        cell_w=cell_w,
        cell_loss_w=cell_loss_w,
        bound=bound,
        soc=soc,
        pack_c=pack_c,
        pack_heater_w=np.repeat(heater_w, BLOCK, axis=1) if heated else 0.0,
        engine_w=engine_w,
        engine_drag_n=engine_drag,
    )


def start_temperature_c(conditions: Conditions, ambient_c: Any) -> Any:
    """Pack temperature at the start [°C]: as stated; else where the car stood, and warmed up to 20 °C if it was."""
    if conditions.battery_temp_c is not None:
        return conditions.battery_temp_c
    soaked = ambient_c if conditions.parked_c is None else conditions.parked_c
    return np.where(conditions.preconditioned, np.maximum(PRECONDITIONED_C, soaked), soaked)


def ledger_of(run: Run, trace: Trace) -> Ledger:
    """The books of a single run (shape (1, steps))."""
    demand, step_s = run.demand, run.demand.step_s[0]
    speed = demand.speed[0]
    climb = float(np.squeeze(demand.mass_kg)) * GRAVITY_MPS2 * (trace.elevation_m[-1] - trace.elevation_m[0])
    kinetic = float(np.squeeze(demand.effective_mass_kg)) * (trace.speed_mps[-1] ** 2 - trace.speed_mps[0] ** 2) / 2
    return Ledger(
        cells_given=total(np.maximum(run.cell_w[0], 0), step_s),
        cells_taken=total(np.maximum(-run.cell_w[0], 0), step_s),
        air=total(demand.air_n[0] * speed, step_s),
        rolling=total(demand.rolling_n[0] * speed, step_s),
        friction_brakes=total(run.friction_n[0] * speed, step_s),
        climb=climb,
        kinetic=kinetic,
        motor_inverter=total(run.motor_loss_w[0], step_s),
        gear=total(run.gear_loss_w[0], step_s),
        cell=total(run.cell_loss_w[0], step_s),
        accessories=total(np.full_like(step_s, demand.accessories_w), step_s),
        cabin=total(demand.cabin_w[0], step_s),
        pack_heater=total(np.atleast_2d(run.pack_heater_w)[0], step_s),
        engine_drag=total(np.atleast_2d(run.engine_drag_n)[0] * speed, step_s),
        engine_given=total(np.atleast_2d(run.engine_w)[0], step_s),
    )
