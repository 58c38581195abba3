"""A recording of one's own on its page, without a browser."""

import json
import pickle
import re
import zlib
from urllib.parse import quote

import numpy as np
import pandas as pd
import pytest
from streamlit.runtime.memory_uploaded_file_manager import MemoryUploadedFileManager

from model.describe.scenario_io import starting_drives, to_link
from model.out.cli import main
from model.out.recorded import drive_recording, energy_over_time
from model.out.residuals import by_minutes, by_slow_down, by_speed
from model.traces.cycles import cycle_trace
from model.traces.driven_habits import habits_of
from model.traces.logs import read_recording
from pages.parts.own_road_words import SAMPLE
from pages.parts.plain_text import MOST, inert
from tests.pages.in_app import address, opened_at, ran

TOWN = starting_drives()["town"][2]
CYCLE = cycle_trace("nycc")
TABLE = pd.DataFrame({"t": CYCLE.time_s, "v": (CYCLE.speed_mps * 3.6).round(2)})


def opened():
    return opened_at("own_road.py", to_link(TOWN))


def uploaded(app, data, name="drive.csv"):
    return ran(app.file_uploader(key="recording-file").upload(name, data, "text/csv").run())


def words(app):
    kinds = (app.header, app.markdown, app.caption, app.info, app.error)
    text = " ".join(each.value for kind in kinds for each in kind)
    return text.replace("\\", "").replace("\N{NO-BREAK SPACE}", " ")


def test_the_sample_is_named_as_invented_and_stands_measured_beside_modelled():
    app = ran(opened().button(key="recording-sample").click().run())
    assert "no car has driven it" in words(app)
    measured = read_recording(SAMPLE).measured
    assert f"{measured.battery_net_kwh:.2f} kWh were measured" in app.header[0].value
    totals, recognised = (table.value for table in app.table[:2])
    assert list(totals.columns) == ["", "Measured", "Modelled", "Nine in ten cars"]
    assert all(" to " in cell for cell in totals["Nine in ten cars"]) and len(totals) == 4
    assert "battery power" in list(recognised["Taken for"])
    assert [toggle.key for toggle in app.toggle if toggle.key.startswith("clean-")] == [
        "clean-noise", "clean-standing", "clean-stray_heights", "clean-height",
    ]  # fmt: skip


def test_a_file_is_read_corrected_and_cleaned_anew():
    app = uploaded(opened(), TABLE.to_csv(index=False).encode())
    asked = app.header[0].value
    assert "1.90 km" in asked and "The file names no unit for speed" in words(app)
    assert "Measured" not in app.table[0].value.columns
    app = ran(app.selectbox(key="column-1").set_value(("speed_kmh", "mph")).run())
    assert "3.06 km" in app.header[0].value
    assert app.session_state["recording"].columns[1].unit == "mph"


def test_what_a_file_calls_its_columns_is_text():
    live = "[x](http://stranger.net) **b** $c$"
    named = TABLE.assign(**{live: 1.0, "y" * 100_000: 2.0})
    app = uploaded(opened(), named.to_csv(index=False).encode(), "[x](stranger.net)<b>.csv")
    told = [str(cell) for table in app.table for row in table.value.to_numpy() for cell in row]
    assert inert(live) in told and max(map(len, told)) <= MOST + 1
    for text in (*told, *(one.value for one in app.markdown)):
        assert live not in text and "[x](stranger" not in text and "<b>" not in text


def test_a_step_can_be_switched_off():
    app = ran(opened().button(key="recording-sample").click().run())
    before = app.header[0].value
    app = ran(app.toggle(key="clean-height").set_value(False).run())
    assert app.header[0].value != before
    assert "height" not in [effect.step for effect in app.session_state["recording"].effects]


def test_a_file_that_cannot_be_read_is_refused_in_one_sentence():
    app = uploaded(opened(), b"PK\x03\x04")
    assert "is a compressed file or a workbook: unpack it" in app.error[0].value
    assert not app.header


def test_nothing_of_the_file_is_kept_but_the_drive():
    table = TABLE.assign(latitude=48.123456, longitude=11.0)
    app = uploaded(opened(), table.to_csv(index=False).encode())
    held = app.session_state["recording"]
    assert "latitude" in [column.meaning for column in held.columns]
    assert "48.123456" not in repr((held, app.session_state["reading"])) and not hasattr(held, "samples")
    assert "must be opened again" in words(app)
    assert set(app.query_params) == {*opened().query_params, "recorded"}


