"""Scenarios to and from files and links: the same back, and one sentence for whatever is wrong."""

import json
from pathlib import Path

import pytest

from model.describe.fields import InputError
from model.describe.parameters import class_labels
from model.describe.scenario import LEG_FIELDS, MAX_LEGS, SETTINGS, Leg, Scenario
from model.describe.scenario_io import (
    from_link,
    read_json,
    scenario_from_json,
    scenario_to_json,
    starting_drives,
    to_link,
    unusual,
    with_car,
    with_settings,
)
from tests.refused import refuses, told


def everything_changed() -> Scenario:
    """A scenario in which every setting and every figure of its legs differs from the default."""
    scenario = Scenario(
        car_class="van",
        return_trip=True,
        legs=(
            Leg(distance_km=12.345, speed_kmh=77.7, stops=2, slow_downs=3, slow_to_kmh=33.3, climb_m=111.0,
                descent_m=22.0, grade_pct=6.5, surface="snow"),
            Leg(distance_km=1 / 3),
        ),
    )  # fmt: skip
    for key, field in SETTINGS.items():
        if field.kind == "choice":
            value = next(choice for choice in reversed(field.choices) if choice != field.default)
        elif field.kind == "yes_no":
            value = not field.default
        elif field.kind == "text":
            value = "kr & øre"
        else:
            value = field.usual[1] if field.usual[1] != field.default else field.usual[0]
        scenario = scenario.with_setting(key, int(value) if field.kind == "count" else value)
    return scenario.with_setting("fade_end_kmh", 1.5)


STARTING = [scenario for _, _, scenario in starting_drives().values()]


@pytest.mark.parametrize("scenario", [Scenario(), everything_changed(), *STARTING])
def test_a_file_gives_the_same_scenario_back(scenario):
    assert scenario_from_json(json.loads(json.dumps(scenario_to_json(scenario)))) == scenario


@pytest.mark.parametrize("scenario", [Scenario(), everything_changed(), *STARTING])
def test_a_link_gives_the_same_scenario_back(scenario):
    link = to_link(scenario)
    assert all(isinstance(value, str) for value in link.values())
    assert from_link(link, Scenario(legs=(Leg(), Leg()))) == (scenario, [])


def test_a_link_carries_only_what_differs():
    assert set(to_link(Scenario())) == {"car", "legs"}
    assert set(to_link(Scenario().with_setting("ambient_c", 5.0))) == {"car", "legs", "ambient_c"}


def test_four_starting_drives_that_differ():
    drives = starting_drives()
    assert list(drives) == ["town", "suburb-hill", "motorway", "mountain-valley"]
    assert all(name and about for name, about, _ in drives.values())
    assert len({scenario for _, _, scenario in drives.values()}) == 4


def test_a_value_out_of_bounds_in_a_link_is_clamped_and_said():
    scenario, notices = from_link({"mass_kg": "99999", "soc_start": "1.5", "stops": "3"}, Scenario())
    assert dict(scenario.stated) == {"mass_kg": 4500} and scenario.conditions.soc_start == 1
    assert len(notices) == 2 and "It was set to 4500 kg." in told(notices[0]) and "It was set to 1." in told(notices[1])


def test_what_a_link_says_wrongly_is_left_out_and_said():
    scenario, notices = from_link(
        {
            "car": "hovercraft", "ambient_c": "warm", "brake_pedal": "none", "cabin": "perhaps", "page": "2",
            "return_trip": "maybe",
        },
        Scenario(),
    )  # fmt: skip
    assert scenario == Scenario()
    first_words = [told(notice).split(":")[0].split(" ")[0] for notice in notices]
    assert first_words == ["Car", "brake_pedal", "ambient_c", "cabin", "return_trip"]
    assert "“maybe” cannot be used, yes or no can." in told(notices[-1])


def test_figures_of_a_link_that_do_not_fit_together_are_left_out_and_said():
    scenario, notices = from_link({"f0_n": "100"}, Scenario())
    assert scenario.stated == () and "give all three" in told(notices[0])


def test_legs_of_a_link():
    base = Scenario(legs=(Leg(distance_km=7.0),))
    assert from_link({}, base)[0].legs == base.legs
    good = to_link(base)["legs"]
    scenario, notices = from_link({"legs": "~".join([good, "1_2_3", good.replace("7", "7000")])}, base)
    assert [leg.distance_km for leg in scenario.legs] == [7.0, 1000.0]
    assert told(notices[0]) == f"leg 2: figures given 3, needed 9 to {len(LEG_FIELDS)}; left out."
    assert told(notices[1]).startswith("distance_km (distance), leg 3:")
    assert told(notices[1]).endswith("It was set to 1000 km.")
    scenario, notices = from_link({"legs": "~".join([good] * (MAX_LEGS + 1))}, base)
    assert len(scenario.legs) == MAX_LEGS and "the first 8 were taken" in told(notices[0])
    assert from_link({"legs": ""}, base)[0].legs == base.legs


LEGS = [{"distance_km": 5}]


