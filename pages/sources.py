"""Sources and method: where every figure is from, how an answer is made, and where it holds."""

from __future__ import annotations

import streamlit as st

from model import MODEL_DATE, MODEL_VERSION
from model.checks.certified import KNOWN, SAID, certified_found
from model.checks.check import Check
from model.checks.published import certified_cars, consistency, evidence
from model.describe.parameters import class_labels
from model.sampling.uncertainty import HIGH_SHARE, LOW_SHARE, RUNS, SEED
from pages.parts import certified_words, state, wording
from pages.parts.charts import certified as certified_charts
from pages.parts.figure import figure
from pages.parts.glossary import GLOSSARY
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
from pages.parts.trust import LEFT_OUT

SECTIONS = {
    "method": "How an answer is made",
    "figures": "The figures of the car",
    "uses": "Where the figures are used",
    "band": "How a band is made",
    "trust": "How far to trust it",
    "checks": "The model beside published figures",
    "consistency": "Checks that are no evidence",
    "range": "Where it holds",
    "left-out": "What is left out",
    "acceptance": "What the battery accepts",
    "grip": "Grip of the road",
    "cycles": "Standard cycles",
    "words": "Words",
    "changes": "Change log and corrections",
    "cautions": "Cautions and version",
}


def section(anchor: str) -> None:
    """The heading of a section."""
    st.header(SECTIONS[anchor], anchor=anchor)


def say(text: str) -> None:
    """A paragraph as wide as reads well."""
    st.markdown(text, width=760)


def check_part(check: Check) -> None:
    """One check: its source, what it publishes and what was found."""
    st.subheader(check.title, anchor=check.id)
    say(f"Source: {check.source}. Published: {check.published}. {check.note} {check.no_evidence}")
    show(check_table(check), f"{check.title}: what is published, what was found, and by how much it is off")


def show(table, alt: str) -> None:
    """A table that a reader can search and a screen reader can read."""
    st.table(table, border="horizontal", hide_index=True, alt=alt)


def beside() -> list:
    """Two places beside each other, under one another on a telephone."""
    return st.container(width=800).columns(2, gap="medium")


scenario, display = state.scenario(), state.display()
say(" · ".join(f"[{title}](#{anchor})" for anchor, title in SECTIONS.items()))

section("method")
say(
    "Your description becomes a speed, second by second. For each step the model asks what force the wheels need: to "
    "speed up, to climb, against air and tyres. When the car pulls, the battery gives that and what motor, gear, cells "
    "and cabin take. When it slows, air and tyres do their part first, then the motor as far as the pedal, its own "
    "limits, the grip and the battery let it, and the friction brakes do the rest. Every step notes which limit held "
    "the motor back."
)
say(
    "The same speeds are then driven with friction brakes only. There the idle motor still turns, and while the car "
    "slows the wheels turn it. **Energy saved** is how much less the battery gives with regeneration than without, "
    "over what it gives without. **Recovered share** is what was put back over what was taken out. **Range gain** is "
    "how much further the battery goes. The three are different numbers."
)
say(
    "Every joule is booked: what left the battery, what came back, and each use by its own law. The books balance to "
    "one part in a billion, and a test breaks each entry in turn to see that they then do not."
)

section("figures")
car = class_labels()[scenario.car_class]
say(
    f"**{car}.** Classes are invented middles of what is on sale, copies of no car. *Published* figures have a source, "
    "*common practice* has none but is widely used, *assumed* is a judgement, and says so. Another car class is chosen "
    "in the line at the top of the page."
)
show(
    figures_table(scenario.car_class, dict(scenario.stated), display),
    f"Assumed figures of the class {car}: low, mid, high, kind and source",
)

section("uses")
say("Read from the program itself, so it cannot go out of date.")
show(uses_table(), "Parts of the model and the figures of the car that each uses")

