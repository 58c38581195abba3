"""Hybrids: the engine keeps the charge, the window stays a window, fuel comes with a wide band."""

from dataclasses import replace

import numpy as np
import pytest

from model.describe.car import CAR_FIELDS
from model.describe.parameters import assumed_figures, car_from, class_labels
from model.describe.scenario import Conditions, Driver, Leg, Scenario
from model.describe.scenario_io import from_link, starting_drives
from model.kernel.run import ledger_of
from model.kernel.savings import evaluate
from model.limits.descent import descent_to_fill_m, hill
from model.sampling.drives import drive, year_of
from model.sampling.hybrid import (
    engine_kwh,
    fuel_answers,
    fuel_l,
    fuel_of_year,
    fuel_saved,
    has_engine,
    has_plug,
    with_kept_charge,
    year_of_fuel,
)
from model.traces.cycles import cycle_trace
from tests.made_traces import stop_and_go

FULL, PLUG_IN = car_from("full-hybrid"), car_from("plug-in-hybrid")
WARM = Conditions(ambient_c=20.0, cabin=False)
DRIVER = Driver()


def test_only_hybrids_have_an_engine():
    assert has_engine(FULL) and has_engine(PLUG_IN) and not has_engine(car_from("family-hatch"))


@pytest.mark.parametrize("start", [0.3, 0.5, 0.8])
def test_the_charge_never_falls_below_what_the_engine_keeps(start):
    result = evaluate(cycle_trace("wltc3b"), FULL, replace(WARM, soc_start=start), DRIVER)
    assert result.soc.min() >= min(start, FULL.sustain_soc) - 1e-9
    assert result.soc.max() <= 1
    assert result.ledger.error_share < 1e-9 > ledger_of(result.friction_only, result.trace).error_share


def test_engine_and_battery_together_give_what_is_drawn():
    result = evaluate(stop_and_go(20), FULL, WARM, DRIVER)
    ledger = result.ledger
    terminal = ledger.cells_given - ledger.cells_taken - ledger.cell + ledger.engine_given
    assert terminal / 3.6e6 == pytest.approx(result.net_kwh)
    assert engine_kwh(result.run) == pytest.approx(ledger.engine_given / 3.6e6)
    assert np.all(result.run.engine_w >= -1e-6) and np.all(result.run.engine_w <= result.run.terminal_w.clip(0) + 1e-6)


def test_recovered_energy_spares_the_engine():
    result = evaluate(stop_and_go(20), FULL, WARM, DRIVER)
    assert engine_kwh(result.run) < engine_kwh(result.friction_only)
    assert result.saved_share > 0.1


def test_a_plug_in_hybrid_drives_on_its_charge_until_it_is_used_up():
    charged = evaluate(cycle_trace("udds"), PLUG_IN, WARM, DRIVER)
    assert engine_kwh(charged.run) == pytest.approx(0, abs=1e-9)
    used_up = evaluate(cycle_trace("udds"), PLUG_IN, replace(WARM, soc_start=0.15), DRIVER)
    assert engine_kwh(used_up.run) > 0.1
    assert used_up.net_kwh == pytest.approx(charged.net_kwh, rel=1e-6)


def test_a_full_window_on_a_descent_leaves_the_engines_drag_and_friction():
    result = evaluate(hill(-1000, 8, 60), FULL, WARM, DRIVER)
    assert result.soc.max() == pytest.approx(1, abs=1e-3) and result.soc.max() <= 1
    drag_w = result.run.engine_drag_n[0] * result.run.speed[0]
    assert drag_w.max() == pytest.approx(FULL.engine_drag_kw * 1000)
    assert result.ledger.engine_drag > 0 and result.wheel_friction_kwh > 0
    slowed = result.wheel_regen_kwh + result.wheel_friction_kwh + result.ledger.engine_drag / 3.6e6
    assert slowed == pytest.approx(result.wheel_braking_kwh)
    freed = evaluate(hill(-1000, 8, 60), replace(FULL, engine_drag_kw=0.0), WARM, DRIVER)
    assert freed.wheel_friction_kwh > result.wheel_friction_kwh


def test_metres_until_the_window_is_full():
    metres, smaller = (
        descent_to_fill_m(car, with_kept_charge(car, WARM), DRIVER, 6, 50)
        for car in (FULL, replace(FULL, usable_kwh=0.4))
    )
    assert 50 < smaller < metres < 400


