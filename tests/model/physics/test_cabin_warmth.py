"""The cabin's heat: its published loss, and how it warms, stands and is warmed again."""

import numpy as np
import pytest

from model.describe.parameters import assumed_figures, car_from
from model.describe.scenario import Conditions, Driver
from model.physics.cabin import PERSON_W, cabin_of, cabin_w, rise_after_k, rise_at_start_k, rise_on_way_back_k
from model.physics.records import car_record


def record(car_class="family-hatch", stated=None, **conditions):
    return car_record(car_from(car_class, stated), Conditions(**conditions), Driver())


def test_the_loss_spans_what_was_measured_with_and_without_fresh_air():
    """22 °C in air of −15 °C: 2.0 kW through walls and windows, 4.5 kW with the air changed (compact battery car).

    The figure was taken from it, so this is no evidence.
    """
    loss = assumed_figures("family-hatch")["cabin_loss_w_per_k"]
    assert 2000 / 37 < loss.low < loss.mid < loss.high == pytest.approx(4500 / 37, abs=1)
    held_w = loss.mid * 37 - PERSON_W
    assert 2000 < held_w < 4500


def test_the_warmth_of_the_cabin_is_that_of_its_heat_balance():
    """Stepped by hand in seconds: heater at its most until warm, then held."""
    car = record(ambient_c=-10.0)
    cabin = cabin_of(car, 0.0)
    rise, capacity = 0.0, car.cabin_heat_capacity_kj_per_k * 1000
    for second in range(3600):
        gain_w = cabin_w(cabin, second + 0.5) + PERSON_W - car.cabin_loss_w_per_k * rise
        rise += gain_w / capacity
        if second in (60, 300, 3599):
            assert rise == pytest.approx(rise_after_k(car, 0.0, second + 1.0), abs=0.1)
    assert rise == pytest.approx(31, abs=0.1)


def test_a_heater_that_is_too_weak_never_gets_it_warm():
    car = record(stated={"heater_max_kw": 1.0}, ambient_c=-15.0)
    assert cabin_of(car, 0.0).first_s == np.inf
    assert rise_after_k(car, 0.0, 1e6) == pytest.approx(1100 / car.cabin_loss_w_per_k)


def test_standing_cools_it_within_the_hour_and_a_plug_warms_it_again():
    """Closed windows, no air changed: a third of its warmth after some 25 minutes; assumed heat capacity."""
    left = {hours: rise_on_way_back_k(record(ambient_c=0.0, stands_h=hours), 21.0) for hours in (0.0, 0.5, 8.0)}
    assert left[0.0] == 21 and 3 < left[0.5] < 10 and left[8.0] < 0.01
    plugged = record(ambient_c=0.0, preconditioned=True, stands_plugged_in=True)
    assert rise_on_way_back_k(plugged, 0.0) == 21


def test_a_cabin_already_warm_is_only_held():
    car = record(ambient_c=0.0, preconditioned=True)
    assert rise_at_start_k(car) == 21
    assert cabin_w(cabin_of(car, 21.0), 0.0) == pytest.approx(car.cabin_loss_w_per_k * 21 - PERSON_W)
