"""A hundred squares: as many in both runs, counted as the energy is, and none where a hill drives."""

from dataclasses import replace

import pytest

from model.describe.scenario_io import starting_drives
from model.kernel.timeline import books
from model.sampling.drives import drive
from pages.parts.charts.energy import grouped
from pages.parts.charts.squares import COLUMNS, ROWS, SAVED, counted, squares
from tests.pages.charts.specs import assert_valid, tables

TOWN = starting_drives()["town"][2]


@pytest.mark.parametrize("name", starting_drives())
def test_each_square_is_a_hundredth_of_what_friction_brakes_alone_would_take(name):
    book = books(drive(starting_drives()[name][2]))
    counts, uses = counted(book), grouped(book)
    without = uses["friction_only"].sum()
    for run in ("friction_only", "regenerated"):
        assert sum(counts[run].values()) == COLUMNS * ROWS
        for group, kwh in uses[run].items():
            assert counts[run][group] == pytest.approx(100 * kwh / without, abs=1)
    assert counts["friction_only"][SAVED] == 0
    assert counts["regenerated"][SAVED] == pytest.approx(100 * (1 - uses["regenerated"].sum() / without), abs=1)


def test_a_hill_that_drives_has_no_squares():
    down = replace(TOWN, legs=(replace(TOWN.legs[0], descent_m=400, grade_pct=6, distance_km=8),), return_trip=False)
    assert counted(books(drive(down))) is None


def test_squares_that_are_saved_are_frames_and_all_others_are_full():
    spec = squares({"road": 60, "friction": 3, SAVED: 37}, 30)
    assert_valid(spec)
    boxes = tables(spec)["boxes"]
    assert boxes["meaning"].value_counts().to_dict() == {"road": 60, "friction": 3, SAVED: 37, "ground": 37}
    inner, outer = boxes[boxes["meaning"] == "ground"], boxes[boxes["meaning"] == SAVED]
    assert (inner["x0"].to_numpy() > outer["x0"].to_numpy()).all()
    assert (inner["x1"].to_numpy() < outer["x1"].to_numpy()).all()
