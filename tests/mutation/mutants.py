"""Mutation testing: ``python -m tests.mutation.mutants FOLDER --mutants 400 --seed 2026``.

Mutants are drawn from ``model/`` with the operators of cosmic-ray, each put into a copy of the project, and held
against the tests that are nearest to its module first, then against wider ones, up to the first that fails. What was
found is kept in FOLDER, line by line: started again, it goes on from there.

Nothing is compiled for a mutant. Where compiled code would hold its module, everything runs as Python; elsewhere the
physics stays as it was compiled before, since it is untouched. A test that takes longer than a few seconds is left out,
so a survivor may still be found by the whole suite; one that kills must pass without the mutant.
"""

from __future__ import annotations

import argparse
import ast
import bisect
import json
import os
import random
import re
import resource
import shutil
import subprocess
import sys
import time
from collections import defaultdict
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import asdict, dataclass
from pathlib import Path

from model.physics.jit import digest_of_sources

ROOT = Path(__file__).resolve().parents[2]
PLUGINS = ["-p", "no:cacheprovider", "-p", "tests.mutation.only_quick"]
PYTEST = [sys.executable, "-m", "pytest", "-q", "-n0", "-x", *PLUGINS]
EACH_S = 6.0
"""The most that a test may take [s of the processor]."""
STAGE_S = (30.0, 30.0, 30.0)
"""When no further test is begun: of those of the module, of those near it, of wider ones [s of the processor]."""
RUN_S = 150
"""The most that a stage may take; what takes longer with a mutant and not without never ends [s of the processor]."""
WAIT_TIMES = 8
"""How much longer than its processor time a run may take by the clock."""
MOST_FILES = 10
"""Test files that a mutant meets in each."""
COMPILED_FOLDERS = {"describe", "physics", "kernel"}
ASKED = 0.85
"""Share of the mutants that tests should kill."""
TEST_FOLDERS = ("model", "golden", "laws", "consistency", "published", "pages")
WITHOUT_EFFECT = ("RemoveDecorator",)
"""What is cached or compiled is the same without, only slower; other decorators fail at once."""


@dataclass(frozen=True)
class Mutant:
    """One change of one module: its operator, which of its places, and what stands there."""

    module: str
    line: int
    operator: str
    occurrence: int


# drawing


def annotated(text: str) -> list[tuple[tuple[int, int], tuple[int, int]]]:
    """From where to where annotations go, which nothing evaluates."""
    lines, found = text.splitlines(), []
    for node in ast.walk(ast.parse(text)):
        for name in ("annotation", "returns"):
            if (noted := getattr(node, name, None)) is not None:
                ends = ((noted.lineno, noted.col_offset), (noted.end_lineno, noted.end_col_offset))
                found.append(tuple((row, len(lines[row - 1].encode()[:byte].decode())) for row, byte in ends))
    return sorted(found)


def places(path: Path) -> Iterator[tuple[tuple[int, int], Mutant]]:
    """Every mutant of a module with where it stands."""
    from cosmic_ray import plugins
    from cosmic_ray.ast import ast_nodes, get_ast

    text = path.read_text(encoding="utf-8")
    nodes, notes = list(ast_nodes(get_ast(text))), annotated(text)
    for name in plugins.operator_names():
        if (kind := plugins.get_operator(name)).arguments() or name.endswith(WITHOUT_EFFECT):
            continue
        operator = kind()
        found = (place for node in nodes for place in operator.mutation_positions(node))
        for occurrence, (start, _) in enumerate(found):
            before = bisect.bisect_right(notes, start, key=lambda note: note[0]) - 1
            if before < 0 or notes[before][1] <= start:
                module = path.relative_to(ROOT).as_posix()
                yield start, Mutant(module, start[0], name, occurrence)


def drawn(mutants: int, seed: int) -> list[Mutant]:
    """Mutants drawn by the place in the code, each place as likely as another, however much can be done there."""
    by_place = defaultdict(list)
    for path in sorted((ROOT / "model").rglob("*.py")):
        for start, mutant in places(path):
            by_place[mutant.module, start].append(mutant)
    source = random.Random(seed)
    return [source.choice(by_place[place]) for place in source.sample(sorted(by_place), mutants)]


def mutated(mutant: Mutant) -> str:
    """The module's text with the change."""
    from cosmic_ray import plugins
    from cosmic_ray.mutating import mutate_code

    text = (ROOT / mutant.module).read_text(encoding="utf-8")
    changed = mutate_code(text, plugins.get_operator(mutant.operator)(), mutant.occurrence)
    assert changed is not None and changed != text, mutant
    return changed


# which tests


