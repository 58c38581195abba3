"""Public signatures say what they take and give: no `Any`, and no container or array of no matter what."""

import ast
import re
from pathlib import Path

ROOT = Path(__file__).parent.parent
BARE = {"Callable", "Iterable", "Mapping", "Sequence", "dict", "frozenset", "list", "ndarray", "set", "tuple", "type"}
TYPE_NAME = "[A-Z]+[a-z]+[A-Za-z]*"
PLAIN_DATA = "pages/parts/theme.py: Spec: Any"
"""A picture in Vega-Lite, which the tests hold against its schema."""


def vague(annotation):
    """What in an annotation says nothing."""
    if isinstance(annotation, ast.Constant) and isinstance(annotation.value, str):
        annotation = ast.parse(annotation.value, mode="eval").body
    if isinstance(annotation, ast.Subscript):
        return vague(annotation.slice)
    name = getattr(annotation, "id", getattr(annotation, "attr", ""))
    here = [name] if name == "Any" or name in BARE else []
    return here + [one for child in ast.iter_child_nodes(annotation) for one in vague(child)]


def annotations(body, place=""):
    """The annotations of public functions, methods and values, each with its place."""
    for node in body:
        if isinstance(node, ast.ClassDef) and not node.name.startswith("_"):
            yield from annotations(node.body, f"{place}{node.name}.")
        elif isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
            if node.name.startswith("_") and node.name != "__init__":
                continue
            given = node.args
            every = [*given.posonlyargs, *given.args, *given.kwonlyargs, given.vararg, given.kwarg]
            for argument in every:
                if argument and argument.annotation:
                    yield f"{place}{node.name}({argument.arg})", argument.annotation
            if node.returns:
                yield f"{place}{node.name}", node.returns
        elif isinstance(node, ast.Assign) and re.fullmatch(TYPE_NAME, name := getattr(node.targets[0], "id", "")):
            yield f"{place}{name}", node.value
        elif isinstance(node, ast.AnnAssign) and not node.target.id.startswith("_"):
            yield f"{place}{node.target.id}", node.annotation


def test_public_signatures_say_what_they_take_and_give():
    found = []
    for path in sorted([*(ROOT / "model").rglob("*.py"), *(ROOT / "pages" / "parts").rglob("*.py")]):
        name = path.relative_to(ROOT).as_posix()
        tree = ast.parse(path.read_text(encoding="utf-8"))
        found += [f"{name}: {place}: {word}" for place, given in annotations(tree.body) for word in vague(given)]
    assert found == [PLAIN_DATA]


def test_what_says_nothing_is_seen():
    code = "def one(a: dict[str, Any], b: list, c: NDArray[np.float64]) -> Callable: ...\n"
    code += "class A:\n    x: 'list[str]'\nRows = list[dict[str, Any]]\n"
    code += "GridRows = dict[str, Any]\nasync def two() -> Any: ...\n"
    found = [(place, vague(one)) for place, one in annotations(ast.parse(code).body)]
    told = [("one(a)", ["Any"]), ("one(b)", ["list"]), ("one(c)", []), ("one", ["Callable"]), ("A.x", [])]
    assert found == [*told, ("Rows", ["Any"]), ("GridRows", ["Any"]), ("two", ["Any"])]
