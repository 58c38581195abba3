"""What folds on a telephone, without a browser."""

import pytest

from model.describe.scenario_io import starting_drives, to_link
from pages.parts import folding
from tests.pages.in_app import opened_at

TOWN = starting_drives()["town"][2]
PAGES = ("your_drive.py", "lift_off.py", "winter_and_limits.py", "check_a_claim.py", "sources.py")


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
