"""A recording of one's own in place of a described drive: opened, cleaned, and modelled beside what was measured."""

from __future__ import annotations

import pandas as pd
import streamlit as st

from model.describe.fields import InputError
from model.describe.figures import Quantity
from model.out.recorded import band_of_recording, drive_as_recorded, energy_over_time
from model.traces.cleaning import STEPS
from model.traces.logs import MOST_BYTES, Recording, read_recording
from model.traces.recorded_names import NOT_READ, UNITS
from model.words.refusals import refusal_words
from pages.parts import link, state
from pages.parts.charts.own_road import energy_chart
from pages.parts.figure import figure
from pages.parts.own_road_words import SAMPLE, effect_words, finding_words, headline, meaning_words, part_words, totals
from pages.parts.plain_text import inert

MOST_COLUMNS = 30
"""So many columns can be corrected."""


def forget() -> None:
    """Drop what is held of a recording, and how the one before was read."""
    for key in ("recording", "recording-is-sample", "recording-refused"):
        st.session_state.pop(key, None)
    st.session_state["reading"] = {"columns": {}, "off": frozenset(), "part": None}


def content() -> tuple[bytes, str] | None:
    """The file in the place for it, or the sample, while either is there; no copy of it is kept."""
    file = st.session_state.get("recording-file")
    if file is not None:
        return file.getvalue(), file.name
    return (SAMPLE.read_bytes(), SAMPLE.name) if st.session_state.get("recording-is-sample") else None


def read() -> None:
    """Read the file as it is to be read now, and keep the drive without positions, or why there is none."""
    if (found := content()) is None:
        return
    st.session_state.pop("recording-refused", None)
    try:
        st.session_state["recording"] = read_recording(*found, **st.session_state["reading"])
    except InputError as refused:
        st.session_state.pop("recording", None)
        st.session_state["recording-refused"] = refused.with_traceback(None)


def open_file() -> None:
    """Read what was uploaded."""
    forget()
    read()


def open_sample() -> None:
    """Read the invented drive."""
    forget()
    st.session_state["recording-is-sample"] = True
    read()


def choose() -> None:
    """The place for a file, the sample, and what is done with either."""
    say = state.display().say
    st.file_uploader(
        say("own-road-upload"), ["csv", "tsv", "txt", "gpx"], key="recording-file", on_change=open_file,
        max_upload_size=MOST_BYTES // 1_000_000,
    )  # fmt: skip
    st.caption(say("own-road-private"))
    st.button(say("own-road-sample"), key="recording-sample", on_click=open_sample, type="tertiary")
    st.page_link("your_drive.py", label=say("page-your-drive"), query_params=link.own_link())


def show(recording: Recording) -> None:
    """The answer: measured beside modelled, over time and as totals."""
    display = state.display()
    scenario, result = drive_as_recorded(recording, state.scenario(), frozenset())
    band = band_of_recording(scenario, result, state.BAND_RUNS)
    if st.session_state.get("recording-is-sample"):
        st.info(display.say("own-road-sample-is-invented"))
    st.header(headline(recording, result, band, display), anchor=False)
    st.caption(display.say("own-road-car"))
    if not result.followed:
        st.warning(display.say("own-road-shortfall", shortfall=Quantity(result.shortfall_kwh, "kWh")))
    st.subheader(display.say("own-road-totals"), anchor=False)
    st.table(pd.DataFrame(totals(recording.measured, result, band, display)), border="horizontal", hide_index=True)
    measured = recording.measured
    if measured is not None and measured.own_rate_in_kwh is not None:
        hidden = Quantity(max(measured.own_rate_in_kwh - measured.battery_in_kwh, 0.0), "kWh")
        st.caption(display.say("own-road-hidden", hidden=hidden))
    table = energy_over_time(recording, result)
    modelled = Quantity(result.net_kwh, "kWh", 3)
    if measured is None:
        title, alt = display.say("own-road-chart-modelled"), display.say("own-road-alt", modelled=modelled)
    else:
        title = display.say("own-road-chart")
        seen = Quantity(measured.battery_net_kwh, "kWh", 3)
        alt = display.say("own-road-alt-measured", modelled=modelled, measured=seen)
    figure(
        energy_chart(table, display, state.dark()), alt=alt, table=table.round(4), key="own-road",
        file_name="brake-to-battery-own-road.csv", title=title,
    )  # fmt: skip


