"""What takes regeneration away from one drive: cold, a slippery road, a full battery or a long hill, a hard stop.

Each of the four is computed by its own module; here they are laid out for one scenario, with the low, mid and high
battery or road beside each other.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from typing import Any, TypeVar

import numpy as np
import pandas as pd

from model import battery
from model.car import Car
from model.descent import (
    Descent,
    FullStart,
    Headroom,
    Normal,
    descent,
    descent_to_fill_m,
    full_start,
    headroom,
    hill,
    ordinary_charging_w,
    shares_of_slopes,
    until_normal,
)
from model.drives import trace_of
from model.fields import choice, fields_of, from_link, number
from model.friction_brakes import BrakeUse, brake_use
from model.grip_margin import (
    BENDS_M,
    LEVELS,
    AxleGrip,
    balance,
    demand_friction,
    grip_asked,
    grip_check,
    largest_lift_off_mps2,
    margin_word,
)
from model.hybrid import FuelSaved, fuel_saved, has_engine
from model.parameters import car_from
from model.savings import Result, evaluate
from model.scenario import SEASONS, SURFACES, Conditions, Scenario
from model.simulation import start_temperature_c
from model.stopping import MotorOnlyStop, Stop, emergency_stop, motor_only_stop, motor_part_g, standing_on_slope
from model.trace import Array
from model.tyre_grip import friction_coefficient
from model.units import KMH_PER_MPS
from model.winter import LiftOffLeft, SeasonCosts, WarmUp, season_costs, warm_up, why_it_fades

PARTS = ("cold", "grip", "hills", "stop")
STRAIGHT = "straight on"
Found = TypeVar("Found")


@dataclass(frozen=True, kw_only=True)
class LimitSettings:
    """What is asked about the limits beside the drive itself."""

    part: str = choice(PARTS, "Part", "What takes regeneration away.", default="cold")
    grip_kmh: float = number("km/h", 10, 160, (20, 130), "Speed", "At which the foot comes up.", default=50.0)
    bend: str = choice((STRAIGHT, *BENDS_M), "Bend", "How sharp.", default=STRAIGHT)
    slope_pct: float = number("%", -20, 20, (-12, 12), "Slope", "Rise over run: downhill is negative.", default=0.0)
    hill_m: float = number("m", 10, 3000, (20, 2000), "My hill goes down", "Height lost, all told.", default=300.0)
    hill_pct: float = number("%", 1, 20, (2, 12), "How steep", "Height lost over distance.", default=6.0)
    hill_kmh: float = number("km/h", 10, 130, (20, 100), "Driven at", "A steady speed.", default=50.0)
    stop_kmh: float = number("km/h", 10, 250, (30, 130), "Stop from", "Speed as the danger is seen.", default=100.0)
    reaction_s: float = number("s", 0, 4, (0.5, 2.5), "Reaction time", "From seeing to braking.", default=1.0)


LIMIT_FIELDS = fields_of(LimitSettings)


def settings_of(link: Mapping[str, str]) -> tuple[LimitSettings, list[str]]:
    """The settings of a link and a sentence for each that had to be changed."""
    values, notices = from_link(LIMIT_FIELDS, link)
    return LimitSettings(**values), notices


def car_of(scenario: Scenario) -> Car:
    """The scenario's car at its middle figures."""
    return car_from(scenario.car_class, dict(scenario.stated))


def by_battery(scenario: Scenario, of: Callable[[Car], Found]) -> dict[str, Found]:
    """Something of the scenario's car with a battery that takes little, the middle and much; as stated, if it is."""
    car = car_of(scenario)
    if "acceptance_level" in dict(scenario.stated):
        return dict.fromkeys(LEVELS, of(car))
    return {name: of(replace(car, acceptance_level=level)) for name, level in LEVELS.items()}


@dataclass(frozen=True, eq=False)
class AtAGlance:
    """The number of each part: of the cold, of grip as in `model.grip_margin`, of the hill, and of a hard stop."""

    costs: SeasonCosts
    grip: dict[str, Any]
    room: Headroom
    stops: dict[str, Stop]


def at_a_glance(scenario: Scenario, settings: LimitSettings) -> AtAGlance:
    """The four parts in short.

    Raises
    ------
    InputError
        Where the drive cannot be driven.
    """
    car, conditions, driver = car_of(scenario), scenario.conditions, scenario.driver
    return AtAGlance(
        costs=season_costs(trace_of(scenario), car, conditions, driver),
        grip=grip_there(scenario, settings),
        room=headroom(hill(-settings.hill_m, settings.hill_pct, settings.hill_kmh), car, conditions, driver),
        stops=stops_there(scenario, settings),
    )


