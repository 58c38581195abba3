"""The command line starts fast: it imports what its verb needs."""

import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[3]
ASK = """
import sys
from model.out.cli import main
main(["cycle", "udds", "--band"])
others = ("pandas", "streamlit", "model.claims.verdicts", "model.out.study")
print([name for name in others if name in sys.modules], file=sys.stderr)
"""


def test_a_cycle_is_answered_without_what_other_verbs_need():
    done = subprocess.run([sys.executable, "-c", ASK], cwd=ROOT, capture_output=True, text=True)
    assert done.returncode == 0 and done.stdout.startswith("{")
    assert done.stderr.strip() == "[]"
