"""Settings of the limits: from a link, for one battery or a band of them, on the slipperiest leg."""

from model.describe.fields import from_link
from model.describe.scenario_io import starting_drives
from model.limits.grip_margin import LEVELS
from model.limits.limit_settings import LIMIT_FIELDS, LimitSettings, by_battery, settings_of, slipperiest

FROSTY = starting_drives()["motorway"][2].with_setting("ambient_c", -7.0)
VALLEY = starting_drives()["mountain-valley"][2]


def test_settings_are_read_from_a_link_within_their_bounds():
    settings, notices = settings_of({"part": "hills", "hill_m": "9000", "bend": "hairpin", "mass_kg": "1"})
    assert settings == LimitSettings(part="hills", hill_m=3000.0)
    assert len(notices) == 2 and "hill_m" in str(notices[1]) and "hairpin" in str(notices[0])
    assert from_link(LIMIT_FIELDS, {}) == ({}, [])


def test_a_stated_acceptance_leaves_no_band():
    stated = FROSTY.with_setting("acceptance_level", 0.5)
    assert set(by_battery(stated, lambda car: car.acceptance_level).values()) == {0.5}
    assert list(by_battery(FROSTY, lambda car: car.acceptance_level).values()) == list(LEVELS.values())


def test_the_slipperiest_leg_counts():
    icy = VALLEY.with_leg(2, "surface", "ice").with_setting("surface", "wet")
    assert slipperiest(icy).surface == "ice"
    assert slipperiest(VALLEY).surface == "dry"
