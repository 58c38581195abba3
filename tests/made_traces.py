"""Small traces that tests drive."""

import numpy as np

from model.describe.trace import Trace


def ride(speed_kmh, slope=0.0, step_s=1.0, **more):
    """A trace of speeds [km/h] at even steps, on a road of one slope or of one slope a step [1]."""
    speed_mps = np.asarray(speed_kmh, dtype=float) / 3.6
    steps = len(speed_mps) - 1
    rise = (speed_mps[:-1] + speed_mps[1:]) / 2 * step_s * np.broadcast_to(slope, steps)
    return Trace(
        time_s=np.arange(steps + 1) * step_s,
        speed_mps=speed_mps,
        elevation_m=np.concatenate([[0.0], np.cumsum(rise)]),
        **more,
    )


def steady(speed_kmh, seconds, slope=0.0, **more):
    """A trace at one speed."""
    return ride(np.full(seconds + 1, float(speed_kmh)), slope, **more)


def stop_and_go(times=4, top_kmh=50.0):
    """Pulling away, holding, slowing to rest and standing, several times over."""
    once = np.concatenate(
        [np.linspace(0, top_kmh, 13)[:-1], np.full(20, top_kmh), np.linspace(top_kmh, 0, 12), [0] * 6]
    )
    return ride(np.concatenate([[0.0], np.tile(once, times)]))


def finely(change):
    """Times [s] and speeds [m/s] of a change of speed, in fine steps."""
    time_s = np.linspace(0, change.duration_s, 20_001)
    return time_s, change.from_mps + change.gained_mps(time_s)


def hill_and_town():
    """Stop and go, a climb of 60 m, and the same way down."""
    town = stop_and_go(8).speed_mps * 3.6
    over = np.concatenate([np.linspace(0, 60, 15), np.full(140, 60.0), np.linspace(60, 0, 15)])
    speed = np.concatenate([town, over[1:]])
    slope = np.zeros(len(speed) - 1)
    slope[-120:-60], slope[-60:] = 0.06, -0.06
    return ride(speed, slope)
