"""What can be taken away of a claim: each file says which model it is from, and the command line gives the same."""

import csv
import io
import json
import re
import shlex
import subprocess
import sys
from html.parser import HTMLParser
from pathlib import Path

import pytest

from model import MODEL_DATE, MODEL_VERSION
from model.claims.collection import claims
from model.claims.evidence import evidence
from model.claims.questions import question
from model.describe.sources import sources
from model.out.cli import main
from model.words.claims import left_out, verdict_words, words_of
from model.words.quantities import MINUS, Display
from pages.parts import claim_files
from pages.parts.charts.export import PAPER, PRINT_PX
from pages.parts.claim_words import band_text, distribution_alt, quotable, rows_of, swings_of
from pages.parts.public_link import PUBLIC_URL
from pages.parts.theme import PRINT_FONT
from tests.answered import answered
from tests.model.out import commanded

ROOT = Path(__file__).parents[2]
QUICK = "two-megawatts"
SETTINGS = {"number": "0.9", "car": "van,pickup", "slowing_mps2": "8..9.81", "relation": "at_least"}


@pytest.mark.parametrize("settings", [{}, SETTINGS, {"slowing_mps2": "open", "mass_kg": "2700.5"}])
def test_the_command_line_gives_the_same_bytes(settings, tmp_path):
    answer = answered(QUICK, settings)
    text = claim_files.answer_text(answer).encode()
    command = shlex.split(claim_files.command(answer.question))
    assert command[:4] == ["python", "-m", "model", "claim"]
    command[0] = sys.executable
    assert subprocess.run(command, cwd=ROOT, capture_output=True, check=True).stdout == text
    (tmp_path / "answer.json").write_bytes(text)
    command[4:] = [str(tmp_path / "answer.json")]
    assert subprocess.run(command, cwd=ROOT, capture_output=True, check=True).stdout == text


@pytest.mark.parametrize("claim_id", claims())
def test_page_and_command_line_give_the_same_bytes_of_every_claim(claim_id, capsys):
    assert main(["claim", claim_id]) == 0
    assert capsys.readouterr().out == claim_files.answer_text(answered(claim_id))


@pytest.mark.parametrize("what", claim_files.FILES)
def test_every_file_carries_version_and_date(what):
    answer = answered("stops-as-fast-as-brakes", {"number": "2"})
    assert what in claim_files.files_of(answer)
    _, make, _ = claim_files.FILES[what]
    made = make(answer)
    if isinstance(made, bytes):
        assert made.startswith(b"\x89PNG") and len(made) > 10_000
        return
    assert MODEL_VERSION in made and MODEL_DATE in made


def test_the_picture_as_svg_says_what_was_claimed_and_what_was_found():
    answer = answered(QUICK)
    made = claim_files.chart_svg(answer)
    for part in ("A full stop from top speed brakes with more than 2 MW", "does not hold in the modelled range",
                 "MIT licence", "claimed: 2 MW",
                 f"The model: {band_text(answer)}".replace("\N{NO-BREAK SPACE}", " ")):  # fmt: skip
        assert part in made.replace("\N{NO-BREAK SPACE}", " "), part


def test_a_picture_has_a_white_ground_or_none_and_words_in_a_named_font():
    answer = answered(QUICK)
    white, clear = claim_files.chart_svg(answer), claim_files.chart_clear_svg(answer)
    assert f'fill="{PAPER}"' in white and white != clear
    assert re.sub(r'<rect width="\d+" height="\d+" fill="#ffffff"/>', "", white, count=1) == clear
    fonts = set(re.findall(r'font-family="([^"]*)"', white))
    assert fonts == {PRINT_FONT} and "<text" in white


def test_the_public_address_stands_on_pictures_where_there_is_one(monkeypatch):
    asked = question(QUICK)
    assert "http" not in claim_files.signed(asked) and "MIT licence" in claim_files.signed(asked)
    monkeypatch.setenv(PUBLIC_URL, "https://brakes.example.org")
    assert f"https://brakes.example.org/check_a_claim?claim={QUICK}" in claim_files.signed(asked)


