"""The records themselves: how far a number is off, what counts as evidence, and all of them from one place."""

import pytest

from model.checks.check import Check, Outcome
from model.checks.published import CHECKS, all_checks, consistency, evidence
from model.describe.sources import sources
from model.words.checks import about, title
from model.words.quantities import Display
from tests.tolerances import assert_within


def test_a_number_is_off_by_how_far_it_lies_outside_what_is_published():
    assert Outcome("a", 9.5, 9.0).off == 0.5 and Outcome("a", 8.0, 9.0).off == -1
    assert Outcome("a", 9.0, (0.0, 9.0)).off == 0 and Outcome("a", 9.5, (0.0, 9.0)).off == 0.5
    assert Outcome("a", -1.0, (0.0, 9.0)).off == -1
    assert Outcome("reported only", 1e9).off is None


def test_a_number_outside_what_is_tolerated_or_never_found_fails():
    check = Check("id", ("wager-2017",), (Outcome("a", 1.0, 2.0),))
    assert_within(check, {"a": (0, 1)})
    for wrong in ({"a": (1.1, 2)}, {"b": (0, 9)}):
        with pytest.raises(AssertionError):
            assert_within(check, wrong)


def test_every_check_is_run_once_and_names_its_source():
    checks = all_checks()
    assert all_checks() is checks
    assert len({check.id for check in checks}) == len(checks) == len(CHECKS)
    assert all(check.sources and set(check.sources) <= set(sources()) for check in checks)
    assert all(check.found for check in checks)
    for check in checks:
        assert len({found.name for found in check.found}) == len(check.found)
        assert title(check, Display()) and about(check, "someone", Display()).startswith("Source: someone. Published: ")


def test_what_would_agree_anyway_is_not_counted_as_evidence():
    circular = {"range-in-the-cold", "braking-over-traction", "alpine-pass", "hill-loop"}
    assert {check.id for check in consistency()} == circular
    assert {check.id for check in evidence()} == {check.id for check in all_checks()} - circular
