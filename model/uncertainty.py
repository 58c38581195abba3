"""Bands: the 5 to 95 % range over the assumed figures. What the user stated is fixed.

Figures are drawn by Latin hypercube from triangular distributions (low, mid, high), each on its own. The generator
and the seed are fixed, so the same question gives the same bytes.
"""

from __future__ import annotations

import zlib
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

import numpy as np
from numpy.typing import NDArray

from model import motor
from model.car import CAR_FIELDS, Car
from model.parameters import Assumed
from model.savings import energy_saved_share
from model.scenario import CONDITION_FIELDS, DRIVER_FIELDS, Conditions, Driver
from model.simulation import Run, solve
from model.trace import Array, Trace
from model.units import J_PER_KWH
from model.wheel_demand import wheel_demand

RUNS = 500
SEED = 20261125
LOW_SHARE, HIGH_SHARE = 0.05, 0.95
CHUNK = 24
"""About how many runs of half an hour are worked through together, more of a shorter drive: few enough for their arrays
to stay in the processor's cache."""
LEAST_SPEED_MPS, ROUNDING = 0.1, 1 + 1e-9
"""A car that starts asks for force, not for power, below this speed [m/s]; what is more than rounding [1]."""


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
        """The band in another unit."""
        return Band(self.low * factor, self.mid * factor, self.high * factor)


def triangular(share: Array, low: float, mid: float, high: float) -> Array:
    """Value below which `share` [1] of a triangular distribution lies."""
    width = high - low
    if width == 0:
        return np.full_like(share, mid)
    turn = (mid - low) / width
    rising = low + np.sqrt(share * width * (mid - low))
    falling = high - np.sqrt((1 - share) * width * (high - mid))
    return np.where(share < turn, rising, falling)


def hypercube(keys: Iterable[str], runs: int = RUNS, seed: int = SEED) -> dict[str, Array]:
    """A Latin hypercube: for every key one place in each of `runs` equal shares of its range [1]; shape (runs,).

    A key's places hang on the seed and the key alone: whatever else is drawn, the same figure is drawn alike. So
    stating one figure moves no other, and drives can be held against each other run by run.
    """

    def places(key: str) -> Array:
        # RandomState's stream never changes between versions of numpy
        random = np.random.RandomState([seed, zlib.crc32(key.encode())])
        places: Array = (random.permutation(runs) + random.random_sample(runs)) / runs
        return places

    return {key: places(key) for key in keys}


def sample(figures: Mapping[str, Assumed], runs: int = RUNS, seed: int = SEED) -> dict[str, Array]:
    """Draw every figure `runs` times by Latin hypercube; shape (runs, 1)."""
    return {
        key: triangular(share, figures[key].low, figures[key].mid, figures[key].high)[:, None]
        for key, share in hypercube(figures, runs, seed).items()
    }


@dataclass(frozen=True, eq=False)
class Samples:
    """Energies of the sampled runs [kWh], each of shape (runs,).

    `unable` counts the cars whose motor or battery could not give what the trace asks (`drove`). They are in all the
    same, as if they could: a car that is slower drives another trace.
    """

    out_kwh: Array
    in_kwh: Array
    friction_only_net_kwh: Array
    unable: int = 0

    @classmethod
    def of(cls, out_j: Array, in_j: Array, friction_only_net_j: Array, drove: Array) -> Samples:
        """From energies [J] and whether the car could drive the trace (1 or 0), each of shape (runs,)."""
        unable = int((drove == 0).sum())
        return cls(out_j / J_PER_KWH, in_j / J_PER_KWH, friction_only_net_j / J_PER_KWH, unable)

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


def at_terminals(run: Run, without: Run) -> tuple[Array, ...]:
    """What `Samples.of` takes, measured on drives with regeneration and on friction brakes only."""
    return run.terminal_out_j, run.terminal_in_j, without.net_j, drove(run).astype(float)


def drove(run: Run) -> NDArray[np.bool_]:
    """Whether motor and battery could give what the trace asked; shape (runs,)."""
    car = run.car
    shaft_w = run.shaft_n * np.maximum(run.demand.speed, LEAST_SPEED_MPS)
    able = (run.shaft_n <= motor.greatest_force_n(car) * ROUNDING) & (shaft_w <= car.motor_peak_kw * 1000 * ROUNDING)
    # past the battery's greatest power more than half of what its cells give would stay in it as heat
    strong = 2 * run.cell_loss_w <= np.abs(run.cell_w)
    return np.asarray((able & strong).all(-1) & (run.soc >= 0).all(-1))


def run_each(
    trace: Trace,
    car: Car,
    conditions: Conditions,
    driver: Driver,
    drawn: Mapping[str, Array],
    measure: Callable[..., Sequence[Array]],
    regen: Sequence[bool] = (True, False),
    only_driven: bool = False,
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
        Whether runs of cars that cannot drive the trace (see `drove`) measure nothing: NaN.

    Returns
    -------
    array (measures, runs)
    """
    runs = len(next(iter(drawn.values()))) if drawn else 1
    measured = []
    half_hours = len(trace.step_s) / 1800
    # a drive of a day is worked through run by run, never in less
    chunks = min(runs, max(1, round(runs * half_hours / CHUNK)))
    for rows in np.array_split(np.arange(runs), chunks):
        chunk: dict[str, Any] = {key: values[rows] for key, values in drawn.items()}
        cars = replace(car, **{key: value for key, value in chunk.items() if key in CAR_FIELDS})
        around = replace(conditions, **{key: value for key, value in chunk.items() if key in CONDITION_FIELDS})
        drivers = replace(driver, **{key: value for key, value in chunk.items() if key in DRIVER_FIELDS})
        demand = wheel_demand(trace, cars, around)
        both = [
            solve(demand, cars, around, drivers, regen=with_it, battery_temp_c=trace.battery_temp_c, record=False)
            for with_it in regen
        ]
        # where nothing that is drawn touches a run, it was driven once for all
        found = np.array([np.broadcast_to(one, len(rows)) for one in measure(*both)])
        measured.append(np.where(drove(both[0]), found, np.nan) if only_driven else found)
    return np.concatenate(measured, axis=-1)


def run_samples(
    trace: Trace, car: Car, conditions: Conditions, driver: Driver, drawn: Mapping[str, Array]
) -> Samples:
    """Drive one trace with every drawn set of figures, with regeneration and without."""
    return Samples.of(*run_each(trace, car, conditions, driver, drawn, at_terminals))
