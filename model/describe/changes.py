"""What each version of the model changed or corrected: ``assets/changes.csv``, the oldest first."""

from __future__ import annotations

import re
from functools import cache

from model import MODEL_VERSION
from model.describe.sources import DATE
from model.describe.tables import Row, TableError, rows

KINDS_OF_CHANGE = ("first version", "change", "correction")
VERSION = re.compile(r"\d+\.\d+\.\d+")
DIGEST = re.compile(r"[0-9a-f]{16}")
"""What the kernel's golden answers of a version are known by."""


def _order(version: str) -> list[int]:
    return [int(part) for part in version.split(".")]


@cache
def changes() -> tuple[Row, ...]:
    """Every change, with its version, date, kind and what changed.

    Raises
    ------
    TableError
        Where a row has no text, a version, date or digest that is none, or versions fall or do not end with this one.
    """
    table = rows("changes.csv", columns=("version", "date", "kind", "what", "golden"))
    before = "0.0.0"
    for row in table:
        if not VERSION.fullmatch(row["version"]):
            raise row.wrong(f"version {row['version']!r} is none such as 0.2.0")
        if _order(row["version"]) < _order(before):
            raise row.wrong(f"version {row['version']} stands below {before}")
        if not (DATE.fullmatch(row["date"]) and len(row["date"]) == len("2026-11-29")):
            raise row.wrong(f"date {row['date']!r} is no day such as 2026-11-29")
        row.one_of("kind", KINDS_OF_CHANGE)
        if not row["what"].strip():
            raise row.wrong("it does not say what changed")
        if row["golden"] and not DIGEST.fullmatch(row["golden"]):
            raise row.wrong(f"golden {row['golden']!r} is no digest of sixteen digits")
        before = row["version"]
    if before != MODEL_VERSION:
        raise TableError(f"assets/changes.csv: no row at the end says what changed in {MODEL_VERSION}.")
    return tuple(table)
