"""A recording of one's own in place of a described drive: opened, cleaned, and modelled beside what was measured."""

from __future__ import annotations

from collections.abc import Sequence

import pandas as pd
import streamlit as st

from model.describe.fields import InputError
from model.describe.figures import Quantity
from model.kernel.savings import Result
from model.out.fit import Fit, fit
from model.out.recorded import (
    Doubt,
    RecordedBand,
    band_of_recording,
    doubt_of_recording,
    drive_as_recorded,
    energy_over_time,
)
from model.out.residuals import by_minutes, by_slow_down, by_speed
from model.traces.cleaning import STEPS
from model.traces.driven_habits import DrivenHabits, habits_of
from model.traces.height_unit import HEIGHT, column_of_heights
from model.traces.logs import MOST_BYTES, Recording
from model.traces.recorded_names import NOT_READ, UNITS, Column
from model.traces.route_only import ROUTE_FIELDS
from model.words.refusals import refusal_words
from pages.parts import link, own_settings, state
from pages.parts.answer_line import draw_answer_line
from pages.parts.charts.own_road import energy_chart, residual_chart, slow_downs_chart
from pages.parts.figure import Picture, figure
from pages.parts.own_recording import (
    can_be_read_anew,
    driven_by,
    held,
    is_given,
    is_lost,
    open_file,
    open_sample,
    place_for_file,
    read_anew,
    read_given,
    take_meaning,
)
from pages.parts.own_road_words import (
    about,
    effect_words,
    finding_words,
    fit_rows,
    fit_words,
    habits_words,
    headline,
    line_words,
    meaning_words,
    part_words,
    residual_finding,
    residual_labels,
    totals,
)
from pages.parts.plain_text import inert

RESIDUALS = {"speed": by_speed, "slow_down": by_slow_down, "minutes": by_minutes}
ROUTE_STEPS = {"limit_kmh": 5.0, "lateral_mps2": 0.5}
MOST_COLUMNS = 30
"""So many columns can be corrected."""


def choose() -> None:
    """The place for a file, the sample, and what is done with either."""
    say = state.display().say
    top = st.container()
    st.file_uploader(
        say("own-road-upload"), ["csv", "tsv", "txt", "gpx"], key=place_for_file(), on_change=open_file,
        max_upload_size=MOST_BYTES // 1_000_000,
    )  # fmt: skip
    st.caption(say("own-road-private"))
    with st.container(horizontal=True, vertical_alignment="center"):
        st.button(say("own-road-sample"), key="recording-sample", on_click=open_sample, type="tertiary")
        st.page_link("your_drive.py", label=say("page-your-drive"), query_params=link.own_link())
    if is_given():
        place, words = st.empty(), say("own-road-reading")
        bar = place.progress(0.0, words)
        read_given(lambda share: bar.progress(min(share, 1.0), words) and None)
        place.empty()
    if is_lost():
        top.info(say("own-road-lost"))


def show(recording: Recording) -> Result:
    """The answer: measured beside modelled, over time and as totals."""
    display = state.display()
    result, band = answer(recording)
    if st.session_state.get("recording-is-sample"):
        st.info(display.say("own-road-sample-is-invented"))
    st.header(headline(recording, result, band, display), anchor=False)
    st.caption(display.say("own-road-car"))
    if recording.route is not None:
        settings = driven_by()[1]
        for key, step in ROUTE_STEPS.items():
            own_settings.slide(ROUTE_FIELDS[key], getattr(settings, key), step)
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
    shown = Picture(
        energy_chart(table, display, state.dark()), alt, table.round(4), title,
        about=about(recording, state.scenario(), display),
    )  # fmt: skip
    figure(lambda: shown, "own-road", "brake-to-battery-own-road.csv")
    if measured is not None:
        part_ways(recording, result)
        fit_car(recording)
    if recording.route is None:
        tell_habits(recording)
    return result


def answer(recording: Recording) -> tuple[Result, RecordedBand]:
    """The drive and its band; they stay while recording and description do."""
    kept = st.session_state.get("recording-answer")
    if kept is None or kept[0] is not recording or kept[1] != state.scenario():
        with st.spinner(state.display().say("own-road-computing")):
            scenario, result = drive_as_recorded(recording, state.scenario(), frozenset())
            band = band_of_recording(scenario, result, state.BAND_RUNS)
        kept = st.session_state["recording-answer"] = recording, state.scenario(), result, band
    return kept[2], kept[3]


