"""Lift-off in pictures: what they mark, that their lengths are true, and that they hold in odd cases."""

import itertools

import numpy as np
import pytest

from model.describe.parameters import car_from
from model.describe.scenario import Conditions, Driver
from model.describe.scenario_io import starting_drives
from model.lift_off.advice import advise, case_of
from model.lift_off.curves import curve_table, curves_of
from model.lift_off.hills import slowing_on_hills
from model.lift_off.slowing import lamp_zone_of, word_of
from model.one_stop.slow_down import compare
from model.words.quantities import Display
from pages.parts.charts.lift_off import KINDS, PANELS, STRONGEST, ZONES, energy_span, whole_axis
from pages.parts.charts.lift_off_hills import on_hills
from pages.parts.charts.slow_down import one_slow_down
from pages.parts.theme import LINE_PX
from tests.pages.charts.specs import assert_valid, tables

METRIC, US = Display(), Display(us=True)
TOWN = starting_drives()["town"][2]
CURVES = curves_of(TOWN)
TABLE = curve_table(CURVES)
CASE = case_of(CURVES)


def axis(advised=1.3, yours=1.0, grip_limit=CASE.grip_limit_mps2, table=TABLE, **more):
    return whole_axis(table, CASE.energy_tie_kwh, grip_limit, advised, yours, METRIC, **more)


@pytest.mark.parametrize("dark", [False, True])
def test_the_axis_is_a_valid_chart(dark):
    assert_valid(axis(dark=dark))
    assert_valid(axis(grip_limit=0.2, advised=0.2, dark=dark))


def test_both_curves_are_the_models_and_differ_without_colour():
    curves = tables(axis())["curves"]
    for kind in KINDS:
        for key in PANELS:
            np.testing.assert_allclose(curves[f"{kind}_{key}"], TABLE[f"{kind}_{key}"], atol=1e-4)
    assert len({tuple(dash) for dash in KINDS.values()}) == len(KINDS)
    lines = [layer for layer in axis()["layer"] if layer["mark"].get("type") == "line"]
    assert len(lines) == len(KINDS) * len(PANELS)


def test_advised_and_yours_are_marked_where_they_are():
    chosen = tables(axis(advised=1.3, yours=0.4))["chosen"].set_index("what")
    assert chosen.loc["advised", ["at", "text"]].tolist() == [1.3, "advised 1.3"]
    assert chosen.loc["yours", ["at", "text"]].tolist() == [0.4, "yours 0.4"]


def test_a_strength_beyond_the_axis_stands_at_its_end_with_its_own_number():
    yours = tables(axis(yours=3.2))["chosen"].set_index("what").loc["yours"]
    assert (yours["at"], yours["text"], yours["late"]) == (STRONGEST, "yours 3.2", True)


def test_what_grip_forbids_is_marked_only_where_it_does():
    def forbidden(spec):
        return [layer for layer in spec["layer"] if layer["data"].get("name") == "grip"]

    assert not forbidden(axis(grip_limit=STRONGEST))
    assert forbidden(axis(grip_limit=0.6))
    assert tables(axis(grip_limit=0.6))["grip"].iloc[0].tolist()[:2] == [0.6, STRONGEST]


def test_zones_are_those_of_the_model():
    for start, end, word, _ in ZONES:
        middle = (start + end) / 2
        assert word_of(middle) == word
        assert lamp_zone_of(end) == lamp_zone_of(middle)
    assert [zone[0] for zone in ZONES[1:]] == [zone[1] for zone in ZONES[:-1]]


def test_a_trifle_looks_like_one():
    low, high = energy_span(TABLE)
    assert high - low >= 0.1 * low * 0.999
    steep = TABLE.assign(as_driven_net_kwh=np.linspace(4.0, 2.0, len(TABLE)))
    assert energy_span(steep)[1] == pytest.approx(4.0)


def test_presses_have_the_most_room_and_no_panels_words_meet_anothers():
    heights = {key: height for key, (_, height) in PANELS.items()}
    assert heights["presses"] > sum(heights.values()) / 2
    spans = sorted((top, top + height) for top, height in PANELS.values())
    assert all(below - foot >= 1.5 * LINE_PX for (_, foot), (below, _) in itertools.pairwise(spans))
    titles = tables(axis())["words"]["text"].tolist()
    assert [title for title in titles if "not start at 0" in title] == [METRIC.say("lift-off-panel", panel="net_kwh")]


def test_heat_and_presses_are_drawn_from_zero():
    spec = axis()
    for layer in spec["layer"]:
        field = layer["encoding"].get("y", {}).get("field", "")
        if field.endswith(("friction_kwh", "presses")):
            assert layer["encoding"]["y"]["scale"]["domain"][0] == 0


def described(spec):
    """Everything but the data: while it stays, a browser redraws the picture without building it anew."""
    return {key: value for key, value in spec.items() if key != "datasets"}


def test_pictures_stand_still_while_the_strength_is_set():
    assert described(axis(yours=0.3)) == described(axis(yours=2.1))
    hills, slow_downs = [], []
    for yours in (0.3, 2.1):
        names = {1.3: "advised", yours: f"yours {yours:g}", 0.0: "rolling on"}
        hills.append(described(on_hills(slowing_on_hills(TOWN, 50.0, tuple(names)), [*names.items()], METRIC)))
        car, driver = car_from("family-hatch"), Driver(lift_off_mps2=yours)
        slow_downs.append(described(one_slow_down(compare(80 / 3.6, 50 / 3.6, car, Conditions(), driver), METRIC)))
    assert hills[0] == hills[1]
    assert slow_downs[0] == slow_downs[1]


def test_a_drive_that_needs_no_energy_and_no_brakes_is_drawn():
    flat = TABLE.assign(**{f"{kind}_{key}": 0.0 for kind in KINDS for key in PANELS})
    assert_valid(axis(table=flat))
    downhill = TABLE.assign(as_driven_net_kwh=TABLE["as_driven_net_kwh"] - 5, same_speeds_net_kwh=-3.0)
    assert energy_span(downhill)[0] < energy_span(downhill)[1]
    assert_valid(axis(table=downhill))


def test_the_advice_itself_can_be_drawn_for_every_starting_drive():
    for _, _, scenario in starting_drives().values():
        for pedal in ("blended", "friction"):
            curves = curves_of(scenario.with_setting("brake_pedal", pedal))
            case, advice = case_of(curves), advise(curves).overall
            advised = advice.lift_off_mps2
            spec = whole_axis(curve_table(curves), case.energy_tie_kwh, case.grip_limit_mps2, advised, 1.0, METRIC)
            assert tables(spec)["chosen"]["at"].tolist() == [advice.lift_off_mps2, 1.0]
            tie = tables(spec)["tie"].iloc[0]
            assert tie["y"] < tie["y2"]
