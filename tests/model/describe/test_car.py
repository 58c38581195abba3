"""Figures that a car has no use for."""

from dataclasses import replace

import pytest

from model.describe.parameters import car_from
from model.describe.scenario import Conditions, Driver
from model.kernel.savings import evaluate
from tests.made_traces import stop_and_go

COLD = Conditions(ambient_c=-5.0)


@pytest.mark.parametrize("car_class", ["family-hatch", "full-hybrid"])
def test_what_is_idle_changes_nothing(car_class):
    car, trace = car_from(car_class), stop_and_go(3)
    car = replace(car, heat_source="resistive", pack_heater_kw=0.0)
    assert {"heat_pump_cop_at_0c", "pack_heater_until_c"} <= car.idle_figures
    assert ("engine_efficiency" in car.idle_figures) == (car.sustain_soc is None)
    other = replace(car, **{key: 1.2 * getattr(car, key) + 0.1 for key in car.idle_figures})
    found, again = (evaluate(trace, each, COLD, Driver()) for each in (car, other))
    assert (found.net_kwh, found.recovered_share) == (again.net_kwh, again.recovered_share)


def test_what_a_car_has_is_not_idle():
    car = replace(car_from("full-hybrid"), heat_source="heat_pump", pack_heater_kw=3.0)
    assert car.idle_figures == frozenset()
