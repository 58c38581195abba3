"""Hills: what the way up takes and the way down gives, how much charge to leave free, what holds the car there.

Everything is driven through the same kernel as whole drives, at a steady speed on an even slope.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from model.describe.car import Car
from model.describe.fields import InputError
from model.describe.scenario import Conditions, Driver
from model.describe.trace import Array, Trace
from model.describe.units import KMH_PER_MPS
from model.kernel.run import Run, drive
from model.kernel.savings import Result, evaluate
from model.limits.friction_brakes import disc_temperature_of, fade_caution
from model.physics import battery
from model.physics.charge_acceptance import with_cells_stated

LONGEST_STEP_S = 1.0
ENDLESS_KWH = 1e6
"""Size of a battery that no hill fills [kWh]."""
TOGETHER_S = 10.0
"""The strongest charging is looked for in means over so long [s]."""


def hill(rise_m: float, grade_pct: float, speed_kmh: float) -> Trace:
    """An even slope at a steady speed, warmed up: `rise_m` up (negative: down) [m], at `grade_pct` [%, positive]."""
    grade, speed = grade_pct / 100, speed_kmh / KMH_PER_MPS
    length = abs(rise_m) * np.sqrt(1 + grade**2) / grade
    steps = max(int(np.ceil(length / speed / LONGEST_STEP_S)), 1)
    along = np.linspace(0.0, 1.0, steps + 1)
    return Trace(
        time_s=along * length / speed,
        speed_mps=np.full(steps + 1, speed),
        elevation_m=max(-rise_m, 0.0) + along * rise_m,
        name="hill",
        warmed_up=True,
    )


@dataclass(frozen=True)
class Refund:
    """What a kilometre up takes from the battery and the same kilometre down gives back [Wh/km], at a steady speed."""

    up_wh_per_km: float
    down_wh_per_km: float

    @property
    def share(self) -> float:
        """Given back over taken [1]; negative where even the way down takes energy."""
        return self.down_wh_per_km / self.up_wh_per_km


def refund(car: Car, conditions: Conditions, driver: Driver, grade_pct: float, speed_kmh: float) -> Refund:
    """The downhill share of the uphill energy on a short slope of `grade_pct` [%] at `speed_kmh` [km/h].

    Heating and cooling are left out: what they take on so short a slope says nothing about the hill.

    Raises
    ------
    InputError
        Where the car cannot climb the slope.
    """
    rise_m, conditions = 20.0, replace(conditions, cabin=False)
    up, down = (
        evaluate(hill(sign * rise_m, grade_pct, speed_kmh), car, conditions, driver) for sign in (1, -1)
    )
    return Refund(up.net_kwh * 1000 / up.distance_km, -down.net_kwh * 1000 / down.distance_km)


def on_endless_battery(trace: Trace, car: Car, conditions: Conditions, driver: Driver) -> tuple[Run, Array]:
    """A drive with a battery that no hill fills and that takes all, and its charge above the start [kWh] by steps."""
    stated = with_cells_stated(car)
    assert stated.cell_resistance_share is not None
    endless = replace(
        stated,
        usable_kwh=ENDLESS_KWH,
        # the same resistance in ohms
        cell_resistance_share=stated.cell_resistance_share * ENDLESS_KWH / car.usable_kwh,
        charge_rate_factor=1.0,
        pack_heater_kw=0.0,
        sustain_soc=None,
    )
    warm = replace(conditions, soc_start=0.5, battery_temp_c=battery.start_temperature_c(car, conditions))
    # what is charged on the way is none of the drive's own doing
    run = drive(replace(trace, charge_to=None), endless, warm, driver)
    return run, (run.soc[0] - run.soc[0, 0]) * ENDLESS_KWH


@dataclass(frozen=True)
class Headroom:
    """How much charge to leave free so that a drive's way down fits in, and what the battery takes on top of that.

    `gained_kwh` is the most the charge rises above the start [kWh], `gained_share` of the usable battery [1]: the
    energy limit. `power_kw` is the strongest charging over some ten seconds [kW]; `full_power_below` is the charge [1]
    up to which the battery takes it at its temperature at the start, the power limit: None where it never does.
    """

    gained_kwh: float
    gained_share: float
    power_kw: float
    full_power_below: float | None

    @property
    def start_at_most(self) -> float:
        """Charge at the start [1] from which all fits in: the energy limit alone."""
        return max(1 - self.gained_share, 0.0)

    @property
    def start_for_full_feel(self) -> float | None:
        """Charge at the start [1] from which motor slowing also keeps its strength all the way; None: from none."""
        if self.full_power_below is None:
            return None
        return float(np.clip(min(1.0, self.full_power_below) - self.gained_share, 0.0, 1.0))


def charge_that_takes(car: Car, pack_c: float, power_w: float) -> float | None:
    """The highest charge [1] at which the battery takes `power_w` [W] at `pack_c` [°C]; None where none does."""
    charges = np.linspace(0.0, 1.0, 1001)[None, :]
    takes = battery.acceptance_w(car, charges, pack_c)[0] >= power_w
    return float(charges[0, takes].max()) if takes.any() else None


def headroom(trace: Trace, car: Car, conditions: Conditions, driver: Driver) -> Headroom:
    """How much charge to leave free for a drive: a described one, or a `hill`."""
    run, above = on_endless_battery(trace, car, conditions, driver)
    gained = max(float(above.max()), 0.0)
    passed_s = np.cumsum(run.step_s[0]) - run.step_s[0]
    tens = np.flatnonzero(np.diff(passed_s // TOGETHER_S, prepend=-1.0))
    charged_j, lengths_s = (np.add.reduceat(each, tens) for each in (-run.terminal_w[0] * run.step_s[0], run.step_s[0]))
    power = max(float((charged_j / lengths_s).max()), 0.0)
    start_c = battery.start_temperature_c(car, conditions)
    return Headroom(
        gained_kwh=gained,
        gained_share=gained / car.usable_kwh,
        power_kw=power / 1000,
        full_power_below=charge_that_takes(car, start_c, power),
    )


def descent_to_fill_m(
    car: Car, conditions: Conditions, driver: Driver, grade_pct: float, speed_kmh: float
) -> float | None:
    """Height [m] of a descent after which the battery is full if it takes all; None where the slope gives nothing."""
    drop = 100.0
    _, above = on_endless_battery(hill(-drop, grade_pct, speed_kmh), car, conditions, driver)
    free = (1 - conditions.soc_start) * car.usable_kwh
    return float(free / above[-1] * drop) if above[-1] > 0 else None


@dataclass(frozen=True, eq=False)
class Descent:
    """A long way down: what motor, battery and brakes do, and how warm the front discs get.

    Powers at the wheels [kW], the most on the way: what holding the speed asks of motor and brakes together, what the
    motor takes and what friction. Temperatures of the front discs along the trace [°C], with regeneration and
    without.
    """

    result: Result
    need_kw: float
    motor_kw: float
    friction_kw: float
    limit: str
    disc_c: Array
    friction_only_disc_c: Array

    @property
    def friction_only_fade_caution(self) -> str:
        """Where the discs' hottest moment on friction brakes only lies against the fade band: below, within, above."""
        return fade_caution(float(self.friction_only_disc_c.max()))


