"""What has been measured of a claim: what counts, what is only near, and the verdict by plain rules."""

import math
from dataclasses import replace

import pytest

from model.claims.collection import claims
from model.claims.evidence import (
    CONTRADICTS,
    MIXED,
    NONE,
    SUPPORTS,
    UNSETTLED,
    evidence,
    measurements,
    says,
    verdict_of_measured,
)
from model.claims.questions import question
from model.describe import tables
from model.describe.tables import ASSETS, TableError

BY_ID = {one.id: one for one in measurements()}
COLD = "cold-halves-range"


def same(claim_id, **settings):
    return {beside.measurement.id: beside.says for beside in evidence(question(claim_id, settings)).same}


def why_not(claim_id, **settings):
    return {beside.measurement.id: beside.why_not for beside in evidence(question(claim_id, settings)).near}


@pytest.mark.parametrize("claim_id", claims())
def test_what_counts_is_of_the_claims_quantity_unit_and_share_and_was_measured(claim_id):
    asked = question(claim_id)
    found = evidence(asked)
    for beside in found.same:
        one = beside.measurement
        assert (one.quantity, one.unit) == (asked.claim.quantity, asked.claim.unit)
        assert "denominator" not in asked.declared or one.of == asked.declared["denominator"].base
        assert one.kind not in ("computed", "regulation", "quoted second-hand") and beside.says and not beside.why_not
    assert all(beside.why_not and not beside.says for beside in found.near)
    assert not {beside.measurement.id for beside in found.same} & {beside.measurement.id for beside in found.near}
    assert (found.verdict == NONE) == (not found.same)


def test_a_number_within_outside_or_across_what_is_claimed():
    span = BY_ID["wager-range"]
    assert says(span, 11, 22) == says(span, -math.inf, 22) == SUPPORTS
    assert says(span, 22.1, math.inf) == says(span, 0, 10.9) == CONTRADICTS
    assert says(span, 20, math.inf) == says(span, 15, 18) == MIXED
    # what is published as a most was reached by one, and says nothing of the least
    most = BY_ID["cold-together"]
    assert says(most, 50.1, math.inf) == CONTRADICTS and says(most, 40, math.inf) == MIXED
    assert says(most, -math.inf, 50) == SUPPORTS


def test_conditions_that_are_none_of_the_claims_make_a_measurement_near_only():
    assert {"aaa-cold-heated", "aaa-cold-unheated"} <= set(same(COLD))
    heated = same(COLD, cabin="yes")
    assert "aaa-cold-heated" in heated and "aaa-cold-unheated" not in heated
    assert why_not(COLD, cabin="yes")["aaa-cold-unheated"] == "other-conditions"
    # 20 °F counts for −7 °C
    assert BY_ID["aaa-cold-heated"].conditions["ambient_c"] == (-6.7,)
    assert why_not("range-gain-in-town", car="large-suv")["wager-range"] == "other-conditions"


def test_a_number_that_is_another_share_is_near_only():
    assert set(same("range-gain-in-town")) == {"wager-range"}
    assert why_not("range-gain-in-town")["adac-town"] == "other-share"
    assert set(same("range-gain-in-town", denominator="recovered")) == {"adac-town"}


def test_an_average_is_held_against_averages():
    assert set(same("recovered-on-test-cycle")) == {"adac-wltc-mean"}
    assert why_not("recovered-on-test-cycle")["adac-wltc-cars"] == "no-mean"
    assert "adac-wltc-cars" in same("recovered-on-test-cycle", relation="about")


def test_a_claim_in_ones_own_words_is_held_against_measurements_and_a_difference_is_not():
    said = {"quantity": "range_gain", "relation": "up_to", "number": "20", "unit": "%"}
    assert set(same("own", **said)) == {"wager-range"} and evidence(question("own", said)).verdict == SUPPORTS
    found = evidence(question("heat-pump-gives-back-a-third"))
    assert found.verdict == NONE and {beside.why_not for beside in found.near} <= {"compared", "other-quantity"}


def test_what_is_computed_or_ruled_is_no_measurement():
    assert why_not("stops-as-fast-as-brakes") == {"stop-by-mechanics": "not-measured", "longest-stop": "other-quantity"}
    assert evidence(question("four-times-the-energy")).verdict == NONE


def test_all_that_count_decide_the_verdict():
    assert evidence(question("free-charge-on-descents")).verdict == CONTRADICTS
    assert evidence(question("free-charge-on-descents", {"number": "27..50"})).verdict == SUPPORTS
    assert evidence(question(COLD)).verdict == MIXED
    assert evidence(question(COLD, {"number": "60"})).verdict == CONTRADICTS


@pytest.mark.parametrize(("number", "verdict"), [("22", SUPPORTS), ("15", CONTRADICTS), ("40", UNSETTLED)])
def test_a_top_is_held_against_the_highest_that_was_measured(number, verdict):
    assert evidence(question("range-gain-in-town", {"number": number})).verdict == verdict


def test_always_is_refuted_by_one_and_proved_by_none():
    asked = question("range-gain-on-dynamometer", {"number": "5..30"})
    always = replace(asked, claim=replace(asked.claim, always=True))
    within = evidence(asked).same
    assert verdict_of_measured(always, within) == UNSETTLED
    assert verdict_of_measured(always, (*within, replace(within[0], says=MIXED))) == CONTRADICTS


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("wager-range,wager-2017", "wager-range,wager-2071", "source 'wager-2071' is unknown; the nearest"),
        ("share_of_drive,range_gain", "share_of_drives,range_gain", "quantity 'share_of_drives' is none that claims"),
        ("car=city-car", "cart=city-car", "condition 'cart' is nothing that a claim can name"),
        ("car=city-car", "car=city-cars", "car"),
        (",11,22,", ",22,11,", "low 22 is above high 11"),
        (",11,22,", ",11,many,", "high 'many' is not a number"),
        (",%,each,car=", ",%,any,car=", "counts 'any' is unknown"),
        ("wager-range,wager-2017", "wager,wager-2017", "its words are missing, the message measurement-wager in"),
    ],
)
def test_a_row_that_cannot_be_used_is_named(monkeypatch, tmp_path, old, new, said):
    text = (ASSETS / "measurements.csv").read_text("utf-8")
    assert old in text
    (tmp_path / "measurements.csv").write_text(text.replace(old, new, 1), "utf-8")
    monkeypatch.setattr(tables, "ASSETS", tmp_path)
    with pytest.raises(TableError, match=r"^assets/measurements.csv, row 2: ") as wrong:
        measurements.__wrapped__()
    assert said in str(wrong.value)
