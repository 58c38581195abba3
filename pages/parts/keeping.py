"""Answers kept for all sessions, the last used, as many as fit.

Bounded in bytes rather than by count: a drive of two days is a thousand times as large as one of three minutes.
"""

from __future__ import annotations

import os
import sys
from collections import OrderedDict
from collections.abc import Callable, Hashable
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, field
from threading import Lock
from typing import Generic, ParamSpec, TypeVar, cast

import numpy as np
import pandas as pd

from model.describe.fields import InputError

P = ParamSpec("P")
Found = TypeVar("Found")
MOST_BYTES = 256 * 2**20
"""What all that is kept may hold: some 500 drives of half an hour, or the last few of two days."""


def size_of(value: object, seen: set[int] | None = None) -> int:
    """Memory that a value holds [bytes], what it holds twice counted once."""
    seen = set() if seen is None else seen
    if id(value) in seen:
        return 0
    seen.add(id(value))
    if isinstance(value, np.ndarray):
        return sys.getsizeof(value) if value.base is None else size_of(value.base, seen)
    if isinstance(value, pd.DataFrame | pd.Series):
        return int(np.sum(value.memory_usage(deep=True)))
    held: list[object] = [*vars(value).values()] if hasattr(value, "__dict__") and not isinstance(value, type) else []
    if isinstance(value, dict):
        held += [*value, *value.values()]
    elif isinstance(value, list | tuple | set | frozenset):
        held += [*value]
    return sys.getsizeof(value) + sum(size_of(part, seen) for part in held)


@dataclass(eq=False)
class Store:
    """Values by key, the last used; at most `most_bytes` [bytes] of them. May be asked from many threads at once."""

    most_bytes: int
    bytes: int = 0
    _values: OrderedDict[Hashable, tuple[object, int]] = field(default_factory=OrderedDict)
    _in_work: dict[Hashable, Lock] = field(default_factory=dict)
    _lock: Lock = field(default_factory=Lock)

    def __len__(self) -> int:
        return len(self._values)

    def get(self, key: Hashable, work: Callable[[], object]) -> object:
        """The value of a key, worked out where it is not there; whoever asks for it meanwhile waits for the same."""
        with self._lock:
            if key in self._values:
                return self._used(key)
            in_work = self._in_work.setdefault(key, Lock())
        with in_work:
            with self._lock:
                if key in self._values:
                    return self._used(key)
            try:
                value = work()
                size = size_of(value) + size_of(key)
                with self._lock:
                    self._put(key, value, size)
            finally:
                with self._lock:
                    self._in_work.pop(key, None)
        return value

    def _used(self, key: Hashable) -> object:
        self._values.move_to_end(key)
        return self._values[key][0]

    def _put(self, key: Hashable, value: object, size: int) -> None:
        if size > self.most_bytes:
            return
        # where two worked at one key, the later value replaces the earlier
        self.bytes += size - self._values.pop(key, (None, 0))[1]
        self._values[key] = value, size
        while self.bytes > self.most_bytes:
            self.bytes -= self._values.popitem(last=False)[1][1]


STORE = Store(MOST_BYTES)


@dataclass(frozen=True)
class Reply(Generic[Found]):
    """What the model says to a question: a result, or why there is none."""

    result: Found | None
    refused: InputError | None = None

    @property
    def given(self) -> Found:
        """The result; raises the refusal where there is none."""
        if self.refused is not None:
            raise self.refused
        return cast(Found, self.result)


def ask(question: Callable[P, Found], *of: P.args, **how: P.kwargs) -> Reply[Found]:
    """What a function of the model answers or refuses, kept for all sessions by the texts of its arguments.

    Walking through a scenario's fields would take fifteen times as long as its text.
    """

    def work() -> Reply[Found]:
        try:
            return Reply(question(*of, **how))
        except InputError as refused:
            return Reply(None, refused.with_traceback(None))

    return cast(Reply[Found], STORE.get((question.__module__, question.__qualname__, repr(of), repr(how)), work))


AHEAD = ThreadPoolExecutor(os.cpu_count() or 1, thread_name_prefix="ahead")


def ask_ahead(question: Callable[P, object], *of: P.args, **how: P.kwargs) -> None:
    """Begin to work out what the page will `ask`, while other parts of it are drawn: compiled code leaves them room.

    Who asks for it meanwhile waits for the same.
    """
    AHEAD.submit(lambda: ask(question, *of, **how))
