"""Two cars' energy for a year as bars on one scale."""

from dataclasses import replace

import pytest

from model.describe.parameters import car_of
from model.sampling.beside_now import beside_now
from model.words.quantities import Display
from pages.parts.charts.beside import beside_bars
from tests.pages.charts.specs import assert_valid, tables
from tests.pages.made_reports import TOWN, taken


def test_both_bars_are_as_long_as_their_sums_on_one_scale():
    prices = replace(TOWN.year, now_l_per_100km=6.5)
    found = beside_now(taken(TOWN).year, prices, car_of(TOWN))
    spec = beside_bars(found, "€", Display())
    boxes = tables(spec)["boxes"]
    assert boxes["x1"].tolist() == pytest.approx(
        [found.cost.mid, found.cost.high, found.cost.high, found.fuel_cost]
    )
    assert boxes[boxes["meaning"] == "road"]["x0"].tolist() == [0]
    said = " ".join(tables(spec)["words"]["text"])
    assert "of electricity a year" in said and "Your petrol car now: € " in said
    assert_valid(spec)
