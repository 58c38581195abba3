"""A battery that must feed a strong motor for its size is built for it: less resistance, more charge accepted."""

import numpy as np
import pytest

from model.describe.parameters import battery_classes, car_from
from model.describe.scenario import Conditions, Driver
from model.physics.cells import cells_for, greatest_w, open_circuit_v, resistance_ohm, resistance_share, too_weak
from model.physics.charge_acceptance import acceptance_w, charge_rate_factor
from model.physics.records import car_record


def record(car_class="family-hatch", **stated):
    return car_record(car_from(car_class, stated), Conditions(), Driver())


def gives_kw(car, soc, pack_c):
    return greatest_w(open_circuit_v(car, soc), resistance_ohm(car, soc, pack_c)) / 1000


def test_a_recorded_small_car_may_give_what_it_gave():
    """133 kW at 12 °C from 19 usable kWh behind a motor of 125 kW, where 71 to 76 kW had been allowed.

    The exponent was chosen with this drive in mind: that it is met within a tenth is no evidence.
    """
    car = record("small-hatch", usable_kwh=18.8, motor_peak_kw=125.0)
    found = gives_kw(car, 0.7, 12.0)
    print(f"greatest power at 12 °C: {found:.0f} kW")
    assert found == pytest.approx(133, rel=0.1)


@pytest.mark.parametrize("car_class", battery_classes())
def test_every_class_gives_its_motor_what_it_asks_on_a_mild_day(car_class):
    car = car_from(car_class)
    assert gives_kw(record(car_class), 0.5, 20.0) > 1.1 * car.motor_peak_kw


def test_more_power_for_the_size_is_less_resistance_and_more_acceptance():
    weak, usual, strong = (record(usable_kwh=50.0, motor_peak_kw=kw) for kw in (60.0, 115.0, 460.0))
    assert resistance_share(weak) > resistance_share(usual) > resistance_share(strong)
    assert acceptance_w(weak, 0.5, 10.0) < acceptance_w(usual, 0.5, 10.0) < acceptance_w(strong, 0.5, 10.0)
    # 2.3 times an hour is usual, and the square root stands between no change and all of it
    assert resistance_share(usual) == pytest.approx(car_from("family-hatch").cell_resistance_usual)
    assert resistance_share(strong) == pytest.approx(resistance_share(usual) / 2)
    assert charge_rate_factor(usual) == pytest.approx(1) and charge_rate_factor(strong) == pytest.approx(2)


def test_a_bigger_battery_of_the_same_car_gives_and_takes_more():
    small, big = record(usable_kwh=40.0), record(usable_kwh=80.0)
    assert gives_kw(big, 0.5, 0.0) > 1.3 * gives_kw(small, 0.5, 0.0)
    assert acceptance_w(big, 0.5, 0.0) > 1.3 * acceptance_w(small, 0.5, 0.0)


def test_what_is_stated_holds():
    car = record(cell_resistance_share=0.02, charge_rate_factor=3.0, motor_peak_kw=400.0)
    assert resistance_share(car) == 0.02 and charge_rate_factor(car) == 3.0


def test_cells_that_are_asked_for_too_much_keep_their_books_closed():
    volts, ohms = 360.0, 0.1
    most_w = volts**2 / (4 * ohms)
    for asked_w in np.linspace(-most_w, 3 * most_w, 41):
        cells = cells_for(float(asked_w), volts, ohms)
        assert cells.given_w - cells.loss_w == pytest.approx(asked_w, abs=1e-6)
        assert too_weak(cells) == (asked_w >= most_w * (1 - 1e-9))
    # no step where the greatest power is passed
    below, above = (cells_for(most_w * share, volts, ohms).given_w for share in (1 - 1e-9, 1 + 1e-9))
    assert above == pytest.approx(below, rel=1e-4)
