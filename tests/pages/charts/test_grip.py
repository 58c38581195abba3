"""Grip in pictures: arrows and ellipses share one scale, bands are the roads', and nothing leaves the picture."""

from dataclasses import replace

import numpy as np
import pytest

from model.describe.scenario import SURFACES
from model.describe.scenario_io import starting_drives
from model.limits.grip_margin import BENDS_M
from model.limits.limit_settings import LimitSettings
from model.limits.slippery_road import slippery_road
from model.physics.grip import LATERAL_SHARE
from model.words.quantities import Display
from pages.parts.charts.grip import (
    FARTHEST_PX,
    MIDDLE_PX,
    RADIUS_PX,
    STRONGEST,
    axles,
    balance,
    by_road,
    loads,
    road_name,
    strength_text,
)
from tests.pages.charts.specs import assert_valid, tables

METRIC = Display()
VALLEY = starting_drives()["mountain-valley"][2]
USUAL = LimitSettings(bend="gentle bend")


def road(surface="snow", settings=USUAL, **stated):
    scenario = VALLEY.with_setting("surface", surface)
    for key, value in stated.items():
        scenario = scenario.with_setting(key, value)
    return slippery_road(scenario, settings)


SNOW = road()


def axles_of(found, dark=False):
    return axles(found.asked, found.check["available_friction"], found.most_friction, METRIC, dark)


def roads_of(found, yours=1.0, dark=False):
    return by_road(found.by_surface, yours, found.check["surface"], METRIC, dark)


@pytest.mark.parametrize("dark", [False, True])
def test_they_are_valid_charts(dark):
    assert_valid(axles_of(SNOW, dark))
    assert_valid(roads_of(SNOW, dark=dark))
    assert_valid(loads(SNOW.loads, 1.0, METRIC, dark))
    assert_valid(balance(SNOW.balance, SNOW.check["available_friction"], METRIC, dark))


@pytest.mark.parametrize("surface", SURFACES)
def test_every_road_makes_a_picture(surface):
    found = road(surface)
    assert_valid(axles_of(found))
    assert_valid(roads_of(found))


def test_arrow_and_ellipse_share_one_scale():
    """How far an arrow reaches into its ellipse is the friction asked over the friction there is."""
    sets, check = tables(axles_of(SNOW)), SNOW.check
    for place, axle in enumerate(("front", "rear")):
        low = sets["rings"][sets["rings"]["ring"] == f"{axle} low"]
        long, wide = (low[way].max() - low[way].min() for way in ("y", "x"))
        assert wide / long == pytest.approx(LATERAL_SHARE, abs=0.01)
        arrow = sets["arrows"].iloc[place]
        along, across = (arrow["y2"] - arrow["y"]) / (long / 2), (arrow["x2"] - arrow["x"]) / (wide / 2)
        asked = check["demand_by_axle"][axle]["in_all"] / check["available_friction"]["low"]
        assert np.hypot(along, across) == pytest.approx(asked, abs=0.03)
        assert along >= 0 and across > 0


def test_the_arrow_of_a_small_margin_leaves_the_inner_ellipse_and_a_larger_one_does_not():
    assert SNOW.check["margin"] == "small"
    dry = road("dry")
    assert dry.check["margin"] == "larger"
    for found, leaves in ((SNOW, True), (dry, False)):
        sets = tables(axles_of(found))
        low = sets["rings"][sets["rings"]["ring"] == "rear low"]
        arrow = sets["arrows"].iloc[1]
        radius = (low["y"].max() - low["y"].min()) / 2
        assert (np.hypot(arrow["x2"] - arrow["x"], arrow["y2"] - arrow["y"]) > radius) == leaves


def test_the_heavier_axle_has_the_larger_ellipse():
    rings = tables(axles_of(SNOW))["rings"]
    size = rings.groupby("ring")["y"].agg(lambda y: y.max() - y.min())
    assert size["front high"] == pytest.approx(2 * RADIUS_PX, abs=0.1)
    shares = SNOW.check["axle_load_share"]
    assert size["rear high"] / size["front high"] == pytest.approx(shares["rear"] / shares["front"], abs=0.01)


@pytest.mark.parametrize("bend", BENDS_M)
def test_what_is_asked_far_too_much_stays_in_the_picture(bend):
    found = road("glazed-ice", replace(USUAL, bend=bend, grip_kmh=130.0), lift_off_mps2=3.5)
    sets = tables(axles_of(found))
    reach = np.hypot(sets["arrows"]["x2"] - sets["arrows"]["x"], sets["arrows"]["y2"] - sets["arrows"]["y"])
    assert reach.max() <= FARTHEST_PX + 0.01
    assert sets["rings"]["x"].min() > 0 and sets["arrows"]["x"].eq(MIDDLE_PX).all()


def test_numbers_stand_beside_each_axle():
    text = " | ".join(tables(axles_of(SNOW))["notes"]["text"])
    check = SNOW.check
    for axle in ("front", "rear"):
        assert f"asked for {check['demand_by_axle'][axle]['in_all']:.2f}" in text
        assert f"{100 * check['axle_load_share'][axle]:.0f} % of the weight" in text
    assert "there is 0.15 to 0.35" in text


def test_bands_are_the_roads_and_the_one_driven_on_is_bold():
    rows, found = tables(roads_of(SNOW))["roads"], SNOW.by_surface
    for level in ("low", "mid", "high"):
        np.testing.assert_allclose(rows[level], found[level].clip(upper=STRONGEST), atol=1e-3)
    assert list(rows["text"]) == [road_name(surface, METRIC) for surface in SURFACES]
    assert list(rows.loc[rows["here"], "text"]) == ["packed snow"]
    assert [text.split(" margin")[0] for text in rows["margin"]] == [
        {"none": "no"}.get(margin, margin) for margin in found["margin"]
    ]


def test_a_dot_is_on_the_firm_road_where_it_fades_or_off_its_end():
    dry, none = road("dry"), road("dry", lift_off_mps2=0.0)
    for found, yours in ((dry, 1.0), (dry, 3.5), (none, 0.0)):
        rows = tables(roads_of(found, yours=yours))["roads"]
        for dot, low, high in zip(rows["dot"], found.by_surface["low"], found.by_surface["high"], strict=True):
            assert dot == ("off" if yours > high or not high else "firm" if yours <= low else "fading")


def test_a_strength_beyond_the_axis_is_marked_at_its_end():
    assert tables(roads_of(SNOW, yours=9.0))["yours"]["low"].iloc[0] == STRONGEST


@pytest.mark.parametrize(
    ("low", "high", "text"),
    [(0.0, 0.0, "none"), (0.0, 1.2, "0 to 1.2 m/s²"), (0.7, 1.8, "0.7 to 1.8 m/s²"), (3.6, 5.0, "over 3.5 m/s²"),
     (1.0, 4.0, "1 to more than 3.5 m/s²")],
)  # fmt: skip
def test_bands_of_strengths_in_words(low, high, text):
    assert strength_text(low, high, METRIC) == text
