"""Claims in one's own words: their file, what is refused, what is tested, and five of them worked by hand."""

import json

import numpy as np
import pytest

from model.claims.questions import question, question_from_json
from model.claims.specification import KEYS, MOST_WORDS, counted, flat, nested, phrased
from model.claims.verdicts import BEYOND, FALSE, HOLDS, check
from model.describe.tables import ASSETS, rows
from model.out.answers import as_text
from model.out.cli import main
from model.words.claim_answers import claim_answers
from model.words.claims import made, quotation, text, verdict_words
from pages.parts import claim_files, claim_words
from tests.refused import refuses

FILES = json.loads((ASSETS / "claims_phrased.json").read_text("utf-8"))["claims"]
TOWING, STABLE = FILES["towing-halves-range"], FILES["unstable-on-snow"]


def asked(**changes):
    return question_from_json(TOWING | changes)


def middle(name):
    return check(question(name)).quantiles["0.5"]


# the file


@pytest.mark.parametrize("name", FILES)
def test_a_file_a_link_and_an_answer_ask_the_same(name):
    given = flat(FILES[name])
    assert flat(nested(given)) == given and set(nested(given)) <= set(KEYS)
    answer = claim_answers(check(question("own", given)))
    assert question_from_json(FILES[name]) == question(name) == question("own", given) == question_from_json(answer)
    assert answer["text"] == FILES[name]["words"] and answer["reading"] == made(question(name))


@pytest.mark.parametrize("name", FILES)
def test_page_and_command_line_give_the_same_bytes(name, capsys, tmp_path):
    (tmp_path / "claim.json").write_text(json.dumps(FILES[name]), encoding="utf-8")
    assert main(["claim", str(tmp_path / "claim.json")]) == 0
    told = capsys.readouterr().out
    answer = check(question("own", flat(FILES[name])))
    assert told == claim_files.answer_text(answer) == as_text(claim_answers(answer))
    (tmp_path / "answer.json").write_text(told, encoding="utf-8")
    assert main(["claim", str(tmp_path / "answer.json")]) == 0
    assert capsys.readouterr().out == told


@pytest.mark.parametrize(
    "changes, sentence",
    [
        ({"speed": 50}, "^“speed” is not a key of a claim; these are: quantity, relation, number"),
        ({"quantity": "stops"}, "quantity: “stops” is not one of recovered, of_braking"),
        ({"relation": "over"}, "relation .*: “over” cannot be used"),
        ({"relation": "between"}, "“between” needs two numbers"),
        ({"number": [40, 60]}, "two numbers go with “between”"),
        ({"number": [60, 40], "relation": "between"}, "neither a number nor a range"),
        ({"number": "half"}, "neither a number nor a range"),
        ({"number": {}}, "number: the value must be"),
        ({"unit": "%"}, "“%” is not a unit of this difference between two cases; % more, % less, % of it, times or km"),
        ({"against": {}}, "“% less” is not the unit of this quantity; km can be used"),
        ({"against": {"trailer_kg": 0, "cabin": False}}, "cabin of this case must stand in the conditions"),
        ({"against": ["trailer_kg"]}, "against: it must be an object"),
        ({"conditions": {"trailer": 1500}}, "“trailer” is not a known setting; the nearest is trailer_kg"),
        ({"conditions": {"trailer_kg": 9000}}, "9000 kg cannot be used"),
        ({"conditions": {"words": "x"}}, "“words” is not a known setting"),
        ({"conditions": {"trailer_kg": 900, "road": "sea"}}, "road: “sea” is not one of town, country, motorway"),
        ({"conditions": {"trailer_kg": 900, "season": "winter", "ambient_c": 5}}, "season: it stands for ambient_c"),
        ({"conditions": {"trailer_kg": 900, "hybrid": "full-hybrid"}}, "“none” must stand for it in against"),
        ({"words": "x" * (MOST_WORDS + 1)}, "401 characters are too many"),
        (STABLE | {"against": {"surface": "dry"}}, "what the model cannot test it cannot compare"),
    ],
)
def test_what_cannot_be_used_is_refused_in_one_sentence(changes, sentence):
    with refuses(sentence):
        asked(**changes)


