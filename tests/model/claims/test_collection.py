"""A car class and a claim that are added move no other claim."""

import json
import shutil

import numpy as np
import pytest

from model.claims import verdicts
from model.claims.collection import claims
from model.claims.draws import draw
from model.claims.questions import question
from model.claims.verdicts import check
from model.describe import messages, parameters, tables
from model.describe.parameters import assumed_figures, battery_classes, class_labels, hybrid_classes
from model.describe.tables import ASSETS, TableError
from model.words import quantities
from model.words.claim_answers import claim_answers
from model.words.claims import words_of

CACHED = (
    parameters._shared, parameters._classes, class_labels, battery_classes, hybrid_classes, assumed_figures, claims,
    verdicts._values, verdicts._tornado, messages.files, messages.messages, messages.bundle, quantities._said,
)  # fmt: skip
FIGURES = {
    "mass_kg": "1750,1900,2050", "motor_peak_kw": "110,140,170", "motor_top_speed_kmh": "160,170,180",
    "regen_peak_kw": "60,90,120", "usable_kwh": "55,65,75", "wheelbase_m": "2.7,2.8,2.9", "drag_area_m2": "0.6,0.7,0.8",
    "driven_axle": ",rear,", "front_load_share": "0.45,0.5,0.55",
}  # fmt: skip
"""A class between those there are, with figures that some of them do not have of their own."""


WORDS = """
listed-added-claim = A full stop brakes with more than 1 MW.
    .what = the braking power at the first moment
    .left-out = Air.
"""


def forget():
    for cached in CACHED:
        cached.cache_clear()


@pytest.fixture
def added(monkeypatch, tmp_path):
    """Put a car class and a claim into a copy of the tables, as the developers' page says."""

    def add(said=WORDS, /, **changes):
        for name in ("parameters.csv", "car_classes.csv", "claims.json"):
            (tmp_path / name).write_bytes((ASSETS / name).read_bytes())
        with (tmp_path / "car_classes.csv").open("a", encoding="utf-8") as file:
            rows = [f"added-class,Added class,{key},{band},assumed,invented,\n" for key, band in FIGURES.items()]
            file.writelines(rows)
        listed = json.loads((tmp_path / "claims.json").read_text(encoding="utf-8"))
        template = next(claim for claim in listed["claims"] if claim["id"] == "two-megawatts")
        listed["claims"].insert(0, template | {"id": "added-claim", "number": 1} | changes)
        (tmp_path / "claims.json").write_text(json.dumps(listed), encoding="utf-8")
        (tmp_path / "claim_quantities.json").write_bytes((ASSETS / "claim_quantities.json").read_bytes())
        shutil.copytree(ASSETS / "words", tmp_path / "words")
        with (tmp_path / "words" / "en" / "claim_list.ftl").open("a", encoding="utf-8") as file:
            file.write(said)
        monkeypatch.setattr(messages, "FOLDER", tmp_path / "words")
        monkeypatch.setattr(tables, "ASSETS", tmp_path)
        monkeypatch.setattr("model.claims.collection.ASSETS", tmp_path)
        forget()

    yield add
    forget()


def draws_of(claim_id):
    asked = question(claim_id)
    return asked, draw(asked.declared, asked.claim.runs, 1)


def test_a_class_and_a_claim_that_are_added_move_no_draw_of_any_claim(added):
    before = {claim_id: draws_of(claim_id) for claim_id in claims()}
    added()
    assert "added-class" in battery_classes() and list(claims()) == ["added-claim", *before]
    for claim_id, (asked, draws) in before.items():
        again, now = draws_of(claim_id)
        assert again.declared == asked.declared, claim_id
        assert set(now.columns) == set(draws.columns), claim_id
        for key, column in draws.columns.items():
            np.testing.assert_array_equal(now[key], column, err_msg=f"{claim_id}: {key}")


def test_an_added_claim_is_answered_and_its_neighbour_as_before(added):
    before = claim_answers(check(question("two-megawatts"), seed=3))
    added()
    assert claim_answers(check(question("two-megawatts"), seed=3)) == before
    added_claim = check(question("added-claim"), seed=3)
    assert words_of(added_claim.question.claim) == "A full stop brakes with more than 1 MW."
    assert added_claim.quantiles == before["quantiles"] and added_claim.share > before["share_of_range"]


@pytest.mark.parametrize(
    ("words", "changes", "told"),
    [
        ("", {}, "its words are missing, the message listed-added-claim in assets/words/en/claim_list.ftl."),
        (WORDS.replace("    .left-out = Air.\n", ""), {}, "the message listed-added-claim in .* has no .left-out."),
        (WORDS.replace("    .what = the braking power at the first moment\n", ""), {}, "has no .what."),
        (WORDS, {"beyond": True}, "has no .beyond."),
        (WORDS, {"words": {"payload_kg": "sea"}}, "word 'sea' is unknown; "),
        (WORDS, {"names": ["cycle"]}, "names has 'cycle', which is neither in scope nor open."),
        (WORDS, {"left_out": "Air."}, "key 'left_out' is unknown; "),
    ],
)
def test_a_claim_without_its_words_is_named_in_one_sentence(added, words, changes, told):
    added(words, **changes)
    with pytest.raises(TableError, match=rf"^assets/claims.json, claim 1 \(added-claim\): .*{told}"):
        claims()
