"""Where published figures are from: ``assets/sources.csv``, a row a source, which every table names by its id."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from model.describe.tables import Row, rows

HOW_READ = ("original", "abstract", "copy", "press", "second-hand", "from memory", "computed")
"""How a source was read: itself, its abstract alone, someone's copy, a report or release, as another quotes it, not at
all, or worked out here."""
DATE = re.compile(r"(19|20)\d\d(-(0[1-9]|1[0-2])(-(0[1-9]|[12]\d|3[01]))?)?")
ADDRESS = re.compile(r"https://[\w./?=&%+~:-]+")
"""Nothing in it ends a link or begins another in Markdown or HTML."""


@dataclass(frozen=True)
class Source:
    """One source.

    `published` is a year, month or day, empty where the source has no date; `read` the day on which it was read,
    empty where it was not; `address` is empty where none was found or confirmed.
    """

    id: str
    name: str
    published: str
    address: str
    read: str
    how: str


def _source(row: Row) -> Source:
    if not row["name"].strip():
        raise row.wrong("there is no name")
    for column in ("published", "read"):
        if row[column] and not DATE.fullmatch(row[column]):
            raise row.wrong(f"{column} {row[column]!r} is no date such as 2024, 2024-03 or 2024-03-09")
    if row["address"] and not ADDRESS.fullmatch(row["address"]):
        raise row.wrong(f"address {row['address']!r} is none that begins with https:// and can stand in a link")
    how = row.one_of("how", HOW_READ)
    if bool(row["read"]) == (how in ("from memory", "computed")):
        raise row.wrong(f"what is {how} has {'a' if row['read'] else 'no'} day on which it was read")
    return Source(row["id"], row["name"], row["published"], row["address"], row["read"], how)


@cache
def sources() -> Mapping[str, Source]:
    """Every source, by id.

    Raises
    ------
    TableError
        Where a row has no name, a date or an address that is none, or a way of reading that does not fit.
    """
    return {row["id"]: _source(row) for row in rows("sources.csv", once=("id",))}


def named_sources(row: Row) -> tuple[str, ...]:
    """The ids in a row's column ``sources``; what is published names at least one."""
    ids = tuple(row["sources"].split())
    for source in ids:
        if source not in sources():
            raise row.wrong(f"source {source!r} does not stand in sources.csv")
    if row["kind"] == "published" and not ids:
        raise row.wrong("what is published names no source of sources.csv")
    return ids
