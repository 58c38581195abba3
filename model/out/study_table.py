"""The rows of a study in a table (.csv, .parquet), which is also what it goes on from when it was broken off.

Rows are written as they get done and put in order at the end, so the table is the same bytes whoever worked on it and
however often it was broken off. A parquet file can only be written whole: until then its rows are in a CSV beside it.
"""

from __future__ import annotations

import csv
import io
import os
from collections.abc import Iterable, Iterator, Mapping
from itertools import islice
from pathlib import Path
from types import TracebackType
from typing import BinaryIO, Self, cast

from model import MODEL_VERSION
from model.describe.brought import inert_cell
from model.describe.fields import InputError
from model.describe.figures import Several
from model.out.answers import rounded

COLUMNS: dict[str, type[str] | type[float]] = {
    "name": str,
    "size_bytes": int,
    "distance_km": float,
    "duration_s": float,
    "battery_net_kwh": float,
    "recovered_share_of_output": float,
    "followed_trace": bool,
    "shortfall_kwh": float,
    "measured_net_kwh": float,
    "measured_recovered_share_of_output": float,
    "net_error_share": float,
    "recovered_difference": float,
    "refused": str,
    "model_version": str,
    "settings": str,
}
"""The columns and what they hold; with bands, three more for each key of `MEASURED`. `settings` stands for what the row
was computed with: the car, all around it, and whether there is a band."""
MEASURED = {
    "battery_net_kwh": "measured_net_kwh",
    "recovered_share_of_output": "measured_recovered_share_of_output",
}
"""What has a band, and under which key of a row its measured figure stands beside the modelled one."""
ENDS = ("low", "mid", "high")
OUT_ENDINGS = (".csv", ".parquet")
BATCH_ROWS = 10_000
"""So many rows are in memory when a parquet file is written."""


