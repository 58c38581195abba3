"""The brake pedal beside lift-offs that fade."""

from dataclasses import replace

import pytest

from model.limits.foot_and_pedal import FootAndPedal
from model.limits.winter import Situation
from pages.parts.charts.pedal import NARROW_PX, RowWords, foot_and_pedal
from tests.pages.charts.specs import assert_valid, boxes, texts

FOUND = [
    FootAndPedal(Situation.USUAL, "dry", 0.8, 7.5),
    FootAndPedal(Situation.FULL, "dry", 0.1, 7.5),
    FootAndPedal(Situation.SLIPPERY, "ice", 0.0, 1.0),
]
ROWS = [RowWords(f"Row {place}", f"foot {place}", f"pedal {place}") for place in range(3)]


@pytest.mark.parametrize("narrow", [False, True])
def test_all_bars_are_on_one_scale_and_what_is_missing_is_an_outline(narrow):
    spec = foot_and_pedal(FOUND, ROWS, narrow=narrow)
    assert boxes(spec, "back")[["x0", "x1", "hollow"]].round(3).to_numpy().tolist() == [
        [0, 0.8, False], [0, 0.1, False], [0.1, 0.8, True], [0, 0.0, False], [0.0, 0.8, True],
    ]  # fmt: skip
    assert boxes(spec, "friction")["x1"].tolist() == [7.5, 7.5, 1.0]
    assert boxes(spec)["y1"].max() <= spec["height"]
    words = texts(spec)
    assert all(text in words for row in ROWS for text in (row.name, row.foot, row.pedal))
    assert_valid(spec)


def test_long_words_beside_the_pedal_leave_its_bar_less_room():
    wordy = [replace(row, pedal="pedal pressed hard, on a dry road") for row in ROWS]

    def whole(said):
        boxed = next(layer for layer in foot_and_pedal(FOUND, said, narrow=True)["layer"] if "x" in layer["encoding"])
        return boxed["encoding"]["x"]["scale"]["domain"][1]

    short, long = whole(ROWS), whole(wordy)
    assert 7.5 < short < long
    # the longest bar and its words fit the narrowest card
    assert NARROW_PX * 7.5 / long + 0.5 * 14 * 33 < NARROW_PX + 1
