"""A car fitted to one part of a recording, and judged by the rest of it.

Three figures are fitted, each within the bounds that are assumed for its class; what is stated of the car is left as it
is. How far the rest is missed, before and after, is the whole worth of a fit: both are told, and nothing else uses it
until somebody takes it for their car.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from model.describe.fields import InputError
from model.describe.figures import Quantity
from model.describe.parameters import car_of, open_figures_of
from model.describe.scenario import Scenario
from model.describe.trace import Array
from model.out.recorded import drive_as_recorded
from model.traces.logs import Recording

FITTED = ("mass_kg", "accessory_w", "open_pulling_share")
"""Mass, what is drawn standing, and what the drive loses more than the class when it pulls."""
WINDOW_S = 120.0
"""Energies are compared over so long [s] that a shift of a second between power and speed does not count."""
FEWEST_WINDOWS = 8
FIT_ROUNDS = 4
"""Energies are nearly linear in each figure: after so many rounds nothing is left to gain."""


@dataclass(frozen=True)
class Fit:
    """A fit and its worth.

    Parameters
    ----------
    before, after : mapping
        The figures by key, of the car as it was and as it was fitted.
    at_bound : tuple of str
        Those that ended at a bound: the car may be of another class.
    until_s : float
        Where the fitted part ends and the predicted one begins [s].
    error_of_fitted, error_of_rest, error_of_rest_before : float
        Modelled over measured net energy less one [1]: of the part that was fitted, of the rest, and of the rest with
        the car as it was.
    """

    before: Mapping[str, float]
    after: Mapping[str, float]
    at_bound: tuple[str, ...]
    until_s: float
    error_of_fitted: float
    error_of_rest: float
    error_of_rest_before: float

    def taken_by(self, scenario: Scenario) -> Scenario:
        """The scenario with the fitted figures stated of its car."""
        for key, value in self.after.items():
            scenario = scenario.with_setting(key, value)
        return scenario


def fit(recording: Recording, scenario: Scenario) -> Fit:
    """Fit the open figures of a car on the first half of what a recording measured, and predict the rest.

    Raises
    ------
    InputError
        Where no power was measured, the drive is too short, all figures are stated, or a part took nothing.

    Notes
    -----
    Least squares over windows of two minutes, by Gauss and Newton's steps within the bounds. That a figure lies in the
    middle of its bounds counts as one window more: what the drive does not tell stays there.
    """
    if recording.power_w is None:
        raise InputError("fit-without-power")
    open_figures = open_figures_of(scenario)
    keys = [key for key in FITTED if key in open_figures]
    if not keys:
        raise InputError("fit-all-stated")
    step_s = recording.trace.step_s
    window = (np.cumsum(step_s) // WINDOW_S).astype(int)
    measured = np.bincount(window, recording.power_w * step_s)
    known = len(measured) // 2
    if known < FEWEST_WINDOWS:
        raise InputError("fit-too-short", least=Quantity(2 * FEWEST_WINDOWS * WINDOW_S / 60, "minutes", places=0))
    if measured[:known].sum() <= 0 or measured[known:].sum() <= 0:
        raise InputError("fit-nothing-taken")
    low, mid, high = (np.array([getattr(open_figures[key], end) for key in keys]) for end in ("low", "mid", "high"))

    def modelled(figures: Array) -> Array:
        asked = scenario
        for key, value in zip(keys, figures, strict=True):
            asked = asked.with_setting(key, float(value))
        _, result = drive_as_recorded(recording, asked, frozenset())
        return np.bincount(window, result.run.terminal_w[0] * step_s).astype(float)

    scale = (high - low) / 2
    figures = np.array([getattr(car_of(scenario), key) for key in keys])
    begun, now = figures, modelled(figures)
    first = now
    for _ in range(FIT_ROUNDS):
        moved = figures + np.where(figures + 0.2 * scale > high, -0.2, 0.2) * scale
        slopes = np.array(
            [modelled(np.where(np.arange(len(keys)) == place, moved, figures))[:known] - now[:known]
             for place in range(len(keys))]
        ).T / ((moved - figures) / scale)  # fmt: skip
        missed = measured[:known] - now[:known]
        weight = max(float(np.sqrt(np.mean(missed**2))), 1.0)
        figures = _step(figures, slopes, missed, weight, (low, mid, high))
        now = modelled(figures)

    def error(of: Array, part: slice) -> float:
        return float(of[part].sum() / measured[part].sum() - 1)

    return Fit(
        before=dict(zip(keys, begun.tolist(), strict=True)),
        after=dict(zip(keys, figures.tolist(), strict=True)),
        at_bound=tuple(key for key, value, least, most in zip(keys, figures, low, high, strict=True)
                       if min(value - least, most - value) <= 1e-9 * (most - least)),
        until_s=float(np.cumsum(step_s)[window < known][-1]),
        error_of_fitted=error(now, slice(known)),
        error_of_rest=error(now, slice(known, None)),
        error_of_rest_before=error(first, slice(known, None)),
    )  # fmt: skip


def _step(
    figures: Array, slopes: Array, missed: Array, weight: float, bounds: tuple[Array, Array, Array]
) -> Array:
    """The figures that miss least if energies were straight lines, each within its bounds."""
    low, mid, high = bounds
    scale = (high - low) / 2
    free = np.ones(len(figures), dtype=bool)
    found = figures.copy()
    while free.any():
        rest = missed - slopes[:, ~free] @ ((found - figures) / scale)[~free]
        rows = np.vstack([slopes[:, free], weight * np.eye(int(free.sum()))])
        aims = np.concatenate([rest, weight * ((mid - figures) / scale)[free]])
        found[free] = figures[free] + scale[free] * np.linalg.lstsq(rows, aims, rcond=None)[0]
        beyond = free & ((found < low) | (found > high))
        if not beyond.any():
            break
        found = np.clip(found, low, high)
        free &= ~beyond
    return found
