"""How far the answer can be trusted: what the published checks found, and what the model leaves out."""

from __future__ import annotations

from collections.abc import Sequence
from statistics import median

import streamlit as st

from model.checks.check import Check, Outcome
from model.checks.published import CertifiedCar, certified_cars, evidence
from model.describe.figures import Quantity, Several
from model.sampling.drives import effective_cars
from model.words import checks as spoken
from model.words.bands import band_promise
from model.words.quantities import Display, inside
from pages.parts import redrawn, state
from pages.parts.facts import fact_rows
from pages.parts.keeping import ask
from pages.parts.link import own_link
from pages.parts.typography import together

LEFT_OUT = (
    "left-out-traffic",
    "left-out-bends",
    "left-out-software",
    "left-out-ageing",
    "left-out-drag",
    "left-out-cabin",
    "left-out-charging",
    "left-out-chargers",
    "left-out-parked",
)
"""The messages that tell what the model leaves out."""


def left_out(display: Display) -> list[str]:
    """What the model leaves out."""
    return [display.say(name) for name in LEFT_OUT]


def bulleted(items: Sequence[str]) -> str:
    """Items under one another, as Markdown."""
    return "\n".join(f"- {item}" for item in items)


def number(value: float, unit: str = "%") -> Quantity:
    """A found number as it is told."""
    return Quantity(value, unit, places=1)


def _missed(check: Check, found: Outcome, display: Display) -> str:
    """A number outside what is published, named."""
    assert found.off is not None
    off = number(abs(found.off), "points" if found.unit == "%" else found.unit)
    title, what = inside(spoken.title(check, display)), spoken.what(found, display)
    return display.say("trust-missed", title=title, what=what, off=off)


def others_words(checks: Sequence[Check], display: Display) -> str:
    """The other checks in a paragraph: what was compared, which published ranges hold the model and which do not."""
    titles = Several(tuple(inside(spoken.title(check, display)) for check in checks), ";")
    said = [display.say("trust-others", count=len(checks), titles=titles)]
    compared = [(check, found) for check in checks for found in check.found if found.off is not None]
    ranges = [(check, found) for check, found in compared if isinstance(found.published, tuple)]
    missed = [_missed(check, found, display) for check, found in ranges if found.off]
    within = len(ranges) - len(missed)
    if missed:
        said.append(
            display.say(
                "trust-ranges",
                ranges=len(ranges),
                inside=within,
                outside=len(missed),
                missed=Several(tuple(missed), ";"),
            )
        )
    elif ranges:
        said.append(display.say("trust-ranges-met", ranges=len(ranges), inside=within))
    points = [(check, found) for check, found in compared if (check, found) not in ranges and found.unit == "%"]
    if points:
        size = median(abs(found.off or 0.0) for _, found in points)
        worst = max(points, key=lambda pair: abs(pair[1].off or 0.0))
        said.append(
            display.say(
                "trust-percentages",
                count=len(points),
                median=number(size, "points"),
                worst=_missed(*worst, display),
            )
        )
    return " ".join(said)


def largest_misses(cars: Sequence[CertifiedCar], display: Display) -> Several:
    """The two certified cars that the model misses by most in the city."""
    worst = sorted(cars, key=lambda car: -abs(car.city_error_pct))[:2]
    return Several(
        tuple(
            display.say(
                "trust-car-missed",
                car=car.description.split(",")[0],
                id=car.id,
                off=Quantity(abs(car.city_error_pct), "%", places=0),
            )
            for car in worst
        )
    )


def first_words(check: Check, cars: Sequence[CertifiedCar], display: Display) -> str:
    """The errors on the certified cars in one paragraph. `check` is `epa_certification`, made from the same cars."""
    city, highway, city_lean, highway_lean = (found.value for found in check.found)
    return display.say(
        "trust-certified",
        cars=len(cars),
        city=number(city),
        highway=number(highway),
        city_lean=number(abs(city_lean)),
        city_way=too(city_lean),
        highway_lean=number(abs(highway_lean)),
        highway_way=too(highway_lean),
        misses=largest_misses(cars, display),
    )


def too(error: float) -> str:
    """Whether a value is too high or too low."""
    return "high" if error > 0 else "low"


def found_rows(checks: Sequence[Check], cars: Sequence[CertifiedCar], display: Display) -> list[tuple[str, str, str]]:
    """The errors at a glance: what was compared, how far off the middle one is, and with what.

    The first of `checks` is `epa_certification`, made from the `cars`.
    """
    city, highway, *_ = (found.value for found in checks[0].found)
    compared = [found for check in checks[1:] for found in check.found if isinstance(found.published, tuple)]
    inside_them = sum(not found.off for found in compared)
    certified = display.say("trust-row-certified", cars=len(cars))
    return [
        (display.say("trust-row-city"), display.say("trust-row-off", off=number(city)), certified),
        (display.say("trust-row-highway"), display.say("trust-row-off", off=number(highway)), certified),
        (display.say("trust-row-others"), display.say("trust-row-met", inside=inside_them, ranges=len(compared)),
         display.say("trust-row-publications", count=len(checks) - 1)),
    ]  # fmt: skip


def draw_trust() -> None:
    """Draw the drawer: what a band promises, the errors at a glance, and behind a switch all of them in words."""
    display = state.display()
    label = display.say("trust-question")
    with st.expander(label, type="compact", key="trust-drawer", on_change="rerun") as drawer:
        if drawer.open:
            redrawn.part("trust", draw_errors)


def draw_errors() -> None:
    """What stands in the drawer."""
    display, checks, cars = state.display(), evidence(), certified_cars()
    worth = ask(effective_cars, state.scenario(), state.BAND_RUNS).result
    narrowed = [] if worth is None else [display.say("band-narrowed", runs=state.BAND_RUNS, worth=round(worth))]
    st.markdown(" ".join([band_promise(display), *narrowed]), width=760)
    with st.container(key="facts-trust"):
        st.html(fact_rows(found_rows(checks, cars, display)))
    st.page_link("sources.py", label=display.say("trust-every-number"), query_params=own_link())
    if st.toggle(display.say("trust-in-full"), key="trust-in-full"):
        paragraphs = together(first_words(checks[0], cars, display)), together(others_words(checks[1:], display))
        out = f"**{display.say('left-out')}**\n\n{bulleted(left_out(display))}"
        st.markdown("\n\n".join((*paragraphs, out)), width=760)
