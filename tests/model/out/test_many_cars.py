"""Many cars at once: a table in, a row for each car and cycle out."""

import csv
import io

import pytest

from model.describe.parameters import assumed_figures, class_of_mass
from model.out.cli import main
from model.out.many_cars import CAR_COLUMNS

TABLE = """id,mass_kg,f0_n,f1_n_per_mps,f2_n_per_mps2,motor_peak_kw,driven_axle,like
a,1800,120,2.5,0.42,150,front,
b,1800,120,2.5,0.42,150,front,compact-crossover
heavy,99999,,,,,,
d,,,,,,,city-car
e,1800,,,,,,boat
"""


@pytest.fixture
def table(tmp_path):
    file = tmp_path / "cars.csv"
    file.write_text(TABLE, encoding="utf-8")
    return file


def rows(capsys, *arguments):
    assert main(["cars", *map(str, arguments)]) == 0
    text = capsys.readouterr().out
    assert text.splitlines()[0] == ",".join(CAR_COLUMNS)
    return list(csv.DictReader(io.StringIO(text)))


def test_a_row_out_for_each_car_and_cycle_and_a_bad_one_says_why(capsys, table):
    found = rows(capsys, table, "--cycles", "udds,hwfet")
    assert [(row["id"], row["cycle"]) for row in found] == [
        (name, cycle) for name in ("a", "b", "heavy", "d", "e") for cycle in ("udds", "hwfet")
    ]
    for row in found:
        bad = row["id"] in ("heavy", "e")
        assert bool(row["wall_wh_per_km"]) != bad and bool(row["refused"]) == bad
        assert row["low"] == row["mid"] == row["high"] == ""
    assert "mass_kg" in found[4]["refused"] and "99999" in found[4]["refused"]
    assert found[8]["refused"].startswith("like: “boat” is not one of the classes city-car, ")


def test_what_is_empty_comes_from_the_class_and_without_one_from_that_of_nearest_mass(capsys, tmp_path):
    """An empty cell and a column that is not there alike; settings are for all cars."""
    near, figures = class_of_mass(2000.0), assumed_figures(class_of_mass(2000.0))
    full, short = tmp_path / "full.csv", tmp_path / "short.csv"
    full.write_text(
        "mass_kg,motor_peak_kw,drag_area_m2,like\n2000,,,\n"
        f"2000,{figures['motor_peak_kw'].mid},{figures['drag_area_m2'].mid},{near}\n",
        encoding="utf-8",
    )
    short.write_text("mass_kg\n2000\n", encoding="utf-8")
    empty, given = rows(capsys, full, "--cycles", "udds")
    (left_out,) = rows(capsys, short, "--cycles", "udds")
    (cold,) = rows(capsys, short, "--cycles", "udds", "--set", "ambient_c=-5", "--set", "cabin=on")
    assert empty["wall_wh_per_km"] == given["wall_wh_per_km"] == left_out["wall_wh_per_km"]
    assert float(cold["wall_wh_per_km"]) > 1.1 * float(empty["wall_wh_per_km"])


def test_a_band_lies_around_its_point_and_a_printed_figure_narrows_it(capsys, table, tmp_path):
    wide = {row["cycle"]: row for row in rows(capsys, table, "--band") if row["id"] == "a"}
    for row in wide.values():
        assert float(row["low"]) < float(row["wall_wh_per_km"]) < float(row["high"])
        assert float(row["low"]) < float(row["mid"]) < float(row["high"])
    city, highway = wide["udds"], wide["hwfet"]
    told = tmp_path / "told.csv"
    told.write_text(
        "mass_kg,f0_n,f1_n_per_mps,f2_n_per_mps2,motor_peak_kw,printed_wh_per_km,printed_test\n"
        f"1800,120,2.5,0.42,150,{highway['wall_wh_per_km']},hwfet\n1800,120,2.5,0.42,150,600,hwfet\n",
        encoding="utf-8",
    )
    narrow, _, refused, _ = rows(capsys, told, "--band")
    assert float(narrow["high"]) - float(narrow["low"]) < 0.85 * (float(city["high"]) - float(city["low"]))
    assert narrow["id"] == "1" and refused["refused"].startswith("printed_wh_per_km") and "600" in refused["refused"]


@pytest.mark.parametrize(
    "text, said",
    [("id,weight\na,1800\n", "weight"), ("mass_kg\n", "holds no cars"), ("mass_kg,mass_kg\n1,2\n", "stands twice")],
)
def test_a_table_that_cannot_be_used_is_one_sentence(capsys, tmp_path, text, said):
    file = tmp_path / "cars.csv"
    file.write_text(text, encoding="utf-8")
    assert main(["cars", str(file)]) == 2
    answer = capsys.readouterr()
    assert said in answer.err and answer.err.count("\n") == 1 and answer.out == ""
    assert main(["cars", str(tmp_path / "none.csv")]) == 2 and "cannot be read" in capsys.readouterr().err
