"""Compiled code: kept where it can be written, never used after any file of the model has changed, plain on request.

Each test runs a copy of the model in processes of their own.
"""

import ctypes
import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from model.physics.jit import digest_of_sources, kept_in

ROOT = Path(__file__).resolve().parents[3]
CALLEE = "from model.physics.jit import compiled\n\n\n@compiled\ndef one(x):\n    return {} * x\n"
CALLER = (
    "from model.physics.callee import one\nfrom model.physics.jit import door\n\n\n"
    "@door\ndef two(x):\n    return one(x) + 1.0\n"
)
ASK = """
from model.physics import jit
from model.physics.caller import two
answer = two(1.0)
hits = sum(two.stats.cache_hits.values()) if hasattr(two, "stats") else "plain"
print(answer, hits, jit.COMPILED)
"""
DROP_CAPABILITY, OVERRIDE_PERMISSIONS = 24, (1, 2)
"""Capabilities by which the superuser writes and reads what it may not."""


@pytest.fixture
def tree(tmp_path):
    """A copy of the model with one compiled function that calls another in another file."""
    copy = tmp_path / "tree"
    shutil.copytree(ROOT / "model", copy / "model", ignore=shutil.ignore_patterns("__pycache__"))
    shutil.copytree(ROOT / "assets", copy / "assets", ignore=shutil.ignore_patterns("cycles", "screenshots"))
    (copy / "model" / "physics" / "callee.py").write_text(CALLEE.format(2.0))
    (copy / "model" / "physics" / "caller.py").write_text(CALLER)
    return copy


def obey_permissions():
    """What even the superuser's processes do after this, on Linux."""
    for capability in OVERRIDE_PERMISSIONS:
        ctypes.CDLL(None).prctl(DROP_CAPABILITY, capability, 0, 0, 0)


def ask(tree, **environment):
    """The answer of a process of its own, what it took from the kept code, and where that is."""
    left_out = ("NUMBA_", "XDG_CACHE")
    inherited = {key: value for key, value in os.environ.items() if not key.startswith(left_out)}
    home = {"HOME": str(tree.parent / "home")}
    done = subprocess.run(
        [sys.executable, "-c", ASK],
        cwd=tree, env=inherited | home | environment, capture_output=True, text=True,
        preexec_fn=obey_permissions if sys.platform == "linux" else None,
    )  # fmt: skip
    assert done.returncode == 0, done.stderr
    answer, hits, folder = done.stdout.split()
    return float(answer), hits, folder


def test_what_is_called_may_change_in_another_file(tree):
    first = ask(tree)
    assert first[:2] == (3.0, "0") and Path(first[2]).parent == tree / "model" / "__pycache__"
    assert ask(tree) == (3.0, "1", first[2]), "kept from start to start"
    (tree / "model" / "physics" / "callee.py").write_text(CALLEE.format(5.25))
    changed = ask(tree)
    assert changed[:2] == (6.25, "0")
    assert not Path(first[2]).exists(), "what is out of date is removed"


def test_another_place_can_be_told(tree, tmp_path):
    first = ask(tree, NUMBA_CACHE_DIR=str(tmp_path / "told"))
    assert Path(first[2]).parent == tmp_path / "told"
    assert list(Path(first[2]).rglob("*.nbc"))
    assert ask(tree, NUMBA_CACHE_DIR=str(tmp_path / "told")) == (3.0, "1", first[2])


def test_an_installation_that_cannot_be_written_keeps_its_code_with_the_user_or_not_at_all(tree, tmp_path):
    for folder, _, _ in os.walk(tree):
        os.chmod(folder, 0o555)
    (tmp_path / "home").mkdir()
    first = ask(tree)
    assert Path(first[2]).is_relative_to(tmp_path / "home")
    assert ask(tree) == (3.0, "1", first[2])
    (tmp_path / "nobody").mkdir(mode=0o555)
    assert ask(tree, HOME=str(tmp_path / "nobody")) == (3.0, "0", "None")


def test_without_compiling_the_same_code_runs_as_python(tree):
    assert ask(tree, NUMBA_DISABLE_JIT="1") == (3.0, "plain", "None")


def test_tables_that_are_compiled_in_count_as_sources(tree):
    before = digest_of_sources(tree / "model")
    with (tree / "assets" / "charge_acceptance.csv").open("a") as file:
        file.write("\n")
    assert digest_of_sources(tree / "model") != before


def test_other_installations_and_other_files_are_left_alone(tree, tmp_path):
    place = tmp_path / "shared"
    other = kept_in([place], ROOT / "model")
    (place / "notes.txt").touch()
    mine = kept_in([place], tree / "model")
    assert mine != other and other.is_dir() and mine.is_dir() and (place / "notes.txt").exists()
