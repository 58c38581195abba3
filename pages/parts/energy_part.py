"""Where the energy goes: four pictures under the answer, each with its finding, its table and its file."""

from __future__ import annotations

from functools import partial

import pandas as pd
import streamlit as st

from model.kernel.savings import Result
from model.kernel.timeline import books, slow_downs, timeline
from model.words.quantities import Display
from pages.parts import redrawn, state, wording
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
from pages.parts.figure import Picture, TableOrMaker, figure
from pages.parts.folding import folded
from pages.parts.report import about as described
from pages.parts.theme import WIDTH_PX, Spec

BOOK = ("battery_out", "battery_in", "engine_given", *USES, "cells_given", "cells_taken", "cells")
"""The entries of the books, in the order of their table."""
EVERY_S = 60
"""Between the rows of the table over time [s]."""


def draw_energy(car_class: str) -> None:
    """Draw the section, which is to the drive last answered."""
    st.header(state.display().say("energy-goes"), anchor="energy")
    with folded(state.display().say("mixed-up"), "mixed-up") as is_open:
        if is_open:
            redrawn.part("mixed-up", draw_mixed_up)
    redrawn.stands(lambda: len(slow_down_rows()))
    for key, make in FIGURES.items():
        if key != "slow-downs" or len(slow_down_rows()):
            figure(make, key, f"{car_class}-{key}.csv")


def answered() -> Result:
    """The result that the section is of."""
    return state.outcome(state.shown()).given


def slow_down_rows() -> pd.DataFrame:
    """Who brakes the drive, and why friction helps."""
    result = answered()
    return braking_rows(result.wheel_regen_kwh, result.limits_kwh)


def draw_mixed_up() -> None:
    """What one run is, and figures that are easily mixed up."""
    display = state.display()
    heading = f"### {display.say('mixed-up')}"
    st.markdown(f"{one_run_words(answered(), state.answer(state.shown()), display)}\n\n{heading}", width=640)
    with st.container(key="facts-mixed-up", gap=None, width=WIDTH_PX):
        st.html(fact_rows(wording.mixed_up_facts(answered(), display)))


def before_after_figure() -> Picture:
    """Where the battery's energy goes, with regeneration and without."""
    display, book = state.display(), books(answered())
    chart, said = before_after(book, display, state.dark()), before_after_words(book, display)
    return of_finding(chart, said, partial(groups_table, book, display))


def ledger_figure() -> Picture:
    """What of it comes back."""
    display, result = state.display(), answered()
    book = books(result)
    chart = ledger(book["regenerated"], display, state.dark())
    said = ledger_words(book["regenerated"], result.ledger.error_share, display)
    return of_finding(chart, said, partial(books_table, book, display))


def slow_downs_figure() -> Picture:
    """Who does the braking."""
    display, rows, events = state.display(), slow_down_rows(), slow_downs(answered())
    chart, said = slowed_by(rows, display, state.dark()), slowed_by_words(rows, events, display)
    return of_finding(chart, said, partial(slow_down_table, events, display))


def over_time_figure() -> Picture:
    """Power and charge from the first to the last second."""
    display, steps = state.display(), timeline(answered())
    by_minute, every_step = (partial(timeline_table, steps, display, every_s) for every_s in (EVERY_S, 0))
    chart, said = over_time(steps, display, state.dark()), over_time_words(steps, display)
    return of_finding(chart, said, by_minute, file=every_step)


FIGURES = {
    "before-after": before_after_figure,
    "ledger": ledger_figure,
    "slow-downs": slow_downs_figure,
    "over-time": over_time_figure,
}
"""In their order, by what they are known by."""


def of_finding(chart: Spec, said: tuple[str, str], table: TableOrMaker, file: TableOrMaker | None = None) -> Picture:
    """A figure with its title and words, which say it to who does not see it too."""
    title, words = said
    scenario, display = state.shown(), state.display()
    about, bands = described(scenario, display), state.answer(scenario)
    if bands is not None:
        # one run, with every figure at its middle: its band goes with it
        about = f"{about} {wording.headline(bands, display)}"
    return Picture(chart, alt=f"{title}. {words}", table=table, title=title, words=words, file=file, about=about)


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
