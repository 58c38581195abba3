"""The one truth of a session, and the model's answers to it.

A session keeps one frozen `Scenario` and one `Display`. Widgets are set from them before they are drawn and write them
when they change, so nothing else has to be kept in step.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

import streamlit as st

from model.drives import Answer, YearOfDrives, answer_of, drive, samples_of, trace_of, year_of
from model.fields import InputError
from model.savings import Result
from model.scenario import Scenario
from model.scenario_io import starting_drives
from pages.parts.display import Display
from pages.parts.wording import plain

BAND_RUNS, SEASON_RUNS = 120, 40
"""Sampled cars behind the headline, and behind each season of the year. Another draw of as many moves the ends of the
band by about 1 % (headline) and 1.5 % (year) of its middle; more would make the page wait."""


@dataclass(frozen=True)
class Outcome:
    """What the model says to a scenario: a result, or the sentence with which it was refused."""

    result: Result | None
    refusal: str = ""


def scenario() -> Scenario:
    """The scenario of this session; the first starting drive until something is described."""
    if "scenario" not in st.session_state:
        st.session_state["scenario"] = first_scenario()
    return st.session_state["scenario"]


def first_scenario() -> Scenario:
    """What a visitor without a link sees."""
    return next(iter(starting_drives().values()))[2]


def put(changed: Scenario) -> None:
    """Make `changed` the scenario of this session."""
    st.session_state["scenario"] = changed


def put_whole(changed: Scenario) -> None:
    """Like `put`, where more than one entry changes: entries that were refused are dropped with the old ones."""
    put(changed)
    refusals().clear()


def refusals() -> dict[str, tuple[object, str]]:
    """What was typed and could not be used, with the sentence that says so, by widget key."""
    return st.session_state.setdefault("refusals", {})


def display() -> Display:
    """The unit system of this session."""
    return st.session_state.setdefault("display", Display())


def dark() -> bool:
    """Whether the page is shown on a dark ground."""
    return st.context.theme.type == "dark"


def outcome() -> Outcome:
    """The model's result for the session's scenario."""
    return _outcome(scenario())


def answer() -> Answer | None:
    """The bands for the session's scenario; None where there is no result."""
    return _answer(scenario()) if outcome().result else None


def year() -> YearOfDrives | None:
    """The year of the session's scenario; None where a season cannot be driven."""
    now = scenario()
    # every season brings its own temperature, so today's must not make the year be driven again
    return _year(replace(now, conditions=replace(now.conditions, ambient_c=20.0)))


def described_duration_s() -> float:
    """How long the drive would take at the speeds described [s]."""
    return trace_of(scenario()).duration_s


@st.cache_resource(max_entries=50, show_spinner=False)
def _outcome(now: Scenario) -> Outcome:
    try:
        return Outcome(drive(now))
    except InputError as refused:
        return Outcome(None, plain(str(refused)))


@st.cache_resource(max_entries=500, show_spinner=False)
def _answer(now: Scenario) -> Answer:
    result = _outcome(now).result
    assert result is not None
    return answer_of(result, samples_of(now, result, BAND_RUNS))


@st.cache_resource(max_entries=500, show_spinner=False)
def _year(now: Scenario) -> YearOfDrives | None:
    try:
        return year_of(now, SEASON_RUNS)
    except InputError:
        return None
