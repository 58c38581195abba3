"""A result over time, by slow-down, and as books seen from the terminals."""

import numpy as np
import pytest

from model.describe.parameters import car_from
from model.describe.scenario import Conditions, Driver
from model.kernel.savings import evaluate
from model.kernel.timeline import books, slow_downs, timeline
from model.physics.slowing_limits import LIMITS
from model.traces.cycles import cycle_trace
from tests.made_traces import ride, steady, stop_and_go

CAR = car_from("family-hatch")
WARM = Conditions(ambient_c=20.0, cabin=False)
COLD = Conditions(ambient_c=-10.0)
UDDS = evaluate(cycle_trace("udds"), CAR, COLD, Driver())


def test_powers_over_time_are_the_energies_of_the_result():
    steps = timeline(UDDS)
    hours = steps["step_s"] / 3600
    # the cycle's highest speed is 56.7 mph
    assert steps["speed_kmh"].max() == pytest.approx(91.25, abs=0.05) and steps["speed_kmh"].min() == 0
    assert len(steps) == 1369 and steps["distance_km"].iloc[-1] == pytest.approx(UDDS.distance_km)
    assert (steps["battery_kw"] * hours).sum() == pytest.approx(UDDS.net_kwh)
    assert (steps["motor_slowing_kw"] * hours).sum() == pytest.approx(UDDS.wheel_regen_kwh)
    assert (steps["friction_kw"] * hours).sum() == pytest.approx(UDDS.wheel_friction_kwh)
    assert steps["soc"].iloc[0] == COLD.soc_start and steps["battery_c"].iloc[0] == -10


def test_the_named_limits_are_those_that_left_energy_to_friction():
    steps = timeline(UDDS)
    left = steps[steps["friction_kw"] > 1e-9]
    assert set(left["limit"]) == set(UDDS.limits_kwh) <= set(LIMITS)
    by_limit = (left["friction_kw"] * left["step_s"] / 3600).groupby(left["limit"]).sum()
    assert by_limit.to_dict() == pytest.approx(UDDS.limits_kwh, abs=1e-9)


def test_every_stop_is_a_slow_down():
    found = slow_downs(evaluate(stop_and_go(5, 54.0), CAR, WARM, Driver()))
    assert len(found) == 5
    assert found["to_kmh"].tolist() == pytest.approx([0] * 5)
    assert np.all(found["from_kmh"] > 50) and np.all(np.diff(found["start_km"]) > 0)
    assert found["peak_mps2"].tolist() == pytest.approx([54 / 3.6 / 11] * 5)
    assert (found["motor_wh"] + found["friction_wh"]).tolist() == pytest.approx(found["braking_wh"].tolist())


def test_on_a_flat_road_all_braking_is_in_slow_downs():
    found = slow_downs(UDDS)
    assert found["braking_wh"].sum() / 1000 == pytest.approx(UDDS.wheel_braking_kwh)
    assert found["friction_wh"].sum() / 1000 == pytest.approx(UDDS.wheel_friction_kwh)
    assert set(found["limit"]) - {""} <= set(UDDS.limits_kwh)


def test_the_limit_of_a_slow_down_is_the_one_that_left_most():
    hard = ride(np.concatenate([np.full(5, 100.0), np.linspace(100, 0, 6)]))
    found = slow_downs(evaluate(hard, CAR, WARM, Driver()))
    assert found["limit"].tolist() == ["drivability"]


def test_coasting_and_holding_speed_downhill_are_no_slow_downs():
    assert slow_downs(evaluate(steady(60, 100), CAR, WARM, Driver())).empty
    held = evaluate(steady(60, 100, slope=-0.05), CAR, WARM, Driver())
    assert held.wheel_braking_kwh > 0 and slow_downs(held).empty
    assert "peak_mps2" in slow_downs(held).columns


@pytest.mark.parametrize("run", ["regenerated", "friction_only"])
def test_the_books_seen_from_the_terminals_add_up(run):
    entries = books(UDDS)[run]
    uses = entries.drop(["battery_out", "battery_in", "cells_given", "cells_taken", "cells"])
    assert entries["battery_out"] - entries["battery_in"] == pytest.approx(uses.sum())
    behind = entries["cells_given"] - entries["cells_taken"] - entries["cells"]
    assert behind == pytest.approx(entries["battery_out"] - entries["battery_in"])
    assert entries["losses_driving"] > entries["losses_slowing"] > 0