# cold

MAP_C = np.arange(-20.0, 31.0)
"""Battery temperatures of the map [°C]."""
LATTICE_C, LATTICE_SOC = (-15.0, -5.0, 5.0, 15.0, 25.0), (0.2, 0.4, 0.6, 0.8, 0.95)
"""Where the map carries numbers."""


@dataclass(frozen=True, eq=False)
class ColdDay:
    """The drive as described beside a mild day, and where on the map of its battery's charge acceptance it goes.

    `ordinary_kw` is what ordinary slow-downs charge with, `takes_kw` what the battery takes at the start, `normal`
    when it takes the former. `takes_all` has for each `battery_c` the highest charge [1] at which a `low`, `mid` and
    `high` battery takes ordinary slow-downs (NaN: at none), `accepted` has `kw` that the mid battery takes by
    `battery_c` and `soc`, `way` has the drive's own `battery_c` and `soc`.
    """

    costs: SeasonCosts
    ordinary_kw: float
    takes_kw: dict[str, float]
    normal: dict[str, Normal | None]
    takes_all: pd.DataFrame
    accepted: pd.DataFrame
    way: pd.DataFrame
    fades: tuple[LiftOffLeft, ...]
    warm_up: WarmUp


def accepted_kw(car: Car, battery_c: Any, soc: Any) -> Array:
    """Power that the battery takes [kW] at temperatures [°C] and charges [1] of one shape (points,)."""
    return battery.acceptance_w(car, np.atleast_2d(soc), np.atleast_2d(battery_c))[0] / 1000


def highest_charges(car: Car, power_w: float) -> Array:
    """The highest charge [1] at which the battery takes a power [W], by temperature of the map; NaN where none does."""
    charges = np.linspace(0.0, 1.0, 201)
    battery_c, soc = (axis.ravel() for axis in np.meshgrid(MAP_C, charges, indexing="ij"))
    takes = (accepted_kw(car, battery_c, soc) * 1000 >= power_w).reshape(len(MAP_C), -1)
    return np.where(takes.any(axis=1), np.where(takes, charges, 0.0).max(axis=1), np.nan)


def cold_day(scenario: Scenario, costs: SeasonCosts) -> ColdDay:
    """What the season does to the scenario's drive; `costs` are those of the same drive."""
    trace, car, conditions, driver = costs.season.trace, car_of(scenario), scenario.conditions, scenario.driver
    run = costs.season.run
    ordinary_w = ordinary_charging_w(costs.season)
    start_c, start = float(run.pack_c[0, 0]), float(run.soc[0, 0])

    lattice = pd.DataFrame([(pack_c, soc) for pack_c in LATTICE_C for soc in LATTICE_SOC], columns=["battery_c", "soc"])
    return ColdDay(
        costs=costs,
        ordinary_kw=ordinary_w / 1000,
        takes_kw=by_battery(scenario, lambda one: float(accepted_kw(one, start_c, start)[0])),
        normal=by_battery(scenario, lambda one: until_normal(evaluate(trace, one, conditions, driver))),
        takes_all=pd.DataFrame(
            {"battery_c": MAP_C} | by_battery(scenario, lambda one: highest_charges(one, ordinary_w))
        ),
        accepted=lattice.assign(kw=accepted_kw(car, lattice["battery_c"], lattice["soc"])),
        way=pd.DataFrame({"battery_c": run.pack_c[0], "soc": run.soc[0]}),
        fades=why_it_fades(car, conditions, driver),
        warm_up=warm_up(trace, car, conditions, driver),
    )


# slippery road


@dataclass(frozen=True, eq=False)
class SlipperyRoad:
    """The driver's lift-off on the slipperiest road of the drive, and on every other.

    `check` is that of `model.grip_margin`, `asked` the grip behind it, `most_friction` what this road gives at most at
    walking pace [1]. `by_surface` has a row a `surface`: friction
    `demand`, `least`, the largest lift-off `low`, `mid`, `high` [m/s²] and the `margin`. `loads` has the `front` and
    `rear` axle's share of the weight by `slowing_mps2`, `balance` the friction asked of `front` and `rear` by
    `front_share` of the motor slowing; None straight on.
    """

    check: dict[str, Any]
    asked: AxleGrip
    most_friction: float
    by_surface: pd.DataFrame
    loads: pd.DataFrame
    balance: pd.DataFrame | None


