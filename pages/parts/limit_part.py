"""What the parts of Winter and limits are made of: number, picture, what to do and to mind, voices, tables."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from contextlib import nullcontext
from html import escape

import pandas as pd
import streamlit as st

from model.describe.scenario import CONDITION_FIELDS
from pages.parts import controls, departures, state
from pages.parts.charts import grip as grip_charts
from pages.parts.facts import fact_rows
from pages.parts.figure import Picture, TableOrMaker, figure
from pages.parts.folding import folded, in_sight, is_narrow, section
from pages.parts.theme import TEXT_PX, Spec
from pages.parts.typography import together
from pages.parts.winter_words import LimitWords

HALVES = (10, 11)


def part(
    said: LimitWords, controls: Callable[[], None], lead: Callable[[], None], *, many_controls: bool = False
) -> None:
    """One part: the number and the picture side by side, then what to do and what to mind.

    Where there are many controls beside the picture, the facts stand below it, and on a telephone fold.
    """
    in_sight(lambda: said.sentence)
    with st.container(key="panel"):
        saying, seeing = st.columns(HALVES, gap="large")
    with saying:
        st.title(said.heading, anchor=False)
        st.header(together(said.sentence), anchor=False)
        if said.caution:
            st.caption(said.caution)
        # on a telephone what is seen comes before what is set, as it does beside it
        if is_narrow():
            lead()
        controls()
        if said.more and not many_controls:
            st.markdown(together(said.more))
    with seeing:
        if not is_narrow():
            lead()
    with seeing if many_controls else saying:
        label = state.display().say("limits-in-figures")
        with folded(label, "facts") if many_controls else nullcontext(True) as is_open:
            if is_open:
                draw_facts(said, with_more=many_controls)
    doing, minding = st.columns(HALVES, gap="large")
    with doing:
        st.header(state.display().say("limits-what-to-do"), anchor="do")
        st.markdown(bullets(said.do))
    with minding, section(state.display().say("limits-mind"), "mind") as is_open:
        if is_open:
            st.markdown(bullets(said.mind))


def draw_facts(said: LimitWords, *, with_more: bool) -> None:
    """What a part comes to, in figures."""
    with st.container(key="facts", gap=None):
        st.html(fact_rows(said.facts))
    if with_more:
        st.markdown(together(said.more))


def bullets(sentences: Iterable[str]) -> str:
    """Sentences as a list."""
    return "\n".join(f"- {together(sentence)}" for sentence in sentences)


def picture(
    chart: Spec, words: tuple[str, str], table: TableOrMaker, key: str, *, leads: bool = False, numbers: str = "",
    folds: bool = True,
) -> None:  # fmt: skip
    """A figure with its finding, its words and its table; in one that leads its part the words come last.

    `numbers` are those that are only seen in the picture, for whoever hears it. One that never `folds` is open on a
    telephone too.
    """
    title, more = words
    last = leads and not (folds and is_narrow())
    alt = " ".join(filter(None, (f"{title}.", numbers, more)))
    made = Picture(chart, alt, table, title, "" if last else more, folds=folds)
    figure(lambda: made, key, f"{state.shown().car_class}-{key}.csv")
    if last:
        st.caption(more)


def side_by_side(title: str, voices: Iterable[tuple[str, str, str]], words: str) -> None:
    """Who says what, and on what ground."""
    with section(title, "voices") as is_open:
        if is_open:
            cells = "".join(
                f"<div><dt>{escape(who)}</dt><dd>{escape(together(says))} <span>{escape(on)}</span></dd></div>"
                for who, says, on in voices
            )
            with st.container(key="voices"):
                st.html(f"<dl>{cells}</dl>")
            st.markdown(words, width=TEXT_PX)


def in_units(rows: pd.DataFrame, names: dict[str, str], unit: str) -> pd.DataFrame:
    """Columns by their names, in whole units as they are shown."""
    display = state.display()
    return pd.DataFrame(
        {f"{name}, {display.unit(unit)}": display.value(rows[key], unit).round(0) for key, name in names.items()}
    )


def roads_in_words(rows: pd.DataFrame) -> list[str]:
    """What each row's road is called."""
    return [grip_charts.road_name(surface, state.display()) for surface in rows["surface"]]


def named(table: pd.DataFrame, names: dict[str, str]) -> pd.DataFrame:
    """A table whose columns are headed by the messages of these names."""
    return table.rename(columns={key: state.display().say(name) for key, name in names.items()})


def ask_day(*keys: str) -> None:
    """What of the day and the car a part is about, side by side; asked here as behind the word of the answer line."""
    controls.side_by_side(*(CONDITION_FIELDS[key] for key in keys), where="part")


def ask_road() -> None:
    """The road's surface and the tyres on it; the temperature too, where it does not go with snow and ice."""
    ask_day("surface", "tyres")
    legs = [leg.surface for leg in state.scenario().legs if leg.surface != "dry"]
    if legs:
        st.caption(state.display().say("limits-another-leg"))
    if question := departures.frost_text(state.scenario(), state.display()):
        st.warning(question)
        ask_day("ambient_c")
