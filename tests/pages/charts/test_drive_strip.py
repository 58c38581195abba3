"""The strip: what it marks, what it says, and that it stays small."""

import numpy as np
import pytest

from model.describe.scenario import Driver
from model.kernel.timeline import slow_downs, timeline
from model.words.quantities import Display
from pages.parts.charts import export
from pages.parts.charts.drive_strip import FRICTION, MOTOR, drive_strip, ends_of, stretches_of, strip_finding
from pages.parts.charts.limits import limit_text
from tests.made_traces import ride, steady, stop_and_go
from tests.pages.charts.specs import assert_valid, driven, tables

METRIC, US = Display(), Display(us=True)


def strip_of(result, display=METRIC, **more):
    return drive_strip(timeline(result), slow_downs(result), display, **more)


def words_of(result, display=METRIC):
    return strip_finding(timeline(result), slow_downs(result), display)


UDDS = driven()
LIFT_OFF_ONLY = driven(stop_and_go(5), brake_pedal="friction", driver=Driver(lift_off_mps2=0.0))


@pytest.mark.parametrize("dark", [False, True])
@pytest.mark.parametrize("display", [METRIC, US])
def test_it_is_a_valid_chart(dark, display):
    assert_valid(strip_of(UDDS, display, dark=dark, annotate=[(1, 3, "cold battery"), (9, 10, "warmer")]))


def test_words_where_a_car_charges_stand_within_the_picture():
    """On a telephone a word behind a stop near the end ran over the picture's edge."""
    steps = timeline(UDDS).assign(charged_to=np.nan)
    places = [int((steps["distance_km"] - share * UDDS.distance_km).abs().idxmin()) for share in (0.3, 0.6, 0.97)]
    steps.loc[places, "charged_to"] = 0.8
    strip = drive_strip(steps, slow_downs(UDDS), METRIC)
    assert_valid(strip)
    assert list(tables(strip)["charging"]["late"]) == [False, False, True]
    words = [layer for layer in strip["layer"] if layer["data"]["name"] == "charging" and "transform" in layer]
    ways = {one["transform"][0]["filter"]["equal"]: (one["mark"]["align"], one["mark"]["xOffset"] > 0) for one in words}
    assert ways == {False: ("left", True), True: ("right", False)}


def test_it_is_about_140_px_high_with_its_axis():
    assert 110 <= strip_of(UDDS)["height"] <= 125


def test_the_speed_is_the_drives_own():
    drive = tables(strip_of(UDDS))["drive"]
    assert drive["speed"].max() == pytest.approx(timeline(UDDS)["speed_kmh"].max(), abs=1e-3)
    assert drive["place"].iloc[-1] == pytest.approx(UDDS.distance_km, abs=1e-3)


def test_us_units_reach_the_picture():
    drive = tables(strip_of(UDDS, US))["drive"]
    assert drive["place"].iloc[-1] == pytest.approx(UDDS.distance_km / 1.609344, abs=1e-3)
    assert "60 mph" in str(strip_of(UDDS, US)["layer"][0]) and "km" not in str(strip_of(UDDS, US)["layer"][0])


def test_every_slow_down_is_marked_where_the_motor_takes_it():
    events = slow_downs(UDDS)
    marked = tables(strip_of(UDDS))["slowing"]
    motor = marked[marked["what"] == MOTOR].groupby("stretch")["place"].agg(["min", "max"])
    deep = events[(events["motor_wh"] > 5) & (events["duration_s"] > 4)]
    assert len(deep) > 10
    for row in deep.itertuples():
        assert ((motor["min"] < row.end_km) & (motor["max"] > row.start_km)).any()


def test_without_the_motor_all_marks_are_friction():
    marked = tables(strip_of(LIFT_OFF_ONLY))["slowing"]
    assert set(marked["what"]) == {FRICTION}
    assert marked["stretch"].nunique() == 5


