"""A tested claim in sentences from its numbers."""

from __future__ import annotations

from collections.abc import Sequence

import pandas as pd

from model.claims.collection import ALWAYS, BROADLY
from model.claims.prose import share_words, span_and_median, span_words
from model.claims.questions import Question
from model.claims.verdicts import Answer
from model.sampling.uncertainty import Band
from model.words import claims as spoken
from model.words.quantities import Display, capital
from pages.parts.charts.claims import BandRow, Grid, Swing, claim_number, given
from pages.parts.claim_inputs import (
    QUOTE,
    SHORT_PHRASES,
    ends_text,
    entry_label,
    held_together,
    label,
    lowered,
    step_text,
    units_of,
    with_minus,
)
from pages.parts.evidence_words import rows_beside

GROUPS = {
    "Range and what comes back": (
        "range-gain-in-town", "recovered-on-test-cycle", "recovered-is-range", "range-gain-on-dynamometer",
        "range-lost-without", "free-charge-on-descents",
    ),
    "Speed and braking": (
        "electric-share-of-braking", "four-times-the-energy", "four-times-comes-back", "brakes-last-longer",
        "brakes-work-half",
        "stops-as-fast-as-brakes", "two-megawatts", "switching-delay",
    ),
    "The foot": ("lift-off-changes-range", "one-pedal-saves", "coasting-always-wins"),
    "The car": (
        "heavier-recovers-more", "weight-costs-nothing", "bigger-motor-recovers-more", "bigger-motor-goes-farther",
        "hybrid-against-battery-car",
    ),
    "Cold and motorway": ("useless-in-winter", "cold-halves-range", "motorway-range"),
}  # fmt: skip
"""The claims in the order of the list."""


def conditions(answer: Answer, display: Display) -> list[str]:
    """The named conditions under which the claim is true, each on its own."""
    return [held_together(one) for one in answer.conditions(units_of(display))]


def heading(answer: Answer) -> str:
    """The verdict as a sentence."""
    return spoken.heading(answer, Display())


def band_of(answer: Answer) -> Band:
    """5, 50 and 95 % points of the runs."""
    return Band(*(answer.quantiles[point] for point in ("0.05", "0.5", "0.95")))


def band_text(answer: Answer) -> str:
    """The band of the runs with its unit."""
    band = band_of(answer)
    return held_together(span_words(band.low, band.high, answer.question.claim.unit))


def claimed_text(asked: Question) -> str:
    """What is claimed of the number, in words."""
    return held_together(spoken.claimed(asked))


def reason(answer: Answer, display: Display) -> str:
    """Why: in how many of the runs the claim is true, and under which conditions."""
    subject = display.say("claim-subject-on-page")
    return held_together(f"{capital(spoken.reason(answer, subject, display, units_of(display)))}.")


def reading(asked: Question, display: Display) -> str:
    """How the claim's words are taken; empty where they leave no doubt."""
    within = share_words(asked.claim.within_share)
    parts = [asked.claim.reading if asked.as_listed else ""]
    if asked.relation == "up_to":
        parts.append(display.say("claim-reads-up-to", within=within))
    if asked.relation == "on_average":
        parts.append(display.say("claim-reads-on-average", within=within))
    if asked.claim.always:
        always, broadly = share_words(ALWAYS), share_words(BROADLY)
        parts.append(display.say("claim-reads-always", always=always, broadly=broadly))
    return held_together(" ".join(filter(None, parts)))


def progress(asked: Question, display: Display) -> str:
    """What is said while the model runs."""
    return display.say("claim-running", runs=asked.claim.runs)


def eyebrow(answer: Answer, display: Display) -> str:
    """The line over the verdict."""
    if not answer.left_out:
        return display.say("claim-eyebrow", runs=len(answer.values))
    return display.say("claim-eyebrow-some-left-out", runs=len(answer.values), left=answer.left_out)


def varied_table(answer: Answer, display: Display) -> pd.DataFrame:
    """Every figure that was varied, over what, and how."""
    rows = [(label(one.key), held_together(one.over), one.how)
            for one in spoken.varied_figures(answer, display, units_of(display))]  # fmt: skip
    heads = ("claim-figures-column-figure", "claim-figures-column-over", "claim-figures-column-how")
    return pd.DataFrame(rows, columns=[display.say(head) for head in heads])


def left_out(answer: Answer, display: Display) -> str:
    """What the model leaves out of this claim, and which runs."""
    told = display.say("claim-left-out", what=answer.question.claim.left_out)
    if not answer.left_out:
        return told
    return f"{told} {display.say('claim-cars-left-out', left=answer.left_out, runs=answer.question.claim.runs)}"


def modelled(answer: Answer, display: Display) -> str:
    """What the model gives, as a sentence."""
    return held_together(display.say("claim-modelled", band=spoken.band(answer)))


def finding(answer: Answer) -> str:
    """What the picture of the runs shows, as its title."""
    counted = capital(spoken.where(answer.question) + spoken.what(answer.question))
    return f"{held_together(counted)}: {band_text(answer)}"


def claim_text(asked: Question) -> str:
    """What is claimed as a sentence: a claim as it was made in quotation marks, one made from the test without."""
    return quoted(spoken.text(asked)) if asked.as_listed else held_together(spoken.text(asked))


def quoted(text: str) -> str:
    """Somebody's words, marked as such."""
    return QUOTE.format(held_together(text))


def read_as(asked: Question, display: Display) -> str:
    """How a claim in own words was read, or that these no longer say what is tested; empty where there are none."""
    read = spoken.read_as(asked, display, units_of(display))
    return held_together(read or spoken.changed_words(asked, display))


