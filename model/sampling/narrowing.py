"""What is known of the result narrows the drawn cars: a printed test figure, or the average that the car itself shows.

Of the drawn cars those count that use as much as was printed or shown: each is weighted by how near it comes, and drawn
again in proportion. What the user stated stays fixed.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from model.describe.car import Car
from model.describe.fields import InputError
from model.describe.figures import Quantity, Span
from model.describe.parameters import car_of
from model.describe.scenario import SETTINGS, Driver, Scenario
from model.describe.trace import Array, Trace
from model.describe.units import J_PER_KWH
from model.kernel.run import drive_records
from model.physics.records import Records, car_records
from model.sampling.own_part import OWN_SHARE
from model.sampling.printed_tests import RANGE_TEST, TESTS
from model.traces.cycles import cycle_trace

PRINTED = ("printed_wh_per_km", "printed_range_km")
"""What may be printed of a car."""
TEST_SHARE = 0.015
"""How far tests of one road load and weight lie from each other in the US certification, 1 to 2 % [1]."""
PRINTED_SHARE = math.hypot(OWN_SHARE, TEST_SHARE)
"""Standard deviation of a printed figure about that of its drawn car [1]: the test's own part, and that of testing."""
SHOWN_SHARE = 0.03
"""The same of a car's display [1]: assumed, no source found."""
FEWEST_LEFT = 10.0
"""With an effective number of cars below this, nothing that was drawn fits."""


def cells_wh_per_km(trace: Trace, cars: Records) -> Array:
    """What the cells give over a trace, less what they take [Wh/km], shape (cars,): what has to be filled up again."""
    energies = drive_records(trace, cars).energies
    return (energies["soc_start"] - energies["soc_end"]) * cars["usable_kwh"] * 1e6 / trace.distance_m


def effective_number(weights: Array) -> float:
    """How many equally weighted cars these weights [1] are worth [1], after Kish."""
    return float(weights.sum() ** 2 / (weights**2).sum()) if weights.any() else 0.0


@dataclass(frozen=True, eq=False)
class Known:
    """One figure that is known of a result, by its key and in its unit.

    `ratio` is the same figure of each drawn car over it [1], shape (cars,); `share` how near a car must come [1], as a
    standard deviation.
    """

    key: str
    figure: float
    unit: str
    ratio: Array
    share: float


def printed(car: Car, drawn: Mapping[str, Array]) -> list[Known]:
    """What is printed of a car, beside the same of the drawn ones on its test."""
    if car.printed_wh_per_km is None and car.printed_range_km is None:
        return []
    cars, test, found = car_records(car, RANGE_TEST, Driver(), drawn), TESTS[car.printed_test], []
    used = sum(share * cells_wh_per_km(cycle_trace(name), cars) for name, share in test.cycles) / test.factor
    if (figure := car.printed_wh_per_km) is not None:
        ratio = used / cars["charging_efficiency"] / figure
        found.append(Known("printed_wh_per_km", figure, "Wh/km", ratio, PRINTED_SHARE))
    if (figure := car.printed_range_km) is not None:
        ratio = cars["usable_kwh"] * 1000 / used / figure
        found.append(Known("printed_range_km", figure, "km", ratio, PRINTED_SHARE))
    return found


def shown_on(scenario: Scenario, drawn: Mapping[str, Array], driven: Trace) -> list[Known]:
    """What the car's display shows for a drive, beside the same of the drawn ones."""
    figure = scenario.conditions.shown_wh_per_km
    if figure is None:
        return []
    energies = drive_records(
        driven, car_records(car_of(scenario), scenario.conditions, scenario.driver, drawn)
    ).energies
    used = (energies["out_j"] - energies["in_j"]) / J_PER_KWH * 1e6 / driven.distance_m
    return [Known("shown_wh_per_km", figure, "Wh/km", used / figure, SHOWN_SHARE)]


def weights_by(known: Sequence[Known]) -> Array | None:
    """How well each drawn car fits all that is known [1], shape (cars,); None where nothing is.

    Raises
    ------
    InputError
        Where none of the drawn cars comes near.
    """
    if not known:
        return None
    # far off every car, a weight would be nothing: then the nearest would be told from rounding
    off = sum((np.log(np.maximum(figure.ratio, 1e-9)) / figure.share) ** 2 for figure in known)
    weights: Array = np.exp(-0.5 * np.asarray(off))
    if effective_number(np.where(weights > math.exp(-8), weights, 0.0)) < FEWEST_LEFT:
        first = known[0]
        low, high = np.quantile(first.ratio, [0.01, 0.99]) * first.figure
        reason = "printed-range-fits-no-car" if first.unit == "km" else "consumption-fits-no-car"
        given, span = Quantity(first.figure, first.unit, 6, trimmed=True), Span(float(low), float(high), first.unit, 3)
        raise InputError(reason, field=SETTINGS[first.key], given=given, span=span, alone=len(known) == 1)
    return weights


def known_of_result(scenario: Scenario) -> bool:
    """Whether anything is known of what the scenario's car uses: printed of it, or shown by it."""
    return scenario.conditions.shown_wh_per_km is not None or any(key in PRINTED for key, _ in scenario.stated)


def weights_of(scenario: Scenario, drawn: Mapping[str, Array], driven: Trace | None = None) -> Array | None:
    """How well each drawn car fits what is printed or shown [1], as `weights_by`.

    Parameters
    ----------
    scenario : Scenario
        With the figures that are known.
    drawn : mapping
        Figures by key, each of shape (cars, 1).
    driven : Trace, optional
        The drive that the car's display speaks of.
    """
    known = printed(car_of(scenario), drawn)
    return weights_by(known if driven is None else [*known, *shown_on(scenario, drawn, driven)])


def chosen_by(weights: Array) -> NDArray[np.intp]:
    """The places of as many cars again, each as often as its weight says, by systematic resampling: no chance in it."""
    number = len(weights)
    places = (np.arange(number) + 0.5) / number
    return np.minimum(np.searchsorted(np.cumsum(weights) / weights.sum(), places), number - 1)


def narrowed(scenario: Scenario, drawn: dict[str, Array], driven: Trace | None = None) -> dict[str, Array]:
    """The drawn cars, narrowed by what is printed or shown; as they were where nothing is."""
    weights = weights_of(scenario, drawn, driven)
    return drawn if weights is None else {key: values[chosen_by(weights)] for key, values in drawn.items()}
