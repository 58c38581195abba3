"""A figure on a page: its text for those who do not see it, its table, its file."""

from functools import partial
from io import StringIO

import numpy as np
import pandas as pd
from streamlit.testing.v1 import AppTest

from model import MODEL_DATE, MODEL_VERSION
from model.words.print import source_line
from model.words.quantities import Display
from pages.parts.charts import export
from pages.parts.charts.marks import Box, Words, drawn
from pages.parts.figure import MOST_ROWS, columns_of, csv_text, evenly, print_png, print_svg

METRIC = Display()


def bar():
    return drawn([Box(0, 1, 0, 10, "back")], [Words("a", 0, 5)], 20, 1.0, True)


def page():
    import pandas as pd

    from pages.parts.charts.marks import Box, Words, drawn
    from pages.parts.figure import Picture, figure

    def made():
        chart = drawn([Box(0, 1, 0, 10, "back")], [Words("a", 0, 5)], 20, 1.0, False)
        table = pd.DataFrame({"What": ["a"] * 150, "Energy, kWh": [1.25] * 150})
        return Picture(chart, "One bar of 1 kWh.", table, "One bar", "It is 1 kWh long.")

    figure(made, "bar", "bar.csv")


def test_a_figure_says_what_it_shows_and_shows_its_table_on_demand():
    app = AppTest.from_function(page).run()
    assert not app.exception
    chart = app.get("vega_lite_chart")[0].proto
    assert chart.alt == "One bar of 1 kWh."
    assert [item.value for item in app.markdown] == ["### One bar\n\nIt is 1\N{NO-BREAK SPACE}kWh long."]
    assert not app.table
    app.toggle(key="bar-as-table").set_value(True).run()
    assert len(app.table[0].value) == MOST_ROWS
    assert app.caption[0].value == "The first 100 of 150 rows; the file has them all."
    assert app.get("download_button")[0].proto.label == "CSV file"


def test_a_figure_is_drawn_for_print_only_once_it_is_asked_for():
    app = AppTest.from_function(page).run()
    assert len(app.get("download_button")) == 1
    app.toggle(key="bar-for-print").set_value(True).run()
    assert not app.exception
    assert [button.proto.label for button in app.get("download_button")] == ["CSV file", "SVG", "PNG"]
    made = print_svg(partial(export.for_print, bar(), "One bar", [source_line(METRIC)]))
    assert "One bar" in made and MODEL_VERSION in made and MODEL_DATE in made and "MIT licence" in made
    assert print_png(partial(export.for_print, bar(), "One bar", [])).startswith(b"\x89PNG")


def test_a_charts_rows_are_sent_as_its_table_has_them_and_without_an_index():
    rows = pd.DataFrame({"place": [0.5, float("nan")], "many": [1, 2], "words": ["a", "b"], "late": [True, False]})
    sent = columns_of(rows.set_index(pd.Index([7, 9])))
    assert sent.to_pydict() == {"place": [0.5, None], "many": [1, 2], "words": ["a", "b"], "late": [True, False]}


def test_columns_and_rows_are_sent_as_a_table_of_the_same_would_be():
    columns = {"place": np.array([0.5, np.nan]), "words": ["a", "b"]}
    assert columns_of(columns).equals(columns_of(pd.DataFrame(columns)))
    rows = [{"place": 0.5, "words": "a"}, {"place": 2.0, "words": "b"}]
    assert columns_of(rows).equals(columns_of(pd.DataFrame(rows)))


def test_a_file_says_which_model_its_numbers_are_from():
    lines = csv_text(pd.DataFrame({"Energy, kWh": [1.25, 2.5]})).splitlines()
    assert lines[0] == '"Energy, kWh",model_version,model_date'
    assert lines[1:] == [f"1.25,{MODEL_VERSION},{MODEL_DATE}", f"2.5,{MODEL_VERSION},{MODEL_DATE}"]


def test_a_file_says_what_it_is_of_in_a_column_of_its_own():
    table = pd.DataFrame({"Energy, kWh": [1.25, 2.5]})
    read = pd.read_csv(StringIO(csv_text(table, "A city car on the flat town commute, at 12 °C.")))
    assert list(read.columns) == ["Energy, kWh", "about", "model_version", "model_date"]
    assert read["about"].tolist() == ["A city car on the flat town commute, at 12 °C."] * 2
    assert csv_text(table, "=A1").splitlines()[1].startswith("1.25,'=A1")


def test_a_spreadsheet_finds_no_formula_in_what_somebody_calls_a_car():
    named = pd.DataFrame({"Car": ["=HYPERLINK(1)", " +1", "@sum", "-2", "city car, x=1"], "Energy, kWh": [-1.0] * 5})
    lines = csv_text(named).splitlines()[1:]
    assert [line.split(",-1.0")[0].strip('"') for line in lines] == [
        "'=HYPERLINK(1)", "' +1", "'@sum", "'-2", "city car, x=1"
    ]  # fmt: skip


def test_a_columns_numbers_have_equal_decimals():
    table = pd.DataFrame({"kWh": [0.5, 0.25], "stops": [1, 2], "km/h": [50.0, 40.0], "third": [1 / 3] * 2})
    assert evenly(table).to_string(delimiter="|").splitlines()[1] == "0|0.50|1|50|0.333333"


def test_a_table_is_made_only_for_who_asks_for_it():
    table = pd.DataFrame({"Speed, km/h": [50.0, 30.0]})
    asked = []
    assert csv_text(lambda: asked.append(1) or table) == csv_text(table) and len(asked) == 1
