"""Recorded positions to speed: where a car was at each moment, and how fast that makes it."""

from __future__ import annotations

import numpy as np
import pandas as pd

from model.describe.trace import Array
from model.describe.units import KMH_PER_MPS
from model.traces.resampling import at_steps, local_cubic, noise_of, steps_of
from model.traces.smoothing import SLOPES, Noise, noise_in, smoothed

EARTH_M = 6371000.0
"""Mean radius of the Earth [m]."""
WANDERING_MPS = 1.5 / KMH_PER_MPS
"""Positions wander while the car stands: below this it counts as standing."""
DIRECTION_REACHES = ((0.1, 2), (0.4, 4), (np.inf, 7))
"""Up to which scatter [m], over how many seconds to each side, a cubic through positions tells the direction."""
ROUNDED_M2 = 1e-3
"""Positions are written to a tenth of a metre or so: their variance is never less."""


def way_m(latitude: Array, longitude: Array) -> tuple[Array, Array]:
    """Way to the north and to the east [m] from the first of positions [degrees], which lie close to each other."""
    north = np.radians(np.diff(latitude)) * EARTH_M
    turn = (np.diff(longitude) + 180) % 360 - 180
    east = np.radians(turn) * EARTH_M * np.cos(np.radians((latitude[1:] + latitude[:-1]) / 2))
    return np.append(0.0, np.cumsum(north)), np.append(0.0, np.cumsum(east))


def speed_of_positions(time_s: Array, latitude: Array, longitude: Array) -> tuple[Array, float]:
    """Speed at each whole second [m/s], and how much the positions scatter [m].

    Times rise from 0 [s], positions are in degrees. Single positions far from the median of three are left out. A cubic
    through those around each second tells the direction; the way along it from the position before to the one behind,
    smoothed as their scatter asks, is the speed.
    """
    way = np.array(way_m(latitude, longitude))
    middle = pd.DataFrame(way.T).rolling(3, center=True).median().to_numpy().T
    stray = np.hypot(*(way - middle)) > 5 * max(1.0, float(np.nanmedian(np.hypot(*(way - middle)))))
    stray[[0, -1]] = False
    places = np.array([at_steps(time_s, np.interp(time_s, time_s[~stray], part[~stray])) for part in way])
    scatter_m = max(noise_of(place) for place in places)
    found = [noise_in(place) for place in places]
    white, wandering = (float(np.mean([getattr(each, kind) for each in found])) for kind in ("white", "wandering"))
    noise = Noise(max(white, ROUNDED_M2), wandering).of_slopes()
    reach = next(reach for most, reach in DIRECTION_REACHES if scatter_m < most)
    direction = np.array([local_cubic(place, reach, slope=True) for place in places])
    direction /= np.maximum(np.hypot(*direction), 1e-9)
    along = (np.gradient(places, axis=1) * direction).sum(axis=0) / np.gradient(steps_of(time_s))
    speed = smoothed(along, noise, SLOPES)
    # over 6 s a wandering position goes back and forth where a starting car gets away
    index = np.arange(len(speed))
    before, after = np.maximum(index - 3, 0), np.minimum(index + 3, index[-1])
    far = np.hypot(*(places[:, after] - places[:, before])) / (after - before)
    return np.where((speed < WANDERING_MPS) | (far < WANDERING_MPS), 0.0, speed), scatter_m
