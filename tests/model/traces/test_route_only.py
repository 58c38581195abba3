"""A route without times: driven up to a limit, slower in its turns, from rest to rest, over its heights."""

import numpy as np
import pytest

from model.describe.scenario import Driver, Scenario
from model.out.recorded import drive_as_recorded
from model.traces.logs import read_recording
from model.traces.route_only import RouteSettings, drive_route, route_of
from tests.refused import refuses

EARTH_M = 6371000.0


def places(north_m, east_m):
    return 48 + np.degrees(np.array(north_m) / EARTH_M), 11 + np.degrees(
        np.array(east_m) / EARTH_M / np.cos(np.radians(48))
    )


def gpx(latitude, longitude, height=None):
    points = "".join(
        f'<rtept lat="{one:.7f}" lon="{other:.7f}">' + (f"<ele>{height[at]}</ele>" if height is not None else "")
        + "</rtept>"
        for at, (one, other) in enumerate(zip(latitude, longitude, strict=True))
    )
    return f'<gpx version="1.1"><rte>{points}</rte></gpx>'.encode()


def laid(north_m, east_m, name):
    return route_of(dict(zip(("latitude", "longitude"), places(north_m, east_m), strict=True)), name)


CORNER = laid([0, 1000, 1000], [0, 0, 1000], "corner")
SETTINGS = RouteSettings(limit_kmh=60.0)


def test_a_route_is_driven_from_rest_to_rest_over_all_its_length():
    trace = drive_route(CORNER, Driver(), SETTINGS)
    assert trace.distance_m == pytest.approx(CORNER.length_m, rel=1e-6)
    assert CORNER.length_m == pytest.approx(2000, rel=2e-4)
    assert trace.speed_mps[0] == trace.speed_mps[-1] == 0 and trace.stops == 1
    assert trace.speed_mps.max() * 3.6 == pytest.approx(60, rel=0.01)


@pytest.mark.parametrize("lateral_mps2", [1.0, 2.0, 4.0])
def test_a_corner_is_taken_at_the_lateral_acceleration_that_was_set(lateral_mps2):
    trace = drive_route(CORNER, Driver(), RouteSettings(limit_kmh=100.0, lateral_mps2=lateral_mps2))
    along = np.append(0, np.cumsum(trace.step_m))
    slowest = trace.speed_mps[(along > 800) & (along < 1200)].min()
    assert slowest == pytest.approx(np.sqrt(lateral_mps2 * 30 / (np.pi / 2)), rel=0.06)


def test_a_round_bend_has_its_own_radius():
    turn = np.linspace(0, np.pi / 2, 200)
    route = laid(200 * np.sin(turn), 200 * (1 - np.cos(turn)), "bend")
    assert np.median(route.bend_per_m[10:-10]) == pytest.approx(1 / 200, rel=0.05)


def test_habits_change_how_it_is_driven():
    late, far = (drive_route(CORNER, Driver(looks_ahead=word), SETTINGS) for word in ("late", "far"))
    assert late.acceleration_mps2.min() < 1.5 * far.acceleration_mps2.min()


def test_heights_become_slopes():
    along = np.arange(0, 3001, 100.0)
    height = 300 + 0.05 * along
    data = gpx(*places(along, np.zeros_like(along)), height)
    recording = read_recording(data, "hill.gpx", route=(Driver(), RouteSettings(limit_kmh=50.0)))
    assert recording.trace.climb_m == pytest.approx(150, rel=0.03)
    assert [each.what for each in recording.findings] == ["speeds_assumed"] and recording.measured is None
    flat = read_recording(gpx(*places(along, np.zeros_like(along))), "flat.gpx", route=(Driver(), RouteSettings()))
    up, level = (drive_as_recorded(each, Scenario(), frozenset())[1].net_kwh for each in (recording, flat))
    assert up - level > 0.5


def test_without_being_asked_a_route_is_refused_and_so_is_what_is_none():
    data = gpx(*places(np.arange(0, 2000, 100.0), np.zeros(20)))
    with refuses("has no times"):
        read_recording(data, "route.gpx")
    with refuses("0.1.km to 1.?000.km long"):
        laid([0, 10], [0, 0], "short")


def test_of_a_route_no_position_is_held():
    data = gpx(*places(np.arange(0, 2000, 100.0), np.zeros(20)))
    held = repr(read_recording(data, "route.gpx", route=(Driver(), RouteSettings())).__dict__)
    assert "48.0" not in held and "latitude" not in held.replace("'latitude'", "")


ASKED = (Driver(), RouteSettings(limit_kmh=50.0))


@pytest.mark.parametrize("kind", ["positions", "distance"])
def test_a_table_without_times_is_a_route_as_positions_are(kind):
    along = np.arange(0, 3001, 100.0)
    height, (latitude, longitude) = 300 + 0.05 * along, places(along, np.zeros_like(along))
    if kind == "positions":
        rows = [f"{one:.7f};{other:.7f};{up:.1f}" for one, other, up in zip(latitude, longitude, height, strict=True)]
        data = "\n".join(["Lat;Lon;Altitude (m)", *rows]).encode()
    else:
        rows = [f"{way / 1000},{up / 0.3048:.2f}" for way, up in zip(along, height, strict=True)]
        data = "\n".join(["Distance (km),Height (ft)", *rows]).encode()
    table = read_recording(data, "hill.csv", route=ASKED)
    other = read_recording(gpx(latitude, longitude, height), "hill.gpx", route=ASKED)
    assert table.trace.distance_m == pytest.approx(other.trace.distance_m, rel=1e-3)
    assert table.trace.climb_m == pytest.approx(other.trace.climb_m, rel=0.01)
    assert table.route is not None and "speeds_assumed" in [each.what for each in table.findings]
    with refuses("hill.csv has no times"):
        read_recording(data, "hill.csv")


def test_a_table_with_speeds_and_no_times_is_no_route():
    data = b"lat,lon,speed\n" + b"48.1,11.0,30\n" * 20
    with refuses("time and speed are needed"):
        read_recording(data, "a.csv", route=ASKED)


def test_heights_steeper_than_roads_are_left_out_and_asked_about():
    along = np.arange(0, 3001, 100.0)
    recording = read_recording(gpx(*places(along, np.zeros_like(along)), 0.5 * along), "steep.gpx", route=ASKED)
    (asked,) = [each for each in recording.findings if each.asks]
    assert asked.what == "steep" and recording.trace.climb_m == 0
