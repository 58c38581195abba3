"""A tested claim in sentences from its numbers."""

from __future__ import annotations

import math
import re
from collections.abc import Mapping, Sequence
from typing import Any

import pandas as pd

from model.claims import CONDITIONS, UNJUDGED, Answer, Claim, Question, share_words
from model.denominators import PHRASES
from model.uncertainty import Band
from pages.parts.charts.claims import Grid, Row, Swing, claim_number
from pages.parts.claim_inputs import (
    HOLD,
    QUOTE,
    SHORT_PHRASES,
    capital,
    condition_text,
    ends_text,
    entry_label,
    held_together,
    label,
    lowered,
    part_text,
    said_conditions,
    step_text,
)
from pages.parts.display import MINUS, Display, number_text

GROUPS = {
    "Range and what comes back": (
        "range-gain-in-town", "recovered-on-test-cycle", "recovered-is-range", "range-gain-on-dynamometer",
        "range-lost-without", "free-charge-on-descents",
    ),
    "Speed and braking": (
        "electric-share-of-braking", "four-times-the-energy", "four-times-comes-back", "brakes-last-longer",
        "stops-as-fast-as-brakes", "two-megawatts", "switching-delay",
    ),
    "The foot": ("lift-off-changes-range", "one-pedal-saves", "coasting-always-wins"),
    "The car": (
        "heavier-recovers-more", "weight-costs-nothing", "bigger-motor-recovers-more", "hybrid-against-battery-car",
    ),
    "Cold and motorway": ("useless-in-winter", "cold-halves-range", "motorway-range"),
}  # fmt: skip
"""The claims in the order of the list."""


def conditions(answer: Answer, display: Display) -> list[str]:
    """The named conditions under which the claim is true, each on its own."""
    return [condition_text(bins.key, part_text(bins, steps, display)) for bins, steps in answer.region[0]]


def heading(answer: Answer) -> str:
    """The verdict as a sentence."""
    return f"This claim {answer.verdict}."


def band_of(answer: Answer) -> Band:
    """5, 50 and 95 % points of the runs."""
    return Band(*(answer.quantiles[point] for point in ("0.05", "0.5", "0.95")))


def digits_of(unit: str) -> int:
    """Digits that a number of this unit deserves."""
    return 3 if unit == "times" else 2


def number_of(value: float, unit: str) -> str:
    """A number in the claim's unit."""
    return f"{number_text(value, digits_of(unit))}{HOLD}{unit}"


def band_text(answer: Answer) -> str:
    """The band of the runs with its unit."""
    return span_of(band_of(answer), answer.question.claim.unit)


def span_of(band: Band, unit: str) -> str:
    """A band with its unit, in digits that keep its ends apart from nothing."""
    if band.low == band.high:
        return f"{claim_number(band.mid)}{HOLD}{unit}"
    ends = [band.low, band.high]
    largest = max(map(abs, ends))
    places = max(0, digits_of(unit) - 1 - math.floor(math.log10(largest)))
    if any(end and round(end, places) == 0 for end in ends):
        places += 1
    low, high = (f"{round(end, places) + 0.0:,.{places}f}".replace("-", MINUS) for end in ends)
    return f"{high}{HOLD}{unit}" if low == high else f"{low} to {high}{HOLD}{unit}"


def span_and_middle(band: Band, unit: str) -> str:
    """A band and its middle."""
    return span_of(band, unit) + (f", {number_of(band.mid, unit)} in the middle" if band.low < band.high else "")


def true_in(share: float, runs: str = "the modelled range") -> str:
    """A share of the runs, also where it is none or all."""
    if share in (0.0, 1.0):
        return f"{'none' if share == 0 else 'all'} of {runs}"
    return f"{held_together(share_words(share))} of {runs}"


def claimed_text(asked: Question) -> str:
    """What is claimed of the number, in words."""
    return held_together(asked.claimed)


def reason(answer: Answer, display: Display) -> str:
    """Why: in how much of the range the claim is true, and under which conditions."""
    return held_together(_reason(answer, display))


def _reason(answer: Answer, display: Display) -> str:
    asked, broadly = answer.question, answer.question.claim.broadly
    start = f"It is true in {true_in(answer.share)}"
    if answer.share == 0:
        return f"It is true in none of {len(answer.values):,} runs of the model: {extremes(answer)}."
    if answer.verdict == CONDITIONS and answer.share < broadly:
        named = "; ".join(conditions(answer, display))
        return f"{start}, and in {true_in(answer.region_share, 'the part with')} {named}."
    if answer.verdict == CONDITIONS:
        said = "; ".join(said_conditions(asked, display))
        return (
            f"With what was said ({said}) it is true in {true_in(answer.share)}; over the whole range it is in "
            f"{share_words(answer.whole_share)}."
        )
    if answer.verdict == UNJUDGED:
        two = ", and on ".join(lowered(label(bins.key)) for bins in answer.bins[:2])
        return f"{start}, and no few conditions would make it true. Most turns on {two}."
    return f"{start}."


