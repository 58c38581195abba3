"""Pictures of a tested claim: counts that add up, bars where the numbers are, and words that fit."""

import math

import numpy as np
import pytest

from model.claims.collection import claims
from model.words.quantities import Display
from pages.parts import claim_words
from pages.parts.charts import claims as charts
from tests.answered import answered
from tests.pages.charts.specs import assert_valid, boxes, tables, texts

METRIC = Display()
VALUES = np.array([0.0, 1.0, 2.0, 2.0, 3.0, 10.0])


def drawn(claim_id, dark=False, **settings):
    answer = answered(claim_id, settings)
    asked = answer.question
    rows = claim_words.rows_of(answer, METRIC)
    return answer, charts.distribution(
        answer.values, asked.bounds, rows, asked.claim.unit, claim_words.keys(answer, METRIC), METRIC, dark
    )


@pytest.mark.parametrize(("claim_id", "dark"), [*((one, False) for one in claims()), (next(iter(claims())), True)])
def test_every_claims_runs_are_a_valid_picture(claim_id, dark):
    _, spec = drawn(claim_id, dark)
    assert_valid(spec)
    assert boxes(spec)[["x0", "x1"]].min().min() >= 0
    # rows that do not fit a telephone have been broken
    assert all(len(line) <= charts.TEXT_CHARS for line in tables(spec)["words"]["text"])


@pytest.mark.parametrize(
    "bounds",
    [(2.0, math.inf), (-math.inf, 2.0), (1.0, 3.0), (3.0, 10.0), (-9.0, 2.5), (50.0, math.inf), (-math.inf, -50.0)],
)
def test_every_run_is_counted_once_and_on_the_right_side(bounds):
    edges, counts, true = charts.steps_of(VALUES, bounds)
    assert counts.sum() == len(VALUES) and len(edges) == len(counts) + 1
    assert counts[true].sum() == ((bounds[0] <= VALUES) & (bounds[1] >= VALUES)).sum()
    assert len(counts) < 200


@pytest.mark.parametrize("claim_id", claims())
def test_the_dark_part_of_the_pile_is_the_share_that_is_true(claim_id):
    answer = answered(claim_id)
    _, counts, true = charts.steps_of(answer.values, answer.question.bounds)
    assert counts[true].sum() / counts.sum() == pytest.approx(answer.share, abs=1e-9)


def test_runs_that_are_all_alike_make_one_column():
    edges, counts, true = charts.steps_of(np.full(9, 4.0), (3.8, 4.2))
    assert list(counts) == [9] and list(true) == [True]
    assert edges[0] < 4 < edges[1]


def test_a_claim_far_beyond_all_runs_is_marked_at_the_edge_and_does_not_squeeze_them():
    _, near = drawn("two-megawatts", number="1.5")
    _, far = drawn("two-megawatts", number="100000")
    assert "claimed: 100,000 MW →" in texts(far) and "→" not in texts(near)
    width = max(boxes(near)["x1"])
    assert max(boxes(far)["x1"]) == pytest.approx(width, rel=0.2)


def test_the_claim_the_band_and_the_published_points_stand_at_their_numbers():
    answer, spec = drawn("recovered-on-test-cycle")
    low = min(boxes(spec, "quiet")["x1"])
    assert low >= 0
    rows = claim_words.rows_of(answer, METRIC)
    reach = charts.Axis.over(
        [answer.values.min(), answer.values.max(), *answer.question.bounds,
         *(end for row in rows for end in (row.low, row.high))], "%",
    )  # fmt: skip
    band = answer.quantiles
    ink = boxes(spec, "ink")
    found = ink[(ink["x0"] - reach.at(band["0.05"])).abs() < 1e-9]
    assert found["x1"].tolist() == pytest.approx([reach.at(band["0.95"])])
    (mean,) = rows[1:]
    assert (mean.low, mean.high) == (22, 22)
    marked = ink[((ink["x0"] + ink["x1"]) / 2 - reach.at(22)).abs() < 0.05 * (reach.at(23) - reach.at(22))]
    assert len(marked) >= 1


def test_an_axis_has_a_few_round_numbers():
    for low, high in ((0, 80), (17.6, 26.4), (-12, 6), (3.79, 4.21), (0, 1e6), (0.001, 0.004)):
        _, words = charts.Axis(low, high, "%").line(10)
        assert 2 <= len(words) <= charts.MOST_TICKS + 1


