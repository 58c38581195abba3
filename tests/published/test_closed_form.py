"""Closed forms of mechanics, and ISO 2533 for the air's density.

Coast-down under constant plus quadratic drag has the arctangent solution
``v(t) = sqrt(a/b) tan(arctan(v0 sqrt(b/a)) − t sqrt(ab)/m)``.
"""

import math

import numpy as np
import pytest

from model.describe.parameters import car_from
from model.describe.scenario import Conditions, Driver
from model.describe.trace import Trace
from model.kernel.run import drive
from model.kernel.savings import evaluate
from model.physics.air_and_tyres import air_density, flat_road_load_n, tyre_factor
from model.physics.records import car_record

WARM = Conditions(ambient_c=20.0, cabin=False, tyres_warm="yes")


class CoastDown:
    """A family hatch rolling out from 130 km/h: its drag from the model, its motion from the closed form."""

    def __init__(self):
        self.car = car_from("family-hatch")
        self.density = air_density(20.0, 0.0)
        self.mass_kg = self.car.mass_kg * (1 + self.car.rotating_mass_share)
        self.constant_n = self.car.rolling_coefficient * self.car.mass_kg * 9.80665
        self.quadratic = 0.5 * self.density * self.car.drag_area_m2
        self.start_mps = 130 / 3.6

    def speed_mps(self, time_s):
        rate = math.sqrt(self.constant_n * self.quadratic) / self.mass_kg
        angle = math.atan(self.start_mps * math.sqrt(self.quadratic / self.constant_n)) - time_s * rate
        return math.sqrt(self.constant_n / self.quadratic) * np.tan(angle)

    def time_to_s(self, speed_mps):
        rate = math.sqrt(self.constant_n * self.quadratic) / self.mass_kg
        ratio = math.sqrt(self.quadratic / self.constant_n)
        return (math.atan(self.start_mps * ratio) - math.atan(speed_mps * ratio)) / rate


@pytest.fixture
def coast_down():
    return CoastDown()


def test_the_models_road_load_integrates_to_the_closed_form(coast_down):
    """Newton's law stepped with the model's own force; time and distance to 20 km/h agree to 0.1 %."""
    car = car_record(coast_down.car, Conditions(), Driver())
    step_s, speed, time_s, distance_m = 0.01, coast_down.start_mps, 0.0, 0.0

    def slowing(at_mps):
        return flat_road_load_n(car, float(at_mps), tyre_factor(20.0), 0.0, coast_down.density) / coast_down.mass_kg

    while speed > 20 / 3.6:
        middle = speed - slowing(speed) * step_s / 2
        speed, time_s, distance_m = speed - slowing(middle) * step_s, time_s + step_s, distance_m + middle * step_s
    expected_s = coast_down.time_to_s(20 / 3.6)
    expected_m = (
        coast_down.mass_kg
        / (2 * coast_down.quadratic)
        * math.log(
            (coast_down.constant_n + coast_down.quadratic * coast_down.start_mps**2)
            / (coast_down.constant_n + coast_down.quadratic * (20 / 3.6) ** 2)
        )
    )
    print(f"130 to 20 km/h: {time_s:.2f} s and {distance_m:.1f} m; closed form {expected_s:.2f} s, {expected_m:.1f} m")
    assert time_s == pytest.approx(expected_s, rel=1e-3)
    assert distance_m == pytest.approx(expected_m, rel=1e-3)


def test_a_coasting_trace_asks_nothing_of_the_wheels(coast_down):
    """The kernel's wheel force on the closed form's own speeds is nothing, to 0.1 % of the road load."""
    time_s = np.arange(0.0, coast_down.time_to_s(20 / 3.6))
    trace = Trace(time_s=time_s, speed_mps=coast_down.speed_mps(time_s), elevation_m=np.zeros(len(time_s)))
    run = drive(trace, coast_down.car, WARM, Driver())
    load = run.air_n + run.rolling_n
    moving = run.speed > 0
    assert moving.sum() > 150
    worst = np.abs(run.wheel_n[moving] / load[moving]).max()
    assert worst < 1e-3, f"largest wheel force {worst:.2e} of the road load"


def booked_kinetic_wh(speed_kmh):
    """What the ledger books as motion, pulling 1900 kg with 4 % rotating mass up to speed."""
    car = car_from("family-hatch", {"mass_kg": 1900.0, "rotating_mass_share": 0.04})
    speed = np.linspace(0.0, speed_kmh / 3.6, 61)
    trace = Trace(time_s=np.arange(61.0), speed_mps=speed, elevation_m=np.zeros(61))
    return evaluate(trace, car, WARM, Driver()).ledger.kinetic / 3600


def test_twice_the_speed_is_four_times_the_energy_of_motion():
    slow, fast = booked_kinetic_wh(50), booked_kinetic_wh(100)
    print(f"1900 kg and 4 %: {slow:.2f} Wh at 50 km/h, {fast:.2f} Wh at 100 km/h")
    assert slow == pytest.approx(53, abs=0.5)
    assert fast == pytest.approx(212, abs=0.5)
    assert fast == pytest.approx(4 * slow, rel=1e-12)


def test_energy_of_a_thousand_metres():
    car = car_from("family-hatch", {"mass_kg": 2000.0})
    time_s = np.arange(0.0, 1801.0)
    trace = Trace(time_s=time_s, speed_mps=np.full(1801, 12.0), elevation_m=np.linspace(0, 1000, 1801))
    climb_kwh = evaluate(trace, car, WARM, Driver()).ledger.climb / 3.6e6
    print(f"2000 kg lifted by 1000 m: {climb_kwh:.3f} kWh")
    assert climb_kwh == pytest.approx(5.45, abs=0.005)


def test_density_of_the_standard_atmosphere():
    """ISO 2533: 1.225 kg/m³ at 15 °C and sea level; 1.1117 at 1000 m and 8.5 °C, 1.0066 at 2000 m and 2 °C."""
    assert air_density(15.0, 0.0) == pytest.approx(1.225, abs=5e-5)
    assert air_density(8.5, 1000.0) == pytest.approx(1.1117, abs=2e-4)
    assert air_density(2.0, 2000.0) == pytest.approx(1.0066, abs=2e-4)
