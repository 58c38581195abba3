"""The take-away page: complete, self-contained, and the same bytes for the same drive."""

import base64
import json
import re
from dataclasses import replace
from html.parser import HTMLParser

import pytest

from model import MODEL_DATE, MODEL_VERSION
from model.describe.car import CAR_FIELDS
from model.describe.parameters import assumed_figures
from model.describe.scenario import MAX_LEGS
from model.describe.scenario_io import scenario_from_json, starting_drives
from model.describe.sources import sources
from model.words.entries import labelled
from model.words.quantities import Display
from pages.parts import card_words, description, lift_off_words, wording
from pages.parts.public_link import PUBLIC_URL, public_link, qr_svg, short_text
from pages.parts.report import QR_MOST_MM, contents, fitting_pt, qr_mm, report_html, svg_address, template
from pages.parts.source_tables import MAIN_FIGURES
from pages.parts.trust import left_out
from pages.parts.typography import NO_BREAK
from tests.pages.made_reports import MADE, RUNS, TOWN, taken, with_most_to_say

HILL = starting_drives()["suburb-hill"][2]
VOID = {"meta", "br", "img", "link", "input"}


class Reader(HTMLParser):
    """The words of a page, its headings, and whether every element is closed."""

    def __init__(self, page):
        super().__init__()
        self.open, self.words, self.headings, self.attributes = [], [], [], []
        self.feed(page)

    def handle_starttag(self, tag, attrs):
        self.attributes += [(tag, name, value) for name, value in attrs]
        if tag not in VOID:
            self.open.append(tag)
        if re.fullmatch("h[1-6]", tag):
            self.headings.append(int(tag[1]))

    def handle_endtag(self, tag):
        assert self.open.pop() == tag

    def handle_data(self, data):
        if self.open and self.open[-1] != "style":
            self.words.append(data)

    @property
    def text(self):
        return re.sub(r"[ \n\u00a0]+", " ", " ".join(self.words))


@pytest.fixture(scope="module")
def hill():
    return taken(HILL)


@pytest.fixture(scope="module")
def page(hill):
    return Reader(report_html(hill))


def test_it_holds_the_answer_the_drive_the_advice_and_the_cautions(hill, page):
    needed = [
        wording.headline(hill.answer, hill.display),
        *(description.leg_words(leg, hill.display) for leg in HILL.legs),
        description.habits_words(HILL, hill.display),
        *wording.drive_fact(hill.result, hill.answer, hill.display),
        *wording.range_fact(hill.answer, HILL.year.daily_charge_limit, hill.display),
        wording.mixed_up_words(hill.result, hill.display),
        *wording.year_fact(hill.year, HILL.year, hill.display),
        *lift_off_words.advised_in_words(hill.advice, hill.display).sentences,
        description.day_words(HILL, hill.display),
        *card_words.winter_card(hill.year, hill.slowing_in_winter, hill.display).sentences,
        *card_words.limits_card(hill.display).sentences,
        *hill.glance.values(),
        Display().say("caution"),
        *left_out(hill.display),
        f"{RUNS} sampled cars",
        f"Made {MADE.isoformat()}",
        f"model version {MODEL_VERSION} of {MODEL_DATE}",
        "python -m model drive FILE",
    ]
    assert [words for words in needed if words.replace(NO_BREAK, " ") not in page.text] == []


def test_each_price_is_printed_with_where_it_is_from():
    priced = TOWN.with_setting("now_l_per_100km", 6.0).with_setting("price_per_kwh", 0.31)
    text = Reader(report_html(taken(priced))).text
    assert re.search(r"Price of electricity, per kWh\s+€ 0.31 Yours\.", text)
    assert re.search(r"Price of petrol, [^€]+€ 1.7 Default: 1.70 €/l[^:]+quoted second-hand", text)


def side(page, which):
    """The words of one side."""
    first, second = page.text.split(Display().say("paper-checks"))
    return (first, second)[which - 1]


def test_seeds_and_methods_are_told_to_who_checks_alone(page):
    for word in ("seed", "Latin hypercube", "sampled cars", "python"):
        assert word not in side(page, 1) and word in side(page, 2)


