"""Recorded drives as CSV in any sensible dress: from bytes to columns of numbers in the units held inside."""

from __future__ import annotations

import codecs
import csv
import io
import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace

import numpy as np
import pandas as pd

from model.describe.fields import InputError, fields_of, number
from model.describe.figures import Several
from model.describe.trace import Array
from model.traces.findings import Finding
from model.traces.recorded_cells import as_numbers, as_times, decimal_mark, kind_of_time, over_midnight
from model.traces.recorded_names import (
    NOT_READ,
    POSITION,
    UNITS,
    Column,
    column,
    columns_of,
    complete,
    is_route,
    unit_in,
)

FEWEST_ROWS = 10
MOST_ROWS = 1_000_000
ROWS_AT_ONCE = 50_000
"""Cells are text until they are numbers: no more rows than this are text at one time."""
HEAD_BYTES = 65_536
HEAD_LINES = 60
"""The names of the columns stand within so many lines; above them there may be comments and particulars."""
SEPARATORS = ";\t,|"
COMMENT = re.compile(rb"^[ \t]*(#|//|%)[^\n]*", re.MULTILINE)


@dataclass(frozen=True, kw_only=True)
class RecordedRow:
    """One row of a recorded drive: what is read, and within which bounds.

    Time rises from any start. Charge is of the usable battery, power positive when the battery gives, current times
    voltage is power. Speed and cabin power may be a little below 0: noise of the sensor.
    """

    time_s: float = number("s", 0, 1e13, (0, 1e10))
    speed_kmh: float | None = number("km/h", -15, 250, (0, 200), default=None, optional=True)
    latitude: float | None = number("°", -90, 90, (-90, 90), default=None, optional=True)
    longitude: float | None = number("°", -180, 180, (-180, 180), default=None, optional=True)
    distance_m: float | None = number("m", -1e6, 1e8, (0, 1e6), default=None, optional=True)
    elevation_m: float | None = number("m", -450, 9000, (-450, 5000), default=None, optional=True)
    ambient_c: float | None = number("°C", -50, 60, (-30, 45), default=None, optional=True)
    battery_temp_c: float | None = number("°C", -50, 90, (-30, 60), default=None, optional=True)
    soc_pct: float | None = number("%", 0, 100, (0, 100), default=None, optional=True)
    cabin_kw: float | None = number("kW", -1, 30, (0, 10), default=None, optional=True)
    battery_power_kw: float | None = number("kW", -1000, 1000, (-200, 400), default=None, optional=True)
    battery_a: float | None = number("A", -3000, 3000, (-600, 1000), default=None, optional=True)
    battery_v: float | None = number("V", 0, 1500, (0, 1000), default=None, optional=True)


FIELDS = fields_of(RecordedRow, "recorded")
SamplesByKey = dict[str, Array]
"""Numbers by meaning, a row each: `time_s` but for a route, NaN for what is missing."""


@dataclass(frozen=True)
class Table:
    """What a file holds: its samples, what its columns were taken for, and what was found on the way."""

    samples: SamplesByKey
    columns: tuple[Column, ...]
    findings: tuple[Finding, ...]


@dataclass(frozen=True)
class Dress:
    """How a table is written: the line of its names (from 0), rows to pass over below, marks, columns, most cells."""

    line: int
    skip: int
    separator: str
    decimal: str
    columns: tuple[Column, ...]
    width: int


HowFar = Callable[[float], None]
"""Asked now and then with how much of a file has been read [1]."""


def untold(share: float) -> None:
    """Tell nobody."""


