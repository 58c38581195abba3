"""What a band promises is told in the same words wherever one stands, with what it held."""

from model.checks.certified import SAID, certified_found
from model.out.answers import drawn_for
from model.words.bands import band_promise
from model.words.quantities import Display
from pages.parts.report import band_words


def test_a_band_promises_what_it_held():
    promise = band_promise(Display())
    for cycle, place in (("udds", "in the city"), ("hwfet", "on the highway")):
        held = f"{certified_found('road load', cycle).held_pct(SAID[90]):.0f} %"
        assert held in promise and place in promise
    assert "made to hold nine in ten measured cars" in promise and "measured on none" in promise


def test_the_take_away_and_the_command_line_say_the_same():
    promise = band_promise(Display())
    assert band_words(200, Display()).startswith(promise) and drawn_for(200)["promise"] == promise
