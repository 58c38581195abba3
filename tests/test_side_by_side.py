"""Many visitors of one server at once: nobody is shown another's numbers."""

from concurrent.futures import ThreadPoolExecutor
from threading import Barrier

from model.describe.scenario_io import from_link, starting_drives
from model.sampling.uncertainty import RUNS
from model.words.quantities import Display
from tests.benchmarks.wire import visit
from tests.pages.in_app import headline_of

VISITORS, ROUNDS = 20, 2
FIRST = starting_drives()["town"][2]


def link_of(number, turn):
    """A drive that nobody else has, every other one in US units."""
    loads = {"payload_kg": f"{10 * number}", "trailer_kg": f"{40 * number}"}
    drive = {"ambient_c": f"{-12 + number + turn / 2:g}"} | loads
    return drive | ({"units": "us", "currency": f"C{number}"} if number % 2 else {})


def headline(number, turn):
    """What the model answers to that drive by itself."""
    link = link_of(number, turn)
    return headline_of(from_link(link, FIRST)[0], Display(us="units" in link), RUNS)


def test_twenty_at_once_see_their_own_numbers(server):
    together = Barrier(VISITORS, timeout=120)

    def shown(number):
        seen = []
        with visit(server.url) as visitor:
            for turn in range(ROUNDS):
                together.wait()
                visitor.ask(link_of(number, turn))
                seen.append(visitor.texts)
        return seen

    with ThreadPoolExecutor(VISITORS) as everybody:
        at_once = list(everybody.map(shown, range(VISITORS)))
    told = {tuple(texts) for seen in at_once for texts in seen}
    assert len(told) == VISITORS * ROUNDS, "each drive is told its own way"
    for number in range(VISITORS):
        for turn in range(ROUNDS):
            assert headline(number, turn) in at_once[number][turn]
        with visit(server.url) as visitor:
            visitor.ask(link_of(number, ROUNDS - 1))
            # parts that are drawn side by side come in any order
            assert sorted(at_once[number][-1]) == sorted(visitor.texts)
