"""Lift-off against grip: what the motor's slowing asks of each axle, and what the road may give.

The force asked is mass times deceleration; the road load is not taken off it, so what is asked is rather too much than
too little. A trailer's mass counts in the force and not in the weight on the car's axles; whether car and trailer stay
stable is not modelled.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TypedDict

import numpy as np

from model.describe.car import Car
from model.describe.fields import Field
from model.describe.scenario import Conditions, Driver
from model.describe.trace import Array, Numbers
from model.describe.units import GRAVITY_MPS2, KMH_PER_MPS
from model.physics.grip import LATERAL_SHARE
from model.physics.records import Records, car_record, car_records
from model.physics.tyre_grip import asked_of_axles, road_friction, strongest_within

SPEED_KMH = Field("speed_kmh", "number", "km/h", "grip-speed_kmh", 1, 250, (20, 140), default=50.0)
BEND_RADIUS_M = Field(
    "bend_radius_m", "number", "m", "grip-bend_radius_m", minimum=5, maximum=100000, usual=(15, 2000), optional=True,
)  # fmt: skip
GRADE_PCT = Field(
    "grade_pct", "number", "%", "grip-grade_pct", minimum=-35, maximum=35, usual=(-12, 12), default=0.0,
)  # fmt: skip
BENDS_M = {"roundabout": 18.0, "tight bend": 40.0, "bend": 100.0, "gentle bend": 300.0}
"""Radius [m] behind a word for how sharp a bend is. Common practice, no source."""
LEVELS = {"low": -1.0, "mid": 0.0, "high": 1.0}
MODERATE_FROM = 0.5
"""Share of the least grip in the road's band from which the margin is no more than moderate [1]: a convention."""


class GripCheck(TypedDict):
    """What `grip_check` answers, by the keys of answers; where there are three, at low, mid and high grip."""

    surface: str
    tyres: str
    speed_kmh: float
    bend_radius_m: float | None
    grade_pct: float
    lift_off_mps2: float
    driven_axle: str
    across_mps2: float
    demand_friction: float
    demand_by_axle: dict[str, dict[str, float]]
    available_friction: dict[str, float]
    largest_lift_off_mps2: dict[str, float]
    largest_lift_off_with_reserve_mps2: dict[str, float]
    reserve_share: float
    axle_load_share: dict[str, float]
    axle_load_share_standing: dict[str, float]
    slowing_here_mps2: float
    slip_control_delay_s: float
    slip_when_control_acts: dict[str, float]
    four_wheel_braking_mps2: dict[str, float]
    failing_axle: str
    margin: str


@dataclass(frozen=True)
class AxleGrip:
    """Friction asked of each axle's tyres [1], along and across them, and the weight each axle carries [N]."""

    front_along: Array
    front_across: Array
    rear_along: Array
    rear_across: Array
    front_load_n: Array
    rear_load_n: Array

    @property
    def front(self) -> Array:
        """Friction that the front axle's tyres must have [1]: along and across share one ellipse."""
        return np.hypot(self.front_along, np.asarray(self.front_across) / LATERAL_SHARE)

    @property
    def rear(self) -> Array:
        """Friction that the rear axle's tyres must have [1]."""
        return np.hypot(self.rear_along, np.asarray(self.rear_across) / LATERAL_SHARE)

    @property
    def front_load_share(self) -> Array:
        """Share of the weight on the front axle while slowing [1]."""
        return self.front_load_n / (self.front_load_n + self.rear_load_n)


def grip_asked(
    car: Car, conditions: Conditions, slowing: Numbers, speed: Numbers = 0.0, radius_m: Numbers = np.inf,
    grade: Numbers = 0.0,
) -> AxleGrip:  # fmt: skip
    """Grip asked of both axles when the motor slows the car.

    Parameters
    ----------
    car, conditions
        Axle loads, driven wheels and how all-wheel slowing is shared; the load and a trailer.
    slowing : numeric
        Lift-off strength [m/s²]: the force is that times all mass, on any slope.
    speed, radius_m : numeric
        Speed [m/s] in a bend of this radius [m]; inf is straight on.
    grade : numeric
        Rise over run [1]; downhill is negative. It takes weight off both axles.
    """
    return _asked(car_records(car, conditions, Driver()), slowing, speed, radius_m, grade)


def _asked(cars: Records, slowing: Numbers, speed: Numbers, radius_m: Numbers, grade: Numbers) -> AxleGrip:
    return AxleGrip(*asked_of_axles(cars, slowing, speed, radius_m, cosine_of(grade)))


def cosine_of(grade: Numbers) -> Array:
    """Cosine [1] of a slope, rise over run [1]."""
    return 1 / np.sqrt(1 + np.asarray(grade, dtype=float) ** 2)


def demand_friction(asked: AxleGrip, driven_axle: str) -> Array:
    """Friction asked of the driven axle [1]; with all wheels driven, of the axle that is asked more."""
    return {"front": asked.front, "rear": asked.rear}.get(driven_axle, np.maximum(asked.front, asked.rear))


def largest_lift_off_mps2(
    car: Car,
    conditions: Conditions,
    friction: Numbers,
    speed: Numbers = 0.0,
    radius_m: Numbers = np.inf,
    grade: Numbers = 0.0,
    reserve_share: Numbers = 0.0,
) -> Array:
    """The strongest lift-off [m/s²] for which the driven axle has the grip; 0 where the bend alone asks for it all.

    `friction` is what the road gives [1], `reserve_share` the part of it that is to be left over [1]; the rest as in
    `grip_asked`.
    """
    usable = np.asarray(friction, dtype=float) * (1 - np.asarray(reserve_share, dtype=float))
    return strongest_within(car_record(car, conditions, Driver()), usable, speed, radius_m, cosine_of(grade))


