"""A server whose only page fails on request, with the app's own answer to errors."""

from pathlib import Path

import streamlit as st

from app import show_one_sentence

app = st.App(Path(__file__).parent / "broken_page.py", on_script_error=show_one_sentence)
