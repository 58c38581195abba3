"""How a driver changes speed: the numbers behind the words."""

import numpy as np
import pytest

from model.describe.scenario import DRIVER_FIELDS, Driver
from model.describe.units import GRAVITY_MPS2, KMH_PER_MPS
from model.traces.habits import HABITS, MOST_JERK_MPS3, PULLING_AWAY, SLOWING, Pulse, pull_away, slow_down
from tests.made_traces import finely

CHANGES_KMH = [(50, 0), (5, 0), (30, 25), (120, 80), (200, 0)]


def test_each_word_of_the_driver_has_its_number():
    words = {key: field.choices for key, field in DRIVER_FIELDS.items()}
    assert tuple(HABITS["peak_slowing_mps2"]) == words["looks_ahead"]
    assert tuple(HABITS["peak_pull_away_mps2"]) == words["pull_away"]
    assert tuple(HABITS["swing_share"]) == words["steady_foot"]
    assert tuple(HABITS["over_slowing_share"]) == words["steady_foot"]


@pytest.mark.parametrize("pulse", [SLOWING, PULLING_AWAY, Pulse(0.5, 0.0, 0.5), Pulse(0.0, 1.0, 0.0)])
def test_pulse_agrees_with_itself_integrated(pulse):
    share = np.linspace(0, 1, 100_001)
    done = pulse.done(share)
    assert pulse.on + pulse.hold + pulse.off == pytest.approx(1)
    assert (done[0], done[-1]) == (0, 1)
    assert np.gradient(done, share).max() == pytest.approx(1 / pulse.mean, rel=1e-3)
    assert np.trapezoid(done, share) == pytest.approx(1 - pulse.centre, rel=1e-8)
    np.testing.assert_array_equal(pulse.done(np.array([-1.0, 2.0])), [0, 1])


@pytest.mark.parametrize("looks_ahead", HABITS["peak_slowing_mps2"])
@pytest.mark.parametrize("from_kmh, to_kmh", CHANGES_KMH)
def test_slow_down_has_its_distance_its_peak_and_bounded_jerk(from_kmh, to_kmh, looks_ahead):
    change = slow_down(from_kmh / KMH_PER_MPS, to_kmh / KMH_PER_MPS, Driver(looks_ahead=looks_ahead))
    time_s, speed = finely(change)
    slowing = -np.gradient(speed, time_s)
    assert speed[-1] == pytest.approx(to_kmh / KMH_PER_MPS, abs=1e-12)
    assert np.trapezoid(speed, time_s) == pytest.approx(change.distance_m, rel=1e-7)
    assert slowing.max() <= HABITS["peak_slowing_mps2"][looks_ahead] * (1 + 1e-6)
    assert np.abs(np.gradient(slowing, time_s)).max() <= MOST_JERK_MPS3 * (1 + 1e-6)


@pytest.mark.parametrize("word", HABITS["peak_pull_away_mps2"])
@pytest.mark.parametrize("to_kmh, from_kmh", CHANGES_KMH)
def test_pull_away_has_its_distance_its_peak_and_bounded_jerk(from_kmh, to_kmh, word):
    change = pull_away(from_kmh / KMH_PER_MPS, to_kmh / KMH_PER_MPS, Driver(pull_away=word))
    time_s, speed = finely(change)
    pulling = np.gradient(speed, time_s)
    assert np.trapezoid(speed, time_s) == pytest.approx(change.distance_m, rel=1e-7)
    assert pulling.max() <= HABITS["peak_pull_away_mps2"][word] * (1 + 1e-6)
    assert np.abs(np.gradient(pulling, time_s)).max() <= MOST_JERK_MPS3 * (1 + 1e-6)
    falling = pulling[int(0.35 * len(pulling)) :]
    assert (np.diff(falling) < 1e-9).all()


@pytest.mark.parametrize("from_kmh", [40, 50, 60, 70])
def test_everyday_stop_peaks_near_a_quarter_g_at_20_to_30_kmh(from_kmh):
    """SAE 1999-01-0098, at stop signs, the same for all types of cars."""
    time_s, speed = finely(slow_down(from_kmh / KMH_PER_MPS, 0.0, Driver()))
    slowing = -np.gradient(speed, time_s)
    assert slowing.max() / GRAVITY_MPS2 == pytest.approx(0.25, abs=0.05)
    in_band = (speed * KMH_PER_MPS > 20) & (speed * KMH_PER_MPS < 30)
    assert slowing[in_band].max() == pytest.approx(slowing.max(), rel=1e-3)


def test_who_looks_farther_ahead_lifts_earlier_and_slows_more_gently():
    stops = [slow_down(50 / KMH_PER_MPS, 0.0, Driver(looks_ahead=word)) for word in ("far", "usual", "late")]
    distance = [stop.distance_m for stop in stops]
    mean = [stop.from_mps / stop.duration_s for stop in stops]
    assert distance == sorted(distance, reverse=True)
    assert mean == sorted(mean)
    assert 0.6 <= mean[0] <= 0.8
    peak = [HABITS["peak_slowing_mps2"][word] / GRAVITY_MPS2 for word in ("far", "late")]
    assert peak[0] < 0.2
    assert peak[1] > 0.3


def test_changes_between_high_speeds_are_gentler():
    change = 20 / KMH_PER_MPS
    times = [slow_down(low + change, low, Driver()).duration_s for low in (0.0, 10.0, 20.0, 30.0)]
    assert times == sorted(times)
