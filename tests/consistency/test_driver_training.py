"""Energy Saving Trust: drivers of 67 battery cars used 16 % less energy after training (quoted second-hand).

A plausibility band that is next to impossible to miss, not a target and no evidence. Training also changes cruising
speed and use of the cabin, which stay as they are.
"""

from model.describe.scenario_io import starting_drives
from model.sampling.drives import drive

TRAINED_SAVING = 0.16


def saving(late, far):
    return 1 - drive(far).net_kwh / drive(late).net_kwh


def with_settings(scenario, **settings):
    for key, value in settings.items():
        scenario = scenario.with_setting(key, value)
    return scenario


def test_far_looking_against_late_driver_on_the_mixed_drive():
    mixed = starting_drives()["suburb-hill"][2]
    late = with_settings(mixed, looks_ahead="late")
    rough = with_settings(late, pull_away="brisk", steady_foot="restless")
    found = {
        "looking ahead only": saving(late, with_settings(mixed, looks_ahead="far")),
        "and pulling away gently with a steady foot": saving(
            rough, with_settings(mixed, looks_ahead="far", pull_away="gentle", steady_foot="steady")
        ),
        "the same without regeneration": saving(
            with_settings(rough, regen_peak_kw=0.0),
            with_settings(mixed, looks_ahead="far", pull_away="gentle", steady_foot="steady", regen_peak_kw=0.0),
        ),
    }
    print("saved by the trained driver:", {what: f"{share:.1%}" for what, share in found.items()})
    alone, all_habits, without = found.values()
    # regeneration forgives much of what braking late costs, so habits alone stay below what training brought
    assert 0.03 < alone < all_habits < TRAINED_SAVING
    assert all_habits < without