def keys(answer: Answer) -> tuple[str, str]:
    """What the dark and the pale part of the pile are."""
    return claimed_text(answer.question), "otherwise"


def rows_of(answer: Answer) -> list[BandRow]:
    """The model's band, and what is published of the same thing, for the picture of the runs."""
    band, asked = band_of(answer), answer.question
    text = held_together(f"The model: {spoken.band(answer)}")
    return [BandRow(text, band.low, band.high, band.mid, bold=True), *rows_beside(asked, Display())]


def distribution_alt(answer: Answer, rows: Sequence[BandRow]) -> str:
    """The picture of the runs in words."""
    return f"{finding(answer)}. {capital(keys(answer)[0])}. " + " ".join(f"{row.text}." for row in rows)


def grid_of(answer: Answer, display: Display) -> Grid | None:
    """The picture of the two inputs that matter most; None where it would be of one colour or of one input."""
    needs = answer.needs
    shares = needs.get("share_true", [])
    known = [share for row in shares for share in row if share is not None]
    if not known or min(known) == max(known) or min(known) >= answer.question.claim.broadly:
        return None
    unit = answer.question.claim.unit
    texts = [["" if value is None else given(value, unit) for value in row] for row in needs["median"]]
    down, across = answer.bins[:2]
    names = [[step_text(this, step, display) for step in range(len(this.names))] for this in (down, across)]
    if max(map(len, names[1])) > max(map(len, names[0])) or len(names[1]) > 6 > len(names[0]):
        down, across, names = across, down, names[::-1]
        shares, texts = ([list(column) for column in zip(*part, strict=True)] for part in (shares, texts))
    return Grid(entry_label(down.key, display), entry_label(across.key, display), names[0], names[1], shares, texts)


def bare(name: str) -> str:
    """The name of an input without its unit, within a sentence."""
    return lowered(name.partition(",")[0])


def grid_title(grid: Grid) -> str:
    """What the picture of the two inputs shows."""
    return f"It depends most on {bare(grid.down)} and on {bare(grid.across)}"


def grid_words(answer: Answer) -> str:
    """What its numbers are."""
    empty = any(None in row for row in answer.needs["share_true"])
    return (
        f"In each field: the middle of what the model gives there; the stronger its shade, the more of it is "
        f"{claimed_text(answer.question)}.{' Empty fields hold no run.' if empty else ''}"
    )


def grid_alt(grid: Grid) -> str:
    """The picture of the two inputs in words."""
    known = [
        (share, row, column, text)
        for row, shares, texts in zip(grid.rows, grid.shares, grid.texts, strict=True)
        for column, share, text in zip(grid.columns, shares, texts, strict=True)
        if share is not None
    ]
    (_, *low, lowest), (_, *high, highest) = min(known), max(known)
    return (
        f"The claim is true most often with {' and '.join(high)}, where the middle is {highest}; least often with "
        f"{' and '.join(low)}, where it is {lowest}."
    )


def grid_table(grid: Grid) -> pd.DataFrame:
    """The numbers behind it."""
    table = pd.DataFrame([[text or "–" for text in row] for row in grid.texts], columns=list(grid.columns))
    table.insert(0, grid.down, list(grid.rows))
    return table


def no_grid(answer: Answer) -> str:
    """In place of the picture, where the claim is as true everywhere."""
    if not answer.bins:
        return "Nothing that was drawn changes this number."
    if answer.share == 0:
        return "Nothing that was drawn: no run makes it true."
    return "Hardly anything: whatever was drawn, it is true nearly everywhere."


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
    "One input after the other goes to the ends of its range; the others stay as in the base case, at their first or "
    "mid value."
)


def tornado_table(answer: Answer, display: Display) -> pd.DataFrame:
    """Every swing."""
    unit = answer.question.claim.unit
    rows = [
        (label(row["input"]), claim_number(row["low"]), ends_text(row["input"], row["at_low"], display),
         claim_number(row["high"]), ends_text(row["input"], row["at_high"], display))
        for row in answer.tornado
    ]  # fmt: skip
    lowest, highest = (f"{end}, {unit}".rstrip(", ") for end in ("Lowest", "Highest"))
    return pd.DataFrame(rows, columns=["Input", lowest, "Lowest is", highest, "Highest is"])


def phrase_row(name: str, answer: Answer) -> BandRow:
    """What the model gives where the number is meant as this share."""
    band = band_of(answer)
    text = f"{capital(SHORT_PHRASES[name])}\n{band_text(answer)}: {answer.verdict}"
    return BandRow(text, band.low, band.high, band.mid)


def quotable_short(answer: Answer) -> str:
    """The claim, its verdict, the band and what was measured in two lines, to quote."""
    return with_minus(spoken.short_quotation(answer))


def quotable(answer: Answer) -> str:
    """The claim, its verdict, its baseline and its band, to quote."""
    return with_minus(spoken.quotation(answer))


def tornado_alt(answer: Answer, display: Display) -> str:
    """The tornado in words: its first three bars."""
    unit = answer.question.claim.unit
    return " ".join(
        f"{swing.name}: {given(swing.low, unit)} {swing.at_low}, {given(swing.high, unit)} {swing.at_high}."
        for swing in swings_of(answer, display, 3)
    )


def moved(given: str, answer: Answer) -> str:
    """What a link had kept of an older version's answer, beside what is found now; empty where it kept nothing."""
    try:
        low, mid, high = map(float, given.split("_"))
    except ValueError:
        return ""
    then = span_and_median(low, mid, high, answer.question.claim.unit)
    return held_together(f"When the link was made the model gave {then}; now it gives {spoken.band(answer)}.")