def friction_of_roads(tyres: str, speed: float) -> Array:
    """Friction of every surface [1] at a speed [m/s]: rows as SURFACES, columns as LEVELS."""
    surfaces, levels = np.arange(len(SURFACES))[:, None], np.array(list(LEVELS.values()))
    friction: Array = friction_coefficient(surfaces, levels, tyres, speed)
    return friction


def slipperiest(scenario: Scenario) -> Conditions:
    """The conditions with the surface of the drive's slipperiest leg."""
    surfaces = (scenario.conditions.surface, *(leg.surface for leg in scenario.legs))
    return replace(scenario.conditions, surface=max(surfaces, key=SURFACES.index))


def grip_there(scenario: Scenario, settings: LimitSettings) -> dict[str, Any]:
    """The check of `model.grip_margin` on the drive's slipperiest road, where the settings say."""
    where = (settings.grip_kmh, BENDS_M.get(settings.bend), settings.slope_pct)
    return grip_check(car_of(scenario), slipperiest(scenario), scenario.driver.lift_off_mps2, *where)


def slippery_road(scenario: Scenario, settings: LimitSettings) -> SlipperyRoad:
    """The scenario's lift-off strength against grip, at the speed, in the bend and on the slope of the settings."""
    car, conditions, strength = car_of(scenario), slipperiest(scenario), scenario.driver.lift_off_mps2
    radius = BENDS_M.get(settings.bend, np.inf)
    where = (settings.grip_kmh / KMH_PER_MPS, radius, settings.slope_pct / 100)
    asked = grip_asked(car, conditions, strength, *where)
    demand = float(demand_friction(asked, car.driven_axle))
    needed = float(max(asked.front, asked.rear))
    friction = friction_of_roads(conditions.tyres, where[0])
    largest = largest_lift_off_mps2(car, conditions, friction, *where)
    by_surface = pd.DataFrame({"surface": SURFACES, "demand": demand, "least": friction[:, 0]})
    by_surface[list(LEVELS)] = largest
    by_surface["margin"] = [margin_word(needed, least) for least in friction[:, 0]]
    slowing = np.linspace(0.0, 9.0, 19)
    front = grip_asked(car, conditions, slowing).front_load_share
    shares = np.linspace(0.0, 1.0, 21)
    in_a_bend = None
    if np.isfinite(radius):
        at_front, at_rear = balance(car, conditions, strength, where[0], radius, shares)
        in_a_bend = pd.DataFrame({"front_share": shares, "front": at_front, "rear": at_rear})
    return SlipperyRoad(
        check=grip_there(scenario, settings),
        asked=asked,
        most_friction=float(friction_of_roads(conditions.tyres, 0.0)[SURFACES.index(conditions.surface), -1]),
        by_surface=by_surface,
        loads=pd.DataFrame({"slowing_mps2": slowing, "front": front, "rear": 1 - front}),
        balance=in_a_bend,
    )


# full battery and hills

CHARGES = np.linspace(0.5, 1.0, 51)
SLOPES_PCT, SLOPE_SPEEDS_KMH = (2.0, 4.0, 6.0, 8.0, 10.0, 12.0), (50.0, 80.0, 110.0)


@dataclass(frozen=True, eq=False)
class Hills:
    """One hill with the drive's car and weather: what to leave free for it, and what holds the car on it.

    `room` is for the hill, `drive_room` for the drive itself, each by battery. `takes` has for each charge `soc` [1]
    what a `low`, `mid` and `high` battery takes [kW] at its temperature at the start. `down` begins at the drive's
    charge, `down_full` with a full battery. `to_fill_m` are metres of this slope that fill the battery: from the
    charge at the start, in a hybrid from that which its engine keeps; None where the slope gives nothing. `fuel` is
    what regeneration saves a hybrid on the drive.
    """

    room: dict[str, Headroom]
    drive_room: dict[str, Headroom]
    takes: pd.DataFrame
    down: Descent
    down_full: Descent
    full_start: FullStart
    to_fill_m: float | None
    engine_drag_kw: float
    fuel: FuelSaved | None


