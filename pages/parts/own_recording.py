"""What a session holds of a recording: the drive that was read, and the file without its positions to read it anew."""

from __future__ import annotations

import zlib

import streamlit as st
from streamlit.runtime.scriptrunner import get_script_run_ctx
from streamlit.runtime.uploaded_file_manager import UploadedFile

from model.describe.fields import InputError, from_link
from model.describe.scenario import Driver
from model.traces.height_unit import HEIGHT, with_heights_in
from model.traces.logs import MOST_BYTES, Recording, driven_anew, read_recording
from model.traces.recorded_csv import HowFar, columns_in, without_positions
from model.traces.recorded_names import Column
from model.traces.route_only import ROUTE_FIELDS, RouteSettings, settings_with
from pages.parts import kept_columns, state
from pages.parts.own_road_words import SAMPLE

FITTED = ("recording-fit", "recording-fit-refused")
HELD = (
    "recording", "recording-given", "recording-is-sample", "recording-refused", "recording-columns", "recording-kept",
    "recording-answer", *FITTED,
)  # fmt: skip
OPEN = "recorded"
"""The parameter of the address that tells that a recording was open, and nothing else of it."""


def held() -> Recording | None:
    """The recording that was read last, a route driven as it is asked now; None where there is none."""
    found: Recording | None = st.session_state.get("recording")
    return found and driven_anew(found, *driven_by())


def driven_by() -> tuple[Driver, RouteSettings]:
    """Who drives a route without times, and how: the habits described, and the page's own settings."""
    given, _ = from_link(ROUTE_FIELDS, st.query_params.to_dict())
    return state.scenario().driver, settings_with(given)


def can_be_read_anew() -> bool:
    """Whether the file, or what is left of it, is still there to be read another way."""
    return "recording-kept" in st.session_state


def forget(name: str) -> None:
    """Drop what is held of a recording before one of some name is opened, and how it was to be read.

    What columns mean is kept for the next file of the same program. All else is kept where the same file is opened
    again since it could not be read anew.
    """
    before, was_kept = held(), can_be_read_anew()
    for key in HELD:
        st.session_state.pop(key, None)
    reading = st.session_state.get("reading") or {"columns": kept_columns.kept()}
    if before is None or was_kept or before.trace.name != name:
        reading = {"columns": reading["columns"], "off": frozenset(), "part": None}
    st.session_state["reading"] = reading


def place_for_file() -> str:
    """The key of the place for a file: another one after each file, since a place keeps what was put into it."""
    return "recording-file" + " " * (st.session_state.get("recording-turn", 0) % 2)


def open_file() -> None:
    """Read what was uploaded, and let go of it."""
    file: UploadedFile | None = st.session_state[place_for_file()]
    if file is None:
        return
    data, name = file.getvalue(), file.name
    let_go(file)
    forget(name)
    st.session_state["recording-given"] = data, name


def let_go(file: UploadedFile) -> None:
    """Take a file out of the toolkit's store, which would keep it as long as the session, and empty its place."""
    context = get_script_run_ctx()
    if context is not None and hasattr(context.uploaded_file_mgr, "remove_file"):
        context.uploaded_file_mgr.remove_file(context.session_id, file.file_id)
    st.session_state["recording-turn"] = st.session_state.get("recording-turn", 0) + 1


def open_sample() -> None:
    """Read the invented drive."""
    forget(SAMPLE.name)
    st.session_state["recording-is-sample"] = True
    st.session_state["recording-given"] = SAMPLE.read_bytes(), SAMPLE.name


def is_given() -> bool:
    """Whether there is a file that is still to be read."""
    return "recording-given" in st.session_state


def read_given(how_far: HowFar) -> None:
    """Read the file that was given, telling how far that is."""
    data, name = st.session_state.pop("recording-given")
    read(data, name, how_far)


def read(data: bytes, name: str, how_far: HowFar) -> None:
    """Read a file as it is to be read now, and keep the drive, or why there is none.

    Of the file is kept, packed, what is not a position; of positions alone nothing, since they are of no more use once
    distance and slope are known. A table that cannot be read is kept as it is: somebody may say what its columns mean.
    """
    for key in ("recording-refused", "recording-columns", *FITTED):
        st.session_state.pop(key, None)
    reading = st.session_state["reading"]
    try:
        st.session_state["recording"] = read_recording(data, name, **reading, route=driven_by(), how_far=how_far)
    except InputError as refused:
        # one that was read another way before stays, and can be read that way again
        st.session_state["recording-refused"] = refused.with_traceback(None)
        if held() is None and (columns := columns_of(data, name)):
            st.session_state["recording-columns"] = columns
            st.session_state["recording-kept"] = zlib.compress(data, 1), name
        return
    kept = b"" if is_gpx(name) else without_positions(data, name, reading["columns"])
    st.session_state.pop("recording-kept", None)
    if kept:
        st.session_state["recording-kept"] = zlib.compress(kept, 1), name


def columns_of(data: bytes, name: str) -> tuple[Column, ...]:
    """The columns of a table that is refused, as far as it has any."""
    if is_gpx(name) or len(data) > MOST_BYTES:
        return ()
    try:
        return columns_in(data, name, st.session_state["reading"]["columns"])
    except InputError:
        return ()


def is_gpx(name: str) -> bool:
    """Whether a file is read as GPX."""
    return name.lower().endswith(".gpx")


def take_meaning(name: str, meaning: str, unit: str) -> None:
    """Read the file anew with another meaning of a column, which is kept for the next file.

    Heights are put into another unit where the file is no longer there. Of a GPX file that is kept for no other: all of
    them call their heights alike, whatever they are in.
    """
    recording = held()
    if recording is None or not is_gpx(recording.trace.name):
        said = st.session_state["reading"]["columns"]
        said.pop(name, None)
        said[name] = meaning, unit
        kept_columns.keep(said)
    if can_be_read_anew():
        read_anew()
    elif recording is not None and meaning == HEIGHT:
        for key in FITTED:
            st.session_state.pop(key, None)
        off = st.session_state["reading"]["off"]
        st.session_state["recording"] = with_heights_in(recording, unit, off, driven_by())


def read_anew() -> None:
    """Have what is kept of the file read as it is to be read now."""
    if can_be_read_anew():
        packed, name = st.session_state["recording-kept"]
        st.session_state["recording-given"] = zlib.decompress(packed), name


def is_lost() -> bool:
    """Whether the address tells of a recording that the server no longer has; it is made to tell of one that it has."""
    if held() is None:
        return OPEN in st.query_params and not st.session_state.get("recording-refused")
    if OPEN not in st.query_params:
        st.query_params[OPEN] = "yes"
    return False
