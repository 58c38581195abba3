"""Drives side by side: what is assumed alike of both cancels, and a difference is told from none by its band."""

from dataclasses import replace

import numpy as np
import pytest

from model.describe.parameters import assumed_figures, open_figures
from model.describe.scenario_io import starting_drives
from model.out.comparison import SUBJECTS, difference, draw_beside, others, side_of, told_apart, with_strength
from model.sampling.drives import answer_of, drive, samples_of
from model.sampling.narrowing import FEWEST_LEFT, effective_number
from model.sampling.uncertainty import Band
from tests.refused import refuses

TOWN = starting_drives()["town"][2]
HILL = starting_drives()["suburb-hill"][2]
RUNS = 60


def side(scenario, first=TOWN, **how):
    return side_of(scenario, first.car_class, runs=RUNS, **how)


def width(band):
    return band.high - band.low


@pytest.mark.parametrize("scenario", [TOWN, HILL])
def test_a_drive_differs_from_itself_by_exactly_nothing(scenario):
    found = difference(side(scenario, scenario), side(scenario, scenario))
    nothing = Band(0.0, 0.0, 0.0)
    assert found.net_kwh == found.saved_kwh == found.saved_share == found.friction_kwh == nothing
    assert found.duration_s == 0
    assert not told_apart(found.net_kwh)


@pytest.mark.parametrize(
    ("subject", "value"), [("season", "winter"), ("brake_pedal", "friction"), ("car", "large-suv")]
)
def test_a_differences_band_is_narrower_than_the_difference_of_bands(subject, value):
    """The ends of two bands apart from each other: what one would say without runs drawn together."""
    first, other = side(TOWN), side(others(TOWN, subject)[value])
    found = difference(other, first)
    for name in ("net_kwh", "saved_kwh", "saved_share"):
        one, two = getattr(first.answer, name), getattr(other.answer, name)
        apart = Band(two.low - one.high, two.mid - one.mid, two.high - one.low)
        paired = getattr(found, name)
        assert width(paired) < width(apart)
        assert apart.low <= paired.low and paired.high <= apart.high


def test_runs_drawn_apart_would_widen_the_band():
    """The same two drives, the second with its runs in another order: nothing is shared any more."""
    first, other = side(TOWN), side(others(TOWN, "season")["winter"])
    order = np.random.RandomState(1).permutation(RUNS)
    shuffled = Band.of(other.samples.net_kwh[order] - first.samples.net_kwh)
    assert width(difference(other, first).net_kwh) < 0.7 * width(shuffled)


def test_the_first_drive_has_the_bands_of_its_headline():
    result = drive(TOWN)
    assert side(TOWN).answer == answer_of(result, samples_of(TOWN, result, RUNS))


@pytest.mark.parametrize("subject", SUBJECTS)
def test_every_drive_beside_another_has_the_runs_it_has_alone(subject):
    """Friction heat of the middle run, added up here, and energies as `samples_of` gives them."""
    value, other = list(others(TOWN, subject).items())[-1]
    found = side(other, other)
    result = drive(other)
    assert found.samples.net_kwh.tobytes() == samples_of(other, result, RUNS).net_kwh.tobytes(), value
    assert found.friction_kwh.min() <= result.wheel_friction_kwh <= found.friction_kwh.max()


def test_what_both_cars_assume_alike_is_drawn_once_and_a_classes_own_apart():
    suv = others(TOWN, "car")["large-suv"]
    one, two = draw_beside(TOWN, TOWN.car_class, RUNS), draw_beside(suv, TOWN.car_class, RUNS)
    mine, its = assumed_figures(TOWN.car_class), assumed_figures("large-suv")
    shared = [key for key in one if key in two and mine[key] == its[key]]
    own = [key for key in one if key in two and mine[key] != its[key]]
    assert {"cell_resistance_usual", "acceptance_level"} <= set(shared) and {"mass_kg", "drag_area_m2"} <= set(own)
    for key in shared:
        assert np.array_equal(one[key], two[key])
    for key in own:
        ranks = [values[:, 0].argsort().argsort() for values in (one[key], two[key])]
        assert not np.array_equal(*ranks)


def test_what_is_stated_is_not_drawn():
    stated = TOWN.with_setting("mass_kg", 1300.0)
    assert set(open_figures(TOWN.car_class, {})) - set(draw_beside(stated, TOWN.car_class, RUNS)) == {"mass_kg"}


def test_a_late_foot_costs_energy_beyond_what_is_not_known():
    found = difference(side(others(TOWN, "looks_ahead")["late"]), side(TOWN))
    assert told_apart(found.net_kwh) and found.net_kwh.low > 0
    assert found.friction_kwh.low > 0
    assert found.duration_s < 0


