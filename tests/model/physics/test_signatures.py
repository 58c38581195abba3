"""Whoever reads the physics sees what goes in and what comes out: nothing public takes or gives `Any`."""

import ast
from pathlib import Path

PHYSICS = Path(__file__).resolve().parents[3] / "model" / "physics"


def test_no_public_function_of_the_physics_takes_or_gives_anything_at_all():
    found = []
    for path in sorted(PHYSICS.glob("*.py")):
        for node in ast.parse(path.read_text(encoding="utf-8")).body:
            if isinstance(node, ast.FunctionDef) and not node.name.startswith("_"):
                arguments = [*node.args.posonlyargs, *node.args.args, *node.args.kwonlyargs]
                told = [one.annotation for one in arguments] + [node.returns]
                if any("Any" in ast.unparse(one) for one in told if one is not None):
                    found.append(f"{path.name}: {node.name}")
    assert not found