def csv_table(
    data: bytes, name: str, corrected: Mapping[str, tuple[str, str]] | None = None, how_far: HowFar = untold
) -> Table:
    """Read what is recognised in a table, in the units held inside; a route has no `time_s`.

    Parameters
    ----------
    data : bytes
        The file.
    name : str
        What errors call it.
    corrected : mapping, optional
        Meaning and unit of columns that would be taken for something else, by their name.
    how_far : callable
        Called with how much has been read.

    Raises
    ------
    InputError
        Where there is no table with what is needed.
    """
    data = COMMENT.sub(b"", as_utf8(data, name))
    dress = _dress(data, name, corrected)
    cells, odd, kind = _cells(data, dress, name, how_far)
    columns = [replace(each, unit=kind, stated=True) if kind and each.meaning == "time_s" else each
               for each in dress.columns]  # fmt: skip
    return _checked(cells, columns, odd, name)


def without_positions(data: bytes, name: str, corrected: Mapping[str, tuple[str, str]] | None = None) -> bytes:
    """The table with nothing in the columns that hold positions; empty where they alone tell the speed, or the way.

    Parameters and errors are those of `csv_table`, which reads of it what it reads of the whole.
    """
    text = as_utf8(data, name)
    dress = _dress(COMMENT.sub(b"", text), name, corrected)
    places = [place for place, each in enumerate(dress.columns)
              if each.meaning in POSITION or column(each.name).meaning in POSITION]  # fmt: skip
    if not places:
        return data
    if not any(each.meaning == "speed_kmh" for each in dress.columns):
        return b""
    kept = io.StringIO(newline="")
    writer = csv.writer(kept, delimiter=dress.separator, lineterminator="\n")
    lines = io.StringIO(COMMENT.sub(b"", text).decode(errors="replace"), newline="")
    try:
        for row, cells in enumerate(csv.reader(lines, delimiter=dress.separator)):
            if row > dress.line:
                for place in places:
                    cells[place : place + 1] = [""] * (place < len(cells))
            writer.writerow(cells)
    except csv.Error:
        # cells without end
        return b""
    return kept.getvalue().encode()


def _cells(data: bytes, dress: Dress, name: str, how_far: HowFar) -> tuple[SamplesByKey, dict[str, int], str]:
    """The columns that are read as numbers, how many of their cells hold none, and how times are written."""
    places = {each.meaning: place for place, each in enumerate(dress.columns) if each.meaning != NOT_READ}
    found: dict[str, list[Array]] = {meaning: [] for meaning in places}
    odd = dict.fromkeys(places, 0)
    kind, rows = "", 0
    above = dress.line + 1 + dress.skip
    source = io.BytesIO(data)
    try:
        with pd.read_csv(
            source, sep=dress.separator, header=None, names=range(dress.width + 1), skiprows=above,
            index_col=False, skip_blank_lines=False, skipinitialspace=True, encoding="utf-8",
            encoding_errors="replace", chunksize=ROWS_AT_ONCE, low_memory=False,
            dtype=str if dress.decimal == "," else None,
        ) as chunks:  # fmt: skip
            for chunk in chunks:
                how_far(source.tell() / len(data))
                timed = "time_s" in places
                kind = kind if rows or not timed else kind_of_time(chunk[places["time_s"]], dress.decimal)
                rows += len(chunk)
                if rows > MOST_ROWS:
                    raise InputError("recording-too-many-rows", name=name, most=MOST_ROWS)
                more = chunk.iloc[:, len(dress.columns) :].notna().any(axis=1)
                if more.any():
                    line = above + 1 + int(more.index[int(more.to_numpy().argmax())])
                    raise InputError("csv-too-many-cells", name=name, line=line)
                time_s = as_times(chunk[places["time_s"]], kind, dress.decimal) if timed else np.zeros(len(chunk))
                for meaning, place in places.items():
                    if meaning == "time_s":
                        found[meaning].append(time_s)
                        continue
                    values, strange = as_numbers(chunk[place], dress.decimal, meaning, dress.columns[place].unit)
                    found[meaning].append(values)
                    # names that are repeated further down are no cells
                    odd[meaning] += int(np.count_nonzero(strange & np.isfinite(time_s)))
    except (pd.errors.ParserError, pd.errors.EmptyDataError, csv.Error) as error:
        if where := re.search(r"Expected .* in line (\d+)", str(error)):
            raise InputError("csv-too-many-cells", name=name, line=int(where[1])) from None
        if not isinstance(error, pd.errors.EmptyDataError):
            raise InputError("csv-no-table", name=name) from None
    return {meaning: np.concatenate(parts or [np.empty(0)]) for meaning, parts in found.items()}, odd, kind