def test_fuel_has_a_wide_band_unless_the_efficiency_is_stated():
    scenario = Scenario(car_class="full-hybrid", conditions=WARM)
    result = evaluate(stop_and_go(20), FULL, WARM, DRIVER)
    saved = fuel_saved(scenario, result)
    assert 0 < saved.litres.low < saved.litres.mid < saved.litres.high
    assert saved.litres.high > 1.5 * saved.litres.low
    less = saved.friction_only_engine_kwh - saved.engine_kwh
    assert saved.litres.mid == pytest.approx(fuel_l(less, FULL.engine_efficiency))
    stated = fuel_saved(scenario.with_setting("engine_efficiency", 0.3), result)
    assert stated.litres.low == stated.litres.high == pytest.approx(fuel_l(less, 0.3))
    assert fuel_answers(scenario, result)["saved_l"]["mid"] == saved.litres.mid


def test_a_year_of_fuel_is_every_seasons_drive_on_its_days():
    scenario = Scenario(car_class="full-hybrid").with_setting("summer_days", 0)
    litres = 0.0
    for season in ("winter", "spring", "autumn"):
        then = scenario.with_setting("ambient_c", getattr(scenario.year, f"{season}_c"))
        litres += getattr(scenario.year, f"{season}_days") * fuel_saved(then, drive(then)).litres.high
    assert fuel_of_year(scenario).high == pytest.approx(litres)


def test_a_plug_in_hybrids_year_is_parted_into_fuel_and_electricity():
    """What the engine spares is fuel and comes from no wall; the two together are all that is saved."""
    scenario = replace(starting_drives()["suburb-hill"][2], car_class="plug-in-hybrid")
    for key, figure in assumed_figures("plug-in-hybrid").items():
        if key in CAR_FIELDS and isinstance(figure.mid, float):
            scenario = scenario.with_setting(key, figure.mid)
    year, fuel = year_of(scenario, 1), year_of_fuel(scenario)
    assert fuel.plugged and fuel.saved_l.mid > 1
    by_engine = fuel.saved_l.mid / fuel_l(1.0, drive(scenario).car.engine_efficiency)
    from_battery = year.saved_wall_kwh.mid * drive(scenario).car.charging_efficiency
    assert from_battery > 1
    assert by_engine + from_battery == pytest.approx(year.saved_kwh.mid, rel=1e-9)


def test_only_hybrids_with_a_small_battery_have_no_plug():
    plugs = {name: has_plug(car_from(name)) for name in class_labels()}
    assert [name for name, plug in plugs.items() if not plug] == ["full-hybrid"]
    assert not year_of_fuel(Scenario(car_class="full-hybrid")).plugged and year_of_fuel(Scenario()) is None


def test_a_litre_is_some_nine_kilowatt_hours():
    assert fuel_l(8.9, 1.0) == 1 and fuel_l(8.9, 0.25) == 4


def test_hybrids_that_the_sweeps_could_not_settle_are_driven():
    """A full hybrid in the cold, loaded, uphill and downhill; its charge hangs on every step before."""
    link = {
        "car": "full-hybrid", "ambient_c": "-10", "soc_start": "0.1", "payload_kg": "300",
        "legs": "60_80_0_300_0_0_0_8_dry_~60_50_100_100_10_200_200_4_dry_",
    }  # fmt: skip
    scenario, notices = from_link(link, Scenario())
    assert not notices
    result = drive(scenario)
    assert result.distance_km == pytest.approx(120, rel=1e-3)
    assert result.ledger.error_share < 1e-9
    assert result.soc.min() >= 0.1 - 1e-9 and result.soc.max() <= 1


@pytest.mark.parametrize("seed", range(4))
def test_no_random_hybrid_drive_is_too_much(seed):
    random = np.random.RandomState(seed)
    for _ in range(24):
        speed = random.uniform(30, 120)
        leg = Leg(
            distance_km=random.uniform(5, 40), speed_kmh=speed, stops=random.randint(0, 40),
            slow_downs=random.randint(0, 40), slow_to_kmh=speed * random.uniform(0, 0.8),
            climb_m=random.uniform(0, 150), descent_m=random.uniform(0, 150), grade_pct=6,
        )  # fmt: skip
        conditions = Conditions(ambient_c=random.uniform(-20, 35), soc_start=random.uniform(0, 1))
        result = drive(Scenario(car_class="full-hybrid", conditions=conditions, legs=(leg,)))
        assert result.ledger.error_share < 1e-9
        assert min(conditions.soc_start, FULL.sustain_soc) - 1e-9 <= result.soc.min() and result.soc.max() <= 1


def test_a_battery_from_three_kilowatt_hours_on_has_a_plug():
    hybrid = car_from("full-hybrid")
    assert [has_plug(replace(hybrid, usable_kwh=kwh)) for kwh in (2.99, 3.0)] == [False, True]
