"""Hybrids: what regeneration saves in fuel, with a wide band, and the charge that the engine keeps.

A hybrid goes through the same kernel: its battery is a small window with a low power cap, and its engine gives what
the battery would have to give below the charge that it keeps. Energies stand at the electric drive's terminals,
whoever gives them; how the engine's work reaches the wheels is not modelled but for one wide efficiency.
"""

from __future__ import annotations

from dataclasses import asdict, dataclass, replace

from model.describe.car import Car
from model.describe.parameters import assumed_figures, car_of
from model.describe.scenario import Conditions, Scenario
from model.describe.units import J_PER_KWH
from model.kernel.run import Run
from model.kernel.savings import Result
from model.sampling.drives import drive, engine_j, seasons_of
from model.sampling.uncertainty import Band

LEAST_PLUG_IN_KWH = 3.0
"""Hybrids with a smaller battery are taken to have no plug [kWh]. Assumed: those without have some 0.4 to 2."""
FUEL_KWH_PER_LITRE = 8.9
"""Heat of a litre of petrol, 32 MJ: from memory."""


def has_engine(car: Car) -> bool:
    """Whether the car is a hybrid."""
    return car.sustain_soc is not None


def has_plug(car: Car) -> bool:
    """Whether the car can be charged from the wall: a battery car, and a hybrid with more than a small battery."""
    return car.sustain_soc is None or car.usable_kwh >= LEAST_PLUG_IN_KWH


def engine_kwh(run: Run) -> float:
    """What the engine gave in place of the battery [kWh]."""
    return float(engine_j(run)[0]) / J_PER_KWH


def fuel_l(energy_kwh: float, engine_efficiency: float) -> float:
    """Fuel [l] of which an engine of this efficiency [1] makes `energy_kwh` [kWh] at the electric drive's terminals."""
    return energy_kwh / (engine_efficiency * FUEL_KWH_PER_LITRE)


@dataclass(frozen=True)
class FuelSaved:
    """Fuel that regeneration saves on a drive [l], and the energy of the engine behind it [kWh].

    What a plug-in hybrid saves while it drives on its charge is electricity and not in here.
    """

    engine_kwh: float
    friction_only_engine_kwh: float
    litres: Band
    litres_per_100km: Band


def fuel_saved(scenario: Scenario, result: Result) -> FuelSaved:
    """Fuel saved on the result's drive: the band is that of the engine's efficiency, low to high, and is wide."""
    figures, stated = assumed_figures(scenario.car_class)["engine_efficiency"], dict(scenario.stated)
    at = stated.get("engine_efficiency")
    ends = figures.numbers[::-1] if at is None else (float(at),) * 3
    with_regen, without = engine_kwh(result.run), engine_kwh(result.without)
    litres = Band(*(fuel_l(without - with_regen, efficiency) for efficiency in ends))
    return FuelSaved(with_regen, without, litres, litres.scaled(100 / result.distance_km))


@dataclass(frozen=True)
class YearOfFuel:
    """Fuel that regeneration saves in a year [l], and whether the car is charged from the wall too."""

    saved_l: Band
    plugged: bool


def year_of_fuel(scenario: Scenario) -> YearOfFuel | None:
    """What the scenario's year spares an engine; None in a car without one."""
    car = car_of(scenario)
    return YearOfFuel(fuel_of_year(scenario), has_plug(car)) if has_engine(car) else None


def fuel_of_year(scenario: Scenario) -> Band:
    """Fuel saved in the scenario's year [l]: every season's drive on its days, with the band of `fuel_saved`."""
    seasons = [fuel_saved(then, drive(then)).litres.scaled(days) for _, days, then in seasons_of(scenario)]
    return Band(*(sum(getattr(litres, end) for litres in seasons) for end in ("low", "mid", "high")))


def fuel_answers(scenario: Scenario, result: Result) -> dict[str, object]:
    """Fuel saved as the command line answers it: low, mid and high, by the engine's efficiency."""
    saved = fuel_saved(scenario, result)
    return {
        "engine_kwh": saved.engine_kwh,
        "friction_only_engine_kwh": saved.friction_only_engine_kwh,
        "saved_l": asdict(saved.litres),
        "saved_l_per_100km": asdict(saved.litres_per_100km),
    }


def with_kept_charge(car: Car, conditions: Conditions) -> Conditions:
    """The conditions with a hybrid's usual charge at the start: what its engine keeps."""
    return conditions if car.sustain_soc is None else replace(conditions, soc_start=car.sustain_soc)
