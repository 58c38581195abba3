"""Since when each check's range has stood in the tests, from their history: ``python -m tests.published.ranges_set``.

The ranges are those that a test hands to `assert_within`. A range has stood since the earliest commit from which on
every commit has all its numbers in these files; they were once kept beside the checks themselves. A commit that moves a
range is followed by one that writes ``assets/published/ranges_set.csv`` anew, since a commit cannot name itself.
"""

from __future__ import annotations

import ast
import csv
import re
import subprocess
from pathlib import Path

from model.checks.published import CHECKS

ROOT = Path(__file__).parents[2]
TABLE = ROOT / "assets" / "published" / "ranges_set.csv"
FOLDERS = ("tests/published", "tests/consistency")
PLACES = (*FOLDERS, "model/published_checks.py", "model/winter_checks.py", "model/checks")
"""Where ranges stand and stood."""


def git(*arguments: str) -> str:
    """What git answers; `subprocess.CalledProcessError` or `FileNotFoundError` where it cannot."""
    return subprocess.run(["git", *arguments], cwd=ROOT, capture_output=True, text=True, check=True).stdout


def has_history() -> bool:
    """Whether the whole history is at hand."""
    try:
        return git("rev-parse", "--is-shallow-repository").strip() == "false"
    except (subprocess.CalledProcessError, FileNotFoundError):
        return False


def in_tests(text: str) -> dict[str, list[str]]:
    """The ranges of a test file by the check's function, as patterns that find them however they are spaced."""
    found: dict[str, list[str]] = {}
    for function in ast.walk(ast.parse(text)):
        if not isinstance(function, ast.FunctionDef):
            continue
        names = {call.func.id for call in ast.walk(function) if isinstance(call, ast.Call) and hasattr(call.func, "id")}
        asked = names & {check.__name__ for check in CHECKS}
        for call in ast.walk(function):
            if isinstance(call, ast.Call) and getattr(call.func, "id", "") == "assert_within" and asked:
                pairs = [node for node in ast.walk(call.args[1]) if isinstance(node, ast.Tuple) and len(node.elts) == 2]
                found.setdefault(asked.pop(), []).extend(map(_pattern, pairs))
    return found


def _pattern(pair: ast.Tuple) -> str:
    return r"\(" + r",\s*".join(re.escape(ast.unparse(end)) for end in pair.elts) + r"\)"


def texts_at(commit: str) -> str:
    """The files in which ranges stand, as one text, at a commit."""
    return git("grep", "-h", "-e", "", commit, "--", *PLACES)


def ranges_set() -> list[list[str]]:
    """For each check with a range: its id, the commit since which the range has stood, and that commit's day."""
    now: dict[str, list[str]] = {}
    for folder in FOLDERS:
        for name in git("ls-tree", "-r", "--name-only", "HEAD", "--", folder).split():
            if name.endswith(".py"):
                now |= in_tests(git("show", f"HEAD:{name}"))
    commits = git("log", "--format=%H %cs", "HEAD", "--", *PLACES).splitlines()
    since: dict[str, list[str]] = {}
    standing = set(now)
    for commit in commits:
        text = texts_at(commit.split()[0]) if standing else ""
        standing = {one for one in standing if all(re.search(pattern, text) for pattern in now[one])}
        for one in standing:
            name, day = commit.split()
            since[one] = [one.replace("_", "-"), name[:10], day]
    return [since[check.__name__] for check in CHECKS if check.__name__ in since]


if __name__ == "__main__":
    with open(TABLE, "w", encoding="utf-8", newline="") as file:
        csv.writer(file, lineterminator="\n").writerows([["check", "set_in", "set_on"], *ranges_set()])
