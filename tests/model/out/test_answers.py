"""Answers as JSON: one that is given back is answered again, byte for byte."""

import json
import subprocess
import sys
from dataclasses import replace
from pathlib import Path

import pytest

from model.describe.scenario_io import scenario_to_json, starting_drives
from model.out.answers import Asked, as_text, asked_by, drive_answer
from model.out.cli import main
from tests.refused import refuses

ROOT = Path(__file__).resolve().parents[3]
TOWN = starting_drives()["town"][2]
# more digits than an answer has, a hybrid's fuel, and strings of the user's own
STATED = (
    TOWN.with_setting("mass_kg", 1234.56789).with_setting("name", "Wägelchen").with_leg(0, "distance_km", 1.23456789)
)
HYBRID = replace(TOWN, car_class="full-hybrid")
ALL = dict(band_runs=20, year_runs=10, advice=True, test_range=(400.0, "wltc3b"))


def told(capsys, *arguments):
    assert main(arguments) == 0
    return capsys.readouterr().out


@pytest.mark.parametrize(
    "asked",
    [Asked(TOWN), Asked(STATED, band_runs=120), Asked(HYBRID, band_runs=20, year_runs=10), Asked(STATED, **ALL)],
    ids=["plain", "band", "hybrid", "all"],
)
def test_the_command_line_reproduces_an_answer_to_the_byte(asked, tmp_path, capsys):
    text = as_text(drive_answer(asked))
    (tmp_path / "answer.json").write_text(text, encoding="utf-8")
    assert asked_by(json.loads(text)) == asked
    assert ("saved_fuel_l" in json.loads(text).get("year", {})) == (asked.scenario is HYBRID and asked.year_runs > 0)
    assert told(capsys, "drive", str(tmp_path / "answer.json")) == text


def test_a_fresh_process_gives_the_same_bytes(tmp_path):
    text = as_text(drive_answer(Asked(STATED, **ALL)))
    (tmp_path / "answer.json").write_bytes(text.encode())
    command = [sys.executable, "-m", "model", "drive", str(tmp_path / "answer.json")]
    assert subprocess.run(command, cwd=ROOT, capture_output=True, check=True).stdout == text.encode()


def test_a_digit_more_in_what_was_given_is_kept_and_in_what_was_found_is_not():
    answer = json.loads(as_text(drive_answer(Asked(STATED))))
    assert answer["scenario"]["car"]["mass_kg"] == 1234.56789
    assert answer["battery_net_kwh"] == float(f"{answer['battery_net_kwh']:.6g}")


def test_an_answer_can_be_asked_for_more_and_for_another_drive(tmp_path, capsys):
    (tmp_path / "answer.json").write_text(as_text(drive_answer(Asked(TOWN, band_runs=20))), encoding="utf-8")
    more = json.loads(told(capsys, "drive", str(tmp_path / "answer.json"), "--year", "--set", "ambient_c=-5"))
    assert more["band"]["runs"] == 20 and more["year"]["runs"] > 0
    assert more["scenario"]["conditions"]["ambient_c"] == -5


def test_a_scenario_asks_for_the_drive_alone():
    assert asked_by(scenario_to_json(STATED)) == Asked(STATED)


@pytest.mark.parametrize(
    ("part", "sentence"),
    [
        ({"band": {"runs": 10**9}}, "runs"),
        ({"band": {"runs": 1.5}}, "runs"),
        ({"year": "yes"}, "year: “yes” is not the object"),
        ({"range_on_road": {}}, "test"),
        ({"scenario": 1}, "JSON object"),
    ],
)
def test_an_answer_that_was_tampered_with_is_refused_in_a_sentence(part, sentence, tmp_path, capsys):
    (tmp_path / "answer.json").write_text(json.dumps({"scenario": scenario_to_json(TOWN)} | part), encoding="utf-8")
    assert main(["drive", str(tmp_path / "answer.json")]) == 2
    assert sentence in capsys.readouterr().err


def test_what_is_no_object_is_refused():
    with refuses("JSON object"):
        asked_by([1, 2])
