"""The kernel: from a speed trace to what wheels, motor and battery did, many runs at once.

Arrays have shape (runs, steps). What a step asks of the wheels is known beforehand; only state of charge and pack
temperature couple the steps, and slowly. So the whole trace is swept a few times until both stand still.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np

from model import battery, motor
from model.braking import LIMITS, motor_limits_n
from model.cabin import cabin_power_w
from model.car import Car
from model.ledger import Ledger, total
from model.road_load import air_density, air_n, flat_road_load_n, rolling_n
from model.scenario import SURFACES, Conditions, Driver
from model.trace import Array, Trace
from model.tyre_grip import extra_rolling, friction_coefficient
from model.units import GRAVITY_MPS2, J_PER_KWH, KMH_PER_MPS

BLOCK = 10
"""Steps over which charge, temperature, cell resistance and charge acceptance are held."""
SOC_TOLERANCE = 1e-6
TEMPERATURE_TOLERANCE_K = 5e-3
MOST_SWEEPS = 60


@dataclass(frozen=True, eq=False)
class Demand:
    """What each step asks, padded to whole blocks with steps of no length. Shapes (runs or 1, steps)."""

    steps: int
    step_s: Array
    speed: Array
    deceleration: Array
    wheel_n: Array
    air_n: Array
    rolling_n: Array
    road_load_n: Array | None
    friction: Array
    mass_kg: Any
    effective_mass_kg: Any
    accessories_w: Any
    cabin_w: Array
    ambient_c: Array


def _padded(values: Array, length: int) -> Array:
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
        ambient = np.full((1, length), conditions.ambient_c)
    else:
        mean = (trace.ambient_c[:-1] + trace.ambient_c[1:]) / 2
        ambient = np.concatenate([mean, np.full(length - steps, mean[-1])])[None, :]
    mass = car.mass_kg + conditions.payload_kg
    effective_mass = mass + car.rotating_mass_share * car.mass_kg
    density = air_density(ambient, conditions.altitude_m)
    extra = extra_rolling(surface)
    rolling = rolling_n(car, speed, conditions.payload_kg, ambient, extra, cosine)
    air = np.where(speed > 0, air_n(car, speed, conditions.wind_kmh / KMH_PER_MPS, density), 0.0)
    flat = None
    if car.brake_pedal == "friction":
        flat = flat_road_load_n(car, speed, conditions.payload_kg, ambient, density, extra)
    step_s = _padded(trace.step_s, length)
    if trace.cabin_w is None:
        cabin = cabin_power_w(car, conditions, np.cumsum(step_s) - step_s[0] / 2)
    else:
        cabin = _padded(trace.cabin_w, length)
    return Demand(
        steps=steps,
        step_s=step_s,
        speed=speed,
        deceleration=np.maximum(-acceleration, 0.0),
        wheel_n=effective_mass * acceleration + mass * GRAVITY_MPS2 * sine + rolling + air,
        air_n=air,
        rolling_n=rolling,
        road_load_n=flat,
        friction=np.atleast_2d(friction_coefficient(surface, conditions.grip_level)),
        mass_kg=mass,
        effective_mass_kg=effective_mass,
        accessories_w=car.accessory_w,
        cabin_w=cabin,
        ambient_c=ambient,
    )


@dataclass(frozen=True, eq=False)
class Run:
    """What wheels, motor and battery did in each step; shapes (runs, steps) unless said otherwise.

    `wheel_motor_n` is the slowing force the motor took at the wheels, `shaft_n` the motor's force (slowing negative),
    `bound` an index into LIMITS, −1 where nothing bound. `soc` and `pack_c` stand at block starts and at the end.
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

    @property
    def friction_n(self) -> Array:
        """Friction braking [N]: what the motor left of the demand."""
        return self.braking_n - self.wheel_motor_n

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
            car, driver, speed, braking, demand.deceleration, demand.friction,
            demand.mass_kg, demand.effective_mass_kg, demand.road_load_n,
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
    turning = motor.turning_loss_w(car, speed)
    idle = np.where(moving, spin * speed * car.zero_torque_drag_share + motor.fixed_w(car), 0.0)
    curve = motor.force_loss_w_per_n2(car)

    def motor_state(wheel_motor: Array) -> tuple[Array, Array, Array]:
        """Shaft force, loss and electric power of the machine for its slowing force at the wheels."""
        shaft = pulling / gear - wheel_motor * gear
        working = (pulling > 0) | (wheel_motor > unloaded)
        loss = np.where(working, turning + curve * shaft * shaft, idle)
        return shaft, loss, shaft * speed + loss

    shaft, loss, electric = motor_state(wheel_motor)
    load = demand.accessories_w + demand.cabin_w

    # the sweeps: charge and temperature at block starts, everything else follows from them
    runs = np.broadcast_shapes(electric.shape, load.shape)[0]
    blocks = electric.shape[-1] // BLOCK
    by_block = (runs, blocks, BLOCK)
    load = np.broadcast_to(load, (runs, blocks * BLOCK))
    block_step_s = step_s.reshape(1, blocks, BLOCK)
    block_s = block_step_s.sum(-1)
    ambient = demand.ambient_c.reshape(1, blocks, BLOCK).mean(-1)
    capacity_j = car.usable_kwh * J_PER_KWH
    soc = np.broadcast_to(np.asarray(conditions.soc_start, dtype=float), (runs, blocks + 1))
    measured = None
    if battery_temp_c is not None:
        at = np.minimum(np.arange(blocks + 1) * BLOCK, len(battery_temp_c) - 1)
        measured = np.broadcast_to(battery_temp_c[at], (runs, blocks + 1))
    start_c = start_temperature_c(conditions, demand.ambient_c[0, 0])
    pack_c = measured if measured is not None else np.full((runs, blocks + 1), start_c)
    electric = np.broadcast_to(electric, load.shape)
    free_electric, free_motor = electric, np.broadcast_to(wheel_motor, load.shape)
    held = False

    for _ in range(MOST_SWEEPS):
        now_soc, now_c = np.clip(soc[:, :-1], 0.0, 1.0), pack_c[:, :-1]
        slope = np.zeros((runs, blocks))
        if regen:
            accepted = battery.acceptance_w(car, now_soc, now_c)
            room = (load.reshape(by_block) + accepted[..., None]).reshape(load.shape)
            over = free_electric < -room
            if over.any():
                held = True
                at_battery = motor.slowing_force_n(car, speed, room) / gear
                wheel_motor = np.where(over, np.minimum(free_motor, at_battery), free_motor)
                shaft, loss, electric = motor_state(wheel_motor)
                # how acceptance falls with charge, so that the next sweep can foresee it (Newton's step)
                step = 1e-4
                fall = (battery.acceptance_w(car, np.minimum(now_soc + step, 1.0), now_c) - accepted) / step
                slope = fall * (over * step_s).reshape(by_block).sum(-1) / capacity_j
            elif held:
                held = False
                wheel_motor = free_motor
                shaft, loss, electric = motor_state(wheel_motor)
        volts = battery.open_circuit_v(car, now_soc)[..., None]
        ohms = battery.resistance_ohm(car, now_soc, now_c)[..., None]
        terminal = (electric + load).reshape(by_block)
        amps = 2 * terminal / (volts + np.sqrt(np.maximum(volts * volts - 4 * ohms * terminal, 0.0)))
        cell_w, cell_loss = volts * amps, ohms * amps * amps
        taken = -(cell_w * block_step_s).sum(-1) / capacity_j
        slope = np.clip(slope, -0.2, 0.0)
        new_soc = battery.recurrence(1 + slope, taken - slope * now_soc, conditions.soc_start)
        if measured is None:
            heat = (cell_loss * block_step_s).sum(-1)
            new_c = battery.pack_temperature_c(car, heat, block_s, ambient, start_c)
        else:
            new_c = measured
        moved = np.abs(new_soc - soc).max(), np.abs(new_c - pack_c).max()
        soc, pack_c = new_soc, new_c
        if moved[0] < SOC_TOLERANCE and moved[1] < TEMPERATURE_TOLERANCE_K:
            break
    else:
        raise RuntimeError(f"charge and temperature did not settle within {MOST_SWEEPS} sweeps")
    if held and bound is not None:
        bound = np.where(wheel_motor < free_motor, LIMITS.index("battery"), bound)
    flat = (runs, blocks * BLOCK)
    volts_amps, losses = cell_w.reshape(flat), cell_loss.reshape(flat)
    return Run(
        demand=demand,
        braking_n=braking,
        wheel_motor_n=wheel_motor,
        shaft_n=shaft,
        motor_loss_w=loss,
        gear_loss_w=np.abs((pulling - wheel_motor - shaft) * speed),
        terminal_w=volts_amps - losses,
        cell_w=volts_amps,
        cell_loss_w=losses,
        bound=bound,
        soc=soc,
        pack_c=pack_c,
    )


def start_temperature_c(conditions: Conditions, ambient_c: float) -> float:
    """Pack temperature at the start [°C]: as stated, else preconditioned to 20 °C at least, else that of the air."""
    if conditions.battery_temp_c is not None:
        return conditions.battery_temp_c
    return max(20.0, ambient_c) if conditions.preconditioned else ambient_c


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
    )
