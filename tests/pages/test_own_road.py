"""A recording of one's own on its page, without a browser."""

import pandas as pd

from model.describe.scenario_io import starting_drives, to_link
from model.traces.cycles import cycle_trace
from model.traces.logs import read_recording
from pages.parts.own_road_words import SAMPLE
from tests.pages.in_app import opened_at, ran

TOWN = starting_drives()["town"][2]
CYCLE = cycle_trace("nycc")
TABLE = pd.DataFrame({"t": CYCLE.time_s, "v": (CYCLE.speed_mps * 3.6).round(2)})


def opened():
    return opened_at("own_road.py", to_link(TOWN))


def uploaded(app, data, name="drive.csv"):
    return ran(app.file_uploader(key="recording-file").upload(name, data, "text/csv").run())


def words(app):
    kinds = (app.header, app.markdown, app.caption, app.info, app.error)
    return " ".join(each.value for kind in kinds for each in kind)


def test_the_sample_is_named_as_invented_and_stands_measured_beside_modelled():
    app = ran(opened().button(key="recording-sample").click().run())
    assert "no car has driven it" in words(app)
    measured = read_recording(SAMPLE).measured
    assert f"{measured.battery_net_kwh:.2f} kWh were measured" in app.header[0].value
    totals, recognised = (table.value for table in app.table[:2])
    assert list(totals.columns) == ["", "Measured", "Modelled", "Nine in ten cars"]
    assert "battery power" in list(recognised["Taken for"])
    assert [toggle.key for toggle in app.toggle if toggle.key.startswith("clean-")] == [
        "clean-noise", "clean-standing", "clean-stray_heights", "clean-height",
    ]  # fmt: skip


def test_a_file_is_read_corrected_and_cleaned_anew():
    app = uploaded(opened(), TABLE.to_csv(index=False).encode())
    asked = app.header[0].value
    assert "1.90 km" in asked and "The file names no unit for speed" in words(app)
    app = ran(app.selectbox(key="column-1").set_value(("speed_kmh", "mph")).run())
    assert "3.06 km" in app.header[0].value
    assert app.session_state["recording"].columns[1].unit == "mph"


def test_a_step_can_be_switched_off():
    app = ran(opened().button(key="recording-sample").click().run())
    before = app.header[0].value
    app = ran(app.toggle(key="clean-height").set_value(False).run())
    assert app.header[0].value != before
    assert "height" not in [effect.step for effect in app.session_state["recording"].effects]


def test_a_file_that_cannot_be_read_is_refused_in_one_sentence():
    app = uploaded(opened(), b"PK\x03\x04")
    assert "is packed, or a workbook: unpack it" in app.error[0].value
    assert not app.header


def test_nothing_of_the_file_is_kept_but_the_drive():
    table = TABLE.assign(latitude=48.123456, longitude=11.0)
    app = uploaded(opened(), table.to_csv(index=False).encode())
    held = app.session_state["recording"]
    assert "latitude" in [column.meaning for column in held.columns]
    assert "48.123456" not in repr((held, app.session_state["reading"])) and not hasattr(held, "samples")
    assert "must be opened again" in words(app)
    assert set(app.query_params) == set(opened().query_params)


def test_an_empty_page_asks_for_a_file():
    app = opened()
    assert not app.exception and not app.header and app.file_uploader(key="recording-file") is not None
