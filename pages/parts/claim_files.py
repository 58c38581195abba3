"""A tested claim as files to take away: picture, runs, and everything, each with the version of the model."""

from __future__ import annotations

import json
import re
import shlex
from collections.abc import Callable

import pandas as pd

from model import MODEL_DATE, MODEL_VERSION
from model.claims.draws import DRAWN_TOGETHER
from model.claims.evidence import evidence
from model.claims.questions import Question
from model.claims.verdicts import BEYOND, Answer
from model.describe.figures import Several
from model.out.answers import as_text
from model.sampling.uncertainty import SEED
from model.words import claims as spoken
from model.words.claim_answers import claim_answers
from model.words.claim_numbers import number_words
from model.words.claims import varied
from model.words.evidence import both, measured, measured_what, number, verdict_of_one
from model.words.print import source_line
from model.words.quantities import Display, capital, inside
from model.words.sources import cited
from pages.parts.charts import export
from pages.parts.charts.claims import distribution, region, tornado
from pages.parts.charts.export import for_print
from pages.parts.claim_inputs import label
from pages.parts.claim_words import (
    METRIC,
    bounds_of,
    claim_text,
    distribution_alt,
    finding,
    grid_of,
    grid_title,
    grid_words,
    keys,
    left_out,
    quotable,
    rows_of,
    swings_of,
    tornado_title,
)
from pages.parts.public_link import public_base
from pages.parts.report import template
from pages.parts.theme import Spec
from pages.parts.typography import together

PATH = "check_a_claim"
"""The page of claims, in its address."""


def signed(asked: Question) -> str:
    """Whose work it is, which version, under which licence, and the page’s address where others can open it."""
    own = "" if asked.own else f"?claim={asked.claim.id}"
    return source_line(Display(), f"{public_base()}/{PATH}{own}" if public_base() else "")


def method_note(answer: Answer, display: Display = METRIC) -> str:
    """How it was tested, in a paragraph."""
    alike = Several(tuple(inside(label(key, display)) for key in DRAWN_TOGETHER))
    lead = inside(label(next(iter(DRAWN_TOGETHER.values())), display))
    runs = display.say("claim-method-note", runs=len(answer.values), together=alike, lead=lead, seed=str(SEED))
    sentences = spoken.varied(answer, display), spoken.share_of_design(answer, display), left_out(answer, display)
    return " ".join(filter(None, (runs, *sentences, signed(answer.question))))


def under_print(answer: Answer) -> list[str]:
    """What stands under the printed picture’s title: the claim, both verdicts, conditions, and where it is from."""
    asked = answer.question
    verdicts = both(answer, Display())
    reading = [reading] if (reading := spoken.read_as(asked)) else []
    return [claim_text(asked), *reading, verdicts, varied(answer, Display()), signed(asked)]


def runs_table(answer: Answer) -> pd.DataFrame:
    """Every run: all that was drawn for it, the number, and whether the claim is true.

    Put in with ``--set``, the figures of a row give its number again; an empty one is none of that kind of car. So does
    its place, put in with ``--run``, which computes a hybrid's rows too.
    """
    asked, drawn = answer.question, answer.draws.columns
    keys = [*asked.declared, *(key for key in drawn if key not in asked.declared)]
    table = pd.DataFrame({key: drawn[key] for key in keys})
    table[f"number_{asked.claim.unit.replace('%', 'pct')}".rstrip("_")] = answer.values
    numbers = table.select_dtypes("float").columns
    table[numbers] = table[numbers].map(lambda value: float(f"{value:.9g}"))
    if "hybrid" in drawn:
        # the battery car's figures stand in the row; those of the hybrid's class are drawn beside them
        table["note"] = Display().say("print-runs-of-hybrids")
    table.insert(0, "run", range(1, len(table) + 1))
    judged = {} if answer.verdict == BEYOND else {"claim_true": answer.true}
    return table.assign(**judged, model_version=MODEL_VERSION, model_date=MODEL_DATE)


def command(asked: Question) -> str:
    """The command that gives the same file."""
    pairs = "".join(f" --set {shell(f'{key}={value}')}" for key, value in asked.given.items())
    return f"python -m model claim {asked.claim.id}{pairs}"


def shell(word: str) -> str:
    """A word as a shell takes it."""
    return word if re.fullmatch(r"[\w.,=+-]+", word) else shlex.quote(word)


def gave(answer: Answer) -> str:
    """The band that was given, for a link to keep: low, middle, high."""
    return "_".join(f"{answer.quantiles[point]:.3g}" for point in ("0.05", "0.5", "0.95"))


def runs_chart(answer: Answer) -> Spec:
    """The picture of the runs."""
    asked = answer.question
    rows, unit = rows_of(answer, Display()), asked.claim.unit
    return distribution(answer.values, bounds_of(answer), rows, unit, keys(answer, Display()), Display())


