"""After the server's start nobody waits for a compiler; without a compiler the same questions are answered."""

import os
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[3]
COUNT = """
import gc
from numba.core.dispatcher import Dispatcher

def compiled():
    return {f"{one.__module__}.{one.__name__} {signature}" for one in gc.get_objects()
            if isinstance(one, Dispatcher) and one.__module__.startswith("model.")
            for signature in one.signatures}

from model.kernel.warm import prepare
print(prepare())
before = compiled()
from tests.golden.questions import answers
from tests.golden.write import answers as drives
answers(), next(drives(["van"]))
print(sorted({one.partition(" ")[0] for one in compiled() - before}))
doors = [one for one in gc.get_objects() if isinstance(one, Dispatcher) and one.__module__.startswith("model.")
         and one.targetoptions.get("nogil")]
print(len(doors) > 10, sorted(one.__name__ for one in doors if not one.signatures))
"""


def run(code, **environment):
    done = subprocess.run(
        [sys.executable, "-c", code], cwd=ROOT, env=os.environ | environment, capture_output=True, text=True
    )
    assert done.returncode == 0, done.stderr
    return done.stdout.splitlines()


def test_everything_that_is_asked_was_prepared():
    said, more, never_asked = run(COUNT)
    assert said.startswith("The physics is ready after ") and "kept in " in said
    assert more == "[]"
    assert never_asked == "True []", "doors that the start forgets"


def test_without_a_compiler_nothing_is_kept():
    (said,) = run("from model.kernel.warm import prepare\nprint(prepare())", NUMBA_DISABLE_JIT="1")
    assert "plain Python" in said
