"""A fit finds the car that drove, as far as one part of its drive tells, and is judged by the rest."""

import numpy as np
import pytest

from model.describe.parameters import car_of
from model.describe.scenario import Scenario
from model.out.fit import fit
from model.out.recorded import drive_as_recorded
from model.traces.cycles import cycle_trace
from model.traces.logs import Recording, recording_of
from tests.refused import refuses

SCENARIO = Scenario()
SPEED_MPS = np.concatenate([cycle_trace(name).speed_mps[:-1] for name in ("udds", "wltc3b", "nycc", "wltc3b")])


def measured_of(**stated) -> Recording:
    """A drive whose battery gave what a car of these figures would have."""
    samples = {"time_s": np.arange(len(SPEED_MPS)) * 1.0, "speed_kmh": SPEED_MPS * 3.6}
    scenario = SCENARIO
    for key, value in stated.items():
        scenario = scenario.with_setting(key, value)
    _, result = drive_as_recorded(recording_of(samples), scenario, frozenset())
    power_kw = np.append(result.run.terminal_w[0], 0.0) / 1000
    recording = recording_of(samples | {"battery_power_kw": power_kw})
    object.__setattr__(recording, "power_w", result.run.terminal_w[0])
    return recording


def test_the_car_that_drove_is_found_and_its_other_half_predicted():
    true = {"mass_kg": car_of(SCENARIO).mass_kg * 1.05, "accessory_w": 400.0, "open_pulling_share": 0.05}
    found = fit(measured_of(**true), SCENARIO)
    assert abs(found.error_of_rest) < 0.005 < abs(found.error_of_rest_before)
    assert found.after["accessory_w"] == pytest.approx(400.0, abs=60)
    assert found.before["mass_kg"] < found.after["mass_kg"] and found.at_bound == ()


def test_figures_stay_within_their_bounds_and_say_that_they_are_there():
    found = fit(measured_of(accessory_w=2500.0), SCENARIO)
    assert found.after["accessory_w"] == pytest.approx(450.0) and "accessory_w" in found.at_bound


def test_what_is_stated_is_not_fitted_and_nothing_uses_a_fit_by_itself():
    recording = measured_of(accessory_w=400.0)
    stated = SCENARIO.with_setting("mass_kg", 1800.0)
    found = fit(recording, stated)
    assert "mass_kg" not in found.after and stated == SCENARIO.with_setting("mass_kg", 1800.0)
    assert dict(found.taken_by(stated).stated) == {"mass_kg": 1800.0} | dict(found.after)


def test_what_cannot_be_fitted_is_refused():
    samples = {"time_s": np.arange(600) * 1.0, "speed_kmh": np.full(600, 50.0)}
    with refuses("holds no battery power"):
        fit(recording_of(samples), SCENARIO)
    with refuses("too short"):
        fit(recording_of(samples | {"battery_power_kw": np.full(600, 5.0)}), SCENARIO)
    recording = measured_of()
    stated = SCENARIO
    for key, value in (("mass_kg", 1800.0), ("accessory_w", 300.0), ("open_pulling_share", 0.0)):
        stated = stated.with_setting(key, value)
    with refuses("nothing is left"):
        fit(recording, stated)
