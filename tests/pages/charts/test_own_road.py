"""Pictures of a recording beside the model."""

import pandas as pd

from model.words.quantities import Display
from pages.parts.charts.own_road import energy_chart, residual_chart, slow_downs_chart
from tests.pages.charts.specs import assert_valid


def test_bars_leave_a_line_at_nothing_and_keep_their_order():
    spec = residual_chart(["standing", "0 to 20 km/h"], [-0.02, 0.01])
    assert_valid(spec)
    low, high = spec["layer"][0]["encoding"]["x"]["scale"]["domain"]
    assert low == -high and high > 0.02 and spec["layer"][0]["encoding"]["y"]["sort"] is None


def test_slow_downs_share_one_scale_both_ways():
    spec = slow_downs_chart(pd.DataFrame({"measured_wh": [1.0, 30.0], "modelled_wh": [2.0, 25.0]}), Display())
    assert_valid(spec)
    encoding = spec["layer"][1]["encoding"]
    assert encoding["x"]["scale"]["domain"] == encoding["y"]["scale"]["domain"] == [0, 40.0]


def test_names_keep_off_their_lines():
    table = pd.DataFrame({"minutes": [0.0, 1.0], "measured_kwh": [0.0, 1.0], "modelled_kwh": [0.0, 0.9]})
    spec = energy_chart(table, Display())
    assert_valid(spec)
    assert sorted(layer["mark"]["dy"] for layer in spec["layer"] if layer["mark"]["type"] == "text") == [-16, 20]
