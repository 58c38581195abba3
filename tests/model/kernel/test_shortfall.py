"""A recording is followed exactly; what the modelled car could not have given is told beside the answer."""

from dataclasses import replace

import numpy as np
import pandas as pd
import pytest

from model.describe.fields import InputError
from model.describe.parameters import car_from
from model.describe.scenario import Conditions, Driver, Scenario
from model.kernel.savings import evaluate
from model.out.recorded import drive_recording
from model.out.study import study_row
from model.traces.logs import read_recording
from tests.made_traces import ride

WEAK = car_from("city-car", {"motor_peak_kw": 20.0})
BRISK = ride(np.concatenate([np.linspace(0, 100, 12), np.full(60, 100.0), np.linspace(100, 0, 20)]))
WARM = Conditions(ambient_c=20.0, cabin=False)


def recorded(trace):
    return replace(trace, recorded=True)


def test_a_recording_is_followed_to_the_letter_and_a_described_drive_is_slowed():
    slowed = evaluate(BRISK, WEAK, WARM, Driver())
    assert not slowed.followed and slowed.shortfall_kwh == 0
    found = evaluate(recorded(BRISK), WEAK, WARM, Driver())
    assert found.followed
    assert np.array_equal(found.trace.speed_mps, BRISK.speed_mps)
    assert np.array_equal(found.trace.time_s, BRISK.time_s)
    assert found.ledger.error_share < 1e-9
    assert found.answers()["shortfall_kwh"] == found.shortfall_kwh > 0.1


def test_the_shortfall_is_what_the_wheels_asked_beyond_the_motors_most():
    """By hand: a motor of 20 kW behind its gear, its battery never the limit."""
    car = replace(WEAK, cell_resistance_share=0.0)
    found = evaluate(recorded(BRISK), car, WARM, Driver())
    run = found.run
    base_mps = car.motor_base_speed_kmh / 3.6
    able_n = 20e3 / np.maximum(run.speed, base_mps) * car.gear_efficiency
    short_kwh = (np.maximum(run.wheel_n - able_n, 0.0) * run.speed * run.step_s).sum() / 3.6e6
    assert found.shortfall_kwh == pytest.approx(short_kwh, rel=1e-9)


def test_a_car_that_can_has_none():
    strong = car_from("performance-saloon")
    assert evaluate(recorded(BRISK), strong, WARM, Driver()).shortfall_kwh == 0


def test_a_cold_battery_that_is_too_weak_is_told_and_not_refused():
    weak = replace(car_from("city-car"), cell_resistance_share=0.12)
    freezing = Conditions(ambient_c=-15.0, cabin=False, soc_start=0.5)
    found = evaluate(recorded(BRISK), weak, freezing, Driver())
    assert found.followed and found.shortfall_kwh > 0 and found.ledger.error_share < 1e-9


def test_a_recording_on_which_the_modelled_battery_runs_empty_is_told_too():
    nearly = replace(WARM, soc_start=0.002)
    car = replace(car_from("performance-saloon"), cell_resistance_share=0.0)
    with pytest.raises(InputError):
        evaluate(BRISK, car, nearly, Driver())
    found = evaluate(recorded(BRISK), car, nearly, Driver())
    below_kwh = -found.soc.min() * found.car.usable_kwh
    assert below_kwh > 0 and found.shortfall_kwh == pytest.approx(below_kwh)


def test_a_file_is_a_recording(tmp_path):
    table = pd.DataFrame({"time_s": BRISK.time_s, "speed_kmh": BRISK.speed_mps * 3.6})
    file = tmp_path / "brisk.csv"
    table.to_csv(file, index=False)
    assert read_recording(file).trace.recorded
    scenario = Scenario(car_class="city-car", stated=(("motor_peak_kw", 20.0),), conditions=WARM)
    _, _, result = drive_recording(file, scenario, frozenset({"soc_start", "ambient_c"}))
    row = study_row(file, scenario, frozenset({"soc_start", "ambient_c"}))
    assert result.followed and row["followed_trace"] and row["shortfall_kwh"] == result.shortfall_kwh > 0


def test_what_heats_the_cabin_is_not_there_for_the_wheels():
    weak = replace(car_from("city-car"), cell_resistance_share=0.12)
    short = [
        evaluate(recorded(BRISK), weak, Conditions(ambient_c=-15.0, cabin=cabin, soc_start=0.5), Driver()).shortfall_kwh
        for cabin in (False, True)
    ]
    assert short[1] > 1.01 * short[0] > 0
