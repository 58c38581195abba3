"""Sentences on one slow-down: true to their numbers, with energy and time."""

from dataclasses import replace

from model.describe.parameters import car_from
from model.describe.scenario import Conditions, Driver
from model.one_stop.slow_down import compare, unneeded_dip
from model.words.quantities import Display
from pages.parts import slow_down_words as words
from tests.pages.in_app import plain

METRIC, US = Display(), Display(us=True)


def hatch(**driver):
    return car_from("family-hatch"), Conditions(), Driver(**driver)


def test_a_slow_down_is_told_with_energy_and_time():
    car, conditions, driver = hatch(lift_off_mps2=1.3)
    found = compare(80 / 3.6, 50 / 3.6, car, conditions, driver)
    title, sentences = map(plain, words.slow_down_words(found, 80.0, 50.0, 1.3, METRIC))
    assert f"{found.coast.time_s:.0f} s" in title and f"{found.regen.time_s:.0f} s" in title
    assert f"{found.friction.battery_wh:.0f} Wh" in sentences
    assert f"below {found.break_even_kmh:.0f} km/h" in sentences
    table = words.ways_table(found, US)
    assert len(table) == 3 and "Road, ft" in table


def test_without_a_break_even_the_reason_is_said():
    car, conditions, driver = hatch(lift_off_mps2=1.3)
    found = compare(80 / 3.6, 50 / 3.6, car, conditions, driver)
    same = replace(found, regen=found.coast, break_even_kmh=None)
    assert "nothing to weigh up" in words.break_even_words(same, METRIC)
    assert "any speed" in words.break_even_words(replace(found, break_even_kmh=None), METRIC)


def test_an_unneeded_dip_costs_more_on_friction_brakes():
    car, conditions, driver = hatch()
    dip = unneeded_dip(120 / 3.6, 110 / 3.6, car, conditions, driver)
    text = plain(words.dip_words(dip, 120.0, 110.0, METRIC))
    friction = dip["friction"].battery_wh - dip["steady"].battery_wh
    assert f"costs {friction:.0f} Wh on friction brakes" in text
    cheaper = replace(dip["regen"], battery_wh=dip["steady"].battery_wh - 2)
    assert "saves 2.0 Wh where the motor" in plain(words.dip_words(dip | {"regen": cheaper}, 120.0, 110.0, METRIC))
