"""The march over a road: what is measured, what the battery takes, the heater, and other edges."""

from dataclasses import replace

import numpy as np
import pytest

from model.describe.parameters import car_from
from model.describe.scenario import SURFACES, Conditions, Driver
from model.describe.trace import Trace
from model.kernel.road import road_of
from model.kernel.run import drive, ledger_of
from model.kernel.savings import evaluate
from model.physics.records import car_record
from model.physics.slowing_limits import LIMITS, friction_under
from model.physics.wheels import tyre_slowing_mps2
from model.traces.cycles import cycle_trace
from tests.laws.test_second_opinion import DESCENT, SITUATIONS
from tests.made_traces import ride, steady, stop_and_go

WARM = Conditions(ambient_c=20.0, cabin=False, tyres_warm="yes")
COLD = Conditions(ambient_c=-12.0, soc_start=0.8)


def test_steps_of_half_a_second_give_the_same_drive():
    """The same speeds at half the step: energies move by what the coarser step leaves out, under a per mille."""
    trace = cycle_trace("wltc3b")
    time_s = np.arange(0, 1800.5, 0.5)
    fine = replace(
        trace,
        time_s=time_s,
        speed_mps=np.interp(time_s, trace.time_s, trace.speed_mps),
        elevation_m=np.zeros(len(time_s)),
    )
    coarse, halved = (evaluate(each, car_from("family-hatch"), WARM, Driver()) for each in (trace, fine))
    assert halved.distance_km == pytest.approx(coarse.distance_km)
    assert halved.net_kwh == pytest.approx(coarse.net_kwh, rel=1e-3)
    assert halved.battery_in_kwh == pytest.approx(coarse.battery_in_kwh, rel=5e-3)


def test_measured_temperatures_and_cabin_replace_the_modelled_ones():
    points = 601
    trace = steady(70, points - 1)
    measured = replace(
        trace,
        ambient_c=np.full(points, -10.0),
        battery_temp_c=np.linspace(-10, 5, points),
        cabin_w=np.full(points - 1, 1234.0),
    )
    car = car_from("family-hatch")
    result = evaluate(measured, car, WARM, Driver())
    assert result.ledger.cabin == pytest.approx(1234 * 600)
    assert result.run.pack_c[0, 0] == -10 and result.run.pack_c[0, -1] == 5
    cold = evaluate(trace, car, replace(WARM, ambient_c=-10.0), Driver())
    assert result.ledger.air == pytest.approx(cold.ledger.air)
    assert result.ledger.rolling == pytest.approx(cold.ledger.rolling)


def test_the_slipperier_of_leg_and_season_counts():
    trace = ride(np.linspace(60, 0, 61), surface=np.full(60, SURFACES.index("snow")))
    car = car_from("family-hatch")
    bare = replace(trace, surface=None)
    on_snow, on_dry = (drive(each, car, WARM, Driver()) for each in (trace, bare))
    assert on_snow.rolling_n[0, 0] > on_dry.rolling_n[0, 0]
    icy = car_record(car, replace(WARM, surface="ice"), Driver())
    snow, dry = road_of(trace), road_of(bare)
    assert all(friction_under(icy, snow[step]) == friction_under(icy, dry[step]) for step in range(60))


def test_a_full_battery_takes_no_more_than_is_used():
    result = evaluate(DESCENT, car_from("family-hatch"), Conditions(cabin=False, soc_start=1.0), Driver())
    assert result.soc.max() <= 1 + 1e-9
    assert result.battery_in_kwh < 0.02 * result.wheel_braking_kwh
    assert result.limits_kwh["battery"] > 0.9 * result.wheel_friction_kwh


def test_a_full_battery_empties_itself_before_it_takes_again():
    """Up, then down from full: what comes back is no more than what was drawn."""
    trace = ride(np.full(1201, 60.0), slope=np.repeat([0.03, -0.08], 600))
    result = evaluate(trace, car_from("family-hatch"), Conditions(cabin=False, soc_start=1.0), Driver())
    assert result.soc.min() < 0.99 and result.soc.max() <= 1 + 1e-9
    assert result.soc[-1] > result.soc.min()
    assert result.limits_kwh["battery"] > 0


@pytest.mark.parametrize("mass_kg", [700.0, 4000.0])
@pytest.mark.parametrize("ambient_c", [-20.0, 45.0])
def test_light_and_heavy_cold_and_hot(mass_kg, ambient_c):
    car = car_from("pickup", {"mass_kg": mass_kg})
    result = evaluate(cycle_trace("wltc3b"), car, Conditions(ambient_c=ambient_c), Driver())
    assert result.ledger.error_share < 1e-9
    assert 0 < result.recovered_share < 0.6 and result.net_kwh > 1


