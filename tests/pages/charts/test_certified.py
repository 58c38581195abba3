"""The certified cars in pictures: every car, axes alike, misses by shape, and shares that are the table's."""

import csv
from collections import Counter

import numpy as np
import pytest

from model.checks.certified import KNOWN, SAID, certified_found
from model.words.quantities import Display
from pages.parts.charts.certified import SHAPES, measured_against_modelled, reliability
from tests.pages.charts.specs import assert_valid, tables
from tests.published.certified_cars import FOUND

METRIC, US = Display(), Display(us=True)
CYCLES = ("udds", "hwfet")


def written(cycle, known):
    """The table as the tests wrote it, read without the model."""
    with FOUND.open(encoding="utf-8", newline="") as file:
        return [row for row in csv.DictReader(file) if row["cycle"] == cycle and row["known"] == known]


def both(known):
    return tuple(certified_found(known, cycle) for cycle in CYCLES)


def scales(spec):
    """The scales of the first marks set along both axes."""
    encoding = spec["layer"][0]["encoding"]
    return encoding["x"]["scale"], encoding["y"]["scale"]


@pytest.mark.parametrize("dark", [False, True])
@pytest.mark.parametrize("known", KNOWN)
def test_they_are_valid_charts(known, dark):
    assert_valid(reliability(both(known), METRIC, dark))
    for found in both(known):
        assert_valid(measured_against_modelled(found, METRIC, dark))
        assert_valid(measured_against_modelled(found, US, dark))


@pytest.mark.parametrize("display", [METRIC, US])
@pytest.mark.parametrize("cycle", CYCLES)
def test_every_car_is_drawn_where_the_table_has_it(cycle, display):
    spec = measured_against_modelled(certified_found("road load", cycle), display)
    cars, rows = tables(spec)["cars"], written(cycle, "road load")
    for axis in ("modelled", "measured"):
        shown = [float(row[f"{axis}_wh_per_km"]) * (1.609344 if display.us else 1) for row in rows]
        np.testing.assert_allclose(cars[axis], shown, atol=0.01)
        low, high = scales(spec)[0]["domain"]
        assert low < cars[axis].min() and cars[axis].max() < high
    places = []
    for row in rows:
        low, high, measured = (float(row[key]) for key in ("q05", "q95", "measured_wh_per_km"))
        places.append("above" if measured > high else "below" if measured < low else "inside")
    assert list(cars["place"]) == places
    counts = Counter(places)
    assert list(tables(spec)["key"]["text"]) == [
        display.say("certified-place-counted", place=place, cars=counts[place]) for place in SHAPES
    ]


def test_axes_are_alike_fill_the_picture_and_both_cycles_share_them():
    city, highway = (measured_against_modelled(found, METRIC) for found in both("road load"))
    assert scales(city) == scales(highway)
    for spec in (city, reliability(both("road load"), METRIC)):
        along, upright = scales(spec)
        assert along["domain"] == upright["domain"]
        assert "range" not in along and "range" not in upright


def test_misses_have_shapes_of_their_own():
    spec = measured_against_modelled(certified_found("road load", "udds"), METRIC)
    shapes = [layer["mark"]["shape"] for layer in spec["layer"] if layer["data"]["name"] == "cars"]
    assert len(set(shapes)) == len(SHAPES) == len(shapes)


@pytest.mark.parametrize("known", KNOWN)
def test_shares_held_are_the_tables(known):
    held = tables(reliability(both(known), METRIC))["held"].set_index(["cycle", "said"])["held"]
    for cycle in CYCLES:
        rows = written(cycle, known)
        for said, (low, high) in SAID.items():
            inside = [float(row[low]) <= float(row["measured_wh_per_km"]) <= float(row[high]) for row in rows]
            assert held[cycle, said] == pytest.approx(100 * sum(inside) / len(rows), abs=0.01)
