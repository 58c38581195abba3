"""Samples of standard cycles, clean, noisy and coarse, must come back as the drive they were taken from."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from model.describe.parameters import car_from
from model.describe.scenario import Conditions, Driver
from model.describe.trace import Trace
from model.describe.units import KMH_PER_MPS
from model.kernel.run import drive as drive_car
from model.traces.cycles import cycle_trace
from model.traces.resampling import (
    ELEVATION_GRID_M,
    STEEPEST,
    SteeperThanRoadsError,
    at_steps,
    mean_between,
    road_height,
    speed_at_steps,
)

CYCLES = ("udds", "hwfet", "us06", "nycc", "wltc3b")
CAR = car_from("family-hatch")


def trace_of(speed, elevation=None):
    height = np.zeros(len(speed)) if elevation is None else elevation
    return Trace(time_s=np.arange(len(speed), dtype=float), speed_mps=speed, elevation_m=height)


def wheel_energies(trace):
    """Traction and braking energy at the wheels [J]."""
    demand = drive_car(trace, CAR, Conditions(), Driver())
    energy = demand.wheel_n * demand.speed * demand.step_s
    return np.maximum(energy, 0).sum(), np.maximum(-energy, 0).sum()


def samples(name, rate_hz, step_kmh=0.0, noise_kmh=0.0):
    """Time and speed of a standard cycle as a recorder with noise and steps would write them."""
    cycle = cycle_trace(name)
    time_s = np.arange(0, cycle.duration_s + 1e-9, 1 / rate_hz)
    speed = np.interp(time_s, cycle.time_s, cycle.speed_mps) * KMH_PER_MPS
    spread = np.where(speed > 0, noise_kmh, 0.3 * noise_kmh)
    speed = speed + spread * np.random.default_rng(1).standard_normal(len(speed))
    if step_kmh:
        speed = np.round(speed / step_kmh) * step_kmh
    return time_s, speed / KMH_PER_MPS


def errors(name, time_s, speed):
    """Error of distance, traction and braking energy of the 1 s trace [1]."""
    clean, found = trace_of(cycle_trace(name).speed_mps), trace_of(speed_at_steps(time_s, speed))
    energies = np.array(wheel_energies(found)) / wheel_energies(clean) - 1
    return found.distance_m / clean.distance_m - 1, *energies


@pytest.mark.parametrize("name", CYCLES)
@pytest.mark.parametrize(("rate_hz", "step_kmh", "noise_kmh"), [(10, 0.1, 0.1), (10, 0, 0.2), (5, 0.1, 0.1), (2, 0, 0)])
def test_fast_recordings_keep_distance_and_wheel_energy(name, rate_hz, step_kmh, noise_kmh):
    distance, traction, braking = errors(name, *samples(name, rate_hz, step_kmh, noise_kmh))
    assert abs(distance) < 0.002
    assert abs(traction) < 0.0125
    assert abs(braking) < 0.03


@pytest.mark.parametrize("name", ["udds", "hwfet", "wltc3b"])
def test_picking_one_noisy_sample_a_second_would_add_energy(name):
    """So the test above can fail: half a km/h of noise, read without averaging, is braked and driven again."""
    time_s, speed = samples(name, 10, noise_kmh=0.5)
    picked = np.maximum(speed[::10], 0)
    assert wheel_energies(trace_of(picked))[1] > 1.12 * wheel_energies(trace_of(cycle_trace(name).speed_mps))[1]
    _, traction, braking = errors(name, time_s, speed)
    assert abs(traction) < 0.0125
    assert abs(braking) < 0.08


@pytest.mark.parametrize("name", CYCLES)
@pytest.mark.parametrize("rate_hz", [1, 10])
def test_speeds_in_steps_of_1_kmh(name, rate_hz):
    """Rounding takes away small creeping (NYCC) and adds small swings (HWFET, which hardly brakes)."""
    distance, traction, braking = errors(name, *samples(name, rate_hz, step_kmh=1))
    assert abs(distance) < 0.003
    assert abs(traction) < 0.04
    assert abs(braking) < 0.09


@pytest.mark.parametrize("name", ["udds", "hwfet", "wltc3b"])
def test_smoothing_coarse_speeds_takes_most_of_the_false_braking_away(name):
    time_s, speed = samples(name, 1, step_kmh=1)
    rounded = wheel_energies(trace_of(speed))[1] / wheel_energies(trace_of(cycle_trace(name).speed_mps))[1] - 1
    assert rounded > 0.05
    assert abs(errors(name, time_s, speed)[2]) < 0.4 * rounded


def test_fine_speeds_at_1_hz_are_left_as_they_are():
    cycle = cycle_trace("wltc3b")
    speed = speed_at_steps(cycle.time_s, cycle.speed_mps)
    assert np.abs(speed - cycle.speed_mps).max() * KMH_PER_MPS < 0.01


def test_slow_irregular_rows_are_joined_by_straight_lines():
    rng = np.random.default_rng(2)
    cycle = cycle_trace("udds")
    time_s = np.concatenate([[0], np.cumsum(rng.uniform(2, 3, 500))])
    speed = np.interp(time_s, cycle.time_s, cycle.speed_mps)
    found = speed_at_steps(time_s, speed)
    seconds = np.arange(len(found))
    expected = np.interp(seconds, time_s, speed)
    moving = expected > 0.5
    assert found[moving] == pytest.approx(expected[moving], abs=0.01)
    whole = np.interp(seconds, cycle.time_s, cycle.speed_mps)
    assert found.sum() == pytest.approx(whole.sum(), rel=0.003)


def test_a_drive_written_by_hand_is_not_smoothed():
    speed = np.array([0, 10, 20, 30, 40, 50, 50, 50, 40, 20, 0, 0]) / KMH_PER_MPS
    assert speed_at_steps(np.arange(12.0), speed) == pytest.approx(speed)


def test_sensor_noise_at_rest_is_standing():
    time_s = np.arange(0, 60, 0.1)
    speed = np.where(time_s < 30, 0.05 * np.random.default_rng(3).standard_normal(600), 10.0)
    assert not speed_at_steps(time_s, speed)[:29].any()


finite = st.floats(-1000, 1000)


@given(st.lists(st.tuples(st.floats(0.01, 5), finite), min_size=2, max_size=40), finite)
def test_means_keep_the_integral(rows, first):
    x = np.concatenate([[0.0], np.cumsum([gap for gap, _ in rows])])
    y = np.array([first] + [value for _, value in rows])
    edges = np.linspace(0, x[-1], 13)
    mean = mean_between(x, y, edges[:-1], edges[1:])
    area = (np.diff(x) * (y[1:] + y[:-1]) / 2).sum()
    assert (mean * np.diff(edges)).sum() == pytest.approx(area, abs=1e-6 * np.abs(y).max() * x[-1] + 1e-9)


@given(finite, finite, st.sampled_from([0.1, 0.2, 0.5, 1.0, 2.5]))
def test_straight_lines_come_through_any_rate(start, slope, step_s):
    time_s = np.arange(0, 30 + 1e-9, step_s)
    found = at_steps(time_s, start + slope * time_s)
    inner = np.arange(1, len(found) - 1)
    assert found[inner] == pytest.approx(start + slope * inner, abs=1e-6)


def driven_heights(name, kind):
    """Distance [m] and true height [m] at each second of a cycle, over waves, over one pass, or on the flat."""
    trace = cycle_trace(name)
    distance = np.concatenate([[0], np.cumsum(trace.step_m)])
    if kind == "waves":
        height = 20 * np.sin(2 * np.pi * distance / 2500) + 8 * np.sin(2 * np.pi * distance / 700 + 1)
    elif kind == "pass":
        top = 320 + 0.02 * distance[-1]
        height = np.interp(distance / distance[-1], [0, 0.2, 0.5, 0.8, 1], [300, 320, top, 350, 340])
    else:
        height = np.full_like(distance, 100.0)
    return distance, height


def recorded(height, noise):
    rng = np.random.default_rng(4)
    if noise == "whole metres":
        return np.round(height)
    return height + {"none": 0.0, "1 m": 1.0}[noise] * rng.standard_normal(len(height))


@pytest.mark.parametrize(
    ("kind", "noise", "climb_share", "energy_share"),
    [
        ("pass", "none", 0.01, 0.005),
        ("pass", "whole metres", 0.01, 0.01),
        ("pass", "1 m", 0.05, 0.01),
        ("waves", "none", 0.06, 0.03),
        ("waves", "whole metres", 0.065, 0.03),
        ("waves", "1 m", 0.06, 0.03),
    ],
)
@pytest.mark.parametrize("name", ["udds", "wltc3b"])
def test_climb_and_energy_of_noisy_heights_are_near_the_truth(name, kind, noise, climb_share, energy_share):
    distance, height = driven_heights(name, kind)
    speed = cycle_trace(name).speed_mps
    found = np.interp(distance, *road_height(distance, recorded(height, noise), distance[-1]))
    truth, smoothed = trace_of(speed, height), trace_of(speed, found)
    assert smoothed.climb_m == pytest.approx(truth.climb_m, rel=climb_share)
    change = np.subtract(wheel_energies(smoothed), wheel_energies(truth)) / wheel_energies(truth)[0]
    assert np.abs(change).max() < energy_share


def test_noise_on_a_flat_road_costs_little():
    distance, height = driven_heights("wltc3b", "flat")
    speed = cycle_trace("wltc3b").speed_mps
    noisy = recorded(height, "1 m")
    truth = wheel_energies(trace_of(speed, height))[0]
    smoothed = np.interp(distance, *road_height(distance, noisy, distance[-1]))
    assert wheel_energies(trace_of(speed, smoothed))[0] == pytest.approx(truth, rel=0.02)
    assert np.diff(smoothed).clip(min=0).sum() < 0.1 * np.diff(noisy).clip(min=0).sum()


@given(
    st.lists(st.tuples(st.floats(0, 40), st.floats(-15, 15)), min_size=3, max_size=60),
    st.floats(50, 3000),
)
def test_no_slope_is_beyond_the_steepest(rows, length_m):
    step = np.array([gap for gap, _ in rows])
    distance = np.concatenate([[0.0], np.cumsum(step + 1e-3)])
    distance *= length_m / distance[-1]
    height = np.concatenate([[100.0], 100 + np.array([value for _, value in rows])])
    try:
        grid, smooth = road_height(distance, height, length_m)
    except SteeperThanRoadsError:
        assert np.ptp(height) > 0.5 * STEEPEST * length_m
        return
    assert np.abs(np.diff(smooth) / np.diff(grid)).max() <= STEEPEST + 1e-9


def test_a_road_steeper_than_any_is_refused():
    distance = np.arange(0.0, 500.0, 10.0)
    with pytest.raises(SteeperThanRoadsError):
        road_height(distance, 1.1 * STEEPEST * distance, 490.0)


def test_a_false_step_of_20_m_becomes_the_steepest_slope_and_the_rest_stays():
    distance = np.arange(0, 2001.0, 5)
    height = np.where(distance < 1000, 100.0, 160.0)
    grid, smooth = road_height(distance, height, 2000.0)
    slope = np.diff(smooth) / np.diff(grid)
    assert slope.max() == pytest.approx(STEEPEST)
    assert smooth[-1] == pytest.approx(160)
    assert smooth[grid < 800].max() < 112


def test_a_reach_of_one_step_of_the_grid_smooths_nothing():
    distance = np.arange(0, 401.0, ELEVATION_GRID_M)
    height = 100 + 0.05 * np.where(distance < 200, distance, 400 - distance)
    _, found = road_height(distance, height, 400.0, ELEVATION_GRID_M)
    top = len(found) // 2
    # what is left of the corner is its mean over one step of the grid
    assert found[top] == pytest.approx(height[top] - 0.05 * ELEVATION_GRID_M / 4)
    assert found[1:top] == pytest.approx(height[1:top])


def test_heights_taken_while_standing_are_one_place():
    distance = np.array([0, 0, 0, 0, 50, 100, 150, 200.0])
    height = np.array([98, 102, 99, 101, 100, 100, 100, 100.0])
    grid, smooth = road_height(distance, height, 200.0)
    assert smooth == pytest.approx(np.full(len(grid), 100.0))
