"""The drive as it is described, in words."""

from dataclasses import replace

import pytest

from model.describe.parameters import assumed_figures, class_labels
from model.describe.scenario import SETTINGS, Conditions, Leg, Scenario
from model.describe.scenario_io import starting_drives
from model.traces.habits import HABITS
from model.words.quantities import Display
from pages.parts import description
from pages.parts.typography import NO_BREAK

METRIC, US = Display(), Display(us=True)
TOWN = starting_drives()["town"][2]


def test_car_words_say_that_figures_were_changed():
    assert description.car_words(TOWN, METRIC) == "city car"
    assert description.car_words(TOWN.with_setting("mass_kg", 1300.0), METRIC) == "city car, adjusted"
    assert description.car_words(TOWN.with_setting("brake_pedal", "friction"), METRIC) == "city car"
    assert description.car_words(replace(TOWN, car_class="large-suv"), METRIC) == "large SUV"


def test_the_drive_is_named_until_its_road_is_changed():
    assert description.drive_words(TOWN, METRIC) == "flat town commute"
    assert description.drive_words(TOWN.with_setting("ambient_c", -5.0), METRIC) == "flat town commute"
    changed = TOWN.with_leg(0, "distance_km", 3.0)
    assert description.drive_id(changed) is None
    assert description.drive_words(changed, METRIC) == "drive of 20 km"
    assert description.drive_words(replace(changed, return_trip=False), US) == "drive of 6.2 mi"


def test_season_words():
    spring = TOWN.with_setting("ambient_c", TOWN.year.spring_c)
    assert description.season_words(spring.conditions, spring.year, METRIC) == "spring, 11 °C"
    frost = TOWN.with_setting("ambient_c", -7.4).with_setting("surface", "snow").with_setting("cabin", False)
    assert description.season_words(frost.conditions, frost.year, METRIC) == "−7.4 °C, snow, cabin off"
    assert description.season_words(frost.conditions, frost.year, US).startswith("19 °F")


def leg_line(leg: Leg) -> str:
    return description.leg_words(leg, METRIC).replace(NO_BREAK, " ")


def test_leg_words_count_and_leave_out_what_is_not_there():
    leg = Leg(distance_km=4.2, speed_kmh=45, stops=1, slow_downs=6, climb_m=0, descent_m=60)
    assert leg_line(leg) == "4.2 km at 45 km/h, 1 stop, 6 slow-downs, 60 m down"
    assert leg_line(Leg(stops=0, slow_downs=0, surface="ice")) == "5.0 km at 50 km/h, nothing in the way, ice"


def test_habits_are_named_when_they_are_not_as_usual():
    assert description.habits_words(Scenario(), METRIC) == "Habits as usual, charged to 60 %"
    late = Scenario().with_setting("looks_ahead", "late").with_setting("steady_foot", "restless")
    assert description.habits_words(late, METRIC) == "Slows down late, holds speed restlessly, charged to 60 %"
    laden = Scenario().with_setting("payload_kg", 150.0).with_setting("soc_start", 1.0)
    assert description.habits_words(laden, US) == "Habits as usual, 331 lb load, charged to 100 %"


@pytest.mark.parametrize("key", description.HABIT_NUMBERS)
def test_the_number_beside_a_habit_is_the_builders(key):
    name = description.HABIT_NUMBERS[key]
    for choice, value in HABITS[name].items():
        number = 100 * value if name.endswith("_share") else value
        assert f"{number:g}" in description.habit_number(key, choice, METRIC)


@pytest.mark.parametrize("name", class_labels())
def test_provenance_says_the_band_and_the_kind_of_knowledge(name):
    for key, assumed in assumed_figures(name).items():
        sentence = description.provenance(SETTINGS[key], assumed, METRIC)
        kind = f"{assumed.kind.capitalize()}: "
        assert kind in sentence
        band = sentence[: sentence.index(kind)]
        assert (" to " in band) == (assumed.low != assumed.high)


def test_provenance_of_the_mass():
    assumed = assumed_figures("city-car")["mass_kg"]
    assert description.provenance(SETTINGS["mass_kg"], assumed, METRIC).startswith("1050 to 1350 kg. Assumed: ")
    assert description.provenance(SETTINGS["mass_kg"], assumed, US).startswith("2315 to 2976 lb. Assumed: ")


def test_the_way_back_says_how_long_the_car_stands_and_whether_on_a_plug():
    assert description.way_back_words(Conditions(), METRIC) == "after 8 h"
    plugged_in = Conditions(stands_h=2.5, stands_plugged_in=True)
    assert description.way_back_words(plugged_in, METRIC) == "after 2.5 h, plugged in"
    assert description.way_back_words(Conditions(stands_h=0.0), METRIC) == "at once"
