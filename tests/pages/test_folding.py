"""What folds on a telephone, without a browser."""

import pytest

from model.describe.scenario_io import starting_drives, to_link
from pages.parts import folding
from pages.parts.claim_asking import LIST_PX
from tests.pages.in_app import opened_at, ran

TOWN = starting_drives()["town"][2]
PAGES = ("your_drive.py", "lift_off.py", "winter_and_limits.py", "check_a_claim.py")


def drawn(app) -> int:
    """How many pictures and tables were sent."""
    return len(app.get("vega_lite_chart")) + len(app.get("table"))


@pytest.mark.parametrize("page", PAGES)
def test_what_is_folded_is_not_sent(monkeypatch, page):
    wide = drawn(opened_at(page, to_link(TOWN)))
    monkeypatch.setattr(folding, "is_narrow", lambda: True)
    assert drawn(opened_at(page, to_link(TOWN))) < wide


def test_what_is_folded_is_not_worked_out(monkeypatch):
    monkeypatch.setattr(folding, "is_narrow", lambda: True)
    monkeypatch.setattr("pages.parts.state.as_driven", lambda: pytest.fail("nobody asked how it would be driven"))
    assert opened_at("lift_off.py", to_link(TOWN)).header


def test_a_claims_evidence_folds_stands_as_lines_and_its_list_is_looked_through_in_place(monkeypatch):
    monkeypatch.setattr(folding, "is_narrow", lambda: True)
    monkeypatch.setattr("pages.parts.claim_asking.is_narrow", lambda: True)
    app = opened_at("check_a_claim.py", {"claim": "cold-halves-range"})
    assert not any("nearly halved" in one.value for one in app.markdown)
    for key in ("fold-measured", "fold-share", "phrases-drawer"):
        app.session_state[key] = True
    ran(app.run())
    # a line each in place of a table, and no formulas
    assert any("**nearly halved**: " in one.value for one in app.markdown)
    assert [list(one.value.columns) for one in app.table] == [["Phrase", "Can be meant"]]
    ran(app.button(key="row-claims").click().run())
    heights = [one.proto.height_config.pixel_height for one in app.get("flex_container")]
    assert LIST_PX in heights
