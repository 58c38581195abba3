"""A folder of recordings beside the model, and described drives beside each other, on the command line."""

import json

import numpy as np
import pandas as pd
import pytest

from model.describe.scenario import Scenario
from model.describe.scenario_io import scenario_to_json, starting_drives, with_settings
from model.out.cli import main
from model.out.recorded import band_of_recording, drive_recording
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


def width(band):
    return (band[2] - band[0]) / band[1]


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


def test_a_band_holds_its_point_and_a_measurement_weights_nothing(folder, capsys):
    """The same drive with and without power beside it; asked again, the same."""
    found = told(capsys, "study", folder, "--car", "small-hatch", "--band")
    assert found == told(capsys, "study", folder, "--car", "small-hatch", "--band")
    more, bare, less, broken = found["drives"]
    assert more["band"] == bare["band"] == less["band"] and "band" not in broken
    for key in ("battery_net_kwh", "recovered_share_of_output"):
        low, mid, high = bare["band"][key]
        assert low < bare[key] < high and low < mid < high
        inside = [low <= row[f"measured_{key.removeprefix('battery_')}"] <= high for row in (more, less)]
        assert found["band"][f"{key}_held"] == {"drives": 2, "inside": sum(inside)}
    assert found["band"]["quantiles"] == [0.05, 0.5, 0.95]


def test_log_answers_the_band_of_a_studys_row(folder, capsys):
    row = told(capsys, "study", folder, "--band")["drives"][0]
    log = told(capsys, "log", folder / "a.csv", "--band")
    assert log["band"] | row["band"] == log["band"]
    bare = told(capsys, "study", folder)
    assert "band" not in bare and "band" not in bare["drives"][0]


def test_a_recording_has_a_part_of_its_own_in_its_net_energy_alone(folder, monkeypatch):
    def bands(**stated):
        scenario = with_settings(Scenario(), stated)
        return band_of_recording(*drive_recording(folder / "b.csv", scenario, frozenset(stated))[1:])

    with_it, stated = bands(), bands(open_pulling_share=0)
    monkeypatch.setattr("model.sampling.own_part.OWN_SHARE", 0.0)
    without = bands()
    assert width(with_it["battery_net_kwh"]) > 1.02 * width(without["battery_net_kwh"])
    assert with_it["recovered_share_of_output"] == without["recovered_share_of_output"]
    # who states what cars leave open asks what the assumed figures alone span
    assert stated == bands(open_pulling_share=0)


def test_shares_are_counted_over_the_same_steps(tmp_path, capsys):
    """The model's own power, written ten times a second with a ripple that every second evens out."""
    trace = stop_and_go(10)
    fine_s = np.round(np.arange(10 * len(trace.step_s) + 1) / 10, 1)
    table = pd.DataFrame({"time_s": fine_s, "speed_kmh": np.interp(fine_s, trace.time_s, trace.speed_mps) * 3.6})
    plain, measured = tmp_path / "plain.csv", tmp_path / "measured.csv"
    table.to_csv(plain, index=False)
    run = drive_recording(plain, Scenario(), frozenset())[2].run
    power_kw = np.append(np.repeat(run.terminal_w[0], 10), 0.0) / 1000
    ripple_kw = np.where(np.arange(len(fine_s)) % 10 < 5, 20.0, -20.0)
    table.assign(battery_power_kw=power_kw + ripple_kw).to_csv(measured, index=False)
    log = told(capsys, "log", measured)
    row, _ = told(capsys, "study", tmp_path)["drives"]
    share = log["measured"]["recovered_share_of_output"]
    assert share == pytest.approx(log["recovered_share_of_output"], abs=0.01)
    assert row["recovered_difference"] == pytest.approx(log["recovered_share_of_output"] - share, abs=1e-5)
