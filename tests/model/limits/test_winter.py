"""What a season takes from a drive, why lift-off fades, what warming up beforehand brings."""

from dataclasses import replace

import numpy as np
import pytest

from model.describe.parameters import car_from
from model.describe.scenario import Conditions, Driver
from model.describe.trace import Trace
from model.kernel.run import drive
from model.kernel.savings import evaluate
from model.limits.cold_day import FADES
from model.limits.winter import lift_off_left, mild_day, season_costs, warm_up, why_it_fades
from model.physics.battery import usable_in_the_cold_kwh
from tests.made_traces import hill_and_town
from tests.refused import refuses

CAR = car_from("family-hatch")
WINTER = Conditions(ambient_c=-8.0, surface="snow", soc_start=0.8)
DRIVER = Driver(lift_off_mps2=1.3)


def test_the_parts_add_up_to_what_the_season_takes():
    found = season_costs(hill_and_town(), CAR, WINTER, DRIVER)
    assert found.more_kwh > 0
    assert sum(found.parts_kwh.values()) == pytest.approx(found.more_kwh, rel=1e-9)
    assert found.parts_kwh["cabin"] > 0 and found.parts_kwh["tyres"] > 0 and found.parts_kwh["air"] > 0
    assert found.parts_kwh["braking"] > 0 and found.parts_kwh["heater"] == 0
    assert 0 < found.range_lost_share < 1
    assert found.range_km < found.mild_range_km


def test_a_mild_dry_day_takes_nothing_more():
    found = season_costs(hill_and_town(), CAR, Conditions(), DRIVER)
    assert found.more_kwh == 0 and found.range_lost_share == 0
    assert mild_day(replace(WINTER, parked_c=5.0, preconditioned=True)) == Conditions(soc_start=0.8)


def test_range_takes_off_what_the_cold_holds_back():
    result = evaluate(hill_and_town(), CAR, WINTER, DRIVER)
    end_c = result.run.pack_c[0, -1]
    held = CAR.usable_kwh * (1 - CAR.cold_capacity_loss_per_k * (20 - end_c))
    assert usable_in_the_cold_kwh(CAR, end_c) == pytest.approx(held)
    assert result.range_km() == pytest.approx(held / result.net_kwh * result.distance_km)
    assert usable_in_the_cold_kwh(CAR, 35.0) == CAR.usable_kwh


def test_the_same_lift_off_fades_four_ways():
    usual, slow, full, cold, slippery = why_it_fades(CAR, WINTER, DRIVER, **FADES)
    assert usual.slowing_mps2 == pytest.approx(1.3) and usual.limit == ""
    assert [slow.limit, full.limit, cold.limit, slippery.limit] == ["low_speed_fade", "battery", "battery", "grip"]
    for faded in (slow, full, cold, slippery):
        assert faded.rolling_mps2 <= faded.slowing_mps2 < 1.3
    assert full.motor_mps2 < cold.motor_mps2


def test_what_is_left_agrees_with_the_kernel():
    """A car that lifts off at 50 km/h with a friction-only pedal, for a second, slows as the table says."""
    car = replace(CAR, brake_pedal="friction")
    cold = replace(mild_day(WINTER), soc_start=0.6, battery_temp_c=-10.0, tyres_warm="yes", cabin=False)
    left = lift_off_left("cold battery", car, cold, DRIVER, 50.0)
    speeds = 50 / 3.6 + np.array([0.5, -0.5]) * 1.3
    trace = Trace(time_s=np.array([0.0, 1.0]), speed_mps=speeds, elevation_m=np.zeros(2), warmed_up=True)
    run = drive(trace, car, cold, DRIVER)
    assert run.motor_n[0, 0] == pytest.approx(left.motor_mps2 * run.effective_mass_kg[0], rel=1e-3)


def test_rolling_on_asks_nothing_of_the_motor():
    assert all(each.limit == "" for each in why_it_fades(CAR, WINTER, Driver(lift_off_mps2=0.0), **FADES))