@pytest.mark.parametrize("part", ["quantity", "relation", "number", "unit"])
def test_nothing_that_matters_is_guessed(part):
    with refuses(f"^{part}: .* must be said"):
        question_from_json({key: value for key, value in TOWING.items() if key != part})


# what is tested


def test_ones_own_words_stand_in_title_quote_picture_and_file_beside_how_they_were_read():
    answer = check(question("one-pedal-in-town"))
    words, reading = answer.question.claim.text, made(answer.question)
    assert claim_words.claim_text(answer.question).replace("\N{NO-BREAK SPACE}", " ") == f"“{words}”"
    assert claim_words.claim_text(answer.question) in claim_files.under_print(answer)
    quoted = f"By this model the claim “{words[:-1]}”, read as “{reading[:-1]}”, {verdict_words(answer)}. "
    assert quotation(answer).startswith(quoted)
    assert "In town, with a lift-off of 1.5 m/s² and a car that comes to rest by itself, the drop in" in reading
    unsaid = question_from_json({key: value for key, value in FILES["one-pedal-in-town"].items() if key != "words"})
    assert text(unsaid) == reading


def test_words_are_one_line_of_plain_text():
    assert asked(words=" Towing\nhalves \x07 <b>it</b>\t").claim.text == "Towing halves <b>it</b>"


def test_a_difference_is_that_of_the_same_car_on_the_same_day():
    """Without anything that sets the cases apart there is none; and each unit says the same difference."""
    same = asked(conditions={"trailer_kg": 0}, number=0, relation="at_least")
    assert np.abs(check(same).values).max() == 0
    less, of, times, km = (
        check(asked(unit=unit, relation="at_least")).values for unit in ("% less", "% of it", "times", "km")
    )
    np.testing.assert_allclose(100 - less, of)
    np.testing.assert_allclose(100 * times, of)
    assert (km < 0).all() and len(km) == len(of)


def test_a_trailer_and_the_car_without_are_told_as_english():
    assert made(asked()).startswith("With a trailer of 1,500 kg and the ")
    assert "from the same case with no trailer is about 50 %" in made(asked())


@pytest.mark.parametrize("name", ["unstable-on-snow", "pads-last-150000-km"])
def test_what_cannot_be_tested_says_why_and_what_can_be_said(name):
    answer = check(question(name))
    assert answer.verdict == BEYOND
    told = quotation(answer)
    assert told.startswith("An energy model cannot judge") and "depend" in told
    assert "is what the model can give: " in told


@pytest.mark.parametrize("name", counted())
def test_everything_that_may_be_counted_is_computed_and_has_its_noun(name):
    count = counted()[name]
    answer = check(question("own", {"quantity": name, "relation": "at_least", "number": "1", "unit": count.unit}))
    assert np.isfinite(answer.values).all() and np.ptp(answer.values) > 0
    said = made(answer.question)
    if answer.verdict == BEYOND:
        assert said.endswith("."), "nobody's number is told"
        assert not any(letter.isdigit() for letter in said)
    else:
        assert said.endswith(f"is at least 1 {count.unit}.")


def test_the_same_claim_of_the_list_and_in_own_words_counts_the_same():
    listed = check(question("cold-halves-range", {"soc_start": "0.6"}))
    own = {"quantity": "cold", "relation": "at_least", "number": "50", "unit": "%"}
    assert check(question("own", own | {"ambient_c": "-7", "soc_start": "0.6"})).share == listed.share


# five of the twelve, worked by hand


