"""Drives side by side, and their differences with a band of their own.

A difference's band is not the difference of two bands. What is assumed alike of both drives is drawn once for both, so
a heavier tyre or a weaker motor cancels where it acts on both. What only one of them has, such as the mass of another
class of car, is drawn on its own.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from model.describe.car import CAR_FIELDS
from model.describe.fields import InputError, find
from model.describe.parameters import assumed_figures, car_of, class_labels, open_figures_of
from model.describe.scenario import SETTINGS, Scenario
from model.describe.trace import Array
from model.describe.units import J_PER_KWH
from model.kernel.run import Run
from model.kernel.savings import evaluate
from model.lift_off.curves import as_you_would_drive
from model.sampling.drives import Bands, answer_of, drive, seasons_of, trace_of
from model.sampling.narrowing import FEWEST_LEFT, chosen_by, effective_number, weights_of
from model.sampling.uncertainty import RUNS, Band, Samples, at_terminals, hypercube, run_each, triangular

SAME_ROAD_KM = 0.1
"""Drives of one road whose lengths differ by less are taken to be equally long [km]: no step is longer."""
CHOSEN_STRENGTHS_MPS2 = (0.0, 0.5, 0.7, 1.0, 1.3, 1.5, 2.0, 2.5)
"""Lift-off strengths to choose from [m/s²]; the axis has more, a choice need not."""


# what may differ


def in_car(scenario: Scenario, car_class: str) -> Scenario:
    """The same drive in a car of another class; what is known of the first car stays with it, but for the pedal."""
    pedal = tuple(item for item in scenario.stated if item[0] == "brake_pedal")
    return replace(scenario, car_class=car_class, stated=pedal).with_setting("shown_wh_per_km", None)


def with_strength(scenario: Scenario, strength_mps2: float) -> Scenario:
    """The whole drive at one lift-off strength [m/s²]; strengths of single legs are left out."""
    legs = tuple(replace(leg, lift_off_mps2=None) for leg in scenario.legs)
    return replace(scenario, legs=legs).with_setting("lift_off_mps2", strength_mps2)


def in_season(scenario: Scenario, season: str) -> Scenario:
    """The same drive on a day of one of its year's seasons."""
    return next(then for name, _, then in seasons_of(scenario) if name == season)


def car_text(scenario: Scenario) -> str:
    """The scenario's car in a line, as a link holds it to be compared with another: its class and what was stated."""
    figures = (f"{key}={CAR_FIELDS[key].text(value)}" for key, value in scenario.stated)
    return ";".join((scenario.car_class, *figures))


def in_car_of(scenario: Scenario, text: str) -> Scenario | None:
    """The same drive in the car of `car_text`; None where that is no car."""
    car_class, *figures = text.split(";")
    if car_class not in class_labels():
        return None
    other = replace(in_car(scenario, car_class), stated=())
    try:
        for figure in figures:
            key, _, value = figure.partition("=")
            other = other.with_setting(key, find(CAR_FIELDS, key).parse(value))
        car_of(other)
    except InputError:
        return None
    return other


def _numbers(key: str, *values: float) -> Callable[[Scenario], dict[str, Scenario]]:
    field = SETTINGS[key]
    return lambda scenario: {field.text(value): scenario.with_setting(key, value) for value in values}


def _choices(key: str) -> Callable[[Scenario], dict[str, Scenario]]:
    field = SETTINGS[key]
    values = (True, False) if field.kind == "yes_no" else field.choices
    return lambda scenario: {field.text(value): scenario.with_setting(key, value) for value in values}


SUBJECTS: dict[str, Callable[[Scenario], dict[str, Scenario]]] = {
    "car": lambda scenario: {name: in_car(scenario, name) for name in class_labels()},
    "season": lambda scenario: {season: then for season, _, then in seasons_of(scenario)},
    "lift_off_mps2": lambda scenario: {f"{mps2:g}": with_strength(scenario, mps2) for mps2 in CHOSEN_STRENGTHS_MPS2},
} | {
    key: _choices(key)
    for key in ("brake_pedal", "looks_ahead", "pull_away", "steady_foot", "surface", "cabin", "preconditioned")
} | {
    "soc_start": _numbers("soc_start", 0.5, 0.8, 1.0),
    "payload_kg": _numbers("payload_kg", 0.0, 75.0, 150.0, 300.0),
    "trailer_kg": _numbers("trailer_kg", 0.0, 750.0, 1500.0),
}
"""What may differ between drives, and the drives there are: the given one with each value, by the value."""


def others(scenario: Scenario, subject: str) -> dict[str, Scenario]:
    """The drives that differ from the scenario in one subject, by the value they have of it."""

    def driven(side: Scenario) -> tuple[object, ...]:
        # a pedal that is stated and one that the class has are the same pedal
        return car_of(side), replace(side.conditions, shown_wh_per_km=None), side.driver, side.legs

    return {value: other for value, other in SUBJECTS[subject](scenario).items() if driven(other) != driven(scenario)}


# side by side


@dataclass(frozen=True, eq=False)
class Side:
    """One of the drives: its bands, and the runs behind them. Heat of the friction brakes [kWh] of shape (runs,).

    `weights` says how well each run's car fits what is printed or shown of it [1], shape (runs,); None where nothing
    is. The runs are those of all drawn cars, so that they can be held against another drive's; `answer` counts the
    weights. `reached_km` of `described_km` is how far its battery goes, or as far as was asked.
    """

    scenario: Scenario
    answer: Bands
    samples: Samples
    friction_kwh: Array
    weights: Array | None
    duration_s: float
    reached_km: float
    described_km: float


