"""The words of the cards to show, in every case that a drive can bring."""

from dataclasses import replace

import pytest

from model.describe.scenario_io import starting_drives
from model.kernel.timeline import books
from model.lift_off.advice import OnRoad, advise
from model.lift_off.curves import curves_of
from model.limits.foot_and_pedal import FootAndPedal
from model.limits.winter import Situation
from model.sampling.drives import Bands, drive, year_of
from model.sampling.uncertainty import Band
from model.words.lift_off import because
from model.words.quantities import Display
from pages.parts import show_words, wording
from pages.parts.typography import NO_BREAK

EXPECTED = "Expect less slowing all the way."
METRIC, US = Display(), Display(us=True)
TOWN = starting_drives()["town"][2]
ORDINARY = Bands(
    saved_share=Band(0.14, 0.16, 0.19),
    saved_kwh=Band(0.4, 0.5, 0.6),
    net_kwh=Band(2.4, 2.6, 2.9),
    friction_only_net_kwh=Band(2.9, 3.1, 3.4),
    range_gain_km=Band(22.0, 30.0, 41.0),
    range_km=Band(150.0, 180.0, 210.0),
    daily_range_km=Band(120.0, 144.0, 168.0),
)


@pytest.fixture(scope="module")
def advice():
    return advise(curves_of(TOWN))


@pytest.fixture(scope="module")
def year():
    return year_of(TOWN, 5)


def told(card: show_words.ShowCard) -> str:
    return " ".join((card.title, *card.sentences)).replace(NO_BREAK, " ")


def test_the_number_has_its_band_its_denominator_and_what_stands_beside_it():
    card = show_words.number(ORDINARY, TOWN, METRIC, ["Unusual inputs: a load of 900 kg."])
    assert card.title == ":blue[14 to 19 %] less battery energy"
    assert card.sentences[0].replace(NO_BREAK, " ").startswith(
        "That is 0.40 to 0.60 kWh, compared with the same drive on friction brakes only, for a city car on the flat"
    )
    assert "A full battery reaches 150 to 210 km on drives like this, 22 to 41 km" in told(card)
    assert "22 to 41 km of it from regeneration. Charged to 80 % the range is 120 to 168 km." in told(card)
    assert card.day == "a day of 12 °C"
    assert card.sentences[-1] == "Unusual inputs: a load of 900 kg."
    assert "93 to 130 mi on drives" in told(show_words.number(ORDINARY, TOWN, US, []))
    full = replace(TOWN, year=replace(TOWN.year, daily_charge_limit=1.0))
    assert "Charged to" not in told(show_words.number(ORDINARY, full, METRIC, []))


def test_a_hybrid_is_told_in_fuel_not_in_range():
    card = show_words.number(ORDINARY, TOWN, METRIC, [], "2 l/100 km less fuel")
    assert "0.40 to 0.60 kWh, or 2 l/100 km less fuel, compared with the same drive on friction" in told(card)
    assert "full battery" not in told(card)


@pytest.mark.parametrize(
    "changed",
    [
        {"saved_share": None, "range_gain_km": None, "range_km": None},
        {"saved_share": Band(1.2, 1.3, 1.4), "range_gain_km": None, "range_km": None},
        {"saved_share": Band(0.001, 0.002, 0.003)},
        {"saved_kwh": Band(0.0, 0.0, 0.001), "saved_share": Band(0.0, 0.0, 0.0004)},
    ],
)
def test_where_no_share_can_be_told_the_number_is_the_headlines_sentence(changed):
    answer = replace(ORDINARY, **changed)
    card = show_words.number(answer, TOWN, METRIC, [])
    assert card.title == wording.headline(answer, METRIC)
    assert ("full battery" in told(card)) == (answer.range_gain_km is not None)


def test_the_bars_say_what_they_show():
    result = drive(TOWN)
    card = show_words.bars(books(result), TOWN, METRIC)
    saved, without = card.title.removesuffix(" kWh saved").split(" of ")
    assert float(saved) == pytest.approx(result.saved_kwh, abs=0.005)
    assert float(without) == pytest.approx(result.net_kwh + result.saved_kwh, abs=0.005)
    assert "heat in the discs" in card.why


def test_the_bars_of_a_drive_down_a_hill_say_that_the_battery_ends_fuller():
    down = replace(TOWN, legs=(replace(TOWN.legs[0], descent_m=400, grade_pct=6, distance_km=8),), return_trip=False)
    assert "fuller" in show_words.bars(books(drive(down)), TOWN, METRIC).title


