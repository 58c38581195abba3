"""Many visitors at once, over real WebSockets: ``python -m tests.benchmarks.load http://localhost:8501 --people 25``.

Everyone sits on the first page and changes one value every few seconds to something new. Bounded in people and time,
and asks this machine only.
"""

from __future__ import annotations

import argparse
import random
import statistics
import sys
import threading
import time
from concurrent.futures import ThreadPoolExecutor
from urllib.parse import urlsplit

from tests.benchmarks.wire import visit

MOST_PEOPLE, MOST_SECONDS = 200, 1800
OWN_NAMES = {"localhost", "127.0.0.1", "::1"}


def sit(url: str, place: int, pause_s: float, seconds: float, started: threading.Barrier) -> tuple[list[float], str]:
    """Be one visitor: the waits [s] after each change, and what went wrong."""
    waits: list[float] = []
    drawn = random.Random(place)
    try:
        with visit(url, additional_headers={"Cookie": f"place=load-{place}"}) as visitor:
            visitor.ask({"ambient_c": 10})
            started.wait(timeout=MOST_SECONDS)
            until = time.monotonic() + seconds
            time.sleep(drawn.random() * pause_s)
            begin = time.monotonic()
            while begin < until:
                waits.append(visitor.ask({"ambient_c": round(drawn.uniform(-20, 35), 3)}))
                time.sleep(max(0.0, begin + pause_s - time.monotonic()))
                begin = time.monotonic()
    except Exception as error:
        return waits, f"{type(error).__name__}: {error}"
    return waits, ""


def main() -> None:
    """Read the command line, let everybody in, and print what they waited."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").partition("\n")[0])
    parser.add_argument("url")
    parser.add_argument("--people", type=int, default=25)
    parser.add_argument("--seconds", type=float, default=60)
    parser.add_argument("--pause", type=float, default=5, help="between one person's changes [s]")
    given = parser.parse_args()
    if urlsplit(given.url).hostname not in OWN_NAMES:
        sys.exit("Only a server of this machine is asked.")
    people, seconds = min(given.people, MOST_PEOPLE), min(given.seconds, MOST_SECONDS)
    # everybody is let in before anybody changes anything
    started = threading.Barrier(people + 1)
    with ThreadPoolExecutor(people) as pool:
        sitting = [pool.submit(sit, given.url, place, given.pause, seconds, started) for place in range(people)]
        begin = time.monotonic()
        started.wait(timeout=MOST_SECONDS)
        print(f"{people} people were let in within {time.monotonic() - begin:.1f} s")
        found = [future.result() for future in sitting]
    waits = sorted(wait for one, _ in found for wait in one)
    errors = [error for _, error in found if error]
    points = statistics.quantiles(waits, n=20)
    print(
        f"{len(waits)} changes: half within {points[9] * 1000:.0f} ms, 95 % within {points[18] * 1000:.0f} ms, "
        f"all within {waits[-1] * 1000:.0f} ms; {len(errors)} went wrong"
    )
    for error in errors[:5]:
        print(error)
    sys.exit(bool(errors))


if __name__ == "__main__":
    main()