def explain(recording: Recording) -> None:
    """What was recognised, cleaned and found; each can be corrected while the file is there."""
    display = state.display()
    reading = st.session_state["reading"]
    if len(recording.parts) > 1:
        st.session_state["recording-part"] = recording.part
        st.selectbox(
            display.say("own-road-parts"), range(len(recording.parts)), key="recording-part", on_change=take_part,
            format_func=lambda place: part_words(recording.parts, place, display), disabled=content() is None,
        )  # fmt: skip
    st.subheader(display.say("own-road-recognised"), anchor=False)
    names = [display.say("own-road-column"), display.say("own-road-meaning"), display.say("own-road-unit")]
    rows = [(each.name, meaning_words(each.meaning, display) if each.meaning else display.say("own-road-not-read"),
             each.unit) for each in recording.columns]  # fmt: skip
    st.table(pd.DataFrame(rows[:MOST_COLUMNS], columns=names), border="horizontal", hide_index=True)
    is_table = content() is not None and not recording.trace.name.lower().endswith(".gpx")
    if is_table:
        with st.expander(display.say("own-road-correct"), type="compact", key="recording-correct"):
            correct(recording)
    st.subheader(display.say("own-road-cleaning"), anchor=False)
    done = {effect.step: effect for effect in recording.effects}
    for step in STEPS:
        if step not in done and step not in reading["off"]:
            continue
        words = effect_words(done[step], display) if step in done else display.say("own-road-step", step=step)
        st.session_state[f"clean-{step}"] = step not in reading["off"]
        st.toggle(words, key=f"clean-{step}", on_change=switch, args=(step,), disabled=content() is None)
        if step in done and done[step].is_large:
            st.caption(display.say("own-road-large"))
    if recording.findings:
        st.subheader(display.say("own-road-found"), anchor=False)
    for finding in sorted(recording.findings, key=lambda each: not each.asks):
        st.markdown(f"- {finding_words(finding, display)}")


def correct(recording: Recording) -> None:
    """For each column what it means, and in which unit."""
    display = state.display()
    choices = [(NOT_READ, ""), *((meaning, unit) for meaning, units in UNITS.items() for unit in units)]

    def said(choice: tuple[str, str]) -> str:
        meaning, unit = choice
        return f"{meaning_words(meaning, display)} ({unit})" if meaning else display.say("own-road-not-read")

    for place, each in enumerate(recording.columns[:MOST_COLUMNS]):
        st.session_state[f"column-{place}"] = (each.meaning, each.unit)
        st.selectbox(
            inert(each.name) or "–", choices, key=f"column-{place}", format_func=said, on_change=take_column,
            args=(place, each.name),
        )  # fmt: skip


def take_column(place: int, name: str) -> None:
    """Read the file anew with another meaning of a column."""
    st.session_state["reading"]["columns"][name] = st.session_state[f"column-{place}"]
    read()


def take_part() -> None:
    """Take another stretch between gaps."""
    st.session_state["reading"]["part"] = st.session_state["recording-part"]
    read()


def switch(step: str) -> None:
    """Read the file anew with a step of cleaning left out or put in."""
    st.session_state["reading"]["off"] ^= {step}
    read()


choose()
if refusal := st.session_state.get("recording-refused"):
    st.error(inert(refusal_words(refusal, state.display())))
if (held := st.session_state.get("recording")) is not None:
    answering, explaining = st.columns([11, 10], gap="large")
    try:
        with answering:
            show(held)
    except InputError as refused:
        st.error(inert(refusal_words(refused, state.display())))
    with explaining:
        explain(held)
