"""What a claim's sentence says is what was tested: its numbers and conditions are read back and held against it."""

import re

import numpy as np
import pytest

from model.claims.collection import claims
from model.claims.inputs import DRIVES, INPUTS
from model.claims.questions import question
from model.claims.verdicts import check
from model.describe.fields import InputError
from model.describe.parameters import class_labels
from model.traces.cycles import CYCLES
from model.words import claims as spoken
from model.words.claim_answers import claim_answers
from model.words.claim_inputs import condition
from model.words.claims import sentence
from model.words.quantities import MINUS, Display
from pages.parts import claim_files, claim_words
from tests.refused import told

METRIC = Display()
SHARES = {name: METRIC.say("own-counted", quantity=name) for name in INPUTS["denominator"].choices}
DRIVE_NAMES = {drive: METRIC.say("claim-value-cycle", choice=drive) for drive in DRIVES}
SETTINGS = (
    {"number": "13"}, {"number": "7..9"}, {"relation": "at_most"}, {"relation": "about", "number": "6"},
    {"relation": "up_to", "number": "31"}, {"relation": "on_average", "number": "17"},
    {"ambient_c": "0"}, {"ambient_c": "-12..-3"}, {"ambient_c": "28"}, {"cycle": "hwfet"}, {"cycle": "nycc"},
    {"cycle": "us06", "ambient_c": "3"}, {"speed_kmh": "50"}, {"speed_kmh": "115..125"}, {"cabin": "yes"},
    {"denominator": "recovered"}, {"denominator": "of_braking"}, {"denominator": "range_gain", "number": "19"},
    {"denominator": "range_lost", "cycle": "wltc3b-extra-high"}, {"brake_pedal": "friction"}, {"car": "large-suv"},
    {"soc_start": "0.5"}, {"mass_kg": "2345"}, {"surface": "snow"}, {"trailer_kg": "900"},
)  # fmt: skip
"""Other numbers, relations, denominators, cycles, temperatures, roads and cars than those of the list."""
TOWN = {"udds", "nycc", "nedc-urban", "wltc3b-low", "town"}
NUMBER = rf"{MINUS}?\d[\d,]*(?:\.\d+)?"


def number(text):
    """A number as a sentence has it."""
    return float(text.replace(",", "").replace(MINUS, "-"))


def read_back(text):
    """What a made sentence says: relation and numbers, and mass, temperature and speed; None where they are unsaid."""
    claimed = re.search(
        rf" is (?:always )?(at least|at most|up to|on average about|about|between|zero or more|zero or less)"
        rf"(?: ({NUMBER})(?: and ({NUMBER}))?)?",
        text,
    )
    # of what is beyond the model nothing is claimed
    relation = claimed[1].replace("on average about", "on average").replace(" ", "_") if claimed else ""
    numbers = tuple(number(part) for part in claimed.groups()[1:] if part) if claimed else ()
    if relation.startswith("zero"):
        relation, numbers = {"more": "at_least", "less": "at_most"}[relation.rpartition("_")[2]], (0.0,)
    spans = {
        key: re.search(rf"(?:({NUMBER}) (?:to|or) )?({NUMBER}) {unit}", text)
        for key, unit in (("ambient_c", "°C outside"), ("mass_kg", "kg with driver"))
    }
    speed = re.search(rf"a speed of (?:({NUMBER}) (?:to|or) )?({NUMBER}) km/h", text)
    return relation, numbers, {**spans, "speed_kmh": speed}


def asked_with(claim_id, settings):
    """The question, or a skip where the claim knows no such setting."""
    try:
        return question(claim_id, settings)
    except InputError as refused:
        assert "is not a known setting" in told(refused)
        return None


