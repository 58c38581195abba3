"""The command line's grip, stop and hybrids."""


import pytest

from model.out.cli import main
from tests.model.out.commanded import answer


def test_grip_answers_for_the_car_the_road_and_the_place(capsys):
    found = answer(
        capsys, "grip", "--car", "compact-crossover", "--set", "surface=snow", "--set", "tyres=winter",
        "--set", "lift_off_mps2=1.3", "--speed-kmh", "40", "--bend-radius-m", "80", "--grade-pct", "-6",
    )  # fmt: skip
    asked = {"demand_friction", "available_friction", "largest_lift_off_mps2", "axle_load_share", "failure", "margin"}
    assert asked <= set(found)
    assert found["available_friction"] == {"low": 0.225, "mid": 0.3, "high": 0.525}
    assert (found["driven_axle"], found["failure"], found["margin"]) == ("rear", "the tail steps out", "small")
    assert found["margin_rule"] and found["scenario"]["conditions"] == {"surface": "snow", "tyres": "winter"}


def test_grip_left_alone_is_straight_and_level_at_50(capsys):
    found = answer(capsys, "grip")
    assert (found["speed_kmh"], found["bend_radius_m"], found["grade_pct"]) == (50, None, 0)
    assert found["margin"] == "larger"


@pytest.mark.parametrize(
    "arguments, said",
    [
        (["--speed-kmh", "fast"], "speed_kmh (speed): “fast” cannot be used, 1 to 250 km/h can."),
        (["--bend-radius-m", "0"], "bend_radius_m (radius of the bend): 0 m cannot be used, 5 to"),
        (["--grade-pct", "90"], "grade_pct (slope): 90 % cannot be used, −35 to 35 % can."),
        (["--set", "surface=mud"], "dry, wet, standing-water, snow, ice or glazed-ice can"),
    ],
)
def test_grip_refuses_in_a_sentence(capsys, arguments, said):
    assert main(["grip", *arguments]) == 2
    assert said in capsys.readouterr().err


def test_every_verb_takes_the_winters_settings(capsys):
    settings = [
        item
        for key in ("ambient_c=-7", "surface=ice", "soc_start=1", "preconditioned=yes", "tyres_warm=no", "trailer_kg=9")
        for item in ("--set", key)
    ]
    cold = answer(capsys, "cycle", "udds", *settings)
    plain = answer(capsys, "cycle", "udds")
    assert cold["battery_net_kwh"] > 1.3 * plain["battery_net_kwh"]
    assert cold["recovered_share_of_output"] < 0.1
    assert "emergency" in answer(capsys, "stop", "--from-kmh", "50", *settings)


def test_rounding_left_in_a_stop_is_nothing(capsys):
    ways = answer(capsys, "stop", "--from-kmh", "50")
    assert ways["coast"]["friction_wh"] == 0 and ways["coast"]["recovered_wh"] == 0
    assert ways["friction"]["friction_wh"] > 10 and ways["coast"]["battery_wh"] > 0


def test_a_hybrid_answers_in_fuel(capsys):
    found = answer(capsys, "cycle", "udds", "--car", "full-hybrid")
    assert 0 < found["fuel"]["saved_l"]["low"] < found["fuel"]["saved_l"]["high"]
    assert found["ledger_kwh"]["engine_given"] == found["fuel"]["engine_kwh"]
    assert "fuel" not in answer(capsys, "cycle", "udds")
