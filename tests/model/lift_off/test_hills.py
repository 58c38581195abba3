"""Lift-off on hills, as tables."""

import numpy as np
import pytest

from model.describe.scenario import Scenario
from model.lift_off.hills import GRADES_PCT, HELD_PCT, held_downhills, rolling_downhill_pct, slowing_on_hills

HATCH = Scenario().with_setting("cabin", False)


def at(table, strength, grade):
    row = table[(table["lift_off_mps2"] == strength) & (table["grade_pct"] == grade)]
    return float(row["slowing_mps2"].iloc[0])


def test_flat_is_the_strength_itself_and_hills_add_to_it():
    table = slowing_on_hills(HATCH, 50.0, (0.0, 1.0, 1.5))
    assert len(table) == 3 * len(GRADES_PCT)
    assert at(table, 1.0, 0.0) == pytest.approx(1.0)
    assert at(table, 1.5, 0.0) == pytest.approx(1.5)
    for strength in (0.0, 1.0, 1.5):
        slowing = table.loc[table["lift_off_mps2"] == strength, "slowing_mps2"]
        assert (np.diff(slowing) > 0).all()


def test_a_downhill_is_held_where_the_slowing_there_is_nil():
    table = held_downhills(HATCH, 50.0)
    assert list(table["grade_pct"]) == list(HELD_PCT)
    six = table[table["grade_pct"] == 6].iloc[0]
    assert at(slowing_on_hills(HATCH, 50.0, (six["lift_off_mps2"],)), six["lift_off_mps2"], -6.0) == pytest.approx(
        0.0, abs=1e-9
    )
    assert table["held"].all() and (np.diff(table["asked_kw"]) > 0).all()


def test_a_full_battery_holds_no_steep_hill():
    full = held_downhills(HATCH.with_setting("soc_start", 1.0), 80.0)
    assert not full["held"].iloc[-1]


def test_rolling_keeps_a_speed_on_the_downhill_that_is_told():
    for speed, grade in zip((50.0, 120.0), rolling_downhill_pct(HATCH, (50.0, 120.0)), strict=True):
        table = slowing_on_hills(HATCH, speed, (0.0,))
        assert np.interp(-grade, table["grade_pct"], table["slowing_mps2"]) == pytest.approx(0.0, abs=2e-3)
