"""Smoothing that is told how much is noise: wide where a car holds its speed, narrow where it changes it.

A Wiener filter (1949) weighs each frequency by how much of it is the car's. How restless the car is differs from moment
to moment: of a row of such filters, for cars from calm to brisk, each moment takes the calmest whose speed agrees with
those of all brisker ones, as far as the noise that they let through can tell (Katkovnik 1999, doi:10.1109/78.782208:
intersection of confidence intervals).

Built drives were laid out with white speed noise of 1 and 2 km/h, with noise of 2 km/h that holds for 5 s, and with
positions that scatter by 0.3 to 3 m from second to second or wander by 3 m over 20 s, five times each. In town, over
hills and on the motorway net energy came back within 3 % and the recovered share within 1.5 points (3 m over 5 s: 1.7
points in town and 2.1 on the motorway). Of standard cycles UDDS, HWFET, US06 and WLTC came back within 4 % and four
points; New York's stop and go (NYCC) lost up to 9 % and 7 points.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from model.describe.trace import Array

POINTS = 512
FREQUENCY = 2 * np.pi * np.arange(POINTS // 2 + 1) / POINTS
"""Of the filters [radians a step]."""
CHANGE = 4 * np.sin(FREQUENCY / 2) ** 2
"""What differences from one value to the next let through of each frequency's power."""
REACH = 60
"""Values on each side that a filter weighs."""
RESTLESS = 10.0 ** np.arange(-4, 1.01, 0.5)
"""How fast the speed changes of the cars that the filters are for: variance of its change a step [(m/s²)²/s]."""
AGREE = 1.0
"""Filters agree that differ by no more than so many standard deviations of each one's noise."""
BRISKER = 1.5
"""What is least wrong in the mean square takes more motion away than the noise it leaves: so much further up the row of
filters, energies come out even.

It is tuned, not derived. Of the built drives net energy came out 3 % too low on average at 1, 0.2 % at 1.5 and 1 to 2 %
too high at 1.8; of standard cycles 4 and 1 % too low, and 1 % too high. At 1.45 the recovered share of NYCC is off by
more, at 1.55 that of the highway cycle by more than the four points of which the page speaks."""
BESIDE = 2
"""The filter is that of so many moments to each side, on average."""


@dataclass(frozen=True)
class Noise:
    """What scatters in a row of values, as variances in their unit squared.

    `white` is that of each value by itself, `wandering` that of a change from one value to the next that stays.
    """

    white: float
    wandering: float

    def of_values(self) -> Array:
        """Its power at each frequency [their unit squared]."""
        # what wanders comes back some time, so the slowest have no more than this
        return self.white + self.wandering / np.maximum(CHANGE, 0.04)

    def of_slopes(self) -> Array:
        """Its power in the differences between neighbours [their unit squared]."""
        return self.wandering + self.white * CHANGE


SLOPES = np.sinc(FREQUENCY / np.pi)
"""What is left of each frequency in half the difference between the values before and after."""
VALUES = np.ones_like(FREQUENCY)


def noise_in(values: Array, *, own: float = 0.0) -> Noise:
    """The noise of a row of values, by third differences of neighbours and of values three apart.

    Steady motion and even changes leave nothing in them. Medians pass over the rest, as far as it is rare; what the
    wider ones have more is put down to wandering, but for a share `own` that is the car's.
    """
    near, wide = (_third_differences(values, step) for step in (1, 3))
    # of white noise both have 20 times its variance, of wandering 6 and 18 times
    wandering = (1 - own) * min(max((wide - near) / 12, 0.0), near / 6)
    return Noise((near - 6 * wandering) / 20, wandering)


def _third_differences(values: Array, step: int) -> float:
    """Their variance, by the median size as if they were normal."""
    if len(values) <= 3 * step:
        return 0.0
    ends = values[3 * step :] - values[: -3 * step]
    differences = ends - 3 * (values[2 * step : -step] - values[step : -2 * step])
    return float(np.median(np.abs(differences)) / 0.6745) ** 2


def smoothed(measured: Array, noise: Array, response: Array = VALUES) -> Array:
    """Speed at even steps [m/s] without what is noise of it.

    At each of `FREQUENCY`, `noise` is the power of the noise and `response` what is left of the speed itself [1].
    """
    padded = np.pad(measured, min(REACH, len(measured) - 1), mode="reflect", reflect_type="odd")
    padded = np.pad(padded, REACH - min(REACH, len(measured) - 1), mode="edge")
    found, spread = [], []
    for restless in RESTLESS:
        passed = response * restless / (response**2 * restless + CHANGE**2 * noise + 1e-12)
        weights = np.roll(np.fft.irfft(passed, POINTS), REACH)[: 2 * REACH + 1]
        found.append(np.convolve(padded, weights, "valid"))
        let_through = passed**2 * noise
        spread.append(np.sqrt((2 * let_through.sum() - let_through[0] - let_through[-1]) / POINTS))
    speeds, level = np.array(found), _calmest(np.array(found), np.array(spread))
    level = pd.Series(level).rolling(2 * BESIDE + 1, center=True, min_periods=1).mean().to_numpy()
    level = np.minimum(BRISKER * level, len(RESTLESS) - 1)
    below = np.minimum(level.astype(int), len(RESTLESS) - 2)
    here = np.arange(len(measured))
    return speeds[below, here] + (level - below) * (speeds[below + 1, here] - speeds[below, here])


def _calmest(speeds: Array, spread: Array) -> NDArray[np.float64]:
    """Place of the calmest filter that agrees with all brisker ones, for each moment."""
    low = np.maximum.accumulate((speeds - AGREE * spread[:, None])[::-1])
    high = np.minimum.accumulate((speeds + AGREE * spread[:, None])[::-1])
    agreeing = np.logical_and.accumulate(low <= high).sum(axis=0)
    return (len(speeds) - agreeing).astype(float)
