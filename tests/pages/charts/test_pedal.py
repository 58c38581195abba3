"""The brake pedal beside lift-offs that fade."""

import pytest

from model.limits.winter import LiftOffLeft, Situation
from pages.parts.charts.pedal import BarWords, beside_the_pedal
from tests.pages.charts.specs import assert_valid, boxes, texts

LIFTS = [
    LiftOffLeft(Situation.USUAL, 1.0, 1.0, 0.2, ""),
    LiftOffLeft(Situation.FULL, 1.0, 0.3, 0.2, "battery"),
]
ROWS = [
    BarWords("Foot up", "Grey and blue."),
    BarWords("Full battery", "On your drive: leave a good part of the battery free."),
]


@pytest.mark.parametrize("narrow", [False, True])
def test_all_bars_are_on_one_scale_and_what_is_missing_is_an_outline(narrow):
    spec = beside_the_pedal(LIFTS, 7.5, ROWS, BarWords("Brake pedal", "66 to 94 m."), narrow=narrow)
    assert boxes(spec, "back")[["x0", "x1", "hollow"]].round(3).to_numpy().tolist() == [
        [0.2, 1.0, False], [0.2, 0.3, False], [0.3, 1.0, True],
    ]  # fmt: skip
    assert boxes(spec, "friction")[["x0", "x1"]].to_numpy().tolist() == [[0, 7.5]]
    assert boxes(spec)["y1"].max() == spec["height"]
    words = texts(spec).replace(" | ", " ")
    assert all(row.name in words and row.beside in words for row in ROWS)
    assert_valid(spec)


def test_beside_a_strong_lift_off_words_take_more_lines():
    strong = [LiftOffLeft(lift.situation, 4.0, 4 * lift.slowing_mps2, 0.2, "") for lift in LIFTS]
    heights = [beside_the_pedal(lifts, 7.5, ROWS, ROWS[0], narrow=True)["height"] for lifts in (LIFTS, strong)]
    assert heights[0] < heights[1]
