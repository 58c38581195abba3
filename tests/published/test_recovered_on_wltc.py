"""ADAC, March 2024, from Green NCAP measurements on WLTC (press release): 22 % recovered on average, 9 to 31 %."""

from model.parameters import battery_classes
from model.published_checks import recovered_on_wltc


def test_recovered_share_of_every_battery_class():
    check = recovered_on_wltc()
    print(check)
    assert check.holds, str(check)
    assert len(check.found) == len(battery_classes()) + 1
