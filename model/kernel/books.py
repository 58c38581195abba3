"""The energies of one drive that a share can be a share of, for one car or for many.

While slowing, the motor also feeds lights, pumps and heater directly: what it spares the battery in this way is saved
without ever having been recovered, and is kept apart.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from model.describe.trace import Array, Numbers, Trace
from model.describe.units import J_PER_KWH
from model.kernel.run import Run
from model.kernel.savings import Result


@dataclass(frozen=True, eq=False)
class Books:
    """Energies of one drive [kWh]; numbers, or arrays of shape (runs,).

    `out` and `back` are at the battery's terminals; `spared` is what the battery of the friction-only run has to give
    beyond `out`; `braking` is asked of brakes and motor at the wheels, `electric` the motor's part of it; `climb_out`
    is drawn while the road rises, `descent_back` put back while it falls.
    """

    out: Numbers
    back: Numbers
    spared: Numbers
    braking: Numbers
    electric: Numbers
    climb_out: Numbers
    descent_back: Numbers
    distance_km: Numbers


def book_keeper(trace: Trace) -> Callable[..., tuple[Array, ...]]:
    """What to measure on a run of this trace and on its friction-only run: the energies of `Books` in order [J].

    Without the second nothing is known of what was spared, and range and energy saved mean nothing.
    """

    def energies(run: Run, without: Run | None = None) -> tuple[Array, ...]:
        # what warming up takes is none of what the drive itself draws
        out = run.out_j - run.before_j
        return (
            out,
            run.in_j,
            out * np.nan if without is None else without.net_j - out,
            *(run.energies[name] for name in ("braking_j", "motor_j", "climb_out_j", "descent_back_j")),
        )

    return energies


def books_of(result: Result) -> Books:
    """The books of one driven result."""
    energies = book_keeper(result.trace)(result.run, result.without)
    return Books(*[float(energy[0]) / J_PER_KWH for energy in energies] + [result.distance_km])
