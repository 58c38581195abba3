"""What somebody wrote is nothing but text in whatever is taken away: the card, pictures, tables, answers, commands."""

import csv
import io
import json
import shlex
import xml.etree.ElementTree as ET
from collections import Counter
from dataclasses import replace
from html.parser import HTMLParser

import pandas as pd
import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from model.claims.questions import question
from model.claims.specification import MOST_WORDS
from model.claims.verdicts import check
from model.describe.brought import FORMULA, one_line
from model.describe.scenario import SETTINGS
from model.describe.scenario_io import scenario_from_json, scenario_to_json, with_settings
from model.out.answers import as_text
from model.out.many_cars import CAR_COLUMNS, as_csv
from model.words.quantities import MINUS
from pages.parts import claim_files, showroom
from pages.parts.figure import csv_text
from pages.parts.opening import from_file
from pages.parts.report import report_html
from tests.pages.made_reports import TOWN, taken
from tests.refused import refuses

NASTY = (
    "<script>alert(1)</script>", "</script><img src=x onerror=alert(1)>", "</style></title></svg><b>", "]]>&amp;&lt;",
    "--></text><a href='javascript:alert(1)'>", '" onload="alert(1)', "{{ 7 * 7 }}{% raw %}", "$$\\frac{1}{0}$$",
    "[x](http://stranger.net)", "=HYPERLINK(1)", "+1", "-1", "@SUM(A1)", "\t=1", "\N{FULLWIDTH EQUALS SIGN}1",
    "'; rm -rf ~; '", "$(id)`id`", "a\nb\r\nc", "\x00\x07\x1b[31m", "\N{RIGHT-TO-LEFT OVERRIDE}gnp.exe", "\ufffe\uffff",
    "می\N{ZERO WIDTH NON-JOINER}خواهم", "\N{GRINNING FACE}", "&#x202e;", "x" * 100_000,
)  # fmt: skip
TEXTS = st.one_of(
    st.sampled_from(NASTY[:-1]), st.text(st.characters(exclude_categories=["Cs"]), max_size=80),
    st.lists(st.sampled_from(NASTY[:-1]), max_size=3).map("".join),
)  # fmt: skip
SAID = {"quantity": "slowing", "relation": "at_least", "number": "1", "unit": "m/s²"}
TURNING = "\x00\x07\x1b\n\r\N{RIGHT-TO-LEFT OVERRIDE}\ufffe\uffff"
"""What must not be left of a text, wherever it is shown."""


class Reader(HTMLParser):
    """The elements of a page with the names of their attributes, where they lead, and the words between."""

    def __init__(self, page):
        super().__init__()
        self.elements, self.leads, self.words, self.seen = Counter(), [], [], ""
        self.feed(page)
        self.seen = "".join(self.words)

    def handle_starttag(self, tag, attrs):
        self.elements[(tag, *sorted(name for name, _ in attrs))] += 1
        self.leads += [value for name, value in attrs if name in ("href", "src") and not value.startswith("data:")]

    def handle_data(self, data):
        self.words.append(data)


def fits(text):
    """Whether a field takes it."""
    return len(text) <= 80


def batched(texts, many):
    """Some at a time; what is left over at the end is left out."""
    return zip(*(texts[place::many] for place in range(many)), strict=False)


def bare(text):
    """A text without its blanks, which lines and no-break spaces move, and without true minuses."""
    return "".join(text.split()).replace(MINUS, "-")


@pytest.fixture(scope="module")
def card():
    return taken(TOWN)


@pytest.fixture(scope="module")
def told():
    """The answer to a claim in one's own words, from its words: these change none of its numbers."""
    answer = check(question("own", SAID | {"words": "a plain claim"}))
    return lambda words: replace(answer, question=question("own", SAID | {"words": words}))


def described(name, currency):
    """The drive with texts wherever there is room for one, as a link brings them."""
    return with_settings(TOWN, {"name": name, "currency": currency}, SETTINGS)


def named(card, name, currency, line):
    """The card of such a drive, with a showroom's line."""
    return replace(card, scenario=described(name, currency), line=showroom.parsed(json.dumps({"line": line})).line)


