"""A scenario to its result, its band and its year."""

from dataclasses import replace

import numpy as np
import pytest

from model.describe.parameters import Assumed, assumed_figures, car_of, open_figures_of
from model.describe.scenario import SEASONS, Leg, Scenario
from model.describe.scenario_io import starting_drives
from model.kernel.follow import LATE_SHARE
from model.kernel.savings import LEAST_WH_PER_KM
from model.physics.air_and_tyres import air_density
from model.sampling import drives
from model.sampling.drives import answer_of, drive, samples_of, seasons_of, trace_of, year_of
from model.sampling.uncertainty import run_samples, sample, triangular
from model.traces.charging_stops import reach_of

TOWN = starting_drives()["town"][2]
DRIVES = {name: scenario for name, (_, _, scenario) in starting_drives().items()}


@pytest.mark.parametrize("name", DRIVES)
def test_every_starting_drive_can_be_driven(name):
    result = drive(DRIVES[name])
    legs = sum(leg.distance_km for leg in DRIVES[name].legs)
    assert result.distance_km == pytest.approx(legs * (2 if DRIVES[name].return_trip else 1), rel=1e-3)
    assert result.followed and result.ledger.error_share < 1e-9
    assert 0.03 < result.saved_share < 0.5


@pytest.mark.parametrize("name", DRIVES)
def test_every_headline_lies_in_its_band(name):
    result = drive(DRIVES[name])
    answer = answer_of(result, samples_of(DRIVES[name], result, 100))
    assert answer.saved_share.low < result.saved_share < answer.saved_share.high
    assert answer.net_kwh.low < result.net_kwh < answer.net_kwh.high
    assert answer.saved_kwh.low < result.saved_kwh < answer.saved_kwh.high
    expected_km = result.car.usable_kwh * result.distance_km * (1 / result.net_kwh - 1 / result.friction_only_net_kwh)
    assert answer.range_gain_km.low < expected_km < answer.range_gain_km.high


def test_there_and_back_is_twice_as_far_and_ends_at_the_same_height():
    there = replace(TOWN, legs=(Leg(climb_m=100.0),), return_trip=False)
    back = replace(there, return_trip=True)
    one, both = trace_of(there), trace_of(back)
    assert both.distance_m == pytest.approx(2 * one.distance_m, rel=1e-3)
    assert one.elevation_m[-1] - one.elevation_m[0] == pytest.approx(100, abs=0.1)
    assert both.elevation_m[-1] - both.elevation_m[0] == pytest.approx(0, abs=0.1)


def test_what_is_stated_is_driven():
    heavy = drive(TOWN.with_setting("mass_kg", 3000.0))
    assert heavy.car.mass_kg == 3000 and heavy.net_kwh > drive(TOWN).net_kwh


def test_a_descent_only_has_no_share_of_range():
    downhill = Scenario(legs=(Leg(distance_km=10.0, descent_m=500.0, stops=0, slow_downs=0),))
    downhill = downhill.with_setting("cabin", False)
    result = drive(downhill)
    answer = answer_of(result, samples_of(downhill, result, 20))
    assert answer.net_kwh.high < 0 and answer.saved_share.high > 1
    assert answer.range_gain_km is None


def test_a_drive_that_its_hill_pays_for_has_no_range_to_gain():
    """On friction brakes it takes something, with regeneration next to nothing: any number of kilometres would do."""
    down = Leg(distance_km=10.0, speed_kmh=60.0, descent_m=185.0, stops=0, slow_downs=2)
    scenario = Scenario(legs=(down,)).with_setting("cabin", False)
    result = drive(scenario)
    assert 0 < 1000 * result.net_kwh / result.distance_km < LEAST_WH_PER_KM
    assert answer_of(result, samples_of(scenario, result, 20)).range_gain_km is None
    assert result.range_gain is None and result.range_km() is None


def test_snow_and_ice_lie_in_winter_only():
    snowy = TOWN.with_setting("surface", "snow").with_leg(0, "surface", "ice").with_leg(1, "surface", "wet")
    found = {season: (then.conditions.surface, then.legs[0].surface, then.legs[1].surface)
             for season, _, then in seasons_of(snowy)}  # fmt: skip
    assert found["winter"] == ("snow", "ice", "wet")
    assert {found[season] for season in ("spring", "summer", "autumn")} == {("dry", "dry", "wet")}
    summer = {row.season: row for row in year_of(snowy, 5).rows}["summer"]
    dry_road = snowy.with_setting("surface", "dry").with_leg(0, "surface", "dry")
    dry = {row.season: row for row in year_of(dry_road, 5).rows}
    assert summer == dry["summer"]


