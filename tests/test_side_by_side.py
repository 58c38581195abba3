"""Many visitors of one server at once: nobody is shown another's numbers."""

from concurrent.futures import ThreadPoolExecutor
from threading import Barrier

from tests.benchmarks.wire import visit

VISITORS, ROUNDS = 20, 2


def link_of(number, turn):
    """A drive that nobody else has."""
    return {"ambient_c": f"{-12 + number + turn / 2:g}", "payload_kg": f"{10 * number}"}


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
        with visit(server.url) as visitor:
            visitor.ask(link_of(number, ROUNDS - 1))
            assert at_once[number][-1] == visitor.texts
