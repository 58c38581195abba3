"""Where the energy goes: four pictures under the answer, each with its finding, its table and its file."""

from __future__ import annotations

from functools import partial

import pandas as pd
import streamlit as st

from model.describe.scenario import Scenario
from model.kernel.savings import Result
from model.kernel.timeline import books, slow_downs, timeline
from model.words.quantities import Display
from pages.parts import state, wording
from pages.parts.charts.energy import USES, before_after, braking_rows, grouped, ledger, over_time, slowed_by
from pages.parts.charts.energy_words import (
    before_after_words,
    ledger_words,
    one_run_words,
    over_time_words,
    slowed_by_words,
)
from pages.parts.charts.limits import LIMITS
from pages.parts.facts import fact_rows
from pages.parts.figure import TableOrMaker, figure
from pages.parts.folding import folded
from pages.parts.report import about as described
from pages.parts.theme import WIDTH_PX, Spec

BOOK = ("battery_out", "battery_in", "engine_given", *USES, "cells_given", "cells_taken", "cells")
"""The entries of the books, in the order of their table."""
EVERY_S = 60
"""Between the rows of the table over time [s]."""


def draw_energy(scenario: Scenario, result: Result, display: Display) -> None:
    """Draw the section."""
    st.header(display.say("energy-goes"), anchor="energy")
    with folded(display.say("mixed-up"), "mixed-up") as is_open:
        if is_open:
            st.markdown(one_run_words(result, state.answer(scenario), display), width=640)
            st.markdown(f"### {display.say('mixed-up')}")
            with st.container(key="facts-mixed-up", gap=None, width=WIDTH_PX):
                st.html(fact_rows(wording.mixed_up_facts(result, display)))
    dark, car = state.dark(), scenario.car_class
    book, steps, events = books(result), timeline(result), slow_downs(result)

    title, words = before_after_words(book, display)
    _figure(before_after(book, display, dark), title, words, partial(groups_table, book, display), "before-after", car)
    title, words = ledger_words(book["regenerated"], result.ledger.error_share, display)
    table = partial(books_table, book, display)
    _figure(ledger(book["regenerated"], display, dark), title, words, table, "ledger", car)
    rows = braking_rows(result.wheel_regen_kwh, result.limits_kwh)
    title, words = slowed_by_words(rows, events, display)
    if len(rows):
        table = partial(slow_down_table, events, display)
        _figure(slowed_by(rows, display, dark), title, words, table, "slow-downs", car)
    title, words = over_time_words(steps, display)
    by_minute, every_step = (partial(timeline_table, steps, display, every_s) for every_s in (EVERY_S, 0))
    _figure(over_time(steps, display, dark), title, words, by_minute, "over-time", car, file=every_step)


def _figure(
    chart: Spec, title: str, words: str, table: TableOrMaker, key: str, car: str, file: TableOrMaker | None = None
) -> None:
    scenario, display, bands = state.shown(), state.display(), state.answer(state.shown())
    # one run, with every figure at its middle: its band goes with it
    about = described(scenario, display)
    if bands is not None:
        about = f"{about} {wording.headline(bands, display)}"
    figure(
        chart, alt=f"{title}. {words}", table=table, key=key, file_name=f"{car}-{key}.csv", title=title, words=words,
        file=file, about=about,
    )  # fmt: skip


def groups_table(book: pd.DataFrame, display: Display) -> pd.DataFrame:
    """What the before-and-after bars show."""
    rows = grouped(book)
    rows.index = pd.Index([display.say("energy-group", group=str(group)) for group in rows.index])
    rows.loc[display.say("net-out")] = rows.sum()
    return _both_runs(rows.rename_axis(display.say("column-went-into")).reset_index(), display)


def books_table(book: pd.DataFrame, display: Display) -> pd.DataFrame:
    """The whole ledger of both runs."""
    words = {entry: display.say("book-entry", entry=entry) for entry in BOOK}
    table = book.loc[list(words)].rename(index=words).rename_axis(display.say("column-book-entry"))
    return _both_runs(table.reset_index(), display)


def _both_runs(table: pd.DataFrame, display: Display) -> pd.DataFrame:
    names = {"friction_only": display.say("column-friction-only"), "regenerated": display.say("column-regenerated")}
    table = table[[table.columns[0], *names]].round(4)
    return table[table[[*names]].any(axis=1)].rename(columns=names)


def slow_down_table(events: pd.DataFrame, display: Display) -> pd.DataFrame:
    """One row a slow-down."""
    say, km, kmh = display.say, display.unit("km"), display.unit("km/h")
    why = [display.say("limit-short", limit=limit) if limit in LIMITS else "–" for limit in events["limit"]]
    return pd.DataFrame(
        {
            say("column-at", unit=km): display.value(events["start_km"], "km").round(2),
            say("column-from", unit=kmh): display.value(events["from_kmh"], "km/h").round(1),
            say("column-to", unit=kmh): display.value(events["to_kmh"], "km/h").round(1),
            say("column-hardest", unit=display.unit("m/s²")): display.value(events["peak_mps2"], "m/s²").round(2),
            say("column-motor-wh"): events["motor_wh"].round(1),
            say("column-friction-wh"): events["friction_wh"].round(1),
            say("column-why-friction"): why,
        }
    )


def timeline_table(steps: pd.DataFrame, display: Display, every_s: int = 0) -> pd.DataFrame:
    """One row a step, or one every so many seconds."""
    if every_s:
        steps = steps[steps["time_s"] % every_s == 0]
    say, (km, kmh, m) = display.say, (display.unit(unit) for unit in ("km", "km/h", "m"))
    return pd.DataFrame(
        {
            say("column-time-s"): steps["time_s"],
            say("column-distance", unit=km): display.value(steps["distance_km"], "km").round(3),
            say("column-speed", unit=kmh): display.value(steps["speed_kmh"], "km/h").round(1),
            say("column-height", unit=m): display.value(steps["elevation_m"], "m").round(1),
            say("column-battery-kw"): steps["battery_kw"].round(2),
            say("column-friction-kw"): steps["friction_kw"].round(2),
            say("column-charge"): (100 * steps["soc"]).round(2),
        }
    )