def test_a_tail_wind_faster_than_the_car_pushes():
    trace = steady(30, 300)
    car = car_from("family-hatch")
    still, pushed = (evaluate(trace, car, replace(WARM, wind_kmh=wind), Driver()) for wind in (0.0, -60.0))
    assert pushed.ledger.air == pytest.approx(-still.ledger.air)
    assert pushed.net_kwh < still.net_kwh and pushed.ledger.error_share < 1e-9


def test_nearly_no_grip_leaves_nearly_everything_to_friction():
    car = car_from("family-hatch", {"driven_axle": "rear", "grip_reserve_share": 0.9})
    result = evaluate(stop_and_go(), car, replace(WARM, surface="ice", grip_level=-1.0), Driver())
    assert result.captured_share < 0.15 and max(result.limits_kwh, key=result.limits_kwh.get) == "grip"
    assert result.saved_kwh >= 0


def test_the_limit_of_every_step_that_left_something_to_friction_is_known():
    for situation, (car_class, stated, conditions, driver, trace) in SITUATIONS.items():
        result = evaluate(trace, car_from(car_class, stated), conditions, driver)
        left = result.run.friction_n > 1e-9
        assert np.all(result.run.bound[left] >= 0), situation
        assert {LIMITS[index] for index in np.unique(result.friction_only.bound) if index >= 0} == {"no_regeneration"}


def test_a_drive_of_one_second():
    result = evaluate(ride([50, 49]), car_from("family-hatch"), WARM, Driver())
    assert result.distance_km == pytest.approx(49.5 / 3600) and result.ledger.error_share < 1e-9
    assert ledger_of(result.friction_only, result.trace).error_share < 1e-9


def test_a_battery_heater_runs_until_the_battery_is_warm():
    cold = replace(WARM, ambient_c=-10.0)
    car = car_from("family-hatch", {"pack_heater_kw": 5.0, "pack_heater_until_c": 5.0, "pack_heat_loss_w_per_k": 0.0})
    result = evaluate(steady(60, 3600), car, cold, Driver())
    heater_w = result.run.pack_heater_w[0]
    assert heater_w[0] == 5000 and heater_w[-1] == 0 and np.all(np.diff(heater_w) <= 0)
    off = int(np.argmax(heater_w == 0))
    assert result.run.pack_c[0, off] == pytest.approx(5.0, abs=0.02)
    into_battery_j = (result.run.pack_c[0, off] + 10) * car.pack_heat_capacity_kj_per_k_kwh * 1000 * car.usable_kwh
    of_the_cells = float((result.run.cell_loss_w[0] * result.run.step_s[0])[:off].sum())
    assert result.ledger.pack_heater + of_the_cells == pytest.approx(into_battery_j, rel=1e-3)
    assert result.ledger.error_share < 1e-9
    unheated = evaluate(steady(60, 3600), replace(car, pack_heater_kw=0.0), cold, Driver())
    assert np.all(unheated.run.pack_heater_w == 0) and unheated.ledger.pack_heater == 0


def test_a_heater_has_nothing_to_do_in_a_warm_or_measured_battery():
    car = car_from("family-hatch", {"pack_heater_kw": 5.0})
    assert evaluate(steady(60, 600), car, WARM, Driver()).ledger.pack_heater == 0
    measured = replace(steady(60, 600), battery_temp_c=np.full(601, -10.0))
    assert evaluate(measured, car, WARM, Driver()).ledger.pack_heater == 0


def test_a_slope_moves_weight_only_by_what_the_tyres_do():
    """Held at its speed downhill the front axle is loaded as by the same slowing on the flat; rolling, not at all."""
    down = road_of(steady(60, 10, slope=-0.06))
    assert tyre_slowing_mps2(down[0]) == pytest.approx(9.80665 * 0.06)
    rolling = road_of(ride(60 + 3.6 * 9.80665 * 0.06 * np.arange(8), slope=-0.06))
    assert tyre_slowing_mps2(rolling[0]) == pytest.approx(0, abs=1e-9)


def test_a_recording_warms_its_cabin_from_its_own_air():
    speed = np.full(11, 10.0)
    trace = Trace(
        time_s=np.arange(11.0), speed_mps=speed, elevation_m=np.zeros(11), ambient_c=np.full(11, -10.0), recorded=True
    )
    around = Conditions(ambient_c=5.0, preconditioned=True, plugged_in=False)
    measured, described = (
        drive(trace if own else replace(trace, ambient_c=None), car_from("family-hatch"), around, Driver())
        for own in (True, False)
    )
    warmer = (around.cabin_set_c + 10.0) / (around.cabin_set_c - 5.0)
    assert measured.energies["warm_cabin_j"][0] == pytest.approx(warmer * described.energies["warm_cabin_j"][0])