section("band")
city, highway = certified_found("road load", "udds"), certified_found("road load", "hwfet")
say(
    "A band is where nine in ten measured cars would lie. Checked on "
    f"{len(city.ids)} cars of the US certification, the bands of each group of makers made from the other groups "
    f"alone: {city.held_pct(SAID[90]):.0f} % lay inside in the city and {highway.held_pct(SAID[90]):.0f} % on the "
    f"highway; of the range that should hold half of them it held {city.held_pct(SAID[50]):.0f} and "
    f"{highway.held_pct(SAID[50]):.0f} %. The worst missed were large cars of one family of makers, which take up to "
    f"{max(100 * (city.measured / city.modelled - 1)):.0f} % more than modelled. "
    "The saving itself was measured on none of them."
)
say(
    f"The model is run many times, and for each run every assumed figure is drawn anew: within its low and high, most "
    "often near its mid (a triangular distribution, by Latin hypercube: one draw from each of as many equal shares as "
    f"there are runs). The band is what lies between the lowest {LOW_SHARE * 100:.0f} and the highest "
    f"{100 - HIGH_SHARE * 100:.0f} % of the answers. What you stated is fixed. {RUNS} runs are behind "
    f"every band but those of claims, the same cars everywhere; the seed is {SEED}, so that the same question gives "
    "the same answer. The figures are drawn independently of each other. The band covers what we do not know of the "
    "car. It does not cover how you drive on the day, nor what the model leaves out."
)

section("trust")
say(certified_words.first_words(city, highway))
for place, found in zip(beside(), (city, highway), strict=True):
    table = certified_words.cars_table(found, display)
    with place:
        figure(
            certified_charts.measured_against_modelled(found, display, state.dark()),
            alt=certified_words.cars_alt(found), table=certified_words.short_table(table),
            file=table, key=f"certified-{found.cycle}", file_name=f"certified-{found.cycle}.csv",
            title=certified_words.cars_title(found),
        )  # fmt: skip
say(certified_words.misses_words(city, highway))
for place, known in zip(beside(), KNOWN, strict=True):
    both, name = (certified_found(known, "udds"), certified_found(known, "hwfet")), f"held-{known.replace(' ', '-')}"
    with place:
        figure(
            certified_charts.reliability(both, state.dark()),
            alt=certified_words.held_alt(both), table=certified_words.held_table(both),
            key=name, file_name=f"{name}.csv", title=certified_words.held_title(both),
        )  # fmt: skip
say(certified_words.UNKNOWN)

section("checks")
say(
    "Hits and misses alike. No figure is fitted to a single one of them, but the losses were chosen with some in "
    "view. Numbers marked *reported only* have no published number "
    "beside them; they stand here because leaving them out would flatter the model."
)
for check in evidence():
    check_part(check)
st.subheader("The certified cars one by one", anchor="certified-cars")
say("Energy from the wall.")
show(cars_table(certified_cars(), display), "Wall energy of nine certified cars, published and found")

section("consistency")
say(
    "These agree, or nearly so, for a reason other than that the model is right. They guard against mistakes in the "
    "program and are not counted as evidence."
)
for check in consistency():
    check_part(check)

section("range")
say(
    "The model is one of everyday driving, in steps of one second. Entries beyond what is ordinary are accepted and "
    "named beside the answer; entries beyond what is allowed are refused."
)
show(ranges_table(display), "Entries with their ordinary and their allowed range")

section("left-out")
say("\n".join(f"- {item}" for item in LEFT_OUT))

section("acceptance")
say(
    "**No published map of what a car's battery accepts, over charge and temperature, was found.** The tables here "
    "are assumed, after the shape of a small cell's data sheet and drivers' reports: little below freezing, less the "
    "fuller the battery. There are three, low, mid and high, and the band runs over all of them. Below is the middle "
    "one: how many times an hour the battery could be filled at that rate. It is that of a battery which its motor "
    "could empty 2.3 times an hour; one that feeds a stronger motor for its size takes more, by the square root."
)
show(acceptance_table(display), "Charge rate accepted, by battery temperature and charge, middle table")

section("grip")
show(grip_table(), "Friction coefficient of road surfaces: low, mid, high, kind and source")

section("cycles")
say("Speeds, second by second, from the regulations' own tables, driven on a flat road.")
show(cycles_table(display), "Standard cycles with regulation, length, time and stops")

section("words")
say("\n\n".join(f"**{term}.** {meaning}" for term, meaning in GLOSSARY.items()))

section("changes")
say(
    "The version is raised whenever a number may change, and stands on every answer, file and link. A correction is "
    "named as one, with what it moved."
)
show(changes_table(), "Versions of the model with what each changed")

section("cautions")
say(f"{wording.CAUTION} {wording.NO_SUBSTITUTE} {wording.WEAKER}")
say(f"Model version {MODEL_VERSION} of {MODEL_DATE}. Answers of another version may differ.")
