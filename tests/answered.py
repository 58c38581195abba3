"""Answers to claims, worked out once for tests that ask alike and only look at them."""

from functools import lru_cache

from model.claims.questions import question
from model.claims.verdicts import Answer, check


@lru_cache(100)
def _answered(claim_id: str, settings: tuple[tuple[str, str], ...]) -> Answer:
    return check(question(claim_id, dict(settings)))


def answered(claim_id: str, settings: dict[str, str] | None = None, **more: str) -> Answer:
    """The answer to a claim with what was said about it."""
    return _answered(claim_id, tuple(((settings or {}) | more).items()))
