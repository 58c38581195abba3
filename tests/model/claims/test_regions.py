"""Conditions under which a claim is true: their steps, and that chance names none."""

import numpy as np

from model.claims.draws import lattice
from model.claims.inputs import Open
from model.claims.regions import Bins, conditions_of, found_on, inside_of


def test_a_band_is_cut_at_the_same_places_whatever_was_drawn():
    band = Open((0.5, 0.8, 1.0), band=True)
    drawn = [band.at(lattice({"lift_off_mps2": band}, 607, seed)["lift_off_mps2"]) for seed in range(5)]
    (steps,) = {Bins.of("lift_off_mps2", column, band).steps for column in drawn}
    assert steps[0].values[0] == 0.5 and steps[-1].values[1] == 1.0


def test_a_step_too_close_to_call_is_not_named():
    true = np.arange(400) % 100 < np.repeat([90, 77, 20, 20], 100)
    steps = Bins("cycle", tuple("abcd"), np.repeat(range(4), 100), ordered=False)
    assert steps.true_part(true, np.ones(400, dtype=bool), 0.75) == (0,)


def test_conditions_that_hold_only_on_the_cars_they_were_found_on_are_not_named():
    """Found on every half by chance: twelve choices of eight values each, and nothing in them."""
    random = np.random.RandomState(3)
    true = random.random_sample(400) < 0.5
    bins = [Bins("car", tuple(range(8)), random.randint(0, 8, 400), False) for _ in range(12)]
    half = np.arange(400) < 200
    found = found_on(half, true, bins, 0.75)
    inside = inside_of(found, bins)
    assert true[inside & half].mean() >= 0.75 > true[inside & ~half].mean()
    assert conditions_of(true, bins, 0.75, 3) == {}
