"""Air, rolling and slope, cold tyres, a trailer."""

from dataclasses import replace

import numpy as np
import pytest

from model.describe.parameters import car_from
from model.describe.scenario import Conditions, Driver
from model.kernel.run import drive
from model.physics.air_and_tyres import (
    AIR_REFERENCE_KG_M3,
    air_density,
    air_n,
    flat_road_load_n,
    rolling_n,
    tyre_factor,
)
from model.physics.motor_and_gear import idle_drag_n, motor_of
from model.physics.records import car_record, moments_on_road
from model.physics.warming_up import cold_tyre_factor
from model.physics.wheels import car_kg
from model.traces.cycles import cycle_trace

CAR = car_from("family-hatch")
MEASURED = car_from("family-hatch", {"f0_n": 120.0, "f1_n_per_mps": 1.0, "f2_n_per_mps2": 0.42})
WEIGHT_N = CAR.mass_kg * 9.80665


def rolling(car, speed, load_kg=0.0, celsius=20.0, extra=0.0, cold_tyres=1.0):
    record = car_record(car, Conditions(payload_kg=load_kg), Driver())
    return rolling_n(record, speed, tyre_factor(celsius) * cold_tyres, extra, 1.0)


def air(speed, wind, density=1.2, car=CAR):
    return air_n(car_record(car, Conditions(), Driver()), speed, wind, density)


@pytest.mark.parametrize(
    "celsius, density", [(-20, 1.394), (-10, 1.341), (-7, 1.326), (0, 1.292), (15, 1.225), (20, 1.204), (35, 1.146)]
)
def test_density_of_dry_air(celsius, density):
    """Ideal gas at 101.325 kPa, three places."""
    assert air_density(celsius, 0.0) == pytest.approx(density, abs=6e-4)


def test_measured_coefficients_hold_as_they_stand_at_20_degrees():
    speed = np.array([1.0, 10.0, 30.0])
    assert air_density(20.0, 0.0) == pytest.approx(AIR_REFERENCE_KG_M3, abs=1e-4)
    for car in (MEASURED, replace(MEASURED, motor_peak_kw=4 * MEASURED.motor_peak_kw)):
        record = car_record(car, Conditions(), Driver())
        load = [flat_road_load_n(record, one, tyre_factor(20.0), 0.0, AIR_REFERENCE_KG_M3) for one in speed]
        # a coast-down in neutral measured the idle motor too, which is booked with the motor and not a second time
        turned = [idle_drag_n(motor_of(record), one) for one in speed]
        assert np.add(load, turned) == pytest.approx(120 + speed + 0.42 * speed**2)


@pytest.mark.parametrize("wind_kmh", [-30.0, 30.0])
def test_a_trailer_meets_the_wind_that_the_car_meets(wind_kmh):
    car, around = car_from("family-hatch"), Conditions(cabin=False, wind_kmh=wind_kmh)
    alone, towing = (drive(cycle_trace("hwfet"), car, replace(around, trailer_kg=kg), Driver()) for kg in (0.0, 900.0))
    moving = alone.speed > 0
    both = (car.drag_area_m2 + around.trailer_drag_area_m2) / car.drag_area_m2
    assert towing.air_n[moving] == pytest.approx(both * alone.air_n[moving])
    # the brakes hold a car that stands, whatever the wind does
    assert not towing.air_n[~moving].any() and not alone.air_n[~moving].any()


def test_tyres_roll_harder_in_the_cold():
    """UN R117: 0.8 % for each kelvin."""
    assert tyre_factor(20.0) == 1 and tyre_factor(-5.0) == pytest.approx(1.2)
    assert rolling(CAR, 10.0, celsius=-5.0) == pytest.approx(1.2 * CAR.rolling_coefficient * WEIGHT_N)


def test_load_adds_rolling_in_proportion():
    free = {"motor_loss_speed": 0.0, "motor_loss_speed2": 0.0}
    for car in (replace(CAR, **free), replace(MEASURED, **free)):
        alone, loaded = rolling(car, 1e-9), rolling(car, 1e-9, car.mass_kg / 2)
        assert loaded == pytest.approx(1.5 * alone)


def test_snow_adds_rolling_whichever_way_the_road_load_is_given():
    for car in (CAR, MEASURED):
        added = rolling(car, 10.0, extra=0.008) - rolling(car, 10.0)
        assert added == pytest.approx(0.008 * WEIGHT_N)


def test_a_standing_car_does_not_roll():
    assert [rolling(CAR, 0.0), rolling(CAR, 1e-3)] == [0.0, pytest.approx(CAR.rolling_coefficient * WEIGHT_N, abs=0.01)]


def test_wind_counts_with_speed_and_may_push():
    assert air(20.0, 10.0) == pytest.approx(air(30.0, 0.0))
    assert air(10.0, -10.0) == 0
    assert air(10.0, -15.0) == pytest.approx(-air(5.0, 0.0))


def test_cold_tyres_roll_harder_and_warm_up():
    car = car_from("family-hatch")
    record, moments = car_record(car, Conditions(), Driver()), moments_on_road(3)
    moments["warmed_up"], moments["passed_s"] = False, (0.0, 60 * car.tyre_warm_up_min, 1e6)
    factor = [cold_tyre_factor(record, at) for at in moments]
    assert factor == pytest.approx([1 + car.tyre_cold_share, 1 + car.tyre_cold_share / np.e, 1])
    warm, cold = (rolling(car, 10.0, celsius=5.0, cold_tyres=each) for each in (1.0, 1.2))
    assert cold == pytest.approx(1.2 * warm)


def test_temperature_changes_f0_and_f1_alike():
    """As the world harmonised procedure corrects both (UN GTR 15, Annex 4; from memory)."""
    free = replace(MEASURED, motor_loss_speed=0.0, motor_loss_speed2=0.0)
    assert rolling(free, 10.0, celsius=-5.0) == pytest.approx(1.2 * (120 + 10))
    assert rolling(free, 10.0, cold_tyres=1.2) == pytest.approx(1.2 * (120 + 10))


def test_a_standard_cycle_is_driven_on_warm_tyres_and_other_drives_start_cold():
    car, plain = car_from("family-hatch"), Conditions(cabin=False)
    made = replace(cycle_trace("udds"), warmed_up=False)
    found = {
        (trace.warmed_up, said): float(drive(trace, car, replace(plain, tyres_warm=said), Driver()).rolling_n.sum())
        for trace in (cycle_trace("udds"), made)
        for said in ("by_drive", "yes", "no")
    }
    assert found[True, "by_drive"] == found[True, "yes"] == found[False, "yes"]
    assert found[False, "by_drive"] == found[False, "no"] == found[True, "no"] > found[True, "yes"]


def test_a_trailer_rolls_and_drags_and_weighs():
    car, plain = car_from("family-hatch"), Conditions(cabin=False, ambient_c=20.0, tyres_warm="yes")
    trace = cycle_trace("hwfet")
    alone, towing = (drive(trace, car, replace(plain, trailer_kg=kg), Driver()) for kg in (0.0, 900.0))
    moving = alone.speed > 0
    assert (towing.rolling_n - alone.rolling_n)[moving] == pytest.approx(car.rolling_coefficient * 900 * 9.80665)
    ratio = towing.air_n[moving] / alone.air_n[moving]
    assert ratio == pytest.approx((car.drag_area_m2 + plain.trailer_drag_area_m2) / car.drag_area_m2)
    assert towing.mass_kg - alone.mass_kg == towing.effective_mass_kg - alone.effective_mass_kg == 900
    assert car_kg(towing.cars[0]) == car_kg(alone.cars[0]) == alone.mass_kg
