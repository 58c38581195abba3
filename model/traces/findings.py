"""What is told about a recording beside its trace: what was left out, filled or asked about, as typed values."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Finding:
    """One thing found in a recording.

    Parameters
    ----------
    what : str
        What was found, by which ``own_road.ftl`` chooses its words.
    column : str
        The meaning it is about, a key of `model.traces.recorded_names.UNITS`; empty where it is about the whole.
    count : int
        How many rows, cells or seconds.
    value : float, optional
        A figure in the unit that its kind names.
    """

    what: str
    column: str = ""
    count: int = 0
    value: float | None = None

    @property
    def asks(self) -> bool:
        """Whether somebody should look at it: the file may mean something else."""
        return self.what in QUESTIONS


QUESTIONS = (
    "unit_assumed", "speed_unit", "speed_places", "height_unit", "time_unit", "share_not_percent", "watts",
    "power_sign", "steep",
)  # fmt: skip
"""Findings that somebody should look at."""
