"""Damaged recordings: a recording or one sentence comes back, whatever was done to the file, and memory is bounded."""

import os
import subprocess
import sys
import time

import numpy as np
import pandas as pd
import pytest

from model.describe.fields import InputError
from model.traces.cycles import cycle_trace
from model.traces.logs import Recording, read_recording
from tests.refused import refuses, told

CYCLE = cycle_trace("nycc")
GOOD_CSV = (
    pd.DataFrame(
        {"time_s": CYCLE.time_s, "speed_kmh": (CYCLE.speed_mps * 3.6).round(2), "elevation_m": 5.5, "soc_pct": 70}
    )
    .to_csv(index=False)
    .encode()
)
GOOD_GPX = (
    '<?xml version="1.0"?><gpx version="1.1"><trk><trkseg>'
    + "".join(
        f'<trkpt lat="{48 + along / 111195:.6f}" lon="11"><ele>500</ele>'
        f"<time>2024-01-31T08:{second // 60:02d}:{second % 60:02d}Z</time></trkpt>"
        for second, along in enumerate(np.cumsum(CYCLE.speed_mps))
    )
    + "</trkseg></trk></gpx>"
).encode()
MUTANTS = 5000 if os.environ.get("NIGHTLY") else 150
"""Of each kind of file; ten thousand in all where there is time, with `NIGHTLY` in the environment."""
MOST_S = 2.0
"""What one may take [s of the processor]."""


def mutant(data, rng):
    """A file with bytes changed, cut out, doubled, or put in from elsewhere."""
    place, end = sorted(rng.integers(0, len(data), 2))
    piece = data[place : min(end, place + 400)]
    other = int(rng.integers(0, len(data)))
    return [
        lambda: data[:place],
        lambda: data[place:],
        lambda: data[:place] + bytes(rng.integers(0, 256, 5, dtype=np.uint8)) + data[place + 5 :],
        lambda: data[:place] + data[place + len(piece) :],
        lambda: data[:other] + piece + data[other:],
        lambda: data[:place] + piece.swapcase()[::-1] + data[place + len(piece) :],
        lambda: data.replace(bytes([data[place]]), bytes([data[other]])),
        lambda: data[: 2 * place].decode("latin-1").encode("utf-16")[: 3 * place],
    ][rng.integers(8)]()


@pytest.mark.parametrize(("data", "name"), [(GOOD_CSV, "a.csv"), (GOOD_GPX, "a.gpx")])
def test_mutants_are_read_or_refused_in_one_sentence(data, name):
    rng = np.random.default_rng(1)
    read = 0
    for _ in range(MUTANTS):
        damaged, begin = mutant(data, rng), time.process_time()
        try:
            found = read_recording(damaged, name)
        except InputError as refused:
            assert told(refused).startswith(name) and "\n" not in told(refused)
        else:
            assert isinstance(found, Recording) and np.isfinite(found.trace.speed_mps).all()
            assert np.isfinite(found.trace.elevation_m).all() and found.trace.speed_mps.min() >= 0
            read += 1
        assert time.process_time() - begin < MOST_S
    assert read > MUTANTS / 10


@pytest.mark.parametrize("year", [b"0004-", b"1066-", b"9999-"])
def test_a_year_beyond_the_calendar_is_no_fault(year):
    assert read_recording(GOOD_GPX.replace(b"2024-", year), "a.gpx").trace.distance_m > 0
    with refuses("^a.gpx"):
        read_recording(GOOD_GPX.replace(b"2024-", year, 1), "a.gpx")


LARGE = """
import resource, sys
from model.describe.fields import InputError
from model.traces.logs import read_recording
from model.words.refusals import COMMAND_LINE, refusal_words as refused_words
kind = sys.argv[1]
before = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
if kind == "rows":
    data = b"time_s,speed_kmh\\n" + b"7,9\\n" * 5_000_000
else:
    data = b"a,b\\n" * 25_000_000
held = len(data) // 1024
try:
    read_recording(data, "large.csv")
except InputError as refused:
    print(refused_words(refused, COMMAND_LINE))
print(resource.getrusage(resource.RUSAGE_SELF).ru_maxrss - before - held, file=sys.stderr)
"""


@pytest.mark.parametrize(
    ("kind", "said"), [("rows", "has more rows or points than the"), ("bytes", "is larger than 30 MB")]
)
def test_large_files_are_refused_before_they_fill_the_memory(kind, said):
    done = subprocess.run([sys.executable, "-c", LARGE, kind], capture_output=True, text=True, timeout=120, check=True)
    assert said in done.stdout
    assert int(done.stderr.split()[-1]) < 400_000
