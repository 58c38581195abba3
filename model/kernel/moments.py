"""Single moments, asked without a drive around them: the door from descriptions to the compiled pointwise physics."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from model.describe.car import Car
from model.describe.scenario import Conditions, Driver
from model.describe.trace import Array, Numbers
from model.kernel.march import battery_at
from model.kernel.step import moment_of
from model.physics.cabin import cabin_of
from model.physics.engine import kept_soc
from model.physics.foot_up import FootUp, foot_up_at, room_at_start_w
from model.physics.grip import driven_axle_load_n
from model.physics.jit import door
from model.physics.motor_and_gear import Motor, loss_w, motor_of
from model.physics.pack_heat import start_c
from model.physics.records import CarRecord, Records, car_record, moments_on_road
from model.physics.slowing_limits import friction_under
from model.physics.wheels import car_kg, effective_kg, moving_kg, outside_at

FEET_UP: np.dtype[np.void] = np.dtype(
    (np.record, [(name, np.float64) for name in FootUp._fields if name != "bound"] + [("bound", np.int64)])
)
"""As `model.physics.foot_up.FootUp`."""


def moments_at(speed: Numbers, grade: Numbers) -> Records:
    """Moments at steady speeds [m/s] on grades [1, rise over run], at the height of the start, on warm tyres."""
    grade = np.asarray(grade)
    moments = moments_on_road(np.broadcast(speed, grade).size)
    moments["speed_mps"], moments["sine"] = speed, grade / np.sqrt(1 + grade * grade)
    return moments


@door
def lift_in_each(car: CarRecord, moments: Records, found: Records) -> None:
    """Lift the foot in every moment; shapes (moments,)."""
    motor, room_w = motor_of(car), room_at_start_w(car)
    for index in range(len(moments)):
        up = foot_up_at(car, motor, moments[index], room_w)
        to = found[index]
        to.flat_n, to.here_n, to.drag_n, to.asked_n = up.flat_n, up.here_n, up.drag_n, up.asked_n
        to.motor_n, to.most_n, to.battery_n, to.fade = up.motor_n, up.most_n, up.battery_n, up.fade
        to.slowing_mps2, to.bound = up.slowing_mps2, up.bound


def feet_up(
    speed: Numbers, car: Car, conditions: Conditions, driver: Driver, grade: Numbers = 0.0,
    strength_mps2: Numbers | None = None,
) -> Records:  # fmt: skip
    """What the car does with the foot up, shape (moments,); fields as in FEET_UP.

    Parameters
    ----------
    speed : array
        Speeds, above 0 [m/s].
    car, conditions, driver
        As described; the road is as slippery as the conditions say.
    grade : array
        Rise over run [1]; downhill is negative.
    strength_mps2 : array, optional
        Lift-off strengths in place of the driver's one [m/s²].
    """
    moments = moments_at(speed, grade)
    if strength_mps2 is not None:
        moments["lift_off_mps2"] = strength_mps2
    found = np.zeros(len(moments), dtype=FEET_UP)
    lift_in_each(car_record(car, conditions, driver), moments, found)
    return found


@door
def lift_each(cars: Records, moments: Records, slowing_mps2: Array, of_grip: Array) -> None:
    """Lift the foot in every car, each in its moment; shapes (cars,).

    Fills in what the car slows by in all, the battery's limit included [m/s²], and what the whole lift-off strength
    asks of the driven axle's grip [1].
    """
    for index in range(len(cars)):
        car, at = cars[index], moments[index]
        up = foot_up_at(car, motor_of(car), at, room_at_start_w(car))
        motor_n = max(min(up.motor_n, up.battery_n), up.drag_n)
        slowing_mps2[index] = (up.here_n + motor_n) / effective_kg(car)
        asked_n = moving_kg(car) * car.lift_off_mps2
        load_n = driven_axle_load_n(car, car_kg(car), asked_n / car_kg(car), 1.0)
        of_grip[index] = asked_n / (friction_under(car, at) * load_n)


@door
def drive_each(car: CarRecord, moments: Records, terminal_w: Array) -> None:
    """Drive every moment with the battery as at the start; power at its terminals [W], shape (moments,)."""
    motor, cabin = motor_of(car), cabin_of(car, 0.0)
    battery = battery_at(car, car.soc_start, start_c(car, car.ambient_c), 1.0, kept_soc(car, car.soc_start), False)
    for index in range(len(moments)):
        at = moments[index]
        terminal_w[index] = moment_of(car, motor, cabin, at, outside_at(car, at), battery, True).terminal_w


def steady_w(speed: Numbers, car: Car, conditions: Conditions, driver: Driver) -> Array:
    """What keeping speeds [m/s] on a flat road takes at the battery's terminals [W], cabin heat left out."""
    moments = moments_at(speed, 0.0)
    terminal_w = np.zeros(len(moments))
    drive_each(car_record(car, replace(conditions, cabin=False), driver), moments, terminal_w)
    return terminal_w


def motor_in(car: Car) -> Motor:
    """The car's motor in SI units."""
    motor: Motor = motor_of(car_record(car, Conditions(), Driver()))
    return motor


@door
def lose_in_each(motor: Motor, speed: Array, force: Array, loss: Array) -> None:
    """Loss of motor and inverter [W] at speeds [m/s] and forces at the shaft [N]; all of shape (points,)."""
    for index in range(len(speed)):
        loss[index] = loss_w(motor, speed[index], force[index])


def motor_loss_w(car: Car, speed: Numbers, force: Numbers) -> Array:
    """Loss of motor and inverter together [W] at `speed` [m/s] and `force` at the shaft [N], of both their shapes."""
    speed, force = np.broadcast_arrays(np.asarray(speed, dtype=float), np.asarray(force, dtype=float))
    loss = np.zeros(speed.size)
    lose_in_each(motor_in(car), speed.ravel(), force.ravel(), loss)
    return loss.reshape(speed.shape)
