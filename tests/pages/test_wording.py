"""Sentences from numbers: what is said, and that nothing is said that the numbers do not bear."""

import re
from dataclasses import replace

import pytest

from model.describe.parameters import car_of
from model.describe.scenario_io import starting_drives
from model.describe.units import J_PER_KWH
from model.kernel.run import lost_slowing_j
from model.sampling.beside_now import beside_now
from model.sampling.drives import Bands, answer_of, drive, samples_of, year_of
from model.sampling.hybrid import YearOfFuel
from model.sampling.uncertainty import Band
from model.words.quantities import Display, number_text
from pages.parts import card_words, departures, description, wording
from pages.parts.plain_text import inert

METRIC, US = Display(), Display(us=True)
TOWN = starting_drives()["town"][2]


def an_answer(share: Band | None, saved_kwh: Band, net_kwh: Band, km: Band | None = None) -> Bands:
    without = Band(*(net + saved for net, saved in zip(net_kwh_of(net_kwh), net_kwh_of(saved_kwh), strict=True)))
    return Bands(share, saved_kwh, net_kwh, without, km)


def net_kwh_of(band: Band) -> tuple[float, float, float]:
    return band.low, band.mid, band.high


ORDINARY = an_answer(Band(0.141, 0.163, 0.187), Band(0.31, 0.36, 0.42), Band(1.8, 1.9, 2.0), Band(38.2, 45.0, 52.9))
REACHES = replace(ORDINARY, range_km=Band(271.0, 290.0, 312.0), daily_range_km=Band(212.0, 230.0, 246.0))
NOTHING = an_answer(Band(0.0, 0.0, 0.0), Band(0.0, 0.0, 0.0), Band(1.8, 1.9, 2.0), Band(0.0, 0.0, 0.0))
HARDLY = an_answer(Band(0.002, 0.004, 0.006), Band(0.01, 0.02, 0.03), Band(4.8, 4.9, 5.0), Band(0.5, 0.8, 1.0))
FULLER = an_answer(Band(1.4, 1.5, 1.7), Band(0.7, 0.8, 0.9), Band(-0.4, -0.3, -0.2))
ALL_DOWN = an_answer(None, Band(0.7, 0.8, 0.9), Band(-0.9, -0.8, -0.7))


def test_the_headline_has_the_band_and_its_denominator():
    assert wording.headline(ORDINARY, METRIC) == (
        "About 14 to 19 % less battery energy than the same drive on friction brakes only."
    )


@pytest.mark.parametrize("answer", [ORDINARY, NOTHING, HARDLY, FULLER, ALL_DOWN])
def test_every_headline_names_what_it_is_compared_with_and_sells_nothing(answer):
    sentence = wording.headline(answer, METRIC)
    assert "the same drive on friction brakes only" in sentence or "The same drive on friction brakes only" in sentence
    assert sentence.endswith(".")
    assert "!" not in sentence


@pytest.mark.parametrize("answer", [NOTHING, FULLER, ALL_DOWN])
def test_no_share_is_printed_where_none_makes_sense(answer):
    assert "%" not in wording.headline(answer, METRIC)


def test_a_negligible_saving_is_called_that():
    assert wording.headline(NOTHING, METRIC).startswith("Next to nothing saved")
    assert wording.headline(HARDLY, METRIC).startswith("Hardly anything saved: under 1 %")


def test_a_drive_that_fills_the_battery_has_no_range_to_gain():
    assert "fuller" in wording.headline(FULLER, METRIC)
    assert "fuller" in wording.taken_text(FULLER.net_kwh.mid, METRIC)
    assert "no range to give" in wording.range_fact(FULLER, 0.8, METRIC)


def test_what_a_drive_takes_over_its_distance_is_no_more_exact_than_its_range():
    _, over_distance, _ = wording.drive_fact(drive(TOWN), replace(ORDINARY, net_kwh=Band(1.88, 2.2, 2.62)), METRIC)
    assert over_distance == "11 to 16 kWh/100 km"


def test_the_marked_headline_is_the_headline_with_its_band_in_colour():
    marked = wording.headline(ORDINARY, METRIC, marked=True)
    assert ":blue[14 to 19 %]" in marked
    assert marked.replace(":blue[", "").replace("]", "") == wording.headline(ORDINARY, METRIC)
    assert wording.headline(ALL_DOWN, METRIC, marked=True) == wording.headline(ALL_DOWN, METRIC)


def test_range_is_said_in_the_visitors_unit():
    _, reached, made_of = wording.range_fact(REACHES, 0.8, METRIC)
    assert reached == "271 to 312 km"
    assert made_of == "38 to 53 km of it from regeneration; charged to 80 % it is 212 to 246 km"
    _, reached, made_of = wording.range_fact(REACHES, 1.0, US)
    assert (reached, made_of) == ("168 to 194 mi", "24 to 33 mi of it from regeneration")


