"""The command line's `stop`, and `drive --advise`."""

from pathlib import Path

import pytest

from model.out.cli import main
from tests.model.out.commanded import answer

DRIVES = Path(__file__).resolve().parents[3] / "assets" / "starting_drives"


def test_stop_answers_for_every_way(capsys):
    found = answer(capsys, "stop", "--from-kmh", "50", "--car", "city-car", "--equal-distance")
    for way in ("coast", "regen", "friction"):
        assert {"distance_m", "time_s", "battery_wh"} <= set(found[way])
    assert found["coast"]["distance_m"] == pytest.approx(found["friction"]["distance_m"])
    assert found["coast"]["battery_wh"] < found["regen"]["battery_wh"] < found["friction"]["battery_wh"]
    emergency = found["emergency"]["band"]["distance_m"]
    assert emergency["high"] < emergency["mid"] < emergency["low"] < found["coast"]["distance_m"]
    assert found["scenario"]["car"] == "city-car" and "legs" not in found["scenario"]


def test_stop_without_equal_distance_compares_no_energies(capsys):
    found = answer(capsys, "stop", "--from-kmh", "100", "--to-kmh", "50", "--set", "lift_off_mps2=1.3")
    assert found["break_even_kmh"] is None
    assert found["regen"]["distance_m"] < 0.5 * found["coast"]["distance_m"]


@pytest.mark.parametrize(
    "arguments, sentence",
    [
        (["stop", "--from-kmh", "fast"], "from_kmh (speed at the start): “fast” cannot be used, 1 to 250 km/h can."),
        (["stop", "--from-kmh", "30", "--to-kmh", "40"], "to_kmh (speed at the end): 40 km/h is not below the speed"),
        (["stop"], "--from-kmh"),
    ],
)
def test_stop_refuses_with_one_sentence(capsys, arguments, sentence):
    assert main(arguments) == 2
    said = capsys.readouterr()
    assert sentence in said.err and said.err.count("\n") == 1 and not said.out


def test_drive_advises_on_request(capsys):
    town = str(DRIVES / "town.json")
    assert "advice" not in answer(capsys, "drive", town)
    advice = answer(capsys, "drive", town, "--advise")["advice"]
    assert [leg["leg"] for leg in advice["legs"]] == [1, 2, 3]
    for one in (advice["overall"], *advice["legs"]):
        assert {"lift_off_mps2", "word", "because", "lamp_zone", "alternatives"} <= set(one)
        assert one["because"].endswith(".")
    assert len(advice["rules"]) == 4 and advice["what_if"]


def test_brake_pedal_decides_whether_strength_changes_energy(capsys):
    def net(pedal, strength):
        settings = ("--set", f"brake_pedal={pedal}", "--set", f"lift_off_mps2={strength}")
        return answer(capsys, "drive", str(DRIVES / "town.json"), *settings)["battery_net_kwh"]

    assert net("blended", 0.2) == net("blended", 2.0)
    assert net("friction", 0.2) > 1.2 * net("friction", 2.0)
