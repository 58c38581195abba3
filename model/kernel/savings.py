"""What regeneration saves: one drive with it and without it, and the shares that may be printed."""

from __future__ import annotations

from dataclasses import asdict, dataclass

import numpy as np
from numpy.typing import NDArray

from model.describe.car import Car
from model.describe.fields import InputError
from model.describe.figures import Quantity, Share
from model.describe.scenario import CONDITION_FIELDS, Conditions, Driver
from model.describe.trace import Array, N, Numbers, Trace
from model.describe.units import J_PER_KWH, KMH_PER_MPS
from model.kernel.follow import follow
from model.kernel.ledger import Ledger
from model.kernel.run import Run, drive, drive_road, ledger_of, lost_slowing_j
from model.kernel.shortfall import shortfall_j
from model.physics.battery import usable_in_the_cold_kwh

LEDGER_DECIMALS = 12
"""Decimals of the ledger's error in an answer: beyond them is rounding, which differs from machine to machine."""


def energy_saved_share(net: N, friction_only_net: N) -> N:
    """Energy saved s [1]: one minus net over net of the same trace on friction brakes only."""
    return 1 - net / friction_only_net


LEAST_WH_PER_KM = 30.0
"""A drive that takes less of the battery [Wh/km] is paid for by its descent. Assumed: light cars take some 80."""


def has_range(net_kwh: Numbers, distance_km: Numbers) -> bool | NDArray[np.bool_]:
    """Whether a drive takes so much of the battery, in kWh over km, that it has a range.

    Range is a drive over and over until the battery is empty. One that its hill drives cannot be repeated, and where
    next to nothing is taken the range could be any number.
    """
    return 1000 * net_kwh >= LEAST_WH_PER_KM * distance_km


def range_gain_share(saved: N) -> N:
    """Range gain s / (1 − s) [1]; the range lost when regeneration vanishes is s itself."""
    return saved / (1 - saved)


