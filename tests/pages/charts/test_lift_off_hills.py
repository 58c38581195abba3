"""Lift-off on hills in a picture: one to three lines, and words that no line crosses."""

import pytest

from model.describe.scenario_io import starting_drives
from model.lift_off.hills import slowing_on_hills
from model.words.quantities import Display
from pages.parts.charts.lift_off_hills import on_hills
from tests.pages.charts.specs import assert_valid, tables

METRIC = Display()
TOWN = starting_drives()["town"][2]


@pytest.mark.parametrize("dark", [False, True])
@pytest.mark.parametrize("strengths", [(1.3, 1.0, 0.0), (1.0, 0.0), (0.0,)])
def test_hills_are_a_valid_chart_of_one_to_three_lines(strengths, dark):
    slowing = slowing_on_hills(TOWN, 50.0, strengths)
    spec = on_hills(slowing, [(strength, f"at {strength:g}") for strength in strengths], METRIC, dark)
    assert_valid(spec)
    lines = [layer for layer in spec["layer"] if layer["mark"].get("type") == "line"]
    assert len({tuple(layer["mark"]["strokeDash"]) for layer in lines}) == len(lines) == 3
    drawn = tables(spec)["slowing"].groupby("place")["lift_off_mps2"].unique()
    assert [strength for (strength,) in drawn] == list(strengths)
    assert list(tables(spec)["names"]["text"]) == [f"at {strength:g}" for strength in strengths]


@pytest.mark.parametrize("yours", [0.0, 0.4, 0.7, 1.0, 1.9, 2.0, 2.2, 2.5])
def test_no_line_runs_through_the_words_of_a_zone(yours):
    names = {1.3: "advised", yours: "yours", 0.0: "rolling on"}
    slowing = slowing_on_hills(TOWN, 50.0, tuple(names))
    zones = tables(on_hills(slowing, [*names.items()], METRIC))["zones"]
    at = float(zones.set_index("zone").loc["may-be-lit", "at"])
    beneath = slowing[slowing["grade_pct"].between(at, at + 4)]
    # letters are 14 px high, which is 0.27 m/s²
    assert not beneath["slowing_mps2"].between(1.0 - 0.14, 1.0 + 0.14).any()
