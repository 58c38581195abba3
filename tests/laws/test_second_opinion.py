"""The kernel against the plain loop of the same equations: in chosen situations, and whatever is described."""

import ast
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from model.describe.parameters import car_from
from model.describe.scenario import SURFACES, Conditions, Driver, Leg, Scenario
from model.kernel.run import drive, ledger_of
from model.sampling.drives import trace_of
from model.traces.cycles import cycle_trace
from tests import reference_loop
from tests.laws.test_energy_laws import CONDITIONS, DRIVERS, cars, traces
from tests.made_traces import hill_and_town, ride, steady, stop_and_go

WITHIN = 1e-9
"""Of the energy turned over, and of charge [1]."""
WITHIN_K = 1e-6
"""Of the battery's temperature [K]."""
WARM = Conditions(ambient_c=20.0, cabin=False, tyres_warm="yes")
COLD = Conditions(ambient_c=-12.0, soc_start=0.8)
DESCENT = steady(60, 607, slope=-0.06)
CLIMB = ride(np.append(np.full(900, 60.0), np.linspace(60, 0, 10)), slope=0.05)
BACK = trace_of(Scenario(legs=(Leg(distance_km=4.3, climb_m=30.0),), return_trip=True))
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
    "battery heater": ("family-hatch", {"pack_heater_kw": 4.0}, COLD, Driver(), cycle_trace("wltc3b")),
    "back after two hours in the cold": (
        "small-hatch", {"f0_n": 110.0, "f1_n_per_mps": 1.2, "f2_n_per_mps2": 0.4}, replace(COLD, stands_h=2.0),
        Driver(), BACK,
    ),
    "back from a plug": (
        "family-hatch", {}, replace(COLD, preconditioned=True, stands_plugged_in=True), Driver(), BACK,
    ),
    "trailer": ("large-suv", {}, Conditions(trailer_kg=1200.0, wind_kmh=-20.0), Driver(), hill_and_town()),
}  # fmt: skip


def test_the_loop_shares_nothing_with_the_model_but_descriptions():
    tree = ast.parse(Path(reference_loop.__file__).read_text("utf-8"))
    imported = [node for node in ast.walk(tree) if isinstance(node, ast.ImportFrom | ast.Import)]
    names = {name.name for node in imported for name in node.names if "model" in ast.unparse(node)}
    assert names == {"Car", "Conditions", "Driver", "Trace"}


def shown(run, ledger):
    """What the kernel found, by the loop's names [J]."""
    return {f"left_by_{name}": float(joules[0]) for name, joules in run.left_by_limit_j.items()} | {
        "out": run.energies[0].out_j,
        "in": run.energies[0].in_j,
        "taken": ledger.cells_taken,
        "cell": ledger.cell,
        "engine": ledger.engine_given,
        "cabin": ledger.cabin,
        "heater": ledger.pack_heater,
        "motor_loss": ledger.motor_inverter,
        "gear": ledger.gear,
        "braking": float(run.wheel_j(run.braking_n)[0]),
        "motor": float(run.wheel_j(run.motor_n)[0]),
        "engine_drag": ledger.engine_drag,
        "friction": ledger.friction_brakes,
    }


def check(trace, car, conditions, driver):
    """Hold the kernel against the loop, with regeneration and without; gives the run with it."""
    runs = [drive(trace, car, conditions, driver, regen=regen) for regen in (True, False)]
    for run, regen in zip(runs, (True, False), strict=True):
        loop = reference_loop.drive(trace, car, conditions, driver, regen)
        ledger = ledger_of(run, trace)
        found = shown(run, ledger)
        assert all(loop[name] == 0 for name in loop if name.startswith("left_by_") and name not in found)
        expected = {name: loop.get(name, 0.0) for name in found}
        assert found == pytest.approx(expected, rel=0, abs=WITHIN * ledger.throughput)
        assert run.energies[0].soc_end == pytest.approx(loop["soc"], rel=0, abs=WITHIN)
        assert run.energies[0].pack_c_end == pytest.approx(loop["pack_c"], rel=0, abs=WITHIN_K)
    return runs[0]


