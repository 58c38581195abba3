"""Golden answers: what the kernel answers today over every class of car, written down to be compared with.

``python -m tests.golden.write`` writes ``kernel.csv`` anew. That is right only where an answer was meant to change:
raise `MODEL_VERSION` first, and put the digest that is printed into the version's row of ``assets/changes.csv``.
"""

from __future__ import annotations

import csv
import hashlib
import re
from collections.abc import Iterable, Iterator
from dataclasses import asdict, fields, replace
from pathlib import Path

from model import MODEL_VERSION
from model.describe.car import Car
from model.describe.fields import InputError
from model.describe.parameters import car_from, class_labels
from model.describe.scenario import Conditions, Driver
from model.describe.scenario_io import starting_drives
from model.describe.tables import rows
from model.describe.trace import Trace
from model.kernel.ledger import Ledger
from model.kernel.run import ledger_of
from model.kernel.savings import Result, evaluate
from model.physics.slowing_limits import LIMITS
from model.sampling.drives import trace_of
from model.traces.cycles import LABORATORY, cycle_trace
from tests.refused import told

FILE = Path(__file__).with_name("kernel.csv")
CYCLES = ("udds", "hwfet", "wltc3b")
WEATHER = {
    "mild": {"ambient_c": 20.0, "soc_start": 0.6},
    "cold": {"ambient_c": -10.0, "soc_start": 0.6},
    "full": {"ambient_c": 20.0, "soc_start": 0.98},
}
ODD = {
    "friction-pedal": {"brake_pedal": "friction"},
    "one-pedal": {"brake_pedal": "friction", "comes_to_rest": True, "lift_off_mps2": 2.0},
    "trailer": {"trailer_kg": 900.0, "wind_kmh": 25.0},
    "measured-road-load": {"f0_n": 120.0, "f1_n_per_mps": 1.0, "f2_n_per_mps2": 0.42, "surface": "snow"},
    "pack-heater": {"ambient_c": -15.0, "pack_heater_kw": 5.0, "heat_source": "heat_pump"},
    "from-battery": {"ambient_c": -5.0, "preconditioned": True, "plugged_in": False, "parked_c": -10.0},
    "small-motor": {"motor_peak_kw": 25.0, "payload_kg": 400.0},
    "nearly-empty": {"soc_start": 0.05},
}
"""What the classes alone do not show, driven with one class over the drives of `ODD_DRIVES`."""
ODD_CLASS, ODD_DRIVES = "family-hatch", ("suburb-hill", "mountain-valley", "wltc3b")
KEYS = ("car", "drive", "case", "regen")
ENERGIES = (
    *(item.name for item in fields(Ledger)), "terminal_out", "terminal_in", "wheel_braking", "wheel_motor",
    *(f"left_by_{name}" for name in LIMITS),
)  # fmt: skip
"""Columns in joules."""
COLUMNS = (*KEYS, "refused", "followed", "duration_s", "soc_end", "pack_c_end", *ENERGIES)


def _put(settings: dict, *parts):
    """The parts with the settings put into the one that has them."""
    return [replace(part, **{key: value for key, value in settings.items() if hasattr(part, key)}) for part in parts]


def drives() -> dict[str, tuple[Trace, Conditions, Driver]]:
    """The traces, each with its own conditions and driver."""
    named = {
        name: (trace_of(scenario), scenario.conditions, scenario.driver)
        for name, (_, _, scenario) in starting_drives().items()
    }
    return named | {name: (cycle_trace(name), LABORATORY, Driver()) for name in CYCLES}


def cases(classes: Iterable[str]) -> Iterator[tuple[tuple[str, str, str], tuple[Trace, Car, Conditions, Driver]]]:
    """Class, drive and case by name, and what to evaluate."""
    known = drives()
    matrix = [(car, drive, case, WEATHER[case]) for car in classes for drive in known for case in WEATHER]
    matrix += [(ODD_CLASS, drive, case, ODD[case]) for drive in ODD_DRIVES for case in ODD]
    for car_class, drive, case, settings in matrix:
        trace, conditions, driver = known[drive]
        yield (car_class, drive, case), (trace, *_put(settings, car_from(car_class), conditions, driver))


def figures(result: Result, regen: bool) -> dict[str, float]:
    """What one of a result's two runs did, by column."""
    run = result.run if regen else result.friction_only
    found = dict.fromkeys(ENERGIES, 0.0) | asdict(ledger_of(run, result.trace)) | {
        "followed": float(result.followed),
        "duration_s": result.trace.duration_s,
        "soc_end": float(run.soc[0, -1]),
        "pack_c_end": float(run.pack_c[0, -1]),
        "terminal_out": float(run.out_j[0]),
        "terminal_in": float(run.in_j[0]),
        "wheel_braking": float(run.wheel_j(run.braking_n)[0]),
        "wheel_motor": float(run.wheel_j(run.motor_n)[0]),
    }
    return found | {f"left_by_{name}": float(left[0]) for name, left in run.left_by_limit_j.items()}


def refusal(refused: InputError) -> str:
    """The key that a refusal names and the numbers in it: its words may be bettered."""
    text = told(refused)
    return " ".join([text.split(" ")[0].rstrip(":"), *re.findall(r"\d+(?:\.\d+)?", text.split(":", 1)[1])])


def answers(classes: Iterable[str]) -> Iterator[dict[str, str | float]]:
    """Every row of some classes as the present kernel answers it."""
    for names, asked in cases(classes):
        try:
            result = evaluate(*asked)
        except InputError as refused:
            for regen in (True, False):
                yield dict(zip(KEYS, (*names, regen), strict=True)) | {"refused": refusal(refused)}
            continue
        for regen in (True, False):
            yield dict(zip(KEYS, (*names, regen), strict=True)) | {"refused": ""} | figures(result, regen)


def read() -> list[dict[str, str]]:
    """The rows as they were written."""
    with FILE.open(encoding="utf-8", newline="") as file:
        file.readline()
        return list(csv.DictReader(file))


def written_by() -> str:
    """The version of the model that wrote the file."""
    return FILE.read_text("utf-8").split("\n", 1)[0].split()[-1]


def digest() -> str:
    """What ``assets/changes.csv`` knows the file by."""
    return hashlib.sha256(FILE.read_bytes()).hexdigest()[:16]


def main() -> None:
    """Write the file, unless its version already has another."""
    was = digest() if FILE.exists() else ""
    found = [
        {name: f"{value:.9g}" if isinstance(value, float) else value for name, value in row.items()}
        for row in answers(class_labels())
    ]
    found.sort(key=lambda row: [str(row[key]) for key in KEYS])
    with FILE.open("w", encoding="utf-8", newline="") as file:
        file.write(f"# energies in J, written by model version {MODEL_VERSION}\n")
        table = csv.DictWriter(file, COLUMNS, lineterminator="\n")
        table.writeheader()
        table.writerows(found)
    if digest() == was:
        print("Nothing changed.")
        return
    print(f"{FILE.name}: {len(found)} rows, digest {digest()} for a row of version {MODEL_VERSION} in changes.csv.")
    if any(row["version"] == MODEL_VERSION and row["golden"] not in ("", digest()) for row in rows("changes.csv")):
        print("That version has other answers: raise MODEL_VERSION, or correct its row if it was never given out.")


if __name__ == "__main__":
    main()
