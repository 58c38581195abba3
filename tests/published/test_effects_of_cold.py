"""Steinstraeter et al., World Electric Vehicle Journal 2021, 12(3), 115: range lost by heating and by recuperation."""

from model.winter_checks import effects_of_cold


def test_range_lost_by_each_cause():
    check = effects_of_cold()
    print(check)
    assert check.holds, str(check)


def test_a_short_cold_drive_in_town_goes_beyond_both():
    by_what = {found.what: found.value for found in effects_of_cold().found}
    beyond = {
        cause: by_what[f"{cause}, a short drive in town"] - by_what[f"{cause}, WLTC"]
        for cause in ("recuperation lost", "heating")
    }
    print("a short drive in town loses more, in points:", {cause: f"{points:.1f}" for cause, points in beyond.items()})
    assert all(points > 0 for points in beyond.values())
