"""A year of drives in the car described, beside the fuel that the car driven now takes over the same distance.

The car driven now is not modelled: what its owner says it uses is taken as said, in every season alike.
"""

from __future__ import annotations

from dataclasses import dataclass

from model.describe.car import Car
from model.describe.scenario import Year
from model.sampling.drives import YearOfDrives
from model.sampling.hybrid import has_engine
from model.sampling.uncertainty import Band


@dataclass(frozen=True)
class BesideNow:
    """What both cars' energy costs in a year, in the year's currency; nothing else that a car costs.

    `fuel` is what the car driven now runs on: petrol, diesel, or a hybrid's petrol. It uses `l_per_100km`, in a year
    `fuel_l` [l] for `fuel_cost`, over the same `distance_km` on which the car described takes `wall_kwh` [kWh] from the
    wall for `cost`.
    """

    fuel: str
    l_per_100km: float
    fuel_l: float
    price_per_l: float
    fuel_cost: float
    distance_km: float
    days: int
    wall_kwh: Band
    cost: Band

    @property
    def apart(self) -> Band:
        """How much the fuel costs above the electricity [the year's currency]; below zero it costs that much below."""
        return Band(*(self.fuel_cost - cost for cost in (self.cost.high, self.cost.mid, self.cost.low)))


def price_key(year: Year) -> str:
    """Which field of the year has the price of fuel for the car driven now; a hybrid is taken to run on petrol."""
    return "diesel_price_per_l" if year.now_fuel == "diesel" else "petrol_price_per_l"


def price_of_fuel(year: Year) -> float:
    """What fuel costs for the car driven now [a litre, in the year's currency]."""
    return float(getattr(year, price_key(year)))


def beside_now(driven: YearOfDrives, year: Year, car: Car) -> BesideNow | None:
    """Both cars' energy over the year that was driven.

    None where no consumption is said of the car driven now, and for a car described that has an engine of its own: what
    it burns is modelled by one wide efficiency only (`model.sampling.hybrid`), too little to set beside another car.
    """
    if year.now_l_per_100km is None or has_engine(car):
        return None
    fuel_l, price_per_l = driven.distance_km / 100 * year.now_l_per_100km, price_of_fuel(year)
    return BesideNow(
        fuel=year.now_fuel,
        l_per_100km=year.now_l_per_100km,
        fuel_l=fuel_l,
        price_per_l=price_per_l,
        fuel_cost=fuel_l * price_per_l,
        distance_km=driven.distance_km,
        days=sum(row.days for row in driven.rows),
        wall_kwh=driven.wall_kwh,
        cost=driven.cost,
    )
