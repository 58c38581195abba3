"""From recorded samples to a trace in steps of 1 s: what noise would do to energy is kept out here.

Energy is sensitive to small errors of speed: at 50 km/h a false step of 1 km/h is 7 kJ for a car of 1900 kg, as much
as some 30 m of road load. The methods below were chosen by sampling standard cycles at 1 to 10 Hz, with and
without noise and coarse steps, and comparing the wheel energies with those of the clean cycle.
"""

from __future__ import annotations

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from model.describe.trace import Array
from model.describe.units import KMH_PER_MPS

SHORTEST_S = 10.0
LONGEST_S = 24 * 3600.0
LONGEST_GAP_S = 10.0
"""Speed and power may be missing for so long; they are then filled by a straight line."""
FAST_SAMPLING_S = 0.75
"""Samples closer together than this are averaged, others are joined by straight lines."""
OWN_STEPS_S, SHORTEST_STEP_S = (FAST_SAMPLING_S, 1.5), 0.5
"""Samples usually so far apart, and never closer than that, keep their own times."""
STANDING_MPS = 0.5 / KMH_PER_MPS
"""Below this the car counts as standing where a sensor does not read 0 at rest: what it reads is less."""
SHARPENING = 0.125
"""A mean over 1 s makes of a polyline's points 3/4 and an eighth of each neighbour; this undoes it to second order.

Without it, clean 10 Hz samples of UDDS, US06 and NYCC lose 1.3, 2.4 and 4.1 % of traction and 2.6, 6.6 and 5.5 % of
braking; with it 0.3, 0.9 and 0.8 %, and 0.6, 2.5 and 1.1 %.
"""
COARSE_SMOOTHING = (0.1, 0.2)
"""Weight given to each neighbour for steps of 1 km/h, growing with the step squared, and its most.

Rounding to 1 km/h adds 3 % of traction and 6 to 7 % of braking on UDDS and WLTC at 1 Hz, rounding to 1 mph 6 and 11
to 18 %. With this weight 1 % and 1 to 3 % are left (steps of 1 mph: below 1 and 2 %); more would take away real
braking, as it does on NYCC (3 and 4 % too little, 6 and 8 % for 1 mph).
"""
COARSEST_KMH = 2.0
"""Wider steps between all speeds are no sensor's: they come from a short drive written by hand."""
ELEVATION_GRID_M = 10.0
ELEVATION_REACH_M = 100.0
"""Half the base of the triangle that smooths height along the road.

Heights in whole metres then change traction energy by at most 0.5 % on a mountain pass. White noise of 1 m at 1 Hz
costs 1 % on the flat, and waves of 700 m with slopes of 7 % lose 2.5 to 3 %. With 50 m the noise would cost 3 to
4 %, with 200 m the waves would lose 8 to 10 %.
"""
JITTER_M, WANDER_M = 0.5, 1.15
"""Scatter from which heights are taken for a receiver's, and the bend within 20 s for which the reach is enough.

Heights that wander by 5 m over 20 s would add 5 % of net energy in town, 3 % over hills and 1 % on the motorway; with
four times the reach 0.5, 0.2 and 0.3 % are left, and hills without jitter, where it is not used, would lose 0.3 %.
"""
STRAY_REACH = 15
STRAY_M = 5.0
"""A height is a stray one where it is further than this, and than six times the usual scatter, from the median of so
many seconds to each side."""
STEEPEST = 0.25
"""Rise over road length that no public road exceeds for long: more is an error of the height."""


def mean_between(x: Array, y: Array, low: Array, high: Array) -> Array:
    """Mean of the polyline through the points (`x`, `y`) from each `low` to its `high`; keeps the integral exact."""
    knots = np.unique(np.concatenate([x, low, high]))
    heights = np.interp(knots, x, y)
    area = np.concatenate([[0.0], np.cumsum(np.diff(knots) * (heights[1:] + heights[:-1]) / 2)])
    mean: Array = (np.interp(high, knots, area) - np.interp(low, knots, area)) / (high - low)
    return mean


