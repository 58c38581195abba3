"""Figures read evenly, in the reader's units and language, and never without what they need."""

import math

import pytest

from model.describe.figures import Part, Quantity, Several, Share, Shares, Span
from model.describe.messages import MessageError
from model.words.quantities import Display, number_text

METRIC, US = Display(), Display(us=True)


@pytest.mark.parametrize(
    ("figure", "metric", "us"),
    [
        (Quantity(0.0456, "kWh"), "0.046 kWh", "0.046 kWh"),
        (Quantity(8.33, "km", 3), "8.33 km", "5.18 mi"),
        (Quantity(1276.0, "m"), "1,280 m", "4,190 ft"),
        (Quantity(-5.2, "°C", places=0), "−5 °C", "23 °F"),
        (Quantity(0.6, "m/s²", 3, trimmed=True), "0.6 m/s²", "0.06 g"),
        (Quantity(50, "km/h", 3, trimmed=True), "50 km/h", "31 mph"),
        (Span(1.24, 1.6, "kWh"), "1.2 to 1.6 kWh", "1.2 to 1.6 kWh"),
        (Quantity(-0.3, "°C", places=0), "0 °C", "31 °F"),
        (Share(-0.0004), "0.0 %", "0.0 %"),
        (Span(421.0, 1339.0, "m", places=0), "421 to 1,339 m", "1,381 to 4,393 ft"),
        (Span(-30, 30, "km/h", 3, trimmed=True), "−30 to 30 km/h", "−19 to 19 mph"),
        (Quantity(3.3, "points", places=1, signed=True), "+3.3 points", "+3.3 points"),
        (Quantity(-0.04, "%", places=0, signed=True), "0 %", "0 %"),
        (Span(5.96, 11.2, "points", places=0), "6 to 11 points", "6 to 11 points"),
        (Span(-0.52, 0.0201, "kWh", signed=True), "−0.52 to +0.02 kWh", "−0.52 to +0.02 kWh"),
        (Span(38, 53.2, "km"), "38 to 53 km", "24 to 33 mi"),
        (Part(599.99, 600, "km"), "599 of 600 km", "372 of 373 mi"),
        (Part(9.99, 10, "km"), "9.9 of 10 km", "6.2 of 6.21 mi"),
        (Share(0.0456), "4.6 %", "4.6 %"),
        (Shares(0.26, 0.3), "26 to 30 %", "26 to 30 %"),
        (Shares(0.143, 0.139), "14 %", "14 %"),
        (Several(("a", "b", "c")), "a, b and c", "a, b and c"),
        (Several((Quantity(160, "km", places=0), Quantity(320, "km", places=0))), "160 and 320 km", "99 and 199 mi"),
        (Several(("a",)), "a", "a"),
        (Several(("a", "b"), "or"), "a or b", "a or b"),
        (Several(("a", "b", "c"), ""), "a, b, c", "a, b, c"),
        (Several(("a", "b, c"), ";"), "a; b, c", "a; b, c"),
    ],
)  # fmt: skip
def test_a_figure_in_words(figure, metric, us):
    assert METRIC.figure(figure) == metric and US.figure(figure) == us


def test_a_bare_number_is_not_said():
    with pytest.raises(MessageError, match="with-unit"):
        METRIC.say("with-unit", number=1.5, unit="km")  # type: ignore[arg-type]


def test_marks_in_a_number_are_those_of_the_language():
    assert [number_text(-1276.5, 5, language) for language in ("en", "de")] == ["−1,276.5", "−1.276,5"]


def test_a_figure_in_the_message_itself_is_in_the_readers_units():
    told = [display.say("car-rolling_coefficient.help") for display in (METRIC, US)]
    assert "at 20 °C." in told[0] and "at 68 °F." in told[1]


def test_a_cars_consumption_turns_round_in_us_units_and_back():
    us, metric = Display(us=True), Display()
    assert us.text(7.84, "litres/100 km", 3) == "30.0 mpg" and metric.text(7.84, "litres/100 km") == "7.8 litres/100 km"
    assert us.figure(Span(5.0, 10.0, "litres/100 km")) == "24 to 47 mpg"
    assert us.held(us.value(6.5, "litres/100 km"), "litres/100 km") == pytest.approx(6.5)
    # thirsty beyond all bounds, for the field to refuse
    assert us.held(0.0, "litres/100 km") == math.inf
