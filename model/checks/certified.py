"""How far to trust it: every certified car beside the model, as the tests found them.

``assets/published/certified_found.csv`` is written and checked by ``tests/published``: of each car, on the US city and
highway cycle, what was measured, what the model says, and bands that come from the other makers' groups alone.
"""

from __future__ import annotations

from collections import Counter, defaultdict
from dataclasses import dataclass
from functools import cache
from itertools import combinations

import numpy as np
from numpy.typing import NDArray

from model.describe.tables import rows
from model.describe.trace import Array

SAID = {50: ("q25", "q75"), 80: ("q10", "q90"), 90: ("q05", "q95")}
"""Bands by the share of measured cars that should lie in them [%]."""
GIVEN = ("given_low", "given_high")
"""The 90 % band where the other cycle's printed consumption is known."""
KNOWN = ("road load", "data sheet")
OF_ONE_CAR = ("group", "class_words", "model_year", "rated_hp", "drive")
"""What versions of one car have in common in the list."""
OF_ONE_VERSION = ("etw_lb", "a_lbf", "b_lbf_per_mph", "c_lbf_per_mph2")
"""What sets them apart: weight and road load."""


@dataclass(frozen=True, eq=False)
class CarsFound:
    """The certified cars on one cycle, with their road load or only their data sheet known; a place for each car.

    Energies from the wall in Wh/km; `bands` by the names of the table's columns.
    """

    known: str
    cycle: str
    ids: tuple[str, ...]
    groups: tuple[str, ...]
    kinds: tuple[str, ...]
    classes: tuple[str, ...]
    measured: Array
    modelled: Array
    bands: dict[str, Array]

    @property
    def errors_pct(self) -> Array:
        """Modelled over measured, less one [%]."""
        return 100 * (self.modelled / self.measured - 1)

    def inside(self, band: tuple[str, str]) -> NDArray[np.bool_]:
        """Whether each measured car lies in its band."""
        low, high = (self.bands[end] for end in band)
        return (low <= self.measured) & (self.measured <= high)

    def above(self, band: tuple[str, str]) -> NDArray[np.bool_]:
        """Whether each car took more than its band says."""
        return self.measured > self.bands[band[1]]

    def below(self, band: tuple[str, str]) -> NDArray[np.bool_]:
        """Whether each car took less than its band says."""
        return self.measured < self.bands[band[0]]

    def by_kind(self, which: NDArray[np.bool_]) -> list[tuple[str, int, int]]:
        """Kinds among some of the cars: how many of them, of how many of that kind in all; the most frequent first."""
        these, all_ = Counter(self.of(which).kinds), Counter(self.kinds)
        return [(kind, count, all_[kind]) for kind, count in sorted(these.items(), key=lambda row: (-row[1], row[0]))]

    def held_pct(self, band: tuple[str, str]) -> float:
        """How many measured cars lie in their bands [%]."""
        return float(100 * self.inside(band).mean())

    def half_width_pct(self, band: tuple[str, str]) -> float:
        """Median of half a band's width over its middle [%]."""
        low, high = (self.bands[end] for end in band)
        return float(np.median(100 * (high - low) / 2 / self.bands["q50"]))

    def score(self, band: tuple[str, str], said_pct: float) -> float:
        """Mean interval score [Wh/km], less is better: width, and a fine for what is outside (Gneiting & Raftery)."""
        low, high = (self.bands[end] for end in band)
        outside = np.maximum(low - self.measured, 0) + np.maximum(self.measured - high, 0)
        return float(np.mean(high - low + 2 / (1 - said_pct / 100) * outside))

    def of(self, which: NDArray[np.bool_]) -> CarsFound:
        """The cars for which `which` says yes."""

        def kept(values: tuple[str, ...]) -> tuple[str, ...]:
            return tuple(np.array(values)[which])

        return CarsFound(
            self.known, self.cycle, kept(self.ids), kept(self.groups), kept(self.kinds), kept(self.classes),
            self.measured[which], self.modelled[which], {name: values[which] for name, values in self.bands.items()},
        )  # fmt: skip


@cache
def certified_found(known: str, cycle: str) -> CarsFound:
    """The certified cars on ``udds`` or ``hwfet``, with ``road load`` or only ``data sheet`` known."""
    table = [
        row for row in rows("published/certified_found.csv") if row["known"] == known and row["cycle"] == cycle
    ]
    names = [name for name in table[0] if name.startswith(("q", "given"))]

    def words(key: str) -> tuple[str, ...]:
        return tuple(row[key] for row in table)

    def numbers(key: str) -> Array:
        return np.array([float(row[key]) for row in table])

    return CarsFound(
        known, cycle, words("id"), words("group"), words("kind"), words("like"), numbers("measured_wh_per_km"),
        numbers("modelled_wh_per_km"), {name: numbers(name) for name in names},
    )  # fmt: skip


@dataclass(frozen=True, eq=False)
class VersionsApart:
    """Pairs of cars of one cycle, by how much one took more than the other: logarithms of ratios, times 100 [%].

    Two versions of one car as measured and as modelled, their road load known, a place for each pair; and two tests of
    one and the same version.
    """

    measured_pct: Array
    modelled_pct: Array
    tests_pct: Array

    @property
    def missed_pct(self) -> Array:
        """Modelled differences less the measured ones [%]."""
        return self.modelled_pct - self.measured_pct


@cache
def versions_apart(cycle: str) -> VersionsApart:
    """What weight and road load do to a car: versions of one car, tests of the same version taken together."""
    listed = {row["id"]: row for row in rows("published/epa_certified_2019_2025.csv")}
    found = certified_found(KNOWN[0], cycle)
    logs = 100 * np.log(np.column_stack([found.measured, found.modelled]))
    families: dict[tuple[str, ...], dict[tuple[str, ...], list[Array]]] = defaultdict(lambda: defaultdict(list))
    for name, log in zip(found.ids, logs, strict=True):
        car, version = (tuple(listed[name][key] for key in keys) for keys in (OF_ONE_CAR, OF_ONE_VERSION))
        families[car][version].append(log)
    pairs = np.array([
        np.mean(second, axis=0) - np.mean(first, axis=0)
        for versions in families.values()
        for first, second in combinations(versions.values(), 2)
    ])  # fmt: skip
    tests = np.array([
        second[0] - first[0]
        for versions in families.values()
        for tests_of_one in versions.values()
        for first, second in combinations(tests_of_one, 2)
    ])  # fmt: skip
    return VersionsApart(pairs[:, 0], pairs[:, 1], tests)
