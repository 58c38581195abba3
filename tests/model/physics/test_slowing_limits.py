"""What limits the motor's part of a slow-down."""

import numpy as np
import pytest

from model.describe.parameters import car_from
from model.describe.scenario import Conditions, Driver
from model.kernel.savings import evaluate
from model.physics import slowing_limits as limits
from model.physics.motor_and_gear import motor_of
from model.physics.records import car_record
from tests.made_traces import ride, steady

WARM = Conditions(ambient_c=20.0, cabin=False)


def one(stated=None, conditions=WARM, **driver):
    """A car as a record, and its motor."""
    record = car_record(car_from("family-hatch", stated), conditions, Driver(**driver))
    return record, motor_of(record)


def test_lift_off_strength_is_a_total_and_the_road_does_its_part_first():
    car, _ = one()
    assert limits.lift_off_motor_n(car, 1.0, 400.0) == pytest.approx(1.04 * 1800 - 400)
    assert limits.lift_off_motor_n(car, 0.2, 400.0) == 0


def test_each_limit_is_what_its_name_says():
    car, motor = one({"brake_pedal": "friction"})
    assert limits.drivability_n(car) == pytest.approx(2.0 * 1800)
    assert limits.motor_torque_n(motor) == pytest.approx(130e3 / (45 / 3.6) / 0.96)
    assert limits.motor_power_n(motor, 15.0) == pytest.approx(80e3 / 15 / 0.96)
    front_n = 1800 * 9.80665 * 0.52 + 1800 * 1.5 * 0.55 / 2.73
    assert limits.grip_n(car, 0.85, 1.5) == pytest.approx(0.85 * 0.8 * front_n)


@pytest.mark.parametrize(
    "stated, asked_n, speed, left_n, name",
    [
        ({"brake_pedal": "friction"}, 3000.0, 15.0, 700.0, "lift_off_only"),
        ({}, 3000.0, 15.0, 3000.0, ""),
        ({}, 9000.0, 15.0, 3600.0, "drivability"),
        ({"regen_cap_mps2": 8.0}, 20000.0, 15.0, 80e3 / 15 / 0.96, "motor_power"),
        ({}, 3000.0, 10 / 3.6, 1500.0, "low_speed_fade"),
    ],
)
def test_the_narrowest_limit_is_named(stated, asked_n, speed, left_n, name):
    car, motor = one(stated)
    may = limits.motor_may(car, motor, speed, asked_n, 1.5, 0.85, 700.0)
    assert may.slowing_n == pytest.approx(left_n)
    assert (limits.LIMITS[may.bound] if may.bound >= 0 else "") == name


def test_slowing_fades_between_two_speeds_unless_the_car_comes_to_rest():
    def shares(car, *speeds_kmh):
        return [limits.fade_share(car, speed / 3.6) for speed in speeds_kmh]

    assert shares(one()[0], 0.0, 5.0, 10.0, 15.0, 50.0) == pytest.approx([0, 0, 0.5, 1, 1])
    assert shares(one(comes_to_rest=True)[0], 0.0, 5.0, 50.0) == pytest.approx([1, 1, 1])
    sharp, _ = one({"fade_start_kmh": 8.0, "fade_end_kmh": 8.0})
    assert shares(sharp, 7.9, 8.1) == pytest.approx([0, 1])


SLOWING = ride(np.linspace(100, 0, 41))
HARD = ride(np.linspace(100, 0, 6))


@pytest.mark.parametrize(
    "limit, car, conditions, driver, trace",
    [
        ("lift_off_only", {"brake_pedal": "friction"}, {}, {"lift_off_mps2": 0.4}, SLOWING),
        ("drivability", {"regen_cap_mps2": 0.3}, {}, {}, SLOWING),
        ("motor_torque", {"motor_peak_kw": 20.0, "motor_base_speed_kmh": 100.0}, {}, {}, SLOWING),
        ("motor_power", {"regen_peak_kw": 8.0}, {}, {}, SLOWING),
        ("grip", {"driven_axle": "rear"}, {"surface": "ice"}, {}, SLOWING),
        ("low_speed_fade", {"fade_start_kmh": 60.0, "fade_end_kmh": 50.0}, {}, {}, SLOWING),
        ("battery", {}, {"soc_start": 1.0}, {}, SLOWING),
        ("drivability", {}, {}, {}, HARD),
    ],
)
def test_the_limit_that_binds_is_the_one_named(limit, car, conditions, driver, trace):
    result = evaluate(trace, car_from("family-hatch", car), Conditions(cabin=False, **conditions), Driver(**driver))
    assert max(result.limits_kwh, key=result.limits_kwh.get) == limit
    assert sum(result.limits_kwh.values()) == pytest.approx(result.wheel_friction_kwh)


def test_nothing_binds_in_a_gentle_slow_down():
    result = evaluate(ride(np.linspace(80, 30, 40)), car_from("family-hatch"), WARM, Driver())
    assert result.wheel_braking_kwh > 0
    assert result.limits_kwh == {} and result.captured_share == 1


def test_without_regeneration_friction_does_it_all_but_the_drag_of_the_idle_motor():
    result = evaluate(SLOWING, car_from("family-hatch", {"zero_torque_drag_share": 0.0}), WARM, Driver())
    assert np.all(result.friction_only.motor_n == 0)
    assert result.friction_only_wheel_friction_kwh == pytest.approx(result.wheel_braking_kwh)


def test_a_loaded_rear_axle_never_pushes():
    """Slowing so hard that the rear wheels carry nothing: the motor on them does nothing, never less than nothing."""
    car = car_from("family-hatch", {"driven_axle": "rear", "cg_height_m": 1.5, "wheelbase_m": 1.5})
    result = evaluate(HARD, car, WARM, Driver())
    assert np.all(result.run.motor_n >= 0)
    assert result.limits_kwh["grip"] > 0


def test_coming_to_rest_on_the_motor_leaves_less_to_friction():
    car = car_from("family-hatch")
    held = evaluate(SLOWING, car, WARM, Driver(comes_to_rest=True))
    assert held.wheel_friction_kwh < evaluate(SLOWING, car, WARM, Driver()).wheel_friction_kwh


def test_nothing_is_braked_at_a_steady_speed():
    result = evaluate(steady(80, 60), car_from("family-hatch"), WARM, Driver())
    assert result.wheel_braking_kwh == 0 and result.captured_share is None and result.limits_kwh == {}