def test_at_the_same_speeds_a_blended_pedal_makes_lift_off_strengths_alike():
    strong = side(others(TOWN, "lift_off_mps2")["2"])
    assert difference(strong, side(TOWN)).net_kwh == Band(0.0, 0.0, 0.0)


def test_as_driven_the_foot_comes_up_as_the_strength_asks():
    strong, usual = (side(scenario, as_driven=True) for scenario in (with_strength(TOWN, 2.0), TOWN))
    assert strong.duration_s != usual.duration_s
    assert difference(strong, usual).net_kwh.mid != 0


def test_one_strength_for_the_drive_leaves_no_leg_its_own():
    own = TOWN.with_leg(0, "lift_off_mps2", 2.5)
    assert {leg.lift_off_mps2 for leg in with_strength(own, 0.5).legs} == {None}
    assert with_strength(own, 0.5).driver.lift_off_mps2 == 0.5


def test_another_car_keeps_the_pedal_and_nothing_else_that_was_stated():
    stated = TOWN.with_setting("mass_kg", 1300.0).with_setting("brake_pedal", "friction")
    assert others(stated, "car")["van"] == replace(TOWN, car_class="van", stated=(("brake_pedal", "friction"),))
    # the class's own car is another than the adjusted one
    assert TOWN.car_class in others(stated, "car")


@pytest.mark.parametrize("subject", SUBJECTS)
def test_no_drive_is_offered_beside_itself(subject):
    offered = others(TOWN, subject)
    assert offered and TOWN not in offered.values()
    assert len(set(offered.values())) == len(offered)


def test_a_pedal_that_the_class_has_is_not_offered_beside_itself():
    assert list(others(TOWN, "brake_pedal")) == ["friction"]
    assert list(others(TOWN.with_setting("brake_pedal", "blended"), "brake_pedal")) == ["friction"]


def test_where_either_drive_takes_nothing_their_shares_have_no_difference():
    one = side(TOWN)
    without_share = replace(one, answer=replace(one.answer, saved_share=None))
    assert difference(without_share, one).saved_share is None is difference(one, without_share).saved_share
    assert difference(one, one).saved_share is not None


def test_a_drive_that_cannot_be_is_refused():
    with refuses("soc_start"):
        side(TOWN.with_setting("soc_start", 0.001))


@pytest.mark.parametrize(
    ("band", "apart"),
    [
        (Band(0.1, 0.2, 0.3), True), (Band(-0.3, -0.2, -0.1), True), (Band(-0.1, 0.1, 0.3), False),
        (Band(0.0, 0.1, 0.2), False), (Band(0.0, 0.0, 0.0), False),
    ],
)  # fmt: skip
def test_a_difference_is_told_from_none_where_its_band_does_not_reach_zero(band, apart):
    assert told_apart(band) is apart


def test_what_is_printed_or_shown_narrows_each_side_as_it_does_the_headline():
    for key, figure in (("printed_wh_per_km", 141.0), ("shown_wh_per_km", 140.0)):
        known = TOWN.with_setting(key, figure)
        first, wide = side(known, known), side(TOWN, TOWN)
        assert first.answer.net_kwh == answer_of(drive(known), samples_of(known, drive(known), RUNS)).net_kwh
        assert width(first.answer.net_kwh) < width(wide.answer.net_kwh)
        winter = others(known, "season")["winter"]
        again = side_of(winter, known.car_class, runs=RUNS, beside=known)
        # the display spoke of the first drive: the same cars drive the second
        assert np.array_equal(again.weights, first.weights)
        differs = difference(again, first).net_kwh
        at_large = difference(side(others(TOWN, "season")["winter"], TOWN), wide).net_kwh
        assert differs != at_large and differs.low > 0


def test_what_is_known_of_one_car_stays_with_it():
    known = TOWN.with_setting("shown_wh_per_km", 140.0).with_setting("printed_wh_per_km", 150.0)
    suv = others(known, "car")["large-suv"]
    assert suv.conditions.shown_wh_per_km is None and "printed_wh_per_km" not in dict(suv.stated)
    assert TOWN.car_class not in others(TOWN.with_setting("shown_wh_per_km", 140.0), "car")
    wide, here = side(others(TOWN, "car")["large-suv"], TOWN), side(suv, known)
    assert here.answer == wide.answer and here.weights is None


def test_two_cars_that_are_known_not_to_be_alike_are_taken_apart():
    first = side(TOWN, TOWN)
    more = first.samples.net_kwh > np.median(first.samples.net_kwh)
    thirsty, frugal = (replace(first, weights=weights.astype(float)) for weights in (more, ~more))
    assert effective_number(thirsty.weights * frugal.weights) < FEWEST_LEFT
    assert difference(frugal, thirsty).net_kwh.high < 0
    assert difference(thirsty, replace(first, weights=None)).net_kwh == Band(0.0, 0.0, 0.0)
