"""A tested claim in sentences from its numbers."""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np
import pandas as pd

from model.claims.collection import ALWAYS, BROADLY, claims
from model.claims.inputs import INPUTS
from model.claims.questions import Question
from model.claims.verdicts import BEYOND, ROUNDED_AWAY, Answer
from model.describe.figures import Several, Share
from model.sampling.uncertainty import Band
from model.words import claims as spoken
from model.words.claim_inputs import noun
from model.words.claim_numbers import number_words, shown, span_and_median, span_words
from model.words.entries import shown_unit
from model.words.evidence import both
from model.words.quantities import Display, capital
from model.words.reading import words_stand
from pages.parts.charts.claims import BandRow, Grid, Swing
from pages.parts.claim_inputs import QUOTE, ends_text, label, step_text
from pages.parts.evidence_words import rows_beside
from pages.parts.typography import NO_BREAK, together

METRIC = Display()
"""How files and pictures to print are written, whoever asked for them: the command line gives the same bytes."""
GROUPS = {
    "range": (
        "range-gain-in-town", "recovered-on-test-cycle", "recovered-is-range", "range-gain-on-dynamometer",
        "range-lost-without", "free-charge-on-descents",
    ),
    "braking": (
        "electric-share-of-braking", "four-times-the-energy", "four-times-comes-back", "brakes-last-longer",
        "brakes-work-half",
        "stops-as-fast-as-brakes", "two-megawatts", "switching-delay",
    ),
    "foot": ("lift-off-changes-range", "one-pedal-saves", "coasting-always-wins"),
    "car": (
        "heavier-recovers-more", "weight-costs-nothing", "bigger-motor-recovers-more", "bigger-motor-goes-farther",
        "hybrid-against-battery-car",
    ),
    "cold": ("useless-in-winter", "cold-halves-range", "motorway-range"),
}  # fmt: skip
"""The claims in the order of the list, in groups as messages name them."""


def conditions(answer: Answer, display: Display) -> list[str]:
    """The named conditions under which the claim is true, each on its own."""
    return [together(condition) for condition in spoken.conditions(answer, display)]


def heading(answer: Answer, display: Display = METRIC) -> str:
    """The verdict of the model, and what has been measured."""
    return together(both(answer, display))


def bounds_of(answer: Answer) -> tuple[float, float]:
    """Between which the number is as claimed; nothing bounds it where the model cannot judge the claim."""
    return (-math.inf, math.inf) if answer.verdict == BEYOND else answer.question.bounds


def band_of(answer: Answer) -> Band:
    """5, 50 and 95 % points of the runs."""
    return Band(*(answer.quantiles[point] for point in ("0.05", "0.5", "0.95")))


def band_text(answer: Answer, display: Display = METRIC) -> str:
    """The band of the runs with its unit."""
    band = band_of(answer)
    return together(span_words(band.low, band.high, answer.question.claim.unit, display))


def claimed_text(asked: Question, display: Display) -> str:
    """What is claimed of the number, in words."""
    return together(spoken.claimed(asked, display))


def reason(answer: Answer, display: Display) -> str:
    """Why: how often the claim is true and under which conditions."""
    subject = display.say("claim-subject-on-page")
    return together(f"{capital(spoken.reason(answer, subject, display))}.")


def reading(asked: Question, display: Display) -> str:
    """How the claim's words are taken; empty where they leave no doubt."""
    within = Share(asked.claim.within_share, places=0)
    parts = [spoken.of_list(asked.claim, "reading", display) if asked.as_listed else ""]
    if asked.relation == "up_to":
        parts.append(display.say("claim-reads-up-to", within=within))
    if asked.relation == "on_average":
        parts.append(display.say("claim-reads-on-average", within=within))
    if asked.claim.always:
        always, broadly = Share(ALWAYS, places=0), Share(BROADLY, places=0)
        parts.append(display.say("claim-reads-always", always=always, broadly=broadly))
    return together(" ".join(filter(None, parts)))


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
    rows = [(label(figure.key, display), together(figure.over), figure.how)
            for figure in spoken.varied_figures(answer, display)]  # fmt: skip
    heads = ("claim-figures-column-figure", "claim-figures-column-over", "claim-figures-column-how")
    return pd.DataFrame(rows, columns=[display.say(head) for head in heads])


def left_out(answer: Answer, display: Display) -> str:
    """What the model leaves out of this claim, and which runs."""
    sentence = display.say("claim-left-out", what=spoken.left_out(answer.question.claim, display))
    if not answer.left_out:
        return sentence
    return f"{sentence} {display.say('claim-cars-left-out', left=answer.left_out, runs=answer.question.claim.runs)}"


