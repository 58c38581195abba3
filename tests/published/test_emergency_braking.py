"""FMVSS 135, S7.5: at most 70 m from 100 km/h. The rest: common practice, no source.

Common practice says "more than 1 g" and "more than 2 MW from top speed in a laden performance car".
"""

import pytest

from model.describe.parameters import car_from, class_labels
from model.describe.scenario import Conditions, Scenario
from model.describe.units import GRAVITY_MPS2, KMH_PER_MPS
from model.limits.emergency_stop import emergency_stop, motor_part_g
from model.limits.stopping import braking_distance_m, braking_power_w


def test_the_least_a_car_must_do():
    from_kmh, allowed_m = 100.0, 70.0
    slowing = (from_kmh / KMH_PER_MPS) ** 2 / (2 * allowed_m)
    assert slowing == pytest.approx(5.51, abs=0.005)
    assert braking_distance_m(from_kmh / KMH_PER_MPS, slowing) == pytest.approx(allowed_m)
    assert emergency_stop(car_from("family-hatch"), Conditions(), from_kmh, level=-1.0).braking_m < allowed_m


def test_dry_roads_hold_six_tenths_of_g_to_a_whole_one():
    """On average over the stop, while the brakes build up included."""
    car = car_from("family-hatch")
    low, high = (
        emergency_stop(car, Conditions(), 100.0, level=level).mean_slowing_mps2 / GRAVITY_MPS2 for level in (-1.0, 1.0)
    )
    print(f"emergency braking on a dry road from 100 km/h: {low:.2f} to {high:.2f} g")
    assert (round(low, 1), round(high, 1)) == (0.6, 1.0)


def test_the_motors_part_is_two_to_three_tenths_of_g():
    """In town, where power does not limit it, for the assumed slowing limits of 1.5 to 2.5 m/s²."""
    for car_class in class_labels():
        part = motor_part_g(Scenario(car_class=car_class), 50.0)
        print(car_class, {name: f"{value:.2f} g" for name, value in part.items()})
    part = motor_part_g(Scenario(), 50.0)
    assert (round(part["low"], 1), round(part["high"], 1)) == (0.2, 0.3)


def test_what_two_megawatts_need():
    """About 2.7 t, 260 km/h and more than 1.05 g; the verdict is the claim's."""
    top_mps = 260 / KMH_PER_MPS
    needed_g = 2e6 / (2700 * top_mps) / GRAVITY_MPS2
    print(f"2 MW at 2.7 t and 260 km/h: {needed_g:.3f} g")
    assert needed_g == pytest.approx(1.05, abs=0.005)
    assert braking_power_w(2700, 1.05 * GRAVITY_MPS2, top_mps) > 2e6
    laden = car_from("performance-saloon")
    usual, best = (
        emergency_stop(laden, Conditions(payload_kg=2700 - laden.mass_kg), 260.0, level=level).power_w / 1e6
        for level in (0.0, 1.0)
    )
    print(f"a laden performance saloon: {usual:.2f} MW on a usual dry road, {best:.2f} MW on the best")
    assert usual < 2 < best
