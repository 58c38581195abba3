"""From described legs and habits to a speed trace.

A leg is cut into stretches, each of which ends where the car has to be slow: at a stop, at the bottom of a slow-down,
or where the next leg begins. On a stretch the car pulls away, keeps its speed, slows down, and perhaps stands. Where
there is no room to reach the typical speed it peaks lower. Evenly spread quantiles stand in place of random draws, so
the same description always gives the same drive.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, fields, replace
from functools import lru_cache
from itertools import pairwise
from typing import Any

import numpy as np
from numpy.typing import NDArray

from model.describe.fields import InputError
from model.describe.figures import Quantity
from model.describe.scenario import LEG_FIELDS, SURFACES, Driver, Leg, check_legs
from model.describe.trace import Array, Numbers, Trace
from model.describe.units import KMH_PER_MPS
from model.kernel.room import largest_that_fit
from model.traces.habits import (
    HABITS,
    LiftedSlowDown,
    Pulse,
    SpeedChange,
    lifted,
    pull_away,
    pulls_away,
    slow_down,
    slows_down,
)

SWING_PERIOD_S = 30.0
"""Time from one swing of the speed to the next [s]. Common practice, no source."""
STAND_S, STAND_SPREAD_S = 15.0, 10.0
"""Mean time at rest, and how far it varies either way [s]. Common practice, no source."""
SPACING_SPREAD = 0.6
"""How far the room between two events varies around its mean [1]. Common practice, no source."""
DEPTH_SPREAD = 0.3
"""How far slow-downs vary in depth: share of the smaller of the speed left and the speed lost [1]. No source."""
ROLLING_MPS = 3.0 / KMH_PER_MPS
"""A slow-down keeps at least this speed [m/s], else it would be a stop."""
RISE_MPS = 5.0 / KMH_PER_MPS
"""Between two events the car gains at least this much speed [m/s]."""
CREEP_MPS = 10.0 / KMH_PER_MPS
"""Two stops have room between them when the car reaches this speed [m/s]."""
CREST_M = 60.0
"""Length over which a hill begins and ends, where there is room [m]."""
SHORTEST_HILL_M = 1e-6
"""What is shorter counts as flat [m]."""

SlowingOnLiftOff = Callable[[Array, Array], Array]
"""Total slowing with the foot up [m/s²] at speeds [m/s] and lift-off strengths [m/s²]."""

# steps of the golden ratio and of two square roots: each fills the unit interval evenly, in an order unlike the others
SPACING_ORDER, DEPTH_ORDER, STAND_ORDER = 0.61803398875, 0.41421356237, 0.73205080757


@lru_cache(maxsize=200)
def quantiles(count: int, order: float) -> Array:
    """Midpoints of `count` equal parts of the unit interval [1], well mixed; their mean is exactly one half."""
    found: Array = (np.argsort(np.argsort(np.arange(1, count + 1) * order % 1.0)) + 0.5) / count
    found.flags.writeable = False
    return found


def _varied(mean: float, spread: float, count: int, order: float) -> Array:
    return mean + spread * (2 * quantiles(count, order) - 1)


@dataclass(frozen=True, eq=False)
class Stretches:
    """Stretches: room [m], highest and last speed [m/s], whether they end in an event, time at rest there [s].

    `lift_off_mps2` is the lift-off strength chosen for each [m/s²].
    """

    room_m: Array
    top_mps: Array
    end_mps: Array
    event: Array
    stand_s: Array
    lift_off_mps2: Array


def _stretches(leg: Leg, number: int, driver: Driver, arrives: bool, foot_up: SlowingOnLiftOff | None) -> Stretches:
    """Cut one leg; `arrives` says that the car comes to rest at its end even if the leg has no stops."""
    planned, bottom, at_bottom = _planned(leg, number, _feet_of(driver), arrives)
    strength = np.full(len(planned.room_m), 0.0 if driver.slowing_on_request else strength_on(leg, driver))
    over_slowing: Any = HABITS["over_slowing_share"][driver.steady_foot]
    if foot_up is not None and over_slowing and len(bottom):
        # a car that hardly slows by itself cannot slow too much by itself
        hardest = HABITS["peak_slowing_mps2"][driver.looks_ahead]
        over_slowing = over_slowing * np.clip(foot_up(bottom, strength[: len(bottom)]) / hardest, 0.0, 1.0)
    end = planned.end_mps.copy()
    end[at_bottom] = np.maximum(bottom * (1 - over_slowing), rolling(leg.speed_kmh / KMH_PER_MPS))
    return replace(planned, end_mps=end, lift_off_mps2=strength)


def _feet_of(driver: Driver) -> Driver:
    """The driver without what a plan of a leg does not depend on, so that another lift-off strength finds it made."""
    return Driver(looks_ahead=driver.looks_ahead, pull_away=driver.pull_away)


@lru_cache(maxsize=300)
def _planned(leg: Leg, number: int, feet: Driver, arrives: bool) -> tuple[Stretches, Array, NDArray[np.bool_]]:
    """A leg's stretches before a foot slows too much, speeds at the bottoms of slow-downs [m/s], where those are."""
    through = leg.stops == 0
    events = leg.stops + leg.slow_downs
    count = events + through
    length, top = leg.distance_km * 1000, leg.speed_kmh / KMH_PER_MPS
    reached = min(CREEP_MPS, top)
    creep = float(pull_away(0.0, reached, feet).distance_m + slow_down(reached, 0.0, feet).distance_m)
    if count * creep > length:
        raise InputError(
            "stops-do-not-fit", leg=number, stops=leg.stops, downs=leg.slow_downs,
            stops_field=LEG_FIELDS["stops"], downs_field=LEG_FIELDS["slow_downs"],
            length=Quantity(leg.distance_km, "km", 3, trimmed=True), most=int(length / creep) - through,
        )  # fmt: skip
    room = creep + (length - count * creep) * _varied(1.0, SPACING_SPREAD, count, SPACING_ORDER) / count

    at_rest = np.zeros(count, dtype=bool)
    if leg.stops:
        at_rest[-(-np.arange(1, leg.stops + 1) * events // leg.stops) - 1] = True
    at_rest[-1] |= arrives
    event = at_rest.copy()
    event[:events] = True

    slow_to = leg.slow_to_kmh / KMH_PER_MPS
    depth = DEPTH_SPREAD * min(slow_to, max(top - slow_to, 0.0))
    bottom = _varied(slow_to, depth, leg.slow_downs, DEPTH_ORDER) if leg.slow_downs else np.empty(0)
    end = np.full(count, top)
    end[at_rest] = 0.0
    stand = np.zeros(count)
    rests = int(at_rest.sum())
    if rests:
        stand[at_rest] = _varied(STAND_S, STAND_SPREAD_S, rests, STAND_ORDER)
    return Stretches(room, np.full(count, top), end, event, stand, np.zeros(count)), bottom, event & ~at_rest


def rolling(top_mps: Numbers) -> Array:
    """The least speed at the bottom of a slow-down [m/s] from a typical speed [m/s], which may be a queue's."""
    return np.minimum(ROLLING_MPS, np.asarray(top_mps) / 2)


def strength_on(leg: Leg, driver: Driver) -> float:
    """Lift-off strength on a leg [m/s²]: its own where one was chosen."""
    return driver.lift_off_mps2 if leg.lift_off_mps2 is None else leg.lift_off_mps2


def _fitting(plan: Stretches, speed: Array, driver: Driver, low: Array, at_peak: bool) -> Array:
    """As `largest_that_fit`, with the speeds at the ends of the stretches [m/s]."""
    found = np.empty_like(plan.room_m)
    rise = np.concatenate([[True], plan.event]) * RISE_MPS
    habits = pulls_away(driver), slows_down(driver)
    largest_that_fit(speed[:-1], speed[1:], rise, plan.top_mps, plan.room_m, low, at_peak, *habits, found)
    return found


def _speeds_between(plan: Stretches, driver: Driver) -> Array:
    """Speeds at the ends of the stretches, the start included [m/s]; lowered where there is no room for them."""
    speed = np.concatenate([[0.0], np.minimum(plan.end_mps, np.append(plan.top_mps[1:], np.inf))])
    while True:
        limit = _fitting(plan, speed, driver, rolling(plan.top_mps), at_peak=False)
        lowered = np.minimum(speed, np.minimum(np.append(limit, np.inf), np.append(np.inf, limit)))
        if np.array_equal(lowered, speed):
            return speed
        speed = lowered


@dataclass(frozen=True, eq=False)
class Motion:
    """What the car does on each stretch: pull away, keep the speed for a time [s], slow down, stand for a time [s]."""

    up: SpeedChange
    kept_s: Array
    down: SpeedChange | LiftedSlowDown
    stand_s: Array

    @property
    def moving_s(self) -> Array:
        """Time in motion on each stretch [s]."""
        return self.up.duration_s + self.kept_s + self.down.duration_s

    @property
    def end_s(self) -> Array:
        """When each stretch ends [s]."""
        return np.cumsum(self.moving_s + self.stand_s)

    def speed_mps(self, time_s: Array, swing_share: float) -> Array:
        """Speed [m/s] at given times [s]."""
        start_s = np.append(0.0, self.end_s[:-1])
        at = np.searchsorted(start_s, time_s, side="right") - 1
        after = time_s - start_s[at]
        kept = np.clip((after - self.up.duration_s[at]) / np.maximum(self.kept_s[at], 1e-9), 0.0, 1.0)
        # whole periods that swell and fade, so that swings change neither distance nor smoothness
        swing = np.sin(np.pi * kept) * np.sin(2 * np.pi * kept * (self.kept_s // SWING_PERIOD_S)[at])
        gained = self.up.gained_mps(after, at) + swing_share * self.up.to_mps[at] * swing
        lost = self.down.gained_mps(after - (self.up.duration_s + self.kept_s)[at], at)
        speed = np.maximum(self.up.from_mps[at] + gained + lost, 0.0)
        # at rest exactly, whatever the sum was rounded to
        return np.where(after >= self.moving_s[at] - 1e-9, self.down.to_mps[at], speed)


def _motion(plan: Stretches, driver: Driver, foot_up: SlowingOnLiftOff | None) -> Motion:
    """Reach the highest speed on each stretch from which there is room to slow down."""
    speed = _speeds_between(plan, driver)
    first, last = speed[:-1], speed[1:]

    peak = _fitting(plan, speed, driver, np.maximum(first, last), at_peak=True)
    up, down = pull_away(first, peak, driver), slow_down(peak, last, driver)
    as_driven = down if foot_up is None else lifted(down, lambda speed: foot_up(speed, plan.lift_off_mps2))
    return Motion(up, np.maximum(plan.room_m - (up.distance_m + down.distance_m), 0.0) / peak, as_driven, plan.stand_s)


def _fit_length(speed_mps: Array, step_s: Array, length_m: float) -> Array:
    """Make one leg as long as described, in place, and return the distance along it [m].

    Straight lines between the points miss a few centimetres at each change of speed: they are given back in proportion
    to speed, within the leg, so that speeds at rest and at its ends stay.
    """
    inside = np.sum(speed_mps[1:-1] * (step_s[:-1] + step_s[1:]) / 2)
    at_ends = (speed_mps[0] * step_s[0] + speed_mps[-1] * step_s[-1]) / 2
    speed_mps[1:-1] *= (length_m - at_ends) / inside
    along_m = np.append(0.0, np.cumsum((speed_mps[:-1] + speed_mps[1:]) / 2 * step_s))
    return along_m * (length_m / along_m[-1])


def _height(leg: Leg, along_m: Array) -> Array:
    """Height above the start of the leg [m]: its climb, then its descent, flat road before, between and after."""
    steepness = leg.grade_pct / 100
    lengths = leg.climb_m / steepness, leg.descent_m / steepness
    spare = along_m[-1] - sum(lengths)
    # no step may hold both climb and descent, or height would be lost between two points of the trace
    least_between = np.diff(along_m).max() if all(lengths) else 0.0
    between = max(spare / 3, least_between)
    before = max((spare - between) / 2, 0.0)
    squeeze = (along_m[-1] - between - 2 * before) / (sum(lengths) or 1.0)
    height = np.zeros_like(along_m)
    for rise, length, start in (
        (leg.climb_m, lengths[0], before),
        (-leg.descent_m, lengths[1], before + lengths[0] * squeeze + between),
    ):
        if length > SHORTEST_HILL_M:
            length *= squeeze
            crest = min(CREST_M, 2 * before, between - least_between, length)
            share = crest / (length + crest)
            hill = Pulse(share, 1 - 2 * share, share)
            height += rise * hill.done((along_m - start + crest / 2) / (length + crest))
    return height


def build_drive(
    legs: tuple[Leg, ...],
    driver: Driver,
    *,
    return_trip: bool = False,
    foot_up: SlowingOnLiftOff | None = None,
) -> Trace:
    """The described drive as a speed trace.

    Parameters
    ----------
    legs : tuple of Leg
        In driving order.
    driver : Driver
        Habits; see `HABITS` for the numbers behind the words.
    return_trip : bool
        Whether the legs are then driven back, in reverse order, with climb and descent swapped.
    foot_up : callable, optional
        How strongly the car slows with the foot up. Without it slow-downs are those of the habit alone, the same
        whatever the lift-off strength; with it they are as the car's lift-off makes them
        (`model.traces.habits.lifted`), over the same road, and a restless foot over-slows in proportion to the
        lift-off.

    Returns
    -------
    Trace
        Steps of 1 s, but for the last of each leg, which lasts 0.5 to 1.5 s so that the leg ends where it should (legs
        of under 4 s: four equal steps). Heights count from the start. `leg` counts the described legs from 0: on the
        way back it runs backwards.

    Raises
    ------
    InputError
        Where the legs contradict themselves, or their stops and slow-downs do not fit on them.

    Notes
    -----
    Distance, climb and descent of each leg are as described. A leg that has stops ends with one of them; one without is
    driven through into the next. So the car comes to rest as often as described, with one exception: the drive always
    ends at rest, and so does its way out before the way back. Where the leg driven last says 0 stops, which people say
    when nothing holds them up on the way, that arrival is one more.

    Mean depth of the slow-downs is as described with a steady or usual foot, where they have room. Slope stays within
    `grade_pct` (height over length of road), unless climb and descent together leave less than one step of flat road
    between them; they are then squeezed to leave it.
    """
    check_legs(legs)
    order = list(range(len(legs)))
    driven = list(legs)
    if return_trip:
        order += order[::-1]
        driven += [replace(leg, climb_m=leg.descent_m, descent_m=leg.climb_m) for leg in legs[::-1]]
    arrivals = (len(legs) - 1, len(driven) - 1)
    cut = [_stretches(leg, order[at] + 1, driver, at in arrivals, foot_up) for at, leg in enumerate(driven)]
    plan = Stretches(*(np.concatenate([getattr(part, item.name) for part in cut]) for item in fields(Stretches)))
    plan.stand_s[-1] = 0.0

    motion = _motion(plan, driver, foot_up)

    bounds = np.append(0.0, motion.end_s[np.cumsum([len(part.room_m) for part in cut]) - 1])
    steps = [max(4, round(end - begin)) for begin, end in pairwise(bounds)]
    points = [
        begin + np.arange(count) * min(1.0, (end - begin) / 4)
        for count, (begin, end) in zip(steps, pairwise(bounds), strict=True)
    ]
    time_s = np.append(np.concatenate(points), bounds[-1])
    speed_mps = motion.speed_mps(time_s, HABITS["swing_share"][driver.steady_foot])

    elevation_m = np.zeros(len(time_s))
    for leg, (begin, end) in zip(driven, pairwise(np.cumsum([0, *steps])), strict=True):
        here = slice(begin, end + 1)
        along_m = _fit_length(speed_mps[here], np.diff(time_s[here]), leg.distance_km * 1000)
        elevation_m[here] = elevation_m[begin] + _height(leg, along_m)
    chosen = None
    if any(leg.lift_off_mps2 is not None for leg in legs):
        chosen = np.repeat([strength_on(leg, driver) for leg in driven], steps)
    return Trace(
        time_s=time_s,
        speed_mps=speed_mps,
        elevation_m=elevation_m,
        surface=np.repeat([SURFACES.index(leg.surface) for leg in driven], steps),
        leg=np.repeat(order, steps),
        heading=np.repeat(np.where(np.arange(len(order)) < len(legs), 1, -1), steps),
        lift_off_mps2=chosen,
    )
