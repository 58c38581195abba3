"""A sentence read by plain rules: what it offers, on which words that rests, and what is left unsaid."""

from html import unescape

import pytest

from model.claims.questions import question
from model.claims.specification import counted, phrased
from model.claims.verdicts import check
from model.describe.fields import InputError
from model.describe.tables import rows
from model.words.claim_answers import claim_answers
from model.words.claims import changed_words, made, quotation, read_as, short_quotation, text
from model.words.reading import NOT_COUNTED, read, words_stand
from pages.parts import claim_files
from tests.refused import refuses


def offered(sentence):
    return {key: text for key, text in read(sentence).given.items() if key != "words"}


TOWED = {"trailer_kg": "1500", "against_trailer_kg": "0"}
PUMPED = {"heat_source": "heat_pump", "against_heat_source": "resistive", "cabin": "yes"}
PEDAL = {"lift_off_mps2": "1.5", "against_lift_off_mps2": "0.5", "comes_to_rest": "yes", "against_comes_to_rest": "no"}
LEAST, MOST = ({"relation": name} for name in ("at_least", "at_most"))


def of(quantity, number, unit="%", relation="about", **conditions):
    return {"quantity": quantity, "number": number, "unit": unit, "relation": relation} | conditions


SENTENCES = {
    # a bare number is about so much
    "70 % of the braking energy is recovered": of("of_braking", "70"),
    "Seventy percent of the braking energy is recovered.": of("of_braking", "70"),
    "Regeneration recovers 18.5 % of the energy in summer.": of("recovered", "18.5", season="summer"),
    "Regenerative braking recovers about 25 percent of the energy in city traffic.": of("recovered", "25", road="town"),
    "saves about 12,5 % of the energy": of("range_lost", "12.5"),
    "up to 25 %": {"number": "25", "unit": "%", "relation": "up_to"},
    "1,5 % more": {"number": "1.5", "unit": "%", "relation": "about"},
    "Not more than 20 pct of the braking energy is recovered.": of("of_braking", "20", relation="at_most"),
    "The car slows at 1.5 m/s² always": of("slowing", "1.5", "m/s²", "always"),
    "The motor does 90 % of the braking": of("electric_braking", "90"),
    "On average 15 % comes back.": of("recovered", "15", relation="on_average"),
    # never more is at most, and never less at least
    "Regeneration never recovers more than a tenth.": of("recovered", "10", relation="at_most"),
    "In town it never gives less than 10 % back.": of("recovered", "10", relation="at_least", road="town"),
    "More than a tenth comes back.": of("recovered", "10", relation="at_least"),
    # what is wasted is not what comes back
    "Electric cars waste less than 5 % of their braking energy.": {"number": "5", "unit": "%", "relation": "at_most"},
    "Braking energy is not wasted: 60 % comes back.": of("of_braking", "60"),
    "In the Alps you get 80 percent of the climb back.": of("of_climb", "80"),
    "The car only reaches 300 km on the motorway.": of("range", "300", "km", road="motorway"),
    "It loses half its range when it is below freezing.": of("cold", "50", season="winter"),
    # two numbers
    "10 to 15 %": {"number": "10..15", "unit": "%", "relation": "between"},
    "10% to 15% comes back": of("recovered", "10..15", relation="between"),
    "On the motorway 10–15 % of the energy comes back.": of("recovered", "10..15", relation="between", road="motorway"),
    "Between 60 and 70 per cent of braking energy is recovered": of("of_braking", "60..70", relation="between"),
    # numbers in words
    "a third comes back on the motorway": of("recovered", "33", road="motorway"),
    "In town two thirds of the braking energy comes back.": of("of_braking", "67", road="town"),
    "A quarter of the battery's energy flows back.": of("recovered", "25"),
    "More than half of the braking energy is regained: it comes back.": of("of_braking", "50", relation="at_least"),
    "Half of what the climb took comes back downhill.": of("of_climb", "50"),
    "Regenerative braking doubles the range.": of("range_gain", "100"),
    "Regeneration adds 20 % to the range": of("range_gain", "20"),
    "Regenerative braking gives you 20 % more range.": of("range_gain", "20"),
    # nothing is about nought
    "Below 10 km/h nothing is recovered.": of("in_a_stop", "0", speed_kmh="10"),
    "You get nothing below 10 km/h": of("in_a_stop", "0", speed_kmh="10"),
    "Under 6 mph no energy is recovered": of("in_a_stop", "0", speed_kmh="9.65606"),
    "Below walking pace nothing comes back": of("in_a_stop", "0"),
    "Strong regeneration saves nothing":
        of("energy", "0", "% less", lift_off_mps2="1.5", against_lift_off_mps2="0.5"),
    "After charging to 100 % nothing is recovered for the first 20 km.":
        of("works_after", "20", "km", "at_least", soc_start="1"),
    "With a full battery there is no regeneration for the first 12 miles.":
        of("works_after", "19.3121", "km", "at_least", soc_start="1"),
    # weather and cold
    "in winter the range drops by 40 %": of("cold", "40", season="winter"),
    "At -7 °C at least half of the range is lost.": of("cold", "50", relation="at_least", ambient_c="-7"),
    "At minus 7 degrees Celsius the range falls by a fifth.": of("cold", "20", ambient_c="-7"),
    "At 20 °F the range drops by 40 percent": of("cold", "40", ambient_c="-6.66667"),
    # range and energy
    "The range is more than 300 km in summer": of("range", "300", "km", "at_least", season="summer"),
    "It goes 250 miles on a charge": of("range", "402.336", "km"),
    "Consumption is about 18 kWh/100 km on the motorway": of("energy", "18", "kWh/100 km", road="motorway"),
    "It uses 180 Wh/km": of("energy", "18", "kWh/100 km"),
    # two cases, whose figures are assumed where the words give none
    "Towing halves the range": of("range", "50", "% less", trailer_drag_area_m2="1", **TOWED),
    "Towing a caravan halves the range.": of("range", "50", "% less", trailer_drag_area_m2="2", **TOWED),
    "Towing 1.500 kg cuts the range by 40 %": of("range", "40", "% less", trailer_drag_area_m2="1", **TOWED),
    "Towing 2000 lbs cuts the range by 40 %":
        of("range", "40", "% less", trailer_drag_area_m2="1", **TOWED | {"trailer_kg": "907.185"}),
    "A heat pump gives back a third of the range": of("cold", "33", "% less", **PUMPED),
    "A heat pump adds 10 % range in winter": of("range", "10", "% more", season="winter", **PUMPED),
    "In the cold a heat pump uses 30 % less energy": of("energy", "30", "% less", **PUMPED),
    "One-pedal driving saves 10 % in town": of("energy", "10", "% less", road="town", **PEDAL),
    "A plug-in hybrid recovers half as much as a battery car":
        of("recovered", "50", "% of it", hybrid="plug-in-hybrid", against_hybrid="none"),
    "In the Alps an electric car loses 30 % of its range.":
        of("range", "30", "% less", cycle="mountain-valley", against_cycle="wltc3b"),
    # how far it goes is its range
    "The car still goes 250 km at −10 °C": of("range", "250", "km", ambient_c="-10"),
    "In winter it manages 300 km": of("range", "300", "km", season="winter"),
    "My car gets about 200 miles": of("range", "321.869", "km"),
    # beyond the model, which says so
    "pads last 150,000 km": of("brake_life", "150000", "km"),
    "Strong regeneration makes an electric car unstable on snow.": {"quantity": "stability", "surface": "snow"},
    "Cats sleep.": {},
}  # fmt: skip