def part_ways(recording: Recording, result: Result) -> None:
    """Where the model and what was measured part, one way of looking at it at a time."""
    display = state.display()
    st.subheader(display.say("own-road-residual"), anchor=False)
    st.session_state.setdefault("residual-by", "speed")
    by = st.segmented_control(
        display.say("own-road-residual-choose"), RESIDUALS, key="residual-by", required=True,
        label_visibility="collapsed", format_func=lambda way: display.say("own-road-residual-by", way=way),
    )  # fmt: skip
    table = RESIDUALS[by](recording, result)
    file_name = f"brake-to-battery-own-road-{by}.csv"
    finding = residual_finding(by, table, display)
    if by == "slow_down":
        chart = slow_downs_chart(table, display, state.dark()) if len(table) else None
    else:
        chart = residual_chart(residual_labels(by, table, display), table["more_kwh"], state.dark())
    if chart is None:
        st.markdown(finding)
        return
    alt = f"{display.say('own-road-residual-alt')} {finding}"
    shown = Picture(chart, alt, table.round(4), finding, about=about(recording, state.scenario(), display))
    figure(lambda: shown, f"residual-{by}", file_name)


def tell_habits(recording: Recording) -> None:
    """What the recording tells of its driver, to be taken over for the described drive."""
    display = state.display()
    st.subheader(display.say("own-road-habits"), anchor=False)
    try:
        found = habits_of(recording.trace, state.scenario().driver.lift_off_mps2)
    except InputError as refused:
        st.markdown(inert(refusal_words(refused, display)))
        return
    st.markdown(habits_words(found, display))
    driver = state.scenario().driver
    taken = (driver.looks_ahead, driver.pull_away) == (found.looks_ahead, found.pull_away)
    st.button(display.say("own-road-habits-take", taken=taken), key="take-habits", on_click=take_habits, args=(found,),
              disabled=taken)  # fmt: skip


def take_habits(found: DrivenHabits) -> None:
    """Describe the driver as the recording has them."""
    state.put(
        state.scenario().with_setting("looks_ahead", found.looks_ahead).with_setting("pull_away", found.pull_away)
    )


def fit_car(recording: Recording) -> None:
    """On request a fit of the car to one half of the recording, what it misses of the other, and a way to keep it."""
    display = state.display()
    st.subheader(display.say("own-road-fit"), anchor=False)
    st.markdown(display.say("own-road-fit-about"))
    found: Fit | None = st.session_state.get("recording-fit")
    if found is None:
        st.button(display.say("own-road-fit-do"), key="fit-car", on_click=ask_fit, args=(recording,))
    if refused := st.session_state.get("recording-fit-refused"):
        st.markdown(inert(refusal_words(refused, display)))
    if found is not None:
        st.markdown(fit_words(found, display))
        st.table(pd.DataFrame(fit_rows(found, display)), border="horizontal", hide_index=True)
        kept = found.taken_by(state.scenario()) == state.scenario()
        st.button(display.say("own-road-fit-keep", kept=kept), key="keep-fit", on_click=keep_fit, args=(found,),
                  disabled=kept)  # fmt: skip


def ask_fit(recording: Recording) -> None:
    """Fit the car as it is described now."""
    try:
        st.session_state["recording-fit"] = fit(recording, state.scenario())
    except InputError as refused:
        st.session_state["recording-fit-refused"] = refused.with_traceback(None)


def keep_fit(found: Fit) -> None:
    """Make the fitted car the one that is described."""
    state.put_whole(found.taken_by(state.scenario()))


def ask(recording: Recording) -> None:
    """What may mean something else than it was taken for: before the answer, which hangs on it."""
    asked = [each for each in recording.findings if each.asks]
    if not asked:
        return
    display = state.display()
    st.subheader(display.say("own-road-asked"), anchor=False)
    for column in dict.fromkeys(each.column for each in asked):
        for finding in asked:
            if finding.column == column:
                st.markdown(finding_words(finding, None, display))
        choose_unit(recording, column)


def explain(recording: Recording, doubt: Doubt | None) -> None:
    """What was recognised, cleaned and found; each can be corrected while the file is there."""
    display = state.display()
    if len(recording.parts) > 1:
        asked = st.session_state["reading"]["part"]
        st.session_state["recording-part"] = recording.part if asked is None else asked
        st.selectbox(
            display.say("own-road-parts"), range(len(recording.parts)), key="recording-part", on_change=take_part,
            format_func=lambda place: part_words(recording.parts, place, display),
        )  # fmt: skip
    tell_recognised(recording)
    if recording.route is None:
        tell_cleaned(recording)
    if found := [each for each in recording.findings if not each.asks]:
        st.subheader(display.say("own-road-found"), anchor=False)
        st.markdown("\n".join(f"- {finding_words(finding, doubt, display)}" for finding in found))


