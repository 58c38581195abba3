"""AAA, Electric Vehicle Range Testing, February 2019: at 20 °F range −12 % with the cabin off, −41 % with it on.

What a cold battery holds back was taken from these figures, so they are no evidence; see the distance on the same
energy among the published checks.
"""

from model.checks.cold import range_in_the_cold
from tests.tolerances import assert_within


def test_range_of_a_family_hatch_in_the_cold():
    check = range_in_the_cold()
    assert not check.is_evidence
    assert_within(check, {"found-cabin-off": (-17, -7), "found-cabin-on": (-49, -33)})
    cabin_off, cabin_on = (found.value for found in check.found)
    assert cabin_on < cabin_off < 0
