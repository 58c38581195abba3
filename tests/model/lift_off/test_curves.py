"""A drive over the whole axis of lift-off strengths."""

from dataclasses import replace

import numpy as np
import pytest

from model.describe.scenario import Driver, Leg, Scenario
from model.lift_off import curves as lift_off_curves
from model.lift_off.curves import PEDALS, STRENGTHS_MPS2, as_set, as_you_would_drive, curve_table, curves_of
from model.sampling.drives import drive
from model.traces.drive_builder import _planned

TWO_LEGS = Scenario(
    legs=(
        Leg(distance_km=3.0, speed_kmh=50.0, stops=4, slow_downs=4, slow_to_kmh=25.0),
        Leg(distance_km=6.0, speed_kmh=90.0, stops=1, slow_downs=3, slow_to_kmh=50.0, descent_m=120.0, grade_pct=5.0),
    )
)


@pytest.fixture(scope="module")
def curves():
    return curves_of(TWO_LEGS)


@pytest.mark.parametrize("pedal", PEDALS)
@pytest.mark.parametrize("strength", [0.0, 1.0, 2.5])
def test_same_speeds_are_those_of_the_drive_itself(curves, pedal, strength):
    result = drive(TWO_LEGS.with_setting("brake_pedal", pedal).with_setting("lift_off_mps2", strength))
    place = int(np.argmin(np.abs(STRENGTHS_MPS2 - strength)))
    curve = curves.same_speeds[pedal]
    assert curve.net_kwh[:, place].sum() == pytest.approx(result.net_kwh, rel=1e-9)
    assert curve.friction_kwh[:, place].sum() == pytest.approx(result.wheel_friction_kwh, rel=1e-9)


def test_legs_add_up_and_more_strength_spares_the_friction_brakes(curves):
    for by_pedal in (curves.same_speeds, curves.as_driven):
        for curve in by_pedal.values():
            assert curve.net_kwh.shape == curve.presses.shape == (2, len(STRENGTHS_MPS2))
        friction = by_pedal["friction"].friction_kwh
        assert (friction[:, 0] > 2 * friction[:, -1]).all()
        assert (by_pedal["friction"].net_kwh >= by_pedal["blended"].net_kwh - 1e-9).all()


def test_presses_hang_on_lift_off_and_not_on_the_kind_of_pedal(curves):
    for by_pedal in (curves.same_speeds, curves.as_driven):
        np.testing.assert_array_equal(by_pedal["blended"].presses, by_pedal["friction"].presses)
    # without strength every one of the twelve slow-downs takes a press; in the end the five stops do
    presses = curves.as_driven["blended"].presses.sum(axis=0)
    assert presses[0] >= 12
    assert presses[-1] == 5


def test_a_car_that_comes_to_rest_by_itself_needs_no_press_at_all():
    rests = curves_of(TWO_LEGS.with_setting("comes_to_rest", True))
    assert rests.as_driven["blended"].presses.sum(axis=0)[-1] == 0


def test_as_driven_covers_the_described_road_at_any_strength(curves):
    habit = drive(TWO_LEGS).trace
    for strength in (0.0, 0.6, 2.5):
        trace = as_you_would_drive(TWO_LEGS.with_setting("lift_off_mps2", strength), curves.car)
        assert trace.distance_m == pytest.approx(habit.distance_m, rel=1e-6)
        assert trace.stops == habit.stops
        assert trace.descent_m == pytest.approx(habit.descent_m, rel=1e-6)


def test_rolling_on_is_quicker_and_harder_at_the_end(curves):
    assert (np.diff(curves.ride.duration_s) >= -1e-6).all()
    assert curves.ride.high_mps2[0] > curves.ride.high_mps2[-1]


def test_a_restless_foot_slows_too_much_only_where_the_car_slows_strongly():
    restless = curves_of(TWO_LEGS.with_setting("steady_foot", "restless"))
    steady = curves_of(TWO_LEGS.with_setting("steady_foot", "steady"))
    lost_s = restless.ride.duration_s - steady.ride.duration_s
    assert lost_s[0] < 0.2 * lost_s[-1]
    assert (restless.as_driven["blended"].net_kwh - steady.as_driven["blended"].net_kwh).sum(axis=0)[-1] > 0


