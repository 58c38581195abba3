"""Recorded positions: standard cycles laid out on a winding road must come back with their speeds."""

import re
from datetime import UTC, datetime, timedelta

import numpy as np
import pytest

from model.describe.parameters import car_from, car_of
from model.describe.scenario import Conditions, Driver
from model.describe.scenario_io import starting_drives
from model.describe.trace import Trace
from model.kernel.run import drive as drive_car
from model.kernel.savings import evaluate
from model.sampling.drives import trace_of
from model.traces.cycles import cycle_trace
from model.traces.findings import Finding
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
    (told,) = [each for each in recording.findings if each.what == "from_positions"]
    # wander over 40 s is not told from a road that winds; what is rounded to five decimals scatters by 0.3 m
    assert told.value == pytest.approx(
        {(0, 7): 0.0}.get((scatter_m, decimals), max(scatter_m, 0.3 * (decimals == 5))), abs=0.15
    )


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
    assert Finding("bridged", count=1) in recording.findings
    assert recording.trace.distance_m == pytest.approx(cycle_trace("udds").distance_m, rel=0.01)


def test_a_recorder_that_pauses_while_the_car_stands():
    time_s, place = positions("udds")
    later = np.concatenate([time_s, time_s + time_s[-1] + 1800])
    recording = read(gpx(later, np.concatenate([place, place + place[:, -1:]], axis=1)))
    assert recording.trace.distance_m == pytest.approx(2 * cycle_trace("udds").distance_m, rel=0.01)
    standing = (recording.trace.time_s > 1372) & (recording.trace.time_s < 3160)
    assert not recording.trace.speed_mps[standing].any()


def test_points_at_the_same_time_are_left_out_and_said():
    time_s, place = positions("udds")
    time_s[100] = time_s[99]
    (effect,) = read(gpx(time_s, place)).effects
    assert (effect.step, effect.count) == ("duplicates", 1)


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
        (re.sub("<time>.*?</time>", "", GOOD), "trip.gpx has no times, and without them no speed."),
        (
            '<!DOCTYPE g [<!ENTITY a "b">]>' + GOOD,
            "trip.gpx: a GPX file with a DOCTYPE or ENTITY declaration is not read.",
        ),
        (GOOD[:500], "trip.gpx holds 5 track points and breaks off; at least 10 are needed."),
        ("hello", "trip.gpx is not a GPX file that can be read."),
        ("<gpx><trk></trk></gpx>", "trip.gpx holds 0 track points; at least 10 are needed."),
        (
            re.sub('lat="[^"]*"', 'lat="148"', GOOD),
            "trip.gpx: fewer than 10 rows have a position.",
        ),
        (gpx(TRACK[0] * 1000, TRACK[1]), "trip.gpx: the recording lasts 598000 s"),
        (moved(slice(300, None), 800), "trip.gpx: the speed reaches "),
        (gpx(TRACK[0], 0 * TRACK[1]), "trip.gpx: the car never moves."),
    ],
)
def test_refusals(text, sentence):
    with refuses("^" + re.escape(sentence)):
        read(text)


@pytest.mark.parametrize("text", [GOOD, GOOD.replace('version="1.1"', 'version="1.0" xmlns="http://x/1/0"')])
@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "latin-1"])
def test_versions_and_encodings_are_the_same_drive(text, encoding):
    found = read_recording(text.encode(encoding), "trip.gpx").trace
    assert found.speed_mps == pytest.approx(read(GOOD).trace.speed_mps)


def test_a_file_that_breaks_off_is_read_up_to_there():
    recording = read(GOOD[: len(GOOD) // 2])
    assert Finding("cut_off") in recording.findings
    assert recording.trace.duration_s == pytest.approx(TRACK[0][-1] / 2, abs=3)


def test_single_points_that_cannot_be_used_are_left_out_and_said():
    broken = re.sub('lat="[^"]*"', 'lat="148"', GOOD, count=1)
    findings = read(broken).findings
    assert Finding("out_of_range", "latitude", 1) in findings


def test_positions_missing_for_long_set_parts_apart():
    recording = read(without(slice(401, 451)))
    assert len(recording.parts) == 2 and recording.effects[0].step == "gaps"


def test_segments_are_one_drive_and_what_lies_between_them_is_a_gap():
    def segments(text):
        return re.sub("</trkpt>(?=<trkpt)", lambda found: "</trkpt></trkseg></trk><trk><trkseg>", text, count=300)

    assert read(segments(GOOD)).trace.speed_mps == pytest.approx(read(GOOD).trace.speed_mps)
    assert len(read(segments(without(slice(200, 260)))).parts) == 2


@pytest.mark.parametrize("encoding", ["utf-8", "utf-16", "utf-16-be"])
@pytest.mark.parametrize("declared", ["<!DOCTYPE gpx>", "<!doctype gpx>", '<!ENTITY a "b">'])
def test_declarations_are_refused_before_anything_is_parsed(declared, encoding, monkeypatch):
    def parse(*_):
        raise AssertionError("parsed")

    monkeypatch.setattr("model.traces.recorded_gpx.ElementTree.iterparse", parse)
    with refuses("a DOCTYPE or ENTITY declaration is not read"):
        read_recording((declared + GOOD).encode(encoding), "trip.gpx")


def test_a_built_drive_comes_back_from_its_positions_alone():
    scenario = starting_drives()["suburb-hill"][2]
    built = trace_of(scenario)
    along = np.append(0.0, np.cumsum(built.step_m))
    bend = along / 900
    place = 900 * np.array([np.sin(bend), 1 - np.cos(bend)])
    found = read(gpx(built.time_s, place, built.elevation_m)).trace
    driven = Trace(time_s=built.time_s, speed_mps=built.speed_mps, elevation_m=built.elevation_m, recorded=True)
    whole, again = (
        evaluate(trace, car_of(scenario), scenario.conditions, scenario.driver).net_kwh for trace in (driven, found)
    )
    assert again == pytest.approx(whole, rel=0.01)


def test_a_recording_holds_no_positions():
    recording = read(GOOD)
    assert not {"latitude", "longitude"} & set(vars(recording.trace))
    assert "48.0" not in str(recording.answer())