@pytest.mark.parametrize("claim_id", claims())
def test_a_sentence_says_what_was_tested_and_nothing_else(claim_id):
    claim, told = claims()[claim_id], 0
    for settings in SETTINGS:
        if (asked := asked_with(claim_id, settings)) is None:
            continue
        told += 1
        made = spoken.made(asked)
        relation, numbers, spans = read_back(made)
        wanted = ("", ()) if asked.beyond else (asked.relation, asked.number)
        assert (relation, numbers) == (wanted[0], pytest.approx(wanted[1], rel=5e-3)), made
        for key, span in spans.items():
            if key in asked.declared and not (key in claim.words and key not in asked.said):
                this = asked.declared[key]
                if key in asked.said or key in claim.scope:
                    low, high = number(span[1] or span[2]), number(span[2])
                    assert (low, high) == pytest.approx((min(this.values), max(this.values)), abs=0.5), made
                else:
                    assert span is None, made
        if "denominator" in asked.declared:
            named = [key for key, words in SHARES.items() if words in made[:1].lower() + made[1:]]
            assert named == list(asked.declared["denominator"].values), made
        if (drives := asked.declared.get("cycle")) is not None:
            assert ("in town" not in made) or set(drives.values) <= TOWN, made
            fixed = "cycle" in asked.said or "cycle" in claim.scope
            assert not fixed or all(DRIVE_NAMES[drive] in made for drive in drives.values), made
        temperature = asked.declared.get("ambient_c")
        assert "in winter" not in made or max(temperature.values) <= 10, made
        assert "motorway" not in made or min(asked.declared["speed_kmh"].values) >= 100, made
        for key in asked.said:
            if INPUTS[key].kind != "number":
                assert condition(INPUTS[key], asked.declared[key].part, METRIC) in made, made
        # the list's own words stand only where all they say is what is tested
        for key, value in {**claim.scope, **{key: claim.open[key] for key in claim.words}}.items():
            assert not asked.as_listed or asked.declared[key].within(value)
        assert not asked.as_listed or (asked.number, asked.relation) == (claim.number, claim.relation)
        assert spoken.text(asked) == (spoken.words_of(claim) if asked.as_listed else made)
    assert told >= 7


@pytest.mark.parametrize(
    "claim_id, settings, gone, said",
    [
        ("recovered-on-test-cycle", {"denominator": "of_braking"}, "battery’s output", "braking energy at the wheels"),
        ("cold-halves-range", {"ambient_c": "0"}, "−7", "0 °C outside"),
        ("range-gain-in-town", {"cycle": "hwfet"}, "in town", "HWFET highway"),
        ("useless-in-winter", {"ambient_c": "20"}, "winter", "20 °C outside"),
        ("recovered-on-test-cycle", {"cycle": "udds"}, "WLTC", "UDDS city"),
        ("motorway-range", {"cycle": "nedc"}, "WLTC", "NEDC"),
        ("two-megawatts", {"number": "1"}, "2 MW", "1 MW"),
        ("range-gain-on-dynamometer", {"car": "large-suv"}, "small car", "large SUV"),
    ],
)
def test_title_quote_picture_files_and_command_line_say_what_was_tested(claim_id, settings, gone, said):
    answer = check(question(claim_id, settings))
    texts = {
        "title": claim_words.claim_text(answer.question),
        "quote": claim_words.quotable(answer),
        "picture": " ".join(claim_files.under_print(answer)) + claim_words.finding(answer),
        "file": claim_answers(answer)["text"] + claim_answers(answer)["what"] + sentence(answer),
    }
    for place, text in texts.items():
        text = text.replace("\N{NO-BREAK SPACE}", " ").replace("−", "-")
        assert said in text, (place, text)
        # the band of what the model gives may hold any number
        assert place == "quote" or gone.replace("−", "-") not in text.partition("The model gives")[0], (place, text)


def test_the_page_in_miles_says_the_same():
    reason = claim_words.reason(check(question("cold-halves-range", {"ambient_c": "0"})), Display(us=True))
    assert "32\N{NO-BREAK SPACE}°F outside" in reason


def test_every_class_and_cycle_has_words_that_can_be_read_back():
    assert len(set(class_labels().values())) == len(class_labels())
    assert len(set(DRIVE_NAMES.values())) == len(DRIVES) and set(CYCLES) <= set(DRIVES)
    assert all(np.isfinite(claim.within_share) for claim in claims().values())
