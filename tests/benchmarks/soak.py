"""Visitors who come and go for a long time: ``python -m tests.benchmarks.soak --minutes 20``.

Two servers and nginx as in `load`. Printed is what the servers hold as time goes by. It fails where they hold more at
the end than after the first quarter, by more than `GROWN_MB` for each visitor since, where a session left alone holds
more than `IDLE_MB`, or where anybody met an error. Everyone asks for one of a few drives, so that answers are kept
within the first quarter, and what grows later is kept of visitors.
"""

from __future__ import annotations

import argparse
import random
import sys
import threading
import time
from collections.abc import Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, field

from tests.benchmarks.load import IDLE, held_mb, idle_session_mb, servers
from tests.benchmarks.wire import visit

MOST_MINUTES = 30
GROWN_MB, IDLE_MB = 0.05, 1.0
"""Allowed to stay of a visitor who has gone: a quarter of what a session holds; and of one who is there."""
PAGES = ("", "lift_off", "winter_and_limits", "how_it_works", "check_a_claim")
DRIVES = tuple({"car": car, "ambient_c": air} for car in ("family-hatch", "van") for air in (-10, 0, 10, 20, 30))
CHANGES, PAUSE_S = 4, 2.0
LOOKS = 20
"""How often memory is looked at."""


@dataclass
class Visits:
    """Visitors so far, who may come at the same time, and what went wrong."""

    gone: int = 0
    errors: list[str] = field(default_factory=list)
    lock: threading.Lock = field(default_factory=threading.Lock)

    def note(self, error: str) -> None:
        """Somebody has gone, after an error where there is one."""
        with self.lock:
            self.gone += 1
            self.errors += [error] * bool(error)


def come_and_go(url: str, place: int, over: threading.Event, visits: Visits) -> None:
    """Be one visitor after another, until it is over."""
    drawn = random.Random(place)
    while not over.is_set():
        error = ""
        try:
            cookie = {"Cookie": f"place=soak-{drawn.randrange(10**9)}"}
            with visit(url, drawn.choice(PAGES), additional_headers=cookie) as visitor:
                for _ in range(CHANGES):
                    visitor.ask(drawn.choice(DRIVES))
                    if over.wait(drawn.uniform(0.5, 1.5) * PAUSE_S):
                        break
        except Exception as failed:
            error = f"{type(failed).__name__}: {failed}"
        visits.note(error)


def soak(url: str, parent: int, people: int, seconds: float) -> tuple[list[float], list[int], list[str]]:
    """Memory [MB] and how many visitors had gone, at equal times up to the end, and what went wrong."""
    held, gone, visits, over = [], [], Visits(), threading.Event()
    with ThreadPoolExecutor(people) as pool:
        begin = time.monotonic()
        for place in range(people):
            pool.submit(come_and_go, url, place, over, visits)
        try:
            for look in range(1, LOOKS + 1):
                time.sleep(max(0.0, begin + look * seconds / LOOKS - time.monotonic()))
                held.append(held_mb(parent))
                gone.append(visits.gone)
                print(f"| {look * seconds / LOOKS / 60:.1f} min | {gone[-1]} | {held[-1]:.0f} MB |", flush=True)
        finally:
            over.set()
    return held, gone, visits.errors


def grown_mb(held: Sequence[float], gone: Sequence[int]) -> float:
    """What each visitor after the first quarter has left behind [MB]."""
    quarter = len(held) // 4 - 1
    return (held[-1] - held[quarter]) / max(gone[-1] - gone[quarter], 1)


def main() -> None:
    """Read the command line, let people come and go, and say whether memory stays."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").partition("\n")[0])
    parser.add_argument("--minutes", type=float, default=20, help="in all; in less than ten the first quarter is brief")
    parser.add_argument("--people", type=int, default=10, help="at once; each stays some eight seconds")
    given = parser.parse_args()
    with servers(2) as (url, parent):
        print("| after | visitors gone | servers hold |\n|---|---|---|")
        held, gone, errors = soak(url, parent, min(given.people, 50), 60 * min(given.minutes, MOST_MINUTES))
        grown, idle = grown_mb(held, gone), idle_session_mb(url, parent, IDLE)
    print(f"A visitor after the first quarter left {grown:.3f} MB behind ({GROWN_MB:g} at most).")
    print(f"An idle session holds {idle:.2f} MB ({IDLE_MB:g} at most).")
    print(f"{len(errors)} visitors met an error.", *errors[:5], sep="\n")
    sys.exit(grown > GROWN_MB or idle > IDLE_MB or bool(errors))


if __name__ == "__main__":
    main()
