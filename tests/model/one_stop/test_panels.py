"""What the explaining panels show: books that add up, borders that hold, and the kernel's own numbers."""

from dataclasses import replace

import numpy as np
import pytest

from model.describe.parameters import car_from
from model.describe.scenario import SETTINGS, Conditions, Driver
from model.describe.units import GRAVITY_MPS2, J_PER_WH
from model.kernel.moments import motor_loss_w
from model.kernel.savings import evaluate
from model.limits.friction_brakes import FRONT_SHARE
from model.one_stop import bigger_motor, machine_map
from model.one_stop.panels import PANEL_FIELDS, PanelSettings, settings_of
from model.one_stop.repeated_stops import repeated_stops
from model.one_stop.slow_down import change, drive_way
from model.one_stop.stop_energy import back_by_speed, energy_of, hardest_mps2, motion_wh, stop, way_out
from model.one_stop.who_slows import grip_by_speed, hardest_of, late_motor, split_of
from model.traces.cycles import cycle_trace
from model.traces.habits import pull_away
from tests.refused import told

MILD = Conditions(ambient_c=15.0)
STOPS = [
    (car, pedal, speed, slowing)
    for car in ("city-car", "family-hatch", "pickup")
    for pedal in ("blended", "friction")
    for speed, slowing in ((50.0, 1.5), (130.0, 6.0), (20.0, 0.5))
]


def car_with(name="family-hatch", **stated):
    return car_from(name, stated)


def parts(energy):
    return energy.road + energy.friction + energy.engine + energy.losses + energy.aboard + energy.battery


# one stop and its energy


@pytest.mark.parametrize(("name", "pedal", "speed", "slowing"), STOPS)
def test_the_motion_of_a_stop_is_found_again_in_its_parts(name, pedal, speed, slowing):
    energy = energy_of(stop(speed, slowing, car_with(name, brake_pedal=pedal), MILD, Driver()))
    assert parts(energy) == pytest.approx(energy.motion, rel=1e-9)
    assert min(vars(energy).values()) >= 0
    assert energy.stored + energy.cells == pytest.approx(energy.battery)


def test_a_hybrids_engine_has_its_part_in_a_stop():
    hybrid = car_with("full-hybrid")
    energy = energy_of(stop(120.0, 1.5, hybrid, replace(MILD, soc_start=1.0), Driver()))
    assert energy.engine > 0
    assert parts(energy) == pytest.approx(energy.motion, rel=1e-9)


@pytest.mark.parametrize(("name", "pedal", "speed", "slowing"), STOPS)
def test_a_stop_recovers_what_the_same_slow_down_does_elsewhere(name, pedal, speed, slowing):
    car, quiet = car_with(name, brake_pedal=pedal), replace(MILD, cabin=False)
    way = drive_way([change(speed / 3.6, 0.0, slowing, car, quiet)], car, quiet, Driver())
    energy = energy_of(stop(speed, slowing, car, MILD, Driver()))
    assert energy.battery == pytest.approx(way.recovered_wh)
    assert energy.friction == pytest.approx(way.friction_wh)


def test_twice_the_speed_is_four_times_the_energy():
    car = car_with(mass_kg=1900, rotating_mass_share=0.04)
    slow, fast = (energy_of(stop(speed, 1.5, car, MILD, Driver())) for speed in (50.0, 100.0))
    assert fast.motion == pytest.approx(4 * slow.motion)
    assert (slow.motion, fast.motion) == pytest.approx((53, 212), abs=0.5)


def test_a_stop_from_a_lower_speed_is_the_end_of_a_longer_one():
    car = car_with()
    curve = back_by_speed(130.0, 1.5, car, MILD, Driver())
    for speed in (30.0, 50.0, 100.0):
        own = energy_of(stop(speed, 1.5, car, MILD, Driver())).battery
        assert np.interp(speed, curve["speed_kmh"][::-1], curve["battery_wh"][::-1]) == pytest.approx(own, rel=2e-3)
    assert curve["motion_wh"].iloc[0] == pytest.approx(motion_wh(130.0, 1.04 * car.mass_kg))


def test_nothing_is_braked_harder_than_the_road_allows():
    icy = replace(MILD, surface="ice")
    stopped = stop(100.0, 10.0, car_with(), icy, Driver())
    assert -stopped.trace.acceleration_mps2.min() == pytest.approx(hardest_mps2(100.0, icy))
    assert hardest_mps2(100.0, icy) < 1.1 < hardest_mps2(100.0, MILD)