def picture(answer: Answer, transparent: bool = False) -> Spec:
    """The picture of the runs to print, with its finding, the claim, both verdicts and where it is from."""
    return for_print(runs_chart(answer), finding(answer), under_print(answer), transparent)


def tornado_svg(answer: Answer) -> str:
    """What moves the number, to print."""
    claim, base, display = answer.question.claim, answer.tornado[0].base, Display()
    chart = tornado(swings_of(answer, display), base, bounds_of(answer), claim.unit, display)
    under = [display.say("claim-tornado-words"), *under_print(answer)]
    return export.svg(for_print(chart, tornado_title(answer, display), under), export.PRINT_PX)


def needs_svg(answer: Answer) -> str:
    """What would have to be true, to print."""
    display = Display()
    grid = grid_of(answer, display)
    assert grid is not None
    chart = region(grid, display)
    under = [grid_words(answer, display), *under_print(answer)]
    return export.svg(for_print(chart, grid_title(answer, display), under), export.PRINT_PX)


def chart_svg(answer: Answer) -> str:
    """The picture as SVG."""
    return export.svg(picture(answer), export.PRINT_PX)


def chart_clear_svg(answer: Answer) -> str:
    """The picture as SVG without a ground of its own."""
    return export.svg(picture(answer, transparent=True), export.PRINT_PX)


def chart_png(answer: Answer) -> bytes:
    """The picture as PNG, fine enough for print."""
    return export.png(picture(answer), export.PRINT_PX)


def chart_text(answer: Answer) -> str:
    """The picture as Vega-Lite, with its data inside."""
    spec = picture(answer)
    datasets = {name: export.records_of(rows) for name, rows in spec["datasets"].items()}
    return json.dumps(spec | {"datasets": datasets, "width": export.PRINT_PX}, indent=1, ensure_ascii=False)


def article_html(answer: Answer) -> str:
    """One page to stand in an article: the finding, both verdicts, the picture, its numbers and the sources."""
    asked, display = answer.question, Display()
    found = evidence(asked)
    ends = (("article-low", "0.05"), ("article-mid", "0.5"), ("article-high", "0.95"))
    unit = asked.claim.unit
    sources = [
        (number(beside.measurement, display), capital(measured_what(beside.measurement, display)),
         beside.measurement.source, cited(beside.measurement.source, display), capital(verdict_of_one(beside, display)))
        for beside in found.same
    ]  # fmt: skip
    return template("article.html").render(
        title=finding(answer),
        claim=claim_text(asked),
        reading=together(spoken.read_as(asked)),
        both=both(answer, display),
        quote=quotable(answer),
        picture=export.svg(for_print(runs_chart(answer), "", []), export.PRINT_PX),
        alt=distribution_alt(answer, rows_of(answer, display), display),
        runs=[(display.say(name), number_words(answer.quantiles[point], unit)) for name, point in ends],
        sources=sources,
        signed=signed(asked),
        words={
            "numbers": display.say("article-numbers"),
            "runs": display.say("article-runs"),
            "what": display.say("article-what"),
            "value": display.say("article-value", unit=unit) if unit else display.say("article-value-bare"),
            "measured": display.say("claim-evidence-heading"),
            "number": display.say("column-number"),
            "by": display.say("column-measured-by"),
            "none": measured(found, display),
        },
    )


def runs_text(answer: Answer) -> str:
    """Every run as CSV."""
    return runs_table(answer).to_csv(index=False)


def answer_text(answer: Answer) -> str:
    """Everything, as the command line prints it."""
    return as_text(claim_answers(answer))


FILES: dict[str, tuple[str, Callable[[Answer], str | bytes], str]] = {
    "chart-svg": ("svg", chart_svg, "image/svg+xml"),
    "chart-clear": ("clear.svg", chart_clear_svg, "image/svg+xml"),
    "chart-png": ("png", chart_png, "image/png"),
    "chart-vega": ("vl.json", chart_text, "application/json"),
    "runs": ("csv", runs_text, "text/csv"),
    "json": ("json", answer_text, "application/json"),
    "tornado": ("tornado.svg", tornado_svg, "image/svg+xml"),
    "needs": ("needs.svg", needs_svg, "image/svg+xml"),
    "article": ("html", article_html, "text/html"),
}
"""What can be taken away, as messages name it: the file's ending, what makes it when asked for, and its type."""


def files_of(answer: Answer) -> dict[str, tuple[str, Callable[[Answer], str | bytes], str]]:
    """Those of FILES that there are of this answer."""
    without: set[Callable[[Answer], str | bytes]] = set() if answer.tornado else {tornado_svg}
    without |= {needs_svg} if answer.verdict == BEYOND or grid_of(answer, Display()) is None else set()
    return {what: file for what, file in FILES.items() if file[1] not in without}
