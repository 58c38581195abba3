"""A drive over the whole axis of lift-off strengths: at the same speeds, and as you would drive it.

Same speeds: the habit's own speeds, whatever the strength; it shows what the car changes. As you would drive it: the
foot comes up where the habit says, and the slow-down is as the car's lift-off makes it; it shows what the foot changes.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from concurrent.futures import Future
from dataclasses import dataclass, fields, replace
from typing import Any

import numpy as np
import pandas as pd

from model.describe.car import Car
from model.describe.parameters import car_of
from model.describe.scenario import Scenario
from model.describe.trace import Array, Trace
from model.describe.units import J_PER_KWH
from model.kernel.by_leg import by_leg
from model.kernel.follow import follow
from model.lift_off.slowing import foot_up_mps2, lamp_zone_of, word_of
from model.physics.records import car_records
from model.sampling.drives import trace_of
from model.sampling.uncertainty import PROCESSORS, SIDE_BY_SIDE

STRENGTHS_MPS2 = np.round(np.arange(0.0, 2.51, 0.1), 1)
"""The whole axis [m/s²]."""
PEDALS = ("blended", "friction")
PRESSED_MPS2 = 0.05
"""Slowing by friction from which the brake pedal counts as pressed, and by the car from which it slows [m/s²]."""


@dataclass(frozen=True, eq=False)
class Curve:
    """What a drive takes over the axis of strengths; arrays of shape (legs, strengths).

    `net_kwh` is what the battery gives less what it gets, `friction_kwh` what the friction brakes turn to heat,
    `presses` how often the brake pedal is pressed.
    """

    net_kwh: Array
    friction_kwh: Array
    presses: Array


@dataclass(frozen=True, eq=False)
class Ride:
    """How a drive feels over the axis of strengths; arrays of shape (strengths,).

    Mean and 95th percentile of slowing while the car slows [m/s²], changes between pulling and slowing, and time [s].
    """

    mean_mps2: Array
    high_mps2: Array
    reversals: Array
    duration_s: Array


@dataclass(frozen=True, eq=False)
class Curves:
    """A drive over the whole axis of lift-off strengths.

    Both by kind of brake pedal: `same_speeds` is what the car changes, `as_driven` what the foot changes besides.
    """

    scenario: Scenario
    car: Car
    same_speeds: dict[str, Curve]
    as_driven: dict[str, Curve]
    ride: Ride


def as_you_would_drive(scenario: Scenario, car: Car) -> Trace:
    """The drive with slow-downs as the car's lift-off makes them."""

    def foot_up(speed: Array, strength: Array) -> Array:
        return foot_up_mps2(speed, car, scenario.conditions, scenario.driver, strength_mps2=strength)

    return follow(trace_of(scenario, foot_up), car, scenario.conditions)[0]


def curves_of(scenario: Scenario) -> Curves:
    """Drive a scenario over the whole axis; strengths chosen for single legs are left out."""
    scenario = replace(scenario, legs=tuple(replace(leg, lift_off_mps2=None) for leg in scenario.legs))
    car = car_of(scenario)

    def driven(trace: Trace, strengths: Array) -> Future[dict[str, Curve]]:
        # compiled code drives one trace while Python builds the next
        return SIDE_BY_SIDE.submit(_both_pedals, trace, car, scenario, strengths)

    habit = follow(trace_of(scenario), car, scenario.conditions)[0]
    same = [driven(habit, strengths) for strengths in np.array_split(STRENGTHS_MPS2, PROCESSORS)]
    as_driven, rides = [], []
    for trace, strengths in _driven_alike(scenario, car):
        as_driven.append(driven(trace, strengths))
        rides += [_ride(trace)] * len(strengths)
    return Curves(scenario, car, _joined(same), _joined(as_driven), Ride(*np.array(rides).T))


def _joined(asked: Iterable[Future[dict[str, Curve]]]) -> dict[str, Curve]:
    """The parts of an axis as one."""
    parts = [future.result() for future in asked]
    return {
        pedal: Curve(*(np.hstack([getattr(part[pedal], item.name) for part in parts]) for item in fields(Curve)))
        for pedal in PEDALS
    }