def finding(answer: Answer, display: Display = METRIC) -> str:
    """What the picture of the runs shows, as its title."""
    where, what = spoken.where(answer.question, display), spoken.what(answer.question, display)
    return capital(together(display.say("claim-finding", where=where, what=what, band=band_text(answer, display))))


def claim_text(asked: Question, display: Display = METRIC) -> str:
    """What is claimed as a sentence: a claim as it was made in quotation marks, one made from the test without."""
    text = spoken.text(asked, display)
    return quoted(text) if words_stand(asked) else together(text)


def listed_text(claim_id: str, display: Display) -> str:
    """A claim of the list in its words."""
    return spoken.words_of(claims()[claim_id], display)


def why(answer: Answer, display: Display) -> str:
    """Why the runs of a claim of the list spread so wide; empty where that needs no word, or another is tested."""
    asked = answer.question
    return together(spoken.of_list(asked.claim, "why", display)) if asked.as_listed else ""


def quoted(text: str) -> str:
    """Somebody's words, marked as such."""
    return QUOTE.format(together(text))


def read_as(asked: Question, display: Display) -> str:
    """How a claim in own words was read, or that these no longer say what is tested; empty where there are none."""
    read = spoken.read_as(asked, display)
    return together(read or spoken.changed_words(asked, display))


def keys(answer: Answer, display: Display) -> tuple[str, ...]:
    """What the dark and the pale part of the pile are; nothing where no part is as claimed."""
    if answer.verdict == BEYOND:
        return ()
    return claimed_text(answer.question, display), display.say("claim-runs-otherwise")


def rows_of(answer: Answer, display: Display) -> list[BandRow]:
    """The model's band, and what is published of the same thing, for the picture of the runs."""
    band, asked = band_of(answer), answer.question
    text = together(display.say("claim-runs-model", band=spoken.band(answer, display)))
    return [BandRow(text, band.low, band.high, band.mid, bold=True), *rows_beside(asked, display)]


def distribution_alt(answer: Answer, rows: Sequence[BandRow], display: Display) -> str:
    """The picture of the runs in words."""
    sentences = (finding(answer, display), *map(capital, keys(answer, display)[:1]), *(row.text for row in rows))
    return " ".join(f"{sentence}." for sentence in sentences)


def grid_of(answer: Answer, display: Display) -> Grid | None:
    """The picture of the two inputs that matter most; None where it would be of one colour or of one input."""
    two, unit = answer.by_two, answer.question.claim.unit
    known = [share for row in two.shares for share in row if share is not None] if two else []
    if two is None or min(known) == max(known) or min(known) >= answer.question.claim.broadly:
        return None
    down, across, shares = two.down, two.across, two.shares
    texts = [["" if value is None else number_words(value, unit, display) for value in row] for row in two.medians]
    names = [[step_text(bins, step, display) for step in range(len(bins.steps))] for bins in (down, across)]
    if max(map(len, names[1])) > max(map(len, names[0])) or len(names[1]) > 6 > len(names[0]):
        down, across, names = across, down, names[::-1]
        shares, texts = ([list(column) for column in zip(*part, strict=True)] for part in (shares, texts))
    return Grid(axis_title(down.key, display), axis_title(across.key, display), names[0], names[1], shares, texts)


def axis_title(key: str, display: Display) -> str:
    """What an input is, with its unit, from which it does not part where a line ends."""
    name, unit = capital(noun(key, display)), shown_unit(INPUTS[key], display)
    if not unit:
        return name
    return display.say("label-with-unit", label=name, unit=unit).replace(f", {unit}", f",{NO_BREAK}{unit}")


def grid_title(answer: Answer, display: Display) -> str:
    """What the picture of the two inputs shows."""
    first, second = (noun(bins.key, display) for bins in answer.bins[:2])
    return display.say("claim-grid-title", down=first, across=second)


def grid_words(answer: Answer, display: Display, dark: bool = False) -> str:
    """What its numbers are."""
    sentences = [display.say("claim-grid-words", given=spoken.runs_do(answer.question, display), dark=dark)]
    if answer.by_two is not None and any(None in row for row in answer.by_two.shares):
        sentences.append(display.say("claim-grid-empty"))
    return together(" ".join(sentences))