def test_without_losses_all_that_is_stored_comes_back_to_the_wheels():
    ideal = car_with(
        motor_loss_fixed=0.0, motor_loss_speed=0.0, motor_loss_speed2=0.0, motor_loss_torque2=0.0, gear_efficiency=1.0,
        motor_loss_working=0.0, open_slowing_share=0.0,
        cell_resistance_share=0.0,
    )  # fmt: skip
    assert way_out(100.0, 80.0, ideal, MILD, Driver()).wheels == pytest.approx(100.0)


def test_the_way_out_has_the_losses_of_pulling_away():
    car = car_with()
    out = way_out(100.0, 80.0, car, MILD, Driver())
    assert out.cells + out.motor + out.gear + out.wheels == pytest.approx(100.0)
    assert out.gear / (out.gear + out.wheels) == pytest.approx(1 - car.gear_efficiency)
    # by hand, at the middle of the way: a motor's loss law
    speed, force = 40 / 3.6, pull_away(0.0, 80 / 3.6, Driver()).pulse.mean * 1.8 * 1.04 * car.mass_kg
    lost = motor_loss_w(car, speed, force) / (force * speed)
    assert out.motor / (out.gear + out.wheels) == pytest.approx(lost, rel=0.3)


# the machine


@pytest.mark.parametrize("slowing", [False, True])
@pytest.mark.parametrize("name", ["city-car", "performance-saloon"])
def test_between_its_edges_the_machine_is_as_efficient_as_said(name, slowing):
    car = car_with(name)
    speed = np.linspace(2.0, 35.0, 12)
    low, high = machine_map.efficient_n(car, speed, 0.9, slowing=slowing)
    most = machine_map.greatest_n(car, speed, slowing=slowing)
    inside = high > low
    assert inside.any() and (high <= most).all()

    def efficiency(force):
        mechanical, loss = speed * force, motor_loss_w(car, speed, -force if slowing else force)
        return ((mechanical - loss) / mechanical if slowing else mechanical / (mechanical + loss))[inside]

    at_low, middle, beyond = (efficiency(force) for force in (low, (low + high) / 2, low * 0.9))
    assert at_low == pytest.approx(np.full(inside.sum(), 0.9))
    assert (middle > 0.9).all() and (beyond < 0.9).all()


def test_a_machine_without_losses_is_efficient_everywhere():
    ideal = car_with(
        motor_loss_fixed=0.0, motor_loss_speed=0.0, motor_loss_speed2=0.0, motor_loss_torque2=0.0,
        motor_loss_working=0.0, open_slowing_share=0.0,
    )  # fmt: skip
    speed = np.array([5.0, 30.0])
    low, high = machine_map.efficient_n(ideal, speed, 0.9, slowing=True)
    assert low == pytest.approx([0, 0])
    assert high == pytest.approx(machine_map.greatest_n(ideal, speed, slowing=True))


def test_the_borders_meet_where_torque_hands_over_to_power():
    car = car_with(regen_peak_kw=65.0, motor_peak_kw=130.0, motor_base_speed_kmh=50.0)
    assert machine_map.constant_torque_until_kmh(car, slowing=False) == pytest.approx(50.0)
    assert machine_map.constant_torque_until_kmh(car, slowing=True) == pytest.approx(25.0)
    assert machine_map.greatest_n(car, 50 / 3.6, slowing=True) == pytest.approx(65e3 / (50 / 3.6))


def test_a_drives_use_of_the_machine_is_that_of_its_books():
    result = evaluate(cycle_trace("udds"), car_with(), MILD, Driver())
    uses, gear = machine_map.use_of(result), result.car.gear_efficiency
    pulled, slowed = uses["pulling_forwards"], uses["slowing_forwards"]
    wheel_pull = np.maximum(result.run.wheel_n, 0) * result.run.speed * result.run.step_s
    assert pulled.shaft_kwh == pytest.approx(wheel_pull.sum() / 3.6e6 / gear)
    assert slowed.shaft_kwh == pytest.approx(result.wheel_regen_kwh * gear, rel=5e-3)
    assert 0.8 < slowed.efficiency < 1 and 0.8 < pulled.efficiency < 1
    assert slowed.electric_kwh < slowed.shaft_kwh and pulled.electric_kwh > pulled.shaft_kwh
    assert uses["slowing_backwards"].efficiency is None
    shaft = np.abs(result.run.shaft_n * result.run.speed) * result.run.step_s
    cloud = machine_map.cloud_of(result)
    assert cloud["energy_wh"].sum() == pytest.approx(shaft.sum() / J_PER_WH)
    assert (cloud["speed_kmh"] <= 92).all() and cloud["force_n"].min() < 0 < cloud["force_n"].max()


