"""Both verdicts in one sentence, and every measurement with its source, on the page and on the command line."""

import re

import pytest

from model.claims.collection import claims
from model.claims.evidence import (
    AGREES,
    CONTRADICTS,
    DIFFERS,
    MIXED,
    NEITHER,
    NONE,
    OTHER_SIDE,
    SUPPORTS,
    TOGETHER,
    UNSETTLED,
    evidence,
    measurements,
    standing,
)
from model.claims.questions import question
from model.claims.verdicts import BEYOND, VERDICTS
from model.words.claim_answers import claim_answers
from model.words.claim_numbers import shown
from model.words.claims import verdict_words, what
from model.words.evidence import both, by_model, evidence_answers, measured_what
from model.words.quantities import Display
from pages.parts.evidence_words import table
from pages.parts.typography import NO_BREAK
from tests.answered import answered

METRIC = Display()


@pytest.mark.parametrize("claim_id", ["free-charge-on-descents", "cold-halves-range", "two-megawatts"])
def test_one_sentence_holds_both_verdicts(claim_id):
    answer = answered(claim_id)
    told = both(answer, METRIC)
    assert verdict_words(answer) in told
    expected = {NONE: "asks for no measurement", CONTRADICTS: "contradict it too", MIXED: "divided"}
    assert expected[evidence(answer.question).verdict] in told


def test_a_measurement_on_the_other_side_of_what_is_claimed_stands_in_the_verdict_line_and_in_what_is_quoted():
    answer = answered("range-gain-in-town")
    assert answer.too_low and evidence(answer.question).verdict == UNSETTLED and standing(answer) == OTHER_SIDE
    measured = "Measurements point the other way (11 to 22 %) and do not settle it."
    assert both(answer, METRIC) == f"By the model this is too low: it reaches 85 %. {measured}"
    answers = claim_answers(answer)
    for told in (answers["both"], answers["sentence"], *answers["quotes"].values()):
        assert measured in told
    # the same measurement on the same side as the model does not point the other way
    assert standing(answered("range-gain-in-town", number="5", relation="at_most")) != OTHER_SIDE


@pytest.mark.parametrize("claim_id", claims())
def test_every_verdict_line_says_what_was_measured(claim_id):
    answer = answered(claim_id)
    found = evidence(answer.question)
    line = both(answer, METRIC)
    assert line.startswith(by_model(answer, METRIC)) and line.count(". ") == 1
    if not found.same:
        assert "measurement" in line.lower()
    else:
        low, high = found.ends
        assert shown(low, "%", METRIC) in line and shown(high, "%", METRIC) in line


def test_what_was_measured_reads_as_one_sentence_and_but_stands_only_where_the_model_says_the_opposite():
    for measured in (SUPPORTS, CONTRADICTS, MIXED, UNSETTLED, NONE):
        for verdict in set(VERDICTS) - {BEYOND}:
            stands = TOGETHER.get((measured, verdict), NEITHER)
            told = METRIC.say("claim-heading-measured", measured=measured, stands=stands, numbers="5 %")
            assert told.count(".") == 1 and told.startswith("But ") == (stands == DIFFERS and measured != MIXED)
            assert (" too " in told) == (measured == CONTRADICTS and stands == AGREES)


def test_the_command_line_has_all_of_the_evidence():
    answer = answered("two-megawatts")
    assert evidence_answers(answer, METRIC).items() <= claim_answers(answer).items()


@pytest.mark.parametrize("claim_id", claims())
def test_page_and_command_line_list_the_same_numbers_with_their_sources(claim_id):
    answer = answered(claim_id)
    found, rows = evidence(answer.question), evidence_answers(answer, METRIC)["sources"]
    listed = [*table(found.same, METRIC).to_numpy().tolist(), *table(found.near, METRIC).to_numpy().tolist()]
    assert len(rows) == len(listed)
    for row, (_, text) in zip(rows, listed, strict=True):
        text = text.replace(NO_BREAK, " ")
        assert row["kind"] in text and row["source"] in text
        assert row["date"] in text and (row["date"] or "undated" in text or row["read"] == "computed")
        assert f"]({row['address']})" in text if row["address"] else "](" not in text
        assert row["counts"] == (not row["why_not"]) == bool(row["says"])


def test_what_was_measured_and_what_is_counted_are_told_in_the_readers_units():
    us, metric = Display(us=True), re.compile(r"°C|\d (?:km|kg|m|km/h|m/s²)\b|kilomet")
    on_display = question("own", {"quantity": "display_km", "relation": "at_least", "number": "15", "unit": "km"})
    for told_in, is_metric in ((us, False), (METRIC, True)):
        counted = what(on_display, told_in)
        together = " ".join([counted, *(measured_what(measurement, told_in) for measurement in measurements())])
        assert bool(metric.search(together.replace(NO_BREAK, " "))) == is_metric
    assert "62.1 mi" in what(on_display, us).replace(NO_BREAK, " ")