def grip_levels(conditions: Conditions) -> dict[str, float]:
    """Places within the road's band of grip [1] that are looked at: low, mid and high, or the stated one for each."""
    return dict.fromkeys(LEVELS, conditions.grip_level) if conditions.grip_level else LEVELS


def available_friction(conditions: Conditions, speed: Numbers = 0.0) -> dict[str, Array]:
    """Friction that road and tyres may give [1] at `speed` [m/s]: low, mid and high end of the road's band."""
    return {name: road_friction(conditions, speed, level) for name, level in grip_levels(conditions).items()}


def margin_word(demand: float, least_friction: float, most_friction: float) -> str:
    """None, small, moderate or larger, by the friction asked and what the road's band gives from low to high end [1].

    None: more is asked than the high end gives, so the wheels slide wherever the road lies in its band; small: more
    than the low end; moderate: more than MODERATE_FROM of that.
    """
    if demand > most_friction:
        return "none"
    if demand > least_friction:
        return "small"
    return "moderate" if demand > MODERATE_FROM * least_friction else "larger"


def failing_axle(asked: AxleGrip) -> str:
    """The axle that is asked for more grip, and so lets go first: front, rear or both alike."""
    front, rear = float(asked.front), float(asked.rear)
    if np.isclose(front, rear, rtol=1e-3):
        return "both"
    return "front" if front > rear else "rear"


def slip_after_delay(car: Car, asked: AxleGrip, friction: float, speed: float) -> float:
    """How far the driven wheels have slowed against the road [1] when slip control takes the motor's slowing back.

    0: they roll; 1: they stand. What the road does not hold slows wheels and motor themselves, whose inertia is the
    car's rotating mass. Speed [m/s], above 0.
    """
    excess = max(float(asked.front) - friction, 0.0) * float(asked.front_load_n) * (float(asked.front_along) > 0)
    excess += max(float(asked.rear) - friction, 0.0) * float(asked.rear_load_n) * (float(asked.rear_along) > 0)
    slowing = excess / max(car.rotating_mass_share * car.mass_kg, 1e-9)
    return float(min(slowing * car.slip_control_delay_s / speed, 1.0))


def grip_check(
    car: Car,
    conditions: Conditions,
    strength_mps2: float,
    speed_kmh: float = 50.0,
    bend_radius_m: float | None = None,
    grade_pct: float = 0.0,
) -> GripCheck:
    """Lift-off against available grip as the command line answers it, every key ending in its unit.

    `largest_lift_off_mps2` uses all the grip there is, `largest_lift_off_with_reserve_mps2` leaves over the reserve
    that the car keeps. `four_wheel_braking_mps2` is what friction brakes with ABS on all wheels may reach.
    """
    speed, grade = speed_kmh / KMH_PER_MPS, grade_pct / 100
    radius = np.inf if bend_radius_m is None else bend_radius_m
    sine = grade / np.sqrt(1 + grade**2)
    asked = grip_asked(car, conditions, strength_mps2, speed, radius, grade)
    demand = float(demand_friction(asked, car.driven_axle))
    there_is = {name: float(friction) for name, friction in available_friction(conditions, speed).items()}
    where = (speed, radius, grade)
    return {
        "surface": conditions.surface,
        "tyres": conditions.tyres,
        "speed_kmh": speed_kmh,
        "bend_radius_m": bend_radius_m,
        "grade_pct": grade_pct,
        "lift_off_mps2": strength_mps2,
        "driven_axle": car.driven_axle,
        "across_mps2": speed**2 / radius,
        "demand_friction": demand,
        "demand_by_axle": {
            name: {way: float(getattr(asked, f"{name}_{way}")) for way in ("along", "across")}
            | {"in_all": float(getattr(asked, name))}
            for name in ("front", "rear")
        },
        "available_friction": there_is,
        "largest_lift_off_mps2": {
            name: float(largest_lift_off_mps2(car, conditions, friction, *where)) for name, friction in there_is.items()
        },
        "largest_lift_off_with_reserve_mps2": {
            name: float(largest_lift_off_mps2(car, conditions, friction, *where, reserve_share=car.grip_reserve_share))
            for name, friction in there_is.items()
        },
        "reserve_share": car.grip_reserve_share,
        "axle_load_share": {"front": float(asked.front_load_share), "rear": 1 - float(asked.front_load_share)},
        "axle_load_share_standing": {"front": car.front_load_share, "rear": 1 - car.front_load_share},
        "slowing_here_mps2": strength_mps2 + GRAVITY_MPS2 * sine,
        "slip_control_delay_s": car.slip_control_delay_s,
        "slip_when_control_acts": {
            name: slip_after_delay(car, asked, friction, speed) for name, friction in there_is.items()
        },
        "four_wheel_braking_mps2": {
            name: float(friction * GRAVITY_MPS2 * np.sqrt(1 - sine**2) + GRAVITY_MPS2 * sine)
            for name, friction in there_is.items()
        },
        "failing_axle": failing_axle(asked),
        "margin": margin_word(float(max(asked.front, asked.rear)), there_is["low"], there_is["high"]),
    }


def balance(
    car: Car, conditions: Conditions, slowing: float, speed: float, radius_m: float, front_shares: Array
) -> tuple[Array, Array]:
    """Friction asked of the front and the rear axle [1] as all-wheel slowing is shared between them in a bend.

    `front_shares` [1] are the front axle's shares of the motor slowing; the rest as in `grip_asked`.
    """
    cars = car_records(replace(car, driven_axle="all"), conditions, Driver(), {"front_regen_share": front_shares})
    asked = _asked(cars, np.full(len(cars), slowing), speed, radius_m, 0.0)
    return np.asarray(asked.front), np.asarray(asked.rear)
