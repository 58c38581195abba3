"""How long a reader waits for a claim's verdict, nothing run before, beside a band of 500 cars in the same run."""

import os
import time

import pytest

from model.claims import verdicts
from model.claims.collection import claims
from model.claims.evidence import evidence
from model.claims.questions import question
from model.claims.specification import phrased
from model.describe.parameters import car_from, open_figures
from model.describe.scenario import Conditions, Driver
from model.sampling.uncertainty import run_samples, sample
from model.traces.cycles import cycle_trace
from model.words.claim_answers import claim_answers
from model.words.claim_numbers import ENGLISH
from model.words.claims import reason, varied

BEFORE = verdicts.check(question("two-megawatts"))
"""Classes, cycles and tables are read once, when the app starts."""
BANDS = 27
"""A verdict costs at most so many bands: a second on two idle cores, where a band takes 37 ms."""
BUSY = 1.25
"""Work a processor beyond which nothing is judged."""


def waited(work, rounds):
    """The least wait of a few rounds [s]: other work on the machine must not decide."""
    taken = []
    for _ in range(rounds):
        begin = time.perf_counter()
        work()
        taken.append(time.perf_counter() - begin)
    return min(taken)


@pytest.fixture(scope="module")
def band():
    """Drives a band of 500 cars."""
    drawn = sample(open_figures("family-hatch", {}), 500)
    asked = cycle_trace("wltc3b"), car_from("family-hatch"), Conditions(ambient_c=20.0, cabin=False), Driver(), drawn
    return lambda: run_samples(*asked)


def forget():
    verdicts._values.cache_clear()
    verdicts._tornado.cache_clear()


def verdict_anew(claim_id):
    """What the page has to know before it shows verdict, reason and the picture of the runs."""
    forget()
    answer = verdicts.check(question(claim_id))
    reason(answer, "it", ENGLISH), varied(answer, ENGLISH), evidence(answer.question)


def answer_anew(claim_id):
    """What a file and the command line hold."""
    forget()
    claim_answers(verdicts.check(question(claim_id)))


@pytest.mark.parametrize("claim_id", [*claims(), *phrased()])
def test_a_claim_is_answered_within_a_second(claim_id, band):
    """Its verdict and its whole answer alike; both are printed.

    Held against a band of the same moment: a machine that others use too is not as fast a minute later.
    """
    busy = os.getloadavg()[0] > BUSY * (os.cpu_count() or 1)
    rounds = [
        (waited(band, 2), waited(lambda: verdict_anew(claim_id), 1), waited(lambda: answer_anew(claim_id), 1))
        for _ in range(3)
    ]
    band_s, verdict, whole = map(min, zip(*rounds, strict=True))
    print(f"{claim_id}: verdict {verdict:.2f} s, all {whole:.2f} s, {whole / band_s:.1f} bands ({band_s:.3f} s)")
    assert busy or whole < BANDS * band_s