def extremes(answer: Answer) -> str:
    """The run that comes nearest to a claim that is true in none."""
    unit, least, most = answer.question.claim.unit, float(answer.values.min()), float(answer.values.max())
    if answer.question.relation == "at_least":
        return f"the highest gives {number_of(most, unit)}"
    if answer.question.relation == "at_most":
        return f"the lowest gives {number_of(least, unit)}"
    if least == most:
        return f"each gives {number_of(most, unit)}"
    return f"they run from {number_text(least, digits_of(unit))} to {number_of(most, unit)}"


def progress(asked: Question) -> str:
    """What is said while the model runs."""
    return f"Running the model {asked.claim.runs:,} times …"


def eyebrow(answer: Answer) -> str:
    """The line over the verdict."""
    left_out = f"; {answer.left_out:,} left out" if answer.left_out else ""
    return f"Verdict, from {len(answer.values):,} runs of the model{left_out}"


def left_out(answer: Answer) -> str:
    """What the model leaves out of this claim, and which runs."""
    words = f"Left out: {answer.question.claim.left_out}"
    if answer.left_out:
        cars = "drawn cars" if answer.left_out > 1 else "drawn car"
        words += (
            f" Left out too: {answer.left_out:,} {cars} of {answer.question.claim.runs:,}, whose motor or battery "
            "cannot keep up with the drive or whose charge does not last."
        )
    return words


def tested_with(asked: Question) -> str:
    """A line under the claim where its number was changed; empty otherwise."""
    if (asked.number, asked.relation) == (asked.claim.number, asked.claim.relation):
        return ""
    return f"Tested here with another number: {claimed_text(asked)}."


def finding(answer: Answer) -> str:
    """What the picture of the runs shows, as its title."""
    return f"{held_together(capital(answer.question.claim.what))}: {band_text(answer)}"


def claim_text(claim: Claim) -> str:
    """The claim in its quotation marks."""
    return QUOTE.format(held_together(claim.text))


def keys(answer: Answer) -> tuple[str, str]:
    """What the dark and the pale part of the pile are."""
    dark, pale = (true_in(share, "the runs") for share in (answer.share, 1 - answer.share))
    return f"{claimed_text(answer.question)}: {dark}", f"otherwise: {pale}"


def published_number(row: Mapping[str, Any]) -> str:
    """A published number with its unit."""
    value = row["value"] if isinstance(row["value"], list) else [row["value"]]
    return f"{' to '.join(map(claim_number, value))}{HOLD}{row['unit']}"


def comparable(row: Mapping[str, Any], asked: Question) -> bool:
    """Whether a published number is one of the same thing as the claim: the same unit, and a share of the same."""
    of = row.get("of")
    same = "denominator" not in asked.declared or of in asked.declared["denominator"].values
    same_thing = row.get("comparable", True) and (of is None or (same and of in PHRASES))
    return row["unit"] == asked.claim.unit and same_thing


def source_text(row: Mapping[str, Any]) -> str:
    """Who published a number and when, in few words."""
    name = capital(re.split(r",|\(|: ", row["source"])[0].strip())
    return f"{name}, {row['date'][:4]}" if row["date"] else name


def rows_of(answer: Answer) -> list[Row]:
    """The model's band, and what is published of the same thing, for the picture of the runs."""
    band, asked = band_of(answer), answer.question
    text = f"The model: {span_and_middle(band, asked.claim.unit)}"
    rows = [Row(text, band.low, band.high, band.mid, bold=True)]
    for row in asked.claim.published:
        if comparable(row, asked):
            value = row["value"] if isinstance(row["value"], list) else [row["value"]]
            text = held_together(f"{source_text(row)}: {published_number(row)}, {row['what']}")
            rows.append(Row(text, value[0], value[-1]))
    return rows


def distribution_alt(answer: Answer, rows: Sequence[Row]) -> str:
    """The picture of the runs in words."""
    return f"{finding(answer)}. {capital(keys(answer)[0])}. " + " ".join(f"{row.text}." for row in rows)


def grid_of(answer: Answer, display: Display) -> Grid | None:
    """The picture of the two inputs that matter most; None where it would be of one colour or of one input."""
    needs = answer.needs
    shares = needs.get("share_true", [])
    known = [share for row in shares for share in row if share is not None]
    if not known or min(known) == max(known) or min(known) >= answer.question.claim.broadly:
        return None
    down, across = answer.bins[:2]
    names = [[step_text(this, step, display) for step in range(len(this.names))] for this in (down, across)]
    if max(map(len, names[1])) > max(map(len, names[0])) or len(names[1]) > 6 > len(names[0]):
        down, across, names = across, down, names[::-1]
        shares = [list(column) for column in zip(*shares, strict=True)]
    return Grid(entry_label(down.key, display), entry_label(across.key, display), names[0], names[1], shares)


def bare(name: str) -> str:
    """The name of an input without its unit, within a sentence."""
    return lowered(name.partition(",")[0])


