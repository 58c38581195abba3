"""Lines as fine as a screen shows, and axes that stand still."""

from pathlib import Path

import numpy as np
import pandas as pd
import pytest
from hypothesis import given
from hypothesis import strategies as st

from pages.parts.charts import layers
from pages.parts.charts.layers import along, next_step, still, thinned, upright


def wave(rows):
    place = np.linspace(0, 10, rows)
    return pd.DataFrame({"place": place, "speed": np.sin(place * 40), "height": np.cos(place)})


def drawn_between(steps, kept, column):
    """What a line through the kept rows shows at every row."""
    return np.interp(steps["place"], steps["place"].iloc[kept], steps[column].iloc[kept])


def test_nothing_that_a_screen_shows_is_lost():
    steps = wave(20_000)
    px = {"speed": 2 / 100, "height": 2 / 20}
    kept = thinned(steps, "place", px, bins=100)
    assert len(kept) <= 100 * 6
    assert kept[0] == 0 and kept[-1] == len(steps) - 1
    part = np.minimum((steps["place"] / 10 * 100).astype(int), 99)
    shown = steps.iloc[kept]
    for column in px:
        whole, drawn = steps.groupby(part)[column], drawn_between(steps, kept, column)
        drawn = pd.Series(drawn).groupby(part)
        assert drawn.max().to_numpy() == pytest.approx(whole.max().to_numpy(), abs=layers.SEEN_PX * px[column])
        assert drawn.min().to_numpy() == pytest.approx(whole.min().to_numpy(), abs=layers.SEEN_PX * px[column])
    assert set(shown["place"]) <= set(steps["place"])


@given(st.lists(st.floats(-50, 50), min_size=2, max_size=60), st.floats(0.01, 10))
def test_what_is_left_out_lies_on_the_lines_that_are_drawn(speeds, px):
    steps = pd.DataFrame({"place": np.arange(len(speeds), dtype=float), "speed": speeds})
    kept = thinned(steps, "place", {"speed": px})
    assert drawn_between(steps, kept, "speed") == pytest.approx(speeds, abs=layers.SEEN_PX * px + 1e-9)


def test_a_straight_line_needs_its_ends():
    steps = pd.DataFrame({"place": np.arange(9.0), "speed": [0, 1, 2, 3, 4, 4, 4, 4, 4.0]})
    assert thinned(steps, "place", {"speed": 0.1}).tolist() == [0, 4, 8]


def test_a_car_that_stands_all_the_time_keeps_its_rows():
    still = pd.DataFrame({"place": np.zeros(1000), "speed": np.zeros(1000)})
    assert len(thinned(still, "place", {"speed": 1.0})) == 1000


@given(st.floats(1e-3, 1e6))
def test_a_picture_that_stands_still_is_nearly_filled(value):
    assert value <= still(value) * (1 + 1e-9) < 1.051 * value


def test_a_trifle_leaves_a_picture_as_it_is():
    assert still(3.02) == still(3.05) == still(still(3.02))


@given(st.floats(0, 1e4), st.sampled_from([10, 20, 50]))
def test_the_next_step_reaches_the_value_and_no_further_than_needed(value, step):
    top = next_step(value, step)
    assert top >= step and top % step == 0
    assert value <= top and (top == step or top - step < value)


def test_every_number_along_the_way_carries_its_unit():
    axis = along("place", 12.5, "mi")
    assert axis["scale"]["domain"] == [0, 12.5] and "' mi'" in axis["axis"]["labelExpr"]
    # without this the rows of a standing car would be sorted anew
    assert axis["sort"] is None


@pytest.mark.parametrize("words", [{}, {80: "80 km/h"}])
def test_an_axis_has_words_where_it_was_given_some(words):
    axis = upright("speed", [0, 80], [90, 20], words)
    assert axis["scale"]["range"] == [90, 20]
    assert (axis["axis"] is None) == (not words)


def test_layers_are_made_in_one_place():
    charts = Path(layers.__file__).parent
    by_hand = {path.name for path in charts.glob("*.py") if '"encoding":' in path.read_text(encoding="utf-8")}
    assert by_hand <= {"layers.py", "export.py"}
