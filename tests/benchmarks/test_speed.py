"""How fast the model answers. What is asserted is processor time, the least of a few rounds: other work on the machine
must not decide."""

import os
import subprocess
import sys
import time
import tracemalloc
from pathlib import Path

import pytest

from model.describe.parameters import car_from, open_figures
from model.describe.scenario import Conditions, Driver
from model.kernel.run import drive
from model.kernel.savings import evaluate
from model.out.many_cars import table_answers
from model.sampling.uncertainty import run_samples, sample
from model.traces.cycles import cycle_trace
from tests import reference_loop

ROOT = Path(__file__).resolve().parents[2]
HALF_AN_HOUR = cycle_trace("wltc3b")
CAR = car_from("family-hatch")
SUMMER, WINTER = Conditions(ambient_c=20.0, cabin=False), Conditions(ambient_c=-5.0)
RUNS = 500
DRAWN = sample(open_figures("family-hatch", {}), RUNS)


def kernel():
    """One drive with regeneration, from the trace to the battery's terminals."""
    return drive(HALF_AN_HOUR, CAR, SUMMER, Driver())


def band(conditions=SUMMER):
    """Every sampled car, with regeneration and without."""
    return run_samples(HALF_AN_HOUR, CAR, conditions, Driver(), DRAWN)


def seconds(work):
    """Processor time that `work` takes [s], and what it gives."""
    begin = time.process_time()
    done = work()
    return time.process_time() - begin, done


def test_kernel_of_a_half_hour_drive(benchmark):
    benchmark.pedantic(kernel, rounds=30, warmup_rounds=3)
    assert min(seconds(kernel)[0] for _ in range(10)) < 0.005


def test_a_whole_result(benchmark):
    """Both runs, whether the car can follow, and the books."""
    result = benchmark.pedantic(evaluate, (HALF_AN_HOUR, CAR, SUMMER, Driver()), rounds=30, warmup_rounds=3)
    assert result.followed


def test_band_of_five_hundred_runs(benchmark):
    samples = benchmark.pedantic(band, rounds=5, warmup_rounds=1)
    assert samples.net_kwh.shape == (RUNS,)
    assert min(seconds(band)[0] for _ in range(3)) < 0.3


def test_winter_costs_no_more_than_summer():
    """Cabin, cold battery and its limit; in turn, the least processor time of each."""
    pairs = [(seconds(band)[0], seconds(lambda: band(WINTER))[0]) for _ in range(7)]
    summer_s, winter_s = (min(taken) for taken in zip(*pairs, strict=True))
    print(f"{RUNS} cars in summer {summer_s * 1000:.0f} ms, in winter {winter_s * 1000:.0f} ms")
    assert winter_s <= 1.3 * summer_s


def fresh(code):
    """What a process of its own prints."""
    done = subprocess.run([sys.executable, "-c", code], cwd=ROOT, capture_output=True, text=True)
    assert done.returncode == 0, done.stderr
    return done.stdout.split()


def test_memory_is_flat_in_the_number_of_cars():
    """What ten thousand cars hold at most, over what a hundred do."""
    peaks = []
    for runs in (100, 10_000):
        drawn = sample(open_figures("family-hatch", {}), runs)
        tracemalloc.start()
        run_samples(HALF_AN_HOUR, CAR, SUMMER, Driver(), drawn)
        peaks.append(tracemalloc.get_traced_memory()[1] / 2**20)
        tracemalloc.stop()
    print(f"100 cars take {peaks[0]:.1f} MB, 10,000 take {peaks[1]:.1f} MB")
    assert peaks[1] - peaks[0] < 60


TWO_DAYS = """
import resource, time
from model.describe.scenario import Leg, Scenario
from model.kernel.warm import prepare
from model.sampling.drives import drive, samples_of

def held_mb():
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024

prepare()
before_mb, begin = held_mb(), time.process_time()
scenario = Scenario(legs=(Leg(distance_km=1000.0, speed_kmh=25.0, stops=400, slow_downs=0),))
result = drive(scenario.with_setting("charging_stops", 10))
driven, after_mb = time.process_time(), held_mb()
samples_of(scenario, result)
run = result.run.moments.nbytes + result.run.road.nbytes + result.without.moments.nbytes
print(result.trace.duration_s / 3600, run / 2**20, after_mb - before_mb, held_mb() - before_mb,
      driven - begin, time.process_time() - driven)
"""


