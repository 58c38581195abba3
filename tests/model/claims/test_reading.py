"""A sentence read by plain rules: what it offers, on which words that rests, and what is left unsaid."""

from html import unescape

import pytest

from model.claims.questions import question
from model.claims.reading import read
from model.claims.specification import counted, phrased
from model.claims.verdicts import check
from model.describe.fields import InputError
from model.describe.tables import rows
from model.words.claims import changed_words, claim_answers, made, quotation, read_as, short_quotation, text
from model.words.quantities import MINUS
from pages.parts import claim_files
from tests.refused import refuses


def offered(sentence):
    return {key: text for key, text in read(sentence).given.items() if key != "words"}


@pytest.mark.parametrize(
    "sentence, given",
    [
        ("Regenerative braking recovers about 25 percent of the energy in city traffic.",
         {"quantity": "recovered", "relation": "about", "number": "25", "unit": "%", "road": "town"}),
        ("On the motorway 10–15 % of the energy comes back.",
         {"quantity": "recovered", "relation": "between", "number": "10..15", "unit": "%", "road": "motorway"}),
        ("At -7 °C at least half of the range is lost.",
         {"quantity": "cold", "relation": "at_least", "number": "50", "unit": "%", "ambient_c": "-7"}),
        ("Towing 900 kg in summer costs up to 45 % of the range: 45 % less.",
         {"quantity": "range", "relation": "up_to", "number": "45", "unit": "% less", "season": "summer",
          "trailer_kg": "900", "against_trailer_kg": "0"}),
        ("The car slows at 1.5 m/s² always",
         {"quantity": "slowing", "relation": "always", "number": "1.5", "unit": "m/s²"}),
        ("After charging to 100 % nothing is recovered for the first 20 km.",
         {"quantity": "works_after", "number": "20", "unit": "km", "soc_start": "1"}),
        ("1,5 % more", {"number": "1.5", "unit": "%"}),
        ("Cats sleep.", {}),
    ],
)  # fmt: skip
def test_what_is_read_from_a_sentence(sentence, given):
    assert offered(sentence) == given


@pytest.mark.parametrize("name", phrased())
def test_the_claims_of_articles_are_read_as_they_were_phrased_but_for_what_they_do_not_say(name):
    wanted, reading = phrased()[name], read(phrased()[name]["words"])
    assert reading.given["words"] == wanted["words"] and reading.given["quantity"] == wanted["quantity"]
    for key in ("relation", "number", "unit", *(() if "cycle" in wanted else ("road",))):
        if not counted()[wanted["quantity"]].beyond:
            assert reading.given.get(key, wanted.get(key)) == wanted.get(key) or key in reading.missing, key
    for found in reading.found:
        assert found.words.lower() in wanted["words"].lower()


def test_what_was_not_found_is_said_and_not_filled_in():
    reading = read("Regeneration is a wonderful thing.")
    assert reading.given == {"words": "Regeneration is a wonderful thing.", "quantity": "recovered"}
    assert reading.missing == ("relation", "number", "unit", "road", "season")
    with refuses("relation: it must be said"):
        question("own", reading.given)


def test_numbers_beside_the_one_that_is_tested_are_named():
    reading = read("The range falls by 30 % and half of it comes back downhill.")
    assert reading.given["number"] == "30" and reading.unused == ("half",)


def test_whatever_is_read_can_be_tested_or_says_what_is_missing():
    """Pairs of words that patterns look for, with a number: refused only where something is missing."""
    words = ["winter", "snow", "in town", "towing", "plug-in", "heat pump", "one-pedal", "range", "saves",
             "recovers", "braking energy", "downhill", "full battery", "-7 °C", "130 km/h", "9999 kg"]  # fmt: skip
    for one in words:
        for other in words:
            reading = read(f"{one} {other} up to 12 %")
            if not reading.missing or set(reading.missing) <= {"road", "season"}:
                question("own", reading.given)
            else:
                with pytest.raises(InputError):
                    question("own", reading.given)


def test_every_rule_finds_something_that_exists():
    for row in rows("words/en/claim_reading.csv"):
        if row["finds"] == "quantity":
            assert row["value"] in counted()
        assert row["pattern"] and row["value"]


# words that are quoted

IN_WINTER = "In winter at least 25 % of the energy comes back in town."
READ = read(IN_WINTER).given


@pytest.mark.parametrize("name", phrased())
def test_the_words_of_articles_say_what_is_tested(name):
    assert question(name).as_listed


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
    assert asked.as_listed == stands
    assert (text(asked) == IN_WINTER) == stands and (read_as(asked) != "") == stands
    pasted = change.get("words", IN_WINTER)
    assert (changed_words(asked) == "") == (stands or not pasted)
    assert f"said “{pasted}”: changed since" in changed_words(asked) or stands or not pasted


def test_words_that_name_two_cases_leave_their_figures_open_and_not_the_cases():
    towing = phrased()["towing-halves-range"]
    assert question("own", towing | {"trailer_kg": "900"}).as_listed
    assert not question("own", towing | {"number": "40"}).as_listed
    plug_in = phrased()["plug-in-as-good"]
    assert not question("own", plug_in | {"hybrid": "full-hybrid"}).as_listed


def plain(told):
    return unescape(told).replace("\N{NO-BREAK SPACE}", " ").replace(MINUS, "-")


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
            assert (said in plain(told)) == asked.as_listed
        # what the words do not say goes with them
        for told in printed[:4] if asked.as_listed else ():
            assert made(asked).removesuffix(".") in plain(told)
        assert bool(claim_answers(answer).get("words_changed")) != asked.as_listed
