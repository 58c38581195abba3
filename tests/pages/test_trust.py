"""How far the answer can be trusted: the errors that were found, also where they are not flattering."""

from dataclasses import replace

from model.published_checks import Found, all_checks, certified_cars
from pages.parts.trust import LEFT_OUT, first_words, largest_misses, others_words
from tests.pages.in_app import opened_at, ran

CHECKS = {check.id: check for check in all_checks()}
EPA = CHECKS["epa-certification"]


def test_the_errors_on_certified_cars_are_those_that_were_found():
    words = first_words(EPA, certified_cars())
    city, highway, city_lean, highway_lean = (found.value for found in EPA.found)
    assert f"off by {city:.1f} % in the city and {highway:.1f} % on the highway" in words
    assert f"{abs(city_lean):.1f} % too {'high' if city_lean > 0 else 'low'} in the city" in words
    assert f"{abs(highway_lean):.1f} % too {'high' if highway_lean > 0 else 'low'} on the highway" in words


def test_the_largest_misses_are_named():
    worst = max(certified_cars(), key=lambda car: abs(car.city_error_pct))
    assert f"({worst.id}) by {abs(worst.city_error_pct):.0f} %" in largest_misses(certified_cars())
    assert largest_misses(certified_cars()).count("(EV-") == 2


def test_the_other_checks_are_named_and_one_that_fails_says_so():
    others = all_checks()[1:]
    words = others_words(others)
    assert all(check.title[1:] in words for check in others)
    assert ("Every number for which" in words) == all(check.holds for check in others)
    missed = replace(EPA, found=(Found("city", 30.0, (0, 9)),))
    assert others_words([missed, *others]).endswith("beforehand: w" + EPA.title[1:] + ".**")


def test_the_drawer_tells_all_this_when_it_is_opened():
    app = opened_at("your_drive.py", {})
    app.session_state["trust-drawer"] = True
    told = " ".join(item.value for item in ran(app.run()).markdown)
    assert first_words(EPA, certified_cars()) in told and others_words(all_checks()[1:]) in told
    assert all(item in told for item in LEFT_OUT)
