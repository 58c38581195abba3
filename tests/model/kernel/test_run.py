"""Many cars over one road: each as alone, in little memory, whatever is recorded."""

import numpy as np
import pytest

from model.describe.parameters import car_from
from model.describe.scenario import Conditions, Driver
from model.kernel.march import RESULTS
from model.kernel.run import drive
from model.traces.cycles import cycle_trace

CAR, COLD, DRIVER = car_from("family-hatch"), Conditions(ambient_c=-12.0, soc_start=0.8), Driver()
MASSES = np.array([1500.0, 1800.0, 2300.0])


def test_many_cars_at_once_are_each_as_alone():
    trace = cycle_trace("udds")
    many = drive(trace, CAR, COLD, DRIVER, drawn={"mass_kg": MASSES}, record=False)
    for index, mass_kg in enumerate(MASSES):
        alone = drive(trace, car_from("family-hatch", {"mass_kg": mass_kg}), COLD, DRIVER)
        assert alone.energies[0].tolist() == many.energies[index].tolist()


def test_what_is_recorded_adds_up_to_what_the_drive_comes_to():
    run = drive(cycle_trace("wltc3b"), CAR, COLD, DRIVER, drawn={"mass_kg": MASSES})
    for name, force in {"braking_j": run.braking_n, "motor_j": run.motor_n, "friction_j": run.friction_n}.items():
        assert run.energies[name] == pytest.approx(run.wheel_j(force), rel=1e-12)
    assert run.energies["out_j"] == pytest.approx((run.terminal_w.clip(0) * run.step_s).sum(-1), rel=1e-12)
    assert run.energies["in_j"] == pytest.approx((-run.terminal_w.clip(None, 0) * run.step_s).sum(-1), rel=1e-12)
    left = run.left_by_limit_j
    assert set(left) == {"battery", "low_speed_fade", "nothing_to_gain"}
    assert sum(left.values()) == pytest.approx(run.energies["friction_j"])


def test_a_heater_has_more_to_warm_on_friction_brakes_only():
    car = car_from("family-hatch", {"pack_heater_kw": 4.0})
    run, without = (drive(cycle_trace("wltc3b"), car, COLD, DRIVER, regen=regen) for regen in (True, False))
    assert run.friction_only_net_j == pytest.approx(without.net_j, rel=1e-12)
    assert abs(run.energies["idle_net_j"][0] / without.net_j[0] - 1) > 1e-4


def test_a_drive_that_is_not_recorded_holds_its_energies_only():
    run = drive(cycle_trace("udds"), CAR, COLD, DRIVER, record=False)
    assert run.moments.size == 0 and run.energies.nbytes == RESULTS.itemsize < 200
