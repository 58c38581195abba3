"""The kernel: from a speed trace to what wheels, motor and battery did, many runs at once.

Arrays have shape (runs, steps). What a step asks of the wheels is known beforehand; only state of charge and pack
temperature couple the steps, and slowly. So the whole trace is swept a few times until both stand still.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Any

import numpy as np

from model import motor
from model.braking import LIMITS, motor_limits_n
from model.car import Car
from model.ledger import Ledger, total
from model.pack import Pack, settled
from model.scenario import Conditions, Driver
from model.trace import Array, Trace
from model.units import GRAVITY_MPS2
from model.wheel_demand import BLOCK, Demand

MOST_SWEEPS = 60
NO_FORCE_N = 1e-6
"""Less than this is rounding: a car that rolls asks nothing of its motor."""


@dataclass(frozen=True, eq=False)
class Run:
    """What wheels, motor and battery did in each step; shapes (runs, steps) unless said otherwise.

    `wheel_motor_n` is the slowing force the motor took at the wheels, `shaft_n` the motor's force (slowing negative),
    `bound` an index into LIMITS, −1 where nothing bound. `soc` and `pack_c` stand at block starts and at the end.
    `terminal_w` is what drive, accessories and heaters take (giving: negative); `engine_w` is the part of it that a
    hybrid's engine gives in place of the battery, `engine_drag_n` what the turning engine takes of the slowing.
    """

    demand: Demand
    car: Car
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
        """Energy out of the battery at its terminals [J], warming up before the drive included, shape (runs,)."""
        return np.sum(np.maximum(self.terminal_w, 0) * self.demand.step_s, axis=-1) + self.before_j

    @property
    def before_j(self) -> Array:
        """What warming up before the drive took from the battery [J], shape (runs or 1,)."""
        return np.reshape(self.demand.warm_cabin_j + self.demand.warm_pack_j, -1)

    @property
    def terminal_in_j(self) -> Array:
        """Energy put back at the terminals [J], shape (runs,)."""
        return np.sum(np.maximum(-self.terminal_w, 0) * self.demand.step_s, axis=-1)

    @property
    def net_j(self) -> Array:
        """Out less in at the terminals [J], shape (runs,)."""
        return self.terminal_out_j - self.terminal_in_j

    def wheel_j(self, force_n: Array) -> Array:
        """Work of a force at the wheels [J], shape (runs,)."""
        work: Array = np.sum(force_n * self.demand.speed * self.demand.step_s, axis=-1)
        return work

    @property
    def left_by_limit_j(self) -> dict[str, Array]:
        """Work that each limit which bound left to the friction brakes [J], shape (runs,)."""
        assert self.bound is not None
        return {
            name: self.wheel_j(np.where(self.bound == index, self.friction_n, 0.0))
            for index, name in enumerate(LIMITS)
            if (self.bound == index).any()
        }


@dataclass(frozen=True, eq=False)
class Motion:
    """Slowing force at the wheels [N], force at the shaft [N], loss [W] and electric power taken [W] in each step."""

    slowing_n: Array
    shaft_n: Array
    loss_w: Array
    electric_w: Array


@dataclass(frozen=True, eq=False)
class Machine:
    """Motor, inverter and gear over one trace: what the wheels ask of them and what they lose; shapes (runs, steps)."""

    speed: Array
    pulling_n: Array
    braking_n: Array
    unloaded_n: Array
    turning_w: Array
    idle_w: Array
    loss_w_per_n2: Any
    gear: Any

    @classmethod
    def of(cls, demand: Demand, car: Car) -> Machine:
        """The machine of one car, or of many."""
        speed = demand.speed
        braking = np.maximum(-demand.wheel_n, 0.0)
        spin, fixed = motor.spin_n(car, speed), motor.fixed_w(car)
        return cls(
            speed=speed,
            pulling_n=np.maximum(demand.wheel_n, 0.0),
            braking_n=braking,
            # whatever the limits say, the wheels turn the unloaded machine: with and without regeneration alike
            unloaded_n=np.minimum(braking, spin * car.zero_torque_drag_share / car.gear_efficiency),
            turning_w=np.where(speed > 0, spin * speed + fixed, 0.0),
            idle_w=np.where(speed > 0, spin * speed * car.zero_torque_drag_share + fixed, 0.0),
            loss_w_per_n2=motor.force_loss_w_per_n2(car),
            gear=car.gear_efficiency,
        )

    def motion(self, slowing_n: Array) -> Motion:
        """What motor and gear do for a slowing force at the wheels [N]."""
        shaft = self.pulling_n / self.gear - slowing_n * self.gear
        working = (self.pulling_n > NO_FORCE_N) | (slowing_n > self.unloaded_n + NO_FORCE_N)
        loss = np.where(working, self.turning_w + self.loss_w_per_n2 * shaft * shaft, self.idle_w)
        return Motion(slowing_n, shaft, loss, shaft * self.speed + loss)


def allowed_slowing(
    demand: Demand, car: Car, driver: Driver, machine: Machine, *, regen: bool, record: bool
) -> tuple[Array, Array | None]:
    """What every limit but the battery's lets the motor take at the wheels [N], and which limit bound (see `Run`)."""
    braking = machine.braking_n
    if not regen:
        bound = np.where(braking > machine.unloaded_n, LIMITS.index("no_regeneration"), -1) if record else None
        return machine.unloaded_n, bound
    if demand.lift_off_mps2 is not None:
        driver = replace(driver, lift_off_mps2=demand.lift_off_mps2)
    limits = motor_limits_n(
        car, driver, demand.speed, braking, demand.tyre_slowing, demand.friction,
        demand.car_kg, demand.car_effective_kg, demand.road_load_n,
    )  # fmt: skip
    most = braking
    bound = np.full(np.broadcast_shapes(braking.shape, np.shape(car.mass_kg)), -1) if record else None
    for name, limit in limits.items():
        if bound is not None:
            bound = np.where(limit < most, LIMITS.index(name), bound)
        most = np.minimum(most, limit)
    return np.maximum(most, machine.unloaded_n), bound


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

    Raises
    ------
    RuntimeError
        Where charge and temperature do not settle.

    Notes
    -----
    Pulling is not limited here: `model.following` makes the trace one that the car can drive.
    """
    machine = Machine.of(demand, car)
    allowed, bound = allowed_slowing(demand, car, driver, machine, regen=regen, record=record)
    load = demand.accessories_w + demand.cabin_w
    # a figure that moves nothing before the sweeps, such as the battery's size, makes runs of their own too
    figures = [*vars(car).values(), conditions.soc_start, conditions.battery_temp_c, conditions.parked_c]
    shape = np.broadcast_shapes(allowed.shape, load.shape, *map(np.shape, figures))
    allowed, load = np.broadcast_to(allowed, shape), np.broadcast_to(load, shape)
    pack = Pack.of(demand, car, conditions, shape[0], battery_temp_c)

    free = motion = machine.motion(allowed)
    held = False
    state = pack.first_guess(free.electric_w + load)
    for _ in range(MOST_SWEEPS):
        load_w = load + np.repeat(state.heater_w, BLOCK, axis=1) if pack.heated else load
        slope = np.zeros_like(state.now_soc)
        if regen:
            accepted = pack.accepted_w(state)
            room = load_w + np.repeat(accepted, BLOCK, axis=1)
            over = free.electric_w < -room
            held, motion = bool(over.any()), free
            if held:
                at_battery = motor.slowing_force_n(car, demand.speed, room) / machine.gear
                motion = machine.motion(np.where(over, np.minimum(allowed, at_battery), allowed))
                slope = pack.acceptance_slope(state, accepted, over)
        draw = pack.draw(state, motion.electric_w + load_w)
        before, state = state, pack.after(state, draw, slope)
        if settled(before, state):
            break
    else:
        raise RuntimeError(f"charge and temperature did not settle within {MOST_SWEEPS} sweeps")

    slowing = motion.slowing_n
    engine_drag: Any = 0.0
    if held:
        short = slowing < allowed
        if bound is not None:
            bound = np.where(short, LIMITS.index("battery"), bound)
        if np.any(np.asarray(car.engine_drag_kw) > 0):
            left = np.minimum(machine.braking_n - slowing, car.engine_drag_kw * 1000 / np.maximum(demand.speed, 1e-3))
            engine_drag = np.where(short, left, 0.0)
    cell_w = draw.cell_w.reshape(shape)
    cell_loss_w = (draw.loss_per_w2 * draw.cell_w * draw.cell_w).reshape(shape)
    engine_w = 0.0 if draw.engine_w is None else draw.engine_w.reshape(shape)
    return Run(
        demand=demand,
        car=car,
        braking_n=machine.braking_n,
        wheel_motor_n=slowing,
        shaft_n=motion.shaft_n,
        motor_loss_w=motion.loss_w,
        gear_loss_w=np.abs((machine.pulling_n - slowing - motion.shaft_n) * demand.speed),
        terminal_w=cell_w - cell_loss_w + engine_w,
        cell_w=cell_w,
        cell_loss_w=cell_loss_w,
        bound=bound,
        soc=state.soc,
        pack_c=state.pack_c,
        pack_heater_w=np.repeat(before.heater_w, BLOCK, axis=1) if pack.heated else 0.0,
        engine_w=engine_w,
        engine_drag_n=engine_drag,
    )


def ledger_of(run: Run, trace: Trace) -> Ledger:
    """The books of a single run (shape (1, steps)); warming up from the battery stands with cabin and battery heater.

    What the cells lose while they warm car and cabin before the drive is left out: it is small beside the heat.
    """
    demand, step_s = run.demand, run.demand.step_s[0]
    speed = demand.speed[0]
    climb = float(np.squeeze(demand.mass_kg)) * GRAVITY_MPS2 * (trace.elevation_m[-1] - trace.elevation_m[0])
    kinetic = float(np.squeeze(demand.effective_mass_kg)) * (trace.speed_mps[-1] ** 2 - trace.speed_mps[0] ** 2) / 2
    return Ledger(
        cells_given=total(np.maximum(run.cell_w[0], 0), step_s) + float(run.before_j[0]),
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
        cabin=total(demand.cabin_w[0], step_s) + float(np.squeeze(demand.warm_cabin_j)),
        pack_heater=total(np.atleast_2d(run.pack_heater_w)[0], step_s) + float(np.squeeze(demand.warm_pack_j)),
        engine_drag=total(np.atleast_2d(run.engine_drag_n)[0] * speed, step_s),
        engine_given=total(np.atleast_2d(run.engine_w)[0], step_s),
    )