def as_utf8(data: bytes, name: str) -> bytes:
    """The text of a file in UTF-8; refuses what is no text."""
    if data[:4] in (b"PK\x03\x04", b"PK\x05\x06") or data[:2] == b"\x1f\x8b":
        raise InputError("recording-packed", name=name)
    for mark, encoding in (
        (codecs.BOM_UTF8, "utf-8"),
        (codecs.BOM_UTF16_LE, "utf-16-le"),
        (codecs.BOM_UTF16_BE, "utf-16-be"),
    ):
        if data.startswith(mark):
            return _recoded(data[len(mark) :], encoding)
    head = data[:HEAD_BYTES]
    if head.count(b"\0") > len(head) // 4:
        # every other byte of plain text in UTF-16 is 0
        return _recoded(data, "utf-16-le" if head[1::2].count(b"\0") >= head[::2].count(b"\0") else "utf-16-be")
    if b"\0" in head:
        raise InputError("recording-no-text", name=name)
    try:
        codecs.getincrementaldecoder("utf-8")().decode(head)
    except UnicodeDecodeError:
        return _recoded(data, "latin-1")
    return data


def _recoded(data: bytes, encoding: str) -> bytes:
    return data if encoding == "utf-8" else data.decode(encoding, errors="replace").encode()


def _split(line: str, separator: str) -> list[str]:
    if line and '"' not in line:
        return [cell.strip() for cell in line.split(separator)]
    try:
        return [cell.strip() for cell in next(csv.reader([line], delimiter=separator, skipinitialspace=True), [])]
    except csv.Error:
        return []


def columns_in(
    data: bytes, name: str, corrected: Mapping[str, tuple[str, str]] | None = None
) -> tuple[Column, ...]:
    """What the columns of a table are taken for that may lack what is needed; empty where no line names any.

    Parameters and errors are those of `csv_table`.
    """
    data = COMMENT.sub(b"", as_utf8(data, name))
    return _head(data[:HEAD_BYTES].decode(errors="replace").splitlines(), corrected)[2]


def _head(
    lines: Sequence[str], corrected: Mapping[str, tuple[str, str]] | None
) -> tuple[int, str, tuple[Column, ...]]:
    """The line that names most columns that are known, how it sets them apart, and what they are taken for.

    Where nothing is known it is the first of those with most words and no figure.
    """
    separators, best = SEPARATORS, (0, "", tuple[Column, ...]())
    for at, line in enumerate(lines[:HEAD_LINES]):
        if declared := re.fullmatch(r'"?sep=(.)"?[;,\t]*', line.strip("\r\n\ufeff "), re.IGNORECASE):
            separators = declared[1]
            continue
        for separator in separators:
            cells = _split(line, separator)
            columns = columns_of(cells, corrected)
            known, most = (sum(each.meaning != NOT_READ for each in named) for named in (columns, best[2]))
            words = not any(re.match(r"[+-]?[.,]?\d", cell) for cell in cells)
            if known > most or (known == most == 0 and words and len(cells) > max(len(best[2]), 1)):
                best = at, separator, columns
        if complete(best[2]):
            break
    return best


