"""What has been measured of a claim, on its page: tables with links, and rows for the picture of the runs."""

from __future__ import annotations

import math
from collections.abc import Sequence

import pandas as pd

from model.claims.evidence import Beside, Measurement, evidence
from model.claims.questions import Question
from model.words import evidence as spoken
from model.words.quantities import Display
from model.words.sources import cited
from pages.parts.charts.claims import BandRow
from pages.parts.source_links import linked
from pages.parts.typography import together


def short_source(measurement: Measurement) -> str:
    """Who published a number and when, in few words."""
    name, year = measurement.source.name.split(",")[0], measurement.source.published[:4]
    return f"{name}, {year}" if year else name


def rows_beside(asked: Question, display: Display) -> list[BandRow]:
    """What has been measured of the same thing, for the picture of the runs."""
    rows = []
    for beside in evidence(asked).same:
        measurement = beside.measurement
        number, what = spoken.number(measurement, display), spoken.measured_what(measurement, display)
        text = f"{short_source(measurement)}: {number}, {what}"
        low = measurement.high if math.isinf(measurement.low) else measurement.low
        rows.append(BandRow(together(text), low, measurement.high))
    return rows


def table(beside_claim: Sequence[Beside], display: Display) -> pd.DataFrame:
    """Measurements with source, date and kind, and what each says of the claim or why it does not count."""
    rows = []
    for beside in beside_claim:
        source = beside.measurement.source
        text = spoken.row_text(beside, cited(source, display, linked(source)), display)
        rows.append((together(spoken.number(beside.measurement, display)), together(text)))
    return pd.DataFrame(rows, columns=[display.say("column-number"), display.say("column-measured-by")])
