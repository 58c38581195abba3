"""All recorded drives of a folder beside the model: one row each, as many at once as there are workers."""

from __future__ import annotations

import hashlib
import json
import os
from array import array
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from functools import partial
from pathlib import Path
from statistics import median
from typing import Any, cast

from model import MODEL_VERSION
from model.describe.fields import Field, InputError
from model.describe.figures import Several
from model.describe.scenario import Scenario
from model.describe.scenario_io import scenario_to_json
from model.kernel.warm import prepare
from model.out.answers import drawn_for, rounded
from model.out.recorded import band_of_recording, drive_recording
from model.out.study_table import MEASURED, StudyTable
from model.out.workers import each
from model.sampling.uncertainty import PROCESSORS, RUNS, SEED
from model.words.refusals import COMMAND_LINE, refusal_words

ENDINGS = (".csv", ".gpx")
ERROR_KEYS = ("net_error_share", "recovered_difference")
WORKERS = Field("workers", "count", "", "study-workers", 1, 256, default=1)
FileRow = dict[str, object]


def study_row(
    file: Path, scenario: Scenario, given: frozenset[str], *, band: bool = True, processors: int = PROCESSORS
) -> FileRow:
    """One recording of a study: energies [kWh] and shares [1] of the model and, where measured, beside it.

    `net_error_share` is modelled over measured net energy less one, `recovered_difference` the modelled less the
    measured recovered share r, both counted over the model's own steps. A recording that cannot be used has a sentence
    under `refused`; none stops the others.
    """
    try:
        recording, scenario, result = drive_recording(file, scenario, given)
        found: Mapping[str, object] = band_of_recording(scenario, result, processors=processors) if band else {}
    except InputError as refused:
        return _refused(file, refused)
    except Exception as error:
        # thousands of files hold what nobody thought of
        return _refused(file, InputError("study-unforeseen", name=file.name, why=f"{type(error).__name__}: {error}"))
    row: FileRow = {
        "name": file.name,
        "distance_km": result.distance_km,
        "duration_s": result.trace.duration_s,
        "battery_net_kwh": result.net_kwh,
        "recovered_share_of_output": result.recovered_share,
        "followed_trace": result.followed,
        "shortfall_kwh": result.shortfall_kwh,
    } | ({"band": {key: found[key] for key in MEASURED}} if found else {})
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


def _refused(file: Path, why: InputError) -> FileRow:
    return {"name": file.name, "refused": refusal_words(why, COMMAND_LINE)}


@dataclass
class Totals:
    """What is told of all rows together; of each only its errors are kept."""

    files: int = 0
    refused: int = 0
    duration_s: float = 0.0
    errors: dict[str, array[float]] = field(default_factory=lambda: {key: array("d") for key in ERROR_KEYS})
    held: dict[str, list[int]] = field(default_factory=lambda: {key: [0, 0] for key in MEASURED})

    def add(self, added: Mapping[str, object]) -> None:
        """Count a row in, with as many digits as it is written with."""
        row = cast(dict[str, Any], rounded(added))
        self.files += 1
        self.refused += "refused" in row
        self.duration_s += row.get("duration_s", 0.0)
        for key, values in self.errors.items():
            if row.get(key) is not None:
                values.append(row[key])
        for key, beside in MEASURED.items():
            band = row.get("band", {}).get(key)
            if band is not None and row.get(beside) is not None:
                self.held[key][0] += 1
                self.held[key][1] += band[0] <= row[beside] <= band[2]

    def answer(self, band: bool) -> dict[str, object]:
        """How many files there were, the medians of the errors, and with bands how many of the measured lay in them."""
        found: dict[str, object] = {"files": self.files, "refused": self.refused}
        for key, values in self.errors.items():
            found[key] = (
                {"drives": len(values), "median": median(values), "median_size": median(map(abs, values))}
                if values else None
            )  # fmt: skip
        if band:
            found["band"] = drawn_for(RUNS) | {
                f"{key}_held": {"drives": drives, "inside": inside} if drives else None
                for key, (drives, inside) in self.held.items()
            }
        return found


def study(
    folder: Path,
    scenario: Scenario,
    given: frozenset[str],
    *,
    band: bool = True,
    out: Path | None = None,
    workers: int = 1,
    scheduler: str = "",
    how_far: Callable[[int, Totals], None] = lambda files, totals: None,
) -> dict[str, object]:
    """Work through all recordings of a folder: a row a file by name, and medians over those that were measured.

    Parameters
    ----------
    folder : path
        With the recordings; folders within it are left alone.
    scenario, given
        The car and all around it, and what of it holds whatever a recording says.
    band : bool
        Whether each drive has its band; then also how many of the measured drives lay in theirs.
    out : path, optional
        A table (.csv, .parquet) for the rows, which are then not in the answer. What it holds already is not done
        again: a study that was broken off goes on where it was.
    workers, scheduler
        Who does it, as for `model.out.workers.each`; the rows are the same.
    how_far : callable
        Called with the number of files and the totals so far, after each row.

    Raises
    ------
    InputError
        Where it is no folder, or one without recordings; where the table is something else, or the scheduler is not
        there.
    """
    table = None if out is None else StudyTable(out, band=band, settings=_settings(scenario, given, band))
    files = _files(folder, () if table is None else table.places)
    if workers > 1:
        # what has to be compiled is compiled once, and taken by the others from where it is kept
        prepare()
    # beside others each keeps to one processor
    processors = 1 if workers > 1 or scheduler else PROCESSORS
    work = partial(study_row, scenario=scenario, given=given, band=band, processors=processors)
    totals = Totals()
    if table is None:
        rows = []
        for row in _rows(work, files, workers, scheduler):
            rows.append(row)
            totals.add(row)
            how_far(len(files), totals)
        return totals.answer(band) | {"drives": sorted(rows, key=lambda row: str(row["name"]))}
    with table:
        left = [file for file in files if not table.holds(file)]
        for row in table.rows(sorted(set(files) - set(left))):
            totals.add(row)
        for row in _rows(work, left, workers, scheduler):
            table.add(row, folder / str(row["name"]))
            totals.add(row)
            how_far(len(files), totals)
        table.put_in_order(files)
    return totals.answer(band) | {"table": table.out.name}


def _rows(work: Callable[[Path], FileRow], files: Iterable[Path], workers: int, scheduler: str) -> Iterator[FileRow]:
    for file, row in each(work, files, workers, scheduler):
        yield row or _refused(file, InputError("study-worker-lost", name=file.name))


def _settings(scenario: Scenario, given: frozenset[str], band: bool) -> str:
    """What tells rows apart that were computed with other settings, or by another version."""
    asked = [MODEL_VERSION, scenario_to_json(scenario), sorted(given), [RUNS, SEED] if band else []]
    return hashlib.sha256(json.dumps(asked, sort_keys=True).encode()).hexdigest()[:12]


def _files(folder: Path, but: Iterable[Path]) -> list[Path]:
    """The recordings of a folder, by name."""
    if not folder.is_dir():
        raise InputError("study-no-folder", name=folder.name, endings=Several(tuple(ENDINGS)))
    left_out = {place.resolve() for place in but}
    with os.scandir(folder) as entries:
        names = sorted(each.name for each in entries if each.name.lower().endswith(ENDINGS) and each.is_file())
    files = [folder / name for name in names]
    if left_out and folder.resolve() in {place.parent for place in left_out}:
        files = [file for file in files if file.resolve() not in left_out]
    if not files:
        raise InputError("study-without-recordings", name=folder.name, endings=Several(tuple(ENDINGS)))
    return files
