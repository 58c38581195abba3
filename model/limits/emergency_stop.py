"""An emergency stop on a given road, and standing still.

The friction brakes do it: whether the motor helps while ABS works differs from car to car, so its part is given as the
most it could be. The brakes take a moment to build up; then grip counts in full on all four wheels. Air drag and a
trailer's own brakes are left out.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TypedDict

import numpy as np

from model.describe.car import Car
from model.describe.parameters import assumed_figures, car_from, car_of
from model.describe.scenario import Conditions, Driver, Scenario
from model.describe.trace import Array, Numbers
from model.describe.units import GRAVITY_MPS2, J_PER_WH, KMH_PER_MPS
from model.kernel.moments import feet_up
from model.limits.grip_margin import LEVELS, available_friction, grip_levels
from model.limits.stopping import SPEED_STEPS, braking_power_w, speeds_to_rest, thinking_distance_m, to_rest
from model.physics.tyre_grip import road_friction

REACTION_S = 1.0
"""From seeing a reason to brake to the foot on the pedal, unless asked otherwise. Common practice, no source."""


@dataclass(frozen=True)
class BuildUp:
    """The moment in which the brakes build up: its length [s], road covered [m], and the speed left after it [m/s]."""

    time_s: float
    distance_m: float
    end_mps: float


def build_up(from_mps: float, full_mps2: float, time_s: float) -> BuildUp:
    """Slowing that rises evenly to `full_mps2` [m/s²] within `time_s` [s]; shorter where the car is at rest before."""
    if time_s <= 0:
        return BuildUp(0.0, 0.0, from_mps)
    rise = full_mps2 / time_s
    end_mps = from_mps - rise * time_s**2 / 2
    if end_mps < 0:
        time_s = np.sqrt(2 * rise * from_mps) / rise
        end_mps = 0.0
    distance_m = from_mps * time_s - rise * time_s**3 / 6
    return BuildUp(float(time_s), float(distance_m), float(end_mps))


def brakes_hold_mps2(conditions: Conditions, level: float, speed: Numbers, on_braked_wheels: float = 1.0) -> Array:
    """Slowing [m/s²] that a flat road lets four braked wheels reach; `level` within its band.

    `on_braked_wheels` is the share of all mass that rests on them [1]: a trailer's own brakes are left out.
    """
    return GRAVITY_MPS2 * (road_friction(conditions, speed, level) * on_braked_wheels)


def motor_slowing_n(car: Car, conditions: Conditions, speed: Array, slowing: Numbers) -> Array:
    """The most the motor can take at the wheels [N] at each speed [m/s] while the car slows by `slowing` [m/s²].

    The battery is as at the start of the drive. Fading is a share of what is asked: here of what the motor could do.
    """
    up = feet_up(speed, car, conditions, Driver(), strength_mps2=slowing)
    most: Array = up["fade"] * np.minimum(up["most_n"], up["battery_n"])
    return most


@dataclass(frozen=True)
class Stop:
    """One stop on friction brakes at the limit of the road's grip, for one place within the road's band.

    Distances [m], the brakes' build-up within the braking distance; time [s] from the moment of seeing; force [N] and
    power [W] at the wheels as braking begins, were the brakes built up at once; the motor's part at the most: force [N]
    then, and energy over the whole stop [J] of all that is braked [J].
    """

    thinking_m: float
    braking_m: float
    time_s: float
    mean_slowing_mps2: float
    force_n: float
    power_w: float
    braked_j: float
    motor_force_n: float
    motor_j: float

    @property
    def distance_m(self) -> float:
        """Thinking and braking distance [m]."""
        return self.thinking_m + self.braking_m

    @property
    def motor_share(self) -> float:
        """The motor's part of the energy, at most [1]."""
        return self.motor_j / self.braked_j