@pytest.mark.parametrize("sentence", SENTENCES)
def test_what_is_read_from_a_sentence(sentence):
    reading = read(sentence)
    assert offered(sentence) == SENTENCES[sentence]
    if not reading.missing:
        asked = question("own", reading.given)
        assert words_stand(asked) and text(asked) == sentence
    assert ("quantity" in reading.given and "number" in reading.given) or reading.missing or asked.claim.beyond
    for found in reading.found:
        assert found.words in sentence


@pytest.mark.parametrize(
    ("sentence", "aside", "missing"),
    [
        ("about 3 € per 100 km", [("money", "3 € per 100 km")], ("quantity", "number")),
        ("Regeneration saves $3 per 100 miles", [("money", "$3 per 100 miles")], ("number",)),
        ("Pads last 8 years", [("time", "8 years")], ()),
        ("Regeneration recovers 25", [("bare", "25")], ("number",)),
        ("The range drops by 40 %", [], ("case",)),
        ("The range falls from 400 to 300 km", [("down", "400 to 300 km")], ("number",)),
        ("At 130 km/h the range halves", [("condition", "130 km/h")], ("case",)),
        ("Cold takes 40 km of range and 20 %", [("second", "40 km")], ()),
        ("25 % or 30 % of the braking energy is recovered", [("second", "30 %")], ()),
        ("Up to 9 m/s² of the braking energy is recovered", [("unit", "9 m/s²")], ("number",)),
        ("Regeneration is wonderful.", [], ("number",)),
    ],
)
def test_numbers_that_are_not_taken_and_what_is_not_said_are_named(sentence, aside, missing):
    reading = read(sentence)
    assert [(one.why, one.words) for one in reading.aside] == aside
    assert reading.missing == missing


