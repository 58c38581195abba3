"""Emergency stops, the brakes' build-up, standing on a slope."""

from dataclasses import replace

import numpy as np
import pytest

from model.describe.parameters import car_from
from model.describe.scenario import SURFACES, Conditions, Scenario
from model.limits.emergency_stop import (
    build_up,
    emergency_answers,
    emergency_stop,
    motor_part_g,
    motor_slowing_n,
    standing_on_slope,
)
from model.limits.stopping import stopping_distance_m

CAR = car_from("family-hatch")
DRY = Conditions()
G = 9.80665


def test_grip_that_does_not_change_with_speed_gives_the_closed_form():
    at_once = replace(CAR, brake_build_up_s=0.0)
    stop = emergency_stop(at_once, replace(DRY, surface="snow"), 60.0, reaction_s=1.5)
    assert stop.distance_m == pytest.approx(stopping_distance_m(60 / 3.6, 1.5, 0.2 * G))
    assert stop.time_s == pytest.approx(1.5 + 60 / 3.6 / (0.2 * G))
    assert stop.braked_j == pytest.approx(CAR.mass_kg * (60 / 3.6) ** 2 / 2)
    assert stop.power_w == pytest.approx(stop.force_n * 60 / 3.6)


def test_brakes_that_build_up_lengthen_the_stop_by_about_half_their_time():
    snow, start, slowing = replace(DRY, surface="snow"), 60 / 3.6, 0.2 * G
    at_once, late = (emergency_stop(replace(CAR, brake_build_up_s=s), snow, 60.0) for s in (0.0, 0.4))
    longer_m = start * 0.4 / 2 - slowing * 0.4**2 / 24
    assert late.braking_m - at_once.braking_m == pytest.approx(longer_m, rel=1e-3)
    assert late.time_s - at_once.time_s == pytest.approx(0.2)
    assert late.braked_j == pytest.approx(at_once.braked_j)
    assert late.motor_j >= at_once.motor_j


def test_the_build_up_stepped_by_hand():
    """Newton's law in steps of 0.1 ms; a stop from walking pace ends before the brakes are built up."""
    for start, end_s in ((20.0, 0.3), (0.4, None)):
        full, time_s, speed, passed_m = 8.0, 0.0, start, 0.0
        found = build_up(start, full, 0.3)
        while time_s < 0.3 - 1e-9 and speed > 0:
            slowing = full * (time_s + 5e-5) / 0.3
            passed_m += speed * 1e-4 - slowing * 1e-8 / 2
            speed, time_s = speed - slowing * 1e-4, time_s + 1e-4
        assert found.time_s == pytest.approx(time_s, abs=2e-4) and (end_s is None or found.time_s == end_s)
        assert found.distance_m == pytest.approx(passed_m, abs=1e-3)
        assert found.end_mps == pytest.approx(max(speed, 0.0), abs=2e-3)


def test_a_slipperier_road_takes_longer():
    at = [emergency_stop(CAR, replace(DRY, surface=surface), 50.0).distance_m for surface in SURFACES]
    assert at == sorted(at) and at[0] < at[-1]


def test_the_motors_part_is_bounded_by_cap_power_battery_and_grip():
    slow, fast = (emergency_stop(CAR, DRY, kmh) for kmh in (40.0, 150.0))
    assert slow.motor_force_n == pytest.approx(CAR.regen_cap_mps2 * CAR.mass_kg)
    assert fast.motor_force_n == pytest.approx(CAR.regen_peak_kw * 1000 / CAR.gear_efficiency / (150 / 3.6))
    assert 0 < fast.motor_share < slow.motor_share < 0.3
    full = emergency_stop(CAR, replace(DRY, soc_start=1.0), 40.0)
    assert full.motor_force_n < 0.1 * slow.motor_force_n
    on_ice = emergency_stop(CAR, replace(DRY, surface="ice"), 40.0)
    assert on_ice.motor_force_n < on_ice.force_n


def test_motor_slowing_fades_near_standstill():
    speeds = np.array([0.2, 1.0, 3.0, 10.0])
    assert motor_slowing_n(CAR, DRY, speeds, 2.0) == pytest.approx(
        np.array([0.0, 0.0, (3.0 * 3.6 - 5) / 10, 1.0]) * CAR.regen_cap_mps2 * CAR.mass_kg
    )


def test_what_a_user_states_has_no_band():
    stated = Scenario(stated=(("regen_cap_mps2", 1.0),))
    assert set(np.round(list(motor_part_g(stated, 30.0).values()), 6)) == {round(1.0 / G, 6)}


def test_standing_on_a_slope():
    found = standing_on_slope(CAR, replace(DRY, surface="ice"), -0.08)
    assert found["force_n"] == pytest.approx(CAR.mass_kg * G * np.sin(np.arctan(0.08)))
    assert found["demand_friction"] == 0.08
    assert found["available_friction"]["low"] < 0.08 < found["available_friction"]["mid"]


def test_emergency_answers_are_in_order_and_say_their_road():
    answers = emergency_answers(Scenario(conditions=Conditions(surface="wet")), 100.0)
    band = answers["band"]["distance_m"]
    assert band["low"] > band["mid"] > band["high"] and answers["distance_m"] == band["mid"]
    assert answers["surface"] == "wet"
    assert answers["battery_wh"] == pytest.approx(CAR.accessory_w * answers["time_s"] / 3600)
    assert 0 < answers["motor_at_most"]["share"] < 1


def test_a_trailer_without_brakes_lengthens_the_stop_by_its_share_of_the_mass():
    at_once = replace(CAR, brake_build_up_s=0.0)
    alone = emergency_stop(at_once, DRY, 100.0)
    towing = emergency_stop(at_once, replace(DRY, trailer_kg=CAR.mass_kg), 100.0)
    assert towing.braking_m == pytest.approx(2 * alone.braking_m)
    assert towing.force_n == pytest.approx(alone.force_n)
    hill = standing_on_slope(CAR, replace(DRY, trailer_kg=CAR.mass_kg), -0.1)
    assert hill["demand_friction"] == pytest.approx(0.2)
