"""A drive that starts full or cold: when the motor slows as usual."""

from dataclasses import replace

from model.describe.parameters import car_from
from model.describe.scenario import Conditions, Driver
from model.kernel.savings import evaluate
from model.limits.full_start import full_start, until_normal
from tests.made_traces import steady, stop_and_go

CAR = car_from("family-hatch")
WARM = Conditions(ambient_c=20.0, cabin=False)
DRIVER = Driver()


def test_leaving_full_costs_until_there_is_room():
    found = full_start(stop_and_go(60), CAR, WARM, DRIVER)
    assert found.lost_kwh > 0 and found.full.wheel_friction_kwh > found.part_charged.wheel_friction_kwh
    assert found.normal is not None and 0 < found.normal.minutes < found.full.trace.duration_s / 60
    assert 0 < found.normal.km < found.full.distance_km and found.normal.soc < 1
    assert full_start(stop_and_go(2), CAR, WARM, DRIVER).normal is None


def test_a_warm_part_charged_battery_is_normal_from_the_start():
    assert until_normal(evaluate(stop_and_go(6), CAR, WARM, DRIVER)).minutes == 0
    assert until_normal(evaluate(steady(60, 100), CAR, WARM, DRIVER)).km == 0


def test_a_cold_battery_is_back_to_normal_sooner_when_it_is_heated():
    cold = replace(WARM, ambient_c=-10.0)
    heated = replace(CAR, pack_heater_kw=6.0)
    found = [until_normal(evaluate(stop_and_go(60), car, cold, DRIVER)) for car in (CAR, heated)]
    assert found[1] is not None and found[1].battery_c > -10
    assert found[0] is None or found[0].minutes > found[1].minutes
