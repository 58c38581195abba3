"""A tested claim as files to take away: picture, runs, and everything, each with the version of the model."""

from __future__ import annotations

import json
import re
import shlex
from collections.abc import Callable

import pandas as pd

from model import MODEL_DATE, MODEL_VERSION
from model.claims.prose import listed
from model.claims.questions import Question
from model.claims.verdicts import Answer
from model.out.answers import as_text
from model.words import claims as spoken
from model.words.claims import claim_answers
from model.words.quantities import Display
from pages.parts.charts import export
from pages.parts.charts.claims import distribution, printed, region, tornado
from pages.parts.claim_inputs import label
from pages.parts.claim_words import (
    TORNADO_WORDS,
    claim_text,
    finding,
    grid_of,
    grid_title,
    grid_words,
    heading,
    keys,
    left_out,
    rows_of,
    swings_of,
    tornado_title,
)
from pages.parts.theme import Spec

SOURCE_LINE = f"Brake to Battery, model version {MODEL_VERSION} of {MODEL_DATE}. An estimate, not a measurement."
"""On everything that is taken away."""


def method_note(answer: Answer) -> str:
    """How it was tested, in a paragraph."""
    method = claim_answers(answer)["method"]
    together = listed([label(key).lower() for key in method["drawn_together"]])
    lead = label(next(iter(method["drawn_together"].values()))).lower()
    return (
        f"{method['runs']:,} runs of an energy model of the car, one for each draw of what was not said and of the "
        f"car's assumed figures ({method['draw']}; {together} rise with {lead}; seed {method['seed']}). The band is "
        f"what lies between the lowest and the highest 5 % of the runs. {spoken.varied(answer, Display())} "
        f"{spoken.share_of_design(answer, Display())} "
        f"{left_out(answer, Display())} {SOURCE_LINE}"
    )


def under_print(answer: Answer) -> list[str]:
    """What stands under the title of the printed picture: the claim, the verdict, and where it is from."""
    return [claim_text(answer.question), heading(answer), SOURCE_LINE]


def runs_table(answer: Answer) -> pd.DataFrame:
    """Every run: what was drawn for what was not said, the number, and whether the claim is true."""
    asked = answer.question
    table = pd.DataFrame({key: answer.draws[key] for key in asked.declared})
    table[f"number_{asked.claim.unit.replace('%', 'pct')}".rstrip("_")] = answer.values
    numbers = table.select_dtypes("float").columns
    table[numbers] = table[numbers].map(lambda value: float(f"{value:.6g}"))
    return table.assign(claim_true=answer.true, model_version=MODEL_VERSION, model_date=MODEL_DATE)


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


PRINT_PX = 720


def picture(answer: Answer) -> Spec:
    """The picture of the runs to print: light, with its finding, the claim, the verdict and where it is from."""
    asked = answer.question
    chart = distribution(answer.values, asked.bounds, rows_of(answer), asked.claim.unit, keys(answer))
    return printed(chart, finding(answer), under_print(answer))


def tornado_svg(answer: Answer) -> str:
    """What moves the number, to print."""
    claim, base = answer.question.claim, answer.tornado[0]["base"]
    chart = tornado(swings_of(answer, Display()), base, answer.question.bounds, claim.unit)
    return export.svg(printed(chart, tornado_title(answer), [TORNADO_WORDS, *under_print(answer)]), PRINT_PX)


def needs_svg(answer: Answer) -> str:
    """What would have to be true, to print."""
    grid = grid_of(answer, Display())
    assert grid is not None
    chart = region(grid)
    return export.svg(printed(chart, grid_title(grid), [grid_words(answer), *under_print(answer)]), PRINT_PX)


def chart_svg(answer: Answer) -> str:
    """The picture as SVG."""
    return export.svg(picture(answer), PRINT_PX)


def chart_png(answer: Answer) -> bytes:
    """The picture as PNG, fine enough for print."""
    return export.png(picture(answer), PRINT_PX)


def chart_text(answer: Answer) -> str:
    """The picture as Vega-Lite, with its data inside."""
    spec = picture(answer)
    datasets = {name: table.to_dict("records") for name, table in spec["datasets"].items()}
    return json.dumps(spec | {"datasets": datasets, "width": PRINT_PX}, indent=1, ensure_ascii=False)


def runs_text(answer: Answer) -> str:
    """Every run as CSV."""
    return runs_table(answer).to_csv(index=False)


def answer_text(answer: Answer) -> str:
    """Everything, as the command line prints it."""
    return as_text(claim_answers(answer))


FILES: dict[str, tuple[str, Callable[[Answer], str | bytes], str]] = {
    "Chart, SVG": ("svg", chart_svg, "image/svg+xml"),
    "Chart, PNG": ("png", chart_png, "image/png"),
    "Chart, Vega-Lite": ("vl.json", chart_text, "application/json"),
    "Every run, CSV": ("csv", runs_text, "text/csv"),
    "Everything, JSON": ("json", answer_text, "application/json"),
    "What moves it, SVG": ("tornado.svg", tornado_svg, "image/svg+xml"),
    "What would have to be true, SVG": ("needs.svg", needs_svg, "image/svg+xml"),
}
"""What can be taken away: the file's ending, what makes it when it is asked for, and its type."""


def files_of(answer: Answer) -> dict[str, tuple[str, Callable[[Answer], str | bytes], str]]:
    """Those of FILES that there are of this answer."""
    without: set[Callable[[Answer], str | bytes]] = set() if answer.tornado else {tornado_svg}
    without |= {needs_svg} if grid_of(answer, Display()) is None else set()
    return {what: file for what, file in FILES.items() if file[1] not in without}
