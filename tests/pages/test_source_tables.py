"""The tables of Sources and method: complete, and equal to where the facts stand."""

from dataclasses import replace

import pytest

from model import MODEL_DATE, MODEL_VERSION
from model.checks.check import Outcome
from model.checks.published import all_checks, certified_cars
from model.describe.car import CAR_FIELDS
from model.describe.parameters import assumed_figures, class_labels
from model.describe.scenario import LEG_FIELDS
from model.describe.sources import sources
from model.traces.cycles import CYCLES
from model.words.entries import label_of
from model.words.quantities import Display
from pages.parts.plain_text import inert
from pages.parts.source_tables import (
    acceptance_table,
    cars_table,
    changes_table,
    check_table,
    cycles_table,
    figures_table,
    grip_table,
    ranges_table,
    uses_table,
)
from pages.parts.typography import NO_BREAK

METRIC, US = Display(), Display(us=True)


@pytest.mark.parametrize("car_class", class_labels())
def test_every_assumed_figure_is_listed_with_its_kind_and_source(car_class):
    table = figures_table(car_class, {}, METRIC)
    assumed = assumed_figures(car_class)
    assert len(table) == len(assumed)
    listed = sorted(table["Kind and source"])
    assert listed == sorted(f"{item.kind.capitalize()}: {item.source}." for item in assumed.values())


def test_a_stated_name_is_listed_as_it_was_given():
    table = figures_table("family-hatch", {"name": "No. 7"}, METRIC).set_index("Figure")
    assert list(table.loc["Name"]) == ["No. 7", "Yours: no band."]


def test_on_the_page_published_figures_have_links_and_a_visitors_text_has_none():
    stated = {"name": "[mine](https://example.org) <b>"}
    table = figures_table("family-hatch", stated, METRIC, on_page=True).set_index("Figure")
    assert f"]({sources()['doe-energy'].address})" in table.loc["Charging efficiency, %", "Kind and source"]
    own = table.loc["Name", "Low to high"]
    assert own == inert(stated["name"]) != stated["name"]
    assert "](https://" not in " ".join(figures_table("family-hatch", stated, METRIC)["Kind and source"])


def test_a_band_is_listed_with_its_low_high_and_mid():
    table = figures_table("family-hatch", {}, METRIC).set_index("Figure")["Low to high"]
    mass = assumed_figures("family-hatch")["mass_kg"]
    assert table["Mass with driver, kg"] == f"{mass.low:g} to {mass.high:g}, mid {mass.mid:g}"
    assert table["Charging efficiency, %"] == "80 to 92, mid 86"
    assert table["Driven wheels"] in ("front", "rear", "all")
    assert figures_table("family-hatch", {}, US)["Figure"].str.contains("Mass with driver, lb").any()


def test_what_the_visitor_stated_is_theirs_and_has_no_band():
    table = figures_table("family-hatch", {"mass_kg": 1700.0, "f0_n": 100.0}, METRIC).set_index("Figure")
    assert table.loc["Mass with driver, kg"].tolist() == ["1700", "Yours: no band."]
    assert table.loc["Road load f0, N"].tolist() == ["100", "Yours: no band."]


@pytest.mark.parametrize("check", all_checks(), ids=lambda check: check.id)
def test_every_found_number_is_listed(check):
    table = check_table(check, METRIC)
    assert len(table) == len(check.found)
    assert table["Published"].eq("reported only").tolist() == [found.published is None for found in check.found]
    assert table["Off by"].eq("").tolist() == [found.off is None for found in check.found]


def test_how_far_a_number_is_off_stands_beside_it():
    check = all_checks()[0]
    made = (
        Outcome("found-grade", 99.0, (0.0, 9.0)),
        Outcome("found-speed", -5.0, -3.5, unit="km/h"),
        Outcome("found-combined", 1.0, (0.0, 2.0)),
    )
    table = check_table(replace(check, found=made), METRIC)
    assert table["Off by"].tolist() == ["+90.0", "\N{MINUS SIGN}1.5", "within"]
    assert table["Published"].iloc[1] == f"\N{MINUS SIGN}3.5{NO_BREAK}km/h"


def test_every_certified_car_is_listed_with_its_error():
    table = cars_table(certified_cars(), METRIC)
    assert len(table) == len(certified_cars())
    for row, car in zip(table.itertuples(index=False), certified_cars(), strict=True):
        assert car.id in row[0] and row[1] == f"{car.city_published:.0f}" and row[2] == f"{car.city_modelled:.0f}"
        assert row[3].replace("\N{MINUS SIGN}", "-") == f"{car.city_error_pct:+.0f} %"
    assert "Wh/mi" in cars_table(certified_cars(), US).columns[1]


def test_ranges_are_those_of_the_fields():
    table = ranges_table(METRIC).set_index("Entry")
    speed = LEG_FIELDS["speed_kmh"]
    assert table.loc["Typical speed, km/h", "Allowed"] == f"{speed.minimum:g} to {speed.maximum:g}"
    assert table.loc["Charge at the start, %", "Allowed"] == "0 to 100"


def test_every_cycle_is_listed_with_its_regulation():
    table = cycles_table(METRIC)
    assert table["Regulation"].tolist() == [cycle.regulation for cycle in CYCLES.values()]
    udds = table.set_index("Cycle").loc[METRIC.say("cycle-name", cycle="udds")]
    assert udds["Length"] == "12.0 km" and udds["Time"] == "1,369 s"
    assert "mi" in cycles_table(US)["Length"].iloc[0]


def test_grip_and_acceptance_are_the_models_own():
    assert grip_table(METRIC)["Surface"].tolist()[:2] == ["dry", "wet"]
    table = acceptance_table(METRIC)
    assert table.columns[0] == "Battery, °C" and table.columns[-1] == "100 % full"
    assert table["100 % full"].astype(float).eq(0).all()
    assert acceptance_table(US).iloc[0, 0] == "\N{MINUS SIGN}4"


@pytest.mark.parametrize("car_class", class_labels())
def test_every_assumed_figure_of_a_car_is_used_somewhere(car_class):
    listed = "; ".join(uses_table(METRIC).iloc[:, 1]).split("; ")
    for key in assumed_figures(car_class):
        if key in CAR_FIELDS:
            assert label_of(CAR_FIELDS[key], METRIC) in listed, key


def test_a_figure_is_listed_with_the_part_that_reads_it():
    table = uses_table(METRIC).set_index("Part of the model").iloc[:, 0]
    road_load = next(text for part, text in table.items() if part.startswith("What air and tyres"))
    assert "Drag area" in road_load and "Usable battery" not in road_load


def test_the_change_log_ends_with_this_version():
    table = changes_table(METRIC)
    assert table.iloc[0][["Version", "Date"]].tolist() == [MODEL_VERSION, MODEL_DATE]
    assert (table.groupby("Version")["Date"].nunique() == 1).all()
    assert table["Date"].is_monotonic_decreasing
