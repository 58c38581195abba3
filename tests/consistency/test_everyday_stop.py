"""SAE 1999-01-0098: slowing for a stop sign peaks near 0.25 g, at 20 to 30 km/h, in all kinds of cars.

The habits were laid out for this peak, so it is no evidence.
Comfort: ITE 3.0 m/s² and AASHTO 3.4 m/s² are conventions of road design.
"""

import numpy as np
import pytest

from model.describe.parameters import car_from
from model.describe.scenario import Driver, Leg, Scenario
from model.describe.units import GRAVITY_MPS2
from model.lift_off.curves import as_you_would_drive
from model.lift_off.slowing import COMFORT_CONVENTIONS
from model.traces.drive_builder import build_drive
from model.traces.habits import MOST_JERK_MPS3

STOPS = (Leg(distance_km=5.0, speed_kmh=50.0, stops=10, slow_downs=0),)


def peak_at_20_to_30_kmh(trace):
    """Hardest slowing between those speeds over all stops [m/s²]; and over all speeds."""
    slowing = -trace.acceleration_mps2
    within = (trace.mean_speed_mps > 20 / 3.6) & (trace.mean_speed_mps < 30 / 3.6)
    return slowing[within].max(), slowing.max()


def stops_of(looks_ahead, *, as_driven):
    scenario = Scenario(legs=STOPS, driver=Driver(looks_ahead=looks_ahead))
    if as_driven:
        return as_you_would_drive(scenario, car_from(scenario.car_class))
    return build_drive(scenario.legs, scenario.driver)


@pytest.mark.parametrize("as_driven", [False, True], ids=["habit", "as driven"])
def test_the_default_habit_peaks_where_drivers_do(as_driven):
    peaks = {}
    for looks_ahead in ("far", "usual", "late"):
        slow, anywhere = peak_at_20_to_30_kmh(stops_of(looks_ahead, as_driven=as_driven))
        peaks[looks_ahead] = slow / GRAVITY_MPS2
        assert anywhere == pytest.approx(slow, rel=0.05)
    print("peak between 20 and 30 km/h, g:", {word: round(peak, 3) for word, peak in peaks.items()})
    assert peaks["usual"] == pytest.approx(0.25, abs=0.05)
    assert peaks["far"] < peaks["usual"] < peaks["late"]
    assert peaks["far"] < 0.25 < peaks["late"]


def test_comfort_conventions_and_the_habits_beside_them():
    (comfortable, _, ite), (laid_out, _, aashto) = COMFORT_CONVENTIONS
    assert "ITE" in ite and "AASHTO" in aashto
    assert comfortable == 3.0
    assert laid_out == round(11.2 * 0.3048, 1)
    hardest = {word: -stops_of(word, as_driven=False).acceleration_mps2.min() for word in ("far", "usual", "late")}
    print("hardest moment of a stop, m/s²:", {word: round(float(peak), 2) for word, peak in hardest.items()})
    assert hardest["far"] < hardest["usual"] < comfortable < hardest["late"] < laid_out


@pytest.mark.parametrize("looks_ahead", ["far", "usual", "late"])
def test_no_slow_down_begins_or_ends_abruptly(looks_ahead):
    trace = stops_of(looks_ahead, as_driven=True)
    jerk = np.diff(trace.acceleration_mps2) / ((trace.step_s[1:] + trace.step_s[:-1]) / 2)
    assert np.abs(jerk).max() < MOST_JERK_MPS3 * 1.02
