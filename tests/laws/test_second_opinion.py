"""The kernel against the plain loop of the same equations."""

from dataclasses import replace

import numpy as np
import pytest

from model.cycles import cycle_trace
from model.parameters import car_from
from model.savings import evaluate
from model.scenario import Conditions, Driver
from model.simulation import ledger_of
from tests import reference_loop
from tests.made_traces import hill_and_town, ride, steady, stop_and_go

WITHIN, WHERE_THE_BATTERY_BINDS = 1e-9, 1e-5
"""Of the energy turned over [1]. The sweeps end when charge moves by less than a millionth; where the battery holds the
motor back, that shows."""
WARM = Conditions(ambient_c=20.0, cabin=False, tyres_warm="yes")
COLD = Conditions(ambient_c=-12.0, soc_start=0.8)
DESCENT = steady(60, 607, slope=-0.06)
CLIMB = ride(np.append(np.full(900, 60.0), np.linspace(60, 0, 10)), slope=0.05)
SITUATIONS = {
    "warm": ("family-hatch", {}, WARM, Driver(), cycle_trace("wltc3b")),
    "hard driving": ("performance-saloon", {}, WARM, Driver(), cycle_trace("us06")),
    "battery limits in the cold": ("small-hatch", {}, COLD, Driver(), cycle_trace("wltc3b")),
    "heat pump, warmed up from the battery": (
        "large-suv", {}, Conditions(ambient_c=-3.0, parked_c=1.0, preconditioned=True, plugged_in=False), Driver(),
        cycle_trace("udds"),
    ),
    "a climb in thin air": ("van", {}, replace(WARM, altitude_m=1200.0), Driver(), CLIMB),
    "cooling": (
        "compact-crossover", {"acceptance_level": 0.4}, Conditions(ambient_c=34.0), Driver(), cycle_trace("nycc"),
    ),
    "friction-only pedal": (
        "family-hatch", {"brake_pedal": "friction"}, Conditions(cabin=False, wind_kmh=30.0, payload_kg=200.0),
        Driver(lift_off_mps2=0.6), cycle_trace("udds"),
    ),
    "full battery, long descent": ("family-hatch", {}, Conditions(ambient_c=15.0, soc_start=0.97), Driver(), DESCENT),
    "rear wheels on snow": (
        "performance-saloon", {"driven_axle": "rear"}, Conditions(ambient_c=-6.0, surface="snow", grip_level=-0.5),
        Driver(comes_to_rest=True), stop_and_go(6),
    ),
    "measured road load": (
        "van", {"f0_n": 180.0, "f1_n_per_mps": -1.5, "f2_n_per_mps2": 0.8}, COLD, Driver(), cycle_trace("nedc"),
    ),
    "battery of a hybrid": (
        "family-hatch", {"usable_kwh": 1.3, "cell_resistance_share": 0.006}, Conditions(cabin=False, soc_start=0.7),
        Driver(), stop_and_go(5, 40.0),
    ),
    "hybrid": ("full-hybrid", {}, Conditions(ambient_c=5.0), Driver(), hill_and_town()),
    "hybrid whose engine slows too": (
        "full-hybrid", {"engine_drag_kw": 8.0}, Conditions(soc_start=0.55), Driver(), DESCENT,
    ),
    "trailer": ("large-suv", {}, Conditions(trailer_kg=1200.0, wind_kmh=-20.0), Driver(), hill_and_town()),
}  # fmt: skip


def shown(ledger, run):
    """What the kernel found, by the loop's names [J]."""
    left = {f"left_by_{name}": float(joules[0]) for name, joules in run.left_by_limit_j.items()}
    return left | {
        "out": float(run.terminal_out_j[0]),
        "in": float(run.terminal_in_j[0]),
        "taken": ledger.cells_taken,
        "cell": ledger.cell,
        "engine": ledger.engine_given,
        "cabin": ledger.cabin,
        "heater": ledger.pack_heater,
        "motor_loss": ledger.motor_inverter,
        "gear": ledger.gear,
        "braking": float(run.wheel_j(run.braking_n)[0]),
        "motor": float(run.wheel_j(run.wheel_motor_n)[0]),
        "engine_drag": ledger.engine_drag,
        "friction": ledger.friction_brakes,
    }


def check(trace, car, conditions, driver):
    """Hold the kernel's two runs against the loop's; raises what either refuses."""
    result = evaluate(trace, car, conditions, driver)
    for regen, run in ((True, result.run), (False, result.friction_only)):
        loop = reference_loop.drive(result.trace, car, conditions, driver, regen)
        ledger = ledger_of(run, result.trace)
        found = shown(ledger, run)
        within = WHERE_THE_BATTERY_BINDS if found.get("left_by_battery") else WITHIN
        names = ("out", "in", "braking", "friction")
        wrong = {
            name: (found.get(name, 0.0), loop.get(name, 0.0))
            for name in names
            if not abs(found.get(name, 0.0) - loop.get(name, 0.0)) <= within * ledger.throughput
        }
        assert not wrong, (regen, wrong)
        assert run.soc[0, -1] == pytest.approx(loop["soc"], abs=2e-6)
        assert run.pack_c[0, -1] == pytest.approx(loop["pack_c"], abs=1e-2)
    return result


@pytest.mark.parametrize("situation", SITUATIONS)
def test_in_chosen_situations_the_kernel_agrees_with_the_plain_loop(situation):
    car_class, stated, conditions, driver, trace = SITUATIONS[situation]
    assert check(trace, car_from(car_class, stated), conditions, driver).followed


def test_the_situations_reach_the_battery_limit():
    for situation in ("battery limits in the cold", "full battery, long descent"):
        car_class, stated, conditions, driver, trace = SITUATIONS[situation]
        result = evaluate(trace, car_from(car_class, stated), conditions, driver)
        assert result.limits_kwh["battery"] > 0.2 * result.wheel_friction_kwh