def test_warming_up_is_paid_from_the_wall_or_from_the_battery():
    plugged, unplugged = (
        warm_up(hill_and_town(), CAR, replace(WINTER, plugged_in=plugged_in), DRIVER) for plugged_in in (True, False)
    )
    battery_j = CAR.pack_heat_capacity_kj_per_k_kwh * 1000 * CAR.usable_kwh * 28
    assert plugged.battery_kwh == pytest.approx(battery_j / 3.6e6)
    assert plugged.cabin_kwh == pytest.approx(CAR.cabin_heat_capacity_kj_per_k * 29 / 3600)
    assert plugged.charge_share == 0 < unplugged.charge_share
    assert unplugged.warm.soc[0] == pytest.approx(0.8 - unplugged.charge_share)
    assert plugged.saved_on_the_drive_kwh > 0 and plugged.less_heating_kwh > 0 and plugged.less_friction_kwh >= 0
    assert plugged.warm.run.pack_c[0, 0] == 20


def test_warming_up_from_the_battery_is_energy_of_the_drive():
    """What it takes stands in the net energy of both runs, in the books, and in what is left to drive on."""
    before = replace(WINTER, preconditioned=True)
    plugged, unplugged = (
        evaluate(hill_and_town(), CAR, replace(before, plugged_in=plugged_in), DRIVER) for plugged_in in (True, False)
    )
    takes = warm_up(hill_and_town(), CAR, replace(before, plugged_in=False), DRIVER)
    took_kwh = takes.battery_kwh + takes.cabin_kwh
    assert took_kwh > 1
    assert unplugged.soc[0] == pytest.approx(plugged.soc[0] - took_kwh / CAR.usable_kwh)
    # on less charge the cells' voltage is a little lower
    assert unplugged.net_kwh == pytest.approx(plugged.net_kwh + took_kwh, abs=2e-3)
    assert unplugged.friction_only_net_kwh == pytest.approx(plugged.friction_only_net_kwh + took_kwh, abs=2e-3)
    more = [getattr(unplugged.ledger, entry) - getattr(plugged.ledger, entry) for entry in ("pack_heater", "cabin")]
    assert np.array(more) / 3.6e6 == pytest.approx([takes.battery_kwh, takes.cabin_kwh])
    assert plugged.ledger.error_share < 1e-9 > unplugged.ledger.error_share
    assert unplugged.answers()["warm_up_kwh"] == pytest.approx(took_kwh) and plugged.answers()["warm_up_kwh"] == 0
    with refuses("battery would be empty after about 0 km of"):
        evaluate(hill_and_town(), CAR, replace(before, plugged_in=False, soc_start=0.01), DRIVER)


def test_a_trailer_is_slowed_by_the_cars_lift_off_too():
    car = replace(CAR, brake_pedal="friction")
    towing = replace(mild_day(WINTER), soc_start=0.6, trailer_kg=1200.0, cabin=False)
    left = lift_off_left("as usual", car, towing, DRIVER, 50.0)
    assert left.limit == "" and 0.5 < left.slowing_mps2 < left.asked_mps2 - 0.3
    speeds = 50 / 3.6 + np.array([0.5, -0.5]) * left.slowing_mps2
    trace = Trace(time_s=np.array([0.0, 1.0]), speed_mps=speeds, elevation_m=np.zeros(2), warmed_up=True)
    run = drive(trace, car, towing, DRIVER)
    # the motor does all of that slowing, and could do no more
    assert run.braking_n[0, 0] == pytest.approx(run.motor_n[0, 0], rel=1e-3)
    assert run.motor_n[0, 0] == pytest.approx(left.motor_mps2 * run.effective_mass_kg[0], rel=1e-3)


def test_a_garage_leaves_less_to_warm():
    from_the_street, from_a_garage = (
        warm_up(hill_and_town(), CAR, replace(WINTER, parked_c=parked), DRIVER) for parked in (None, 8.0)
    )
    assert from_a_garage.battery_kwh < from_the_street.battery_kwh
    assert from_a_garage.cold.run.pack_c[0, 0] == 8 and from_a_garage.cold.net_kwh < from_the_street.cold.net_kwh
