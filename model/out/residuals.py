"""Where a recorded drive and its model part: by speed, by slow-down, and by the minutes since the start."""

from __future__ import annotations

import numpy as np
import pandas as pd

from model.describe.units import J_PER_KWH, J_PER_WH, KMH_PER_MPS
from model.kernel.savings import Result
from model.traces.driven_habits import falls
from model.traces.logs import Recording

SPEED_STEP_KMH = 20.0
MINUTES_STEP = 5.0
MOST_MINUTES = 30.0
"""A car is warm by then; what comes after is one last row."""


def by_speed(recording: Recording, result: Result) -> pd.DataFrame:
    """Net energy by speed: `from_kmh`, `to_kmh`, `minutes`, `measured_kwh`, `modelled_kwh`, `more_kwh`.

    `more_kwh` is modelled less measured. One row a step of 20 km/h in which the car drove; steps at rest are the first
    row, from 0 to 0. The rows add up to the whole drive. Empty where no power was measured.
    """
    speed_kmh = result.trace.mean_speed_mps * KMH_PER_MPS
    place = np.ceil(speed_kmh / SPEED_STEP_KMH).astype(int)
    table = _summed(recording, result, place)
    top = table.index.to_numpy() * SPEED_STEP_KMH
    return table.assign(from_kmh=np.maximum(top - SPEED_STEP_KMH, 0.0), to_kmh=top).reset_index(drop=True)


def by_minutes(recording: Recording, result: Result) -> pd.DataFrame:
    """Net energy by the time since the start: `from_min`, `to_min`, and the columns of `by_speed` but its speeds.

    One row five minutes, up to half an hour; the rest of the drive is the last row.
    """
    minutes = result.trace.time_s[:-1] / 60
    place = np.minimum(minutes // MINUTES_STEP, MOST_MINUTES // MINUTES_STEP).astype(int)
    table = _summed(recording, result, place)
    start = table.index.to_numpy() * MINUTES_STEP
    end = np.minimum(np.where(start < MOST_MINUTES, start + MINUTES_STEP, np.inf), result.trace.duration_s / 60)
    return table.assign(from_min=start, to_min=end).reset_index(drop=True)


def by_slow_down(recording: Recording, result: Result) -> pd.DataFrame:
    """Each slow-down by 10 km/h or more: what came back into the battery meanwhile, measured and modelled.

    Columns `minute`, `from_kmh`, `to_kmh`, `hardest_mps2`, `measured_wh`, `modelled_wh`, `more_wh`. Empty where no
    power was measured.
    """
    trace, measured = result.trace, recording.power_w
    columns = ["minute", "from_kmh", "to_kmh", "hardest_mps2", "measured_wh", "modelled_wh", "more_wh"]
    if measured is None:
        return pd.DataFrame(columns=columns)
    back = [-np.minimum(watts, 0.0) * trace.step_s / J_PER_WH for watts in (measured, result.run.terminal_w[0])]
    rows = []
    for first, last in falls(trace.speed_mps):
        measured_wh, modelled_wh = (float(each[first:last].sum()) for each in back)
        speeds = trace.speed_mps[[first, last]] * KMH_PER_MPS
        hardest = float(-trace.acceleration_mps2[first:last].min())
        rows.append((trace.time_s[first] / 60, *speeds, hardest, measured_wh, modelled_wh, modelled_wh - measured_wh))
    return pd.DataFrame(rows, columns=columns)


def _summed(recording: Recording, result: Result, place: np.ndarray) -> pd.DataFrame:
    """Time and energies by a whole number for each step, in the order of those numbers."""
    if recording.power_w is None:
        return pd.DataFrame({key: [] for key in ("minutes", "measured_kwh", "modelled_kwh", "more_kwh")}, dtype=float)
    step_s = result.trace.step_s
    steps = pd.DataFrame(
        {
            "minutes": step_s / 60,
            "measured_kwh": recording.power_w * step_s / J_PER_KWH,
            "modelled_kwh": result.run.terminal_w[0] * step_s / J_PER_KWH,
        }
    )
    table = steps.groupby(place).sum()
    return table.assign(more_kwh=table["modelled_kwh"] - table["measured_kwh"])
