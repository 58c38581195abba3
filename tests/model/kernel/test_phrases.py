"""Seven phrases for one energy."""

from itertools import product

import numpy as np
import pytest

from model.describe.parameters import car_from
from model.describe.scenario import Driver
from model.describe.scenario_io import starting_drives
from model.kernel.books import Books, books_of
from model.kernel.phrases import PHRASES, convert, said, worked_example
from model.kernel.savings import evaluate, range_gain_share
from model.sampling.drives import drive
from model.traces.cycles import LABORATORY, cycle_trace
from tests.refused import refuses

HILLY = drive(starting_drives()["suburb-hill"][2])
FLAT = evaluate(cycle_trace("udds"), car_from("family-hatch"), LABORATORY, Driver())


def test_the_books_are_those_of_the_result():
    books = books_of(HILLY)
    assert said(books, "recovered") == pytest.approx(HILLY.recovered_share, rel=1e-12)
    assert said(books, "range_lost") == pytest.approx(HILLY.saved_share, rel=1e-12)
    assert said(books, "range_gain") == pytest.approx(HILLY.range_gain, rel=1e-12)
    assert said(books, "electric_braking") == pytest.approx(HILLY.captured_share, rel=1e-12)
    assert said(books, "of_braking") == pytest.approx(HILLY.battery_in_kwh / HILLY.wheel_braking_kwh, rel=1e-12)
    assert 0 < said(books, "of_climb") < 1


def test_recovered_and_saved_are_kept_apart():
    books = books_of(FLAT)
    assert books.spared > 0
    assert said(books, "range_lost") > said(books, "recovered") + 0.005
    nothing_spared = Books(**(vars(books) | {"spared": 0.0}))
    assert said(nothing_spared, "range_lost") == pytest.approx(said(nothing_spared, "recovered"), rel=1e-15)


@pytest.mark.parametrize("one, other", list(product(PHRASES, repeat=2)))
def test_each_phrase_into_each_other_and_back(one, other):
    books = books_of(HILLY)
    value = 0.8 * said(books, one)
    there = convert(books, one, value)
    assert convert(books, other, there[other])[one] == pytest.approx(value, rel=1e-13)
    assert there["range_gain"] == pytest.approx(range_gain_share(there["range_lost"]), rel=1e-13)


def test_a_phrase_without_its_base_means_nothing():
    books = books_of(FLAT)
    assert said(books, "of_climb") is None and convert(books, "recovered", 0.2)["of_climb"] is None
    with refuses(r"of_climb .* means nothing on this drive"):
        convert(books, "of_climb", 0.5)
    with refuses("is not one of recovered, of_braking"):
        convert(books, "recoverd", 0.5)
    with refuses("less than nothing came back; on this drive it must be at least"):
        convert(books, "range_gain", -0.1)


def test_more_than_the_braking_can_give_shows_as_an_electric_share_above_one():
    assert convert(books_of(FLAT), "recovered", 0.6)["electric_braking"] > 1
    assert convert(books_of(FLAT), "recovered", 1.5)["range_gain"] is None


def test_books_of_many_runs_at_once():
    books = books_of(HILLY)
    many = Books(*(np.array([energy, 2 * energy]) for energy in vars(books).values()))
    for phrase in PHRASES:
        factor = 2 if phrase == "display_km" else 1
        assert said(many, phrase) == pytest.approx([said(books, phrase), factor * said(books, phrase)])


def test_the_hill_loop_contradicts_its_headline():
    found = worked_example()
    assert found["phrases"]["of_climb"] == pytest.approx(7.1 / 26.4) and round(100 * found["phrases"]["of_climb"]) == 27
    assert found["headline_share"] == 0.35
    assert found["headline_as_share_of_climb_needs_kwh"] == pytest.approx(9.24)
    assert found["mean_found_kwh_per_100_km"] == pytest.approx(found["mean_kwh_per_100_km"], abs=0.06)
    assert found["phrases"]["range_gain"] == pytest.approx(7.1 / 19.3)