def _driven_alike(scenario: Scenario, car: Car) -> Iterator[tuple[Trace, Array]]:
    """The drive as you would drive it over the axis, with the strengths that make it the same; in order.

    From some strength on the foot comes up only so far that the place is reached, and more changes nothing.
    """

    def at(strength: float) -> Trace:
        return as_you_would_drive(scenario.with_setting("lift_off_mps2", float(strength)), car)

    strongest = at(STRENGTHS_MPS2[-1])
    for place, strength in enumerate(STRENGTHS_MPS2):
        trace = at(strength)
        if np.array_equal(trace.speed_mps, strongest.speed_mps) and np.array_equal(trace.time_s, strongest.time_s):
            yield strongest, STRENGTHS_MPS2[place:]
            return
        yield trace, STRENGTHS_MPS2[place : place + 1]


def as_set(scenario: Scenario) -> dict[str, float]:
    """The drive as you would drive it with the strengths as they are set, single legs' own included.

    Keys `net_kwh`, `friction_kwh`, `presses` of `Curve`, and those of `Ride`.
    """
    car = car_of(scenario)
    trace = as_you_would_drive(scenario, car)
    curve = _both_pedals(trace, car, scenario, np.array([scenario.driver.lift_off_mps2]))[car.brake_pedal]
    taken = {item.name: float(getattr(curve, item.name).sum()) for item in fields(Curve)}
    return taken | dict(zip((item.name for item in fields(Ride)), map(float, _ride(trace)), strict=True))


def _both_pedals(trace: Trace, car: Car, scenario: Scenario, strengths: Array) -> dict[str, Curve]:
    """One trace with either kind of brake pedal, at some lift-off strengths [m/s²].

    The pedal is pressed wherever lifting off alone would not slow the car enough, whatever its kind.
    """
    drawn = {"lift_off_mps2": np.tile(strengths, len(PEDALS)), "brake_pedal": np.repeat(PEDALS, len(strengths))}
    cars = car_records(car, scenario.conditions, scenario.driver, drawn)
    sums = by_leg(trace, cars, len(scenario.legs), PRESSED_MPS2)
    of_pedal = dict(zip(PEDALS, np.split(sums, len(PEDALS), axis=-1), strict=True))
    presses = of_pedal["friction"][2]
    return {
        pedal: Curve(net_j / J_PER_KWH, friction_j / J_PER_KWH, presses)
        for pedal, (net_j, friction_j, _) in of_pedal.items()
    }


def _ride(trace: Trace) -> tuple[float, float, int, float]:
    slowing = -trace.acceleration_mps2
    hard = slowing > PRESSED_MPS2
    weight = trace.step_s[hard]
    order = np.argsort(slowing[hard])
    passed = np.cumsum(weight[order]) / weight.sum()
    foot = np.sign(np.where(np.abs(slowing) > PRESSED_MPS2, slowing, 0.0))
    foot = foot[foot != 0]
    return (
        float(np.average(slowing[hard], weights=weight)),
        float(slowing[hard][order][np.searchsorted(passed, 0.95)]),
        int(np.count_nonzero(np.diff(foot))),
        trace.duration_s,
    )


def curve_table(curves: Curves) -> pd.DataFrame:
    """The curves of the whole drive, one row a strength, with the car's own kind of brake pedal.

    Columns `lift_off_mps2`, `word`, `lamp_zone`; `net_kwh`, `friction_kwh` and `presses` each as `same_speeds_…` and
    `as_driven_…`; as you would drive it `mean_mps2`, `high_mps2`, `reversals` and `duration_s` of `Ride`.
    """
    table: dict[str, Any] = {
        "lift_off_mps2": STRENGTHS_MPS2,
        "word": [word_of(strength) for strength in STRENGTHS_MPS2],
        "lamp_zone": [lamp_zone_of(strength) for strength in STRENGTHS_MPS2],
    }
    for kind, by_pedal in (("same_speeds", curves.same_speeds), ("as_driven", curves.as_driven)):
        curve = by_pedal[curves.car.brake_pedal]
        table |= {f"{kind}_{item.name}": getattr(curve, item.name).sum(axis=0) for item in fields(Curve)}
    return pd.DataFrame(table | {item.name: getattr(curves.ride, item.name) for item in fields(Ride)})
