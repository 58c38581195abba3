"""What a claim leaves open, drawn: cars, cycles, weather and habits for a thousand or so runs at once.

Inputs are drawn by Latin hypercube: a band as a triangle, a list in equal parts. The assumed figures of the car follow
its class, so mass, drag, battery and motor go together; within a class the figures of DRAWN_TOGETHER do.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, replace
from typing import Any

import numpy as np
from numpy.typing import NDArray

from model.claims.inputs import CAR_AND_DRIVE, Open
from model.claims.roads import named_trace
from model.describe.car import CAR_FIELDS
from model.describe.fields import Entry, changed, filled
from model.describe.parameters import assumed_figures, car_from, class_labels
from model.describe.scenario import CONDITION_FIELDS, DRIVER_FIELDS, Driver
from model.describe.trace import Array, Trace
from model.sampling.narrowing import PRINTED, Known, chosen_by, printed, weights_by
from model.sampling.uncertainty import PROCESSORS, hypercube, run_each, triangular
from model.traces.cycles import LABORATORY

DRAWN_TOGETHER = {"usable_kwh": "mass_kg", "motor_peak_kw": "mass_kg", "regen_peak_kw": "mass_kg"}
"""Figures that rise with another within a class: the heavier car has the bigger battery and motor. Assumed."""
EVENLY = ("open_slowing_share", "open_pulling_share", "rolling_coefficient", "drag_area_m2")
"""Assumed figures that are drawn as evenly as what a claim leaves open: hardly any other moves an answer as much."""
EACH_ITS_OWN = ("heat_source", "cabin", "preconditioned")
"""Choices that may differ from run to run; runs that differ in another are driven apart."""
GROUPS = ThreadPoolExecutor(PROCESSORS, thread_name_prefix="groups")
"""One group of runs is made ready while another is driven."""
GENERATORS = {
    607: 239, 1009: 77, 1499: 37, 1999: 254, 2503: 1047, 4001: 422, 6007: 210, 16001: 4598
}  # fmt: skip
"""Numbers of runs, primes, and what makes the lattice of each: the lowest weighted P2 in nine inputs."""


@dataclass(frozen=True, eq=False)
class Draws:
    """Drawn inputs and figures by key, each of shape (runs,).

    `shares` says where in their bands the cars' figures lie [1], `inputs` what is none of a class's figures.
    """

    columns: Mapping[str, Array]
    shares: Mapping[str, Array] | None = None
    inputs: frozenset[str] = frozenset()

    def __len__(self) -> int:
        return len(self.columns["car"])

    def __getitem__(self, key: str) -> Array:
        return self.columns[key]

    def at(self, rows: NDArray[np.intp] | NDArray[np.bool_]) -> Draws:
        """Some of the draws, by their places."""
        columns, shares = ({key: at[rows] for key, at in part.items()} for part in (self.columns, self.shares or {}))
        return replace(self, columns=columns, shares=shares)

    def replaced(self, **columns: Entry | Array) -> Draws:
        """The same draws with some inputs set otherwise: numbers, choices, or arrays of shape (runs,)."""
        new = {key: np.broadcast_to(np.asarray(value), (len(self),)) for key, value in columns.items()}
        return replace(self, columns={**self.columns, **new})

    def without(self, keys: Iterable[str]) -> Draws:
        """The same draws with some inputs as usual again, whatever was drawn or said of them."""
        return replace(self, columns={key: column for key, column in self.columns.items() if key not in set(keys)})

    def in_cars(self, cars: Array) -> Draws:
        """The same draws in cars of other classes, whose figures lie at the same places of their bands."""
        return _with_figures({key: self[key] for key in self.inputs} | {"car": cars}, self.shares)

    def groups(self, keys: Sequence[str]) -> Iterator[tuple[tuple[Entry, ...], NDArray[np.intp]]]:
        """Runs that share their values of `keys`: the values and the places of the runs."""
        rows: dict[tuple[Entry, ...], list[int]] = {}
        for row, values in enumerate(zip(*(self[key].tolist() for key in keys), strict=True)):
            rows.setdefault(values, []).append(row)
        for values, places in rows.items():
            yield values, np.array(places)

    def drive(
        self,
        measure: Callable[[Trace], Callable[..., Sequence[Array]]],
        regen: Sequence[bool] = (True, False),
        *,
        by: Sequence[str] = ("cycle",),
        trace: Callable[..., Trace] | None = None,
        record: bool = False,
    ) -> Array:
        """Drive every run; runs on the same trace go together.

        Parameters
        ----------
        measure : callable
            Takes the trace and gives what `model.sampling.uncertainty.run_each` measures on it.
        regen : sequence of bool
            With regeneration, on friction brakes only.
        by : sequence of str
            Inputs that make the trace.
        trace : callable
            From their values to the trace; the cycle or drive of that name if left out.
        record : bool
            Whether what is measured depends on single steps.

        Returns
        -------
        array (measures, runs)
        """
        settings = [key for key in self.columns if key in CAR_AND_DRIVE]
        apart = [key for key in settings if CAR_AND_DRIVE[key].kind != "number" and key not in EACH_ITS_OWN]

        def driven(values: tuple[Entry, ...], rows: NDArray[np.intp]) -> Array:
            road = (trace or named_trace)(*values[: len(by)])
            said = dict(zip(apart, values[len(by) :], strict=True))
            tables = CAR_FIELDS, CONDITION_FIELDS, DRIVER_FIELDS
            stated, around, habits = ({key: value for key, value in said.items() if key in table} for table in tables)
            car = car_from(str(self["car"][rows[0]]), stated)
            conditions, driver = changed(LABORATORY, around), filled(Driver, habits)
            figures = {key: self[key][rows, None] for key in settings if key not in said}
            return run_each(
                road, car, conditions, driver, figures, measure(road), regen, only_driven=True, record=record
            )

        groups = list(self.groups([*by, *apart]))
        measured = list(GROUPS.map(driven, *zip(*groups, strict=True)))
        found = np.empty((len(measured[0]), len(self)))
        for (_, rows), of_group in zip(groups, measured, strict=True):
            found[:, rows] = of_group
        return found


def _with_figures(columns: Mapping[str, Array], shares: Mapping[str, Array] | None) -> Draws:
    """Add the assumed figures of each run's class: at its place of the band [1], or in the middle."""
    cars = columns["car"]
    found: dict[str, NDArray[Any]] = dict(columns)
    for car_class in dict.fromkeys(cars.tolist()):
        rows = cars == car_class
        for key, item in assumed_figures(car_class).items():
            if key in columns:
                continue
            found.setdefault(key, np.full(len(cars), np.nan if CAR_AND_DRIVE[key].kind == "number" else None))
            if shares is None or item.low == item.high:
                found[key][rows] = item.mid
            else:
                found[key][rows] = triangular(shares[key][rows], *item.numbers)
    return Draws(found, shares, frozenset(columns))


