"""Every figure of every page is to be had as SVG and PNG that say what they are about and where they are from."""

import ast
import sys
from functools import partial
from pathlib import Path

import pytest
import streamlit as st

from model.claims.specification import phrased
from model.describe.scenario_io import starting_drives, to_link
from model.words.print import source_line
from model.words.quantities import Display
from pages.parts.charts import export
from pages.parts.figure import print_svg
from pages.parts.folding import fold_key
from pages.parts.public_link import PUBLIC_URL
from tests.pages.in_app import CLAIM_PARTS, opened_at, plain, ran
from tests.pages.test_every_page import ALSO, PAGES

PAGE_FILES = Path(__file__).parents[2] / "pages"
ADDRESS = "https://drive.net"
TOWN = to_link(starting_drives()["town"][2])
ON_PAGE = {
    "your_drive.py": {"now_fuel": "petrol", "now_l_per_100km": "6.5"},
    "check_a_claim.py": {"claim": "seventy-of-braking"}, "lift_off.py": {"speed": "50"},
}  # fmt: skip
"""What a page is asked beside the drive."""
DRAWERS = {"your_drive.py": ("beside-drawer",), "check_a_claim.py": ("phrases-drawer", "files-drawer",
                               *map(fold_key, CLAIM_PARTS)),
           "sources.py": ("fold-trust",)}  # fmt: skip
ELSEWHERE = {"drive-strip": "take-strip", "claim-runs": "file"}
"""Figures that are files under another name."""
OF_NO_CAR = ("certified-", "held-")
"""Figures of many measured cars, whose title says all that they are about."""


def calls() -> set[tuple[str, int]]:
    """Where the pages ask for a figure: file and line."""
    return {
        (str(path), node.lineno)
        for path in PAGE_FILES.rglob("*.py") if "pages.parts.figure import" in path.read_text(encoding="utf-8")
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id in ("figure", "draw_chart")
    }  # fmt: skip


class Walk:
    """What was drawn and offered on a walk through all pages, everything for print switched on."""

    def __init__(self, patch):
        self.drawn, self.files, self.asked = set(), {}, set()
        charted, offered, switched = st.vega_lite_chart, st.download_button, st.toggle

        def chart(*args, key, **how):
            self.drawn.add(key.removesuffix("-chart"))
            frame = sys._getframe(1)
            while frame:
                self.asked.add((frame.f_code.co_filename, frame.f_lineno))
                frame = frame.f_back
            return charted(*args, key=key, **how)

        def button(label, data, *args, key, **how):
            self.files[key] = data
            return offered(label, data, *args, key=key, **how)

        patch.setattr(st, "vega_lite_chart", chart)
        patch.setattr(st, "download_button", button)
        patch.setattr(st, "toggle", lambda *args, key, **how: switched(*args, key=key, **how) or "for-print" in key)

    @property
    def pictures(self):
        """What makes each picture for print, by its figure."""
        return {
            key.removesuffix("-svg"): file.args[0] for key, file in self.files.items()
            if isinstance(file, partial) and file.func is print_svg
        }  # fmt: skip

    def through(self, page):
        """Look at one page, with all that it shows one at a time."""
        app = opened_at(page, TOWN | ON_PAGE.get(page, {}))
        key, values = ALSO.get(page, ("", ()))
        for value in values:
            app.query_params[key] = value
            ran(app.run())
        if page == "own_road.py":
            ran(app.button(key="recording-sample").click().run())
        for drawer in DRAWERS.get(page, ()):
            app.session_state[drawer] = True
        ran(app.run())


@pytest.fixture(scope="module")
def walk():
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv(PUBLIC_URL, ADDRESS)
        seen = Walk(patch)
        for page in PAGES:
            seen.through(page)
        yield seen


def test_the_walk_comes_by_every_figure_that_the_pages_ask_for(walk):
    assert calls() - walk.asked == set()


def test_every_figure_is_an_svg_and_a_png(walk):
    assert {"claim-shares", "compare", "whole-axis", "own-road"} <= walk.drawn
    offered = {ELSEWHERE.get(key, key) for key in walk.drawn}
    assert {key for key in offered if not {f"{key}-svg", f"{key}-png"} <= walk.files.keys()} == set()


def test_every_picture_says_what_it_is_about_and_where_it_is_from(walk, monkeypatch):
    monkeypatch.setenv(PUBLIC_URL, ADDRESS)
    line = source_line(Display(), ADDRESS)
    for key, picture in walk.pictures.items():
        below = " ".join(picture()["title"]["subtitle"])
        assert picture()["title"]["text"] and below.endswith(line), key
        assert bool(below.removesuffix(line)) != key.startswith(OF_NO_CAR), key
        assert ADDRESS in export.svg(picture(), export.PRINT_PX), key
    assert ADDRESS in walk.files["file-svg"]()


def test_a_picture_is_about_what_it_shows_and_not_about_the_described_drive_instead(walk):
    about = {key: plain(" ".join(picture()["title"]["subtitle"])) for key, picture in walk.pictures.items()}
    assert "flat town commute" in about["before-after"]
    for key in ("claim-needs", "claim-tornado", "claim-shares"):
        assert phrased()[ON_PAGE["check_a_claim.py"]["claim"]]["words"].rstrip(".") in about[key], key
    for key in ("own-road", "residual-speed"):
        assert "on the recording" in about[key] and "commute" not in about[key], key
