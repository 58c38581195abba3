"""Grip asked of the driven axle, from mechanics, and the largest lift-off on Wong's snow and ice.

Force is mass times deceleration, road load not subtracted; wheelbase 2.75 m, centre of gravity 0.55 m above the road.
Packed snow 0.2 and ice 0.1: Wong, Theory of Ground Vehicles, 2nd edition, page 26 (copy).
"""

import numpy as np
import pytest

from model.describe.parameters import car_from
from model.describe.scenario import Conditions
from model.limits.grip_margin import demand_friction, grip_asked, largest_lift_off_mps2
from model.physics.surfaces import surface_table

SLOWING_MPS2 = np.array([0.7, 1.3, 2.0, 2.5])
ASKED = {
    "all": [0.071, 0.133, 0.204, 0.255],
    "front": [0.139, 0.252, 0.377, 0.463],
    "rear": [0.147, 0.280, 0.444, 0.568],
}
SNOW, ICE = 0.2, 0.1


def car(driven_axle, front_share=0.5):
    return car_from(
        "family-hatch",
        {"driven_axle": driven_axle, "front_load_share": front_share, "wheelbase_m": 2.75, "cg_height_m": 0.55},
    )


@pytest.mark.parametrize("axle", ASKED)
def test_grip_asked_of_the_driven_axle(axle):
    asked = demand_friction(grip_asked(car(axle), Conditions(), SLOWING_MPS2), axle)
    print(axle, np.round(asked, 3))
    assert asked == pytest.approx(np.array(ASKED[axle]), abs=0.005)


@pytest.mark.parametrize(
    "axle, front_share, friction, expected",
    [
        ("front", 0.5, SNOW, 1.02), ("front", 0.6, SNOW, 1.23), ("front", 0.5, ICE, 0.50), ("front", 0.6, ICE, 0.60),
        ("rear", 0.5, SNOW, 0.94), ("rear", 0.5, ICE, 0.48),
    ],
)  # fmt: skip
def test_largest_lift_off_on_one_axle(axle, front_share, friction, expected):
    found = float(largest_lift_off_mps2(car(axle, front_share), Conditions(), friction))
    print(f"{axle}-driven, front share {front_share}, friction {friction}: {found:.3f} m/s²")
    assert found == pytest.approx(expected, abs=0.005)


def test_the_tables_packed_snow_and_ice_are_those_of_the_source():
    assert surface_table()["mid"][[3, 4]] == pytest.approx([SNOW, ICE])
