"""What is told about a recording beside its trace: what was left out, filled or asked about, as typed values."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Finding:
    """One thing found in a recording.

    Parameters
    ----------
    what : str
        A key of `FINDINGS` or of `QUESTIONS`.
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


FINDINGS = {
    "no_number": "cells that hold no number were left out",
    "out_of_range": "values out of range were left out",
    "rows_without_time": "rows without a time were left out",
    "cut_off": "the file breaks off; what stands before was read",
    "filled": "empty cells were filled from their neighbours",
    "column_empty": "the column holds nothing",
    "column_gap": "the column has a gap of so many seconds and was left out",
    "standing_unrecorded": "for so many seconds no speed is given; the car stood before and after",
    "bridged": "gaps between positions were driven at an even speed",
    "from_positions": "speed was worked out from positions",
    "flat": "there is no height: the road was taken as flat",
    "two_sources": "power was worked out from current and voltage",
    "charged_standing": "the battery took so many kWh while the car stood",
    "speed_noise_left": "noise of so many km/h is left: it is not told from a restless foot",
}
QUESTIONS = {
    "unit_assumed": "the file names no unit",
    "speed_unit": "the speeds fit another unit: so many km/h is the highest",
    "speed_places": "the way by the speeds is so many times the way by the positions",
    "height_unit": "the road is steeper than roads are: so many metres up and down a kilometre",
    "time_unit": "the times were taken as milliseconds",
    "share_not_percent": "no charge is above 1: taken as shares",
    "watts": "the values were taken as watts",
    "power_sign": "the battery takes more than it gives",
    "steep": "the whole road is steeper than any: its heights were left out",
}
