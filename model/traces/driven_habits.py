"""What a recorded drive tells of its driver: how hard they slow and pull away, how far ahead, how often they stop."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from model.describe.fields import InputError
from model.describe.trace import Array, Trace
from model.describe.units import KMH_PER_MPS
from model.traces.habits import HABITS

LEAST_DROP_KMH = 10.0
"""Slow-downs that lose less are the foot's restlessness."""
LEAST_GAIN_KMH = 20.0
"""Getting away to less is creeping on."""
FEWEST_STOPS = 3
"""From fewer stops and starts no habit is read."""


@dataclass(frozen=True)
class DrivenHabits:
    """How a recorded drive was driven.

    Parameters
    ----------
    looks_ahead, pull_away : str
        The words of `model.traces.habits.HABITS` whose drives come nearest.
    hardest_slowing_mps2, hardest_pull_away_mps2 : float
        The hardest second of a stop and of pulling away, as half of them have it [m/s²].
    ahead_m, ahead_from_kmh : float
        Road on which half of the stops slow down [m], and the speed at which half of them begin [km/h].
    stops_per_km : float
        How often the car comes to rest [1/km].
    slow_downs, by_lift : int
        Slow-downs by 10 km/h or more, stops included; and those in which no second is harder than the lift-off.
    """

    looks_ahead: str
    pull_away: str
    hardest_slowing_mps2: float
    hardest_pull_away_mps2: float
    ahead_m: float
    ahead_from_kmh: float
    stops_per_km: float
    slow_downs: int
    by_lift: int


def falls(speed_mps: Array, least_kmh: float = LEAST_DROP_KMH) -> list[tuple[int, int]]:
    """First and last point of each run of steps in which the speed [m/s] falls, where it falls by so much in all."""
    falling = np.diff(speed_mps) < 0
    edges = np.diff(np.concatenate([[0], falling.astype(int), [0]]))
    runs = zip(np.flatnonzero(edges == 1), np.flatnonzero(edges == -1), strict=True)
    least = least_kmh / KMH_PER_MPS
    return [(int(first), int(last)) for first, last in runs if speed_mps[first] - speed_mps[last] >= least]


def habits_of(trace: Trace, lift_off_mps2: float) -> DrivenHabits:
    """The habits of a recorded drive, in steps of about a second; up to `lift_off_mps2` the foot only came up.

    Raises
    ------
    InputError
        Where there are too few stops and starts to tell.

    Notes
    -----
    The word is that whose hardest moment lies nearest: built drives have theirs for stops and starts to and from rest,
    and a second's mean of it is a few per cent less.
    """
    speed, change = trace.speed_mps, trace.acceleration_mps2
    slowings = falls(speed)
    stops = [(first, last) for first, last in slowings if speed[last] == 0]
    starts = [(len(speed) - 1 - last, len(speed) - 1 - first) for first, last in falls(speed[::-1], LEAST_GAIN_KMH)]
    starts = [(first, last) for first, last in starts if speed[first] == 0]
    if min(len(stops), len(starts)) < FEWEST_STOPS:
        raise InputError("habits-too-few-stops", stops=min(len(stops), len(starts)), least=FEWEST_STOPS)
    hardest = [float(-change[first:last].min()) for first, last in slowings]
    slowing = float(np.median([-change[first:last].min() for first, last in stops]))
    pulling = float(np.median([change[first:last].max() for first, last in starts]))
    along = np.append(0.0, np.cumsum(trace.step_m))
    return DrivenHabits(
        looks_ahead=_nearest("peak_slowing_mps2", slowing),
        pull_away=_nearest("peak_pull_away_mps2", pulling),
        hardest_slowing_mps2=slowing,
        hardest_pull_away_mps2=pulling,
        ahead_m=float(np.median([along[last] - along[first] for first, last in stops])),
        ahead_from_kmh=float(np.median([speed[first] for first, _ in stops])) * KMH_PER_MPS,
        stops_per_km=trace.stops / (trace.distance_m / 1000),
        slow_downs=len(slowings),
        by_lift=sum(each <= lift_off_mps2 for each in hardest),
    )


def _nearest(habit: str, hardest_mps2: float) -> str:
    return min(HABITS[habit], key=lambda word: abs(np.log(HABITS[habit][word] / hardest_mps2)))
