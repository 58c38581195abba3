"""Both verdicts in one sentence, and every measurement with its source, on the page and on the command line."""

import re

import pytest

from model.claims.collection import claims
from model.claims.evidence import CONTRADICTS, MIXED, NONE, SUPPORTS, UNSETTLED, evidence, measurements
from model.claims.questions import question
from model.claims.verdicts import BEYOND, VERDICTS
from model.words.claim_answers import claim_answers
from model.words.claims import verdict_words, what
from model.words.evidence import TOGETHER, both, evidence_answers, measured_what
from model.words.quantities import Display
from pages.parts.evidence_words import table
from pages.parts.typography import NO_BREAK
from tests.answered import answered

METRIC = Display()


@pytest.mark.parametrize("claim_id", ["free-charge-on-descents", "cold-halves-range", "two-megawatts"])
def test_one_sentence_holds_both_verdicts(claim_id):
    answer = answered(claim_id)
    told = both(answer, METRIC)
    assert told.count(".") == 1
    assert verdict_words(answer) in told or "so does the model" in told
    expected = {NONE: "No measurement", CONTRADICTS: "contradict", MIXED: "divided"}[evidence(answer.question).verdict]
    assert expected in told


def test_every_pair_of_verdicts_reads_as_one_sentence_and_but_stands_only_where_they_differ():
    for measured in (SUPPORTS, CONTRADICTS, MIXED, UNSETTLED, NONE):
        for verdict in set(VERDICTS) - {BEYOND}:
            together = TOGETHER.get((measured, verdict), "neither")
            told = METRIC.say("claim-both", measured=measured, together=together, verdict=verdict)
            assert told.count(".") == 1 and (
                METRIC.say("claim-verdict", verdict=verdict) in told or told.endswith("and so does the model.")
            )
            assert (", but " in told) == (together == "differ") and ("so " in told) == (together == "agree")


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
