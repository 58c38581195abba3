"""Phrasing a claim on the page: pasted, read, corrected, tested, and linked."""

from urllib.parse import parse_qsl, urlsplit

import pytest
from streamlit.testing.v1 import AppTest

from model.claims.questions import question
from model.claims.specification import counted, phrased
from model.claims.verdicts import check
from model.words.claims import made
from model.words.quantities import Display
from model.words.reading import read
from pages.parts import claim_files, claim_phrasing, claim_words
from pages.parts.plain_text import inert
from pages.parts.reading_words import reading_texts
from tests.pages.in_app import CLAIM_PARTS, address, opened_at, ran

TOWING = phrased()["towing-halves-range"]


def opened(**given: str) -> AppTest:
    return opened_at("check_a_claim.py", {"claim": "own"} | {f"said_{key}": text for key, text in given.items()},
                     CLAIM_PARTS)


def said(app: AppTest) -> dict[str, str]:
    return {key[5:]: value for key, value in address(app).items() if key.startswith("said_")}


def pasted(app: AppTest, text: str) -> AppTest:
    return ran(app.text_area(key="own-words").set_value(text).run())


def test_a_pasted_sentence_is_read_corrected_and_tested_in_its_own_words():
    app = pasted(opened(), "After a charge to 100 % there is none for the first 20 km, [x](http://y.z).")
    assert app.title[0].value == inert("“After a charge to 100 % there is none for the first 20 km, [x](http://y.z).”".replace(
        " %", "\N{NO-BREAK SPACE}%").replace(" km", "\N{NO-BREAK SPACE}km"))  # fmt: skip
    assert said(app)["quantity"] == "works_after" and said(app)["relation"] == "at_least"
    ran(app.selectbox(key="own-quantity").set_value("in_a_stop").run())
    ran(app.text_input(key="own-number").set_value("30").run())
    assert said(app)["unit"] == "%"
    answer = check(question("own", said(app)))
    assert claim_words.heading(answer) in [one.value for one in app.header]
    assert inert(claim_words.read_as(answer.question, Display())) in [one.value for one in app.caption]
    # the link and the command bring the same claim back
    link = dict(parse_qsl(urlsplit(app.code[-1].value).query))
    assert {key[5:]: text for key, text in link.items() if key.startswith("said_")} == said(app)
    assert app.code[-2].value == claim_files.command(answer.question)


@pytest.mark.parametrize(
    ("sentence", "told"),
    [
        ("up to 25 %", "It does not say of what: which share, range or energy is meant."),
        ("Regeneration is wonderful.", "It does not say how many per cent."),
        ("The range drops by 40 %", "It does not say compared with what."),
        ("about 3 € per 100 km", "“3 € per 100 km” is money, which no claim here counts"),
        ("The car has great range", "It does not say how far."),
    ],
)
def test_what_cannot_be_tested_yet_is_said_in_plain_words(sentence, told):
    app = pasted(opened(), sentence)
    answer = app.info[-1].value.replace("\N{NO-BREAK SPACE}", " ").replace("\\", "")
    assert answer.startswith("Not tested yet. ") and told in answer
    assert not any(f"{key}:" in answer.lower() for key in ("relation", "number", "unit", "quantity"))


def test_what_a_bare_number_and_a_trailer_are_taken_to_mean_is_said_beside_the_words():
    app = pasted(opened(), "Towing halves the range")
    (read_,) = [one.value for one in app.markdown if "halves" in one.value]
    read_ = read_.replace("\N{NO-BREAK SPACE}", " ")
    assert "“halves” is read as 50 % less." in read_
    assert "“halves”: a bare number is taken to mean about so much." in read_
    assert "a trailer of 1,500 kg and no trailer. The figures are assumed" in read_
    assert "It does not say on what kind of road or in which season" in read_
    assert app.header[0].value.startswith("By the model this claim ")


def test_an_empty_box_is_told_nothing_and_has_a_button():
    app = opened()
    assert not app.info and app.button(key="own-test").label == "Test this claim"