# who slows the car


@pytest.mark.parametrize("name", ["city-car", "family-hatch", "pickup"])
def test_who_slows_adds_up_to_the_slowing(name):
    stopped = stop(100.0, 3.0, car_with(name), MILD, Driver())
    split = split_of(stopped)
    assert split[["road_mps2", "motor_mps2", "friction_mps2"]].sum(axis=1).to_numpy() == pytest.approx(3.0)
    assert (split["friction_mps2"] > 0.01).any() and set(split.loc[split["friction_mps2"] > 0.01, "limit"]) <= {
        "drivability", "motor_power", "motor_torque", "low_speed_fade", "battery",
    }  # fmt: skip
    most = hardest_of(stopped, 100.0)
    asked = np.interp(most["speed_kmh"][::-1], split["speed_kmh"][::-1], split["motor_mps2"][::-1])
    assert (asked <= most["motor_mps2"][::-1] + 1e-3).all()


def test_a_comfort_limit_is_the_motors_limit():
    strong = car_with(regen_cap_mps2=1.2, motor_peak_kw=200.0, regen_peak_kw=200.0)
    split = split_of(stop(50.0, 4.0, strong, MILD, Driver()))
    middle = split[split["speed_kmh"].between(25, 45)]
    assert middle["motor_mps2"].to_numpy() == pytest.approx(1.2 / 1.04)
    assert set(middle["limit"]) == {"drivability"}


def test_grip_falls_with_speed_as_the_table_of_roads_says():
    grip = grip_by_speed(130.0, MILD)
    assert grip["grip_mps2"].iloc[0] == pytest.approx(0.85 * GRAVITY_MPS2)
    assert grip["grip_mps2"].is_monotonic_decreasing


def test_a_late_motor_costs_little_where_it_makes_up_for_it():
    made_up, filled_in = late_motor(stop(50.0, 1.0, car_with(), MILD, Driver()), 1.0)
    assert 0 < made_up < 0.005 < filled_in < 0.05


def test_a_late_motor_costs_nothing_where_nothing_comes_back():
    rolling_on = Driver(lift_off_mps2=0.0)
    assert late_motor(stop(50.0, 1.0, car_with(brake_pedal="friction"), MILD, rolling_on), 1.0) is None
    assert late_motor(stop(20.0, 1.0, car_with(), replace(MILD, wind_kmh=-100.0), Driver()), 1.0) is None


# a bigger motor


UDDS = evaluate(cycle_trace("udds"), car_with("city-car"), MILD, Driver())


@pytest.mark.parametrize("times", [0.875, 1.0, 2.0])
def test_each_motor_size_is_a_drive_of_its_own(times):
    row = bigger_motor.by_power(UDDS).set_index("power_times").loc[times]
    car = UDDS.car
    car = replace(car, motor_peak_kw=car.motor_peak_kw * times, regen_peak_kw=car.regen_peak_kw * times)
    own = evaluate(UDDS.trace, car, MILD, Driver())
    assert own.followed
    assert row["recovered_kwh"] == pytest.approx(own.battery_in_kwh, rel=1e-6)
    assert row["motor_kwh"] == pytest.approx(own.wheel_regen_kwh)
    for name, kwh in own.limits_kwh.items():
        assert row[name] == pytest.approx(kwh, abs=1e-9)


def test_the_braking_is_the_same_whatever_the_motor():
    powers = bigger_motor.by_power(UDDS)
    braked = powers.drop(columns=["power_times", "motor_kw", "recovered_kwh"]).sum(axis=1)
    assert braked.to_numpy() == pytest.approx(UDDS.wheel_braking_kwh)
    # more motor leaves less to the brakes but for the slowing that is not worth its losses, which grow with it
    assert powers[["motor_torque", "motor_power"]].sum(axis=1).is_monotonic_decreasing
    assert powers["motor_kwh"].diff().min() > -2e-4 * UDDS.wheel_braking_kwh


