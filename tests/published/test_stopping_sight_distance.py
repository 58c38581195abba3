"""AASHTO Green Book 2018, Table 3-1: stopping sight distance from 2.5 s, rounded up to 5.

US rows from 11.2 ft/s² (copy of the table); the metric rows, from 3.4 m/s², are from memory.
"""

import math

import pytest

from model.describe.units import KMH_PER_MPS
from model.limits.stopping import SIGHT_REACTION_S, SIGHT_SLOWING_MPS2, sight_distance_m, stopping_distance_m

FEET_BY_MPH = {
    15: 80, 20: 115, 25: 155, 30: 200, 35: 250, 40: 305, 45: 360, 50: 425, 55: 495, 60: 570, 65: 645, 70: 730, 75: 820,
    80: 910,
}  # fmt: skip
SLOWING_FT_S2 = 11.2
METRES_BY_KMH = {50: 65, 60: 85, 70: 105, 80: 130, 90: 160, 100: 185, 110: 220, 120: 250}


def sight_distance_ft(speed_mph):
    """Before rounding, with the Green Book's own coefficients."""
    return 1.47 * speed_mph * SIGHT_REACTION_S + 1.075 * speed_mph * speed_mph / SLOWING_FT_S2


def up_to_five(length):
    return 5 * math.ceil(length / 5)


@pytest.mark.parametrize("mph", FEET_BY_MPH)
def test_us_rows(mph):
    assert up_to_five(sight_distance_ft(mph)) == FEET_BY_MPH[mph]


@pytest.mark.parametrize("kmh", METRES_BY_KMH)
def test_metric_rows_from_memory(kmh):
    assert up_to_five(sight_distance_m(kmh)) == METRES_BY_KMH[kmh]


def test_both_are_two_and_a_half_seconds_and_even_braking():
    """The printed coefficients are rounded: within 1 % of mechanics."""
    assert (SIGHT_REACTION_S, SIGHT_SLOWING_MPS2) == (2.5, 3.4)
    for kmh in METRES_BY_KMH:
        exact_m = stopping_distance_m(kmh / KMH_PER_MPS, SIGHT_REACTION_S, SIGHT_SLOWING_MPS2)
        assert sight_distance_m(kmh) == pytest.approx(exact_m, rel=0.01)
    for mph in FEET_BY_MPH:
        exact_ft = stopping_distance_m(mph * 5280 / 3600, SIGHT_REACTION_S, SLOWING_FT_S2)
        assert sight_distance_ft(mph) == pytest.approx(exact_ft, rel=0.01)
