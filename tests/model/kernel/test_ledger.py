"""The books close for every drive, and they are a test: whatever is booked wrongly is found out."""

from dataclasses import fields, replace
from itertools import product

import numpy as np
import pytest

from model.describe.parameters import car_from, class_labels
from model.describe.scenario import Conditions, Driver
from model.kernel.ledger import Ledger, total
from model.kernel.run import drive, ledger_of
from model.kernel.savings import evaluate
from model.traces.cycles import CYCLES, cycle_trace
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


def books(change=None, **trace):
    """The books of the drive, with what is booked changed after the drive was computed."""
    run = drive(HILLS, CAR, BUSY, Driver())
    if change:
        change(run)
    return ledger_of(run, replace(HILLS, **trace))


A_MILLIONTH_MORE = 1 + 1e-6


def more(name, where=lambda values: values == values):
    """The books with a millionth more of one recorded quantity."""

    def change(run):
        values = run.moments[name]
        run.moments[name] = np.where(where(values), A_MILLIONTH_MORE, 1) * values

    return books(change)


def more_slowing(name):
    """The books with a millionth more of what friction or engine took, and of what was asked of them."""

    def change(run):
        by = getattr(run, name)[0] * (A_MILLIONTH_MORE - 1)
        run.moments["wheel_n"] -= by
        if name == "engine_drag_n":
            run.moments["engine_drag_n"] += by

    return books(change)


def more_accessories(run):
    run.cars["accessory_w"] *= A_MILLIONTH_MORE


TAMPERED = {
    "cells_given": lambda: more("cell_w", lambda power: power > 0),
    "cells_taken": lambda: more("cell_w", lambda power: power < 0),
    "air": lambda: more("air_n"),
    "rolling": lambda: more("rolling_n"),
    "friction_brakes": lambda: more_slowing("friction_n"),
    "climb": lambda: books(elevation_m=HILLS.elevation_m * A_MILLIONTH_MORE),
    "kinetic": lambda: books(speed_mps=HILLS.speed_mps * A_MILLIONTH_MORE),
    "motor_inverter": lambda: more("motor_loss_w"),
    "gear": lambda: books(lambda run: run.moments.__setitem__("shaft_n", gear_lossier(run))),
    "cell": lambda: more("cell_loss_w"),
    "accessories": lambda: books(more_accessories),
    "cabin": lambda: more("cabin_w"),
    "pack_heater": lambda: more("pack_heater_w"),
    "engine_drag": lambda: more_slowing("engine_drag_n"),
    "engine_given": lambda: more("engine_w"),
}


def gear_lossier(run):
    """Forces at the shaft that leave a millionth more in the gear."""
    at_wheels = np.maximum(run.wheel_n, 0) - run.motor_n
    return at_wheels - (at_wheels - run.shaft_n) * A_MILLIONTH_MORE


@pytest.mark.parametrize("entry", [entry.name for entry in fields(Ledger)])
def test_a_millionth_booked_wrongly_is_found_out(entry):
    assert books().error_share < CLOSED
    tampered = TAMPERED[entry]()
    assert getattr(tampered, entry) == pytest.approx(getattr(books(), entry), rel=3e-6)
    assert tampered.error_share > CLOSED


@pytest.mark.parametrize("entry", [entry.name for entry in fields(Ledger)])
def test_an_entry_left_out_is_found_out(entry):
    assert replace(books(), **{entry: 0.0}).error_share > 1e-3


@pytest.mark.parametrize("law", ["air_n", "rolling_n", "cabin_w"], ids=["air", "rolling", "cabin"])
def test_a_law_that_booked_one_thing_and_used_another_is_found_out(law):
    """What was used is in the drive; what is booked is a hundredth more of it."""
    assert books(lambda run: run.moments.__setitem__(law, run.moments[law] * 1.01)).error_share > 1e-4


def test_throughput_is_half_of_all_that_is_booked():
    ledger = Ledger(10, 4, 3, 2, 1, -2, 0, 1, 0, 0, 1, 0)
    assert ledger.throughput == (14 + 10) / 2
    assert ledger.error_share == 0
    assert replace(ledger, cells_given=11).error_share == pytest.approx(1 / 12.5)
    assert Ledger(*[0.0] * 12).error_share == 0


def test_a_power_adds_up_over_steps():
    assert total(np.array([1.0, 2.0]), np.array([10.0, 5.0])) == 20
    assert total(np.array(3.0), np.array([10.0, 5.0])) == 45
