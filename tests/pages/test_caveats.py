"""Caveats travel with their sentence: on pages, cards, paper and in files alike."""

import json
import re
from dataclasses import replace

import pytest

from model.describe.scenario import Leg
from model.describe.scenario_io import starting_drives, to_link
from model.lift_off.advice import advise
from model.lift_off.curves import curves_of
from model.limits.all_limits import season_costs_of
from model.limits.cold_day import cold_day, normal_by_battery
from model.limits.full_start import Normal
from model.out.answers import Asked, as_text, drive_answer
from model.words.quantities import Display
from pages.parts import cold_words, departures, lift_off_words
from pages.parts.report import report_html
from pages.parts.winter_words import slowing_expected, slowing_in_short
from tests.pages.in_app import html_of, opened_at
from tests.pages.made_reports import taken

METRIC, US = Display(), Display(us=True)
HILL = starting_drives()["suburb-hill"][2]
FROSTY = HILL.with_setting("ambient_c", -5.0)
SLOW, NEVER, USUAL = Normal(4.0, 3.0, -2.0, 0.6), None, Normal(0.0, 0.0, -5.0, 0.6)


def words_of(page: str, scenario, **more: str) -> str:
    app = opened_at(page, to_link(scenario) | more)
    found = [one.value for kind in (app.title, app.header, app.markdown, app.warning) for one in kind]
    return bare(" ".join(found + html_of(app)))


def bare(text: str) -> str:
    return re.sub(r"\s+", " ", re.sub(r"<[^>]+>|\*\*", " ", text))


def test_the_advice_on_lift_off_never_stands_without_its_slippery_road():
    advice = advise(curves_of(FROSTY))
    strength = bare(lift_off_words.strength_text(advice.overall.lift_off_mps2, Display()))
    slippery = bare(lift_off_words.slippery_text(advice.overall, Display()))
    assert advice.overall.lift_off_mps2 > 0 and "ice rolling on, 0" in slippery
    places = {
        "page": words_of("lift_off.py", FROSTY),
        "card": words_of("show.py", FROSTY, card="4"),
        "paper": bare(report_html(taken(FROSTY))),
    }
    for place, told in places.items():
        assert strength in told and slippery in told, place


def test_the_advice_in_a_file_has_its_slippery_road_for_every_leg():
    found = json.loads(as_text(drive_answer(Asked(FROSTY, advice=True))))["advice"]
    for advice in (found["overall"], *found["legs"]):
        assert [road["road"] for road in advice["slippery"]] == ["packed snow", "ice"]


@pytest.mark.parametrize(
    ("middle", "little", "short", "expected"),
    [
        (USUAL, NEVER, "as usual from the start; weaker all the way if the battery takes little",
         "with one that takes little in the cold, expect less slowing all the way."),
        (SLOW, NEVER, "weaker for 4 minutes; weaker all the way if the battery takes little",
         "Expect less slowing for the first 4 minutes, all the way if the battery takes little in the cold."),
        (NEVER, NEVER, "weaker all the way", "Expect less slowing all the way."),
        (USUAL, USUAL, "as usual from the start", "the motor slows the car as usual."),
    ],
)  # fmt: skip
def test_a_battery_that_takes_little_goes_with_what_is_usual(middle, little, short, expected):
    normal = {"low": little, "mid": middle, "high": USUAL}
    assert slowing_in_short(normal, METRIC) == short
    assert slowing_expected(normal, METRIC).endswith(expected)
    assert ("xpect less" in slowing_expected(normal, METRIC)) == (little != USUAL)


def test_page_card_and_paper_expect_the_same_slowing_in_winter():
    winter = HILL.with_setting("ambient_c", HILL.year.winter_c)
    expected = slowing_expected(normal_by_battery(winter), METRIC)
    told = {"page": words_of("winter_and_limits.py", winter, part="cold"),
            "card": words_of("show.py", winter, card="5"),
            "paper": bare(report_html(taken(winter)))}  # fmt: skip
    assert [place for place, words in told.items() if expected not in words] == []
    in_short = slowing_in_short(normal_by_battery(winter), METRIC)
    assert "battery takes little" in in_short
    assert [place for place in ("page", "paper") if in_short not in told[place]] == []


def test_winter_advice_is_ranked_by_what_it_brings_on_this_drive():
    found = cold_day(FROSTY, season_costs_of(FROSTY), normal_by_battery(FROSTY))
    brings = [one.brings_kwh for one in found.measures]
    assert brings == sorted(brings, reverse=True) and len(brings) == 4
    (plug,) = [one for one in found.measures if one.id == "plug"]
    words = cold_words.measure_words(found, METRIC)
    # it costs more than it spares, and so it neither stands first nor is praised
    assert plug.costs_kwh > plug.saved_kwh and found.measures[-1] == plug
    assert "does not pay in energy" in words[-1] and "Warm the car up" not in " ".join(words)
    warm = HILL.with_setting("ambient_c", 20.0)
    assert cold_words.measure_words(cold_day(warm, season_costs_of(warm), normal_by_battery(warm)), METRIC) == []


def test_snow_on_a_warm_day_is_asked_about_wherever_it_is_told():
    snowy = HILL.with_setting("surface", "snow")
    question = departures.frost_text(snowy.with_setting("ambient_c", 20.0), METRIC)
    assert question.startswith("Snow at 20 °C?")
    assert "68 °F" in departures.frost_text(snowy.with_setting("ambient_c", 20.0), US)
    assert not departures.frost_text(snowy.with_setting("ambient_c", 1.0), METRIC)
    assert not departures.frost_text(HILL, METRIC)
    icy = replace(HILL, legs=(*HILL.legs, Leg(surface="glazed-ice"))).with_setting("ambient_c", 20.0)
    assert departures.frost_text(icy, METRIC).startswith("Glazed ice at 20 °C?")
    warm = snowy.with_setting("ambient_c", 20.0)
    for page, more in (("your_drive.py", {}), ("lift_off.py", {}), ("winter_and_limits.py", {"part": "grip"}),
                       ("winter_and_limits.py", {"part": "stop"}), ("show.py", {"card": "2"})):  # fmt: skip
        assert question in words_of(page, warm, **more), page
    assert question in bare(report_html(taken(warm)))


@pytest.mark.parametrize(
    ("page", "part", "keys"),
    [
        ("winter_and_limits.py", "grip", ("surface-part", "tyres-part", "trailer_kg", "payload_kg-part")),
        ("winter_and_limits.py", "stop", ("surface-part", "tyres-part")),
        ("winter_and_limits.py", "hills", ("soc_start-part", "trailer_kg")),
        ("winter_and_limits.py", "cold", ("ambient_c-part", "soc_start-part", "preconditioned-part", "cabin-part")),
        ("lift_off.py", "", ("surface-part", "trailer_kg")),
    ],
)
def test_what_a_page_is_about_is_asked_on_it(page, part, keys):
    app = opened_at(page, to_link(FROSTY) | ({"part": part} if part else {}))
    widgets = {one.key for kind in (app.selectbox, app.text_input, app.toggle) for one in kind}
    assert {f"set-{key}" for key in keys} <= widgets
    if "surface-part" in keys:
        app.selectbox(key="set-surface-part").set_value("ice").run()
        assert not app.exception and app.query_params["surface"] in ("ice", ["ice"])


def test_every_card_names_its_day():
    days = {card: words_of("show.py", FROSTY, card=card) for card in "2345"}
    assert all("A day of −5 °C" in days[card] for card in "234")
    assert "The year’s winter day, 1 °C" in days["5"]
