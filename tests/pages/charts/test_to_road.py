"""A range figure on its way to the road: bars where the numbers are, and steps in words."""

from dataclasses import replace
from itertools import pairwise

import pytest

from model.describe.scenario_io import starting_drives
from model.sampling.range_figure import range_on_road
from model.sampling.uncertainty import Band
from model.words.quantities import Display
from pages.parts.charts.claims import MARK_PX
from pages.parts.charts.to_road import step_text, to_road
from tests.pages.charts.specs import assert_valid, boxes, texts

ROAD = range_on_road(starting_drives()["suburb-hill"][2], 400.0, runs=40)


@pytest.mark.parametrize("dark", [False, True])
@pytest.mark.parametrize("us", [False, True])
def test_the_way_to_the_road_goes_from_the_printed_to_the_range_on_the_drive(dark, us):
    display = Display(us=us)
    spec = to_road(ROAD, "WLTC class 3b", display, dark)
    assert_valid(spec)
    bars = boxes(spec)
    bars = bars[(bars["y1"] - bars["y0"]) == MARK_PX].reset_index(drop=True)
    assert len(bars) == len(ROAD.steps) + 2
    shown = [display.value(km, "km") for km in (400, *(step.middle_range_km for step in ROAD.steps))]
    assert bars.loc[0, ["x0", "x1"]].tolist() == pytest.approx([0, shown[0]])
    assert bars.iloc[-1][["x0", "x1"]].tolist() == pytest.approx([0, shown[-1]])
    for place, (before, after) in enumerate(pairwise(shown), 1):
        assert bars.loc[place, "x0"] == pytest.approx(min(before, after))
    assert ("mi" if us else "km") in texts(spec)


def test_a_step_says_what_it_costs_or_brings():
    def told(middle, low, high):
        step = replace(ROAD.steps[0], id="hills", middle_cost_km=middle, cost_km=Band(low, middle, high))
        return step_text(step, Display())

    assert told(12.3, 8.0, 17.2) == "Your hills: 12 km less (8.0 to 17)"
    assert told(-5.1, -7.0, 1.0) == "Your hills: 5.1 km more"
    assert told(0.2, -1.0, 1.0) == "Your hills: changes nothing"
