"""The same question is answered with the same bytes, whatever language, clock, hashes or processors a machine has."""

import json
import os
import subprocess
import sys
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

from model.describe.scenario_io import scenario_to_json, starting_drives

ROOT = Path(__file__).resolve().parents[3]
ASK = """
import os, runpy, sys
processors, *sys.argv = sys.argv[1:]
os.cpu_count = lambda: int(processors)
runpy.run_module("model", run_name="__main__")
"""
PLACES = (
    ("2", {}),
    ("1", {"LC_ALL": "C", "LANG": "C", "TZ": "Asia/Kathmandu", "PYTHONHASHSEED": "1"}),
    ("3", {"LC_ALL": "de_DE.UTF-8", "LANG": "tr_TR.UTF-8", "TZ": "America/St_Johns", "PYTHONHASHSEED": "4294967295"}),
)
"""Processors that the program finds, and what the environment says."""


def test_one_scenario_is_one_answer_wherever_it_is_asked(tmp_path):
    scenario = starting_drives()["suburb-hill"][2].with_setting("ambient_c", -7.0)
    file = tmp_path / "drive.json"
    file.write_text(json.dumps(scenario_to_json(scenario)), encoding="utf-8")

    def answer(place):
        processors, environment = place
        command = [sys.executable, "-c", ASK, processors, "model", "drive", str(file)]
        return subprocess.run(
            command, cwd=ROOT, env=os.environ | environment, capture_output=True, check=True, timeout=120
        ).stdout

    with ThreadPoolExecutor(2) as side_by_side:
        here, *elsewhere = side_by_side.map(answer, PLACES)
    assert json.loads(here)["energy_saved_share"] > 0
    assert elsewhere == [here] * len(elsewhere)