def test_by_hand_less_than_half_of_a_climb_comes_back():
    """1.6 t, 300 m up at 6 % and 60 km/h; rolling 1 %, drag area 0.65 m², 87 % out of and 85 % into the battery."""
    road_m, lift_j = 300 / 0.06, 1600 * 9.81 * 300
    held_back_j = (0.010 * 1600 * 9.81 + 0.5 * 1.2 * 0.65 * (60 / 3.6) ** 2) * road_m
    share = 100 * (lift_j - held_back_j) * 0.85 / ((lift_j + held_back_j) / 0.87)
    assert 35 < share < 50
    found = check(question("half-back-downhill"))
    assert found.quantiles["0.5"] == pytest.approx(share, abs=6) and found.verdict not in (HOLDS, FALSE)


def test_by_hand_something_is_recovered_below_10_kmh():
    """The motor fades out from 15 to 5 km/h; of the energy at 10 km/h it has the part of v·(v − 5)/10, at 75 %."""
    speeds = np.arange(0.05, 10, 0.1)
    kept = np.clip((speeds - 5) / 10, 0, 1)
    share = 100 * (speeds * kept).sum() / speeds.sum() * 0.75
    assert share > 10
    found = check(question("nothing-below-10"))
    assert found.quantiles["0.5"] == pytest.approx(share, abs=5) and found.verdict != HOLDS


def test_by_hand_the_motorway_run_gives_less_than_10_percent():
    """1.9 t over 84 km at 22 kWh/100 km; road load takes 0.42, 0.25 and 0.1 of a slow-down at 120, 85 and 50 km/h."""
    slowed = ((12, 120, 85, 0.42), (2, 85, 50, 0.25), (11, 50, 0, 0.1), (7, 50, 25, 0.1))
    braked_j = sum(
        times * 1900 / 2 * ((high / 3.6) ** 2 - (low / 3.6) ** 2) * (1 - road) for times, high, low, road in slowed
    )
    share = 100 * braked_j * 0.85 / (84 * 0.22 * 3.6e6)
    assert share < 10
    given = {key: value for key, value in phrased()["ten-to-fifteen-on-the-motorway"].items() if key != "road"}
    run, roads = (check(question("own", given | more)) for more in ({"cycle": "motorway"}, {"road": "motorway"}))
    assert run.quantiles["0.5"] == pytest.approx(share, abs=2)
    assert roads.quantiles["0.5"] < 10 and HOLDS not in (run.verdict, roads.verdict)


def test_by_hand_a_full_battery_takes_what_slowing_gives_after_some_10_km():
    """15 kWh/100 km from 50 kWh take 1 % in 3.3 km; ordinary slow-downs give 15 kW."""
    charge = ("0.8", "0.9", "0.95", "1")
    table = {row["battery_c"]: row for row in rows("charge_acceptance.csv") if row["level"] == "mid"}
    takes_kw = [50 * (float(table["10"][at]) + float(table["25"][at])) / 2 for at in charge]
    charges = np.linspace(1, 0.8, 201)
    enough = charges[np.argmax(np.interp(charges, [float(at) for at in charge], takes_kw) >= 15)]
    km = (1 - enough) * 50 / 0.15
    assert 5 < km < 30
    found = check(question("none-for-20-km"))
    assert found.quantiles["0.05"] < km < found.quantiles["0.95"] and found.verdict not in (HOLDS, FALSE)


def test_by_hand_a_strong_lift_off_asks_more_than_snow_gives_and_a_gentle_one_does_not():
    """2 m/s² over g on an axle with 55 % of the weight, against snow's friction coefficient; and 0.3 m/s²."""
    snow = next(row for row in rows("grip.csv") if row["surface"] == "snow")
    strong, gentle = (strength / 9.81 / 0.55 / float(snow["grip_mid"]) for strength in (2.0, 0.3))
    assert strong > 1 > gentle
    for strength, share in ((2.0, strong), (0.3, gentle)):
        found = middle_of(strength)
        assert (found > 100) == (share > 1) and found == pytest.approx(100 * share, rel=0.35)


def middle_of(strength):
    given = phrased()["unstable-on-snow"] | {"lift_off_mps2": str(strength)}
    return check(question("own", given)).quantiles["0.5"]