def emergency_stop(
    car: Car,
    conditions: Conditions,
    from_kmh: float,
    *,
    level: float = 0.0,
    reaction_s: float = REACTION_S,
) -> Stop:
    """Stop from `from_kmh` [km/h] as hard as a flat road allows; `level` −1 to 1 within the band of its grip."""
    start = from_kmh / KMH_PER_MPS
    car_kg = car.mass_kg + conditions.payload_kg
    mass = car_kg + conditions.trailer_kg
    full = float(brakes_hold_mps2(conditions, level, start, car_kg / mass))
    begin = build_up(start, full, car.brake_build_up_s)
    at = speeds_to_rest(begin.end_mps)
    slowing = brakes_hold_mps2(conditions, level, at, car_kg / mass)
    braking_m, time_s = to_rest(begin.end_mps, slowing, at)
    braking_m, time_s = begin.distance_m + braking_m, begin.time_s + time_s
    force = mass * slowing
    by_motor = np.minimum(motor_slowing_n(car, conditions, at, force / car_kg), force)
    step_m = at * begin.end_mps / SPEED_STEPS / slowing
    by_motor_first = motor_slowing_n(car, conditions, np.array([start]), mass * full / car_kg)
    built_up_j = mass * (start**2 - begin.end_mps**2) / 2
    return Stop(
        thinking_m=thinking_distance_m(start, reaction_s),
        braking_m=braking_m,
        time_s=reaction_s + time_s,
        mean_slowing_mps2=start**2 / (2 * braking_m),
        force_n=mass * full,
        power_w=braking_power_w(mass, full, start),
        braked_j=built_up_j + float((force * step_m).sum()),
        motor_force_n=min(float(by_motor_first[0]), mass * full),
        motor_j=min(float(by_motor_first[0]) * begin.distance_m, built_up_j) + float((by_motor * step_m).sum()),
    )


def motor_part_g(scenario: Scenario, from_kmh: float) -> dict[str, float]:
    """The motors' part of an emergency stop [g] as braking begins, over the assumed slowing limit and motor power."""
    figures, stated = assumed_figures(scenario.car_class), dict(scenario.stated)
    part = {}
    for name in LEVELS:
        ends = {
            key: getattr(figures[key], name) for key in ("regen_cap_mps2", "regen_peak_kw") if key in figures
        }
        car = car_from(scenario.car_class, ends | stated)
        stop = emergency_stop(car, scenario.conditions, from_kmh)
        mass = car.mass_kg + scenario.conditions.payload_kg + scenario.conditions.trailer_kg
        part[name] = stop.motor_force_n / mass / GRAVITY_MPS2
    return part


def emergency_answers(scenario: Scenario, from_kmh: float) -> dict[str, object]:
    """An emergency stop as the command line answers it, every key ending in its unit.

    On friction brakes alone, reaction included, in the middle of the road's band of grip; under `band` at its low, mid
    and high end: low grip is the longest distance. The battery meanwhile feeds the accessories. `motor_at_most` is what
    the motor could take, which few cars count on: as energy at the wheels, as share of all braking energy, and as
    slowing when braking begins, over the assumed slowing limit and motor power.
    """
    car = car_of(scenario)
    stops = {
        name: emergency_stop(car, scenario.conditions, from_kmh, level=level)
        for name, level in grip_levels(scenario.conditions).items()
    }

    def banded(figure: str, per: float = 1.0) -> dict[str, float]:
        return {name: float(getattr(stop, figure)) / per for name, stop in stops.items()}

    band = {
        "distance_m": banded("distance_m"),
        "braking_distance_m": banded("braking_m"),
        "time_s": banded("time_s"),
        "mean_slowing_g": banded("mean_slowing_mps2", GRAVITY_MPS2),
        "force_kn": banded("force_n", 1000),
        "power_kw": banded("power_w", 1000),
    }
    return {
        "distance_m": band["distance_m"]["mid"],
        "time_s": band["time_s"]["mid"],
        "battery_wh": car.accessory_w * band["time_s"]["mid"] / J_PER_WH,
        "surface": scenario.conditions.surface,
        "reaction_s": REACTION_S,
        "thinking_distance_m": stops["mid"].thinking_m,
        "band": band,
        "braked_wh": stops["mid"].braked_j / J_PER_WH,
        "motor_at_most": {
            "wheel_wh": stops["mid"].motor_j / J_PER_WH,
            "share": stops["mid"].motor_share,
            "slowing_g": motor_part_g(scenario, from_kmh),
        },
    }


class Standing(TypedDict):
    """What holds a standing car, by the keys of answers: a figure each at the road's low, mid and high grip."""

    force_n: float
    demand_friction: float
    available_friction: dict[str, float]


def standing_on_slope(car: Car, conditions: Conditions, grade: float) -> Standing:
    """What holds a standing car on a slope [1]: force [N], and grip asked of four braked wheels against what there is.

    The friction brakes hold it, with a trailer too. A motor does not hold a parked car.
    """
    car_kg = car.mass_kg + conditions.payload_kg
    mass = car_kg + conditions.trailer_kg
    friction = {name: float(value) for name, value in available_friction(conditions).items()}
    return {
        "force_n": float(mass * GRAVITY_MPS2 * abs(grade) / np.sqrt(1 + grade**2)),
        "demand_friction": abs(grade) * (mass / car_kg),
        "available_friction": friction,
    }