def test_what_the_words_say_just_so_is_not_said_again_and_what_was_left_aside_is():
    def told(sentence):
        reading = read(sentence)
        return "\n".join(reading_texts(reading, reading.given, Display())).replace("\N{NO-BREAK SPACE}", " ")

    plain = told("Regeneration recovers up to 20 % of the energy in winter.")
    assert "“up to” is read as a ceiling" in plain.casefold()
    assert not any(word in plain for word in ("the number is", "the unit is", "20 %", "in winter", "eft aside"))
    assert "Left aside, since no rule here reads it: “With one-pedal driving” and “for ever”." in told(
        "With one-pedal driving the pads last for ever."
    )
    assert "“150,000 km” is left aside: the model cannot judge it." in told("The pads last 150,000 km")


def test_a_number_that_the_words_do_not_say_takes_the_quotation_marks_away():
    app = opened(**TOWING)
    assert app.title[0].value == inert("“Towing a caravan halves the range.”")
    ran(app.text_input(key="own-number").set_value("40").run())
    answer = check(question("own", said(app)))
    assert app.title[0].value == inert(claim_words.claim_text(answer.question)) and "halves" not in app.title[0].value
    assert inert("The words you pasted said “Towing a caravan halves the range.”: changed since.") in [
        one.value for one in app.caption]  # fmt: skip
    assert not any("halves" in one.value for one in app.code[:1])


def test_a_claim_of_an_article_opens_as_ones_own_and_can_be_changed():
    app = opened_at("check_a_claim.py", {"claim": "half-back-downhill"})
    assert address(app)["claim"] == "own" and said(app) == phrased()["half-back-downhill"]
    ran(app.text_input(key="own-number").set_value("20 to 60").run())
    assert said(app)["relation"] == "between" and said(app)["number"] == "20..60"
    ran(app.button(key="row-said-grade_pct").click().run())
    ran(app.text_input(key="set-said-grade_pct").set_value("6").run())
    assert said(app)["grade_pct"] == "6"
    assert "With a slope of 6 %," in made(question("own", said(app)))


def test_two_cases_are_set_apart_and_put_together_again():
    app = opened(**phrased()["one-pedal-in-town"])
    assert set(app.multiselect(key="own-against").value) == {"lift_off_mps2", "comes_to_rest"}
    ran(app.text_input(key="own-against_lift_off_mps2").set_value("0.3").run())
    assert said(app)["against_lift_off_mps2"] == "0.3"
    ran(app.multiselect(key="own-against").set_value([]).run())
    assert not any(key.startswith("against_") for key in said(app)) and said(app)["unit"] == "kWh/100 km"


@pytest.mark.parametrize("link", [{}, {"quantity": "nonsense"}, {"quantity": "range", "number": "x"}, {"": "x"},
                                  {"words": "x" * 999}, {"quantity": "range", "against_": "1"},
                                  TOWING | {"against_trailer_kg": "many"}, TOWING | {"relation": "<b>"},
                                  TOWING | {"hybrid": "full-hybrid"}, TOWING | {"trailer_kg": "a..b"}])  # fmt: skip
def test_no_link_to_a_claim_of_ones_own_ends_in_a_traceback(link):
    assert opened(**link).title


@pytest.mark.parametrize("quantity", counted())
def test_another_quantity_keeps_what_can_be_said_of_it(quantity):
    changed = claim_phrasing.with_quantity(TOWING | {"relation": "at_least"}, quantity)
    assert changed["words"] == TOWING["words"] and changed["number"] == "50"
    if changed.get("unit"):
        question("own", changed)


def test_a_case_that_is_added_gets_two_values_that_differ_where_they_can():
    for key in counted()["range"].sayable:
        changed = claim_phrasing.with_cases({"quantity": "range", "relation": "about", "number": "9"}, [key])
        asked = question("own", changed | {"unit": "% less"})
        assert key in asked.claim.against and key in asked.claim.scope