def grid_title(grid: Grid) -> str:
    """What the picture of the two inputs shows."""
    return f"Most turns on {bare(grid.down)}, and on {bare(grid.across)}"


def grid_words(answer: Answer) -> str:
    """What its numbers are."""
    return f"In each field: how many of the runs there give {claimed_text(answer.question)}."


def grid_alt(grid: Grid) -> str:
    """The picture of the two inputs in words."""
    known = [
        (share, row, column)
        for row, shares in zip(grid.rows, grid.shares, strict=True)
        for column, share in zip(grid.columns, shares, strict=True)
        if share is not None
    ]
    (least, *low), (most, *high) = min(known), max(known)
    return (
        f"The claim is true most often, in {true_in(most, 'the runs')}, with {' and '.join(high)}; least often, in "
        f"{true_in(least, 'the runs')}, with {' and '.join(low)}."
    )


def grid_table(grid: Grid) -> pd.DataFrame:
    """The numbers behind it."""
    shares = [["–" if share is None else f"{100 * share:.0f} %" for share in row] for row in grid.shares]
    table = pd.DataFrame(shares, columns=list(grid.columns))
    table.insert(0, grid.down, list(grid.rows))
    return table


def no_grid(answer: Answer) -> str:
    """In place of the picture, where the claim is as true everywhere."""
    if not answer.bins:
        return "Nothing in the modelled range changes this number."
    if answer.share == 0:
        return "Nothing within the modelled range: no run makes it true."
    return "Hardly anything: in the modelled range it is true nearly everywhere."


def swings_of(answer: Answer, display: Display, most: int = 6) -> list[Swing]:
    """The inputs that move the number most, one at a time."""
    return [
        Swing(label(row["input"]), row["low"], row["high"], ends_text(row["input"], row["at_low"], display),
              ends_text(row["input"], row["at_high"], display))
        for row in answer.tornado[:most]
    ]  # fmt: skip


def tornado_title(answer: Answer) -> str:
    """What the tornado shows."""
    return f"{label(answer.tornado[0]['input'])} moves the number most"


TORNADO_WORDS = (
    "One input after the other goes to the ends of its range; the others stay at their first or middle value."
)


def tornado_table(answer: Answer, display: Display) -> pd.DataFrame:
    """Every swing."""
    unit = answer.question.claim.unit
    rows = [
        (label(row["input"]), claim_number(row["low"]), ends_text(row["input"], row["at_low"], display),
         claim_number(row["high"]), ends_text(row["input"], row["at_high"], display))
        for row in answer.tornado
    ]  # fmt: skip
    return pd.DataFrame(rows, columns=["Input", f"Lowest, {unit}", "Lowest is", f"Highest, {unit}", "Highest is"])


def phrase_row(name: str, answer: Answer) -> Row:
    """What the model gives where the number is meant as this share."""
    band = band_of(answer)
    text = f"{capital(SHORT_PHRASES[name])}\n{band_text(answer)}: {answer.verdict}"
    return Row(text, band.low, band.high, band.mid)


def quotable(answer: Answer) -> str:
    """The claim, its verdict, its baseline and its band, to quote."""
    asked = answer.question
    other = f", tested with {asked.claimed}," if tested_with(asked) else ""
    sentence = f"The claim {QUOTE.format(asked.claim.text)}{other} {answer.sentence.removeprefix('This claim ')}"
    return sentence.replace(" -", f" {MINUS}")


def published_table(asked: Question) -> pd.DataFrame:
    """What is published, with source, date and kind, and whether it measures what the claim says."""
    rows = []
    for row in asked.claim.published:
        dated = f"{row['source']}, {row['date']}" if row["date"] else row["source"]
        other = "" if comparable(row, asked) else f" Not the claim's own measure: {share_name(row)}."
        text = f"{capital(row['what'])}. {capital(dated)}. {capital(row['kind'])}.{other}"
        rows.append((published_number(row), held_together(text)))
    return pd.DataFrame(rows, columns=["Number", "What it is, source, date and kind"])


def share_name(row: Mapping[str, Any]) -> str:
    """What a published number is a share of, where that is not what the claim says."""
    of = row.get("of")
    return SHORT_PHRASES.get(of, f"a share of {of}" if of else "another quantity")


def tornado_alt(answer: Answer, display: Display) -> str:
    """The tornado in words: its first three bars."""
    unit = answer.question.claim.unit
    return " ".join(
        f"{swing.name}: {claim_number(swing.low)} {unit} {swing.at_low}, {claim_number(swing.high)} {unit} "
        f"{swing.at_high}."
        for swing in swings_of(answer, display, 3)
    )


def moved(given: str, answer: Answer) -> str:
    """What a link had kept of an older version's answer, beside what is found now; empty where it kept nothing."""
    try:
        low, mid, high = map(float, given.split("_"))
    except ValueError:
        return ""
    unit = answer.question.claim.unit
    then, now = (span_and_middle(band, unit) for band in (Band(low, mid, high), band_of(answer)))
    return f"When the link was made the model gave {then}; now it gives {now}."
