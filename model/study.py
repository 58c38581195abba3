"""Recorded drives beside the model: one of them, or all that a folder holds.

A folder is worked through by a plain loop: half an hour recorded ten times a second takes some 10 ms to read and drive,
so a thousand drives are done before a cluster of workers has started, and none is needed.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path
from statistics import median
from typing import Any

from model.fields import InputError
from model.logs import Recording, read_recording
from model.parameters import car_of
from model.savings import Result, evaluate
from model.scenario import Scenario

ENDINGS = (".csv", ".gpx")


def drive_recording(file: Path, scenario: Scenario, given: frozenset[str]) -> tuple[Recording, Scenario, Result]:
    """Drive a recording; its own charge and air temperature stand in for what was not `given`, by keys.

    Raises
    ------
    InputError
        Where the file cannot be read or its drive cannot be driven.
    """
    recording = read_recording(file)
    trace = recording.trace
    if recording.soc_start is not None and "soc_start" not in given:
        scenario = scenario.with_setting("soc_start", recording.soc_start)
    if "ambient_c" in given:
        trace = replace(trace, ambient_c=None)
    elif trace.ambient_c is not None:
        scenario = scenario.with_setting("ambient_c", float(trace.ambient_c.mean()))
    return recording, scenario, evaluate(trace, car_of(scenario), scenario.conditions, scenario.driver)


def study_row(file: Path, scenario: Scenario, given: frozenset[str]) -> dict[str, Any]:
    """One recording of a study: energies [kWh] and shares [1] of the model and, where measured, beside it.

    `net_error_share` is modelled over measured net energy less one, `recovered_difference` the modelled less the
    measured recovered share r. A recording that cannot be used has a sentence under `refused`.
    """
    try:
        recording, _, result = drive_recording(file, scenario, given)
    except InputError as refused:
        return {"name": file.name, "refused": str(refused)}
    row: dict[str, Any] = {
        "name": file.name,
        "distance_km": result.distance_km,
        "battery_net_kwh": result.net_kwh,
        "recovered_share_of_output": result.recovered_share,
        "followed_trace": result.followed,
        "shortfall_kwh": result.shortfall_kwh,
    }
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


def study(folder: Path, scenario: Scenario, given: frozenset[str]) -> dict[str, Any]:
    """Work through all recordings of a folder: a row a file by name, and medians over those that were measured.

    Raises
    ------
    InputError
        Where it is no folder, or one without recordings.
    """
    if not folder.is_dir():
        raise InputError(f"{folder.name}: is not a folder; a study needs one with recordings ({', '.join(ENDINGS)}).")
    files = sorted(file for file in folder.iterdir() if file.suffix.lower() in ENDINGS and file.is_file())
    if not files:
        raise InputError(f"{folder.name}: holds no recordings; {' and '.join(ENDINGS)} files are read.")
    rows = [study_row(file, scenario, given) for file in files]
    return {
        "files": len(rows),
        "refused": sum("refused" in row for row in rows),
        "net_error_share": _medians([row.get("net_error_share") for row in rows]),
        "recovered_difference": _medians([row.get("recovered_difference") for row in rows]),
        "drives": rows,
    }


def _medians(values: Sequence[float | None]) -> dict[str, Any] | None:
    known = [value for value in values if value is not None]
    if not known:
        return None
    return {"drives": len(known), "median": median(known), "median_size": median(map(abs, known))}