@pytest.mark.parametrize(
    ("sentence", "unread"),
    [
        ("With one-pedal driving the pads last for ever.", ("With one-pedal driving", "for ever")),
        ("The pads of a one-pedal car last 150,000 km", ("of a one-pedal car",)),
        ("In winter and in summer regeneration recovers 20 % of the energy", ("in summer",)),
        ("Towing a caravan halves the range.", ()),
        ("The car still goes 250 km at −10 °C", ("still",)),
    ],
)
def test_words_on_which_nothing_of_a_reading_rests_are_left_aside(sentence, unread):
    assert read(sentence).unread == unread


def test_what_is_assumed_beyond_the_words_is_marked():
    ours = {one.part for one in read("Towing a caravan halves the range.").found if one.assumed}
    assert ours == {"relation", "trailer_kg", "trailer_drag_area_m2", "case"}
    assert not any(one.assumed for one in read("Towing 900 kg takes up to 45 % less range.").found
                   if one.part not in ("trailer_drag_area_m2",))  # fmt: skip


@pytest.mark.parametrize("name", phrased())
def test_the_claims_of_articles_are_tested_as_their_words_are_read(name):
    wanted, reading = phrased()[name], read(phrased()[name]["words"])
    assert reading.given["quantity"] == wanted["quantity"]
    for key, read_as_ in reading.given.items():
        if not counted()[wanted["quantity"]].beyond:
            assert wanted[key] == read_as_, key


# our own sentences


CONDITIONS = [
    {}, {"season": "winter"}, {"road": "town"}, {"road": "mountain", "season": "spring"}, {"brake_pedal": "blended"},
    {"lift_off_mps2": "1.5", "comes_to_rest": "yes"}, {"trailer_kg": "900", "road": "motorway"}, {"ambient_c": "-7"},
    {"ambient_c": "-10..5", "soc_start": "0.7"}, {"car": "van,pickup"}, {"surface": "snow"}, {"speed_kmh": "10"},
    {"grade_pct": "6", "height_m": "500"}, {"heat_source": "heat_pump"}, {"cycle": "motorway"},
    {"cycle": "udds,nycc", "cabin": "no"}, {"mass_kg": "1650", "payload_kg": "200"},
]  # fmt: skip
CASES = [
    ({"trailer_kg": "900"}, {"trailer_kg": "0"}), ({"heat_source": "heat_pump"}, {"heat_source": "resistive"}),
    ({"hybrid": "plug-in-hybrid"}, {"hybrid": "none"}), ({"cycle": "motorway"}, {"cycle": "udds"}),
    ({"lift_off_mps2": "1.5", "comes_to_rest": "yes"}, {"lift_off_mps2": "0.5", "comes_to_rest": "no"}),
    ({"soc_start": "0.8"}, {"soc_start": "1"}),
]  # fmt: skip
CLAIMED = [("at_least", "12"), ("about", "33"), ("at_most", "4.5"), ("up_to", "1250"), ("on_average", "7"),
           ("between", "10..15"), ("always", "20"), ("at_least", "0"), ("about", "0"), ("at_most", "0")]  # fmt: skip


def phrasings(count):
    """Claims about one quantity: under each condition and between each two cases, with each relation in turn."""
    for place, conditions in enumerate(CONDITIONS):
        for relation, number in (CLAIMED[place % len(CLAIMED)], CLAIMED[(place + 3) % len(CLAIMED)]):
            yield {"quantity": count.id, "relation": relation, "number": number, "unit": count.unit} | conditions
    for relation, number in CLAIMED:
        yield {"quantity": count.id, "relation": relation, "number": number, "unit": count.unit}
    for place, (this, other) in enumerate(CASES):
        for step, unit in enumerate(count.units(True)):
            relation, number = CLAIMED[(place + 2 * step) % len(CLAIMED)]
            claim = {"quantity": count.id, "relation": relation, "number": number, "unit": unit, "season": "winter"}
            yield claim | this | {f"against_{key}": text for key, text in other.items()}


@pytest.mark.parametrize("name", [name for name, count in counted().items() if not count.beyond])
def test_our_own_sentence_is_read_as_the_claim_that_it_was_made_from(name):
    """Over relations, conditions and cases; where a condition does not go with the quantity there is no claim."""
    tested = 0
    for given in phrasings(counted()[name]):
        try:
            asked = question("own", given)
        except InputError:
            continue
        sentence = made(asked)
        again = question("own", read(sentence).given)
        tested += 1
        assert (again.number, again.relation, again.claim.always) == (asked.number, asked.relation, asked.claim.always)
        assert (again.claim.counted, again.claim.unit) == (asked.claim.counted, asked.claim.unit), sentence
        assert again.claim.measure == asked.claim.measure and again.claim.scope == asked.claim.scope, sentence
        assert words_stand(again) and text(again) == sentence
    assert tested > 15