def descent(
    car: Car, conditions: Conditions, driver: Driver, *, drop_m: float, grade_pct: float, speed_kmh: float
) -> Descent:
    """Drive down `drop_m` [m] of an even slope at a steady speed."""
    result = evaluate(hill(-drop_m, grade_pct, speed_kmh), car, conditions, driver)
    run = result.run

    def kw(force_n: Array) -> Array:
        return force_n[0] * run.speed[0] / 1000

    friction = result.limits_kwh
    return Descent(
        result=result,
        need_kw=float(kw(run.braking_n).max()),
        motor_kw=float(kw(run.motor_n).max()),
        friction_kw=float(kw(run.friction_n).max()),
        limit=max(friction, key=friction.__getitem__) if result.wheel_friction_kwh > 1e-9 else "",
        disc_c=disc_temperature_of(run, car),
        friction_only_disc_c=disc_temperature_of(result.friction_only, car),
    )


def shares_of_slopes(
    car: Car, conditions: Conditions, driver: Driver, grades_pct: Sequence[float], speeds_kmh: Sequence[float]
) -> Array:
    """The downhill share of the uphill energy [1] for each grade (rows) and speed (columns); NaN: cannot be climbed."""
    shares = np.full((len(grades_pct), len(speeds_kmh)), np.nan)
    for row, grade in enumerate(grades_pct):
        for column, speed in enumerate(speeds_kmh):
            try:
                shares[row, column] = refund(car, conditions, driver, grade, speed).share
            except InputError:
                continue
    return shares
