"""Recorded drives beside the model: one of them, or all that a folder holds.

A folder is worked through by a plain loop: half an hour recorded ten times a second takes some 10 ms to read and drive,
and a tenth of a second more with its band, so a thousand drives are a matter of minutes and need no cluster of workers.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from pathlib import Path
from statistics import median
from typing import Any

import numpy as np
import pandas as pd

from model.describe.fields import InputError
from model.describe.figures import Several
from model.describe.parameters import car_of
from model.describe.scenario import Scenario
from model.describe.units import J_PER_KWH, KMH_PER_MPS
from model.kernel.savings import Result, evaluate
from model.out.answers import drawn_for, points
from model.sampling.drives import draws_of
from model.sampling.own_part import OPEN_KEY, own_part
from model.sampling.uncertainty import RUNS, Band, hypercube, run_each
from model.traces.logs import Recording, read_recording
from model.words.refusals import COMMAND_LINE, refusal_words

ENDINGS = (".csv", ".gpx")
OWN = "own_part of a recording"
MEASURED = {
    "battery_net_kwh": "measured_net_kwh",
    "recovered_share_of_output": "measured_recovered_share_of_output",
}
"""Under which keys of a row the measured figure stands beside the modelled one."""


def drive_recording(file: Path, scenario: Scenario, given: frozenset[str]) -> tuple[Recording, Scenario, Result]:
    """Drive a recording; its own charge and air temperature stand in for what was not `given`, by keys.

    Raises
    ------
    InputError
        Where the file cannot be read or its drive cannot be driven.
    """
    recording = read_recording(file)
    return recording, *drive_as_recorded(recording, scenario, given)


def drive_as_recorded(recording: Recording, scenario: Scenario, given: frozenset[str]) -> tuple[Scenario, Result]:
    """The same of a recording that has been read."""
    trace = recording.trace
    if recording.soc_start is not None and "soc_start" not in given:
        scenario = scenario.with_setting("soc_start", recording.soc_start)
    if "ambient_c" in given:
        trace = replace(trace, ambient_c=None)
    elif trace.ambient_c is not None:
        scenario = scenario.with_setting("ambient_c", float(trace.ambient_c.mean()))
    return scenario, evaluate(trace, car_of(scenario), scenario.conditions, scenario.driver)


def energy_over_time(recording: Recording, result: Result) -> pd.DataFrame:
    """What left the battery less what came back until each moment [kWh]: measured, where it was, and modelled.

    One row a step, with `minutes` since the start, `speed_kmh` and `elevation_m` at its end.
    """
    trace = result.trace
    steps = {"measured_kwh": recording.power_w, "modelled_kwh": result.run.terminal_w[0]}
    energies = {name: np.cumsum(watts * trace.step_s) / J_PER_KWH for name, watts in steps.items() if watts is not None}
    return pd.DataFrame(
        {"minutes": trace.time_s[1:] / 60, "speed_kmh": trace.speed_mps[1:] * KMH_PER_MPS,
         "elevation_m": trace.elevation_m[1:]} | energies
    )  # fmt: skip


def band_of_recording(scenario: Scenario, result: Result, runs: int = RUNS) -> dict[str, Any]:
    """Low, mid and high of a recorded drive's net energy [kWh] and recovered share r [1], over `runs` drawn cars.

    What was measured weights none of them. A single measured drive has its part of its own
    (`model.sampling.own_part`) in all energy at the terminals alike: it widens the net energy and cancels in r.

    Raises
    ------
    InputError
        Where what is printed or shown of the car fits none of the drawn cars.
    """
    drawn = draws_of(scenario, runs, result.trace)
    out_j, in_j = run_each(
        result.trace, result.car, result.conditions, result.driver, drawn, lambda run: (run.out_j, run.in_j), (True,)
    )
    own = own_part(hypercube([OWN], runs)[OWN]) if OPEN_KEY in drawn else 1.0
    return {
        "battery_net_kwh": points(Band.of((out_j - in_j) * own / J_PER_KWH)),
        "recovered_share_of_output": points(Band.of(in_j / out_j)) if out_j.min() > 0 else None,
    }


def study_row(file: Path, scenario: Scenario, given: frozenset[str], *, band: bool = True) -> dict[str, Any]:
    """One recording of a study: energies [kWh] and shares [1] of the model and, where measured, beside it.

    `net_error_share` is modelled over measured net energy less one, `recovered_difference` the modelled less the
    measured recovered share r, both counted over the model's own steps. A recording that cannot be used has a sentence
    under `refused`.
    """
    try:
        recording, scenario, result = drive_recording(file, scenario, given)
        bands = {"band": band_of_recording(scenario, result)} if band else {}
    except InputError as refused:
        return {"name": file.name, "refused": refusal_words(refused, COMMAND_LINE)}
    row: dict[str, Any] = {
        "name": file.name,
        "distance_km": result.distance_km,
        "battery_net_kwh": result.net_kwh,
        "recovered_share_of_output": result.recovered_share,
        "followed_trace": result.followed,
        "shortfall_kwh": result.shortfall_kwh,
    } | bands
    if recording.measured is not None:
        net_kwh, measured = recording.measured.battery_net_kwh, recording.measured.recovered_share_of_output
        modelled = result.recovered_share
        row |= {
            "measured_net_kwh": net_kwh,
            "measured_recovered_share_of_output": measured,
            "net_error_share": result.net_kwh / net_kwh - 1 if net_kwh > 0 else None,
            "recovered_difference": None if modelled is None or measured is None else modelled - measured,
        }
    return row


def study(folder: Path, scenario: Scenario, given: frozenset[str], *, band: bool = True) -> dict[str, Any]:
    """Work through all recordings of a folder: a row a file by name, and medians over those that were measured.

    With bands, also how many of the measured drives lay in theirs.

    Raises
    ------
    InputError
        Where it is no folder, or one without recordings.
    """
    if not folder.is_dir():
        raise InputError("study-no-folder", name=folder.name, endings=Several(tuple(ENDINGS)))
    files = sorted(file for file in folder.iterdir() if file.suffix.lower() in ENDINGS and file.is_file())
    if not files:
        raise InputError("study-without-recordings", name=folder.name, endings=Several(tuple(ENDINGS)))
    rows = [study_row(file, scenario, given, band=band) for file in files]
    found = {
        "files": len(rows),
        "refused": sum("refused" in row for row in rows),
        "net_error_share": _medians([row.get("net_error_share") for row in rows]),
        "recovered_difference": _medians([row.get("recovered_difference") for row in rows]),
    }
    if band:
        found["band"] = drawn_for(RUNS) | {f"{key}_held": _held(rows, key, beside) for key, beside in MEASURED.items()}
    return found | {"drives": rows}


def _held(rows: Sequence[Mapping[str, Any]], key: str, measured: str) -> dict[str, int] | None:
    """How many of the drives that were measured lay in their band."""
    beside = [(row["band"][key], row[measured]) for row in rows if row.get(measured) is not None]
    inside = [band[0] <= value <= band[2] for band, value in beside if band is not None]
    return {"drives": len(inside), "inside": sum(inside)} if inside else None


def _medians(values: Sequence[float | None]) -> dict[str, Any] | None:
    known = [value for value in values if value is not None]
    if not known:
        return None
    return {"drives": len(known), "median": median(known), "median_size": median(map(abs, known))}