def test_the_file_leaves_the_memory_and_its_positions_with_it(monkeypatch):
    """Neither the toolkit's store nor the session holds what was uploaded; what can be read anew has no positions."""
    removed = []
    monkeypatch.setattr(
        MemoryUploadedFileManager, "remove_file", lambda self, session_id, file_id: removed.append(file_id)
    )
    data = TABLE.assign(Latitude=48.123456, lon=11.654321, other="x").to_csv(index=False).encode()
    app = uploaded(opened(), data)
    assert len(removed) == 1 and app.file_uploader[0].key == "recording-file " and not app.file_uploader[0].value
    held = {key: app.session_state[key] for key in ("recording", "recording-kept", "reading")}
    kept = zlib.decompress(held["recording-kept"][0]).decode()
    assert "Latitude" in kept and "other" in kept and "48.123456" not in kept and "11.654321" not in kept
    before = app.header[0].value
    assert "48.123456" not in repr(held) and b"48.123456" not in pickle.dumps(held["recording"])
    app = ran(app.selectbox(key="column-1").set_value(("speed_kmh", "mph")).run())
    assert "1.90 km" in before and "3.06 km" in app.header[0].value


def test_of_positions_alone_nothing_is_kept():
    rows = TABLE.assign(lat=48 + np.cumsum(CYCLE.speed_mps) / 111195, lon=11.0).drop(columns="v")
    app = uploaded(opened(), rows.to_csv(index=False).encode())
    assert "recording-kept" not in app.session_state and "open it again" in words(app)


def test_no_export_shows_where_a_drive_began_or_ended(tmp_path, capsys):
    file = tmp_path / "drive.csv"
    TABLE.assign(
        t=pd.date_range("2024-05-06T07:08:00Z", periods=len(TABLE), freq="s").astype(str),
        lat=48.123456, lon=11.654321, ele=517.25, kw=3.0,
    ).rename(columns={"v": "speed km/h"}).to_csv(file, index=False)  # fmt: skip
    assert main(["log", str(file)]) == 0
    recording, _, result = drive_recording(file, TOWN, frozenset())
    exports = [capsys.readouterr().out, energy_over_time(recording, result).to_csv()]
    exports += [table(recording, result).to_csv() for table in (by_speed, by_slow_down, by_minutes)]
    for text in exports:
        assert not re.search(r"48\.12|11\.65|517\.2|2024-|07:08", text)


def test_the_page_speaks_of_the_recording_not_of_the_described_drive():
    line = words(opened())
    assert "on a recording that is still to be opened" in line and "town" not in line.lower()
    app = ran(opened().button(key="recording-sample").click().run())
    assert "on the recording sample_recording.csv" in words(app)


def test_where_model_and_measurement_part_is_shown_in_three_ways():
    app = ran(opened().button(key="recording-sample").click().run())
    assert "They part most at" in words(app)
    app = ran(app.segmented_control(key="residual-by").set_value("slow_down").run())
    assert re.search(r"In \d+ slow-downs of 10 km/h or more the model puts back \d+", words(app))
    app = ran(app.segmented_control(key="residual-by").set_value("minutes").run())
    assert "In 0 to 5 minutes from the start" in words(app)


def test_habits_of_a_recording_become_those_of_the_described_drive():
    app = ran(opened().button(key="recording-sample").click().run())
    assert "The nearest habits" in words(app)
    found = habits_of(app.session_state["recording"].trace, 1.0)
    app.session_state["scenario"] = TOWN.with_setting("looks_ahead", "late" if found.looks_ahead != "late" else "far")
    app = ran(ran(app.run()).button(key="take-habits").click().run())
    driver = app.session_state["scenario"].driver
    assert (driver.looks_ahead, driver.pull_away) == (found.looks_ahead, found.pull_away)
    assert app.button(key="take-habits").disabled


def test_a_fit_is_used_nowhere_until_it_is_kept():
    app = ran(opened().button(key="recording-sample").click().run())
    before, header = app.session_state["scenario"], app.header[0].value
    app = ran(app.button(key="fit-car").click().run())
    found = app.session_state["recording-fit"]
    assert app.session_state["scenario"] == before and app.header[0].value == header
    assert "which it had not seen" in words(app) and abs(found.error_of_rest) < abs(found.error_of_rest_before)
    app = ran(app.button(key="keep-fit").click().run())
    assert app.session_state["scenario"] == found.taken_by(before) and app.header[0].value != header


