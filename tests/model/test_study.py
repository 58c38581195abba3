"""A folder of recordings beside the model, and described drives beside each other, on the command line."""

import json

import numpy as np
import pandas as pd
import pytest

from model.cli import main
from model.scenario_io import scenario_to_json, starting_drives
from tests.made_traces import stop_and_go

TOWN = starting_drives()["town"][2]


@pytest.fixture(scope="module")
def folder(tmp_path_factory):
    """Two recordings of one drive, one whose battery gave a tenth more; one without power, one that cannot be read."""
    place = tmp_path_factory.mktemp("recordings")
    trace = stop_and_go(10)
    table = pd.DataFrame({"time_s": trace.time_s, "speed_kmh": trace.speed_mps * 3.6})
    table.to_csv(place / "b.csv", index=False)
    power = np.where(np.append(0.0, trace.acceleration_mps2) < 0, -4.0, 8.0) * (trace.speed_mps > 0)
    table.assign(battery_power_kw=power).to_csv(place / "c.csv", index=False)
    table.assign(battery_power_kw=1.1 * power).to_csv(place / "a.csv", index=False)
    (place / "d.gpx").write_text("no recording")
    (place / "notes.txt").write_text("left alone")
    return place


def told(capsys, *arguments):
    code = main([str(item) for item in arguments])
    streams = capsys.readouterr()
    return json.loads(streams.out) if code == 0 else streams.err


def test_a_study_is_a_row_a_file_and_the_medians(folder, capsys):
    found = told(capsys, "study", folder, "--set", "soc_start=0.4", "--car", "small-hatch")
    more, bare, less, broken = found["drives"]
    assert [row["name"] for row in found["drives"]] == ["a.csv", "b.csv", "c.csv", "d.gpx"]
    assert "net_error_share" not in bare and broken.keys() == {"name", "refused"} and "d.gpx" in broken["refused"]
    assert (1 + less["net_error_share"]) / (1 + more["net_error_share"]) == pytest.approx(1.1, rel=1e-4)
    errors = found["net_error_share"]
    assert (found["files"], found["refused"], errors["drives"]) == (4, 1, 2)
    assert errors["median"] == pytest.approx((more["net_error_share"] + less["net_error_share"]) / 2, abs=1e-5)
    assert found["recovered_difference"]["median"] == pytest.approx(less["recovered_difference"], abs=1e-5)


def test_a_row_of_a_study_is_what_log_answers(folder, capsys):
    row = told(capsys, "study", folder, "--set", "ambient_c=-5")["drives"][2]
    log = told(capsys, "log", folder / "c.csv", "--set", "ambient_c=-5")
    assert row["battery_net_kwh"] == log["battery_net_kwh"]
    assert row["measured_net_kwh"] == log["measured"]["battery_net_kwh"]
    assert row["recovered_share_of_output"] == log["recovered_share_of_output"]


def test_a_study_without_recordings_is_refused(tmp_path, capsys):
    assert "holds no recordings" in told(capsys, "study", tmp_path)
    assert "is not a folder" in told(capsys, "study", tmp_path / "nowhere")


def test_drives_beside_each_other_differ_with_bands_of_their_own(tmp_path, capsys):
    files = [tmp_path / "warm.json", tmp_path / "cold.json"]
    for file, ambient_c in zip(files, (20.0, -5.0), strict=True):
        file.write_text(json.dumps(scenario_to_json(TOWN.with_setting("ambient_c", ambient_c))), encoding="utf-8")
    found = told(capsys, "compare", *files, "--car", "city-car")
    warm, cold = found["drives"]
    (more,) = found["more_than_the_first"]
    low, mid, high = more["battery_net_kwh"]
    assert 0 < low < mid < high and more["told_apart"] is True
    # drawn alike, a difference is known better than its two ends are
    assert high - low < cold["battery_net_kwh"][2] - warm["battery_net_kwh"][0]
    assert warm["scenario"]["car"] == cold["scenario"]["car"] == "city-car"
    assert "two or three are compared" in told(capsys, "compare", files[0])
