"""The page Sources and method, drawn whole."""

from pathlib import Path

import pandas as pd
import pytest
from streamlit.testing.v1 import AppTest

from model import MODEL_VERSION
from model.checks.certified import certified_found, versions_apart
from model.checks.check import ranges_set
from model.checks.published import all_checks
from model.claims.evidence import measurements
from model.describe.scenario_io import starting_drives
from model.describe.sources import sources
from model.sampling.uncertainty import RUNS, SEED
from model.words.bands import band_promise
from model.words.checks import title
from model.words.quantities import Display
from pages.parts import folding, theme
from pages.parts.certified_words import cars_title, misses_words, short_words, versions_words
from pages.parts.glossary import entries
from pages.parts.source_links import linked
from pages.parts.source_tables import has_long_cells, in_rows
from pages.parts.trust import left_out
from pages.parts.typography import together

METRIC = Display()
ANCHORS = (
    "method", "figures", "uses", "band", "trust", "checks", "consistency", "range", "left-out", "acceptance", "grip",
    "cycles", "sources", "words", "changes", "cautions",
)  # fmt: skip
"""By which links lead to its parts: they stay."""


def drawn(*, opened=True, **session):
    """The page with every part open, unless said otherwise."""
    app = AppTest.from_file(Path(theme.__file__).parents[1] / "sources.py", default_timeout=20)
    session = {f"fold-{anchor}": opened for anchor in ANCHORS} | session
    for key, value in session.items():
        app.session_state[key] = value
    return app.run()


def said(app):
    return "\n".join(item.value for kind in (app.markdown, app.header, app.subheader) for item in kind)


def test_it_tells_how_bands_are_made_what_was_checked_and_what_is_left_out():
    app = drawn()
    assert not app.exception
    words = said(app)
    assert "nine in ten measured cars" in words
    for needed in (str(SEED), f"{RUNS} runs", "Latin hypercube", "triangular", MODEL_VERSION):
        assert needed in words
    assert all(entry in words for entry in (*entries(METRIC), *left_out(METRIC)))
    for check in all_checks():
        assert title(check, METRIC) in words and all(linked(sources()[one]) in words for one in check.sources)
        assert f"since commit `{ranges_set()[check.id][0]}`" in words
    assert "No published map of what a car’s battery accepts" in words
    assert len(app.table) == 10 + len(all_checks())


def test_it_shows_how_far_to_trust_it_and_names_the_misses():
    app = drawn()
    words = said(app)
    city, highway = certified_found("road load", "udds"), certified_found("road load", "hwfet")
    titles = [cars_title(found, METRIC) for found in (city, highway)]
    misses = misses_words(city, highway, display=METRIC)
    short = short_words((city, highway), [certified_found("data sheet", cycle) for cycle in ("udds", "hwfet")], METRIC)
    better = versions_words(versions_apart("udds"), versions_apart("hwfet"), METRIC)
    for needed in (*titles, misses, short, better, METRIC.say("certified-unknown")):
        assert together(needed) in words or needed in words
    charts = app.get("vega_lite_chart")
    assert len(charts) == 4 and all(chart.proto.alt for chart in charts)


def test_every_source_and_measurement_is_listed():
    app = drawn(opened=False, **{"fold-sources": True})
    assert not app.exception and len(app.table) == 2
    listed = next(table.value for table in app.table if next(iter(table.value)) == "Source")
    measured = next(table.value for table in app.table if METRIC.say("column-conditions") in table.value)
    assert len(listed) == len(sources()) and len(measured) == len(measurements())
    assert all(f"]({one.address})" in " ".join(listed["Source"]) for one in sources().values() if one.address)


def test_an_overview_comes_first_and_every_part_opens_by_itself_or_all_at_once():
    app = drawn(opened=False)
    assert len(app.expander) == len(ANCHORS) and not app.table and not app.get("vega_lite_chart")
    assert band_promise(METRIC) in app.markdown[0].value
    app.button(key="sources-open").click().run()
    assert len(app.table) == 10 + len(all_checks()) and all(one.proto.expanded for one in app.expander)
    app.button(key="sources-close").click().run()
    assert not app.table


@pytest.mark.parametrize("us", [False, True])
def test_it_is_about_the_sessions_car(us):
    scenario = starting_drives()["mountain-valley"][2].with_setting("mass_kg", 2100.0)
    app = drawn(scenario=scenario, display=Display(us=us))
    assert not app.exception
    figures = app.table[0].value.set_index("Figure")
    assert figures.loc["Mass with driver, lb" if us else "Mass with driver, kg", "Kind and source"] == "Yours: no band."


def test_long_rows_stand_under_one_another_where_columns_have_no_room():
    table = pd.DataFrame([["Mass", "1200 to 1400", "assumed, after what is on sale in Europe"], ["Grip", "", "yours"]],
                         columns=["Figure", "Low to high", "Source"])  # fmt: skip
    assert has_long_cells(table) and not has_long_cells(table.iloc[1:])
    assert in_rows(table) == (
        "**Mass**  \nLow to high: 1200 to 1400  \nSource: assumed, after what is on sale in Europe"
        "\n\n**Grip**  \nSource: yours"
    )


def test_on_a_telephone_no_table_has_long_cells_and_every_check_is_a_fold_of_its_own(monkeypatch):
    monkeypatch.setattr(folding, "is_narrow", lambda: True)
    opened = {f"fold-{anchor}": True for anchor in ("figures", "checks", "consistency", "grip", "changes")}
    app = drawn(opened=False, **opened)
    assert not app.exception
    assert not any(has_long_cells(table.value) for table in app.table)
    folds = {item.label for item in app.expander}
    assert {title(check, METRIC) for check in all_checks()} <= folds
    assert METRIC.say("column-kind-and-source") in said(app)


def test_it_never_promises():
    words = said(drawn()).lower()
    assert " safe" not in words and "!" not in words
