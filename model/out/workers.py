"""Many things of one kind, done in this process, in processes of their own, or by the workers of a Dask scheduler.

Whoever works, the same comes out, as it gets done. A worker that is killed loses nothing: what it had is done again.
"""

from __future__ import annotations

import multiprocessing
from collections.abc import Callable, Iterable, Iterator
from concurrent.futures import FIRST_COMPLETED, Future, ProcessPoolExecutor, wait
from concurrent.futures.process import BrokenProcessPool
from itertools import islice
from typing import Any, TypeVar

from model.describe.fields import InputError

Item = TypeVar("Item")
Done = TypeVar("Done")
AHEAD = 4
"""So many things are handed to a worker before the first comes back: a few, so that memory stays flat."""
TRIES = 3
"""An item that has ended its worker so often, alone with it, is given up."""
WORKERS_WAIT_S = 30
"""How long to wait for a scheduler, and then for its first worker [s]."""


def each(
    work: Callable[[Item], Done], items: Iterable[Item], workers: int = 1, scheduler: str = ""
) -> Iterator[tuple[Item, Done | None]]:
    """Every item with what `work` made of it, in the order in which they get done; None where it ended its worker.

    Parameters
    ----------
    work : callable
        One that can be sent to another process, as can items and what it returns.
    items : iterable
        What is to be done; it is asked for only as far as there is room.
    workers : int
        How many processes; with one, nothing leaves this process.
    scheduler : str
        Address of a Dask scheduler, whose workers are asked in their place; they must find `model` and the items.

    Raises
    ------
    InputError
        Where the scheduler cannot be asked.
    """
    if scheduler:
        return _by_dask(work, items, scheduler)
    return _in_processes(work, items, workers) if workers > 1 else ((item, work(item)) for item in items)


def _processes(workers: int) -> ProcessPoolExecutor:
    # a forked process would take along threads in the middle of what they do
    return ProcessPoolExecutor(workers, mp_context=multiprocessing.get_context("spawn"))


def _in_processes(
    work: Callable[[Item], Done], items: Iterable[Item], workers: int
) -> Iterator[tuple[Item, Done | None]]:
    rest = iter(items)
    lost: list[Item] = []
    while True:
        asked: dict[Future[Done], Item] = {}
        with _processes(workers) as pool:
            while not lost:
                for item in islice(rest, AHEAD * workers - len(asked)):
                    try:
                        asked[pool.submit(work, item)] = item
                    except BrokenProcessPool:
                        lost.append(item)
                if not asked:
                    break
                for future in wait(asked, return_when=FIRST_COMPLETED).done:
                    item = asked.pop(future)
                    if isinstance(future.exception(), BrokenProcessPool):
                        lost.append(item)
                    else:
                        yield item, future.result()
        # with one worker all are gone: each of what they had may be what ended it
        for future, item in asked.items():
            if isinstance(future.exception(), BrokenProcessPool):
                lost.append(item)
            else:
                yield item, future.result()
        if not lost:
            return
        for item in lost:
            yield item, _alone(work, item)
        lost = []


def _alone(work: Callable[[Item], Done], item: Item) -> Done | None:
    for _ in range(TRIES):
        with _processes(1) as pool:
            future = pool.submit(work, item)
            if not isinstance(future.exception(), BrokenProcessPool):
                return future.result()
    return None


def _by_dask(work: Callable[[Item], Done], items: Iterable[Item], address: str) -> Iterator[tuple[Item, Done | None]]:
    try:
        from distributed import Client, KilledWorker, as_completed
    except ImportError:
        raise InputError("study-without-dask") from None
    try:
        client = Client(address, timeout=WORKERS_WAIT_S)
    except (OSError, ValueError) as error:
        raise InputError("study-no-scheduler", address=address, why=str(error)) from None
    with client:
        try:
            client.wait_for_workers(1, timeout=WORKERS_WAIT_S)
        except TimeoutError:
            raise InputError("study-no-workers", address=address) from None
        rest = iter(items)
        asked: dict[Any, Item] = {}

        def hand_out(most: int) -> list[Any]:
            new = {client.submit(work, item, pure=False): item for item in islice(rest, most)}
            asked.update(new)
            return list(new)

        running = as_completed(hand_out(AHEAD * sum(client.nthreads().values())))
        for future in running:
            item = asked.pop(future)
            try:
                found = future.result()
            except KilledWorker:
                found = None
            except ImportError as error:
                raise InputError("study-workers-without-model", why=str(error)) from None
            yield item, found
            for more in hand_out(1):
                running.add(more)
