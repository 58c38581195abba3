"""The command line's `claim`, and `drive` with a printed range."""

import json
from pathlib import Path

import pytest

from model.claims.collection import claims
from model.out.cli import main
from tests.model.out.commanded import answer

TOWN = "drive", str(Path(__file__).resolve().parents[3] / "assets" / "starting_drives" / "town.json")


def test_without_an_id_every_claim_is_listed(capsys):
    listed = answer(capsys, "claim")["claims"]
    assert [one["id"] for one in listed] == list(claims()) and all(one["text"] for one in listed)


def test_a_claim_is_answered_with_what_was_said(capsys):
    found = answer(capsys, "claim", "two-megawatts", "--car", "pickup", "--set", "number=1", "--set", "payload_kg=300")
    keys = {"verdict", "rule", "quantiles", "share_of_range", "needs", "tornado", "sources", "sentence"}
    assert keys <= set(found)
    assert found["settings"] == {"car": "pickup", "number": "1", "payload_kg": "300"}
    assert found["said"] == {"car": "pickup", "payload_kg": "300 kg"} and set(found["not_said"]) == {"slowing_mps2"}


def test_an_answer_can_be_asked_again(capsys, tmp_path):
    first = answer(capsys, "claim", "two-megawatts", "--set", "number=1.5")
    (tmp_path / "answer.json").write_text(json.dumps(first))
    assert answer(capsys, "claim", str(tmp_path / "answer.json")) == first
    changed = answer(capsys, "claim", str(tmp_path / "answer.json"), "--set", "number=1")
    assert changed["share_of_range"] > first["share_of_range"]


@pytest.mark.parametrize(
    "arguments, sentence",
    [
        (["claim", "x"], "claim: “x” is not one of"),
        (["claim", "two-megawatts", "--run", "0"], "run (run): 0 cannot be used, whole numbers from 1 to 16001 can."),
        (["claim", "two-megawatts", "--set", "number"], "the form is KEY=VALUE"),
        (["claim", "two-megawatts", "--set", "cabin=on"], "is not a known setting"),
        (["claim", "two-megawatts", "--band"], "nrecognized arguments: --band"),
        (["grip", "--band"], "nrecognized arguments: --band"),
        (["stop", "--from-kmh", "50", "--band"], "nrecognized arguments: --band"),
        (["compare", TOWN[1], TOWN[1], "--band"], "nrecognized arguments: --band"),
        (["claim", "missing.json"], "missing.json: the file cannot be read"),
        ([*TOWN, "--test-range-km", "far"], "test_range_km (range on the test cycle): “far”"),
        ([*TOWN, "--test-range-km", "300", "--test", "x"], "test: “x” is not one of"),
    ],
)
def test_refusals(capsys, arguments, sentence):
    assert main(arguments) == 2
    assert sentence in capsys.readouterr().err


def test_a_printed_range_on_the_road(capsys):
    road = answer(capsys, *TOWN, "--test-range-km", "300")["range_on_road"]
    assert road["test_range_km"] == 300 and road["range_km"]["low"] < road["range_km"]["high"]
    assert [step["id"] for step in road["steps"]][-1] == "cabin"
