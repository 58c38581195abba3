"""Wager, Whale and Braunl, Proc. IMechE Part D, 2017, doi 10.1177/0954407017728651.

A micro electric hatch on a dynamometer: 11 to 22 % more range by regeneration setting and cycle.
"""

from model.checks.published import range_gain_on_dynamometer
from tests.tolerances import assert_within


def test_range_gain_of_a_city_car_with_a_friction_only_pedal():
    check = range_gain_on_dynamometer()
    compared = [found.name for found in check.found if found.published is not None]
    assert len(compared) == 4
    assert_within(check, dict.fromkeys(compared, (9, 24)))


def test_stronger_lift_off_gains_more_where_the_pedal_recovers_nothing():
    udds = [found.value for found in range_gain_on_dynamometer().found if found.what == "found-gain-on-udds"]
    assert udds == sorted(udds) and udds[0] < udds[-1]
