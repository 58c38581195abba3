"""AAA, Electric Vehicle Range Testing, February 2019: at 20 °F range −12 % with the cabin off, −41 % with it on."""

from model.winter_checks import range_in_the_cold


def test_range_of_a_family_hatch_in_the_cold():
    check = range_in_the_cold()
    print(check)
    assert check.holds, str(check)
    cabin_off, cabin_on = (found.value for found in check.found)
    assert cabin_on < cabin_off < 0
