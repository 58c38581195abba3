"""Recorded drives: a file with speed over time to a trace, and what was measured beside it."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

import numpy as np
import pandas as pd

from model.describe.fields import InputError
from model.describe.figures import Quantity, Share
from model.describe.trace import Array, Trace
from model.describe.units import J_PER_KWH, KMH_PER_MPS
from model.traces.recorded_csv import COLUMNS, csv_table
from model.traces.recorded_gpx import positions_table
from model.traces.resampling import (
    LONGEST_GAP_S,
    STEEPEST,
    mean_between,
    road_height,
    speed_at_whole_seconds,
    whole_seconds,
)

MOST_BYTES = 30_000_000
LARGEST_CHANGE_MPS2 = 12.0
"""More than tyres can do: a greater change of speed is an error of the recording."""


@dataclass(frozen=True)
class Measured:
    """What the recording says about the battery, at its terminals.

    Out and in are counted over the same 1 s steps as in the model, each step by its mean power.
    """

    battery_out_kwh: float
    battery_in_kwh: float
    battery_net_kwh: float
    recovered_share_of_output: float | None
    soc_start: float | None
    soc_end: float | None


@dataclass(frozen=True)
class Recording:
    """A recorded drive; `soc_start` is a share (0 to 1), `notes` says in sentences what was done to the data."""

    trace: Trace
    soc_start: float | None
    measured: Measured | None
    notes: tuple[str, ...]


def read_recording(source: str | Path | bytes, name: str = "") -> Recording:
    """Read a recorded drive from a CSV or GPX file.

    Parameters
    ----------
    source : path or bytes
        The file, or its content.
    name : str
        What to call it; with bytes, its ending tells the format. Left empty: the file's own name.

    Raises
    ------
    InputError
        Where the file cannot be used, naming file, line and column.
    """
    if isinstance(source, bytes):
        data = source
    else:
        name = name or Path(source).name
        try:
            with open(source, "rb") as file:
                data = file.read(MOST_BYTES + 1)
        except OSError as error:
            raise InputError("recording-unreadable", name=name, why=str(error.strerror)) from None
    name = name or "recording.csv"
    if len(data) > MOST_BYTES:
        raise InputError("recording-too-large", name=name, most_mb=Quantity(MOST_BYTES / 1e6, "", 3, trimmed=True))
    if not data.strip():
        raise InputError("recording-empty", name=name)
    match Path(name).suffix.lower():
        case ".csv":
            table, notes = csv_table(data, name)
        case ".gpx":
            table, notes = positions_table(data, name)
        case _:
            raise InputError("recording-of-other-kind", name=name)
    return _recording(table, name, list(notes))


def _known(
    table: pd.DataFrame, key: str, notes: list[str], longest_gap_s: float = np.inf
) -> tuple[Array, Array] | None:
    """Time and value of the filled cells of a column; None where there are none or too many are missing."""
    if key not in table:
        return None
    known = table[key].notna().to_numpy()
    time_s = table["time_s"].to_numpy()
    if not known.any():
        notes.append(f"{key} is empty and was left out.")
        return None
    gap = np.diff(np.concatenate([time_s[:1], time_s[known], time_s[-1:]])).max()
    if gap > longest_gap_s:
        notes.append(f"{key} has a gap of {gap:.0f} s (up to {longest_gap_s:g} s are filled) and was left out.")
        return None
    if not known.all():
        notes.append(f"Empty cells of {key} filled from their neighbours: {np.count_nonzero(~known)}.")
    return time_s[known], table[key].to_numpy()[known]


def _recording(table: pd.DataFrame, name: str, notes: list[str]) -> Recording:
    """Bring samples at any rate to a trace in steps of 1 s."""
    table = table.assign(time_s=table["time_s"] - table["time_s"].iloc[0])
    with_speed = table[table["speed_kmh"].notna()]
    sample_s = with_speed["time_s"].to_numpy()
    time_s = whole_seconds(sample_s)
    speed = speed_at_whole_seconds(sample_s, with_speed["speed_kmh"].to_numpy() / KMH_PER_MPS)
    change = np.abs(np.diff(speed))
    if not speed.any():
        raise InputError("recording-never-moves", name=name, column="speed_kmh")
    if speed.max() * KMH_PER_MPS > COLUMNS["speed_kmh"].maximum:
        raise InputError(
            "recording-too-fast", name=name, speed=Quantity(float(speed.max()) * KMH_PER_MPS, "km/h", places=0),
            after_s=int(speed.argmax()), most=Quantity(COLUMNS["speed_kmh"].maximum, "km/h", places=0),
        )  # fmt: skip
    if change.max() > LARGEST_CHANGE_MPS2:
        at = int(change.argmax())
        before, after = speed[at : at + 2] * KMH_PER_MPS
        raise InputError(
            "recording-jumps", name=name, column="speed_kmh", before=Quantity(float(before), "km/h", places=0),
            after=Quantity(float(after), "km/h", places=0), after_s=at,
            most=Quantity(LARGEST_CHANGE_MPS2 * KMH_PER_MPS, "km/h", places=0),
        )  # fmt: skip
    distance = np.concatenate([[0.0], np.cumsum((speed[1:] + speed[:-1]) / 2)])
    ambient, battery_temp = _known(table, "ambient_c", notes), _known(table, "battery_temp_c", notes)
    charge = _known(table, "soc_pct", notes)
    if charge is not None and charge[1].max() <= 1:
        raise InputError("recording-charge-not-in-percent", name=name, column="soc_pct")
    soc = (None, None) if charge is None else (float(charge[1][0] / 100), float(charge[1][-1] / 100))
    cabin = _known(table, "cabin_kw", notes, LONGEST_GAP_S)
    trace = Trace(
        time_s=time_s,
        speed_mps=speed,
        elevation_m=_elevation(_known(table, "elevation_m", notes), time_s, distance, name, notes),
        name=name,
        ambient_c=None if ambient is None else np.interp(time_s, *ambient),
        battery_temp_c=None if battery_temp is None else np.interp(time_s, *battery_temp),
        recorded=True,
        cabin_w=None if cabin is None else mean_between(*cabin, time_s[:-1], time_s[1:]).clip(min=0) * 1000,
    )
    power = _known(table, "battery_power_kw", notes, LONGEST_GAP_S)
    measured = None if power is None else _measured(power, trace, soc, notes)
    return Recording(trace=trace, soc_start=soc[0], measured=measured, notes=tuple(notes))


def _elevation(known: tuple[Array, Array] | None, time_s: Array, distance: Array, name: str, notes: list[str]) -> Array:
    """Smoothed height at each point of the trace."""
    if known is None:
        notes.append("There is no height: the road was taken as flat.")
        return np.zeros_like(time_s)
    try:
        along = road_height(np.interp(known[0], time_s, distance), known[1], float(distance[-1]))
    except ValueError:
        steepest = Share(STEEPEST, places=0)
        raise InputError("recording-too-steep", name=name, column="elevation_m", most=steepest) from None
    return np.interp(distance, *along)


def _measured(
    power: tuple[Array, Array], trace: Trace, soc: tuple[float | None, float | None], notes: list[str]
) -> Measured:
    """Totals of the measured battery power over the trace."""
    energy = mean_between(*power, trace.time_s[:-1], trace.time_s[1:]) * 1000 / J_PER_KWH
    given, taken = float(energy[energy > 0].sum()), float(-energy[energy < 0].sum())
    parked = float(-energy[(energy < 0) & (trace.step_m == 0)].sum())
    if parked > 0.05 * given:
        notes.append(f"The battery took {parked:.1f} kWh while the car stood: leave out charging from outside.")
    if given < taken and trace.elevation_m[-1] >= trace.elevation_m[0]:
        notes.append("battery_power_kw gives more back than it takes: positive must mean that the battery gives.")
    return Measured(
        battery_out_kwh=given,
        battery_in_kwh=taken,
        battery_net_kwh=given - taken,
        recovered_share_of_output=taken / given if given else None,
        soc_start=soc[0],
        soc_end=soc[1],
    )