def imports(path: Path) -> set[str]:
    """The modules of the model that a file imports, as their files."""
    found = set()
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.ImportFrom) and node.module and not node.level:
            found |= {node.module, *(f"{node.module}.{name.name}" for name in node.names)}
        elif isinstance(node, ast.Import):
            found |= {name.name for name in node.names}
    files = {f"{name.replace('.', '/')}.py" for name in found if name.startswith(("model.", "pages."))}
    return {file for file in files if (ROOT / file).exists()}


class ByNearness:
    """The test files by how near they are to a module."""

    def __init__(self) -> None:
        files = [path for folder in TEST_FOLDERS for path in (ROOT / "tests" / folder).rglob("test_*.py")]
        self.imported = {path.relative_to(ROOT).as_posix(): imports(path) for path in sorted(files)}
        code = [*(ROOT / "model").rglob("*.py"), *(ROOT / "pages").rglob("*.py")]
        self.askers = defaultdict(set)
        for path in code:
            for file in imports(path):
                self.askers[file].add(path.relative_to(ROOT).as_posix())

    def stages(self, module: str) -> tuple[list[str], list[str], list[str]]:
        """Test files of the module itself, near it, and of what asks it."""
        folder, name = Path("tests") / Path(module).parent, Path(module).stem
        direct = {file for file, asked in self.imported.items() if module in asked}
        own = {file for file in direct if Path(file).parent == folder}
        own |= {file for file in self.imported if Path(file) == folder / f"test_{name}.py"}
        asking = self.askers[module]
        beside = {file for file, asked in self.imported.items() if asked & asking}
        near = direct | {file for file in beside if Path(file).parent == folder}
        golden = {file for file in self.imported if file.startswith("tests/golden")}
        farther = asking | {other for one in asking for other in self.askers[one]}
        wide = {file for file, asked in self.imported.items() if asked & farther} | golden | beside
        wide |= {file for file in self.imported if Path(file).parent == folder}
        rest = sorted(wide - near - own, key=lambda file: (file not in beside, file not in golden, file))
        return sorted(own), sorted(near - own), rest


# running


class Copy:
    """A copy of the project, in which one mutant stands at a time."""

    def __init__(self, kept: Path) -> None:
        self.kept, self.root = kept, kept / "copy"
        command = ["git", "ls-files", "-co", "--exclude-standard"]
        listed = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=True)
        for file in listed.stdout.splitlines():
            if (ROOT / file).is_file():
                (self.root / file).parent.mkdir(parents=True, exist_ok=True)
                if not (self.root / file).exists() or (self.root / file).read_bytes() != (ROOT / file).read_bytes():
                    shutil.copy2(ROOT / file, self.root / file)
        self.run([sys.executable, "-c", "from model.kernel.warm import prepare; prepare()"], compiled=True)
        self.sound: dict[tuple[str, bool], bool] = {}

    def run(self, command: Sequence[str], *, compiled: bool, seconds: int = RUN_S) -> tuple[int, str]:
        """Run in the copy; the exit status, below 0 where it took too long, and what was written.

        What counts is processor time, since other work may be going on.
        """
        environment = os.environ | {"PYTHONDONTWRITEBYTECODE": "1"}
        environment.pop("NUMBA_DISABLE_JIT", None)
        if not compiled:
            environment["NUMBA_DISABLE_JIT"] = "1"
        process = subprocess.Popen(command, cwd=self.root, env=environment, text=True, errors="replace",
                                   stdin=subprocess.DEVNULL, stdout=subprocess.PIPE, stderr=subprocess.STDOUT,
                                   start_new_session=True)  # fmt: skip
        resource.prlimit(process.pid, resource.RLIMIT_CPU, (seconds, seconds))
        try:
            written, _ = process.communicate(timeout=WAIT_TIMES * seconds)
            return process.returncode, written
        except subprocess.TimeoutExpired:
            os.killpg(process.pid, 9)
            process.communicate()
            return -9, ""

    def is_sound(self, test: str, compiled: bool) -> bool:
        """Whether a test passes without a mutant."""
        if "::" not in test:
            # a file that cannot be read with the mutant in place
            return True
        if (test, compiled) not in self.sound:
            self.sound[test, compiled] = self.run([*PYTEST, test], compiled=compiled)[0] == 0
        return self.sound[test, compiled]

    def judge(self, mutant: Mutant, stages: Sequence[Sequence[str]]) -> dict[str, object]:
        """Hold tests against a mutant, stage by stage, up to the first that fails."""
        compiled = is_free_of_compiled_code(mutant.module)
        begin, text, ran = time.monotonic(), mutated(mutant), 0
        for stage, (files, most_s) in enumerate(zip(stages, STAGE_S, strict=True), 1):
            left_out: list[str] = []
            if not compiled:
                # the others drive whole drives as they are read, which takes minutes as Python
                files = [file for file in files if file.startswith("tests/model")]
            while files:
                limits = [f"--each={EACH_S}", f"--in-all={most_s}", *(f"--deselect={test}" for test in left_out)]
                command = [*PYTEST, *limits, *files[:MOST_FILES]]
                with self.put_in(mutant, text, compiled):
                    ended, written = self.run(command, compiled=compiled)
                ran += int((re.findall(r"(\d+) passed", written) or ["0"])[-1])
                if ended in (0, 5) or (ended < 0 and self.run(command, compiled=compiled)[0] < 0):
                    break
                failed = re.search(r"^(?:FAILED|ERROR) (\S+)", written, flags=re.MULTILINE)
                test = failed[1] if failed else ""
                if ended < 0 or not test or self.is_sound(test, compiled):
                    return told(mutant, text, "too slow" if ended < 0 else "killed", stage, test, begin)
                left_out.append(test)
        return told(mutant, text, "survived" if ran else "no test", 0, "", begin)

    @contextmanager
    def put_in(self, mutant: Mutant, text: str, compiled: bool) -> Iterator[None]:
        """Let a mutant stand in the copy."""
        path = self.root / mutant.module
        before, stamp = path.read_bytes(), path.stat()
        renamed: list[tuple[Path, Path]] = []
        try:
            path.write_text(text, encoding="utf-8")
            if compiled:
                renamed = self.keep_compiled()
            yield
        finally:
            path.write_bytes(before)
            # what was compiled of the file is known by its time
            os.utime(path, ns=(stamp.st_atime_ns, stamp.st_mtime_ns))
            for now, was in renamed:
                if now.exists():
                    now.rename(was)

    def keep_compiled(self) -> list[tuple[Path, Path]]:
        """Let the compiled code of the untouched physics stand for the state with the mutant."""
        moved = []
        for folder in (self.root / "model" / "__pycache__").glob("compiled-*"):
            now = folder.with_name(f"{folder.name.rpartition('-')[0]}-{digest_of_sources(self.root / 'model')}")
            folder.rename(now)
            moved.append((now, folder))
        return moved


