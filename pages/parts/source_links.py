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
from model.words.quantities import Display, capital
from model.words.sources import cited, how_read, published_on
from pages.parts.wording import together


def linked(source: Source) -> str:
    """The source’s name, as a Markdown link where it has an address."""
    return f"[{source.name}]({source.address})" if source.address else source.name


def cited_with_links(ids: Iterable[str], display: Display) -> str:
    """Some sources with their dates, in a row."""
    told = tuple(cited(sources()[one], display, linked(sources()[one])) for one in ids)
    return display.figure(Several(told, ";"))


def sources_table(display: Display) -> pd.DataFrame:
    """Every source with its link, its date, and how and when it was read."""
    say = display.say
    table = [
        [linked(one) if one.address else f"{one.name} ({say('source-no-address')})" if one.read else one.name,
         published_on(one, display) if one.read else "–", one.read or "–", say("source-how", how=how_read(one))]
        for one in sources().values()
    ]  # fmt: skip
    columns = (say("column-source"), say("column-published-on"), say("column-read"), say("column-what-was-read"))
    return pd.DataFrame(table, columns=columns)


def measured_number(one: Measurement, display: Display) -> str:
    """A published number with its unit."""
    if math.isinf(one.low):
        high = display.figure(Quantity(one.high, one.unit, 4, trimmed=True))
        return together(display.say("measured-at-most", high=high))
    return together(display.figure(Span(one.low, one.high, one.unit, 4, trimmed=True)))


def conditions_words(one: Measurement, display: Display) -> str:
    """What is known of a measurement’s conditions; a dash where nothing is."""
    told = tuple(condition(INPUTS[key], Extent(values), display) for key, values in one.conditions.items())
    return display.figure(Several(told)) if told else "–"


def measurements_table(display: Display) -> pd.DataFrame:
    """Every published number that claims are held against."""
    say = display.say
    table = [
        [measured_number(one, display), capital(one.what), conditions_words(one, display), one.kind, linked(one.source)]
        for one in measurements()
    ]  # fmt: skip
    columns = (say("column-number"), say("column-what-measured"), say("column-conditions"), say("column-kind"))
    return pd.DataFrame(table, columns=[*columns, say("column-source")])
