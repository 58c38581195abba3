"""The lift-off strength of a car whose menu has no m/s²: counted in seconds from one speed to another."""

from __future__ import annotations

from model.describe.fields import Field
from model.describe.units import KMH_PER_MPS

FROM_KMH, TO_KMH = 50.0, 20.0
"""Between these speeds lifting off is neither taken up nor faded out in most cars, and seconds are easily counted
[km/h]: common practice, no source."""
COUNTED_S = Field("counted_s", "number", "s", "counted-seconds", 2.4, 60, (3, 30), optional=True)


def strength_of(seconds: float) -> float:
    """Lift-off strength [m/s²] of a car that slows from `FROM_KMH` to `TO_KMH` in so many `seconds` on a level road.

    It is the mean over these speeds: road load and the motor together, as a strength is meant.
    """
    return (FROM_KMH - TO_KMH) / KMH_PER_MPS / seconds


def seconds_of(strength_mps2: float) -> float | None:
    """Seconds from `FROM_KMH` to `TO_KMH` at a strength [m/s²]; None where it rolls on, which the road decides."""
    return (FROM_KMH - TO_KMH) / KMH_PER_MPS / strength_mps2 if strength_mps2 > 0 else None
