"""What a reader meets stands in message files, so no text in code reads like a sentence or a phrase."""

import ast
import re
from collections import Counter
from pathlib import Path

ROOT = Path(__file__).resolve().parents[3]
WORD = re.compile(r"(?<![\w#./<&\\$-])[A-Za-z][a-z’']+(?![\w:/=>(_-])")
UNIT = re.compile(r"(\w+ )?per (\d+ )?\w+")
NOT_FOR_READERS = {"MessageError", "TableError", "AttributeError", "ValueError", "wrong", "_Wrong", "compile", "debug"}
"""Faults of ours, of a table, or caught at once; patterns; log lines."""
EXCEPTIONS = {
    "app.py": (7, "pages of the server itself, before there is a reader's language"),
    "model/describe/tables.py": (3, "told to whoever edits a table of assets, as TableError"),
    "model/describe/parameters.py": (3, "the same"),
    "model/describe/fields.py": (1, "the text of an exception that was not caught"),
    "model/kernel/warm.py": (4, "a log line at the server's start"),
    "model/traces/recorded_names.py": (44, "names of columns as files have them, in several languages"),
    "model/traces/recorded_csv.py": (1, "what a library says, to be recognised"),
    "model/traces/cycles.py": (5, "citations of regulations"),
    "model/kernel/phrases.py": (1, "a citation"),
    "pages/parts/cold_words.py": (1, "a citation"),
    "pages/parts/grip_words.py": (4, "citations"),
    "model/lift_off/slowing.py": (5, "words of answer files, which stay, and citations"),
    "model/words/amounts.py": (1, "a pattern"),
    "model/words/lift_off.py": (1, "the same words, each with its message"),
    "model/limits/grip_margin.py": (2, "bends as links have them"),
    "model/limits/limit_settings.py": (1, "the same"),
    "model/claims/collection.py": (1, "told to whoever edits the file of claims"),
    "model/claims/specification.py": (1, "a unit as links and files have it"),
    "model/checks/certified.py": (2, "a table's own words"),
    "model/claims/errors.py": (1, "the same"),
    "model/claims/evidence.py": (2, "the same"),
    "model/describe/sources.py": (2, "the same"),
    "model/describe/changes.py": (1, "the same"),
    "model/words/bands.py": (1, "the same"),
    "pages/sources.py": (2, "the same"),
    "model/out/recorded.py": (1, "the key of a draw"),
    "model/out/cli.py": (1, "the name of the command"),
    "pages/parts/claim_files.py": (1, "the same"),
    "pages/parts/report.py": (1, "the same"),
    "pages/entrypoint.py": (1, "the name of the program"),
    "pages/parts/panel_words.py": (4, "formulas"),
    "pages/parts/theme.py": (5, "names of typefaces, and rules of style"),
    "pages/parts/charts/drive_strip.py": (1, "expressions of a picture"),
    "pages/parts/charts/layers.py": (2, "the same"),
    "pages/parts/charts/lift_off_hills.py": (1, "the same"),
    "pages/parts/charts/own_road.py": (3, "the same"),
    "pages/parts/charts/panels.py": (1, "the same"),
}
"""How many texts of two words or more a file has that are not for a reader or cannot stand in a message, and why."""


def called(node):
    """The name of what is called."""
    return getattr(node.func, "attr", getattr(node.func, "id", ""))


def texts(tree):
    """Every text in code that is no docstring."""
    passed_over = {id(node.value) for node in ast.walk(tree) if isinstance(node, ast.Expr)}
    for node in ast.walk(tree):
        if isinstance(node, ast.Call) and called(node) in NOT_FOR_READERS:
            passed_over |= {id(inner) for inner in ast.walk(node)}
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and id(node) not in passed_over:
            yield node.lineno, node.value


def reads_like_english(text):
    return " " in text.strip() and len(WORD.findall(text)) >= 2 and not UNIT.fullmatch(text)


def found():
    files = [ROOT / "app.py", *(ROOT / "model").rglob("*.py"), *(ROOT / "pages").rglob("*.py")]
    for path in sorted(files):
        for line, text in texts(ast.parse(path.read_text(encoding="utf-8"))):
            if reads_like_english(text):
                yield path.relative_to(ROOT).as_posix(), line, text


def test_no_text_in_code_is_for_a_reader():
    left = [one for one in found() if one[0] not in EXCEPTIONS]
    assert left == []


def test_an_exception_covers_what_it_was_made_for():
    counts = Counter(path for path, _, _ in found())
    assert {path: counts[path] for path in EXCEPTIONS} == {path: count for path, (count, _) in EXCEPTIONS.items()}


def test_a_sentence_and_a_phrase_are_seen():
    tree = ast.parse('"""A docstring."""\nst.title("Where the energy goes")\ny = f"{x} of the battery"\nz = "a-key"')
    assert [text for _, text in texts(tree) if reads_like_english(text)] == ["Where the energy goes", " of the battery"]
