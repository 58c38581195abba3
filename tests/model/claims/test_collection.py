"""A car class and a claim that are added move no other claim."""

import json

import numpy as np
import pytest

from model.claims import verdicts
from model.claims.collection import claims
from model.claims.draws import draw
from model.claims.questions import question
from model.claims.verdicts import check
from model.describe import parameters, tables
from model.describe.parameters import assumed_figures, battery_classes, class_labels, hybrid_classes
from model.describe.tables import ASSETS
from model.words.claims import claim_answers

CACHED = (
    parameters._shared, parameters._classes, class_labels, battery_classes, hybrid_classes, assumed_figures, claims,
    verdicts._values, verdicts._tornado,
)  # fmt: skip
FIGURES = {
    "mass_kg": "1750,1900,2050", "motor_peak_kw": "110,140,170", "motor_top_speed_kmh": "160,170,180",
    "regen_peak_kw": "60,90,120", "usable_kwh": "55,65,75", "wheelbase_m": "2.7,2.8,2.9", "drag_area_m2": "0.6,0.7,0.8",
    "driven_axle": ",rear,", "front_load_share": "0.45,0.5,0.55",
}  # fmt: skip
"""A class between those there are, with figures that some of them do not have of their own."""


def forget():
    for cached in CACHED:
        cached.cache_clear()


@pytest.fixture
def added(monkeypatch, tmp_path):
    """Put a car class and a claim into a copy of the tables, as the developers' page says."""

    def add():
        for name in ("parameters.csv", "car_classes.csv", "claims.json"):
            (tmp_path / name).write_bytes((ASSETS / name).read_bytes())
        with (tmp_path / "car_classes.csv").open("a", encoding="utf-8") as file:
            rows = [f"added-class,Added class,{key},{band},assumed,invented,\n" for key, band in FIGURES.items()]
            file.writelines(rows)
        listed = json.loads((tmp_path / "claims.json").read_text(encoding="utf-8"))
        template = next(claim for claim in listed["claims"] if claim["id"] == "two-megawatts")
        listed["claims"].insert(0, template | {"id": "added-claim", "number": 1})
        (tmp_path / "claims.json").write_text(json.dumps(listed), encoding="utf-8")
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
    assert added_claim.quantiles == before["quantiles"] and added_claim.share > before["share_of_range"]
