"""What a session holds of a recording: the drive that was read, and the file without its positions to read it anew."""

from __future__ import annotations

import zlib

import streamlit as st
from streamlit.runtime.scriptrunner import get_script_run_ctx
from streamlit.runtime.uploaded_file_manager import UploadedFile

from model.describe.fields import InputError, from_link
from model.describe.scenario import Driver
from model.traces.logs import Recording, as_driven, read_recording
from model.traces.recorded_csv import without_positions
from model.traces.route_only import ROUTE_FIELDS, RouteSettings, drive_route, settings_with
from pages.parts import state
from pages.parts.own_road_words import SAMPLE

FITTED = ("recording-fit", "recording-fit-refused")
HELD = ("recording", "recording-is-sample", "recording-refused", "recording-kept", *FITTED)


def held() -> Recording | None:
    """The recording that was read last, a route driven as it is asked now; None where there is none."""
    found: Recording | None = st.session_state.get("recording")
    if found is None or found.route is None:
        return found
    return as_driven(found.route, drive_route(found.route, *driven_by(), found.trace.name))


def driven_by() -> tuple[Driver, RouteSettings]:
    """Who drives a route without times, and how: the habits described, and the page's own settings."""
    given, _ = from_link(ROUTE_FIELDS, st.query_params.to_dict())
    return state.scenario().driver, settings_with(given)


def can_be_read_anew() -> bool:
    """Whether the file, or what is left of it, is still there to be read another way."""
    return "recording-kept" in st.session_state


def forget() -> None:
    """Drop what is held of a recording, and which steps were left out of the one before."""
    for key in HELD:
        st.session_state.pop(key, None)
    columns = st.session_state.get("reading", {}).get("columns", {})
    # what columns mean is kept for the next file of the same program
    st.session_state["reading"] = {"columns": columns, "off": frozenset(), "part": None}


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
    forget()
    read(data, name)


def let_go(file: UploadedFile) -> None:
    """Take a file out of the toolkit's store, which would keep it as long as the session, and empty its place."""
    context = get_script_run_ctx()
    if context is not None and hasattr(context.uploaded_file_mgr, "remove_file"):
        context.uploaded_file_mgr.remove_file(context.session_id, file.file_id)
    st.session_state["recording-turn"] = st.session_state.get("recording-turn", 0) + 1


def open_sample() -> None:
    """Read the invented drive."""
    forget()
    st.session_state["recording-is-sample"] = True
    read(SAMPLE.read_bytes(), SAMPLE.name)


def read(data: bytes, name: str) -> None:
    """Read a file as it is to be read now, and keep the drive, or why there is none.

    Of the file is kept, packed, what is not a position; of positions alone nothing, since they are of no more use once
    distance and slope are known.
    """
    for key in ("recording-refused", *FITTED):
        st.session_state.pop(key, None)
    reading = st.session_state["reading"]
    try:
        st.session_state["recording"] = read_recording(data, name, **reading, route=driven_by())
    except InputError as refused:
        # one that was read another way before stays, and can be read that way again
        st.session_state["recording-refused"] = refused.with_traceback(None)
        return
    kept = b"" if name.lower().endswith(".gpx") else without_positions(data, name, reading["columns"])
    st.session_state.pop("recording-kept", None)
    if kept:
        st.session_state["recording-kept"] = zlib.compress(kept, 1), name


def read_anew() -> None:
    """Read what is kept of the file as it is to be read now."""
    if can_be_read_anew():
        packed, name = st.session_state["recording-kept"]
        read(zlib.decompress(packed), name)
