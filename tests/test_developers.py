"""What DEVELOPERS.md says of the house and of what it stands on is so."""

import ast
import re
import sys
from pathlib import Path

from packaging.requirements import Requirement

ROOT = Path(__file__).parent.parent
TEXT = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
OPTIONAL = {"distributed"}
"""Asked for where it is installed."""


def rows(heading: str) -> list[list[str]]:
    """The cells of the table that begins with that heading."""
    _, table = TEXT.split(f"| {heading} |", 1)
    lines = table.split("\n\n", 1)[0].splitlines()[2:]
    return [[cell.strip() for cell in line.strip("| ").split(" | ")] for line in lines]


def imported(path: Path) -> set[str]:
    """The modules that a file imports, in full."""
    found = set()
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            found |= {name.name for name in node.names}
        elif isinstance(node, ast.ImportFrom):
            found |= {f"{node.module}.{name.name}" for name in node.names}
    return found


def modules_by_folder() -> dict[str, set[str]]:
    """What DEVELOPERS.md says stands in each folder of the model, in its order."""
    return {
        folder.strip("`/"): set(re.findall(r"`(\w+)`", modules))
        for folder, _, modules in rows("folder | what lives there | modules")
    }


def test_the_table_of_the_model_is_whole():
    found = {
        folder.name: {path.stem for path in folder.glob("*.py")} - {"__init__"}
        for folder in (ROOT / "model").iterdir()
        if folder.is_dir() and folder.name != "__pycache__"
    }
    assert found == modules_by_folder()


def test_no_folder_of_the_model_imports_a_later_one():
    order = list(modules_by_folder())
    late = [
        f"{path.relative_to(ROOT)} imports {module}"
        for row, folder in enumerate(order)
        for path in (ROOT / "model" / folder).glob("*.py")
        for module in imported(path)
        if module.startswith("model.") and module.split(".")[1] in order[row + 1 :]
    ]
    assert not late


def test_every_dependency_has_its_reason():
    reasoned = {name for names, _ in rows("package | why") for name in names.split(", ")}
    required = set()
    for file in ("requirements.txt", "tests/requirements.txt", "tests/mutation/requirements.txt"):
        lines = (ROOT / file).read_text(encoding="utf-8").splitlines()
        required |= {re.split(r"[<>=]", line)[0] for line in lines if line[:1].isalpha()}
    assert required | OPTIONAL == reasoned


def test_the_oldest_versions_tried_are_the_oldest_allowed():
    asked, tried = (
        [line for line in (ROOT / file).read_text(encoding="utf-8").splitlines() if line[:1].isalpha()]
        for file in ("requirements.txt", "tests/constraints-oldest.txt")
    )
    oldest = [re.match(r"(.+)>=([0-9.]+)", line).groups() for line in asked]
    assert [tuple(line.split("==")) for line in tried] == [
        (name, version + ".0" * (2 - version.count("."))) for name, version in oldest
    ]


def test_what_is_imported_is_required():
    own, with_streamlit = {"model", "pages"}, {"starlette", "pyarrow"}
    files = [ROOT / "app.py", *(ROOT / "model").rglob("*.py"), *(ROOT / "pages").rglob("*.py")]
    used = {module.split(".")[0] for path in files for module in imported(path)}
    lines = (ROOT / "requirements.txt").read_text(encoding="utf-8").splitlines()
    required = {re.split(r"[<>=.]", line)[0].replace("-python", "").replace("-", "_") for line in lines}
    assert used - set(sys.stdlib_module_names) - own - with_streamlit - OPTIONAL <= required


def ways() -> dict[str, list[str]]:
    """The ways through the house: their headings and their files, in order."""
    text = TEXT.split("## Three ways through the house", 1)[1].split("\n## ", 1)[0]
    parts = re.split(r"^\*\*(.+)\*\*$", text, flags=re.M)[1:]
    return {
        name: re.findall(r"^\d+\. `([^`]+)`", steps, flags=re.M)
        for name, steps in zip(parts[::2], parts[1::2], strict=True)
    }


def test_each_way_through_the_house_is_short_and_leads_on():
    assert len(ways()) == 3
    for name, files in ways().items():
        assert 5 <= len(files) <= 10 and len(set(files)) == len(files), name
        for place, file in enumerate(files[1:], 1):
            before = [ROOT / other for other in files[:place]]
            if before[-1].suffix != ".py":
                assert before[-1].name in (ROOT / file).read_text(encoding="utf-8"), file
                continue
            here = imported(ROOT / file)
            module = file.removesuffix(".py").replace("/", ".")
            tied = any(
                any(one.startswith(other.relative_to(ROOT).as_posix().removesuffix(".py").replace("/", "."))
                    for one in here)
                or any(one.startswith(module) for one in imported(other))
                for other in before if other.suffix == ".py"
            )  # fmt: skip
            assert tied, f"{name}: nothing before leads to {file}"


def test_the_newest_versions_tried_are_allowed_and_the_containers():
    tried, locked = (
        dict(line.split("==") for line in (ROOT / file).read_text(encoding="utf-8").splitlines() if "==" in line)
        for file in ("tests/constraints-newest.txt", "assets/deploy/constraints.txt")
    )
    lines = (ROOT / "requirements.txt").read_text(encoding="utf-8").splitlines()
    asked = {one.name: one.specifier for one in map(Requirement, filter(lambda line: line[:1].isalpha(), lines))}
    assert tried.keys() == asked.keys()
    for name, version in tried.items():
        assert asked[name].contains(version), name
        assert locked[name.replace(".", "-")] == version