@pytest.mark.parametrize("situation", SITUATIONS)
def test_in_chosen_situations_the_kernel_agrees_with_the_plain_loop(situation):
    car_class, stated, conditions, driver, trace = SITUATIONS[situation]
    check(trace, car_from(car_class, stated), conditions, driver)


def test_next_to_no_coldness_counts_too():
    """What stood for less than a second is hardly colder, and on a drive of seconds that is still to be seen."""
    uphill = replace(ride(np.linspace(0.0, 10.8, 9), slope=0.1), warmed_up=True, heading=np.repeat([1, -1], 4))
    car = car_from("city-car", {"motor_loss_fixed": 0.0})
    check(uphill, car, Conditions(ambient_c=0.0, cabin=False, stands_h=1e-7), Driver())


def test_the_situations_reach_the_battery_limit():
    for situation in ("battery limits in the cold", "full battery, long descent"):
        car_class, stated, conditions, driver, trace = SITUATIONS[situation]
        run = drive(trace, car_from(car_class, stated), conditions, driver)
        assert run.left_by_limit_j["battery"][0] > 0.2 * run.wheel_j(run.friction_n)[0]


UNLIKELY = {
    "heat_source": st.sampled_from(["resistive", "heat_pump", "engine"]),
    "driven_axle": st.sampled_from(["front", "rear", "all"]),
    "front_regen_share": st.none() | st.floats(0.2, 0.8),
    "regen_peak_kw": st.none() | st.floats(5, 100),
    "pack_heater_kw": st.just(0.0) | st.floats(1, 6),
    "engine_drag_kw": st.just(0.0) | st.floats(1, 20),
}
AROUND = {
    "tyres": st.sampled_from(["any", "summer", "winter"]),
    "tyres_warm": st.sampled_from(["by_drive", "yes", "no"]),
    "battery_temp_c": st.none() | st.floats(-20, 40),
    "parked_c": st.none() | st.floats(-20, 30),
    "trailer_kg": st.just(0.0) | st.floats(100, 1500),
    "trailer_drag_area_m2": st.floats(0, 2),
    "stands_h": st.floats(0, 12),
    "stands_plugged_in": st.booleans(),
}


@st.composite
def measured(draw, trace):
    """The trace with some of what a recording or a described drive brings along."""
    steps, more = len(trace.step_s), {}

    def along(low, high, points):
        ends = draw(st.lists(st.floats(low, high), min_size=3, max_size=3))
        return np.interp(np.linspace(0, 1, points), [0, 0.5, 1], ends)

    if draw(st.booleans()):
        more["surface"] = along(0, len(SURFACES) - 0.01, steps).astype(int)
    if draw(st.booleans()):
        more["heading"] = np.where(np.arange(steps) < steps / 2, 1, -1)
    if draw(st.booleans()):
        more["lift_off_mps2"] = along(0, 2.5, steps)
    if draw(st.booleans()):
        more["ambient_c"] = along(-15, 35, steps + 1)
    if draw(st.booleans()):
        more["battery_temp_c"] = along(-10, 30, steps + 1)
    if draw(st.booleans()):
        more["cabin_w"] = along(0, 4000, steps)
    if draw(st.booleans()):
        more["time_s"] = np.cumsum(np.append(0.0, along(0.5, 2.0, steps)))
    return replace(trace, warmed_up=draw(st.booleans()), **more)


@settings(max_examples=settings.default.max_examples // 2)
@given(st.data(), traces(), cars(), CONDITIONS, DRIVERS)
def test_whatever_is_described_the_kernel_agrees_with_the_plain_loop(data, trace, car, conditions, driver):
    trace = data.draw(measured(trace))
    car = replace(car, **{key: data.draw(figure) for key, figure in UNLIKELY.items()})
    conditions = replace(conditions, **{key: data.draw(figure) for key, figure in AROUND.items()})
    try:
        check(trace, car, conditions, driver)
    except reference_loop.TooWeak:
        assume(False)
