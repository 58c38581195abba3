"""A server with nothing but one page of one chart: what a page costs before it says anything."""

from pathlib import Path

import streamlit as st

from app import warm_start

app = st.App(Path(__file__).parent / "empty_page.py", lifespan=warm_start)
