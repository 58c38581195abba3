"""The model beside published figures for cold days and hills: what it finds and what is published."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import cache

import numpy as np

from model.checks.check import CITY_SHARE, Check, Outcome, certified
from model.describe.car import Car
from model.describe.figures import Quantity, Share
from model.describe.parameters import car_from
from model.describe.scenario import Conditions, Driver
from model.describe.scenario_io import starting_drives
from model.describe.tables import rows
from model.describe.trace import Trace
from model.describe.units import J_PER_KWH
from model.kernel.phrases import HILL_LOOP
from model.kernel.savings import Result, evaluate
from model.limits.descent import hill, refund
from model.physics.battery import usable_in_the_cold_kwh
from model.sampling.drives import trace_of
from model.traces.cycles import cycle_trace, cycles_in_turn

COLD_TEST_C = -6.7
"""20 °F, the cold of American tests."""
ROOM_C = 22.2
"""72 °F, at which they hold the cabin."""


def _mixed_kwh_per_km(car: Car, conditions: Conditions) -> float:
    results = {cycle: evaluate(cycle_trace(cycle), car, conditions, Driver()) for cycle in ("udds", "hwfet")}
    city, highway = (result.net_kwh / result.distance_km for result in results.values())
    return CITY_SHARE * city + (1 - CITY_SHARE) * highway


@cache
def _cold_use_over_warm(cabin: bool) -> float:
    """Energy a kilometre amid a test run in the cold over that of a warm day [1]."""
    car = car_from("family-hatch")
    warm = Conditions(ambient_c=23.9, cabin=False)
    cold = Conditions(
        ambient_c=COLD_TEST_C, battery_temp_c=COLD_TEST_C, cabin=cabin, cabin_set_c=ROOM_C, preconditioned=True
    )
    return _mixed_kwh_per_km(car, cold) / _mixed_kwh_per_km(car, warm)


def distance_in_the_cold() -> Check:
    """Distance on the same energy in the cold, amid a test run: against a warm day."""
    off, on = (100 * (1 / _cold_use_over_warm(cabin) - 1) for cabin in (False, True))
    return Check(
        id="distance-in-the-cold",
        sources=("aaa-2019",),
        found=(Outcome("found-cabin-off", off, -9.0), Outcome("found-cabin-on", on, -39.0)),
    )


def range_in_the_cold() -> Check:
    """Range on the 55/45 mix in the cold, amid a test run: against a warm day."""
    car = car_from("family-hatch")
    held = float(usable_in_the_cold_kwh(car, COLD_TEST_C) / car.usable_kwh)
    off, on = (100 * (held / _cold_use_over_warm(cabin) - 1) for cabin in (False, True))
    return Check(
        id="range-in-the-cold",
        sources=("aaa-2019",),
        found=(Outcome("found-cabin-off", off, -12.0), Outcome("found-cabin-on", on, -41.0)),
        given=(("held", Share(held, places=0)),),
        is_evidence=False,
    )


def _kwh_per_km_by_cycle(result: Result) -> list[float]:
    trace = result.trace
    assert trace.leg is not None
    net = result.run.terminal_w[0] * trace.step_s / J_PER_KWH
    return [
        float(net[trace.leg == leg].sum() / trace.step_m[trace.leg == leg].sum() * 1000) for leg in np.unique(trace.leg)
    ]


def consumption_in_the_cold() -> Check:
    """Consumption of a small car driven off cold, cycle after cycle."""
    row = next(row for row in rows("published/epa_certification.csv") if row["id"] == "EV-A")
    car = replace(certified(row)[1], heater_max_kw=5.0, usable_kwh=21.0)
    cycles = ("udds", "hwfet", "us06")
    trace = replace(cycles_in_turn(*cycles), warmed_up=False)
    cold = evaluate(trace, car, Conditions(ambient_c=COLD_TEST_C, cabin_set_c=ROOM_C, soc_start=0.8), Driver())
    warm = Conditions(ambient_c=ROOM_C, cabin=False)
    published = {"udds": 100.0, "hwfet": 40.0, "us06": 25.0}
    found = []
    for cycle, use in zip(cycles, _kwh_per_km_by_cycle(cold), strict=True):
        mild = evaluate(cycle_trace(cycle), car, warm, Driver())
        more_pct = 100 * (use * mild.distance_km / mild.net_kwh - 1)
        found.append(Outcome("found-on-cycle", more_pct, published[cycle], given=(("name", cycle.upper()),)))
    return Check(
        id="consumption-in-the-cold",
        sources=("anl-cold",),
        found=tuple(found),
    )


def _range_lost_pct(with_effect: float, without: float) -> float:
    return 100 * (1 - without / with_effect)


def _cold_effects(trace: Trace, conditions: Conditions) -> tuple[Result, float, float]:
    """The cold drive with heat, and range lost [%] by recovering nothing (cabin off), and by heating."""
    car = car_from("family-hatch")
    heated, plain = (evaluate(trace, car, replace(conditions, cabin=cabin), Driver()) for cabin in (True, False))
    nothing_recovered = _range_lost_pct(plain.friction_only_net_kwh, plain.net_kwh)
    return heated, nothing_recovered, _range_lost_pct(heated.net_kwh, plain.net_kwh)


def effects_of_cold() -> Check:
    """What lost regeneration and heating each take from the range, on WLTC and on a short drive in town."""
    cold = Conditions(ambient_c=-7.0)
    result, recuperation, heat = _cold_effects(replace(cycle_trace("wltc3b"), warmed_up=False), cold)
    town = replace(starting_drives()["town"][2], return_trip=False)
    _, town_recuperation, town_heat = _cold_effects(trace_of(town), cold)
    mean_heat_kw = result.ledger.cabin / result.trace.duration_s / 1000
    return Check(
        id="effects-of-cold",
        sources=("steinstraeter-2021",),
        found=(
            Outcome("found-recuperation-lost-on-wltc", recuperation, 21.7),
            Outcome("found-heating-on-wltc", heat, 31.9),
            Outcome("found-power-of-heating", mean_heat_kw, unit="kW"),
            Outcome("found-recuperation-lost-in-town", town_recuperation),
            Outcome("found-heating-in-town", town_heat),
        ),
    )


ON_A_HILL = Conditions(ambient_c=15.0, cabin=False)
"""Nothing is published on the weather: the standard atmosphere's 15 °C."""


