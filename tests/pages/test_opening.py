"""Opening a drive again: whatever was taken away comes back as the same drive."""

import json

import pytest

from model import MODEL_VERSION
from model.describe.fields import InputError
from model.describe.scenario_io import scenario_to_json, starting_drives
from model.out.answers import Asked, as_text, drive_answer
from model.words.quantities import Display
from model.words.refusals import refusal_words
from pages.parts.link import link_of
from pages.parts.opening import from_file, from_text, moved_words
from pages.parts.public_link import short_text
from pages.parts.report import data_address
from tests.refused import refuses

METRIC = Display()
TOWN = starting_drives()["town"][2]
HILL = starting_drives()["suburb-hill"][2].with_setting("mass_kg", 1234.56789).with_setting("currency", "€ & £")
TEXT = short_text(link_of(HILL, Display()))


@pytest.mark.parametrize(
    "text",
    [
        TEXT,
        f"  {TEXT}\n",
        f"?{TEXT}",
        f"https://drive.net/?{TEXT}",
        f"http://192.168.1.20:8501/take_away?{TEXT}&units=us",
        json.dumps(scenario_to_json(HILL)),
        as_text(drive_answer(Asked(HILL, band_runs=5))),
    ],
    ids=["text", "spaces", "question mark", "link", "link of a page", "scenario", "answer"],
)
def test_a_text_comes_back_as_the_drive_it_was_made_of(text):
    opened = from_text(text, TOWN)
    assert opened.scenario == HILL and opened.notices == ()


@pytest.mark.parametrize(
    "text", ["hello", "https://drive.net/", "units=us", "legs", "&&&", "http://[bad", "{", '{"legs": []}']
)
def test_a_text_without_a_drive_is_refused_in_a_sentence(text):
    with pytest.raises(InputError) as refused:
        from_text(text, TOWN)
    sentence = refusal_words(refused.value, METRIC)
    assert sentence.endswith((".", ")")) and "\n" not in sentence


def test_what_a_link_cannot_mean_is_clamped_and_said():
    opened = from_text("car=van&ambient_c=99", TOWN)
    assert opened.scenario.conditions.ambient_c == 50 and "set to 50" in opened.notices[0]
    assert opened.scenario.legs == TOWN.legs


def test_a_text_of_another_version_says_so():
    opened = from_text("car=van&v=0.0.1", TOWN)
    assert len(opened.notices) == 1 and "0.0.1" in opened.notices[0] and MODEL_VERSION in opened.notices[0]


@pytest.mark.parametrize(
    "data",
    [
        json.dumps(scenario_to_json(HILL)).encode(),
        as_text(drive_answer(Asked(HILL))).encode(),
        b'<!DOCTYPE html>\n<a href="' + data_address(json.dumps(scenario_to_json(HILL))).encode() + b'" download>',
    ],
    ids=["scenario", "answer", "page"],
)
def test_a_file_comes_back_as_the_drive_it_was_made_of(data):
    assert from_file(data, "drive").scenario == HILL


@pytest.mark.parametrize(
    ("data", "sentence"),
    [
        (b"<html></html>", "this page was not made by"),
        (b'<a href="data:application/json;base64,AAA">', "damaged"),
        (b'<a href="data:application/json;base64,AAAA">', "not valid JSON"),
        (b"\xff\xfe\x00", "not valid JSON"),
        (b"", "not valid JSON"),
        (b"[" * 100_000, "not valid JSON"),
        (b'{"legs": 3}', "not a list of legs"),
        (b"3", "JSON object"),
    ],
)
def test_a_file_without_a_drive_is_refused_in_a_sentence(data, sentence):
    with refuses(sentence):
        from_file(data, "file.json")


def test_a_file_of_another_version_says_so_and_what_it_had_said():
    old = json.loads(as_text(drive_answer(Asked(HILL)))) | {"model_version": "0.0.1", "energy_saved_share": 0.25}
    opened = from_file(json.dumps(old).encode(), "old.json")
    assert opened.scenario == HILL
    assert "0.0.1" in opened.notices[0] and MODEL_VERSION in opened.notices[0]
    assert moved_words(opened.said_share, 0.31, METRIC) == "Then 25 % of the energy was saved; now it is 31 %."
    assert moved_words(opened.said_share, 0.2501, METRIC) == "Then as now, 25 % of the energy is saved."
    assert moved_words(None, 0.31, METRIC) == ""
