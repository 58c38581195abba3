"""The app with a fault: in deep cold the model gives no answer to what the page on winter asks."""

from functools import wraps
from pathlib import Path

import streamlit as st

from app import own_routes, show_one_sentence, start
from model.limits.cold_day import ColdDay
from pages.parts import state

COLD_C = -20.0
cold = state.cold


@wraps(cold)
def fail_in_deep_cold() -> ColdDay:
    """As it is, but for the fault."""
    if state.shown().conditions.ambient_c <= COLD_C:
        raise RuntimeError("a failure made on purpose")
    return cold()


state.cold = fail_in_deep_cold
app = st.App(
    Path(__file__).parents[2] / "pages" / "entrypoint.py",
    lifespan=start,
    routes=own_routes(),
    on_script_error=show_one_sentence,
)
