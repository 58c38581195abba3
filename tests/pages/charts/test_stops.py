"""Emergency stops in pictures: lengths are distances, from zero, in the units shown."""

from dataclasses import replace

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


ALONE = FOUND.motor_only


def rows_of(display=METRIC, alone=ALONE):
    return tables(distances(FOUND.by_surface, "dry", alone, display))["rows"]


@pytest.mark.parametrize("dark", [False, True])
@pytest.mark.parametrize("display", [METRIC, US])
def test_they_are_valid_charts(dark, display):
    assert_valid(distances(FOUND.by_surface, "snow", ALONE, display, dark))
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


def test_the_motor_alone_begins_after_the_reaction_and_does_not_come_to_rest():
    row, thinking_m = rows_of().iloc[-1], FOUND.by_surface["thinking_m"].iloc[0]
    fades_m = thinking_m + ALONE.hand_over_m
    assert row["name"] == METRIC.say("hard-stop-motor-alone")
    assert [row["thinking_m"], row["mid_m"]] == pytest.approx([thinking_m, fades_m], abs=0.01)
    assert row["low_m"] > row["mid_m"]
    assert row["text"] == f"{fades_m:.0f} m down to {ALONE.hand_over_kmh:.0f} km/h, then it rolls on"


def test_a_stop_without_an_end_is_said_and_fills_the_axis():
    row = rows_of(alone=replace(ALONE, distance_m=np.inf, hand_over_m=np.inf)).iloc[-1]
    assert row["text"] == "no end" and np.isfinite(row["mid_m"])


def test_the_motors_part_and_the_discs_work_are_drawn_to_scale():
    boxes = tables(motors_part([("force", 0.25, Quantity(4.1, "kN"))], METRIC))["boxes"]
    assert list(boxes["x1"]) == [0.25, 1]
    assert "Force: motor 25 %" in texts(motors_part([("force", 0.25, Quantity(4.1, "kN"))], METRIC))
    assert list(tables(discs_work([3.0, 0.4], METRIC))["boxes"]["x1"]) == [3.0, 0.4]
    assert_valid(discs_work([0.0, 0.0], METRIC))
