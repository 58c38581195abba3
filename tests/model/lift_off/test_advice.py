"""The advice: ordered rules, the deciding fact, and what would change it."""

from dataclasses import replace

import numpy as np
import pytest

from model.describe.scenario import Leg, Scenario
from model.describe.units import GRAVITY_MPS2
from model.lift_off.advice import GRIP_FOR_LIFT_OFF, Case, Supposed, advise, case_of, grip_allows
from model.lift_off.curves import STRENGTHS_MPS2, curves_of
from model.words.lift_off import against, because, rules, supposed
from model.words.quantities import Display

METRIC = Display()
TOWN = Scenario(legs=(Leg(distance_km=4.0, speed_kmh=50.0, stops=7, slow_downs=5, slow_to_kmh=25.0),))
COUNT = len(STRENGTHS_MPS2)


def case(**facts):
    """A case in which nothing forbids anything and nothing differs."""
    plain = Case(
        road="dry",
        grip_allows=np.ones(COUNT, dtype=bool),
        net_kwh=np.full(COUNT, 5.0),
        friction_kwh=np.zeros(COUNT),
        presses=np.full(COUNT, 30.0),
        brake_pedal="blended",
        prefers="fewest_presses",
    )
    return replace(plain, **facts)


def strength(of):
    return float(STRENGTHS_MPS2[of.best()[0]])


def test_where_all_is_equal_the_gentlest_is_advised():
    assert strength(case()) == 0
    assert "next to no presses" in because(case().advice(None, "front", ()).because, METRIC)


def test_grip_comes_first_and_is_named():
    slippery = case(
        road="snow",
        grip_allows=STRENGTHS_MPS2 <= 0.4,
        net_kwh=np.linspace(8, 5, COUNT),
        presses=np.linspace(60, 10, COUNT),
        brake_pedal="friction",
    )
    advice = slippery.advice(None, "rear", ())
    assert (advice.lift_off_mps2, advice.rule) == (0.4, "grip")
    told = because(advice.because, METRIC)
    assert told == "More than 0.4 m/s² would ask for over half of the grip of the rear wheels on packed snow."
    assert all("grip" in against(other, advice, METRIC) for other in advice.alternatives if other.lift_off_mps2 > 0.4)


def test_energy_comes_before_presses():
    thirsty = case(net_kwh=np.where(STRENGTHS_MPS2 < 1.2, 5.2, 5.0), brake_pedal="friction")
    advice = thirsty.advice(None, "front", ())
    assert (advice.lift_off_mps2, advice.rule) == (1.2, "energy")
    told = because(advice.because, METRIC)
    assert "Below 1.2 m/s² the drive takes up to 4 % more energy than at best" in told
    assert "friction brakes only" in told
    of_leg = because(advice.because, METRIC, of="leg")
    assert "Below 1.2 m/s² such a leg takes up to 4 %" in of_leg and "the drive" not in of_leg


def test_energy_may_also_speak_against_strength():
    presses = np.linspace(60, 10, COUNT)
    advice = case(net_kwh=np.where(STRENGTHS_MPS2 > 0.9, 5.2, 5.0), presses=presses).advice(None, "front", ())
    # of the two that energy leaves, 0.8 and 0.9 m/s², presses differ by too little
    assert (advice.lift_off_mps2, advice.rule) == (0.8, "energy")
    told = because(advice.because, METRIC)
    assert "Above 0.9 m/s²" in told and "speeds up again" in told


def test_within_one_percent_the_preference_decides():
    presses = np.where(STRENGTHS_MPS2 < 0.7, 30.0, 12.0)
    few = case(net_kwh=np.linspace(5.04, 5.0, COUNT), presses=presses)
    assert (strength(few), few.best()[1]) == (0.7, "preference")
    assert "12 times, against 30 in a car that rolls on" in because(few.advice(None, "front", ()).because, METRIC)
    gentle = replace(few, prefers="gentlest_ride")
    assert (strength(gentle), gentle.best()[1]) == (0.0, "preference")


def test_a_leg_that_its_descent_pays_for_is_not_split_by_a_trifle():
    downhill = case(net_kwh=np.where(STRENGTHS_MPS2 < 1.0, 0.5, 0.001 + 0.003 * (2.5 - STRENGTHS_MPS2)))
    assert strength(downhill) == 1.0


def test_alternatives_name_the_other_words_and_what_speaks_against_them():
    advice = advise(curves_of(TOWN)).overall
    assert {advice.word, *(other.word for other in advice.alternatives)} == {"rolling on", "gentle", "firm", "strong"}
    assert all(other.against for other in advice.alternatives)


