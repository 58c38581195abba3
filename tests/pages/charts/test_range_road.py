"""The range as a road."""

from dataclasses import replace

import pytest

from model.sampling.drives import Bands, year_of
from model.sampling.uncertainty import Band
from model.words.quantities import Display
from pages.parts.charts.range_road import range_road, range_road_words, season_roads
from tests.pages.charts.specs import assert_valid, boxes, tables
from tests.pages.made_reports import TOWN

NOTHING = Band(0.0, 0.0, 0.0)
RANGES = Band(20.0, 30.0, 40.0), Band(120.0, 150.0, 180.0), Band(96.0, 120.0, 144.0)
ANSWER = Bands(None, NOTHING, NOTHING, NOTHING, *RANGES)


@pytest.fixture(scope="module")
def year():
    return year_of(TOWN, 5)


def test_what_regeneration_adds_begins_where_friction_brakes_would_end():
    spec = range_road(ANSWER, Display())
    own, added = boxes(spec, "road").iloc[0], boxes(spec, "back")
    assert (own["x0"], own["x1"]) == (0, 120.0)
    assert added[["x0", "x1", "hollow"]].to_numpy().tolist() == [[120.0, 150.0, False], [150.0, 180.0, True]]
    assert list(boxes(spec, "ink")[["x0", "x1"]].iloc[0]) == [120.0, 180.0]
    assert_valid(spec)


def test_it_is_told_in_the_readers_units_without_the_middle_of_the_band():
    for display in (Display(), Display(us=True)):
        text = " ".join(tables(range_road(ANSWER, display))["words"]["text"])
        ends = display.range_text(ANSWER.range_km, "km")
        assert ends in text and ends in range_road_words(ANSWER, display)
        assert display.text(150.0, "km") not in text


def test_winters_road_is_drawn_below_summers_on_the_same_scale(year):
    spec = season_roads(year, Display())
    (summer,) = boxes(spec, "road").query("x1 > 0 and not hollow").to_dict("records")
    winter = boxes(spec, "ink").iloc[1]
    found = {row.season: row.range_km for row in year.rows}
    assert summer["x1"] == found["summer"].mid and summer["y0"] < winter["y0"]
    assert found["winter"].mid < found["summer"].mid
    assert_valid(spec)


def test_without_a_year_or_a_range_there_is_no_road(year):
    assert season_roads(None, Display()) is None
    assert season_roads(replace(year, rows=tuple(replace(row, range_km=None) for row in year.rows)), Display()) is None