def test_a_drive_of_two_days_keeps_to_bounded_memory_and_time():
    """In a process of its own: what a result holds, and the most that the drive and then its band took."""
    hours, kept_mb, drive_mb, band_mb, drive_s, band_s = map(float, fresh(TWO_DAYS))
    print(
        f"{hours:.0f} hours: {kept_mb:.0f} MB of steps are kept, the drive took {drive_mb:.0f} MB and {drive_s:.2f} s, "
        f"with its band {band_mb:.0f} MB and {band_s:.1f} s of processor time"
    )
    assert hours > 40 and kept_mb < 45 and band_mb < 220
    assert drive_s < 3 and band_s < 8


def test_a_table_of_cars_with_bands(tmp_path):
    """A sixth of a second of a processor's time a car on two cycles: 240 take less than 20 s on two processors."""
    table = tmp_path / "cars.csv"
    table.write_text("mass_kg,motor_peak_kw\n" + "".join(f"{1500 + 40 * n},150\n" for n in range(24)), encoding="utf-8")
    table_answers(table, ["udds", "hwfet"], {}, band=True)
    took_s, answers = seconds(lambda: table_answers(table, ["udds", "hwfet"], {}, band=True))
    print(f"24 cars on two cycles with bands take {took_s:.2f} s of processor time")
    assert len(answers) == 48 and all("low" in row for row in answers)
    assert took_s < 4


def test_a_warm_start_is_a_small_part_of_a_cold_one(tmp_path):
    """Compiling everything once, and the command line with what was kept: by processor time."""
    start = "import os; from model.kernel.warm import prepare; prepare(); print(sum(os.times()[:2]))"
    command = "import os; from model.out.cli import main; main({}); print(sum(os.times()[:2]))"
    cycle = ["cycle", "udds"]
    os.environ["NUMBA_CACHE_DIR"] = str(tmp_path)
    try:
        cold_s = float(fresh(start)[-1])
        plain_s = min(float(fresh(command.format(cycle))[-1]) for _ in range(3))
        band_s = min(float(fresh(command.format([*cycle, "--band"]))[-1]) for _ in range(3))
    finally:
        del os.environ["NUMBA_CACHE_DIR"]
    print(f"compiling {cold_s:.1f} s, then a cycle {plain_s:.2f} s, with its band {band_s:.2f} s of processor time")
    assert plain_s < cold_s / 4 and band_s < 1.5 * plain_s


def test_the_band_against_a_plain_loop_over_the_same_runs():
    """A few of the runs by the loop and all of them by the kernel, in turn; the least processor time of each counts."""
    few = range(0, RUNS, RUNS // 5)
    cars = [car_from("family-hatch", {k: float(v[run, 0]) for k, v in DRAWN.items() if k in vars(CAR)}) for run in few]

    def loop():
        return [
            (
                reference_loop.drive(HALF_AN_HOUR, car, SUMMER, Driver()),
                reference_loop.drive(HALF_AN_HOUR, car, SUMMER, Driver(), regen=False),
            )
            for car in cars
        ]

    pairs = [(seconds(loop), seconds(band)) for _ in range(5)]
    totals, samples = pairs[0][0][1], pairs[0][1][1]
    for run, (regenerated, _) in zip(few, totals, strict=True):
        assert samples.out_kwh[run] == pytest.approx(regenerated["out"] / 3.6e6, rel=1e-6), "not the same runs"
    loop_s = min(taken for (taken, _), _ in pairs) * RUNS / len(cars)
    band_s = min(taken for _, (taken, _) in pairs)
    print(f"plain loop {loop_s:.2f} s for {RUNS} runs, the band {band_s:.3f} s: {loop_s / band_s:.0f} times as fast")
    assert loop_s / band_s >= 100
