"""How fast a folder of recordings is worked through, and in how much memory."""

import os
import time
import tracemalloc

import numpy as np
import pytest

from model.describe.scenario import Scenario
from model.out.study import study, study_row
from model.traces.cycles import cycle_trace
from tests.benchmarks.test_speed import seconds

PROCESSORS = 2
"""The speeds asked for are those of two."""


def logs(place, files, hours=1.0):
    """Recordings of a few hours at 1 s with height and battery power."""
    cycle = cycle_trace("wltc3b")
    speed_kmh = np.resize(cycle.speed_mps[:-1], int(3600 * hours)) * 3.6
    place.mkdir()
    rows = [f"{second},{speed:.2f},{100 + 20 * np.sin(second / 300):.1f},{0.3 * speed - 2:.2f}\n"
            for second, speed in enumerate(speed_kmh)]  # fmt: skip
    text = "time_s,speed_kmh,elevation_m,battery_power_kw\n" + "".join(rows)
    for file in range(files):
        (place / f"{file:04d}.csv").write_text(text)
    return place


@pytest.mark.parametrize(("band", "least"), [(False, 3000), (True, 800)])
def test_logged_hours_a_minute(tmp_path, band, least):
    """By processor time, shared out evenly: what starting the workers takes is left out."""
    (file,) = logs(tmp_path / "logs", 1).iterdir()
    how = {"band": band, "processors": 1}
    study_row(file, Scenario(), frozenset(), **how)
    spent = min(seconds(lambda: study_row(file, Scenario(), frozenset(), **how))[0] for _ in range(5))
    hours = 60 * PROCESSORS / spent
    print(f"{hours:.0f} logged hours a minute on two processors, {'with' if band else 'without'} bands")
    assert hours > least


def test_a_log_of_ten_hours_with_its_band(tmp_path):
    (file,) = logs(tmp_path / "logs", 1, hours=10.0).iterdir()
    spent = min(seconds(lambda: study_row(file, Scenario(), frozenset()))[0] for _ in range(2))
    print(f"{spent:.2f} s of processor time")
    assert spent < 1.5 * PROCESSORS


def test_memory_is_flat_in_the_number_of_files(tmp_path):
    peaks = []
    for files in (20, 200):
        place = logs(tmp_path / f"logs{files}", files, hours=0.05)
        tracemalloc.start()
        study(place, Scenario(), frozenset(), band=False, out=tmp_path / f"{files}.csv")
        peaks.append(tracemalloc.get_traced_memory()[1] / 2**20)
        tracemalloc.stop()
    print(f"20 files take {peaks[0]:.2f} MB, 200 take {peaks[1]:.2f} MB")
    assert peaks[1] < peaks[0] + 2


@pytest.mark.skipif((os.cpu_count() or 1) < 2, reason="there is one processor")
def test_two_dask_workers_are_nearly_twice_as_fast_as_one(tmp_path):
    distributed = pytest.importorskip("distributed", reason="Dask is not installed: it is an optional dependency")
    place, spent = logs(tmp_path / "logs", 60), []
    for workers in (1, 2):
        here = {"n_workers": workers, "threads_per_worker": 1, "dashboard_address": None}
        with distributed.LocalCluster(**here) as cluster:
            for turn in ("warm", "timed"):
                begin = time.perf_counter()
                study(place, Scenario(), frozenset(), out=tmp_path / f"{turn}{workers}.csv",
                      scheduler=cluster.scheduler_address)  # fmt: skip
                last = time.perf_counter() - begin
        spent.append(last)
    print(f"one worker {spent[0]:.1f} s, two {spent[1]:.1f} s: {spent[0] / spent[1]:.2f} times as fast")
    assert spent[0] / spent[1] >= 1.7
