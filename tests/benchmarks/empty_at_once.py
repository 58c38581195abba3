"""The server with nothing but one page of one chart, its answers sent as ours are: without waiting for confirmation."""

from pathlib import Path

import streamlit as st

from app import start

app = st.App(Path(__file__).parent / "empty_page.py", lifespan=start)
