"""Sources and method: where every figure is from, how an answer is made, and where it holds."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import replace
from functools import partial

import pandas as pd
import streamlit as st

from model import MODEL_DATE, MODEL_VERSION
from model.checks.certified import KNOWN, SAID, certified_found, versions_apart
from model.checks.check import Check, ranges_set
from model.checks.published import certified_cars, consistency, evidence
from model.describe.figures import Quantity
from model.describe.parameters import class_labels
from model.sampling.uncertainty import HIGH_SHARE, LOW_SHARE, RUNS, SEED
from model.words import checks as spoken
from model.words.bands import band_promise
from pages.parts import certified_words, glossary, source_links, state
from pages.parts.charts import certified as certified_charts
from pages.parts.figure import Picture, figure
from pages.parts.folding import fold_key, folded, is_narrow
from pages.parts.source_tables import (
    acceptance_table,
    cars_table,
    changes_table,
    check_table,
    cycles_table,
    figures_table,
    grip_table,
    has_long_cells,
    in_rows,
    ranges_table,
    uses_table,
)
from pages.parts.trust import bulleted, left_out

SECTIONS = {
    "method": "sources-method",
    "figures": "sources-figures",
    "uses": "sources-uses",
    "band": "sources-band",
    "trust": "sources-trust",
    "checks": "sources-checks",
    "consistency": "sources-consistency",
    "range": "sources-range",
    "left-out": "sources-left-out",
    "acceptance": "sources-acceptance",
    "grip": "sources-grip",
    "cycles": "sources-cycles",
    "sources": "sources-list",
    "words": "sources-words",
    "changes": "sources-changes",
    "cautions": "sources-cautions",
}
"""The parts, by their anchors."""
GROUPS = {"method": "made", "trust": "trust", "acceptance": "tables"}
"""The parts over which a heading stands, which is for those up to the next."""
scenario, display = state.scenario(), state.display()
say = display.say


def write(text: str) -> None:
    """A paragraph as wide as reads well."""
    st.markdown(text, width=760)


def write_all(*paragraphs: str) -> None:
    """Several paragraphs or a long list, which the style sets in two columns where there is room."""
    st.markdown("\n\n".join(paragraphs))


def draw_checks(checks: Sequence[Check], key: str) -> None:
    """Each check's source and what it publishes, beside what was found; on a telephone each is a fold of its own."""
    with st.container(key=f"beside-{key}"):
        for check in checks:
            title = spoken.title(check, display)
            if not is_narrow():
                st.subheader(title, anchor=check.id)
            with folded(title, check.id, when=is_narrow()) as is_open:
                if is_open:
                    draw_check(check, title)


def draw_check(check: Check, title: str) -> None:
    """One check: its source, what it publishes and what was found."""
    cited = source_links.cited_with_links(check.sources, display)
    about = spoken.about(check, cited, display)
    commit, day = ranges_set()[check.id]
    write(f"{about} {say('check-range-set', commit=f'`{commit}`', date=day)}")
    show(check_table(check, display), say("table-check", check=title))


def show(table: pd.DataFrame, alt: str) -> None:
    """A table that a reader can search and a screen reader can read; on a telephone its rows, where they are long."""
    if is_narrow() and has_long_cells(table):
        st.markdown(in_rows(table))
    else:
        st.table(table, border="horizontal", hide_index=True, alt=alt)


def percent(value: float) -> Quantity:
    """A number of percent, whole."""
    return Quantity(value, "%", places=0)


def open_all(*, opened: bool) -> None:
    """Open every part, or close them."""
    for anchor in SECTIONS:
        st.session_state[fold_key(anchor)] = opened


@contextmanager
def part(anchor: str) -> Iterator[bool]:
    """One part, under the heading of its group where it is the first; whether it is to be drawn."""
    if anchor in GROUPS:
        st.header(say("sources-group", of=GROUPS[anchor]), anchor=False)
    with folded(say(SECTIONS[anchor]), anchor, when=True) as is_open:
        yield is_open


with st.container(key="overview"):
    write(f"{say('sources-overview', checks=len(evidence()))} {band_promise(display)}")
    with st.container(horizontal=True, vertical_alignment="center"):
        st.button(say("sources-open"), key="sources-open", on_click=open_all, kwargs={"opened": True})
        st.button(say("sources-close"), key="sources-close", on_click=open_all, kwargs={"opened": False})
        st.caption(say("sources-search"), width="content")
