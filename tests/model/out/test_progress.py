"""How far reading a file is: said on a terminal once it takes long, and nowhere else."""

import io

import pytest

from model.out import progress
from model.out.progress import ReadingProgress


class Terminal(io.StringIO):
    """A stream that is a terminal."""

    def isatty(self):
        return True


@pytest.mark.parametrize(("stream", "seconds", "is_shown"), [(Terminal(), 0.3, True), (Terminal(), 0.1, False),
                                                             (io.StringIO(), 9.0, False)])  # fmt: skip
def test_reading_that_takes_long_is_seen_on_a_terminal(monkeypatch, stream, seconds, is_shown):
    now = iter([100.0, 100.0 + seconds])
    monkeypatch.setattr(progress.time, "monotonic", lambda: next(now))
    told = ReadingProgress(stream)
    told(0.5)
    told.end()
    assert ("[" + 15 * "#" + 15 * "." + "] Reading the file" in stream.getvalue()) == is_shown
    # and goes again before the answer
    assert stream.getvalue().endswith("\r\033[K") == is_shown