def test_grip_rule_is_half_the_grip_of_the_driven_wheels():
    curves = curves_of(TOWN.with_setting("driven_axle", "rear"))
    car = curves.car
    most = STRENGTHS_MPS2[grip_allows(car, replace(curves.scenario.conditions, surface="snow"), 50.0)].max()
    friction = 0.2
    rear = 1 - car.front_load_share
    limit = GRIP_FOR_LIFT_OFF * friction
    exact = limit * GRAVITY_MPS2 * rear / (1 + limit * car.cg_height_m / car.wheelbase_m)
    assert most <= exact < most + 0.1


def test_the_season_changes_the_advice_and_is_foreseen():
    dry, snow = (advise(curves_of(TOWN.with_setting("surface", surface))) for surface in ("dry", "snow"))
    assert snow.overall.lift_off_mps2 < dry.overall.lift_off_mps2
    assert snow.overall.rule == "grip"
    assert "on packed snow" in [supposed(change, METRIC) for change in dry.what_if]


def test_the_slipperiest_leg_decides_for_the_whole_drive():
    two = replace(TOWN, legs=(*TOWN.legs, replace(TOWN.legs[0], surface="ice")))
    advice = advise(curves_of(two))
    assert advice.legs[1].lift_off_mps2 < advice.legs[0].lift_off_mps2
    assert advice.overall.lift_off_mps2 <= advice.legs[1].lift_off_mps2 + 1e-9
    assert [leg.leg for leg in advice.legs] == [0, 1]


def test_what_if_holds_only_what_would_change_it():
    advice = advise(curves_of(TOWN))
    assert all(change.lift_off_mps2 != advice.overall.lift_off_mps2 for change in advice.what_if)


def test_hills_are_named_where_they_ask_for_more():
    steep = Leg(distance_km=4.0, speed_kmh=40.0, stops=1, slow_downs=0, descent_m=300.0, grade_pct=15.0)
    hilly = replace(TOWN, legs=(steep,)).with_setting("prefers", "gentlest_ride").with_setting("looks_ahead", "far")
    what_if = {supposed(change, METRIC): change.lift_off_mps2 for change in advise(curves_of(hilly)).what_if}
    assert what_if["to keep 40 km/h on a 15 % downhill without the brake pedal"] == pytest.approx(1.40, abs=0.03)
    # what the road does not allow is not named
    snowy = advise(curves_of(hilly.with_setting("surface", "snow"))).what_if
    assert not any(change.what == Supposed.HILL for change in snowy)


def test_no_sentence_promises_safety_or_praises_recovered_energy():
    advice = advise(curves_of(TOWN))
    reasons = [because(one.because, METRIC) for one in (advice.overall, *advice.legs)]
    words = " ".join([*rules(METRIC), *reasons]).lower()
    assert "safe" not in words and "recovered" not in words and "!" not in words


def test_case_of_a_leg_is_part_of_the_whole():
    curves = curves_of(replace(TOWN, legs=TOWN.legs * 2))
    whole, first, second = case_of(curves), case_of(curves, 0), case_of(curves, 1)
    np.testing.assert_allclose(whole.net_kwh, first.net_kwh + second.net_kwh)
    np.testing.assert_allclose(whole.presses, first.presses + second.presses)


def test_the_limits_that_pictures_mark_are_those_of_the_rules():
    plain = case(net_kwh=np.linspace(5.2, 5.0, COUNT), grip_allows=STRENGTHS_MPS2 <= 1.6)
    best, most = plain.energy_tie_kwh
    assert plain.grip_limit_mps2 == 1.6
    assert best == plain.net_kwh[STRENGTHS_MPS2 == 1.6] and most == pytest.approx(1.01 * best)
    np.testing.assert_array_equal(plain.energy_allows, plain.net_kwh <= most)


def test_every_advice_carries_what_is_advised_on_snow_and_ice():
    """Whatever the road it is for: the same rule, the same legs, on the slippery road."""
    dry, snowy = (curves_of(TOWN.with_setting("surface", surface)) for surface in ("dry", "snow"))
    for curves in (dry, snowy):
        found = advise(curves)
        for leg, advice in [(None, found.overall), *enumerate(found.legs)]:
            assert [road.road for road in advice.slippery] == ["snow", "ice"]
            for road, surface in zip(advice.slippery, ("snow", "ice"), strict=True):
                case = case_of(curves, leg, season=surface)
                assert road.lift_off_mps2 == STRENGTHS_MPS2[case.best()[0]] <= case.grip_limit_mps2
    glazed = advise(curves_of(TOWN.with_setting("surface", "glazed-ice"))).overall
    assert [road.road for road in glazed.slippery] == ["glazed-ice"]