@pytest.mark.parametrize(
    "data, said",
    [
        ([], "does not hold one JSON object"),
        ({}, "legs: none were given"),
        ({"schema": 2, "legs": LEGS}, "schema: “2” is not known; this version reads schema 1"),
        ({"leg": LEGS}, "“leg” is not a known setting; the nearest is legs"),
        ({"legs": 5}, "legs: “5” is not a list of legs"),
        ({"legs": [5]}, "leg 1: “5” is not an object with distance_km, "),
        ({"legs": [{"distance_km": 0}]}, "distance_km (distance), leg 1: 0 km cannot be used, 0.05 to"),
        ({"legs": [{"distance": 5}]}, "leg 1: “distance” is not a known setting; the nearest is distance_km"),
        ({"legs": [{"stops": 1.5}]}, "stops (stops), leg 1: 1.5 cannot be used, whole numbers from 0 to"),
        ({"legs": [{"distance_km": 1, "climb_m": 500}]}, "make the hill lower or steeper, or the leg longer"),
        ({"legs": LEGS * 9}, "at most 8 are allowed"),
        ({"legs": LEGS, "return_trip": 7}, "return_trip (there and back): “7” cannot be used, yes or no can."),
        ({"legs": LEGS, "car": "hovercraft"}, "car: “hovercraft” is not one of the classes city-car, "),
        ({"legs": LEGS, "car": 5}, "car: “5” is neither a class id nor an object"),
        ({"legs": LEGS, "car": None}, "car: “None” is neither a class id nor an object"),
        ({"legs": LEGS, "car": {"mass_kg": 0}}, "mass_kg (mass with driver): 0 kg cannot be used"),
        ({"legs": LEGS, "car": {"mass": 1500}}, "“mass” is not a known setting; the nearest is mass_kg"),
        ({"legs": LEGS, "car": {"motor_peek_kw": 100}}, "the nearest is motor_peak_kw"),
        ({"legs": LEGS, "car": {"road_load": 5}}, "road_load: “5” is not an object with f0_n, f1_n_per_mps and f2"),
        ({"legs": LEGS, "car": {"road_load": {"f0_n": 100}}}, "give all three, or none of them"),
        ({"legs": LEGS, "car": {"road_load": {"f3": 1}}}, "“f3” is not a known setting"),
        ({"legs": LEGS, "conditions": {"soc_start": 1.2}}, "soc_start (charge at the start): 1.2 cannot be used"),
        ({"legs": LEGS, "conditions": {"ambient_c": "cold"}}, "ambient_c (outside temperature): “cold” can"),
        ({"legs": LEGS, "conditions": {"ambient_c": float("nan")}}, "ambient_c (outside temperature): “nan” can"),
        ({"legs": LEGS, "conditions": {"lift_off_mps2": 1}}, "“lift_off_mps2” is not a known setting"),
        ({"legs": LEGS, "conditions": 5}, "conditions: “5” is not an object"),
        ({"legs": LEGS, "driver": None}, "driver: “None” is not an object"),
        ({"legs": LEGS, "year": ["winter_days"]}, "year: “['winter_days']” is not an object"),
    ],
)
def test_a_bad_file_gets_one_sentence(data, said):
    with pytest.raises(InputError) as refused:
        scenario_from_json(data)
    assert said in told(refused.value) and "\n" not in told(refused.value)


def test_a_file_that_is_no_json_gets_one_sentence(tmp_path):
    for name, text, said in [
        ("cut.json", '{"legs": [', "cut.json: not valid JSON ("),
        ("nan.json", '{"legs": NaN}', "nan.json: not valid JSON (NaN is not a number)."),
        ("much.json", '{"energy_saved_share": 1e999}', "much.json: not valid JSON (1e999 is too large a number)."),
        ("half.json", '{"model_version": "\\ud800"}', "half.json: not valid JSON ("),
        ("bytes.json", None, "bytes.json: not valid JSON ("),
    ]:
        path = tmp_path / name
        path.write_bytes(b"\xff\xfe\x00") if text is None else path.write_text(text)
        with pytest.raises(InputError) as refused:
            read_json(path)
        assert told(refused.value).startswith(said)
    with refuses(r"gone\.json: the file cannot be read"):
        read_json(tmp_path / "gone.json")


def test_a_car_file_may_hold_driver_and_conditions():
    car = {"like": "small-hatch", "mass_kg": 1600, "lift_off_mps2": 1.4, "ambient_c": -5, "brake_pedal": "friction"}
    scenario = with_car(Scenario(), car)
    assert scenario.car_class == "small-hatch"
    assert dict(scenario.stated) == {"mass_kg": 1600, "brake_pedal": "friction"}
    assert scenario.driver.lift_off_mps2 == 1.4 and scenario.conditions.ambient_c == -5
    assert with_car(scenario, "van").stated == ()


def test_settings_win_in_the_order_given():
    scenario = with_settings(Scenario(), {"ambient_c": "-5", "cabin": "off"})
    assert scenario.conditions.ambient_c == -5 and scenario.conditions.cabin is False


def test_inputs_outside_the_usual_are_named():
    assert unusual(Scenario()) == []
    assert all(unusual(Scenario(car_class=car_class)) == [] for car_class in class_labels())
    scenario = Scenario(legs=(Leg(), Leg(stops=90))).with_setting("mass_kg", 4000.0).with_setting("ambient_c", -30.0)
    named = [(leg, field.key, value) for leg, field, value in unusual(scenario)]
    assert named == [(None, "mass_kg", 4000.0), (None, "ambient_c", -30.0), (2, "stops", 90)]


def test_a_link_from_before_a_figure_was_added_keeps_its_legs():
    legs = (Leg(distance_km=3.0, stops=7), Leg(speed_kmh=90.0, surface="wet"))
    link = to_link(Scenario(legs=legs))
    link["legs"] = "~".join("_".join(row.split("_")[:9]) for row in link["legs"].split("~"))
    scenario, notices = from_link(link, Scenario())
    assert scenario.legs == legs
    assert not notices


@pytest.mark.skipif(not Path("/dev/zero").exists(), reason="no such device on this system")
def test_a_file_that_never_ends_is_refused():
    with refuses(r"^zero: is larger than 4 MB"):
        read_json(Path("/dev/zero"))
