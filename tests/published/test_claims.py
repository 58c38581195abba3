"""Claims beside their published points: the verdicts are those of the run, by the rule that is printed with them."""

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

from model.claims.collection import claims
from model.claims.questions import question
from model.claims.regions import conditions_of, inside_of
from model.claims.specification import phrased
from model.claims.verdicts import CLOSE, CONDITIONS, FALSE, HOLDS, NOT_AS_SAID, SEARCH_SEED, check
from model.sampling.uncertainty import SEED
from model.words.claim_answers import needs
from model.words.claims import conditions, sentence
from tests.conftest import now_and_nightly

ROOT = Path(__file__).resolve().parents[2]


def found(claim_id, **settings):
    answer = check(question(claim_id, settings))
    print(sentence(answer))
    return answer


def test_about_22_percent_is_recovered_on_the_test_cycle_over_all_classes():
    """ADAC, March 2024, on Green NCAP measurements: mean about 22 %, cars from 9 to 31 %."""
    answer = found("recovered-on-test-cycle")
    assert answer.verdict == HOLDS and answer.values.mean() == pytest.approx(22, abs=1)
    assert answer.quantiles["0.05"] > 9 and answer.quantiles["0.95"] < 31


def test_22_percent_recovered_is_not_22_percent_more_range():
    assert found("recovered-is-range").verdict == FALSE
    as_range = found("recovered-on-test-cycle", denominator="range_gain")
    print(as_range.verdict, as_range.share)
    assert as_range.verdict != HOLDS and as_range.quantiles["0.5"] > 26.4


def test_the_dynamometer_result_holds_for_the_small_car_under_the_named_conditions():
    """Wager, Whale and Braunl 2017: 11 to 22 % more range."""
    answer = found("range-gain-on-dynamometer")
    assert answer.verdict == CONDITIONS
    assert answer.share >= 0.75 > answer.whole_share
    assert "city car" in sentence(answer) and "a friction-only pedal" in sentence(answer)
    large = found("range-gain-on-dynamometer", car="large-suv", brake_pedal="blended")
    # one run in twenty comes down to 22 %, and an error of a few percent could bring more of them there
    assert large.verdict == CLOSE and large.plain_verdict == FALSE and large.share < 0.05


def test_forty_percent_in_town_gets_the_verdict_of_its_run_with_what_decides_it_named():
    answer = found("range-gain-in-town")
    assert {"cycle", "brake_pedal", "cabin", "accessory_w"} <= set(answer.question.not_said)
    # a tenth more than the number is passed by one run in twenty, so the number is no top
    assert answer.verdict == NOT_AS_SAID and answer.quantiles["0.95"] > 44 > answer.quantiles["0.5"]
    said = {"cycle": "udds", "brake_pedal": "blended", "accessory_w": "250", "cabin": "no"}
    named = found("range-gain-in-town", **said)
    assert set(named.question.said) == set(said) and not set(said) & set(named.question.not_said)
    for condition in ("the UDDS city drive", "a blended pedal", "accessories of 250 W", "no heating or cooling"):
        assert condition in sentence(named)


def test_four_times_the_energy_holds_for_kinetic_energy_and_not_for_what_comes_back():
    kinetic, back = found("four-times-the-energy"), found("four-times-comes-back")
    assert kinetic.verdict == HOLDS and kinetic.quantiles["0.05"] == pytest.approx(4) == kinetic.quantiles["0.95"]
    assert back.verdict == CONDITIONS and back.share < 0.5
    # the sentence names the very conditions under which low speeds happen to lose as much as air and power limit do
    assert {"speed_kmh", "slowing_mps2"} <= set(needs(back)["where"])
    assert all(condition in sentence(back) for condition in conditions(back))
    assert back.quantiles["0.05"] < 3.5 and back.quantiles["0.95"] > 4.5


def test_lifting_the_foot_does_not_stop_the_car_as_fast_as_the_brakes():
    answer = found("stops-as-fast-as-brakes")
    assert answer.verdict == FALSE and answer.values.min() > 1
    # mechanics: 154 m at 1.3 m/s² and 43 m at 9 m/s² from 100 km/h
    dry = found("stops-as-fast-as-brakes", surface="dry", speed_kmh="100")
    assert 2.5 < dry.quantiles["0.5"] < 6


