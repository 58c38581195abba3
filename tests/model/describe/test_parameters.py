"""Car classes and assumed figures: complete, ordered, with provenance."""

import pytest

from model.describe.car import CAR_FIELDS
from model.describe.parameters import (
    assumed_figures,
    car_from,
    class_labels,
    class_of_mass,
    open_figures,
    open_figures_of,
)
from model.describe.scenario import Scenario
from tests.refused import refuses

CLASSES = list(class_labels())


@pytest.mark.parametrize("car_class", CLASSES)
def test_every_middle_figure_is_usual(car_class):
    for key, item in assumed_figures(car_class).items():
        assert key not in CAR_FIELDS or CAR_FIELDS[key].is_usual(item.mid), key


def test_the_class_of_nearest_mass_stands_in_for_a_car():
    stand_ins = {1077: "city-car", 1250: "city-car", 2700: "large-suv", 3000: "pickup"}
    assert {mass_kg: class_of_mass(mass_kg) for mass_kg in stand_ins} == stand_ins


def test_a_car_has_the_middle_figures_and_what_was_stated():
    car = car_from("family-hatch", {"mass_kg": 1900.0})
    assert car.mass_kg == 1900
    assert car.drag_area_m2 == assumed_figures("family-hatch")["drag_area_m2"].mid
    assert car.f0_n is None


def test_an_unknown_class_is_refused_with_those_there_are():
    with refuses("“hovercraft” is not one of the classes city-car, "):
        car_from("hovercraft")


def test_a_band_is_open_only_where_nothing_was_stated():
    free = open_figures("family-hatch", {})
    assert "mass_kg" in free and "pack_voltage_v" not in free and "driven_axle" not in free
    assert "mass_kg" not in open_figures("family-hatch", {"mass_kg": 1800.0})


def test_a_grip_that_was_stated_is_not_drawn():
    assert "grip_level" in open_figures_of(Scenario())
    assert "grip_level" not in open_figures_of(Scenario().with_setting("grip_level", -0.5))
    assert "mass_kg" not in open_figures_of(Scenario().with_setting("mass_kg", 1800.0))


def test_measured_road_load_closes_drag_area_and_rolling():
    stated = {"f0_n": 120.0, "f1_n_per_mps": 1.0, "f2_n_per_mps2": 0.42}
    assert set(open_figures("family-hatch", {})) - set(open_figures("family-hatch", stated)) == {
        "drag_area_m2",
        "rolling_coefficient",
    }
    assert car_from("family-hatch", stated).f0_n == 120