def test_the_setting_never_stands_without_snow_and_ice(hill, page):
    told = lift_off_words.advised_in_words(hill.advice, hill.display)
    assert ", but none on snow or ice" in told.title and told.title.lower() in side(page, 1).lower()
    assert all(caveat.replace(NO_BREAK, " ") in side(page, 1) for caveat in told.caveats)


def test_it_names_kind_and_source_of_the_main_figures_and_says_where_all_stand(hill, page):
    told = {name: where for name, _, where in contents(hill)["figures"]}
    assert all(where in page.text for where in told.values()) and "Sources and method" in page.text
    assumed = assumed_figures(HILL.car_class)
    for key in MAIN_FIGURES:
        figure, where = assumed[key], told[labelled(CAR_FIELDS[key], hill.display)]
        assert where.startswith(figure.kind.capitalize())
        assert all(sources()[one].name in where for one in figure.sources if figure.kind == "published")
        assert figure.kind != "published" or figure.sources or figure.source in where


def test_what_was_stated_is_printed_though_it_is_no_main_figure():
    stated = taken(TOWN.with_setting("wheelbase_m", 2.5))
    label = labelled(CAR_FIELDS["wheelbase_m"], Display())
    assert contents(stated)["also_yours"] == f"Yours too: {label}: 2.5."


def test_no_number_is_parted_from_its_unit(hill):
    for number, unit in (("1", "°C"), ("10", "kWh")):
        assert f"{number}\N{NO-BREAK SPACE}{unit}" in template("sheets.html").render(
            contents(hill) | {"headline": f"at {number} {unit}"}, level=2
        )


def test_small_type_is_still_read(hill):
    assert contents(hill)["checks_pt"] >= 8.5
    longest = taken(replace(HILL, legs=tuple(HILL.legs[place % len(HILL.legs)] for place in range(MAX_LEGS))))
    assert contents(longest)["checks_pt"] >= 8
    us = taken(starting_drives()["motorway"][2], Display(us=True))
    assert contents(us)["checks_pt"] >= 8.5


def test_three_shares_stand_apart_with_what_they_are_shares_of(hill, page):
    for name, of_what in (
        ("recovered share", "back in the battery over out of it"),
        ("energy saved", "of the drive on friction brakes only"),
        ("range gain", "from the same battery"),
    ):
        assert re.search(rf"{name} \d+ % \({of_what}\)", page.text)


def test_it_is_whole_html_with_headings_in_order_and_a_language(page):
    assert page.open == []
    assert page.headings.count(1) == 1 and page.headings[0] == 1
    assert all(after - before <= 1 for before, after in zip(page.headings, page.headings[1:], strict=False))
    assert ("html", "lang", "en") in page.attributes


def test_it_needs_no_script_and_nothing_from_elsewhere(page):
    assert "script" not in {tag for tag, _, _ in page.attributes}
    assert not [name for _, name, _ in page.attributes if name.startswith("on")]
    asked = [value for _, name, value in page.attributes if name in ("src", "href", "xlink:href")]
    assert asked and all(value.startswith("data:") for value in asked)


def test_pictures_have_a_sentence_each(hill, page):
    pictures = [value for tag, name, value in page.attributes if tag == "img" and name == "alt"]
    assert len(pictures) == 1 and all(len(sentence) > 40 for sentence in pictures)


def test_the_drive_is_kept_inside(hill):
    found = re.search(r'href="data:application/json;base64,([^"]+)"', report_html(hill))
    assert scenario_from_json(json.loads(base64.b64decode(found[1]))) == HILL


def test_without_a_public_address_it_carries_the_short_text_and_no_code(hill, page):
    assert short_text(hill.link) in page.text
    assert contents(hill)["qr"] == "" and "QR code" not in report_html(hill)