def test_a_route_without_times_is_driven_up_to_a_limit():
    points = "".join(f'<trkpt lat="{48 + at / 1112}" lon="11"/>' for at in range(40))
    made = "<metadata><time>2024-01-01T00:00:00Z</time></metadata>"
    app = uploaded(opened(), f"<gpx>{made}{points}</gpx>".encode(), "r.gpx")
    assert "There are no times" in words(app) and "recording-kept" not in app.session_state
    before = app.header[0].value
    app = ran(app.slider(key="set-limit_kmh").set_value(100.0).run())
    assert "3.90 km" in before and app.header[0].value != before


def test_an_empty_page_asks_for_a_file():
    app = opened()
    assert not app.exception and not app.header and app.file_uploader(key="recording-file") is not None


def test_a_recording_that_was_open_before_the_server_started_anew_is_asked_for():
    assert "A recording was open here" not in words(opened())
    lost = opened_at("own_road.py", to_link(TOWN) | {"recorded": "yes"})
    assert "A recording was open here" in words(lost)
    back = uploaded(lost, TABLE.to_csv(index=False).encode())
    assert "A recording was open here" not in words(back) and back.header


def test_what_columns_mean_is_kept_for_the_next_file_and_nothing_else_of_it():
    app = uploaded(opened(), TABLE.to_csv(index=False).encode())
    app = ran(app.selectbox(key="column-1").set_value(("speed_kmh", "mph")).run())
    kept = address(app)["columns"]
    assert json.loads(kept) == {"v": ["speed_kmh", "mph"]}
    # the next visit brings it along, as the browser's cookie does
    again = uploaded(opened_at("own_road.py", to_link(TOWN) | {"columns": kept}), TABLE.to_csv(index=False).encode())
    assert "3.06 km" in again.header[0].value


@pytest.mark.parametrize("text", ["x", "[]", '{"v": 3}', '{"v": ["speed_kmh", "furlongs"]}', '{"v": [["a"], {}]}'])
def test_what_a_browser_cannot_have_kept_is_passed_over(text):
    app = uploaded(opened_at("own_road.py", to_link(TOWN) | {"columns": text}), TABLE.to_csv(index=False).encode())
    assert "1.90 km" in app.header[0].value


def test_no_more_is_kept_than_a_cookie_holds():
    many = {f"column {place}": ("speed_kmh", "km/h") for place in range(200)}
    app = opened()
    app.session_state["reading"] = {"columns": many, "off": frozenset(), "part": None}
    app = uploaded(app, TABLE.to_csv(index=False).encode())
    app = ran(app.selectbox(key="column-1").set_value(("speed_kmh", "m/s")).run())
    kept = address(app)["columns"]
    assert len(quote(kept)) <= 2000 and json.loads(kept)["v"] == ["speed_kmh", "m/s"]


def test_a_unit_that_does_not_fit_is_asked_about_and_chosen_there():
    slow = TABLE.assign(v=TABLE["v"] / 3.6).rename(columns={"v": "speed (km/h)"})
    app = uploaded(opened(), slow.to_csv(index=False).encode())
    assert "are the speeds in another unit?" in words(app)
    assert "Please look at this" in [each.value for each in app.subheader]
    app = ran(app.segmented_control(key="unit-of-speed_kmh").set_value("m/s").run())
    assert "1.90 km" in app.header[0].value and "are the speeds in another unit?" not in words(app)


def test_columns_that_are_not_known_can_be_named():
    strange = TABLE.rename(columns={"t": "Moment", "v": "Rad"})
    app = uploaded(opened(), strange.to_csv(index=False).encode())
    assert "no line names columns that are known" in app.error[0].value
    app = ran(app.selectbox(key="column-0").set_value(("time_s", "s")).run())
    app = ran(app.selectbox(key="column-1").set_value(("speed_kmh", "km/h")).run())
    assert not app.error and "1.90 km" in app.header[0].value


def hill(heights, times=False):
    """A road of 4 km over a hill as GPX, with its heights as they are written."""
    points = "".join(
        f'<trkpt lat="{48 + way / 1112:.6f}" lon="11"><ele>{height:.2f}</ele>'
        + f"<time>2024-01-31T08:{way * 7 // 60:02d}:{way * 7 % 60:02d}Z</time>" * times + "</trkpt>"
        for way, height in enumerate(heights)
    )  # fmt: skip
    return f"<gpx><trk><trkseg>{points}</trkseg></trk></gpx>".encode()


