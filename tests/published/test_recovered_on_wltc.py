"""ADAC, March 2024, from Green NCAP measurements on WLTC (press release): 22 % recovered on average, 9 to 31 %."""

from model.checks.published import recovered_on_wltc
from model.describe.parameters import REFERENCE_CLASSES
from tests.tolerances import assert_within


def test_recovered_share_of_every_battery_class():
    check = recovered_on_wltc()
    assert len(check.found) == len(REFERENCE_CLASSES) + 1
    assert_within(check, {"found-mean-of-classes": (19, 25)} | {found.name: (9, 31) for found in check.found[1:]})
