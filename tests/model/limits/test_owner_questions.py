"""What owners ask: each answer moves the way that is known of it."""

import pytest

from model.describe.scenario_io import starting_drives
from model.limits.owner_questions import QUEUE, after_standing, charged, disc_work_left, in_a_queue
from model.sampling.drives import drive

HILL, TOWN = (starting_drives()[name][2] for name in ("suburb-hill", "town"))


def test_a_full_battery_takes_less_back_than_one_at_the_daily_limit():
    starts = charged(HILL)
    assert (starts.first.conditions.soc_start, starts.second.conditions.soc_start) == (0.8, 1.0)
    assert starts.second.saved_kwh < starts.first.saved_kwh
    assert starts.first.saved_kwh == pytest.approx(drive(HILL.with_setting("soc_start", 0.8)).saved_kwh)


def test_after_standing_in_the_cold_a_drive_takes_more_and_saves_less():
    starts = after_standing(TOWN)
    assert starts.first.conditions.ambient_c == starts.second.conditions.ambient_c == TOWN.year.winter_c
    assert starts.first.net_kwh > starts.second.net_kwh
    assert starts.first.saved_kwh < starts.second.saved_kwh


def test_after_standing_answers_for_the_day_that_is_shown_where_that_is_colder_than_the_winter_day():
    starts = after_standing(TOWN.with_setting("ambient_c", -7.0))
    assert starts.first.conditions.ambient_c == starts.second.conditions.ambient_c == -7.0


def test_a_queue_gives_little_back_for_its_length():
    """Motion at 15 km/h, twelve times, is all that there is to take."""
    queue = in_a_queue(TOWN)
    assert queue.distance_km == pytest.approx(QUEUE.distance_km, rel=1e-3)
    motion_kwh = QUEUE.stops * 0.5 * (queue.car.mass_kg * 1.1) * (QUEUE.speed_kmh / 3.6) ** 2 / 3.6e6
    assert 0 < queue.saved_kwh < motion_kwh


def test_what_is_left_to_the_discs_is_of_what_they_would_do_alone():
    result = drive(HILL)
    left = disc_work_left(result)
    assert left == pytest.approx(result.wheel_friction_kwh / result.friction_only.energies["friction_j"][0] * 3.6e6)
    assert 0 < left < 0.3
