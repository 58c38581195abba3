"""The foot up beside the brake pedal."""

from dataclasses import replace

import pytest

from model.describe.parameters import car_of
from model.describe.scenario_io import starting_drives
from model.lift_off.advice import OnRoad
from model.limits.cold_day import FADES
from model.limits.emergency_stop import emergency_stop
from model.limits.foot_and_pedal import foot_and_pedal
from model.limits.winter import why_it_fades

TOWN = starting_drives()["town"][2]
NONE, GENTLE = OnRoad("ice", 0.0, "rolling on", 0.2), OnRoad("ice", 0.3, "gentle", 0.4)


def test_the_foot_agrees_with_why_it_fades_and_the_pedal_with_a_stop():
    usual, cold, full, ice = foot_and_pedal(TOWN, NONE)
    lifts = why_it_fades(car_of(TOWN), TOWN.conditions, TOWN.driver, **FADES)
    left = {lift.situation: lift.motor_mps2 for lift in lifts}
    for row in (usual, cold, full):
        assert row.motor_mps2 == pytest.approx(left[row.situation])
    assert usual.pedal_mps2 == cold.pedal_mps2 == full.pedal_mps2 > 5 * usual.motor_mps2
    on_ice = replace(TOWN.conditions, surface="ice")
    assert ice.pedal_mps2 == emergency_stop(car_of(TOWN), on_ice, FADES["speed_kmh"]).mean_slowing_mps2


def test_on_a_slippery_road_only_what_is_advised_is_counted_on():
    *_, none = foot_and_pedal(TOWN, NONE)
    *_, gentle = foot_and_pedal(TOWN, GENTLE)
    assert none.motor_mps2 == 0 < gentle.motor_mps2 < GENTLE.lift_off_mps2
    assert none.road == "ice" and none.pedal_mps2 > gentle.motor_mps2
