"""The books close for every drive, and they are a test: whatever is booked wrongly is found out."""

from dataclasses import fields, replace
from importlib import import_module
from itertools import product

import numpy as np
import pytest

from model.cycles import CYCLES, cycle_trace
from model.ledger import Ledger, total
from model.parameters import car_from, class_labels
from model.savings import evaluate
from model.scenario import Conditions, Driver
from model.simulation import ledger_of, solve
from model.wheel_demand import wheel_demand
from tests.made_traces import ride

CLOSED = 1e-9
SITUATIONS = {
    "warm": (Conditions(ambient_c=20.0, cabin=False), Driver(), {}),
    "winter, cabin on": (Conditions(ambient_c=-12.0, surface="snow", soc_start=0.8, payload_kg=150.0), Driver(), {}),
    "full": (Conditions(ambient_c=30.0, soc_start=1.0), Driver(comes_to_rest=True), {}),
    "friction pedal on ice": (
        Conditions(ambient_c=-25.0, surface="ice", wind_kmh=-60.0, altitude_m=2000.0),
        Driver(lift_off_mps2=0.7),
        {"brake_pedal": "friction", "zero_torque_drag_share": 0.3},
    ),
    "measured road load": (
        Conditions(ambient_c=5.0, preconditioned=True, plugged_in=False),
        Driver(),
        {"f0_n": 130.0, "f1_n_per_mps": -1.0, "f2_n_per_mps2": 0.45},
    ),
}


@pytest.mark.parametrize("situation", SITUATIONS)
def test_the_books_close_for_every_class_on_every_cycle(situation):
    conditions, driver, stated = SITUATIONS[situation]
    for car_class, cycle in product(class_labels(), CYCLES):
        result = evaluate(cycle_trace(cycle), car_from(car_class, stated), conditions, driver)
        error = max(result.ledger.error_share, ledger_of(result.friction_only, result.trace).error_share)
        assert error < CLOSED, f"{car_class} on {cycle}: {error:.1e}"


HILLS = ride(
    np.concatenate([np.linspace(20, 90, 40), np.full(60, 90.0), np.linspace(90, 10, 30), np.full(50, 10.0)]),
    slope=np.repeat([0.03, 0.05, -0.07, 0.02], [40, 60, 40, 39]),
)
BUSY = Conditions(ambient_c=-8.0)
CAR = car_from("family-hatch", {"pack_heater_kw": 3.0, "sustain_soc": 0.595, "engine_drag_kw": 5.0})
"""A car that has everything: a heated battery, and an engine that keeps the charge."""


def test_every_entry_is_in_use_in_the_drive_that_is_broken_below():
    result = evaluate(HILLS, CAR, BUSY, Driver())
    for entry in fields(Ledger):
        share = abs(getattr(result.ledger, entry.name)) / result.ledger.throughput
        assert share > 2e-3, f"{entry.name} is {share:.1e} of what was turned over"
    assert result.ledger.error_share < CLOSED


def books(change_demand=None, change_run=None, change_trace=None):
    """The books of the drive, with what is booked changed after the drive was computed."""
    demand = wheel_demand(HILLS, CAR, BUSY)
    run = solve(demand, CAR, BUSY, Driver())
    if change_run:
        run = replace(run, **change_run(run))
    if change_demand:
        run = replace(run, demand=replace(demand, **change_demand(demand)))
    return ledger_of(run, replace(HILLS, **change_trace) if change_trace else HILLS)


