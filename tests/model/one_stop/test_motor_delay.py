"""A motor that slows the car a moment late."""

import numpy as np
import pytest

from model.describe.parameters import car_from
from model.describe.scenario import Conditions, Driver
from model.describe.trace import Trace
from model.one_stop.motor_delay import late_motor_cost, recovered_in_first_moments
from model.one_stop.slow_down import change, drive_way

HATCH = car_from("family-hatch", {"fade_start_kmh": 0.0, "fade_end_kmh": 0.0})
WARM = Conditions(ambient_c=20.0, cabin=False)


@pytest.fixture
def stop():
    return drive_way([change(50 / 3.6, 0.0, 1.0, HATCH, WARM)], HATCH, WARM, Driver()).trace


def test_without_a_delay_nothing_is_lost(stop):
    assert recovered_in_first_moments(stop, HATCH, WARM, Driver(), 0.0) == 0
    assert late_motor_cost(50 / 3.6, 0.0, HATCH, WARM, Driver(), 1e-6) == pytest.approx(0, abs=1e-4)


def test_shares_grow_with_the_delay_up_to_all_of_it(stop):
    shares = [recovered_in_first_moments(stop, HATCH, WARM, Driver(), delay) for delay in (0.1, 0.3, 1.0, 60.0)]
    assert (np.diff(shares) > 0).all()
    assert shares[-1] == pytest.approx(1)


def test_coarse_steps_are_cut_without_moving_the_answer(stop):
    second = np.append(np.arange(0.0, stop.time_s[-1]), stop.time_s[-1])
    speed = np.interp(second, stop.time_s, stop.speed_mps)
    coarse = Trace(time_s=second, speed_mps=speed, elevation_m=np.zeros(len(second)), warmed_up=True)
    fine, cut = (recovered_in_first_moments(trace, HATCH, WARM, Driver(), 0.3) for trace in (stop, coarse))
    assert cut == pytest.approx(fine, rel=1e-3)


def test_each_slow_down_of_a_drive_has_its_own_first_moments(stop):
    twice = Trace(
        time_s=np.concatenate([stop.time_s, stop.time_s[-1] + 20 + stop.time_s]),
        speed_mps=np.tile(stop.speed_mps, 2),
        elevation_m=np.zeros(2 * len(stop.time_s)),
        warmed_up=True,
    )
    once, both = (recovered_in_first_moments(trace, HATCH, WARM, Driver(), 0.3) for trace in (stop, twice))
    assert both == pytest.approx(once, rel=1e-3)