@pytest.mark.parametrize("pedal", ["blended", "friction"])
def test_lift_off_has_strength_reason_pedal_and_rules(advice, pedal):
    card = show_words.lift_off(advice, TOWN.with_setting("brake_pedal", pedal), METRIC)
    assert card.title == f"Lift-off: {advice.overall.word}, but none on snow or ice"
    small = card.small.replace(NO_BREAK, " ")
    assert f"{advice.overall.word}, about {advice.overall.lift_off_mps2:g} m/s²." in small
    assert because(advice.overall.because, METRIC) in card.sentences[0].replace(NO_BREAK, " ")
    assert ("discs alone" in told(card)) == (pedal == "friction")
    # what is set is never to be read as what is advised
    assert "**Set now: 1 m/s².**" in small and small.index("Advised:") < small.index("Set now")
    assert "half of the grip" in card.why and "would change it" in card.why


def test_winter_stands_beside_summer_each_with_its_band(year):
    rows = {row.season: row for row in year.rows}
    bands = {
        name: f"{100 * row.saved_share.low:.0f} to {100 * row.saved_share.high:.0f} %" for name, row in rows.items()
    }
    card = show_words.winter(year, EXPECTED, METRIC)
    assert card.day == "the year’s winter day, 1 °C" and EXPECTED in told(card)
    assert card.title == f"In winter it saves {bands['winter']}"
    assert f"on friction brakes only; in summer it is {bands['summer']}." in told(card)
    assert "A full battery reaches" in card.sentences[0] and "on a winter day, at 1 °C" in card.sentences[0]
    assert "On a winter day, at 1 °C, the drive takes about" in card.why
    assert "°F" in told(show_words.winter(year, EXPECTED, US))


def test_a_winter_that_takes_nothing_is_told_in_energy_not_in_shares(year):
    rows = tuple(replace(row, net_kwh=Band(-0.3, -0.2, -0.1), saved_kwh=Band(0.3, 0.3, 0.3)) for row in year.rows)
    card = show_words.winter(replace(year, rows=rows), EXPECTED, METRIC)
    assert card.title == "In winter it saves 0.30 kWh"
    assert "%" not in told(card)


def test_a_year_that_cannot_be_driven_leaves_the_words(year):
    card = show_words.winter(None, EXPECTED, METRIC)
    assert EXPECTED in told(card)
    assert not any(sign.isdigit() for sign in told(card))


def test_the_limits_say_what_it_is_no_substitute_for():
    card = show_words.limits(METRIC)
    assert METRIC.say("no-substitute") in card.sentences
    assert "slippery" in told(card)


def test_where_it_is_drawn_the_cautions_are_left_and_the_advice_goes_with_it():
    card = show_words.limits(METRIC, drawn=True, slippery="Before ice set rolling on.")
    assert card.sentences == (METRIC.say("no-substitute"), METRIC.say("press-the-pedal"))
    assert card.why.endswith("Before ice set rolling on.")


def found(usual, full):
    motor = {Situation.USUAL: usual, Situation.COLD: 0.4, Situation.FULL: full, Situation.SLIPPERY: 0.0}
    return [FootAndPedal(situation, "dry", motor_mps2, 7.5) for situation, motor_mps2 in motor.items()]


def test_a_row_says_one_thing_of_the_foot_and_one_of_the_pedal():
    on_ice = OnRoad("ice", 0.0, "rolling on", 0.2)
    rows = show_words.beside_the_pedal(found(0.8, 0.001), on_ice, METRIC)
    assert [row.foot for row in rows] == [
        "foot up: the motor slows the car", "50 % of it left", "nothing of it left", "set none beforehand",
    ]  # fmt: skip
    assert [row.pedal for row in rows][1:3] == ["pedal as usual"] * 2 and "weaker" in rows[3].pedal
    assert rows[3].name == "Slippery road, ice"
    gentle = show_words.beside_the_pedal(found(0.8, 0.8), OnRoad("ice", 0.2, "gentle", 0.4), METRIC)
    assert [row.foot for row in gentle][2:] == ["all of it left", "set gentle beforehand"]
    assert not show_words.beside_the_pedal(found(0.05, 0.0), on_ice, METRIC)


def test_nothing_promises_or_sells(advice, year):
    cards = [
        show_words.tell(METRIC),
        show_words.number(ORDINARY, TOWN, METRIC, []),
        show_words.lift_off(advice, TOWN, METRIC),
        show_words.winter(year, EXPECTED, METRIC),
        show_words.limits(METRIC),
    ]
    text = " ".join(f"{told(card)} {card.why}" for card in cards).lower()
    assert "!" not in text
    assert "safe" not in text
    assert all(card.why for card in cards)