A_MILLIONTH_MORE = 1 + 1e-6
TAMPERED = {
    "cells_given": lambda: books(
        change_run=lambda run: {"cell_w": np.where(run.cell_w > 0, A_MILLIONTH_MORE, 1) * run.cell_w}
    ),
    "cells_taken": lambda: books(
        change_run=lambda run: {"cell_w": np.where(run.cell_w < 0, A_MILLIONTH_MORE, 1) * run.cell_w}
    ),
    "air": lambda: books(change_demand=lambda demand: {"air_n": demand.air_n * A_MILLIONTH_MORE}),
    "rolling": lambda: books(change_demand=lambda demand: {"rolling_n": demand.rolling_n * A_MILLIONTH_MORE}),
    "friction_brakes": lambda: books(
        change_run=lambda run: {"braking_n": run.braking_n + run.friction_n * (A_MILLIONTH_MORE - 1)}
    ),
    "climb": lambda: books(change_trace={"elevation_m": HILLS.elevation_m * A_MILLIONTH_MORE}),
    "kinetic": lambda: books(change_trace={"speed_mps": HILLS.speed_mps * A_MILLIONTH_MORE}),
    "motor_inverter": lambda: books(change_run=lambda run: {"motor_loss_w": run.motor_loss_w * A_MILLIONTH_MORE}),
    "gear": lambda: books(change_run=lambda run: {"gear_loss_w": run.gear_loss_w * A_MILLIONTH_MORE}),
    "cell": lambda: books(change_run=lambda run: {"cell_loss_w": run.cell_loss_w * A_MILLIONTH_MORE}),
    "accessories": lambda: books(
        change_demand=lambda demand: {"accessories_w": demand.accessories_w * A_MILLIONTH_MORE}
    ),
    "cabin": lambda: books(change_demand=lambda demand: {"cabin_w": demand.cabin_w * A_MILLIONTH_MORE}),
    "pack_heater": lambda: books(change_run=lambda run: {"pack_heater_w": run.pack_heater_w * A_MILLIONTH_MORE}),
    "engine_drag": lambda: books(
        change_run=lambda run: {
            "engine_drag_n": run.engine_drag_n * A_MILLIONTH_MORE,
            "braking_n": run.braking_n + run.engine_drag_n * (A_MILLIONTH_MORE - 1),
        }
    ),
    "engine_given": lambda: books(change_run=lambda run: {"engine_w": run.engine_w * A_MILLIONTH_MORE}),
}


@pytest.mark.parametrize("entry", [entry.name for entry in fields(Ledger)])
def test_a_millionth_booked_wrongly_is_found_out(entry):
    assert books().error_share < CLOSED
    tampered = TAMPERED[entry]()
    assert getattr(tampered, entry) == pytest.approx(getattr(books(), entry), rel=3e-6)
    assert tampered.error_share > CLOSED


@pytest.mark.parametrize("entry", [entry.name for entry in fields(Ledger)])
def test_an_entry_left_out_is_found_out(entry):
    assert replace(books(), **{entry: 0.0}).error_share > 1e-3


@pytest.mark.parametrize("law", ["air_n", "rolling_n", "cabin_power_w"], ids=["air", "rolling", "cabin"])
def test_a_law_that_booked_one_thing_and_used_another_is_found_out(law, monkeypatch):
    """The law gives a different answer the second time it is asked: in the books, after the drive."""
    laws = import_module("model.wheel_demand")
    honest = getattr(laws, law)
    demand = wheel_demand(HILLS, CAR, BUSY)
    run = solve(demand, CAR, BUSY, Driver())
    monkeypatch.setattr(laws, law, lambda *given: honest(*given) * 1.01)
    told = wheel_demand(HILLS, CAR, BUSY)
    booked = replace(demand, air_n=told.air_n, rolling_n=told.rolling_n, cabin_w=told.cabin_w)
    assert ledger_of(replace(run, demand=booked), HILLS).error_share > 1e-4


def test_throughput_is_half_of_all_that_is_booked():
    ledger = Ledger(10, 4, 3, 2, 1, -2, 0, 1, 0, 0, 1, 0)
    assert ledger.throughput == (14 + 10) / 2
    assert ledger.error_share == 0
    assert replace(ledger, cells_given=11).error_share == pytest.approx(1 / 12.5)
    assert Ledger(*[0.0] * 12).error_share == 0


def test_a_power_adds_up_over_steps():
    assert total(np.array([1.0, 2.0]), np.array([10.0, 5.0])) == 20
    assert total(np.array(3.0), np.array([10.0, 5.0])) == 45
