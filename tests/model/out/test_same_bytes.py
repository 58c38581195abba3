"""The same question is answered with the same bytes, whatever language, clock, hashes or processors a machine has."""

import json
import os
import shutil
import subprocess
import sys
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pytest

from model.describe.scenario_io import scenario_to_json, starting_drives

ROOT = Path(__file__).resolve().parents[3]
ASK = """
import os, runpy, sys
processors, *sys.argv = sys.argv[1:]
os.cpu_count = lambda: int(processors)
runpy.run_module("model", run_name="__main__")
"""
THREADS = ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS", "NUMBA_NUM_THREADS")
PLACES = (
    ("2", {}),
    ("1", {"LC_ALL": "C", "LANG": "C", "TZ": "Asia/Kathmandu", "PYTHONHASHSEED": "1"} | dict.fromkeys(THREADS, "1")),
    ("3", {"LC_ALL": "de_DE.UTF-8", "LANG": "tr_TR.UTF-8", "TZ": "America/St_Johns", "PYTHONHASHSEED": "4294967295"}
     | dict.fromkeys(THREADS, "2")),
)  # fmt: skip
"""Processors that the program finds, and what the environment says."""
OTHER_PYTHONS = [
    found for name in ("python3.11", "python3.12", "python3.13")
    if (found := shutil.which(name)) and name != f"python3.{sys.version_info.minor}"
]  # fmt: skip
NEEDED = "import babel, fluent.runtime, numba, numpy, pandas"


def asked_of(python, place, file):
    """What the command line answers to a drive."""
    processors, environment = place
    command = [python, "-c", ASK, processors, "model", "drive", str(file)]
    done = subprocess.run(command, cwd=ROOT, env=os.environ | environment, capture_output=True, check=True, timeout=240)
    return done.stdout


@pytest.fixture
def file(tmp_path):
    scenario = starting_drives()["suburb-hill"][2].with_setting("ambient_c", -7.0)
    file = tmp_path / "drive.json"
    file.write_text(json.dumps(scenario_to_json(scenario)), encoding="utf-8")
    return file


def test_one_scenario_is_one_answer_wherever_it_is_asked(file):
    with ThreadPoolExecutor(2) as side_by_side:
        here, *elsewhere = side_by_side.map(lambda place: asked_of(sys.executable, place, file), PLACES)
    assert json.loads(here)["energy_saved_share"] > 0
    assert elsewhere == [here] * len(elsewhere)


def test_another_python_answers_the_same_bytes(file):
    ready = [
        python for python in OTHER_PYTHONS
        if subprocess.run([python, "-c", NEEDED], capture_output=True, timeout=60).returncode == 0
    ]  # fmt: skip
    if not ready:
        pytest.skip("no other Python of this machine has what requirements.txt asks for")
    here = asked_of(sys.executable, PLACES[0], file)
    assert [asked_of(python, PLACES[0], file) for python in ready] == [here] * len(ready)
