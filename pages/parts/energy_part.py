"""Where the energy goes: four pictures under the answer, each with its finding, its table and its file."""

from __future__ import annotations

import pandas as pd
import streamlit as st

from model.describe.scenario import Scenario
from model.kernel.savings import Result
from model.kernel.timeline import books, slow_downs, timeline
from model.words.quantities import Display
from pages.parts import state
from pages.parts.charts.energy import (
    BOOK_WORDS,
    USES,
    before_after,
    braking_rows,
    grouped,
    ledger,
    over_time,
    slowed_by,
)
from pages.parts.charts.energy_words import before_after_words, ledger_words, over_time_words, slowed_by_words
from pages.parts.charts.limits import LIMIT_NAMES
from pages.parts.figure import figure
from pages.parts.theme import Spec

BEHIND_THE_TERMINALS = {
    "cells_given": "Behind the terminals: given by the cells",
    "cells_taken": "Behind the terminals: taken by the cells",
    "cells": "Behind the terminals: heat in the cells",
}
EVERY_S = 60


def draw_energy(scenario: Scenario, result: Result, display: Display) -> None:
    """Draw the section."""
    st.header("Where the energy goes", anchor="energy")
    st.markdown(
        "One run of your drive, with every assumed figure at its middle. The answer above comes from many runs, so its "
        "own middle may differ a little; its band says how far these numbers may lie from your car's.",
        width=640,
    )
    dark, car = state.dark(), scenario.car_class
    book, steps, events = books(result), timeline(result), slow_downs(result)

    title, words = before_after_words(book)
    _figure(before_after(book, dark), title, words, groups_table(book), "before-after", car)
    title, words = ledger_words(book["regenerated"], result.ledger.error_share)
    _figure(ledger(book["regenerated"], dark), title, words, books_table(book), "ledger", car)
    rows = braking_rows(result.wheel_regen_kwh, result.limits_kwh)
    title, words = slowed_by_words(rows, events)
    if len(rows):
        _figure(slowed_by(rows, dark), title, words, slow_down_table(events, display), "slow-downs", car)
    title, words = over_time_words(steps, display)
    table = timeline_table(steps, display)
    by_minute = table[(steps["time_s"] % EVERY_S == 0).to_numpy()]
    _figure(over_time(steps, display, dark), title, words, by_minute, "over-time", car, file=table)


def _figure(
    chart: Spec, title: str, words: str, table: pd.DataFrame, key: str, car: str, file: pd.DataFrame | None = None
) -> None:
    figure(
        chart, alt=f"{title}. {words}", table=table, key=key, file_name=f"{car}-{key}.csv", title=title, words=words,
        file=file,
    )  # fmt: skip


def groups_table(book: pd.DataFrame) -> pd.DataFrame:
    """What the before-and-after bars show."""
    rows = grouped(book)
    rows.loc["Net out of the battery"] = rows.sum()
    return _both_runs(rows.rename_axis("Went into").reset_index())


def books_table(book: pd.DataFrame) -> pd.DataFrame:
    """The whole ledger of both runs."""
    words = {entry: BOOK_WORDS[entry] for entry in ("battery_out", "battery_in", "engine_given", *USES)}
    words |= BEHIND_THE_TERMINALS
    return _both_runs(book.loc[list(words)].rename(index=words).rename_axis("Entry").reset_index())


def _both_runs(table: pd.DataFrame) -> pd.DataFrame:
    names = {"friction_only": "Friction brakes only, kWh", "regenerated": "With regeneration, kWh"}
    table = table[[table.columns[0], *names]].round(4)
    return table[table[[*names]].any(axis=1)].rename(columns=names)


def slow_down_table(events: pd.DataFrame, display: Display) -> pd.DataFrame:
    """One row a slow-down."""
    km, kmh = display.unit("km"), display.unit("km/h")
    return pd.DataFrame(
        {
            f"At, {km}": display.value(events["start_km"], "km").round(2),
            f"From, {kmh}": display.value(events["from_kmh"], "km/h").round(1),
            f"To, {kmh}": display.value(events["to_kmh"], "km/h").round(1),
            "Hardest, m/s²": events["peak_mps2"].round(2),
            "Motor, Wh": events["motor_wh"].round(1),
            "Friction, Wh": events["friction_wh"].round(1),
            "Why friction": events["limit"].map(LIMIT_NAMES).fillna("–"),
        }
    )


def timeline_table(steps: pd.DataFrame, display: Display) -> pd.DataFrame:
    """One row a step."""
    km, kmh, m = (display.unit(unit) for unit in ("km", "km/h", "m"))
    return pd.DataFrame(
        {
            "Time, s": steps["time_s"],
            f"Distance, {km}": display.value(steps["distance_km"], "km").round(3),
            f"Speed, {kmh}": display.value(steps["speed_kmh"], "km/h").round(1),
            f"Height, {m}": display.value(steps["elevation_m"], "m").round(1),
            "Battery, kW": steps["battery_kw"].round(2),
            "Friction brakes, kW": steps["friction_kw"].round(2),
            "Charge, %": (100 * steps["soc"]).round(2),
        }
    )
