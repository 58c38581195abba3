"""From recorded samples to a trace in steps of 1 s: what noise would do to energy is kept out here.

Energy is sensitive to small errors of speed: at 50 km/h a false step of 1 km/h is 7 kJ for a car of 1900 kg, as much
as some 30 m of road load. The methods below were chosen by sampling standard cycles at 1 to 10 Hz, with and
without noise and coarse steps, and comparing the wheel energies with those of the clean cycle.
"""

from __future__ import annotations

import numpy as np

from model.describe.fields import InputError
from model.describe.figures import Quantity
from model.describe.trace import Array
from model.describe.units import KMH_PER_MPS

SHORTEST_S = 10.0
LONGEST_S = 24 * 3600.0
LONGEST_GAP_S = 5.0
"""Speed and power may be missing for so long; they are then filled by a straight line."""
FAST_SAMPLING_S = 0.75
"""Samples closer together than this are averaged, others are joined by straight lines."""
STANDING_MPS = 0.5 / KMH_PER_MPS
"""Below this the car counts as standing: what wheel sensors read at rest is less."""
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
STEEPEST = 0.25
"""Rise over road length that no public road exceeds for long: more is an error of the height."""


def check_duration(duration_s: float, name: str) -> None:
    """Raise `InputError` where a recording is too short or too long [s]."""
    if not SHORTEST_S <= duration_s <= LONGEST_S:
        raise InputError(
            "recording-duration", name=name, lasts=Quantity(round(duration_s), "s", 6, trimmed=True),
            least=Quantity(SHORTEST_S, "s", places=0), most=Quantity(LONGEST_S / 3600, "hours", places=0),
        )  # fmt: skip


def mean_between(x: Array, y: Array, low: Array, high: Array) -> Array:
    """Mean of the polyline through the points (`x`, `y`) from each `low` to its `high`; keeps the integral exact."""
    knots = np.unique(np.concatenate([x, low, high]))
    heights = np.interp(knots, x, y)
    area = np.concatenate([[0.0], np.cumsum(np.diff(knots) * (heights[1:] + heights[:-1]) / 2)])
    mean: Array = (np.interp(high, knots, area) - np.interp(low, knots, area)) / (high - low)
    return mean


def whole_seconds(time_s: Array) -> Array:
    """Every whole second from the first sample to the last [s]; `time_s` counts from 0."""
    return np.arange(np.floor(time_s[-1]) + 1)


def is_fast(time_s: Array) -> bool:
    """Whether there is usually more than one sample a second."""
    return bool(np.median(np.diff(time_s)) < FAST_SAMPLING_S)


def at_whole_seconds(time_s: Array, values: Array) -> Array:
    """Values at each whole second: the mean of the second around it where samples are fast, else a straight line."""
    seconds = whole_seconds(time_s)
    if not is_fast(time_s):
        return np.interp(seconds, time_s, values)
    low, high = np.maximum(seconds - 0.5, 0), np.minimum(seconds + 0.5, time_s[-1])
    return mean_between(time_s, values, low, high)


def weigh_neighbours(values: Array, weight: float) -> Array:
    """Each value with `weight` of both neighbours; ends and straight lines stay as they are."""
    padded = np.pad(values, 1, mode="reflect", reflect_type="odd")
    return (1 - 2 * weight) * values + weight * (padded[:-2] + padded[2:])


def speed_at_whole_seconds(time_s: Array, speed_mps: Array) -> Array:
    """Speed [m/s] at each whole second, keeping distance and the swings of kinetic energy.

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
    mean = at_whole_seconds(time_s, speed_mps)
    levels = np.unique(np.round(speed_mps * KMH_PER_MPS, 3))
    step_kmh = np.diff(levels).min() if len(levels) > 1 else 0.0
    weight = min(COARSE_SMOOTHING[0] * step_kmh**2, COARSE_SMOOTHING[1]) if step_kmh <= COARSEST_KMH else 0.0
    if is_fast(time_s):
        weight -= SHARPENING
    speed = weigh_neighbours(mean, weight)
    return np.where((mean < STANDING_MPS) | (speed < STANDING_MPS), 0.0, speed)


def road_height(distance_m: Array, elevation_m: Array, length_m: float) -> tuple[Array, Array]:
    """Height along the road: an even grid of places [m] and the smoothed height there [m].

    Parameters
    ----------
    distance_m : array
        Where each height was taken [m], never falling; heights taken at one place while standing are averaged.
    elevation_m : array
        Recorded height [m], noisy or in steps.
    length_m : float
        Whole length of the road, above 0 [m].

    Raises
    ------
    ValueError
        Where the road as a whole is steeper than `STEEPEST`.

    Notes
    -----
    The heights of start and end stay as recorded, so the change of potential energy does. Slopes beyond
    `STEEPEST` are cut and what they lose is spread over the rest.
    """
    place, index = np.unique(distance_m, return_inverse=True)
    height = np.bincount(index, elevation_m) / np.bincount(index)
    cells = max(1, round(length_m / ELEVATION_GRID_M))
    grid = np.linspace(0, length_m, cells + 1)
    edges = np.concatenate([[0], (grid[1:] + grid[:-1]) / 2, [length_m]])
    level = mean_between(place, height, edges[:-1], edges[1:])
    level[0], level[-1] = np.interp([0, length_m], place, height)
    cell_m = length_m / cells
    reach = max(1, round(ELEVATION_REACH_M / cell_m))
    triangle = reach - np.abs(np.arange(-reach + 1, reach)).astype(float)
    # mirrored about the end points, straight slopes and the ends themselves come through unchanged
    padded = np.pad(level, reach - 1, mode="reflect", reflect_type="odd")
    smooth = np.convolve(padded, triangle / triangle.sum(), "valid")
    rise = np.diff(smooth)
    most = STEEPEST * cell_m
    if abs(rise.sum()) > most * cells:
        raise ValueError("steeper than any road")
    cut = np.clip(rise, -most, most)
    missing = rise.sum() - cut.sum()
    if missing:
        room = most - np.sign(missing) * cut
        cut += missing * room / room.sum()
    return grid, smooth[0] + np.concatenate([[0.0], np.cumsum(cut)])