def lattice(inputs: Mapping[str, Open], runs: int, seed: int) -> dict[str, Array]:
    """A Latin hypercube laid on a lattice: even in each input, and about even in every few of them together [1].

    A Korobov lattice, shifted at random. Lists come first, the longest before all, since evenness falls off.
    """
    order = sorted(inputs, key=lambda key: (not inputs[key].varies, inputs[key].band, -len(inputs[key].values), key))
    shift = np.random.RandomState(seed).random_sample(len(order))
    steps = np.arange(runs) * np.array([[pow(GENERATORS[runs], place, runs)] for place in range(len(order))]) % runs
    return dict(zip(order, (steps / runs + shift[:, None]) % 1.0, strict=True))


def draw(inputs: Mapping[str, Open], runs: int, seed: int) -> Draws:
    """Draw every input and the assumed figures of the cars; `inputs` must hold ``car``."""
    figures = {key for car_class in class_labels() for key in assumed_figures(car_class)}
    shares = hypercube(figures, runs, seed)
    for place, key in enumerate(EVENLY, 1):
        # before the first input on the lattice, so that what else is drawn moves no figure
        steps = np.arange(runs) * pow(GENERATORS[runs], -place, runs) % runs
        shares[key] = (steps / runs + shares[key][0]) % 1.0
    shares |= lattice(inputs, runs, seed)
    shares |= {key: shares[lead] for key, lead in DRAWN_TOGETHER.items()}
    return _with_figures({key: extent.at(shares[key]) for key, extent in inputs.items()}, shares)


def fitting(draws: Draws) -> Draws:
    """The draws, each as often as its car fits what is printed of it; as they were where nothing is said of that.

    Raises
    ------
    InputError
        Where no drawn car comes near.
    """
    if draws.inputs.isdisjoint(PRINTED):
        return draws
    figures = [key for key in draws.columns if key in CAR_FIELDS and key not in PRINTED]
    apart = [key for key in figures if CAR_FIELDS[key].kind != "number"]
    known: dict[str, Known] = {}
    for (car_class, *values), rows in draws.groups(["car", *apart]):
        said = {key: float(draws[key][rows[0]]) for key in PRINTED if key in draws.inputs}
        car = car_from(str(car_class), dict(zip(apart, values, strict=True)) | said)
        for known_figure in printed(car, {key: draws[key][rows, None] for key in figures if key not in apart}):
            all_ = known.setdefault(known_figure.key, replace(known_figure, ratio=np.empty(len(draws))))
            all_.ratio[rows] = known_figure.ratio * known_figure.figure / draws[known_figure.key][rows]
    weights = weights_by(list(known.values()))
    return draws if weights is None else draws.at(chosen_by(weights))


def one_at_a_time(inputs: Mapping[str, Open]) -> tuple[Draws, list[tuple[str, Entry]]]:
    """A base run, then one run for each end of each input; what was changed in each run after the first."""
    base = {key: extent.base for key, extent in inputs.items()}
    figures = {
        key: Open(item.numbers, band=True)
        for key, item in assumed_figures(base["car"]).items()
        if key not in inputs and item.low != item.high
    }
    changes = [
        (key, value) for key, extent in [*inputs.items(), *figures.items()] if extent.varies for value in extent.ends
    ]
    columns = {key: np.array([value, *(v if k == key else value for k, v in changes)]) for key, value in base.items()}
    draws = _with_figures(columns, None)
    varied = {key: column.copy() for key, column in draws.columns.items()}
    for row, (key, value) in enumerate(changes, 1):
        varied[key][row] = value
    return replace(draws, columns=varied), changes
