"""Whether a range was set before anybody looked is for the history to show: the table names commits that are there."""

import csv

import pytest

from model.checks.check import ranges_set as listed
from model.checks.published import all_checks
from tests.published.ranges_set import TABLE, has_history, in_tests, ranges_set


def test_every_check_names_the_commit_since_which_its_range_stands():
    assert set(listed()) == {check.id for check in all_checks()}


def test_the_commits_named_are_those_of_the_history():
    if not has_history():
        pytest.skip("the history of the tests is not at hand: no git, or a shallow copy")
    with open(TABLE, encoding="utf-8", newline="") as file:
        assert list(csv.reader(file))[1:] == ranges_set(), "write it anew: python -m tests.published.ranges_set"


def test_a_range_is_found_however_it_is_spaced_and_belongs_to_its_check():
    text = "def test_it():\n check = energy_flow()\n assert_within(check, {'city': (29, 37), 'off': (-5,\n -1)})\n"
    assert in_tests(text) == {"energy_flow": [r"\(29,\s*37\)", r"\(\-5,\s*\-1\)"]}
