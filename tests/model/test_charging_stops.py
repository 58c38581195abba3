"""Charging on the way: where the stops stand, how long they take, what is booked."""

from dataclasses import replace

import numpy as np
import pytest

from model.charging_stops import STOP_AT_SOC, charging_s, with_charging_stops, with_stop
from model.drives import drive as drive_scenario
from model.fields import InputError
from model.kernel.run import drive, ledger_of
from model.parameters import car_from
from model.savings import evaluate
from model.scenario import Conditions, Driver, Leg, Scenario
from tests.made_traces import steady

CAR, WARM, DRIVER = car_from("family-hatch"), Conditions(ambient_c=20.0, cabin=False, soc_start=0.5), Driver()
FAR = steady(110, 3 * 3600)
THREE = replace(WARM, charging_stops=3)


def far(stops):
    return with_charging_stops(FAR, CAR, replace(WARM, charging_stops=stops), DRIVER)


def test_a_drive_too_long_for_the_battery_is_driven_with_a_stop_where_the_charge_is_low():
    with pytest.raises(InputError, match="does not last"):
        evaluate(FAR, CAR, WARM, DRIVER)
    run = drive(far(9), CAR, WARM, DRIVER)
    stands = np.flatnonzero(~np.isnan(run.road["charge_to"]))
    assert 1 <= len(stands) < 9 and run.soc.min() > 0
    assert run.soc[0, stands] == pytest.approx(STOP_AT_SOC, abs=0.005)
    assert run.soc[0, stands + 1] == pytest.approx(0.8)
    assert evaluate(far(9), CAR, WARM, DRIVER).ledger.error_share < 1e-9


def test_what_is_charged_is_booked_apart_and_the_pack_keeps_its_warmth():
    trace = far(9)
    run = drive(trace, CAR, WARM, DRIVER)
    books = ledger_of(run, trace)
    drawn = books.cells_given - books.cells_taken
    gained = (run.soc[0, -1] - run.soc[0, 0]) * CAR.usable_kwh * 3.6e6
    assert run.energies["charged_j"][0] == pytest.approx(drawn + gained, rel=1e-9)
    stand = int(np.flatnonzero(~np.isnan(run.road["charge_to"]))[0])
    assert abs(run.pack_c[0, stand + 1] - run.pack_c[0, stand]) < 3


def test_a_stop_keeps_the_road_and_takes_its_time():
    trace = with_stop(FAR, 50e3, 1200.0, 0.8)
    assert trace.distance_m == pytest.approx(FAR.distance_m)
    assert trace.duration_s == pytest.approx(FAR.duration_s + 1200 + 110 / 3.6, rel=1e-3)
    assert trace.stops == FAR.stops + 1 and np.all(trace.step_s > 0)
    assert -trace.acceleration_mps2.min() < 1.2 and trace.acceleration_mps2.max() < 1.2


def test_a_charge_takes_longer_in_the_cold_and_to_the_top():
    run = drive(steady(50, 10), CAR, WARM, DRIVER)
    assert charging_s(run, 0.1, 0.8, 25.0) < charging_s(run, 0.1, 0.8, 0.0)
    assert charging_s(run, 0.8, 0.95, 25.0) > charging_s(run, 0.1, 0.25, 25.0)
    # three times an hour's charge, a little less towards the end
    assert 0.7 * 3600 / 3 < charging_s(run, 0.1, 0.8, 25.0) < 0.7 * 3600 / 2


def test_no_stop_is_made_that_is_not_needed_nor_more_than_allowed():
    near = steady(80, 1800)
    assert with_charging_stops(near, CAR, THREE, DRIVER) is near
    assert np.count_nonzero(~np.isnan(far(1).charge_to)) == 1
    hybrid = car_from("full-hybrid")
    assert with_charging_stops(near, hybrid, THREE, DRIVER) is near


def test_a_described_drive_is_answered_with_its_stops():
    """The middle car does not last 400 km of motorway; with stops the drive takes longer and gets there."""
    far = Scenario(legs=(Leg(distance_km=400, speed_kmh=120, stops=0, slow_downs=0),))
    with pytest.raises(InputError):
        drive_scenario(far)
    result = drive_scenario(far.with_setting("charging_stops", 9))
    assert result.distance_km == pytest.approx(400, rel=1e-3)
    assert result.trace.stops >= 2 and result.trace.duration_s > 400 / 120 * 3600 + 1200
    assert result.run.energies["charged_j"][0] > 0 and result.ledger.error_share < 1e-9


def test_a_drive_that_begins_nearly_empty_charges_from_what_is_there():
    emptier, fuller = (replace(WARM, soc_start=soc, charging_stops=1) for soc in (0.03, STOP_AT_SOC))
    stood = []
    for around in (emptier, fuller):
        trace = with_charging_stops(FAR, CAR, around, DRIVER)
        stood.append(trace.step_s[~np.isnan(trace.charge_to)].sum())
    more_s = charging_s(drive(FAR, CAR, emptier, DRIVER), 0.03, STOP_AT_SOC, WARM.ambient_c)
    assert stood[0] - stood[1] == pytest.approx(more_s, rel=0.02)
