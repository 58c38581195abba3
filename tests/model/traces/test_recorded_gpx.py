"""Recorded positions: standard cycles laid out on a winding road must come back with their speeds."""

import re
from datetime import UTC, datetime, timedelta

import numpy as np
import pytest

from model.describe.parameters import car_from
from model.describe.scenario import Conditions, Driver
from model.describe.trace import Trace
from model.kernel.run import drive as drive_car
from model.traces.cycles import cycle_trace
from model.traces.logs import read_recording
from tests.refused import refuses

EARTH_M_PER_DEGREE = 111195.0
START = datetime(2024, 1, 31, 8, tzinfo=UTC)


def positions(name, step_s=1.0, wander_m=0.0, scatter_m=0.0):
    """Time [s] and place [m] along a winding road, with slow wander and independent scatter of the receiver."""
    cycle = cycle_trace(name)
    fine_s = np.arange(0, cycle.duration_s + 0.05, 0.1)
    speed = np.interp(fine_s, cycle.time_s, cycle.speed_mps)
    turn = np.where(speed > 1, np.minimum(1.5 / np.maximum(speed, 3), speed / 12), 0) * np.sin(fine_s / 6) ** 3
    heading = np.cumsum(turn) * 0.1
    step = (speed[1:] + speed[:-1]) / 2 * 0.1
    way = np.array([np.concatenate([[0], np.cumsum(step * part(heading[1:]))]) for part in (np.sin, np.cos)])
    time_s = np.arange(0, cycle.duration_s + 1e-9, step_s)
    place = np.array([np.interp(time_s, fine_s, part) for part in way])
    rng = np.random.default_rng(5)
    for part in place:
        slow = rng.standard_normal(int(time_s[-1]) // 40 + 2)
        part += wander_m * np.interp(time_s, 40 * np.arange(len(slow)), slow)
        part += scatter_m * rng.standard_normal(len(time_s))
    return time_s, place


def gpx(time_s, place, height=None, longitude=11.0, decimals=7):
    north, east = place[0] / EARTH_M_PER_DEGREE, place[1] / EARTH_M_PER_DEGREE / np.cos(np.radians(48))
    points = []
    for row, seconds in enumerate(time_s):
        around = (longitude + east[row] + 180) % 360 - 180
        when = (START + timedelta(seconds=float(seconds))).strftime("%Y-%m-%dT%H:%M:%S.%fZ")
        up = "" if height is None else f"<ele>{height[row]:.1f}</ele>"
        points.append(
            f'<trkpt lat="{48 + north[row]:.{decimals}f}" lon="{around:.{decimals}f}">{up}<time>{when}</time></trkpt>'
        )
    return f'<?xml version="1.0"?><gpx version="1.1"><trk><trkseg>{"".join(points)}</trkseg></trk></gpx>'


def read(text, name="trip.gpx"):
    return read_recording(text.encode(), name)


def errors(found, clean):
    """Error of distance, traction and braking energy [1]."""

    def totals(trace):
        # nothing but time and speed may differ between the two
        trace = Trace(time_s=trace.time_s, speed_mps=trace.speed_mps, elevation_m=np.zeros_like(trace.time_s))
        demand = drive_car(trace, car_from("family-hatch"), Conditions(), Driver())
        energy = demand.wheel_n * demand.speed * demand.step_s
        return np.array([trace.distance_m, np.maximum(energy, 0).sum(), np.maximum(-energy, 0).sum()])

    return totals(found) / totals(clean) - 1


@pytest.mark.parametrize(
    ("step_s", "wander_m", "scatter_m", "decimals"),
    [(1, 0, 0, 7), (1, 3, 0.1, 7), (1, 3, 0.2, 6), (1, 3, 0, 5), (0.2, 2, 0.1, 7)],
)
@pytest.mark.parametrize("name", ["udds", "wltc3b"])
def test_drives_come_back_from_their_positions(name, step_s, wander_m, scatter_m, decimals):
    recording = read(gpx(*positions(name, step_s, wander_m, scatter_m), decimals=decimals))
    distance, traction, braking = errors(recording.trace, cycle_trace(name))
    assert abs(distance) < 0.01
    assert abs(traction) < 0.04
    assert abs(braking) < 0.07
    assert recording.trace.stops == pytest.approx(cycle_trace(name).stops, abs=3)
    assert recording.notes[0].startswith("Speed was worked out from positions")


def test_a_wandering_position_at_rest_is_standing():
    time_s, place = positions("udds", wander_m=3, scatter_m=0.2)
    rest = np.repeat(place[:, -1:], 600, axis=1) + 0.2 * np.random.default_rng(6).standard_normal((2, 600))
    place, time_s = np.concatenate([place, rest], axis=1), np.arange(len(time_s) + 600)
    assert read(gpx(time_s, place)).trace.speed_mps[-590:].max() == 0


def test_a_stray_position_does_no_harm():
    time_s, place = positions("udds", scatter_m=0.05)
    calm = read(gpx(time_s, place)).trace
    place[0, 300] += 80
    stray = read(gpx(time_s, place)).trace
    assert stray.distance_m == pytest.approx(calm.distance_m, rel=0.001)
    # 20 m/s if the stray were believed; a median leaves at most the way of one second beside it
    assert np.abs(stray.speed_mps - calm.speed_mps).max() < 5


def test_across_the_date_line():
    track = positions("udds")
    here, there = (read(gpx(*track, longitude=longitude)).trace for longitude in (11.0, 179.99))
    assert there.speed_mps == pytest.approx(here.speed_mps, abs=1e-3)


def test_height_goes_through_the_same_smoothing():
    time_s, place = positions("wltc3b")
    distance = np.concatenate([[0], np.cumsum(cycle_trace("wltc3b").step_m)])
    height = 300 + 40 * np.sin(distance / 1500)
    noisy = height + np.random.default_rng(7).standard_normal(len(height))
    noisy[[0, -1]] = height[[0, -1]]
    trace = read(gpx(time_s, place, noisy)).trace
    truth = np.diff(height).clip(min=0).sum()
    assert trace.climb_m == pytest.approx(truth, rel=0.05)
    ends = trace.elevation_m[-1] - trace.elevation_m[0]
    # the car stands at both ends: the height there is the mean of what was recorded while it stood
    assert ends == pytest.approx(height[-1] - height[0], abs=1.0)


def test_a_tunnel_is_bridged_and_said():
    time_s, place = positions("udds")
    outside = (time_s < 200) | (time_s > 220)
    recording = read(gpx(time_s[outside], place[:, outside]))
    assert "Gaps of up to 30 s bridged at an even speed: 1." in recording.notes
    assert recording.trace.distance_m == pytest.approx(cycle_trace("udds").distance_m, rel=0.01)


def test_a_recorder_that_pauses_while_the_car_stands():
    time_s, place = positions("udds")
    later = np.concatenate([time_s, time_s + time_s[-1] + 1800])
    recording = read(gpx(later, np.concatenate([place, place + place[:, -1:]], axis=1)))
    assert recording.trace.distance_m == pytest.approx(2 * cycle_trace("udds").distance_m, rel=0.01)
    assert not recording.trace.speed_mps[1372:3160].any()


def test_points_at_the_same_time_are_left_out_and_said():
    time_s, place = positions("udds")
    time_s[100] = time_s[99]
    notes = read(gpx(time_s, place)).notes
    assert "Points left out because their time is not after the one before: 1." in notes


TRACK = positions("nycc")
GOOD = gpx(*TRACK)


def without(rows):
    keep = np.ones(len(TRACK[0]), dtype=bool)
    keep[rows] = False
    return gpx(TRACK[0][keep], TRACK[1][:, keep])


def moved(rows, metres):
    place = TRACK[1].copy()
    place[0, rows] += metres
    return gpx(TRACK[0], place)


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        (re.sub("<time>.*?</time>", "", GOOD), "trip.gpx: some points have no time; without times there is no speed."),
        (
            re.sub("<time>.*?</time>", "<time>noon</time>", GOOD, count=1),
            "trip.gpx: some points have no time; without times there is no speed.",
        ),
        (
            '<!DOCTYPE g [<!ENTITY a "b">]>' + GOOD,
            "trip.gpx: a GPX file with a DOCTYPE or ENTITY declaration is not read.",
        ),
        (GOOD[:5000], "trip.gpx is not a GPX file that can be read."),
        ("hello", "trip.gpx is not a GPX file that can be read."),
        (re.sub('lat="[^"]*"', 'lat="north"', GOOD, count=1), "trip.gpx is not a GPX file that can be read."),
        ("<gpx><trk></trk></gpx>", "trip.gpx holds 0 track points; 10 to 100,000 are needed."),
        ("<gpx><trk><trkseg>" + '<trkpt lat="1" lon="1"/>' * 100_001, "trip.gpx is not a GPX file that can be read."),
        (
            "<gpx><trk><trkseg>" + '<trkpt lat="1" lon="1"/>' * 100_001 + "</trkseg></trk></gpx>",
            "trip.gpx holds 100,001 track points; 10 to 100,000 are needed.",
        ),
        (
            re.sub('lat="[^"]*"', 'lat="148"', GOOD, count=1),
            "trip.gpx: a position lies beyond 90 degrees of latitude or 180 degrees of longitude.",
        ),
        (
            re.sub('lat="[^"]*"', 'lat="nan"', GOOD, count=1),
            "trip.gpx: a position lies beyond 90 degrees of latitude or 180 degrees of longitude.",
        ),
        (
            re.sub("<time>", "<ele>99999</ele><time>", GOOD, count=1),
            "trip.gpx: a height is not from −450 to 9,000 m.",
        ),
        (gpx(TRACK[0] * 1000, TRACK[1]), "trip.gpx: the recording lasts 598000 s; 10 s to 24 hours are read."),
        (
            without(slice(401, 451)),
            "trip.gpx: positions are missing for 51 s, from 400 s after the start on, while the car went",
        ),
        (moved(slice(300, None), 800), "trip.gpx: the speed reaches 1"),
        (gpx(TRACK[0], 0 * TRACK[1]), "trip.gpx, speed_kmh: the car never moves."),
        ("x" * 5_200_000, "trip.gpx has 5.2 MB; GPX files are read up to 5 MB."),
    ],
)
def test_refusals(text, sentence):
    with refuses("^" + re.escape(sentence)):
        read(text)


def test_other_encodings_are_refused():
    with refuses(r"^trip\.gpx is not a GPX file in UTF-8\.$"):
        read_recording(GOOD.encode("utf-16"), "trip.gpx")
