"""Cold tyres, gear oil and bearings: what they drag at the start, how soon that is gone, what standing brings back."""

from dataclasses import replace

import numpy as np
import pytest

from model.describe.parameters import car_from
from model.describe.scenario import Conditions, Driver
from model.physics.records import car_record, moments_on_road
from model.physics.warming_up import cold_driveline_n, cold_tyre_factor, oil_viscosity_mm2_s, over_reference

SMALL = car_from("small-hatch", {"mass_kg": 1400.0})


def record(car=SMALL, **conditions):
    return car_record(car, Conditions(**conditions), Driver())


def moment(passed_s=0.0, before_s=0.0, warmed_up=False):
    at = moments_on_road(1)
    at["speed_mps"], at["passed_s"], at["before_s"], at["warmed_up"] = 10.0, passed_s, before_s, warmed_up
    return at[0]


def driveline_n(outside_c, at, **conditions):
    return cold_driveline_n(record(ambient_c=outside_c, **conditions), at, over_reference(outside_c))


def test_thin_gear_oil_is_as_thick_as_its_grade_says():
    """30 mm²/s at 40 °C and 6 at 100 °C; hundreds below freezing."""
    assert oil_viscosity_mm2_s(40.0) == pytest.approx(30, rel=0.01)
    assert oil_viscosity_mm2_s(100.0) == pytest.approx(6, rel=0.01)
    assert 200 < oil_viscosity_mm2_s(0.0) < 250


def test_a_cold_start_drags_more_the_colder_it_is():
    """With its cold tyres, 100 to 250 N as recorded drives of such a car show: some 130 in summer, 200 in winter."""
    found = {}
    for name, outside_c in (("summer", 22.0), ("winter", 3.0)):
        car = record(ambient_c=outside_c)
        tyres = (cold_tyre_factor(car, moment()) - 1) * SMALL.rolling_coefficient * SMALL.mass_kg * 9.80665
        found[name] = cold_driveline_n(car, moment(), over_reference(outside_c)) + tyres
    print({name: f"{newton:.0f} N" for name, newton in found.items()})
    assert 60 < found["summer"] < 160 and 130 < found["winter"] < 250
    assert driveline_n(-20.0, moment()) > driveline_n(3.0, moment()) > driveline_n(22.0, moment()) > 0


def test_it_is_gone_in_about_three_minutes_and_the_tyres_take_longer():
    fresh, later = driveline_n(3.0, moment()), driveline_n(3.0, moment(passed_s=180.0))
    assert later < 0.1 * fresh
    car = record(ambient_c=3.0)
    assert cold_tyre_factor(car, moment(passed_s=180.0)) - 1 > 0.5 * (cold_tyre_factor(car, moment()) - 1)


def test_nothing_of_it_on_a_standard_cycle_that_is_driven_warm():
    for outside_c in (-7.0, 23.0):
        assert driveline_n(outside_c, moment(warmed_up=True)) == 0
        assert cold_tyre_factor(record(ambient_c=outside_c), moment(warmed_up=True)) == 1
    assert driveline_n(23.0, moment(), tyres_warm="yes") == 0
    assert driveline_n(23.0, moment(warmed_up=True), tyres_warm="no") == driveline_n(23.0, moment())


def test_standing_makes_it_cold_again_the_more_the_longer():
    arrived = moment(before_s=1200.0)
    by_hours = [driveline_n(3.0, arrived, stands_h=hours) for hours in (0.0, 0.5, 2.0, 8.0)]
    assert by_hours == sorted(by_hours) and len(set(by_hours)) == 4
    assert by_hours[0] < 1e-3 * driveline_n(3.0, moment())
    assert by_hours[-1] == pytest.approx(driveline_n(3.0, moment()), rel=0.01)
    # tyres: three hours, after which a test on rollers may begin, leave a twentieth of their warmth
    cold = cold_tyre_factor(record(stands_h=3.0), arrived) - 1
    assert cold == pytest.approx(0.95 * SMALL.tyre_cold_share, rel=0.02)


def test_a_way_back_at_once_goes_on_where_the_way_out_ended():
    car = record(ambient_c=3.0, stands_h=0.0)
    for seconds in (30.0, 400.0):
        on = moment(passed_s=seconds, before_s=100.0)
        assert cold_tyre_factor(car, on) == pytest.approx(cold_tyre_factor(car, moment(passed_s=100.0 + seconds)))


def test_a_start_on_a_warm_cycle_that_then_stands_is_cold_on_its_way_back():
    found = cold_tyre_factor(record(stands_h=8.0), moment(before_s=600.0, warmed_up=True)) - 1
    assert found == pytest.approx(SMALL.tyre_cold_share, rel=1e-3)


def test_a_heavier_car_has_more_to_drag():
    heavy = cold_driveline_n(record(replace(SMALL, mass_kg=2800.0)), moment(), over_reference(20.0))
    assert heavy == pytest.approx(2 * driveline_n(20.0, moment()))
    assert np.isclose(driveline_n(20.0, moment()), 1.4 * SMALL.driveline_cold_n_per_t)
