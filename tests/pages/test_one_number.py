"""One quantity, one number: what every page, card, paper and the command line say of one drive, held together."""

import json
import re
from functools import cache

import pytest

from model.describe.scenario_io import scenario_to_json, starting_drives, to_link
from model.out.cli import main
from model.sampling.uncertainty import RUNS
from pages.parts import state
from pages.parts.report import report_html
from tests.pages.in_app import CLAIM_PARTS, html_of, opened_at
from tests.pages.made_reports import taken

WINTER = starting_drives()["suburb-hill"][2].with_setting("ambient_c", 1.0)
"""A winter day as the year has it, so that the day shown and the year's are one."""
NUMBER = r"(−?\d[\d,]*(?:\.\d+)?)"


def of_page(page: str, **more: str) -> str:
    """All words of a page, its tables among them."""
    return bare(" ".join(words_of(page, to_link(WINTER) | more)))


def words_of(page: str, link: dict[str, str]) -> list[str]:
    """All words of a page at an address."""
    app = opened_at(page, link, CLAIM_PARTS)
    words = [one.value for kind in (app.title, app.header, app.markdown, app.caption) for one in kind]
    words += html_of(app)
    return words + [one.value.to_string(max_colwidth=200) for one in app.table]


def bare(text: str) -> str:
    """Words without marks."""
    return re.sub(r"\s+", " ", re.sub(r"<style>.*?</style>|<[^>]+>|[*:]blue|[\[\]*]", " ", text, flags=re.S))


@cache
def said() -> dict[str, str]:
    """What is said of the drive, by place."""
    return {
        "first page": of_page("your_drive.py"),
        "cold": of_page("winter_and_limits.py", part="cold"),
        "stop": of_page("winter_and_limits.py", part="stop"),
        "speed": of_page("how_it_works.py", panel="speed"),
        "flow": of_page("how_it_works.py", panel="flow"),
        "who": of_page("how_it_works.py", panel="who"),
        "motor": of_page("how_it_works.py", panel="motor"),
        "claims": of_page("check_a_claim.py"),
        "card 2": of_page("show.py", card="2"),
        "card 3": of_page("show.py", card="3"),
        "card 5": of_page("show.py", card="5"),
        "compare": of_page("compare.py"),
        "paper": bare(report_html(taken(WINTER))),
    }


@pytest.fixture
def asked(capsys, tmp_path):
    """The same drive asked on the command line."""
    file = tmp_path / "winter.json"
    file.write_text(json.dumps(scenario_to_json(WINTER)))
    assert main(["drive", str(file), "--band"]) == 0
    return json.loads(capsys.readouterr().out)


SAYINGS = {
    # quantity: its exact value from the command line's answer, and where it is told in which words
    "taken": (
        lambda answer: answer["battery_net_kwh"],
        {
            "first page": "takes about {} kWh(?:, [0-9]+ % of it for the cabin)?; [0-9.]+ to [0-9.]+ kWh saved",
            "card 5": "On a winter day, at 1 °C, the drive takes about {} kWh",
            "paper": "takes about {} kWh(?:, [0-9]+ % of it for the cabin)?; [0-9.]+ to [0-9.]+ kWh saved",
        },
    ),
    "friction only": (
        lambda answer: answer["friction_only_net_kwh"],
        {
            "first page": "Regeneration saves [0-9.]+ of {} kWh",
            "card 3": "[0-9.]+ of {} kWh saved",
            "paper": "Regeneration saves [0-9.]+ of {} kWh",
        },
    ),
    "saved": (
        lambda answer: answer["friction_only_net_kwh"] - answer["battery_net_kwh"],
        {
            "first page": "Regeneration saves {} of",
            "card 3": "{} of [0-9.]+ kWh saved",
            "paper": "Regeneration saves {} of",
        },
    ),
    "energy saved, %": (
        lambda answer: 100 * answer["energy_saved_share"],
        {
            "first page": "Regeneration saves [0-9.]+ of [0-9.]+ kWh, {} %",
            "claims": "{} % Of the range, lost without regeneration",
            "paper": "energy saved {} %",
        },
    ),
    "recovered, %": (
        lambda answer: 100 * answer["recovered_share_of_output"],
        {
            "first page": "Of every 100 Wh that leave the battery, {} come back",
            "claims": "{} % Recovered: of what the battery gave",
            "paper": "recovered share {} %",
        },
    ),
    "range gain, %": (
        lambda answer: 100 * answer["range_gain_share"],
        {"claims": "{} % More range than on friction brakes only", "paper": "range gain {} %"},
    ),
    "braking by the motor, %": (
        lambda answer: 100 * answer["captured_share_of_braking"],
        {
            "first page": "The motor does {} % of the braking",
            "motor": "does {} % of the braking on your drive",
            "claims": "{} % Of the braking energy, taken by the motor",
        },
    ),
    "heat in the discs": (
        lambda answer: answer["wheel_friction_kwh"],
        {"first page": "with regeneration {} kWh do", "card 3": "with regeneration {} kWh do",
         "paper": "with regeneration {} kWh do"},
    ),
    "put back": (lambda answer: answer["battery_in_kwh"], {"motor": "puts {} kWh in the battery"}),
    "minutes": (lambda answer: answer["duration_s"] / 60, {"first page": "of the battery in {} minutes"}),
    "length": (lambda answer: answer["distance_km"], {"first page": "{} km in all", "cold": "{} km in all"}),
}  # fmt: skip
TWICE = {
    # quantities that the command line does not answer: told alike wherever they stand
    "motion at 100 km/h": {"speed": "At 100 km/h .* carries {} Wh of motion", "flow": "Of {} Wh of motion at 100 km/h"},
    "back from 100 km/h": {"speed": "puts {} Wh back in the battery", "flow": "motion at 100 km/h, {} Wh are put back"},
    "stopping distance": {"cold": "Emergency stop [0-9.]+ to {} m", "stop": "dry road: [0-9.]+ to {} m to rest",
                          "paper": "emergency stop: [0-9.]+ to {} m"},
}  # fmt: skip


