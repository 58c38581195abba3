"""One figure: its finding as a title, the picture, and the table behind it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import partial

import pandas as pd
import pyarrow as pa  # type: ignore[import-untyped]
import streamlit as st
from pandas.io.formats.style import Styler

from model import MODEL_DATE, MODEL_VERSION
from model.describe.brought import inert_cell
from model.describe.figures import Quantity
from model.words.print import source_line
from pages.parts import folding, redrawn, state
from pages.parts.charts import export
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


@dataclass(frozen=True)
class Picture:
    """A picture, its finding, and the numbers behind it.

    Parameters
    ----------
    chart : Spec
        From `pages.parts.charts`.
    alt : str
        What the chart shows, in words: all that a screen reader gets of the picture.
    table : DataFrame or callable
        The numbers behind it; column names carry the units.
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

    chart: Spec
    alt: str
    table: TableOrMaker
    title: str = ""
    words: str = ""
    file: TableOrMaker | None = None
    about: str | None = None
    folds: bool = True


CsvNow = dict[str, Callable[[], str]]
"""What makes a figure's file as it was drawn last, under its key: asked for outside of any session, it must not ask
the session for the drive."""


def figure(make: Callable[[], Picture], key: str, file_name: str) -> None:
    """Draw a figure: the finding, the picture, and below what is behind it.

    Parameters
    ----------
    make : callable
        Makes it of the drive as it is; asked again where the picture is redrawn.
    key : str
        What it is known by while its numbers change.
    file_name : str
        Of the table as a file, ending in `.csv`.
    """
    # a row that wraps: what stands below the picture needs no row of its own
    with st.container(key=f"figure-{key}", width=WIDTH_PX, horizontal=True, vertical_alignment="center"):
        csv: CsvNow = {}
        if folding.folds():
            redrawn.part(f"figure-{key}", partial(draw_folded, make, key, file_name, csv))
        else:
            redrawn.part(f"figure-{key}", partial(draw_picture, make, key, csv))
            offer(make, key, file_name, csv)


def draw_picture(make: Callable[[], Picture], key: str, csv: CsvNow) -> None:
    """The finding and the picture."""
    shown = make()
    note_file(shown, key, csv)
    if shown.title or shown.words:
        st.markdown(titled(together(shown.title), together(shown.words)) if shown.title else together(shown.words))
    draw_chart(shown.chart, alt=shown.alt, key=f"{key}-chart")


def note_file(shown: Picture, key: str, csv: CsvNow) -> None:
    """Note what makes the file of what is drawn."""
    about = described(state.scenario(), state.display()) if shown.about is None else shown.about
    csv[key] = partial(csv_text, shown.table if shown.file is None else shown.file, about)


def draw_folded(make: Callable[[], Picture], key: str, file_name: str, csv: CsvNow) -> None:
    """On a telephone: a finding stands above a picture that is folded, its words with the picture."""
    shown = make()
    if not (shown.title and shown.folds):
        draw_picture(make, key, csv)
        offer(make, key, file_name, csv)
        return
    note_file(shown, key, csv)
    st.markdown(titled(together(shown.title), ""))
    with folding.folded(state.display().say("figure-fold"), key) as is_open:
        if is_open:
            if shown.words:
                st.markdown(together(shown.words))
            draw_chart(shown.chart, alt=shown.alt, key=f"{key}-chart")
            with st.container(horizontal=True, vertical_alignment="center"):
                offer(make, key, file_name, csv)


def offer(make: Callable[[], Picture], key: str, file_name: str, csv: CsvNow) -> None:
    """The table, the file and the picture for print; they stay as they are while the picture is redrawn."""
    say = state.display().say
    as_table = st.toggle(say("as-a-table"), key=f"{key}-as-table")
    st.download_button(
        say("csv-file"), lambda: csv[key](), file_name, "text/csv", key=f"{key}-file", on_click="ignore",
        type="tertiary", icon=":material/download:",
    )  # fmt: skip
    if st.toggle(say("for-print"), key=f"{key}-for-print"):
        redrawn.part(f"print-{key}", partial(draw_print, make, key, file_name))
    if as_table:
        redrawn.part(f"table-{key}", partial(draw_table, make))


def draw_print(make: Callable[[], Picture], key: str, file_name: str) -> None:
    """The picture for print."""
    shown = make()
    name = file_name.removesuffix(".csv")
    print_files(shown.chart, shown.title or shown.alt, shown.about, key=key, name=name)


def draw_table(make: Callable[[], Picture]) -> None:
    """The table, as far as it is shown."""
    shown = make()
    rows = made(shown.table)
    st.table(evenly(rows.head(MOST_ROWS)), border="horizontal", hide_index=True, alt=shown.alt)
    if len(rows) > MOST_ROWS:
        first = Quantity(len(rows), "", places=0)
        st.caption(state.display().say("first-rows", shown=MOST_ROWS, rows=first))