def test_half_the_range_at_minus_7_only_under_the_named_conditions():
    """AAA 2019: 12 % less range with the heater off, 41 % with it; twice the consumption on a cold UDDS (ANL)."""
    answer = found("cold-halves-range")
    assert answer.verdict == CONDITIONS and answer.share < 0.5
    assert needs(answer)["where"]["cabin"] == "yes"
    unheated = found("cold-halves-range", cabin="no")
    assert unheated.verdict == FALSE and unheated.quantiles["0.05"] < 12 < unheated.quantiles["0.95"]


def test_more_than_2_megawatts_needs_what_mechanics_says():
    assert found("two-megawatts").verdict == FALSE
    just = {"mass_kg": "2700", "payload_kg": "0", "motor_top_speed_kmh": "260"}
    assert found("two-megawatts", slowing_mps2="10.2", **just).share == 0
    assert found("two-megawatts", slowing_mps2="10.3", **just).share == 1


@pytest.mark.parametrize("claim_id", now_and_nightly([*claims()][::2], [*claims()][1::2]))
def test_points_verdict_and_conditions_are_those_of_five_seeds(claim_id):
    """5 and 95 % points: in the mean square by less than 2 % of the middle, or of the band where that is wider."""
    asked = question(claim_id)
    here, *others = (check(asked, SEED + more) for more in range(5))
    scale = max(abs(here.quantiles["0.5"]), here.quantiles["0.95"] - here.quantiles["0.05"])
    for point in ("0.05", "0.95"):
        moved = [(other.quantiles[point] - here.quantiles[point]) / scale for other in others]
        assert sum(move**2 for move in moved) / len(moved) < 0.02**2, f"{point}: {moved}"
    assert {other.verdict for other in others} == {here.verdict}
    assert {tuple(conditions(other)) for other in others} == {tuple(conditions(here))}


@pytest.mark.parametrize("name", phrased())
def test_the_verdicts_of_articles_claims_and_their_conditions_are_those_of_five_seeds(name):
    here, *others = (check(question(name), SEED + more) for more in range(5))
    assert {other.verdict for other in others} == {here.verdict}
    assert {tuple(conditions(other)) for other in others} == {tuple(conditions(here))}


@pytest.mark.parametrize("claim_id", ["four-times-comes-back", "one-pedal-saves", "bigger-motor-recovers-more"])
def test_another_search_names_nearly_the_same_conditions(claim_id):
    """The runs of the search are one sample: on others it may name a step at the edge more or fewer, no more."""
    sought, *others = (check(question(claim_id), SEARCH_SEED + more) for more in range(4))
    named = conditions_of(sought.surely, sought.open_bins, 0.75, SEARCH_SEED)
    for other in others:
        assert [one.key for one in other.open_bins] == [one.key for one in sought.open_bins]
        again = conditions_of(other.surely, other.open_bins, 0.75, SEARCH_SEED)
        one, two = (inside_of(conditions, other.open_bins) for conditions in (named, again))
        assert again and (one & two).sum() / (one | two).sum() > 0.6, again


def test_two_fresh_processes_answer_with_the_same_bytes(tmp_path):
    command = [sys.executable, "-m", "model", "claim", "range-lost-without", "--set", "number=21.7"]
    first, second = (
        subprocess.run(
            command, cwd=ROOT, capture_output=True, check=True, env=os.environ | {"PYTHONHASHSEED": seed}
        ).stdout
        for seed in ("1", "2")
    )
    assert first == second
    (tmp_path / "answer.json").write_bytes(first)
    command[4:] = [str(tmp_path / "answer.json")]
    assert subprocess.run(command, cwd=ROOT, capture_output=True, check=True).stdout == first
    answer = json.loads(first)
    keys = {"verdict", "rule", "quantiles", "share_of_range", "needs", "tornado", "sources", "sentence"}
    assert keys <= set(answer)