@pytest.mark.parametrize("address", ["http://192.168.1.20:8501", "http://localhost:8501"])
def test_a_private_address_makes_no_code_either(hill, monkeypatch, address):
    monkeypatch.setenv(PUBLIC_URL, address)
    assert short_text(hill.link) in Reader(report_html(hill)).text
    assert "QR code" not in report_html(hill)


def test_with_a_public_address_it_has_link_and_code(hill, monkeypatch):
    monkeypatch.setenv(PUBLIC_URL, "https://drive.net")
    page = Reader(report_html(hill))
    assert ("a", "href", public_link(hill.link)) in page.attributes
    assert ("img", "src", svg_address(qr_svg(public_link(hill.link)))) in page.attributes
    assert "scan the code" in page.text and short_text(hill.link) not in page.text
    assert 20 < contents(hill)["qr_mm"] < 45


def test_a_code_is_large_enough_for_its_modules_as_far_as_there_is_room():
    assert qr_mm("") == 0
    short, long = qr_svg("a" * 100), qr_svg("a" * 2500)
    assert qr_mm(short) < qr_mm(long) == QR_MOST_MM


def test_what_is_typed_is_shown_as_typed():
    scenario = TOWN.with_setting("name", "<script>alert(1)</script>").with_setting("currency", "<b>&")
    html = report_html(taken(scenario))
    assert "<script" not in html and "<b>&</b>" not in html
    assert "<script>alert(1)</script>" in Reader(html).text


def test_unusual_inputs_and_a_car_that_cannot_keep_up_are_named_beside_the_headline():
    page = Reader(report_html(taken(with_most_to_say(), Display(us=True))))
    assert "Unusual inputs:" in side(page, 1) and "cannot keep up" in side(page, 1)
    assert "Unusual inputs:" not in Reader(report_html(taken(HILL))).text


def test_us_units_reach_every_part():
    page = Reader(report_html(taken(HILL, Display(us=True))))
    assert "mph" in page.text and "km/h" not in page.text
    assert re.search(r"On a full battery [\d,]+ to [\d,]+ mi", page.text) and "°F" in page.text
    assert "kWh/100 mi" in page.text


def test_the_same_drive_on_the_same_day_gives_the_same_bytes():
    assert report_html(taken(HILL)) == report_html(taken(HILL))


def test_a_drive_that_cannot_be_advised_or_driven_all_year_is_still_handed_over(hill):
    page = Reader(report_html(replace(hill, advice=None, year=None)))
    assert "Lift-off:" not in page.text and "In a year" not in page.text
    assert "Winter takes some of it away" in page.text
    assert wording.headline(hill.answer, hill.display) in page.text


def test_a_hybrid_is_told_in_fuel_and_neither_in_range_nor_in_charging():
    page = Reader(report_html(taken(replace(TOWN, car_class="full-hybrid"))))
    assert re.search(r"In fuel [\d.]+ to [\d.]+ l/100 km", page.text)
    assert "from the wall" not in page.text and "On a full battery" not in page.text


def test_a_plug_in_hybrid_on_its_charge_is_told_like_a_battery_car():
    page = Reader(report_html(taken(replace(TOWN, car_class="plug-in-hybrid"))))
    assert "In fuel" not in page.text and "from the wall" in page.text


def test_a_descent_that_fills_the_battery_has_no_share_above_all():
    leg = replace(TOWN.legs[0], distance_km=10.0, descent_m=500.0, grade_pct=6.0, stops=0, slow_downs=0)
    page = Reader(report_html(taken(replace(TOWN, legs=(leg,), return_trip=False))))
    assert "ends fuller" in page.text and "energy saved" not in page.text


def test_it_promises_nothing_and_exclaims_nothing(page):
    assert " safe" not in page.text.lower() and "!" not in page.text


def test_the_more_there_is_to_say_the_smaller_it_is_said_within_what_can_be_read():
    assert fitting_pt(0, 900, 8.0, 14.0) == fitting_pt(900, 900, 8.0, 14.0) == 14.0
    assert fitting_pt(1600, 900, 8.0, 14.0) == pytest.approx(14.0 * 0.75)
    assert fitting_pt(10**6, 900, 8.0, 14.0) == 8.0
