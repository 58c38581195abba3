"""Many visitors at once, over real WebSockets: ``python -m tests.benchmarks.load --people 10,25,50``.

Two servers and nginx are started as README says, unless an address of this machine is given. Everyone sits on the first
page and changes one value every few seconds to something new. Printed is the table of DEVELOPERS.md: what they waited
by how many they were, and what an idle session holds; `soak` sees whether memory stays flat. Bounded in people and
time, and asks this machine only.
"""

from __future__ import annotations

import argparse
import random
import statistics
import subprocess
import sys
import threading
import time
from collections.abc import Iterator, Sequence
from concurrent.futures import ThreadPoolExecutor
from contextlib import ExitStack, contextmanager
from dataclasses import dataclass
from pathlib import Path
from urllib.parse import urlsplit

from tests.benchmarks.wire import visit
from tests.conftest import ROOT, is_healthy

MOST_PEOPLE, MOST_SECONDS = 200, 1800
OWN_NAMES = {"localhost", "127.0.0.1", "::1"}
PORT = 8599
IDLE = 100
"""Sessions that are opened and left alone."""


@dataclass(frozen=True)
class Waited:
    """What some people waited after their changes [s], and what went wrong."""

    people: int
    let_in_s: float
    waits_s: Sequence[float]
    errors: Sequence[str]

    def row(self) -> str:
        """A row of the table."""
        points = statistics.quantiles(self.waits_s, n=20)
        cells = (
            f"{self.people} people", f"{len(self.waits_s)}", f"{points[9]:.2f} s", f"{points[18]:.2f} s",
            f"{max(self.waits_s):.2f} s", f"{len(self.errors)}",
        )  # fmt: skip
        return f"| {' | '.join(cells)} |"


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
        # nobody waits for somebody who could not come in
        started.abort()
        return waits, f"{type(error).__name__}: {error}"
    return waits, ""


def sitting(url: str, people: int, pause_s: float, seconds: float) -> Waited:
    """Let everybody in, and only then change anything."""
    started = threading.Barrier(people + 1)
    with ThreadPoolExecutor(people) as pool:
        places = [pool.submit(sit, url, place, pause_s, seconds, started) for place in range(people)]
        begin = time.monotonic()
        try:
            started.wait(timeout=MOST_SECONDS)
        except threading.BrokenBarrierError:
            print("Somebody could not be let in.")
        let_in_s = time.monotonic() - begin
        found = [place.result() for place in places]
    waits = [wait for one, _ in found for wait in one]
    return Waited(people, let_in_s, waits, [error for _, error in found if error])


# memory


def server_processes(parent: int) -> list[str]:
    """The servers that a process has started."""
    children = Path(f"/proc/{parent}/task/{parent}/children").read_text(encoding="utf-8").split()
    return [child for child in children if b"--server.port" in Path(f"/proc/{child}/cmdline").read_bytes()]


def held_mb(parent: int) -> float:
    """What the servers hold in memory [MB]."""
    told = [Path(f"/proc/{child}/status").read_text(encoding="utf-8") for child in server_processes(parent)]
    return sum(int(text.split("VmRSS:")[1].split()[0]) for text in told) / 1024


def idle_session_mb(url: str, parent: int, sessions: int) -> float:
    """What one more session holds that was opened and is left alone [MB]."""
    with ExitStack() as opened:

        def come(first: int, last: int) -> float:
            for place in range(first, last):
                visitor = opened.enter_context(visit(url, additional_headers={"Cookie": f"place=idle-{place}"}))
                visitor.ask({"ambient_c": 10})
            return held_mb(parent)

        # the first few make what all share
        before = come(0, 10)
        return (come(10, 10 + sessions) - before) / sessions


@contextmanager
def servers(count: int) -> Iterator[tuple[str, int]]:
    """Servers behind nginx: their address, and the process that has started them."""
    command = [sys.executable, "assets/deploy/behind_nginx.py", "--port", str(PORT), "--servers", str(count)]
    with subprocess.Popen(command, cwd=ROOT, stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL) as process:
        try:
            url, until = f"http://127.0.0.1:{PORT}", time.monotonic() + 300
            while not is_healthy(url):
                if process.poll() is not None or time.monotonic() > until:
                    sys.exit("The servers did not start.")
                time.sleep(0.5)
            yield url, process.pid
        finally:
            process.terminate()


def main() -> None:
    """Read the command line, let people in, and print the table."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").partition("\n")[0])
    parser.add_argument("url", nargs="?", help="of a server that runs already; memory is not measured then")
    parser.add_argument("--people", default="10,25,50", help="how many at once, one after the other")
    parser.add_argument("--seconds", type=float, default=60, help="for each")
    parser.add_argument("--pause", type=float, default=5, help="between one person's changes [s]")
    parser.add_argument("--idle", type=int, default=IDLE, help="sessions that are opened and left alone; 0 for none")
    parser.add_argument("--servers", type=int, default=2)
    given = parser.parse_args()
    if given.url and urlsplit(given.url).hostname not in OWN_NAMES:
        sys.exit("Only a server of this machine is asked.")
    groups = [min(int(people), MOST_PEOPLE) for people in given.people.split(",")]
    errors: list[str] = []
    with ExitStack() as running:
        url, parent = (given.url, 0) if given.url else running.enter_context(servers(given.servers))
        print("| at once | changes | half within | 95 % within | all within | went wrong |\n|---|---|---|---|---|---|")
        for people in groups:
            waited = sitting(url, people, given.pause, min(given.seconds, MOST_SECONDS))
            print(waited.row(), flush=True)
            errors += waited.errors
        if parent and given.idle:
            each_mb = idle_session_mb(url, parent, min(given.idle, MOST_PEOPLE))
            print(f"An idle session holds {each_mb:.2f} MB.", flush=True)
    for error in errors[:5]:
        print(error)
    sys.exit(bool(errors))


if __name__ == "__main__":
    main()