@dataclass(frozen=True, eq=False)
class Result:
    """One drive, with regeneration and on friction brakes only, over the same trace.

    `run` holds every step, `without` the energies of the drive on friction brakes only: a drive of two days has so many
    steps that they are not kept twice (`friction_only`).
    """

    trace: Trace
    car: Car
    conditions: Conditions
    driver: Driver
    followed: bool
    run: Run
    without: Run
    ledger: Ledger

    @property
    def friction_only(self) -> Run:
        """The drive on friction brakes only with every step, driven when it is asked for."""
        return drive_road(self.run.road, self.run.cars, regen=False, record=True)

    @property
    def distance_km(self) -> float:
        """Distance driven [km]: up to where the battery was empty, if it was."""
        return self.trace.distance_m / 1000

    @property
    def described_km(self) -> float:
        """Distance that was to be driven [km]."""
        return self.distance_km if self.trace.described_m is None else self.trace.described_m / 1000

    @property
    def charging_s(self) -> float:
        """Time that the car stands and charges on the way [s]."""
        return float(self.trace.step_s[self.trace.charging].sum())

    @property
    def charged_kwh(self) -> float:
        """Energy charged into the cells on the way [kWh]; neither regenerated nor in the net energy."""
        return float(self.run.energies["charged_j"][0]) / J_PER_KWH

    @property
    def battery_out_kwh(self) -> float:
        """Energy out of the battery at its terminals [kWh], warming up before the drive included."""
        return float(self.run.out_j[0]) / J_PER_KWH

    @property
    def battery_in_kwh(self) -> float:
        """Energy that regeneration put back at the terminals [kWh]."""
        return float(self.run.in_j[0]) / J_PER_KWH

    @property
    def net_kwh(self) -> float:
        """Out less in [kWh]; negative where a descent gave more than the drive took."""
        return self.battery_out_kwh - self.battery_in_kwh

    @property
    def friction_only_net_kwh(self) -> float:
        """Net energy of the same trace on friction brakes only [kWh]."""
        return float(self.without.net_j[0]) / J_PER_KWH

    @property
    def saved_kwh(self) -> float:
        """Energy that regeneration saves at the battery [kWh]."""
        return self.friction_only_net_kwh - self.net_kwh

    @property
    def recovered_share(self) -> float | None:
        """Recovered share r [1]: in over out at the terminals."""
        return self.battery_in_kwh / self.battery_out_kwh if self.battery_out_kwh > 0 else None

    @property
    def cabin_share(self) -> float:
        """Heating or cooling the cabin over the net energy [1]; 0 where the drive takes nothing."""
        return self.ledger.cabin / J_PER_KWH / self.net_kwh if self.net_kwh > 0 else 0.0

    @property
    def saved_share(self) -> float | None:
        """Energy saved s [1]; None where the friction-only run takes nothing."""
        without = self.friction_only_net_kwh
        return float(energy_saved_share(self.net_kwh, without)) if without > 0 else None

    @property
    def range_gain(self) -> float | None:
        """Range gain s / (1 − s) [1]; None where the drive takes next to nothing from the battery (`has_range`)."""
        saved = self.saved_share
        if saved is None or not has_range(self.net_kwh, self.distance_km):
            return None
        return float(range_gain_share(saved))

    def range_km(self, charge: float = 1.0) -> float | None:
        """How far the battery reaches from a `charge` [1] when this drive is driven over and over [km].

        None where the drive takes next to nothing (`has_range`). What a battery as cold as at the end of the drive
        holds back is taken off.
        """
        if not has_range(self.net_kwh, self.distance_km):
            return None
        held_kwh = float(usable_in_the_cold_kwh(self.car, float(self.run.pack_c[0, -1])))
        held_back_kwh = self.car.usable_kwh - held_kwh
        return max(charge * self.car.usable_kwh - held_back_kwh, 0.0) / self.net_kwh * self.distance_km

    @property
    def made_kwh(self) -> float:
        """Electricity that the motor makes while it slows the car [kWh]: some is used aboard before the battery."""
        return self.wheel_regen_kwh - lost_slowing_j(self.run) / J_PER_KWH

    @property
    def wall_wh_per_km(self) -> float:
        """Energy from the wall [Wh/km]: what the cells gave has to be filled up again, their own loss with it."""
        given_kwh = (self.ledger.cells_given - self.ledger.cells_taken) / J_PER_KWH
        return given_kwh * 1000 / self.distance_km / self.car.charging_efficiency

    @property
    def wheel_braking_kwh(self) -> float:
        """Braking energy asked at the wheels, beyond road load and slope [kWh]."""
        return float(self.run.energies["braking_j"][0]) / J_PER_KWH

    @property
    def wheel_regen_kwh(self) -> float:
        """Braking energy that the motor took at the wheels [kWh]."""
        return float(self.run.energies["motor_j"][0]) / J_PER_KWH

    @property
    def wheel_friction_kwh(self) -> float:
        """Braking energy left to the friction brakes [kWh]."""
        return float(self.run.energies["friction_j"][0]) / J_PER_KWH

    @property
    def friction_only_wheel_friction_kwh(self) -> float:
        """Work of the friction brakes in the friction-only run [kWh]."""
        return float(self.without.energies["friction_j"][0]) / J_PER_KWH

    @property
    def captured_share(self) -> float | None:
        """Share of the wheels' braking energy that the motor took [1]; None where nothing was braked."""
        return self.wheel_regen_kwh / self.wheel_braking_kwh if self.wheel_braking_kwh > 0 else None

    @property
    def limits_kwh(self) -> dict[str, float]:
        """Wheel energy left to friction by the limit that bound [kWh]."""
        return {name: float(left[0]) / J_PER_KWH for name, left in self.run.left_by_limit_j.items()}

    @property
    def soc(self) -> Array:
        """State of charge before each step and at the end [1]."""
        return self.run.soc[0]

    @property
    def shortfall_kwh(self) -> float:
        """What a recorded drive asked for beyond what the modelled car could have given [kWh]; else nothing."""
        return shortfall_j(self.run) / J_PER_KWH if self.trace.recorded else 0.0

    def answers(self) -> dict[str, object]:
        """The answer as the command line gives it, every key ending in its unit."""
        trace = self.trace
        return {
            "distance_km": self.distance_km,
            "described_km": self.described_km,
            "battery_ends": trace.ends or None,
            "charging_stops": len(trace.charging),
            "charging_s": self.charging_s,
            "charged_kwh": self.charged_kwh,
            "duration_s": trace.duration_s,
            "mean_speed_kmh": trace.distance_m / trace.duration_s * KMH_PER_MPS,
            "stops": trace.stops,
            "battery_out_kwh": self.battery_out_kwh,
            "battery_in_kwh": self.battery_in_kwh,
            "battery_net_kwh": self.net_kwh,
            "warm_up_kwh": float(self.run.before_j[0]) / J_PER_KWH,
            "battery_net_wh_per_km": self.net_kwh * 1000 / self.distance_km,
            "wall_wh_per_km": self.wall_wh_per_km,
            "friction_only_net_kwh": self.friction_only_net_kwh,
            "recovered_share_of_output": self.recovered_share,
            "energy_saved_share": self.saved_share,
            "range_gain_share": self.range_gain,
            "wheel_braking_kwh": self.wheel_braking_kwh,
            "wheel_regen_kwh": self.wheel_regen_kwh,
            "wheel_friction_kwh": self.wheel_friction_kwh,
            "captured_share_of_braking": self.captured_share,
            "ledger_kwh": {name: energy / J_PER_KWH for name, energy in asdict(self.ledger).items()},
            "ledger_error_share": round(self.ledger.error_share, LEDGER_DECIMALS),
            "limits_kwh": self.limits_kwh,
            "soc_start": self.conditions.soc_start,
            "soc_end": float(self.soc[-1]),
            "pack_temperature_c_end": float(self.run.pack_c[0, -1]),
            "followed_trace": self.followed,
            "shortfall_kwh": self.shortfall_kwh,
        }


