"""One figure: its finding as a title, the picture, and the table behind it."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import nullcontext
from functools import partial

import pandas as pd
import pyarrow as pa  # type: ignore[import-untyped]
import streamlit as st
from pandas.io.formats.style import Styler

from model import MODEL_DATE, MODEL_VERSION
from model.describe.brought import inert_cell
from model.describe.figures import Quantity
from model.words.print import source_line
from pages.parts import folding, state
from pages.parts.charts import export
from pages.parts.folding import folded
from pages.parts.public_link import public_base
from pages.parts.report import about as described
from pages.parts.theme import WIDTH_PX, Rows, Spec
from pages.parts.typography import together

TableOrMaker = pd.DataFrame | Callable[[], pd.DataFrame]
"""A table, or what makes it: most visitors never ask for it."""
MOST_ROWS = 100
"""Rows that a table shows; the file has all of them."""


def draw_chart(chart: Spec, *, alt: str, key: str) -> None:
    """Draw a chart in its own type and colours, known to Streamlit by `key`; `alt` says what it shows."""
    drawn = chart | {"datasets": {name: columns_of(rows) for name, rows in chart["datasets"].items()}}
    st.vega_lite_chart(drawn, theme=None, alt=alt, key=key, width="stretch")


def columns_of(rows: Rows) -> pa.Table:
    """The columns of a table as they are sent; Streamlit's own way from a data frame takes ten times as long."""
    if isinstance(rows, list):
        return pa.Table.from_pylist(rows)
    columns = {name: rows[name].to_numpy() for name in rows} if isinstance(rows, pd.DataFrame) else rows
    return pa.table({str(name): pa.array(values, from_pandas=True) for name, values in columns.items()})


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


def csv_text(table: TableOrMaker, about: str = "") -> str:
    """A table as a file, each row with what it is about, the version of the model and the day from which it holds."""
    cells = made(table).map(inert_cell)
    if about:
        cells = cells.assign(about=str(inert_cell(about)))
    return cells.assign(model_version=MODEL_VERSION, model_date=MODEL_DATE).to_csv(index=False)


def print_files(chart: Spec, title: str, about: str | None, *, key: str, name: str) -> None:
    """The picture as files to print, with what it is about and where it is from on it; drawn when asked for.

    `about` is None for the described car and drive; `key` is what the figure is known by, `name` that of its files.
    """
    display = state.display()
    about_it = described(state.scenario(), display) if about is None else about
    below = [*filter(None, [about_it]), source_line(display, public_base())]
    with st.container(horizontal=True, vertical_alignment="center"):
        clear = st.toggle(display.say("print-transparent"), key=f"{key}-transparent")
        picture = partial(export.for_print, chart, title, below, clear)
        for ending, make, mime in (("svg", print_svg, "image/svg+xml"), ("png", print_png, "image/png")):
            st.download_button(
                display.say("print-svg") if ending == "svg" else display.say("print-png"), partial(make, picture),
                f"{name}.{ending}", mime, key=f"{key}-{ending}", on_click="ignore", type="tertiary",
                icon=":material/download:",
            )  # fmt: skip


def offer_print(
    picture: Callable[[], tuple[Spec, str]], about: str | None, *, key: str, name: str, label: str = ""
) -> None:
    """The same for a picture that stands without a table of its own, behind a switch; `picture` makes it and its title.

    Most visitors never ask for it.
    """
    if st.toggle(label or state.display().say("for-print"), key=f"{key}-for-print"):
        print_files(*picture(), about, key=key, name=name)


def print_svg(picture: Callable[[], Spec]) -> str:
    """A picture as SVG text."""
    return export.svg(picture(), export.PRINT_PX)


def print_png(picture: Callable[[], Spec]) -> bytes:
    """A picture as pixels."""
    return export.png(picture(), export.PRINT_PX)


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
    about: str | None = None,
    folds: bool = True,
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
    about : str, optional
        What it is about, to stand on the printed picture and in each row of the file; the described car and drive if
        left out.
    folds : bool
        Whether a telephone folds it below its finding.
    """
    say = state.display().say
    about_it = described(state.scenario(), state.display()) if about is None else about
    # a row that wraps: what stands below the picture needs no row of its own
    with st.container(key=f"figure-{key}", width=WIDTH_PX, horizontal=True, vertical_alignment="center"):
        fold = folds and bool(title) and folding.folds()
        first = "" if fold else together(words)
        if title or words:
            st.markdown(titled(together(title), first) if title else first)
        with folded(say("figure-fold"), key) if fold else nullcontext(True) as is_open:
            if not is_open:
                return
            if fold and words:
                st.markdown(together(words))
            draw_chart(chart, alt=alt, key=f"{key}-chart")
            with st.container(horizontal=True, vertical_alignment="center") if fold else nullcontext():
                as_table = st.toggle(say("as-a-table"), key=f"{key}-as-table")
                st.download_button(
                    say("csv-file"),
                    partial(csv_text, table if file is None else file, about_it),
                    file_name,
                    "text/csv",
                    key=f"{key}-file",
                    on_click="ignore",
                    type="tertiary",
                    icon=":material/download:",
                )
                for_print = st.toggle(say("for-print"), key=f"{key}-for-print")
            if for_print:
                print_files(chart, title or alt, about, key=key, name=file_name.removesuffix(".csv"))
            if as_table:
                rows = made(table)
                st.table(evenly(rows.head(MOST_ROWS)), border="horizontal", hide_index=True, alt=alt)
                if len(rows) > MOST_ROWS:
                    st.caption(say("first-rows", shown=MOST_ROWS, rows=Quantity(len(rows), "", places=0)))
