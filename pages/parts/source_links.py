"""Sources on a page: links to them, their table, and that of what was measured. Links come from our own table alone."""

from __future__ import annotations

import math
from collections.abc import Iterable

import pandas as pd

from model.claims.evidence import Measurement, measurements
from model.claims.inputs import INPUTS, Extent
from model.describe.figures import Quantity, Several, Span
from model.describe.sources import Source, sources
from model.words.claim_inputs import condition
from model.words.evidence import as_published, measured_what
from model.words.quantities import Display, capital
from model.words.sources import cited, how_read, published_on
from pages.parts.typography import together


def linked(source: Source) -> str:
    """The source’s name, as a Markdown link where it has an address."""
    return f"[{source.name}]({source.address})" if source.address else source.name


def cited_with_links(ids: Iterable[str], display: Display) -> str:
    """Some sources with their dates, in a row."""
    entries = tuple(cited(sources()[source_id], display, linked(sources()[source_id])) for source_id in ids)
    return display.figure(Several(entries, ";"))


def sources_table(display: Display) -> pd.DataFrame:
    """Every source with its link, its date, and how and when it was read."""
    say = display.say
    table = [
        [
            linked(source) if source.address or not source.read else f"{source.name} ({say('source-no-address')})",
            published_on(source, display) if source.read else "–",
            source.read or "–",
            say("source-how", how=how_read(source)),
        ]
        for source in sources().values()
    ]
    columns = (say("column-source"), say("column-published-on"), say("column-read"), say("column-what-was-read"))
    return pd.DataFrame(table, columns=columns)


def measured_number(measurement: Measurement, display: Display) -> str:
    """A published number with its unit."""
    if said := as_published(measurement, display):
        return said
    if math.isinf(measurement.low):
        high = display.figure(Quantity(measurement.high, measurement.unit, 4, trimmed=True))
        return together(display.say("measured-at-most", high=high, ruled=measurement.kind == "regulation"))
    return together(display.figure(Span(measurement.low, measurement.high, measurement.unit, 4, trimmed=True)))


def conditions_words(measurement: Measurement, display: Display) -> str:
    """What is known of a measurement’s conditions; a dash where nothing is."""
    known = measurement.conditions.items()
    conditions = tuple(condition(INPUTS[key], Extent(values), display) for key, values in known)
    return display.figure(Several(conditions)) if conditions else "–"


def measurements_table(display: Display) -> pd.DataFrame:
    """Every published number that claims are held against."""
    say = display.say
    table = [
        [
            measured_number(measurement, display),
            capital(measured_what(measurement, display)),
            conditions_words(measurement, display),
            measurement.kind,
            linked(measurement.source),
        ]
        for measurement in measurements()
    ]
    columns = (say("column-number"), say("column-what-measured"), say("column-conditions"), say("column-kind"))
    return pd.DataFrame(table, columns=[*columns, say("column-source")])