def test_what_the_cabin_takes_is_told_as_a_share_of_what_the_drive_takes():
    result = drive(TOWN)
    assert result.cabin_share == pytest.approx(result.ledger.cabin / 3.6e6 / result.net_kwh) and result.cabin_share > 0
    *_, beside = wording.drive_fact(result, ORDINARY, METRIC)
    assert f", {100 * result.cabin_share:.0f} % of it for the cabin; " in beside
    *_, beside = wording.drive_fact(drive(TOWN.with_setting("cabin", False)), ORDINARY, METRIC)
    assert "cabin" not in beside


def test_the_headline_of_a_real_drive_agrees_with_the_model():
    result = drive(TOWN)
    answer = answer_of(result, samples_of(TOWN, result, 50))
    low, high = (round(100 * end) for end in (answer.saved_share.low, answer.saved_share.high))
    assert f"{low} to {high} %" in wording.headline(answer, METRIC)
    assert answer.saved_share.low <= result.saved_share <= answer.saved_share.high
    kilometres = result.car.usable_kwh * result.distance_km * (1 / result.net_kwh - 1 / result.friction_only_net_kwh)
    assert answer.range_gain_km.low <= kilometres <= answer.range_gain_km.high


def test_the_year_counts_its_days_and_prices():
    dear = TOWN.with_setting("price_per_kwh", 1.0).with_setting("currency", "Fr.").with_setting("winter_days", 0)
    year = year_of(dear, 10)
    days, cost, without = wording.year_fact(year, dear.year, METRIC)
    assert days == "In a year of 165 days"
    # at a price of 1 the money is the energy
    assert cost == f"Fr. {METRIC.range_text(year.wall_kwh, '')} for electricity"
    energy = METRIC.range_text(year.saved_wall_kwh, "")
    assert without.endswith(f"without regeneration Fr. {energy} more")
    assert f"would take {energy} kWh more from the wall" in wording.year_rest(year, METRIC)


def test_unusual_inputs_come_in_the_units_shown():
    windy = TOWN.with_setting("wind_kmh", -80.0)
    assert departures.unusual_text(windy, US) == "Unusual inputs: headwind −50 mph (usual −19 to 19 mph)."
    full = TOWN.with_leg(1, "stops", 90).with_setting("soc_start", 1.0)
    assert departures.unusual_text(full, METRIC) == (
        "Unusual inputs: charge at the start 100 % (usual 15 to 90 %); leg 2: stops 90 (usual 0 to 60)."
    )


@pytest.mark.parametrize(("value", "text"), [(1276.0, "1,280"), (25284.0, "25,300"), (459.3, "459"), (0.0456, "0.046")])
def test_large_figures_have_three_digits(value, text):
    assert number_text(value) == text


def test_a_drive_that_was_not_followed_says_what_it_did_instead():
    assert "45 minutes instead of 40." in wording.not_followed(2400, 2700, METRIC)
    assert "10.2 minutes instead of 10.0." in wording.not_followed(600, 612, METRIC)


@pytest.mark.parametrize("described_s", [30.0, 299.0, 3060.0, 36000.0])
@pytest.mark.parametrize("longer", [0.0001, 0.005, 0.0099, 0.0101, 0.02, 0.3])
def test_no_drive_is_said_to_take_as_long_as_described_instead(described_s, longer):
    """It had read: took 51.0 minutes instead of 51.0."""
    told = wording.not_followed(described_s, described_s * (1 + longer), METRIC)
    found = re.search(r"took ([\d,.]+).minutes? instead of ([\d,.]+)\.", told)
    assert (longer > 0.01) == bool(told) or described_s * longer < 6
    assert not told or found.group(1) != found.group(2), told


@pytest.mark.parametrize("pedal", ["blended", "friction"])
def test_the_cards(pedal):
    scenario = TOWN.with_setting("brake_pedal", pedal)
    winter = card_words.winter_card(year_of(scenario, 5), "Expect less slowing.", METRIC)
    cards = [card_words.setting_card(scenario, METRIC), winter]
    text = " ".join([card.title + " " + " ".join(card.sentences) for card in cards])
    assert "winter day, at 1 °C" in text
    assert ("discs alone" in text) == (pedal == "friction")


def test_nothing_promises_or_sells():
    cards = (card_words.setting_card(TOWN, METRIC), card_words.limits_card(METRIC))
    sentences = (sentence for card in cards for sentence in card.sentences)
    words = " ".join([METRIC.say("caution"), description.pedal_help(METRIC), *sentences]).lower()
    assert "!" not in words
    assert "safe" not in words


