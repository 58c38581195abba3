"""What is kept for all sessions: bounded in bytes, the last used, worked out once whoever asks."""

from concurrent.futures import ThreadPoolExecutor
from dataclasses import replace
from threading import Barrier, Event

import numpy as np
import pytest

from model.describe.fields import InputError
from model.describe.scenario import Leg, Scenario
from pages.parts import keeping, state
from pages.parts.keeping import Store, ask, ask_ahead, size_of


def test_a_hundred_drives_leave_the_store_under_its_bound(monkeypatch):
    store = Store(4 * 2**20)
    monkeypatch.setattr(keeping, "STORE", store)
    drives = [Scenario(legs=(Leg(distance_km=10.0 + number / 10),)) for number in range(100)]
    one = size_of(state.outcome(drives[0]))
    for now in drives:
        state.outcome(now)
    assert 100 * one > 2 * store.most_bytes, "all of them would not fit"
    assert 1 < len(store) < 100 and store.bytes <= store.most_bytes
    assert store.bytes == sum(size for _, size in store._values.values())
    assert state.outcome(drives[-1]) is state.outcome(drives[-1])


def test_a_size_counts_all_that_a_result_holds():
    result = state.outcome(Scenario()).result
    held = [result.run.moments, result.run.road, *(v for v in vars(result.trace).values() if isinstance(v, np.ndarray))]
    assert size_of(result) > sum(array.nbytes for array in held)
    many = np.zeros(10_000)
    assert size_of([many, many[5:], many]) == pytest.approx(80_000, rel=0.01), "once, and a view as what it keeps alive"


def test_the_last_used_stay_and_what_is_too_large_is_not_kept():
    store = Store(5000)

    def keep(key, size=1500):
        return store.get(key, lambda: np.zeros(size, dtype=np.uint8))

    first = keep("a")
    keep("b")
    assert keep("a") is first
    keep("c")
    keep("d")
    assert set(store._values) == {"a", "c", "d"}
    assert keep("e", 10_000).size == 10_000 and set(store._values) == {"a", "c", "d"}


def test_what_many_ask_at_once_is_worked_out_once():
    store, asked, all_there = Store(10_000), [], Barrier(8)

    def ask(_):
        all_there.wait()
        return store.get("drive", lambda: asked.append(1) or object())

    with ThreadPoolExecutor(8) as pool:
        found = set(pool.map(ask, range(8)))
    assert len(found) == len(asked) == 1 and not store._in_work


def test_what_was_raised_is_not_kept():
    store = Store(10_000)
    with pytest.raises(ZeroDivisionError):
        store.get("drive", lambda: 1 / 0)
    assert store.get("drive", lambda: 2) == 2 and not store._in_work


def test_another_text_of_the_arguments_is_another_answer():
    near = Scenario(legs=(Leg(distance_km=10.0),))
    far = replace(near, legs=(Leg(distance_km=10.0000000001),))
    assert state.outcome(near) is not state.outcome(far)


def test_what_was_refused_is_told_again_without_being_asked_again():
    asked = []

    def refusing(what):
        asked.append(what)
        raise InputError("No.")

    told = ask(refusing, "a drive")
    assert told.result is None and ask(refusing, "a drive") is told and asked == ["a drive"]
    with pytest.raises(InputError, match="No"):
        told.given  # noqa: B018


def test_what_was_begun_ahead_is_worked_out_once(monkeypatch):
    monkeypatch.setattr(keeping, "STORE", Store(2**20))
    begun, go_on, worked = Event(), Event(), []

    def question(number):
        worked.append(number)
        begun.set()
        assert go_on.wait(10)
        return 2 * number

    ask_ahead(question, 3)
    assert begun.wait(10)
    go_on.set()
    assert ask(question, 3).given == 6 and worked == [3]
