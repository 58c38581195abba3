"""The records themselves: a number outside its range is found out, and all of them come quickly from one place."""

from model.published_checks import CHECKS, Check, Found, all_checks


def test_a_number_outside_its_range_does_not_hold():
    assert Found("a", 9.0, (0, 9)).holds
    assert not Found("a", 9.1, (0, 9)).holds
    assert Found("reported only", 1e9).holds
    mixed = Check("id", "Title", "source", "published", "note", (Found("a", 1.0, (0, 9)), Found("b", -1.0, (0, 9))))
    assert not mixed.holds
    assert "b: -1.0 % (allowed 0 to 9)" in str(mixed)


def test_every_check_is_run_once_and_names_its_source():
    checks = all_checks()
    assert all_checks() is checks
    assert len({check.id for check in checks}) == len(checks) == len(CHECKS)
    assert all(check.source and check.published and check.note and check.found for check in checks)
