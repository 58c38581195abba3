"""Everything compiled, or taken from where it is kept, before the first visitor waits for it."""

from __future__ import annotations

import time

from model.cycles import cycle_trace
from model.kernel.moments import feet_up, steady_w
from model.kernel.run import drive
from model.parameters import DEFAULT_CLASS, car_from
from model.physics import jit
from model.scenario import Conditions, Driver


def prepare() -> str:
    """Ask every door of the kernel once; says in one line what that took."""
    begin = time.perf_counter()
    car, around, driver = car_from(DEFAULT_CLASS), Conditions(), Driver()
    for record in (True, False):
        drive(cycle_trace("nedc-urban"), car, around, driver, record=record)
    feet_up(10.0, car, around, driver)
    steady_w(10.0, car, around, driver)
    where = f"kept in {jit.FOLDER}" if jit.FOLDER else "kept nowhere: the next start takes as long"
    if jit.CONFIG.DISABLE_JIT:
        where = "nothing is compiled, everything runs as plain Python"
    return f"The physics is ready after {time.perf_counter() - begin:.1f} s; {where}."
