"""How far the answer can be trusted: the errors that were found, also where they are not flattering."""

from dataclasses import replace

import pytest
from streamlit.testing.v1 import AppTest

from model.published_checks import Found, all_checks, certified_cars
from pages.parts.trust import LEFT_OUT, check_words, first_words, found_words, largest_misses

CHECKS = {check.id: check for check in all_checks()}
EPA = CHECKS["epa-certification"]


def plain(text):
    """With ordinary spaces."""
    return text.replace("\N{NO-BREAK SPACE}", " ")


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


@pytest.mark.parametrize("check", CHECKS.values(), ids=CHECKS)
def test_every_number_that_was_found_is_told_or_lies_in_a_span_that_is(check):
    words = plain(check_words(check))
    assert check.title in words and check.published in words
    spans = [span.split(" and ") for span in words.split("between ")[1:]]
    for found in check.found:
        told = f"{found.what} {found.value:.1f} {found.unit}".replace(" -", " \N{MINUS SIGN}") in words
        spanned = any(float(low) - 0.05 <= found.value <= float(high.split(" ")[0]) + 0.05 for low, high, *_ in spans)
        assert told or spanned, found


def test_a_check_that_fails_says_so():
    missed = replace(EPA, found=(Found("city", 30.0, (0, 9)),))
    assert "Not all of it lies in the range" in check_words(missed)
    assert all(check.holds == ("Not all" not in check_words(check)) for check in all_checks())


def test_many_numbers_of_one_range_are_told_as_a_span():
    many = [Found(name, value, (0, 9)) for name, value in zip("abcde", (4.0, 2.0, 3.0, 1.0, 2.0), strict=True)]
    assert plain(found_words(many)) == "each of 5 between 1.0 and 4.0 %"
    other_unit = replace(many[2], unit="kW")
    assert "between" not in found_words([*many[:2], other_unit, *many[3:]])
    assert plain(found_words(many[:2])) == "a 4.0 %; b 2.0 %"
    assert plain(found_words([Found("a", -4.0, None)])) == "a \N{MINUS SIGN}4.0 %"


def test_the_drawer_tells_all_this_when_it_is_opened():
    def page():
        from pages.parts.trust import draw_trust

        draw_trust()

    app = AppTest.from_function(page).run()
    assert not app.exception and not app.markdown
    app.session_state["trust-drawer"] = True
    app.run()
    told = " ".join(item.value for item in app.markdown)
    assert first_words(EPA, certified_cars()) in told
    for check in all_checks()[1:]:
        assert check.title in told
    for item in LEFT_OUT:
        assert item in told