def test_bands_begin_at_zero_and_are_crossed_by_the_claim():
    rows = [charts.BandRow("one\ntwo", 10, 30, 20), charts.BandRow("a point", 25, 25)]
    spec = charts.bands(rows, (22.0, math.inf), "%")
    assert_valid(spec)
    assert boxes(spec)["x0"].min() == 0
    assert "one | two" in texts(spec)


def grid():
    return charts.Grid("Brake pedal", "Temperature, °C", ["blended", "friction-only"], ["−10 to 0", "0 to 10", "10"],
                       [[0.0, 0.5, 1.0], [None, 0.2, 0.004]],
                       [["12 %", "30 %", "45 %"], ["", "20 %", "−1 %"]])  # fmt: skip


@pytest.mark.parametrize("dark", [False, True])
def test_a_region_has_a_field_for_each_pair_of_steps_with_its_number(dark):
    spec = charts.region(grid(), METRIC, dark)
    assert_valid(spec)
    cells = tables(spec)["cells"]
    assert cells["text"].tolist() == ["12 %", "30 %", "45 %", "", "20 %", "−1 %"]
    assert "−10 | to 0" in texts(spec)
    assert "Brake pedal, by temperature, °C" in texts(spec)


def luminance(colour):
    parts = [int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5)]
    linear = [part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


@pytest.mark.parametrize("dark", [False, True])
def test_the_darkest_field_lets_its_number_be_read(dark):
    spec = charts.region(grid(), METRIC, dark)
    scale = spec["layer"][0]["encoding"]["color"]["scale"]
    ground, deep = ([int(colour[at : at + 2], 16) for at in (1, 3, 5)] for colour in scale["range"])
    share = 1 / scale["domain"][1]
    field = "#" + "".join(f"{round(g + share * (d - g)):02x}" for g, d in zip(ground, deep, strict=True))
    ink = spec["config"]["text"]["color"]
    light, low = sorted((luminance(field), luminance(ink)), reverse=True)
    assert (light + 0.05) / (low + 0.05) >= 4.5


@pytest.mark.parametrize("claim_id", ["range-gain-in-town", "cold-halves-range", "two-megawatts"])
def test_a_tornado_has_bars_from_end_to_end_that_part_at_the_middle_case(claim_id):
    answer = answered(claim_id)
    swings = claim_words.swings_of(answer, METRIC)
    base = answer.tornado[0].base
    spec = charts.tornado(swings, base, answer.question.bounds, answer.question.claim.unit, METRIC)
    assert_valid(spec)
    bars = boxes(spec, "quiet")
    bars = bars[(bars["y1"] - bars["y0"]) == charts.MARK_PX]
    lengths = (bars["x1"] - bars["x0"]).tolist()
    assert lengths == pytest.approx([swing.high - swing.low for swing in swings])
    assert lengths == sorted(lengths, reverse=True)
    assert all(swing.low <= base <= swing.high for swing in swings)


def test_long_names_above_the_grid_are_broken_and_not_cut():
    names = "Cabin heating and cooling", "Rolling resistance coefficient of all four tyres together, %"
    of_long_names = charts.Grid(*names, ["yes", "no"], ["a", "b"], [[0.1, 0.2], [0.3, 0.4]], [["1", "2"], ["3", "4"]])
    spec = charts.region(of_long_names, METRIC)
    words = tables(spec)["words"]
    told = words[words["side"] & (words["y"] < 40)]["text"].tolist()
    assert len(told) == 2 and " ".join(told) == f"{names[0]}, by {names[1][0].lower()}{names[1][1:]}"
    assert max(map(len, told)) <= charts.TEXT_CHARS


def test_the_key_of_a_tornado_names_what_is_claimed_as_the_verdict_does():
    """Both ends, though only one of them lies on the picture's axis."""
    swings = [charts.Swing("trailer", 50.0, 60.0, "at 1,000 kg", "at 2,000 kg")]
    spec = charts.tornado(swings, 55.0, (45.0, 55.0), "%", METRIC)
    assert "45 to 55 %" in str(tables(spec)).replace("\N{NO-BREAK SPACE}", " ")
