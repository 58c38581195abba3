"""Heights of a recording in another unit than they were taken for, without the file that they came from."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from model.describe.scenario import Driver
from model.traces.logs import Recording, as_driven, at_other_speeds, elevation_of
from model.traces.recorded_names import UNITS, Column
from model.traces.route_only import RouteSettings
from model.traces.stretches import Gathered

HEIGHT = "elevation_m"
BY_UNIT = ("unit_assumed", "steep", "height_unit", "heights_scatter")
"""What is found of heights in one unit and not in another; what was left out or filled stays."""


def column_of_heights(recording: Recording) -> Column | None:
    """The column that heights were taken from; None where there is none."""
    return next((each for each in recording.columns if each.meaning == HEIGHT), None)


def with_heights_in(
    recording: Recording, unit: str, off: frozenset[str], route: tuple[Driver, RouteSettings]
) -> Recording:
    """The same recording, its heights read as being in another unit.

    The unit is one of `model.traces.recorded_names.UNITS` for heights; `off` and `route` are those of `read_recording`.
    """
    column = column_of_heights(recording)
    heights = recording.heights if recording.route is None else recording.route.heights
    if column is None or heights is None:
        return recording
    at, height_m = heights[0], heights[1] * UNITS[HEIGHT][unit][0] / UNITS[HEIGHT][column.unit][0]
    columns = tuple(replace(each, unit=unit, stated=True) if each is column else each for each in recording.columns)
    findings = [each for each in recording.findings if not (each.column == HEIGHT and each.what in BY_UNIT)]
    if recording.route is not None:
        left = tuple(each for each in findings if each.what not in ("speeds_assumed", "flat"))
        driven = recording.route.with_heights(at, height_m)
        return as_driven(driven, *route, recording.trace.name, columns, left)
    notes = Gathered(findings, [each for each in recording.effects if not each.is_about_height])
    trace = recording.trace
    along = np.append(0.0, np.cumsum(trace.step_m))
    trace = replace(trace, elevation_m=elevation_of((at, height_m), trace.time_s, along, off, notes))
    in_doubt = None if recording.in_doubt is None else at_other_speeds(trace, recording.in_doubt.speed_mps)
    return replace(
        recording, trace=trace, heights=(at, height_m), columns=columns, in_doubt=in_doubt,
        effects=tuple(notes.effects), findings=tuple(notes.findings),
    )  # fmt: skip
