"""The model beside published figures: what it finds and what is published.

The tests assert these records and the pages show them, so an error that is printed is the error that was found. How far
off is tolerated stands in the tests. No figure is fitted to a single car, but the losses were chosen with the certified
cars and the energy-flow pages in view.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cache
from statistics import fmean, median

import numpy as np

from model.checks.check import CITY_SHARE, Check, Outcome, certified, on_cycle
from model.checks.cold import WINTER_CHECKS
from model.describe.figures import Quantity
from model.describe.parameters import REFERENCE_CLASSES, car_from, class_labels
from model.describe.scenario import Driver
from model.describe.tables import rows
from model.kernel.run import drive
from model.kernel.savings import Result
from model.traces.cycles import LABORATORY, cycle_trace

REFERENCE_CAR = {"mass_kg": 1500.0, "drag_area_m2": 0.3 * 2.2, "rolling_coefficient": 0.01, "rotating_mass_share": 0.03}
BRAKING_OVER_TRACTION_PCT = {"udds": 45.0, "hwfet": 11.0, "us06": 30.0, "nycc": 70.0, "wltc3b": 29.0, "nedc": 31.0}


@dataclass(frozen=True)
class CertifiedCar:
    """One certified car: its wall energy as published and as modelled [Wh/km], and what came back [Wh/km]."""

    id: str
    description: str
    car_class: str
    city_published: float
    highway_published: float
    city_modelled: float
    highway_modelled: float
    city_battery_in: float
    highway_battery_in: float

    @property
    def city_error_pct(self) -> float:
        """Modelled over published wall energy in the city, less one [%]."""
        return 100 * (self.city_modelled / self.city_published - 1)

    @property
    def highway_error_pct(self) -> float:
        """Modelled over published wall energy on the highway, less one [%]."""
        return 100 * (self.highway_modelled / self.highway_published - 1)


def _certified_car(row: Mapping[str, str]) -> CertifiedCar:
    car_class, car = certified(row)
    city, highway = on_cycle("udds", car), on_cycle("hwfet", car)
    return CertifiedCar(
        id=row["id"],
        description=row["class"],
        car_class=car_class,
        city_published=float(row["city_wall_wh_per_km"]),
        highway_published=float(row["hwy_wall_wh_per_km"]),
        city_modelled=city.wall_wh_per_km,
        highway_modelled=highway.wall_wh_per_km,
        city_battery_in=city.battery_in_kwh * 1000 / city.distance_km,
        highway_battery_in=highway.battery_in_kwh * 1000 / highway.distance_km,
    )


@cache
def certified_cars() -> tuple[CertifiedCar, ...]:
    """The nine certified cars, driven on the city and the highway cycle with their measured road load."""
    return tuple(_certified_car(row) for row in rows("published/epa_certification.csv"))


def epa_certification() -> Check:
    """Wall energy of nine certified cars on UDDS and HWFET."""
    city = [car.city_error_pct for car in certified_cars()]
    highway = [car.highway_error_pct for car in certified_cars()]
    return Check(
        id="epa-certification",
        sources=("epa-2010-2019",),
        found=(
            Outcome("found-errors-in-the-city", median(map(abs, city))),
            Outcome("found-errors-on-the-highway", median(map(abs, highway))),
            Outcome("found-lean-in-the-city", median(city)),
            Outcome("found-lean-on-the-highway", median(highway)),
        ),
    )


def energy_flow() -> Check:
    """Energy that regeneration puts back, over the published wall energy of the certified cars."""

    def share_pct(city_share: float) -> float:
        return 100 * median(
            (city_share * car.city_battery_in + (1 - city_share) * car.highway_battery_in)
            / (city_share * car.city_published + (1 - city_share) * car.highway_published)
            for car in certified_cars()
        )

    return Check(
        id="energy-flow",
        sources=("doe-energy", "doe-1360"),
        found=(
            Outcome("found-in-the-city", share_pct(1.0), 32.0),
            Outcome("found-on-the-highway", share_pct(0.0), 6.0),
            Outcome("found-combined", share_pct(CITY_SHARE), 22.0),
        ),
    )


def _mixed_range_gain(results: dict[str, Result]) -> float:
    shares = {"udds": CITY_SHARE, "hwfet": 1 - CITY_SHARE}
    net = sum(share * results[cycle].net_kwh / results[cycle].distance_km for cycle, share in shares.items())
    without = sum(
        share * results[cycle].friction_only_net_kwh / results[cycle].distance_km for cycle, share in shares.items()
    )
    return without / net - 1


def range_gain_on_dynamometer() -> Check:
    """Range that a light car with a friction-only pedal gains by regeneration on lift-off."""
    car = car_from("city-car", {"brake_pedal": "friction"})
    compared, reported = [], []
    for strength in (0.5, 1.0, 1.5):
        results = {c: on_cycle(c, car, Driver(lift_off_mps2=strength)) for c in ("wltc3b", "udds", "hwfet")}
        wltc_pct, us_pct = 100 * (results["wltc3b"].range_gain or 0), 100 * _mixed_range_gain(results)
        given = (("strength", Quantity(strength, "m/s²", 3, trimmed=True)),)
        if strength <= 1:
            compared.append(Outcome("found-gain-on-wltc", wltc_pct, (11.0, 22.0), given=given))
            compared.append(Outcome("found-gain-on-us-cycles", us_pct, (11.0, 22.0), given=given))
        reported.append(Outcome("found-gain-on-udds", 100 * (results["udds"].range_gain or 0), given=given))
    return Check(
        id="range-gain-on-dynamometer",
        sources=("wager-2017",),
        found=(*compared, *reported),
    )


def recovered_on_wltc() -> Check:
    """Recovered share r of every battery class on WLTC class 3b."""
    shares_pct = {
        class_labels()[car_class]: 100 * (on_cycle("wltc3b", car_from(car_class)).recovered_share or 0)
        for car_class in REFERENCE_CLASSES
    }
    return Check(
        id="recovered-on-wltc",
        sources=("adac-2024",),
        found=(
            Outcome("found-mean-of-classes", fmean(shares_pct.values()), 22.0),
            *(
                Outcome("found-of-class", share, (9.0, 31.0), given=(("name", label),))
                for label, share in shares_pct.items()
            ),
        ),
    )


def braking_over_traction() -> Check:
    """Braking energy over traction energy at the wheels of a 1500 kg reference car."""
    car = car_from("family-hatch", REFERENCE_CAR)
    found = []
    for cycle, expected in BRAKING_OVER_TRACTION_PCT.items():
        run = drive(cycle_trace(cycle), car, LABORATORY, Driver())
        work = run.wheel_n * run.speed * run.step_s
        share_pct = 100 * float(np.sum(-work[work < 0]) / np.sum(work[work > 0]))
        found.append(Outcome("found-on-cycle", share_pct, expected, given=(("name", cycle.upper()),)))
    return Check(
        id="braking-over-traction",
        sources=("own-point-mass", "cycles"),
        found=tuple(found),
        is_evidence=False,
    )


CHECKS: tuple[Callable[[], Check], ...] = (
    epa_certification,
    energy_flow,
    range_gain_on_dynamometer,
    recovered_on_wltc,
    braking_over_traction,
    *WINTER_CHECKS,
)


@cache
def all_checks() -> tuple[Check, ...]:
    """Every check, run once."""
    return tuple(check() for check in CHECKS)


def evidence() -> tuple[Check, ...]:
    """The checks whose agreement says something about the model."""
    return tuple(check for check in all_checks() if check.is_evidence)


def consistency() -> tuple[Check, ...]:
    """The checks that would agree, or nearly so, whatever the model's worth: shown, and not counted as evidence."""
    return tuple(check for check in all_checks() if not check.is_evidence)
