"""Lift-off on hills in sentences from numbers."""

from model.describe.scenario_io import starting_drives
from model.lift_off.hills import held_downhills, slowing_on_hills
from model.words.quantities import Display
from pages.parts import lift_off_hill_words as words
from tests.pages.in_app import plain

METRIC = Display()
TOWN = starting_drives()["town"][2]


def test_hills_are_told_by_their_numbers():
    slowing = slowing_on_hills(TOWN, 50.0, (1.3, 0.2))
    title, sentences = words.hill_words(slowing, 1.3, 50.0, METRIC)
    assert plain(title) == "1.3 m/s² on a flat road is 0.7 on a 6 % downhill and 1.9 on a 6 % climb"
    assert plain(sentences).startswith("At 50 km/h.")
    assert "not enough to hold" in words.hill_words(slowing, 0.2, 50.0, METRIC)[0]
    icy = slowing_on_hills(TOWN.with_setting("surface", "ice"), 50.0, (1.5,))
    assert "are set." in words.hill_words(icy, 1.5, 50.0, METRIC)[1]


def test_a_hill_that_the_motor_cannot_hold_says_so():
    ready = words.held_table(held_downhills(TOWN, 50.0), METRIC)
    full = words.held_table(held_downhills(TOWN.with_setting("soc_start", 1.0), 50.0), METRIC)
    assert not ready["Motor can take"].str.contains("brake too").any()
    assert full["Motor can take"].str.contains("brake too").any()
    shallow = held_downhills(TOWN, 120.0)
    assert words.held_table(shallow, METRIC)["Held by"].iloc[0] == "rolling"