def steps_of(time_s: Array) -> Array:
    """The times [s] between which a recording becomes steps; `time_s` counts from 0.

    Samples about a second apart keep their own times, so that nothing of them is lost, and longer steps are divided.
    Others are brought to whole seconds.
    """
    step = np.diff(time_s)
    if not (OWN_STEPS_S[0] <= np.median(step) <= OWN_STEPS_S[1] and step.min() >= SHORTEST_STEP_S):
        return np.arange(np.floor(time_s[-1]) + 1)
    parts = np.maximum(np.ceil(step / OWN_STEPS_S[1]), 1).astype(int)
    places = np.append(np.repeat(np.arange(len(step)), parts), len(step))
    firsts = np.cumsum(parts) - parts
    within = (np.arange(len(places) - 1) - np.repeat(firsts, parts)) / np.repeat(parts, parts)
    return np.interp(places + np.append(within, 0.0), np.arange(len(time_s)), time_s)


def is_fast(time_s: Array) -> bool:
    """Whether there is usually more than one sample a second."""
    return bool(np.median(np.diff(time_s)) < FAST_SAMPLING_S)


def at_steps(time_s: Array, values: Array) -> Array:
    """Values at the times of `steps_of`: the mean of the second around them where samples are fast, else a line's."""
    seconds = steps_of(time_s)
    if not is_fast(time_s):
        return np.interp(seconds, time_s, values)
    low, high = np.maximum(seconds - 0.5, 0), np.minimum(seconds + 0.5, time_s[-1])
    return mean_between(time_s, values, low, high)


def weigh_neighbours(values: Array, weight: float) -> Array:
    """Each value with `weight` of both neighbours; ends and straight lines stay as they are."""
    padded = np.pad(values, 1, mode="reflect", reflect_type="odd")
    return (1 - 2 * weight) * values + weight * (padded[:-2] + padded[2:])


def speed_at_steps(time_s: Array, speed_mps: Array) -> Array:
    """Speed [m/s] at the times of `steps_of`, keeping distance and the swings of kinetic energy.

    Parameters
    ----------
    time_s : array
        Time of each sample, rising from 0 [s].
    speed_mps : array
        Speed of each sample [m/s]; noise around zero may be negative.

    Notes
    -----
    The step of the speeds (1 km/h in many recordings) is read from the values. Speed in fine steps at 1 Hz is left as
    it is, noise included: a recording does not tell noise from a restless foot.
    """
    mean = at_steps(time_s, speed_mps)
    levels = np.unique(np.round(speed_mps * KMH_PER_MPS, 3))
    step_kmh = np.diff(levels).min() if len(levels) > 1 else 0.0
    weight = min(COARSE_SMOOTHING[0] * step_kmh**2, COARSE_SMOOTHING[1]) if step_kmh <= COARSEST_KMH else 0.0
    if is_fast(time_s):
        weight -= SHARPENING
    speed = weigh_neighbours(mean, weight)
    slow = speed_mps[speed_mps < STANDING_MPS]
    # a sensor that reads 0 at rest tells creeping from standing by itself
    standing = 0.0 if np.count_nonzero(slow == 0) > len(slow) / 2 else STANDING_MPS
    return np.where((mean <= standing) | (speed <= standing), 0.0, speed)


