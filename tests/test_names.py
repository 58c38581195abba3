"""One meaning a name."""

import ast
import subprocess
from collections import defaultdict
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[1]
SAYS_NOTHING = {"this", "some", "one", "told"}
"""Names of everything and nothing."""


def defined(*folders):
    """Where each public class, type and constant of some folders is defined, placeholders of types left out."""
    places = defaultdict(set)
    for path in sorted(path for folder in folders for path in (ROOT / folder).rglob("*.py")):
        for node in ast.parse(path.read_text(encoding="utf-8")).body:
            if isinstance(node, ast.Assign) and isinstance(node.value, ast.Call):
                called = node.value.func
                if isinstance(called, ast.Name) and called.id in ("TypeVar", "ParamSpec"):
                    continue
            if isinstance(node, ast.ClassDef):
                names = [node.name]
            elif isinstance(node, ast.Assign | ast.AnnAssign):
                targets = node.targets if isinstance(node, ast.Assign) else [node.target]
                names = [one.id for target in targets for one in ast.walk(target) if isinstance(one, ast.Name)]
            else:
                continue
            for name in names:
                if not name.startswith("_"):
                    places[name].add(path.relative_to(ROOT).as_posix())
    return places


def made_by(node):
    """The names that a piece of code gives to something: a variable, a parameter, a function or class, an import."""
    if isinstance(node, ast.Name):
        return {node.id} if isinstance(node.ctx, ast.Store) else set()
    if isinstance(node, ast.arg):
        return {node.arg}
    if isinstance(node, ast.alias):
        return {node.asname or node.name}
    return {node.name} if isinstance(node, ast.FunctionDef | ast.ClassDef) else set()


def test_a_name_says_what_it_holds():
    found = [
        f"{path.relative_to(ROOT)}:{node.lineno}"
        for folder in ("model", "pages")
        for path in sorted((ROOT / folder).rglob("*.py"))
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
        if made_by(node) & SAYS_NOTHING
    ]
    assert not found


def test_a_class_or_type_has_one_meaning():
    twice = {name: places for name, places in defined("model", "pages").items()
             if len(places) > 1 and name[0].isupper() and name != name.upper()}  # fmt: skip
    assert not twice


def figures(folder):
    """Where each figure of a folder is defined: a public name for a number."""
    places = defaultdict(set)
    for path in sorted((ROOT / folder).rglob("*.py")):
        for node in ast.parse(path.read_text(encoding="utf-8")).body:
            if isinstance(node, ast.Assign) and isinstance(node.targets[0], ast.Name):
                held, name = list(ast.walk(node.value)), node.targets[0].id
                plain = any(isinstance(part, ast.Constant) and isinstance(part.value, int | float) for part in held)
                if plain and not isinstance(node.value, ast.Tuple | ast.Dict | ast.List) and name[0] != "_":
                    places[name].add(path.name)
    return places


def test_a_figure_of_the_model_has_one_name_and_stands_once():
    assert {"GRAVITY_MPS2", "WARM_C"} <= figures("model").keys()
    assert not {name: places for name, places in figures("model").items() if len(places) > 1}


def test_what_is_drawn_or_cut_is_named_apart():
    """Numbers of drawn runs, parts of something, laboratories: one constant of each name in the model."""
    places = defined("model")
    assert {name: len(places[name]) for name in ("RUNS", "LABORATORY")} == {"RUNS": 1, "LABORATORY": 1}
    assert "PARTS" not in places


def test_no_link_is_a_file_of_the_project():
    """One to an environment was taken in, and stood in the environment's place wherever the project was fetched."""
    if not (ROOT / ".git").exists():
        pytest.skip("not fetched by git")
    listed = subprocess.run(["git", "ls-files", "--stage"], cwd=ROOT, capture_output=True, text=True, check=True)
    links = [line.split("\t")[1] for line in listed.stdout.splitlines() if line.startswith("120000")]
    assert links == []
