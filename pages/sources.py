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


def section(anchor: str) -> None:
    """The heading of a section."""
    st.header(say(SECTIONS[anchor]), anchor=anchor)


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


write(" · ".join(f"[{say(title)}](#{anchor})" for anchor, title in SECTIONS.items()))

section("method")
write(say("method-steps"))
write(say("method-shares"))
write(say("method-books"))

section("figures")
car = class_labels()[scenario.car_class]
write(say("figures-of-class", car=car))
show(figures_table(scenario.car_class, dict(scenario.stated), display, on_page=True), say("table-figures", car=car))

section("uses")
write(say("uses-read"))
show(uses_table(display), say("table-uses"))

section("band")
city, highway = certified_found("road load", "udds"), certified_found("road load", "hwfet")
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

section("trust")
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
for place, known in zip(beside(), KNOWN, strict=True):
    both, name = (certified_found(known, "udds"), certified_found(known, "hwfet")), f"held-{known.replace(' ', '-')}"
    with place:
        figure(
            certified_charts.reliability(both, display, state.dark()),
            alt=certified_words.held_alt(both, display), table=certified_words.held_table(both, display),
            key=name, file_name=f"{name}.csv", title=certified_words.held_title(both, display), about="",
        )  # fmt: skip
write(say("certified-unknown"))

section("checks")
write(say("checks-both"))
write(say("checks-history"))
for check in evidence():
    check_part(check)
st.subheader(say("checks-one-by-one"), anchor="certified-cars")
write(say("checks-wall"))
show(cars_table(certified_cars(), display), say("table-cars"))

section("consistency")
write(say("consistency-why"))
for check in consistency():
    check_part(check)

section("range")
write(say("range-holds"))
show(ranges_table(display), say("table-ranges"))

section("left-out")
write(bulleted(left_out(display)))

section("acceptance")
write(say("acceptance-assumed"))
show(acceptance_table(display), say("table-acceptance"))

section("grip")
show(grip_table(display), say("table-grip"))

section("cycles")
write(say("cycles-from"))
show(cycles_table(display), say("table-cycles"))

section("sources")
write(say("sources-list-read"))
with st.expander(say("sources-list"), type="compact", key="sources-drawer", on_change="rerun") as drawer:
    if drawer.open:
        show(source_links.sources_table(display), say("table-sources"))
        write(say("sources-list-measured"))
        show(source_links.measurements_table(display), say("table-measurements"))

section("words")
write("\n\n".join(glossary.entries(display)))

section("changes")
write(say("changes-when"))
show(changes_table(display), say("table-changes"))

section("cautions")
write(" ".join((say("caution"), say("no-substitute"), say("may-be-weaker"))))
write(say("version-of", version=MODEL_VERSION, date=MODEL_DATE))
