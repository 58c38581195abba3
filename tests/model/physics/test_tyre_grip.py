"""Grip and the weight on the driven wheels."""

import numpy as np
import pytest

from model.describe.parameters import car_from
from model.describe.scenario import SURFACES
from model.physics.surfaces import surface_table
from model.physics.tyre_grip import driven_axle_load_n, friction_coefficient


def test_surfaces_stand_from_the_most_grip_to_the_least():
    table = surface_table()
    assert np.all(table["low"] < table["mid"]) and np.all(table["mid"] < table["high"])
    assert np.all(np.diff(table["mid"]) < 0)


def test_level_moves_within_the_surfaces_band():
    table = surface_table()
    for index, _ in enumerate(SURFACES):
        assert friction_coefficient(index, -1.0) == pytest.approx(table["low"][index])
        assert friction_coefficient(index, 0.0) == pytest.approx(table["mid"][index])
        assert friction_coefficient(index, 1.0) == pytest.approx(table["high"][index])
        assert friction_coefficient(index, 0.5) == pytest.approx((table["mid"][index] + table["high"][index]) / 2)
    assert friction_coefficient(np.array([0, 3]), np.array([[-1.0], [1.0]])).shape == (2, 2)


@pytest.mark.parametrize("measured_m", [33.8, 35.8, 34.3, 42.8])
def test_the_dry_roads_band_reaches_from_worn_tyres_to_the_warm_ones_it_was_taken_from(measured_m):
    """From 100 km/h with brakes that act at once, metres of car magazines' tests; its source, and so no evidence."""
    speed = (np.arange(400) + 0.5) * 100 / 3.6 / 400
    worst, best = (
        float((speed / (9.80665 * friction_coefficient(0, level, speed=speed))).sum() * 100 / 3.6 / 400)
        for level in (-1.0, 1.0)
    )
    assert best <= measured_m <= worst


def test_only_water_and_snow_roll_harder():
    harder = {surface for surface, extra in zip(SURFACES, surface_table()["extra_rolling"], strict=True) if extra > 0}
    assert harder == {"wet", "standing-water", "snow"}


def test_both_axles_carry_the_whole_car_and_slowing_loads_the_front():
    loads = {
        axle: [driven_axle_load_n(car_from("family-hatch", {"driven_axle": axle}), 1800, a) for a in (0.0, 3.0)]
        for axle in ("front", "rear", "all")
    }
    weight = 1800 * 9.80665
    assert loads["all"] == [weight, weight]
    assert np.add(loads["front"], loads["rear"]) == pytest.approx(weight)
    moved = 1800 * 3.0 * 0.55 / 2.73
    assert loads["front"][1] - loads["front"][0] == pytest.approx(moved)
    assert loads["front"][0] == pytest.approx(0.52 * weight)