def test_a_season_takes_what_its_drive_takes():
    for row, (_, _, then) in zip(year_of(TOWN, 5).rows, seasons_of(TOWN), strict=True):
        assert row.taken_kwh == drive(then).net_kwh


def test_a_year_is_the_sum_of_its_seasons():
    year = year_of(TOWN)
    assert [row.season for row in year.rows] == list(SEASONS)
    assert [row.ambient_c for row in year.rows] == [1, 11, 22, 10]
    assert sum(row.days for row in year.rows) == 220
    assert year.distance_km == pytest.approx(220 * drive(TOWN).distance_km)
    by_hand = sum(row.days * row.saved_kwh.mid for row in year.rows)
    assert year.saved_kwh.low < by_hand < year.saved_kwh.high


def test_each_season_is_driven_at_its_own_temperature():
    rows = {row.season: row for row in year_of(TOWN).rows}
    assert rows["winter"].net_kwh.low > rows["summer"].net_kwh.high
    winter = TOWN.with_setting("ambient_c", TOWN.year.winter_c)
    result = drive(winter)
    answer = answer_of(result, samples_of(winter, result))
    for figure in ("net_kwh", "saved_kwh", "saved_share"):
        assert getattr(rows["winter"], figure) == getattr(answer, figure)


def test_a_year_without_days_saves_nothing():
    idle = TOWN
    for season in SEASONS:
        idle = idle.with_setting(f"{season}_days", 0)
    year = year_of(idle)
    assert year.distance_km == 0 and year.saved_kwh.high == 0 and year.saved_money.high == 0


def test_money_and_carbon_follow_the_wall_and_their_factors():
    stated = TOWN.with_setting("charging_efficiency", 0.8)
    year = year_of(stated)
    assert year.saved_wall_kwh.mid == pytest.approx(year.saved_kwh.mid / 0.8)
    assert year.saved_money.low == pytest.approx(0.29 * year.saved_wall_kwh.low)
    assert year.saved_co2_kg.high == pytest.approx(0.21 * year.saved_wall_kwh.high)
    twice = year_of(stated.with_setting("price_per_kwh", 0.58))
    assert twice.saved_money.mid == pytest.approx(2 * year.saved_money.mid)


def test_what_the_year_saves_from_the_wall_spreads_with_the_charging_efficiency():
    """With every other figure stated the battery saves one number; the wall's band is that over the efficiency's."""
    efficiency = assumed_figures(TOWN.car_class)["charging_efficiency"]
    stated = TOWN
    for key, item in open_figures_of(TOWN).items():
        stated = stated if key == "charging_efficiency" else stated.with_setting(key, item.mid)
    assert set(open_figures_of(stated)) == {"charging_efficiency", "grip_level"}  # of grip there is enough here
    year = year_of(stated)
    assert year.saved_kwh.high - year.saved_kwh.low < 1e-9 * year.saved_kwh.mid
    for end, place in (("low", 0.95), ("high", 0.05)):
        worst = float(triangular(np.array(place), efficiency.low, efficiency.mid, efficiency.high))
        assert getattr(year.saved_wall_kwh, end) == pytest.approx(year.saved_kwh.mid / worst, rel=2e-3)


def test_a_headwind_is_from_behind_on_the_way_back():
    """There and back in wind is the two ways one by one, and less than the wind from ahead all the way."""
    out = Scenario(legs=(Leg(distance_km=8, speed_kmh=90, stops=0, slow_downs=0),)).with_setting("cabin", False)
    out = out.with_setting("tyres_warm", "yes").with_setting("stands_h", 0.0)
    ahead, behind = (drive(out.with_setting("wind_kmh", wind)) for wind in (40.0, -40.0))
    both = drive(replace(out, return_trip=True).with_setting("wind_kmh", 40.0))
    assert both.net_kwh == pytest.approx(ahead.net_kwh + behind.net_kwh, rel=5e-3)
    assert both.net_kwh < 1.7 * ahead.net_kwh
    weak = replace(out, return_trip=True).with_setting("motor_peak_kw", 14.0).with_setting("wind_kmh", 60.0)
    slow = drive(weak).trace
    there, back = (slow.speed_mps[1:][slow.heading == way].max() for way in (1, -1))
    assert there < 0.9 * back


