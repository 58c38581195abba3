"""One slow-down under the microscope."""

from dataclasses import replace

import numpy as np
import pytest

from model.describe.parameters import car_from
from model.describe.scenario import Conditions, Driver
from model.one_stop.slow_down import change, compare, cruise_kmh_at, drive_way, keep, unneeded_dip
from tests.refused import refuses

HATCH = car_from("family-hatch")
WARM = Conditions(ambient_c=20.0, cabin=False)


def hatch(**figures):
    return replace(HATCH, **figures)


def test_at_equal_distance_all_three_cover_the_same_road_and_rolling_is_slowest():
    ways = compare(80 / 3.6, 50 / 3.6, HATCH, WARM, Driver())
    assert ways.regen.distance_m == pytest.approx(ways.coast.distance_m)
    assert ways.friction.distance_m == pytest.approx(ways.coast.distance_m)
    assert ways.coast.battery_wh < ways.regen.battery_wh < ways.friction.battery_wh
    assert ways.coast.time_s > ways.regen.time_s == ways.friction.time_s
    assert ways.coast.lift_m == ways.coast.distance_m
    assert ways.regen.recovered_wh > 0 == ways.friction.recovered_wh


def test_without_equal_distance_each_way_is_its_own_slow_down():
    ways = compare(80 / 3.6, 0.0, HATCH, WARM, Driver(lift_off_mps2=1.25), equal_distance=False)
    assert ways.regen.distance_m == pytest.approx((80 / 3.6) ** 2 / 2 / 1.25, rel=1e-6)
    assert ways.regen.time_s == pytest.approx(80 / 3.6 / 1.25, rel=1e-6)
    assert ways.break_even_kmh is None


def test_without_strength_lifting_off_is_rolling():
    ways = compare(80 / 3.6, 50 / 3.6, HATCH, WARM, Driver(lift_off_mps2=0.0))
    assert ways.regen.distance_m == pytest.approx(ways.coast.distance_m)
    assert ways.regen.battery_wh == pytest.approx(ways.coast.battery_wh, abs=0.01)


@pytest.mark.parametrize("drag_share", [0.0, 1.0])
@pytest.mark.parametrize("brake_pedal", ["blended", "friction"])
def test_a_rolling_car_asks_for_its_electronics_and_accessories_only(drag_share, brake_pedal):
    car = hatch(zero_torque_drag_share=drag_share, brake_pedal=brake_pedal)
    coast = compare(120 / 3.6, 60 / 3.6, car, WARM, Driver()).coast
    standing_w = car.accessory_w + car.motor_loss_fixed * car.motor_peak_kw * 1000
    assert coast.battery_wh == pytest.approx(standing_w * coast.time_s / 3600, rel=0.01)
    assert coast.friction_wh == pytest.approx(0, abs=1e-6)


def test_a_motor_that_rolls_free_lets_the_car_roll_further():
    dragging, free = (
        compare(80 / 3.6, 50 / 3.6, hatch(zero_torque_drag_share=share), WARM, Driver()).coast for share in (1.0, 0.0)
    )
    assert free.distance_m > 1.05 * dragging.distance_m


def test_what_the_motor_may_not_do_is_left_to_friction():
    ways = compare(100 / 3.6, 0.0, hatch(regen_peak_kw=20.0), WARM, Driver(), slowing_mps2=2.0)
    free = compare(100 / 3.6, 0.0, HATCH, WARM, Driver(), slowing_mps2=2.0)
    assert ways.regen.friction_wh > free.regen.friction_wh + 20
    assert ways.regen.battery_wh > free.regen.battery_wh


def test_break_even_is_where_time_made_up_by_speed_costs_what_rolling_saves():
    """Cruising faster by a little over 10 km pays the same price for a second."""
    ways = compare(80 / 3.6, 50 / 3.6, HATCH, WARM, Driver())
    assert ways.break_even_kmh is not None
    slow = ways.break_even_kmh / 3.6
    one, other = (drive_way([keep(speed, 10_000.0)], HATCH, WARM, Driver()) for speed in (slow, slow + 0.5))
    price = (other.battery_wh - one.battery_wh) / (one.time_s - other.time_s)
    saved = (ways.regen.battery_wh - ways.coast.battery_wh) / (ways.coast.time_s - ways.regen.time_s)
    assert price == pytest.approx(saved, rel=0.05)
    assert cruise_kmh_at(1e9, HATCH, WARM) is None


def test_speeds_must_fall():
    with refuses(r"to_kmh .* 80 km/h is not below the speed at the start, 80 km/h"):
        compare(80 / 3.6, 80 / 3.6, HATCH, WARM, Driver())


def test_a_tailwind_that_keeps_the_car_going_is_said():
    with refuses("does not come from 60 km/h to 0 km/h by rolling"):
        compare(60 / 3.6, 0.0, HATCH, replace(WARM, wind_kmh=-100.0), Driver())


def test_an_unneeded_dip_costs_energy_and_time_and_more_on_friction():
    ways = unneeded_dip(120 / 3.6, 110 / 3.6, HATCH, WARM, Driver())
    steady, regen, friction = ways["steady"], ways["regen"], ways["friction"]
    assert regen.distance_m == pytest.approx(steady.distance_m)
    assert steady.battery_wh < regen.battery_wh < friction.battery_wh - 20
    assert regen.time_s > steady.time_s


def test_energy_of_a_way_does_not_hang_on_its_cuts():
    parts = [change(80 / 3.6, 0.0, 1.0, HATCH, WARM, steps=steps) for steps in (200, 2000)]
    coarse, fine = (drive_way([part], HATCH, WARM, Driver()) for part in parts)
    assert coarse.recovered_wh == pytest.approx(fine.recovered_wh, rel=1e-3)
    assert np.isclose(coarse.distance_m, fine.distance_m, rtol=1e-6)
