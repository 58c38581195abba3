"""Winter: what a cold day takes from the user's own drive, why lift-off fades, what warming up beforehand brings."""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import StrEnum

from model.describe.car import Car
from model.describe.scenario import Conditions, Driver
from model.describe.trace import Trace
from model.describe.units import J_PER_KWH, KMH_PER_MPS
from model.kernel.moments import feet_up
from model.kernel.savings import Result, evaluate
from model.limits.full_start import PART_CHARGED, Normal, until_normal
from model.physics.cabin import cabin_warm_up_j
from model.physics.pack_heat import warm_up_j
from model.physics.records import car_record
from model.physics.slowing_limits import LIMITS
from model.physics.wheels import effective_kg

MILD_C = 20.0
"""The ordinary day that a season is compared with [°C]."""


class SeasonPart(StrEnum):
    """What a season changes."""

    AIR = "air"
    TYRES = "tyres"
    CABIN = "cabin"
    HEATER = "heater"
    BRAKING = "braking"
    REST = "rest"


PART_ENTRIES = {
    SeasonPart.AIR: ("air",),
    SeasonPart.TYRES: ("rolling",),
    SeasonPart.CABIN: ("cabin",),
    SeasonPart.HEATER: ("pack_heater",),
    SeasonPart.BRAKING: ("friction_brakes", "engine_drag"),
    SeasonPart.REST: ("motor_inverter", "gear", "accessories", "climb", "kinetic"),
}
"""The entries of the books behind each part: tyres with snow and water, the battery's heater, braking that is not
recovered; the heat in the cells lies behind the terminals."""


class Situation(StrEnum):
    """Where a lift-off is looked at: as on an ordinary day, and wherever it fades."""

    USUAL = "usual"
    SLOW = "slow"
    FULL = "full"
    COLD = "cold"
    SLIPPERY = "slippery"


@dataclass(frozen=True, eq=False)
class SeasonCosts:
    """One drive on a mild day and as described: what became of the difference.

    `parts_kwh` [kWh] adds up to the difference in net energy. `normal` says when the motor slows as on a mild day.
    """

    mild: Result
    season: Result
    parts_kwh: dict[SeasonPart, float]
    mild_range_km: float | None
    range_km: float | None
    normal: Normal | None

    @property
    def more_kwh(self) -> float:
        """What the drive takes more than on the mild day [kWh]."""
        return self.season.net_kwh - self.mild.net_kwh

    @property
    def range_lost_share(self) -> float | None:
        """Range lost against the mild day [1]."""
        if self.range_km is None or self.mild_range_km is None:
            return None
        return 1 - self.range_km / self.mild_range_km


def mild_day(conditions: Conditions) -> Conditions:
    """The same load, charge and habits on a dry day of 20 °C."""
    return replace(
        conditions, ambient_c=MILD_C, surface="dry", battery_temp_c=None, parked_c=None, preconditioned=False
    )


def season_costs(trace: Trace, car: Car, conditions: Conditions, driver: Driver) -> SeasonCosts:
    """Drive a trace as described and on a mild day, and part the difference by the books of both."""
    mild, season = (evaluate(trace, car, each, driver) for each in (mild_day(conditions), conditions))
    parts = {
        name: sum(getattr(season.ledger, entry) - getattr(mild.ledger, entry) for entry in entries) / J_PER_KWH
        for name, entries in PART_ENTRIES.items()
    }
    return SeasonCosts(mild, season, parts, mild.range_km(), season.range_km(), until_normal(season))


@dataclass(frozen=True)
class LiftOffLeft:
    """One lift-off: what was asked, what the motor gives, and what held it [m/s²].

    `slowing_mps2` is the total slowing on a flat road; `limit` names what bound, empty where nothing did.
    """

    situation: Situation
    asked_mps2: float
    slowing_mps2: float
    rolling_mps2: float
    limit: str

    @property
    def motor_mps2(self) -> float:
        """The motor's part [m/s²]."""
        return self.slowing_mps2 - self.rolling_mps2


