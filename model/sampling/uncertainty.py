"""Bands: the 5 to 95 % range over the assumed figures. What the user stated is fixed.

Figures are drawn by Latin hypercube (low, mid, high; half of them on either side of mid), each on its own. The
generator and the seed are fixed, so the same question gives the same bytes.
"""

from __future__ import annotations

import os
import zlib
from collections.abc import Callable, Iterable, Mapping, Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, fields
from functools import lru_cache
from typing import Any

import numpy as np
from numpy.typing import NDArray

from model.describe.car import Car
from model.describe.parameters import Assumed
from model.describe.scenario import Conditions, Driver
from model.describe.trace import Array, Trace
from model.describe.units import J_PER_KWH
from model.kernel.follow import LATE_SHARE, longer_share
from model.kernel.march import drive_all
from model.kernel.road import road_of
from model.kernel.run import Run, undriven
from model.kernel.savings import energy_saved_share
from model.physics.battery import usable_in_the_cold_kwh
from model.physics.records import Records, car_records

RUNS = 200
"""Sampled cars behind every band but those of claims: the same cars, so that one question has one band everywhere."""
SEED = 20261125
LOW_SHARE, HIGH_SHARE = 0.05, 0.95
PROCESSORS = os.cpu_count() or 1
SIDE_BY_SIDE = ThreadPoolExecutor(PROCESSORS, thread_name_prefix="drives")
STEPS_AT_ONCE = 200_000
"""About how many steps are recorded together, whatever the number of cars."""


@dataclass(frozen=True)
class Band:
    """The 5, 50 and 95 % points of an answer over the assumed figures."""

    low: float
    mid: float
    high: float

    @classmethod
    def of(cls, values: Array) -> Band:
        """The band of sampled values."""
        low, mid, high = np.quantile(values, [LOW_SHARE, 0.5, HIGH_SHARE])
        return cls(float(low), float(mid), float(high))

    def scaled(self, factor: float) -> Band:
        """The band times `factor`: in another unit."""
        return Band(self.low * factor, self.mid * factor, self.high * factor)


def triangular(share: Array, low: float, mid: float, high: float) -> Array:
    """Value below which `share` [1] of the drawn figures lie: half of them on either side of `mid`.

    Each half thins out evenly towards its end, so where the ends are not equally far off, the halves are triangles of
    different heights; the middle of the answers stays that of the middle car.
    """
    below = low + (mid - low) * np.sqrt(2 * np.minimum(share, 0.5))
    above = high - (high - mid) * np.sqrt(2 * np.minimum(1 - share, 0.5))
    return np.where(share < 0.5, below, above)


def hypercube(keys: Iterable[str], runs: int = RUNS, seed: int = SEED) -> dict[str, Array]:
    """A Latin hypercube: for every key one place in each of `runs` equal shares of its range [1]; shape (runs,).

    A key's places depend on the seed and the key alone: whatever else is drawn, a figure's draws stay the same. So
    stating one figure moves no other, and drives can be held against each other run by run.
    """
    return {key: _places(key, runs, seed) for key in keys}


@lru_cache(maxsize=1000)
def _places(key: str, runs: int, seed: int) -> Array:
    # RandomState's stream never changes between versions of numpy
    random = np.random.RandomState([seed, zlib.crc32(key.encode())])
    places: Array = (random.permutation(runs) + random.random_sample(runs)) / runs
    places.flags.writeable = False
    return places


def sample(figures: Mapping[str, Assumed], runs: int = RUNS, seed: int = SEED) -> dict[str, Array]:
    """Draw every figure `runs` times by Latin hypercube; shape (runs, 1)."""
    return {
        key: triangular(share, *figures[key].numbers)[:, None]
        for key, share in hypercube(figures, runs, seed).items()
    }


