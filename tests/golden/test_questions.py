"""What is asked of one moment or one slow-down is answered as it was when the golden file was written."""

import pytest

from tests.golden.questions import answers, read

WITHIN = 1e-5
"""Of each answer [1]."""
NOTHING = 1e-7
"""Less than this is rounding, in whatever unit."""


def test_questions_are_answered_as_they_were():
    assert answers() == pytest.approx(read(), rel=WITHIN, abs=NOTHING, nan_ok=True)