def grid_alt(grid: Grid, display: Display) -> str:
    """The picture of the two inputs in words."""
    known = [
        (share, row, column, text)
        for row, shares, texts in zip(grid.rows, grid.shares, grid.texts, strict=True)
        for column, share, text in zip(grid.columns, shares, texts, strict=True)
        if share is not None
    ]
    (_, *low, lowest), (_, *high, highest) = min(known), max(known)
    return display.say("claim-grid-alt", most=Several(tuple(high)), highest=highest,
                       least=Several(tuple(low)), lowest=lowest)  # fmt: skip


def grid_table(grid: Grid) -> pd.DataFrame:
    """The numbers behind it."""
    table = pd.DataFrame([[text or "–" for text in row] for row in grid.texts], columns=list(grid.columns))
    table.insert(0, grid.down, list(grid.rows))
    return table


def no_grid(answer: Answer, display: Display) -> str:
    """In place of the picture, where the claim is as true everywhere."""
    if len(answer.bins) == 1:
        return display.say("claim-grid-of-one", input=noun(answer.bins[0].key, display))
    if np.ptp(answer.values) <= ROUNDED_AWAY * abs(float(answer.values.max())):
        why = "nothing-moves-it"
    elif answer.share == 0:
        why = "never"
    else:
        why = "everywhere" if answer.share >= answer.question.claim.broadly else "by-chance"
    return display.say("claim-no-grid", why=why)


def swings_of(answer: Answer, display: Display, most: int = 6) -> list[Swing]:
    """The inputs that move the number most, one at a time."""
    return [
        Swing(capital(noun(lever.key, display)), lever.low, lever.high, ends_text(lever.key, lever.at_low, display),
              ends_text(lever.key, lever.at_high, display))
        for lever in answer.tornado[:most]
    ]  # fmt: skip


def tornado_title(answer: Answer, display: Display) -> str:
    """What the tornado shows."""
    return display.say("claim-tornado-title", input=noun(answer.tornado[0].key, display))


def tornado_table(answer: Answer, display: Display) -> pd.DataFrame:
    """Every swing."""
    held = answer.question.claim.unit
    unit = display.unit(held)
    rows = [
        (capital(noun(lever.key, display)), shown(display.value(lever.low, held)),
         ends_text(lever.key, lever.at_low, display), shown(display.value(lever.high, held)),
         ends_text(lever.key, lever.at_high, display))
        for lever in answer.tornado
    ]  # fmt: skip
    ends = ("claim-tornado-lowest", "claim-tornado-highest")
    lowest, highest = (
        display.say("label-with-unit", label=display.say(end), unit=unit) if unit else display.say(end) for end in ends
    )
    columns = [display.say("claim-tornado-input"), lowest, display.say("claim-tornado-lowest-is"),
               highest, display.say("claim-tornado-highest-is")]  # fmt: skip
    return pd.DataFrame(rows, columns=columns)


def phrase_row(name: str, answer: Answer, display: Display) -> BandRow:
    """What the model gives where the number is meant as this share."""
    band, verdict = band_of(answer), spoken.verdict_words(answer, display)
    found = display.say("claim-share-found", band=band_text(answer, display), verdict=verdict)
    text = f"{display.say('phrase-name', phrase=name)}\n{found}"
    return BandRow(text, band.low, band.high, band.mid)


def quotable_short(answer: Answer, display: Display = METRIC) -> str:
    """The claim, its verdict, the band and what was measured in two lines, to quote."""
    return spoken.short_quotation(answer, display)


def quotable(answer: Answer, display: Display = METRIC) -> str:
    """The claim, its verdict, its baseline and its band, to quote."""
    return spoken.quotation(answer, display)


def tornado_alt(answer: Answer, display: Display) -> str:
    """The tornado in words: its first three bars."""
    unit = answer.question.claim.unit
    return " ".join(
        display.say(
            "claim-tornado-alt",
            input=swing.name,
            low=number_words(swing.low, unit, display),
            at_low=swing.at_low,
            high=number_words(swing.high, unit, display),
            at_high=swing.at_high,
        )
        for swing in swings_of(answer, display, 3)
    )


def moved(given: str, answer: Answer, display: Display) -> str:
    """What a link had kept of an older version's answer, beside what is found now; empty where it kept nothing."""
    try:
        low, mid, high = map(float, given.split("_"))
    except ValueError:
        return ""
    earlier = span_and_median(low, mid, high, answer.question.claim.unit, display)
    return together(display.say("claim-moved", earlier=earlier, now=spoken.band(answer, display)))