def figure(place: str, pattern: str) -> tuple[float, float]:
    """The number told at a place, and half a step of its last digit."""
    found = re.search(pattern.format(NUMBER), said()[place])
    assert found, (place, pattern)
    text = found[1].replace(",", "").replace("−", "-")
    return float(text), 0.5 * 10.0 ** -len(text.partition(".")[2])


@pytest.mark.parametrize("quantity", SAYINGS)
def test_every_place_tells_the_number_of_the_command_line(quantity, asked):
    exact, places = SAYINGS[quantity]
    for place, pattern in places.items():
        told, step = figure(place, pattern)
        assert told == pytest.approx(exact(asked), abs=1.0001 * step), (place, told, exact(asked))


@pytest.mark.parametrize("quantity", TWICE)
def test_every_place_tells_the_same_number(quantity):
    told = [figure(place, pattern) for place, pattern in TWICE[quantity].items()]
    numbers, coarsest = [number for number, _ in told], max(step for _, step in told)
    assert max(numbers) - min(numbers) <= 2.0001 * coarsest, dict(zip(TWICE[quantity], numbers, strict=True))


def test_the_motors_part_of_a_hard_stop_is_named_apart_where_its_whole_is_another():
    """With air and tyres among what slows the car the motor's part is of more, and so is less."""
    parts = "the motor does {0} % of the work, the friction brakes {0} %, air and tyres {0} %"
    who = of_page("how_it_works.py", panel="who", from_kmh="100", slowing_mps2="12")
    motor, friction, road = map(float, re.search(parts.format(NUMBER), who).groups())
    assert motor + friction + road == pytest.approx(100, abs=1.5) and road > 0
    of_wheels, _ = figure("stop", "at the most, {} % of what the wheels brake, air left out")
    # in whole percent they may read alike
    assert of_wheels == figure("stop", "The motor could do at most {} % of what the wheels brake")[0] >= motor
    assert "“Who slows” under How it works counts air and tyres" in said()["stop"]


RANGE_BAND = {
    "first page": "On a full battery {0} to {0} km",
    "claims": "km on the test, {0} to {0} km on your drive",
    "claims, another printed": "“Your drive” says {0} to {0} km on a full battery: it knows nothing",
}


def test_every_place_tells_the_same_band_of_the_range():
    """Where a printed range is asked that nobody has stated of the car, the answer's own stands beside it."""
    places = said() | {"claims, another printed": of_page("check_a_claim.py", test_range_km="520")}
    found = {place: re.search(text.format(NUMBER), places[place]).groups() for place, text in RANGE_BAND.items()}
    assert len(set(found.values())) == 1, found
    low, high = map(float, found["first page"])
    assert low < figure("cold", "{} km instead of")[0] < high


def test_a_printed_range_that_is_known_of_the_car_ends_at_its_answer(monkeypatch):
    # of few cars hardly any fits what is printed
    monkeypatch.setattr(state, "BAND_RUNS", RUNS)
    printed = WINTER.with_setting("printed_range_km", 450.0)
    claims, first = (bare(" ".join(words_of(page, to_link(printed)))) for page in ("check_a_claim.py", "your_drive.py"))
    assert (re.search(RANGE_BAND["claims"].format(NUMBER), claims).groups()
            == re.search(RANGE_BAND["first page"].format(NUMBER), first).groups())  # fmt: skip


BANDS = {
    "first page": "About {0} to {0} % less battery energy",
    "cold": "About {0} to {0} % less battery energy",
    "card 2": "{0} to {0} % less battery energy",
    "card 5": "In winter it saves {0} to {0} %",
    "paper": "About {0} to {0} % less battery energy",
}


def test_every_place_tells_the_same_band():
    found = {place: re.search(pattern.format(NUMBER), said()[place]).groups() for place, pattern in BANDS.items()}
    assert len(set(found.values())) == 1, found
