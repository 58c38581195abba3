"""How fast a claim is answered: one thread, nothing run before."""

import time

import pytest

from model.claims import verdicts as claims
from model.words.claims import claim_answers

BEFORE = claims.check(claims.question("two-megawatts"))
"""Classes, cycles and tables are read once, when the app starts."""


@pytest.mark.parametrize("claim_id", claims.claims())
def test_a_claim_is_answered_within_a_second(claim_id):
    taken = []
    for _ in range(2):
        claims._values.cache_clear()
        claims._tornado.cache_clear()
        begin = time.process_time()
        claim_answers(claims.check(claims.question(claim_id)))
        taken.append(time.process_time() - begin)
    print(f"{claim_id}: {min(taken):.2f} s of processor time")
    assert min(taken) < 1
