"""Driving a trace, with one car or with many: the door from descriptions to the compiled march."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from model.describe.car import Car
from model.describe.scenario import Conditions, Driver
from model.describe.trace import Array, Trace
from model.describe.units import GRAVITY_MPS2
from model.kernel.ledger import Ledger, total
from model.kernel.march import MOMENTS, RESULTS, drive_all
from model.kernel.road import road_of
from model.physics.records import Records, car_records
from model.physics.slowing_limits import LIMITS
from model.physics.wheels import effective_kg, moving_kg


@dataclass(frozen=True, eq=False)
class Run:
    """What a drive came to for each car, and what happened in each step where that was recorded.

    `cars` and `energies` have shape (cars,), `road` (steps,), `moments` (cars, steps), or (cars, 0) where nothing was
    recorded. See `model.kernel.march` for what they hold.
    """

    cars: Records
    road: Records
    energies: Records
    moments: Records

    @property
    def steps(self) -> int:
        """Number of steps."""
        return len(self.road)

    @property
    def speed(self) -> Array:
        """Speed in each step [m/s], shape (1, steps)."""
        return self.road["speed_mps"][None, :]

    @property
    def step_s(self) -> Array:
        """Length of each step [s], shape (1, steps)."""
        return self.road["step_s"][None, :]

    def __getattr__(self, name: str) -> Array:
        """A recorded quantity by its name in MOMENTS, shape (cars, steps)."""
        if name not in (MOMENTS.names or ()) or not self.moments.size:
            raise AttributeError(f"{name} is no quantity of a run, or was not recorded")
        return self.moments[name]

    @property
    def braking_n(self) -> Array:
        """Slowing force asked at the wheels [N]."""
        return np.maximum(-self.wheel_n, 0.0)

    @property
    def friction_n(self) -> Array:
        """Friction braking [N]: what motor and engine left of the demand."""
        return self.braking_n - self.motor_n - self.engine_drag_n

    @property
    def gear_loss_w(self) -> Array:
        """Loss in the gear [W]."""
        return np.abs((np.maximum(self.wheel_n, 0.0) - self.motor_n - self.shaft_n) * self.speed)

    @property
    def soc(self) -> Array:
        """State of charge before each step and at the end [1], shape (cars, steps + 1)."""
        return np.hstack([self.soc_before, self.energies["soc_end"][:, None]])

    @property
    def pack_c(self) -> Array:
        """Battery temperature before each step and at the end [°C], shape (cars, steps + 1)."""
        return np.hstack([self.pack_before_c, self.energies["pack_c_end"][:, None]])

    @property
    def ambient_c(self) -> Array:
        """Outside temperature in each step [°C], shape (cars, steps)."""
        own = self.road["ambient_c"][None, :]
        return np.where(np.isnan(own), self.cars["ambient_c"][:, None], own)

    @property
    def mass_kg(self) -> Array:
        """Mass of all that moves [kg], shape (cars,)."""
        return np.array([moving_kg(car) for car in self.cars])

    @property
    def effective_mass_kg(self) -> Array:
        """Mass of all that moves with what has to be spun up [kg], shape (cars,)."""
        return np.array([effective_kg(car) for car in self.cars])

    @property
    def out_j(self) -> Array:
        """Energy out of the battery at its terminals [J], warming up before the drive included, shape (cars,)."""
        return self.energies["out_j"]

    @property
    def in_j(self) -> Array:
        """Energy put back at the terminals [J], shape (cars,)."""
        return self.energies["in_j"]

    @property
    def net_j(self) -> Array:
        """Out less in at the terminals [J], shape (cars,)."""
        return self.out_j - self.in_j

    @property
    def friction_only_net_j(self) -> Array:
        """The same at the same speeds on friction brakes only [J], shape (cars,).

        What an idle motor would have left was booked on the way; only a battery's heater has more to warm without what
        regeneration warms, and is driven again.
        """
        if not (self.cars["pack_heater_kw"] > 0).any():
            return self.energies["idle_net_j"]
        energies = np.zeros_like(self.energies)
        drive_all(self.cars, self.road, False, energies, np.zeros((len(self.cars), 0), dtype=MOMENTS))
        net: Array = energies["out_j"] - energies["in_j"]
        return net

    @property
    def before_j(self) -> Array:
        """What warming up before the drive took from the battery [J], shape (cars,)."""
        return self.energies["warm_cabin_j"] + self.energies["warm_pack_j"]

    def wheel_j(self, force_n: Array) -> Array:
        """Work of a force at the wheels [J], shape (cars,)."""
        work: Array = np.sum(force_n * self.speed * self.step_s, axis=-1)
        return work

    @property
    def left_by_limit_j(self) -> dict[str, Array]:
        """Work that each limit which bound left to the friction brakes [J], shape (cars,)."""
        return {
            name: self.wheel_j(np.where(self.bound == index, self.friction_n, 0.0))
            for index, name in enumerate(LIMITS)
            if (self.bound == index).any()
        }


def drive_records(trace: Trace, cars: Records, *, regen: bool = True, record: bool = False) -> Run:
    """Drive a trace with every car of a table of records (see `model.physics.records`).

    Parameters
    ----------
    trace, cars
        What is driven, and in what.
    regen : bool
        False is the comparison: friction brakes only, the motor spins unloaded, its drag fed by the wheels.
    record : bool
        Whether to keep every step.
    """
    return drive_road(road_of(trace), cars, regen=regen, record=record)


def drive_road(road: Records, cars: Records, *, regen: bool = True, record: bool = False) -> Run:
    """As `drive_records`, over a road that is laid out already (`model.kernel.road`)."""
    run = undriven(road, cars, record=record)
    drive_all(cars, road, regen, run.energies, run.moments)
    return run


def undriven(road: Records, cars: Records, *, record: bool) -> Run:
    """Room for a run, to be filled by `drive_all`."""
    moments = np.zeros((len(cars), len(road) if record else 0), dtype=MOMENTS)
    return Run(cars, road, np.zeros(len(cars), dtype=RESULTS), moments)


def drive(
    trace: Trace,
    car: Car,
    conditions: Conditions,
    driver: Driver,
    *,
    regen: bool = True,
    drawn: Mapping[str, Array] | None = None,
    record: bool = True,
) -> Run:
    """Drive a trace with one car, or with as many as there are drawn figures; as in `drive_records`."""
    return drive_records(trace, car_records(car, conditions, driver, drawn), regen=regen, record=record)


def lost_slowing_j(run: Run) -> float:
    """What motor, inverter and gear of a recorded run of one car lose while the motor slows it [J]."""
    return total(run.motor_loss_w[0] + run.gear_loss_w[0], (run.motor_n[0] > 0) * run.step_s[0])


def ledger_of(run: Run, trace: Trace) -> Ledger:
    """The books of a recorded run of one car; warming up from the battery stands with cabin and battery heater.

    What the cells lose while they warm car and cabin before the drive is left out: it is small beside the heat.
    """
    car, energies, step_s, speed = run.cars[0], run.energies[0], run.step_s[0], run.speed[0]
    climb = run.mass_kg[0] * GRAVITY_MPS2 * (trace.elevation_m[-1] - trace.elevation_m[0])
    kinetic = run.effective_mass_kg[0] * (trace.speed_mps[-1] ** 2 - trace.speed_mps[0] ** 2) / 2
    return Ledger(
        cells_given=total(np.maximum(run.cell_w[0], 0), step_s) + float(run.before_j[0]),
        cells_taken=total(np.maximum(-run.cell_w[0], 0), step_s),
        air=total(run.air_n[0] * speed, step_s),
        rolling=total(run.rolling_n[0] * speed, step_s),
        friction_brakes=total(run.friction_n[0] * speed, step_s),
        climb=float(climb),
        kinetic=float(kinetic),
        motor_inverter=total(run.motor_loss_w[0], step_s),
        gear=total(run.gear_loss_w[0], step_s),
        cell=total(run.cell_loss_w[0], step_s),
        accessories=total(np.full_like(step_s, car.accessory_w), step_s),
        cabin=total(run.cabin_w[0], step_s) + float(energies.warm_cabin_j),
        pack_heater=total(run.pack_heater_w[0], step_s) + float(energies.warm_pack_j),
        engine_drag=total(run.engine_drag_n[0] * speed, step_s),
        engine_given=total(run.engine_w[0], step_s),
    )