def test_what_was_not_found_is_not_filled_in():
    reading = read("Regeneration is a wonderful thing.")
    assert reading.given == {"words": "Regeneration is a wonderful thing.", "quantity": "recovered"}
    assert reading.open == ("road", "season")
    with refuses("relation: it must be said"):
        question("own", reading.given)


def test_whatever_is_read_can_be_tested_or_says_what_is_missing():
    """Pairs of words that patterns look for, with a number: refused only where something is missing."""
    words = ["winter", "snow", "in town", "towing", "plug-in", "heat pump", "one-pedal", "range", "saves",
             "recovers", "braking energy", "downhill", "full battery", "-7 °C", "130 km/h", "9999 kg"]  # fmt: skip
    for one in words:
        for other in words:
            reading = read(f"{one} {other} up to 12 %")
            if not reading.missing:
                question("own", reading.given)
            else:
                with pytest.raises(InputError):
                    question("own", reading.given)


def test_every_rule_finds_something_that_exists():
    for row in rows("words/en/claim_reading.csv"):
        if row["finds"] in ("quantity", "own"):
            assert row["value"].split(" ")[0] in {*counted(), NOT_COUNTED}
        assert row["pattern"] and row["value"]
    for count in counted().values():
        if not count.beyond:
            assert any(row["finds"] == "own" and row["value"] == count.id for row in rows("words/en/claim_reading.csv"))


def test_the_words_on_which_a_reading_rests_have_no_space_around_them():
    for sentence in SENTENCES:
        told = [piece for piece in read(sentence).found if piece.part in ("quantity", "relation") and not piece.assumed]
        assert all(piece.words == piece.words.strip() for piece in told), sentence


# words that are quoted

IN_WINTER = "In winter at least 25 % of the energy comes back in town."
READ = read(IN_WINTER).given


@pytest.mark.parametrize("name", phrased())
def test_the_words_of_articles_say_what_is_tested(name):
    assert words_stand(question(name))


@pytest.mark.parametrize(
    ("change", "stands"),
    [
        ({}, True),
        ({"number": "26"}, False),
        ({"number": "25..30", "relation": "between"}, False),
        ({"relation": "at_most"}, False),
        ({"quantity": "range_gain"}, False),
        ({"season": "summer"}, False),
        ({"road": "motorway"}, False),
        ({"season": ""}, False),
        ({"season": "", "ambient_c": "20"}, False),
        # narrower than the words, which the reading beside them says
        ({"season": "", "ambient_c": "-5"}, True),
        ({"car": "van"}, True),
        ({"words": ""}, False),
    ],
)
def test_words_stand_as_long_as_they_say_what_is_tested(change, stands):
    asked = question("own", {key: text for key, text in (READ | change).items() if text})
    assert words_stand(asked) == stands
    assert (text(asked) == IN_WINTER) == stands and (read_as(asked) != "") == stands
    pasted = change.get("words", IN_WINTER)
    assert (changed_words(asked) == "") == (stands or not pasted)
    assert f"said “{pasted}”: changed since" in changed_words(asked) or stands or not pasted


def test_words_that_name_two_cases_leave_their_figures_open_and_not_the_cases():
    towing = phrased()["towing-halves-range"]
    assert words_stand(question("own", towing | {"trailer_kg": "900"}))
    assert not words_stand(question("own", towing | {"number": "40"}))
    plug_in = phrased()["plug-in-as-good"]
    assert not words_stand(question("own", plug_in | {"hybrid": "full-hybrid"}))


def plain(told):
    return unescape(told).replace("\N{NO-BREAK SPACE}", " ")


@pytest.mark.parametrize("name", phrased())
def test_no_quote_picture_or_file_gives_somebodys_words_for_another_test(name):
    beyond = counted()[phrased()[name]["quantity"]].beyond
    given = phrased()[name] | ({} if beyond else {"number": "1", "relation": "at_least"})
    said = given["words"].removesuffix(".")
    for asked in (question(name), question("own", given)):
        answer = check(asked)
        printed = [short_quotation(answer), quotation(answer), " ".join(claim_files.under_print(answer)),
                   claim_files.article_html(answer), claim_answers(answer)["text"]]  # fmt: skip
        for told in printed:
            assert (said in plain(told)) == words_stand(asked)
        # what the words do not say goes with them
        for told in printed[:4] if words_stand(asked) else ():
            assert made(asked).removesuffix(".") in plain(told)
        assert bool(claim_answers(answer).get("words_changed")) != words_stand(asked)
