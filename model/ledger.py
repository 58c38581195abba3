"""The books: every joule out of the battery, and where it went."""

from __future__ import annotations

from dataclasses import dataclass, fields

import numpy as np

from model.trace import Array


@dataclass(frozen=True)
class Ledger:
    """Energy of one run [J]; each entry from its own law, none as a remainder but friction braking.

    `cells_given` and `cells_taken` are cell voltage times current; kinetic and potential change come from the end
    states; the losses come from their own laws. So `error_share` is a real test.
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

    @property
    def uses(self) -> dict[str, float]:
        """What the energy went into, by name [J]."""
        return {f.name: getattr(self, f.name) for f in fields(self) if not f.name.startswith("cells_")}

    @property
    def throughput(self) -> float:
        """All that was turned over [J]: what came from somewhere equals what went somewhere, so half of all entries."""
        return (self.cells_given + self.cells_taken + sum(abs(energy) for energy in self.uses.values())) / 2

    @property
    def error_share(self) -> float:
        """What does not add up, over the throughput [1]; 0 where nothing moved."""
        missing = self.cells_given - self.cells_taken - sum(self.uses.values())
        return abs(missing) / self.throughput if self.throughput else abs(missing)


def total(power_w: Array, step_s: Array) -> float:
    """Energy of a power over all steps [J]."""
    return float(np.dot(np.broadcast_to(power_w, step_s.shape), step_s))
