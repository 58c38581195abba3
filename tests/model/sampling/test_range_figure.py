"""From a printed range to the road."""

from dataclasses import replace

import pytest

from model.describe.scenario import Conditions, Driver, Leg, Scenario
from model.describe.scenario_io import starting_drives
from model.kernel.savings import evaluate
from model.physics.battery import usable_in_the_cold_kwh
from model.sampling import range_figure
from model.sampling.drives import answer_of, drive, samples_of
from model.sampling.printed_tests import RANGE_TEST, TESTS
from model.sampling.range_figure import range_on_road
from model.sampling.uncertainty import run_each
from model.traces.cycles import cycle_trace
from tests.refused import refuses

HILLY = starting_drives()["suburb-hill"][2]


def found(scenario, **more):
    return range_on_road(scenario, 400.0, runs=20, **more)


def usable_share_in_the_cold(result):
    """What the cold leaves usable of a car's battery at the end of a drive, by its size [1]."""
    return usable_in_the_cold_kwh(result.car, result.run.pack_c[0, -1]) / result.car.usable_kwh


def test_steps_add_up_from_the_figure_to_the_road():
    road = found(HILLY)
    before = 400.0
    for step in road.steps:
        assert before - step.middle_cost_km == pytest.approx(step.middle_range_km, rel=1e-12)
        assert step.range_km.low < step.middle_range_km < step.range_km.high
        assert step.cost_km.low <= step.middle_cost_km <= step.cost_km.high
        before = step.middle_range_km
    assert [step.id for step in road.steps] == ["speeds", "hills", "load", "weather", "cabin"]
    assert road.range_km == road.steps[-1].range_km and road.middle_range_km == before


def test_the_single_number_is_that_of_the_drive_with_every_figure_at_its_middle():
    road, result = found(HILLY), drive(HILLY)
    on_test_km = range_on_road(HILLY, None, runs=20).test_range_km
    used = result.net_kwh / usable_share_in_the_cold(result)
    assert road.middle_range_km == pytest.approx(400 / on_test_km * result.car.usable_kwh * result.distance_km / used)
    tested = evaluate(cycle_trace("wltc3b"), result.car, RANGE_TEST, Driver())
    assert on_test_km == pytest.approx(result.car.usable_kwh * tested.distance_km / tested.net_kwh)


@pytest.mark.parametrize("scenario", [HILLY, HILLY.with_setting("ambient_c", -7.0)], ids=["mild", "cold"])
def test_with_nothing_printed_the_way_ends_with_the_range_that_the_drive_is_answered_with(scenario):
    result = drive(scenario)
    answered = answer_of(result, samples_of(scenario, result, 20)).range_km
    road = range_on_road(scenario, None, runs=20)
    assert not road.printed
    for end in ("low", "mid", "high"):
        assert getattr(road.range_km, end) == pytest.approx(getattr(answered, end), rel=1e-9)


def test_what_is_as_in_the_laboratory_costs_nothing():
    flat = Scenario(legs=(Leg(distance_km=20, speed_kmh=60, stops=8, slow_downs=5),), conditions=RANGE_TEST)
    costs = {step.id: step.cost_km for step in found(flat).steps}
    for name in ("hills", "load", "weather", "cabin"):
        assert costs[name].low == costs[name].high == 0.0


def test_each_step_costs_where_there_is_something_to_pay():
    winter = replace(HILLY, conditions=Conditions(ambient_c=-7, payload_kg=300))
    costs = {step.id: step.middle_cost_km for step in found(winter).steps}
    assert min(costs[name] for name in ("hills", "load", "weather", "cabin")) > 5
    assert found(winter).middle_range_km < found(HILLY).middle_range_km


def test_faster_is_less_far_and_the_figure_only_scales():
    def motorway(speed_kmh):
        return found(Scenario(legs=(Leg(distance_km=60, speed_kmh=speed_kmh, stops=1, slow_downs=2),))).middle_range_km

    assert motorway(90) > motorway(110) > motorway(130)
    double = range_on_road(HILLY, 800.0, runs=20)
    assert double.middle_range_km == pytest.approx(2 * found(HILLY).middle_range_km)


def test_kinds_of_figure():
    label, unadjusted = (found(HILLY, test=test).middle_range_km for test in ("us-label", "us-cycles"))
    assert label == pytest.approx(unadjusted / 0.7)
    assert set(TESTS) == {"wltc3b", "udds", "hwfet", "us-cycles", "us-label", "nedc"}


def test_another_day_drives_anew_only_what_its_weather_changes(monkeypatch):
    driven = []
    monkeypatch.setattr(range_figure, "run_each", lambda *given: driven.append(given) or run_each(*given))
    by_day = {}
    for ambient_c in (3.0, 9.0):
        driven.clear()
        by_day[ambient_c] = found(HILLY.with_setting("ambient_c", ambient_c).with_setting("soc_start", 0.55))
    assert len(driven) == len(("weather", "cabin"))
    steps = [{step.id: step.range_km for step in road.steps} for road in by_day.values()]
    assert steps[0]["load"] == steps[1]["load"] and steps[0]["weather"] != steps[1]["weather"]


def test_refusals():
    with refuses("test: “wltp” is not one of wltc3b"):
        found(HILLY, test="wltp")
    with refuses(r"test_range_km .*: 5 km cannot be used, 10 to 2000 km can"):
        range_on_road(HILLY, 5.0)
    downhill = Scenario(legs=(Leg(distance_km=10, speed_kmh=50, stops=0, slow_downs=0, descent_m=800, grade_pct=9),))
    with refuses("its range has no end"):
        found(downhill)
    with refuses("this car cannot"):
        found(HILLY.with_setting("motor_peak_kw", 5.0))


def test_the_range_of_a_drive_is_told_whatever_was_in_the_battery_at_its_start():
    """A drive too long for what is in the battery is driven with the test's charge, and until that is gone."""
    there, empty = found(HILLY), found(HILLY.with_setting("soc_start", 0.02))
    assert empty.middle_range_km == pytest.approx(there.middle_range_km, rel=0.02)
    motorway = Scenario(legs=(Leg(distance_km=150, speed_kmh=120, stops=0, slow_downs=0),))
    far = motorway.with_leg(0, "distance_km", 900)
    near, further = (found(one).middle_range_km for one in (motorway, far.with_setting("charging_stops", 3)))
    assert further == pytest.approx(near, rel=0.03)


def test_what_is_printed_or_shown_narrows_the_range_on_the_road():
    wide, taken = range_on_road(HILLY, 400.0), drive(HILLY)
    shown = HILLY.with_setting("shown_wh_per_km", 1200 * taken.net_kwh / taken.distance_km)
    narrow = range_on_road(shown, 400.0)
    assert narrow.range_km.high - narrow.range_km.low < wide.range_km.high - wide.range_km.low
    # what it takes on this road says most about this road, so the printed figure is worth less here
    assert narrow.range_km.mid < wide.range_km.mid
    assert range_on_road(HILLY.with_setting("printed_wh_per_km", 160.0), 400.0).range_km != wide.range_km
