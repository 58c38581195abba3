"""Traces that the car cannot keep up with."""

import numpy as np
import pytest

from model.describe.parameters import car_from
from model.describe.scenario import Conditions, Driver
from model.kernel.follow import follow
from model.kernel.run import drive
from model.kernel.savings import evaluate
from model.physics.motor_and_gear import greatest_pull_n, loss_w, motor_of
from model.physics.records import car_record
from model.traces.cycles import cycle_trace
from tests.made_traces import ride, steady
from tests.refused import refuses

WARM = Conditions(ambient_c=20.0, cabin=False, tyres_warm="yes")
CAR = car_from("family-hatch")
MOTOR = motor_of(car_record(CAR, WARM, Driver()))
WEAK = car_from("family-hatch", {"motor_peak_kw": 25.0})
SPRINT = ride(np.concatenate([np.linspace(0, 120, 9), np.full(60, 120.0), np.linspace(120, 0, 40), np.zeros(5)]))


def test_a_trace_within_reach_stays_as_it_is():
    trace = cycle_trace("wltc3b")
    assert follow(trace, CAR, WARM) == (trace, True)


def test_out_of_reach_the_road_stays_and_time_grows():
    hills = ride(np.concatenate([np.linspace(0, 120, 9), np.full(40, 120.0), [110, 90, 60, 30, 0, 0]]), slope=0.04)
    for trace in (SPRINT, hills):
        driven, followed = follow(trace, WEAK, WARM)
        assert not followed
        assert driven.distance_m == pytest.approx(trace.distance_m)
        assert driven.stops == trace.stops and driven.duration_s > trace.duration_s
        assert np.all(driven.speed_mps <= trace.speed_mps) and np.all(driven.step_s > 0)
        assert np.array_equal(driven.elevation_m, trace.elevation_m)


def test_a_slower_trace_asks_just_what_the_car_gives():
    driven, _ = follow(SPRINT, WEAK, WARM)
    run, motor = drive(driven, WEAK, WARM, Driver()), motor_of(car_record(WEAK, WARM, Driver()))
    used = np.array([
        force / greatest_pull_n(motor, speed, 1e9) for force, speed in zip(run.wheel_n[0], run.speed[0], strict=True)
    ])
    behind = (driven.speed_mps < SPRINT.speed_mps)[1:] & (driven.acceleration_mps2 > 0)
    assert behind.sum() > 20
    assert used.max() <= 1.001 and used[behind].min() > 0.99


def test_the_result_says_that_the_trace_was_not_followed_and_its_books_close():
    result = evaluate(SPRINT, WEAK, WARM, Driver())
    assert result.followed is False and result.answers()["followed_trace"] is False
    assert result.ledger.error_share < 1e-9


def test_a_hill_the_car_cannot_climb_is_said():
    with refuses(r"motor_peak_kw .* cannot climb the 30 % hill 0 km into the drive"):
        follow(ride(np.linspace(0, 50, 60), slope=0.3), car_from("van", {"motor_peak_kw": 10.0}), WARM)


def test_a_cold_battery_holds_the_car_back():
    small = car_from("city-car", {"usable_kwh": 12.0})
    cold = Conditions(ambient_c=-20.0, cabin=False)
    assert follow(cycle_trace("udds"), small, WARM)[1]
    assert not follow(cycle_trace("udds"), small, cold)[1]


def test_pull_is_limited_by_torque_then_power():
    base = CAR.motor_base_speed_kmh / 3.6
    slow, fast = (greatest_pull_n(MOTOR, speed, 1e9) for speed in (base / 2, base * 2))
    assert slow == pytest.approx(2 * fast)
    assert fast * base * 2 == pytest.approx(CAR.motor_peak_kw * 1000 * CAR.gear_efficiency)


def test_pull_is_limited_by_what_the_battery_gives():
    shaft_n = greatest_pull_n(MOTOR, 20.0, 30e3) / CAR.gear_efficiency
    assert shaft_n * 20.0 + loss_w(MOTOR, 20.0, shaft_n) == pytest.approx(30e3)
    assert greatest_pull_n(MOTOR, 20.0, 0.0) == 0


def test_a_battery_without_resistance_does_not_hold_the_car_back():
    car = car_from("family-hatch", {"cell_resistance_share": 0.0, "motor_loss_torque2": 0.0})
    result = evaluate(cycle_trace("udds"), car, WARM, Driver())
    assert result.followed and result.ledger.cell == 0 and result.ledger.error_share < 1e-9


def test_two_hundred_and_fifty_kilometres_an_hour():
    fast = steady(250, 60)
    assert follow(fast, car_from("performance-saloon"), WARM)[1]
    driven, followed = follow(fast, car_from("city-car"), WARM)
    assert not followed and driven.speed_mps.min() > 30