def evaluate(trace: Trace, car: Car, conditions: Conditions, driver: Driver) -> Result:
    """Drive a trace with regeneration and on friction brakes only.

    Raises
    ------
    InputError
        Where the trace goes nowhere; and, unless it is a recording, where the car cannot climb a hill, or the battery
        runs empty or too weak on the way. A trace that was cut where that happened is driven as it is
        (`model.sampling.drives.trace_of`).
    """
    if trace.distance_m <= 0:
        raise InputError("drive-goes-nowhere")
    followed = True
    # a recording was driven: where the modelled car could not have done it, that is reported in place of slowing it
    if not trace.recorded:
        trace, followed = follow(trace, car, conditions)
    run = drive(trace, car, conditions, driver)
    without = drive_road(run.road, run.cars, regen=False)
    if not (trace.recorded or trace.ends):
        _check_charge(trace, run, conditions)
    return Result(trace, car, conditions, driver, followed, run, without, ledger_of(run, trace))


def _check_charge(trace: Trace, run: Run, conditions: Conditions) -> None:
    """Raise `InputError` where the battery is empty, or too weak, before the drive ends."""
    empty_at, weak_at = (int(run.energies[name][0]) for name in ("empty_at", "weak_at"))
    if empty_at >= 0:
        step, reason = empty_at, "battery-does-not-last"
    elif weak_at >= 0:
        step, reason = weak_at, "battery-too-weak"
    else:
        return
    reached = np.concatenate([[0.0], np.cumsum(trace.step_m)])
    after = reached[min(step, len(reached) - 1)] / 1000
    raise InputError(
        reason, field=CONDITION_FIELDS["soc_start"], charge=Share(conditions.soc_start, places=0),
        reached=Quantity(round(after), "km", 3, trimmed=True),
        length=Quantity(round(trace.distance_m / 1000), "km", 3, trimmed=True),
    )  # fmt: skip
