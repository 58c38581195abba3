"""What a showroom sets for itself, without a browser."""

from dataclasses import replace
from urllib.parse import quote

import pytest

from model.describe.scenario_io import starting_drives, to_link
from pages.parts.showroom import HouseCar, Showroom, parsed
from tests.pages.in_app import address, opened_at, ran, scenario_of
from tests.refused import refuses

TOWN = starting_drives()["town"][2]
VAN = HouseCar("Our van", "van", (("usable_kwh", 70.0),))
OURS = Showroom("Hall 4", (VAN,), (("currency", "CHF"), ("price_per_kwh", 0.27)))


def shown(text: str, link: dict[str, str] | None = None):
    """The first card, opened with settings of a showroom in the address."""
    return opened_at("show.py", (link or {}) | {"showroom": text})


def test_what_is_set_comes_back_from_its_text():
    assert parsed(OURS.text()) == OURS and parsed("") == Showroom() and Showroom().text() == ""


@pytest.mark.parametrize(
    "text", ["[]", '{"cars": 3}', '{"cars": [{"like": "rocket"}]}', '{"prices": {"price_per_kwh": -1}}']
)
def test_what_cannot_be_used_is_refused_and_leaves_the_page_as_it_is(text):
    with refuses():
        parsed(text)
    app = shown(text)
    assert app.title[0].value and scenario_of(app).year == TOWN.year


def test_no_more_than_a_browser_keeps():
    assert OURS.fits()
    assert not replace(OURS, cars=OURS.cars * 9).fits()
    assert len(quote(OURS.text())) < 400


def test_its_prices_stand_in_place_of_the_usual_ones_and_outlive_a_customer():
    app = shown(OURS.text())
    for _ in range(2):
        assert scenario_of(app).year.price_per_kwh == 0.27 and scenario_of(app).year.currency == "CHF"
        ran(app.button(key="start-over").click().run())
    # a customer's own link says its own prices
    own = to_link(replace(TOWN, year=replace(TOWN.year, price_per_kwh=0.4)))
    assert scenario_of(shown(OURS.text(), own)).year.price_per_kwh == 0.4


def test_its_cars_are_one_tap_away():
    app = shown(OURS.text())
    ran(app.button_group(key="choose-own-car").set_value("Our van").run())
    assert scenario_of(app).car_class == "van" and dict(scenario_of(app).stated) == {"usable_kwh": 70.0}


def test_a_car_and_a_line_are_kept_and_go_into_the_link():
    app = opened_at("show.py", to_link(TOWN.with_setting("mass_kg", 1500.0)))
    app.text_input(key="showroom-car").set_value("Light one")
    ran(app.button(key="showroom-add").click().run())
    ran(app.text_input(key="showroom-line").set_value("Hall 4").run())
    kept = parsed(address(app)["showroom"])
    assert kept.line == "Hall 4" and kept.cars == (HouseCar("Light one", "city-car", (("mass_kg", 1500.0),)),)
    assert any("showroom=" in one.value for one in app.code)


def test_its_line_stands_over_the_card_and_in_no_link_of_a_customer():
    app = opened_at("take_away.py", to_link(TOWN) | {"showroom": OURS.text()})
    (card,) = [one.proto.body for one in app.get("html") if 'class="paper"' in one.proto.body]
    assert "Hall 4" in card and "showroom" not in card
    assert all("showroom" not in one.value for one in app.code)