def test_a_second_motor_helps_on_ice_and_not_on_a_dry_road():
    dry, icy = (evaluate(UDDS.trace, UDDS.car, replace(MILD, surface=road), Driver()) for road in ("dry", "ice"))
    alone, second = (bigger_motor.by_power(dry, change)["motor_kwh"] for change in ("nothing", "second_motor"))
    assert second.to_numpy() == pytest.approx(alone.to_numpy())
    alone, second = (bigger_motor.by_power(icy, change)["motor_kwh"] for change in ("nothing", "second_motor"))
    assert second.iloc[-1] > 1.3 * alone.iloc[-1]


def test_twice_the_battery_helps_where_the_battery_was_the_limit():
    full = evaluate(UDDS.trace, UDDS.car, replace(MILD, soc_start=0.9, ambient_c=-10.0), Driver())
    alone, twice = (bigger_motor.by_power(full, change) for change in ("nothing", "twice_the_battery"))
    at = bigger_motor.POWER_TIMES.tolist().index(1.0)
    assert twice["recovered_kwh"].iloc[at] > 1.1 * alone["recovered_kwh"].iloc[at]


def test_weight_moves_to_the_front_while_slowing():
    car = car_with(front_load_share=0.5, cg_height_m=0.55, wheelbase_m=2.75)
    assert bigger_motor.front_share(car, 0.0) == pytest.approx(0.5)
    assert bigger_motor.front_share(car, 2.0) == pytest.approx(0.5 + 2.0 / GRAVITY_MPS2 * 0.55 / 2.75)


# stop after stop


def test_ten_stops_are_ten_times_one():
    car = car_with()
    one, ten = (repeated_stops(count, 100.0, 2.5, car, MILD, Driver()) for count in (1, 10))
    assert ten.temperature["stops"].iloc[-1] == 10
    for kwh in ("heat_kwh", "friction_only_heat_kwh", "back_kwh"):
        assert getattr(ten, kwh) == pytest.approx(10 * getattr(one, kwh), rel=5e-3)
    energy = energy_of(stop(100.0, 2.5, car, MILD, Driver()))
    assert one.back_kwh * 1000 == pytest.approx(energy.battery, rel=5e-3)
    assert one.heat_kwh * 1000 == pytest.approx(energy.friction, rel=2e-2)


def test_a_disc_gets_no_warmer_than_without_any_cooling_and_cools_between_stops():
    car = car_with(disc_cooling_w_per_k_t=8.0)
    ten = repeated_stops(10, 100.0, 2.5, car, MILD, Driver())
    celsius = ten.temperature["friction_only_c"]
    capacity = car.disc_heat_capacity_kj_per_k_t * 1000 * car.mass_kg / 1000
    rise = ten.friction_only_heat_kwh * 3.6e6 * FRONT_SHARE / capacity
    assert 0.5 * rise < celsius.max() - MILD.ambient_c < rise
    assert (celsius.diff() < 0).any() and celsius.iloc[0] == MILD.ambient_c
    assert (ten.temperature["regenerated_c"] <= celsius + 1e-9).all()


# what can be set


def test_settings_come_from_a_link_and_what_cannot_be_used_is_said():
    assert settings_of({}) == (PanelSettings(), [])
    settings, notices = settings_of({"from_kmh": "70", "panel": "flow", "quadrant": "pulling_forwards"})
    assert (settings.from_kmh, settings.quadrant, notices) == (70, "pulling_forwards", [])
    settings, notices = settings_of({"from_kmh": "900", "stops": "7", "slowing_mps2": "nan"})
    assert settings == PanelSettings(from_kmh=130.0)
    assert len(notices) == 3 and all(told(notice).endswith(".") for notice in notices)


def test_no_setting_of_a_panel_stands_for_something_else_in_a_link():
    assert not set(PANEL_FIELDS) & (set(SETTINGS) | {"car", "legs", "return_trip", "units", "panel", "card"})


def test_the_moving_mass_is_the_kernels():
    loaded = stop(50.0, 1.0, car_with(mass_kg=1500, rotating_mass_share=0.05), replace(MILD, payload_kg=100), Driver())
    assert loaded.run.effective_mass_kg[0] == pytest.approx(1500 * 1.05 + 100)