def test_a_year_without_fuel_is_told_in_energy_and_not_in_traces_of_a_litre():
    plugged = replace(TOWN, car_class="plug-in-hybrid", return_trip=False)
    year = year_of(plugged, 5)
    _, told, more = wording.year_fact(year, plugged.year, US, YearOfFuel(Band(1e-16, 1e-16, 2e-16), plugged=True))
    assert "fuel" not in told and told.endswith("kWh from the wall") and more.endswith("; next to no fuel")
    _, told, _ = wording.year_fact(year, plugged.year, METRIC, YearOfFuel(Band(1.0, 2.0, 3.0), plugged=True))
    assert told.startswith("1.0 to 3.0 l of fuel and ")


def test_a_sentence_about_both_cars_names_both_and_sells_nothing():
    for fuel, named in (("petrol", "the petrol car"), ("diesel", "the diesel car"), ("hybrid", "the hybrid")):
        scenario = TOWN.with_setting("now_l_per_100km", 6.5).with_setting("now_fuel", fuel)
        found = beside_now(year_of(scenario, 10), scenario.year, car_of(scenario))
        for display, used in ((METRIC, "6.5 litres/100 km"), (US, "36.2 mpg")):
            told = " ".join(wording.beside_words(found, scenario, display))
            assert all("…" not in inert(sentence) for sentence in wording.beside_words(found, scenario, display))
            assert "the city car takes electricity for €" in told and f"{named} you drive now takes" in told
            assert not re.search(r"sav|cheap|less|gain|more", told)
            ends = re.search(r"are € ([\d,]+) to ([\d,]+) apart", told).groups()
            least, most = (float(end.replace(",", "")) for end in ends)
            assert least == pytest.approx(found.fuel_cost - found.cost.high, rel=0.05)
            assert most == pytest.approx(found.fuel_cost - found.cost.low, rel=0.05)
            assert "larger is for the" in told and told.count("you drive now") == 2
            assert f"{used}, as you say" in wording.beside_fact(found, scenario.year, display)[2]


@pytest.mark.parametrize(("used", "told"), [(1.0, "electricity of the city car"), (2.6, "cannot be told")])
def test_the_larger_sum_is_named_or_said_to_be_in_doubt(used, told):
    scenario = TOWN.with_setting("now_l_per_100km", used)
    found = beside_now(year_of(scenario, 10), scenario.year, car_of(scenario))
    found = found if used < 2 else replace(found, fuel_cost=found.cost.mid)
    assert told in " ".join(wording.beside_words(found, scenario, METRIC))


def test_a_price_of_fuel_from_memory_says_so_and_ones_own_is_called_that():
    scenario = TOWN.with_setting("now_l_per_100km", 6.5)
    for price, said in ((1.7, "near the official means of 2024: yours to change"), (1.83, "€ 1.83 per l, your price")):
        priced = scenario.with_setting("petrol_price_per_l", price)
        found = beside_now(year_of(priced, 10), priced.year, car_of(priced))
        assert wording.beside_fact(found, priced.year, METRIC)[2].endswith(said)


def test_the_year_says_that_its_days_are_not_the_day_shown():
    cold = TOWN.with_setting("ambient_c", 1.0)
    assert wording.year_fact(year_of(cold, 10), cold.year, METRIC)[2].startswith("all seasons, whatever the day shown")


@pytest.mark.parametrize("name", ["town", "motorway"])
def test_three_energies_that_are_mixed_up_add_up_as_they_are_told(name):
    """What the motor makes is put back or used aboard; what is saved is that and what its idle electronics drew."""
    result = drive(starting_drives()[name][2])
    (_, made, _), (_, back, beside), (_, saved, more) = wording.mixed_up_facts(result, METRIC)
    aboard, spared = re.search(r"the other ([\d.]+) kWh", beside)[1], re.search(r"and ([\d.]+) kWh that its", more)[1]
    told = {"made": made, "back": back, "saved": saved, "aboard": aboard, "spared": spared}
    told = {what: round(100 * float(text.removesuffix(" kWh"))) for what, text in told.items()}
    assert told["made"] == told["back"] + told["aboard"] and told["saved"] == told["made"] + told["spared"]
    # by the books of the run on friction brakes only: what the idle motor loses beyond what the wheels feed
    idle, fed = lost_slowing_j(result.friction_only), float(result.friction_only.energies["motor_j"][0])
    assert result.saved_kwh - result.made_kwh == pytest.approx((idle - fed) / J_PER_KWH, rel=1e-6)
    phrase = wording.mixed_up_words(result, METRIC)
    assert all(figure in phrase for figure in (made, back, saved))
