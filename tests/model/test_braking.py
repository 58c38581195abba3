"""What limits the motor's part of a slow-down."""

import numpy as np
import pytest

from model.braking import LIMITS, fade_share, lift_off_motor_n, motor_limits_n
from model.parameters import car_from
from model.savings import evaluate
from model.scenario import Conditions, Driver
from tests.made_traces import ride, steady

WARM = Conditions(ambient_c=20.0, cabin=False)


def limits_of(car, driver=None, speed=15.0, braking_n=3000.0, deceleration=1.5, friction=0.85, road_load_n=400.0):
    return motor_limits_n(
        car, driver or Driver(), np.array([speed]), np.array([braking_n]), np.array([deceleration]), friction,
        car.mass_kg, 1.04 * car.mass_kg, np.array([road_load_n]),
    )  # fmt: skip


def test_lift_off_strength_is_a_total_and_the_road_does_its_part_first():
    assert lift_off_motor_n(1800, 1.0, 400) == 1400
    assert lift_off_motor_n(1800, 0.2, 400) == 0


def test_limits_are_asked_in_the_named_order():
    names = list(limits_of(car_from("family-hatch", {"brake_pedal": "friction"})))
    assert names == [name for name in LIMITS if name in names]
    assert "lift_off_only" in names and "lift_off_only" not in limits_of(car_from("family-hatch"))


def test_each_limit_is_what_its_name_says():
    car = car_from("family-hatch", {"brake_pedal": "friction"})
    limits = limits_of(car, Driver(lift_off_mps2=1.2))
    assert limits["lift_off_only"] == pytest.approx(1.2 * 1.04 * 1800 - 400)
    assert limits["drivability"] == pytest.approx(2.0 * 1800)
    assert limits["motor_torque"] == pytest.approx(130e3 / (45 / 3.6) / 0.95)
    assert limits["motor_power"] == pytest.approx(80e3 / 15 / 0.95)
    front_n = 1800 * 9.80665 * 0.52 + 1800 * 1.5 * 0.55 / 2.73
    assert limits["grip"] == pytest.approx(0.85 * 0.8 * front_n)
    assert limits["low_speed_fade"] == pytest.approx(3000)


def test_slowing_fades_between_two_speeds_unless_the_car_comes_to_rest():
    car = car_from("family-hatch")
    speed = np.array([0.0, 5.0, 10.0, 15.0, 50.0]) / 3.6
    assert fade_share(car, Driver(), speed) == pytest.approx([0, 0, 0.5, 1, 1])
    assert fade_share(car, Driver(comes_to_rest=True), speed) == pytest.approx(1)
    sharp = car_from("family-hatch", {"fade_start_kmh": 8.0, "fade_end_kmh": 8.0})
    assert fade_share(sharp, Driver(), np.array([7.9, 8.1]) / 3.6) == pytest.approx([0, 1])


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
    result = evaluate(ride(np.linspace(80, 30, 60)), car_from("family-hatch"), WARM, Driver())
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
