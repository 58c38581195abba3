"""Recorded drives as plain CSV: from cells to checked numbers."""

from __future__ import annotations

import difflib
import io
import re
import textwrap
import warnings
from dataclasses import dataclass
from typing import Any

import pandas as pd

from model.describe.fields import InputError, fields_of, number
from model.describe.figures import Quantity, Several
from model.describe.units import KMH_PER_MPS
from model.traces.resampling import LONGEST_GAP_S, STANDING_MPS, check_duration

FEWEST_ROWS = 10


@dataclass(frozen=True, kw_only=True)
class RecordedRow:
    """One row of a recorded drive: the columns of our CSV."""

    time_s: float = number("s", 0, 1e10, (0, 1e10), "Time", "Rising from row to row, from any start.")
    speed_kmh: float = number("km/h", -2, 250, (0, 200), "Speed", "A little below 0 is taken as noise of the sensor.")
    elevation_m: float | None = number(
        "m", -450, 9000, (-450, 5000), "Height", "Smoothed before it becomes slope.", default=None, optional=True
    )
    ambient_c: float | None = number(
        "°C", -50, 60, (-30, 45), "Outside temperature", "Replaces the stated one.", default=None, optional=True
    )
    battery_temp_c: float | None = number(
        "°C", -50, 90, (-30, 60), "Battery temperature", "Replaces the computed one.", default=None, optional=True
    )
    soc_pct: float | None = number(
        "%", 0, 100, (0, 100), "Charge", "Of the usable battery; the first one starts the model.",
        default=None, optional=True,
    )
    cabin_kw: float | None = number(
        "kW", -1, 30, (0, 10), "Cabin power",
        "Heating and cooling; replaces the modelled one. A little below 0 is taken as noise of the sensor.",
        default=None, optional=True,
    )
    battery_power_kw: float | None = number(
        "kW", -1000, 1000, (-200, 400), "Battery power", "At the terminals, positive when the battery gives.",
        default=None, optional=True,
    )


COLUMNS = fields_of(RecordedRow)
REQUIRED = [key for key, field in COLUMNS.items() if not field.optional]


def csv_table(data: bytes, name: str) -> tuple[pd.DataFrame, tuple[str, ...]]:
    """Read the known columns as numbers, with the line of the file as index and without long holes in speed."""
    text = data.decode("utf-8-sig", errors="replace")
    header, _, body = text.partition("\n")
    separator = next((mark for mark in ";\t" if mark in header), ",")
    decimal = "," if separator != "," and "," in body and "." not in body else "."
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("error", pd.errors.ParserWarning)
            table = pd.read_csv(
                io.StringIO(text), sep=separator, decimal=decimal, index_col=False, skip_blank_lines=False,
                skipinitialspace=True, low_memory=False,
            )  # fmt: skip
    except pd.errors.ParserWarning:
        raise InputError("csv-too-many-cells", name=name, line=2) from None
    except ValueError as error:
        if line := re.search(r"in line (\d+)", str(error)):
            raise InputError("csv-too-many-cells", name=name, line=int(line[1])) from None
        raise InputError("csv-no-table", name=name) from None
    table.index = pd.RangeIndex(2, len(table) + 2)
    table.columns = pd.Index([str(column).strip().lower() for column in table.columns])
    notes = _check_columns(list(table.columns), name)
    table = table.dropna(how="all")
    if len(table) < FEWEST_ROWS:
        raise InputError("csv-too-few-rows", name=name, rows=len(table), least=FEWEST_ROWS)
    present = [key for key in COLUMNS if key in table]
    numbers = pd.DataFrame({key: _numbers(table[key], name, decimal) for key in present})
    _check_times(numbers["time_s"], name)
    return _without_speed_gaps(numbers, name, notes), tuple(notes)


