"""Whether lift-off strength changes consumption depends on the brake pedal: at the same speeds, warm, half charged."""

from dataclasses import replace

import numpy as np
import pytest

from model.describe.scenario_io import starting_drives
from model.lift_off.curves import curves_of


@pytest.mark.parametrize("name", list(starting_drives()))
def test_same_speeds_over_the_whole_axis(name):
    scenario = starting_drives()[name][2]
    warm = replace(scenario.conditions, ambient_c=20.0, battery_temp_c=25.0, cabin=False, soc_start=0.5)
    curves = curves_of(replace(scenario, conditions=warm))
    net = {pedal: curve.net_kwh.sum(axis=0) for pedal, curve in curves.same_speeds.items()}
    blended, friction = net["blended"], net["friction"]
    driven = curves.as_driven["blended"].net_kwh.sum(axis=0)
    print(
        f"{name}: blended pedal moves by {np.ptp(blended) / blended.mean():.3%}; friction-only pedal by "
        f"{1 - friction.min() / friction[0]:.1%} of rolling on; blended as you would drive it by "
        f"{np.ptp(driven) / driven.mean():.1%}"
    )
    assert np.ptp(blended) < 0.002 * blended.mean()
    assert 1 - friction.min() / friction[0] > 0.05
    assert (np.diff(friction) <= 1e-4 * friction[:-1]).all()
    # where lifting off does all the slowing, nothing is left for the pedal and its kind no longer matters
    left = {pedal: curve.friction_kwh.sum(axis=0)[-1] for pedal, curve in curves.same_speeds.items()}
    assert left["friction"] == pytest.approx(left["blended"], rel=0.02)
    assert friction[-1] == pytest.approx(blended[-1], rel=0.002)
