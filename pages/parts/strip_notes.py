"""What the pages write over the strip of the drive."""

from __future__ import annotations

from collections.abc import Sequence

import pandas as pd

from pages.parts import state
from pages.parts.charts.drive_strip import Note
from pages.parts.lift_off_words import leg_notes
from pages.parts.winter_words import strip_notes


def lift_off_notes(steps: pd.DataFrame) -> Sequence[Note]:
    """The lift-off strength advised along the road."""
    found = state.lift_off()
    return leg_notes(steps, found.advice, state.display()) if found else ()


def winter_notes(steps: pd.DataFrame) -> Sequence[Note]:
    """Where the battery holds motor slowing back."""
    costs = state.season_costs()
    return strip_notes(steps, costs.normal, state.display()) if costs else ()
