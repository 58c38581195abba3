"""One figure: its finding as a title, the picture, and the table behind it."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial

import pandas as pd
import pyarrow as pa  # type: ignore[import-untyped]
import streamlit as st
from pandas.io.formats.style import Styler

from model import MODEL_DATE, MODEL_VERSION
from model.describe.figures import Quantity
from pages.parts import state
from pages.parts.theme import WIDTH_PX, Spec
from pages.parts.wording import together

TableOrMaker = pd.DataFrame | Callable[[], pd.DataFrame]
"""A table, or what makes it: most visitors never ask for it."""
MOST_ROWS = 100
"""Rows that a table shows; the file has all of them."""


def draw_chart(chart: Spec, *, alt: str, key: str) -> None:
    """Draw a chart in its own type and colours, known to Streamlit by `key`; `alt` says what it shows."""
    drawn = chart | {"datasets": {name: columns_of(rows) for name, rows in chart["datasets"].items()}}
    st.vega_lite_chart(drawn, theme=None, alt=alt, key=key, width="stretch")


def columns_of(rows: pd.DataFrame) -> pa.Table:
    """The columns of a table as they are sent; Streamlit's own way from a data frame takes ten times as long."""
    return pa.table({str(name): pa.array(rows[name].to_numpy(), from_pandas=True) for name in rows})


def titled(title: str, words: str) -> str:
    """A small title and the words below it; one text is sent sooner than two."""
    return f"### {title}\n\n{words}".rstrip()


def evenly(table: pd.DataFrame) -> Styler:
    """The table with as many decimals in every number of a column as its longest needs."""
    places = {
        name: next(digits for digits in range(7) if digits == 6 or table[name].equals(table[name].round(digits)))
        for name in table.select_dtypes("float")
    }
    return table.style.format({name: f"{{:,.{digits}f}}" for name, digits in places.items()})


def made(table: TableOrMaker) -> pd.DataFrame:
    """The table itself."""
    return table() if callable(table) else table


def csv_text(table: TableOrMaker) -> str:
    """A table as a file, each row with the version of the model and the day from which it holds."""
    return made(table).assign(model_version=MODEL_VERSION, model_date=MODEL_DATE).to_csv(index=False)


def figure(
    chart: Spec,
    *,
    alt: str,
    table: TableOrMaker,
    key: str,
    file_name: str,
    title: str = "",
    words: str = "",
    file: TableOrMaker | None = None,
    width: int = WIDTH_PX,
) -> None:
    """Draw a chart with its finding above and its table and file below.

    Parameters
    ----------
    chart : Spec
        From `pages.parts.charts`.
    alt : str
        What the chart shows, in words: all that a screen reader gets of the picture.
    table : DataFrame or callable
        The numbers behind it; column names carry the units.
    key : str
        What the figure is known by while its numbers change.
    file_name : str
        Of the table as a file, ending in `.csv`.
    title, words : str
        The finding and a few sentences on it, if they stand with the chart.
    file : DataFrame or callable, optional
        Finer rows than the table's, for the file.
    width : int
        The most it takes of the page's width [px].
    """
    say = state.display().say
    with st.container(key=f"figure-{key}", width=width, gap="small"):
        if title or words:
            st.markdown(titled(together(title), together(words)) if title else together(words))
        draw_chart(chart, alt=alt, key=f"{key}-chart")
        with st.container(horizontal=True, vertical_alignment="center"):
            as_table = st.toggle(say("as-a-table"), key=f"{key}-as-table")
            st.download_button(
                say("csv-file"),
                partial(csv_text, table if file is None else file),
                file_name,
                "text/csv",
                key=f"{key}-file",
                on_click="ignore",
                type="tertiary",
                icon=":material/download:",
            )
        if as_table:
            rows = made(table)
            st.table(evenly(rows.head(MOST_ROWS)), border="horizontal", hide_index=True, alt=alt)
            if len(rows) > MOST_ROWS:
                st.caption(say("first-rows", shown=MOST_ROWS, rows=Quantity(len(rows), "", places=0)))
