"""What is drawn for a claim: evenly, by class, and one figure at a time."""

import numpy as np
import pytest

from model.claims.collection import CLAIM_RUNS
from model.claims.draws import EVENLY, GENERATORS, draw, lattice, one_at_a_time
from model.claims.inputs import Open
from model.claims.questions import question
from model.describe.parameters import assumed_figures


def test_tornado_rows_start_from_the_base():
    asked = question("two-megawatts")
    draws, changed = one_at_a_time(asked.declared)
    assert len(draws) == len(changed) + 1
    assert draws["car"][0] == "family-hatch" and draws["mass_kg"][0] == assumed_figures("family-hatch")["mass_kg"].mid
    row = 1 + changed.index(("car", "pickup"))
    assert draws["mass_kg"][row] == assumed_figures("pickup")["mass_kg"].mid
    for row, (key, value) in enumerate(changed, 1):
        assert draws[key][row] == value


def test_draws_are_even_and_follow_the_class():
    asked = question("range-gain-in-town")
    draws = draw(asked.declared, CLAIM_RUNS, 5)
    for key, this in asked.declared.items():
        if not this.band:
            _, counts = np.unique(draws[key], return_counts=True)
            assert counts.max() - counts.min() <= 1
    pairs = np.unique(np.char.add(draws["cycle"].astype(str), draws["car"].astype(str)), return_counts=True)[1]
    assert len(pairs) == 40 and pairs.min() > 0.75 * CLAIM_RUNS / 40
    for car_class in ("city-car", "pickup"):
        figures, rows = assumed_figures(car_class)["mass_kg"], draws["car"] == car_class
        assert figures.low <= draws["mass_kg"][rows].min() and draws["mass_kg"][rows].max() <= figures.high
        # declared together: the heavier car of a class has the bigger battery and motor
        order = np.argsort(draws["mass_kg"][rows])
        assert (np.diff(draws["usable_kwh"][rows][order]) >= 0).all()
        assert (np.diff(draws["motor_peak_kw"][rows][order]) >= 0).all()


@pytest.mark.parametrize("runs", GENERATORS)
def test_every_lattice_is_a_latin_hypercube(runs):
    shares = lattice({key: Open((0.0, 0.5, 1.0), band=True) for key in "abcdefghij"}, runs, 3)
    for share in shares.values():
        assert sorted((share * runs).astype(int)) == list(range(runs))
    assert np.abs(np.corrcoef(list(shares.values())) - np.eye(10)).max() < 0.1


def test_what_is_said_moves_no_open_share_and_each_is_drawn_evenly():
    usual, said = (question("motorway-range", settings).declared for settings in ({}, {"cabin": "yes", "car": "van"}))
    for key in EVENLY:
        shares = [draw(inputs, 607, 3).shares[key] for inputs in (usual, said)]
        assert (shares[0] == shares[1]).all() and sorted((shares[0] * 607).astype(int)) == list(range(607))
