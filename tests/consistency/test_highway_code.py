"""UK Highway Code, rule 126: typical stopping distances, from 0.67 s of thinking and 6.55 m/s² of braking.

Both were derived from these very rows: that they come out again is no evidence.
"""

import pytest

from model.describe.units import MPS_PER_MPH
from model.limits.stopping import HIGHWAY_CODE, braking_distance_m, stopping_distance_m, thinking_distance_m

ROWS = {20: (6, 6, 12), 30: (9, 14, 23), 40: (12, 24, 36), 50: (15, 38, 53), 60: (18, 55, 73), 70: (21, 75, 96)}


@pytest.mark.parametrize("mph", ROWS)
def test_every_row_to_the_metre(mph):
    speed, (reaction_s, deceleration) = mph * MPS_PER_MPH, HIGHWAY_CODE
    thinking, braking, total = ROWS[mph]
    assert (reaction_s, deceleration) == (0.67, 6.55)
    assert round(thinking_distance_m(speed, reaction_s)) == thinking
    assert round(braking_distance_m(speed, deceleration)) == braking
    assert round(stopping_distance_m(speed, reaction_s, deceleration)) == total