def test_slowing_on_request_rolls_on_first():
    asked = TWO_LEGS.with_setting("slowing_on_request", True)
    curves, plain = curves_of(asked), curves_of(TWO_LEGS)
    assert curves.ride.duration_s == pytest.approx(np.full(len(STRENGTHS_MPS2), plain.ride.duration_s[0]))
    # what is asked for still works the motor: a friction-only pedal gains from more of it
    net = curves.as_driven["friction"].net_kwh.sum(axis=0)
    assert net[-1] < 0.9 * net[0]


def test_a_leg_may_have_its_own_strength():
    friction = TWO_LEGS.with_setting("brake_pedal", "friction").with_setting("lift_off_mps2", 0.0)
    own = drive(friction.with_leg(0, "lift_off_mps2", 2.0))
    place = int(np.argmin(np.abs(STRENGTHS_MPS2 - 2.0)))
    curve = curves_of(friction).same_speeds["friction"].friction_kwh
    assert own.wheel_friction_kwh == pytest.approx(curve[0, place] + curve[1, 0], rel=1e-6)
    assert drive(friction).wheel_friction_kwh == pytest.approx(curve[:, 0].sum(), rel=1e-6)


def test_a_leg_s_own_strength_counts_where_the_foot_comes_up():
    strong = TWO_LEGS.with_setting("lift_off_mps2", 2.5)
    everywhere = as_you_would_drive(strong, curves_of(strong).car)
    gentle = replace(strong, driver=Driver(lift_off_mps2=0.0))
    mixed = gentle.with_leg(0, "lift_off_mps2", 2.5).with_leg(1, "lift_off_mps2", 2.5)
    np.testing.assert_allclose(as_you_would_drive(mixed, curves_of(strong).car).speed_mps, everywhere.speed_mps)


def test_the_table_holds_the_car_s_own_pedal(curves):
    table = curve_table(curves)
    np.testing.assert_allclose(table["as_driven_net_kwh"], curves.as_driven["blended"].net_kwh.sum(axis=0))
    assert list(table["word"].unique()) == ["rolling on", "gentle", "firm", "strong"]
    assert len(table) == len(STRENGTHS_MPS2) and not table.isna().any().any()


@pytest.mark.parametrize("pedal", PEDALS)
def test_a_strength_as_it_is_set_is_a_point_of_the_curves(pedal):
    scenario = TWO_LEGS.with_setting("brake_pedal", pedal).with_setting("lift_off_mps2", 1.2)
    row = curve_table(curves_of(scenario)).set_index("lift_off_mps2").loc[1.2]
    found = as_set(scenario)
    for key in ("net_kwh", "friction_kwh", "presses"):
        assert found[key] == pytest.approx(row[f"as_driven_{key}"], rel=1e-9)
    for key in ("mean_mps2", "high_mps2", "reversals", "duration_s"):
        assert found[key] == pytest.approx(row[key], rel=1e-9)


def test_as_set_drives_a_leg_with_its_own_strength():
    mild = TWO_LEGS.with_setting("lift_off_mps2", 0.0)
    own = as_set(mild.with_leg(0, "lift_off_mps2", 2.0).with_leg(1, "lift_off_mps2", 2.0))
    assert own == pytest.approx(as_set(mild.with_setting("lift_off_mps2", 2.0)))
    assert own["presses"] < as_set(mild)["presses"]


def test_habits_plan_a_leg_once_for_all_strengths():
    # a habit's plan does not depend on the car's lift-off: only the slow-downs are made anew
    _planned.cache_clear()
    curves_of(TWO_LEGS)
    assert _planned.cache_info().misses == len(TWO_LEGS.legs)


def test_strengths_beyond_what_is_needed_are_driven_once(curves, monkeypatch):
    """Each strength on its own gives the same."""
    built = []
    monkeypatch.setattr(
        lift_off_curves, "as_you_would_drive", lambda *given: built.append(given) or as_you_would_drive(*given)
    )
    again = curves_of(TWO_LEGS)
    assert len(built) < len(STRENGTHS_MPS2)
    for pedal in PEDALS:
        assert again.as_driven[pedal].net_kwh == pytest.approx(curves.as_driven[pedal].net_kwh, rel=1e-12)
        for place in (8, 17, 25):
            one = TWO_LEGS.with_setting("brake_pedal", pedal)
            one = one.with_setting("lift_off_mps2", float(STRENGTHS_MPS2[place]))
            assert again.as_driven[pedal].net_kwh[:, place].sum() == pytest.approx(as_set(one)["net_kwh"], rel=1e-9)
