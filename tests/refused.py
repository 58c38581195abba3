"""Refusals as the command line tells them."""

import re
from contextlib import contextmanager

import pytest

from model.describe.fields import InputError
from model.words.refusals import COMMAND_LINE, refusal_words


def told(refused: InputError) -> str:
    """A refusal in words."""
    return refusal_words(refused, COMMAND_LINE)


@contextmanager
def refuses(sentence: str = ""):
    """What is done within is refused, in words that the pattern `sentence` finds."""
    with pytest.raises(InputError) as caught:
        yield caught
    assert re.search(sentence, told(caught.value)), told(caught.value)
