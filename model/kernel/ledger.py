"""The books: every joule out of the battery, and where it went."""

from __future__ import annotations

from dataclasses import dataclass, fields

import numpy as np

from model.describe.trace import Array

SOURCES = ("cells_given", "cells_taken", "engine_given")
"""Where the energy came from; all other entries say what it went into."""


@dataclass(frozen=True)
class Ledger:
    """Energy of one run [J]; each entry from its own law, none as a remainder but friction braking.

    `cells_given` and `cells_taken` are cell voltage times current, `engine_given` is what a hybrid's engine gave in
    their place; kinetic and potential change come from the end states; the losses come from their own laws. So
    `error_share` is a real test.
    """

    cells_given: float
    cells_taken: float
    air: float
    rolling: float
    friction_brakes: float
    climb: float
    kinetic: float
    motor_inverter: float
    gear: float
    cell: float
    accessories: float
    cabin: float
    pack_heater: float = 0.0
    engine_drag: float = 0.0
    engine_given: float = 0.0

    @property
    def uses(self) -> dict[str, float]:
        """What the energy went into, by name [J]."""
        return {f.name: getattr(self, f.name) for f in fields(self) if f.name not in SOURCES}

    @property
    def throughput(self) -> float:
        """All that was turned over [J]: what came from somewhere equals what went somewhere, so half of all entries."""
        turned = self.cells_given + self.cells_taken + self.engine_given
        return (turned + sum(abs(energy) for energy in self.uses.values())) / 2

    @property
    def error_share(self) -> float:
        """What does not add up, over the throughput [1]; 0 where nothing moved."""
        missing = self.cells_given - self.cells_taken + self.engine_given - sum(self.uses.values())
        return abs(missing) / self.throughput if self.throughput else abs(missing)


def total(power_w: Array, step_s: Array) -> float:
    """Energy of a power over all steps [J]."""
    return float(np.dot(np.broadcast_to(power_w, step_s.shape), step_s))