def _check_columns(given: list[str], name: str) -> list[str]:
    """Refuse missing and misspelt columns; name those that are not read."""
    missing = [key for key in COLUMNS if key not in given]
    unknown = [column for column in given if column not in COLUMNS]
    for key in missing:
        near = difflib.get_close_matches(key, unknown, n=1, cutoff=0.5 if key in REQUIRED else 0.85)
        if key in REQUIRED:
            lacks: dict[str, Any] = dict(name=name, column=key, needed=Several(tuple(REQUIRED)))
            if near:
                raise InputError("csv-column-missing-but-near", nearest=near[0], **lacks)
            raise InputError("csv-column-missing", **lacks)
        if near:
            raise InputError("csv-column-misspelt", name=name, given=near[0], column=key)
    twice = next((key for key in COLUMNS if given.count(key) > 1), None)
    if twice:
        raise InputError("csv-column-twice", name=name, column=twice)
    if unknown:
        ignored = textwrap.shorten(", ".join(unknown), 200, placeholder=" ...")
        return [f"Not read: {ignored}. The columns that are read are {', '.join(COLUMNS)}."]
    return []


def _numbers(cells: pd.Series, name: str, decimal: str) -> pd.Series:
    """Read one column as numbers within the bounds of its field; empty cells become NaN."""
    field = COLUMNS[str(cells.name)]
    values = cells
    if cells.dtype.kind not in "fiu":
        # text somewhere in the column left all of it unread
        cells = cells.astype(str).where(cells.notna())
        values = pd.to_numeric(cells.str.replace(decimal, ".", regex=False), errors="coerce")
    wrong = cells.notna() & ~values.between(field.minimum, field.maximum)
    if line := _first(wrong):
        low, high = (Quantity(end, "", 6, trimmed=True) for end in (field.minimum, field.maximum))
        given = str(cells[line])
        raise InputError(
            "csv-cell-refused", name=name, line=line, column=field.key, given=given, low=low, high=high, unit=field.unit
        )
    return values.astype(float)


def _first(wrong: pd.Series) -> int | None:
    """Line of the first row that is wrong."""
    return int(wrong.index[int(wrong.to_numpy().argmax())]) if wrong.any() else None


def _check_times(time_s: pd.Series, name: str) -> None:
    if line := _first(time_s.isna()):
        raise InputError("csv-time-missing", name=name, line=line, column="time_s")
    if line := _first(time_s.diff() <= 0):
        before, given = (str(time) for time in time_s.loc[:line].iloc[-2:])
        raise InputError("csv-times-not-rising", name=name, line=line, column="time_s", given=given, before=before)


def _without_speed_gaps(table: pd.DataFrame, name: str, notes: list[str]) -> pd.DataFrame:
    """From the first row with a speed to the last; long gaps are refused unless the car stood before and after."""
    known = table[table["speed_kmh"].notna()]
    if len(known) < FEWEST_ROWS:
        raise InputError("csv-too-few-speeds", name=name, column="speed_kmh", rows=len(known), least=FEWEST_ROWS)
    gap = known["time_s"].diff()
    moving = known["speed_kmh"].rolling(2).max() >= STANDING_MPS * KMH_PER_MPS
    if line := _first((gap > LONGEST_GAP_S) & moving):
        raise InputError(
            "csv-speed-gap", name=name, line=line, column="speed_kmh",
            gap=Quantity(float(gap[line]), "s", 6, trimmed=True), most=Quantity(LONGEST_GAP_S, "s", places=0),
        )  # fmt: skip
    check_duration(known["time_s"].iloc[-1] - known["time_s"].iloc[0], name)
    table = table.loc[known.index[0] : known.index[-1]]
    if len(known) < len(table):
        notes.append(f"Empty cells of speed_kmh filled by straight lines: {len(table) - len(known)}.")
    stood = gap[gap > LONGEST_GAP_S].sum()
    if stood:
        notes.append(f"For {stood:.0f} s no speed is given; the car was taken as standing.")
    return table
