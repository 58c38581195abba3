"""The drive and its answer to take along: a card to print, files, a link, and a way to open them again."""

from __future__ import annotations

from datetime import date
from functools import partial
from threading import Thread

import streamlit as st

from model import MODEL_DATE, MODEL_VERSION
from model.describe.fields import InputError
from model.describe.scenario import Scenario
from model.kernel.savings import Result
from model.kernel.timeline import slow_downs, timeline
from model.limits.limit_settings import LimitSettings
from model.out.answers import Asked, as_text, drive_answer
from model.words.quantities import Value
from model.words.refusals import refusal_words
from pages.parts import description, link, opening, redrawn, showroom, state, winter_words
from pages.parts.charts import export
from pages.parts.charts.drive_strip import drive_strip, strip_finding
from pages.parts.drive_part import last_answer
from pages.parts.figure import offer_print
from pages.parts.plain_text import inert
from pages.parts.public_link import public_link, qr_svg, short_text
from pages.parts.report import TakeAway, report_html, sheets_html
from pages.parts.report import about as described
from pages.parts.theme import Spec

QR_PX = 240
CSV_DIGITS = "%.6g"


def say(name: str, **values: Value) -> str:
    """A message to the visitor."""
    return state.display().say(name, **values)


@st.cache_resource
def warm_up() -> Thread:
    """The first picture of a process takes a second longer: it is drawn while the visitor still reads."""
    thread = Thread(target=export.warm_up, daemon=True)
    thread.start()
    return thread


def answer_text(scenario: Scenario, band_runs: int, year_runs: int) -> str:
    """Everything about the drive as one JSON text."""
    return as_text(drive_answer(Asked(scenario, band_runs=band_runs, year_runs=year_runs, advice=True)))


def timeline_text(result: Result, about: str) -> str:
    """The drive step by step as CSV, each row with what it is about and the model, as in every file."""
    steps = timeline(result).assign(about=about, model_version=MODEL_VERSION, model_date=MODEL_DATE)
    return steps.to_csv(index=False, float_format=CSV_DIGITS)


def taken() -> TakeAway:
    """All that the card says of the drive shown."""
    scenario = state.shown()
    bands, advised = state.answer(scenario), state.lift_off()
    assert bands is not None
    asked = LimitSettings()
    return TakeAway(
        scenario=scenario,
        result=state.outcome(scenario).given,
        answer=bands,
        year=state.year(scenario),
        year_fuel=state.year_fuel(scenario),
        glance=winter_words.glance(state.limits_at_a_glance(asked), asked, state.display()),
        slowing_in_winter=winter_words.slowing_expected(state.slowing_in_winter(), state.display()),
        advice=advised.advice.overall if advised else None,
        described_s=state.described_duration_s(scenario),
        link=link.link_of(scenario, state.display()),
        display=state.display(),
        band_runs=state.BAND_RUNS,
        made=date.today(),
        line=showroom.current().line,
    )


def take() -> None:
    """The card and the files; these are made when they are asked for."""
    # the card stands beside what is done with it, and between them where there is no room: assets/style.css
    with st.container(key="take"):
        with st.container(key="take-hand"):
            redrawn.part("take-hand", print_and_keep)
        with st.container(key="sheets"):
            # its picture takes a moment
            redrawn.part("sheets", lambda: st.html(sheets_html(taken())), when=redrawn.When.FIRST, beside=True)
        with st.container(key="take-more"):
            redrawn.part("take-more", files_and_link)


def file_name(scenario: Scenario) -> str:
    """How every file of a drive is called at its beginning."""
    return f"brake-to-battery-{scenario.car_class}"


def print_and_keep() -> None:
    """What is done with the card: printed first of all, shared, or kept as a file."""
    card = taken()
    st.header(say("take-print-heading"), anchor=False)
    st.markdown(say("take-print-words"))
    with st.container(horizontal=True):
        # the browser does what these two say: assets/own.js
        st.button(say("take-print"), key="take-print", type="primary", icon=":material/print:")
        if public_link(card.link):
            st.button(say("take-share"), key="take-share", icon=":material/share:")
        st.download_button(
            say("take-page"), partial(report_html, card), f"{file_name(card.scenario)}.html", "text/html",
            key="take-page", on_click="ignore", icon=":material/download:",
        )  # fmt: skip


