"""Pictures set by hand: labels that do not overlap, boxes in the colour of their meaning."""

import numpy as np
from hypothesis import given
from hypothesis import strategies as st

from pages.parts.charts.layers import apart
from pages.parts.charts.marks import Box, Words, drawn
from pages.parts.theme import LINE_PX
from tests.pages.charts.specs import assert_valid, tables


@given(st.lists(st.floats(-50, 400), min_size=1, max_size=8), st.floats(5, 40))
def test_labels_keep_their_order_and_do_not_overlap(wanted, height):
    places = apart(wanted, [height] * len(wanted), 0, 300)
    order = np.argsort(wanted, kind="stable")
    gaps = np.diff(np.array(places)[order])
    assert np.all(gaps >= height - 1e-6)
    assert min(places) >= height / 2 - 1e-6
    assert max(places) <= max(300, height * len(wanted)) - height / 2 + 1e-6


def test_labels_with_room_stay_where_they_are_wanted():
    assert apart([200, 40, 120], [30, 30, 30], 0, 300) == [200, 40, 120]


def test_lines_of_words_stand_under_each_other():
    spec = drawn([Box(0, 1, 0, 10, "road")], [Words("one\ntwo", 0.5, 20)], 60, 1.0, False)
    assert_valid(spec)
    lines = tables(spec)["words"]
    assert lines["text"].tolist() == ["one", "two"]
    assert lines["y0"].diff().iloc[1] == LINE_PX
    assert spec["height"] == 60


def test_every_meaning_finds_its_colour():
    spec = drawn([Box(0, 1, 0, 10, "back", hollow=True)], [Words("x", 0, 0, "right", True)], 20, 1.0, True)
    assert_valid(spec)
    scale = spec["layer"][0]["encoding"]["color"]["scale"]
    assert dict(zip(scale["domain"], scale["range"], strict=True))["back"] == "#56a9dc"
