"""Hills: refund, headroom, leaving full, long descents, and when the feel is back to normal."""

from dataclasses import replace

import numpy as np
import pytest

from model.describe.fields import InputError
from model.describe.parameters import car_from
from model.describe.scenario import Conditions, Driver
from model.describe.trace import Trace
from model.kernel.savings import evaluate
from model.limits.descent import charge_that_takes, descent, descent_to_fill_m, headroom, hill, refund, shares_of_slopes

CAR = car_from("family-hatch")
WARM = Conditions(ambient_c=20.0, cabin=False)
DRIVER = Driver()


def test_a_hill_is_as_high_steep_and_fast_as_asked():
    for rise in (250.0, -250.0):
        trace = hill(rise, 5.0, 72.0)
        assert trace.elevation_m[-1] - trace.elevation_m[0] == pytest.approx(rise) and trace.elevation_m.min() == 0
        assert trace.distance_m == pytest.approx(250 * np.sqrt(1 + 0.05**2) / 0.05)
        assert np.all(trace.speed_mps == 20) and trace.step_s.max() <= 1
        assert np.tan(np.arcsin(trace.sine_of_slope)) == pytest.approx(np.full(len(trace.step_s), np.sign(rise) * 0.05))


def test_a_refund_grows_with_steepness_and_falls_with_speed():
    shares = shares_of_slopes(CAR, WARM, DRIVER, [2, 4, 8], [40, 70, 110])
    assert np.all(np.diff(shares, axis=0) > 0) and np.all(np.diff(shares, axis=1) < 0)
    assert shares.max() < 1 and shares.min() < 0
    one = refund(CAR, WARM, DRIVER, 4, 70)
    assert shares[1, 1] == one.share == one.down_wh_per_km / one.up_wh_per_km


def test_a_slope_that_cannot_be_climbed_has_no_share():
    weak = car_from("city-car", {"motor_peak_kw": 5.0, "regen_peak_kw": 5.0})
    with pytest.raises(InputError):
        refund(weak, WARM, DRIVER, 25, 60)
    assert np.isnan(shares_of_slopes(weak, WARM, DRIVER, [25], [60])).all()


def test_headroom_is_what_a_battery_with_room_gains():
    way_down = hill(-400, 6, 60)
    room = headroom(way_down, CAR, WARM, DRIVER)
    found = evaluate(way_down, CAR, replace(WARM, soc_start=0.4), DRIVER)
    assert room.gained_share == pytest.approx(found.soc[-1] - 0.4, rel=0.01)
    assert room.start_at_most == pytest.approx(1 - room.gained_share)
    assert room.power_kw == pytest.approx(-found.run.terminal_w[0, 100] / 1000, rel=0.01)
    assert room.start_for_full_feel < room.start_at_most


def test_the_power_limit_is_where_acceptance_crosses_what_is_asked():
    room = headroom(hill(-400, 8, 60), CAR, WARM, DRIVER)
    kept = [
        evaluate(hill(-20, 8, 60), CAR, replace(WARM, soc_start=room.full_power_below + off), DRIVER).wheel_friction_kwh
        for off in (-0.005, 0.005)
    ]
    assert kept[0] == pytest.approx(0, abs=1e-9) and kept[1] > 1e-4
    assert charge_that_takes(CAR, -20.0, 50e3) is None
    cold = headroom(hill(-400, 8, 60), CAR, replace(WARM, ambient_c=-20.0), DRIVER)
    assert cold.full_power_below is None and cold.start_for_full_feel is None


def test_a_drive_that_only_climbs_needs_no_room():
    assert headroom(hill(200, 5, 50), CAR, WARM, DRIVER).gained_share == 0


def test_a_trailer_asks_for_more_room():
    alone, towing = (headroom(hill(-400, 6, 60), CAR, replace(WARM, trailer_kg=kg), DRIVER) for kg in (0.0, 1200.0))
    assert towing.gained_kwh > 1.3 * alone.gained_kwh


def test_descent_to_fill_the_battery():
    metres = descent_to_fill_m(CAR, WARM, DRIVER, 6, 50)
    found = evaluate(hill(-500, 6, 50), CAR, WARM, DRIVER)
    assert metres == pytest.approx(500 * 0.4 / (found.soc[-1] - 0.6), rel=0.02)
    assert descent_to_fill_m(CAR, WARM, DRIVER, 1, 50) is None


def test_a_long_descent_with_room_leaves_nothing_to_friction():
    down = descent(CAR, WARM, DRIVER, drop_m=1000, grade_pct=6, speed_kmh=50)
    assert down.need_kw == pytest.approx(down.motor_kw) and down.result.captured_share == 1 and down.limit == ""
    assert down.disc_c.max() < 21 and down.friction_only_disc_c.max() > 150
    assert down.friction_only_fade_caution == "below"


def test_a_long_descent_from_full_is_left_to_friction():
    down = descent(CAR, replace(WARM, soc_start=1.0), DRIVER, drop_m=1500, grade_pct=9, speed_kmh=60)
    assert down.limit == "battery" and down.result.captured_share < 0.1
    assert down.disc_c.max() > 300 and down.friction_only_fade_caution == "within"


def test_a_descent_that_needs_no_brake_says_so():
    down = descent(CAR, WARM, DRIVER, drop_m=50, grade_pct=1, speed_kmh=80)
    assert down.need_kw == 0 and down.result.captured_share is None


def test_the_strongest_charging_is_one_of_time_not_of_steps():
    """Ten seconds down a steep stretch, in steps of one second and of five."""

    def down(step_s):
        time_s = np.arange(0.0, 101.0, step_s)
        height = -np.interp(15.0 * time_s, [0.0, 600.0, 750.0, 1500.0], [0.0, 0.0, 15.0, 15.0])
        trace = Trace(time_s=time_s, speed_mps=np.full(len(time_s), 15.0), elevation_m=height)
        return headroom(trace, car_from("family-hatch"), Conditions(cabin=False), Driver()).power_kw

    assert down(5.0) == pytest.approx(down(1.0), rel=1e-3) and down(1.0) > 10


def test_heat_for_cabin_and_pack_and_charging_on_the_way_are_none_of_the_hills_doing():
    cold, heated = Conditions(ambient_c=-10.0, cabin=True), replace(CAR, pack_heater_kw=4.0)
    assert CAR.pack_heater_kw == 0
    way = hill(-300.0, 5.0, 60.0)
    up = evaluate(hill(20.0, 5.0, 60.0), CAR, replace(cold, cabin=False), DRIVER)
    assert refund(CAR, cold, DRIVER, 5.0, 60.0).up_wh_per_km == 1000 * up.net_kwh / up.distance_km
    assert headroom(way, heated, cold, DRIVER) == headroom(way, CAR, cold, DRIVER)
    charged = replace(way, charge_to=np.full(len(way.step_s), 0.9))
    assert headroom(charged, CAR, WARM, DRIVER) == headroom(way, CAR, WARM, DRIVER)