def local_cubic(values: Array, reach: int, *, slope: bool = False) -> Array:
    """At each place the value, or the `slope` per place, of a cubic laid through `reach` neighbours on each side.

    Savitzky and Golay (1964, doi:10.1021/ac60214a047): unlike a mean it leaves peaks and corners nearly as they are.
    """
    reach = min(reach, (len(values) - 1) // 2)
    if reach < 2:
        return np.gradient(values) if slope else values
    places = np.arange(-reach, reach + 1)
    weights = np.linalg.pinv(np.vander(places, 4, increasing=True))[1 if slope else 0]
    padded = np.pad(values, reach, mode="reflect", reflect_type="odd")
    return np.convolve(padded, weights[::-1], "valid")


def noise_of(values: Array, where: NDArray[np.bool_] | None = None) -> float:
    """Standard deviation of what scatters from one value to the next, in the values' own unit.

    The median size of fourth differences: of straight lines, parabolas and rare corners nothing is left in it.
    """
    differences = np.abs(np.diff(values, 4))
    if where is not None:
        differences = differences[where[2:-2]]
    return float(1.4826 * np.median(differences) / np.sqrt(70)) if len(differences) > 5 else 0.0


def stray_heights(distance_m: Array, elevation_m: Array) -> NDArray[np.bool_]:
    """Which heights, a second apart, no road leads to: further from those around than their own scatter explains."""
    count = len(elevation_m)
    window = 2 * STRAY_REACH + 1
    if count < window:
        middle = np.full(count, np.median(elevation_m))
    else:
        middle = np.array(pd.Series(elevation_m).rolling(window, center=True).median())
        middle[:STRAY_REACH] = _straight(distance_m[:window], elevation_m[:window], distance_m[:STRAY_REACH])
        middle[-STRAY_REACH:] = _straight(distance_m[-window:], elevation_m[-window:], distance_m[-STRAY_REACH:])
    away = np.abs(elevation_m - middle)
    return away > max(STRAY_M, 6 * 1.4826 * float(np.median(away)))


def height_reach_m(elevation_m: Array) -> float:
    """Half the base of the triangle that smooths heights a second apart [m]: wider where they wander as no road does.

    A receiver's height jitters from second to second, and wanders over tens of them; a road only does the second.
    """
    if len(elevation_m) < 4 * STRAY_REACH or noise_of(elevation_m) < JITTER_M:
        return ELEVATION_REACH_M
    wander = float(np.median(np.abs(elevation_m[20:] - 2 * elevation_m[10:-10] + elevation_m[:-20])))
    return ELEVATION_REACH_M * float(np.clip(wander / WANDER_M, 1.0, 4.0))


def _straight(distance_m: Array, elevation_m: Array, at_m: Array) -> Array:
    """The height [m] at places on a straight slope through most of the heights given, whatever the others are."""
    first, second = np.triu_indices(len(distance_m), 1)
    way = distance_m[second] - distance_m[first]
    moved = way > 1.0
    slope = float(np.median((elevation_m[second] - elevation_m[first])[moved] / way[moved])) if moved.any() else 0.0
    level = float(np.median(elevation_m - slope * distance_m))
    return level + slope * at_m


class SteeperThanRoadsError(ValueError):
    """A road that is steeper as a whole than any."""


def road_height(
    distance_m: Array, elevation_m: Array, length_m: float, reach_m: float = ELEVATION_REACH_M
) -> tuple[Array, Array]:
    """Height along the road: an even grid of places [m] and the smoothed height there [m].

    Parameters
    ----------
    distance_m : array
        Where each height was taken [m], never falling; heights taken at one place while standing are averaged.
    elevation_m : array
        Recorded height [m], noisy or in steps.
    length_m : float
        Whole length of the road, above 0 [m].
    reach_m : float
        Half the base of the triangle that smooths [m].

    Raises
    ------
    SteeperThanRoadsError
        Where the road as a whole is steeper than `STEEPEST`.

    Notes
    -----
    Start and end lie on the straight slope of what is around them, so that no single height decides how much was
    climbed in all. Slopes beyond `STEEPEST` are cut and what they lose is spread over the rest.
    """
    place, index = np.unique(distance_m, return_inverse=True)
    height = np.bincount(index, elevation_m) / np.bincount(index)
    cells = max(1, round(length_m / ELEVATION_GRID_M))
    grid = np.linspace(0, length_m, cells + 1)
    edges = np.concatenate([[0], (grid[1:] + grid[:-1]) / 2, [length_m]])
    level = mean_between(place, height, edges[:-1], edges[1:])
    cell_m = length_m / cells
    reach = max(1, round(reach_m / cell_m))
    around = min(reach, cells) + 1
    level[0] = np.polynomial.Polynomial.fit(grid[:around], level[:around], 1)(0.0)
    level[-1] = np.polynomial.Polynomial.fit(grid[-around:], level[-around:], 1)(length_m)
    triangle = reach - np.abs(np.arange(-reach + 1, reach)).astype(float)
    # mirrored about the end points, straight slopes and the ends themselves come through unchanged
    padded = np.pad(level, reach - 1, mode="reflect", reflect_type="odd")
    smooth = np.convolve(padded, triangle / triangle.sum(), "valid")
    rise = np.diff(smooth)
    most = STEEPEST * cell_m
    if abs(rise.sum()) > most * cells:
        raise SteeperThanRoadsError
    cut = np.clip(rise, -most, most)
    missing = rise.sum() - cut.sum()
    if missing:
        room = most - np.sign(missing) * cut
        cut += missing * room / room.sum()
    return grid, smooth[0] + np.concatenate([[0.0], np.cumsum(cut)])
