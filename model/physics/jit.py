"""How the physics is compiled, and where what was compiled is kept from start to start.

numba keeps compiled functions itself, but looks for changes only in the file of the function asked for, although what
that function calls is compiled into it. So everything is kept in a folder named after all sources of the model, and
after the tables of ``assets/`` whose numbers are compiled in; when one of them changes, the folder is another.
"""

from __future__ import annotations

import hashlib
import os
import shutil
import sys
import tempfile
from collections.abc import Callable, Iterable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any, Protocol, TypeVar, cast

import numba
import numpy
from numba.extending import register_jitable

MODEL = Path(__file__).resolve().parent.parent


class Config(Protocol):
    """The compiler's settings that are read and written here."""

    CACHE_DIR: str
    DISABLE_JIT: bool


CONFIG = cast(Config, numba.config)
Function = TypeVar("Function", bound=Callable[..., object])


def digest_of_sources(model: Path = MODEL) -> str:
    """What compiled code depends on: every file of ``model/``, the tables beside it, and what compiles them."""
    found = hashlib.sha256(f"{sys.version} {numba.__version__} {numpy.__version__}".encode())
    for path in sorted([*model.rglob("*.py"), *(model.parent / "assets").glob("*.csv")]):
        found.update(path.relative_to(model.parent).as_posix().encode())
        found.update(path.read_bytes())
    return found.hexdigest()[:16]


def places() -> Iterator[Path]:
    """Where compiled code may be kept, the best place first: as numba was told, beside the package, the user's."""
    if CONFIG.CACHE_DIR:
        yield Path(CONFIG.CACHE_DIR)
    yield MODEL / "__pycache__"
    for name in ("XDG_CACHE_HOME", "LOCALAPPDATA"):
        if os.environ.get(name):
            yield Path(os.environ[name]) / "brake-to-battery"
    yield Path("~/.cache/brake-to-battery").expanduser()


def kept_in(places: Iterable[Path], model: Path = MODEL) -> Path | None:
    """The folder of this state of the model in the first place that can be written, what is out of date removed there.

    None where nothing can be written: then everything is compiled again at every start.
    """
    # several installations and several Pythons may share a place
    owner = hashlib.sha256(str(model).encode()).hexdigest()[:8]
    family = f"compiled-{owner}-py{sys.version_info[0]}{sys.version_info[1]}-"
    for place in places:
        folder = place / (family + digest_of_sources(model))
        try:
            if not folder.is_dir():
                folder.mkdir(parents=True)
                for old in place.glob(family + "*"):
                    if old != folder:
                        shutil.rmtree(old, ignore_errors=True)
            with tempfile.TemporaryFile(dir=folder):
                return folder
        except OSError:
            continue
    return None


COMPILED = None if CONFIG.DISABLE_JIT else kept_in(places())
"""Where this process keeps what it compiles; None where it keeps nothing."""


@contextmanager
def _numba_keeps_in(folder: Path | None) -> Iterator[None]:
    before, CONFIG.CACHE_DIR = CONFIG.CACHE_DIR, str(folder or "")
    try:
        yield
    finally:
        CONFIG.CACHE_DIR = before


_COMMON: dict[str, Any] = {"error_model": "numpy", "no_cfunc_wrapper": True}
"""A division by zero gives infinity, as in arrays; nobody calls from C, so nothing is compiled for that."""


def compiled(function: Function) -> Function:
    """Compile a small function into every door that asks it; asked from Python it runs as Python.

    A march asks a dozen of them in every step, so they become part of its loop, and are compiled for nothing else.
    """
    made: Function = register_jitable(forceinline=True, **_COMMON)(function)
    return made


def door(function: Function) -> Function:
    """Compile a function that Python asks, of numbers, records and arrays, when it is first asked.

    Compiled code lets other threads run meanwhile. With ``NUMBA_DISABLE_JIT=1`` it stays Python.
    """
    compile_it: Any = numba.njit(nogil=True, cache=COMPILED is not None, **_COMMON)
    with _numba_keeps_in(COMPILED):
        made: Function = compile_it(function)
    return made