def hills(scenario: Scenario, settings: LimitSettings, result: Result) -> Hills:
    """The hill of the settings; `result` is the scenario's drive.

    Raises
    ------
    InputError
        Where the drive cannot be driven.
    """
    trace, car, conditions, driver = trace_of(scenario), car_of(scenario), scenario.conditions, scenario.driver
    hybrid = has_engine(car)
    kept = conditions if car.sustain_soc is None else replace(conditions, soc_start=car.sustain_soc)
    way_down = hill(-settings.hill_m, settings.hill_pct, settings.hill_kmh)
    start_c = start_temperature_c(conditions, conditions.ambient_c)
    slope = {"drop_m": settings.hill_m, "grade_pct": settings.hill_pct, "speed_kmh": settings.hill_kmh}
    full = replace(conditions, soc_start=1.0)
    down = descent(car, kept, driver, **slope)
    return Hills(
        room=by_battery(scenario, lambda one: headroom(way_down, one, conditions, driver)),
        drive_room=by_battery(scenario, lambda one: headroom(trace, one, conditions, driver)),
        takes=pd.DataFrame(
            {"soc": CHARGES}
            | by_battery(scenario, lambda one: accepted_kw(one, np.full_like(CHARGES, start_c), CHARGES))
        ),
        down=down,
        down_full=descent(car, full, driver, **slope),
        full_start=full_start(trace, car, conditions, driver),
        to_fill_m=descent_to_fill_m(car, kept, driver, settings.hill_pct, settings.hill_kmh),
        engine_drag_kw=car.engine_drag_kw if hybrid else 0.0,
        fuel=fuel_saved(scenario, result) if hybrid else None,
    )


def given_back(scenario: Scenario) -> pd.DataFrame:
    """The downhill share of the uphill energy [1] by `grade_pct` and `speed_kmh`; NaN where the car cannot climb."""
    shares = shares_of_slopes(car_of(scenario), scenario.conditions, scenario.driver, SLOPES_PCT, SLOPE_SPEEDS_KMH)
    grades, speeds = np.meshgrid(SLOPES_PCT, SLOPE_SPEEDS_KMH, indexing="ij")
    return pd.DataFrame({"grade_pct": grades.ravel(), "speed_kmh": speeds.ravel(), "share": shares.ravel()})


# emergency stop


@dataclass(frozen=True, eq=False)
class HardStop:
    """An emergency stop on the slipperiest road of the drive, and on every other.

    `stops` are at the low, mid and high end of the road's band. `by_surface` has a row a `surface`: `thinking_m` and,
    with it, stopping distances `low_m`, `mid_m`, `high_m`, named by the road's grip: low grip is the longest. `motor_g`
    is the motor's part [g], `motor_only` a stop on the motor alone on a dry road, `standing` what holds the car on the
    slope of the settings' hill. `brakes` is what friction brakes do on the drive; `days_between_firm_uses` counts all
    days of a year, None where they are never used firmly.
    """

    stops: dict[str, Stop]
    by_surface: pd.DataFrame
    motor_g: dict[str, float]
    motor_only: MotorOnlyStop
    standing: dict[str, Any]
    brakes: BrakeUse
    days_between_firm_uses: float | None


DAYS_A_YEAR = 365.25


def stops_on(car: Car, conditions: Conditions, settings: LimitSettings) -> dict[str, Stop]:
    """The stop of the settings at the low, mid and high end of the road's band."""
    return {
        name: emergency_stop(car, conditions, settings.stop_kmh, level=level, reaction_s=settings.reaction_s)
        for name, level in LEVELS.items()
    }


def stops_there(scenario: Scenario, settings: LimitSettings) -> dict[str, Stop]:
    """The stop of the settings on the drive's slipperiest road."""
    return stops_on(car_of(scenario), slipperiest(scenario), settings)


def hard_stop(scenario: Scenario, settings: LimitSettings, result: Result) -> HardStop:
    """An emergency stop from the speed of the settings; `result` is the scenario's drive."""
    car, conditions = car_of(scenario), slipperiest(scenario)

    rows = []
    for surface in SURFACES:
        each = stops_on(car, replace(conditions, surface=surface), settings)
        distances = {f"{name}_m": stop.distance_m for name, stop in each.items()}
        rows.append({"surface": surface, "thinking_m": each["mid"].thinking_m, **distances})
    brakes = brake_use(result)
    driven_days = sum(getattr(scenario.year, f"{season}_days") for season in SEASONS)
    return HardStop(
        stops=stops_there(scenario, settings),
        by_surface=pd.DataFrame(rows),
        motor_g=motor_part_g(replace(scenario, conditions=conditions), settings.stop_kmh),
        motor_only=motor_only_stop(car, replace(conditions, surface="dry"), settings.stop_kmh),
        standing=standing_on_slope(car, conditions, -settings.hill_pct / 100),
        brakes=brakes,
        days_between_firm_uses=brakes.days_between_firm_uses(driven_days / DAYS_A_YEAR),
    )
