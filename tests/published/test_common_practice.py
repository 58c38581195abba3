"""Common practice, no source: what a blended car with a motor-slowing limit of 0.2 g gets out of town driving."""

import pytest

from model.cycles import cycle_trace
from model.parameters import car_from
from model.savings import evaluate
from model.scenario import Conditions, Driver
from model.units import GRAVITY_MPS2

WARM_PART_CHARGED = Conditions(ambient_c=20.0, cabin=False, soc_start=0.6)
ACCESSORIES_W = 250.0


def family_hatch_on(cycle):
    car = car_from(
        "family-hatch",
        {"brake_pedal": "blended", "regen_cap_mps2": 0.2 * GRAVITY_MPS2, "accessory_w": ACCESSORIES_W},
    )
    return evaluate(cycle_trace(cycle), car, WARM_PART_CHARGED, Driver())


@pytest.mark.parametrize("cycle, at_least", [("udds", 0.90), ("wltc3b", 0.90), ("nycc", None)])
def test_electric_share_of_wheel_braking(cycle, at_least):
    share = family_hatch_on(cycle).captured_share
    print(f"electric share of wheel braking on {cycle}: {share:.1%}")
    if at_least is not None:
        assert share >= at_least, f"{cycle}: {share:.1%}"
    assert share <= 1


def test_range_gain_in_town():
    """The saying is "up to 40 % more range in town"; cabin off, accessories 250 W."""
    gain = {cycle: family_hatch_on(cycle).range_gain for cycle in ("udds", "wltc3b-low", "nycc")}
    print("range gain, cabin off, accessories 250 W:", {cycle: f"{share:.1%}" for cycle, share in gain.items()})
    assert 0.30 <= gain["udds"] <= 0.65, f"UDDS {gain['udds']:.1%}"
