"""A stop without the friction brakes."""

from dataclasses import replace

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
    """Without fade, and of a car with next to no road load, the motor gives its cap and no more."""
    bare = replace(CAR, fade_start_kmh=0.0, fade_end_kmh=0.0, drag_area_m2=0.1, rolling_coefficient=0.003)
    roomy = replace(bare, regen_peak_kw=500.0, charge_rate_factor=50.0, driven_axle="all")
    for cap, metres in ((1.3, 74), (2.5, 39)):
        found = motor_only_stop(replace(roomy, regen_cap_mps2=cap), DRY, 50.0).distance_m
        assert 0.9 * metres < found / (1 + CAR.rotating_mass_share) <= metres


def test_most_of_the_way_lies_before_the_motor_fades():
    alone = motor_only_stop(CAR, DRY, 100.0)
    assert 0.7 * alone.distance_m < alone.hand_over_m < alone.distance_m
    assert motor_only_stop(CAR, DRY, CAR.fade_start_kmh).hand_over_m == 0
