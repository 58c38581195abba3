"""The link: what it carries, and what becomes of one that carries nonsense."""

from dataclasses import replace

import pytest

from model import MODEL_VERSION
from model.describe.scenario import SETTINGS, US_PRICES, YEAR_FIELDS, Scenario, with_prices_of
from model.describe.scenario_io import starting_drives
from model.words.quantities import Display
from model.words.refusals import refusal_words
from pages.parts.link import SCENARIO_KEYS, UNITS, VERSION, link_of, ours, parsed
from tests.pages.in_app import opened_at, ran, scenario_of

BASE = Scenario()


@pytest.mark.parametrize("name", starting_drives())
@pytest.mark.parametrize("us", [False, True])
def test_a_link_brings_back_what_it_was_made_from(name, us):
    scenario, display = starting_drives()[name][2], Display(us=us)
    assert parsed(link_of(scenario, display), BASE) == (scenario, display, [])


def test_a_link_says_which_version_of_the_model_made_it():
    assert link_of(starting_drives()["town"][2], Display())[VERSION] == MODEL_VERSION


def test_units_change_nothing_else_in_a_link():
    """But that usual prices follow the units: a link in US units says the prices that a metric one leaves unsaid."""
    scenario = starting_drives()["town"][2]
    metric, us = (link_of(scenario, Display(us=us)) for us in (False, True))
    prices = {key: YEAR_FIELDS[key].text(getattr(scenario.year, key)) for key in US_PRICES}
    assert {"price_per_kwh", "currency", "co2_g_per_kwh"} < set(prices) and prices.keys().isdisjoint(metric)
    assert us == metric | prices | {UNITS: "us"}


def test_a_link_in_us_units_means_dollars_unless_it_says_otherwise():
    """As where units are chosen at the foot of a page; the links of the first version left euros out."""
    prices = {key: getattr(BASE.year, key) for key in US_PRICES}
    link = {UNITS: "us", "car": "van", "ambient_c": "5"}
    for version, meant in (({}, US_PRICES), ({VERSION: MODEL_VERSION}, US_PRICES), ({VERSION: "0.1.0"}, prices)):
        scenario, _, _ = parsed(link | version, BASE)
        assert {key: getattr(scenario.year, key) for key in US_PRICES} == meant
    one, _, _ = parsed(link | {"price_per_kwh": "0.5"}, BASE)
    assert (one.year.currency, one.year.price_per_kwh) == ("$", 0.5)
    # another currency goes with no price in dollars
    euros, _, _ = parsed(link | {"currency": "€"}, BASE)
    assert euros.year == BASE.year
    # and a metric link means euros to whoever reads in US units
    dollars = replace(BASE, year=with_prices_of(BASE.year, us=True))
    assert parsed({"car": "van"}, dollars)[0].year == BASE.year


def test_bare_units_bring_their_usual_prices():
    app = opened_at("your_drive.py", {UNITS: "us"})
    assert scenario_of(app).year.currency == "$"
    # and where a drive is there already
    app = opened_at("your_drive.py", {})
    app.query_params = {UNITS: "us"}
    assert scenario_of(ran(app.run())).year.currency == "$"


def test_a_link_without_a_scenario_carries_none():
    assert parsed({UNITS: "us", "panel": "3"}, BASE) == (None, Display(us=True), [])


def test_a_pages_own_parameters_are_told_apart():
    assert ours({"car": "van", "units": "us", "panel": "3", "card": "2"}) == {"car": "van", "units": "us"}


def test_no_settings_key_is_a_pages_own():
    assert set(SETTINGS) <= SCENARIO_KEYS
    assert UNITS not in SCENARIO_KEYS


def test_what_cannot_be_used_is_said_in_plain_words():
    scenario, _, notices = parsed({"ambient_c": "99", "car": "submarine"}, BASE)
    assert scenario.conditions.ambient_c == 50
    told = [refusal_words(notice, Display()) for notice in notices]
    assert "Outside temperature: 99 °C cannot be used, −40 to 50 °C can. It was set to 50 °C." in told
    assert any("submarine" in notice for notice in told)
