"""Sources and method: where every figure is from, how an answer is made, and where it holds."""

from __future__ import annotations

import streamlit as st

from model import MODEL_DATE, MODEL_VERSION
from model.checks.certified import KNOWN, SAID, certified_found
from model.checks.check import Check, ranges_set
from model.checks.published import certified_cars, consistency, evidence
from model.describe.figures import Quantity
from model.describe.parameters import class_labels
from model.sampling.uncertainty import HIGH_SHARE, LOW_SHARE, RUNS, SEED
from model.words import checks as spoken
from model.words.bands import band_promise
from pages.parts import certified_words, glossary, source_links, state
from pages.parts.charts import certified as certified_charts
from pages.parts.figure import figure
from pages.parts.folding import is_narrow, section
from pages.parts.source_tables import (
    acceptance_table,
    cars_table,
    changes_table,
    check_table,
    cycles_table,
    figures_table,
    grip_table,
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
"""The headings, by their anchors."""
scenario, display = state.scenario(), state.display()
say = display.say


def write(text: str) -> None:
    """A paragraph as wide as reads well."""
    st.markdown(text, width=760)


def check_part(check: Check) -> None:
    """One check: its source, what it publishes and what was found."""
    title = spoken.title(check, display)
    st.subheader(title, anchor=check.id)
    cited = source_links.cited_with_links(check.sources, display)
    about = spoken.about(check, cited, display)
    commit, day = ranges_set()[check.id]
    write(f"{about} {say('check-range-set', commit=f'`{commit}`', date=day)}")
    show(check_table(check, display), say("table-check", check=title))


def show(table, alt: str) -> None:
    """A table that a reader can search and a screen reader can read."""
    st.table(table, border="horizontal", hide_index=True, alt=alt)


def beside() -> list:
    """Two places beside each other, under one another on a telephone."""
    return st.container(width=800).columns(2, gap="medium")


def percent(value: float) -> Quantity:
    """A number of percent, whole."""
    return Quantity(value, "%", places=0)


if not is_narrow():
    write(" · ".join(f"[{say(title)}](#{anchor})" for anchor, title in SECTIONS.items()))
city, highway = certified_found("road load", "udds"), certified_found("road load", "hwfet")

with section(say(SECTIONS["method"]), "method") as is_open:
    if is_open:
        write(say("method-steps"))
        write(say("method-shares"))
        write(say("method-books"))

with section(say(SECTIONS["figures"]), "figures") as is_open:
    if is_open:
        car = class_labels()[scenario.car_class]
        write(say("figures-of-class", car=car))
        figures = figures_table(scenario.car_class, dict(scenario.stated), display, on_page=True)
        show(figures, say("table-figures", car=car))

with section(say(SECTIONS["uses"]), "uses") as is_open:
    if is_open:
        write(say("uses-read"))
        show(uses_table(display), say("table-uses"))

with section(say(SECTIONS["band"]), "band") as is_open:
    if is_open:
        write(band_promise(display))
        write(
            say(
                "band-checked",
                half_city=Quantity(city.held_pct(SAID[50]), "", places=0),
                half_highway=percent(highway.held_pct(SAID[50])),
                most=percent(float(max(100 * (city.measured / city.modelled - 1)))),
            )
        )
        low, high = percent(100 * LOW_SHARE), percent(100 - 100 * HIGH_SHARE)
        write(say("band-drawn", low=low, high=high, runs=RUNS, seed=str(SEED)))

with section(say(SECTIONS["trust"]), "trust") as is_open:
    if is_open:
        write(certified_words.first_words(city, highway, display))
        for place, found in zip(beside(), (city, highway), strict=True):
            table = certified_words.cars_table(found, display)
            with place:
                figure(
                    certified_charts.measured_against_modelled(found, display, state.dark()),
                    alt=certified_words.cars_alt(found, display), table=certified_words.short_table(table, display),
                    file=table, key=f"certified-{found.cycle}", file_name=f"certified-{found.cycle}.csv",
                    title=certified_words.cars_title(found, display), about="",
                )  # fmt: skip
        write(certified_words.misses_words(city, highway, display=display))
        from_sheet = [certified_found(KNOWN[1], found.cycle) for found in (city, highway)]
        write(certified_words.short_words((city, highway), from_sheet, display))
        for place, known in zip(beside(), KNOWN, strict=True):
            both = certified_found(known, "udds"), certified_found(known, "hwfet")
            name = f"held-{known.replace(' ', '-')}"
            with place:
                figure(
                    certified_charts.reliability(both, display, state.dark()),
                    alt=certified_words.held_alt(both, display), table=certified_words.held_table(both, display),
                    key=name, file_name=f"{name}.csv", title=certified_words.held_title(both, display), about="",
                )  # fmt: skip
        write(say("certified-unknown"))

with section(say(SECTIONS["checks"]), "checks") as is_open:
    if is_open:
        write(say("checks-both"))
        write(say("checks-history"))
        for check in evidence():
            check_part(check)
        st.subheader(say("checks-one-by-one"), anchor="certified-cars")
        write(say("checks-wall"))
        show(cars_table(certified_cars(), display), say("table-cars"))

with section(say(SECTIONS["consistency"]), "consistency") as is_open:
    if is_open:
        write(say("consistency-why"))
        for check in consistency():
            check_part(check)

with section(say(SECTIONS["range"]), "range") as is_open:
    if is_open:
        write(say("range-holds"))
        show(ranges_table(display), say("table-ranges"))

with section(say(SECTIONS["left-out"]), "left-out") as is_open:
    if is_open:
        write(bulleted(left_out(display)))

with section(say(SECTIONS["acceptance"]), "acceptance") as is_open:
    if is_open:
        write(say("acceptance-assumed"))
        show(acceptance_table(display), say("table-acceptance"))

with section(say(SECTIONS["grip"]), "grip") as is_open:
    if is_open:
        show(grip_table(display), say("table-grip"))

with section(say(SECTIONS["cycles"]), "cycles") as is_open:
    if is_open:
        write(say("cycles-from"))
        show(cycles_table(display), say("table-cycles"))

with section(say(SECTIONS["sources"]), "sources") as is_open:
    if is_open:
        write(say("sources-list-read"))
        with st.expander(say("sources-list"), type="compact", key="sources-drawer", on_change="rerun") as drawer:
            if drawer.open:
                show(source_links.sources_table(display), say("table-sources"))
                write(say("sources-list-measured"))
                show(source_links.measurements_table(display), say("table-measurements"))

with section(say(SECTIONS["words"]), "words") as is_open:
    if is_open:
        write("\n\n".join(glossary.entries(display)))

with section(say(SECTIONS["changes"]), "changes") as is_open:
    if is_open:
        write(say("changes-when"))
        show(changes_table(display), say("table-changes"))

with section(say(SECTIONS["cautions"]), "cautions") as is_open:
    if is_open:
        write(" ".join((say("caution"), say("no-substitute"), say("may-be-weaker"))))
        write(say("version-of", version=MODEL_VERSION, date=MODEL_DATE))
