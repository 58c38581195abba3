"""The page Take away, without a browser."""

import json
from io import StringIO

import pandas as pd
import pytest
import streamlit as st
from streamlit.testing.v1 import AppTest

from model.describe.scenario_io import starting_drives, to_link
from model.kernel.timeline import timeline
from model.out.answers import Asked, as_text, drive_answer
from model.out.cli import main
from model.sampling.drives import drive
from model.words.quantities import Display
from pages.parts import state
from pages.parts.link import link_of
from pages.parts.public_link import PUBLIC_URL, public_link, short_text
from tests.pages.in_app import headers, opened_at, ran, scenario_of

TOWN = starting_drives()["town"][2]
HILL = starting_drives()["suburb-hill"][2]


def opened(scenario=TOWN) -> AppTest:
    return opened_at("take_away.py", to_link(scenario))


def paste(app, text):
    app.text_input(key="open-text").set_value(text)
    button = next(one for one in app.button if one.label == "Open the text")
    return ran(button.click().run())


def upload(app, name, data):
    return ran(app.file_uploader(key="open-file").upload(name, data, "application/octet-stream").run())


def test_it_offers_the_page_the_answer_and_the_timeline():
    app = opened()
    # without a public address the text for another screen is folded, as are the files for those who check
    assert headers(app) == ["One card to take", "Open a drive"]
    assert {"To another screen", "For those who check: answer and timeline as files"} <= {
        one.label for one in app.expander
    }
    assert [one.label for one in app.download_button] == [
        "The page (HTML)", "The answer (JSON)", "The timeline (CSV)",
    ]  # fmt: skip


def test_the_card_stands_on_the_page_as_it_is_printed_below_its_title():
    (card,) = [one.proto.body for one in opened(HILL).get("html") if 'class="paper"' in one.proto.body]
    assert "<h1" not in card and "<main" not in card and "Latin hypercube" in card
    assert card.count('<section class="side') == 2


def test_the_drive_can_be_taken_as_a_picture():
    app = opened()
    app.toggle(key="take-strip-for-print").set_value(True).run()
    labels = [button.proto.label for button in app.get("download_button")]
    assert not app.exception and labels[-2:] == ["SVG", "PNG"]


def test_a_link_is_shared_where_others_can_open_it(monkeypatch):
    def labels():
        return [one.label for one in opened(HILL).button]

    assert "Print" in labels() and "Share" not in labels()
    monkeypatch.setenv(PUBLIC_URL, "https://drive.net")
    assert "Share" in labels()


def test_without_a_public_address_the_text_stands_for_the_link():
    app = opened(HILL)
    assert [one.value for one in app.code] == [short_text(link_of(HILL, Display()))]


def test_with_a_public_address_there_is_the_link_and_its_code(monkeypatch):
    monkeypatch.setenv(PUBLIC_URL, "https://drive.net")
    app = opened(HILL)
    assert [one.value for one in app.code] == [public_link(link_of(HILL, Display()))]
    assert len(app.get("image")) == 1


def test_a_pasted_text_is_opened_and_said():
    app = paste(opened(), short_text(link_of(HILL, Display())))
    assert scenario_of(app) == HILL
    assert [one.value for one in app.success] == ["Opened: family hatch, suburb to city, over a hill."]


def test_a_text_without_a_drive_changes_nothing_and_is_refused():
    app = paste(opened(), "hello")
    assert scenario_of(app) == TOWN and not app.success
    assert "holds no drive" in app.error[0].value
    app = paste(app, short_text(link_of(HILL, Display())))
    assert scenario_of(app) == HILL and not app.error


def test_what_was_said_of_an_opened_drive_goes_when_something_changes():
    app = paste(opened(), short_text(link_of(HILL, Display())))
    ran(app.button_group(key="set-brake_pedal").set_value("friction").run())
    assert not app.success


def test_an_answer_file_is_opened():
    answer = as_text(drive_answer(Asked(HILL, band_runs=5)))
    app = upload(opened(), "answer.json", answer.encode())
    assert scenario_of(app) == HILL and app.success


def test_an_answer_of_another_version_says_what_moved():
    answer = json.loads(as_text(drive_answer(Asked(HILL)))) | {"model_version": "0.0.1", "energy_saved_share": 0.11}
    app = upload(opened(), "answer.json", json.dumps(answer).encode())
    assert scenario_of(app) == HILL
    assert "0.0.1" in app.success[0].value and "11 % of the energy was saved; now it is" in app.success[0].value


def test_a_file_without_a_drive_is_refused():
    app = upload(opened(), "answer.json", b"{")
    assert scenario_of(app) == TOWN
    assert app.error[0].value.startswith("Answer.json: not valid JSON")


def test_a_drive_that_cannot_be_leaves_a_way_to_open_another():
    app = opened(TOWN.with_setting("soc_start", 0.01))
    assert app.error and headers(app) == ["Open a drive"]
    app = paste(app, short_text(link_of(HILL, Display())))
    assert scenario_of(app) == HILL and "One card to take" in headers(app)


@pytest.fixture
def handed_out(monkeypatch):
    """What the download buttons would make, by their label."""
    made = {}
    button = st.download_button

    def noted(label, data, *rest, **words):
        made[label] = data
        return button(label, data, *rest, **words)

    monkeypatch.setattr(st, "download_button", noted)
    return made


def test_the_answer_that_is_handed_out_is_reproduced_to_the_byte(handed_out, tmp_path, capsys):
    opened(HILL.with_setting("mass_kg", 1234.56789))
    text = handed_out["The answer (JSON)"]()
    (tmp_path / "answer.json").write_text(text, encoding="utf-8")
    assert main(["drive", str(tmp_path / "answer.json")]) == 0
    assert capsys.readouterr().out == text
    answer = json.loads(text)
    assert answer["band"]["runs"] == state.BAND_RUNS and answer["year"]["runs"] == state.BAND_RUNS
    assert answer["advice"]["overall"]["because"]


def test_the_timeline_that_is_handed_out_is_the_drives(handed_out):
    opened(HILL)
    steps = pd.read_csv(StringIO(handed_out["The timeline (CSV)"]()))
    expected = timeline(drive(HILL))
    assert list(steps.columns) == [*expected.columns, "about", "model_version", "model_date"]
    assert len(steps) == len(expected) and steps["about"].nunique() == 1 and "brake pedal" in steps["about"][0]
    assert steps["battery_kw"].to_numpy() == pytest.approx(expected["battery_kw"].to_numpy(), rel=1e-5, abs=1e-9)


def test_the_page_that_is_handed_out_is_html_and_opens_again(handed_out):
    opened(HILL)
    page = handed_out["The page (HTML)"]()
    assert page.startswith("<!DOCTYPE html>")
    app = upload(opened(), "page.html", page.encode())
    assert scenario_of(app) == HILL
