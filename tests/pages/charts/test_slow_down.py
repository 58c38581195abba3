"""One slow-down in a picture: bars are as long as what they stand for, and both ways end at one place."""

from dataclasses import replace

import numpy as np
import pytest

from model.describe.parameters import car_from
from model.describe.scenario import Conditions, Driver
from model.one_stop.slow_down import compare
from model.words.quantities import Display
from pages.parts.charts.slow_down import one_slow_down
from tests.pages.charts.specs import assert_valid, tables

METRIC, US = Display(), Display(us=True)


def hatch_slow_down(from_kmh=80.0, to_kmh=50.0, **more):
    return compare(
        from_kmh / 3.6, to_kmh / 3.6, car_from("family-hatch"), Conditions(), Driver(lift_off_mps2=1.3), **more
    )


@pytest.mark.parametrize(("from_kmh", "to_kmh", "display"), [(80, 50, METRIC), (5, 0, US), (140, 135, METRIC)])
def test_a_slow_down_is_a_valid_chart(from_kmh, to_kmh, display):
    assert_valid(one_slow_down(hatch_slow_down(from_kmh, to_kmh), display, dark=True))


def test_bars_are_as_long_as_energy_and_time():
    found = hatch_slow_down()
    bars = tables(one_slow_down(found, METRIC))["bars"]
    length = (bars["to"] - bars["from"]).to_numpy()
    ways = (found.coast, found.regen, found.friction)
    np.testing.assert_allclose(length[0::2], [way.battery_wh / found.friction.battery_wh for way in ways])
    np.testing.assert_allclose(length[1::2], [way.time_s / found.coast.time_s for way in ways])


def test_a_way_that_charges_the_battery_hangs_to_the_left():
    found = hatch_slow_down(120, 0, equal_distance=False)
    assert found.regen.battery_wh < 0
    spec = one_slow_down(found, METRIC)
    regen = tables(spec)["bars"].iloc[2]
    assert regen["to"] < regen["from"] and regen["to"] >= 0
    assert any("\N{MINUS SIGN}" in text for text in tables(spec)["words"]["text"])
    assert_valid(spec)


def test_both_ways_end_at_the_same_place_and_speed():
    speeds = tables(one_slow_down(hatch_slow_down(), METRIC))["speeds"]
    ends = speeds.groupby("way").last()
    assert ends["metre"].max() - ends["metre"].min() < 12
    assert ends["speed"].tolist() == pytest.approx([50.0, 50.0], abs=1.5)


def test_the_case_without_ways_to_save_is_drawn_too():
    found = hatch_slow_down()
    nothing = replace(found.coast, battery_wh=0.0)
    assert_valid(one_slow_down(replace(found, coast=nothing, regen=nothing, friction=nothing), METRIC))
