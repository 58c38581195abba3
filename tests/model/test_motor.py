"""Motor, inverter and gear."""

import numpy as np
import pytest

from model import motor
from model.parameters import car_from

CAR = car_from("family-hatch")
SPEEDS = np.linspace(2.0, 45.0, 25)


def test_peak_torque_gives_peak_power_at_the_base_speed():
    assert motor.greatest_force_n(CAR) * CAR.motor_base_speed_kmh / 3.6 == pytest.approx(CAR.motor_peak_kw * 1000)


def test_losses_add_up_to_their_shares_of_peak_power():
    at_once = motor.loss_w(CAR, CAR.motor_top_speed_kmh / 3.6, motor.greatest_force_n(CAR))
    shares = CAR.motor_loss_fixed + CAR.motor_loss_speed + CAR.motor_loss_speed2 + CAR.motor_loss_torque2
    assert at_once == pytest.approx(shares * CAR.motor_peak_kw * 1000)


def test_nothing_is_lost_standing_and_something_spinning_idle():
    assert motor.loss_w(CAR, 0.0, 0.0) == 0
    assert np.all(np.diff(motor.loss_w(CAR, SPEEDS, 0.0)) > 0) and motor.loss_w(CAR, 2.0, 0.0) > 0


def test_part_load_is_worse_than_the_middle_of_the_map():
    def efficiency(speed_kmh, power_w):
        speed = speed_kmh / 3.6
        return power_w / (power_w + motor.loss_w(CAR, speed, power_w / speed))

    middle = efficiency(60, 40e3)
    assert 0.9 < middle < 0.97
    assert efficiency(60, 1e3) < 0.8 * middle
    assert efficiency(60, 130e3) < middle


@pytest.mark.parametrize("electric_w", [0.0, 500.0, 5e3, 30e3])
def test_slowing_force_is_the_one_that_gives_the_power(electric_w):
    force = motor.slowing_force_n(CAR, SPEEDS, electric_w)
    speed, force = SPEEDS[np.isfinite(force)], force[np.isfinite(force)]
    assert len(speed) > 15
    assert force * speed - motor.loss_w(CAR, speed, force) == pytest.approx(electric_w, rel=1e-9, abs=1e-6)
    # the smaller of two such forces: more force would give more power
    assert np.all(2 * motor.force_loss_w_per_n2(CAR) * force <= speed)


def test_power_that_is_never_given_needs_no_finite_force():
    assert motor.slowing_force_n(CAR, 1.0, 100e3) == np.inf
    peak_w = 1.0 / (4 * motor.force_loss_w_per_n2(CAR)) - motor.loss_w(CAR, 1.0, 0.0)
    assert np.isfinite(motor.slowing_force_n(CAR, 1.0, 0.999 * peak_w))
    assert motor.slowing_force_n(CAR, 1.0, 1.001 * peak_w) == np.inf


def test_a_lossless_motor_slows_with_power_over_speed():
    car = car_from("family-hatch", dict.fromkeys(("motor_loss_fixed", "motor_loss_speed", "motor_loss_speed2",
                                                  "motor_loss_torque2"), 0.0))  # fmt: skip
    assert motor.slowing_force_n(car, 10.0, 20e3) == pytest.approx(2000)


def test_slowing_power_is_as_stated_or_as_great_as_pulling():
    assert motor.regen_peak_w(CAR) == CAR.regen_peak_kw * 1000
    assert motor.regen_peak_w(car_from("family-hatch", {"regen_peak_kw": None})) == CAR.motor_peak_kw * 1000