def told(mutant: Mutant, text: str, outcome: str, stage: int, test: str, begin: float) -> dict[str, object]:
    """What became of a mutant."""
    lines = zip((ROOT / mutant.module).read_text(encoding="utf-8").splitlines(), text.splitlines(), strict=False)
    was, became = next((old.strip(), new.strip()) for old, new in lines if old != new)
    return asdict(mutant) | {
        "was": was, "became": became, "outcome": outcome, "stage": stage, "test": test,
        "seconds": round(time.monotonic() - begin, 1),
    }  # fmt: skip


def is_free_of_compiled_code(module: str) -> bool:
    """Whether no compiled code holds anything of a module."""
    folder = module.split("/")[1]
    return folder not in COMPILED_FOLDERS and "physics.jit import" not in (ROOT / module).read_text(encoding="utf-8")


def main() -> None:
    """Go on until all mutants were tried or the time is over, and print the count and the survivors."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").partition("\n")[0])
    parser.add_argument("folder", type=Path)
    parser.add_argument("--mutants", type=int, default=400)
    parser.add_argument("--seed", type=int, default=2026)
    parser.add_argument("--minutes", type=float, default=600.0, help="when no further mutant is begun")
    given = parser.parse_args()
    kept = given.folder.resolve()
    kept.mkdir(parents=True, exist_ok=True)
    found = kept / f"mutants-{given.seed}.jsonl"
    done = [json.loads(line) for line in found.read_text(encoding="utf-8").splitlines()] if found.exists() else []
    tried = {(one["module"], one["operator"], one["occurrence"]) for one in done}
    until = time.monotonic() + 60 * given.minutes
    print(f"{given.mutants} mutants, seed {given.seed}", flush=True)
    copy, tests = Copy(kept), ByNearness()
    for mutant in drawn(given.mutants, given.seed):
        if (mutant.module, mutant.operator, mutant.occurrence) in tried:
            continue
        if time.monotonic() > until:
            break
        found_out = copy.judge(mutant, tests.stages(mutant.module))
        done.append(found_out)
        with found.open("a", encoding="utf-8") as file:
            file.write(json.dumps(found_out, ensure_ascii=False) + "\n")
        where = f"{mutant.module}:{mutant.line}"
        print(found_out["outcome"], found_out["seconds"], where, found_out["became"], flush=True)
    survived = [one for one in done if one["outcome"] in ("survived", "no test")]
    killed = len(done) - len(survived)
    print(f"seed {given.seed}: {killed} of {len(done)} killed ({killed / max(len(done), 1):.0%}, asked {ASKED:.0%}); "
          f"{given.mutants - len(done)} not run")  # fmt: skip
    for one in survived:
        print(f"{one['module']}:{one['line']}\n    {one['was']}\n    {one['became']}")


if __name__ == "__main__":
    main()
