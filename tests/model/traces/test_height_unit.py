"""Heights put into another unit afterwards are what they would have been if they had been read in it."""

import numpy as np
import pytest

from model.describe.scenario import Driver
from model.traces.height_unit import with_heights_in
from model.traces.logs import read_recording
from model.traces.route_only import RouteSettings
from tests.model.traces.test_recorded_gpx import TRACK, gpx

ROUTE = Driver(), RouteSettings()
ALONG = np.append(0.0, np.cumsum(np.hypot(*np.diff(TRACK[1]))))
HEIGHT_M = 300 + 11 * np.sin(ALONG / 150)
FEET = gpx(*TRACK, HEIGHT_M / 0.3048).encode()


def table(unit):
    """The same as a table without times."""
    rows = [f"{way},{height}" for way, height in zip(ALONG / 1000, HEIGHT_M / 0.3048, strict=True)]
    return "\n".join([f"Distance (km),Height ({unit})", *rows]).encode()


@pytest.mark.parametrize("off", [frozenset(), frozenset({"height"})])
def test_positions_over_time(off):
    read = read_recording(FEET, "a.gpx", off=off)
    found = with_heights_in(read, "ft", off, ROUTE)
    metres = read_recording(gpx(*TRACK, HEIGHT_M).encode(), "a.gpx", off=off)
    assert "height_unit" in [each.what for each in read.findings]
    assert "height_unit" not in [each.what for each in found.findings]
    assert found.trace.elevation_m == pytest.approx(metres.trace.elevation_m, abs=0.1)
    assert found.climb_recorded_m == pytest.approx(metres.climb_recorded_m, rel=0.01)
    assert [each.step for each in found.effects] == [each.step for each in metres.effects]
    back = with_heights_in(found, "m", off, ROUTE)
    assert back.trace.elevation_m == pytest.approx(read.trace.elevation_m) and back.findings == read.findings


def test_a_route():
    read = read_recording(table("m"), "a.csv", route=ROUTE)
    found = with_heights_in(read, "ft", frozenset(), ROUTE)
    told = read_recording(table("ft"), "a.csv", route=ROUTE)
    assert found.trace.elevation_m == pytest.approx(told.trace.elevation_m) and found.findings == told.findings
    assert found.columns[1].unit == "ft" and "height_unit" in [each.what for each in read.findings]


def test_what_has_no_heights_stays_as_it_is():
    read = read_recording(gpx(*TRACK).encode(), "a.gpx")
    assert with_heights_in(read, "ft", frozenset(), ROUTE) is read