def _dress(data: bytes, name: str, corrected: Mapping[str, tuple[str, str]] | None) -> Dress:
    """Find the line that names the columns, and how cells are set apart below it."""
    lines = data[:HEAD_BYTES].decode(errors="replace").splitlines()
    at, separator, columns = _head(lines, corrected)
    if not (complete(columns) or is_route(columns)):
        seen = tuple(each.name for each in columns if each.meaning != NOT_READ)[:4]
        raise InputError("csv-columns-missing", name=name, known=len(seen), seen=Several(seen))
    if complete(columns):
        # how far it is follows from the speed; what a file says of it is not asked
        columns = tuple(replace(each, meaning=NOT_READ, unit="") if each.meaning == "distance_m" else each
                        for each in columns)  # fmt: skip
    below = [_split(line, separator) for line in lines[at + 1 : -1 if len(data) > HEAD_BYTES else None]]
    skip = 0
    for row in below[:3]:
        units = [unit_in(cell, each.meaning) if each.meaning else "" for cell, each in zip(row, columns, strict=False)]
        if any(units) and not any(re.search(r"\d", cell) for cell in row):
            skip = below.index(row) + 1
            columns = tuple(
                replace(each, unit=unit, stated=True) if unit and not each.stated else each
                for each, unit in zip(columns, [*units, *[""] * len(columns)], strict=False)
            )
    cells = [cell for row in below[skip:] for cell, each in zip(row, columns, strict=False) if each.meaning]
    width = max(len(columns), *map(len, below)) if below else len(columns)
    return Dress(at, skip, separator, decimal_mark(cells, separator), columns, width)


def _checked(samples: SamplesByKey, columns: list[Column], odd: Mapping[str, int], name: str) -> Table:
    """Held units, bounds, and the rows that have a time."""
    findings = [Finding("no_number", key, count) for key, count in odd.items() if count]
    for place, each in enumerate(columns):
        if each.meaning == NOT_READ:
            continue
        held, found = _held(samples[each.meaning], each)
        columns[place], findings = held, findings + found
        factor, offset = UNITS[held.meaning][held.unit]
        samples[held.meaning] = samples[held.meaning] * factor + offset
    if "time_s" in samples:
        timed = np.isfinite(samples["time_s"])
        without = int(np.count_nonzero(~timed & np.isfinite(samples.get("speed_kmh", samples["time_s"]))))
        if without:
            findings.append(Finding("rows_without_time", "time_s", without))
        samples = {key: values[timed] for key, values in samples.items()}
        if len(samples["time_s"]) < FEWEST_ROWS:
            raise InputError("csv-too-few-rows", name=name, rows=len(samples["time_s"]), least=FEWEST_ROWS)
        if columns[[each.meaning for each in columns].index("time_s")].unit == "clock":
            samples["time_s"] = over_midnight(samples["time_s"])
    return Table(_within(samples, findings), tuple(columns), tuple(findings))


def _within(samples: SamplesByKey, findings: list[Finding]) -> SamplesByKey:
    """The samples without values out of range, which are noted."""
    for key, values in samples.items():
        if key == "time_s":
            continue
        with np.errstate(invalid="ignore"):
            beyond = ~((values >= FIELDS[key].minimum) & (values <= FIELDS[key].maximum)) & ~np.isnan(values)
        if beyond.any():
            findings.append(Finding("out_of_range", key, int(beyond.sum())))
            samples[key] = np.where(beyond, np.nan, values)
    return samples


def _held(values: Array, given: Column) -> tuple[Column, list[Finding]]:
    """The unit that the values are in, where the file leaves it open or its values cannot be in it."""
    known = values[np.isfinite(values)]
    if not len(known):
        return given, []
    key, largest = given.meaning, float(np.abs(known).max())
    if (
        key == "time_s"
        and given.unit == "s"
        and (np.median(np.abs(np.diff(known[:1000]))) > 20 if len(known) > 1 else False)
    ):
        return replace(given, unit="ms"), [Finding("time_unit", key)]
    if given.stated:
        return given, []
    if key == "soc_pct" and largest <= 1:
        return replace(given, unit="share"), [Finding("share_not_percent", key)]
    if key in ("cabin_kw", "battery_power_kw") and largest > FIELDS[key].maximum:
        return replace(given, unit="W"), [Finding("watts", key)]
    if key in ("speed_kmh", "elevation_m", "distance_m"):
        return given, [Finding("unit_assumed", key)]
    return given, []
