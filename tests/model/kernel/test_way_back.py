"""A drive there and back: what cools while the car stands, and what that costs. Time constants are assumed."""

from dataclasses import replace

import numpy as np
import pytest

from model.describe.parameters import car_from
from model.describe.scenario import Conditions, Leg, Scenario
from model.kernel.run import drive
from model.sampling.drives import trace_of

CAR = car_from("family-hatch")
THERE_AND_BACK = Scenario(legs=(Leg(distance_km=12.0),), return_trip=True)
COLD = Conditions(ambient_c=-5.0, soc_start=0.7)


def driven(conditions=COLD, car=CAR, scenario=THERE_AND_BACK):
    return drive(trace_of(scenario), car, conditions, scenario.driver)


def back_of(run):
    """The first step of the way back."""
    return int(np.argmax(run.road["before_s"] > 0))


def on_way_back_kwh(run, power_w):
    back = back_of(run)
    return float((power_w[0] * run.step_s[0])[back:].sum()) / 3.6e6


def test_the_longer_it_stands_in_the_cold_the_more_the_way_back_takes():
    net = [float(driven(replace(COLD, stands_h=hours)).net_j[0]) for hours in (0.0, 0.5, 2.0, 8.0)]
    print([f"{energy / 3.6e6:.3f} kWh" for energy in net])
    assert net == sorted(net)
    assert net[-1] > 1.03 * net[0]


def test_after_eight_hours_tyres_and_gears_are_as_cold_as_at_the_start():
    run = driven()
    back = back_of(run)
    assert run.rolling_n[0, back] == pytest.approx(run.rolling_n[0, 0], rel=0.05)
    at_once = driven(replace(COLD, stands_h=0.0))
    assert at_once.rolling_n[0, back] < 0.7 * run.rolling_n[0, back]


def test_the_cabin_is_heated_up_again():
    cold, at_once = driven(), driven(replace(COLD, stands_h=0.0))
    back = back_of(cold)
    assert cold.cabin_w[0, back] == CAR.heater_max_kw * 1000 > at_once.cabin_w[0, back]
    again = on_way_back_kwh(cold, cold.cabin_w) - on_way_back_kwh(at_once, at_once.cabin_w)
    # no more than all of the warmth of air, seats and trim, and what it loses meanwhile
    assert 0.2 < again < 1.2 * CAR.cabin_heat_capacity_kj_per_k * 26 / 3600
    assert cold.cabin_w[0, :back] == pytest.approx(at_once.cabin_w[0, :back])


def test_an_hour_leaves_the_cabin_lukewarm():
    energies = [on_way_back_kwh(run, run.cabin_w) for run in (driven(replace(COLD, stands_h=h)) for h in (0, 0.2, 8))]
    assert energies[0] < energies[1] < energies[2]


def test_the_battery_cools_towards_the_air_within_a_day():
    """6 kJ/K a kWh and 5 W/K: two thirds of its warmth in 19 h."""
    warm = replace(COLD, battery_temp_c=20.0)
    back = back_of(driven(warm))
    arrived = driven(replace(warm, stands_h=0.0)).pack_c[0, back]
    for hours in (8.0, 72.0):
        left = driven(replace(warm, stands_h=hours)).pack_c[0, back]
        time_constant_h = CAR.pack_heat_capacity_kj_per_k_kwh * CAR.usable_kwh / CAR.pack_heat_loss_w_per_k / 3.6
        assert left - COLD.ambient_c == pytest.approx((arrived + 5.0) * np.exp(-hours / time_constant_h), rel=1e-6)
    assert 15 < time_constant_h < 25


def test_on_the_plug_a_car_that_is_warmed_up_is_warm_for_the_way_back_too():
    warmed = replace(COLD, preconditioned=True)
    alone, plugged = driven(warmed), driven(replace(warmed, stands_plugged_in=True))
    back = back_of(alone)
    assert plugged.pack_c[0, back] == 20 > alone.pack_c[0, back]
    assert plugged.cabin_w[0, back] < alone.cabin_w[0, back]
    assert plugged.net_j[0] < alone.net_j[0]
    # a car that is not warmed up has nothing of the plug
    left = driven(replace(COLD, stands_plugged_in=True))
    assert left.net_j[0] == driven().net_j[0]


def test_without_a_way_back_the_hours_say_nothing():
    there = replace(THERE_AND_BACK, return_trip=False)
    assert driven(replace(COLD, stands_h=72.0), scenario=there).net_j[0] == driven(COLD, scenario=there).net_j[0]


def test_no_block_of_held_charge_and_temperature_spans_the_standing():
    run = driven(replace(COLD, battery_temp_c=25.0, stands_h=100.0))
    back = back_of(run)
    assert run.pack_c[0, back - 1] > 20 and run.pack_c[0, back] < 5