@dataclass(frozen=True)
class Difference:
    """What a drive has more than another, run by run; bands over the assumed figures.

    `saved_share` is a difference of shares [1], None where one is more than all or None; time is known and has no band.
    """

    net_kwh: Band
    saved_kwh: Band
    saved_share: Band | None
    friction_kwh: Band
    duration_s: float


def draw_beside(scenario: Scenario, first_class: str, runs: int) -> dict[str, Array]:
    """Draw the open figures of a scenario, alike with those of a car of `first_class` where both assume the same."""
    alike, car_class = assumed_figures(first_class), scenario.car_class
    figures = open_figures_of(scenario)
    names = {key: key if figure == alike.get(key) else f"{key} of {car_class}" for key, figure in figures.items()}
    shares = hypercube(names.values(), runs)
    return {
        key: triangular(shares[names[key]], *figure.numbers)[:, None]
        for key, figure in figures.items()
    }


def side_of(
    scenario: Scenario,
    first_class: str,
    *,
    runs: int = RUNS,
    as_driven: bool = False,
    until_km: float | None = None,
    beside: Scenario | None = None,
) -> Side:
    """One drive with its runs, to be held against drives in a car of `first_class`.

    Parameters
    ----------
    scenario : Scenario
        What is driven.
    first_class : str
        Car class of the drive that all others are compared to.
    runs : int
        Sampled cars; the same for drives that are compared.
    as_driven : bool
        Whether slow-downs are as the car's lift-off makes them; otherwise as the habit would have them.
    until_km : float, optional
        How much of the drive is compared [km], where the battery of another does not last for all of it.
    beside : Scenario, optional
        The first drive. What the same car's display shows is of that one.

    Raises
    ------
    InputError
        Where the drive cannot be driven.
    """
    car = car_of(scenario)
    trace = as_you_would_drive(scenario, car) if as_driven else trace_of(scenario)
    if until_km is not None:
        trace = trace.until(1000 * until_km, trace.ends or "compared")
    result = evaluate(trace, car, scenario.conditions, scenario.driver)

    def energies(run: Run) -> tuple[Array, ...]:
        return *at_terminals(run), run.energies["friction_j"]

    drawn = draw_beside(scenario, first_class, runs)
    *terminals, friction_j = run_each(result.trace, car, scenario.conditions, scenario.driver, drawn, energies, (True,))
    samples, weights = Samples.of(*terminals), _weights(scenario, beside or scenario, drawn)
    counted = samples if weights is None else samples.at(chosen_by(weights))
    far = result.trace.duration_s, result.distance_km, result.described_km
    return Side(scenario, answer_of(result, counted), samples, friction_j / J_PER_KWH, weights, *far)


def _weights(scenario: Scenario, first: Scenario, drawn: Mapping[str, Array]) -> Array | None:
    """How well the drawn cars fit what is known of a drive's car [1]; its display may speak of the first drive."""
    shown = scenario.conditions.shown_wh_per_km
    same = car_of(scenario) == car_of(first) and shown == first.conditions.shown_wh_per_km
    of = first if same else scenario
    return weights_of(of, drawn, None if shown is None else drive(of).trace)


def runs_of_both(side: Side, first: Side) -> tuple[NDArray[np.intp], NDArray[np.intp]]:
    """The runs in which both drives' cars fit what is known of them, each as often as it does.

    What is assumed alike of both is one figure in each run, so it has to fit both. Where no run does, what is known
    says that they are not alike, and each is taken with its own runs.
    """
    nothing = np.ones(len(side.friction_kwh))
    here, there = (nothing if samples.weights is None else samples.weights for samples in (side, first))
    both = here if np.array_equal(here, there) else here * there
    if effective_number(both) >= FEWEST_LEFT:
        return chosen_by(both), chosen_by(both)
    return chosen_by(here), chosen_by(there)


def common_km(sides: Sequence[Side]) -> float | None:
    """How much of one road all sides get done [km], where the battery of one does not last as far as another's.

    Such sides are made again until there (`side_of`), or their difference would be of two roads. None: all get as far.
    """
    reached = [side.reached_km for side in sides]
    return min(reached) if max(reached) - min(reached) > SAME_ROAD_KM else None


def difference(side: Side, first: Side) -> Difference:
    """What a drive has more than the first."""
    here, there = runs_of_both(side, first)
    samples, of_first = side.samples.at(here), first.samples.at(there)
    shares = (side.answer.saved_share, first.answer.saved_share)
    are_shares = all(share is not None and share.high <= 1 for share in shares)
    return Difference(
        net_kwh=Band.of(samples.net_kwh - of_first.net_kwh),
        saved_kwh=Band.of(samples.saved_kwh - of_first.saved_kwh),
        saved_share=Band.of(samples.saved_share - of_first.saved_share) if are_shares else None,
        friction_kwh=Band.of(side.friction_kwh[here] - first.friction_kwh[there]),
        duration_s=side.duration_s - first.duration_s,
    )


def told_apart(band: Band) -> bool:
    """Whether a difference exceeds the uncertainty: both ends of its band lie on the same side of zero."""
    return band.low > 0 or band.high < 0