class StudyTable:
    """A table that rows are added to; on leaving it without an error it is put in order.

    Parameters
    ----------
    out : path
        The table.
    band : bool
        Whether its rows have bands.
    settings : str
        What its rows are computed with.

    Raises
    ------
    InputError
        Where it is another kind of file, something else than such a table, or holds rows computed with other settings.
    """

    def __init__(self, out: Path, *, band: bool, settings: str) -> None:
        if out.suffix.lower() not in OUT_ENDINGS:
            raise InputError("study-out-of-other-kind", name=out.name, kinds=Several(OUT_ENDINGS))
        self.out, self.band, self.settings = out, band, settings
        self.columns = COLUMNS | {f"{key}_{end}": float for key in MEASURED if band for end in ENDS}
        self.is_parquet = out.suffix.lower() == ".parquet"
        self.at_work = out.with_name(out.name + ".rows.csv") if self.is_parquet else out
        self.sorted = out.with_name(out.name + ".sorted")
        self.places = (out, self.at_work, self.sorted)
        self.found: dict[str, tuple[int, int]] = {}
        """By name, where its row begins and how large its file was [bytes]."""
        try:
            self.file: BinaryIO = self._opened()
        except OSError as error:
            raise InputError("study-out-unwritable", name=out.name, why=str(error.strerror)) from None

    def __enter__(self) -> Self:
        return self

    def __exit__(self, kind: type[BaseException] | None, error: BaseException | None, at: TracebackType | None) -> None:
        self.file.close()

    def holds(self, file: Path) -> bool:
        """Whether there is a row of a recording as it is now."""
        return self.found.get(written(file.name), (0, -1))[1] == _size(file)

    def add(self, row: Mapping[str, object], file: Path) -> None:
        """Write a row; it is on its way to the disk when the next one is computed."""
        self._write(self._cells(row, _size(file)))

    def rows(self, files: Iterable[Path]) -> Iterator[dict[str, object]]:
        """The rows of some recordings that have one, as they were added."""
        for file in files:
            if (name := written(file.name)) in self.found:
                yield self._row(self._line(name))

    def put_in_order(self, files: Iterable[Path]) -> None:
        """Keep one row for each of these recordings, in their order."""
        names = [name for file in files if (name := written(file.name)) in self.found]
        if self.is_parquet:
            self._write_parquet(names)
            self.file.close()
            self.at_work.unlink()
        else:
            with self.sorted.open("wb") as ordered:
                ordered.write(_line_of(self.columns))
                ordered.writelines(map(self._line, names))
            self.file.close()
        os.replace(self.sorted, self.out)

    def _opened(self) -> BinaryIO:
        """The table to write rows to, with the rows that it has."""
        new = not self.at_work.exists()
        file = self.at_work.open("w+b" if new else "r+b")
        self.file, header = file, _line_of(self.columns)
        if header.startswith(first := file.readline()) and first != header:
            file.seek(0)
            file.truncate()
            file.write(header)
        elif first != header:
            file.close()
            raise InputError("study-out-is-another", name=self.out.name)
        self._read_on()
        if new and self.is_parquet and self.out.exists():
            self._take_parquet()
        return file

    def _read_on(self) -> None:
        """Find the rows; what was broken off within a row is cut off."""
        names = list(self.columns)
        while line := self.file.readline():
            at = self.file.tell() - len(line)
            cells = _cells_of(line)
            if not line.endswith(b"\n") or len(cells) != len(names):
                self.file.seek(at)
                self.file.truncate()
                return
            given = dict(zip(names, cells, strict=True))
            if given["settings"] != self.settings:
                self.file.close()
                raise InputError("study-out-of-other-settings", name=self.out.name)
            self.found[given["name"]] = at, int(given["size_bytes"])

    def _write(self, cells: Mapping[str, object]) -> None:
        self.file.seek(0, os.SEEK_END)
        self.found[str(cells["name"])] = self.file.tell(), cast(int, cells["size_bytes"])
        self.file.write(_line_of([_text(cells.get(key)) for key in self.columns]))
        self.file.flush()

    def _line(self, name: str) -> bytes:
        self.file.seek(self.found[name][0])
        return self.file.readline()

    def _cells(self, row: Mapping[str, object], size: int) -> dict[str, object]:
        band = cast(Mapping[str, list[float] | None], row.get("band", {}))
        bands = {
            f"{key}_{end}": value for key in MEASURED for end, value in zip(ENDS, band.get(key) or (), strict=False)
        }
        own = {"name": written(str(row["name"])), "size_bytes": size, "model_version": MODEL_VERSION}
        return {**row, **bands, **own, "settings": self.settings}

    def _typed(self, line: bytes) -> dict[str, object]:
        cells = zip(self.columns.items(), _cells_of(line), strict=True)
        return {key: None if cell == "" else cell == "True" if kind is bool else kind(cell)
                for (key, kind), cell in cells}  # fmt: skip

    def _row(self, line: bytes) -> dict[str, object]:
        row = {key: value for key, value in self._typed(line).items() if value is not None}
        bands = {key: [row[f"{key}_{end}"] for end in ENDS] for key in MEASURED if f"{key}_low" in row}
        return row | ({"band": bands} if bands else {})

    def _write_parquet(self, names: list[str]) -> None:
        import pyarrow as pa  # type: ignore[import-untyped]
        import pyarrow.parquet as pq  # type: ignore[import-untyped]

        kinds = {str: pa.string(), int: pa.int64(), float: pa.float64(), bool: pa.bool_()}
        schema = pa.schema([(key, kinds[kind]) for key, kind in self.columns.items()])
        left = iter(names)
        with pq.ParquetWriter(self.sorted, schema) as writer:
            while batch := list(islice(left, BATCH_ROWS)):
                rows = [self._typed(self._line(name)) for name in batch]
                writer.write_table(pa.Table.from_pylist(rows, schema))

    def _take_parquet(self) -> None:
        """Go on from a table that was put in order."""
        import pyarrow as pa
        import pyarrow.parquet as pq

        try:
            table = pq.ParquetFile(self.out)
            known = table.schema_arrow.names == list(self.columns)
        except (pa.ArrowException, OSError):
            known = False
        if not known:
            self.file.close()
            self.at_work.unlink()
            raise InputError("study-out-is-another", name=self.out.name)
        with table:
            for batch in table.iter_batches(BATCH_ROWS):
                for cells in batch.to_pylist():
                    if cells["settings"] != self.settings:
                        self.file.close()
                        self.at_work.unlink()
                        raise InputError("study-out-of-other-settings", name=self.out.name)
                    self._write(cells)


def written(name: str) -> str:
    """A file's name as a cell holds it: in one line, no formula, and text where the system's name is none."""
    text = name.encode("utf-8", "backslashreplace").decode().replace("\n", "\\n").replace("\r", "\\r")
    return str(inert_cell(text))


def _size(file: Path) -> int:
    try:
        return file.stat().st_size
    except OSError:
        return 0


def _text(value: object) -> str:
    value = rounded(value)
    if value is None:
        return ""
    return f"{value:.6g}" if isinstance(value, float) else str(inert_cell(value))


def _line_of(cells: Iterable[str]) -> bytes:
    line = io.StringIO(newline="")
    csv.writer(line, lineterminator="\n").writerow(cells)
    return line.getvalue().encode("utf-8", "backslashreplace")


def _cells_of(line: bytes) -> list[str]:
    return next(csv.reader([line.decode("utf-8", "replace")]), [])
