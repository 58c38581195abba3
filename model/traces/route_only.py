"""A route without times to a drive: as fast as a limit, its turns and the driver's habits allow.

What is held of a route are its slopes and how it bends, not where it lies.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

import numpy as np

from model.describe.fields import Entry, InputError, fields_of, filled, number
from model.describe.figures import Quantity
from model.describe.scenario import Driver
from model.describe.trace import Array, Trace
from model.describe.units import KMH_PER_MPS
from model.kernel.room import HALF_AS_HARD_KMH, Changing
from model.traces.habits import pulls_away, slows_down
from model.traces.positions import way_m
from model.traces.recorded_names import POSITION
from model.traces.resampling import SteeperThanRoadsError, road_height

STEP_M = 5.0
TURN_M = 30.0
"""A change of direction is taken over so much road [m]: a right angle then is a bend of 19 m, and no bend is narrower.

A planner's route has corners without a radius; a turn at a junction has some 10 to 20 m. Common practice, no source.
"""
LONGEST_M = 1_000_000.0
SHORTEST_M = 100.0


@dataclass(frozen=True, kw_only=True)
class RouteSettings:
    """How a route is driven beside the driver's habits.

    `lateral_mps2` is the acceleration across the car up to which turns are taken: 2 m/s² is what drivers who are in no
    hurry take in town, 3 brisk. Common practice, no source.
    """

    limit_kmh: float = number("km/h", 5, 130, (20, 130), default=50.0)
    lateral_mps2: float = number("m/s²", 0.5, 6, (1, 4), default=2.0)


ROUTE_FIELDS = fields_of(RouteSettings, "route")


def settings_with(values: Mapping[str, Entry]) -> RouteSettings:
    """The settings with parsed values of some of their fields."""
    return filled(RouteSettings, values)


@dataclass(frozen=True, eq=False)
class Route:
    """A route in even steps: how long it is [m], its height at each step's ends [m], and how it bends there [1/m].

    `heights` are those of the file [m], and how far along each was taken [m]. `is_steep` tells that they are steeper as
    a whole than roads are, and are left out.
    """

    length_m: float
    elevation_m: Array
    bend_per_m: Array
    heights: tuple[Array, Array] | None = None
    is_steep: bool = False

    def with_heights(self, along_m: Array, height_m: Array) -> Route:
        """The same route over other heights [m], each taken so far along it [m]."""
        grid = np.linspace(0.0, self.length_m, len(self.bend_per_m))
        found = replace(self, heights=(along_m, height_m), elevation_m=np.zeros_like(grid), is_steep=False)
        try:
            return replace(found, elevation_m=np.interp(grid, *road_height(along_m, height_m, self.length_m)))
        except SteeperThanRoadsError:
            return replace(found, is_steep=True)


def route_of(samples: Mapping[str, Array], name: str) -> Route:
    """What a drive needs of a row of positions [degrees], or of distances [m], and perhaps heights [m].

    Raises
    ------
    InputError
        Where it is too short or too long.
    """
    if samples.keys() >= POSITION:
        known = np.isfinite(samples["latitude"]) & np.isfinite(samples["longitude"])
        ways = way_m(samples["latitude"][known], samples["longitude"][known]) if known.any() else (np.empty(0),) * 2
        along = np.append(0.0, np.cumsum(np.hypot(*(np.diff(way) for way in ways))))[: len(ways[0])]
    else:
        known = np.isfinite(samples["distance_m"])
        along = np.maximum.accumulate(samples["distance_m"][known])
        along = along - along[:1]
        # how a road bends is not told by its length
        ways = along, np.zeros_like(along)
    length = float(along[-1]) if len(along) else 0.0
    if not SHORTEST_M <= length <= LONGEST_M:
        least, most = Quantity(SHORTEST_M / 1000, "km", 1), Quantity(LONGEST_M / 1000, "km", 4)
        raise InputError("route-length", name=name, least=least, most=most)
    grid = np.linspace(0.0, length, max(round(length / STEP_M), 2) + 1)
    moved = np.append(True, np.diff(along) > 0)
    places = [np.interp(grid, along[moved], way[moved]) for way in ways]
    # the direction of a stretch before and one behind each place; between them lies the turn
    reach = max(1, round(TURN_M / (grid[1] - grid[0])))
    index = np.arange(len(grid))
    before, behind = np.maximum(index - reach, 0), np.minimum(index + reach, index[-1])
    first, last = (np.arctan2(*(way[end] - way[start] for way in places[::-1]))
                   for start, end in ((before, index), (index, behind)))  # fmt: skip
    turn = np.abs((last - first + np.pi) % (2 * np.pi) - np.pi)
    turn[[0, -1]] = 0.0
    flat = Route(length, np.zeros_like(grid), turn / TURN_M)
    elevation_m = samples["elevation_m"][known] if "elevation_m" in samples else np.empty(0)
    here = np.isfinite(elevation_m)
    return flat.with_heights(along[here], elevation_m[here]) if here.any() else flat


def drive_route(route: Route, driver: Driver, settings: RouteSettings, name: str = "route") -> Trace:
    """The route driven from rest to rest, nothing in the way: slower only for its turns.

    Speeds change as hard as the driver's habits do on average; the car's own means are not asked here
    (`model.kernel.follow` slows where they do not suffice).
    """
    along = np.linspace(0.0, route.length_m, len(route.bend_per_m))
    limit = settings.limit_kmh / KMH_PER_MPS
    with np.errstate(divide="ignore"):
        top = np.minimum(limit, np.sqrt(settings.lateral_mps2 / route.bend_per_m))
    top[[0, -1]] = 0.0
    step_m = float(along[1])
    speed = _reached(top, step_m, pulls_away(driver))
    speed = _reached(speed[::-1], step_m, slows_down(driver))[::-1]
    time_s = np.append(0.0, np.cumsum(2 * step_m / (speed[1:] + speed[:-1])))
    seconds = np.arange(np.ceil(time_s[-1]) + 1)
    at_s = np.interp(seconds, time_s, speed)
    at_s[-1] = 0.0
    driven = np.append(0.0, np.cumsum((at_s[1:] + at_s[:-1]) / 2))
    # a step at either end of a change of speed may be cut short: what that takes or adds is spread over the whole
    at_s *= route.length_m / driven[-1]
    driven *= route.length_m / driven[-1]
    return Trace(time_s=seconds, speed_mps=at_s, elevation_m=np.interp(driven, along, route.elevation_m), name=name)


def _reached(top_mps: Array, step_m: float, habit: Changing) -> Array:
    """Speeds [m/s] up to `top_mps`, risen from step to step no harder than a habit's mean."""
    found = top_mps.copy()
    for place in range(1, len(found)):
        before = found[place - 1]
        hard = habit.mean * habit.peak_mps2 * HALF_AS_HARD_KMH / (HALF_AS_HARD_KMH + before * KMH_PER_MPS)
        found[place] = min(found[place], np.sqrt(before**2 + 2 * hard * step_m))
    return found
