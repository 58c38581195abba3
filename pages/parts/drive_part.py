"""The visitor's drive in one line and one picture, as it stands on every page."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from functools import partial

import pandas as pd
import streamlit as st
from streamlit.delta_generator import DeltaGenerator

from model.describe.scenario import Scenario
from model.kernel.timeline import slow_downs, timeline
from pages.parts import redrawn, state, wording
from pages.parts.answer_line import draw_answer_line
from pages.parts.charts.drive_strip import Note, drive_strip, strip_finding
from pages.parts.figure import draw_chart
from pages.parts.folding import is_narrow
from pages.parts.link import own_link
from pages.parts.typography import together

Notes = Callable[[pd.DataFrame], Sequence[Note]]


def no_notes(_steps: pd.DataFrame) -> Sequence[Note]:
    """Nothing written over the strip."""
    return ()


def before(shown: Scenario | None, part: str) -> DeltaGenerator:
    """A place for a part of the answer, grey where it is not to the drive as described now but to the one before."""
    return st.container(key=f"{'before' if shown != state.scenario() else 'now'}-{part}", gap="small")


@contextmanager
def last_answer(part: str) -> Iterator[None]:
    """A page's answer. Where the drive as described now has none, why not, and in grey the last one, named as such.

    The reason stands above the answer, unless an entry in it says the reason itself.
    """
    refusal, shown = state.refusal(), state.shown()
    above = st.container() if refusal else None
    st.session_state["refusal-said"] = False
    with before(shown, part):
        yield
    if above and not st.session_state["refusal-said"]:
        above.error(together(refusal))
    if above and shown != state.scenario():
        above.markdown(wording.answer_before(shown, state.display()))


def draw_drive(*, with_answer: bool = True, notes: Notes = no_notes) -> None:
    """Draw the answer line and the strip.

    Parameters
    ----------
    with_answer : bool
        Whether the line states the headline; pages that state it themselves do without.
    notes : callable
        What the page writes over the strip, from the timeline of the drive.
    """
    draw_answer_line(with_answer=with_answer)
    draw_strip(notes, leads_back=with_answer)


def strip_behind(notes: Notes = no_notes) -> None:
    """The strip behind a page's answer, where a telephone has it so that the answer begins on the first screen."""
    if is_narrow():
        draw_strip(notes)


def draw_strip(notes: Notes = no_notes, *, leads_back: bool = False) -> None:
    """Draw the strip alone; where it is of the drive before, a link to where that is mended if it `leads_back`."""
    with st.container(key="strip"):
        shown = state.answered()
        drawn = state.outcome(shown).result if shown else None
        if shown != state.scenario() and leads_back:
            st.page_link("your_drive.py", label=state.display().say("change-on-first-page"), query_params=own_link())
        if drawn is None:
            # the place stays where a drive was refused
            st.markdown(state.display().say("no-picture"))
            return
        with before(shown, "strip"):
            redrawn.part("strip", partial(draw_picture, notes))


def draw_picture(notes: Notes) -> None:
    """The strip's picture."""
    shown = state.shown()
    drawn = state.outcome(shown).given
    steps, events = timeline(drawn), slow_downs(drawn)
    noted = notes(steps) if shown == state.scenario() else ()
    draw_chart(
        drive_strip(steps, events, state.display(), state.dark(), noted),
        alt=strip_finding(steps, events, state.display(), noted),
        key="drive-strip",
    )
