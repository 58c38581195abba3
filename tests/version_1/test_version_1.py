"""Links and files of the first version, kept as they were made: they open for ever, and mean what they meant."""

import json
from dataclasses import asdict
from pathlib import Path
from typing import Any
from urllib.parse import parse_qsl, urlsplit

import pytest

from model.claims.questions import question_from_json
from model.describe.scenario import Scenario
from model.describe.scenario_io import from_link, read_json, to_link, with_car
from model.limits.limit_settings import settings_of as limit_settings_of
from model.one_stop.panels import settings_of as panel_settings_of
from model.out.answers import asked_by
from pages.parts.link import parsed
from pages.parts.opening import from_file, from_text
from tests.pages.in_app import opened_at

HERE = Path(__file__).parent
LINKS = json.loads((HERE / "links.json").read_text(encoding="utf-8"))
FILES = json.loads((HERE / "files.json").read_text(encoding="utf-8"))
OWN_SETTINGS = {"/winter_and_limits": limit_settings_of, "/how_it_works": panel_settings_of}
ONE_OF_EACH_PAGE = {urlsplit(row["link"]).path: row for row in LINKS}


def means(scenario: Scenario, meant: dict[str, Any]) -> None:
    """Every figure that a link or file had is still what it was; figures added since then do not count."""
    assert scenario.car_class == meant["car"]
    assert dict(scenario.stated) == meant["stated"]
    assert scenario.return_trip == meant["return_trip"]
    for part in ("conditions", "driver", "year"):
        held = asdict(getattr(scenario, part))
        assert {key: held[key] for key in meant[part]} == meant[part]
    assert len(scenario.legs) == len(meant["legs"])
    for leg, figures in zip(map(asdict, scenario.legs), meant["legs"], strict=True):
        assert {key: leg[key] for key in figures} == figures


def parameters(row: dict[str, Any]) -> dict[str, str]:
    return dict(parse_qsl(urlsplit(row["link"]).query))


@pytest.mark.parametrize("row", LINKS, ids=lambda row: row["about"])
def test_a_link_of_version_1_means_what_it_meant(row):
    scenario, notices = from_link(parameters(row), Scenario())
    assert notices == []
    means(scenario, row["means"])
    means(from_text(f"https://drive.net{row['link']}", Scenario()).scenario, row["means"])
    means(from_link(to_link(scenario), Scenario())[0], row["means"])
    # the door of the address, by which prices may follow the units
    means(parsed(parameters(row), Scenario())[0], row["means"])


@pytest.mark.parametrize("row", [row for row in LINKS if "own" in row["means"]], ids=lambda row: row["about"])
def test_a_pages_own_settings_of_version_1_mean_what_they_meant(row):
    found, notices = OWN_SETTINGS[urlsplit(row["link"]).path](parameters(row))
    assert notices == []
    assert {key: getattr(found, key) for key in row["means"]["own"]} == row["means"]["own"]


@pytest.mark.parametrize("path", ONE_OF_EACH_PAGE)
def test_a_page_opens_with_a_link_of_version_1(path):
    row = ONE_OF_EACH_PAGE[path]
    app = opened_at(f"{path.strip('/') or 'your_drive'}.py", parameters(row))
    said = [one.value for one in (*app.info, *app.error)]
    assert not any("could not be used" in one or "is not" in one for one in said), said


@pytest.mark.parametrize("name", [name for name in FILES if name.startswith(("scenario", "answer"))])
def test_a_file_of_version_1_means_what_it_meant(name):
    meant, asked = FILES[name], asked_by(read_json(HERE / name))
    means(asked.scenario, meant)
    means(from_file((HERE / name).read_bytes(), name).scenario, meant)
    for key, value in meant.get("asked", {}).items():
        held = getattr(asked, key)
        assert (list(held) if isinstance(held, tuple) else held) == value


@pytest.mark.parametrize("name", [name for name in FILES if name.startswith("car")])
def test_a_car_file_of_version_1_means_what_it_meant(name):
    means(with_car(Scenario(), read_json(HERE / name)), FILES[name])


@pytest.mark.parametrize("name", [name for name in FILES if name.startswith("claim")])
def test_a_claims_answer_of_version_1_asks_what_it_asked(name):
    asked = question_from_json(read_json(HERE / name))
    assert (asked.claim.id, dict(asked.given)) == (FILES[name]["id"], FILES[name]["given"])


def test_every_file_is_opened():
    assert {file.name for file in HERE.glob("*.json")} == {"links.json", "files.json", *FILES}