def test_the_card_to_take_has_no_element_and_no_lead_more(card):
    usual = Reader(report_html(named(card, "plain", "plain", "plain")))
    assert "plain" in usual.seen and ("script",) not in usual.elements
    for texts in batched([*filter(fits, NASTY), *filter(fits, NASTY[:1])], 3):
        brought = named(card, *texts)
        made = report_html(brought)
        page = Reader(made)
        assert page.elements == usual.elements and page.leads == usual.leads, texts
        assert not set(TURNING.replace("\n", "")) & set(made), texts
        for text in texts:
            assert bare(one_line(text)[: showroom.MOST_LETTERS]) in bare(page.seen), text
        assert from_file(made.encode(), "card.html").scenario == brought.scenario


@given(TEXTS)
@example(NASTY[-1][:1000])
def test_a_scenario_keeps_a_text_in_one_line_through_file_and_answer(text):
    if not fits(text):
        with refuses("a short text can"):
            described(text, "plain")
        return
    scenario = described(text, text)
    assert not set(TURNING) & set(scenario.year.currency + str(dict(scenario.stated)["name"]))
    assert scenario_from_json(json.loads(as_text({"scenario": scenario_to_json(scenario)}))["scenario"]) == scenario


@given(st.lists(TEXTS, min_size=1, max_size=4))
def test_a_spreadsheet_finds_a_text_in_every_cell_that_was_brought(texts):
    texts = [text.replace("\x00", "") for text in texts]
    table = pd.DataFrame({"Car": texts, "Energy, kWh": [-1.0] * len(texts)})
    rows = list(csv.reader(io.StringIO(csv_text(table), newline="")))[1:]
    assert [row[1] for row in rows] == ["-1.0"] * len(texts)
    cars = [dict(zip(CAR_COLUMNS, (text, "udds"), strict=False), refused=text, low=-1.0) for text in texts]
    many = list(csv.DictReader(io.StringIO(as_csv(cars), newline="")))
    assert [row["low"] for row in many] == ["-1"] * len(texts)
    for text, *cells in zip(texts, (row[0] for row in rows), *([row[key] for row in many] for key in ("id", "refused")),
                            strict=True):  # fmt: skip
        for cell in cells:
            assert cell.lstrip()[:1] not in FORMULA and bare(cell.removeprefix("'")) == bare(text).removeprefix("'")


def json_texts(value):
    """All texts in what was read of JSON."""
    if isinstance(value, str):
        return [value]
    parts = value.values() if isinstance(value, dict) else value if isinstance(value, list) else ()
    return [text for part in parts for text in json_texts(part)]


def in_svg(picture):
    """The elements of a picture with the names of their attributes, and its words; raises where it is no XML."""
    tree = ET.fromstring(picture)
    return {(one.tag, *sorted(one.attrib)) for one in tree.iter()}, "".join(tree.itertext())


def test_ones_own_words_of_a_claim_are_text_in_every_file(told):
    plain = told("a plain claim")
    usual = Reader(claim_files.article_html(plain))
    for place in (0, 1):
        answer = told(" ".join(NASTY[place:-1:2]))
        words = bare(answer.question.claim.text)
        assert len(words) > MOST_WORDS / 4
        shape, written = in_svg(claim_files.chart_svg(answer))
        assert shape == in_svg(claim_files.chart_svg(plain))[0] and words in bare(written)
        made = claim_files.article_html(answer)
        page = Reader(made)
        assert page.elements == usual.elements and page.leads == []
        assert words in bare(page.seen)
        assert not set(TURNING.replace("\n", "")) & set(made + written)
        assert claim_files.runs_text(answer) == claim_files.runs_text(plain)
        for text in (claim_files.answer_text(answer), claim_files.chart_text(answer)):
            assert words in bare("".join(json_texts(json.loads(text))))
        assert claim_files.chart_png(answer).startswith(b"\x89PNG")


@given(TEXTS)
@example(NASTY[-1][:1000])
def test_a_shell_takes_the_command_of_a_claim_as_it_is_meant(told, text):
    if len(one_line(text)) > MOST_WORDS:
        with refuses("characters are too many"):
            told(text)
        return
    asked = told(text).question
    given_ = {pair.partition("=")[0]: pair.partition("=")[2] for pair in shlex.split(claim_files.command(asked))[6::2]}
    assert given_ == {key: str(value) for key, value in asked.given.items()}


def test_the_name_of_no_file_comes_from_what_somebody_wrote(told):
    assert told("../../etc/passwd").question.claim.id == "own"
