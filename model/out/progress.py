"""How far a study, or the reading of a file, is, on the terminal's error stream: one line that is written over.

Elsewhere a study tells now and then in a line, and reading nothing.
"""

from __future__ import annotations

import time
from typing import TYPE_CHECKING, TextIO

from model.describe.figures import Quantity
from model.words.refusals import COMMAND_LINE

if TYPE_CHECKING:
    from model.out.study import Totals

WIDTH = 30
EVERY_S = 0.2
TENTHS = 10
"""Where lines cannot be written over, so many are written in all."""


class ReadingProgress:
    """Called with the share of a file that has been read, it shows a bar on a terminal, once reading takes long."""

    def __init__(self, stream: TextIO) -> None:
        self.stream = stream
        self.last = time.monotonic()
        self.is_shown = False

    def __call__(self, share: float) -> None:
        """Take note that this share [1] has been read."""
        now = time.monotonic()
        if not self.stream.isatty() or now - self.last < EVERY_S:
            return
        self.last, self.is_shown = now, True
        full = min(int(WIDTH * share), WIDTH)
        said = COMMAND_LINE.say("log-progress")
        print(f"\r[{'#' * full}{'.' * (WIDTH - full)}] {said}\033[K", end="", file=self.stream, flush=True)

    def end(self) -> None:
        """Take the bar away."""
        if self.is_shown:
            print("\r\033[K", end="", file=self.stream, flush=True)


class Progress:
    """Called with the number of files and the totals so far, it says how far that is.

    Parameters
    ----------
    stream : text stream
        Where to.
    """

    def __init__(self, stream: TextIO) -> None:
        self.stream, self.over = stream, stream.isatty()
        self.begin = self.last = time.monotonic()
        self.before = self.tenth = 0

    def __call__(self, files: int, totals: Totals) -> None:
        """One more file is done."""
        now = time.monotonic()
        done, ends = totals.files, totals.files == files
        if not self.before:
            # what an earlier study has done took no time of this one
            self.before = done
        tenth = TENTHS * done // files
        if self.over and (now - self.last < EVERY_S and not ends):
            return
        if not self.over and tenth == self.tenth:
            return
        self.last, self.tenth = now, tenth
        left_s = (now - self.begin) / max(done - self.before, 1) * (files - done)
        said = COMMAND_LINE.say(
            "study-progress", done=done, files=files, refused=totals.refused,
            recorded=Quantity(totals.duration_s / 3600, "hours", places=1), left=Quantity(left_s, "s", places=0),
        )  # fmt: skip
        if not self.over:
            print(said, file=self.stream, flush=True)
            return
        full = WIDTH * done // files
        print(f"\r[{'#' * full}{'.' * (WIDTH - full)}] {said}\033[K", end="\n" if ends else "", file=self.stream,
              flush=True)  # fmt: skip
