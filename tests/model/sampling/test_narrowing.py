"""What is printed or shown narrows the drawn cars."""

import numpy as np
import pytest

from model.describe.scenario_io import starting_drives
from model.out.answers import Asked, drive_answer
from model.sampling.drives import draws_of, drive, effective_cars, samples_of
from model.sampling.narrowing import chosen_by, effective_number
from tests.refused import refuses

TOWN = starting_drives()["town"][2]


def test_drawn_again_in_proportion():
    assert chosen_by(np.array([0.0, 3.0, 1.0, 0.0])).tolist() == [1, 1, 1, 2]
    assert effective_number(np.ones(7)) == pytest.approx(7) and effective_number(np.array([1.0, 0.0])) == 1


def test_what_the_car_shows_of_its_drive_narrows_the_drive():
    result = drive(TOWN)
    wide = samples_of(TOWN, result).net_kwh
    shown = TOWN.with_setting("shown_wh_per_km", 1100 * result.net_kwh / result.distance_km)
    narrow = samples_of(shown, result).net_kwh
    assert np.std(narrow) < 0.5 * np.std(wide)
    assert np.median(narrow) == pytest.approx(1.1 * result.net_kwh, rel=0.02)


def test_it_is_said_how_many_cars_are_left():
    """In an answer's band, too; as many as were drawn where nothing is known."""
    assert effective_cars(TOWN) is None and "effective_cars" not in drive_answer(Asked(TOWN, band_runs=200))["band"]
    middle = drive(TOWN)
    shown = TOWN.with_setting("shown_wh_per_km", 1000 * middle.net_kwh / middle.distance_km)
    both = shown.with_setting("printed_range_km", 200.0)
    assert 10 < effective_cars(both) < effective_cars(shown) < 200
    assert drive_answer(Asked(shown, band_runs=200))["band"]["effective_cars"] == effective_cars(shown)


def test_a_printed_range_counts_and_one_that_no_car_has_is_refused():
    printed = TOWN.with_setting("printed_range_km", 150.0)
    assert np.median(draws_of(printed, 200)["usable_kwh"]) < np.median(draws_of(TOWN, 200)["usable_kwh"])
    with refuses(r"printed_range_km .*: 1900 km does not fit this car; cars like it come to"):
        draws_of(TOWN.with_setting("printed_range_km", 1900.0), 200)
