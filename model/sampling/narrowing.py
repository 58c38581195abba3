"""What is known of the result narrows the drawn cars: a printed test figure, or the average that the car itself shows.

Of the drawn cars those count that use as much as was printed or shown: each is weighted by how near it comes, and drawn
again in proportion. What the user stated stays fixed.
"""

from __future__ import annotations

import math
from collections.abc import Mapping

import numpy as np

from model.describe.fields import InputError
from model.describe.figures import Quantity, Span
from model.describe.parameters import car_of
from model.describe.scenario import SETTINGS, Driver, Scenario
from model.describe.trace import Array, Trace
from model.describe.units import J_PER_KWH
from model.kernel.run import drive_records
from model.physics.records import Records, car_records
from model.sampling.own_part import OWN_SHARE
from model.sampling.printed_tests import LABORATORY, TESTS
from model.traces.cycles import cycle_trace

PRINTED_SHARE = math.hypot(OWN_SHARE, 0.015)
"""Standard deviation of a printed figure about that of its drawn car [1]: the test's own part, and tests of one road
load and weight differ by 1 to 2 % in the US certification."""
SHOWN_SHARE = 0.03
"""The same of a car's display [1]: assumed, no source found."""
FEWEST = 10.0
"""With an effective number of cars below this, nothing that was drawn fits."""


def cells_wh_per_km(trace: Trace, cars: Records) -> Array:
    """What the cells give over a trace, less what they take [Wh/km], shape (cars,): what has to be filled up again."""
    energies = drive_records(trace, cars).energies
    return (energies["soc_start"] - energies["soc_end"]) * cars["usable_kwh"] * 1e6 / trace.distance_m


def effective_number(weights: Array) -> float:
    """Of how many equally weighted cars these weights [1] are worth."""
    return float(weights.sum() ** 2 / (weights**2).sum()) if weights.any() else 0.0


def _ratios(scenario: Scenario, drawn: Mapping[str, Array], driven: Trace | None) -> list[tuple[str, Array, float]]:
    """For each figure that is known: its key, the drawn cars' over the known one [1], and how near it must come [1]."""
    stated, car, found = dict(scenario.stated), car_of(scenario), []
    if "printed_wh_per_km" in stated or "printed_range_km" in stated:
        cars = car_records(car, LABORATORY, Driver(), drawn)
        test = TESTS[car.printed_test]
        used = sum(share * cells_wh_per_km(cycle_trace(name), cars) for name, share in test.cycles) / test.factor
        if car.printed_wh_per_km is not None:
            wall = used / cars["charging_efficiency"]
            found.append(("printed_wh_per_km", wall / car.printed_wh_per_km, PRINTED_SHARE))
        if car.printed_range_km is not None:
            reached = cars["usable_kwh"] * 1000 / used
            found.append(("printed_range_km", reached / car.printed_range_km, PRINTED_SHARE))
    shown = scenario.conditions.shown_wh_per_km
    if shown is not None and driven is not None:
        cars = car_records(car, scenario.conditions, scenario.driver, drawn)
        energies = drive_records(driven, cars).energies
        used = (energies["out_j"] - energies["in_j"]) / J_PER_KWH * 1e6 / driven.distance_m
        found.append(("shown_wh_per_km", used / shown, SHOWN_SHARE))
    return found


def weights_of(scenario: Scenario, drawn: Mapping[str, Array], driven: Trace | None = None) -> Array | None:
    """How well each drawn car fits what is printed or shown [1], shape (cars,); None where nothing is.

    Parameters
    ----------
    scenario : Scenario
        With the figures that are known.
    drawn : mapping
        Figures by key, each of shape (cars, 1).
    driven : Trace, optional
        The drive that the car's display speaks of.

    Raises
    ------
    InputError
        Where none of the drawn cars comes near.
    """
    known = _ratios(scenario, drawn, driven)
    if not known:
        return None
    # far off every car, a weight would be nothing: then the nearest would be told from rounding
    off = sum((np.log(np.maximum(ratio, 1e-9)) / share) ** 2 for _, ratio, share in known)
    weights: Array = np.exp(-0.5 * np.asarray(off))
    if effective_number(np.where(weights > math.exp(-8), weights, 0.0)) < FEWEST:
        key, ratio, _ = known[0]
        figure = getattr(scenario.conditions, key) if key == "shown_wh_per_km" else dict(scenario.stated)[key]
        low, high = np.quantile(ratio, [0.01, 0.99]) * figure
        reason, unit = ("printed-range-fits-no-car", "km")
        if key != "printed_range_km":
            reason, unit = ("consumption-fits-no-car", "Wh/km")
        given, span = Quantity(figure, unit, 6, trimmed=True), Span(float(low), float(high), unit, 3)
        raise InputError(reason, field=SETTINGS[key], given=given, span=span, alone=len(known) == 1)
    return weights


def drawn_again(weights: Array, drawn: Mapping[str, Array]) -> dict[str, Array]:
    """As many cars again, each as often as its weight says: systematic, so the same every time."""
    number = len(weights)
    places = (np.arange(number) + 0.5) / number
    chosen = np.searchsorted(np.cumsum(weights) / weights.sum(), places)
    return {key: values[np.minimum(chosen, number - 1)] for key, values in drawn.items()}


def narrowed(scenario: Scenario, drawn: dict[str, Array], driven: Trace | None = None) -> dict[str, Array]:
    """The drawn cars, narrowed by what is printed or shown; as they were where nothing is."""
    weights = weights_of(scenario, drawn, driven)
    return drawn if weights is None else drawn_again(weights, drawn)