@dataclass(frozen=True, eq=False)
class Samples:
    """Energies of the sampled runs [kWh], each of shape (runs,).

    `usable_kwh` is the size of the battery, `held_kwh` what can be drawn of a full one as cold as at the end of the
    drive, `cells_kwh` what the cells gave on the drive, less what regeneration brought them: what has to be filled up
    again. `unable` counts the cars whose motor or battery could not give what the trace asks, `late` those of them that
    would take more than `LATE_SHARE` longer or could not get through, and `slowest_share` is how much longer the
    slowest would take [1]: infinite where it could not get through. They are counted in as if they could: a car that is
    slower would drive another trace.
    """

    out_kwh: Array
    in_kwh: Array
    friction_only_net_kwh: Array
    usable_kwh: Array
    held_kwh: Array
    cells_kwh: Array
    unable: int = 0
    late: int = 0
    slowest_share: float = 0.0

    @classmethod
    def of(cls, *energies_j: Array) -> Samples:
        """From what `at_terminals` measures, each of shape (runs,)."""
        *energies, drove, longer = energies_j
        out, back, without, usable, held, cells = (energy / J_PER_KWH for energy in energies)
        counted = int((drove == 0).sum()), int((longer > LATE_SHARE).sum()), float(longer.max())
        return cls(out, back, without, usable, held, cells, *counted)

    def at(self, places: NDArray[np.intp]) -> Samples:
        """Some of the runs by their places, as often as they are named."""
        kept = {column.name: getattr(self, column.name) for column in fields(self)}
        return Samples(**kept | {name: of[places] for name, of in kept.items() if isinstance(of, np.ndarray)})

    @property
    def net_kwh(self) -> Array:
        """Out less in [kWh]."""
        return self.out_kwh - self.in_kwh

    @property
    def saved_kwh(self) -> Array:
        """What regeneration saves [kWh]."""
        return self.friction_only_net_kwh - self.net_kwh

    @property
    def saved_share(self) -> Array:
        """Energy saved s [1]."""
        return energy_saved_share(self.net_kwh, self.friction_only_net_kwh)


def at_terminals(run: Run) -> tuple[Array, ...]:
    """What `Samples.of` takes, measured on drives with regeneration: energies [J], whether the car could, how late."""
    cars: Any = run.cars.view(np.recarray)
    charge = run.energies["soc_start"] - run.energies["soc_end"]
    usable_j = cars.usable_kwh * J_PER_KWH
    cells_j = charge * usable_j + run.energies["charged_j"]
    held_j = usable_in_the_cold_kwh(cars, run.energies["pack_c_end"]) * J_PER_KWH
    drove = run.energies["able"].astype(float)
    return run.out_j, run.in_j, run.friction_only_net_j, usable_j, held_j, cells_j, drove, longer_share(run)


def run_each(
    trace: Trace,
    car: Car,
    conditions: Conditions,
    driver: Driver,
    drawn: Mapping[str, Array],
    measure: Callable[..., Sequence[Array]],
    regen: Sequence[bool] = (True, False),
    only_driven: bool = False,
    record: bool = False,
    processors: int = PROCESSORS,
) -> Array:
    """Drive one trace with every drawn set of figures.

    Parameters
    ----------
    trace, car, conditions, driver
        What every run shares.
    drawn : mapping
        Figures of car, conditions or driver by key, each of shape (runs, 1).
    measure : callable
        Takes one `Run` for each entry of `regen`, over some of the figures, and gives arrays of shape (those runs,).
    regen : sequence of bool
        Which drives to run: with regeneration, on friction brakes only.
    only_driven : bool
        Whether runs of cars that cannot drive the trace measure nothing: NaN.
    record : bool
        Whether `measure` looks at single steps; energies are there without.
    processors : int
        How many cars are driven side by side; what comes out is the same.

    Returns
    -------
    array (measures, runs)
    """
    cars = car_records(car, conditions, driver, drawn)
    chunks = min(len(cars), -(-len(cars) * len(trace.step_s) // STEPS_AT_ONCE)) if record else 1
    measured = []
    for batch in np.array_split(cars, chunks):
        runs = [_side_by_side(trace, batch, with_it, record, processors) for with_it in regen]
        found = np.array(measure(*runs), dtype=float)
        measured.append(np.where(runs[0].energies["able"], found, np.nan) if only_driven else found)
    return np.concatenate(measured, axis=-1)


def _side_by_side(trace: Trace, cars: Records, regen: bool, record: bool, processors: int) -> Run:
    """A drive with many cars, as many at a time as there are processors: compiled code lets other threads run."""
    run = undriven(road_of(trace), cars, record=record)
    shares = min(len(cars), processors)
    parts = zip(*(np.array_split(of, shares) for of in (cars, run.energies, run.moments)), strict=True)
    asked = [SIDE_BY_SIDE.submit(drive_all, batch, run.road, regen, *filled) for batch, *filled in parts]
    for future in asked:
        future.result()
    return run


def run_samples(
    trace: Trace, car: Car, conditions: Conditions, driver: Driver, drawn: Mapping[str, Array]
) -> Samples:
    """Drive one trace with every drawn set of figures, with regeneration and without."""
    return Samples.of(*run_each(trace, car, conditions, driver, drawn, at_terminals, (True,)))
