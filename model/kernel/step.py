"""One moment of a drive: what the wheels ask, what the limits allow, what motor, battery and brakes do about it."""

from __future__ import annotations

import math
from typing import NamedTuple

from model.physics.cabin import Cabin, cabin_w
from model.physics.cells import cells_for, greatest_w, terminal_w_for
from model.physics.charge_acceptance import acceptance_w
from model.physics.engine import engine_drag_n, has_engine
from model.physics.jit import compiled
from model.physics.motor_and_gear import Motor, idle_drag_n, machine_at, slowing_force_n, worth_working
from model.physics.records import CarRecord, MomentOnRoad
from model.physics.slowing_limits import (
    BATTERY,
    NO_REGENERATION,
    NOTHING_BOUND,
    NOTHING_TO_GAIN,
    Allowed,
    friction_under,
    lift_off_motor_n,
    lift_off_strength_mps2,
    motor_may,
)
from model.physics.wheels import Outside, WheelDemand, demand_at_wheels, tyre_slowing_mps2


class Battery(NamedTuple):
    """The battery as a moment finds it.

    Charge [1] and temperature [°C]; open-circuit voltage [V], resistance [ohm], power of its heater [W]; the most that
    its cells may take without getting too full, and give without falling below the charge that an engine keeps [W].
    """

    soc: float
    pack_c: float
    volts: float
    ohms: float
    heater_w: float
    room_w: float
    spare_w: float


class Moment(NamedTuple):
    """What wheels, motor and battery did in one moment.

    Forces at the wheels [N]: what they were asked for (slowing negative), air, rolling, the slowing that the motor and
    that the engine took; the force at the shaft (slowing negative). Powers [W]: loss of motor and inverter; what drive,
    accessories and heaters take at the terminals (giving: negative), with the engine's part of it; what the cells give
    and lose; cabin; what would have been taken at the terminals had the motor spun idle while slowing. `bound` is an
    index into LIMITS, −1 where nothing bound.
    """

    wheel_n: float
    air_n: float
    rolling_n: float
    motor_n: float
    engine_drag_n: float
    shaft_n: float
    motor_loss_w: float
    terminal_w: float
    engine_w: float
    cell_w: float
    cell_loss_w: float
    cabin_w: float
    idle_terminal_w: float
    bound: int


@compiled
def allowed_slowing(
    car: CarRecord, motor: Motor, at: MomentOnRoad, demand: WheelDemand, unloaded_n: float, regen: bool
) -> Allowed:
    """What every limit but the battery's lets the motor take at the wheels [N], and which limit bound.

    Whatever the limits say, the wheels turn the unloaded machine, which takes `unloaded_n` [N]: with and without
    regeneration alike.
    """
    braking = max(-demand.wheel_n, 0.0)
    if braking <= 0:
        return Allowed(0.0, NOTHING_BOUND)
    if not regen:
        return Allowed(unloaded_n, NO_REGENERATION if braking > unloaded_n else NOTHING_BOUND)
    lift_off = lift_off_motor_n(car, lift_off_strength_mps2(car, at), demand.flat_road_load_n)
    may = motor_may(car, motor, at.speed_mps, braking, tyre_slowing_mps2(at), friction_under(car, at), lift_off)
    slowing = max(may.slowing_n, unloaded_n)
    if worth_working(motor, at.speed_mps, slowing, unloaded_n):
        return Allowed(slowing, may.bound)
    # who slows the car is no matter to the driver: it slows as asked, on its friction brakes
    return Allowed(unloaded_n, NOTHING_TO_GAIN if may.bound == NOTHING_BOUND else may.bound)


@compiled
def moment_of(
    car: CarRecord, motor: Motor, cabin: Cabin, at: MomentOnRoad, outside: Outside, battery: Battery, regen: bool
) -> Moment:
    """Drive through one moment `at` its place on the road, with the battery as the moment finds it.

    Without `regen` it is the comparison: friction brakes only, the motor spins unloaded, its drag fed by the wheels.
    Pulling is not limited here: `model.kernel.follow` makes the trace one that the car can drive.
    """
    speed = at.speed_mps
    demand = demand_at_wheels(car, at, outside)
    pulling, braking = max(demand.wheel_n, 0.0), max(-demand.wheel_n, 0.0)
    unloaded = min(braking, idle_drag_n(motor, speed))
    slowing, bound = allowed_slowing(car, motor, at, demand, unloaded, regen)
    machine = machine_at(motor, speed, pulling, slowing, unloaded)
    cabin_now_w = cabin_w(cabin, at.passed_s) if math.isnan(at.cabin_w) else at.cabin_w
    load_w = car.accessory_w + cabin_now_w + battery.heater_w
    by_engine = engine_w = 0.0
    if regen and machine.shaft_n * speed + machine.loss_w < -load_w:
        taken_w = load_w + min(acceptance_w(car, battery.soc, battery.pack_c), battery.room_w)
        at_battery = slowing_force_n(motor, speed, taken_w) / motor.gear
        if at_battery < slowing and machine.shaft_n * speed + machine.loss_w < -taken_w:
            slowing, bound = at_battery, BATTERY
            machine = machine_at(motor, speed, pulling, slowing, unloaded)
            by_engine = engine_drag_n(car, speed, braking - slowing)
    terminal_w = machine.shaft_n * speed + machine.loss_w + load_w
    idle = machine_at(motor, speed, pulling, unloaded, unloaded)
    if has_engine(car) and terminal_w > 0:
        spare_w = terminal_w_for(battery.spare_w, battery.volts, battery.ohms)
        engine_w = terminal_w - min(terminal_w, greatest_w(battery.volts, battery.ohms), spare_w)
    cells = cells_for(terminal_w - engine_w, battery.volts, battery.ohms)
    return Moment(
        demand.wheel_n,
        demand.air_n,
        demand.rolling_n,
        slowing,
        by_engine,
        machine.shaft_n,
        machine.loss_w,
        cells.given_w - cells.loss_w + engine_w,
        engine_w,
        cells.given_w,
        cells.loss_w,
        cabin_now_w,
        idle.shaft_n * speed + idle.loss_w + load_w,
        bound,
    )
