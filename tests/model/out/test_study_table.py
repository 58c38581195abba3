"""A study's table: the same bytes whoever worked on it, gone on with where it was broken off."""

import csv
import io
import json

import pandas as pd
import pytest

from model.describe.scenario import Scenario
from model.out import study as studied
from model.out.cli import main
from model.out.progress import Progress
from model.out.study import Totals, study
from tests.made_traces import stop_and_go
from tests.refused import refuses

NAMES = ("a.csv", "a, b.csv", "c\nd.csv", "é.csv", "=z.gpx")


@pytest.fixture(scope="module")
def folder(tmp_path_factory):
    """Recordings with names that a table finds hard, one with power, one that cannot be read."""
    place = tmp_path_factory.mktemp("recordings")
    trace = stop_and_go(3)
    table = pd.DataFrame({"time_s": trace.time_s, "speed_kmh": trace.speed_mps * 3.6})
    for name in NAMES:
        table.to_csv(place / name, index=False)
    table.assign(battery_power_kw=5.0).to_csv(place / NAMES[0], index=False)
    (place / "=z.gpx").write_text("no recording")
    return place


def asked(folder, out=None, **how):
    return study(folder, Scenario(), frozenset(), out=out, **{"band": False} | how)


@pytest.fixture(scope="module")
def whole(folder, tmp_path_factory):
    """The table as one process writes it in one go, and what is answered beside it."""
    out = tmp_path_factory.mktemp("out") / "rows.csv"
    found = asked(folder, out)
    return out.read_bytes(), found


def test_a_table_has_a_row_a_file_by_name(folder, whole):
    rows = list(csv.DictReader(io.StringIO(whole[0].decode())))
    assert [row["name"] for row in rows] == ["'=z.gpx", "a, b.csv", "a.csv", "c\\nd.csv", "é.csv"], "no formula"
    plain = {row["name"].replace("\n", "\\n"): row for row in asked(folder)["drives"]}
    for row in rows:
        beside = plain[row["name"].lstrip("'")]
        assert row["refused"].lstrip("'") == beside.get("refused", "")
        assert row["battery_net_kwh"] == ("" if row["refused"] else f"{beside['battery_net_kwh']:.6g}")
    assert rows[0]["refused"].startswith("'=z.gpx") and rows[2]["measured_net_kwh"]
    assert whole[1]["files"] == 5 and whole[1]["refused"] == 1 and "drives" not in whole[1]


def test_two_workers_write_the_same_bytes(folder, whole, tmp_path):
    assert asked(folder, tmp_path / "rows.csv", workers=2) == whole[1]
    assert (tmp_path / "rows.csv").read_bytes() == whole[0]


@pytest.mark.parametrize("kept", [0.0, 0.01, 0.5, 0.93, 1.0])
def test_a_study_goes_on_where_it_was_broken_off(folder, whole, tmp_path, monkeypatch, kept):
    out = tmp_path / "rows.csv"
    begun = whole[0][: round(kept * len(whole[0]))]
    out.write_bytes(begun)
    done = []
    kept_row = studied.study_row
    monkeypatch.setattr(studied, "study_row", lambda file, **how: done.append(file) or kept_row(file, **how))
    assert asked(folder, out) == whole[1] | {"table": "rows.csv"}
    assert out.read_bytes() == whole[0]
    assert len(done) == 5 - max(begun.count(b"\n") - 1, 0)


def test_a_file_that_changed_is_done_again(folder, tmp_path):
    (place := tmp_path / "recordings").mkdir()
    (place / "a.csv").write_bytes((folder / "a, b.csv").read_bytes())
    out = place / "rows.csv"
    assert asked(place, out)["files"] == 1
    (place / "a.csv").write_text("nothing")
    assert asked(place, out)["refused"] == 1 and out.read_bytes().count(b"\n") == 2


def test_a_parquet_table_holds_the_same_and_is_gone_on_with(folder, whole, tmp_path):
    out = tmp_path / "rows.parquet"
    asked(folder, out)
    once = out.read_bytes()
    as_csv = pd.read_csv(io.BytesIO(whole[0]))
    for name, cells in pd.read_parquet(out).items():
        assert cells.dropna().tolist() == as_csv[name].dropna().tolist()
    (tmp_path / "rows.parquet.rows.csv").write_bytes(whole[0][: len(whole[0]) // 2])
    out.unlink()
    asked(folder, out, workers=2)
    assert out.read_bytes() == once
    asked(folder, out)
    assert out.read_bytes() == once and list(tmp_path.iterdir()) == [out]


def test_bands_have_columns_of_their_own(folder, tmp_path):
    found = asked(folder, tmp_path / "rows.csv", band=True)
    rows = pd.read_csv(tmp_path / "rows.csv")
    assert (rows["battery_net_kwh_low"] < rows["battery_net_kwh_high"])[rows["refused"].isna()].all()
    assert found["band"]["battery_net_kwh_held"]["drives"] == 1


def test_what_is_no_such_table_is_left_alone(folder, tmp_path):
    for name, text, reason in (
        ("rows.csv", "mine,not yours\n1,2\n", "is no table of such a study"),
        ("rows.parquet", "mine", "is no table of such a study"),
        ("rows.xlsx", "mine", "its name ends in .csv and .parquet"),
    ):
        (tmp_path / name).write_text(text)
        with refuses(reason):
            asked(folder, tmp_path / name)
        assert (tmp_path / name).read_text() == text
    assert len(list(tmp_path.iterdir())) == 3
    asked(folder, tmp_path / "other.csv")
    before = (tmp_path / "other.csv").read_bytes()
    with refuses("other settings"):
        study(folder, Scenario().with_setting("ambient_c", -5.0), frozenset(), band=False, out=tmp_path / "other.csv")
    assert (tmp_path / "other.csv").read_bytes() == before
    with refuses("cannot be written"):
        asked(folder, tmp_path / "nowhere" / "rows.csv")


def test_an_error_that_nobody_thought_of_is_a_row(folder, monkeypatch):
    def broken(*_):
        raise ZeroDivisionError("by nought")

    monkeypatch.setattr(studied, "drive_recording", broken)
    found = asked(folder)
    assert found["refused"] == 5 and "ZeroDivisionError: by nought" in found["drives"][0]["refused"]


class Terminal(io.StringIO):
    def isatty(self):
        return True


def test_progress_goes_to_the_error_stream(folder, tmp_path, capsys):
    assert main(["study", str(folder), "--out", str(tmp_path / "rows.csv")]) == 0
    streams = capsys.readouterr()
    assert json.loads(streams.out)["table"] == "rows.csv"
    assert streams.err.splitlines()[-1].startswith("5 of 5 files, ") and "1 refused; 0 s left" in streams.err


def test_on_a_terminal_one_line_is_written_over():
    terminal = Terminal()
    told = Progress(terminal)
    for done in range(1, 101):
        told(100, Totals(files=done))
    assert terminal.getvalue().endswith("\n") and terminal.getvalue().count("\n") == 1
    assert terminal.getvalue().count("\r") < 20 and f"[{'#' * 30}] 100 of 100 files" in terminal.getvalue()
