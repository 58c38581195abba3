"""Cabin heating and cooling."""

from dataclasses import replace

import numpy as np
import pytest

from model.describe.parameters import car_from
from model.describe.scenario import Conditions, Driver
from model.physics import cabin
from model.physics.cabin import PERSON_W
from model.physics.records import car_record

CAR = car_from("family-hatch")
COLD = Conditions(ambient_c=-5.0)
TIME_S = np.arange(0.5, 3600.0)


def power(car=CAR, conditions=COLD):
    record = car_record(car, conditions, Driver())
    now = cabin.cabin_of(record, cabin.rise_at_start_k(record))
    return np.array([cabin.cabin_w(now, time_s) for time_s in TIME_S])


def heat_pump_cop(car, outside_c):
    return cabin.heat_pump_cop(car_record(car, COLD, Driver()), outside_c)


def test_nothing_runs_when_off_or_mild():
    assert np.all(power(conditions=replace(COLD, cabin=False)) == 0)
    for ambient in (18.0, 21.0, 24.0):
        assert np.all(power(conditions=replace(COLD, ambient_c=ambient)) == 0)


def test_the_heater_runs_full_then_holds():
    watts = power()
    assert watts[0] == CAR.heater_max_kw * 1000
    assert watts[-1] == pytest.approx(CAR.cabin_loss_w_per_k * 26 - PERSON_W)
    assert set(watts) == {watts[0], watts[-1]} and np.all(np.diff(watts) <= 0)


def test_the_cabin_is_warm_when_the_heater_holds():
    """Integrating the heat balance over the full-power minutes ends at the set temperature."""
    cabin_c = COLD.ambient_c
    for _ in range(int((power() == CAR.heater_max_kw * 1000).sum())):
        heat = CAR.heater_max_kw * 1000 + PERSON_W - CAR.cabin_loss_w_per_k * (cabin_c - COLD.ambient_c)
        cabin_c += heat / (CAR.cabin_heat_capacity_kj_per_k * 1000)
    assert cabin_c == pytest.approx(COLD.cabin_set_c, abs=0.1)


def test_a_heater_too_weak_stays_at_its_most():
    car = car_from("family-hatch", {"heater_max_kw": 2.0})
    assert np.all(power(car, replace(COLD, ambient_c=-30.0)) == 2000)
    assert np.all(power(car_from("family-hatch", {"heater_max_kw": 0.0})) == 0)


def test_a_warmed_cabin_only_holds():
    held = CAR.cabin_loss_w_per_k * 26 - PERSON_W
    assert power(conditions=replace(COLD, preconditioned=True)) == pytest.approx(held)


def test_a_cabin_from_a_garage_is_warm_sooner():
    """Heating from -5 °C to the garage's temperature takes just as long as the start is put forward."""
    minutes = [(power(conditions=replace(COLD, parked_c=parked)) > 3000).sum() for parked in (None, 10.0, 25.0)]
    assert minutes[0] > minutes[1] > 0 == minutes[2]
    to_ten = (power(conditions=replace(COLD, cabin_set_c=10.0)) > 3000).sum()
    assert minutes[0] - minutes[1] == pytest.approx(to_ten, abs=1)


def test_the_waste_heat_of_an_engine_takes_no_electricity():
    hybrid = replace(CAR, heat_source="engine")
    assert np.all(power(hybrid) == 0)
    assert np.all(power(hybrid, replace(COLD, ambient_c=31.0)) > 0)


def test_a_heat_pump_takes_less_and_never_gives_less_than_it_takes():
    pump = car_from("family-hatch", {"heat_source": "heat_pump"})
    assert power(pump)[-1] == pytest.approx(power()[-1] / heat_pump_cop(pump, -5.0))
    assert heat_pump_cop(pump, 0.0) == pump.heat_pump_cop_at_0c
    assert heat_pump_cop(pump, -40.0) == 1.0


def test_cooling_carries_off_walls_and_sun():
    hot = power(conditions=replace(COLD, ambient_c=31.0))
    assert hot == pytest.approx((CAR.cabin_loss_w_per_k * 10 + 600) / 2.5)
