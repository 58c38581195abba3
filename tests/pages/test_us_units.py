"""US units on the pages: one unit a kind of figure, round where nothing was entered, and what is held stays."""

import re
from dataclasses import replace

import pytest

from model.describe.scenario import CONDITION_FIELDS, DRIVER_FIELDS, LEG_FIELDS
from model.describe.scenario_io import from_link, starting_drives, to_link
from model.lift_off.advice import Supposed, WhatIf
from model.limits.limit_settings import LIMIT_FIELDS, LIMIT_PARTS
from model.words.entries import entered, entry_value, held_value
from model.words.lift_off import supposed
from model.words.quantities import Display
from pages.parts.typography import NO_BREAK
from tests.pages.in_app import CLAIM_PARTS, address, in_picture, opened_at, ran

US, METRIC = Display(us=True), Display()
TOWN = starting_drives()["town"][2]
HILL = starting_drives()["suburb-hill"][2]
METRIC_FORCES = re.compile(r"m/s²|\bkN\b")


def words(app):
    """All that stands on the page in words, with its pictures' texts and the heads of its tables."""
    kinds = (app.title, app.header, app.markdown, app.caption, app.info, app.warning)
    told = [item.value for kind in kinds for item in kind]
    told += [re.sub("<[^>]*>", " ", one.proto.body) for one in app.get("html")]
    told += [in_picture(one) for one in app.get("vega_lite_chart")]
    told += [str(list(table.value.columns)) for table in app.table]
    told += [one.label for kind in (app.slider, app.text_input) for one in kind]
    return "\n".join(told).replace(NO_BREAK, " ")


@pytest.mark.parametrize(
    ("page", "link"),
    [("lift_off.py", {}), ("your_drive.py", {}), ("show.py", {"card": "2"}), ("take_away.py", {}),
     *(("winter_and_limits.py", {"part": part, "surface": "snow"}) for part in LIMIT_PARTS),
     *(("how_it_works.py", {"panel": panel}) for panel in ("who-slows", "speed-squared", "four-quadrants"))],
)  # fmt: skip
def test_no_page_in_us_units_has_a_metric_slowing_or_force(page, link):
    found = words(opened_at(page, to_link(HILL) | {"units": "us"} | link))
    assert METRIC_FORCES.findall(found) == []


OWN_CLAIMS = (
    {"quantity": "slowing", "relation": "at_least", "number": "0.980665", "unit": "m/s²", "lift_off_mps2": "1.5"},
    {"quantity": "range", "relation": "about", "number": "321.8688", "unit": "km", "trailer_kg": "1000"},
    {"quantity": "energy", "relation": "at_most", "number": "18.6411", "unit": "kWh/100 km", "speed_kmh": "open"},
    {"quantity": "range", "relation": "between", "number": "80.4672..160.9344", "unit": "km", "trailer_kg": "1000",
     "against_trailer_kg": "0"},
    {"quantity": "works_after", "relation": "at_least", "number": "32.18688", "unit": "km", "ambient_c": "-10..0"},
)
METRIC_FIGURES = re.compile(r"[0-9] (?:m/s²|km/h|km|kg|kWh/100 km|°C|m)(?![\w/²])")


def on_claim(app):
    """The same with buttons, tables, what is chosen and what stands in entries."""
    told = [words(app), *(one.label for one in app.button), *(one.value for one in app.text_input)]
    told += [str(one.options) for kind in (app.selectbox, app.multiselect) for one in kind]
    told += [str(table.value.to_dict("list")) for table in app.table] + [str(one.value) for one in app.code[:1]]
    return "\n".join(told).replace(NO_BREAK, " ")


@pytest.mark.parametrize("given", OWN_CLAIMS, ids=lambda given: f"{given['quantity']}-{given['relation']}")
def test_a_claim_of_ones_own_in_us_units_has_no_metric_figure(given):
    given = {key: text for key, text in given.items() if text != "open"}
    app = opened_at("check_a_claim.py", {"claim": "own", "units": "us"} | {f"said_{k}": v for k, v in given.items()},
                    CLAIM_PARTS)
    ran(app)
    assert METRIC_FIGURES.findall(on_claim(app)) == []
    shown = {"slowing": "0.1", "works_after": "20", "energy": "30", "range": "200"}[given["quantity"]]
    shown = "50 to 100" if given["relation"] == "between" else shown
    assert app.text_input(key="own-number").value == shown
    assert f"{shown.replace(' to ', ' and ')} {US.unit(given['unit'])}" in words(app)


