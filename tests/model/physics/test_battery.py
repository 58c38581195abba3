"""Cells, charge acceptance and pack temperature."""

import math
from dataclasses import replace

import numpy as np
import pytest

from model.describe.parameters import car_from
from model.describe.scenario import Conditions, Driver
from model.physics import battery, cells
from model.physics.charge_acceptance import acceptance_tables
from model.physics.records import car_record

CAR = car_from("family-hatch", {"cell_resistance_share": 0.025, "charge_rate_factor": 1.0})
RECORD = car_record(CAR, Conditions(), Driver())


def test_mean_voltage_is_the_stated_one_and_charge_raises_it():
    soc = np.linspace(0, 1, 20001)
    volts = np.array([cells.open_circuit_v(RECORD, charge) for charge in soc])
    assert np.trapezoid(volts, soc) == pytest.approx(CAR.pack_voltage_v, rel=1e-6)
    assert np.all(np.diff(volts) > 0)


def test_resistance_drops_the_stated_share_of_voltage_at_one_hour():
    """Warm and half full: emptied in one hour, the current is capacity over voltage."""
    amps = CAR.usable_kwh * 1000 / CAR.pack_voltage_v
    drop = amps * cells.resistance_ohm(RECORD, 0.5, 25.0)
    assert drop / CAR.pack_voltage_v == pytest.approx(CAR.cell_resistance_share)


def test_cold_raises_resistance_as_arrhenius_says():
    ratio = cells.resistance_ohm(RECORD, 0.5, -10.0) / cells.resistance_ohm(RECORD, 0.5, 25.0)
    slope = CAR.resistance_activation_j_per_mol / 8.314462618
    assert ratio == pytest.approx(math.exp(slope * (1 / 263.15 - 1 / 298.15)))
    assert ratio > 2


def test_acceptance_is_the_table_at_its_own_points():
    temperatures, charges, rates = acceptance_tables()
    for level, table in zip((-1.0, 0.0, 1.0), rates, strict=True):
        car = replace(CAR, acceptance_level=level)
        for row, celsius in enumerate(temperatures):
            for column, soc in enumerate(charges):
                watts = battery.acceptance_w(car, soc, celsius)
                assert watts == pytest.approx(table[row, column] * CAR.usable_kwh * 1000)


def test_acceptance_lies_between_its_neighbours_and_holds_at_the_ends():
    def watts(soc, celsius, level=0.0):
        return battery.acceptance_w(replace(CAR, acceptance_level=level), soc, celsius)

    assert watts(0.7, 25) == pytest.approx((watts(0.6, 25) + watts(0.8, 25)) / 2)
    assert watts(0.6, 5) == pytest.approx((watts(0.6, 0) + watts(0.6, 10)) / 2)
    assert watts(0.6, 20, 0.5) == pytest.approx((watts(0.6, 20, 0.0) + watts(0.6, 20, 1.0)) / 2)
    assert watts(0.6, -40) == watts(0.6, -20) and watts(0.6, 70) == watts(0.6, 60)
    assert watts(1.0, 25, 1.0) == 0


def test_tables_fall_with_charge_and_cold_and_lie_in_order():
    temperatures, _, rates = acceptance_tables()
    low, mid, high = rates
    assert np.all(low <= mid) and np.all(mid <= high)
    assert np.all(np.diff(rates, axis=2) <= 0)
    assert np.all(np.diff(rates[:, temperatures <= 25], axis=1) >= 0)
    assert np.all(rates[:, :, -1] == 0)
