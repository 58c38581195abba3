"""Work shared out to other processes: all comes back, whoever is killed."""

import sys
from functools import partial

import pytest

from model.describe.scenario import Scenario
from model.out.study import study_row
from model.out.workers import each
from tests.made_traces import stop_and_go
from tests.made_work import doubled_but_three, row_after_a_death
from tests.refused import refuses

pytestmark = pytest.mark.skipif(sys.platform == "win32", reason="processes are killed otherwise there")


def test_a_killed_worker_loses_nothing(tmp_path):
    trace = stop_and_go(3)
    files = [tmp_path / f"{name}.csv" for name in "abcde"]
    for file in files:
        rows = (f"{time},{3.6 * speed:.2f}\n" for time, speed in zip(trace.time_s, trace.speed_mps, strict=True))
        file.write_text("time_s,speed_kmh\n" + "".join(rows))
    (marks := tmp_path / "marks").mkdir()
    how = {"scenario": Scenario(), "given": frozenset(), "band": False, "processors": 1}
    found = dict(each(partial(row_after_a_death, marks=marks, **how), files, workers=2))
    assert (marks / "b.csv").exists()
    assert found == {file: study_row(file, **how) for file in files}


def test_what_always_ends_its_worker_is_given_up_and_all_else_is_done():
    assert dict(each(doubled_but_three, range(12), workers=2)) == {
        number: None if number == 3 else 2 * number for number in range(12)
    }


def test_without_dask_its_scheduler_is_refused(monkeypatch):
    monkeypatch.setitem(sys.modules, "distributed", None)
    with refuses("Dask is not installed"):
        next(iter(each(abs, [1], scheduler="tcp://127.0.0.1:1")))


def test_dask_workers_give_the_same():
    distributed = pytest.importorskip("distributed", reason="Dask is not installed: it is an optional dependency")
    here = {"n_workers": 2, "threads_per_worker": 1, "dashboard_address": None}
    with distributed.LocalCluster(**here) as cluster:
        found = dict(each(doubled_but_three, range(12), scheduler=cluster.scheduler_address))
    assert found == {number: None if number == 3 else 2 * number for number in range(12)}
