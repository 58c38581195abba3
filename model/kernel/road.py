"""A trace laid out as the moments that compiled code drives through."""

from __future__ import annotations

from weakref import WeakKeyDictionary

import numpy as np

from model.describe.trace import Trace
from model.physics.records import Records, moments_on_road

_LAID_OUT: WeakKeyDictionary[Trace, Records] = WeakKeyDictionary()
"""Roads by their traces, as long as those are in use: whether a car keeps up is asked of the road it then drives."""


def road_of(trace: Trace) -> Records:
    """The middle of each step of a trace, shape (steps,); the same for all who ask, to be read only."""
    road = _LAID_OUT.get(trace)
    if road is None:
        road = _LAID_OUT[trace] = _laid_out(trace)
    return road


def _laid_out(trace: Trace) -> Records:
    road = moments_on_road(len(trace.step_s))
    road["step_s"] = trace.step_s
    road["passed_s"] = np.cumsum(trace.step_s) - trace.step_s / 2
    road["warmed_up"] = trace.warmed_up
    if trace.heading is not None:
        back = trace.heading < 0
        road["before_s"] = np.where(back, trace.step_s[~back].sum(), 0.0)
        road["passed_s"] -= road["before_s"]
    road["speed_mps"] = trace.mean_speed_mps
    road["acceleration_mps2"] = trace.acceleration_mps2
    road["sine"] = trace.sine_of_slope
    road["rise_m"] = (trace.elevation_m[:-1] + trace.elevation_m[1:]) / 2
    for name in ("heading", "surface", "lift_off_mps2", "cabin_w", "charge_to"):
        own = getattr(trace, name)
        if own is not None:
            road[name] = own
    if trace.ambient_c is not None:
        road["ambient_c"] = (trace.ambient_c[:-1] + trace.ambient_c[1:]) / 2
    if trace.battery_temp_c is not None:
        road["pack_c"], road["pack_after_c"] = trace.battery_temp_c[:-1], trace.battery_temp_c[1:]
    return road
