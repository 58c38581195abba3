"""The map of modules in DEVELOPERS.md: every module stands in it once, and none imports one of a later row."""

import ast
import re
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
MAP = (ROOT / "DEVELOPERS.md").read_text("utf-8").split("`model/` in the order")[1].split("A hybrid is")[0]
ROWS = [re.findall(r"`(\w+)`", line.split("|")[2]) for line in MAP.splitlines() if line.startswith("|")]
ROW_OF = {module: row for row, modules in enumerate(ROWS) for module in modules}


def test_every_module_stands_in_the_map_once():
    modules = {path.stem for path in (ROOT / "model").glob("*.py")} - {"__init__", "__main__"}
    assert sorted(module for row in ROWS for module in row) == sorted(modules)


def test_no_module_imports_one_of_a_later_row():
    upwards = []
    for module, row in ROW_OF.items():
        for node in ast.walk(ast.parse((ROOT / "model" / f"{module}.py").read_text("utf-8"))):
            if isinstance(node, ast.ImportFrom) and (node.module or "").startswith("model"):
                parts = node.module.split(".")
                names = [parts[1]] if len(parts) > 1 else [name.name for name in node.names]
                upwards += [(module, name) for name in names if ROW_OF.get(name, 0) > row]
    assert not upwards