def choose_unit(recording: Recording, meaning: str) -> None:
    """The units that a column may be in, where the file is still there; heights can be put into another without."""
    column = next((each for each in recording.columns if each.meaning == meaning), None)
    key = f"unit-of-{meaning}"
    if column is None or not (can_be_read_anew() or meaning == HEIGHT) or len(UNITS[meaning]) < 2:
        return
    st.session_state[key] = column.unit
    st.segmented_control(
        state.display().say("own-road-unit-of", column=inert(column.name)), UNITS[meaning], key=key, required=True,
        on_change=lambda: take_meaning(column.name, meaning, st.session_state[key]),
    )  # fmt: skip


def tell_recognised(recording: Recording) -> None:
    """What columns were taken for; each can be corrected while the file is there, without it the unit of heights."""
    display = state.display()
    st.subheader(display.say("own-road-recognised"), anchor=False)
    names = [display.say("own-road-column"), display.say("own-road-meaning"), display.say("own-road-unit")]
    not_read = display.say("own-road-not-read")
    # a page reads cells as Markdown
    rows = [(inert(each.name), meaning_words(each.meaning, display) if each.meaning else not_read, each.unit)
            for each in recording.columns]  # fmt: skip
    st.table(pd.DataFrame(rows[:MOST_COLUMNS], columns=names), border="horizontal", hide_index=True)
    is_asked = any(each.asks and each.column == HEIGHT for each in recording.findings)
    can_be_said = column_of_heights(recording) is not None and not is_asked
    if can_be_read_anew() or can_be_said:
        with st.expander(display.say("own-road-correct"), type="compact", key="recording-correct"):
            if can_be_read_anew():
                correct(recording.columns)
            else:
                choose_unit(recording, HEIGHT)


def tell_cleaned(recording: Recording) -> None:
    """What each step of cleaning did; where the file is gone, a step is switched for when it is opened again."""
    display = state.display()
    reading = st.session_state["reading"]
    st.subheader(display.say("own-road-cleaning"), anchor=False)
    done = {effect.step: effect for effect in recording.effects}
    for step in STEPS:
        if step not in done and step not in reading["off"]:
            continue
        words = effect_words(done[step], display) if step in done else display.say("own-road-step", step=step)
        st.session_state[f"clean-{step}"] = step not in reading["off"]
        st.toggle(words, key=f"clean-{step}", on_change=switch, args=(step,))
        if step in done and done[step].is_large:
            st.caption(display.say("own-road-large"))
    if not can_be_read_anew():
        st.caption(display.say("own-road-not-kept"))


def correct(columns: Sequence[Column]) -> None:
    """For each column what it means, and in which unit."""
    display = state.display()
    choices = [(NOT_READ, ""), *((meaning, unit) for meaning, units in UNITS.items() for unit in units)]

    def said(choice: tuple[str, str]) -> str:
        meaning, unit = choice
        return f"{meaning_words(meaning, display)} ({unit})" if meaning else display.say("own-road-not-read")

    for place, each in enumerate(columns[:MOST_COLUMNS]):
        st.session_state[f"column-{place}"] = (each.meaning, each.unit)
        st.selectbox(
            inert(each.name) or "–", choices, key=f"column-{place}", format_func=said, on_change=take_column,
            args=(place, each.name),
        )  # fmt: skip


def take_column(place: int, name: str) -> None:
    """Read the file anew with another meaning of a column."""
    take_meaning(name, *st.session_state[f"column-{place}"])


def take_part() -> None:
    """Take another stretch between gaps."""
    st.session_state["reading"]["part"] = st.session_state["recording-part"]
    read_anew()


def switch(step: str) -> None:
    """Read the file anew with a step of cleaning left out or put in."""
    st.session_state["reading"]["off"] ^= {step}
    read_anew()


line = st.container()
choose()
with line:
    draw_answer_line(with_answer=False, driven=line_words(held(), state.display()))
if refusal := st.session_state.get("recording-refused"):
    st.error(inert(refusal_words(refusal, state.display())))
    if columns := st.session_state.get("recording-columns"):
        with st.expander(state.display().say("own-road-say"), type="compact", key="recording-say", expanded=True):
            correct(columns)
if (recording := held()) is not None:
    ask(recording)
    answering, explaining = st.columns([11, 10], gap="large")
    doubt = None
    try:
        with answering, st.container(key="own-road-found"):
            doubt = doubt_of_recording(recording, show(recording))
    except InputError as refused:
        st.error(inert(refusal_words(refused, state.display())))
    with explaining:
        explain(recording, doubt)
