"""A page that fails on request between two inputs; as on the app's own pages, the session holds what was entered."""

import streamlit as st


def keep(key: str) -> None:
    """Store what a widget holds where a page that is not drawn cannot lose it."""
    st.session_state.entered[key] = st.session_state[key]


entered = st.session_state.setdefault("entered", {"stops": 4, "note": ""})
for key, value in entered.items():
    st.session_state[key] = value

st.title("A page that may fail")
stops = st.slider("Stops", 0, 20, key="stops", on_change=keep, args=("stops",))
st.write(f"{stops} stops, as the server knows it")
if st.toggle("Fail"):
    raise RuntimeError("a failure made on purpose")
st.text_input("Note", key="note", on_change=keep, args=("note",))
