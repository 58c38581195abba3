"""Roads, from the most grip to the least: the table behind grip and rolling."""

from __future__ import annotations

from functools import cache

import numpy as np

from model.describe.parameters import rows
from model.describe.scenario import SURFACES
from model.describe.trace import Array


@cache
def surface_table() -> dict[str, Array]:
    """The figures of ``assets/grip.csv`` [1], each of shape (surfaces,) in order of SURFACES.

    ``low, mid, high`` (friction in town), ``share_at_90_kmh, share_at_130_kmh`` of it, a factor for each kind of tyre,
    and ``extra_rolling``.
    """
    by_name = {row["surface"]: row for row in rows("grip.csv")}
    columns = [name for name in by_name[SURFACES[0]] if name not in ("surface", "kind", "source")]
    return {
        name.removeprefix("grip_"): np.array([float(by_name[surface][name]) for surface in SURFACES])
        for name in columns
    }