def test_a_number_of_ones_own_in_us_units_is_held_as_it_was_typed():
    app = opened_at("check_a_claim.py", {"claim": "own", "units": "us", "said_quantity": "range"})
    ran(app.text_input(key="own-number").set_value("250").run())
    ran(app.selectbox(key="own-unit").set_value("km").run())
    assert float(address(app)["said_number"]) == pytest.approx(402.336)
    ran(app.selectbox(key="own-quantity").set_value("slowing").run())
    # another unit does not move what stands in the entry
    assert app.text_input(key="own-number").value == "250"


def test_a_stop_has_one_unit_for_slowing():
    metric, us = (
        words(opened_at("winter_and_limits.py", to_link(HILL) | {"part": "stop", "units": units}))
        for units in ("metric", "us")
    )
    assert re.search(r"\d m/s²", metric) and not re.search(r"\d g\b", metric)
    assert re.search(r"\d g\b", us) and re.search(r"\d lbf\b", us)


@pytest.mark.parametrize(
    ("field", "held", "shown"),
    [
        (CONDITION_FIELDS["ambient_c"], 12.0, 54.0),
        (CONDITION_FIELDS["ambient_c"], -18.0, 0.0),
        (LIMIT_FIELDS["hill_m"], 300.0, 984.0),
        (LEG_FIELDS["distance_km"], 8.2, 5.1),
        (LEG_FIELDS["speed_kmh"], 50.0, 31.0),
        (CONDITION_FIELDS["trailer_kg"], 900.0, 1984.0),
        (DRIVER_FIELDS["lift_off_mps2"], 0.7, 0.07),
        (DRIVER_FIELDS["lift_off_mps2"], 1.5, 0.15),
    ],
)
def test_what_was_not_entered_in_us_units_is_round_in_its_field_and_in_sentences(field, held, shown):
    assert entry_value(field, held, US) == shown
    assert float(re.match(r"[\d,.]+", US.figure(entered(field, held, US))).group().replace(",", "")) == shown
    assert entry_value(field, held, METRIC) == held


@pytest.mark.parametrize("key", ["distance_km", "speed_kmh", "climb_m"])
@pytest.mark.parametrize("typed", [5.25, 12.75, 33.0, 47.5])
def test_what_was_entered_in_us_units_comes_back_as_it_was(key, typed):
    field = LEG_FIELDS[key]
    assert entry_value(field, held_value(field, typed, US), US) == typed


def test_no_two_strengths_of_the_slider_are_told_alike():
    told = [US.entry(tenth / 10, "m/s²") for tenth in range(36)]
    assert len(set(told)) == len(told)


def test_a_round_figure_shown_moves_nothing_until_it_is_changed():
    app = opened_at("lift_off.py", to_link(HILL) | {"units": "us"})
    before = from_link(address(app), HILL)[0]
    # a link in US units without prices means those usual there
    assert replace(before, year=HILL.year) == HILL
    assert app.slider(key="set-lift_off_mps2").value == 0.1
    ran(app.text_input(key="set-trailer_kg").set_value("1000").run())
    moved = from_link(address(app), HILL)[0]
    assert replace(moved, conditions=HILL.conditions) == before
    ran(app.slider(key="set-lift_off_mps2").set_value(0.15).run())
    assert from_link(address(app), HILL)[0].driver.lift_off_mps2 == pytest.approx(1.471, abs=1e-3)


def test_the_strongest_slider_setting_is_still_allowed():
    strongest = HILL.with_setting("lift_off_mps2", 3.5)
    app = opened_at("lift_off.py", to_link(strongest) | {"units": "us"})
    assert not app.exception and app.slider(key="set-lift_off_mps2").value == 0.35


def test_one_speed_on_hills_is_one_number_on_the_page():
    """The advice asks what holds a hill at 50 km/h, told in mph; the pictures below had been for 30 mph."""
    advice = supposed(WhatIf(Supposed.HILL, 0.9, "firm", speed_kmh=50.0, grade_pct=6.0), US)
    found = words(opened_at("lift_off.py", to_link(HILL) | {"units": "us"}))
    assert "keep 31 mph" in advice and "At 31 mph" in found
    assert not re.search(r"At 30 mph|31\.\d+ mph", found)
