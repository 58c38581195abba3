"""How far a study is, on the terminal's error stream: one line that is written over, or now and then one elsewhere."""

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
