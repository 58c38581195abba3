"""A stop without the friction brakes."""

from dataclasses import replace

import numpy as np
import pytest

from model.describe.parameters import car_from
from model.describe.scenario import Conditions
from model.limits.emergency_stop import emergency_stop
from model.limits.motor_only_stop import motor_only_stop

CAR = car_from("family-hatch")
DRY = Conditions()


def test_the_motor_alone_takes_far_longer_than_the_brakes():
    alone = motor_only_stop(CAR, DRY, 50.0)
    assert alone.distance_m > 2 * emergency_stop(CAR, DRY, 50.0, reaction_s=0.0).distance_m


def test_the_motor_alone_at_an_even_strength():
    """Without fade and within its limits the motor gives the total asked, road load included."""
    steady = replace(CAR, fade_start_kmh=0.0, fade_end_kmh=0.0, regen_cap_mps2=8.0, regen_peak_kw=500.0)
    roomy = replace(steady, charge_rate_factor=50.0, driven_axle="all")
    for strength, metres in ((1.3, 74), (2.5, 39)):
        found = motor_only_stop(roomy, DRY, 50.0, strength_mps2=strength).distance_m
        assert found == pytest.approx((50 / 3.6) ** 2 / 2 / strength, rel=1e-3)
        assert found == pytest.approx(metres, abs=0.6)


def test_the_motor_alone_does_not_stop_a_car_that_rolls_downhill():
    assert motor_only_stop(CAR, DRY, 50.0, grade=-0.06).distance_m == np.inf
