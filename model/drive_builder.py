"""From described legs and habits to a speed trace.

A leg is cut into stretches, each of which ends where the car has to be slow: at a stop, at the bottom of a slow-down,
or where the next leg begins. On a stretch the car pulls away, keeps its speed, slows down, and perhaps stands. Where
there is no room to reach the typical speed it peaks lower. Evenly spread quantiles stand in place of random draws, so
the same description always gives the same drive.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Any

import numpy as np

from model.fields import InputError
from model.scenario import SURFACES, Driver, Leg, check_legs
from model.trace import Array, Trace
from model.units import KMH_PER_MPS

HABITS: dict[str, dict[str, float]] = {
    "peak_slowing_mps2": {"far": 1.0, "usual": 2.4, "late": 3.2},
    "peak_pull_away_mps2": {"gentle": 1.2, "usual": 1.8, "brisk": 2.7},
    "swing_share": {"steady": 0.0, "usual": 0.02, "restless": 0.06},
    "over_slowing_share": {"steady": 0.0, "usual": 0.0, "restless": 0.25},
}
"""The number behind each word.

`peak_slowing_mps2` (by `looks_ahead`): hardest moment of a stop [m/s²]; usual: about 0.25 g at 20 to 30 km/h, as at
stop signs (SAE 1999-01-0098); the others: common practice, no source.
`peak_pull_away_mps2` (by `pull_away`): hardest moment of pulling away from rest [m/s²]; common practice, no source.
`swing_share` (by `steady_foot`): how far speed swings up and down while it is kept [1]; common practice, no source.
`over_slowing_share` (by `steady_foot`): how far the bottom of a slow-down lies below what was needed [1]; common
practice, no source.
"""

MOST_JERK_MPS3 = 1.5
"""No speed change begins or ends more abruptly [m/s³]. Common practice, no source."""
GENTLER_FROM_KMH = 60.0
"""At this lower end of a speed change its peak is half of that from or to rest: changes between high speeds are gentler
[km/h]. Common practice, no source."""
SWING_PERIOD_S = 30.0
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

# steps of the golden ratio and of two square roots: each fills the unit interval evenly, in an order unlike the others
SPACING_ORDER, DEPTH_ORDER, STAND_ORDER = 0.61803398875, 0.41421356237, 0.73205080757


@dataclass(frozen=True)
class Pulse:
    """A trapezoid that comes on, holds and goes off; shares of its length that add up to 1."""

    on: float
    hold: float
    off: float

    @property
    def mean(self) -> float:
        """Mean over peak [1]."""
        return self.on / 2 + self.hold + self.off / 2

    @property
    def centre(self) -> float:
        """Where its centre of area lies [1]."""
        moment = self.on**2 / 3 + self.hold * (self.on + self.hold / 2) + self.off / 2 * (1 - self.off * 2 / 3)
        return moment / self.mean

    def done(self, share: Array) -> Array:
        """Part of the area passed [1] at `share` of the length [1]; 0 before it, 1 after it."""
        share = np.clip(share, 0.0, 1.0)
        on, off = max(self.on, 1e-12), max(self.off, 1e-12)
        coming = share**2 / (2 * on)
        held = share - self.on / 2
        going = self.mean - (1 - share) ** 2 / (2 * off)
        return np.where(share < self.on, coming, np.where(share < 1 - self.off, held, going)) / self.mean


SLOWING = Pulse(on=0.5, hold=0.2, off=0.3)
"""Slowing builds up late and is hardest in the last half of the speed lost. Common practice, no source."""
PULLING_AWAY = Pulse(on=0.2, hold=0.1, off=0.7)
"""Pulling away is hardest early and falls as speed rises. Common practice, no source."""


@dataclass(frozen=True, eq=False)
class SpeedChange:
    """From one speed to another [m/s], in a time [s], following a pulse of acceleration; one or many at once."""

    from_mps: Any
    to_mps: Any
    duration_s: Any
    pulse: Pulse

    @property
    def distance_m(self) -> Any:
        """Road it takes [m]."""
        return self.duration_s * (self.from_mps + (self.to_mps - self.from_mps) * (1 - self.pulse.centre))

    def gained_mps(self, after_s: Any) -> Any:
        """Speed gained (lost: negative) [m/s] at a time after its start [s]."""
        share = np.asarray(after_s) / np.maximum(self.duration_s, 1e-9)
        return (self.to_mps - self.from_mps) * self.pulse.done(share)


def _speed_change(from_mps: Any, to_mps: Any, peak_mps2: float, pulse: Pulse) -> SpeedChange:
    change = np.abs(to_mps - from_mps)
    lower_kmh = np.minimum(from_mps, to_mps) * KMH_PER_MPS
    peak = peak_mps2 * GENTLER_FROM_KMH / (GENTLER_FROM_KMH + lower_kmh)
    by_peak = change / (pulse.mean * peak)
    by_jerk = np.sqrt(change / (pulse.mean * min(pulse.on, pulse.off) * MOST_JERK_MPS3))
    return SpeedChange(from_mps, to_mps, np.maximum(by_peak, by_jerk), pulse)


def slow_down(from_mps: Any, to_mps: Any, driver: Driver) -> SpeedChange:
    """How this driver slows down: the farther ahead they look, the longer and the gentler.

    Parameters
    ----------
    from_mps, to_mps : numeric
        Speeds [m/s], the second not above the first.
    driver : Driver
        Whose `looks_ahead` fixes the peak.

    Notes
    -----
    The foot lifts `distance_m` before the place where the lower speed is needed.
    """
    return _speed_change(from_mps, to_mps, HABITS["peak_slowing_mps2"][driver.looks_ahead], SLOWING)


def pull_away(from_mps: Any, to_mps: Any, driver: Driver) -> SpeedChange:
    """How this driver gains speed: from `from_mps` to `to_mps` [m/s], not below it, as `pull_away` says."""
    return _speed_change(from_mps, to_mps, HABITS["peak_pull_away_mps2"][driver.pull_away], PULLING_AWAY)


def quantiles(count: int, order: float) -> Array:
    """Midpoints of `count` equal parts of the unit interval [1], well mixed; their mean is exactly one half."""
    return (np.argsort(np.argsort(np.arange(1, count + 1) * order % 1.0)) + 0.5) / count


def _varied(mean: float, spread: float, count: int, order: float) -> Array:
    return mean + spread * (2 * quantiles(count, order) - 1)


@dataclass(frozen=True, eq=False)
class Stretches:
    """Stretches of the drive: room [m], highest and last speed [m/s], whether they end in an event, time at rest [s]."""

    room_m: Array
    top_mps: Array
    end_mps: Array
    event: Array
    stand_s: Array


def _stretches(leg: Leg, number: int, driver: Driver, arrives: bool) -> Stretches:
    """Cut one leg; `arrives` says that the car comes to rest at its end even if the leg has no stops."""
    through = leg.stops == 0
    events = leg.stops + leg.slow_downs
    count = events + through
    length, top = leg.distance_km * 1000, leg.speed_kmh / KMH_PER_MPS
    creep = float((pull_away(0.0, CREEP_MPS, driver).distance_m + slow_down(CREEP_MPS, 0.0, driver).distance_m))
    if count * creep > length:
        raise InputError(
            f"stops and slow_downs of leg {number}: {leg.stops} stops and {leg.slow_downs} slow-downs do not fit in "
            f"{leg.distance_km:g} km; at most {int(length / creep) - through} of both together fit there."
        )
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
    bottom = np.maximum(bottom * (1 - HABITS["over_slowing_share"][driver.steady_foot]), ROLLING_MPS)
    end = np.full(count, top)
    end[event & ~at_rest] = bottom
    end[at_rest] = 0.0
    stand = np.zeros(count)
    rests = int(at_rest.sum())
    if rests:
        stand[at_rest] = _varied(STAND_S, STAND_SPREAD_S, rests, STAND_ORDER)
    return Stretches(room, np.full(count, top), end, event, stand)


def _largest_that_fits(needs: Callable[[Array], Array], room: Array, low: Array, high: Array) -> Array:
    """The largest speeds between `low` (which fits) and `high` whose need of road [m] is within `room` [m]."""
    fits = needs(high) <= room
    if fits.all():
        return high
    low = np.where(fits, high, low)
    for _ in range(40):
        middle = (low + high) / 2
        fits = needs(middle) <= room
        low, high = np.where(fits, middle, low), np.where(fits, high, middle)
    return low


def _speeds_between(plan: Stretches, driver: Driver) -> Array:
    """Speeds at the ends of the stretches, the start included [m/s]; lowered where there is no room for them."""
    speed = np.concatenate([[0.0], np.minimum(plan.end_mps, np.append(plan.top_mps[1:], np.inf))])
    rise = np.concatenate([[True], plan.event]) * RISE_MPS

    def needs(limit: Array) -> Array:
        first, last = np.minimum(speed[:-1], limit), np.minimum(speed[1:], limit)
        peak = np.minimum(np.maximum(first + rise[:-1], last + rise[1:]), plan.top_mps)
        return pull_away(first, peak, driver).distance_m + slow_down(peak, last, driver).distance_m

    while True:
        limit = _largest_that_fits(needs, plan.room_m, np.full_like(plan.room_m, ROLLING_MPS), plan.top_mps)
        lowered = np.minimum(speed, np.minimum(np.append(limit, np.inf), np.append(np.inf, limit)))
        if np.array_equal(lowered, speed):
            return speed
        speed = lowered


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
        if length:
            length *= squeeze
            crest = min(CREST_M, 2 * before, between - least_between, length)
            share = crest / (length + crest)
            hill = Pulse(share, 1 - 2 * share, share)
            height += rise * hill.done((along_m - start + crest / 2) / (length + crest))
    return height


def build_drive(
    legs: tuple[Leg, ...], driver: Driver, *, return_trip: bool = False, start_altitude_m: float = 0.0
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
    start_altitude_m : float
        Height of the start [m].

    Returns
    -------
    Trace
        Steps of 1 s, but for the last of each leg, which lasts 0.5 to 1.5 s so that the leg ends where it should (legs
        of under 4 s: four equal steps). `leg` counts the described legs from 0: on the way back it runs backwards.

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
    cut = [_stretches(leg, order[at] + 1, driver, at in arrivals) for at, leg in enumerate(driven)]
    plan = Stretches(*(np.concatenate([getattr(part, key) for part in cut]) for key in Stretches.__annotations__))
    plan.stand_s[-1] = 0.0

    # each stretch: pull away, keep the speed, slow down, stand
    speed = _speeds_between(plan, driver)
    first, last = speed[:-1], speed[1:]
    peak = _largest_that_fits(
        lambda peak: pull_away(first, peak, driver).distance_m + slow_down(peak, last, driver).distance_m,
        plan.room_m, np.maximum(first, last), plan.top_mps,
    )  # fmt: skip
    up, down = pull_away(first, peak, driver), slow_down(peak, last, driver)
    kept_s = np.maximum(plan.room_m - up.distance_m - down.distance_m, 0.0) / peak
    end_s = np.cumsum(up.duration_s + kept_s + down.duration_s + plan.stand_s)
    start_s = np.append(0.0, end_s[:-1])

    # points in time, leg by leg
    bounds = np.append(0.0, end_s[np.cumsum([len(part.room_m) for part in cut]) - 1])
    steps = [max(4, round(length)) for length in np.diff(bounds)]
    time = [begin + np.arange(n) * min(1.0, (end - begin) / 4) for n, begin, end in zip(steps, bounds, bounds[1:])]
    time_s = np.append(np.concatenate(time), bounds[-1])

    at = np.minimum(np.searchsorted(start_s, time_s, side="right") - 1, len(start_s) - 1)
    moving_s = (up.duration_s + kept_s + down.duration_s)[at]
    after = time_s - start_s[at]
    kept = np.clip((after - up.duration_s[at]) / np.maximum(kept_s[at], 1e-9), 0.0, 1.0)
    # whole periods that swell and fade, so that swings change neither distance nor smoothness
    swing = np.sin(np.pi * kept) * np.sin(2 * np.pi * kept * (kept_s // SWING_PERIOD_S)[at])
    part_up = SpeedChange(first[at], peak[at], up.duration_s[at], PULLING_AWAY).gained_mps(after)
    down_after = after - (up.duration_s + kept_s)[at]
    part_down = SpeedChange(peak[at], last[at], down.duration_s[at], SLOWING).gained_mps(down_after)
    speed_mps = first[at] + part_up + part_down + HABITS["swing_share"][driver.steady_foot] * peak[at] * swing
    speed_mps = np.where(after >= moving_s, last[at], np.maximum(speed_mps, 0.0))

    # straight lines between the points miss a few centimetres of each leg: given back in proportion to speed
    elevation_m = np.full(len(time_s), float(start_altitude_m))
    step_s = np.diff(time_s)
    begins = np.cumsum([0, *steps])
    for leg, begin, end in zip(driven, begins, begins[1:]):
        length, leg_speed = leg.distance_km * 1000, speed_mps[begin : end + 1]
        step = step_s[begin:end]
        inside = (step[:-1] + step[1:]) / 2 * leg_speed[1:-1]
        missed = length - np.sum((leg_speed[:-1] + leg_speed[1:]) / 2 * step)
        leg_speed[1:-1] *= 1 + missed / inside.sum()
        along = np.append(0.0, np.cumsum((leg_speed[:-1] + leg_speed[1:]) / 2 * step))
        along[-1] = length
        elevation_m[begin : end + 1] = elevation_m[begin] + _height(leg, along)
    return Trace(
        time_s=time_s,
        speed_mps=speed_mps,
        elevation_m=elevation_m,
        surface=np.repeat([SURFACES.index(leg.surface) for leg in driven], steps),
        leg=np.repeat(order, steps),
    )
