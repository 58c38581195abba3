"""Emergency stops in pictures: lengths are distances, from zero, in the units shown."""

import numpy as np
import pytest

from model.describe.figures import Quantity
from model.describe.scenario_io import starting_drives
from model.limits.hard_stop import hard_stop
from model.limits.limit_settings import LimitSettings
from model.sampling.drives import drive
from model.words.quantities import Display
from pages.parts.charts.stops import discs_work, distances, motors_part
from tests.pages.charts.specs import assert_valid, tables, texts

METRIC, US = Display(), Display(us=True)
VALLEY = starting_drives()["mountain-valley"][2]
FOUND = hard_stop(VALLEY, LimitSettings(), drive(VALLEY))


def rows_of(display=METRIC, alone=FOUND.motor_only.distance_m):
    return tables(distances(FOUND.by_surface, "dry", alone, display))["rows"]


@pytest.mark.parametrize("dark", [False, True])
@pytest.mark.parametrize("display", [METRIC, US])
def test_they_are_valid_charts(dark, display):
    assert_valid(distances(FOUND.by_surface, "snow", FOUND.motor_only.distance_m, display, dark))
    parts = [("force", 0.3, Quantity(4.1, "kN")), ("power", 0.3, Quantity(90.0, "kW"))]
    assert_valid(motors_part(parts, display, dark))
    assert_valid(discs_work([3.0, 0.4], display, dark))


def test_lengths_are_the_distances():
    rows, us = rows_of(), rows_of(US)
    for end in ("low_m", "mid_m", "high_m", "thinking_m"):
        np.testing.assert_allclose(rows[end].iloc[:-1], FOUND.by_surface[end], atol=0.01)
        np.testing.assert_allclose(us[end].iloc[:-1], FOUND.by_surface[end] / 0.3048, atol=0.01)
    assert rows["zero"].eq(0).all()
    dry = FOUND.by_surface.iloc[0]
    assert rows["text"].iloc[0] == f"{dry['high_m']:.0f} to {dry['low_m']:.0f} m"
    assert rows["name"].iloc[-1] == METRIC.say("hard-stop-motor-alone") and rows["mid_m"].iloc[-1] == pytest.approx(
        FOUND.motor_only.distance_m, abs=0.01
    )


def test_a_stop_without_an_end_is_said_and_fills_the_axis():
    row = rows_of(alone=np.inf).iloc[-1]
    assert row["text"] == "no end" and np.isfinite(row["mid_m"])


def test_the_motors_part_and_the_discs_work_are_drawn_to_scale():
    boxes = tables(motors_part([("force", 0.25, Quantity(4.1, "kN"))], METRIC))["boxes"]
    assert list(boxes["x1"]) == [0.25, 1]
    assert "Force: motor 25 %" in texts(motors_part([("force", 0.25, Quantity(4.1, "kN"))], METRIC))
    assert list(tables(discs_work([3.0, 0.4], METRIC))["boxes"]["x1"]) == [3.0, 0.4]
    assert_valid(discs_work([0.0, 0.0], METRIC))
