"""One title and one chart, whose size depends on the address."""

import altair as alt
import pandas as pd
import streamlit as st

value = float(st.query_params.get("ambient_c", 0))
if "by_hand" in st.query_params:
    value = st.number_input("Value", value=value, step=1.0, key="step-value")
st.title("A page with one chart")
table = pd.DataFrame({"x": range(200), "y": [value * x for x in range(200)]})
st.altair_chart(alt.Chart(table).mark_line().encode(x="x", y="y"))
