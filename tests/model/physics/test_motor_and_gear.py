"""Motor, inverter and gear."""

import numpy as np
import pytest

from model.describe.parameters import car_from
from model.describe.scenario import Conditions, Driver
from model.physics import motor_and_gear
from model.physics.motor_and_gear import motor_of
from model.physics.records import car_record


def motor_in(car):
    return motor_of(car_record(car, Conditions(), Driver()))


CAR = car_from("family-hatch")
MOTOR = motor_in(CAR)
SPEEDS = np.linspace(2.0, 45.0, 25)


def loss_w(speed, force):
    return np.vectorize(lambda one, other: motor_and_gear.loss_w(MOTOR, one, other))(speed, force)


def slowing_force_n(speed, electric_w, motor=MOTOR):
    return np.vectorize(lambda one: motor_and_gear.slowing_force_n(motor, one, electric_w))(speed)


def test_peak_torque_gives_peak_power_at_the_base_speed():
    assert MOTOR.greatest_n * CAR.motor_base_speed_kmh / 3.6 == pytest.approx(CAR.motor_peak_kw * 1000)


def test_losses_add_up_to_their_shares_of_peak_power():
    at_once = loss_w(motor_and_gear.STATED_AT_KMH / 3.6, MOTOR.greatest_n)
    shares = (
        CAR.motor_loss_fixed + CAR.motor_loss_speed + CAR.motor_loss_speed2 + CAR.motor_loss_working
        + CAR.motor_loss_torque2
    )
    assert at_once == pytest.approx(shares * CAR.motor_peak_kw * 1000)


def test_nothing_is_lost_standing_and_something_spinning_idle():
    assert loss_w(0.0, 0.0) == 0
    assert np.all(np.diff(loss_w(SPEEDS, 0.0)) > 0) and loss_w(2.0, 0.0) > 0


def test_part_load_is_worse_than_the_middle_of_the_map():
    def efficiency(speed_kmh, power_w):
        speed = speed_kmh / 3.6
        return power_w / (power_w + loss_w(speed, power_w / speed))

    middle = efficiency(60, 40e3)
    assert 0.9 < middle < 0.97
    assert efficiency(60, 1e3) < 0.8 * middle
    assert efficiency(60, 130e3) < middle


@pytest.mark.parametrize("electric_w", [0.0, 500.0, 5e3, 30e3])
def test_slowing_force_is_the_one_that_gives_the_power(electric_w):
    force = slowing_force_n(SPEEDS, electric_w)
    speed, force = SPEEDS[np.isfinite(force)], force[np.isfinite(force)]
    assert len(speed) > 15
    assert force * speed - loss_w(speed, -force) == pytest.approx(electric_w, rel=1e-9, abs=1e-6)
    # the smaller of two such forces: more force would give more power
    assert np.all(2 * MOTOR.loss_w_per_n2 * force <= speed)


def test_power_that_is_never_given_needs_no_finite_force():
    assert slowing_force_n(1.0, 100e3) == np.inf
    peak_w = (1 - CAR.open_slowing_share) ** 2 / (4 * MOTOR.loss_w_per_n2) - loss_w(1.0, 0.0)
    assert np.isfinite(slowing_force_n(1.0, 0.999 * peak_w))
    assert slowing_force_n(1.0, 1.001 * peak_w) == np.inf


def test_a_lossless_motor_slows_with_power_over_speed():
    losses = (
        "motor_loss_fixed", "motor_loss_speed", "motor_loss_speed2", "motor_loss_working", "motor_loss_torque2",
        "open_slowing_share",
    )  # fmt: skip
    car = car_from("family-hatch", dict.fromkeys(losses, 0.0))
    assert slowing_force_n(10.0, 20e3, motor_in(car)) == pytest.approx(2000)


def test_slowing_power_is_as_stated_or_as_great_as_pulling():
    assert MOTOR.regen_peak_w == CAR.regen_peak_kw * 1000
    as_great = motor_in(car_from("family-hatch", {"regen_peak_kw": None}))
    assert as_great.regen_peak_w == CAR.motor_peak_kw * 1000


def test_what_the_map_leaves_open_costs_both_ways():
    """A thirstier car takes more when it pulls and puts less back when it slows; the drag without force stays."""
    open_ = motor_in(car_from("family-hatch", {"open_pulling_share": 0.1, "open_slowing_share": 0.2}))
    plain = motor_in(car_from("family-hatch", {"open_pulling_share": 0.0, "open_slowing_share": 0.0}))
    for force, share in ((1000.0, 0.1), (-1000.0, 0.2), (0.0, 0.0)):
        more = motor_and_gear.loss_w(open_, 20.0, force) - motor_and_gear.loss_w(plain, 20.0, force)
        assert more == pytest.approx(share * abs(force) * 20.0)


def test_a_machine_works_from_the_force_that_pays_for_its_losses():
    """What a working machine gives is held against what an idle one takes, at forces of either side."""
    for speed in SPEEDS:
        drag = motor_and_gear.idle_drag_n(MOTOR, speed)
        pays_n = slowing_force_n(speed, -motor_and_gear.idle_loss_w(MOTOR, speed) + drag * MOTOR.gear * speed)
        for times, worth in ((0.99, False), (1.01, True)):
            assert motor_and_gear.worth_working(MOTOR, speed, times * pays_n / MOTOR.gear, drag) == worth
        assert motor_and_gear.worth_working(MOTOR, speed, drag, drag)
