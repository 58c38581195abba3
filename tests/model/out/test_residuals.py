"""Where model and measurement part: each way of looking adds up to the whole."""

import numpy as np
import pytest

from model.describe.scenario import Scenario
from model.out.recorded import drive_as_recorded
from model.out.residuals import by_minutes, by_slow_down, by_speed
from model.traces.logs import recording_of
from tests.made_traces import stop_and_go

TRACE = stop_and_go(20)


def driven(factor=1.0, warm_w=0.0):
    """A recording whose battery gave as much as the model says, times a factor, and some more in the first minutes."""
    samples = {"time_s": TRACE.time_s, "speed_kmh": TRACE.speed_mps * 3.6}
    _, result = drive_as_recorded(recording_of(samples), Scenario(), frozenset())
    watts = result.run.terminal_w[0] * factor + np.where(TRACE.time_s[:-1] < 300, warm_w, 0.0)
    recording = recording_of(samples)
    object.__setattr__(recording, "power_w", watts)
    return recording, result


@pytest.mark.parametrize("table", [by_speed, by_minutes])
def test_the_rows_add_up_to_the_whole(table):
    recording, result = driven(1.1)
    rows = table(recording, result)
    assert rows["modelled_kwh"].sum() == pytest.approx(result.net_kwh)
    assert rows["more_kwh"].sum() == pytest.approx(-0.1 * result.net_kwh)
    assert rows["minutes"].sum() == pytest.approx(result.trace.duration_s / 60)


def test_what_is_missing_in_the_first_minutes_stands_there():
    recording, result = driven(warm_w=600.0)
    more = by_minutes(recording, result)["more_kwh"].to_numpy()
    assert more[0] == pytest.approx(-0.05) and np.abs(more[1:]).max() < 1e-9


def test_each_slow_down_is_held_against_its_own():
    recording, result = driven(2.0)
    rows = by_slow_down(recording, result)
    assert len(rows) == TRACE.stops and (rows["to_kmh"] == 0).all()
    assert rows["measured_wh"].to_numpy() == pytest.approx(2 * rows["modelled_wh"].to_numpy())