def files_and_link() -> None:
    """What is for who checks, and for another screen."""
    scenario = state.shown()
    files_to_check(scenario, state.outcome(scenario).given)
    hand_over(scenario)


def files_to_check(scenario: Scenario, result: Result) -> None:
    """The answer, the timeline and the picture of the drive as files."""
    name = file_name(scenario)
    with st.expander(say("take-check-heading"), type="compact", key="take-check-drawer"):
        st.markdown(say("take-check-words"))
        with st.container(horizontal=True):
            st.download_button(
                say("take-answer"), partial(answer_text, scenario, state.BAND_RUNS, state.BAND_RUNS), f"{name}.json",
                "application/json", key="take-answer", on_click="ignore", icon=":material/download:",
            )  # fmt: skip
            st.download_button(
                say("take-timeline"), partial(timeline_text, result, described(scenario, state.display())),
                f"{name}-timeline.csv", "text/csv", key="take-timeline", on_click="ignore", icon=":material/download:",
            )  # fmt: skip
        offer_print(
            partial(strip_picture, result), None, key="take-strip", name=f"{name}-drive", label=say("print-strip")
        )  # fmt: skip


def strip_picture(result: Result) -> tuple[Spec, str]:
    """The drive strip, and what it shows."""
    steps, events = timeline(result), slow_downs(result)
    return drive_strip(steps, events, state.display()), strip_finding(steps, events, state.display())


def hand_over(scenario: Scenario) -> None:
    """The link with its code; without a public address, the text that stands for it."""
    parameters = link.link_of(scenario, state.display())
    whole = public_link(parameters)
    if not whole:
        with st.expander(say("take-over-heading"), type="compact", key="take-over-drawer"):
            st.markdown(say("take-over-text"))
            st.code(short_text(parameters), language=None, wrap_lines=True)
        return
    st.header(say("take-over-heading"), anchor=False)
    if code := qr_svg(whole):
        st.markdown(say("take-over-scan"))
        st.image(code, width=QR_PX, alt=say("take-over-qr"))
    st.code(whole, language=None, wrap_lines=True)


def take_over(found: opening.Opened) -> None:
    """Make an opened drive the session's, and keep what is to say about it until something changes."""
    state.put_whole(found.scenario)
    st.session_state["opened"] = found


def open_text() -> None:
    """Open what was pasted."""
    text = st.session_state["open-text"]
    st.session_state.pop("open-refused", None)
    if not text.strip():
        return
    try:
        take_over(opening.from_text(text, state.scenario(), state.display()))
    except InputError as refused:
        st.session_state["open-refused"] = refusal_words(refused, state.display())


def open_file() -> None:
    """Open what was uploaded."""
    file = st.session_state["open-file"]
    st.session_state.pop("open-refused", None)
    if file is None:
        return
    try:
        take_over(opening.from_file(file.getvalue(), file.name, state.display()))
    except InputError as refused:
        st.session_state["open-refused"] = refusal_words(refused, state.display())


def open_again() -> None:
    """A text field and a place for a file; what was opened, or why it could not be."""
    st.header(say("take-open-heading"), anchor=False)
    pasting, choosing = st.columns([11, 10], gap="large")
    with pasting, st.form("open-form", border=False):
        st.text_input(say("take-open-label"), key="open-text", max_chars=10_000)
        st.form_submit_button(say("take-open-text"), on_click=open_text)
    with choosing:
        st.file_uploader(
            say("take-open-file"), ["json", "html"], key="open-file",
            on_change=open_file, max_upload_size=2,
        )  # fmt: skip
    if sentence := st.session_state.get("open-refused"):
        st.error(inert(sentence))
    redrawn.part("opened", say_opened)


def say_opened() -> None:
    """What was opened, until something changes."""
    found = st.session_state.get("opened")
    if found is not None and found.scenario == state.scenario():
        result = state.outcome().result
        display = state.display()
        moved = opening.moved_words(found.said_share, result.saved_share if result else None, display)
        car, drive = description.car_words(found.scenario, display), description.drive_words(found.scenario, display)
        opened = say("take-opened", car=car, drive=drive)
        st.success(" ".join(word for word in (opened, *map(inert, found.notices), moved) if word))
        st.page_link("your_drive.py", label=say("take-go"), query_params=link.own_link())


warm_up()
drawn = state.outcome(state.shown())
if drawn.result is None:
    st.error(state.refusal_of(drawn))
else:
    with last_answer("taken"):
        take()
open_again()
