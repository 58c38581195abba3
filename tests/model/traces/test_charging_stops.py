"""Charging on the way: where the stops stand, how long they take, what is booked."""

from dataclasses import replace

import numpy as np
import pytest

from model.describe.parameters import car_from
from model.describe.scenario import Conditions, Driver, Leg, Scenario
from model.kernel.run import drive, ledger_of
from model.kernel.savings import evaluate
from model.sampling.drives import drive as drive_scenario
from model.sampling.drives import trace_of, with_stops_needed, year_of
from model.traces.charging_stops import STOP_AT_SOC, ChargingStop, Reach, as_far_as, charging_s, reach_of, with_stop
from tests.made_traces import ride, steady
from tests.refused import refuses

CAR, WARM, DRIVER = car_from("family-hatch"), Conditions(ambient_c=20.0, cabin=False, soc_start=0.5), Driver()
FAR = steady(110, 3 * 3600)
THREE = replace(WARM, charging_stops=3)


def far(stops):
    return as_far_as(FAR, reach_of(FAR, CAR, replace(WARM, charging_stops=stops), DRIVER))


def test_a_drive_too_long_for_the_battery_is_driven_with_a_stop_where_the_charge_is_low():
    with refuses("is not enough"):
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
    trace = with_stop(FAR, ChargingStop(50e3, 1200.0, 0.8))
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
    assert reach_of(near, CAR, THREE, DRIVER) == Reach()
    assert len(reach_of(FAR, CAR, replace(WARM, charging_stops=1), DRIVER).stops) == 1
    assert reach_of(FAR, car_from("full-hybrid"), THREE, DRIVER) == Reach()


LONG = Scenario(legs=(Leg(distance_km=600, speed_kmh=120, stops=0, slow_downs=0),))


def test_a_drive_too_long_for_its_battery_is_answered_up_to_where_it_is_empty():
    result = drive_scenario(LONG)
    assert 100 < result.distance_km < 300 and result.described_km == pytest.approx(600, rel=1e-3)
    assert result.trace.ends == "empty" and 0 <= result.soc[-1] < 0.001 and result.ledger.error_share < 1e-9
    answers = result.answers()
    assert answers["battery_ends"] == "empty" and answers["distance_km"] < answers["described_km"]
    # as a drive that is described no longer than that, but for what comes back of its motion as it comes to rest
    short = drive_scenario(LONG.with_leg(0, "distance_km", 0.99 * result.distance_km))
    assert short.trace.ends == "" and short.net_kwh / short.distance_km == pytest.approx(
        result.net_kwh / result.distance_km, rel=0.01
    )


def test_a_battery_too_weak_on_the_way_ends_the_answer_there():
    car = car_from(
        "city-car", {"usable_kwh": 2.0, "cell_resistance_share": 0.05, "resistance_activation_j_per_mol": 0.0}
    )
    trace = ride(np.concatenate([np.linspace(0, 100, 30), np.full(470, 100.0)]))
    full = replace(WARM, soc_start=0.9)
    reach = reach_of(trace, car, full, DRIVER)
    assert reach.ends == "weak" and 1000 < reach.end_m < trace.distance_m
    result = evaluate(as_far_as(trace, reach), car, full, DRIVER)
    assert result.run.energies["weak_at"][0] == -1 and result.described_km == pytest.approx(trace.distance_m / 1000)


def test_a_described_drive_is_answered_with_its_stops():
    stops = with_stops_needed(LONG)
    result = drive_scenario(stops)
    assert result.distance_km == result.described_km == pytest.approx(600, rel=1e-3) and result.trace.ends == ""
    assert len(result.trace.charging) == stops.conditions.charging_stops >= 2
    fewer = LONG.with_setting("charging_stops", stops.conditions.charging_stops - 1)
    assert drive_scenario(fewer).trace.ends == "empty", "no more stops than are needed"
    assert result.charged_kwh > 0 and result.ledger.error_share < 1e-9
    assert result.trace.duration_s > 600 / 120 * 3600 + result.charging_s > 5 * 3600 + 1800
    # what the battery gives less what regeneration put back is what was in it at the start and what was charged
    given = result.charged_kwh + (result.soc[0] - result.soc[-1]) * result.car.usable_kwh
    assert given == pytest.approx(result.net_kwh + result.ledger.cell / 3.6e6, rel=1e-6)


def test_a_car_that_charges_has_power_from_the_charger_while_it_stands():
    """A cold battery charges for hours, in which the cabin takes more than was left: nothing is empty on the plug."""
    frost = replace(WARM, ambient_c=-20.0, battery_temp_c=-20.0, cabin=True, soc_start=0.3)
    cold = car_from("family-hatch", {"pack_heater_kw": 0.0})
    trace = with_stop(steady(80, 1200), ChargingStop(1000.0, 5 * 3600.0, 0.8))
    run = drive(trace, cold, frost, DRIVER)
    stand = int(trace.charging[0])
    taken_kwh = run.cell_w[0, stand] * 5 / 1000
    assert taken_kwh > 0.3 * cold.usable_kwh and run.soc[0, stand + 1] == 0.8
    assert run.energies["empty_at"][0] == -1


def test_every_day_of_the_year_has_the_stops_that_it_needs():
    there = LONG.with_leg(0, "distance_km", 500.0).with_setting("charging_stops", 1).with_setting("winter_c", -10.0)
    rows = {row.season: row for row in year_of(there, 5).rows}
    assert all(row.distance_km == pytest.approx(500, rel=1e-3) for row in rows.values())
    assert rows["winter"].charging_stops > rows["summer"].charging_stops > 1
    without = {row.season: row.distance_km for row in year_of(LONG, 5).rows}
    assert without["winter"] < without["summer"] < 400, "as far as the battery goes"


def test_stops_stand_at_the_same_place_where_speeds_are_as_the_foot_makes_them():
    there = with_stops_needed(LONG)
    lifted, same = (trace_of(there, foot_up) for foot_up in (lambda speed, strength: 0.5 + 0 * speed, None))
    places = [np.cumsum(trace.step_m)[trace.charging] for trace in (lifted, same)]
    assert places[0] == pytest.approx(places[1], abs=1.0) and len(places[0])


def test_a_drive_that_begins_nearly_empty_charges_from_what_is_there():
    emptier, fuller = (replace(WARM, soc_start=soc, charging_stops=1) for soc in (0.03, STOP_AT_SOC))
    stood = [reach_of(FAR, CAR, around, DRIVER).stops[0].stands_s for around in (emptier, fuller)]
    more_s = charging_s(drive(FAR, CAR, emptier, DRIVER), 0.03, STOP_AT_SOC, WARM.ambient_c)
    assert stood[0] - stood[1] == pytest.approx(more_s, rel=0.02)


def test_no_charger_goes_slower_than_a_charge_in_twenty_hours():
    run = drive(steady(50, 10), CAR, WARM, DRIVER)
    assert charging_s(run, 0.9, 0.95, -30.0) == pytest.approx(0.05 * 20 * 3600)


def test_an_answer_to_a_kilometre_of_road_is_given_and_to_less_refused():
    ends_m = [reach_of(FAR, CAR, replace(WARM, soc_start=soc), DRIVER).end_m for soc in (0.003, 0.005)]
    assert ends_m[0] is None and 1000 < ends_m[1] < 2000