@pytest.mark.parametrize(
    ("claim_id", "settings"),
    [("range-gain-in-town", {}), ("cold-halves-range", {"ambient_c": "-15..-5"}), ("free-charge-on-descents", {}),
     ("stops-as-fast-as-brakes", {}), ("bigger-motor-recovers-more", {})],
)  # fmt: skip
def test_a_row_put_in_on_the_command_line_gives_its_number_again(claim_id, settings, capsys):
    table = list(csv.DictReader(io.StringIO(claim_files.runs_text(answered(claim_id, settings)))))
    told = [key for key in table[0] if key.startswith("number")]
    apart = {*told, "run", "claim_true", "model_version", "model_date"}
    for row in (table[len(table) // 7], table[-1]):
        pairs = [f"--set={key}={value}" for key, value in row.items() if key not in apart and value]
        assert main(["claim", claim_id, *pairs]) == 0
        again = json.loads(capsys.readouterr().out)["quantiles"]
        assert again["0.05"] == pytest.approx(again["0.95"], rel=1e-6, abs=1e-6)
        assert again["0.5"] == pytest.approx(float(row[told[0]]), rel=1e-4, abs=1e-4)


@pytest.mark.parametrize(
    ("claim_id", "hybrids"), [("hybrid-against-battery-car", True), ("plug-in-as-good", True), (QUICK, False)]
)
def test_ten_rows_are_computed_again_by_their_place_a_hybrids_too(claim_id, hybrids, capsys):
    table = list(csv.DictReader(io.StringIO(claim_files.runs_text(answered(claim_id)))))
    (told,) = [key for key in table[0] if key.startswith("number")]
    assert all(("own figures are not in this row" in row.get("note", "")) == hybrids for row in table)
    for row in table[:: len(table) // 9]:
        found = commanded.answer(capsys, "claim", claim_id, f"--run={row['run']}")
        assert found["number"] == pytest.approx(float(row[told]), rel=1e-5) and found["run"] == int(row["run"])
        assert str(found["claim_true"]) == row["claim_true"]
        assert {key: value for key, value in found["drawn"].items() if isinstance(value, str)}.items() <= row.items()


class Page(HTMLParser):
    """What an HTML page asks for, where it leads, and its texts for those who do not see it."""

    def __init__(self, text):
        super().__init__()
        self.tags, self.asks, self.leads = [], [], []
        self.feed(text)

    def handle_starttag(self, tag, attributes):
        given = dict(attributes)
        self.tags.append((tag, given))
        self.asks += [(tag, key) for key in ("src", "srcset", "data", "poster", "action") if key in given]
        self.asks += [(tag, given["href"])] if "href" in given and tag != "a" else []
        self.leads += [given["href"]] if tag == "a" else []


@pytest.mark.parametrize("claim_id", ["cold-halves-range", QUICK])
def test_the_page_for_an_article_asks_nothing_and_is_there_for_everybody(claim_id):
    answer = answered(claim_id)
    made = claim_files.article_html(answer)
    page = Page(made)
    names = [tag for tag, _ in page.tags]
    assert not page.asks and not {"script", "link", "iframe", "img", "object", "embed"} & set(names)
    assert not re.search(r"@import|url\(|javascript:", made)
    assert set(page.leads) <= {one.address for one in sources().values()}
    (picture,) = [given for tag, given in page.tags if given.get("role") == "img"]
    assert picture["aria-label"] == distribution_alt(answer, rows_of(answer, Display()), Display())
    assert names.count("h1") == names.count("main") == 1 and names.index("h1") < names.index("h2")
    assert all(given.get("scope") in ("col", "row") for tag, given in page.tags if tag == "th")
    text = made.replace("\N{NO-BREAK SPACE}", " ").replace(MINUS, "-")
    claimed = words_of(claims()[claim_id]).replace(MINUS, "-")
    for needed in (MODEL_VERSION, "MIT licence", verdict_words(answer), claimed):
        assert needed in text, needed
    assert bool(page.leads) == any(beside.measurement.source.address for beside in evidence(answer.question).same)


def test_somebodys_own_words_are_text_in_the_page_for_an_article():
    words = "<script>alert(1)</script> [more](https://example.org)"
    said = {"quantity": "slowing", "relation": "at_least", "number": "1", "unit": "m/s²", "words": words}
    page = Page(claim_files.article_html(answered("own", said)))
    assert "script" not in [tag for tag, _ in page.tags] and not page.leads


def test_printed_words_keep_every_digit():
    answer = answered("recovered-on-test-cycle", {"car": "family-hatch"})
    ends = next(swing for swing in swings_of(answer, Display()) if swing.name == "The rolling resistance of the tyres")
    assert ends.at_high.startswith("at 0.00") and ends.at_high in claim_files.tornado_svg(answer)


def test_a_picture_that_is_not_drawn_is_not_offered():
    offered = set(claim_files.files_of(answered("weight-costs-nothing")))
    assert set(claim_files.FILES) - offered == {"needs"}


def test_a_number_of_ones_own_stands_in_print_and_in_the_quote_in_place_of_the_lists():
    answer = answered(QUICK, {"number": "1"})
    for text in (claim_files.under_print(answer)[0], quotable(answer), claim_files.answer_text(answer)):
        text = text.replace("\N{NO-BREAK SPACE}", " ")
        assert "raking power at the first moment is at least 1 MW" in text
        assert words_of(claims()[QUICK]) not in text


def test_the_picture_as_vega_lite_holds_its_data():
    spec = json.loads(claim_files.chart_text(answered(QUICK)))
    assert spec["$schema"].endswith("v6.json") and spec["width"] == PRINT_PX
    assert {layer["data"]["name"] for layer in spec["layer"]} <= set(spec["datasets"])
    assert all(spec["datasets"].values())


def test_every_run_is_in_the_table_with_what_was_drawn():
    answer = answered("switching-delay", {"car": "van"})
    table = list(csv.DictReader(io.StringIO(claim_files.runs_text(answer))))
    assert len(table) == len(answer.values)
    assert {"delay_ms", "cycle", "car", "number_pct", "claim_true", "model_version", "model_date"} <= set(table[0])
    for row, value, true in zip(table, answer.values, answer.true, strict=True):
        assert float(row["number_pct"]) == pytest.approx(value, rel=1e-5)
        assert row["claim_true"] == str(bool(true)) and row["car"] == "van"


@pytest.mark.parametrize("claim_id", claims())
def test_the_method_note_counts_the_runs_and_names_what_is_left_out(claim_id):
    answer = answered(claim_id)
    note = claim_files.method_note(answer)
    assert f"{len(answer.values):,} runs" in note and left_out(answer.question.claim) in note
    assert claim_files.signed(answer.question) in note


def test_words_that_a_shell_would_take_apart_are_quoted():
    asked = question(QUICK, {"car": "van,pickup"})
    assert claim_files.command(asked).endswith("--set car=van,pickup")
    assert shlex.split(claim_files.shell("a b;c")) == ["a b;c"]


def test_the_kept_numbers_of_a_link_are_the_band():
    answer = answered(QUICK)
    low, mid, high = map(float, claim_files.gave(answer).split("_"))
    assert [low, mid, high] == pytest.approx([answer.quantiles[point] for point in ("0.05", "0.5", "0.95")], rel=5e-3)
