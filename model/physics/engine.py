"""A hybrid's engine: what it gives in place of the battery, and what it takes of the slowing."""

from __future__ import annotations

import math

from model.physics.jit import compiled
from model.physics.records import CarRecord


@compiled
def has_engine(car: CarRecord) -> bool:
    """Whether the car is a hybrid."""
    return not math.isnan(car.sustain_soc)


@compiled
def kept_soc(car: CarRecord, soc_start: float) -> float:
    """Charge below which the engine gives what the battery would have to [1]; none without an engine."""
    return min(car.sustain_soc, soc_start) if has_engine(car) else -math.inf


@compiled
def engine_drag_n(car: CarRecord, speed: float, left_n: float) -> float:
    """What the turning engine takes [N] of the slowing that the battery refused, at `speed` [m/s]."""
    return min(left_n, car.engine_drag_kw * 1000.0 / max(speed, 1e-3)) if car.engine_drag_kw > 0 else 0.0
