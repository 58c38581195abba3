"""Roads, from the most grip to the least: the table behind grip and rolling."""

from __future__ import annotations

from functools import cache

import numpy as np

from model.describe.scenario import SURFACES
from model.describe.sources import named_sources
from model.describe.tables import TableError, rows
from model.describe.trace import Array

GRIP_COLUMNS = (
    "grip_low", "grip_mid", "grip_high", "share_at_90_kmh", "share_at_130_kmh", "summer_factor", "winter_factor",
    "extra_rolling",
)  # fmt: skip


@cache
def surface_table() -> dict[str, Array]:
    """The figures of ``assets/grip.csv`` [1], each of shape (surfaces,) in order of SURFACES.

    ``low, mid, high`` (friction in town), ``share_at_90_kmh, share_at_130_kmh`` of it, a factor for each kind of tyre,
    and ``extra_rolling``.
    """
    table = rows("grip.csv", once=("surface",), columns=GRIP_COLUMNS)
    by_name = {row.one_of("surface", SURFACES): row for row in table}
    for surface in SURFACES:
        if surface not in by_name:
            raise TableError(f"assets/grip.csv: there is no row of the surface {surface}.")
        by_name[surface].in_order("grip_low", "grip_mid", "grip_high")
        named_sources(by_name[surface])
    return {
        name.removeprefix("grip_"): np.array([by_name[surface].number(name, 0, 2) for surface in SURFACES])
        for name in GRIP_COLUMNS
    }