def alpine_pass() -> Check:
    """A pass of 1000 m, up and down, in a heavy and in a light car."""
    found = []
    for mass_kg, car_class, up_kwh, down_kwh in ((2500.0, "large-suv", 12.1, 3.7), (1500.0, "small-hatch", 7.1, 1.9)):
        car = car_from(car_class, {"mass_kg": mass_kg})
        up, down = (evaluate(hill(sign * 1000.0, 5.0, 80.0), car, ON_A_HILL, Driver()).net_kwh for sign in (1, -1))
        given = (("mass", Quantity(mass_kg, "kg", 3, trimmed=True)),)
        found.append(Outcome("found-up", up, up_kwh, unit="kWh", given=given))
        found.append(Outcome("found-down", -down, down_kwh, unit="kWh", given=given))
    return Check(
        id="alpine-pass",
        sources=("mps-2022",),
        found=tuple(found),
        is_evidence=False,
    )


HILL_UP, HILL_DOWN = 10 * HILL_LOOP["up_kwh_per_100_km"], -10 * HILL_LOOP["down_kwh_per_100_km"]
"""Published energy of the hill loop, up and back on the way down [Wh/km]."""


def grade_and_speed_of(up_wh_per_km: float, down_wh_per_km: float, car: Car) -> tuple[float, float]:
    """The grade [%] and the steady speed [km/h] at which this car takes and gives just that, by Newton's method."""
    at = np.array([5.0, 60.0])

    def missed(grade_and_speed: np.ndarray) -> np.ndarray:
        found = refund(car, ON_A_HILL, Driver(), *grade_and_speed)
        return np.array([found.up_wh_per_km - up_wh_per_km, found.down_wh_per_km - down_wh_per_km])

    for _ in range(5):
        here, small = missed(at), np.array([0.01, 0.1])
        slopes = np.column_stack([(missed(at + small * axis) - here) / (small @ axis) for axis in np.eye(2)])
        at = at - np.linalg.solve(slopes, here)
    return float(at[0]), float(at[1])


def hill_loop() -> Check:
    """The slope and the speed that a published hill loop must have had."""
    grade, speed = grade_and_speed_of(HILL_UP, HILL_DOWN, car_from("city-car", {"mass_kg": 1180.0}))
    weak = car_from("city-car", {"mass_kg": 1180.0, "motor_peak_kw": 33.0, "regen_peak_kw": 33.0})
    weak_grade, weak_speed = grade_and_speed_of(HILL_UP, HILL_DOWN, weak)
    return Check(
        id="hill-loop",
        sources=("adac-hill-2024",),
        found=(
            Outcome("found-grade", grade),
            Outcome("found-speed", speed, unit="km/h"),
            Outcome("found-grade-with-its-motor", weak_grade),
            Outcome("found-speed-with-its-motor", weak_speed, unit="km/h"),
        ),
        is_evidence=False,
    )


WINTER_CHECKS: tuple[Callable[[], Check], ...] = (
    distance_in_the_cold,
    range_in_the_cold,
    consumption_in_the_cold,
    effects_of_cold,
    alpine_pass,
    hill_loop,
)