city, highway = certified_found("road load", "udds"), certified_found("road load", "hwfet")

with part("method") as is_open:
    if is_open:
        write_all(say("method-steps"), say("method-shares"), say("method-books"))

with part("figures") as is_open:
    if is_open:
        car = class_labels()[scenario.car_class]
        write(say("figures-of-class", car=car))
        figures = figures_table(scenario.car_class, dict(scenario.stated), display, on_page=True)
        show(figures, say("table-figures", car=car))

with part("uses") as is_open:
    if is_open:
        write(say("uses-read"))
        show(uses_table(display), say("table-uses"))

with part("band") as is_open:
    if is_open:
        checked = say(
            "band-checked",
            half_city=Quantity(city.held_pct(SAID[50]), "", places=0),
            half_highway=percent(highway.held_pct(SAID[50])),
            most=percent(float(max(100 * (city.measured / city.modelled - 1)))),
        )
        low, high = percent(100 * LOW_SHARE), percent(100 - 100 * HIGH_SHARE)
        write_all(band_promise(display), checked, say("band-drawn", low=low, high=high, runs=RUNS, seed=str(SEED)))

with part("trust") as is_open:
    if is_open:
        write(certified_words.first_words(city, highway, display))
        for place, found in zip(st.columns(2, gap="large"), (city, highway), strict=True):
            table = certified_words.cars_table(found, display)
            with place:
                cars = Picture(
                    certified_charts.measured_against_modelled(found, display, state.dark()),
                    certified_words.cars_alt(found, display), certified_words.short_table(table, display),
                    certified_words.cars_title(found, display), file=table, about="",
                )  # fmt: skip
                figure(partial(replace, cars), f"certified-{found.cycle}", f"certified-{found.cycle}.csv")
        from_sheet = [certified_found(KNOWN[1], found.cycle) for found in (city, highway)]
        write_all(
            certified_words.misses_words(city, highway, display=display),
            certified_words.short_words((city, highway), from_sheet, display),
            certified_words.versions_words(versions_apart("udds"), versions_apart("hwfet"), display),
        )
        for place, known in zip(st.columns(2, gap="large"), KNOWN, strict=True):
            both = certified_found(known, "udds"), certified_found(known, "hwfet")
            name = f"held-{known.replace(' ', '-')}"
            with place:
                held = Picture(
                    certified_charts.reliability(both, display, state.dark()),
                    certified_words.held_alt(both, display), certified_words.held_table(both, display),
                    certified_words.held_title(both, display), about="",
                )  # fmt: skip
                figure(partial(replace, held), name, f"{name}.csv")
        write(say("certified-unknown"))

with part("checks") as is_open:
    if is_open:
        write_all(say("checks-both"), say("checks-history"))
        draw_checks(evidence(), "checks")
        st.subheader(say("checks-one-by-one"), anchor="certified-cars")
        write(say("checks-wall"))
        show(cars_table(certified_cars(), display), say("table-cars"))

with part("consistency") as is_open:
    if is_open:
        write(say("consistency-why"))
        draw_checks(consistency(), "consistency")

with part("range") as is_open:
    if is_open:
        write(say("range-holds"))
        show(ranges_table(display), say("table-ranges"))

with part("left-out") as is_open:
    if is_open:
        write_all(bulleted(left_out(display)))

with part("acceptance") as is_open:
    if is_open:
        write(say("acceptance-assumed"))
        show(acceptance_table(display), say("table-acceptance"))

with part("grip") as is_open:
    if is_open:
        show(grip_table(display), say("table-grip"))

with part("cycles") as is_open:
    if is_open:
        write(say("cycles-from"))
        show(cycles_table(display), say("table-cycles"))

with part("sources") as is_open:
    if is_open:
        write(say("sources-list-read"))
        show(source_links.sources_table(display), say("table-sources"))
        write(say("sources-list-measured"))
        show(source_links.measurements_table(display), say("table-measurements"))

with part("words") as is_open:
    if is_open:
        write_all(*glossary.entries(display))

with part("changes") as is_open:
    if is_open:
        write(say("changes-when"))
        show(changes_table(display), say("table-changes"))

with part("cautions") as is_open:
    if is_open:
        write(" ".join((say("caution"), say("no-substitute"), say("may-be-weaker"))))
        write(say("version-of", version=MODEL_VERSION, date=MODEL_DATE))