def lift_off_left(
    situation: Situation, car: Car, conditions: Conditions, driver: Driver, speed_kmh: float
) -> LiftOffLeft:
    """What is left of the driver's lift-off strength at a speed [km/h], in the conditions' charge, cold and road."""
    still = replace(conditions, wind_kmh=0.0)
    up = feet_up(speed_kmh / KMH_PER_MPS, car, still, driver)[0]
    # the car asks for its own strength; a trailer rolls along and is slowed too
    mass, rolls_n = effective_kg(car_record(car, still, driver)), float(up.here_n)
    held = max(min(up.motor_n, up.battery_n), up.drag_n if up.asked_n else 0.0)
    return LiftOffLeft(
        situation=situation,
        asked_mps2=driver.lift_off_mps2,
        slowing_mps2=(rolls_n + held) / mass,
        rolling_mps2=rolls_n / mass,
        limit=LIMITS[up.bound] if up.bound >= 0 else "",
    )


def why_it_fades(
    car: Car, conditions: Conditions, driver: Driver, *, speed_kmh: float, surface: str, cold_battery_c: float,
    slow_kmh: float,
) -> tuple[LiftOffLeft, ...]:  # fmt: skip
    """The same lift-off as usual, at walking pace, with a full battery, with a cold one, and on a slippery road."""
    mild = replace(mild_day(conditions), soc_start=PART_CHARGED)
    situations = (
        (Situation.USUAL, mild, speed_kmh),
        (Situation.SLOW, mild, slow_kmh),
        (Situation.FULL, replace(mild, soc_start=1.0), speed_kmh),
        (Situation.COLD, replace(mild, battery_temp_c=cold_battery_c), speed_kmh),
        (Situation.SLIPPERY, replace(mild, surface=surface), speed_kmh),
    )
    return tuple(lift_off_left(name, car, each, driver, speed) for name, each, speed in situations)


@dataclass(frozen=True, eq=False)
class WarmUp:
    """What warming battery and cabin before the drive takes, and what it brings on the drive.

    `battery_kwh` and `cabin_kwh` [kWh] are the electricity of warming up; from the wall when plugged in, else the
    `charge_share` [1] of the battery is gone before the drive begins. Of what the drive itself then takes less,
    `less_heating_kwh` is cabin heat and `less_friction_kwh` braking energy that is recovered after all (at the wheels).
    """

    battery_kwh: float
    cabin_kwh: float
    plugged_in: bool
    charge_share: float
    cold: Result
    warm: Result

    @property
    def saved_on_the_drive_kwh(self) -> float:
        """What the drive takes less from the battery [kWh]."""
        return self.cold.net_kwh - self.warm.net_kwh

    @property
    def less_heating_kwh(self) -> float:
        """Heat for the cabin that the drive need not give [kWh]."""
        return (self.cold.ledger.cabin - self.warm.ledger.cabin) / J_PER_KWH

    @property
    def less_friction_kwh(self) -> float:
        """Braking energy that the friction brakes do not take [kWh at the wheels]."""
        return self.cold.wheel_friction_kwh - self.warm.wheel_friction_kwh


def warm_up(trace: Trace, car: Car, conditions: Conditions, driver: Driver) -> WarmUp:
    """Warm battery and cabin before the drive, or not: the same drive both ways."""
    cold, warm = (replace(conditions, preconditioned=before) for before in (False, True))
    record = car_record(car, warm, driver)
    battery_kwh = warm_up_j(record, warm.ambient_c) / J_PER_KWH
    cabin_kwh = cabin_warm_up_j(record, warm.ambient_c) / J_PER_KWH
    taken = 0.0 if conditions.plugged_in else (battery_kwh + cabin_kwh) / car.usable_kwh
    return WarmUp(
        battery_kwh=battery_kwh,
        cabin_kwh=cabin_kwh,
        plugged_in=conditions.plugged_in,
        charge_share=taken,
        cold=evaluate(trace, car, cold, driver),
        # with the charge it leaves with, so that both drives are counted from leaving
        warm=evaluate(trace, car, replace(warm, soc_start=conditions.soc_start - taken, plugged_in=True), driver),
    )