def test_marks_differ_in_more_than_colour():
    look = strip_of(UDDS)["layer"][1]["encoding"]
    for channel in ("color", "strokeDash", "strokeWidth"):
        assert look[channel]["scale"]["domain"] == [MOTOR, FRICTION]
        assert look[channel]["scale"]["range"][0] != look[channel]["scale"]["range"][1]


def test_coasting_is_not_marked():
    assert tables(strip_of(driven(steady(60, 200))))["slowing"].empty


def test_a_flat_road_says_so_and_a_hill_gives_its_heights():
    flat = strip_of(UDDS)["layer"][2]["encoding"]["y"]["axis"]["labelExpr"]
    hill = strip_of(driven(steady(60, 200, slope=0.05)))["layer"][2]["encoding"]["y"]["axis"]["labelExpr"]
    assert "flat" in flat and "flat" not in hill
    assert "167 m" in hill


def test_a_long_drive_stays_small():
    hours = ride(np.abs(np.sin(np.arange(4 * 3600) / 9)) * 90)
    strip = strip_of(driven(hours, usable_kwh=200))
    assert sum(len(table) for table in tables(strip).values()) < 8000
    drive = tables(strip)["drive"]
    assert len(drive) < 4000 and drive["speed"].max() == pytest.approx(90, abs=0.1)


def test_notes_run_towards_the_middle():
    notes = tables(strip_of(UDDS, annotate=[(1, 3, "early"), (9, 10, "late")]))["notes"]
    assert notes["late"].tolist() == [False, True]
    assert strip_of(UDDS, annotate=[(1, 3, "early")])["height"] > strip_of(UDDS)["height"]


def test_stretches_start_where_the_step_before_ended():
    marked = np.array([False, False, True, True, False, False, True])
    assert stretches_of(marked).tolist() == [0, 1, 1, 1, 0, 2, 2]
    assert ends_of(stretches_of(marked)).tolist() == [0, 1, 3, 4, 5, 6]


def test_the_finding_gives_the_shares_that_were_found():
    captured = UDDS.captured_share
    assert captured is not None
    words = words_of(UDDS)
    assert f"the motor did {captured * 100:.0f} %" in words
    assert f"with {len(slow_downs(UDDS))} slow-downs" in words
    assert "12.0 km" in words and "7.45 mi" in words_of(UDDS, US)
    assert "flat road" in words


def test_the_finding_names_the_limit_that_left_most_to_friction():
    assert limit_text("lift_off_only", METRIC) in words_of(LIFT_OFF_ONLY)
    assert limit_text("low_speed_fade", METRIC) in words_of(UDDS)


def test_the_finding_of_a_drive_that_brakes_nowhere():
    assert words_of(driven(steady(60, 200))).endswith("Nothing had to be braked.")


def test_a_pointer_finds_each_slow_down():
    found = tables(strip_of(UDDS))["slow_downs"]
    assert len(found) == len(slow_downs(UDDS))
    assert found["slow-down"].str.contains(" to ").all() and found["to the motor"].str.endswith(" Wh").all()
    assert_valid(strip_of(driven(steady(60, 200))))


def test_a_note_without_room_has_its_short_words():
    notes = tables(strip_of(UDDS, annotate=[(1, 1.2, "strong, 1.5 m/s²", "1.5"), (9, 11, "late")]))["notes"]
    assert notes[["words", "short"]].to_numpy().tolist() == [["strong, 1.5 m/s²", "1.5"], ["late", "late"]]


def test_no_note_runs_into_the_next_where_there_is_hardly_any_room():
    spec = strip_of(UDDS, annotate=[(0, 0.3, "strong, 1.5 m/s²", "1.5"), (0.3, 12, "firm, 1 m/s²", "1")])
    on_a_telephone, wide = export.svg(spec, 300), export.svg(spec, 1100)
    assert ">1.5<" not in on_a_telephone and "firm" in on_a_telephone
    assert ">1.5<" in wide


def test_notes_are_told_with_the_finding():
    words = strip_finding(timeline(UDDS), slow_downs(UDDS), US, [(0.0, 1.609344, "firm", "f")])
    assert words.endswith("Marked along the road: 0 mi to 1.0 mi: firm.")