HILL_M = 500 + 20 * np.sin(np.arange(41) / 3)


@pytest.mark.parametrize("times", [False, True])
def test_heights_of_positions_in_feet_are_asked_about_and_chosen_without_the_file(times):
    feet = uploaded(opened(), hill(HILL_M / 0.3048, times), "hill.gpx")
    assert "are the heights in feet?" in words(feet) and "recording-kept" not in feet.session_state
    metres = uploaded(opened(), hill(HILL_M, times), "hill.gpx")
    assert feet.header[0].value != metres.header[0].value and "in feet" not in words(metres)
    feet = ran(feet.segmented_control(key="unit-of-elevation_m").set_value("ft").run())
    assert feet.header[0].value == metres.header[0].value and "in feet" not in words(feet)
    # every GPX file calls its heights alike: the next one is read in metres
    assert "columns" not in address(feet)
    # one that is not asked about can be corrected all the same
    metres = ran(metres.segmented_control(key="unit-of-elevation_m").set_value("ft").run())
    assert metres.header[0].value != feet.header[0].value


def test_heights_of_a_table_of_positions_are_put_right_without_the_file():
    def table(heights, unit):
        rows = "".join(f"{48 + way / 1112:.6f};11;{height:.2f}\n" for way, height in enumerate(heights))
        return f"Lat;Lon;Altitude ({unit})\n{rows}".encode()

    app = uploaded(opened(), table(HILL_M / 0.3048, "m"))
    assert "are the heights in feet?" in words(app) and "recording-kept" not in app.session_state
    app = ran(app.segmented_control(key="unit-of-elevation_m").set_value("ft").run())
    assert app.header[0].value == uploaded(opened(), table(HILL_M / 0.3048, "ft")).header[0].value
    assert json.loads(address(app)["columns"]) == {"Altitude (m)": ["elevation_m", "ft"]}


def test_what_is_switched_where_the_file_is_gone_holds_once_it_is_opened_again():
    data = hill(HILL_M, times=True)
    app = uploaded(opened(), data, "hill.gpx")
    first = app.header[0].value
    app = ran(app.toggle(key="clean-height").set_value(False).run())
    assert app.header[0].value == first and "holds once you open it again" in words(app)
    app = ran(app.file_uploader[0].upload("hill.gpx", data, "text/xml").run())
    assert app.header[0].value != first and not app.toggle(key="clean-height").value
    app = ran(app.file_uploader[0].upload("other.gpx", data, "text/xml").run())
    assert app.header[0].value == first and app.toggle(key="clean-height").value


def test_a_table_of_distance_and_height_is_a_route():
    rows = "".join(f"{way / 10};{500 + way}\n" for way in range(40))
    app = uploaded(opened(), f"distance [km];height [m]\n{rows}".encode())
    assert "There are no times" in words(app) and "3.90 km" in app.header[0].value


def test_units_of_a_route_are_put_right_without_opening_it_again():
    rows = "".join(f"{way / 10};{500 + way}\n" for way in range(1000))
    app = uploaded(opened(), f"distance;height\n{rows}".encode())
    # in metres it is no route
    assert "0.1 km to 1,000 km long" in words(app)
    app = ran(app.selectbox(key="column-0").set_value(("distance_m", "km")).run())
    assert "99.9 km" in app.header[0].value and "names no unit for height" in words(app)
    climb = app.session_state["recording"].trace.climb_m
    app = ran(app.segmented_control(key="unit-of-elevation_m").set_value("ft").run())
    assert app.session_state["recording"].trace.climb_m == pytest.approx(0.3048 * climb, rel=0.01)
    app = ran(app.selectbox(key="column-0").set_value(("distance_m", "mi")).run())
    assert app.session_state["recording"].trace.distance_m == pytest.approx(160_800, rel=0.01)


def test_a_band_is_computed_once_for_a_recording_and_a_description():
    app = ran(opened().button(key="recording-sample").click().run())
    first = app.session_state["recording-answer"]
    app = ran(app.segmented_control(key="residual-by").set_value("minutes").run())
    assert app.session_state["recording-answer"] is first
