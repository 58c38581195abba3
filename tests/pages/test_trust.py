"""How far the answer can be trusted: the errors that were found, also where they are not flattering."""

from dataclasses import replace

from model.checks.check import Outcome
from model.checks.published import all_checks, certified_cars, consistency, evidence
from model.sampling.drives import effective_cars
from model.sampling.uncertainty import RUNS
from model.words.bands import band_promise
from model.words.checks import title
from model.words.quantities import Display
from pages.parts import state
from pages.parts.trust import first_words, largest_misses, left_out, others_words
from pages.parts.typography import together
from tests.pages.in_app import html_of, opened_at, ran, scenario_of

METRIC = Display()
CHECKS = {check.id: check for check in all_checks()}
EPA = CHECKS["epa-certification"]


def test_the_errors_on_certified_cars_are_those_that_were_found():
    words = first_words(EPA, certified_cars(), METRIC)
    city, highway, city_lean, highway_lean = (found.value for found in EPA.found)
    assert f"off by {city:.1f} % in the city and {highway:.1f} % on the highway" in words
    assert f"{abs(city_lean):.1f} % too {'high' if city_lean > 0 else 'low'} in the city" in words
    assert f"{abs(highway_lean):.1f} % too {'high' if highway_lean > 0 else 'low'} on the highway" in words


def test_the_largest_misses_are_named():
    worst = max(certified_cars(), key=lambda car: abs(car.city_error_pct))
    told = METRIC.figure(largest_misses(certified_cars(), METRIC))
    assert f"({worst.id}) by {abs(worst.city_error_pct):.0f} %" in told
    assert told.count("(EV-") == 2


def test_hits_and_misses_are_both_said():
    two = (Outcome("found-combined", 5.0, (0.0, 9.0)), Outcome("found-grade", 12.0, (0.0, 9.0)))
    three = (Outcome("found-combined", 5.0, 4.0), Outcome("found-speed", -9.0, -6.0), Outcome("found-grade", 1.0))
    ranges, numbers = replace(EPA, found=two), replace(EPA, found=three)
    words = others_words([ranges, numbers], METRIC)
    title = "wall energy of nine cars in the US certification"
    assert f"Of 2 published ranges the model lies within 1 and **outside 1: {title}, grade (off by 3.0" in words
    assert "Beside 2 published single percentages it is off by 2.0 points for the median one" in words
    assert f"by most for **{title}, speed (off by 3.0" in words
    inside = replace(ranges, found=ranges.found[:1])
    words = others_words([inside], METRIC)
    assert "the model lies within 1." in words and "single" not in words


def test_only_evidence_is_counted():
    words = others_words(evidence()[1:], METRIC)
    assert all(title(check, METRIC)[1:] in words for check in evidence()[1:])
    assert not any(title(check, METRIC)[1:] in words for check in consistency())


def test_the_drawer_tells_all_this_when_it_is_opened():
    app = opened_at("your_drive.py", {})
    app.session_state["trust-drawer"] = True
    rows = " ".join(html_of(ran(app.run())))
    assert rows.count(f"median of {len(certified_cars())} cars") == 2 and " met</b>" in rows
    short = " ".join(item.value for item in app.markdown)
    assert band_promise(METRIC) in short and left_out(METRIC)[0] not in short
    told = " ".join(item.value for item in ran(app.toggle(key="trust-in-full").set_value(True).run()).markdown)
    assert together(first_words(EPA, certified_cars(), METRIC)) in told
    assert together(others_words(evidence()[1:], METRIC)) in told
    assert all(item in told for item in left_out(METRIC))
    assert "sampled cars count" not in told


def test_the_drawer_says_how_many_cars_what_is_printed_leaves(monkeypatch):
    monkeypatch.setattr(state, "BAND_RUNS", RUNS)
    app = opened_at("your_drive.py", {"printed_range_km": "380"})
    app.session_state["trust-drawer"] = True
    told = " ".join(" ".join(item.value for item in ran(app.run()).markdown).split())
    worth = round(effective_cars(scenario_of(app)))
    assert f"the {RUNS} sampled cars count by how near they come to it, and are worth {worth} that" in told