def test_thin_air_goes_with_the_road_and_with_the_start():
    """A plateau that is climbed to drags as little as one that is started on."""
    plateau = Leg(distance_km=10, speed_kmh=110, stops=0, slow_downs=0)
    up = Scenario(legs=(Leg(distance_km=25, climb_m=1000, grade_pct=6), plateau))
    air = [drive(up.with_setting("altitude_m", start)) for start in (0.0, 1000.0)]
    on_top = [result.run.air_n[0, result.trace.leg == 1].max() for result in air]
    assert on_top[1] / on_top[0] == pytest.approx(air_density(20.0, 2000.0) / air_density(20.0, 1000.0), rel=1e-3)


def test_cars_of_the_band_that_cannot_keep_the_speeds_are_counted():
    """A hill at speed that the middle car just climbs: the weaker of the drawn cars do not, one by one."""
    hill = Scenario(legs=(Leg(distance_km=4, speed_kmh=100, stops=1, slow_downs=0, climb_m=250, grade_pct=8),))
    hill = hill.with_setting("cabin", False)
    result = drive(hill.with_setting("motor_peak_kw", 90.0))
    assert result.followed
    figures = {"motor_peak_kw": Assumed(25.0, 90.0, 120.0, "assumed", "")}
    drawn = sample(figures, 20)
    samples = run_samples(result.trace, result.car, result.conditions, result.driver, drawn)
    alone = [drive(hill.with_setting("motor_peak_kw", float(peak))).followed for peak in drawn["motor_peak_kw"][:, 0]]
    assert 0 < samples.unable == alone.count(False) < 20
    times = [drive(hill.with_setting("motor_peak_kw", float(peak))).trace.duration_s
             for peak in drawn["motor_peak_kw"][:, 0]]  # fmt: skip
    longer = np.array(times) / result.trace.duration_s - 1
    assert samples.slowest_share == pytest.approx(longer.max(), abs=0.002) and longer.max() > 0.05
    assert 0 < samples.late == (longer > LATE_SHARE).sum() <= samples.unable
    answer = answer_of(result, samples)
    assert (answer.unable, answer.runs) == (samples.unable, 20)
    assert (answer.late, answer.slowest_share) == (samples.late, samples.slowest_share)
    assert answer_of(drive(TOWN), samples_of(TOWN, drive(TOWN), 20)).unable == 0


def test_how_far_a_battery_goes_is_asked_only_where_it_runs_low(monkeypatch):
    """With plenty left on friction brakes only no stop is looked for, and the answer is the one that looking gives."""
    asked = []
    monkeypatch.setattr(drives, "reach_of", lambda *given: asked.append(given) or reach_of(*given))
    near, far = (Scenario(legs=(Leg(distance_km=km, speed_kmh=90.0, stops=1, slow_downs=1),)) for km in (40.0, 420.0))
    for scenario in (near, far):
        drives.reach.cache_clear()
        looked = reach_of(drives.described_trace(scenario), car_of(scenario), scenario.conditions, scenario.driver)
        assert drives.reach(scenario) == looked
    assert len(asked) == 1 and looked.end_m is not None


@pytest.mark.parametrize("ambient_c", [20.0, -10.0])
def test_a_full_battery_and_the_daily_limit_reach_as_far_as_what_they_hold(ambient_c):
    """From the daily limit down, what the cold holds back is missing as it is from a full battery."""
    scenario = TOWN.with_setting("ambient_c", ambient_c)
    result = drive(scenario)
    full, daily = result.range_km(), result.range_km(0.7)
    assert full - daily == pytest.approx(0.3 * result.car.usable_kwh / result.net_kwh * result.distance_km)
    bands = answer_of(result, samples_of(scenario, result, 100), 0.7)
    assert bands.range_km.low < full < bands.range_km.high
    assert bands.daily_range_km.low < daily < bands.daily_range_km.high
    # without regeneration the same battery reaches less far by the gain
    without = full * result.net_kwh / result.friction_only_net_kwh
    assert bands.range_gain_km.low < full - without < bands.range_gain_km.high
