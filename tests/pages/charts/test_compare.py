"""Drives side by side: one scale for lengths, bands under what lies on them, differences around zero."""

import pytest

from model.describe.scenario_io import starting_drives
from model.out.comparison import difference, others, side_of
from model.sampling.uncertainty import Band
from model.words.quantities import Display
from pages.parts.charts.compare import difference_of, side_by_side
from tests.pages.charts.specs import assert_valid, tables, texts

TOWN = starting_drives()["town"][2]
CARS = others(TOWN, "car")
FIRST, SUV, HATCH = (side_of(one, TOWN.car_class, runs=30) for one in (TOWN, CARS["large-suv"], CARS["small-hatch"]))


def drawn(*sides, names=("city car", "large SUV", "small hatch")):
    differences = [difference(side, sides[0]) for side in sides[1:]]
    return side_by_side(sides, differences, names[: len(sides)], Display())


def boxes_of(spec, meaning):
    table = tables(spec)["boxes"]
    return table[table["meaning"] == meaning]


@pytest.mark.parametrize("sides", [(FIRST, SUV), (FIRST, SUV, HATCH), (FIRST, FIRST)])
def test_it_is_a_valid_picture_that_names_every_drive(sides):
    spec = drawn(*sides)
    assert_valid(spec)
    for name in ("City car", "Large SUV", "Small hatch")[: len(sides)]:
        assert name in texts(spec)


def test_lengths_are_energies_from_zero():
    spec = drawn(FIRST, SUV)
    taken, saved = boxes_of(spec, "road"), boxes_of(spec, "back")
    for place, side in enumerate((FIRST, SUV)):
        assert taken["x0"].iloc[place] == 0
        assert taken["x1"].iloc[place] == pytest.approx(side.answer.net_kwh.mid)
        assert saved["x0"].iloc[place] == pytest.approx(side.answer.net_kwh.mid)
        assert saved["x1"].iloc[place] == pytest.approx(side.answer.friction_only_net_kwh.mid)
    across = spec["layer"][0]["encoding"]["x"]["scale"]["domain"]
    assert across[0] == 0 and across[1] >= max(SUV.answer.friction_only_net_kwh.mid, SUV.answer.net_kwh.high)


def test_a_line_below_each_bar_is_the_band_of_its_end():
    spec = drawn(FIRST, SUV)
    taken, lines = boxes_of(spec, "road"), boxes_of(spec, "ink")
    for place, side in enumerate((FIRST, SUV)):
        # the line and its two ends
        line = lines.iloc[3 * place]
        assert (line["x0"], line["x1"]) == pytest.approx((side.answer.net_kwh.low, side.answer.net_kwh.high))
        assert line["y0"] > taken["y1"].iloc[place]


def test_the_difference_stands_to_the_right_of_zero_where_more_is_taken():
    spec = drawn(FIRST, SUV, HATCH)
    span = spec["layer"][0]["encoding"]["x"]["scale"]["domain"][1]
    bands = boxes_of(spec, "wash").iloc[-2:]
    for (low, high), side in zip(bands[["x0", "x1"]].to_numpy(), (SUV, HATCH), strict=True):
        found = difference(side, FIRST).net_kwh
        assert (low > span / 2) == (found.low > 0) and (high > span / 2) == (found.high > 0)
        assert 0 <= low <= high <= span


def test_a_drive_beside_itself_has_its_difference_on_the_zero():
    spec = drawn(FIRST, FIRST, names=("city car", "city car"))
    span = spec["layer"][0]["encoding"]["x"]["scale"]["domain"][1]
    band = boxes_of(spec, "wash").iloc[-1]
    assert band["x0"] == band["x1"] == pytest.approx(span / 2)


@pytest.mark.parametrize(
    ("low", "high", "text"),
    [
        (0.832, 1.439, "+0.8 to +1.4"),
        (-1.439, -0.832, "−1.4 to −0.8"),
        (-0.52, 0.0201, "−0.52 to +0.02"),
        (-0.0001, 0.52, "0 to +0.52"),
        (0.0, 0.0, "0"),
        (12.0, 12.0, "+12"),
    ],
)
def test_differences_are_told_with_their_signs(low, high, text):
    assert Display().figure(difference_of(Band(low, (low + high) / 2, high), "")) == text
