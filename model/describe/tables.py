"""The tables of ``assets/``, checked as they are read: what is wrong is said in one sentence, with the row it is in."""

from __future__ import annotations

import csv
import difflib
import math
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise
from pathlib import Path

ASSETS = Path(__file__).resolve().parents[2] / "assets"


class TableError(ValueError):
    """A table of ``assets/`` that cannot be used: file, row and fault, in one sentence for whoever edits it."""


def unknown(what: str, given: str, known: Iterable[str]) -> str:
    """That a name is not known, with the nearest that is."""
    near = difflib.get_close_matches(given, names := list(known), n=1, cutoff=0.5)
    hint = f"the nearest is {near[0]!r}" if near else f"known are {', '.join(names)}"
    return f"{what} {given!r} is unknown; {hint}"


@dataclass(frozen=True)
class Row(Mapping[str, str]):
    """One row of a table, by column; `line` is its place in the file, the head being row 1."""

    table: str
    line: int
    cells: Mapping[str, str]

    def __getitem__(self, column: str) -> str:
        return self.cells[column]

    def __iter__(self) -> Iterator[str]:
        return iter(self.cells)

    def __len__(self) -> int:
        return len(self.cells)

    def wrong(self, what: str) -> TableError:
        """The error that says what is wrong in this row."""
        return TableError(f"assets/{self.table}, row {self.line}: {what}.")

    def number(self, column: str, least: float = -math.inf, most: float = math.inf) -> float:
        """The number in a column [its unit], from `least` to `most`."""
        try:
            number = float(self[column])
        except ValueError:
            raise self.wrong(f"{column} {self[column]!r} is not a number") from None
        if not least <= number <= most:
            raise self.wrong(f"{column} {number:g} does not lie from {least:g} to {most:g}")
        return number

    def one_of(self, column: str, known: Iterable[str]) -> str:
        """The name in a column, one of those known."""
        if self[column] not in (names := list(known)):
            raise self.wrong(unknown(column, self[column], names))
        return self[column]

    def in_order(self, *columns: str) -> None:
        """Check that the numbers in these columns do not fall."""
        for lower, upper in pairwise(columns):
            if self.number(lower) > self.number(upper):
                raise self.wrong(f"{lower} {self[lower]} is above {upper} {self[upper]}")


def rows(name: str, once: Sequence[str] = (), columns: Sequence[str] = ()) -> list[Row]:
    """The rows of a table in ``assets/``.

    Parameters
    ----------
    name : str
        The file, below ``assets/``.
    once : sequence of str
        Columns whose values together stand in one row only.
    columns : sequence of str
        Columns that there must be.

    Raises
    ------
    TableError
        Where a column is missing, a row is too short or too long, or a row stands twice.
    """
    with open(ASSETS / name, encoding="utf-8", newline="") as file:
        reader = csv.reader(file)
        head = next(reader, [])
        found = [Row(name, line, dict(zip(head, cells, strict=False))) for line, cells in enumerate(reader, 2)
                 if _fits(name, line, head, cells)]  # fmt: skip
    for column in {*once, *columns} - set(head):
        raise TableError(f"assets/{name}, row 1: there is no column {column!r}.")
    before: dict[tuple[str, ...], int] = {}
    for row in found:
        if (key := tuple(row[column] for column in once)) in before and once:
            raise row.wrong(f"{' '.join(key)} stands in row {before[key]} too")
        before[key] = row.line
    return found


def _fits(name: str, line: int, head: Sequence[str], cells: Sequence[str]) -> bool:
    if len(cells) != len(head):
        raise TableError(f"assets/{name}, row {line}: {len(cells)} cells where the head has {len(head)} columns.")
    return True
