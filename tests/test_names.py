"""One meaning a name."""

import ast
from collections import defaultdict
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]


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


def test_a_class_or_type_has_one_meaning():
    twice = {name: places for name, places in defined("model", "pages").items()
             if len(places) > 1 and name[0].isupper() and name != name.upper()}  # fmt: skip
    assert not twice


def test_what_is_drawn_or_cut_is_named_apart():
    """Numbers of drawn runs, parts of something, laboratories: one constant of each name in the model."""
    places = defined("model")
    assert {name: len(places[name]) for name in ("RUNS", "LABORATORY")} == {"RUNS": 1, "LABORATORY": 1}
    assert "PARTS" not in places
